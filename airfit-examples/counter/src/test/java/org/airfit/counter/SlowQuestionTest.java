package org.airfit.counter;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.StringReader;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.airfit.counter.stock.Database;
import org.airfit.counter.stock.Shelf;
import org.airfit.counter.stock.Shops;
import org.airfit.counter.stock.Stock;
import org.airfit.files.Disk;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A question that is past its time ends, and leaves its place and the database to others. */
class SlowQuestionTest {

  private static final Path EXAMPLES = Path.of("..", "jobs", "boatyard");
  private static final int LONGEST_MILLIS = 300;

  @TempDir
  static Path folder;

  private static Database database;
  private static CounterService service;
  private static Till till;

  @BeforeAll
  static void start() throws Exception {
    database = Database.open(Database.embedded(folder.resolve("stock")));
    Stock stock = Shops.stocked(database, EXAMPLES.resolve("catalogue.json"));
    assertThat(stock.load("many.csv", new StringReader(ManyParts.table(4000))).rejects())
        .isEmpty();
    service = CounterService.start(
        Settings.usual().limitedTo(1, Duration.ofMillis(LONGEST_MILLIS), Duration.ofSeconds(10)),
        stock,
        Shelf.of(database, Clock.systemUTC()));
    till = new Till(service.port());
  }

  @AfterAll
  static void stop() throws Exception {
    service.close();
    database.close();
  }

  private static Map<String, Object> job() throws Exception {
    Map<String, Object> job = Disk.fields(EXAMPLES.resolve("three-offers.json"), new ArrayList<>());
    job.remove("catalogue");
    return job;
  }

  @Test
  void the_only_place_is_free_after_a_question_was_given_up() throws Exception {
    for (String path : List.of("/select", "/select")) {
      HttpResponse<String> slow = till.post(path, Map.of("job", job()));
      assertThat(slow.statusCode()).as(path + slow.body()).isEqualTo(503);
      assertThat(slow.body()).as(path).contains("urn:airfit:too-slow");
      HttpResponse<String> next = till.postWhenFree("/mating", MATING);
      assertThat(next.statusCode()).as("behind " + path).isEqualTo(200);
      assertThat(till.get("/stock/M-1").statusCode()).as("the database is open").isEqualTo(200);
    }
  }

  private static final String MATING = "{\"one\": \"1/4 NPT male\", \"other\": \"G 1/4 female\"}";
}
