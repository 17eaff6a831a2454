package org.airfit.fleet;

import java.io.IOException;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import org.apache.hadoop.conf.Configuration;
import org.apache.hadoop.fs.FileStatus;
import org.apache.hadoop.fs.FileSystem;
import org.apache.hadoop.fs.LocatedFileStatus;
import org.apache.hadoop.fs.Path;
import org.apache.hadoop.fs.RemoteIterator;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Observation;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SaveMode;
import org.apache.spark.sql.SparkSession;
import org.apache.spark.sql.functions;

/** One question to a table: judges it, stores the answers, counts them, sums them up. */
final class FleetRun {

  /** The folder of the answers in an output. */
  static final String ANSWERS = "answers";

  private final SparkSession spark;

  FleetRun(SparkSession spark) {
    this.spark = spark;
  }

  /** How many rows came in, and what became of them. */
  record Counts(long rows, long verdicts, long rejects) {

    @Override
    public String toString() {
      return String.format(
          Locale.ROOT, "%d rows in = %d with a verdict + %d rejected", rows, verdicts, rejects);
    }
  }

  /** Judges rows. */
  interface Judging {
    Dataset<Row> judged(Dataset<Row> rows) throws WrongTableException;
  }

  /** Writes the summary of answers. */
  interface Summing {
    void write(WholeOutput output, Dataset<Row> answers, String headline) throws IOException;
  }

  /**
   * Runs it.
   *
   * @param question what is asked, with all that changes the answer but the input
   * @param input where the table lies
   * @param folder where the output goes
   * @param rows the rows of the table
   * @param judging judges them
   * @param summing sums the answers up
   * @return the counts; empty where the output was there already
   */
  Optional<Counts> run(
      String question,
      String input,
      String folder,
      Dataset<Row> rows,
      Judging judging,
      Summing summing)
      throws IOException, WrongTableException, InterruptedException {
    Configuration conf = spark.sparkContext().hadoopConfiguration();
    String asked = question + "\n" + contents(conf, input) + "\n";
    Optional<WholeOutput> begun = WholeOutput.begin(conf, folder, asked);
    if (begun.isEmpty()) {
      return Optional.empty();
    }
    WholeOutput output = begun.get();
    try {
      Counts counts = stored(output, rows, judging, summing);
      output.complete(counts + "\n");
      return Optional.of(counts);
    } catch (IOException | WrongTableException | InterruptedException | RuntimeException e) {
      output.abandon();
      throw e;
    }
  }

  private Counts stored(WholeOutput output, Dataset<Row> rows, Judging judging, Summing summing)
      throws IOException, WrongTableException, InterruptedException {
    Observation in = new Observation("in");
    Dataset<Row> counted = rows.observe(in, functions.count(functions.lit(1)).as("rows"));
    String place = output.place(ANSWERS);
    judging
        .judged(counted)
        .write()
        .mode(SaveMode.ErrorIfExists)
        .partitionBy(Outcome.COLUMN)
        .parquet(place);
    long rowsIn = Objects.requireNonNull((Long) in.getAsJava().get("rows"));
    Dataset<Row> answers = spark.read().parquet(place);
    long verdicts = 0;
    long rejects = 0;
    for (Row row : answers.groupBy(Outcome.COLUMN).count().collectAsList()) {
      verdicts += row.getString(0).equals(Outcome.VERDICT) ? row.getLong(1) : 0;
      rejects += row.getString(0).equals(Outcome.REJECT) ? row.getLong(1) : 0;
    }
    Counts counts = new Counts(rowsIn, verdicts, rejects);
    if (counts.rows() != verdicts + rejects) {
      throw new IOException("answers are lost or doubled: " + counts);
    }
    summing.write(output, answers, counts + ".");
    return counts;
  }

  /** What lies at a place, so that another input is told from the same: files, bytes, and when they were written. */
  private static String contents(Configuration conf, String input) throws IOException {
    Path path = new Path(input);
    FileSystem files = path.getFileSystem(conf);
    long bytes = 0;
    long newest = 0;
    int count = 0;
    FileStatus[] found = files.globStatus(path);
    for (FileStatus each : found == null ? new FileStatus[0] : found) {
      // a table may lie in folders of folders, such as "site=yard 1"
      RemoteIterator<LocatedFileStatus> inside = files.listFiles(each.getPath(), true);
      while (inside.hasNext()) {
        FileStatus file = inside.next();
        bytes += file.getLen();
        newest = Math.max(newest, file.getModificationTime());
        count++;
      }
    }
    return String.format(
        Locale.ROOT, "input %s: %d files, %d bytes, newest %d", path, count, bytes, newest);
  }
}
