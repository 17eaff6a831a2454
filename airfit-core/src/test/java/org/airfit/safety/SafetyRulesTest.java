package org.airfit.safety;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;

import java.util.List;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.source.Basis;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A user's own rules load as the bundled ones do; a place has its own rules. */
class SafetyRulesTest {

  private static final String HEADING =
      "jurisdiction,citation,scope,text,quantity,operator,limit,unit,when,unless,asks,source,basis\n";

  private static SafetyRule one(String row) {
    List<SafetyRule> rules = SafetyRules.ofTable(HEADING + row).rules();
    assertThat(rules).hasSize(1);
    return rules.get(0);
  }

  private static Judgement judged(SafetyRule rule, Situation.Builder situation) {
    return Ruling.of(rule, situation.build()).judgement();
  }

  private static GaugePressure bar(double bar) {
    return GaugePressure.ofBar(bar);
  }

  @Test
  void a_rule_of_ones_own_is_judged_and_cited_like_a_bundled_one() {
    SafetyRules own = SafetyRules.ofTable(HEADING
        + "Tern Creek yard,rule 7,yard,\"no more than the yard allows, at a gun\",cleaning pressure,<=,1.5,bar,"
        + ",,,yard handbook,read\n");
    SafetyRules all = SafetyRules.usFederal().with(own);
    List<Caution> cautions =
        all.cautions(Situation.describe().cleaning(bar(1.6)).build());
    assertThat(cautions)
        .extracting(Caution::toString)
        .contains(
            "rule 7: No more than the yard allows, at a gun. Here: 1.6 bar(g) against at most 1.5"
                + " bar(g). [Tern Creek yard, rule 7 (text of the rule)]");
    assertThat(all.cautions(Situation.describe().cleaning(bar(1.5)).build()))
        .extracting(Caution::title)
        .doesNotContain("rule 7");
    assertThat(all.places())
        .isEqualTo(
            "It was judged by rules of US federal law, Tern Creek yard, as far as airfit holds"
                + " them. Other places have other rules.");
    assertThat(all.with(own)).isEqualTo(all).hasSameHashCodeAs(all).isNotEqualTo(own);
    assertThat(all.rule("rule 7").seenIn()).isEqualTo("yard handbook");
  }

  @Test
  void the_reference_columns_alone_do_if_the_parameter_names_the_quantity() {
    String table = """
        jurisdiction,citation,scope,fact_paraphrased,parameter,operator,limit,unit,source,basis
        US-OR,OAR x,construction,large hoses are tied down,hose bore,>=,0.75,in,page,memory
        """;
    SafetyRule rule = SafetyRules.ofTable(table.replace("\n", "\r\n")).rules().get(0);
    assertThat(rule.source().basis()).isEqualTo(Basis.FROM_MEMORY);
    assertThat(rule.demand()).isEqualTo("Large hoses are tied down.");
    assertThat(judged(rule, Situation.describe().toolOnHose(Length.ofInches(0.74))))
        .isEqualTo(Judgement.NOT_REQUIRED);
    Ruling ruling =
        Ruling.of(rule, Situation.describe().toolOnHose(Length.ofInches(0.75)).build());
    assertThat(ruling.judgement()).isEqualTo(Judgement.REQUIRED);
    assertThat(ruling.reason()).isEqualTo("3/4 in of bore, asked for from 3/4 in on.");
  }

  /** Whatever a rule says of its own number, it says of the number printed beside it: all four operators. */
  @ParameterizedTest
  @CsvSource({
    "<=, forbids, 231, ALLOWED",
    "<=, forbids, 232, ALLOWED",
    "<=, forbids, 232.0603, ALLOWED",
    "<=, forbids, 232.07, NOT_ALLOWED",
    "<, forbids, 231.9, ALLOWED",
    "<, forbids, 232, NOT_ALLOWED",
    "<, forbids, 232.0603, NOT_ALLOWED",
    ">, requires, 232, NOT_REQUIRED",
    ">, requires, 232.0603, NOT_REQUIRED",
    ">, requires, 232.07, REQUIRED",
    ">=, requires, 231.99, NOT_REQUIRED",
    ">=, requires, 232, REQUIRED",
    ">=, requires, 232.0603, REQUIRED",
    ">=, forbids, 231.9, NOT_ALLOWED",
    ">=, forbids, 232, ALLOWED",
    ">=, forbids, 232.0603, ALLOWED"
  })
  void two_printed_values_are_treated_alike(
      String operator, String asks, double psi, Judgement judgement) {
    for (String printed : List.of("232,psi (16 bar)", "16,bar (232 psi)", "16,bar(g) (232 psig)")) {
      SafetyRule rule =
          one("US,x,,y,line pressure," + operator + "," + printed + ",,," + asks + ",z,read\n");
      assertThat(judged(
              rule,
              Situation.describe().ratedParts(GaugePressure.ofPsi(psi), GaugePressure.ofPsi(999))))
          .as(printed)
          .isEqualTo(judgement);
    }
  }

