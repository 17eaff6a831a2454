package org.airfit.run;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.airfit.internal.Quadrature;
import org.airfit.internal.Statistics;
import org.airfit.quantity.GaugePressure;

/**
 * Finds the reading that is expected to tell most: after which the most probable explanation is right most often.
 *
 * <pre>
 *   E = ∫ max over h of P(h) N(x; μ_h, σ_h²) dx
 * </pre>
 *
 * <p>x is what the gauge would show, μ_h and σ_h what explanation h expects of it by the readings so far.
 */
final class GaugeNext {

  /** An explanation less probable than this is left out here. */
  private static final double LITTLE = 1.0e-3;

  /** A value of its unknown with less of the largest weight is left out here. */
  private static final double LITTLE_WEIGHT = 1.0e-2;

  private static final double REACH = 6.0;

  private static final int PANELS = 60;

  /** A reading that brings less is not proposed: our choice. */
  private static final double WORTH = 0.02;

  private record Expected(double probability, double mean, double deviation) {}

  private final List<GaugeReading> taken;
  private final List<String> names;

  private GaugeNext(List<GaugeReading> taken, List<String> names) {
    this.taken = taken;
    this.names = names;
  }

  static Optional<NextGaugeReading> of(
      List<GaugeFit> fits, double[] probabilities, List<GaugeReading> taken, List<String> names) {
    return new GaugeNext(taken, names).best(fits, probabilities);
  }

  private Optional<NextGaugeReading> best(List<GaugeFit> fits, double[] probabilities) {
    List<PressureGauge> gauges =
        taken.stream().map(GaugeReading::gauge).distinct().toList();
    double now = 0.0;
    double all = 0.0;
    for (double probability : probabilities) {
      now = Math.max(now, probability);
      all += probability;
    }
    now /= all;
    Optional<NextGaugeReading> best = Optional.empty();
    double most = now + WORTH;
    for (int place = 0; place < names.size(); place++) {
      for (ToolState state : ToolState.values()) {
        if (isTaken(names.get(place), state)) {
          continue;
        }
        for (PressureGauge gauge : gauges) {
          double expected = expected(fits, probabilities, all, gauge, place, state);
          if (expected > most + 1.0e-9) {
            most = expected;
            best = Optional.of(
                NextGaugeReading.of(gauge, names.get(place), state, Math.min(expected, 0.9999)));
          }
        }
      }
    }
    return best;
  }

  private boolean isTaken(String place, ToolState state) {
    return taken.stream()
        .anyMatch(reading -> reading.place().equals(place) && reading.state() == state);
  }

  private double expected(
      List<GaugeFit> fits,
      double[] probabilities,
      double all,
      PressureGauge gauge,
      int place,
      ToolState state) {
    List<Expected> of = new ArrayList<>();
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < fits.size(); i++) {
      double probability = probabilities[i] / all;
      if (probability < LITTLE) {
        continue;
      }
      Expected one = expected(fits.get(i), probability, gauge, place, state);
      low = Math.min(low, one.mean - REACH * one.deviation);
      high = Math.max(high, one.mean + REACH * one.deviation);
      of.add(one);
    }
    return Quadrature.integral(
        x -> {
          double most = 0.0;
          for (Expected one : of) {
            double z = (x - one.mean) / one.deviation;
            most = Math.max(
                most,
                one.probability
                    / one.deviation
                    * Math.exp(-0.5 * z * z - Statistics.LN_SQRT_TWO_PI));
          }
          return most;
        },
        low,
        high,
        PANELS);
  }

  /** What an explanation expects a gauge to show, by the readings so far. */
  private Expected expected(
      GaugeFit fit, double probability, PressureGauge gauge, int place, ToolState state) {
    double[] sums = new double[3];
    for (GaugeFit.Node node : fit.nodes()) {
      double weight = fit.weight(node);
      double[] row = node.row();
      if (row == null || weight < LITTLE_WEIGHT * node.width()) {
        continue;
      }
      double plain = row[fit.grid().index(0, state, place)];
      List<GaugeReading> more = new ArrayList<>(taken);
      double shown = Math.max(0.0, Math.min(plain, gauge.topOfScale().pascals()));
      more.add(new GaugeReading(gauge, names.get(place), state, GaugePressure.ofPascals(shown)));
      GaugePlaces places = new GaugePlaces(more, names);
      int n = places.size();
      double[] root = places.covariance(fit.grid(), row, fit.wrong());
      GaugeKernels.root(root, n);
      double[] scaled = places.residuals(fit.grid(), row);
      scaled[n - 1] = 0.0;
      GaugeKernels.solveForward(root, n, scaled);
      // the last line of the root tells the new reading by those before it
      double own = root[n * n - 1];
      double mean = plain - scaled[n - 1] * own;
      sums[0] += weight;
      sums[1] += weight * mean;
      sums[2] += weight * (own * own + mean * mean);
    }
    double mean = sums[1] / sums[0];
    return new Expected(
        probability, mean, Math.sqrt(Math.max(1.0, sums[2] / sums[0] - mean * mean)));
  }
}
