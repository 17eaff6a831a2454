package org.airfit.working;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.PressureUnit;
import org.airfit.quantity.Range;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.Velocity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

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

  @ParameterizedTest
  @CsvSource({
    "90 psig, 90 psig, 6.21 bar(g)",
    "89.96 psig, 89.96 psig, 6.20 bar(g)",
    "81.24 psig, 81.24 psig, 5.60 bar(g)",
    "100 psig, 100 psig, 6.89 bar(g)",
    "0 psig, 0 psig, 0 bar(g)",
    "6.2 bar(g), 89.9 psig, 6.2 bar(g)",
    "15 bar(g), 217.6 psig, 15 bar(g)",
    "6.205 bar(g), 90.0 psig, 6.205 bar(g)",
    "7.4 bar(g), 107.3 psig, 7.4 bar(g)",
    "7.4001 bar(g), 107.3 psig, 7.40 bar(g)",
    "14.996 bar(g), 217.5 psig, 14.996 bar(g)",
    "14.9961 bar(g), 217.5 psig, 15.00 bar(g)",
  })
  void a_pressure_is_said_in_each_system(String typed, String us, String si) {
    GaugePressure pressure = GaugePressure.parse(typed);
    assertThat(UnitSystem.US.say(pressure)).isEqualTo(us);
    assertThat(UnitSystem.SI.say(pressure)).isEqualTo(si);
    assertThat(UnitSystem.US.sayBoth(pressure)).isEqualTo(us + " (" + si + ")");
    assertThat(UnitSystem.SI.sayBoth(pressure)).isEqualTo(si + " (" + us + ")");
  }

  @Test
  void a_pressure_is_told_from_the_one_it_is_held_against() {
    GaugePressure least = GaugePressure.parse("90 psig");
    GaugePressure below = GaugePressure.parse("89.996 psig");
    assertThat(UnitSystem.US.say(below, least)).isEqualTo("89.996 psig");
    assertThat(UnitSystem.SI.say(below, least)).isEqualTo("6.2050 bar(g)");
    assertThat(UnitSystem.US.say(least, least)).isEqualTo("90 psig");
    GaugePressure hair = GaugePressure.ofPascals(Math.nextDown(least.pascals()));
    assertThat(UnitSystem.US.say(hair, least)).isEqualTo("90 psig");
  }

  /** Read back, the two numbers lie the same way round as what they stand for, and are one where that is one. */
  @Test
  void what_is_compared_is_told_in_the_order_it_has() {
    int told = 0;
    for (UnitSystem units : UnitSystem.values()) {
      for (int exponent = 1; exponent <= 7; exponent++) {
        for (double factor : new double[] {1.0, 2.06843, 6.2053, 10.3421, 16.0}) {
          double more = factor * (1.0 + 0.37 * Math.pow(10.0, -exponent));
          GaugePressure low = GaugePressure.ofBar(factor);
          GaugePressure high = GaugePressure.ofBar(more);
          assertThat(number(units.say(low, high))).isLessThan(number(units.say(high, low)));
          assertThat(number(units.say(high, GaugePressure.ofBar(2.0 * more), low)))
              .isGreaterThan(number(units.say(low, high)));
          Length shorter = Length.ofMetres(factor);
          Length longer = Length.ofMetres(more);
          assertThat(number(units.say(shorter, longer)))
              .isLessThan(number(units.say(longer, shorter)));
          Temperature cold = Temperature.ofCelsius(10.0 * factor);
          Temperature hot = Temperature.ofCelsius(10.0 * more);
          assertThat(number(units.say(cold, hot))).isLessThan(number(units.say(hot, cold)));
          told++;
        }
      }
      Length ten = Length.parse("10 ft");
      assertThat(units.say(ten, Length.ofMetres(Math.nextUp(ten.metres()))))
          .isEqualTo(units.say(ten));
      Temperature sixty = Temperature.parse("60 °C");
      assertThat(units.say(sixty, sixty)).isEqualTo(units.say(sixty));
      GaugePressure ninety = GaugePressure.parse("90 psig");
      assertThat(units.sayBoth(ninety, GaugePressure.parse("89.996 psig")))
          .isEqualTo(units.either("6.2053 bar(g) (90 psig)", "90 psig (6.2053 bar(g))"));
    }
    assertThat(told).isEqualTo(2 * 7 * 5);
  }

  private static double number(String told) {
    return Double.parseDouble(told.substring(0, told.indexOf(' ')));
  }

  @Test
  void other_pressures_are_said_in_each_system() {
    assertThat(UnitSystem.US.say(AbsolutePressure.parse("14.7 psia"))).isEqualTo("14.7 psia");
    assertThat(UnitSystem.SI.say(AbsolutePressure.parse("1.013 bar(a)"))).isEqualTo("1.013 bar(a)");
    PressureDrop drop = PressureDrop.parse("5 psi");
    assertThat(UnitSystem.US.say(drop)).isEqualTo("5 psi");
    assertThat(UnitSystem.SI.say(drop)).isEqualTo("0.34 bar");
    assertThat(UnitSystem.US.sayBoth(drop)).isEqualTo("5 psi (0.34 bar)");
    assertThat(UnitSystem.SI.sayBoth(drop)).isEqualTo("0.34 bar (5 psi)");
  }

  @ParameterizedTest
  @CsvSource({
    "30 ft, 30 ft, 9.14 m",
    "10 m, 32.8 ft, 10 m",
    "400 m, 1312 ft, 400 m",
    "6 in, 0.5 ft, 0.152 m",
  })
  void a_length_is_said_in_each_system(String typed, String us, String si) {
    assertThat(UnitSystem.US.say(Length.parse(typed))).isEqualTo(us);
    assertThat(UnitSystem.SI.say(Length.parse(typed))).isEqualTo(si);
  }

  /** A bore is called by a size in inches up to 0.1 mm from it, and no farther. */
  @ParameterizedTest
  @CsvSource({
    "3/8 in, 3/8 in, 9.525 mm",
    "9.5 mm, 3/8 in, 9.5 mm",
    "9.63 mm, 0.379 in, 9.63 mm",
    "9.62 mm, 3/8 in, 9.62 mm",
    "9.43 mm, 3/8 in, 9.43 mm",
    "9.42 mm, 0.371 in, 9.42 mm",
    "1.25 in, 1 1/4 in, 31.75 mm",
    "0.824 in, 0.824 in, 20.93 mm",
    "13 mm, 0.512 in, 13 mm",
  })
  void a_bore_is_called_by_its_inch_name_where_it_has_one(String typed, String us, String si) {
    assertThat(UnitSystem.US.sayBore(Length.parse(typed))).isEqualTo(us);
    assertThat(UnitSystem.SI.sayBore(Length.parse(typed))).isEqualTo(si);
  }

  /** 22 scfm × 0.3048³ m³/60 s × (14.7 psia/100 kPa) × (293.15/288.706) = 10.69 L/s ANR, humidity ignored. */
  @ParameterizedTest
  @CsvSource({
    "22 scfm, 22 scfm, 10.7 L/s ANR",
    "22 scfm (68 °F), 22 scfm (68 °F), 10.5 L/s ANR",
    "10.7 L/s ANR, 22 scfm, 10.7 L/s ANR",
    "58 Nm³/h, 36.1 scfm, 16.1 L/s DIN 1343",
    "0.25 scfm, 0.25 scfm, 0.121 L/s ANR",
    "105 scfm, 105 scfm, 51 L/s ANR",
    "10 cfm ISO 1217, 9.72 scfm, 4.72 L/s ISO 1217",
  })
  void a_flow_keeps_the_state_it_was_typed_in(String typed, String us, String si) {
    FreeAirFlow flow = FreeAirFlow.parse(typed);
    assertThat(UnitSystem.US.say(flow)).isEqualTo(us);
    assertThat(UnitSystem.SI.say(flow)).isEqualTo(si);
    assertThat(UnitSystem.US.sayBoth(flow)).isEqualTo(us + " (" + si + ")");
    assertThat(UnitSystem.SI.sayBoth(flow)).isEqualTo(si + " (" + us + ")");
  }

  /** From 1e9 bar or psi on no decimals are told: the digits would be those of the number's binary. */
  @ParameterizedTest
  @CsvSource({
    "999999999, 999999999 bar(g)",
    "1e9, 1.0E9 bar(g)",
    "3.182e84, 3.182E84 bar(g)",
    "-1e9, -1.0E9 bar(g)"
  })
  void a_pressure_that_no_air_has_is_said_in_short(double bar, String said) {
    assertThat(UnitSystem.SI.say(GaugePressure.ofBar(bar))).isEqualTo(said);
  }

  @Test
  void a_state_of_ones_own_stays_in_both() {
    FreeAirFlow flow = FreeAirFlow.parse("10 L/s at shop (15 °C, 100 kPa(a), dry)");
    assertThat(UnitSystem.SI.say(flow)).isEqualTo("10 L/s shop");
    assertThat(UnitSystem.US.say(flow)).isEqualTo("21.2 cfm shop");
  }

  @Test
  void what_else_a_sentence_needs_is_said_in_each_system() {
    assertThat(UnitSystem.US.say(Temperature.parse("20 °C"))).isEqualTo("68 °F");
    assertThat(UnitSystem.SI.say(Temperature.parse("68 °F"))).isEqualTo("20 °C");
    assertThat(UnitSystem.US.say(Velocity.parse("30 ft/s"))).isEqualTo("30 ft/s");
    assertThat(UnitSystem.SI.say(Velocity.parse("30 ft/s"))).isEqualTo("9.1 m/s");
    assertThat(UnitSystem.SI.say(Velocity.ofMetresPerSecond(4.901184e59)))
        .as("what no air has")
        .isEqualTo("4.901e59 m/s");
    assertThat(UnitSystem.US.saySmall(Length.parse("11.92 mm"))).isEqualTo("0.4693 in");
    assertThat(UnitSystem.SI.saySmall(Length.parse("11.92 mm"))).isEqualTo("11.92 mm");
    MassFlow flow = MassFlow.ofKilogramsPerSecond(0.0127);
    assertThat(UnitSystem.SI.say(flow)).isEqualTo("0.0127 kg/s");
    assertThat(UnitSystem.US.say(flow)).isEqualTo("0.028 lb/s"); // 0.0127/0.45359237 = 0.027999
    // 8.6e-8 m³/(s Pa) / 0.3048³ m³/ft³ × 6894.757 Pa/psi = 0.020940
    SonicConductance c = SonicConductance.parse("8.6 dm³/(s·bar)");
    assertThat(UnitSystem.SI.say(c)).isEqualTo("8.6 dm³/(s·bar)");
    assertThat(UnitSystem.US.say(c)).isEqualTo("0.02094 ft³/(s·psi)");
  }

  /** A coupling at a small flow loses less than a tenth of a psi, and a sheet that says 0 says something else. */
  @Test
  void a_loss_below_the_last_digit_is_told_as_less_than_that() {
    assertThat(UnitSystem.US.say(PressureDrop.ofPsi(0.0))).isEqualTo("0 psi");
    assertThat(UnitSystem.US.say(PressureDrop.ofPsi(0.01))).isEqualTo("< 0.1 psi");
    assertThat(UnitSystem.US.say(PressureDrop.ofPsi(0.049))).isEqualTo("< 0.1 psi");
    assertThat(UnitSystem.US.say(PressureDrop.ofPsi(0.051))).isEqualTo("0.1 psi");
    assertThat(UnitSystem.SI.say(PressureDrop.ofBar(0.0))).isEqualTo("0 bar");
    assertThat(UnitSystem.SI.say(PressureDrop.ofBar(0.0049))).isEqualTo("< 0.01 bar");
    assertThat(UnitSystem.SI.say(PressureDrop.ofBar(0.0051))).isEqualTo("0.01 bar");
    assertThat(UnitSystem.SI.sayBoth(PressureDrop.ofBar(0.004))).isEqualTo("< 0.01 bar (0.1 psi)");
    assertThat(UnitSystem.SI.say(PressureDrop.ofPascals(1.0e-6)))
        .as("what a difference of two sums rounds off is no loss")
        .isEqualTo("0 bar");
  }

  /** By hand: 4.499 bar is not 4.50 bar at least, nor 4.501 bar at most; what was typed stays as it was typed. */
  @Test
  void at_least_is_rounded_down_and_at_most_up() {
    GaugePressure below = GaugePressure.ofBar(4.4996);
    GaugePressure above = GaugePressure.ofBar(4.5004);
    assertThat(UnitSystem.SI.say(below)).isEqualTo("4.50 bar(g)");
    assertThat(UnitSystem.SI.sayAtLeast(below)).isEqualTo("4.49 bar(g)");
    assertThat(UnitSystem.SI.sayAtMost(below)).isEqualTo("4.50 bar(g)");
    assertThat(UnitSystem.SI.sayAtLeast(above)).isEqualTo("4.50 bar(g)");
    assertThat(UnitSystem.SI.sayAtMost(above)).isEqualTo("4.51 bar(g)");
    assertThat(UnitSystem.SI.sayAtLeast(GaugePressure.parse("4.5 bar(g)"))).isEqualTo("4.5 bar(g)");
    assertThat(UnitSystem.SI.sayAtMost(GaugePressure.parse("4.5 bar(g)"))).isEqualTo("4.5 bar(g)");
    assertThat(UnitSystem.US.sayBothAtLeast(GaugePressure.ofPsi(83.4712)))
        .isEqualTo("83.4 psig (5.75 bar(g))");
    assertThat(UnitSystem.US.sayBothAtMost(GaugePressure.ofPsi(83.4712)))
        .isEqualTo("83.5 psig (5.76 bar(g))");
    assertThat(UnitSystem.US.sayAtLeast(GaugePressure.ofPsi(90.003), GaugePressure.ofPsi(90.0)))
        .as("more than what it is compared with")
        .isEqualTo("90.003 psig");
    assertThat(UnitSystem.US.sayBothOfRange(
            new Range<>(GaugePressure.ofPsi(85.0), GaugePressure.ofPsi(90.0))))
        .isEqualTo("85 to 90 psig (5.86 to 6.21 bar(g))");
  }

  @Test
  void a_unit_is_of_one_system_or_of_neither() {
    assertThat(UnitSystem.of(PressureUnit.PSI)).contains(UnitSystem.US);
    assertThat(UnitSystem.of(PressureUnit.BAR)).contains(UnitSystem.SI);
    assertThat(UnitSystem.of(PressureUnit.ATMOSPHERE)).isEmpty();
  }

  /** Nobody lays a hose to a millimetre: 3 ft is 0.9144 m, 30 ft 9.144 m and 100 ft 30.48 m. */
  @Test
  void a_length_that_was_typed_in_feet_is_told_in_metres_without_digits_nobody_meant() {
    assertThat(UnitSystem.SI.say(Length.parse("3 ft"))).isEqualTo("0.914 m");
    assertThat(UnitSystem.SI.say(Length.parse("30 ft"))).isEqualTo("9.14 m");
    assertThat(UnitSystem.SI.say(Length.parse("100 ft"))).isEqualTo("30.48 m");
    assertThat(UnitSystem.SI.say(Length.parse("10 m"))).isEqualTo("10 m");
    assertThat(UnitSystem.SI.say(Length.parse("30 ft"), Length.parse("50 ft"))).isEqualTo("9.14 m");
    assertThat(UnitSystem.SI.say(Length.parse("9.999 m"), Length.parse("10 m")))
        .isEqualTo("9.999 m");
  }

  /** By hand: with four digits 9.9981 and 10 are apart, and 60.0012 and 60 with five; no more are printed. */
  @Test
  void lengths_and_temperatures_have_the_digits_that_tell_them_apart_and_no_more() {
    Length shorter = Length.parse("9.99812345 ft");
    Length ten = Length.parse("10 ft");
    assertThat(UnitSystem.US.say(shorter, ten)).isEqualTo("9.998 ft");
    assertThat(UnitSystem.US.say(ten, shorter)).isEqualTo("10 ft");
    assertThat(UnitSystem.SI.say(Length.parse("10.0012345 m"), Length.parse("10 m")))
        .isEqualTo("10.001 m");
    Temperature warmer = Temperature.parse("60.00123456 °C");
    Temperature sixty = Temperature.parse("60 °C");
    assertThat(UnitSystem.SI.say(warmer, sixty)).isEqualTo("60.001 °C");
    assertThat(UnitSystem.SI.say(sixty, warmer)).isEqualTo("60 °C");
  }

  @Test
  void a_large_number_stays_as_it_was_typed() {
    assertThat(UnitSystem.US.say(GaugePressure.parse("20001 psig"))).isEqualTo("20001 psig");
    assertThat(UnitSystem.SI.say(Velocity.ofMetresPerSecond(1.0e9))).isEqualTo("1e9 m/s");
  }
}
