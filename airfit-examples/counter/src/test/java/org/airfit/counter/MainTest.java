package org.airfit.counter;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import org.airfit.counter.stock.Database;
import org.airfit.counter.stock.Stock;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the program does with what it is told. */
class MainTest {

  private static final Path BOATYARD = Path.of("..", "jobs", "boatyard", "catalogue.json");

  @TempDir
  Path folder;

  private record Told(int code, String out, String err) {}

  private Told run(String... words) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    List<String> args = new ArrayList<>(List.of(words));
    args.add("--database");
    args.add(Database.embedded(folder.resolve("stock")));
    int code = Main.run(
        args.toArray(String[]::new),
        null,
        new PrintStream(out, true, StandardCharsets.UTF_8),
        new PrintStream(err, true, StandardCharsets.UTF_8));
    return new Told(
        code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
  }

  @Test
  void a_currency_that_is_not_that_of_the_prices_is_refused_in_one_line() throws Exception {
    Path euros = folder.resolve("euros.json");
    String file = Files.readString(BOATYARD);
    assertThat(file).contains("\"currency\": \"USD\"");
    Files.writeString(euros, file.replace("\"currency\": \"USD\"", "\"currency\": \"EUR\""));
    for (Told told : List.of(
        run("shop", euros.toString(), "USD"), run("shop", BOATYARD.toString(), "DOLLARS"))) {
      assertThat(told.code()).isEqualTo(2);
      assertThat(told.err().lines()).hasSize(1);
      assertThat(told.err()).contains("currency must be ");
    }
    assertThat(run("shop", BOATYARD.toString(), "USD").code()).isZero();
    Told other = run("shop", euros.toString(), "EUR");
    assertThat(other.code()).isEqualTo(2);
    assertThat(other.err().lines()).hasSize(1);
    assertThat(other.err()).contains("must be USD as that of the prices that are there, was EUR");
  }

  @Test
  void a_table_with_rejects_ends_with_1_and_one_that_is_not_there_with_2() throws Exception {
    assertThat(run("shop", BOATYARD.toString(), "USD").code()).isZero();
    Path table = folder.resolve("articles.csv");
    Files.writeString(
        table, "kind,id,name,price,quantity\ndrain,D-1,Drain,4,5\ndrain,D-2,Drain,-4,5\n");
    Told some = run("load", table.toString());
    assertThat(some.code()).isEqualTo(1);
    assertThat(some.out())
        .contains("2 rows in, 1 stored, 1 rejected")
        .contains("\"was \"\"-4\"\"; accepted: an amount from 0 to below 100000000 with a point");
    assertThat(some.err().strip())
        .isEqualTo("1 of 2 rows of articles.csv were not stored, the others were; mend them as the"
            + " list above says, and load the file again.");
    Path rejects = folder.resolve("rejects.csv");
    assertThat(run("load", table.toString(), rejects.toString()).err())
        .contains("mend them as " + rejects + " says");
    Told itself = run("load", table.toString(), table.toString());
    assertThat(itself.code()).isEqualTo(2);
    Told none = run("load", folder.resolve("nofile.csv").toString());
    assertThat(none.code()).isEqualTo(2);
    assertThat(none.err())
        .contains("nofile.csv: there is no such file; give the path of a table of articles")
        .hasLineCount(1);
    Told all =
        run("load", Files.writeString(table, "kind,id,name\ndrain,D-1,Drain\n").toString());
    assertThat(all.code()).isZero();
    assertThat(all.err()).isEmpty();
  }

  @Test
  void where_the_rejects_cannot_be_written_nothing_is_stored() throws Exception {
    assertThat(run("shop", BOATYARD.toString(), "USD").code()).isZero();
    Path table = folder.resolve("articles.csv");
    Files.writeString(table, "kind,id,name,price\ndrain,N-1,Drain,4\ndrain,N-2,Drain,-4\n");
    Path nowhere = folder.resolve("nowhere").resolve("rejects.csv");
    for (Path rejects : List.of(nowhere, folder)) {
      Told told = run("load", table.toString(), rejects.toString());
      assertThat(told.code()).isEqualTo(2);
      assertThat(told.err())
          .startsWith(rejects + ": the list of rejects cannot be written there; give the path of")
          .endsWith("Nothing was stored.\n")
          .hasLineCount(1);
    }
    assertThat(isStored("N-1")).isFalse();
    Path before = Files.writeString(folder.resolve("rejects.csv"), "of before");
    assertThat(run("load", folder.resolve("none.csv").toString(), before.toString())
            .code())
        .isEqualTo(2);
    assertThat(before).hasContent("of before");
    Path full = Path.of("/dev/full"); // it opens, and is no file to write
    if (Files.exists(full)) {
      Told told = run("load", table.toString(), full.toString());
      assertThat(told.code()).isEqualTo(1);
      assertThat(told.out()).contains("2 rows in, 1 stored, 1 rejected").contains("\n3,price,");
      assertThat(told.err()).contains("mend them as the list above says");
      assertThat(isStored("N-1")).isTrue();
    }
  }

