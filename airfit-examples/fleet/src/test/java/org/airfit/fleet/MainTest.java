package org.airfit.fleet;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.spark.sql.Row;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.xml.sax.InputSource;

/** The program from the table to the summary. */
class MainTest {

  @TempDir
  static Path tried = Path.of("");

  private static Path place = Path.of("");
  private static Fleets.Ended ended = new Fleets.Ended(0, "", "");

  @BeforeAll
  static void try_it() {
    place = tried.resolve("try");
    ended = Fleets.run("try", place.toString(), "2000");
  }

  @Test
  void what_is_tried_has_three_whole_answers() throws Exception {
    assertThat(ended.code()).as(ended.err()).isZero();
    assertThat(ended.out().lines()).hasSize(3).allMatch(line -> line.contains("rows in = "));
    for (String each : List.of("judged", "identified", "checked")) {
      assertThat(place.resolve(each).resolve("complete.txt")).exists();
      Path summary = place.resolve(each).resolve("summary");
      assertThat(Files.readString(summary.resolve("index.html")))
          .contains("Cautions")
          .contains("This is a calculation, not an approval")
          .contains("<svg");
      try (Stream<Path> files = Files.list(summary)) {
        for (Path file : files.filter(path -> path.toString().endsWith(".svg")).toList()) {
          DocumentBuilderFactory.newInstance()
              .newDocumentBuilder()
              .parse(new InputSource(new StringReader(Files.readString(file))));
        }
      }
    }
    String judged = place.resolve("judged").toString();
    String bySite = Files.readString(Path.of(judged, "summary", "by-site.csv"));
    long drops = bySite
        .lines()
        .skip(1)
        .mapToLong(line -> Long.parseLong(line.split(",", -1)[1]))
        .sum();
    assertThat(drops).isEqualTo(2000);
    assertThat(Files.readString(Path.of(judged, "summary", "rejects.csv")).lines())
        .hasSizeGreaterThan(2)
        .first()
        .isEqualTo("key,field,value,reason");
    assertThat(Files.readString(Path.of(judged, "summary", "index.html")))
        .contains("More pressure at the supply does not help");
    assertThat(Fleets.spark().read().parquet(judged + "/answers").count()).isEqualTo(2000);
  }

  @Test
  void an_output_of_something_else_is_left_alone(@TempDir Path folder) throws Exception {
    Path table = folder.resolve("drops.csv");
    Path other = Files.createDirectories(folder.resolve("other"));
    Files.writeString(table, "key,site,supply.pressure\na,=1+1,100 psig\n");
    Fleets.Ended refused = Fleets.run("drops", table.toString(), other.toString());
    assertThat(refused.code()).isEqualTo(2);
    assertThat(refused.err()).contains("holds something else");
    Path output = folder.resolve("out");
    assertThat(Fleets.run("drops", table.toString(), output.toString()).code()).isEqualTo(1);
    assertThat(Files.readString(output.resolve("summary").resolve("by-site.csv")))
        .as("nothing is computed in a spreadsheet")
        .contains("\n'=1+1,1,");
    assertThat(Fleets.run("drops", table.toString(), output.toString()).out())
        .contains("nothing was done");
    Files.writeString(table, "key,supply.pressure\nb,100 psig\nc,90 psig\n");
    assertThat(Fleets.run("drops", table.toString(), output.toString()).err())
        .contains("holds something else");
  }

  @Test
  void a_table_in_folders_by_site_is_read_and_a_change_inside_it_is_seen(@TempDir Path folder)
      throws Exception {
    Path table = folder.resolve("drops");
    for (String site : List.of("heron", "plover")) {
      Path part = Files.createDirectories(table.resolve("site=" + site));
      Files.writeString(part.resolve("a.csv"), "key,supply.pressure\n" + site + ",100 psig\n");
    }
    String output = folder.resolve("out").toString();
    String[] asked = {"drops", table.toString(), output, "--format", "csv"};
    assertThat(Fleets.run(asked).out()).contains("2 rows in");
    assertThat(Files.readString(Path.of(output, "summary", "by-site.csv")))
        .contains("heron,1,")
        .contains("plover,1,");
    assertThat(Fleets.run(asked).out()).contains("nothing was done");
    Files.writeString(
        table.resolve("site=plover").resolve("a.csv"), "key,supply.pressure\nother,90 psig\n");
    assertThat(Fleets.run(asked).err()).contains("holds something else");
  }

