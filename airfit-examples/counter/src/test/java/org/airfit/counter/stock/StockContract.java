package org.airfit.counter.stock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;

import java.io.StringReader;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import org.airfit.files.CatalogueFile;
import org.airfit.files.Csv;
import org.airfit.files.Disk;
import org.airfit.files.Document;
import org.airfit.files.JobFile;
import org.airfit.files.ShopCatalogue;
import org.airfit.files.WrongFileException;
import org.airfit.files.kept.AnswerComparison;
import org.airfit.files.kept.KeptAnswer;
import org.airfit.plug.ReferenceSet;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Money;
import org.airfit.select.Part;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a stock promises, whichever database keeps it. */
abstract class StockContract {

  private static final int CLERKS = 200;

  private Database database;

  /** A database without tables. */
  abstract Database opened() throws Exception;

  @BeforeEach
  void open() throws Exception {
    database = opened();
  }

  @AfterEach
  void close() {
    if (database != null) {
      database.close();
    }
  }

  @Test
  void a_row_is_the_part_that_the_catalogue_file_has() throws Exception {
    int articles = 0;
    for (String shop : List.of("boatyard", "quarry-road", "quay-street")) {
      Path file = Shops.JOBS.resolve(shop).resolve("catalogue.json");
      ShopCatalogue expected = Disk.catalogue(file);
      Map<String, Object> fields = Shops.fields(file);
      Stock stock = Shops.described(database, file);

      LoadReport report = Shops.load(stock, Stock.toTable(fields));

      assertThat(report.rejects()).isEmpty();
      articles += report.stored();
      ShopCatalogue read = stock.catalogue();
      assertThat(read.name()).isEqualTo(expected.name());
      assertThat(read.parts()).isEqualTo(expected.parts());
      assertThat(read.profiles().profiles()).isEqualTo(expected.profiles().profiles());
      assertThat(read.remarks()).hasSameSizeAs(expected.remarks());
      // The file that a page gets is the same catalogue too, and needs no other file beside it.
      ShopCatalogue page = CatalogueFile.read(Document.of("page", stock.catalogueFile()));
      assertThat(page.parts()).isEqualTo(expected.parts());
      assertThat(page.profiles().profiles()).isEqualTo(expected.profiles().profiles());
      close();
      database = opened();
    }
    assertThat(articles).isGreaterThan(100);
  }

  @Test
  void a_kind_is_stored_as_a_catalogue_file_writes_it() throws Exception {
    Stock stock = Shops.boatyard(database);
    LoadReport report = Shops.load(stock, """
        kind,id,name,quantity,profile,end
        Plug,P-1,Plug,3,gannet,1/4 NPT male
        DRAIN,D-1,Drain,3,,
        """);
    assertThat(report.rejects()).isEmpty();
    assertThat(Stock.toTable(stock.catalogueFile())).contains("plug,P-1,").contains("drain,D-1,");
    assertThat(suitable("kind IN ('plug', 'drain')"))
        .extracting(Suitable::number)
        .containsExactly("D-1", "P-1");
  }

  /** A row that cannot be stored takes nothing: not the id either. */
  @Test
  void an_id_of_a_rejected_row_is_free_for_a_row_below() throws Exception {
    Stock stock = Shops.boatyard(database);
    String bad = "socket,S-1,no rating,1.00,1,gannet,3/8 NPT female,Cv 1.4,10 mm\n";
    LoadReport report = Shops.load(
        stock,
        Shops.HEADING
            + bad
            + Shops.socket("S-2", "other", "1.00", "3")
            + bad
            + Shops.socket("S-1", "good", "2.00", "3")
            + Shops.socket("S-1", "too late", "3.00", "3")
            + Shops.socket("S-2", "twice", "1.00", "3"));
    assertThat(report.stored()).isEqualTo(2);
    assertThat(report.rejects()).extracting(Reject::row).containsExactly(2L, 4L, 6L, 7L);
    assertThat(report.rejects())
        .extracting(Reject::column)
        .containsExactly("rated", "rated", "id", "id");
    assertThat(report.rejects().get(2).reason())
        .startsWith("stands in row 5 too, which was taken;");
    assertThat(report.rejects().get(3).reason())
        .startsWith("stands in row 3 too, which was taken;");
    assertThat(stock.catalogue().parts().part("S-1").orElseThrow().name()).isEqualTo("good");
  }

