package org.airfit.fleet;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A process that judges a table is killed (SIGKILL) while it writes, again and again. The output is never there in
 * part; started again, it is there whole, each row once, and nothing else lies beside it.
 */
class KilledWriteTest {

  /** As many as a build takes time for; -Dairfit.kills=20 for more. */
  private static final int KILLS = Integer.getInteger("airfit.kills", 3);

  private static final int ROWS = 30_000;

  /** A process begins to write within [s], and a kill falls within [ms] behind that. */
  private static final int BEGINS = 180;

  private static final int WITHIN = 2500;

  @Test
  void an_output_is_whole_or_not_there(@TempDir Path folder) throws Exception {
    String table = folder.resolve("drops").toString();
    Path output = folder.resolve("judged");
    YardDrops.flat(Fleets.spark(), ROWS, Fleets.SEED, 6).write().parquet(table);
    SplittableRandom random = new SplittableRandom(Fleets.SEED);
    int amid = 0;
    for (int kill = 0; kill < KILLS && !Files.exists(output); kill++) {
      Process process = process(table, output);
      int after = random.nextInt(WITHIN);
      waitUntilItWrites(folder, process);
      Thread.sleep(after);
      process.toHandle().destroyForcibly();
      assertThat(process.waitFor(10, TimeUnit.MINUTES)).isTrue();
      if (Files.exists(output)) {
        assertThat(output.resolve("complete.txt")).exists(); // it was faster than the kill
      } else {
        assertThat(begun(folder)).as("what kill " + kill + " left").isNotEmpty();
        amid++;
      }
    }
    assertThat(amid).as("kills while it wrote").isPositive();
    Fleets.Ended ended = Fleets.run("drops", table, output.toString());
    assertThat(ended.code()).as(ended.err()).isEqualTo(1);
    assertThat(ended.out()).contains(ROWS + " rows in");
    assertThat(begun(folder)).as("what lies beside it").isEmpty();
    Dataset<Row> answers =
        Fleets.spark().read().parquet(output.resolve("answers").toString());
    assertThat(answers.count()).isEqualTo(ROWS);
    assertThat(answers.where("trim(key) <> ''").select("key").distinct().count())
        .isEqualTo(answers.where("trim(key) <> ''").count());
    List<String> expected = lines(Fleets.judged(InputTable.open(Fleets.spark(), table, "parquet")));
    assertThat(lines(answers)).isEqualTo(expected);
    Fleets.Ended again = Fleets.run("drops", table, output.toString());
    assertThat(again.out()).contains("nothing was done");
    assertThat(again.code()).isZero();
    System.out.println(amid + " kills while it wrote, seed " + Fleets.SEED);
  }

  private static List<String> lines(Dataset<Row> answers) {
    return answers
        .selectExpr("concat_ws('|', key, outcome, verdict, atTool_bar, field, value) as line")
        .orderBy("line")
        .collectAsList()
        .stream()
        .map(row -> row.getString(0))
        .toList();
  }

  private static Process process(String table, Path output) throws IOException {
    return new ProcessBuilder(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-Xmx512m",
            "-Dspark.master=local[2]",
            "-Dspark.ui.enabled=false",
            "-Dspark.driver.host=127.0.0.1",
            "-Dspark.driver.bindAddress=127.0.0.1",
            "-cp",
            System.getProperty("java.class.path"),
            Main.class.getName(),
            "drops",
            table,
            output.toString())
        .redirectOutput(ProcessBuilder.Redirect.DISCARD)
        .redirectError(ProcessBuilder.Redirect.DISCARD)
        .start();
  }

  /** Until the folder beside the output holds something of this process. */
  private static void waitUntilItWrites(Path folder, Process process) throws Exception {
    long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(BEGINS);
    while (process.isAlive() && System.nanoTime() < end) {
      for (Path each : begun(folder)) {
        if (Files.exists(each.resolve("answers").resolve("_temporary"))) {
          long begun = Files.getLastModifiedTime(each).toMillis();
          if (begun >= process.info().startInstant().orElseThrow().toEpochMilli()) {
            return;
          }
        }
      }
      Thread.sleep(20);
    }
    assertThat(process.isAlive()).as("the process writes").isTrue();
  }

  private static List<Path> begun(Path folder) throws IOException {
    try (Stream<Path> all = Files.list(folder)) {
      return all.filter(each -> each.getFileName().toString().startsWith(".judged.begun-"))
          .toList();
    }
  }
}
