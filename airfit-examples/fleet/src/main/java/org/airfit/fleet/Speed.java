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
import java.util.stream.Collectors;
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
 * beside them a plain loop of Java over the same rows. Each round goes through all of them, so that what else runs on
 * the machine, and what the JVM has not compiled yet, hits all alike; of the rounds the fastest counts, for these only
 * make it slower.
 */
final class Speed {

  /** As many rows as are measured unless told. */
  static final long ROWS = 1_000_000;

  private static final int ROUNDS = 6;
  private static final int PARTITIONS = 8;
  private static final int MOST_PLAIN = 400_000;
  private static final long SEED = 18;
  private static final double NANOS = 1.0e9;
  private static final double MICROS = 1.0e6;
  private static final double BILLION = 1.0e9;
  private static final double SECONDS_AN_HOUR = 3600.0;
  private static final UnitSystem UNITS = UnitSystem.US;

  /** Files that are opened so dearly are not read together: a partition for each. */
  private static final String ONE_FILE_EACH = "128MB";

  /** A judge for each thread, for the ways that know no partitions; each round begins with new ones. */
  private static volatile ThreadLocal<DropJudge> judges = newJudges();

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

  /** A way to judge rows, and what it took at its fastest. */
  private static final class Way {
    private final String name;
    private final int cores;
    private final long rows;
    private final Work work;
    private double seconds = Double.POSITIVE_INFINITY;
    private double processor = Double.POSITIVE_INFINITY;

    Way(String name, int cores, long rows, Work work) {
      this.name = name;
      this.cores = cores;
      this.rows = rows;
      this.work = work;
    }

    void round() throws IOException, InterruptedException {
      long processorBegan = processorTime();
      long began = System.nanoTime();
      work.run();
      seconds = Math.min(seconds, (System.nanoTime() - began) / NANOS);
      processor = Math.min(processor, (processorTime() - processorBegan) / NANOS);
    }

    double rowsInASecond() {
      return rows / seconds;
    }

    /** Time of a core for a row [µs]. */
    double microsOfACore() {
      return cores * seconds / rows * MICROS;
    }

    double microsOfTheProcessor() {
      return processor / rows * MICROS;
    }
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
    double loadBefore = load();
    SparkSession two = session(2);
    YardDrops.flat(two, rows, SEED, PARTITIONS).write().mode(SaveMode.Overwrite).parquet(table);
    Dataset<Row> ofTwo = kept(two, table);
    ToldCautions.Everywhere told = ToldCautions.Everywhere.in(two);
    List<DropFields.Packed> plain = new ArrayList<>();
    for (Row row : ofTwo.limit((int) Math.min(rows, MOST_PLAIN)).collectAsList()) {
      plain.add(DropAnswers.packed(row));
    }
    Way reading = new Way("read and packed from Parquet", 2, rows, () -> noop(packed(two, table)));
    Way partitions = new Way(
        "Spark, mapPartitions",
        2,
        rows,
        () -> noop(DropAnswers.judged(ofTwo, DropAnswers.Depth.QUICK, UNITS, told)));
    Way typed = new Way("Spark, typed map", 2, rows, () -> noop(byMap(ofTwo)));
    Way udf = new Way("Spark, UDF", 2, rows, () -> noop(byUdf(ofTwo)));
    Way whole = new Way(
        "Spark, with what helps, cost and cautions",
        2,
        rows,
        () -> noop(DropAnswers.judged(ofTwo, DropAnswers.Depth.WHOLE, UNITS, told)));
    Way handed = new Way(
        "Spark, rows handed to Java and back",
        2,
        rows,
        () -> noop(ofTwo.map((MapFunction<Row, Row>) row -> row, Encoders.row(ofTwo.schema()))));
    ForkJoinPool poolOfTwo = new ForkJoinPool(2);
    ForkJoinPool poolOfOne = new ForkJoinPool(1);
    Way plainTwo = new Way("plain Java", 2, plain.size(), () -> judged(plain, poolOfTwo));
    Way plainOne = new Way("plain Java", 1, plain.size(), () -> judged(plain, poolOfOne));
    rounds(List.of(reading, partitions, typed, udf, whole, handed, plainTwo, plainOne));
    poolOfTwo.shutdown();
    poolOfOne.shutdown();
    two.stop();
    SparkSession one = session(1);
    Dataset<Row> ofOne = kept(one, table);
    ToldCautions.Everywhere toldOne = ToldCautions.Everywhere.in(one);
    Way single = new Way(
        "Spark, mapPartitions",
        1,
        rows,
        () -> noop(DropAnswers.judged(ofOne, DropAnswers.Depth.QUICK, UNITS, toldOne)));
    rounds(List.of(single));
    one.stop();
    tellHow(loadBefore);
    tell(reading, "");
    tell(partitions, twice(partitions, single) + " one core");
    tell(single, "");
    tell(typed, "");
    tell(udf, "");
    tell(whole, "");
    tell(handed, "");
    tell(
        plainTwo,
        twice(plainTwo, plainOne) + " one core, " + twice(plainTwo, partitions) + " Spark");
    tell(plainOne, "");
    tellBillion(reading, partitions, whole);
  }

  private static SparkSession session(int cores) {
    SparkSession session = Sessions.local("local[" + cores + "]");
    session.conf().set("spark.sql.files.openCostInBytes", ONE_FILE_EACH);
    return session;
  }

