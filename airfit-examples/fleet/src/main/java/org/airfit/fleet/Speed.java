package org.airfit.fleet;

import java.io.IOException;
import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ForkJoinPool;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.airfit.working.UnitSystem;
import org.apache.spark.api.java.function.MapFunction;
import org.apache.spark.sql.Column;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Encoders;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SaveMode;
import org.apache.spark.sql.SparkSession;
import org.apache.spark.sql.api.java.UDF1;
import org.apache.spark.sql.functions;
import org.apache.spark.storage.StorageLevel;

/**
 * Measures how many rows are judged in a second, on one core and on two, in the ways into Spark that there are, and
 * beside them a plain loop of Java over the same rows. Of several rounds the fastest counts: what else runs on the
 * machine only makes them slower.
 */
final class Speed {

  /** As many rows as are measured unless told. */
  static final long ROWS = 1_000_000;

  private static final int ROUNDS = 4;
  private static final int PARTITIONS = 8;
  private static final long SEED = 18;
  private static final double NANOS = 1.0e9;
  private static final UnitSystem UNITS = UnitSystem.US;

  /** A judge for each thread: for the ways that know no partitions. */
  private static final ThreadLocal<DropJudge> JUDGES =
      ThreadLocal.withInitial(() -> DropJudge.in(UNITS));

  private final long rows;
  private final PrintStream out;

  private Speed(long rows, PrintStream out) {
    this.rows = rows;
    this.out = out;
  }

  /** Something that takes time. */
  private interface Work {
    void run() throws IOException, InterruptedException;
  }

  static void measure(long rows, PrintStream out) throws IOException, InterruptedException {
    Path folder = Files.createTempDirectory("airfit-speed");
    try {
      new Speed(rows, out).measure(folder.resolve("drops").toString());
    } catch (WrongTableException e) {
      throw new IOException(e);
    } finally {
      try (Stream<Path> all = Files.walk(folder)) {
        for (Path each : all.sorted(Comparator.reverseOrder()).toList()) {
          Files.delete(each);
        }
      }
    }
  }

  private void measure(String table) throws IOException, InterruptedException, WrongTableException {
    out.printf(
        Locale.ROOT,
        "%,d rows of four elements each; Java %s, %d cores, load %.1f; of %d rounds the fastest%n",
        rows,
        System.getProperty("java.version"),
        Runtime.getRuntime().availableProcessors(),
        ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage(),
        ROUNDS);
    SparkSession two = Sessions.local("local[2]");
    YardDrops.flat(two, rows, SEED, PARTITIONS).write().mode(SaveMode.Overwrite).parquet(table);
    out.println("| what | rows/s | |");
    out.println("|---|---|---|");
    told("read and packed from Parquet, two cores", fastest(() -> noop(packed(two, table))), "");
    Dataset<Row> rowsRead = packed(two, table).persist(StorageLevel.MEMORY_ONLY());
    rowsRead.count();
    ToldCautions.Everywhere told = ToldCautions.Everywhere.in(two);
    double partitions =
        fastest(() -> noop(DropAnswers.judged(rowsRead, DropAnswers.Depth.QUICK, UNITS, told)));
    double plainTwo = plain(rowsRead, 2);
    double plainOne = plain(rowsRead, 1);
    told("Spark, mapPartitions, two cores", partitions, "");
    told("Spark, typed map, two cores", fastest(() -> noop(byMap(rowsRead))), "");
    told("Spark, UDF, two cores", fastest(() -> noop(byUdf(rowsRead))), "");
    double whole =
        fastest(() -> noop(DropAnswers.judged(rowsRead, DropAnswers.Depth.WHOLE, UNITS, told)));
    told("Spark, with what helps, cost and cautions, two cores", whole, "");
    double empty = fastest(() ->
        noop(rowsRead.map((MapFunction<Row, Row>) row -> row, Encoders.row(rowsRead.schema()))));
    told("Spark, rows handed to Java and back, two cores", empty, "");
    rowsRead.unpersist();
    two.stop();
    SparkSession one = Sessions.local("local[1]");
    Dataset<Row> ofOne = packed(one, table).persist(StorageLevel.MEMORY_ONLY());
    ofOne.count();
    ToldCautions.Everywhere toldOne = ToldCautions.Everywhere.in(one);
    double single =
        fastest(() -> noop(DropAnswers.judged(ofOne, DropAnswers.Depth.QUICK, UNITS, toldOne)));
    told("Spark, mapPartitions, one core", single, "two cores: " + ratio(single / partitions));
    one.stop();
    told("plain Java, two cores", plainTwo, ratio(partitions / plainTwo) + " as fast as Spark");
    told("plain Java, one core", plainOne, "two cores: " + ratio(plainOne / plainTwo));
  }

