package org.airfit.fleet;

import static org.apache.spark.sql.functions.col;
import static org.apache.spark.sql.functions.expr;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.airfit.safety.Caution;
import org.apache.spark.sql.Column;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.functions;

/** What the answers to a table of drops come to: by verdict, site, profile and restriction. */
final class DropSummary {

  private static final List<String> VERDICTS =
      Arrays.stream(DropVerdict.values()).map(DropVerdict::word).toList();

  private static final String QUICK = " Asked with --quick: what would help, what the loss costs,"
      + " remarks, and the other cautions of each row were not worked out.";

  private static final int MOST_BARS = 15;

  /** Steps of the histogram of what a tool has above its need [bar]. */
  private static final double STEP = 0.5;

  private static final int LEAST_STEP = -6;
  private static final int MOST_STEP = 8;

  private DropSummary() {}

  /** Writes the summary of answers; what was not asked of them is left out. */
  static void write(
      WholeOutput output,
      Dataset<Row> answers,
      String headline,
      DropAnswers.Depth depth,
      List<Caution> cautions)
      throws IOException {
    boolean isWhole = depth == DropAnswers.Depth.WHOLE;
    Summary summary =
        new Summary(output, "Tool drops of a fleet", isWhole ? headline : headline + QUICK);
    Dataset<Row> verdicts = answers.where(col(Outcome.COLUMN).equalTo(Outcome.VERDICT));
    Dataset<Row> byVerdict = by(verdicts, List.of("verdict"));
    SharesChart all = new SharesChart("Drops by verdict", List.of("drops"), false);
    Map<String, Long> counts = new LinkedHashMap<>();
    for (Row row : byVerdict.select("verdict", "drops").collectAsList()) {
      counts.put(row.getString(0), row.getLong(1));
    }
    VERDICTS.forEach(verdict -> all.bar(verdict, List.of(counts.getOrDefault(verdict, 0L))));
    summary.drawing("verdicts", all);
    summary.table(
        "by-verdict", "By verdict", asked(byVerdict, depth).orderBy(col("drops").desc()));
    Dataset<Row> byProfile =
        asked(byGroup(answers, "profile"), depth).orderBy(col("drops").desc()).cache();
    summary.drawing("profiles", shares("Verdicts by profile of the couplings", byProfile));
    summary.table("by-profile", "By profile", byProfile);
    Dataset<Row> bySite = asked(byGroup(answers, "site"), depth)
        .orderBy(col("tooLittleShare").desc(), col("drops").desc(), col("site"))
        .cache();
    summary.drawing("sites", shares("Verdicts at the " + MOST_BARS + " worst sites", bySite));
    summary.table("by-site", "By site, the worst first", bySite);
    Dataset<Row> byRestriction =
        asked(byGroup(verdicts, "restriction"), depth).orderBy(col("drops").desc());
    summary.drawing("restrictions", shares("Verdicts by biggest restriction", byRestriction));
    summary.table("by-restriction", "By biggest restriction", byRestriction);
    summary.drawing("margins", margins(verdicts));
    if (isWhole) {
      whatHelps(summary, verdicts);
    }
    summary.table(
        "tool-limits",
        "Whether a tool can get more than its maker allows",
        verdicts.groupBy("toolLimit").agg(functions.count("*").as("drops")).orderBy("toolLimit"));
    if (isWhole) {
      remarks(summary, verdicts);
    }
    Rejects.add(summary, answers);
    summary.complete(isWhole ? cautions : List.of(Caution.MORE_SUPPLY_PRESSURE));
    byProfile.unpersist();
    bySite.unpersist();
  }

  /** Without the columns that hold nothing where only verdicts were asked for. */
  private static Dataset<Row> asked(Dataset<Row> groups, DropAnswers.Depth depth) {
    return depth == DropAnswers.Depth.WHOLE ? groups : groups.drop("costAYear", "currency");
  }

