package org.airfit.plug;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.airfit.Comparison;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.internal.Statistics;
import org.airfit.measure.Conformity;
import org.airfit.measure.ConformityVerdict;
import org.airfit.measure.Instrument;
import org.airfit.measure.PartSpread;
import org.airfit.measure.Reading;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.safety.Medium;
import org.airfit.source.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The gathered tables that belong to no one class: every row that says a number of ours is held against it. */
class ProfileTablesTest {

  private static final String DIGITS = "half the last digit printed";

  private static Length mm(double value) {
    return Length.ofMillimetres(value);
  }

  private static Stream<Row> rows(String file) {
    return Rows.of(ProfileTablesTest.class, file);
  }

  private static PartSpread near(double mm) {
    return PartSpread.normal(mm(mm), mm(0.03));
  }

  private static PlugProfile.Builder sound() {
    return PlugProfile.builder("wren")
        .from(Provenance.standardEntered(), Source.demo("a sound profile for a test"))
        .dimension(Dimension.TIP_DIAMETER, near(10.0))
        .dimension(Dimension.COLLAR_DIAMETER, near(13.0))
        .dimension(Dimension.TIP_LENGTH, near(15.0))
        .dimension(Dimension.INSERTION_LENGTH, near(25.0))
        .dimension(Dimension.GROOVE_WIDTH, near(4.0))
        .dimension(Dimension.GROOVE_DIAMETER, near(9.0))
        .dimension(Dimension.TIP_TO_COLLAR, near(10.0))
        .dimension(Dimension.BORE, near(6.0));
  }

  /** How to break each rule and no other. */
  private static final Map<String, UnaryOperator<PlugProfile.Builder>> BREAKING = Map.of(
      "d_b > 0 and d_b < D_g", wren -> wren.dimension(Dimension.BORE, near(9.0)),
      "D_t > d_b",
          wren -> wren.dimension(Dimension.BORE, near(8.5))
              .dimension(Dimension.TIP_DIAMETER, near(8.5)),
      "D_t <= D_c", wren -> wren.dimension(Dimension.TIP_DIAMETER, near(13.01)),
      "D_g < D_c", wren -> wren.dimension(Dimension.GROOVE_DIAMETER, near(13.0)),
      "L_c <= L_g", wren -> wren.dimension(Dimension.TIP_TO_COLLAR, near(15.01)),
      "L_g + W_g <= L_i", wren -> wren.dimension(Dimension.GROOVE_WIDTH, near(10.01)));

