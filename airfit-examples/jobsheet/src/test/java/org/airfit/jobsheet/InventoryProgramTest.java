package org.airfit.jobsheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class InventoryProgramTest {

  private static final Path WEIR_STREET = Path.of("..", "shops", "weir-street", "inventory.json");

  @TempDir
  Path folder;

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();

  private int run(Object... args) {
    String[] words = new String[args.length + 1];
    words[0] = "inventory";
    for (int i = 0; i < args.length; i++) {
      words[i + 1] = args[i].toString();
    }
    out.reset();
    err.reset();
    return Main.run(
        words,
        new PrintStream(out, true, StandardCharsets.UTF_8),
        new PrintStream(err, true, StandardCharsets.UTF_8));
  }

  private String said() {
    return out.toString(StandardCharsets.UTF_8).replaceAll("\\s+", " ");
  }

  private Path copied(String from, String to) throws IOException {
    Path place = Files.createDirectories(folder.resolve("shops/here"));
    Path sets = Files.createDirectories(folder.resolve("sets"));
    Files.write(
        sets.resolve("workshop.csv"), Files.readAllBytes(Path.of("..", "sets", "workshop.csv")));
    Files.write(
        place.resolve("catalogue.json"),
        Files.readAllBytes(WEIR_STREET.resolveSibling("catalogue.json")));
    Path file = place.resolve("inventory.json");
    String text = Files.readString(WEIR_STREET);
    assertThat(text).contains(from);
    Files.writeString(file, text.replace(from, to));
    return file;
  }

  @Test
  void the_workshop_has_its_sheet_and_its_page() throws IOException {
    Path page = folder.resolve("weir.html");
    assertThat(run(WEIR_STREET, page)).as(err.toString(StandardCharsets.UTF_8)).isZero();
    assertThat(said())
        .contains(
            "COUPLINGS One coupling for the whole shop",
            "As few bays as can be are changed together. Of the orders that do so, this one leaves the fewest",
            "Answer: Keep tern for all bays: 11 sockets and 15 plugs are changed, which costs 302.00"
                + " USD with the work.",
            " The next would be gannet for all bays at 513.90 USD, 211.90 USD more.",
            "Kept apart: blast booth hoods carries breathing air: it is not changed",
            "A-1438, Reducing nipple 3/8 NPT female x 1/4 NPT male: 4 to buy at 2.80 USD, 11.20 USD",
            "1. Change paint: 4 sockets and 5 plugs. Ways to join the lines of two media: 22 before, 0 after;"
                + " to put in a plug that lets go or is not told: 215 before, 160 after; to leak: 126 before,"
                + " 161 after.",
            "2. Change fettling: 7 sockets and 10 plugs.",
            "fettling: now gannet, tern; keeps tern; to change: 7 sockets, 10 plugs",
            "blast booth hoods: now hood line; stays as it is (breathing air)",
            "T-P14, Plug Tern, 1/4 NPT male: 5 from the shelf",
            "T-S38, Socket Tern, 3/8 NPT male: 2 from the shelf, 9 to buy at 11.20 USD, 100.80 USD",
            "From then on no wrong pair can be made that leaks, lets go or is not told.",
            "plug gannet (10, fettling) in socket tern (12, assembly): goes in and lets go; ways: 120",
            "Skua is offered only where it is told that its plugs do not go into the sockets of blast"
                + " booth hoods",
            "Change a bay whole",
            "Not for breathing air",
            "Any plug can be carried to any socket of the inventory");
    assertThat(Files.readString(page))
        .contains(
            "<h1>One coupling for the whole shop</h1>",
            "Keep tern for all bays",
            "goes in and lets go",
            "Not for breathing air",
            "Hoses with a coupling at both ends");
  }

  @Test
  void where_nothing_can_be_kept_the_sheet_says_why_and_what_to_ask() throws IOException {
    Path file = copied(
        "\"socket\": \"hood line\", \"happens\": \"does not go in\"",
        "\"socket\": \"hood line\", \"happens\": \"goes in and seals\"");
    assertThat(run(file, folder.resolve("x.html"))).isZero();
    assertThat(said())
        .contains(
            "Answer: No profile can be kept for all bays",
            "Tern is never offered for air: it is told that its plugs go into the sockets of blast booth hoods",
            "Gannet is never offered for air: it is told that its plugs go into",
            "Skua is offered only where it is told",
            "goes in and seals; lines of two media; ways: 36")
        .doesNotContain("IN WHICH ORDER");
  }

  @Test
  void text_of_a_user_stays_text_on_the_page() throws IOException {
    Path file = copied("\"name\": \"paint\"", "\"name\": \"paint <b>& co\"");
    Path page = folder.resolve("x.html");
    assertThat(run(file, page)).isZero();
    assertThat(Files.readString(page)).contains("paint &lt;b&gt;&amp; co").doesNotContain("<b>");
  }

  @Test
  void the_program_refuses_in_one_line_and_writes_nothing_over() throws IOException {
    assertThat(run()).isEqualTo(2);
    assertThat(err.toString(StandardCharsets.UTF_8)).startsWith("give an inventory of couplings");
    Path file = copied("\"count\": 12", "\"count\": 12.5");
    assertThat(run(file, folder.resolve("x.html"))).isEqualTo(2);
    assertThat(err.toString(StandardCharsets.UTF_8).lines())
        .singleElement()
        .asString()
        .contains("bays[1].sockets[1].count");
    assertThat(folder.resolve("x.html")).doesNotExist();
    Path good = copied("\"count\": 12", "\"count\": 11");
    String before = Files.readString(good);
    assertThat(run(good, good)).isEqualTo(2);
    assertThat(Files.readString(good)).isEqualTo(before);
  }

  private Path ownFile(String pairs) throws IOException {
    Path file = copied("\"title\"", "\"title\"");
    Files.writeString(file, """
        {
          "airfitInventory": 1, "title": "Two that seal", "customer": "invented", "catalogue": "catalogue.json",
          "atmosphere": "14.6 psia", "temperature": "68 °F",
          "bays": [
            {
              "name": "assembly", "pressure": "96 to 102 psig",
              "sockets": [{"place": "drops", "takes": ["tern"], "onto": "3/8 NPT female", "count": 2}],
              "plugs": [{"tool": "blow gun", "profile": "tern", "onto": "1/4 NPT female", "count": 3}]
            },
            {
              "name": "fettling", "pressure": "95 to 100 psig",
              "sockets": [{"place": "drops", "takes": ["gannet"], "onto": "3/8 NPT female", "count": 5}],
              "plugs": [{"tool": "scaler", "profile": "gannet", "onto": "1/4 NPT female", "count": 4}]
            }
          ],
          "pairs": [PAIRS]
        }
        """.replace("PAIRS", pairs));
    return file;
  }

  @Test
  void two_profiles_that_seal_in_each_other_are_not_told_to_be_one() throws IOException {
    Path page = folder.resolve("x.html");
    String both = """
        {"plug": "tern", "socket": "gannet", "happens": "goes in and seals", "by": "trial"},
        {"plug": "gannet", "socket": "tern", "happens": "goes in and seals", "by": "trial"}
        """;
    assertThat(run(ownFile(both), page))
        .as(err.toString(StandardCharsets.UTF_8))
        .isZero();
    assertThat(said())
        .contains("Nothing: each plug in use is told to go in and seal in each socket in use.")
        .doesNotContain("one profile is in use");
    assertThat(Files.readString(page))
        .contains("Nothing: each plug in use is told to go in and seal in each socket in use.");
  }

  /** By hand: 3 plugs and 5 sockets make 15 ways, 4 and 2 make 8. */
  @Test
  void leaks_are_counted_among_what_is_wrong_today() throws IOException {
    String both = """
        {"plug": "tern", "socket": "gannet", "happens": "goes in and leaks", "by": "trial"},
        {"plug": "gannet", "socket": "tern", "happens": "goes in and leaks", "by": "trial"}
        """;
    assertThat(run(ownFile(both), folder.resolve("x.html"))).isZero();
    assertThat(said())
        .contains(
            "Today: 23 ways to put a plug into a socket that leaks (each plug with each socket counts as"
                + " one way).");
  }

  @Test
  void a_small_share_of_wear_is_not_told_as_none() throws IOException {
    assertThat(run(
            copied("\"wornPerYear\": 0.25", "\"wornPerYear\": 0.004"), folder.resolve("x.html")))
        .isZero();
    assertThat(said())
        .contains(
            "that are enough, for each kind by itself, with a chance of",
            "where 0.4 of 100 pieces wear out")
        .contains("What is on the shelf is not taken off.");
  }

  @Test
  void where_nothing_is_changed_no_pieces_are_counted() throws IOException {
    String text = Files.readString(ownFile("")).replace("gannet", "tern");
    Path file = ownFile("");
    Files.writeString(file, text);
    assertThat(run(file, folder.resolve("x.html"))).isZero();
    assertThat(said())
        .contains("Answer: Keep tern for all bays: nothing is changed.")
        .contains("Nothing: one profile is in use.")
        .doesNotContain("0 sockets");
  }
}
