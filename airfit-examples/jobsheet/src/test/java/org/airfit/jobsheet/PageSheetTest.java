package org.airfit.jobsheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.airfit.files.Disk;
import org.airfit.files.Document;
import org.airfit.files.JobLabel;
import org.airfit.files.Shop;
import org.airfit.files.WrongFileException;
import org.airfit.safety.Caution;
import org.airfit.select.Joint;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What a shop hands over: its head, what it leaves out, and what it says once. */
class PageSheetTest {

  private static final Path JOBS = Path.of("..", "jobs");

  private static final Letterhead HEAD = Letterhead.of(
      Optional.of(new Shop(
          "Quay Street Air Supply (invented)",
          List.of("2 Quay Street"),
          Optional.of("555-0163"),
          Optional.of("USD"),
          Optional.of(30),
          Optional.of("Prices without sales tax."))),
      new JobLabel(Optional.of("2041"), Optional.of(LocalDate.of(2026, 11, 28))),
      LocalDate.of(2030, 1, 1));

  private static JobSheet sheet(String job) throws WrongFileException {
    return JobSheet.of(Disk.job(JOBS.resolve(job)));
  }

  /** What stands between the marks, without the style. */
  private static String seen(String page) {
    return page.replaceAll("(?s)<style>.*?</style>", "").replaceAll("<[^>]*>", " ");
  }

  /** A step is one block that no end of a side parts; what is longer than a line goes on under its beginning. */
  @Test
  void the_steps_of_a_working_stand_together() throws WrongFileException {
    String reasons = PageReasons.of(sheet("boatyard/weak-sander.json"));
    String working = reasons.substring(reasons.indexOf(">The working<"));
    assertThat(working)
        .containsPattern(
            "<span class=\"step\"><span class=\"l h\" style=\"padding-left:\\d+ch\">Reynolds number</span>"
                + "<span class=\"l h\" [^>]*>Re = 4 × ṁ / [^<]*</span><span class=\"l\" [^>]*>= 4 × [^<]*</span>"
                + "<span class=\"l\" [^>]*>= \\d[.]\\d+ × 10⁴</span><span class=\"l\" [^>]*><a href=\"#s\\d+\">\\[definition")
        .doesNotContain("\n  ");
    int steps = working.split("class=\"step\"", -1).length - 1;
    assertThat(working.split(">\\[[^<]*\\]</a></span></span>", -1).length - 1)
        .isEqualTo(steps)
        .isGreaterThan(20);
  }

  static Stream<String> jobs() {
    return Stream.of(
        "boatyard/blow-gun.json",
        "boatyard/weak-sander.json",
        "boatyard/three-offers.json",
        "quarry-road/tire-shop.json",
        "tyre-bay/weak-impact-wrench.json",
        "machine-shop/filter-regulator-lubricator.json",
        "counter/socket-alone.json",
        "counter/two-near-plugs.json",
        "counter/old-barbed-hose.json",
        "counter/long-reach.json");
  }

  @Test
  void the_head_has_shop_number_date_customer_and_how_long_the_offer_holds() throws Exception {
    String page =
        PageSheet.of(sheet("boatyard/weak-sander.json"), HEAD, Optional.of("x-reasons.html"));
    assertThat(seen(page).replaceAll("\\s+", " "))
        .contains("Quay Street Air Supply (invented) 2 Quay Street Telephone 555-0163")
        .contains("Job no. 2041 Date 2026-11-28 Offer valid until 2026-12-28")
        .contains("Job sheet for Tern Creek Boatyard (invented)")
        .contains("price, USD")
        .contains("Together Prices without sales tax. 139.20");
    assertThat(page)
        .contains("@bottom-left { content: \"Job 2041, The orbital sander on slip 2 runs weak\";")
        .contains("\"page \" counter(page) \" of \" counter(pages)")
        .contains("<footer class=\"bottom screen\"><a href=\"x-reasons.html\">");
  }

  @Test
  void what_is_not_told_is_a_line_to_fill_in() throws Exception {
    String page = PageSheet.of(sheet("boatyard/weak-sander.json"));
    assertThat(page.split("<span class=\"blank\"></span>", -1))
        .as("number and date")
        .hasSize(3);
    assertThat(seen(page))
        .contains("Ferry Lane Air Counter (invented)") // the catalogue is the shop's
        .contains("139.20 USD")
        .doesNotContain("Offer valid");
  }

  /** Sources stand in the page of reasons; letters with a line are symbols whose index was not set low. */
  @ParameterizedTest
  @MethodSource("jobs")
  void the_sheet_has_no_source_no_set_and_every_index_low(String job) throws Exception {
    JobSheet sheet = sheet(job);
    String seen = seen(PageSheet.of(sheet, HEAD, Optional.empty()));
    for (Caution caution : InWords.cautions(sheet)) {
      assertThat(seen).doesNotContain(caution.source().toString());
      assertThat(seen(PageReasons.of(sheet, HEAD)))
          .contains(Html.escaped(caution.source().toString()));
    }
    assertThat(seen)
        .doesNotContain("the set &quot;", "Reference set", "(handbook)", "(standard)", "no source")
        .doesNotContainPattern("\\b[A-Za-z]_[a-z]\\b")
        .doesNotContain("…", "not concerned", "the cure", "no cure", "most is gained at")
        .doesNotContainPattern("[0-9]\\.[0-9]{5}");
    assertThat(seen(PageReasons.of(sheet, HEAD))).doesNotContainPattern("\\b[DLWd]_[a-z]\\b");
  }