  @Test
  void a_quick_summary_shows_nothing_that_was_not_asked(@TempDir Path folder) throws Exception {
    String output = folder.resolve("out").toString();
    String table = place.resolve("drops").toString();
    assertThat(Fleets.run("drops", table, output, "--quick").code()).isEqualTo(1);
    Path summary = Path.of(output, "summary");
    assertThat(Files.readString(summary.resolve("index.html")))
        .contains("were not worked out")
        .contains("More pressure at the supply does not help")
        .doesNotContain("costAYear")
        .doesNotContain("What would help most")
        .doesNotContain("What was assumed");
    assertThat(summary.resolve("what-helps.csv")).doesNotExist();
    assertThat(Files.readString(summary.resolve("by-site.csv"))).contains("medianAtTool_bar");
  }

  @Test
  void what_cannot_be_done_is_told() {
    assertThat(Fleets.run("drops").err())
        .isEqualToNormalizingNewlines("give drops TABLE FOLDER; --help tells more\n");
    assertThat(Fleets.run("drops", "nowhere", "out").code()).isEqualTo(2);
    assertThat(Fleets.run("speed", "none").err()).contains("no whole number");
    assertThat(Fleets.run("--slow").err()).contains("--slow is no option");
  }

  @Test
  void a_wrong_call_is_told_in_one_line_before_spark_begins() {
    for (String[] words : new String[][] {
      {},
      {"frobnicate"},
      {"drops"},
      {"catalogue", "chek", "a", "b", "c"},
      {"generate", "drops", "1"},
      {"try", "a", "1", "2"},
      {"speed", "1", "2"},
      {"-s"}
    }) {
      Fleets.Ended refused = Fleets.run(words);
      assertThat(refused.code()).isEqualTo(2);
      assertThat(refused.out()).isEmpty();
      assertThat(refused.err().lines()).as(String.join(" ", words)).hasSize(1);
      assertThat(refused.err()).contains("--help tells");
    }
  }

  @Test
  void help_tells_every_command_and_the_version_stands_in_one_line() {
    Fleets.Ended help = Fleets.run("--help");
    assertThat(help.code()).isZero();
    assertThat(help.err()).isEmpty();
    assertThat(Fleets.run("drops", "-h")).isEqualTo(help);
    assertThat(help.out())
        .contains("drops TABLE FOLDER", "identify READINGS SET FOLDER", "catalogue check PRICES")
        .contains("generate drops|readings|prices ROWS SEED TABLE", "try FOLDER", "speed [ROWS]")
        .contains("--format", "--units", "--quick", "--currency", "--nested");
    assertThat(Fleets.run("--version").out()).matches("airfit-fleet [0-9]\\S*\\R");
  }

  @Test
  void speed_prints_a_table_with_how_it_was_measured_and_what_follows() {
    Fleets.Ended speed = Fleets.run("speed", "2000");
    assertThat(speed.code()).as(speed.err()).isZero();
    assertThat(speed.out())
        .contains("2,000 rows of four elements")
        .contains(System.getProperty("java.version"))
        .containsPattern(
            "\\| Spark, mapPartitions \\| 2 \\| [0-9,]+ \\| [0-9.]+ \\| [0-9.]+ \\| [0-9.]+ × one core")
        .containsPattern("\\| plain Java \\| 1 \\| [0-9,]+ ")
        .containsPattern("A billion rows: [0-9.]+ µs of a core to read");
  }

  @Test
  void plugs_and_articles_are_answered_as_their_set_and_their_fields_allow() {
    List<Row> plugs = Fleets.spark()
        .read()
        .parquet(place.resolve("identified").resolve("answers").toString())
        .collectAsList();
    assertThat(plugs).hasSize(100);
    // the set of the demo is invented: nothing is more than a candidate
    assertThat(plugs).noneMatch(row -> "identified".equals(row.getAs("verdict")));
    assertThat(plugs).anyMatch(row -> "candidate only".equals(row.getAs("verdict")));
    assertThat(plugs)
        .filteredOn(row -> "reject".equals(row.getAs("outcome")))
        .allMatch(row -> row.<String>getAs("field").equals("atHand.readings.tip diameter"));
    List<Row> articles = Fleets.spark()
        .read()
        .parquet(place.resolve("checked").resolve("answers").toString())
        .collectAsList();
    assertThat(articles).hasSize(20);
    assertThat(articles)
        .filteredOn(row -> "regulator".equals(row.getAs("kind")))
        .isNotEmpty()
        .allMatch(row -> row.<String>getList(row.fieldIndex("lacks")).stream()
            .anyMatch(lack -> lack.startsWith("capacity: only a range")));
  }
}