  static Stream<Row> rules() {
    return rows("profile_validation_rules.csv");
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("rules")
  void a_profile_that_breaks_a_rule_of_the_table_is_found(Row row) {
    assertThat(sound().findings()).isEmpty();
    if (row.text("rule").startsWith("every sigma > 0")) {
      Length nothing = mm(0.0);
      Length size = mm(10.0);
      assertThatIllegalArgumentException()
          .isThrownBy(() -> PartSpread.normal(size, nothing))
          .withMessageContaining("above 0 mm");
      // a sigma of half the difference of the nominals leaves one in six mistaken
      PlugProfile other = sound().dimension(Dimension.TIP_DIAMETER, near(10.06)).build();
      assertThat(
              Separation.of(sound().build(), other, Instrument.DIGITAL_CALIPER).risk())
          .isGreaterThan(Statistics.normalAbove(1.0));
      return;
    }
    PlugProfile.Builder broken =
        Objects.requireNonNull(BREAKING.get(row.text("rule")), row.text("rule")).apply(sound());
    assertThat(broken.findings()).as(row.source()).hasSize(1);
    assertThat(broken.findings().get(0).severity()).isEqualTo(ProfileFinding.Severity.IMPOSSIBLE);
  }

  /** The greater size of each rule that compares two, in inches where the others are in millimetres. */
  private static final Map<String, UnaryOperator<PlugProfile.Builder>> IN_INCHES = Map.of(
      "d_b > 0 and d_b < D_g", wren -> wren.dimension(Dimension.GROOVE_DIAMETER, near(9.0 / 25.4)),
      "D_t > d_b", wren -> wren.dimension(Dimension.TIP_DIAMETER, near(10.0 / 25.4)),
      "D_t <= D_c", wren -> wren.dimension(Dimension.COLLAR_DIAMETER, near(13.0 / 25.4)),
      "D_g < D_c", wren -> wren.dimension(Dimension.COLLAR_DIAMETER, near(13.0 / 25.4)),
      "L_c <= L_g", wren -> wren.dimension(Dimension.TIP_LENGTH, near(15.0 / 25.4)),
      "L_g + W_g <= L_i", wren -> wren.dimension(Dimension.INSERTION_LENGTH, near(25.0 / 25.4)));

  @ParameterizedTest(name = "{0}")
  @MethodSource("rules")
  void a_size_in_inches_that_breaks_a_rule_is_told_to_be_one(Row row) {
    UnaryOperator<PlugProfile.Builder> inches = IN_INCHES.get(row.text("rule"));
    if (inches == null) { // the rule for sigmas compares no two sizes
      assertThat(row.text("rule")).startsWith("every sigma > 0");
      return;
    }
    assertThat(inches.apply(sound()).findings()).as(row.source()).anySatisfy(found -> {
      assertThat(found.severity()).isEqualTo(ProfileFinding.Severity.IMPOSSIBLE);
      assertThat(found.message()).contains("inches typed as millimetres");
    });
  }

  static Stream<Row> definitions() {
    return rows("dimension_definitions.csv");
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("definitions")
  void every_dimension_of_the_table_has_its_symbol_and_name_here(Row row) {
    String symbol = row.text("symbol");
    if (symbol.equals("form_g")) {
      assertThat(GrooveForm.values()).as(row.text("definition")).hasSize(4);
      return;
    }
    if (symbol.equals("theta_t")) { // the table itself calls the chamfer weak; it is not read here
      assertThat(row.text("value_for_identification")).isEqualTo("weak");
      return;
    }
    Dimension ours = Arrays.stream(Dimension.values())
        .filter(dimension -> dimension.symbol().equals(symbol))
        .findFirst()
        .orElseThrow();
    assertThat(row.text("name")).startsWith(ours.label());
  }

  /** What each rule of the table that holds a number says, and the same from here. */
  private static Map<String, double[]> ruleNumbers() {
    return Map.of(
        "guard band from a chosen risk p (normal)",
            new double[] {2.33, Statistics.normalScore(0.01)},
        "few readings", new double[] {3.75, Statistics.studentScore(0.01, 4.0)},
        "Type B from stated multiple", new double[] {1.960, Statistics.normalScore(0.025)},
        "Type B from bounds",
            new double[] {
              0.87, PartSpread.limits(mm(1.0), mm(4.0)).standardDeviation().millimetres()
            },
        "normal, 1 chance in 2 inside +/-a",
            new double[] {1.48, 1.0 / Statistics.normalScore(0.25)});
  }

  static Stream<Row> decision_rules() {
    return rows("decision_rules.csv");
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("decision_rules")
  void decision_rules_give_the_numbers_they_state(Row row) {
    String rule = row.text("rule");
    double[] numbers = ruleNumbers().get(rule);
    if (numbers != null) {
      Comparison.of("Plugs: decision rules", rule, numbers[0], "-", row.evidence("value_or_remark"))
          .isMetBy(numbers[1], rule.startsWith("Type B from stated") ? 0.0005 : 0.005, DIGITS);
      return;
    }
    PartSpread.Limits window = new PartSpread.Limits(mm(10.0), mm(11.0));
    switch (rule) {
      case "simple acceptance" -> // 50 % at the limit itself
        assertThat(Conformity.of(window, reading(10.0, 0.01)).probability())
            .isCloseTo(0.5, org.assertj.core.api.Assertions.within(1.0e-12));
      case "guard band w = U (95 %, k = 2)" ->
        assertThat(1.0 - Conformity.of(window, reading(10.02, 0.01)).probability())
            .isLessThan(0.025);
      case "non-binary statement" -> assertThat(ConformityVerdict.values()).hasSize(4);
      case "guard band definition", "ISO 14253-1 default" -> {
        assertThat(Conformity.of(window, reading(10.02, 0.01)).verdict())
            .isEqualTo(ConformityVerdict.INSIDE_PROVEN);
        assertThat(Conformity.of(window, reading(10.0199, 0.01)).verdict())
            .isEqualTo(ConformityVerdict.INSIDE_NOT_PROVEN);
        assertThat(Conformity.of(window, reading(9.9801, 0.01)).verdict())
            .isEqualTo(ConformityVerdict.OUTSIDE_NOT_PROVEN);
        assertThat(Conformity.of(window, reading(9.98, 0.01)).verdict())
            .isEqualTo(ConformityVerdict.OUTSIDE_PROVEN);
      }
      case "conformance probability (normal)" -> // from memory, and in the guard band vectors
        assertThat(Conformity.of(window, reading(10.3, 0.2)).probability())
            .isCloseTo(
                Statistics.normalBetween(-1.5, 3.5),
                org.assertj.core.api.Assertions.within(1.0e-12));
      case "guard band from a chosen risk p (rectangular posterior)",
          "risk from costs",
          "root-sum-square guard band factor" ->
        assertThat(row.text("formula")).as("a rule that is not used here").isNotBlank();
      default -> throw new IllegalArgumentException("a rule nobody looked at: " + rule);
    }
  }

  static Stream<Row> largest() {
    return rows("max_of_m_deviates.csv");
  }

  /** The limit is printed to four decimals, so the chance at it is known to what half the last digit moves it. */
  @ParameterizedTest(name = "{0}")
  @MethodSource("largest")
  void the_largest_of_several_misfits_is_allowed_for_their_number(Row row) {
    int m = (int) row.number("m");
    double z = row.number("sidak_z");
    double alpha = row.number("alpha");
    double half = row.halfDigit("sidak_z");
    assertThat(ProfileCandidate.largestOf(m, z + half)).isLessThan(alpha);
    assertThat(ProfileCandidate.largestOf(m, z - half)).isGreaterThan(alpha);
    double low = z - 0.01;
    double high = z + 0.01;
    for (int i = 0; i < 60; i++) {
      double middle = 0.5 * (low + high);
      if (ProfileCandidate.largestOf(m, middle) > alpha) {
        low = middle;
      } else {
        high = middle;
      }
    }
    Comparison.of(
            "Plugs: largest of several misfits",
            "limit for " + m + " at " + alpha,
            z,
            "-",
            row.evidence("sidak_z"))
        .isMetBy(low, half, DIGITS);
  }

  static Stream<Row> rounding() {
    return rows("rounding_uncertainty.csv");
  }

  /** A hand that scatters by so much of the step, and the rounding to it, for each caliper. */
  @ParameterizedTest(name = "{0}")
  @MethodSource("rounding")
  void rounding_is_each_readings_own_and_no_less_where_repeats_agree(Row row) {
    for (Instrument caliper : Instrument.values()) {
      double step = caliper.step().millimetres();
      double scatter = row.number("sigma_over_step") * step;
      Comparison.of(
              "Plugs: rounding to the step",
              caliper.label() + ", scatter of " + row.number("sigma_over_step") + " step",
              row.number("rms_error_over_step"),
              "-",
              row.evidence("rms_error_over_step"))
          .isMetBy(
              Math.hypot(scatter, caliper.roundingUncertainty().millimetres()) / step,
              row.halfDigit("rms_error_over_step") * 1.01,
              DIGITS);
    }
    assertThat(Instrument.VERNIER_CALIPER_0_05.roundingUncertainty().millimetres())
        .isCloseTo(0.0144, org.assertj.core.api.Assertions.within(0.00005));
    // twenty equal repeats: what is left beside the error of the caliper is the rounding
    Length[] alike = new Length[20];
    Arrays.fill(alike, mm(12.05));
    Reading mean =
        Reading.by(Instrument.VERNIER_CALIPER_0_05, org.airfit.measure.Access.OUTSIDE, alike);
    double c = Instrument.VERNIER_CALIPER_0_05.commonUncertainty().millimetres();
    double u = mean.standardUncertainty().millimetres();
    assertThat(Math.sqrt(u * u - c * c))
        .isGreaterThanOrEqualTo(
            Instrument.VERNIER_CALIPER_0_05.roundingUncertainty().millimetres());
  }

  private static Reading reading(double mm, double u) {
    return Reading.of(mm(mm), mm(u));
  }

  /** The parts made to a tolerance grade, in sigma_components.csv, from the tables of the grades. */
  @Test
  void part_scatter_follows_from_the_printed_tolerances() {
    Map<String, Double> widths = Map.of(
        "FAB_H10_6_10",
        width("6", "10", "IT10"),
        "FAB_H10_10_18",
        width("10", "18", "IT10"),
        "FAB_2768M_3_6",
        2.0 * general("3", "6", "m"),
        "FAB_2768M_6_30",
        2.0 * general("6", "30", "m"));
    List<Row> made = rows("sigma_components.csv")
        .filter(row -> widths.containsKey(row.text("component_id")))
        .toList();
    assertThat(made).hasSize(4);
    for (Row row : made) {
      double width = Objects.requireNonNull(widths.get(row.text("component_id")));
      Comparison.of(
              "Plugs: scatter from tolerances",
              row.text("component_id"),
              row.number("sigma_mm"),
              "mm",
              row.evidence("sigma_mm"))
          .isMetBy(
              PartSpread.limits(mm(8.0 - width), mm(8.0)).standardDeviation().millimetres(),
              row.halfDigit("sigma_mm"),
              DIGITS);
    }
  }

  private static double width(String over, String to, String grade) {
    return rows("iso286_it_widths.csv")
        .filter(row -> row.text("over_mm").equals(over)
            && row.text("up_to_mm").equals(to)
            && row.text("grade").equals(grade))
        .findFirst()
        .orElseThrow()
        .number("width_mm");
  }

  private static double general(String over, String to, String grade) {
    return rows("iso2768_1_linear.csv")
        .filter(row -> row.text("over_mm").equals(over)
            && row.text("up_to_mm").equals(to)
            && row.text("class").equals(grade))
        .findFirst()
        .orElseThrow()
        .number("tolerance_plus_minus_mm");
  }

  static Stream<Row> components() {
    return rows("sigma_components.csv").filter(row -> row.has("half_width_mm"));
  }

  /** All rows with bounds, those of the instruments among them, are an even spread between two limits. */
  @ParameterizedTest(name = "{0}")
  @MethodSource("components")
  void bounds_become_deviations_as_printed(Row row) {
    double half = row.number("half_width_mm");
    Comparison.of(
            "Plugs: deviation of even spreads",
            row.text("component_id"),
            row.number("sigma_mm"),
            "mm",
            row.evidence("sigma_mm"))
        .isMetBy(
            PartSpread.limits(mm(10.0 - half), mm(10.0 + half))
                .standardDeviation()
                .millimetres(),
            row.halfDigit("sigma_mm"),
            DIGITS);
  }

  @Test
  void sixteen_bar_are_the_printed_psi() {
    rows("working_pressure.csv")
        .filter(row -> !row.text("basis").equals("memory"))
        .forEach(row -> Comparison.of(
                "Plugs: working pressure",
                row.text("document") + ", " + row.text("series_or_class"),
                row.number("max_working_pressure_psi"),
                "psi",
                row.evidence("max_working_pressure_psi"))
            .isMetBy(
                GaugePressure.ofBar(row.number("max_working_pressure_bar")).psi(),
                row.halfDigit("max_working_pressure_psi"),
                DIGITS));
  }

  static Stream<Row> hydraulic() {
    return rows("hydraulic_interface_limits_for_comparison.csv");
  }

  /** Real limits to try the kinds of spread on, of couplings that are never mixed with air. */
  @ParameterizedTest(name = "{0}")
  @MethodSource("hydraulic")
  void hydraulic_interfaces_can_be_written_down_and_never_stand_in_an_air_set(Row row) {
    switch (row.text("limit_kind")) {
      case "limits" -> {
        PartSpread.Limits limits =
            new PartSpread.Limits(mm(row.number("limit_low_mm")), mm(row.number("limit_high_mm")));
        PlugProfile.Builder builder = PlugProfile.builder("interface")
            .from(Provenance.standardEntered(), Source.standard(row.text("document")))
            .dimension(Dimension.SHOULDER_DIAMETER, limits);
        assertThat(builder.findings())
            .as("its source alone gives it away")
            .anySatisfy(finding -> assertThat(finding.message()).contains("never offered for air"));
        PlugProfile profile =
            builder.medium(Medium.HYDRAULIC_OIL).confirmUnusual().build();
        List<PlugProfile> one = List.of(profile);
        assertThatIllegalArgumentException()
            .isThrownBy(() -> ReferenceSet.of("air", one))
            .withMessageContaining("hydraulic oil");
        assertThat(limits.nominal().compareTo(limits.low())).isPositive();
      }
      case "ball", "ball +/-0.0025" -> {
        GaugeBall ball = new GaugeBall(mm(row.number("limit_low_mm")));
        assertThat(
                PlugReading.byBall(ball, mm(20.0), Instrument.DIGITAL_CALIPER).ball())
            .isEqualTo(Optional.of(ball));
      }
      default ->
        assertThat(row.text("basis"))
            .as("a bound on one side, nothing to spread")
            .isNotBlank();
    }
  }
}
