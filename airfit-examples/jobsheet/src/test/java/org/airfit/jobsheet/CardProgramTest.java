package org.airfit.jobsheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.airfit.files.Disk;
import org.airfit.files.WrongFileException;
import org.airfit.safety.Caution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CardProgramTest {

  private static final Path JOBS = Path.of("..", "jobs");

  @TempDir
  Path folder;

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();

  private int run(Object... args) {
    List<String> words = new ArrayList<>(List.of("card"));
    for (Object arg : args) {
      words.add(arg.toString());
    }
    out.reset();
    err.reset();
    return Main.run(
        words.toArray(new String[0]),
        new PrintStream(out, true, StandardCharsets.UTF_8),
        new PrintStream(err, true, StandardCharsets.UTF_8));
  }

  private String said() {
    return out.toString(StandardCharsets.UTF_8);
  }

  private String page(String job) throws IOException {
    Path page = folder.resolve("card.html");
    assertThat(run(JOBS.resolve(job), page))
        .as(err.toString(StandardCharsets.UTF_8))
        .isZero();
    return Files.readString(page);
  }

  private static int count(String text, String what) {
    return text.split(Pattern.quote(what), -1).length - 1;
  }

  @Test
  void the_tire_shop_has_cards_of_its_run_its_thread_and_its_plug() throws IOException {
    String page = page("quarry-road/tire-shop.json");
    assertThat(said())
        .contains("What arrives with the parts proposed.")
        .contains("on this card, 96.531 psi without rounding: at most ")
        .contains("Left: 1/4 NPT male. All others known here, ")
        .contains("What arrives at the tool now has no card: old hose")
        .contains("More pressure at the supply does not help.")
        .contains("The cards with their figures, to print at full size: ");
    assertThat(count(page, "<section class=\"card\">")).isEqualTo(3);
    assertThat(count(page, "<figure class=\"scale\" tabindex=\"0\">")).isEqualTo(2);
    assertThat(page)
        .contains("tip diameter D<sub>t</sub>, in")
        .contains("p<sub>t</sub> = ")
        .contains("Re<sub>1</sub> = 379 × ṁ / (D<sub>1</sub> × μ)")
        .contains("Before anyone works on it: what arrives with the parts proposed")
        .contains("More pressure at the supply does not help.")
        .contains("1/4 NPT male")
        .doesNotContain("null", "NaN");
  }

  /** Every row of a table has as many cells as its head, those that reach over several rows and columns counted. */
  @Test
  void the_rows_of_the_steps_are_whole() throws IOException {
    for (String job : List.of(
        "quarry-road/tire-shop.json",
        "tyre-bay/weak-impact-wrench.json",
        "body-shop/spray-gun.json")) {
      String steps = page(job);
      Matcher table =
          Pattern.compile("(?s)<table class=\"steps[^\"]*\">.*?</table>").matcher(steps);
      assertThat(table.find()).isTrue();
      String body = table.group().substring(table.group().indexOf("<tbody>"));
      int columns = count(table.group(), "scope=\"col\"");
      assertThat(columns).isBetween(3, 4);
      int over = 0;
      Matcher row = Pattern.compile("(?s)<tr[^>]*>(.*?)</tr>").matcher(body);
      int rows = 0;
      while (row.find()) {
        int cells = over > 0 ? 1 : 0;
        over = Math.max(0, over - 1);
        Matcher cell = Pattern.compile("<t[hd]([^>]*)>").matcher(row.group(1));
        while (cell.find()) {
          Matcher wide = Pattern.compile("colspan=\"(\\d+)\"").matcher(cell.group(1));
          cells += wide.find() ? Integer.parseInt(wide.group(1)) : 1;
          Matcher high = Pattern.compile("rowspan=\"(\\d+)\"").matcher(cell.group(1));
          over = high.find() ? Integer.parseInt(high.group(1)) - 1 : over;
        }
        assertThat(cells).as("%s: %s", job, row.group(1)).isEqualTo(columns);
        rows++;
      }
      assertThat(over).isZero();
      assertThat(rows).isGreaterThan(8);
    }
  }

  @Test
  void a_long_run_has_a_reading_beside_its_step() throws IOException {
    assertThat(page("tyre-bay/weak-impact-wrench.json"))
        .contains("<th scope=\"rowgroup\" colspan=\"3\">4. Hose 1/2 in, rubber, 50 ft</th>")
        .contains("<strong>42900</strong>; curve ε/D = 0.00215")
        .contains("Re: Reynolds number; λ: friction factor, from figure 1;");
  }

  private static CardSheet cards(String job) throws WrongFileException {
    return CardSheet.of(JobSheet.of(Disk.job(JOBS.resolve(job))));
  }

  /** What the sheet says of what nobody told belongs to the card: the worst case is not the number itself. */
  @Test
  void a_worst_case_is_told_as_one() throws IOException, WrongFileException {
    CardSheet.Card card = cards("tyre-bay/blow-gun.json").cards().get(0);
    assertThat(card.basis().get(0))
        .contains("at least 85.4 psig, it needs 80 psig", "nobody told", "up to 14.5 psi");
    assertThat(card.basis()).anyMatch(each -> each.startsWith("The card is worked with the worst"));
    page("tyre-bay/blow-gun.json");
    assertThat(said().indexOf("at least 85.4 psig")).isLessThan(said().indexOf("Given:"));
    assertThat(said()).doesNotContain("psi exactly");
  }

  /** 110 psig set less 14.5 psi of droop that is assumed: 95.5 psig stand behind the regulator, not at the supply. */
  @Test
  void the_pressure_behind_a_regulator_is_not_that_of_the_supply() throws WrongFileException {
    CardSheet.Card card = cards("tyre-bay/blow-gun.json").cards().get(0);
    assertThat(card.card().given().get(0)).hasToString("pg = 95.5 psi");
    assertThat(card.card().toText()).doesNotContain("at the supply");
    assertThat(card.basis())
        .contains("pg is what stands behind the regulator at the supply: it is set to 110 psig, and"
            + " 14.5 psi less is held while the tool runs.");
    assertThat(cards("tyre-bay/average-cfm.json").cards().get(0).basis())
        .contains("pg is the lowest pressure at the supply, of 115 psig to 140 psig that was told.")
        .anyMatch(each -> each.contains("16 scfm") && each.endsWith("the most that it may be."))
        .anyMatch(each -> each.contains("up to four times as much"));
  }

  /** Every card bids to depressurise first and defers last; that of parts has the cautions of the parts. */
  @Test
  void a_card_carries_the_cautions_of_its_answer() throws WrongFileException {
    for (String job : List.of(
        "quarry-road/tire-shop.json",
        "tyre-bay/blow-gun.json",
        "boatyard/weak-sander.json",
        "body-shop/two-benches.json")) {
      for (CardSheet.Card card : cards(job).cards()) {
        List<String> titles = card.cautions().stream().map(Caution::title).toList();
        assertThat(titles).startsWith("Depressurise before uncoupling").doesNotHaveDuplicates();
        assertThat(card.cautions().get(titles.size() - 1).text())
            .contains("not an approval", "Local codes");
        if (!card.question().startsWith("Which ")) {
          assertThat(titles).as(job).contains("Whip restraint");
        }
      }
    }
    assertThat(cards("quarry-road/tire-shop.json").cards().get(0).cautions())
        .anyMatch(caution -> caution.title().equals("If the regulator fails")
            && caution.text().contains("its maker allows 120 psig"));
  }

  @Test
  void each_of_several_tools_has_a_card() throws WrongFileException {
    assertThat(cards("body-shop/two-benches.json").cards())
        .extracting(CardSheet.Card::question)
        .containsExactly(
            "What arrives with the parts proposed: lines 1 and 2, sander",
            "What arrives with the parts proposed: lines 3 and 4, air ratchet");
  }

  @Test
  void a_job_without_such_an_answer_says_so() throws IOException, WrongFileException {
    String page = page("counter/nitrogen.json");
    assertThat(page).contains("suffocates without a warning");
    assertThat(cards("counter/socket-alone.json").without())
        .containsExactly(
            "What arrives with parts has no card: no parts are chosen before the plug is known.");
    page = page("counter/nitrogen.json");
    assertThat(said()).contains("This job has no answer that a card can hold.");
    assertThat(page).contains("This job has no answer that a card can hold.");
    page("counter/two-near-plugs.json");
    assertThat(said())
        .contains("Left: ", "Plover", "Dunlin")
        .contains("The limits settle no profile: do not put it under pressure")
        .contains("Mating check");
  }

  @Test
  void what_cannot_be_used_gets_one_line() {
    assertThat(run()).isEqualTo(2);
    assertThat(err.toString(StandardCharsets.UTF_8))
        .startsWith("give a job file, and where the cards");
    assertThat(run(folder.resolve("none.json"))).isEqualTo(2);
    assertThat(err.toString(StandardCharsets.UTF_8)).contains("there is no such file");
    assertThat(said()).isEmpty();
  }
}
