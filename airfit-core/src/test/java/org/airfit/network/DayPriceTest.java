package org.airfit.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.airfit.plant.PressureBand;
import org.airfit.plant.TimedCompressor;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Money;
import org.airfit.quantity.Power;
import org.airfit.quantity.Range;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.Volume;
import org.airfit.run.ToolDemand;
import org.airfit.working.UnitSystem;
import org.airfit.working.Working;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Money of a day against areas worked by hand: kilowatts by hours by a rate. */
class DayPriceTest {

  private static final Money RATE = Money.parse("0.20 EUR");
  private static final double SECONDS_PER_BAR =
      1.0e5 / (287.05 * 293.15) / 0.05; // to fill 1 m³ with 0.05 kg/s

  private static DayPrice price(int times, DayPrice.IdlePower... idle) {
    return new DayPrice(RATE, times, List.of(idle));
  }

  private static DayPrice.IdlePower idle(String name, double least, double most) {
    return new DayPrice.IdlePower(
        name, new Range<>(Power.ofKilowatts(least), Power.ofKilowatts(most)));
  }

  /** Takes 10 kW loaded at 7 bar(g), 3 kW idling. */
  private static TimedCompressor machine(Optional<Duration> runOn, long blowDown) {
    return new TimedCompressor(
        "screw",
        PlantDayTest.flow(0.05),
        Optional.of(new PressureBand(GaugePressure.ofBar(7.0), GaugePressure.ofBar(8.0))),
        Duration.ZERO,
        Duration.ZERO,
        runOn,
        Duration.ofSeconds(blowDown),
        Power.ofKilowatts(10.0),
        Power.ofKilowatts(3.0),
        GaugePressure.ofBar(7.0));
  }

  private static PlantDay.Builder plant(double seconds, double start) {
    return PlantDay.at(AbsolutePressure.ofBar(1.0), Temperature.parse("20 °C"))
        .lasting(Duration.ofMillis(Math.round(1000.0 * seconds)))
        .receiver(new LineReceiver(
            "tank", Optional.empty(), Volume.ofCubicMetres(1.0), GaugePressure.ofBar(start)));
  }

  private static TimedUse all(double flow) {
    return new TimedUse(
        "shop",
        Optional.empty(),
        ToolDemand.fixed("shop", PlantDayTest.flow(flow)),
        Optional.empty(),
        DemandTimes.always());
  }

  private static double perDay(DayCost cost) {
    return cost.perDay().amount().doubleValue();
  }

  /**
   * The compressor has just filled the receiver from 7 to 8 bar and idles for an hour at 3 kW, of which 40 s are a
   * blow-down from its power at 8 bar. The receiver holds 1 bar·m³ more than at first.
   */
  @Test
  void a_day_costs_the_area_under_the_power_by_the_rate() {
    DayResult day = plant(SECONDS_PER_BAR + 3600.0, 7.0)
        .compressor(machine(Optional.empty(), 40))
        .build()
        .simulate();
    double at7 = Math.pow(8.0, 2.0 / 7.0) - 1.0;
    double at75 = Math.pow(8.5, 2.0 / 7.0) - 1.0;
    double at8 = Math.pow(9.0, 2.0 / 7.0) - 1.0;
    double loaded = 10.0 * SECONDS_PER_BAR / 3600.0 * (at7 + 4.0 * at75 + at8) / (6.0 * at7);
    double cutOut = 10.0 * at8 / at7;
    double gained = 0.05 * SECONDS_PER_BAR; // kg
    for (double kilowatts : new double[] {2.0, 4.0}) {
      double idle = kilowatts + 0.5 * (cutOut - kilowatts) * 40.0 / 3600.0;
      DayPrice price = price(230, idle("screw", 2.0, 4.0));
      DayCost cost = kilowatts == 2.0 ? price.leastCost(day) : price.mostCost(day);
      // made already: all 10 kW where it would stand, 10 − 4 kW where it would idle
      double refill = -gained * (kilowatts == 2.0 ? 10.0 : 6.0) / 0.05 / 3600.0;
      assertThat(cost.loadedKilowattHours()).isCloseTo(loaded, withinPercentage(1.0e-3));
      assertThat(cost.idleKilowattHours()).isCloseTo(idle, withinPercentage(1.0e-4));
      assertThat(cost.refillKilowattHours()).isCloseTo(refill, withinPercentage(1.0e-3));
      assertThat(perDay(cost)).isCloseTo(0.20 * (loaded + idle + refill), withinPercentage(1.0e-3));
      assertThat(cost.perYear().amount().doubleValue())
          .isCloseTo(230.0 * 0.20 * (loaded + idle + refill), withinPercentage(1.0e-3));
    }
    DayCost exact = price(230).mostCost(day);
    assertThat(exact.idleKilowattHours())
        .isCloseTo(day.compressors().get(0).idleEnergy().kilowattHours(), within(1.0e-12));
  }

