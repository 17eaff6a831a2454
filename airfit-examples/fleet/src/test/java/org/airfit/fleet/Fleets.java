package org.airfit.fleet;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.airfit.working.UnitSystem;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.RowFactory;
import org.apache.spark.sql.SparkSession;
import org.apache.spark.sql.types.StructType;

/** What the tests of the job share: one session on two cores, and small tables. */
final class Fleets {

  static final long SEED = 4711;

  private Fleets() {}

  /** The session; the tests of one JVM have one, and it ends with it. */
  static SparkSession spark() {
    return Sessions.local("local[2]");
  }

  /** A table of texts, its columns those that any row has. */
  static Dataset<Row> table(List<Map<String, String>> rows) {
    List<String> columns =
        rows.stream().flatMap(row -> row.keySet().stream()).distinct().toList();
    StructType schema = new StructType();
    for (String column : columns) {
      schema = schema.add(column, "string");
    }
    List<Row> cells = new ArrayList<>();
    for (Map<String, String> row : rows) {
      cells.add(RowFactory.create(columns.stream().map(row::get).toArray()));
    }
    return spark().createDataFrame(cells, schema);
  }

  /** The answers to such a table, by key. */
  static Map<String, Row> answers(List<Map<String, String>> rows) throws WrongTableException {
    return byKey(judged(InputTable.of(table(rows))));
  }

  static Dataset<Row> judged(InputTable table) throws WrongTableException {
    return DropAnswers.judged(
        DropAnswers.rows(table),
        DropAnswers.Depth.WHOLE,
        UnitSystem.US,
        ToldCautions.Everywhere.in(spark()));
  }

  static Map<String, Row> byKey(Dataset<Row> answers) {
    Map<String, Row> byKey = new LinkedHashMap<>();
    for (Row row : answers.collectAsList()) {
      if (byKey.put(String.valueOf(row.get(0)), row) != null) {
        throw new IllegalStateException(row.get(0) + " is answered twice");
      }
    }
    return byKey;
  }

  /** A drop whose tool has what it needs. */
  static Map<String, String> good(String key) {
    Map<String, String> row = new LinkedHashMap<>();
    row.put("key", key);
    row.put("site", "yard 1");
    row.put("profile", "heron");
    row.put("supply.pressure", "100 psig");
    row.put("tool.air", "10 scfm");
    row.put("tool.pressure", "80 psig");
    row.put("now[1].name", "coupling");
    row.put("now[1].capacity", "Cv 1.6, xT 0.7");
    row.put("now[2].name", "hose");
    row.put("now[2].bore", "3/8 in");
    row.put("now[2].length", "25 ft");
    row.put("now[2].wall", "smooth rubber hose");
    return row;
  }

  /** The same with one cell changed. */
  static Map<String, String> with(String key, String column, String text) {
    Map<String, String> row = good(key);
    row.put(column, text);
    return row;
  }

  static Row of(Map<String, Row> answers, String key) {
    return Objects.requireNonNull(answers.get(key), key);
  }

  /** What the program prints and its exit code. */
  record Ended(int code, String out, String err) {}

  static Ended run(String... args) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    int code = Main.run(
        List.of(args),
        new PrintStream(out, true, StandardCharsets.UTF_8),
        new PrintStream(err, true, StandardCharsets.UTF_8));
    return new Ended(
        code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
  }
}
