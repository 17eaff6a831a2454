package org.airfit.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.line.Conduit;
import org.airfit.plant.PressureBand;
import org.airfit.plant.RegulatorElement;
import org.airfit.plant.TimedCompressor;
import org.airfit.plant.WallHeat;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.Power;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.Volume;
import org.airfit.run.Run;
import org.airfit.run.ToolDemand;

/** Laws of plants drawn at random. */
class PlantDayProperties {

  private static final AbsolutePressure ATMOSPHERE = AbsolutePressure.ofBar(1.01325);
  private static final Temperature WARM = Temperature.ofCelsius(25.0);

  private static double draw(Random random, double low, double high) {
    return low * Math.pow(high / low, random.nextDouble());
  }

  private static Run run(Random random, String name, double least) {
    return Run.from(AirState.of(AbsolutePressure.ofBar(9.0), WARM), ATMOSPHERE)
        .through(
            name,
            FlowCapacity.of(
                SonicConductance.ofCubicDecimetresPerSecondBar(draw(random, least, 8.0 * least)),
                0.2 + 0.3 * random.nextDouble()));
  }

  /** A plant of an hour, with one to three receivers and compressors and a handful of users. */
  private static PlantDay drawn(long seed) {
    Random random = new Random(seed);
    PlantDay.Builder plant = PlantDay.at(ATMOSPHERE, WARM)
        .lasting(Duration.ofHours(1))
        .walls(random.nextBoolean() ? WallHeat.KEEPS : WallHeat.NONE);
    int receivers = 1 + random.nextInt(3);
    for (int j = 0; j < receivers; j++) {
      plant.receiver(new LineReceiver(
          "receiver " + j,
          j == 0 ? Optional.empty() : Optional.of(run(random, "join " + j, 10.0)),
          Volume.ofCubicMetres(draw(random, 0.2, 5.0)),
          GaugePressure.ofBar(5.5 + 2.0 * random.nextDouble())));
    }
    int compressors = 1 + random.nextInt(3);
    for (int c = 0; c < compressors; c++) {
      double cutIn = 6.0 + random.nextDouble();
      plant.compressor(new TimedCompressor(
          "compressor " + c,
          PlantDayTest.flow(draw(random, 0.02, 0.1)),
          Optional.of(new PressureBand(
              GaugePressure.ofBar(cutIn), GaugePressure.ofBar(cutIn + 0.3 + random.nextDouble()))),
          Duration.ofMillis(random.nextInt(20_000)),
          Duration.ofMillis(random.nextInt(5_000)),
          random.nextBoolean()
              ? Optional.empty()
              : Optional.of(Duration.ofSeconds(random.nextInt(300))),
          Duration.ofSeconds(random.nextInt(40)),
          Power.ofKilowatts(30.0),
          Power.ofKilowatts(9.0),
          GaugePressure.ofBar(7.0)));
    }
    if (random.nextInt(3) == 0) {
      plant.regulator(RegulatorElement.of(
          FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(40.0), 0.3),
          GaugePressure.ofBar(4.5 + random.nextDouble()).absolute(ATMOSPHERE)));
    }
    int uses = 1 + random.nextInt(4);
    for (int i = 0; i < uses; i++) {
      plant.use(use(random, "user " + i));
    }
    return plant.build();
  }

  private static TimedUse use(Random random, String name) {
    double flow = draw(random, 0.002, 0.04);
    ToolDemand tool = random.nextBoolean()
        ? ToolDemand.fixed(name, PlantDayTest.flow(flow))
        : ToolDemand.following(name, PlantDayTest.flow(flow), AbsolutePressure.ofBar(7.0));
    Optional<Run> drop = random.nextInt(3) == 0
        ? Optional.empty()
        : Optional.of(run(random, "coupling", 4.0)
            .through(
                "pipe",
                Conduit.of(
                    Length.ofMillimetres(draw(random, 9.0, 30.0)),
                    Length.ofMetres(draw(random, 2.0, 30.0)),
                    Length.ofMillimetres(0.05))));
    List<DemandTimes.Span> spans = new ArrayList<>();
    long at = random.nextInt(300_000);
    while (at < 3_600_000L) {
      long end = at + 1_000 + random.nextInt(400_000);
      spans.add(new DemandTimes.Span(
          Duration.ofMillis(at), Duration.ofMillis(end), 0.2 + 0.8 * random.nextDouble()));
      at = end + random.nextInt(300_000);
    }
    return new TimedUse(
        name,
        drop,
        tool,
        random.nextInt(4) == 0
            ? Optional.empty()
            : Optional.of(GaugePressure.ofBar(4.0 + 2.0 * random.nextDouble())),
        random.nextInt(4) == 0 ? DemandTimes.always() : DemandTimes.of(spans));
  }

  @Property(tries = 40)
  void no_air_is_lost_or_made_of_nothing(@ForAll long seed) {
    DayResult result = drawn(seed).simulate();
    DayResult.Balance balance = result.balance();
    double passed = balance.madeKilograms() + balance.takenKilograms();
    assertThat(Math.abs(balance.unaccountedKilograms())).isLessThan(1.0e-9 * passed);
    double byCompressors = result.compressors().stream()
        .mapToDouble(DayResult.CompressorDay::madeKilograms)
        .sum();
    // loaded times are told to 1e-9 s each
    assertThat(byCompressors)
        .isCloseTo(balance.madeKilograms(), within(1.0e-9 * (1.0 + balance.madeKilograms())));
  }

  @Property(tries = 25)
  void times_add_up_and_the_lowest_lies_within_the_course(@ForAll long seed) {
    DayResult result = drawn(seed).simulate();
    for (DayResult.CompressorDay did : result.compressors()) {
      assertThat(did.loaded().plus(did.idle()).plus(did.standing()).toNanos())
          .isCloseTo(Duration.ofHours(1).toNanos(), within(10L));
      assertThat(did.mostStartsInAnHour()).isLessThanOrEqualTo(did.starts());
    }
    double lowest = result.course().stream()
        .mapToDouble(stretch -> stretch.lowest().pascals())
        .min()
        .orElseThrow();
    for (DayResult.UseDay use : result.uses()) {
      assertThat(use.below()).isLessThanOrEqualTo(use.runs());
      use.lowest().ifPresent(worst -> {
        assertThat(worst.header().pascals() - ATMOSPHERE.pascals())
            .isGreaterThanOrEqualTo(lowest - 1.0);
        use.need()
            .ifPresent(need -> assertThat(worst.atTool().pascals() < need.pascals() - 1.0)
                .as(use.name())
                .isEqualTo(use.isShort() && worst.atTool().pascals() < need.pascals() - 1.0));
        if (use.need().isPresent()
            && worst.atTool().pascals() < use.need().get().pascals() - 10.0) {
          assertThat(use.isShort()).as(use.name()).isTrue();
        }
      });
    }
  }

  /** Found by chance: warm air behind a regulator loses more on its way, and left a user short by 461 Pa. */
  @Example
  void what_warm_air_loses_more_is_missed_by_the_tool() {
    times_add_up_and_the_lowest_lies_within_the_course(-24880274435902L);
    assertThat(drawn(-24880274435902L).simulate().uses().get(0).isShort()).isTrue();
  }

  /** With steps a hundred times as exact the day is the same: within a few Pa, and as many loads. */
  @Property(tries = 8)
  void smaller_steps_lead_to_the_same_day(@ForAll long seed) {
    PlantDay plant = drawn(seed);
    DayResult usual = plant.simulate();
    DayResult exact = plant.simulate(1.0e-8);
    for (int i = 0; i < usual.uses().size(); i++) {
      if (usual.uses().get(i).lowest().isPresent()) {
        assertThat(usual.uses().get(i).lowest().orElseThrow().atTool().pascals())
            .isCloseTo(
                exact.uses().get(i).lowest().orElseThrow().atTool().pascals(), within(300.0));
      }
    }
    assertThat(usual.balance().takenKilograms())
        .isCloseTo(
            exact.balance().takenKilograms(), within(1.0e-4 * exact.balance().takenKilograms()));
  }
}
