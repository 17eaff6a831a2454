package org.airfit.fleet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.functions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Every row that comes in goes out once, whatever it holds. */
class EveryRowTest {

  @Test
  void a_reject_tells_key_field_value_and_reason() throws Exception {
    Map<String, Row> answers = Fleets.answers(List.of(
        Fleets.good("good"),
        Fleets.with("unit", "supply.pressure", "100"),
        Fleets.with("wall", "now[2].wall", "rubbber"),
        Fleets.with("medium", "conditions.medium", "oxygen"),
        Fleets.with("control", "tool.air", "10\u001fscfm"),
        Fleets.with("twice", "now[2].name", "coupling")));
    assertThat(answers).hasSize(6);
    assertThat(Fleets.of(answers, "good").<String>getAs("verdict")).isEqualTo("enough");
    assertReject(Fleets.of(answers, "unit"), "supply.pressure", "100", "the unit is missing");
    assertReject(Fleets.of(answers, "wall"), "now[2].wall", "rubbber", "accepted");
    assertReject(Fleets.of(answers, "medium"), "conditions.medium", "oxygen", "not on oxygen");
    assertReject(Fleets.of(answers, "control"), "", "", "control sign");
    assertReject(Fleets.of(answers, "twice"), "now[2]", "", "must differ");
  }

  @Test
  void blank_items_are_passed_over_and_the_others_keep_their_number() throws Exception {
    Map<String, String> gap = Fleets.good("gap");
    gap.put("now[4].name", "hose at the tool");
    gap.put("now[4].bore", "3/8");
    gap.put("now[4].length", "5 ft");
    gap.put("now[4].wall", "smooth rubber hose");
    Map<String, String> nothing = Fleets.good("nothing");
    nothing.keySet().removeIf(column -> column.startsWith("now["));
    Map<String, Row> answers = Fleets.answers(List.of(gap, nothing));
    assertReject(Fleets.of(answers, "gap"), "now[4].bore", "3/8", "the unit is missing");
    assertReject(Fleets.of(answers, "nothing"), "now", "", "nothing that is connected");
  }

  @Test
  void what_is_not_known_exactly_leaves_a_verdict_open() throws Exception {
    Map<String, Row> answers = Fleets.answers(List.of(
        Fleets.with("air", "tool.air", "10 to 60 scfm"),
        Fleets.with("old hose", "now[2].wall", "hose, old")));
    assertThat(Fleets.of(answers, "air").<String>getAs("verdict")).isEqualTo("open");
    // a rough hose takes more, and it is enough all the same
    assertThat(Fleets.of(answers, "old hose").<String>getAs("verdict"))
        .isIn("enough", "just enough");
    Map<String, String> weak = Fleets.with("weak", "tool.air", "21 scfm");
    weak.put("now[2].wall", "hose, old");
    weak.put("now[2].length", "60 ft");
    assertThat(Fleets.of(Fleets.answers(List.of(weak)), "weak").<String>getAs("verdict"))
        .isEqualTo("open");
  }

  @Test
  void the_limit_of_a_tool_is_told() throws Exception {
    Map<String, String> regulated = Fleets.with("regulated", "tool.notAbove", "95 psig");
    regulated.put("now[3].name", "regulator");
    regulated.put("now[3].capacity", "C 9 dm3/(s bar), b 0.3");
    regulated.put("now[3].set", "90 psig");
    Map<String, Row> answers = Fleets.answers(List.of(
        Fleets.good("none"),
        Fleets.with("met", "tool.notAbove", "110 psig"),
        Fleets.with("not met", "tool.notAbove", "95 psig"),
        regulated));
    assertThat(Fleets.of(answers, "none").<String>getAs("toolLimit")).isEqualTo("not told");
    assertThat(Fleets.of(answers, "met").<String>getAs("toolLimit")).isEqualTo("met");
    assertThat(Fleets.of(answers, "not met").<String>getAs("toolLimit")).isEqualTo("not met");
    assertThat(Fleets.of(answers, "regulated").<String>getAs("toolLimit"))
        .isEqualTo("met while the regulator holds");
  }

  @Test
  void lines_of_csv_that_are_corrupt_are_rejects(@TempDir Path folder) throws Exception {
    Path file = folder.resolve("drops.csv");
    String heading = "key,supply.pressure,tool.air,tool.pressure,now[1].name,now[1].capacity";
    String cells = "100 psig,10 scfm,80 psig,coupling,\"Cv 1.6, xT 0.7\"";
    Files.writeString(
        file,
        String.join(
            "\n",
            heading,
            "a," + cells,
            "b,100 psig",
            "c," + cells + ",one,two",
            "d,\"100 psig,10 scfm,80 psig",
            "," + cells,
            "f," + cells,
            ""));
    InputTable table = InputTable.open(Fleets.spark(), file.toString(), "csv");
    List<Row> answers = Fleets.judged(table).collectAsList();
    assertThat(answers).hasSize(6);
    assertThat(answers.stream().filter(row -> row.getAs("outcome").equals("verdict")))
        .extracting(row -> row.<String>getAs("key"))
        .containsExactly("a", "f");
    assertThat(answers.stream().filter(row -> row.getAs("outcome").equals("reject")))
        .hasSize(4)
        .allSatisfy(row -> assertThat(row.<String>getAs("reason")).isNotBlank());
  }

