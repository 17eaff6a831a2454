package org.airfit.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

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
            row.source())
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
}