  private static String ratio(double ratio) {
    return String.format(Locale.ROOT, "%.2f ×", ratio);
  }

  private static Dataset<Row> packed(SparkSession spark, String table) throws IOException {
    try {
      return DropAnswers.rows(InputTable.open(spark, table, "parquet"));
    } catch (WrongTableException e) {
      throw new IOException(e);
    }
  }

  private static void noop(Dataset<Row> rows) {
    rows.write().format("noop").mode(SaveMode.Overwrite).save();
  }

  private static Dataset<Row> byMap(Dataset<Row> rows) {
    return rows.map(
        (MapFunction<Row, Row>) row -> DropAnswers.answer(
            JUDGES.get(), row, DropAnswers.Depth.QUICK, ToldCautions.titlesOnly()),
        Encoders.row(DropAnswers.SCHEMA));
  }

  private static Dataset<Row> byUdf(Dataset<Row> rows) {
    Column row =
        functions.struct(Arrays.stream(rows.columns()).map(functions::col).toArray(Column[]::new));
    return rows.select(functions
        .udf(
            (UDF1<Row, Row>) each -> DropAnswers.answer(
                JUDGES.get(), each, DropAnswers.Depth.QUICK, ToldCautions.titlesOnly()),
            DropAnswers.SCHEMA)
        .apply(row)
        .as("answer"));
  }

  /** The same verdicts by parallel streams over rows that stand in memory, each thread with a judge of its own. */
  private double plain(Dataset<Row> rowsRead, int cores) throws IOException, InterruptedException {
    List<DropFields.Packed> all = new ArrayList<>();
    for (Row row : rowsRead.limit((int) Math.min(rows, 400_000)).collectAsList()) {
      all.add(DropAnswers.packed(row));
    }
    ForkJoinPool pool = new ForkJoinPool(cores);
    try {
      double seconds = fastest(() -> {
        try {
          pool.submit(() -> judged(all)).get();
        } catch (ExecutionException e) {
          throw new IOException(e);
        }
      });
      return seconds * rows / all.size();
    } finally {
      pool.shutdown();
    }
  }

  private static double judged(List<DropFields.Packed> rows) {
    int part = Math.max(1, rows.size() / PARTITIONS);
    return IntStream.range(0, PARTITIONS)
        .parallel()
        .mapToDouble(at -> {
          DropJudge judge = DropJudge.in(UNITS);
          double sum = 0.0;
          for (DropFields.Packed row :
              rows.subList(at * part, Math.min(rows.size(), (at + 1) * part))) {
            sum += judge.<Double>judge(
                row,
                drop -> drop.verdict().word().length()
                    + drop.restriction().gainBar().orElse(0.0)
                    + drop.result()
                        .fold(delivered -> delivered.atToolGauge().bar(), starved -> 0.0),
                refused -> 0.0);
          }
          return sum;
        })
        .sum();
  }

  private static double fastest(Work work) throws IOException, InterruptedException {
    double least = Double.POSITIVE_INFINITY;
    for (int round = 0; round < ROUNDS; round++) {
      long began = System.nanoTime();
      work.run();
      least = Math.min(least, (System.nanoTime() - began) / NANOS);
    }
    return least;
  }

  private double told(String what, double seconds, String note) {
    out.printf(Locale.ROOT, "| %s | %,.0f | %s |%n", what, rows / seconds, note);
    return seconds;
  }
}
