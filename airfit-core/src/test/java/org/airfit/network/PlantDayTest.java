package org.airfit.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.airfit.Pencil;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.line.Conduit;
import org.airfit.plant.PressureBand;
import org.airfit.plant.RegulatorElement;
import org.airfit.plant.SharedBand;
import org.airfit.plant.Supply;
import org.airfit.plant.TimedCompressor;
import org.airfit.plant.WallHeat;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Power;
import org.airfit.quantity.ReferenceState;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.Volume;
import org.airfit.run.Run;
import org.airfit.run.ToolDemand;
import org.airfit.working.Completeness;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;

class PlantDayTest {

  private static final double R = 287.05287;
  private static final AbsolutePressure ATMOSPHERE = AbsolutePressure.ofBar(1.0);
  private static final Temperature WARM = Temperature.ofCelsius(20.0);

  /** What 1 m³ gains by 1 bar at 20 °C [kg]. */
  private static final double PER_BAR = 1.0e5 / (R * 293.15);

  static FreeAirFlow flow(double kilogramsPerSecond) {
    return FreeAirFlow.from(
        MassFlow.ofKilogramsPerSecond(kilogramsPerSecond), ReferenceState.COMPRESSOR_INLET);
  }

  private static PressureBand band(double cutIn, double cutOut) {
    return new PressureBand(GaugePressure.ofBar(cutIn), GaugePressure.ofBar(cutOut));
  }

  /** Takes 10 kW loaded at 7 bar(g), 3 kW idling. */
  private static TimedCompressor machine(
      String name,
      double delivers,
      Optional<PressureBand> band,
      double startDelay,
      double loadDelay,
      Optional<Duration> runOn,
      double blowDown) {
    return new TimedCompressor(
        name,
        flow(delivers),
        band,
        seconds(startDelay),
        seconds(loadDelay),
        runOn,
        seconds(blowDown),
        Power.ofKilowatts(10.0),
        Power.ofKilowatts(3.0),
        GaugePressure.ofBar(7.0));
  }

  private static Duration seconds(double time) {
    return Duration.ofNanos(Math.round(1.0e9 * time));
  }

  private static LineReceiver tank(double cubicMetres, double startBar) {
    return new LineReceiver(
        "tank", Optional.empty(), Volume.ofCubicMetres(cubicMetres), GaugePressure.ofBar(startBar));
  }

  private static TimedUse fixed(
      String name, double flow, Optional<Double> needBar, DemandTimes when) {
    return new TimedUse(
        name,
        Optional.empty(),
        ToolDemand.fixed(name, flow(flow)),
        needBar.map(GaugePressure::ofBar),
        when);
  }

  private static DemandTimes from(double begin, double end) {
    return DemandTimes.of(List.of(new DemandTimes.Span(seconds(begin), seconds(end), 1.0)));
  }

  private static PlantDay.Builder plant(double lasting) {
    return PlantDay.at(ATMOSPHERE, WARM).lasting(seconds(lasting));
  }

  private static DayResult.Lowest lowest(DayResult result, int use) {
    return result.uses().get(use).lowest().orElseThrow();
  }

  private static double sec(Duration time) {
    return 1.0e-9 * time.toNanos();
  }

  /** From 8 to 7 bar, then on through a delay of 20 s in which nothing comes: ṁ t R T/V below cut-in. */
  @Test
  void the_pressure_falls_below_cut_in_while_the_compressor_starts() {
    DayResult result = plant(300.0)
        .receiver(tank(1.0, 8.0))
        .compressor(
            machine("c", 0.05, Optional.of(band(7.0, 8.0)), 20.0, 3.0, Optional.empty(), 0.0))
        .use(fixed("shop", 0.01, Optional.of(6.9), DemandTimes.always()))
        .build()
        .simulate();
    double reaches = PER_BAR / 0.01;
    double fall = 0.01 * 20.0 / PER_BAR;
    assertThat(lowest(result, 0).atTool().bar()).isCloseTo(7.0 - fall, within(1.0e-6));
    assertThat(sec(lowest(result, 0).when())).isCloseTo(reaches + 20.0, within(1.0e-3));
    // below 6.9 bar from the moment it passes it to the moment it comes back at 0.04 kg/s
    double below = (fall - 0.1) * PER_BAR / 0.01 + (fall - 0.1) * PER_BAR / 0.04;
    assertThat(sec(result.uses().get(0).below())).isCloseTo(below, within(1.0e-3));
    assertThat(result.isShort()).isTrue();
  }