  private static void whatHelps(Summary summary, Dataset<Row> verdicts) throws IOException {
    summary.table(
        "what-helps",
        "What would help most",
        verdicts
            .where("verdict not in ('enough', 'just enough')")
            .groupBy("helps", "helpsBore", "helpsEnough")
            .agg(
                functions.count("*").as("drops"),
                expr("percentile_approx(helpsGain_bar, 0.5)").as("medianGain_bar"))
            .orderBy(col("drops").desc()));
  }

  private static void remarks(Summary summary, Dataset<Row> verdicts) throws IOException {
    summary.table(
        "remarks",
        "What was assumed, and what looks like a slip",
        verdicts
            .select(functions.explode(col("remarks")).as("remark"))
            .groupBy("remark")
            .agg(functions.count("*").as("drops"))
            .orderBy(col("drops").desc(), col("remark")));
  }

  private static Dataset<Row> by(Dataset<Row> answers, List<String> columns) {
    return answers
        .groupBy(columns.stream().map(functions::col).toArray(Column[]::new))
        .agg(
            functions.count("*").as("drops"),
            expr("percentile_approx(atTool_bar, 0.5)").as("medianAtTool_bar"),
            expr("percentile_approx(atTool_bar - needed_bar, 0.05)").as("worstTwentiethOver_bar"),
            expr("sum(costAYear)").as("costAYear"),
            expr("array_join(array_sort(collect_set(currency)), ' and ')").as("currency"));
  }

  /** Counts of each verdict, rejects too; the share that is too little or starved comes last. */
  private static Dataset<Row> byGroup(Dataset<Row> answers, String group) {
    List<Column> counts = new ArrayList<>();
    for (String verdict : VERDICTS) {
      counts.add(expr("count_if(verdict = '" + verdict + "')").as(verdict));
    }
    counts.add(expr("count_if(outcome = 'reject')").as("rejects"));
    counts.add(expr("percentile_approx(atTool_bar, 0.5)").as("medianAtTool_bar"));
    counts.add(expr("sum(costAYear)").as("costAYear"));
    counts.add(expr("array_join(array_sort(collect_set(currency)), ' and ')").as("currency"));
    counts.add(
        expr("count_if(verdict in ('too little', 'starved')) / count(*)").as("tooLittleShare"));
    return answers
        .groupBy(group)
        .agg(functions.count("*").as("drops"), counts.toArray(Column[]::new));
  }

  private static SharesChart shares(String title, Dataset<Row> groups) {
    List<String> kinds = new ArrayList<>(VERDICTS);
    kinds.add("rejects");
    SharesChart chart = new SharesChart(title, kinds, true);
    for (Row row : groups.limit(MOST_BARS).collectAsList()) {
      List<Long> counts = new ArrayList<>();
      kinds.forEach(kind -> counts.add(row.getLong(row.fieldIndex(kind))));
      chart.bar(row.isNullAt(0) ? "not told" : row.getString(0), counts);
    }
    return chart;
  }

  /** How much a tool has above what it needs, or below. */
  private static SharesChart margins(Dataset<Row> verdicts) {
    SharesChart chart = new SharesChart(
        "Pressure at the tool above its need [bar]; starved tools left out",
        List.of("drops"),
        false);
    Map<Integer, Long> counts = new LinkedHashMap<>();
    for (Row row : verdicts
        .where("atTool_bar is not null")
        .selectExpr("int(floor((atTool_bar - needed_bar) / " + STEP + ")) as step")
        .selectExpr("greatest(" + LEAST_STEP + ", least(" + MOST_STEP + ", step)) as step")
        .groupBy("step")
        .count()
        .collectAsList()) {
      counts.put(row.getInt(0), row.getLong(1));
    }
    for (int step = LEAST_STEP; step <= MOST_STEP; step++) {
      String name = step == LEAST_STEP
          ? "below " + (step + 1) * STEP
          : step == MOST_STEP ? "above " + step * STEP : step * STEP + " to " + (step + 1) * STEP;
      chart.bar(name, List.of(counts.getOrDefault(step, 0L)));
    }
    return chart;
  }
}
