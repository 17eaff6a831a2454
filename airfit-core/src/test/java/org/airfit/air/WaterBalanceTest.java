package org.airfit.air;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.stream.Stream;
import org.airfit.Comparison;
import org.airfit.Pencil;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.ReferenceState;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.TemperatureUnit;
import org.airfit.quantity.VolumeFlowUnit;
import org.airfit.source.Source;
import org.airfit.working.Completeness;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class WaterBalanceTest {

  private static final String CHAPTER = "Air: water out of it";

  /** The tables weigh 8.34 lb to the gallon [kg]. */
  private static final double GALLON = 8.34 * 0.45359237;

  private static WaterBalance balance(
      FreeAirFlow flow, Temperature t, double humidity, AbsolutePressure around) {
    return WaterBalance.ofMoistAir(flow, DewPoint.of(AirState.of(around, t), humidity));
  }

  private static FreeAirFlow counted(
      double value, VolumeFlowUnit unit, Temperature t, AbsolutePressure p) {
    return FreeAirFlow.of(
        value, unit, ReferenceState.of("intake", t, p, 0.0, Source.fromMemory("of the intake")));
  }

  static Stream<Row> si() {
    return Rows.of(WaterBalanceTest.class, "condensate_si.csv");
  }

  static Stream<Row> us() {
    return Rows.of(WaterBalanceTest.class, "condensate_us.csv");
  }

  private static void compare(Row row, String column, String unit, double ours) {
    Comparison.of(
            CHAPTER, row.text("id") + ", " + column, row.number(column), unit, row.evidence(column))
        .isMetBy(
            ours,
            row.halfDigit(column) + 2.0e-4 * row.number("intake_" + unit),
            "0.02 % of the water taken in: 287.05 for R, and the molar masses in another digit");
  }

  @ParameterizedTest
  @MethodSource("si")
  void each_stage_takes_out_what_the_table_says(Row row) {
    AbsolutePressure around = AbsolutePressure.ofBar(row.number("p_atm_bar_abs"));
    AbsolutePressure line =
        AbsolutePressure.ofBar(row.number("p_atm_bar_abs") + row.number("p_line_bar_g"));
    Temperature t = Temperature.ofCelsius(row.number("t_intake_degC"));
    WaterBalance balance = balance(
            counted(
                row.number("flow_m3_min_intake"), VolumeFlowUnit.CUBIC_METRE_PER_MINUTE, t, around),
            t,
            row.number("rh"),
            around)
        .through(
            "cooler", new DewPoint(Temperature.ofCelsius(row.number("t_cooler_out_degC")), line));
    compareStages(row, "kg", 1.0, balance, "dryer_pdp_degC", line);
  }

  @ParameterizedTest
  @MethodSource("us")
  void each_stage_takes_out_what_the_us_table_says(Row row) {
    AbsolutePressure around = AbsolutePressure.ofPsi(row.number("p_atm_psia"));
    AbsolutePressure line =
        AbsolutePressure.ofPsi(row.number("p_atm_psia") + row.number("p_line_psig"));
    Temperature t = Temperature.ofFahrenheit(row.number("t_intake_degF"));
    WaterBalance balance = balance(
            counted(row.number("flow_cfm_intake"), VolumeFlowUnit.CUBIC_FOOT_PER_MINUTE, t, around),
            t,
            row.number("rh"),
            around)
        .through(
            "cooler",
            new DewPoint(Temperature.ofFahrenheit(row.number("t_cooler_out_degF")), line));
    compareStages(row, "gal", GALLON, balance, "dryer_pdp_degF", line);
  }

  /** What is taken in, out at the cooler, out at the dryer where there is one, and left, in a unit of so many kg. */
  private static void compareStages(
      Row row,
      String unit,
      double kilograms,
      WaterBalance cooled,
      String dryer,
      AbsolutePressure line) {
    double amount = 3600.0 * row.number("hours") / kilograms;
    compare(row, "intake_" + unit, unit, amount * cooled.takenIn().kilogramsPerSecond());
    compare(row, "condensed_at_cooler_" + unit, unit, amount * taken(cooled, 0));
    if (row.has(dryer)) {
      Temperature dewPoint = Temperature.of(
          row.number(dryer),
          dryer.endsWith("C") ? TemperatureUnit.CELSIUS : TemperatureUnit.FAHRENHEIT);
      WaterBalance dried = cooled.through("dryer", new DewPoint(dewPoint, line));
      compare(row, "removed_by_dryer_" + unit, unit, amount * taken(dried, 1));
      compare(row, "remaining_" + unit, unit, amount * dried.left().kilogramsPerSecond());
    }
  }

  private static double taken(WaterBalance balance, int stage) {
    return balance.stages().get(stage).takenOut().kilogramsPerSecond();
  }

  private static final AbsolutePressure AROUND = AbsolutePressure.STANDARD_ATMOSPHERE;
  private static final AbsolutePressure LINE = AbsolutePressure.ofBar(8.01325);

  private static WaterBalance shop() {
    Temperature t = Temperature.ofCelsius(25.0);
    return balance(counted(1.0, VolumeFlowUnit.CUBIC_METRE_PER_MINUTE, t, AROUND), t, 0.6, AROUND);
  }

  /** What is taken out and what is left is what came in, through any chain. */
  @Test
  void no_water_is_lost() {
    WaterBalance balance = shop()
        .through("aftercooler", new DewPoint(Temperature.ofCelsius(35.0), LINE))
        .through("receiver", new DewPoint(Temperature.ofCelsius(28.0), LINE))
        .through("dryer", new DewPoint(Temperature.ofCelsius(3.0), AbsolutePressure.ofBar(7.9)))
        .through(
            "warm pipe", new DewPoint(Temperature.ofCelsius(22.0), AbsolutePressure.ofBar(7.8)))
        .through(
            "cold pipe", new DewPoint(Temperature.ofCelsius(-5.0), AbsolutePressure.ofBar(7.7)));
    double out = balance.stages().stream()
        .mapToDouble(stage -> stage.takenOut().kilogramsPerSecond())
        .sum();
    assertThat(out + balance.left().kilogramsPerSecond())
        .isCloseTo(
            balance.takenIn().kilogramsPerSecond(),
            within(1.0e-12 * balance.takenIn().kilogramsPerSecond()));
    assertThat(balance.stages().get(3).takenOut().kilogramsPerSecond()).isZero();
    assertThat(balance.stages().get(3).behind().temperature().celsius())
        .as("at less pressure its dew point is lower")
        .isLessThan(3.0)
        .isCloseTo(3.0, within(0.3));
    assertThat(taken(balance, 4)).isPositive();
    assertThat(balance.toString())
        .startsWith("water in 0.8293 kg/h; aftercooler 0.5226 kg/h; ")
        .contains("; warm pipe 0 kg/h; ", "; left ");
  }

  /** Of dry air all cubic metres count, of moist air those of the air in it: 1.9 % fewer at 25 °C and 60 %. */
  @Test
  void moist_air_holds_less_air_than_dry() {
    WaterBalance moist = shop();
    double share = moist.intake().vapourPressure().pascals() / AROUND.pascals();
    assertThat(share).isCloseTo(0.0188, within(0.0001));
    assertThat(
            moist.dryAir().kilogramsPerSecond() / (AROUND.pascals() / (287.05287 * 298.15 * 60.0)))
        .isCloseTo(1.0 - share, within(1.0e-9));
  }

  @Test
  void a_line_has_twenty_stages_at_most() {
    DewPoint pipe = new DewPoint(Temperature.ofCelsius(10.0), LINE);
    WaterBalance balance = shop();
    for (int i = 0; i < 20; i++) {
      balance = balance.through("pipe " + i, pipe);
    }
    WaterBalance full = balance;
    assertThatIllegalArgumentException()
        .isThrownBy(() -> full.through("the next pipe", pipe))
        .withMessage(
            "stages that take water out must be at most 20, the next pipe would be one more");
  }

  @Test
  void a_shift_of_water_is_a_volume() {
    WaterBalance balance = WaterBalance.ofDryAir(
            MassFlow.ofKilogramsPerSecond(1.0), new DewPoint(Temperature.ofCelsius(20.0), AROUND))
        .through("cooler", new DewPoint(Temperature.ofCelsius(20.0), LINE));
    WaterBalance.Stage cooler = balance.stages().get(0);
    assertThat(cooler.collected(Duration.ofHours(8)).litres())
        .isCloseTo(8.0 * 3600.0 * cooler.takenOut().kilogramsPerSecond(), within(1.0e-9));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> cooler.collected(Duration.ofHours(-1)))
        .withMessageContaining("at least 0 s");
  }

  @Test
  void the_printed_numbers_give_the_printed_answer() {
    WaterBalance balance = shop()
        .through("aftercooler", new DewPoint(Temperature.ofCelsius(35.0), LINE))
        .through("dryer", new DewPoint(Temperature.ofCelsius(-40.0), LINE))
        .through("pipe", new DewPoint(Temperature.ofCelsius(10.0), LINE));
    Pencil.check(balance);
    Completeness.check(balance);
    Pencil.check(shop());
    assertThat(balance).isNotEqualTo(shop());
    assertThat(balance.working(UnitSystem.US).toText())
        .contains("Water in air with a dew point of -40 °F (frost point) at 116.2 psia");
    assertThat(shop()).isEqualTo(shop()).hasSameHashCodeAs(shop());
  }
}
