package org.airfit.fleet;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.TreeSet;
import org.airfit.files.Document;
import org.airfit.files.Job;
import org.airfit.files.JobFile;
import org.airfit.files.Refusal;
import org.airfit.files.WrongFileException;
import org.airfit.quantity.GaugePressure;
import org.airfit.run.Run;
import org.airfit.run.RunResult;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SaveMode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What Spark answers is what the library answers to a job file with the same fields, read as a whole in one thread; to
 * the last bit. The jobs are put together here from the flat columns, not by the code that the job uses.
 */
class SameAnswersTest {

  private static final int ROWS = 20_000;
  private static final int SAMPLED = 10_000;

  @Test
  void ten_thousand_sampled_rows_have_the_bits_of_the_library(@TempDir Path folder)
      throws Exception {
    String table = folder.resolve("drops").toString();
    YardDrops.flat(Fleets.spark(), ROWS, Fleets.SEED, 7)
        .write()
        .mode(SaveMode.ErrorIfExists)
        .parquet(table);
    Dataset<Row> judged = Fleets.judged(InputTable.open(Fleets.spark(), table, "parquet"));
    Map<String, Row> answers = new LinkedHashMap<>();
    List<Row> withoutKey = new ArrayList<>();
    for (Row row : judged.collectAsList()) {
      if (row.<String>getAs("key").isBlank()) {
        withoutKey.add(row);
      } else {
        answers.put(row.getAs("key"), row);
      }
    }
    assertThat(answers.size() + withoutKey.size()).isEqualTo(ROWS);
    SplittableRandom random = new SplittableRandom(Fleets.SEED);
    TreeMap<String, Integer> kinds = new TreeMap<>();
    for (int i = 0; i < SAMPLED; i++) {
      Map<String, String> row = YardDrops.values(Fleets.SEED, random.nextInt(ROWS));
      String key = row.getOrDefault("key", "");
      if (!key.isBlank()) {
        Row answer = Fleets.of(answers, key);
        compare(row, answer);
        kinds.merge(
            String.valueOf(answer.<String>getAs("verdict")) + answer.<String>getAs("field"),
            1,
            Integer::sum);
      }
    }
    // every verdict that the table can give and every slip was among them
    assertThat(kinds).hasSizeGreaterThanOrEqualTo(12).containsKeys("enoughnull", "starvednull");
    assertThat(withoutKey).isNotEmpty().allMatch(row -> row.getAs("field").equals("key"));
  }

  /** A job as a file would have it. */
  private static Map<String, Object> job(Map<String, String> row) {
    Map<String, Map<String, Object>> objects = new LinkedHashMap<>();
    List<Map<String, Object>> now = new ArrayList<>();
    row.forEach((column, text) -> {
      if (column.startsWith("now[")) {
        int at = column.charAt(4) - '1';
        while (now.size() <= at) {
          now.add(new LinkedHashMap<>());
        }
        String field = column.substring(7);
        now.get(at).put(field, field.equals("fittings") ? Integer.valueOf(text) : text);
      } else if (column.contains(".")) {
        String object = column.substring(0, column.indexOf('.'));
        String field = column.substring(column.indexOf('.') + 1);
        objects
            .computeIfAbsent(object, name -> new LinkedHashMap<>())
            .put(field, field.equals("hours") ? Integer.valueOf(text) : text);
      }
    });
    objects.computeIfAbsent("tool", name -> new LinkedHashMap<>()).put("inlet", "1/4 NPT female");
    Map<String, Object> job = new LinkedHashMap<>(objects);
    job.put("job", "one of them");
    job.put("customer", "nobody");
    job.put("units", "US");
    job.put(
        "line",
        List.of(Map.of("kind", "outlet", "end", "1/2 NPT female"), Map.of("kind", "coupling")));
    job.put("now", now);
    return job;
  }