  @Test
  void each_reject_names_row_column_value_and_reason() throws Exception {
    Stock stock = Shops.boatyard(database);
    String table = Shops.HEADING
        + Shops.socket("S-1", "good", "12.50", "3")
        + "\n"
        + Shops.socket("S-2", "price with a comma", "\"12,50\"", "3")
        + Shops.socket("S-3", "five decimals", "1.00005", "3")
        + Shops.socket("S-4", "half a piece", "1.00", "0.5")
        + Shops.socket("S-1", "twice", "1.00", "1")
        + "sokcet,S-6,misspelt,1.00,1,gannet,3/8 NPT female,Cv 1.4,16 bar(g)\n"
        + "socket,S-7,unknown profile,1.00,1,ganet,3/8 NPT female,Cv 1.4,16 bar(g)\n"
        + "socket,S-8,no unit,1.00,1,gannet,3/8 NPT female,Cv 1.4,16\n"
        + "socket,S-9,no end,1.00,1,gannet,,Cv 1.4,16 bar(g)\n"
        + "socket,S-10,long row,1.00,1,gannet,3/8 NPT female,Cv 1.4,16 bar(g),more\n"
        + "socket,S-11,short row\n"
        + ",S-12,no kind,1.00,1,gannet,3/8 NPT female,Cv 1.4,16 bar(g)\n"
        + Shops.socket("S-13", "minus", "-1.00", "1")
        + Shops.socket("S-14", "steers \u001b[2J", "1.00", "1")
        + Shops.socket("S-15", "n".repeat(401), "1.00", "1")
        + Shops.socket("S-16", "good too", "", "");

    LoadReport report = Shops.load(stock, table);

    assertThat(report.rowsIn()).isEqualTo(16);
    assertThat(report.stored()).isEqualTo(2);
    assertThat(report.rejects())
        .extracting(Reject::row, Reject::column, Reject::value)
        .containsExactly(
            tuple(4L, "price", "12,50"),
            tuple(5L, "price", "1.00005"),
            tuple(6L, "quantity", "0.5"),
            tuple(7L, "id", "S-1"),
            tuple(8L, "kind", "sokcet"),
            tuple(9L, "takes", "ganet"),
            tuple(10L, "rated", "16"),
            tuple(11L, "end", ""),
            tuple(12L, "", ""),
            tuple(13L, "", ""),
            tuple(14L, "kind", ""),
            tuple(15L, "price", "-1.00"),
            tuple(16L, "name", "steers \u001b[2J"),
            tuple(17L, "name", "n".repeat(401)));
    assertThat(report.rejects())
        .allSatisfy(reject -> assertThat(reject.reason()).isNotBlank());
    assertThat(report.rejects().get(5).reason()).contains("accepted: tern, gannet, skua");
    assertThat(report.rejects().get(6).reason()).contains("the unit is missing");
    assertThat(report.toCsv().lines()).hasSize(15);
    assertThat(report.toCsv()).startsWith("row,column,value,reason\n4,price,\"12,50\",");
    assertThat(report.toCsv().chars().filter(c -> c == 0x1b)).isEmpty();
    assertThat(stock.catalogue().parts().parts()).extracting("id").containsExactly("S-1", "S-16");
  }

  @Test
  void a_report_of_rejects_computes_nothing_in_a_spreadsheet() throws Exception {
    String table = Shops.HEADING
        + Shops.socket("=1+1", "good", "=HYPERLINK(1)", "3")
        + Shops.socket("S-2", "good", "@SUM(A1)", "3")
        + Shops.socket("S-3", "good", "-1+2", "3")
        + Shops.socket("S-4", "good", "-1.00", "3");
    LoadReport report = Shops.load(Shops.boatyard(database), table);
    assertThat(Csv.read("rejects.csv", report.toCsv()))
        .extracting(row -> row.get(2))
        .containsExactly("value", "'=HYPERLINK(1)", "'@SUM(A1)", "'-1+2", "-1.00");
    assertThat(report.rejects()).extracting(Reject::value).contains("=HYPERLINK(1)");
  }

  @Test
  void of_a_table_that_cannot_be_read_nothing_is_stored(@TempDir Path folder) throws Exception {
    Stock stock = Shops.boatyard(database);
    String good = Shops.socket("S-1", "good", "12.50", "3");
    Map<String, String> tables = new LinkedHashMap<>();
    tables.put(
        Shops.HEADING + good + "socket,S-2,\"never closed,1.00,1\n" + good, "quotation mark");
    tables.put("knd,id,name\n" + good, "\"knd\" is no column here; accepted: kind, id");
    tables.put("kind,id,name,id\nsocket,a,b,c\n", "column id stands twice");
    tables.put("id,name\na,b\n", "column kind is missing");
    tables.put("\n\n", "is empty");
    tables.forEach((table, complaint) -> assertThatThrownBy(() -> Shops.load(stock, table))
        .isInstanceOf(WrongFileException.class)
        .hasMessageContaining(complaint));
    Path latin = folder.resolve("latin.csv");
    Files.write(
        latin,
        (Shops.HEADING + Shops.socket("S-1", "Düse", "1", "1"))
            .getBytes(StandardCharsets.ISO_8859_1));
    assertThatThrownBy(() -> stock.load(latin))
        .isInstanceOf(WrongFileException.class)
        .hasMessageContaining("is not text in UTF-8");
    assertThat(stock.catalogue().parts().parts()).isEmpty();
    assertThat(stock.version()).isEqualTo(1);
  }

