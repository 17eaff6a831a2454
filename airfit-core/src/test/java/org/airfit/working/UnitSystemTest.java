package org.airfit.working;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** The factors of the units are in {@link ValueKindTest}. */
class UnitSystemTest {

  /** NIST Special Publication 811, appendix B.8: a foot is 0.3048 m; the standard acceleration of fall 9.80665 m/s². */
  @Test
  void the_acceleration_of_fall_is_in_feet() {
    assertThat(Double.parseDouble(UnitSystem.G_C))
        .isCloseTo(32.174_05, within(5e-6))
        .isCloseTo(9.806_65 / 0.3048, within(1e-8));
  }

  @Test
  void sentences_name_the_units_of_the_steps() {
    for (UnitSystem units : UnitSystem.values()) {
      assertThat(units.pressureUnit().symbol()).isEqualTo(ValueKind.SAID_PRESSURE.unit(units));
      assertThat(units.massFlowUnit().symbol()).isEqualTo(ValueKind.MASS_FLOW.unit(units));
      assertThat(units.smallLengthUnit().symbol()).isEqualTo(ValueKind.SMALL_LENGTH.unit(units));
    }
  }

  @Test
  void one_of_two_forms_is_chosen() {
    assertThat(UnitSystem.SI.either("m", "ft")).isEqualTo("m");
    assertThat(UnitSystem.US.either("m", "ft")).isEqualTo("ft");
  }
}