  @Test
  void hostile_cells_never_stop_the_job() throws Exception {
    SplittableRandom random = new SplittableRandom(Fleets.SEED);
    List<String> signs = List.of(
        "\u0000",
        "\u001f",
        "\u202e",
        "NaN psig",
        "1e999 m",
        "-",
        "|",
        "\\",
        "\"",
        "😀",
        "9".repeat(400),
        "Infinity",
        "1/0 in",
        "null",
        "{}",
        "[",
        "° °",
        "0 scfm",
        "-5 bar(g)",
        "3000 bar(g)");
    List<Map<String, String>> rows = new ArrayList<>();
    for (int i = 0; i < 3000; i++) {
      Map<String, String> row = YardDrops.values(Fleets.SEED, i);
      List<String> columns = List.copyOf(row.keySet());
      String column = columns.get(random.nextInt(columns.size()));
      String text = row.getOrDefault(column, "");
      String sign = signs.get(random.nextInt(signs.size()));
      int at = random.nextInt(text.length() + 1);
      row.put(
          column, random.nextBoolean() ? sign : text.substring(0, at) + sign + text.substring(at));
      rows.add(row);
    }
    List<Row> answers = Fleets.judged(InputTable.of(Fleets.table(rows))).collectAsList();
    assertThat(answers).hasSize(rows.size());
    assertThat(answers)
        .filteredOn(row -> row.getAs("outcome").equals("reject"))
        .hasSizeGreaterThan(1000)
        .allSatisfy(row -> assertThat(row.<String>getAs("reason"))
            .isNotBlank()
            .doesNotContain("could not be judged"));
  }

  @Test
  void flat_nested_and_csv_tables_have_the_same_answers(@TempDir Path folder) throws Exception {
    Dataset<Row> flat = YardDrops.flat(Fleets.spark(), 3000, 5, 3);
    String csv = folder.resolve("flat.csv").toString();
    String nested = folder.resolve("nested").toString();
    flat.write().option("header", "true").option("escape", "\"").csv(csv);
    YardDrops.nested(Fleets.spark(), 3000, 5, 2).write().parquet(nested);
    List<String> ofFlat = sorted(Fleets.judged(InputTable.of(flat)));
    assertThat(ofFlat).hasSize(3000);
    assertThat(sorted(Fleets.judged(InputTable.open(Fleets.spark(), csv, "csv"))))
        .isEqualTo(ofFlat);
    assertThat(sorted(Fleets.judged(InputTable.open(Fleets.spark(), nested, "parquet"))))
        .isEqualTo(ofFlat);
  }

  private static List<String> sorted(Dataset<Row> answers) {
    return answers.withColumn("key", functions.trim(functions.col("key"))).collectAsList().stream()
        .map(row -> row.toString().replace("null", ""))
        .sorted()
        .toList();
  }

  @Test
  void a_table_with_other_columns_is_refused() {
    assertThatThrownBy(() -> Fleets.answers(List.of(Fleets.with("a", "supply.presure", "7 bar"))))
        .isInstanceOf(WrongTableException.class)
        .hasMessageContaining("supply.presure")
        .hasMessageContaining("accepted");
    assertThatThrownBy(() -> Fleets.judged(InputTable.of(
            Fleets.table(List.of(Fleets.good("a"))).withColumn("tool.air", functions.lit(10.0)))))
        .isInstanceOf(WrongTableException.class)
        .hasMessageContaining("text with its unit");
    assertThatThrownBy(() ->
            Fleets.judged(InputTable.of(Fleets.table(List.of(Fleets.good("a"))).drop("key"))))
        .isInstanceOf(WrongTableException.class)
        .hasMessageContaining("key");
  }

  @Test
  void a_column_behind_two_strokes_is_passed_over() throws Exception {
    assertThat(Fleets.answers(List.of(Fleets.with("a", "// note", "by hand")))).containsKey("a");
  }

  private static void assertReject(Row answer, String field, String value, String reason) {
    assertThat(answer.<String>getAs("outcome")).isEqualTo("reject");
    assertThat(answer.<String>getAs("field")).isEqualTo(field);
    assertThat(answer.<String>getAs("value")).isEqualTo(value);
    assertThat(answer.<String>getAs("reason")).contains(reason);
  }
}
