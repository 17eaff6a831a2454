package org.airfit.plant;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Range;
import org.airfit.quantity.ReferenceState;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.Volume;
import org.junit.jupiter.api.Test;

/**
 * Tests of leaks in plants that are drawn at random and stepped through time: a tank whose air exchanges heat with
 * walls, several leaks that discharge by the nozzle's law whether choked or not, a compressor that cycles between two
 * pressures and whose air comes in warm, a gauge that is off and read in steps, a stop-watch pressed early or late, and a
 * volume and a delivery that are not what they are taken for. The judge knows none of this but how far off each may be.
 */
class LeakTestSimulationTest {

  private static final int PLANTS = Integer.getInteger("airfit.leaks.plants", 120);
  private static final double R = 287.05287;
  private static final double CV = 717.6;
  private static final double CP = 1004.7;
  private static final double AROUND = 1.013e5;

  /** A plant as it is, and as far as those who test it know it. */
  private static final class Plant {
    final SplittableRandom random;
    final double volume;
    final double walls;
    final double heat; // W/K
    final double area; // Cd A of all leaks
    final double delivery; // kg/s
    final double cutIn;
    final double cutOut;
    final double gaugeOff;
    final double gaugeStep;
    double mass;
    double kelvins;

    Plant(long seed) {
      random = new SplittableRandom(seed);
      volume = between(0.3, 6.0);
      walls = between(280.0, 308.0);
      heat = between(2.0, 12.0) * 5.5 * Math.pow(volume, 2.0 / 3.0);
      cutIn = AROUND + between(5.0e5, 7.0e5);
      cutOut = cutIn + between(0.5e5, 1.5e5);
      double share = between(0.05, 0.6);
      delivery = volume * between(0.01, 0.05);
      area = share * delivery * Math.sqrt(R * walls) / (0.6847 * cutOut);
      gaugeStep = random.nextBoolean() ? 0.1e5 : 0.05e5;
      gaugeOff = between(-0.08e5, 0.08e5);
      fill(cutOut);
    }

    double between(double least, double most) {
      return least + (most - least) * random.nextDouble();
    }

    void fill(double pressure) {
      kelvins = walls;
      mass = pressure * volume / (R * kelvins);
    }

    double pressure() {
      return mass * R * kelvins / volume;
    }

    double leak(double pressure, double t) {
      double ratio = Math.max(AROUND / pressure, 0.528282);
      double psi = Math.sqrt(
          7.0 * (Math.pow(ratio, 2.0 / 1.4) - Math.pow(ratio, 2.4 / 1.4))); // 2γ/(γ−1) = 7
      return area * pressure * psi / Math.sqrt(R * t);
    }

    /** One step of mass and energy. */
    void step(double dt, boolean loaded) {
      double out = leak(pressure(), kelvins) * dt;
      double in = loaded ? delivery * dt : 0.0;
      double energy = mass * CV * kelvins
          - out * CP * kelvins
          + in * CP * (walls + 8.0) // the aftercooler leaves it warm
          + heat * (walls - kelvins) * dt;
      mass += in - out;
      kelvins = energy / (mass * CV);
    }

    /** What a gauge shows, above the atmosphere, in its steps. */
    double read(double pressure) {
      return gaugeStep * Math.round((pressure - AROUND + gaugeOff) / gaugeStep);
    }

    /** By how much what was read may be off: what its class says, and half a step. */
    double gaugeError() {
      return 0.08e5 + gaugeStep / 2.0;
    }
  }

  private static final double WATCH = 0.5; // of one time that is taken, both ends together [s]

  private static Range<GaugePressure> told(double least, double most) {
    return new Range<>(GaugePressure.ofPascals(least), GaugePressure.ofPascals(most));
  }

  private static Duration time(double seconds) {
    return Duration.ofNanos(Math.round(1.0e9 * seconds));
  }

  /** Errors as they are stated, times a factor: at 0 nothing is said to be off. */
  private static LeakTest fall(Plant plant, double factor, boolean knowsColdest) {
    plant.fill(plant.cutOut);
    double start = plant.read(plant.pressure());
    double until = plant.pressure() - plant.between(1.0e5, 3.0e5);
    double seconds = 0.0;
    double coldest = plant.walls;
    double dt = 0.02;
    while (plant.pressure() > until) {
      plant.step(dt, false);
      coldest = Math.min(coldest, plant.kelvins);
      seconds += dt;
    }
    double end = plant.read(plant.pressure());
    double watched = seconds + plant.between(-WATCH, WATCH);
    double taken = plant.volume * plant.between(0.92, 1.08);
    double gauge = factor * plant.gaugeError();
    return LeakTest.of(
        new LeakTest.Falling(
            new Range<>(
                Volume.ofCubicMetres(taken / (1.0 + 0.09 * factor)),
                Volume.ofCubicMetres(taken * (1.0 + 0.09 * factor))),
            told(start - gauge, start + gauge),
            told(end - gauge, end + gauge),
            time(watched),
            time(factor * WATCH),
            Temperature.ofKelvins(plant.walls),
            knowsColdest
                ? Optional.of(Temperature.ofKelvins(factor == 0.0 ? plant.walls : coldest))
                : Optional.empty()),
        AbsolutePressure.ofPascals(AROUND),
        GaugePressure.ofPascals(plant.cutOut - AROUND));
  }

