package org.airfit.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import org.airfit.Comparison;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class UnitTest {

  /** What the table calls a unit, where that differs from our symbol. */
  private static final Map<String, Unit> NAMED = Map.ofEntries(
      Map.entry("pressure: at (kgf/cm2)", PressureUnit.KILOGRAM_FORCE_PER_SQUARE_CENTIMETRE),
      Map.entry("pressure: torr", PressureUnit.TORR),
      Map.entry("pressure: mmHg conventional", PressureUnit.MILLIMETRE_OF_MERCURY),
      Map.entry("pressure: inHg conventional", PressureUnit.INCH_OF_MERCURY),
      Map.entry("pressure: mmH2O conventional", PressureUnit.MILLIMETRE_OF_WATER),
      Map.entry("pressure: inH2O conventional", PressureUnit.INCH_OF_WATER),
      Map.entry("pressure: lbf/ft2", PressureUnit.POUND_PER_SQUARE_FOOT),
      Map.entry("flow_volume: cfm (ft3/min)", VolumeFlowUnit.CUBIC_FOOT_PER_MINUTE),
      Map.entry("flow_volume: cfh (ft3/h)", VolumeFlowUnit.CUBIC_FOOT_PER_HOUR),
      Map.entry("flow_volume: cfs (ft3/s)", VolumeFlowUnit.CUBIC_FOOT_PER_SECOND),
      Map.entry("flow_volume: m3/h", VolumeFlowUnit.CUBIC_METRE_PER_HOUR),
      Map.entry("flow_volume: m3/min", VolumeFlowUnit.CUBIC_METRE_PER_MINUTE),
      Map.entry("volume: ft3", VolumeUnit.CUBIC_FOOT),
      Map.entry("volume: in3", VolumeUnit.CUBIC_INCH),
      Map.entry("length: mile", LengthUnit.MILE),
      Map.entry("area: in2", AreaUnit.SQUARE_INCH),
      Map.entry("area: ft2", AreaUnit.SQUARE_FOOT),
      Map.entry("density: lb/ft3", DensityUnit.POUND_PER_CUBIC_FOOT),
      Map.entry("energy: Btu_IT", EnergyUnit.BTU),
      Map.entry("energy: ft lbf", EnergyUnit.FOOT_POUND_FORCE),
      Map.entry("power: hp (550 ft lbf/s)", PowerUnit.HORSEPOWER),
      Map.entry("power: hp metric (75 kgf m/s)", PowerUnit.METRIC_HORSEPOWER),
      Map.entry("power: hp electric", PowerUnit.ELECTRIC_HORSEPOWER),
      Map.entry("power: Btu_IT/h", PowerUnit.BTU_PER_HOUR),
      Map.entry("viscosity: cP", ViscosityUnit.CENTIPOISE),
      Map.entry("viscosity: lb/(ft s)", ViscosityUnit.POUND_PER_FOOT_SECOND),
      Map.entry("viscosity: lbf s/ft2", ViscosityUnit.POUND_FORCE_SECOND_PER_SQUARE_FOOT),
      Map.entry("conductance: dm3/(s bar)", ConductanceUnit.CUBIC_DECIMETRE_PER_SECOND_BAR),
      Map.entry("conductance: L/(min bar)", ConductanceUnit.LITRE_PER_MINUTE_BAR),
      Map.entry("temperature_interval: degF or degR", TemperatureUnit.RANKINE));

  private static final Map<String, List<? extends Unit>> BY_QUANTITY = Map.of(
      "pressure", List.of(PressureUnit.values()),
      "flow_volume", List.of(VolumeFlowUnit.values()),
      "volume", List.of(VolumeUnit.values()),
      "length", List.of(LengthUnit.values()),
      "flow_mass", List.of(MassFlowUnit.values()),
      "velocity", List.of(VelocityUnit.values()),
      "energy", List.of(EnergyUnit.values()));

  static Stream<Row> factors() {
    return Rows.of(UnitTest.class, "unit_factors.csv").filter(row -> unit(row) != null);
  }

  private static @Nullable Unit unit(Row row) {
    Unit named = NAMED.get(row.text("quantity") + ": " + row.text("unit"));
    return named != null
        ? named
        : BY_QUANTITY.getOrDefault(row.text("quantity"), List.of()).stream()
            .filter(unit -> unit.symbol().equals(row.text("unit")))
            .findFirst()
            .orElse(null);
  }

  @ParameterizedTest
  @MethodSource("factors")
  void every_factor_is_the_double_nearest_to_its_definition(Row row) {
    Unit unit = Objects.requireNonNull(unit(row));
    double nearest = row.has("exact_numerator")
        ? new BigDecimal(row.text("exact_numerator"))
            .divide(new BigDecimal(row.text("exact_denominator")), new MathContext(40))
            .doubleValue()
        : row.number("factor_to_si");
    Comparison.of(
            "Quantities: unit factors",
            row.text("quantity") + ", 1 " + row.text("unit"),
            nearest,
            row.text("si_unit"),
            row.source())
        .isMetBy(unit.toSi(1.0), 0.0, "exact by definition, so the nearest double");
  }

  /** The table also holds forces, masses, kinematic viscosities and thermal units, which airfit has no quantity for. */
  @Test
  void most_rows_of_the_table_are_units_of_ours() {
    assertThat(factors()).hasSizeGreaterThanOrEqualTo(50);
  }

  @Test
  void flow_coefficients_convert_by_their_definitions() {
    Row row = Rows.of(UnitTest.class, "unit_factors.csv")
        .filter(candidate -> candidate.text("quantity").equals("valve"))
        .findFirst()
        .orElseThrow();
    Comparison.of(
            "Quantities: unit factors",
            "valve coefficient, 1 Cv",
            row.number("factor_to_si"),
            "Kv",
            row.source())
        .isMetWithinFraction(ValveCoefficient.ofCv(1.0).kv(), 3.0e-16, "17 digits printed");
    assertThat(ValveCoefficient.ofKv(1.0).cv() * ValveCoefficient.ofCv(1.0).kv())
        .isEqualTo(1.0);
  }

  @Test
  void ice_and_boiling_point_stand_where_both_scales_put_them() {
    // 459.67 is no binary number, so a Fahrenheit reading may miss by one last digit of the kelvins
    assertThat(Temperature.ofFahrenheit(32.0).kelvins())
        .isCloseTo(273.15, within(Math.ulp(273.15)));
    assertThat(Temperature.ofFahrenheit(212.0).kelvins())
        .isCloseTo(373.15, within(Math.ulp(373.15)));
    assertThat(Temperature.ofKelvins(273.15)).isEqualTo(Temperature.ofCelsius(0.0));
    assertThat(Temperature.ofFahrenheit(-40.0).celsius())
        .isCloseTo(-40.0, within(Math.ulp(273.15)));
    assertThat(Temperature.ofKelvins(273.15).in(TemperatureUnit.RANKINE))
        .isCloseTo(491.67, within(Math.ulp(491.67)));
  }

  @Test
  void every_unit_tells_its_definition_and_its_symbol() {
    for (Kinds.Kind<?, ?> kind : Kinds.ALL) {
      for (Unit unit : kind.units()) {
        assertThat(unit.definition()).isNotBlank();
        assertThat(unit.symbol()).isNotBlank();
      }
    }
  }

  @Test
  void a_scale_that_is_none_is_refused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new UnitScale("x", 0.0, 1.0, 0.0, "", List.of()));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new UnitScale("x", 1.0, Double.NaN, 0.0, "", List.of()));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new UnitScale("x", 1.0, 1.0, Double.NaN, "", List.of()));
  }
}
