package org.airfit.working;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Factors against NIST Special Publication 811, appendix B.8, at the digits printed there. */
class ValueKindTest {

  private static double us(ValueKind kind, double value) {
    return kind.shown(value, UnitSystem.US);
  }

  @Test
  void an_us_unit_has_the_worth_nist_prints() {
    assertThat(us(ValueKind.LENGTH, 0.3048)).isCloseTo(1.0, within(1e-12));
    assertThat(us(ValueKind.SMALL_LENGTH, 0.0254)).isCloseTo(1.0, within(1e-12));
    assertThat(us(ValueKind.BORE, 0.0254)).isCloseTo(1.0, within(1e-12));
    assertThat(us(ValueKind.AREA, 0.092_903_04)).isCloseTo(1.0, within(1e-12));
    assertThat(us(ValueKind.VOLUME, 0.028_316_85)).isCloseTo(1.0, within(2e-7));
    assertThat(us(ValueKind.VOLUME_FLOW, 0.028_316_85)).isCloseTo(1.0, within(2e-7));
    assertThat(us(ValueKind.FREE_AIR, 4.719_474e-4)).isCloseTo(1.0, within(2e-7));
    assertThat(us(ValueKind.MASS_FLOW, 0.453_592_4)).isCloseTo(1.0, within(2e-7));
    assertThat(us(ValueKind.MASS_FLUX, 4.882_428)).isCloseTo(1.0, within(5e-7));
    assertThat(us(ValueKind.PRESSURE, 6_894.757)).isCloseTo(1.0, within(2e-7));
    assertThat(us(ValueKind.SAID_PRESSURE, 6_894.757)).isCloseTo(1.0, within(2e-7));
    assertThat(us(ValueKind.PRESSURE_SQUARED, 6_894.757 * 6_894.757)).isCloseTo(1.0, within(4e-7));
    assertThat(us(ValueKind.DENSITY, 16.018_46)).isCloseTo(1.0, within(5e-7));
    assertThat(us(ValueKind.VISCOSITY, 1.488_164)).isCloseTo(1.0, within(5e-7));
    assertThat(us(ValueKind.VELOCITY, 0.3048)).isCloseTo(1.0, within(1e-12));
    assertThat(us(ValueKind.TEMPERATURE, 5.0 / 9.0)).isCloseTo(1.0, within(1e-12));
    assertThat(us(ValueKind.POWER, 745.6999)).isCloseTo(1.0, within(2e-7));
    // 1 Btu/(lb °F) is 4186.8 J/(kg K), and a Btu (IT) 1055.056 J, a ft lbf 1.355818 J
    assertThat(us(ValueKind.HEAT_CAPACITY, 4_186.8)).isCloseTo(1_055.056 / 1.355_818, within(1e-3));
    assertThat(us(ValueKind.ENERGY_PER_MASS, 2_326.0))
        .isCloseTo(1_055.056 / 1.355_818, within(1e-3));
    assertThat(us(ValueKind.CONDUCTANCE, 0.028_316_85 / 6_894.757)).isCloseTo(1.0, within(5e-7));
  }

  @Test
  void temperatures_as_people_say_them_have_zeros_of_their_own() {
    assertThat(ValueKind.SAID_TEMPERATURE.shown(273.15, UnitSystem.SI)).isZero();
    assertThat(ValueKind.SAID_TEMPERATURE.shown(373.15, UnitSystem.SI))
        .isCloseTo(100.0, within(1e-10));
    assertThat(us(ValueKind.SAID_TEMPERATURE, 273.15)).isCloseTo(32.0, within(1e-10));
    assertThat(us(ValueKind.SAID_TEMPERATURE, 373.15)).isCloseTo(212.0, within(1e-10));
    assertThat(ValueKind.SAID_TEMPERATURE.value(212.0, UnitSystem.US))
        .isCloseTo(373.15, within(1e-10));
  }

  @Test
  void a_kind_named_after_a_unit_shows_it_in_both_systems() {
    for (UnitSystem units : UnitSystem.values()) {
      assertThat(ValueKind.MILLIMETRES.format(0.0254, 4, units)).isEqualTo("25.4 mm");
      assertThat(ValueKind.INCHES.format(0.0254, 4, units)).isEqualTo("1 in");
      assertThat(ValueKind.FEET.format(0.3048, 4, units)).isEqualTo("1 ft");
      assertThat(ValueKind.METRES.format(3.0, 4, units)).isEqualTo("3 m");
      assertThat(ValueKind.PER_INCH.format(14.0, 4, units)).isEqualTo("14");
      assertThat(ValueKind.DEGREES.format(30.0, 4, units)).isEqualTo("30 °");
      assertThat(ValueKind.PASCALS.format(1.0e5, 4, units)).isEqualTo("100000 Pa");
      assertThat(ValueKind.PSI.format(6_894.757_293_168, 4, units)).isEqualTo("1 psi");
      assertThat(ValueKind.PSIA.format(6_894.757_293_168, 4, units)).isEqualTo("1 psia");
      assertThat(ValueKind.KELVINS.format(300.0, 4, units)).isEqualTo("300 K");
      assertThat(ValueKind.KILOWATTS.format(7_500.0, 4, units)).isEqualTo("7.5 kW");
      assertThat(ValueKind.KILOWATT_HOURS.format(3.6e6, 4, units)).isEqualTo("1 kWh");
      assertThat(ValueKind.SECONDS.format(60.0, 4, units)).isEqualTo("60 s");
      assertThat(ValueKind.HOURS.format(3_600.0, 4, units)).isEqualTo("1 h");
      assertThat(ValueKind.MONEY.format(12.5, 4, units)).isEqualTo("12.5");
      assertThat(ValueKind.MONEY_PER_KILOWATT_HOUR.format(0.25, 4, units))
          .isEqualTo("0.25 per kWh");
      assertThat(ValueKind.NUMBER.format(0.25, 4, units)).isEqualTo("0.25");
    }
  }

