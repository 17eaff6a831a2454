package org.airfit.internal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Against integrals in closed form. */
class QuadratureTest {

  /** DLMF 3.5(v): n points are exact up to the power 2n − 1, here 9. */
  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2, 3, 4, 5, 6, 7, 8, 9})
  void a_power_up_to_the_ninth_is_exact_on_a_single_panel(int power) {
    double low = -0.75;
    double high = 2.0;
    double known = (Math.pow(high, power + 1) - Math.pow(low, power + 1)) / (power + 1);
    assertThat(Quadrature.integral(x -> Math.pow(x, power), low, high, 1))
        .isCloseTo(known, within(2.0e-14 * (1.0 + Math.abs(known))));
  }

  /** The error of five points over [−1, 1] is (5!)⁴ 2¹¹/(11 (10!)³) times the tenth derivative, here 10!. */
  @Test
  void the_tenth_power_is_off_by_what_the_handbook_says() {
    double error = Math.pow(120.0, 4) * 2048.0 / (11.0 * Math.pow(3628800.0, 2));
    assertThat(Quadrature.integral(x -> Math.pow(x, 10.0), -1.0, 1.0, 1))
        .isCloseTo(2.0 / 11.0 - error, within(1.0e-14));
  }

  @Test
  void many_panels_lie_side_by_side() {
    assertThat(Quadrature.integral(Math::sin, 0.0, Math.PI, 8)).isCloseTo(2.0, within(1.0e-14));
    assertThat(Quadrature.integral(Math::exp, -2.0, 3.0, 7))
        .isCloseTo(Math.exp(3.0) - Math.exp(-2.0), within(1.0e-12));
    assertThat(Quadrature.integral(x -> 1.0 / x, 1.0, 2.0, 5))
        .isCloseTo(Math.log(2.0), within(1.0e-12));
  }

  @Test
  void bounds_the_other_way_round_turn_the_sign_and_equal_bounds_give_nothing() {
    assertThat(Quadrature.integral(x -> x * x, 3.0, 0.0, 2)).isCloseTo(-9.0, within(1.0e-13));
    assertThat(Quadrature.integral(Math::exp, 1.5, 1.5, 3)).isZero();
  }
}