  /** Idle power told otherwise is the same as a plant that has it: the day gone through again says the same. */
  @Test
  void another_idle_power_costs_what_a_day_with_it_costs() {
    double[] kilowatts = new double[2];
    for (int i = 0; i < 2; i++) {
      double told = i == 0 ? 3.0 : 1.5;
      TimedCompressor usual = machine(Optional.of(Duration.ofSeconds(30)), 20);
      TimedCompressor machine = new TimedCompressor(
          usual.name(),
          usual.delivery(),
          usual.band(),
          usual.startDelay(),
          Duration.ofSeconds(4),
          usual.runOn(),
          usual.blowDown(),
          usual.loadedPower(),
          Power.ofKilowatts(told),
          usual.ratedAt());
      DayResult day =
          plant(7200.0, 7.5).compressor(machine).use(all(0.02)).build().simulate();
      assertThat(day.compressors().get(0).loads()).isGreaterThan(10);
      DayCost cost = price(1, idle("screw", 1.5, 3.0)).leastCost(day);
      kilowatts[i] = cost.kilowattHours();
    }
    assertThat(kilowatts[0]).isCloseTo(kilowatts[1], withinPercentage(1.0e-9));
  }

  /** What a change saves is told with the same idle power on both days: the difference, not the sum of two ranges. */
  @Test
  void what_is_saved_has_one_idle_power_on_both_days() {
    DayResult much = plant(3600.0, 7.5)
        .compressor(machine(Optional.empty(), 0))
        .use(all(0.03))
        .build()
        .simulate();
    DayResult little = plant(3600.0, 7.5)
        .compressor(machine(Optional.empty(), 0))
        .use(all(0.01))
        .build()
        .simulate();
    DayPrice price = price(250, idle("screw", 2.0, 4.0));
    double least = perDay(price.leastSaved(much, little));
    double most = perDay(price.mostSaved(much, little));
    // 0.02 kg/s less for an hour: from (10 − 4) to 10 kW by 0.4, a few per cent more loaded at 7.5
    // bar
    assertThat(least).isBetween(0.20 * 0.4 * 6.0, 0.20 * 0.4 * 6.0 * 1.1);
    assertThat(most).isBetween(0.20 * 0.4 * 8.0, 0.20 * 0.4 * 8.0 * 1.1);
    assertThat(perDay(price.leastSaved(little, much))).isCloseTo(-most, within(1.0e-12));
    assertThat(perDay(price.mostSaved(little, much))).isCloseTo(-least, within(1.0e-12));
    assertThat(perDay(price.mostSaved(much, much))).isZero();
  }

  /** A receiver begun full would make a day look cheap: what it falls by is still to be made. */
  @Test
  void air_that_a_receiver_falls_by_is_counted() {
    DayResult day = plant(1200.0, 7.9)
        .compressor(machine(Optional.of(Duration.ZERO), 0))
        .use(all(0.0005))
        .build()
        .simulate();
    assertThat(day.energy().joules()).isZero();
    double kilowattHours = 1200.0 * 0.0005 * 10.0 / 0.05 / 3600.0;
    assertThat(price(1).mostCost(day).kilowattHours())
        .isCloseTo(kilowattHours, withinPercentage(1.0e-6));
    assertThat(price(1).leastCost(day).kilowattHours())
        .isCloseTo(0.7 * kilowattHours, withinPercentage(1.0e-6));
  }