  @Test
  void semicolons_and_a_byte_order_mark_are_read_too() throws Exception {
    Stock stock = Shops.boatyard(database);
    LoadReport report = Shops.load(
        stock,
        "\ufeff" + (Shops.HEADING + Shops.socket("S-1", "one", "12.50", "3")).replace(',', ';'));
    assertThat(report.stored()).isEqualTo(1);
  }

  /** A comma in the heading of a column that is passed over parts nothing. */
  @Test
  void what_the_heading_has_more_of_parts_the_cells() throws Exception {
    LoadReport report = Shops.load(
        Shops.boatyard(database), "kind;id;name;//shelf, row\ndrain;D-1;Drain, small;3, 4\n");
    assertThat(report.rejects()).isEmpty();
    assertThat(report.stored()).isEqualTo(1);
  }

  @Test
  void sql_in_a_text_is_a_text() throws Exception {
    Stock stock = Shops.boatyard(database);
    String evil = "x'); DROP TABLE article; -- \\ ? {d '1'} $$";
    Shops.load(stock, Shops.HEADING + Shops.socket(evil.replace(";", "."), evil, "1", "2"));
    assertThat(stock.catalogue().parts().parts()).extracting("name").containsExactly(evil);
    Shelf shelf = Shelf.of(database, Shops.NOON);
    assertThat(shelf.level(evil)).isEmpty();
    assertThat(shelf.level(evil.replace(";", ".")).orElseThrow().available()).isEqualTo(2);
    assertThat(shelf.reserve(evil, Map.of(evil.replace(";", "."), 1)))
        .isInstanceOf(ReserveAnswer.Held.class);
    assertThat(shelf.find(evil)).isPresent();
  }

  @Test
  void a_second_table_replaces_what_it_tells_and_keeps_the_rest() throws Exception {
    Stock stock = Shops.boatyard(database);
    Shelf shelf = Shelf.of(database, Shops.NOON);
    Shops.load(
        stock,
        Shops.HEADING
            + Shops.socket("S-1", "one", "1.00", "5")
            + Shops.socket("S-2", "two", "2.00", "5")
            + Shops.socket("S-3", "three", "3.00", "5"));
    shelf.reserve("job", Map.of("S-2", 4, "S-3", 1));
    long before = stock.version();

    LoadReport report = Shops.load(
        stock,
        Shops.HEADING
            + Shops.socket("S-4", "four", "4.00", "1")
            + Shops.socket("S-3", "three", "3.33", "")
            + Shops.socket("S-2", "zwei", "", "3"));

    assertThat(report.stored()).isEqualTo(3);
    assertThat(stock.version()).isEqualTo(before + 1);
    assertThat(stock.catalogue().parts().parts())
        .extracting("name")
        .containsExactly("one", "zwei", "three", "four");
    assertThat(stock.catalogue().parts().part("S-2").orElseThrow().facts().price())
        .isEmpty();
    assertThat(shelf.level("S-2")).contains(new StockLevel("S-2", 3, 4));
    assertThat(shelf.level("S-2").orElseThrow().available()).isZero();
    assertThat(shelf.level("S-3")).contains(new StockLevel("S-3", 5, 1));
  }

  /** What says the same is not written; everything else is, whichever field it is in. */
  @Test
  void a_row_that_differs_anywhere_is_written() throws Exception {
    Stock stock = Shops.boatyard(database);
    String heading = "kind,id,name,price,cost,quantity,takes,end,capacity,rated,material,vented\n";
    String row =
        "socket,S-1,one,1.00,0.50,5,tern | gannet,1/4 NPT male,Cv 1.2,10 bar(g),brass,yes\n";
    Shops.load(stock, heading + row);
    for (String[] change : new String[][] {
      {",one,", ",other,"},
      {"1.00", "1.0001"},
      {"0.50", ""},
      {",5,", ",6,"},
      {"tern | gannet", "gannet | tern"},
      {"tern | gannet", "tern"},
      {"1/4 NPT male", "3/8 NPT male"},
      {"10 bar(g)", "12 bar(g)"},
      {"10 bar(g)", ""},
      {"brass", "steel"},
      {"yes", "no"},
      {"yes", ""}
    }) {
      String changed = row.replace(change[0], change[1]);
      assertThat(Shops.load(stock, heading + changed).stored()).isEqualTo(1);
      try (Database twin = opened()) {
        Stock fresh = Shops.boatyard(twin);
        Shops.load(fresh, heading + changed);
        assertThat(stock.catalogueFile().get("parts"))
            .as(change[0] + " to " + change[1])
            .isEqualTo(fresh.catalogueFile().get("parts"));
        assertThat(Shelf.of(database, Shops.NOON).level("S-1"))
            .isEqualTo(Shelf.of(twin, Shops.NOON).level("S-1"));
      }
      Shops.load(stock, heading + row);
    }
  }

