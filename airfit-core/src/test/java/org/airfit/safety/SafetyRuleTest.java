package org.airfit.safety;

import static java.util.Map.entry;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.source.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class SafetyRuleTest {

  private static final Situation NOTHING_TOLD = Situation.describe().build();

  /** The situations of the table as a caller would tell them. */
  private static final Map<String, Situation> SITUATIONS = Map.ofEntries(
      entry("hose inside diameter 0.5 in, construction air tool", hose("0.5 in")),
      entry("hose inside diameter 0.75 in, construction air tool", hose("0.75 in")),
      entry(
          "nailer with automatic feed at 100 psi at the tool",
          Situation.describe().automaticFeed(psi(100)).build()),
      entry("blow gun 30 psi dead-ended, general industry", cleaning(30)),
      entry(
          "mill scale cleaning at 60 psi, construction",
          Situation.describe().cleaning(psi(60)).formsOrMillScale().build()),
      entry(
          "hose used to lower a drill", Situation.describe().toolHoistedByHose().build()),
      entry("system at 250 psi with A-A-59439 couplings", couplers(psi(250))),
      entry("system at 175 psi with A-A-59439 couplings", couplers(psi(175))),
      entry(
          "receiver MAWP 200 psi, safety valve lets pressure reach 218 psi",
          Situation.describe().receiver(psi(200), psi(218)).build()));

  private static final Map<String, SafetyRule> RULES = Map.of(
      "29 CFR 1926.302(b)(7)", Known.HOSE_FAILURE,
      "29 CFR 1926.302(b)(3)", Known.MUZZLE_CONTACT,
      "29 CFR 1910.242(b)", Known.CLEANING_GENERAL_INDUSTRY,
      "29 CFR 1926.302(b)(4)", Known.CLEANING_CONSTRUCTION,
      "29 CFR 1926.302(b)(6)", Known.HOISTING,
      "A-A-59439", Known.FEDERAL_COUPLERS,
      "29 CFR 1910.169 and equivalents", Known.RECEIVER);

  private static final Map<String, Judgement> EXPECTED = Map.of(
      "not required", Judgement.NOT_REQUIRED,
      "required", Judgement.REQUIRED,
      "muzzle safety not required by this paragraph", Judgement.NOT_REQUIRED,
      "not allowed", Judgement.NOT_ALLOWED,
      "limit does not apply", Judgement.DOES_NOT_APPLY,
      "allowed by the description (other parts may limit)", Judgement.ALLOWED,
      "allowed", Judgement.ALLOWED);

  static Stream<Row> rows() {
    return Rows.of(SafetyRuleTest.class, "safety_boundary_cases.csv");
  }

  private static GaugePressure psi(double psi) {
    return GaugePressure.ofPsi(psi);
  }

  private static Situation hose(String bore) {
    return Situation.describe().toolOnHose(Length.parse(bore)).build();
  }

  private static Situation cleaning(double psi) {
    return Situation.describe().cleaning(psi(psi)).build();
  }

  private static Situation couplers(GaugePressure highest) {
    return Situation.describe().federalCouplers(highest).build();
  }

  @Test
  void every_row_of_the_table_is_told() {
    assertThat(rows().map(row -> row.text("situation")))
        .hasSize(9)
        .containsExactlyInAnyOrderElementsOf(SITUATIONS.keySet());
  }

  @ParameterizedTest
  @MethodSource("rows")
  void a_situation_at_the_bound_is_judged_as_the_rule_says(Row row) {
    SafetyRule rule = Objects.requireNonNull(RULES.get(row.text("rule")));
    Situation situation = Objects.requireNonNull(SITUATIONS.get(row.text("situation")));
    assertThat(Ruling.of(rule, situation).judgement())
        .as("%s, %s", row.text("situation"), row.source())
        .isEqualTo(EXPECTED.get(row.text("expected")));
    assertThat(rule.source().citation()).contains(row.text("rule").replace(" and equivalents", ""));
  }

  /** Exactly 30 psi: "less than 30" forbids what "not above 30" allows. Neither is dropped. */
  @Test
  void exactly_thirty_psi_differs_between_the_rules_and_both_are_shown() {
    Ruling industry = Ruling.of(Known.CLEANING_GENERAL_INDUSTRY, cleaning(30));
    Ruling construction = Ruling.of(Known.CLEANING_CONSTRUCTION, cleaning(30));
    Ruling terminals = Ruling.of(Known.CLEANING_MARINE_TERMINALS, cleaning(30));
    assertThat(industry.judgement()).isEqualTo(Judgement.NOT_ALLOWED);
    assertThat(industry.reason()).isEqualTo("30 psig against less than 30 psig.");
    assertThat(construction.judgement()).isEqualTo(Judgement.NOT_ALLOWED);
    assertThat(construction.reason()).isEqualTo("30 psig against less than 30 psig.");
    assertThat(terminals.judgement()).isEqualTo(Judgement.ALLOWED);
    assertThat(terminals.reason()).isEqualTo("30 psig against at most 30 psig.");
  }

  @ParameterizedTest
  @CsvSource({
    "29.9, ALLOWED, ALLOWED",
    "29.99999999, ALLOWED, ALLOWED",
    "30, NOT_ALLOWED, ALLOWED",
    "30.00000001, NOT_ALLOWED, NOT_ALLOWED",
    "31, NOT_ALLOWED, NOT_ALLOWED"
  })
  void cleaning_just_beside_the_bound(double psi, Judgement lessThan, Judgement atMost) {
    assertThat(Ruling.of(Known.CLEANING_GENERAL_INDUSTRY, cleaning(psi)).judgement())
        .isEqualTo(lessThan);
    assertThat(Ruling.of(Known.CLEANING_CONSTRUCTION, cleaning(psi)).judgement())
        .isEqualTo(lessThan);
    assertThat(Ruling.of(Known.CLEANING_MARINE_TERMINALS, cleaning(psi)).judgement())
        .isEqualTo(atMost);
  }

  /** A gauge pressure found as a difference of absolute ones is not below a limit by rounding. */
  @Test
  void thirty_psi_stays_thirty_psi_whatever_the_atmosphere() {
    for (int i = 0; i < 500; i++) {
      AbsolutePressure around = AbsolutePressure.ofBar(0.7 + 0.00091 * i);
      GaugePressure found = GaugePressure.of(psi(30).absolute(around), around);
      Situation situation = Situation.describe().cleaning(found).build();
      assertThat(Ruling.of(Known.CLEANING_CONSTRUCTION, situation))
          .hasToString(
              "Cleaning pressure (construction): not allowed. 30 psig against less than 30 psig.");
      assertThat(Ruling.of(Known.CLEANING_MARINE_TERMINALS, situation).judgement())
          .isEqualTo(Judgement.ALLOWED);
    }
  }

  /** A reason that says "30 against less than 30" would not be one. */
  @Test
  void a_reason_shows_enough_digits_to_be_one() {
    assertThat(Ruling.of(Known.CLEANING_GENERAL_INDUSTRY, cleaning(29.9999)).reason())
        .isEqualTo("29.9999 psig against less than 30 psig.");
    assertThat(Ruling.of(Known.HOSE_FAILURE, hose("0.50001 in")).reason())
        .isEqualTo("0.50001 in of bore, asked for above 1/2 in.");
    assertThat(Ruling.of(
                Known.RATED_PRESSURE,
                Situation.describe().ratedParts(psi(150), psi(149.99996)).build())
            .reason())
        .isEqualTo("150 psig against at most 149.99996 psig, the rating of the weakest part.");
  }

  @Test
  void every_rule_on_cleaning_is_shown_and_a_low_pressure_does_not_spare_the_guards() {
    assertThat(SafetyRules.usFederal().cautions(cleaning(5)))
        .extracting(Caution::title)
        .containsExactly(
            "Guards when cleaning with air", "Eye protection", "Before anyone connects this");
    assertThat(SafetyRules.usFederal().cautions(cleaning(30)))
        .extracting(Caution::title)
        .containsExactly(
            "Cleaning pressure (general industry)",
            "Cleaning pressure (construction)",
            "Guards when cleaning with air",
            "Eye protection",
            "Before anyone connects this");
    assertThat(Ruling.of(Known.CLEANING_MARINE_TERMINALS, cleaning(30)).judgement())
        .isEqualTo(Judgement.ALLOWED);
    assertThat(Ruling.of(Known.CLEANING_MARINE_TERMINALS, cleaning(30.00000001)).judgement())
        .isEqualTo(Judgement.NOT_ALLOWED);
  }

  @Test
  void forms_and_mill_scale_are_excepted_in_construction_only() {
    Situation scale = Situation.describe().cleaning(psi(60)).formsOrMillScale().build();
    assertThat(Ruling.of(Known.CLEANING_CONSTRUCTION, scale).reason()).contains("does not apply");
    assertThat(Ruling.of(Known.CLEANING_GENERAL_INDUSTRY, scale).judgement())
        .isEqualTo(Judgement.NOT_ALLOWED);
    assertThat(Ruling.of(Known.CLEANING_MARINE_TERMINALS, scale).judgement())
        .isEqualTo(Judgement.NOT_ALLOWED);
  }

  @Test
  void a_receiver_says_what_110_percent_are() {
    assertThat(Ruling.of(
                Known.RECEIVER,
                Situation.describe().receiver(psi(200), psi(221)).build())
            .reason())
        .isEqualTo("221 psig against at most 220 psig, which are 110 % of 200 psig, the rating of"
            + " the receiver.");
  }

  @ParameterizedTest
  @CsvSource({"99.999, NOT_REQUIRED", "100, NOT_REQUIRED", "100.001, REQUIRED", "120, REQUIRED"})
  void fasteners_that_feed_by_themselves(double psi, Judgement judgement) {
    assertThat(Ruling.of(
                Known.MUZZLE_CONTACT,
                Situation.describe().automaticFeed(psi(psi)).build())
            .judgement())
        .isEqualTo(judgement);
  }

  @ParameterizedTest
  @CsvSource({
    "3/8 in, NOT_REQUIRED",
    "12.7 mm, NOT_REQUIRED",
    "12.71 mm, REQUIRED",
    "1 in, REQUIRED"
  })
  void hoses_of_half_an_inch_are_not_larger_than_half_an_inch(String bore, Judgement judgement) {
    assertThat(Ruling.of(Known.HOSE_FAILURE, hose(bore)).judgement()).isEqualTo(judgement);
  }

  /** The description prints 232 psi and, beside it, 16 bar, which are 232.06 psi: both are allowed. */
  @ParameterizedTest
  @CsvSource({
    "231.9 psig, ALLOWED",
    "232 psig, ALLOWED",
    "15.99 bar(g), ALLOWED",
    "16 bar(g), ALLOWED",
    "232.06 psig, ALLOWED",
    "16.00001 bar(g), NOT_ALLOWED",
    "232.061 psig, NOT_ALLOWED",
    "232.1 psig, NOT_ALLOWED"
  })
  void couplers_may_see_both_printed_limits(String highest, Judgement judgement) {
    assertThat(Ruling.of(Known.FEDERAL_COUPLERS, couplers(GaugePressure.parse(highest)))
            .judgement())
        .isEqualTo(judgement);
    assertThat(Known.FEDERAL_COUPLERS.limit()).contains("232 psig (16 bar(g))");
    assertThat(Ruling.of(Known.DEPRESSURISE, couplers(psi(90))).judgement())
        .isEqualTo(Judgement.REQUIRED);
  }

  /** Exactly 110 %, in psi and in bar, as anybody would type it. */
  @Test
  void a_receiver_may_reach_exactly_110_percent_and_no_more() {
    for (int rating = 1; rating <= 5000; rating++) {
      double reaches = rating * 11 / 10.0;
      assertThat(receiver(psi(rating), psi(reaches))).isEqualTo(Judgement.ALLOWED);
      assertThat(receiver(GaugePressure.ofBar(rating), GaugePressure.ofBar(reaches)))
          .isEqualTo(Judgement.ALLOWED);
      assertThat(receiver(psi(rating), psi(reaches * (1.0 + 1.0e-12))))
          .isEqualTo(Judgement.NOT_ALLOWED);
    }
  }

  private static Judgement receiver(GaugePressure rating, GaugePressure reaches) {
    return Ruling.of(
            Known.RECEIVER, Situation.describe().receiver(rating, reaches).build())
        .judgement();
  }

  @ParameterizedTest
  @CsvSource({"149, ALLOWED", "150, ALLOWED", "150.001, NOT_ALLOWED"})
  void the_weakest_part_rates_the_line(double psi, Judgement judgement) {
    Ruling ruling = Ruling.of(
        Known.RATED_PRESSURE,
        Situation.describe().ratedParts(psi(psi), psi(150)).build());
    assertThat(ruling.judgement()).isEqualTo(judgement);
    assertThat(ruling.caution().isPresent()).isEqualTo(judgement == Judgement.NOT_ALLOWED);
  }

  @Test
  void a_hammer_on_a_coupler_calls_for_a_whip_hose() {
    Situation hammer = Situation.describe().impactTool().build();
    Situation coupled = Situation.describe().impactTool().quickCouplers().build();
    assertThat(Ruling.of(Known.WHIP_HOSE, hammer).judgement()).isEqualTo(Judgement.DOES_NOT_APPLY);
    assertThat(Ruling.of(Known.WHIP_HOSE, coupled).judgement()).isEqualTo(Judgement.REQUIRED);
    assertThat(Ruling.of(Known.IMPACT_RETAINER, hammer).judgement()).isEqualTo(Judgement.REQUIRED);
    assertThat(Ruling.of(Known.CONNECTION_RESTRAINT, hose("3/8 in")).judgement())
        .isEqualTo(Judgement.REQUIRED);
  }

  static Stream<SafetyRule> all() {
    return SafetyRules.bundled().rules().stream();
  }

  @ParameterizedTest
  @MethodSource("all")
  void what_was_not_told_is_not_guessed(SafetyRule rule) {
    Ruling ruling = Ruling.of(rule, NOTHING_TOLD);
    assertThat(ruling.judgement()).isEqualTo(Judgement.DOES_NOT_APPLY);
    assertThat(ruling.reason()).isNotBlank().endsWith(".");
    assertThat(ruling.caution()).isEmpty();
    assertThat(ruling.rule()).isEqualTo(rule);
  }

  @ParameterizedTest
  @MethodSource("all")
  void every_rule_says_what_it_demands_and_where_it_stands(SafetyRule rule) {
    assertThat(rule.title()).isNotBlank();
    assertThat(rule.demand()).endsWith(".");
    assertThat(rule.source().citation()).isNotBlank();
    assertThat(rule.text()).isNotBlank();
    assertThat(rule.seenIn()).isNotBlank();
    assertThat(rule.toString()).startsWith(rule.title() + ": " + rule.citation());
    assertThat(rule.isJudged()).isEqualTo(rule.judgedBy().isEmpty());
    assertThat(rule.limit().isPresent()).isEqualTo(rule.operator().isPresent());
  }

  /** However little is told, local codes, makers' ratings and licensed practice come first. */
  @Test
  void every_list_of_cautions_ends_by_deferring() {
    Situation everything = Situation.describe()
        .federalCouplers(psi(250))
        .toolOnHose(Length.ofInches(0.75))
        .impactTool()
        .automaticFeed(psi(120))
        .cleaning(psi(60))
        .ratedParts(psi(250), psi(150))
        .receiver(psi(200), psi(250))
        .toolHoistedByHose()
        .clothing(psi(30))
        .hoseInMine(Length.ofInches(1.0))
        .maintenance()
        .plasticPipe()
        .blasting()
        .painting()
        .lubricatedLine()
        .militaryConstruction()
        .build();
    for (Situation situation : List.of(NOTHING_TOLD, everything)) {
      List<Caution> cautions = SafetyRules.usFederal().cautions(situation);
      Caution last = cautions.get(cautions.size() - 1);
      assertThat(last.text())
          .contains("not an approval")
          .contains("US federal law", "Other places have other rules")
          .contains("Local codes")
          .contains("makers' ratings")
          .contains("licensed");
    }
    assertThat(SafetyRules.usFederal().cautions(NOTHING_TOLD)).hasSize(1);
    List<String> titles = SafetyRules.usFederal().rules().stream()
        .filter(SafetyRule::isJudged)
        .map(SafetyRule::title)
        .distinct()
        .filter(title -> !title.equals("Whip restraint")) // in a mine, the mine's
        .toList();
    assertThat(SafetyRules.usFederal().cautions(everything))
        .extracting(Caution::title)
        .startsWith(titles.toArray(String[]::new))
        .hasSize(titles.size() + 1)
        .startsWith("Depressurise before uncoupling");
  }

  @Test
  void a_caution_tells_the_demand_the_case_and_the_rule() {
    assertThat(Ruling.of(Known.HOSE_FAILURE, hose("0.75 in")).caution().orElseThrow())
        .hasToString(
            "Hose failure protection: A hose of more than 1/2 in inside diameter needs a"
                + " device at the source or branch that cuts the flow if it fails (US construction"
                + " work). Here: 3/4 in of bore, asked for above 1/2 in. [29 CFR 1926.302(b)(7) (text of the rule)]");
  }

  /** A missing pressure must not pass for one that nobody told. */
  @Test
  @SuppressWarnings("NullAway") // what a caller without null checks could pass
  void what_is_missing_is_refused() {
    Situation.Builder builder = Situation.describe();
    assertThatNullPointerException().isThrownBy(() -> builder.cleaning(null));
    assertThatNullPointerException().isThrownBy(() -> builder.automaticFeed(null));
    assertThatNullPointerException().isThrownBy(() -> builder.toolOnHose(null));
    assertThatNullPointerException().isThrownBy(() -> builder.clothing(null));
    assertThatNullPointerException().isThrownBy(() -> builder.hoseInMine(null));
    assertThatNullPointerException().isThrownBy(() -> builder.federalCouplers(null));
    assertThatNullPointerException().isThrownBy(() -> builder.ratedParts(null, psi(1)));
    assertThatNullPointerException().isThrownBy(() -> builder.ratedParts(psi(1), null));
    assertThatNullPointerException().isThrownBy(() -> builder.receiver(null, psi(1)));
    assertThatNullPointerException().isThrownBy(() -> builder.receiver(psi(1), null));
    assertThatNullPointerException()
        .isThrownBy(() -> new Caution(null, "text", Source.commonPractice("a test")));
    assertThatNullPointerException()
        .isThrownBy(() ->
            new Ruling(Known.HOISTING, Situation.describe().build(), Judgement.ALLOWED, null));
  }

  private static SafetyRule own(String quantity, String operator, String limit, String unit) {
    return SafetyRules.ofTable(
            "jurisdiction,citation,text,quantity,operator,limit,unit,asks,when,unless,source,basis\n"
                + "Works,one,one," + quantity + "," + operator + "," + limit + "," + unit
                + ",forbids,,,board,read\n")
        .rules()
        .get(0);
  }

  /** Tried beside the limit: just there the judgement turns. */
  @Test
  void a_pressure_and_a_share_of_a_rating_tell_where_they_turn() {
    SafetyRule line = own("line pressure", "<=", "130", "psi");
    GaugePressure limit = line.pressureLimit().orElseThrow();
    assertThat(limit).isEqualTo(GaugePressure.ofPsi(130.0));
    assertThat(judged(line, limit)).isEqualTo(Judgement.ALLOWED);
    assertThat(judged(line, GaugePressure.ofPascals(limit.pascals() * (1.0 + 1.0e-9))))
        .isEqualTo(Judgement.NOT_ALLOWED);
    assertThat(line.pressureLimit(GaugePressure.ofBar(10.0))).isEmpty();
    SafetyRule share = own("share of lowest rating", "<=", "70", "percent");
    assertThat(share.pressureLimit()).isEmpty();
    assertThat(share.pressureLimit(GaugePressure.ofBar(10.0)).orElseThrow().bar())
        .isCloseTo(7.0, within(1.0e-12));
    SafetyRule bore = own("hose bore", "<", "12", "mm");
    assertThat(bore.pressureLimit()).isEmpty();
    assertThat(bore.pressureLimit(GaugePressure.ofBar(10.0))).isEmpty();
    assertThat(SafetyRules.bundled().rules())
        .filteredOn(rule -> !rule.isJudged())
        .isNotEmpty()
        .allMatch(rule -> rule.pressureLimit().isEmpty());
  }

  private static Judgement judged(SafetyRule rule, GaugePressure highest) {
    return Ruling.of(rule, Situation.describe().linePressure(highest).build()).judgement();
  }
}