  @Test
  void without_a_delay_it_turns_at_cut_in_itself() {
    DayResult result = plant(300.0)
        .receiver(tank(1.0, 8.0))
        .compressor(
            machine("c", 0.05, Optional.of(band(7.0, 8.0)), 0.0, 0.0, Optional.empty(), 0.0))
        .use(fixed("shop", 0.01, Optional.of(6.9), DemandTimes.always()))
        .build()
        .simulate();
    assertThat(lowest(result, 0).atTool().bar()).isCloseTo(7.0, within(1.0e-9));
    assertThat(result.isShort()).isFalse();
  }

  /**
   * One load from 7 to 8 bar, then 100 s of idling of which 40 s are the blow-down, then it stands: the energies are those
   * of the areas under the power.
   */
  @Test
  void energy_is_the_area_under_the_power() {
    double load = PER_BAR / 0.05;
    DayResult result = plant(load + 500.0)
        .receiver(tank(1.0, 7.0))
        .compressor(machine(
            "c", 0.05, Optional.of(band(7.0, 8.0)), 0.0, 0.0, Optional.of(seconds(100.0)), 40.0))
        .build()
        .simulate();
    DayResult.CompressorDay did = result.compressors().get(0);
    assertThat(sec(did.loaded())).isCloseTo(load, within(1.0e-6));
    assertThat(sec(did.idle())).isCloseTo(100.0, within(1.0e-6));
    assertThat(sec(did.standing())).isCloseTo(400.0, within(1.0e-6));
    assertThat(did.starts()).isEqualTo(1);
    // power in proportion to r^(2/7) − 1, by Simpson's rule over r from 8 to 9
    double at7 = Math.pow(8.0, 2.0 / 7.0) - 1.0;
    double at75 = Math.pow(8.5, 2.0 / 7.0) - 1.0;
    double at8 = Math.pow(9.0, 2.0 / 7.0) - 1.0;
    assertThat(did.loadedEnergy().joules())
        .isCloseTo(10.0e3 * load * (at7 + 4.0 * at75 + at8) / (6.0 * at7), withinPercentage(1e-3));
    double atCutOut = 10.0e3 * at8 / at7;
    assertThat(did.idleEnergy().joules())
        .isCloseTo(3.0e3 * 100.0 + 0.5 * (atCutOut - 3.0e3) * 40.0, withinPercentage(1e-6));
    assertThat(result.energy().joules())
        .isCloseTo(did.loadedEnergy().joules() + did.idleEnergy().joules(), within(1.0e-6));
  }

  @Test
  void a_compressor_that_does_not_run_on_starts_its_motor_at_every_swing() {
    PlantDay.Builder plant = plant(7200.0)
        .receiver(tank(1.0, 8.0))
        .use(fixed("shop", 0.025, Optional.empty(), DemandTimes.always()));
    TimedCompressor stops =
        machine("c", 0.05, Optional.of(band(7.0, 8.0)), 0.0, 0.0, Optional.of(Duration.ZERO), 0.0);
    DayResult.CompressorDay did =
        plant.compressor(stops).build().simulate().compressors().get(0);
    // a cycle takes 2 × (1.1884/0.025) = 95.07 s: 37.9 an hour
    assertThat(did.starts()).isEqualTo((int) Math.floor(0.5 + 7200.0 / (2.0 * PER_BAR / 0.025)));
    assertThat(did.mostStartsInAnHour()).isEqualTo(38);
    assertThat(sec(did.idle())).isZero();
    assertThat(did.loads()).isEqualTo(did.starts());
    DayResult.CompressorDay idles = plant(7200.0)
        .receiver(tank(1.0, 8.0))
        .use(fixed("shop", 0.025, Optional.empty(), DemandTimes.always()))
        .compressor(
            machine("c", 0.05, Optional.of(band(7.0, 8.0)), 0.0, 0.0, Optional.empty(), 0.0))
        .build()
        .simulate()
        .compressors()
        .get(0);
    assertThat(idles.starts()).isEqualTo(1);
    assertThat(idles.loads()).isEqualTo(did.loads());
    assertThat(idles.energy().joules()).isGreaterThan(did.energy().joules());
  }

