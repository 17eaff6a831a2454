package org.airfit.safety;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.DoubleFunction;
import java.util.stream.Stream;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.source.Basis;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Every regulation of {@code safety_rules.csv}: that airfit knows it, and that its limit lies where the row says,
 * bound and all.
 */
class SafetyRulesTableTest {

  /** A rule, and a situation made from the number it limits. */
  private record Known(SafetyRule rule, DoubleFunction<Situation> at) {}

  private static final Map<String, Known> KNOWN = new LinkedHashMap<>();

  private static GaugePressure psi(double psi) {
    return GaugePressure.ofPsi(psi);
  }

  private static void knows(String citation, SafetyRule rule, DoubleFunction<Situation> at) {
    KNOWN.put(citation, new Known(rule, at));
  }

  static {
    DoubleFunction<Situation> cleaning =
        p -> Situation.describe().cleaning(psi(p)).build();
    DoubleFunction<Situation> hose =
        d -> Situation.describe().toolOnHose(Length.ofInches(d)).build();
    DoubleFunction<Situation> mine =
        d -> Situation.describe().hoseInMine(Length.ofInches(d)).build();
    DoubleFunction<Situation> receiver =
        percent -> Situation.describe().receiver(psi(100), psi(percent)).build();
    DoubleFunction<Situation> impact = any -> Situation.describe().impactTool().build();
    knows("29 CFR 1910.242(b)", SafetyRule.CLEANING_GENERAL_INDUSTRY, cleaning);
    knows("OSHA letter on 1910.242(b)", SafetyRule.CLEANING_GENERAL_INDUSTRY, cleaning);
    knows("29 CFR 1926.302(b)(1)", SafetyRule.CONNECTION_RESTRAINT, hose);
    knows("29 CFR 1926.302(b)(2)", SafetyRule.IMPACT_RETAINER, impact);
    knows(
        "29 CFR 1926.302(b)(3)",
        SafetyRule.MUZZLE_CONTACT,
        p -> Situation.describe().automaticFeed(psi(p)).build());
    knows("29 CFR 1926.302(b)(4)", SafetyRule.CLEANING_CONSTRUCTION, cleaning);
    knows(
        "29 CFR 1926.302(b)(5)",
        SafetyRule.RATED_PRESSURE,
        any -> Situation.describe().ratedParts(psi(100), psi(99)).build());
    knows(
        "29 CFR 1926.302(b)(6)",
        SafetyRule.HOISTING,
        any -> Situation.describe().toolHoistedByHose().build());
    knows("29 CFR 1926.302(b)(7)", SafetyRule.HOSE_FAILURE, hose);
    knows("OSHA letter 1983-06-06 on 1926.302(b)(7)", SafetyRule.HOSE_FAILURE, hose);
    knows("29 CFR 1915.131(e)", SafetyRule.CONNECTION_RESTRAINT, hose);
    knows("29 CFR 1917.154", SafetyRule.CLEANING_MARINE_TERMINALS, cleaning);
    knows("29 CFR 1917.155", SafetyRule.RECEIVER, receiver);
    knows("29 CFR 1910.169(b)(3)", SafetyRule.RECEIVER, receiver);
    knows("30 CFR 56.13011 and 57.13011", SafetyRule.RECEIVER, receiver);
    knows("30 CFR 77.412(d)", SafetyRule.HOSE_CHAIN_COAL, mine);
    knows("30 CFR 56.13021", SafetyRule.HOSE_CHAIN_METAL, mine);
    knows(
        "Title 8 section 3301(a)",
        SafetyRule.CLOTHING,
        p -> Situation.describe().clothing(psi(p)).build());
    knows(
        "ISO 4414:1998 clause 9.6",
        SafetyRule.DEPRESSURISE,
        any -> Situation.describe().quickCouplers().build());
    knows(
        "A-A-59439 (supersedes MIL-C-4109F)",
        SafetyRule.FEDERAL_COUPLERS,
        p -> Situation.describe().federalCouplers(psi(p)).build());
  }

  static Stream<Row> rules() {
    return Rows.of(SafetyRulesTableTest.class, "safety_rules.csv")
        .filter(row -> KNOWN.containsKey(row.text("citation")));
  }

  private static boolean acts(Known known, double at) {
    return Ruling.of(known.rule(), known.at().apply(at)).judgement().callsForCaution();
  }

  @ParameterizedTest(name = "{1}")
  @MethodSource("rules")
  void a_limit_lies_where_the_regulation_says(Row row) {
    Known known = Objects.requireNonNull(KNOWN.get(row.text("citation")));
    if (!row.has("limit")) {
      assertThat(acts(known, 1.0)).as(row.text("fact_paraphrased")).isTrue();
      return;
    }
    double limit = row.number("limit");
    boolean below = acts(known, limit * (1 - 1e-6));
    boolean at = acts(known, limit);
    boolean above = acts(known, limit * (1 + 1e-6));
    List<Boolean> expected = switch (row.text("operator")) {
      case "<" -> List.of(false, true, true); // allowed below only
      case "<=" -> List.of(false, false, true); // allowed up to and at
      case ">" -> List.of(false, false, true); // asked for above only
      case ">=" -> List.of(false, true, true); // asked for from it on
      default -> throw new IllegalStateException(row.text("operator"));
    };
    assertThat(List.of(below, at, above))
        .as("%s %s %s: %s", row.text("citation"), row.text("operator"), limit, row.source())
        .isEqualTo(expected);
  }

  /**
   * Rows without a rule of their own: two are what {@link Medium} refuses, three are told as sources or recalled with
   * an uncertain clause.
   */
  @Test
  void every_row_is_known_or_said_why_not() {
    assertThat(Rows.of(SafetyRulesTableTest.class, "safety_rules.csv")
            .map(row -> row.text("citation"))
            .filter(citation -> !KNOWN.containsKey(citation)))
        .containsExactlyInAnyOrder(
            "29 CFR 1910.134 with CGA G-7.1-1989 Grade D",
            "ISO 7289",
            "ISO 4414:2010",
            "ISO 4414:2010 clause 5.4.5 (flexible hoses)");
    assertThat(Medium.BREATHING_AIR.refusal().orElseThrow().source().citation())
        .contains("29 CFR 1910.134", "CGA G-7.1-1989 Grade D");
    assertThat(Medium.WELDING_GAS.refusal().orElseThrow().source().citation()).contains("ISO 7289");
  }

  @ParameterizedTest
  @EnumSource
  void every_medium_but_compressed_air_is_refused_with_a_reason(Medium medium) {
    assertThat(medium.refusal().isEmpty()).isEqualTo(medium == Medium.COMPRESSED_AIR);
    assertThat(medium.toString()).doesNotContain("_");
  }

  @Test
  void recalled_rules_say_so() {
    assertThat(Arrays.stream(SafetyRule.values())
            .filter(rule -> rule.source().basis() == Basis.FROM_MEMORY))
        .containsExactlyInAnyOrder(SafetyRule.HOSE_CHAIN_METAL, SafetyRule.ENERGY_ISOLATION);
    assertThat(Ruling.of(
                SafetyRule.ENERGY_ISOLATION, Situation.describe().maintenance().build())
            .judgement())
        .isEqualTo(Judgement.REQUIRED);
  }
}