  private boolean isStored(String number) throws Exception {
    try (Database database = Database.open(Database.embedded(folder.resolve("stock")))) {
      return Stock.toTable(Stock.of(database, Clock.systemUTC()).catalogueFile())
          .contains("," + number + ",");
    }
  }

  @Test
  void a_wrong_word_makes_no_database() {
    for (List<String> words : List.of(
        List.<String>of(),
        List.of("frobnicate"),
        List.of("load"),
        List.of("serve", "--port", "1x"),
        List.of("serve", "--page", folder.resolve("none.html").toString()))) {
      Told refused = run(words.toArray(String[]::new));
      assertThat(refused.code()).isEqualTo(2);
      assertThat(refused.err()).isNotEmpty();
      assertThat(folder.resolve("stock")).doesNotExist();
    }
    assertThat(run("serve", "--page", "none.html").err().strip())
        .startsWith("page must be a file that is there, such as airfit-served.html")
        .endsWith("was none.html");
  }

  @Test
  void help_tells_every_command_and_option_and_the_version_stands_in_one_line() {
    Told help = run("help");
    assertThat(help.code()).isZero();
    assertThat(help.err()).isEmpty();
    assertThat(run("--help")).isEqualTo(help);
    assertThat(run("load", "-h")).isEqualTo(help);
    assertThat(help.out())
        .contains("\n  shop CATALOGUE.json CURRENCY\n", "\n  load ARTICLES.csv [REJECTS.csv]\n")
        .contains("\n  serve\n", "\n  measure\n")
        .contains("--database URL", "--address IP", "--port N", "--page FILE", "AIRFIT_TOKEN");
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    PrintStream print = new PrintStream(out, true, StandardCharsets.UTF_8);
    assertThat(Main.run(new String[] {"--version"}, null, print, print)).isZero();
    assertThat(out.toString(StandardCharsets.UTF_8)).matches("airfit-counter [0-9]\\S*\\R");
  }

  @Test
  void a_wrong_call_is_told_in_one_line() {
    for (List<String> words : List.of(
        List.<String>of(),
        List.of("frobnicate"),
        List.of("load"),
        List.of("shop", "a.json"),
        List.of("measure", "all"),
        List.of("--slow"),
        List.of("-s"))) {
      Told refused = run(words.toArray(String[]::new));
      assertThat(refused.code()).isEqualTo(2);
      assertThat(refused.out()).isEmpty();
      assertThat(refused.err().lines()).as("%s", words).hasSize(1);
      assertThat(refused.err()).contains("--help tells");
    }
  }

  @Test
  void without_a_shop_nothing_is_served() {
    Told refused = run("serve", "--port", "0");
    assertThat(refused.code()).isEqualTo(2);
    assertThat(refused.err().strip())
        .isEqualTo("database must hold a shop to be served, holds none; tell it first:"
            + " airfit-counter shop CATALOGUE.json CURRENCY");
  }

  @Test
  void what_another_process_has_open_is_told_with_what_to_do() throws Exception {
    assertThat(run("shop", BOATYARD.toString(), "USD").code()).isZero();
    Path table = folder.resolve("articles.csv");
    Files.writeString(table, "kind,id,name\ndrain,D-1,Drain\n");
    Path file = folder.resolve("stock").resolve("stock.mv.db");
    try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE);
        FileLock lock = channel.lock()) { // as another process holds it
      assertThat(lock.isValid()).isTrue();
      Told refused = run("load", table.toString());
      assertThat(refused.code()).isEqualTo(2);
      assertThat(refused.err().strip())
          .isEqualTo(
              "the database cannot be opened: another process has it open, such as a service that runs; stop"
                  + " that, do this, and start it again. PostgreSQL lets several in at once.");
    }
    assertThat(run("load", table.toString()).code()).isZero();
  }

  @Test
  void what_is_measured_is_never_the_shop() throws Exception {
    assertThat(run("shop", BOATYARD.toString(), "USD").code()).isZero();
    Told refused = run("measure");
    assertThat(refused.code()).isEqualTo(2);
    assertThat(refused.err()).contains("database must be an empty one to measure in, has a shop");
    try (Database database = Database.open(Database.embedded(folder.resolve("stock")))) {
      assertThat(Stock.of(database, Clock.systemUTC()).catalogue().parts().part("M-0"))
          .isEmpty();
    }
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    int code = Main.run(
        new String[] {"measure"},
        null,
        1000,
        new PrintStream(out, true, StandardCharsets.UTF_8),
        System.err);
    assertThat(code).isZero();
    assertThat(out.toString(StandardCharsets.UTF_8)).contains("read as one catalogue: 1000 parts");
    assertThat(Path.of("airfit-stock.mv.db")).doesNotExist();
    assertThat(Path.of("airfit-stock")).doesNotExist();
  }
}