  @Test
  void money_is_exact() throws Exception {
    Stock stock = Shops.boatyard(database);
    Shops.load(
        stock,
        Shops.HEADING
            + Shops.socket("S-1", "one", "0.1", "1")
            + Shops.socket("S-2", "two", "0.2", "1")
            + Shops.socket("S-3", "three", "99999999.9999", "1"));
    List<Money> prices = stock.catalogue().parts().parts().stream()
        .map(part -> part.facts().price().orElseThrow())
        .toList();
    assertThat(prices.get(0).plus(prices.get(1))).isEqualTo(Money.parse("0.3 USD"));
    assertThat(prices.get(2)).isEqualTo(Money.parse("99999999.9999 USD"));
  }

  @Test
  void profiles_that_an_article_needs_cannot_be_taken_away() throws Exception {
    Stock stock = Shops.boatyard(database);
    Shops.load(stock, Shops.HEADING + Shops.socket("S-1", "one", "1.00", "5"));
    ShopCatalogue other =
        Disk.catalogue(Shops.JOBS.resolve("quay-street").resolve("catalogue.json"));
    assertThatThrownBy(() -> stock.describe("other", Optional.of("USD"), other.profiles()))
        .isInstanceOf(WrongFileException.class)
        .hasMessageContaining("gannet");
    assertThatThrownBy(() -> stock.describe("other", Optional.empty(), stock.profiles()))
        .isInstanceOf(WrongFileException.class)
        .hasMessageContaining("currency");
    assertThat(stock.catalogue().name()).isNotEqualTo("other");
  }

  @Test
  void prices_are_never_told_in_another_currency() throws Exception {
    Stock stock = Shops.boatyard(database);
    assertThatThrownBy(() -> stock.describe("x", Optional.of("DOLLARS"), stock.profiles()))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("currency must be a code of ISO 4217 such as EUR or USD, was \"DOLLARS\"");
    stock.describe("no prices yet", Optional.of("EUR"), stock.profiles());
    Shops.load(stock, "kind,id,name,cost\ndrain,D-1,one,1\n");
    assertThatThrownBy(() -> stock.describe("other", Optional.of("USD"), stock.profiles()))
        .isInstanceOf(WrongFileException.class)
        .hasMessageContaining("must be EUR as that of the prices that are there, was USD");
    stock.describe("the same", Optional.of("EUR"), stock.profiles());
    assertThat(stock.catalogueFile())
        .containsEntry("currency", "EUR")
        .containsEntry("catalogue", "the same");
  }

  @Test
  void a_measured_set_is_kept_to_the_last_bit() throws Exception {
    ReferenceSet set = Disk.referenceSet(Path.of("..", "sets", "workshop.csv"));
    Stock stock = Stock.of(database, Shops.NOON);
    stock.describe("workshop", Optional.empty(), set);
    assertThat(stock.profiles()).isEqualTo(set);
    assertThat(stock.catalogue().profiles()).isEqualTo(set);
    assertThat(CatalogueFile.read(Document.of("page", stock.catalogueFile()))
            .profiles()
            .profiles())
        .isEqualTo(set.profiles());
  }

  @Test
  void a_currency_column_must_be_that_of_the_shop() throws Exception {
    Stock stock = Shops.boatyard(database);
    LoadReport report = stock.load(
        "stock.csv",
        new StringReader(
            "kind,id,name,price,currency,//\ndrain,D-1,one,1,USD,x\ndrain,D-2,two,1,EUR,y\n"));
    assertThat(report.stored()).isEqualTo(1);
    assertThat(report.rejects())
        .extracting(Reject::row, Reject::column, Reject::value)
        .containsExactly(tuple(3L, "currency", "EUR"));
  }

  @Test
  void whoever_is_interrupted_is_answered_and_the_database_stays_open() throws Exception {
    Stock stock = Shops.boatyard(database);
    String table = Shops.HEADING + Shops.socket("S-1", "one", "12.50", "3");
    LoadReport report;
    long version;
    Thread.currentThread().interrupt();
    try {
      report = Shops.load(stock, table);
      version = stock.version();
    } finally {
      assertThat(Thread.interrupted()).as("the thread stays interrupted").isTrue();
    }
    assertThat(report.stored()).isEqualTo(1);
    assertThat(stock.version()).isEqualTo(version);
    assertThat(stock.catalogue().parts().parts()).hasSize(1);
  }

