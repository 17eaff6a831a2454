package org.airfit.quantity;

import static java.util.Map.entry;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Stream;
import org.airfit.Comparison;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class UnitTest {

  private static final String CHAPTER = "Quantities: unit factors";

  /** The rows that are units of ours, by quantity and unit. */
  private static final Map<String, Unit> OURS = Map.ofEntries(
      entry("pressure, psi", PressureUnit.PSI),
      entry("pressure, ksi", PressureUnit.KSI),
      entry("pressure, bar", PressureUnit.BAR),
      entry("pressure, mbar", PressureUnit.MILLIBAR),
      entry("pressure, kPa", PressureUnit.KILOPASCAL),
      entry("pressure, MPa", PressureUnit.MEGAPASCAL),
      entry("pressure, atm", PressureUnit.ATMOSPHERE),
      entry("pressure, at (kgf/cm2)", PressureUnit.KILOGRAM_FORCE_PER_SQUARE_CENTIMETRE),
      entry("pressure, torr", PressureUnit.TORR),
      entry("pressure, mmHg conventional", PressureUnit.MILLIMETRE_OF_MERCURY),
      entry("pressure, inHg conventional", PressureUnit.INCH_OF_MERCURY),
      entry("pressure, mmH2O conventional", PressureUnit.MILLIMETRE_OF_WATER),
      entry("pressure, inH2O conventional", PressureUnit.INCH_OF_WATER),
      entry("pressure, lbf/ft2", PressureUnit.POUND_PER_SQUARE_FOOT),
      entry("flow_volume, cfm (ft3/min)", VolumeFlowUnit.CUBIC_FOOT_PER_MINUTE),
      entry("flow_volume, cfh (ft3/h)", VolumeFlowUnit.CUBIC_FOOT_PER_HOUR),
      entry("flow_volume, cfs (ft3/s)", VolumeFlowUnit.CUBIC_FOOT_PER_SECOND),
      entry("flow_volume, L/min", VolumeFlowUnit.LITRE_PER_MINUTE),
      entry("flow_volume, L/s", VolumeFlowUnit.LITRE_PER_SECOND),
      entry("flow_volume, m3/h", VolumeFlowUnit.CUBIC_METRE_PER_HOUR),
      entry("flow_volume, m3/min", VolumeFlowUnit.CUBIC_METRE_PER_MINUTE),
      entry("volume, ft3", VolumeUnit.CUBIC_FOOT),
      entry("volume, in3", VolumeUnit.CUBIC_INCH),
      entry("volume, L", VolumeUnit.LITRE),
      entry("volume, US gal", VolumeUnit.US_GALLON),
      entry("volume, imp gal", VolumeUnit.IMPERIAL_GALLON),
      entry("length, in", LengthUnit.INCH),
      entry("length, ft", LengthUnit.FOOT),
      entry("length, yd", LengthUnit.YARD),
      entry("length, mile", LengthUnit.MILE),
      entry("length, mil", LengthUnit.MIL),
      entry("area, in2", AreaUnit.SQUARE_INCH),
      entry("area, ft2", AreaUnit.SQUARE_FOOT),
      entry("flow_mass, lb/s", MassFlowUnit.POUND_PER_SECOND),
      entry("flow_mass, lb/min", MassFlowUnit.POUND_PER_MINUTE),
      entry("flow_mass, lb/h", MassFlowUnit.POUND_PER_HOUR),
      entry("density, lb/ft3", DensityUnit.POUND_PER_CUBIC_FOOT),
      entry("velocity, ft/s", VelocityUnit.FOOT_PER_SECOND),
      entry("velocity, ft/min", VelocityUnit.FOOT_PER_MINUTE),
      entry("energy, Btu_IT", EnergyUnit.BTU),
      entry("energy, ft lbf", EnergyUnit.FOOT_POUND_FORCE),
      entry("energy, kWh", EnergyUnit.KILOWATT_HOUR),
      entry("power, hp (550 ft lbf/s)", PowerUnit.HORSEPOWER),
      entry("power, hp metric (75 kgf m/s)", PowerUnit.METRIC_HORSEPOWER),
      entry("power, hp electric", PowerUnit.ELECTRIC_HORSEPOWER),
      entry("power, Btu_IT/h", PowerUnit.BTU_PER_HOUR),
      entry("viscosity, cP", ViscosityUnit.CENTIPOISE),
      entry("viscosity, lb/(ft s)", ViscosityUnit.POUND_PER_FOOT_SECOND),
      entry("viscosity, lbf s/ft2", ViscosityUnit.POUND_FORCE_SECOND_PER_SQUARE_FOOT),
      entry("temperature_interval, degF or degR", TemperatureUnit.RANKINE),
      entry("conductance, dm3/(s bar)", ConductanceUnit.CUBIC_DECIMETRE_PER_SECOND_BAR),
      entry("conductance, L/(min bar)", ConductanceUnit.LITRE_PER_MINUTE_BAR));

  private static final double POUND = MassFlowUnit.POUND_PER_SECOND.toSi(1.0);
  private static final double POUND_FORCE =
      PressureUnit.PSI.toSi(1.0) * AreaUnit.SQUARE_INCH.toSi(1.0);

  /**
   * The rows that are no unit of ours but a product of units of ours: they check the same factors from another side.
   */
  private static final Map<String, Double> COMPOSED = Map.ofEntries(
      entry("flow_volume, US gal/min", VolumeUnit.US_GALLON.toSi(1.0) / 60.0),
      entry("flow_volume, imp gal/min", VolumeUnit.IMPERIAL_GALLON.toSi(1.0) / 60.0),
      entry("volume, barrel (petroleum, 42 US gal)", VolumeUnit.US_GALLON.toSi(42.0)),
      entry("volume, barrel (US liquid, 31.5 US gal)", VolumeUnit.US_GALLON.toSi(31.5)),
      entry("mass, lb", POUND),
      entry("mass, oz", POUND / 16.0),
      entry("mass, slug", POUND_FORCE / LengthUnit.FOOT.toSi(1.0)),
      entry("force, lbf", POUND_FORCE),
      entry(
          "force, kgf",
          PressureUnit.KILOGRAM_FORCE_PER_SQUARE_CENTIMETRE.toSi(1.0)
              * AreaUnit.SQUARE_CENTIMETRE.toSi(1.0)),
      entry("velocity, mile/h", LengthUnit.MILE.toSi(1.0) / 3600.0),
      entry(
          "energy, cal_IT",
          EnergyUnit.BTU.toSi(1.0) / (1000.0 * POUND * TemperatureUnit.RANKINE.toSi(1.0))),
      entry("power, ton of refrigeration", PowerUnit.BTU_PER_HOUR.toSi(12_000.0)),
      entry("viscosity_kinematic, cSt", AreaUnit.SQUARE_MILLIMETRE.toSi(1.0)),
      entry("viscosity_kinematic, ft2/s", AreaUnit.SQUARE_FOOT.toSi(1.0)),
      entry("valve, Cv (US gpm at 1 psi)", ValveCoefficient.ofCv(1.0).kv()));

  /** What airfit has no unit for: columns at a named temperature, and the thermochemical calorie. */
  private static final Set<String> NOT_OURS = Set.of(
      "pressure, inHg 32F",
      "pressure, inHg 60F",
      "pressure, inH2O 39.2F",
      "pressure, inH2O 60F",
      "energy, Btu_th",
      "energy, cal_th");

  static Stream<Row> rows() {
    return Rows.of(UnitTest.class, "unit_factors.csv");
  }

  static Stream<Row> rowsOfOurUnits() {
    return rows().filter(row -> OURS.containsKey(name(row)));
  }

  static Stream<Row> rowsWithAnswer() {
    return rows().filter(row -> !NOT_OURS.contains(name(row)));
  }

  static Stream<Row> rowsWithPrint() {
    return rowsWithAnswer().filter(row -> row.has("sp811_printed"));
  }

  static Stream<Unit> units() {
    return Arrays.stream(Unit.class.getPermittedSubclasses())
        .flatMap(type -> Arrays.stream(type.getEnumConstants()))
        .map(Unit.class::cast);
  }

  private static String name(Row row) {
    return row.text("quantity") + ", " + row.text("unit");
  }

  private static double ours(Row row) {
    Unit unit = OURS.get(name(row));
    return unit == null
        ? Objects.requireNonNull(COMPOSED.get(name(row)), name(row))
        : unit.toSi(1.0);
  }

  @Test
  void every_row_of_the_table_is_answered_for() {
    Set<String> names = new HashSet<>(rows().map(UnitTest::name).toList());
    Set<String> answered = new HashSet<>(OURS.keySet());
    answered.addAll(COMPOSED.keySet());
    answered.addAll(NOT_OURS);
    assertThat(names).hasSize(73).isEqualTo(answered);
  }

  @ParameterizedTest
  @MethodSource("rowsWithAnswer")
  void a_factor_is_that_of_the_definition(Row row) {
    boolean composed = COMPOSED.containsKey(name(row));
    Comparison.of(
            CHAPTER,
            name(row),
            row.number("factor_to_si"),
            row.text("si_unit") + " per unit",
            row.evidence("factor_to_si"))
        .isMetWithinFraction(
            ours(row),
            composed ? 1.0e-15 : 2.3e-16,
            composed
                ? "a double holds 1.1e-16, and up to five are multiplied"
                : "an ulp: a double cannot tell the seventeenth digit printed");
  }

  /** The exact definition gates the same rows above; the prints of SP 811 are recalled and only stand beside it. */
  @ParameterizedTest
  @MethodSource("rowsWithPrint")
  void a_factor_rounds_to_the_digits_of_the_recalled_print(Row row) {
    Comparison.of(
            CHAPTER,
            name(row) + ", as recalled from the print",
            row.number("sp811_printed"),
            row.text("si_unit") + " per unit",
            row.evidence("sp811_printed"))
        .isMetBy(ours(row), row.halfDigit("sp811_printed"), "digits printed");
  }

  /** Not within a tolerance: the fraction itself. Only the horsepower of 550 ft·lbf/s is too long for two doubles. */
  @ParameterizedTest
  @MethodSource("rowsOfOurUnits")
  void a_factor_is_held_as_the_exact_fraction(Row row) {
    Unit unit = Objects.requireNonNull(OURS.get(name(row)), name(row));
    UnitScale scale = unit.scale();
    BigDecimal ours =
        new BigDecimal(scale.multiplier()).multiply(new BigDecimal(row.text("exact_denominator")));
    BigDecimal exact =
        new BigDecimal(scale.divisor()).multiply(new BigDecimal(row.text("exact_numerator")));
    if (unit == PowerUnit.HORSEPOWER) {
      assertThat(ours.doubleValue()).isEqualTo(exact.doubleValue());
    } else {
      assertThat(ours).isEqualByComparingTo(exact);
    }
  }

  @ParameterizedTest
  @MethodSource("units")
  void every_unit_says_how_it_is_written_and_defined(Unit unit) {
    assertThat(unit.symbol()).isNotBlank().isEqualTo(unit.scale().symbol());
    assertThat(unit.definition()).isNotBlank().isEqualTo(unit.scale().definition());
    assertThat(unit.scale().spellings()).doesNotContain(unit.symbol());
  }

  /**
   * A factor that is neither a power of ten nor one over minutes or hours stands in the table. A degree Fahrenheit is one
   * Rankine.
   */
  @ParameterizedTest
  @MethodSource("units")
  void a_unit_that_is_no_power_of_ten_has_a_row_with_its_factor(Unit unit) {
    double factor = unit.toSi(1.0) - unit.toSi(0.0);
    boolean isPlain = Stream.of(1.0, 60.0, 3600.0)
        .map(times -> Math.log10(factor * times))
        .anyMatch(powers -> Math.abs(powers - Math.rint(powers)) < 1.0e-12);
    if (!isPlain && unit != TemperatureUnit.FAHRENHEIT) {
      assertThat(OURS).containsValue(unit);
    }
  }

  @Test
  void the_fixed_points_of_the_temperature_scales_are_exact() {
    assertThat(TemperatureUnit.CELSIUS.toSi(0.0)).isEqualTo(273.15);
    assertThat(TemperatureUnit.CELSIUS.toSi(-273.15)).isZero();
    assertThat(TemperatureUnit.FAHRENHEIT.toSi(32.0)).isEqualTo(273.15);
    assertThat(TemperatureUnit.FAHRENHEIT.toSi(212.0)).isEqualTo(373.15);
    assertThat(TemperatureUnit.FAHRENHEIT.toSi(-459.67)).isZero();
    assertThat(TemperatureUnit.FAHRENHEIT.toSi(-40.0))
        .isEqualTo(TemperatureUnit.CELSIUS.toSi(-40.0));
  }

  /** The nearest double to the true kelvins, as the decimal is typed, and the same decimal back. */
  @Test
  void whole_degrees_and_tenths_convert_to_the_nearest_kelvins_and_come_back_as_typed() {
    for (int tenths = -1000; tenths <= 10_000; tenths++) {
      double celsius = tenths / 10.0;
      double kelvins =
          new BigDecimal(tenths).movePointLeft(1).add(new BigDecimal("273.15")).doubleValue();
      assertThat(TemperatureUnit.CELSIUS.toSi(celsius))
          .isCloseTo(kelvins, within(Math.ulp(kelvins)));
      assertThat(TemperatureUnit.CELSIUS.fromSi(TemperatureUnit.CELSIUS.toSi(celsius)))
          .isEqualTo(celsius);
      assertThat(TemperatureUnit.FAHRENHEIT.fromSi(TemperatureUnit.FAHRENHEIT.toSi(celsius)))
          .isEqualTo(celsius);
    }
    for (int fives = -54; fives <= 200; fives++) {
      assertThat(TemperatureUnit.FAHRENHEIT.toSi(9.0 * fives + 32.0))
          .isEqualTo(TemperatureUnit.CELSIUS.toSi(5.0 * fives))
          .isEqualTo(new BigDecimal(5 * fives).add(new BigDecimal("273.15")).doubleValue());
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.0, -1.0, Double.NaN, Double.POSITIVE_INFINITY})
  void a_scale_of_no_size_is_refused(double factor) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new UnitScale("x", factor, 1.0, 0.0, "none", List.of()))
        .withMessage(
            "multiplier and divisor must be positive and finite, were " + factor + " and 1.0");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new UnitScale("x", 1.0, factor, 0.0, "none", List.of()))
        .withMessage("multiplier and divisor must be positive and finite, were 1.0 and " + factor);
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, 0.001})
  void a_scale_without_a_clear_zero_is_refused(double offset) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new UnitScale("x", 1.0, 1.0, offset, "none", List.of()))
        .withMessage("offset must be finite, of two decimals at most, was " + offset + " x");
  }
}
