package org.airfit.jobsheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The first hour of an engineer who checks a sheet: three clicks lead from the sheet to the reasons, from a number there
 * to its equation, and from the equation to its source.
 */
class SheetToSourceTest {

  private static final Path JOBS = Path.of("..", "jobs");
  private static final Pattern LINK = Pattern.compile("<a href=\"([^\"]*)\">(.*?)</a>");

  @TempDir
  private Path folder;

  private String sheet = "";
  private String reasons = "";

  private void print(Path job) throws IOException {
    PrintStream nowhere =
        new PrintStream(new ByteArrayOutputStream(), true, StandardCharsets.UTF_8);
    Path page = folder.resolve("sheet.html");
    assertThat(Main.run(new String[] {job.toString(), page.toString()}, nowhere, nowhere))
        .isZero();
    sheet = Files.readString(page);
    Path beside = folder.resolve("sheet-reasons.html");
    reasons = Files.exists(beside) ? Files.readString(beside) : "";
  }

  /** What stands at the place that a link names, up to the end of the page. */
  private static String at(String page, String link) {
    assertThat(link).startsWith("#");
    String mark = " id=\"" + link.substring(1) + "\"";
    assertThat(page).containsOnlyOnce(mark);
    return page.substring(page.indexOf('>', page.indexOf(mark)) + 1);
  }

  private static String text(String html) {
    return html.replaceAll("<[^>]*>", "");
  }

  @Test
  void three_clicks_lead_from_the_sheet_to_the_source_of_a_pressure_loss() throws IOException {
    print(JOBS.resolve("boatyard").resolve("weak-sander.json"));
    // one: the sheet leads to what it rests on
    assertThat(LINK.matcher(sheet).results().map(found -> found.group(1)))
        .contains("sheet-reasons.html");
    // two: the loss of the old hose leads to its equations
    Matcher loss = Pattern.compile("<th scope=\"row\">old hose, 5/16 in.*?</th><td class=\"n\">"
            + "<a href=\"(#w[0-9]+)\">([0-9.]+) bar</a>")
        .matcher(reasons);
    assertThat(loss.find()).isTrue();
    String equations = at(reasons, loss.group(1));
    String said = text(equations.substring(0, equations.indexOf("</span>")));
    Matcher fromTo = Pattern.compile(
            "old hose, 5/16 in: from ([0-9.]+) bar\\(a\\) to ([0-9.]+) bar\\(a\\)")
        .matcher(said);
    assertThat(fromTo.matches()).as(said).isTrue();
    assertThat(Double.parseDouble(loss.group(2)))
        .as("half a digit of each number printed")
        .isCloseTo(
            Double.parseDouble(fromTo.group(1)) - Double.parseDouble(fromTo.group(2)),
            within(0.005 + 2 * 0.0005));
    // three: an equation below leads to its source
    String before = equations.substring(0, equations.indexOf("coupling at the tool: from"));
    MatchResult source = LINK.matcher(before)
        .results()
        .filter(found -> found.group(2).contains("Colebrook"))
        .findFirst()
        .orElseThrow();
    String entry = at(reasons, source.group(1));
    assertThat(text(entry.substring(0, entry.indexOf("</li>"))))
        .startsWith(
            "[C. F. Colebrook, Turbulent flow in pipes, J. Inst. Civ. Eng. 11 (1939) 133-156")
        .contains("From it: Friction factor (Darcy), turbulent");
    assertThat(source.group(2)).isEqualTo(entry.substring(0, entry.indexOf(" <span")));
  }

  @Test
  void every_loss_in_the_tables_leads_to_an_equation_of_its_own() throws IOException {
    print(JOBS.resolve("boatyard").resolve("weak-sander.json"));
    List<String> losses = Pattern.compile("<td class=\"n\"><a href=\"#(w[0-9]+)\">")
        .matcher(reasons)
        .results()
        .map(found -> found.group(1))
        .toList();
    assertThat(losses).hasSizeGreaterThan(6).doesNotHaveDuplicates();
    assertThat(reasons).contains("leads to its equation in the working");
  }

  static List<Path> jobs() throws IOException {
    try (Stream<Path> files = Files.walk(JOBS, 2)) {
      return files
          .filter(file -> file.toString().endsWith(".json"))
          .filter(file -> !file.getFileName().toString().matches("(catalogue|letterhead).*"))
          .sorted()
          .toList();
    }
  }

  @ParameterizedTest
  @MethodSource("jobs")
  void every_link_of_a_page_leads_somewhere_and_every_equation_has_a_source(Path job)
      throws IOException {
    print(job);
    for (String page : List.of(sheet, reasons)) {
      LINK.matcher(page).results().map(found -> found.group(1)).forEach(link -> {
        if (link.startsWith("#")) {
          at(page, link);
        } else if (!link.startsWith("tel:")) {
          assertThat(folder.resolve(link)).exists();
        }
      });
      List<String> places = Pattern.compile(" id=\"([^\"]+)\"")
          .matcher(page)
          .results()
          .map(found -> found.group(1))
          .toList();
      assertThat(places).doesNotHaveDuplicates();
    }
    String working = reasons.substring(Math.max(0, reasons.indexOf("<h2>The working</h2>")));
    assertThat(Pattern.compile("<span class=\"l[^>]*>\\[[^<]*\\]</span></span>")
            .matcher(working)
            .find())
        .as("a source without a link")
        .isFalse();
  }
}