  @Test
  void of_200_clerks_as_many_get_a_piece_as_there_are_pieces() throws Exception {
    Stock stock = Shops.boatyard(database);
    Shelf shelf = Shelf.of(database, Shops.NOON);
    int pieces = 37;
    Shops.load(
        stock,
        Shops.HEADING
            + Shops.socket("S-1", "one", "1.00", String.valueOf(pieces))
            + Shops.socket("S-2", "two", "2.00", String.valueOf(CLERKS))
            + Shops.socket("S-3", "three", "2.00", "1"));
    // Each wants two articles, in no common order; the first of them is scarce.
    List<ReserveAnswer> answers = together(clerk -> {
      Map<String, Integer> wanted = new LinkedHashMap<>();
      wanted.put(clerk % 2 == 0 ? "S-1" : "S-2", 1);
      wanted.put(clerk % 2 == 0 ? "S-2" : "S-1", 1);
      return shelf.reserve("clerk " + clerk, wanted);
    });

    assertThat(answers).filteredOn(ReserveAnswer.Held.class::isInstance).hasSize(pieces);
    assertThat(answers)
        .filteredOn(ReserveAnswer.TooFew.class::isInstance)
        .hasSize(CLERKS - pieces)
        .allSatisfy(answer -> assertThat(((ReserveAnswer.TooFew) answer).shortages())
            .containsExactly(new ReserveAnswer.Shortage("S-1", 1, Optional.of(0))));
    assertThat(shelf.level("S-1")).contains(new StockLevel("S-1", pieces, pieces));
    assertThat(shelf.level("S-2")).contains(new StockLevel("S-2", CLERKS, pieces));

    // The last piece, by two hundred at once.
    assertThat(together(clerk -> shelf.reserve("last " + clerk, Map.of("S-3", 1))))
        .filteredOn(ReserveAnswer.Held.class::isInstance)
        .hasSize(1);
    assertThat(shelf.level("S-3")).contains(new StockLevel("S-3", 1, 1));

    // Half of those held are sold, the others released, each of them twice at once.
    List<Reservation> ended = together(clerk -> {
      int which = clerk / 2;
      return (which % 2 == 0 ? shelf.sell("clerk " + which) : shelf.release("clerk " + which))
          .orElse(new Reservation("none", Reservation.State.HELD, Map.of()));
    });
    assertThat(ended).hasSize(CLERKS);
    long sold = 0;
    long held = 0;
    for (int clerk = 0; clerk < CLERKS; clerk++) {
      Optional<Reservation> reservation = shelf.find("clerk " + clerk);
      if (reservation.isPresent()) {
        sold += reservation.get().state() == Reservation.State.SOLD ? 1 : 0;
        held += reservation.get().state() == Reservation.State.HELD ? 1 : 0;
      }
    }
    assertThat(shelf.level("S-1")).contains(new StockLevel("S-1", pieces - (int) sold, (int) held));
    assertThat(shelf.level("S-2")).contains(new StockLevel("S-2", CLERKS - (int) sold, (int) held));
  }

  @Test
  void what_is_asked_twice_is_held_once() throws Exception {
    Stock stock = Shops.boatyard(database);
    Shelf shelf = Shelf.of(database, Shops.NOON);
    Shops.load(stock, Shops.HEADING + Shops.socket("S-1", "one", "1.00", "500"));

    List<ReserveAnswer> answers = together(clerk -> shelf.reserve("same", Map.of("S-1", 2)));

    assertThat(answers)
        .allSatisfy(answer -> assertThat(answer).isInstanceOf(ReserveAnswer.Held.class));
    assertThat(answers)
        .filteredOn(answer -> answer instanceof ReserveAnswer.Held held && held.isNew())
        .hasSize(1);
    assertThat(shelf.level("S-1")).contains(new StockLevel("S-1", 500, 2));
    assertThat(shelf.reserve("same", Map.of("S-1", 3)))
        .isInstanceOf(ReserveAnswer.ReferenceTaken.class);
    assertThat(shelf.sell("same").orElseThrow().state()).isEqualTo(Reservation.State.SOLD);
    assertThat(shelf.release("same").orElseThrow().state()).isEqualTo(Reservation.State.SOLD);
    assertThat(shelf.level("S-1")).contains(new StockLevel("S-1", 498, 0));
    assertThat(shelf.sell("never made")).isEmpty();
  }

