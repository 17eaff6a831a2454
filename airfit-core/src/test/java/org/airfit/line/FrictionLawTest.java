package org.airfit.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import java.util.stream.Stream;
import org.airfit.Comparison;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class FrictionLawTest {

  static Stream<Row> colebrook_rows() {
    return Rows.of(FrictionLawTest.class, "friction_colebrook.csv");
  }

  @ParameterizedTest
  @MethodSource("colebrook_rows")
  void colebrook_agrees_with_the_closed_solution_to_fifteen_digits(Row row) {
    double re = row.number("re");
    double rough = row.number("rel_roughness");
    Comparison.of(
            "Line: Colebrook friction factor",
            "Re " + row.text("re") + ", ε/D " + row.text("rel_roughness"),
            row.number("f_darcy_30_digits"),
            "-",
            row.evidence("f_darcy_30_digits"))
        .isMetWithinFraction(
            FrictionLaw.COLEBROOK.factor(re, rough).darcy(),
            2.0e-15,
            "a double holds 15.95 digits; the last of them belongs to its rounding");
    assertThat(FrictionLaw.COLEBROOK.factor(re, rough).fanning())
        .isEqualTo(FrictionLaw.COLEBROOK.factor(re, rough).darcy() / 4.0);
  }

  @Test
  void laminar_flow_gives_64_over_re_whatever_the_wall() {
    assertThat(FrictionLaw.COLEBROOK.factor(1600.0, 0.0).darcy()).isEqualTo(0.04);
    assertThat(FrictionLaw.COLEBROOK.factor(1600.0, 0.05).darcy()).isEqualTo(0.04);
  }

  @Test
  void friction_jumps_at_2300_and_the_band_up_to_4000_is_told() {
    assertThat(FrictionLaw.COLEBROOK.factor(2299.999, 0.0).darcy()).isLessThan(0.028);
    assertThat(FrictionLaw.COLEBROOK.factor(2300.0, 0.0).darcy()).isGreaterThan(0.046);
    assertThat(FrictionLaw.isTransition(2299.999)).isFalse();
    assertThat(FrictionLaw.isTransition(2300.0)).isTrue();
    assertThat(FrictionLaw.isTransition(3999.999)).isTrue();
    assertThat(FrictionLaw.isTransition(4000.0)).isFalse();
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.0, 0.99e-100, -1.0, 1.000001e9, Double.NaN, Double.POSITIVE_INFINITY})
  void a_reynolds_number_outside_its_range_is_refused(double re) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> FrictionLaw.COLEBROOK.factor(re, 0.0))
        .withMessageContaining("Re must be in [1e-100, 1e9]")
        .withMessageContaining(Double.toString(re));
  }

  @ParameterizedTest
  @ValueSource(doubles = {-1.0e-9, 0.0500001, Double.NaN})
  void a_roughness_outside_its_range_is_refused(double rough) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> FrictionLaw.COLEBROOK.factor(1.0e5, rough))
        .withMessageContaining("relative roughness must be in [0, 0.05]");
  }

  @Test
  void the_ends_of_the_ranges_are_accepted() {
    assertThat(FrictionLaw.COLEBROOK.factor(1.0e9, 0.05).darcy()).isBetween(0.071, 0.072);
    assertThat(FrictionLaw.COLEBROOK.factor(1.0e-100, 0.0).darcy()).isEqualTo(64.0e100);
    assertThat(FrictionLaw.COLEBROOK.source().citation()).contains("1939");
  }

  private static final Map<FrictionLaw, String> COLUMNS = Map.ofEntries(
      Map.entry(FrictionLaw.HAALAND, "haaland_1983"),
      Map.entry(FrictionLaw.SWAMEE_JAIN, "swamee_jain_1976_5.74"),
      Map.entry(FrictionLaw.CHURCHILL_1973, "churchill_1973"),
      Map.entry(FrictionLaw.CHURCHILL_1977, "churchill_1977"),
      Map.entry(FrictionLaw.CHEN, "chen_1979"),
      Map.entry(FrictionLaw.ZIGRANG_SYLVESTER_1, "zigrang_sylvester_1982_1"),
      Map.entry(FrictionLaw.ZIGRANG_SYLVESTER_2, "zigrang_sylvester_1982_2"),
      Map.entry(FrictionLaw.SERGHIDES_1, "serghides_1984_1"),
      Map.entry(FrictionLaw.SERGHIDES_2, "serghides_1984_2"),
      Map.entry(FrictionLaw.ALTSHUL, "altshul_1952"),
      Map.entry(FrictionLaw.MOODY, "moody_1947"),
      Map.entry(FrictionLaw.MANADILLI, "manadilli_1997"),
      Map.entry(FrictionLaw.BLASIUS, "blasius_1913"));

  static Stream<Row> explicit_rows() {
    return Rows.of(FrictionLawTest.class, "friction_explicit.csv");
  }

  static Stream<Row> low_rows() {
    return Rows.of(FrictionLawTest.class, "friction_low_re.csv");
  }

  static Stream<Row> formula_rows() {
    return Rows.of(FrictionLawTest.class, "friction_formulas.csv")
        .filter(row -> COLUMNS.containsValue(row.text("name")));
  }

  @ParameterizedTest
  @MethodSource("explicit_rows")
  void every_explicit_formula_gives_the_value_of_its_text(Row row) {
    COLUMNS.forEach((law, column) -> {
      if (row.has(column)) {
        Comparison.of(
                "Line: explicit friction formulas",
                column + ", Re " + row.text("re") + ", ε/D " + row.text("rel_roughness"),
                row.number(column),
                "-",
                row.evidence(column))
            .isMetBy(
                law.factor(row.number("re"), row.number("rel_roughness")).darcy(),
                row.halfDigit(column) + 1.0e-14,
                "half a unit of the last of 12 digits printed, and the double's own rounding");
      }
    });
  }

  @ParameterizedTest
  @MethodSource("low_rows")
  void laminar_flow_and_the_curve_through_all_regimes_agree(Row row) {
    double re = row.number("re");
    double rough = row.number("rel_roughness");
    Comparison.of(
            "Line: friction at low Re",
            "Churchill 1977, Re " + row.text("re") + ", ε/D " + row.text("rel_roughness"),
            row.number("f_churchill_1977"),
            "-",
            row.evidence("f_churchill_1977"))
        .isMetBy(
            FrictionLaw.CHURCHILL_1977.factor(re, rough).darcy(),
            row.halfDigit("f_churchill_1977") + 1.0e-13 * row.number("f_churchill_1977"),
            "half a unit of the last digit printed, and rounding in a sixteenth power");
    if (row.has("f_expected")) {
      Comparison.of(
              "Line: friction at low Re",
              "Re " + row.text("re") + ", ε/D " + row.text("rel_roughness"),
              row.number("f_expected"),
              "-",
              row.evidence("f_expected"))
          .isMetBy(
              FrictionLaw.COLEBROOK.factor(re, rough).darcy(),
              row.halfDigit("f_expected") + 1.0e-15,
              "half a unit of the last digit printed");
    }
  }

  /** The table's points lie in the range for which a law states its deviation. */
  @ParameterizedTest
  @MethodSource("formula_rows")
  void the_deviation_a_law_states_is_at_least_the_one_found_on_the_grid(Row row) {
    FrictionLaw law = COLUMNS.entrySet().stream()
        .filter(entry -> entry.getValue().equals(row.text("name")))
        .findFirst()
        .orElseThrow()
        .getKey();
    double published = Math.abs(row.number("max_dev_vs_colebrook_on_check_grid"));
    assertThat(law.deviation()).isGreaterThanOrEqualTo(published);
    if (law != FrictionLaw.BLASIUS) {
      double most = 0.0;
      for (double re : new double[] {5.0e3, 1.0e4, 3.0e4, 1.0e5, 1.0e6, 1.0e7}) {
        for (double rough : new double[] {1.0e-4, 1.0e-3, 1.0e-2}) {
          double exact = FrictionLaw.COLEBROOK.factor(re, rough).darcy();
          most = Math.max(most, Math.abs(law.factor(re, rough).darcy() / exact - 1.0));
        }
      }
      Comparison.of(
              "Line: explicit friction formulas",
              row + ", largest deviation from Colebrook",
              published,
              "-",
              row.evidence("max_dev_vs_colebrook_on_check_grid"))
          .isMetWithinFraction(most, 1.0e-3, "four digits printed");
    }
  }

  @Test
  void a_law_knows_the_range_it_was_published_for() {
    assertThat(FrictionLaw.BLASIUS.holds(1.0e5, 0.0)).isTrue();
    assertThat(FrictionLaw.BLASIUS.holds(1.0e5, 1.0e-6)).isFalse();
    assertThat(FrictionLaw.BLASIUS.holds(2.1e5, 0.0)).isFalse();
    assertThat(FrictionLaw.HAALAND.holds(3999.0, 0.0)).isFalse();
    assertThat(FrictionLaw.HAALAND.holds(2000.0, 0.0)).isTrue();
    assertThat(FrictionLaw.COLEBROOK.deviation()).isZero();
    assertThat(FrictionLaw.COLEBROOK.largestDeviation()).isZero();
  }

  @Test
  void in_fully_rough_flow_serghides_has_no_step_left_to_take() {
    assertThat(FrictionLaw.SERGHIDES_1.factor(1.0e9, 0.05).darcy())
        .isCloseTo(FrictionLaw.COLEBROOK.factor(1.0e9, 0.05).darcy(), within(1.0e-9));
  }

  @Test
  void churchill_is_laminar_down_to_any_re() {
    assertThat(FrictionLaw.CHURCHILL_1977.factor(0.999, 0.0).darcy())
        .isCloseTo(64.0 / 0.999, within(1.0e-12));
  }
}
