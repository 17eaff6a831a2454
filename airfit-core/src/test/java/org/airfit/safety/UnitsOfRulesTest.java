package org.airfit.safety;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.airfit.UnitsInText;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Every rule speaks in the units of the job; what its law prints stands in brackets where that is another unit. */
class UnitsOfRulesTest {

  private static GaugePressure psi(double psi) {
    return GaugePressure.ofPsi(psi);
  }

  /** Situations on both sides of every bundled limit, of which each tells every quantity that a rule may ask for. */
  private static List<Situation> situations() {
    List<Situation> all = new ArrayList<>();
    for (double factor : new double[] {0.05, 0.9, 1.0, 1.1, 20.0}) {
      for (boolean mine : new boolean[] {false, true}) {
        Situation.Builder situation = Situation.describe()
            .linePressure(psi(100 * factor), psi(100 * factor))
            .couplerPressure(psi(232 * factor))
            .automaticFeed(psi(100 * factor))
            .cleaning(psi(30 * factor))
            .perhapsClothing(psi(10 * factor))
            .ratedParts(psi(100 * factor), psi(100))
            .receiver(psi(100), psi(110 * factor))
            .militaryConstruction();
        all.add((mine
                ? situation.perhapsHoseInMine(Length.ofInches(factor))
                : situation.toolOnHose(Length.ofInches(0.5 * factor)))
            .build());
      }
    }
    return all;
  }

  private static List<String> sentences(UnitSystem units) {
    List<String> sentences = new ArrayList<>();
    for (SafetyRule rule : SafetyRules.bundled().toldIn(units).rules()) {
      sentences.add(rule.demand());
      rule.limit().ifPresent(sentences::add);
    }
    for (Situation situation : situations()) {
      SafetyRules.bundled().rulings(situation).stream()
          .map(ruling -> ruling.toldIn(units))
          .forEach(ruling -> {
            sentences.add(ruling.reason());
            ruling.caution().ifPresent(caution -> sentences.add(caution.text()));
          });
      SafetyRules.bundled()
          .toldIn(units)
          .cautions(situation)
          .forEach(caution -> sentences.add(caution.text()));
    }
    return sentences;
  }

  @ParameterizedTest
  @EnumSource(UnitSystem.class)
  void every_sentence_of_every_rule_keeps_to_one_system(UnitSystem units) {
    List<String> sentences = sentences(units);
    assertThat(sentences).hasSizeGreaterThan(500);
    assertThat(sentences.stream()
            .flatMap(text -> UnitsInText.strange(text, units, List.of()).stream()))
        .isEmpty();
  }

  @ParameterizedTest
  @EnumSource(UnitSystem.class)
  void the_same_search_finds_a_planted_one(UnitSystem units) {
    List<String> others = sentences(units.other());
    assertThat(others)
        .filteredOn(text -> !UnitsInText.strange(text, units, List.of()).isEmpty())
        .hasSizeGreaterThan(50);
    String planted = "A hose of more than " + units.either("1/2 in", "12.7 mm") + " (so it is).";
    assertThat(UnitsInText.strange(planted, units, List.of())).hasSize(1);
  }

  @Test
  void the_judgement_is_the_same_in_both_units() {
    for (Situation situation : situations()) {
      for (Ruling ruling : SafetyRules.bundled().rulings(situation)) {
        for (UnitSystem units : UnitSystem.values()) {
          assertThat(ruling.toldIn(units).judgement()).isEqualTo(ruling.judgement());
        }
      }
    }
  }