  private static void compare(Map<String, String> row, Row answer) {
    Document document = Document.of("one", job(row));
    Optional<Refusal> refusal = Refusal.of(document);
    if (refusal.isPresent()) {
      assertReject(row, answer, "conditions.medium", refusal.get().reason());
      return;
    }
    Job job;
    try {
      job = JobFile.read(document, DropJudge.noCatalogue());
    } catch (WrongFileException e) {
      assertReject(row, answer, e.place(), e.complaint());
      return;
    }
    Run run = job.now().orElseThrow().run();
    RunResult result = run.at(job.requirement().demand());
    assertThat(answer.<String>getAs("outcome")).as(row.toString()).isEqualTo("verdict");
    String key = row.getOrDefault("key", "");
    result.fold(
        delivered -> {
          assertBits(answer, "atTool_bar", delivered.atToolGauge().bar(), key);
          assertBits(answer, "lost_bar", delivered.lost().bar(), key);
          assertBits(
              answer, "restrictionGain_bar", delivered.bottleneck().gain().bar(), key);
          assertThat(answer.<String>getAs("restriction"))
              .isEqualTo(delivered.bottleneck().name());
          GaugePressure needed = job.requirement().least();
          boolean isEnough = delivered.atToolGauge().compareTo(needed) >= 0;
          boolean isClose = delivered.justEnough(needed).isPresent()
              || delivered.lessThanAGaugeShows(needed).isPresent();
          assertThat(answer.<String>getAs("verdict"))
              .isEqualTo(
                  isEnough ? isClose ? "just enough" : "enough" : ifKnown(job, "too little"));
          return true;
        },
        starved -> {
          assertThat(answer.<String>getAs("verdict")).isEqualTo(ifKnown(job, "starved"));
          assertThat(answer.<String>getAs("restriction")).isEqualTo(starved.element());
          assertThat(answer.<Object>getAs("atTool_bar")).isNull();
          return true;
        });
    assertBits(answer, "needed_bar", job.requirement().least().bar(), key);
    JudgedDrop whole =
        new JudgedDrop(job, job, run, Optional.empty(), Optional.empty(), result, verdict(answer));
    Optional<JudgedDrop.Help> help = whole.help();
    assertThat(answer.<String>getAs("helps"))
        .isEqualTo(help.map(JudgedDrop.Help::element).orElse(null));
    assertThat(answer.<String>getAs("helpsBore"))
        .isEqualTo(help.map(JudgedDrop.Help::bore).orElse(null));
    help.ifPresent(told -> assertBits(answer, "helpsGain_bar", told.gainBar(), key));
    assertThat(answer.<Object>getAs("costAYear"))
        .isEqualTo(whole.cost().map(JudgedDrop::rounded).orElse(null));
    assertThat(answer.<String>getList(answer.fieldIndex("cautions")))
        .isEqualTo(result.cautions().stream().map(each -> each.title()).toList());
    assertThat(new TreeSet<>(answer.<String>getList(answer.fieldIndex("remarks"))))
        .isEqualTo(new TreeSet<>(job.remarks()));
  }

  /** What is not enough at worst is open where not all is known. */
  private static String ifKnown(Job job, String verdict) {
    return job.now().orElseThrow().isExact() ? verdict : "open";
  }

  private static DropVerdict verdict(Row answer) {
    for (DropVerdict verdict : DropVerdict.values()) {
      if (verdict.word().equals(answer.getAs("verdict"))) {
        return verdict;
      }
    }
    throw new IllegalStateException(answer.toString());
  }

  private static void assertBits(Row answer, String column, double expected, String key) {
    assertThat(Double.doubleToRawLongBits(answer.<Double>getAs(column)))
        .as(column + " of " + key)
        .isEqualTo(Double.doubleToRawLongBits(expected));
  }

  private static void assertReject(
      Map<String, String> row, Row answer, String field, String reason) {
    assertThat(answer.<String>getAs("outcome")).as(row.toString()).isEqualTo("reject");
    assertThat(answer.<String>getAs("field")).isEqualTo(field);
    assertThat(answer.<String>getAs("value")).isEqualTo(row.getOrDefault(field, ""));
    assertThat(answer.<String>getAs("reason")).isEqualTo(reason);
  }
}