  /** PostgreSQL refuses NUL, and made a question mark of each half of a sign: two references were one. */
  @Test
  void what_a_database_would_change_is_no_reference_and_no_number() throws Exception {
    Stock stock = Shops.described(database, Shops.JOBS.resolve("boatyard/catalogue.json"));
    Shops.load(stock, "kind,id,name,quantity\ndrain,D-1,Drain,5\n");
    Shelf shelf = Shelf.of(database, Shops.NOON);
    for (String text : List.of("\ud800", "a\udbff", "\udc00\ud800", "b\0")) {
      assertThatThrownBy(() -> shelf.reserve(text, Map.of("D-1", 1)))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessageStartingWith("reference must be text that can be stored");
      assertThat(shelf.reserve("r", Map.of(text, 1))).isInstanceOf(ReserveAnswer.TooFew.class);
      assertThat(shelf.find(text)).isEmpty();
      assertThat(shelf.sell(text)).isEmpty();
      assertThat(shelf.level(text)).isEmpty();
      assertThat(KeptAnswers.of(database).find(text)).isEmpty();
      LoadReport report = Shops.load(stock, "kind,id,name\ndrain,D-2,x" + text + "\ndrain,D-3,y\n");
      assertThat(report.stored()).isEqualTo(1);
      assertThat(report.rejects()).singleElement().returns("name", Reject::column);
    }
    assertThat(shelf.level("D-1").orElseThrow().reserved()).isZero();
    String sign = "\ud83d\ude00";
    assertThat(shelf.reserve(sign, Map.of("D-1", 1))).isInstanceOf(ReserveAnswer.Held.class);
    assertThat(shelf.find(sign)).isPresent();
  }

