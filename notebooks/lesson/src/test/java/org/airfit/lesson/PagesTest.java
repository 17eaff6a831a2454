package org.airfit.lesson;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.airfit.plug.Dimension;
import org.airfit.plug.PlugProfile;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.ReferenceState;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What stands around the lessons: the form, the trainer's plan, the words of pictures. */
class PagesTest {

  private static final Pattern PART = Pattern.compile("(?m)^- \\*\\*(\\d+) to (\\d+):\\*\\*");

  @Test
  void the_form_asks_for_every_dimension_and_shows_no_size() {
    String form = MeasuringForm.html();
    PlugProfile gannet = Boatyard.profiles().profile("gannet").orElseThrow();
    for (Dimension dimension : Dimension.values()) {
      assertThat(form).contains(">" + dimension.label() + "<", dimension.howToMeasure());
    }
    for (String size :
        List.of("11.94", "15.14", "16.30", "26.50", "5.20", "10.74", "9.80", "13.64", "7.70")) {
      assertThat(form.replaceAll("<[^>]*>", " ")).doesNotContain(size);
    }
    assertThat(form)
        .doesNotContain(gannet.displayName(), "Sizes invented")
        .contains("five pitches");
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13})
  void the_plan_of_a_lesson_has_no_gap_and_is_as_long_as_the_lesson_and_its_exercises(int lesson)
      throws IOException {
    String plan = Files.readString(Path.of("../TRAINER.md"))
        .replaceFirst("(?s).*\\n### " + lesson + " ", "")
        .replaceFirst("(?s)\\n##.*", "");
    List<MatchResult> parts = PART.matcher(plan).results().toList();
    int minute = 0;
    for (MatchResult part : parts) {
      assertThat(Integer.parseInt(part.group(1))).as(part.group()).isEqualTo(minute);
      minute = Integer.parseInt(part.group(2));
    }
    assertThat(plan).contains(", " + minutes(lesson) + " min\n");
    assertThat(minute).isEqualTo(minutes(lesson) + 15);
  }

  private static int minutes(int lesson) throws IOException {
    String file = Arrays.stream(Path.of("..").toFile().list())
        .filter(name -> name.startsWith((lesson < 10 ? "0" : "") + lesson + "-"))
        .findFirst()
        .orElseThrow();
    return Integer.parseInt(Files.readString(Path.of("..", file))
        .replaceFirst("(?s).*?\\*\\*Time:\\*\\* (\\d+) minutes.*", "$1"));
  }

  private static String page(String name) throws IOException {
    return Files.readString(Path.of("../pages", name + ".html"));
  }

  /** What is read on a page, without code, drawings and the attributes of tags. */
  private static String read(String page) {
    return page.replaceAll(
        "(?s)<style>.*?</style>|<svg.*?</svg>|<mjx-assistive.*?</mjx-assistive-mml>|<pre tabindex.*?</pre>"
            + "|<code>.*?</code>|<(?!/?su[bp])[^>]*>",
        " ");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "book",
        "01-identify-a-plug",
        "09-your-own-reference-set",
        "marking-key",
        "variants"
      })
  void a_subscript_is_set_as_one_and_a_power_of_ten_as_a_power(String name) throws IOException {
    assertThat(read(page(name)))
        .doesNotContainPattern("\\b[DLWd]_[a-z]\\b")
        .doesNotContainPattern("\\b[pE][0-5]\\b")
        .doesNotContainPattern("\\de-\\d");
    assertThat(page("book")).contains("D<sub>t</sub>");
  }

  /** A side of Letter paper has room for 92 ex at 10 pt, and a wider formula would be printed smaller. */
  @Test
  void every_formula_of_the_book_fits_on_a_side() throws IOException {
    List<Double> widths = Pattern.compile("<svg[^>]* width=\"([\\d.]+)ex\"")
        .matcher(page("book"))
        .results()
        .map(width -> Double.parseDouble(width.group(1)))
        .toList();
    assertThat(widths)
        .hasSizeGreaterThan(300)
        .allSatisfy(width -> assertThat(width).isLessThan(92.0));
  }

  @Test
  void the_book_ends_with_the_trainers_guide_and_the_marking_key() throws IOException {
    String book = page("book");
    assertThat(book.indexOf("id=\"glossary\"")).isBetween(0, book.indexOf("id=\"guide\""));
    assertThat(book.indexOf("id=\"guide\"")).isLessThan(book.indexOf("id=\"key\""));
    for (int lesson = 1; lesson <= 13; lesson++) {
      for (String id : Exercises.of(lesson).ids()) {
        assertThat(book).contains("id=\"k" + id + "\"");
      }
    }
    assertThat(book).contains("Air supply", "Materials", "For the trainer");
  }

  /** What one table of lesson 8 adds up, it adds up of the numbers that it shows. */
  @Test
  void what_is_saved_adds_up() throws IOException {
    String lesson = read(page("08-leaks-pressure-and-money")).replaceAll("\\s+", " ");
    double[] saved = Stream.of("11.9 % of the leaks", "7.8 % of it", "both, of the leaks")
        .mapToDouble(row -> Double.parseDouble(
            lesson.replaceFirst(".*?" + Pattern.quote(row) + " (\\d+) .*", "$1")))
        .toArray();
    assertThat(saved[0] + saved[1]).isEqualTo(saved[2]);
  }

  @Test
  void the_receiver_of_the_air_plan_lasts_as_long_as_it_says() throws IOException {
    // 80 US gal = 10.69 ft³; what leaves between 125 and 105 psig, over what is taken beyond the
    // compressor's flow.
    double minutes = 80.0 * 231.0 / 1728.0 * (125.0 - 105.0) / (14.7 * (22.0 - 10.0));
    assertThat(Files.readString(Path.of("../TRAINER.md")))
        .contains(String.format(Locale.ROOT, "= %.1f$ minutes", minutes));
  }

  /** The regulator of the air plan gives what each lesson wants at the bench, and the compressor more than that. */
  @Test
  void the_air_plan_gives_each_lesson_its_pressure() throws IOException {
    String guide = Files.readString(Path.of("../TRAINER.md")).replaceAll("\\s+", " ");
    FreeAirFlow grinder = FreeAirFlow.parse("11 L/s ANR");
    assertThat(guide)
        .contains(String.format(
            Locale.ROOT,
            "| 7 bar (100 psig) | 11 L/s ANR (%.1f scfm) |",
            FreeAirFlow.from(grinder.massFlow(), ReferenceState.SCFM_60F).cubicFeetPerMinute()))
        .contains("| 100 psig, falling |")
        .contains("at 90 psig for lessons 5, 6 and 8, and at 100 psig for 10 and 11")
        .contains("starts again at 115 psig");
  }

  /** Lesson 11: a burst with repaired leaks takes no leaks, and cold air wants the larger receiver. */
  @Test
  void the_bursts_of_lesson_11_are_those_of_its_table() throws IOException {
    double leaks = 9.6;
    double used = 14.0 + 50.0;
    String lesson = Files.readString(Path.of("../11-a-day-of-air.ipynb"));
    assertThat(lesson)
        .contains(
            litres("= %.0f ", burst(used + leaks, 2)), litres("= %.0f ", burst(used + leaks, 10)))
        .contains(litres("= %.0f ", burst(used, 2)), litres("= %.0f ", burst(used, 10)))
        .contains(litres("= %.0f ", 1.4 * burst(used + leaks, 2)))
        .contains(litres("/800 - 1.0 = %.2f$ bar", burst(used, 10) / 800.0 - 1.0))
        .contains("must open at or below the pressure for");
  }

  /** What a burst of 30 s takes of the receiver [L bar], where the compressor of 40 L/s answers late. */
  private static double burst(double litresPerSecond, int delay) {
    return litresPerSecond * delay + (litresPerSecond - 40.0) * (30 - delay);
  }

  private static String litres(String format, double litres) {
    return String.format(Locale.ROOT, format, litres);
  }

  /** Lesson 10: the hose behind a faulty coupling loses more than behind a good one. */
  @Test
  void the_hose_behind_the_coupling_of_lesson_10_is_reckoned_at_its_own_pressure()
      throws IOException {
    double left = Math.sqrt(5.61 * 5.61 + 0.0575 * 8.44 * 8.44);
    assertThat(Files.readString(Path.of("../10-two-gauges.ipynb")))
        .contains(litres("%.2f - 1.01 + 0.1 = ", left))
        .contains(litres("= %.2f$; if the hose is", left - 0.91))
        .contains("roots and powers");
  }

  @Test
  void a_chart_says_what_it_shows_and_holds_a_narrow_one() {
    String plot = Plot.of("Loss", "flow [scfm]", "loss [psi]")
        .line("hose", new double[] {0.0, 10.0}, new double[] {0.0, 1.234})
        .points("table", new double[] {5.0}, new double[] {0.3})
        .level("allowed", 2.0)
        .svg();
    assertThat(plot)
        .contains(
            "aria-label=\"Loss. Across: flow [scfm]; up: loss [psi]. hose: from 0 at 0 to 1.23 at 10."
                + " table: 0.3 at 5. allowed: a level at 2.\"")
        .contains("<metadata><svg", "width=\"340\"");
    assertThat(Plot.of("Loss", "q", "p")
            .shows("It grows.")
            .line("a", new double[2], new double[2])
            .svg())
        .contains("aria-label=\"Loss. Across: q; up: p. It grows.\"");
    assertThat(Bars.of("Where", "psi", 1)
            .bar("hose", 4.0)
            .bar("pipe", 0.5)
            .shows("Most is lost in the hose.")
            .svg())
        .contains(
            "aria-label=\"Where [psi]: hose 4.0; pipe 0.5. Most is lost in the hose.\"",
            "width=\"340\"");
  }

  @Test
  void a_long_title_is_broken_into_lines_that_fit() {
    assertThat(Drawing.lines("one two three four", 80.0, false))
        .containsExactly("one two", "three four");
    assertThat(Drawing.threeDigits(0.0012345)).isEqualTo("0.00123");
    assertThat(Drawing.threeDigits(1234.5)).isEqualTo("1235");
    assertThat(Drawing.threeDigits(10.0)).isEqualTo("10");
  }

  @Test
  void a_picture_says_what_it_is_told_to_say() {
    assertThat(Picture.saying(
            "<svg width=\"9\" role=\"img\" aria-label=\"old\"><path/></svg>", "a \"new\" <one>"))
        .isEqualTo(
            "<svg width=\"9\" role=\"img\" aria-label=\"a &quot;new&quot; &lt;one&gt;\"><path/></svg>");
    assertThatIllegalArgumentException().isThrownBy(() -> Picture.saying("no drawing", "x"));
  }

  @Test
  void the_second_wrong_answer_brings_the_second_hint() {
    Exercises sheet = Exercises.of(1);
    String id = "1a";
    String one = sheet.check(id, 99.0);
    String two = sheet.check(id, 99.0);
    assertThat(one).contains("Hint: ");
    assertThat(two).contains("too large", "Hint: ");
  }
}