  private static void rounds(List<Way> ways) throws IOException, InterruptedException {
    for (int round = 0; round < ROUNDS; round++) {
      for (Way way : ways) {
        way.round();
      }
    }
  }

  private static double load() {
    return ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage();
  }

  private static long processorTime() {
    return ManagementFactory.getOperatingSystemMXBean()
            instanceof com.sun.management.OperatingSystemMXBean system
        ? system.getProcessCpuTime()
        : 0;
  }

  /** The lines above the table: what was measured, on what, and how. */
  private void tellHow(double loadBefore) throws IOException {
    out.printf(
        Locale.ROOT,
        "%s, %d cores, %s, Java %s, -Xmx%d MB, %s; load %.1f before it began.%n"
            + "%,d rows of four elements in %d partitions, %,d of them in plain Java;"
            + " of %d rounds the fastest.%n%n",
        processor(),
        Runtime.getRuntime().availableProcessors(),
        System.getProperty("os.name"),
        System.getProperty("java.version"),
        Runtime.getRuntime().maxMemory() >> 20,
        collectors(),
        loadBefore,
        rows,
        PARTITIONS,
        Math.min(rows, MOST_PLAIN),
        ROUNDS);
    out.println("| what | cores | rows/s | µs of a core for a row | processor time, µs | |");
    out.println("|---|---|---|---|---|---|");
  }

  /** What Linux calls the processor; elsewhere its kind. */
  private static String processor() throws IOException {
    Path told = Path.of("/proc/cpuinfo");
    if (Files.isReadable(told)) {
      try (Stream<String> lines = Files.lines(told)) {
        return lines
            .filter(line -> line.startsWith("model name"))
            .map(line -> line.substring(line.indexOf(':') + 1).strip())
            .findFirst()
            .orElse(System.getProperty("os.arch"));
      }
    }
    return System.getProperty("os.arch");
  }

  private static String collectors() {
    return ManagementFactory.getGarbageCollectorMXBeans().stream()
        .map(collector -> collector.getName())
        .collect(Collectors.joining(" and "));
  }

  private void tell(Way way, String note) {
    out.printf(
        Locale.ROOT,
        "| %s | %d | %,.0f | %.2f | %.2f | %s |%n",
        way.name,
        way.cores,
        way.rowsInASecond(),
        way.microsOfACore(),
        way.microsOfTheProcessor(),
        note);
  }

  /** How many times as fast one way is as another. */
  private static String twice(Way fast, Way slow) {
    return String.format(Locale.ROOT, "%.2f ×", fast.rowsInASecond() / slow.rowsInASecond());
  }

  /** What follows for a billion rows. */
  private void tellBillion(Way reading, Way quick, Way whole) {
    double read = reading.microsOfACore();
    out.printf(
        Locale.ROOT,
        "%nA billion rows: %.1f µs of a core to read and %.1f µs for the verdict are %.1f hours of a core with --quick"
            + " (%.1f minutes of a hundred cores);%n%.1f µs with what helps, cost and cautions are"
            + " %.1f hours (%.1f minutes).%n",
        read,
        quick.microsOfACore(),
        hours(read + quick.microsOfACore()),
        minutesOfAHundred(read + quick.microsOfACore()),
        whole.microsOfACore(),
        hours(read + whole.microsOfACore()),
        minutesOfAHundred(read + whole.microsOfACore()));
  }

  /** Hours of a core for a billion rows. */
  private static double hours(double micros) {
    return micros / MICROS * BILLION / SECONDS_AN_HOUR;
  }

  private static double minutesOfAHundred(double micros) {
    return hours(micros) * 60.0 / 100.0;
  }

  /** The rows, in as many partitions as there are files, read and kept in memory. */
  private static Dataset<Row> kept(SparkSession spark, String table) throws IOException {
    Dataset<Row> rows = packed(spark, table).persist(StorageLevel.MEMORY_ONLY());
    rows.count();
    return rows;
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

  private static ThreadLocal<DropJudge> newJudges() {
    return ThreadLocal.withInitial(() -> DropJudge.in(UNITS));
  }

  private static Dataset<Row> byMap(Dataset<Row> rows) {
    judges = newJudges();
    return rows.map(
        (MapFunction<Row, Row>) row -> DropAnswers.answer(
            judges.get(), row, DropAnswers.Depth.QUICK, ToldCautions.titlesOnly()),
        Encoders.row(DropAnswers.SCHEMA));
  }

  private static Dataset<Row> byUdf(Dataset<Row> rows) {
    judges = newJudges();
    Column row =
        functions.struct(Arrays.stream(rows.columns()).map(functions::col).toArray(Column[]::new));
    return rows.select(functions
        .udf(
            (UDF1<Row, Row>) each -> DropAnswers.answer(
                judges.get(), each, DropAnswers.Depth.QUICK, ToldCautions.titlesOnly()),
            DropAnswers.SCHEMA)
        .apply(row)
        .as("answer"));
  }

  /** The same verdicts by a parallel stream over rows that stand in memory, each part with a judge of its own. */
  private static void judged(List<DropFields.Packed> rows, ForkJoinPool pool)
      throws IOException, InterruptedException {
    try {
      pool.submit(() -> judged(rows)).get();
    } catch (ExecutionException e) {
      throw new IOException(e);
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
}