  @ParameterizedTest
  @CsvSource({
    "0.5, in (13 mm)",
    "12.7, mm (1/2 in)",
    "12.7, mm (0.5 in)",
    "30, psi (207 kPa)",
    "30, psi (2.1 bar)",
    "2, 'bar (advice, not law)'"
  })
  void values_that_agree_when_rounded_and_remarks_are_read(String limit, String unit) {
    String quantity = unit.contains("in") ? "hose bore" : "cleaning pressure";
    String row = "US,x,,y," + quantity + ",<=," + limit + ",\"" + unit + "\",,,,z,read\n";
    if (unit.contains("1/2")) {
      assertThatIllegalArgumentException().isThrownBy(() -> one(row)); // a number has no stroke
    } else {
      assertThat(one(row).limit()).isPresent();
    }
  }

  @Test
  void a_rule_waits_for_all_its_facts_and_is_excepted_by_one() {
    SafetyRule rule = one("US,x,,y,,,,,percussion tool; quick couplers,mine,forbids,z,practice\n");
    assertThat(judged(rule, Situation.describe().impactTool())).isEqualTo(Judgement.DOES_NOT_APPLY);
    assertThat(judged(rule, Situation.describe().impactTool().quickCouplers()))
        .isEqualTo(Judgement.NOT_ALLOWED);
    Ruling excepted = Ruling.of(
        rule,
        Situation.describe()
            .impactTool()
            .quickCouplers()
            .hoseInMine(Length.ofInches(1.0))
            .build());
    assertThat(excepted.judgement()).isEqualTo(Judgement.DOES_NOT_APPLY);
    assertThat(excepted.reason()).isEqualTo("the rule does not apply where the line is in a mine.");
    assertThat(judged(one("US,x,,wear gloves,,,,,,,,z,practice\n"), Situation.describe()))
        .as("nothing to wait for: it is on every line")
        .isEqualTo(Judgement.REQUIRED);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        ",x,,y,,,,,,,,z,read | row 2, column jurisdiction: was empty",
        "US,,,y,,,,,,,,z,read | row 2, column citation: was empty",
        "US,x,,,,,,,,,,z,read | row 2, column text: was empty; say what the rule demands",
        "US,x,,y,,,,,,,,,read | row 2, column source: was empty",
        "US,x,,y,,,,,,,,z,hearsay | row 2, column basis: was \"hearsay\"; accepted: read, law, standard",
        "US,x,,y,pressure,<,30,psi,,,,z,read | row 2, column quantity: was \"pressure\"; accepted: cleaning",
        "US,x,,y,,<,30,psi,,,,z,read | row 2, column quantity: was empty, but the rule has a limit",
        "US,x,,y,cleaning pressure,=<,30,psi,,,,z,read | row 2, column operator: was \"=<\"; accepted: <, <=, >, >=",
        "US,x,,y,cleaning pressure,<,thirty,psi,,,,z,read | row 2, column limit: was \"thirty\"; accepted: a number",
        "US,x,,y,cleaning pressure,<,-30,psi,,,,z,read | row 2, column limit: was \"-30\"",
        "US,x,,y,cleaning pressure,<,1e3,psi,,,,z,read | row 2, column limit: was \"1e3\"",
        "US,x,,y,cleaning pressure,<,,psi,,,,z,read | row 2, column limit: was empty",
        "US,x,,y,cleaning pressure,<,30,in,,,,z,read | row 2, column unit: was \"in\"; accepted: Pa, kPa",
        "US,x,,y,hose bore,<,30,psi,,,,z,read | row 2, column unit: was \"psi\"; accepted: m, mm",
        "US,x,,y,hose bore,<,0.5,in (14 mm),,,,z,read | row 2, column unit: was \"in (14 mm)\", but 14 mm is not",
        "US,x,,y,share of lowest rating,<,110,psi,,,,z,read | row 2, column unit: was \"psi\"; accepted: percent",
        "US,x,,y,,,,,hammering,,,z,read | row 2, column when: was \"hammering\"; accepted, with semicolons",
        "US,x,,y,,,,,,mines,,z,read | row 2, column unless: was \"mines\"",
        "US,x,,y,,,,,,,wants,z,read | row 2, column asks: was \"wants\"; accepted: requires, forbids",
        "US,x,,y,,,,,,,,z | row 2 must have 13 cells as the heading has, was 12",
        "US,x,,\"y,,,,,,,,z,read | row 2 must close its quotation marks"
      })
  void a_wrong_cell_is_named_with_what_is_accepted(String row, String message) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> SafetyRules.ofTable(HEADING + row))
        .withMessageStartingWith(message.strip());
  }

  @Test
  void a_table_split_into_cells_reads_as_its_text_does() {
    String text = "jurisdiction,citation,text,source,basis\nUS,x,y,z,read\n,,,,\n";
    List<List<String>> cells = List.of(
        List.of("jurisdiction", "citation", "text", "source", "basis"),
        List.of("US", "x", "y", "z", "read"),
        List.of("", "", "", "", ""));
    assertThat(SafetyRules.ofRows(cells)).isEqualTo(SafetyRules.ofTable(text));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> SafetyRules.ofRows(List.of(cells.get(0), cells.get(2), List.of("US"))))
        .withMessageStartingWith("row 3 must have 5 cells");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> SafetyRules.ofRows(List.of()))
        .withMessage("table must begin with a heading, was empty");
  }

  @Test
  void a_wrong_heading_is_named() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> SafetyRules.ofTable(""))
        .withMessage("table must begin with a heading, was empty");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> SafetyRules.ofTable(HEADING))
        .withMessage("table of rules must have at least one rule, was empty");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> SafetyRules.ofTable("citation,text,source,basis\nx,y,z,read\n"))
        .withMessageStartingWith("row 1 must have a column jurisdiction, was without");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> SafetyRules.ofTable(
            "jurisdiction,citation,text,source,basis,limits\nUS,x,y,z,read,1\n"))
        .withMessageContaining("was \"limits\"");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> SafetyRules.ofTable("jurisdiction,citation,citation\nUS,x,y\n"))
        .withMessage("row 1 must name each column once, was \"citation\" twice");
  }

  @Test
  void quotes_line_ends_blank_rows_and_a_byte_order_mark_are_read() {
    SafetyRules rules = SafetyRules.ofTable("\uFEFF" + HEADING.replace("\n", "\r\n")
        + ",,,,,,,,,,,,\r\n" + "US,x,,\"say \"\"no\"\",\nthen go\",,,,,,,,z,read");
    assertThat(rules.rules().get(0).text()).isEqualTo("say \"no\",\nthen go");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> SafetyRules.ofTable(HEADING + ",,,,,,,,,,,,\nUS,x,,y,,,,,,,no,z,read\n"))
        .as("blank rows count as rows of the sheet")
        .withMessageStartingWith("row 3, column asks");
  }

  @Test
  void a_place_has_its_own_rules_those_of_its_country_and_those_of_practice() {
    SafetyRules california = SafetyRules.bundled().in("US-CA");
    assertThat(california.rules())
        .extracting(SafetyRule::jurisdiction)
        .contains("US", "US-CA", "ISO", "any")
        .doesNotContain("GB", "CA-QC");
    Situation clothing =
        Situation.describe().clothing(GaugePressure.ofPsi(10.1)).build();
    assertThat(california.cautions(clothing))
        .extracting(Caution::title)
        .contains("Air on clothing", "Air on clothing (California)");
    assertThat(SafetyRules.usFederal().cautions(clothing))
        .extracting(Caution::title)
        .contains("Air on clothing")
        .doesNotContain("Air on clothing (California)");
    assertThat(SafetyRules.usFederal().rules())
        .extracting(SafetyRule::jurisdiction)
        .containsOnly("US", "ISO", "any");
    assertThat(SafetyRules.bundled().in("us")).isEqualTo(SafetyRules.usFederal());
    assertThat(SafetyRules.bundled().in("us-Ca"))
        .isEqualTo(SafetyRules.bundled().in("US-CA"));
    assertThat(SafetyRules.bundled().in("USA").places()).contains("by the law of no place");
    assertThat(SafetyRules.bundled().in("CA").places())
        .isEqualTo(
            "It was judged by general practice alone, by the law of no place. Other places have"
                + " other rules.");
    SafetyRules britain = SafetyRules.bundled().in("GB");
    Situation gun = Situation.describe().cleaning(bar(2.001)).build();
    assertThat(britain.cautions(gun))
        .extracting(Caution::title)
        .contains("Advised cleaning pressure (Great Britain)")
        .doesNotContain("Cleaning pressure (general industry)");
    assertThat(britain.cautions(Situation.describe().cleaning(bar(2.0)).build()))
        .extracting(Caution::title)
        .doesNotContain("Advised cleaning pressure (Great Britain)");
  }

  @Test
  void rules_of_one_title_give_one_caution_with_all_citations_and_the_strongest_basis() {
    Situation receiver = Situation.describe()
        .receiver(GaugePressure.ofPsi(200.0), GaugePressure.ofPsi(221.0))
        .build();
    Caution caution = SafetyRules.usFederal().cautions(receiver).get(0);
    assertThat(caution.title()).isEqualTo("Receiver protection");
    assertThat(caution.source().basis()).isEqualTo(Basis.REGULATION);
    assertThat(caution.source().citation())
        .isEqualTo(
            "29 CFR 1917.155; 29 CFR 1910.169(b)(3) (from memory); 30 CFR 56.13011 and 57.13011");
    assertThat(SafetyRules.usFederal().reminder("Receiver protection").text())
        .startsWith("A receiver carries a gauge")
        .doesNotContain("Here:");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> SafetyRules.usFederal().reminder("Hats"))
        .withMessageContaining("was \"Hats\"");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> SafetyRules.usFederal().rule("Title 9"))
        .withMessageContaining("was \"Title 9\"");
  }

  /** What came with the work on cautions: each for its own work only. */
  @Test
  void added_cautions_belong_to_their_own_work() {
    Situation hose = Situation.describe().toolOnHose(Length.ofInches(0.375)).build();
    assertThat(titles(hose))
        .contains("Whip restraint", "Eye protection", "Connection restraint")
        .doesNotContain(
            "Plastic pipe for compressed air",
            "Oil in a paint line",
            "Blasting nozzle",
            "Air for a blaster's hood",
            "Whip hose");
    assertThat(titles(Situation.describe()
            .toolOnHose(Length.ofInches(1.0))
            .hoseInMine(Length.ofInches(1.0))
            .build()))
        .doesNotContain("Whip restraint")
        .contains("Hose restraint (surface coal mines)");
    assertThat(titles(Situation.describe().plasticPipe().build()))
        .containsExactly("Plastic pipe for compressed air", "Before anyone connects this");
    assertThat(titles(Situation.describe().painting().build()))
        .containsExactly("Oil in a paint line", "Before anyone connects this");
    assertThat(titles(Situation.describe().painting().lubricatedLine().build()))
        .contains("Oiled air to a paint gun");
    assertThat(titles(Situation.describe().lubricatedLine().build())).hasSize(1);
    assertThat(titles(Situation.describe().blasting().build()))
        .containsExactly(
            "Blasting nozzle", "Air for a blaster's hood", "Before anyone connects this");
    assertThat(titles(Situation.describe().impactTool().quickCouplers().build()))
        .startsWith("Depressurise before uncoupling")
        .contains("Whip hose", "Retainer on percussion tools");
    assertThat(
            titles(Situation.describe().impactTool().quickCouplers().whipHose().build()))
        .doesNotContain("Whip hose");
    assertThat(titles(Situation.describe().militaryConstruction().build())).hasSize(1);
  }

  private static List<String> titles(Situation situation) {
    return SafetyRules.usFederal().cautions(situation).stream()
        .map(Caution::title)
        .toList();
  }

  @Test
  @SuppressWarnings("NullAway") // what a caller without null checks could pass
  void what_is_missing_is_named() {
    SafetyRules rules = SafetyRules.usFederal();
    assertThatNullPointerException().isThrownBy(() -> SafetyRules.ofTable(null)).withMessage("csv");
    assertThatNullPointerException().isThrownBy(() -> rules.in(null)).withMessage("jurisdiction");
    assertThatNullPointerException().isThrownBy(() -> rules.with(null)).withMessage("more");
    assertThatNullPointerException().isThrownBy(() -> rules.rule(null)).withMessage("citation");
    assertThatNullPointerException().isThrownBy(() -> rules.reminder(null)).withMessage("title");
    assertThatNullPointerException().isThrownBy(() -> rules.rulings(null)).withMessage("situation");
  }
}
