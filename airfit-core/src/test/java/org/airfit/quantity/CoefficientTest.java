package org.airfit.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The factors that two trades count differently, and power over time. */
class CoefficientTest {

  @ParameterizedTest
  @ValueSource(doubles = {0.0, -0.02, Double.NaN, Double.POSITIVE_INFINITY})
  void a_friction_factor_of_nothing_is_refused(double darcy) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> FrictionFactor.ofDarcy(darcy))
        .withMessage("Darcy friction factor must be finite and above 0, was " + darcy);
    assertThatIllegalArgumentException().isThrownBy(() -> FrictionFactor.ofFanning(darcy));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.0, -1.0, Double.NaN, Double.POSITIVE_INFINITY})
  void a_valve_that_passes_nothing_is_refused(double kv) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> ValveCoefficient.ofKv(kv))
        .withMessage("Kv must be finite and above 0 m³/h, was " + kv + " m³/h");
    assertThatIllegalArgumentException().isThrownBy(() -> ValveCoefficient.ofCv(kv));
  }

  @Test
  void coefficients_are_read_with_the_word_that_tells_which() {
    assertThat(FrictionFactor.parse("0.02 Darcy")).isEqualTo(FrictionFactor.ofDarcy(0.02));
    assertThat(FrictionFactor.parse("0.005 (fanning)")).isEqualTo(FrictionFactor.ofFanning(0.005));
    assertThat(ValveCoefficient.parse("0.9 Kv")).isEqualTo(ValveCoefficient.ofKv(0.9));
    assertThat(ValveCoefficient.parse("1.04 CV")).isEqualTo(ValveCoefficient.ofCv(1.04));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> ValveCoefficient.parse("0.9"))
        .withMessage(
            "\"0.9\": the unit is missing, at position 3; accepted: a number with its unit,"
                + " such as \"0.9 Kv\", \"1.04 Cv\"; the units are Kv, Cv");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> FrictionFactor.parse("0 Darcy"))
        .withMessageContaining("must be finite and above 0");
  }

  @Test
  void coefficients_order_print_and_equal_by_their_number() {
    assertThat(FrictionFactor.ofDarcy(0.02))
        .isEqualTo(FrictionFactor.ofFanning(0.005))
        .hasSameHashCodeAs(FrictionFactor.ofFanning(0.005))
        .isLessThan(FrictionFactor.ofDarcy(0.03))
        .isNotEqualTo(FrictionFactor.ofDarcy(0.03))
        .isNotEqualTo("0.02")
        .hasToString("0.02 (Darcy)");
    assertThat(ValveCoefficient.ofKv(0.9))
        .isEqualTo(ValveCoefficient.ofKv(0.9))
        .hasSameHashCodeAs(ValveCoefficient.ofKv(0.9))
        .isLessThan(ValveCoefficient.ofKv(1.0))
        .isNotEqualTo(ValveCoefficient.ofKv(1.0))
        .isNotEqualTo("0.9")
        .hasToString("0.9 Kv");
  }

  @Test
  void power_over_time_is_energy() {
    assertThat(Power.ofKilowatts(7.5).over(Duration.ofHours(2)))
        .isEqualTo(Energy.ofKilowattHours(15));
    assertThat(Power.ofWatts(4).over(Duration.ofMillis(250))).isEqualTo(Energy.ofJoules(1));
    assertThat(Power.ofWatts(4).over(Duration.ZERO)).isEqualTo(Energy.ofJoules(0));
  }

  /** Even of no power: the time is wrong, not the product. */
  @ParameterizedTest
  @ValueSource(doubles = {0.0, 7500.0})
  void time_does_not_run_backwards(double watts) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Power.ofWatts(watts).over(Duration.ofSeconds(-5)))
        .withMessage("time must be at least 0 s, was -5 s");
  }
}