  /** Nothing on the side is said twice: no sentence of more than a few words. */
  @ParameterizedTest
  @MethodSource("jobs")
  void the_sheet_says_nothing_twice(String job) throws Exception {
    String seen = seen(PageSheet.of(sheet(job), HEAD, Optional.empty())).replaceAll("\\s+", " ");
    List<String> sentences = new ArrayList<>();
    for (String sentence : seen.split("(?<=[.:;?]) ", -1)) {
      if (sentence.split(" ", -1).length > 5) {
        sentences.add(sentence.strip());
      }
    }
    assertThat(sentences).isNotEmpty().doesNotHaveDuplicates();
  }

  @ParameterizedTest
  @MethodSource("jobs")
  void to_depressurise_stands_first_among_the_cautions_and_the_deference_last(String job)
      throws Exception {
    List<Answer> cautions = PageFound.cautions(sheet(job));
    assertThat(cautions.get(0).what()).isEqualTo("Depressurise before uncoupling");
    assertThat(cautions.get(cautions.size() - 1).answer()).contains("This is a calculation");
  }

  /** The side towards the supply first, each with the end it has itself: the outlet's thread stands at the outlet. */
  @Test
  void a_joint_names_both_its_ends_the_right_way_round() throws Exception {
    JobSheet sheet = sheet("boatyard/blow-gun.json");
    List<Joint> joints = PageFound.proposal(sheet).orElseThrow().joints();
    assertThat(joints.stream().map(BillPlaces::between))
        .containsExactly(
            "outlet (1/2 NPT female) to socket (3/8 NPT female)",
            "plug (3/8 NPT female) to hose (3/8 NPT male)",
            "hose (3/8 NPT male) to socket (3/8 NPT female)",
            "plug (1/4 NPT male) to tool (1/4 NPT female)");
    assertThat(seen(PageSheet.of(sheet)))
        .contains("outlet (1/2 NPT female) to socket (3/8 NPT female)");
  }

  @Test
  void a_name_in_the_style_sheet_breaks_out_of_nothing() {
    assertThat(PageStyle.of("a\"; } </style><b>\\ é", ""))
        .contains("content: \"a\\22 \\3b  \\7d  \\3c \\2f style\\3e \\3c b\\3e \\5c  \\e9 \";")
        .doesNotContain("</style>");
  }

  @Test
  void an_index_is_set_low_in_a_working_by_the_symbol_it_belongs_to() throws Exception {
    String page = PageReasons.of(sheet("boatyard/weak-sander.json"));
    assertThat(page).contains("p<sub>1</sub>", "T<sub>1</sub>").doesNotContain("= p1 −");
  }

  @Test
  void a_settings_file_says_what_is_wrong_in_it() throws Exception {
    assertThat(Shop.read(Document.of("letterhead.json", Map.of("name", "x"))).validDays())
        .isEmpty();
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> Shop.read(Document.of("letterhead.json", Map.of("phone", "1"))))
        .withMessageContaining("name: is missing");
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() ->
            Shop.read(Document.of("letterhead.json", Map.of("name", "x", "currency", "dollars"))))
        .withMessageContaining("three capital letters");
    for (int days : new int[] {0, 3651}) {
      assertThatExceptionOfType(WrongFileException.class)
          .isThrownBy(() ->
              Shop.read(Document.of("letterhead.json", Map.of("name", "x", "validDays", days))))
          .withMessageContaining("[1, 3650]");
    }
    assertThat(Shop.read(Document.of("letterhead.json", Map.of("name", "x", "validDays", 3650)))
            .validDays())
        .contains(3650);
  }

  /** The longest name of the chart stands whole, in as many lines as it takes. */
  @Test
  void no_name_in_a_chart_is_cut_short() throws Exception {
    String page = PageReasons.of(sheet("boatyard/blow-gun.json"));
    String words = Pattern.compile("<text class=\"ink\"[^>]*>([^<]*)</text>")
        .matcher(page)
        .results()
        .map(text -> text.group(1))
        .reduce("", (one, other) -> one + " " + other);
    assertThat(words.replaceAll(" +", " "))
        .contains("coupling at the tool, Socket Gannet, stainless, guarded, 3/8 NPT female");
  }

  /** On a telephone the names stand where the dashed upright of what the tool needs would go through their letters. */
  @Test
  void the_upright_of_the_need_goes_through_no_name_of_a_narrow_chart() throws Exception {
    String page = PageReasons.of(sheet("boatyard/weak-sander.json"));
    String narrow = page.substring(page.indexOf("<div class=\"narrow\">"));
    narrow = narrow.substring(0, narrow.indexOf("</svg>"));
    Matcher name = Pattern.compile(
            "<text class=\"ink\" x=\"4.0\" y=\"([0-9.]+)\" text-anchor=\"start\">([^<]*)</text>")
        .matcher(narrow);
    int names = 0;
    int crossing = 0;
    while (name.find()) {
      names++;
      double base = Double.parseDouble(name.group(1));
      // narrower than a letter is in any of the fonts that the drawing names (Arial: 0.5 em in the
      // mean)
      double end = 4.0 + 0.5 * 12.0 * name.group(2).length();
      Matcher upright = Pattern.compile(
              "<line class=\"need\" x1=\"([0-9.]+)\" y1=\"([0-9.]+)\" x2=\"[0-9.]+\" y2=\"([0-9.]+)\"")
          .matcher(narrow);
      while (upright.find()) {
        boolean besideLetters = Double.parseDouble(upright.group(2)) < base
            && Double.parseDouble(upright.group(3)) > base - 8.0;
        if (besideLetters && Double.parseDouble(upright.group(1)) < end) {
          crossing++;
        }
      }
    }
    assertThat(names).isGreaterThan(4);
    assertThat(crossing).isZero();
  }
}