  private static LeakTest cycles(Plant plant, double factor) {
    plant.fill(plant.cutOut);
    int count = 3 + plant.random.nextInt(4);
    double loaded = 0.0;
    double unloaded = 0.0;
    double dt = 0.02;
    for (int i = -2; i < count; i++) { // two cycles to settle
      double down = 0.0;
      while (plant.pressure() > plant.cutIn) {
        plant.step(dt, false);
        down += dt;
      }
      double up = 0.0;
      while (plant.pressure() < plant.cutOut) {
        plant.step(dt, true);
        up += dt;
      }
      if (i >= 0) {
        loaded += up + plant.between(-WATCH, WATCH);
        unloaded += down + plant.between(-WATCH, WATCH);
      }
    }
    double gauge = factor * plant.gaugeError();
    double taken = plant.delivery * plant.between(0.95, 1.05);
    return LeakTest.of(
        new LeakTest.Cycling(
            time(Math.max(0.0, loaded)),
            time(unloaded),
            count,
            time(factor * WATCH),
            new Range<>(anr(taken / (1.0 + 0.055 * factor)), anr(taken * (1.0 + 0.055 * factor))),
            told(
                plant.read(plant.cutIn) - gauge,
                Math.max(plant.read(plant.cutIn), plant.read(plant.cutOut)) + gauge)),
        AbsolutePressure.ofPascals(AROUND),
        GaugePressure.ofPascals(plant.cutOut - AROUND));
  }

  private static FreeAirFlow anr(double kilogramsPerSecond) {
    return FreeAirFlow.from(MassFlow.ofKilogramsPerSecond(kilogramsPerSecond), ReferenceState.ANR);
  }

  private record Outcome(int held, double meanWidth) {}

  private interface Judge {
    LeakTest judge(Plant plant);
  }

  private static Outcome run(Judge judge) {
    int held = 0;
    List<Double> widths = new ArrayList<>();
    for (int i = 0; i < PLANTS; i++) {
      Plant plant = new Plant(1_000L + i);
      Range<MassFlow> told = judge.judge(plant).leak();
      double truth = plant.leak(plant.cutOut, plant.walls);
      boolean holds =
          told.least().kilogramsPerSecond() <= truth && truth <= told.most().kilogramsPerSecond();
      held += holds ? 1 : 0;
      widths.add((told.most().kilogramsPerSecond() - told.least().kilogramsPerSecond()) / truth);
    }
    return new Outcome(
        held, widths.stream().mapToDouble(Double::doubleValue).average().orElseThrow());
  }

  /** Bounds that are rigorous hold every time; were no error stated they would hold hardly ever. */
  @Test
  void a_fall_of_pressure_holds_the_leak_that_is_there() {
    Outcome known = run(plant -> fall(plant, 1.0, /* knowsColdest= */ true));
    Outcome unknown = run(plant -> fall(plant, 1.0, /* knowsColdest= */ false));
    Outcome blind = run(plant -> fall(plant, 0.0, /* knowsColdest= */ true));
    System.getLogger("leaks").log(System.Logger.Level.DEBUG, known + " " + unknown + " " + blind);
    assertThat(known.held()).isEqualTo(PLANTS);
    assertThat(unknown.held()).isEqualTo(PLANTS);
    assertThat(blind.held()).as("as if nothing were off").isLessThan(PLANTS / 10);
    assertThat(known.meanWidth()).isLessThan(unknown.meanWidth()).isLessThan(1.0);
  }

  @Test
  void load_timing_holds_the_leak_that_is_there() {
    Outcome told = run(plant -> cycles(plant, 1.0));
    Outcome blind = run(plant -> cycles(plant, 0.0));
    System.getLogger("leaks").log(System.Logger.Level.DEBUG, told + " " + blind);
    assertThat(told.held()).isEqualTo(PLANTS);
    assertThat(blind.held()).as("as if nothing were off").isLessThan(PLANTS);
    assertThat(told.meanWidth()).isLessThan(0.8);
  }
}