  @Test
  void a_reservation_is_all_or_nothing() throws Exception {
    Stock stock = Shops.boatyard(database);
    Shelf shelf = Shelf.of(database, Shops.NOON);
    Shops.load(
        stock,
        Shops.HEADING
            + Shops.socket("S-1", "one", "1.00", "5")
            + Shops.socket("S-2", "two", "1.00", "2"));
    assertThat(shelf.reserve("job", Map.of("S-1", 1, "S-2", 3, "S-9", 1)))
        .isEqualTo(new ReserveAnswer.TooFew(List.of(
            new ReserveAnswer.Shortage("S-2", 3, Optional.of(2)),
            new ReserveAnswer.Shortage("S-9", 1, Optional.empty()))));
    assertThat(shelf.level("S-1")).contains(new StockLevel("S-1", 5, 0));
    assertThat(shelf.find("job")).isEmpty();
    assertThat(shelf.reserve("job", Map.of("S-1", 5))).isInstanceOf(ReserveAnswer.Held.class);
    assertThatThrownBy(() -> shelf.reserve(" ", Map.of("S-1", 1)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("reference must not be blank, was \" \"; give 1 to 100 letters");
    assertThatThrownBy(() -> shelf.reserve("x", Map.of("S-1", 0)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("pieces of S-1 must be in [1, 1000000], were 0");
    assertThatThrownBy(() -> shelf.reserve("x", Map.of()))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("pieces must be of 1 to 1000 articles, were of 0");
  }

  private record Suitable(
      String number,
      @Nullable String profile,
      @Nullable Double ratedBar,
      BigDecimal price,
      int available) {}

  private List<Suitable> suitable(String where) throws Exception {
    return database.read(connection -> {
      List<Suitable> rows = new ArrayList<>();
      try (PreparedStatement find = connection.prepareStatement(
              "SELECT number, profile, rated_bar, price, available FROM suitable_parts WHERE "
                  + where + " ORDER BY number, profile");
          ResultSet row = find.executeQuery()) {
        while (row.next()) {
          double bar = row.getDouble(3);
          @Nullable Double rated = row.wasNull() ? null : bar;
          rows.add(new Suitable(
              row.getString(1), row.getString(2), rated, row.getBigDecimal(4), row.getInt(5)));
        }
      }
      return rows;
    });
  }

  private void execute(String sql) throws Exception {
    database.change(connection -> {
      try (PreparedStatement change = connection.prepareStatement(sql)) {
        return change.executeUpdate();
      }
    });
  }

  /** To the last bit, for every article of the examples: the library reads the text, SQL only keeps the number. */
  @Test
  void the_highest_pressure_in_sql_is_that_of_the_library() throws Exception {
    int rated = 0;
    for (String shop : List.of("boatyard", "quarry-road", "quay-street")) {
      Path file = Shops.JOBS.resolve(shop).resolve("catalogue.json");
      ShopCatalogue expected = Disk.catalogue(file);
      Map<String, Object> fields = Shops.fields(file);
      Stock stock = Shops.described(database, file);
      Shops.load(stock, Stock.toTable(fields));
      execute("UPDATE article SET quantity = 3");
      Map<String, @Nullable Double> inSql = new LinkedHashMap<>();
      suitable("number IS NOT NULL").forEach(row -> inSql.put(row.number(), row.ratedBar()));
      for (Part part : expected.parts().parts()) {
        if (part.facts().isExisting()) {
          assertThat(inSql).doesNotContainKey(part.id());
        } else {
          assertThat(inSql).as(part.id()).containsKey(part.id());
          @Nullable Double told = inSql.get(part.id());
          assertThat(Optional.ofNullable(told))
              .as(part.id())
              .isEqualTo(part.facts().rating().map(GaugePressure::bar));
          rated += told == null ? 0 : 1;
        }
      }
      close();
      database = opened();
    }
    assertThat(rated).isGreaterThan(60);
  }

  @Test
  void suitable_is_what_is_there_and_free_to_be_sold() throws Exception {
    Stock stock = Shops.boatyard(database);
    Shelf shelf = Shelf.of(database, Shops.NOON);
    LoadReport report = Shops.load(stock, """
        kind,id,name,price,quantity,takes,profile,end,capacity,rated,alreadyThere
        socket,S-1,one,12.50,5,gannet | tern,,3/8 NPT female,Cv 1.4,10 bar(g),
        socket,S-2,none there,12.50,0,gannet,,3/8 NPT female,Cv 1.4,16 bar(g),
        socket,S-3,all held,12.50,2,gannet,,3/8 NPT female,Cv 1.4,16 bar(g),
        socket,S-4,the customer's,,1,gannet,,3/8 NPT female,Cv 1.4,16 bar(g),yes
        plug,P-1,unrated,3.10,4,,gannet,1/4 NPT male,,,no
        plug,P-2,in psi,3.10,4,,gannet,1/4 NPT male,,300 psig,
        drain,D-1,no profile,9.00,1,,,,,,
        """);
    assertThat(report.rejects()).isEmpty();
    shelf.reserve("held", Map.of("S-3", 2, "P-1", 1));
    BigDecimal socket = new BigDecimal("12.5000");
    BigDecimal plug = new BigDecimal("3.1000");
    double psi300 = GaugePressure.parse("300 psig").bar();

    assertThat(suitable("kind IN ('socket', 'plug')"))
        .containsExactly(
            new Suitable("P-1", "gannet", null, plug, 3),
            new Suitable("P-2", "gannet", psi300, plug, 4),
            new Suitable("S-1", "gannet", 10.0, socket, 5),
            new Suitable("S-1", "tern", 10.0, socket, 5));
    assertThat(suitable("currency = 'USD' AND kind = 'drain'"))
        .extracting(Suitable::number)
        .containsExactly("D-1");
    // What is not known is no reason to leave it out, and no reason to take it: the question says
    // which.
    assertThat(suitable("profile = 'gannet' AND rated_bar >= 12"))
        .extracting(Suitable::number)
        .containsExactly("P-2");
    assertThat(suitable("profile = 'gannet' AND (rated_bar >= 12 OR rated_bar IS NULL)"))
        .extracting(Suitable::number)
        .containsExactly("P-1", "P-2");
  }

  @Test
  void a_rating_that_sql_wrote_over_has_no_number_until_it_is_read_again() throws Exception {
    Stock stock = Shops.boatyard(database);
    String table = Shops.HEADING + Shops.socket("S-1", "one", "12.50", "5");
    Shops.load(stock, table);
    assertThat(suitable("number = 'S-1'").get(0).ratedBar()).isEqualTo(16.0);
    execute("UPDATE article SET rated = '7 bar(g)' WHERE number = 'S-1'");
    assertThat(suitable("number = 'S-1'").get(0).ratedBar()).isNull();
    Shops.load(stock, table.replace("16 bar(g)", "7 bar(g)"));
    assertThat(suitable("number = 'S-1'").get(0).ratedBar()).isEqualTo(7.0);
    Shops.load(stock, table.replace("16 bar(g)", ""));
    assertThat(suitable("number = 'S-1'").get(0).ratedBar()).isNull();
  }

  private static KeptAnswer kept(String need) throws Exception {
    Map<String, Object> fields =
        Shops.fields(Shops.JOBS.resolve("boatyard").resolve("weak-sander.json"));
    Map<String, Object> tool = new LinkedHashMap<>();
    ((Map<?, ?>) Objects.requireNonNull(fields.get("tool")))
        .forEach((name, value) -> tool.put(String.valueOf(name), value));
    tool.put("pressure", need);
    fields.put("tool", tool);
    ShopCatalogue catalogue =
        Disk.catalogue(Shops.JOBS.resolve("boatyard").resolve("catalogue.json"));
    return KeptAnswer.of(
        JobFile.read(Document.of("job", fields), catalogue), LocalDate.parse("2026-11-29"));
  }

  @Test
  void an_answer_is_kept_once_and_found_as_it_was() throws Exception {
    KeptAnswers answers = KeptAnswers.of(database);
    KeptAnswer first = kept("90 psig");
    KeptAnswer second = kept("85 psig");
    assertThat(answers.find("2026-1")).isEmpty();
    assertThat(answers.store("2026-1", first)).isTrue();
    assertThat(answers.store("2026-1", first)).isTrue();
    assertThat(answers.store("2026-2", second)).isTrue();
    assertThat(answers.store("2026-1", second)).isFalse();
    assertThat(answers.find("2026-1")).contains(first);
    assertThat(answers.find("2026-2")).contains(second);
    assertThat(AnswerComparison.of(
                answers.find("2026-1").orElseThrow(), answers.find("2026-2").orElseThrow())
            .inWords())
        .startsWith("In the question, the field \"tool.pressure\" was 90 psig, is 85 psig now.");
    assertThat(answers.numbers(LocalDate.parse("2026-11-29"), LocalDate.parse("2026-11-29")))
        .containsExactly("2026-1", "2026-2");
    assertThat(answers.numbers(LocalDate.parse("2026-11-30"), LocalDate.MAX.withYear(2100)))
        .isEmpty();
    // Both were answered out of one catalogue, which stands there once; set and catalogue make two
    // texts.
    int texts = database.read(connection -> {
      try (PreparedStatement count = connection.prepareStatement("SELECT COUNT(*) FROM kept_text");
          ResultSet row = count.executeQuery()) {
        row.next();
        return row.getInt(1);
      }
    });
    assertThat(texts).isEqualTo(2);
    assertThatThrownBy(() -> answers.store(" ", first))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("number must have 1 to 100 letters, had 1");
  }

  @Test
  void an_answer_that_sql_wrote_over_is_refused() throws Exception {
    KeptAnswers answers = KeptAnswers.of(database);
    answers.store("2026-1", kept("90 psig"));
    execute("UPDATE kept_text SET text = REPLACE(text, '36 USD', '35 USD')");
    assertThatThrownBy(() -> answers.find("2026-1"))
        .isInstanceOf(WrongFileException.class)
        .hasMessageContaining("2026-1: catalogue: was changed after the answer was kept");
  }

  @Test
  void a_column_that_sql_changed_is_refused_in_one_line() throws Exception {
    KeptAnswers answers = KeptAnswers.of(database);
    KeptAnswer kept = kept("90 psig");
    Map<String, String> changes = new LinkedHashMap<>();
    changes.put("kept_on", "DATE '2020-01-01'");
    changes.put("library", "'9.9.9'");
    for (String hash :
        List.of("sha256", "question_sha256", "set_sha256", "catalogue_sha256", "answer_sha256")) {
      changes.put(hash, hash.equals("set_sha256") ? "catalogue_sha256" : "set_sha256");
    }
    for (Map.Entry<String, String> change : changes.entrySet()) {
      String number = "by " + change.getKey();
      assertThat(answers.store(number, kept)).isTrue();
      execute("UPDATE kept_answer SET " + change.getKey() + " = " + change.getValue()
          + " WHERE number = '" + number + "'");
      assertThatThrownBy(() -> answers.find(number))
          .as(change.getKey())
          .isInstanceOf(WrongFileException.class)
          .hasMessageStartingWith(number + ": ")
          .hasMessageContaining("changed after the answer was kept")
          .message()
          .hasLineCount(1);
    }
    assertThat(answers.store("2026-7", kept)).isTrue();
    execute("UPDATE kept_answer SET number = '2026-8' WHERE number = '2026-7'");
    assertThatThrownBy(() -> answers.find("2026-8"))
        .isInstanceOf(WrongFileException.class)
        .hasMessageContaining(
            "2026-8: number: was changed after the answer was kept: the answer" + " says 2026-7");
  }

  @Test
  void of_200_clerks_one_keeps_an_answer_under_a_number() throws Exception {
    KeptAnswers answers = KeptAnswers.of(database);
    KeptAnswer one = kept("90 psig");
    KeptAnswer other = kept("85 psig");
    List<Boolean> stored = together(clerk -> answers.store("same", clerk % 2 == 0 ? one : other));
    assertThat(stored).filteredOn(each -> each).hasSize(CLERKS / 2);
    assertThat(answers.find("same").orElseThrow()).isIn(one, other);
  }

  private interface Clerk<T> {
    T does(int clerk) throws Exception;
  }

  /** Lets all clerks begin at the same moment. */
  private static <T> List<T> together(Clerk<T> work) throws Exception {
    ExecutorService threads = Executors.newFixedThreadPool(CLERKS);
    CountDownLatch start = new CountDownLatch(CLERKS);
    try {
      List<Callable<T>> tasks = new ArrayList<>();
      for (int i = 0; i < CLERKS; i++) {
        int clerk = i;
        tasks.add(() -> {
          start.countDown();
          start.await();
          return work.does(clerk);
        });
      }
      List<T> answers = new ArrayList<>();
      for (Future<T> answer : threads.invokeAll(tasks)) {
        answers.add(answer.get(10, TimeUnit.MINUTES));
      }
      return answers;
    } finally {
      threads.shutdownNow();
    }
  }
}
