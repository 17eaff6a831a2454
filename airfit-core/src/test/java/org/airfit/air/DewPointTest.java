package org.airfit.air;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.Stream;
import org.airfit.Comparison;
import org.airfit.Pencil;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.PressureUnit;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.TemperatureUnit;
import org.airfit.working.Completeness;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class DewPointTest {

  private static final String CHAPTER = "Air: water in it";
  private static final AbsolutePressure AROUND = AbsolutePressure.STANDARD_ATMOSPHERE;
  private static final AbsolutePressure LINE = AbsolutePressure.ofBar(8.01325);

  /** Over ice below the triple point, over water above: a dew point over water that has not frozen is another thing. */
  static Stream<Row> saturation() {
    return Rows.of(DewPointTest.class, "saturation_pressure.csv")
        .filter(row -> row.text("phase").equals("ice") == row.number("t_degC") < 0.01);
  }

  private static DewPoint at(Temperature temperature) {
    return new DewPoint(temperature, AbsolutePressure.ofBar(16.0));
  }

  @ParameterizedTest
  @MethodSource("saturation")
  void the_saturation_pressure_is_that_of_the_steam_tables(Row row) {
    Comparison.of(
            CHAPTER,
            row.text("t_degC") + " °C over " + row.text("phase"),
            row.number("p_iapws_Pa"),
            "Pa",
            row.evidence("p_iapws_Pa"))
        .isMetBy(
            at(Temperature.ofCelsius(row.number("t_degC"))).vapourPressure().pascals(),
            row.halfDigit("p_iapws_Pa"),
            "half a unit of the last digit");
  }

  static Stream<Row> printedSaturation() {
    return Rows.of(DewPointTest.class, "saturation_published.csv")
        .filter(row -> row.text("quantity").startsWith("saturation pressure over"))
        .filter(row -> !row.text("t").equals("150")); // above 100 °C
  }

  @ParameterizedTest
  @MethodSource("printedSaturation")
  void the_saturation_pressure_is_the_printed_one(Row row) {
    boolean isCelsius = row.text("t_unit").equals("degC");
    Temperature t = Temperature.of(
        row.number("t"), isCelsius ? TemperatureUnit.CELSIUS : TemperatureUnit.FAHRENHEIT);
    double pascals = at(t).vapourPressure().pascals();
    double unit = switch (row.text("unit")) {
      case "Pa" -> 1.0;
      case "psi" -> 6_894.757293168361;
      case "inHg" -> 3_386.389;
      default -> throw new IllegalArgumentException(row.text("unit"));
    };
    Comparison.of(
            CHAPTER,
            row.text("t") + " " + row.text("t_unit") + ", " + row.text("quantity"),
            row.number("published"),
            row.text("unit"),
            row.evidence("published"))
        .isMetBy(
            pascals / unit,
            row.halfDigit("published")
                + (row.text("unit").equals("inHg") ? 0.005 : 0.0005) * row.number("published"),
            "half a unit of the last digit printed, and 0.05 % for the other equation; tables before 1976 differ by"
                + " up to 0.5 %");
  }

  static Stream<Row> ratios() {
    return Rows.of(DewPointTest.class, "humidity_ratio_published.csv");
  }

  /** The printed ratios are those of real air, that holds more: by 0.4 to 0.7 %, and by 1.2 % where a half is vapour. */
  @ParameterizedTest
  @MethodSource("ratios")
  void the_humidity_ratio_is_the_printed_one_less_what_real_air_holds_more(Row row) {
    double ours = new DewPoint(
            Temperature.ofCelsius(row.number("t_degC")),
            AbsolutePressure.ofKilopascals(row.number("p_kPa")))
        .humidityRatio();
    Comparison.of(
            CHAPTER,
            "W at " + row.text("t_degC") + " °C",
            row.number("published_kg_per_kg"),
            "kg/kg",
            row.evidence("published_kg_per_kg"))
        .isMetBy(
            ours,
            row.halfDigit("published_kg_per_kg") + 0.0125 * row.number("published_kg_per_kg"),
            "ideal gases: real air holds up to 1.2 % more at atmospheric pressure");
    assertThat(ours).isLessThan(row.number("published_kg_per_kg"));
  }

  static Stream<Row> conversions() {
    return Rows.of(DewPointTest.class, "dew_point_conversion.csv");
  }

  @ParameterizedTest
  @MethodSource("conversions")
  void a_dew_point_at_another_pressure_is_that_of_the_same_water(Row row) {
    DewPoint line = new DewPoint(
        Temperature.ofCelsius(row.number("pdp_degC")),
        AbsolutePressure.ofBar(row.number("p_line_bar_abs")));
    DewPoint other = line.at(AbsolutePressure.ofBar(row.number("p_other_bar_abs")));
    String what = row.text("pdp_degC") + " °C at " + row.text("p_line_bar_abs") + " bar, at "
        + row.text("p_other_bar_abs") + " bar";
    Comparison.of(
            CHAPTER,
            what,
            row.number("dew_other_ideal_degC"),
            "°C",
            row.evidence("dew_other_ideal_degC"))
        .isMetBy(
            other.temperature().celsius(),
            0.001,
            "pressures and dew points are told in six digits, which is 0.0005 K");
    Comparison.of(
            CHAPTER,
            what + ", real",
            row.number("dew_other_real_degC"),
            "°C",
            row.evidence("dew_other_real_degC"))
        .isMetBy(
            other.temperature().celsius(), 0.6, "ideal gases: a conversion is off by up to 0.6 K");
  }

  /** x = e/p stays; W too, for what it is made of is the same. */
  @ParameterizedTest
  @ValueSource(doubles = {-70.0, -40.0, -0.5, 0.005, 0.01, 3.0, 40.0})
  void the_water_stays_at_any_pressure(double celsius) {
    DewPoint line = new DewPoint(Temperature.ofCelsius(celsius), LINE);
    for (double bar : new double[] {0.9, 1.01325, 4.0, 12.0}) {
      DewPoint other = line.at(AbsolutePressure.ofBar(bar));
      assertThat(other.vapourPressure().pascals() / other.pressure().pascals())
          .isCloseTo(
              line.vapourPressure().pascals() / line.pressure().pascals(),
              within(1.0e-9 * line.vapourPressure().pascals() / line.pressure().pascals()));
      assertThat(other.at(LINE).temperature().celsius()).isCloseTo(celsius, within(1.0e-8));
      assertThat(other.humidityRatio() / line.humidityRatio()).isCloseTo(1.0, within(1.0e-9));
    }
  }

  @Test
  void humid_air_of_a_room_has_the_dew_point_of_its_humidity() {
    AirState room = AirState.of(AROUND, Temperature.ofCelsius(25.0));
    DewPoint half = DewPoint.of(room, 0.5);
    assertThat(half.relativeHumidity(room.temperature())).isCloseTo(0.5, within(1.0e-12));
    assertThat(DewPoint.of(room, 1.0).temperature().celsius()).isCloseTo(25.0, within(1.0e-9));
    // ASHRAE's table of saturated air (2017, chapter 1): 3169.8 Pa at 25 °C and 1228.1 at 10, so
    // 38.7 % at 10
    assertThat(new DewPoint(Temperature.ofCelsius(10.0), AROUND)
            .relativeHumidity(Temperature.ofCelsius(25.0)))
        .isCloseTo(1228.1 / 3169.8, within(1.0e-4));
    // two stored pages: 17.3 g/m³ at 20 °C
    assertThat(new DewPoint(Temperature.ofCelsius(20.0), AROUND)
            .vapourDensity(Temperature.ofCelsius(20.0))
            .kilogramsPerCubicMetre())
        .isCloseTo(0.0173, within(0.00005));
  }

  @Test
  void frost_and_dew_are_told_apart() {
    assertThat(new DewPoint(Temperature.ofCelsius(3.0), LINE)).hasToString("3 °C at 8.013 bar(a)");
    DewPoint around = new DewPoint(Temperature.ofCelsius(3.0), LINE).at(AROUND);
    assertThat(around.isFrostPoint()).isTrue();
    assertThat(around).hasToString("-20.77 °C (frost point) at 1.013 bar(a)");
    assertThat(around.in(UnitSystem.US)).contains("°F (frost point) at 14.7 psi");
    assertThat(new DewPoint(Temperature.ofCelsius(0.01), AROUND).isFrostPoint()).isFalse();
  }

  @Test
  void what_is_out_of_range_is_refused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new DewPoint(Temperature.ofCelsius(-100.1), LINE))
        .withMessageContainingAll("dew point", "[-100, 100] °C", "-100.1");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new DewPoint(Temperature.ofCelsius(100.0), AROUND))
        .withMessageContainingAll("above that of its vapour", "absolute");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> DewPoint.of(AirState.of(AROUND, Temperature.ofCelsius(-41.0)), 0.5))
        .withMessageContaining("[-40, 100] °C");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> DewPoint.of(AirState.of(AROUND, Temperature.ofCelsius(20.0)), 0.0))
        .withMessageContaining("(0, 1]");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new DewPoint(Temperature.ofCelsius(-90.0), LINE)
            .at(AbsolutePressure.of(0.1, PressureUnit.BAR)))
        .withMessageContaining("[-100, 100] °C");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new DewPoint(Temperature.ofCelsius(10.0), LINE)
            .vapourDensity(Temperature.ofCelsius(9.0)))
        .withMessageContaining("at least its dew point");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new DewPoint(Temperature.ofCelsius(10.0), LINE)
            .relativeHumidity(Temperature.ofCelsius(101.0)))
        .withMessageContaining("[-40, 100] °C");
  }

  /** Each bound is one of its range, and what is just beyond is none. */
  @Test
  void the_bounds_belong_to_their_ranges() {
    for (double celsius : new double[] {-100.0, 100.0}) {
      double beyond = celsius * 1.0001;
      assertThat(new DewPoint(Temperature.ofCelsius(celsius), LINE).humidityRatio())
          .isPositive();
      assertThatIllegalArgumentException()
          .isThrownBy(() -> new DewPoint(Temperature.ofCelsius(beyond), LINE))
          .withMessageContaining("dew point must be in [-100, 100] °C, was ");
    }
    DewPoint boiling = new DewPoint(Temperature.ofCelsius(100.0), LINE);
    double vapour = boiling.vapourPressure().pascals();
    assertThat(new DewPoint(boiling.temperature(), AbsolutePressure.ofPascals(vapour * 1.0001)))
        .isNotNull();
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new DewPoint(boiling.temperature(), AbsolutePressure.ofPascals(vapour)))
        .withMessageContaining("must be above that of its vapour");
    for (double celsius : new double[] {-40.0, 100.0}) {
      AirState air = AirState.of(LINE, Temperature.ofCelsius(celsius));
      AirState beyond = AirState.of(LINE, Temperature.ofCelsius(celsius * 1.0001));
      assertThat(DewPoint.of(air, 1.0).temperature().celsius())
          .isLessThanOrEqualTo(celsius + (celsius < 0.0 ? 5.0 : 1.0e-9));
      assertThatIllegalArgumentException()
          .isThrownBy(() -> DewPoint.of(beyond, 1.0))
          .withMessageContaining("must be in [-40, 100] °C, was ");
    }
    AirState room = AirState.of(AROUND, Temperature.ofCelsius(25.0));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> DewPoint.of(room, 1.0001))
        .withMessageContaining("relative humidity must be in (0, 1], was 1.0001");
    assertThat(boiling.vapourDensity(boiling.temperature()).kilogramsPerCubicMetre())
        .isPositive();
  }

  @ParameterizedTest
  @ValueSource(doubles = {-70.0, -21.8, 0.0, 0.01, 3.0, 40.0, 90.0})
  void the_printed_numbers_give_the_printed_answer(double celsius) {
    DewPoint point = new DewPoint(Temperature.ofCelsius(celsius), LINE);
    Pencil.check(point);
    Completeness.check(point);
  }
}