  /** 30 psi = 206 843 Pa; 1/2 in = 12.7 mm; 0.5 bar = 7.2519 psi; 2 bar = 29.008 psi. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "29 CFR 1910.242(b) | 30 psig | 2.068 bar(g) (30 psig)",
        "29 CFR 1926.302(b)(7) | 1/2 in | 12.7 mm (1/2 in)",
        "A-A-59439 (supersedes MIL-C-4109F) | 232 psig (16 bar(g)) | 16 bar(g) (232 psig)",
        "29 CFR 1917.155 | 110 % | 110 %",
        "'blow guns: HSWA 1974, MHSWR 1999, PUWER 1998' | 29.01 psig (2 bar(g)) | 2 bar(g)",
      })
  void a_limit_is_told_in_the_units_with_the_wording_of_its_law(
      String citation, String us, String si) {
    SafetyRule rule = SafetyRules.bundled().rule(citation);
    assertThat(rule.toldIn(UnitSystem.US).limit()).contains(us);
    assertThat(rule.toldIn(UnitSystem.SI).limit()).contains(si);
  }

  @Test
  void a_demand_carries_the_limit_of_its_rule() {
    SafetyRule hose = SafetyRules.bundled().rule("29 CFR 1926.302(b)(7)");
    assertThat(hose.demand()).startsWith("A hose of more than 1/2 in inside diameter needs");
    assertThat(hose.toldIn(UnitSystem.SI).demand())
        .startsWith("A hose of more than 12.7 mm (1/2 in) inside diameter needs");
    assertThat(SafetyRules.bundled().rules())
        .allSatisfy(rule -> assertThat(rule.demand()).doesNotContain("{"));
  }

  @Test
  void a_rule_of_ones_own_may_name_its_limit_too() {
    SafetyRules own = SafetyRules.ofTable("""
        jurisdiction,citation,text,quantity,operator,limit,unit,source,basis
        Works,W 1,no line above {limit},line pressure,<=,7,bar,own,practice
        """);
    SafetyRule rule = own.rules().get(0);
    assertThat(rule.demand()).isEqualTo("No line above 7 bar(g).");
    assertThat(rule.toldIn(UnitSystem.US).demand())
        .isEqualTo("No line above 101.5 psig (7 bar(g)).");
    Ruling above =
        Ruling.of(rule, Situation.describe().linePressure(psi(90), psi(120)).build());
    assertThat(above.toldIn(UnitSystem.US).reason())
        .isEqualTo("120 psig against at most 101.5 psig (7 bar(g)).");
    assertThat(above.toldIn(UnitSystem.SI).reason())
        .isEqualTo("8.274 bar(g) against at most 7 bar(g).");
  }

  private static final Pattern COMPARED =
      Pattern.compile("([0-9.]+) [a-z()]+(?: \\(([0-9.]+) [a-z()]+\\))?"
          + "(?: at the tool, asked for above| against at most| against less than)"
          + " ([0-9.]+) [a-z()]+(?: \\(([0-9.]+) [a-z()]+\\))?[.]");

  /**
   * The numbers of a reason, read as its reader does: the value lies on that side of the limit which the judgement says,
   * in one of the units at least, and is another number than the limit where it is another pressure.
   */
  @ParameterizedTest
  @EnumSource(UnitSystem.class)
  void the_numbers_of_a_reason_say_what_the_judgement_says(UnitSystem units) {
    int told = 0;
    for (String limit : List.of(
        "<,30,psi", "<=,30,psi", "<=,2,bar", "<=,232,psi (16 bar)", "<=,16,bar (232 psi)")) {
      String[] cells = limit.split(",");
      SafetyRule rule = SafetyRules.ofTable(
              "jurisdiction,citation,text,quantity,operator,limit,unit,source,basis\n"
                  + "US,x,y,line pressure," + limit + ",z,read\n")
          .rules()
          .get(0);
      double bound = rule.pressureLimit().orElseThrow().pascals();
      for (int exponent = 1; exponent <= 11; exponent++) {
        for (double side : new double[] {-1.0, -0.4, 0.0, 0.3, 1.0}) {
          double pascals = bound * (1.0 + side * Math.pow(10.0, -exponent));
          Ruling ruling = Ruling.of(
                  rule,
                  Situation.describe()
                      .ratedParts(GaugePressure.ofPascals(pascals), psi(9999))
                      .build())
              .toldIn(units);
          Matcher numbers = COMPARED.matcher(ruling.reason());
          assertThat(numbers.matches()).as(ruling.reason()).isTrue();
          boolean strict = cells[0].equals("<");
          boolean holds = keeps(numbers.group(1), numbers.group(3), strict)
              || (numbers.group(2) != null && keeps(numbers.group(2), numbers.group(4), strict));
          assertThat(holds).as(ruling.reason()).isEqualTo(ruling.judgement() == Judgement.ALLOWED);
          told++;
        }
      }
    }
    assertThat(told).isEqualTo(5 * 11 * 5);
  }

  private static boolean keeps(String value, String limit, boolean strict) {
    double over = Double.parseDouble(value) - Double.parseDouble(limit);
    return over < 0.0 || (over == 0.0 && !strict);
  }

  @Test
  void a_limit_that_is_converted_has_as_many_digits_as_tell_it_from_the_value() {
    SafetyRule rule = SafetyRules.bundled().rule("29 CFR 1910.242(b)");
    Situation just = Situation.describe().cleaning(GaugePressure.ofBar(2.0684)).build();
    assertThat(Ruling.of(rule, just).toldIn(UnitSystem.SI).reason())
        .isEqualTo("2.0684 bar(g) against less than 2.06843 bar(g) (30 psig).");
    assertThat(Ruling.of(rule, just).toldIn(UnitSystem.US).reason())
        .isEqualTo("29.9996 psig against less than 30 psig.");
  }

  @Test
  void between_two_printed_limits_a_value_is_told_in_both_units() {
    SafetyRule rule = SafetyRules.bundled().rule("A-A-59439 (supersedes MIL-C-4109F)");
    Situation between = Situation.describe().couplerPressure(psi(232.03)).build();
    assertThat(Ruling.of(rule, between).toldIn(UnitSystem.US).reason())
        .isEqualTo("232.03 psig (15.998 bar(g)) against at most 232 psig (16 bar(g)).");
    assertThat(Ruling.of(rule, between).toldIn(UnitSystem.SI).reason())
        .isEqualTo("15.998 bar(g) (232.03 psig) against at most 16 bar(g) (232 psig).");
  }
}
