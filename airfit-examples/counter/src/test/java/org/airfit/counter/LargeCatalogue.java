package org.airfit.counter;

import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.airfit.counter.stock.Database;
import org.airfit.counter.stock.Shelf;
import org.airfit.counter.stock.Shops;
import org.airfit.counter.stock.Stock;
import org.airfit.files.Disk;

/**
 * Measures what questions cost over a catalogue of as many invented articles as are told, and what memory it takes. Its
 * argument is their number; it prints a line for each question.
 */
final class LargeCatalogue {

  private static final Path EXAMPLES = Path.of("..", "jobs", "boatyard");
  private static final double NANOS_PER_SECOND = 1e9;
  private static final double MILLIS_PER_SECOND = 1e3;
  private static final double BYTES_PER_MEGABYTE = 1e6;

  private LargeCatalogue() {}

  public static void main(String[] args) throws Exception {
    int articles = Integer.parseInt(args[0]);
    Path folder = Files.createTempDirectory("airfit-large");
    try (Database database = Database.open(Database.embedded(folder.resolve("stock")))) {
      Stock stock = Shops.stocked(database, EXAMPLES.resolve("catalogue.json"));
      String table = ManyParts.table(articles);
      timed("load " + articles, () -> {
        stock.load("many.csv", new StringReader(table));
        return "";
      });
      heap("stored");
      Answers answers = new Answers(stock, Shelf.of(database, Clock.systemUTC()));
      timed("read", () -> size(answers.answer(Endpoint.CATALOGUE, "", Map.of())));
      heap("read");
      Map<String, Object> job =
          new TreeMap<>(Disk.fields(EXAMPLES.resolve("three-offers.json"), new ArrayList<>()));
      job.remove("catalogue");
      Map<String, Object> noYear = new TreeMap<>(job);
      noYear.remove("year");
      for (String what : List.of("without year", "without year", "with year")) {
        Map<String, Object> asked = Map.of("job", what.equals("with year") ? job : noYear);
        timed("/select " + what, () -> size(answers.answer(Endpoint.SELECT, "", asked)));
        heap("after it");
      }
      timed(
          "/interview", () -> size(answers.answer(Endpoint.INTERVIEW, "", Map.of("job", noYear))));
      heap("at the end");
    }
  }

  private static String size(Answering.Answer answer) {
    return Bodies.write(answer.object()).length / 1000 + " kB";
  }

  private interface Work {
    String done() throws Exception;
  }

  private static void timed(String what, Work work) throws Exception {
    long began = System.nanoTime();
    Duration before = cpu();
    String told = work.done();
    System.out.printf(
        "%s: %.1f s, %.1f s of CPU, %s%n",
        what,
        (System.nanoTime() - began) / NANOS_PER_SECOND,
        cpu().minus(before).toMillis() / MILLIS_PER_SECOND,
        told);
  }

  /** What all threads of this process took, compiling and collecting too. */
  private static Duration cpu() {
    return ProcessHandle.current().info().totalCpuDuration().orElse(Duration.ZERO);
  }

  /** What is left after everything that is not needed was thrown away. */
  private static void heap(String when) {
    System.gc();
    System.gc();
    Runtime runtime = Runtime.getRuntime();
    System.out.printf(
        "  heap %s: %.0f MB%n",
        when, (runtime.totalMemory() - runtime.freeMemory()) / BYTES_PER_MEGABYTE);
  }
}