  /** The demand is 1.5 machines: with bands apart the lead never unloads, the lag swings. */
  @Test
  void with_bands_apart_the_lag_helps_out_at_its_own_pressure() {
    DayResult result = plant(3600.0)
        .receiver(tank(2.0, 7.4))
        .compressor(
            machine("lead", 0.05, Optional.of(band(7.0, 8.0)), 0.0, 0.0, Optional.empty(), 0.0))
        .compressor(
            machine("lag", 0.05, Optional.of(band(6.5, 7.5)), 0.0, 0.0, Optional.empty(), 0.0))
        .use(fixed("shop", 0.075, Optional.of(6.0), DemandTimes.always()))
        .build()
        .simulate();
    DayResult.CompressorDay lead = result.compressors().get(0);
    DayResult.CompressorDay lag = result.compressors().get(1);
    assertThat(lead.loads()).isEqualTo(1);
    assertThat(lag.loads()).isGreaterThan(5);
    assertThat(lowest(result, 0).atTool().bar()).isCloseTo(6.5, within(1.0e-9));
    assertThat(lag.loadedShare()).isCloseTo(0.5, within(0.03));
  }

  /** One band for two: the first is called at 7 bar, the second 10 s later, as the pressure still falls. */
  @Test
  void in_one_band_they_are_called_in_order_one_after_a_wait() {
    DayResult result = plant(60.0)
        .receiver(tank(2.0, 7.0))
        .sharedBand(new SharedBand(band(7.0, 8.0), Duration.ofSeconds(10)))
        .compressor(machine("first", 0.05, Optional.empty(), 0.0, 0.0, Optional.empty(), 0.0))
        .compressor(machine("second", 0.05, Optional.empty(), 0.0, 0.0, Optional.empty(), 0.0))
        .use(fixed("shop", 0.08, Optional.of(6.0), DemandTimes.always()))
        .build()
        .simulate();
    assertThat(lowest(result, 0).atTool().bar())
        .isCloseTo(7.0 - 0.03 * 10.0 / (2.0 * PER_BAR), within(1.0e-6));
    assertThat(sec(result.compressors().get(0).loaded())).isCloseTo(60.0, within(1.0e-6));
    assertThat(sec(result.compressors().get(1).loaded())).isCloseTo(50.0, within(1.0e-6));
  }

  @Test
  void in_one_band_the_last_called_is_sent_to_rest_first() {
    DayResult result = plant(400.0)
        .receiver(tank(2.0, 6.9))
        .sharedBand(new SharedBand(band(7.0, 8.0), Duration.ofSeconds(5)))
        .compressor(machine("first", 0.05, Optional.empty(), 0.0, 0.0, Optional.empty(), 0.0))
        .compressor(machine("second", 0.05, Optional.empty(), 0.0, 0.0, Optional.empty(), 0.0))
        .use(fixed("shop", 0.045, Optional.empty(), DemandTimes.always()))
        .build()
        .simulate();
    assertThat(result.compressors().get(0).loaded())
        .isGreaterThan(result.compressors().get(1).loaded());
  }