  @Test
  void units_are_named_beside_the_numbers() {
    assertThat(ValueKind.PRESSURE.format(1.0e5, 3, UnitSystem.SI)).isEqualTo("100000 Pa");
    assertThat(ValueKind.SAID_PRESSURE.format(6.2e5, 3, UnitSystem.SI)).isEqualTo("6.2 bar");
    assertThat(ValueKind.SAID_PRESSURE.format(6.2e5, 3, UnitSystem.US)).isEqualTo("89.9 psi");
    assertThat(ValueKind.SMALL_LENGTH.format(0.025, 3, UnitSystem.SI)).isEqualTo("25 mm");
    assertThat(ValueKind.BORE.format(0.025, 3, UnitSystem.SI)).isEqualTo("0.025 m");
    assertThat(ValueKind.FREE_AIR.format(0.01, 3, UnitSystem.SI)).isEqualTo("36 m³/h");
    assertThat(ValueKind.POWER.format(745.6999, 3, UnitSystem.US)).isEqualTo("1 hp");
    assertThat(ValueKind.SAID_PRESSURE.format(1.0e5, 3, UnitSystem.SI)).isEqualTo("1 bar");
    assertThat(ValueKind.VOLUME.format(1.0, 3, UnitSystem.SI)).isEqualTo("1 m³");
    assertThat(ValueKind.MASS_FLUX.unit(UnitSystem.SI)).isEqualTo("kg/(s m²)");
    assertThat(ValueKind.MASS_FLUX.unit(UnitSystem.US)).isEqualTo("lb/(s ft²)");
    assertThat(ValueKind.HEAT_CAPACITY.unit(UnitSystem.SI)).isEqualTo("J/(kg K)");
    assertThat(ValueKind.HEAT_CAPACITY.unit(UnitSystem.US)).isEqualTo("ft lbf/(lb °R)");
    assertThat(ValueKind.CONDUCTANCE.unit(UnitSystem.SI)).isEqualTo("m³/(s·Pa)");
    assertThat(ValueKind.CONDUCTANCE.unit(UnitSystem.US)).isEqualTo("ft³/(s·psi)");
    assertThat(ValueKind.VISCOSITY.unit(UnitSystem.SI)).isEqualTo("Pa·s");
    assertThat(ValueKind.SAID_TEMPERATURE.unit(UnitSystem.US)).isEqualTo("°F");
    assertThat(ValueKind.SAID_PRESSURE).hasToString("bar or psi");
    assertThat(ValueKind.MILLIMETRES).hasToString("mm");
    assertThat(ValueKind.NUMBER).hasToString("number");
    assertThat(ValueKind.PRESSURE.base()).isEqualTo("Pa");
  }

  @Test
  void what_is_shown_turns_back_into_the_value() {
    for (UnitSystem units : UnitSystem.values()) {
      assertThat(ValueKind.CONDUCTANCE.value(ValueKind.CONDUCTANCE.shown(3.0e-8, units), units))
          .isCloseTo(3.0e-8, within(1e-22));
    }
  }

  @Test
  void a_formula_may_have_units_of_its_own() {
    ValueKind poundsAMinute = ValueKind.only("kg/s", "lb/min", 0.453_592_37 / 60.0);
    assertThat(poundsAMinute.format(0.453_592_37, 4, UnitSystem.SI)).isEqualTo("60 lb/min");
    assertThat(poundsAMinute)
        .isEqualTo(ValueKind.only("kg/s", "lb/min", 0.453_592_37 / 60.0))
        .hasSameHashCodeAs(ValueKind.only("kg/s", "lb/min", 0.453_592_37 / 60.0))
        .isNotEqualTo(ValueKind.only("kg/s", "lb/min", 1.0))
        .isNotEqualTo(ValueKind.only("g/s", "lb/min", 0.453_592_37 / 60.0))
        .isNotEqualTo("lb/min");
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.0, -1.0, Double.NaN, Double.POSITIVE_INFINITY})
  void an_unit_is_worth_something(double worth) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> ValueKind.only("m", "yd", worth))
        .withMessage("worth of the unit \"yd\" must be above 0, was " + worth);
    assertThatIllegalArgumentException().isThrownBy(() -> ValueKind.of("m", "m", 1.0, "yd", worth));
  }

  @Test
  @SuppressWarnings("NullAway") // the point is what happens to callers without such a check
  void nothing_is_not_a_part_of_a_kind() {
    assertThatNullPointerException().isThrownBy(() -> ValueKind.only(null, "m", 1.0));
    assertThatNullPointerException()
        .isThrownBy(() -> ValueKind.only("m", null, 1.0))
        .withMessage("unit");
  }
}