  @Test
  void a_plant_without_compressors_costs_nothing() {
    DayResult day = plant(600.0, 7.0).use(all(0.001)).build().simulate();
    assertThat(price(1).mostCost(day).perYear()).isEqualTo(Money.parse("0 EUR"));
    assertThat(price(1).leastCost(day).perYear()).isEqualTo(Money.parse("0 EUR"));
  }

  @Test
  void what_does_not_fit_is_refused_with_what_would() {
    DayResult day =
        plant(86_400.0, 7.5).compressor(machine(Optional.empty(), 0)).build().simulate();
    assertThatIllegalArgumentException()
        .isThrownBy(() -> price(1, idle("lag", 1.0, 2.0)).leastCost(day))
        .withMessage("idle power must be that of one of [screw], was of \"lag\"");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> price(1, idle("screw", 1.0, 10.5)).leastCost(day))
        .withMessage("idle power of screw must be at most 10000.0 W, was 10500.0 W");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> price(367).mostCost(day))
        .withMessage("times in a year must be at most 366 for a day of 86400 s, was 367");
    assertThat(price(366).mostCost(day).timesInYear()).isEqualTo(366);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> price(1).leastSaved(day, plant(60.0, 7.5).build().simulate()))
        .withMessage("the other day must have the compressors [screw] and last 86400 s, had [] and"
            + " lasted 60 s");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> price(1, idle("a", 1.0, 2.0), idle("a", 1.0, 2.0)))
        .withMessage("idle power must be told once for each compressor, was told twice for a");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new DayPrice(Money.parse("-0.01 EUR"), 1, List.of()))
        .withMessage("price of a kWh must be at least 0, was -0.01 EUR");
  }

  @ParameterizedTest
  @ValueSource(ints = {-1, 0, 8785})
  void a_day_comes_at_least_once_and_at_most_every_hour(int times) {
    String message = "times in a year must be in [1, 8784], was " + times;
    assertThatIllegalArgumentException().isThrownBy(() -> price(times)).withMessage(message);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new DayCost("day", 1.0, 1.0, 1.0, RATE, times))
        .withMessage(message);
    assertThat(price(8784).timesInYear()).isEqualTo(8784);
  }

  @Test
  void a_cost_is_told_with_its_working() {
    DayCost cost = new DayCost("the day", 50.0, 6.0, -0.5, RATE, 230);
    assertThat(cost).hasToString("the day: 11.10 EUR and 55.5 kWh, 2553 EUR in a year");
    assertThat(cost.perDay().amount()).isEqualByComparingTo(new BigDecimal("11.1"));
    for (UnitSystem units : UnitSystem.values()) {
      Working working = cost.working(units);
      assertThat(working.toText())
          .contains("E = El + Ei + Er", "K = E × r", "Kn = n × K", "Money is in EUR.")
          .contains("55.5", "11.1", "2553");
    }
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new DayCost(" ", 0.0, 0.0, 0.0, RATE, 1))
        .withMessage("what it is that costs must be told, was blank");
    for (double wrong : new double[] {Double.NaN, 1.0e12, -1.0e12}) {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> new DayCost("day", wrong, 0.0, 0.0, RATE, 1))
          .withMessageStartingWith("loaded energy must lie between -1e12 and 1e12 kWh, was ");
      assertThatIllegalArgumentException()
          .isThrownBy(() -> new DayCost("day", 0.0, wrong, 0.0, RATE, 1))
          .withMessageStartingWith("idle energy must lie between -1e12 and 1e12 kWh, was ");
      assertThatIllegalArgumentException()
          .isThrownBy(() -> new DayCost("day", 0.0, 0.0, wrong, RATE, 1))
          .withMessageStartingWith("energy for the air in the receivers must lie between");
    }
  }
}