  private static Optional<Run> drop(double metres) {
    return Optional.of(Run.from(AirState.of(AbsolutePressure.ofBar(8.0), WARM), ATMOSPHERE)
        .through(
            "pipe",
            Conduit.of(
                Length.ofMillimetres(12.0), Length.ofMetres(metres), Length.ofMillimetres(0.05)))
        .through(
            "coupling", FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(3.0), 0.3)));
  }

  @Test
  void what_arrives_at_the_lowest_moment_is_that_of_the_run_from_that_header() {
    ToolDemand grinder = ToolDemand.following("grinder", flow(0.012), AbsolutePressure.ofBar(7.3));
    DayResult result = plant(600.0)
        .receiver(tank(0.5, 8.0))
        .compressor(
            machine("c", 0.02, Optional.of(band(7.0, 8.0)), 5.0, 2.0, Optional.empty(), 0.0))
        .use(new TimedUse(
            "grinder",
            drop(15.0),
            grinder,
            Optional.of(GaugePressure.ofBar(6.3)),
            from(100.0, 500.0)))
        .build()
        .simulate();
    DayResult.Lowest lowest = lowest(result, 0);
    var there = drop(15.0)
        .orElseThrow()
        .suppliedBy(Supply.fixed(AirState.of(lowest.header(), WARM)))
        .balance(grinder);
    assertThat(there.<Double>fold(d -> d.atTool().pascals(), s -> Double.NaN))
        .isCloseTo(lowest.atTool().absolute(ATMOSPHERE).pascals(), within(1.0));
    Pencil.check(result);
    Completeness.check(result);
    for (UnitSystem units : UnitSystem.values()) {
      assertThat(result.workingOfLowest("grinder", units)).hasSize(2);
    }
    assertThat(result.workingOfLowest("grinder", UnitSystem.SI).get(0).toText())
        .contains("How the receiver fell");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> result.workingOfLowest("drill", UnitSystem.SI))
        .withMessageContaining("[grinder]")
        .withMessageContaining("drill");
  }

  /** 0.012 kg/s at 7.3 bar(a), all the time between 7 and 8 bar(g): unregulated it takes 9.6 to 23 % more. */
  @Test
  void a_regulator_at_the_header_takes_the_artificial_demand_away() {
    ToolDemand blow = ToolDemand.following("blow", flow(0.012), AbsolutePressure.ofBar(7.0));
    PlantDay open = plant(7200.0)
        .receiver(tank(1.0, 8.0))
        .compressor(machine(
            "c", 0.03, Optional.of(band(7.0, 8.0)), 0.0, 0.0, Optional.of(Duration.ZERO), 0.0))
        .use(new TimedUse(
            "blow",
            Optional.empty(),
            blow,
            Optional.of(GaugePressure.ofBar(6.0)),
            DemandTimes.always()))
        .use(fixed("press", 0.005, Optional.of(5.5), DemandTimes.always()))
        .build();
    DayResult now = open.simulate();
    assertThat(now.tooMuchKilograms() / (0.012 * 7200.0)).isBetween(1.0 / 7.0, 2.0 / 7.0);
    assertThat(now.uses().get(1).tooMuchKilograms()).isZero(); // what is fixed takes no more
    DayChange change = DayChange.regulatedHeader(open).orElseThrow();
    assertThat(change.kind()).isEqualTo(DayChange.Kind.REGULATOR);
    assertThat(change.result().isShort()).isFalse();
    RegulatorElement regulator = change.day().regulator().orElseThrow();
    assertThat(regulator.set().bar()).isCloseTo(7.0, within(1.0e-6));
    assertThat(change.result().tooMuchKilograms()).isLessThan(1.0e-3 * now.tooMuchKilograms());
    assertThat(change.result().balance().madeKilograms())
        .isLessThan(now.balance().madeKilograms());
    // one step lower the blow nozzle has less than it needs
    assertThat(open.withRegulator(regulator.withSet(AbsolutePressure.ofBar(6.95)))
            .simulate()
            .isShort())
        .isTrue();
    assertThat(DayChange.regulatedHeader(change.day())).isEmpty();
  }

  /** Where a user needs what it has for moments only, no setting may take these from it. */
  @Test
  void a_regulator_leaves_every_user_what_it_has_to_the_moment() {
    PlantDay open = plant(3600.0)
        .receiver(tank(1.0, 7.5))
        .compressor(machine(
            "c", 0.03, Optional.of(band(7.0, 8.0)), 0.0, 0.0, Optional.of(Duration.ZERO), 0.0))
        .use(fixed("press", 0.005, Optional.of(5.5), DemandTimes.always()))
        .use(fixed(
            "clamp",
            0.002,
            Optional.of(6.9),
            DemandTimes.repeated(seconds(600.0), seconds(20.0), seconds(1800.0), seconds(3600.0))))
        .build();
    assertThat(open.simulate().isShort()).isFalse();
    DayChange.regulatedHeader(open)
        .ifPresent(change -> assertThat(change.result().isShort()).isFalse());
    assertThat(open.withRegulator(RegulatorElement.of(
                FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(20.0), 0.3),
                AbsolutePressure.ofBar(6.5)))
            .simulate()
            .isShort())
        .as("20 s twice below its need")
        .isTrue();
  }

  private static PlantDay short1() {
    return plant(3600.0)
        .receiver(tank(0.3, 7.5))
        .compressor(
            machine("c", 0.03, Optional.of(band(7.0, 8.0)), 10.0, 3.0, Optional.empty(), 0.0))
        .use(fixed(
            "blast",
            0.06,
            Optional.of(6.0),
            DemandTimes.repeated(seconds(300.0), seconds(40.0), seconds(600.0), seconds(3600.0))))
        .build();
  }

  @Test
  void the_receiver_that_is_proposed_was_tried_and_a_smaller_one_is_too_small() {
    PlantDay plant = short1();
    assertThat(plant.simulate().isShort()).isTrue();
    DayChange change = DayChange.largerReceiver(plant).orElseThrow();
    assertThat(change.result().isShort()).isFalse();
    double volume = change.day().receivers().get(0).volume().cubicMetres();
    assertThat(volume).isGreaterThan(0.3);
    assertThat(plant
            .withLastReceiver(Volume.ofCubicMetres(0.9 * volume))
            .simulate()
            .isShort())
        .isTrue();
    assertThat(DayChange.largerReceiver(change.day())).isEmpty();
  }

  @Test
  void where_no_receiver_helps_that_is_told() {
    PlantDay plant = plant(86400.0)
        .receiver(tank(0.1, 7.5))
        .compressor(
            machine("c", 0.03, Optional.of(band(7.0, 8.0)), 0.0, 0.0, Optional.empty(), 0.0))
        .use(fixed("shop", 0.06, Optional.of(6.0), DemandTimes.always()))
        .build();
    DayChange change = DayChange.largerReceiver(plant).orElseThrow();
    assertThat(change.result().isShort()).isTrue();
    assertThat(change.day().receivers().get(0).volume().cubicMetres())
        .isCloseTo(6.4, within(1.0e-9));
    assertThat(change.toString()).contains("below its need");
  }

  @Test
  void bands_are_raised_as_far_as_needed_and_lowered_as_far_as_allowed() {
    PlantDay plant = short1();
    DayChange up = DayChange.movedBands(plant).orElseThrow();
    assertThat(up.result().isShort()).isFalse();
    double moved = up.day().lowestCutIn().orElseThrow().bar() - 7.0;
    assertThat(moved).isGreaterThan(0.0);
    assertThat(plant.withBandsMoved(1.0e5 * moved - 5.0e3).simulate().isShort()).isTrue();
    PlantDay enough = plant(3600.0)
        .receiver(tank(1.0, 7.5))
        .compressor(
            machine("c", 0.03, Optional.of(band(7.0, 8.0)), 0.0, 0.0, Optional.empty(), 0.0))
        .use(fixed("shop", 0.01, Optional.of(6.0), DemandTimes.always()))
        .build();
    DayChange down = DayChange.movedBands(enough).orElseThrow();
    assertThat(down.day().lowestCutIn().orElseThrow().bar()).isCloseTo(6.0, within(0.0500001));
    assertThat(down.result().isShort()).isFalse();
    assertThat(down.result().energy().joules())
        .isLessThan(enough.simulate().energy().joules());
  }

  /** A recording of 5 min says 0.02 kg/s; the same air in bursts of 0.08 kg/s pulls the pressure further down. */
  @Test
  void averages_hide_a_peak_that_the_bunched_air_shows() {
    List<DemandTimes.Span> spans = List.of(
        new DemandTimes.Span(seconds(0.0), seconds(300.0), 0.25),
        new DemandTimes.Span(seconds(300.0), seconds(600.0), 0.25));
    TimedUse shop = new TimedUse(
        "shop",
        Optional.empty(),
        ToolDemand.fixed("shop", flow(0.08)),
        Optional.of(GaugePressure.ofBar(6.5)),
        DemandTimes.recorded(spans, seconds(300.0)));
    PlantDay recorded = plant(600.0)
        .receiver(tank(1.0, 7.2))
        .compressor(
            machine("c", 0.03, Optional.of(band(7.0, 8.0)), 5.0, 2.0, Optional.empty(), 0.0))
        .use(shop)
        .build();
    assertThat(recorded.hasAverages()).isTrue();
    DayResult averages = recorded.simulate();
    DayResult bunched = recorded.bunched().simulate();
    assertThat(bunched.balance().takenKilograms())
        .isCloseTo(averages.balance().takenKilograms(), within(1.0e-6));
    assertThat(averages.isShort()).isFalse();
    assertThat(bunched.isShort()).isTrue();
    assertThat(shop.bunched().when().spans())
        .containsExactly(
            new DemandTimes.Span(seconds(225.0), seconds(300.0), 1.0),
            new DemandTimes.Span(seconds(300.0), seconds(375.0), 1.0));
  }

  @Test
  void without_heat_from_the_walls_the_pressure_falls_further() {
    PlantDay plant = plant(60.0)
        .receiver(tank(1.0, 8.0))
        .use(fixed("blast", 0.05, Optional.of(6.0), DemandTimes.always()))
        .build();
    double warm = lowest(plant.simulate(), 0).atTool().bar();
    double cold = lowest(plant.withWalls(WallHeat.NONE).simulate(), 0).atTool().bar();
    double left = 1.0 - 0.05 * 60.0 / (9.0 * PER_BAR);
    assertThat(warm).isCloseTo(9.0 * left - 1.0, within(1.0e-6));
    assertThat(cold).isCloseTo(9.0 * Math.pow(left, 1.4) - 1.0, within(2.0e-5));
  }

  @Test
  void a_user_that_empties_the_plant_is_starved_and_no_pressure_is_below_the_atmosphere() {
    DayResult result = plant(600.0)
        .receiver(tank(0.1, 6.0))
        .use(fixed("blast", 0.1, Optional.of(5.0), DemandTimes.always()))
        .build()
        .simulate();
    assertThat(lowest(result, 0).atTool().bar()).isBetween(0.0, 0.011);
    assertThat(result.uses().get(0).missedKilograms()).isGreaterThan(50.0);
    assertThat(result.uses().get(0).takenKilograms() + result.uses().get(0).missedKilograms())
        .isCloseTo(60.0, within(1.0e-6));
  }

  @Test
  void what_a_plant_cannot_be_is_refused_with_what_to_do() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> plant(0.0).receiver(tank(1.0, 7.0)).build())
        .withMessageContaining("604800 s, was 0 s");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> plant(10.0).build())
        .withMessageContaining("at least 1");
    assertThatIllegalArgumentException()
        .isThrownBy(
            () -> plant(10.0).receiver(tank(1.0, 7.0)).receiver(tank(1.0, 7.0)).build())
        .withMessageContaining("must have a join");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> tank(1.0e-4, 7.0))
        .withMessageContaining("[1e-3, 1e6] m³");
    assertThatIllegalArgumentException().isThrownBy(() -> band(7.0, 7.0));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> plant(10.0)
            .receiver(tank(1.0, 7.0))
            .compressor(machine("c", 0.1, Optional.empty(), 0.0, 0.0, Optional.empty(), 0.0))
            .build())
        .withMessageContaining("band of its own");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> machine("c", 0.1, Optional.empty(), 3601.0, 0.0, Optional.empty(), 0.0))
        .withMessageContaining("start delay of c must be in [0, 3600] s, was 3601 s");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> DemandTimes.of(List.of(
            new DemandTimes.Span(seconds(0.0), seconds(10.0), 1.0),
            new DemandTimes.Span(seconds(9.0), seconds(12.0), 1.0))))
        .withMessageContaining("overlap");
    assertThatIllegalArgumentException()
        .isThrownBy(
            () -> DemandTimes.repeated(seconds(0.0), seconds(10.0), seconds(10.0), seconds(100.0)))
        .withMessageContaining("10 s every 10 s");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> plant(7 * 86400.0)
            .receiver(tank(1.0e-3, 7.0))
            .compressor(
                machine("c", 0.1, Optional.of(band(7.0, 7.01)), 0.0, 0.0, Optional.empty(), 0.0))
            .use(fixed("shop", 0.05, Optional.empty(), DemandTimes.always()))
            .build()
            .simulate())
        .withMessageContaining("switch at most 200000 times");
  }

  /** The doors that NullsTest finds no good arguments for. */
  @Test
  @SuppressWarnings("NullAway") // null is what is tried
  void a_null_is_refused_by_name() {
    Duration hour = Duration.ofHours(1);
    assertThatNullPointerException()
        .isThrownBy(() -> DayChange.largerReceiver(null))
        .withMessageContaining("day");
    assertThatNullPointerException()
        .isThrownBy(() -> DayChange.movedBands(null))
        .withMessageContaining("day");
    assertThatNullPointerException()
        .isThrownBy(() -> DayChange.regulatedHeader(null))
        .withMessageContaining("day");
    assertThatNullPointerException()
        .isThrownBy(() -> new DemandTimes.Span(null, hour, 1.0))
        .withMessageContaining("from");
    assertThatNullPointerException()
        .isThrownBy(() -> new DemandTimes.Span(hour, null, 1.0))
        .withMessageContaining("to");
    assertThatNullPointerException()
        .isThrownBy(() -> DemandTimes.repeated(null, hour, hour, hour))
        .withMessageContaining("first");
    assertThatNullPointerException()
        .isThrownBy(() -> DemandTimes.repeated(hour, null, hour, hour))
        .withMessageContaining("lasting");
    assertThatNullPointerException()
        .isThrownBy(() -> DemandTimes.repeated(hour, hour, null, hour))
        .withMessageContaining("every");
    assertThatNullPointerException()
        .isThrownBy(() -> DemandTimes.repeated(hour, hour, hour, null))
        .withMessageContaining("until");
  }
}
