package org.airfit.plug;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.airfit.internal.Statistics;

/**
 * Readings by one caliper, whose error they share: y_j = size_j + own error_j + e, one e for all of them.
 *
 * <pre>
 *   L = ∫ φ(e/c)/c Π f_j(y_j − e) de
 *   χ² = min over e of  Σ z_j(y_j − e)² + (e/c)²
 * </pre>
 *
 * <p>with f_j and z_j the density and the misfit of a reading without the common part of its error. Where all f_j are normal this is the
 * multivariate normal distribution with covariance diag(σ_j²) + c², and in closed form
 *
 * <pre>
 *   e* = c² Σ r_j/σ_j² / (1 + c² Σ 1/σ_j²),   ln L = Σ ln f_j(y_j − e*) − (e* /c)²/2 − ln(1 + c² Σ 1/σ_j²)/2
 * </pre>
 *
 * <p>Otherwise the integral is a sum over even steps, which for such smooth integrands is as good as exact; e* is then the most likely e
 * with every scatter taken as normal.
 *
 * <p><b>Source:</b> GUM 5.2.2 for the covariance, C. R. Rao, <cite>Linear statistical inference</cite>, for the inverse of diag + c².
 *
 * <p>Kernel: millimetres; no checks.
 */
final class CommonError {

  /** Even steps no wider than this share of the narrowest part; the sum of a normal curve is then good to 1e-5. */
  private static final double STEP = 1.2;

  /** And no wider than this share of the common error itself. */
  private static final double COARSEST = 0.4;

  private static final double REACH = 5.5;

  final Instrument caliper;

  /** Standard deviation of the common error. */
  final double c;

  final List<Expected> own = new ArrayList<>();
  private final double[] y;
  private final boolean plain;

  /** The most likely common error. */
  final double best;

  /** c² Σ 1/σ². */
  final double weight;

  private CommonError(
      Instrument caliper, List<Reading> readings, List<PartSpread> spreads, double wear) {
    this.caliper = caliper;
    this.c = caliper.commonUncertainty().millimetres();
    double[] lengths = new double[readings.size()];
    int n = 0;
    boolean closed = true;
    double sum = 0.0;
    for (int j = 0; j < lengths.length; j++) {
      Reading reading = readings.get(j);
      if (isBy(caliper, reading)) {
        lengths[n++] = reading.length().millimetres();
        Expected expected = Expected.of(spreads.get(j), ownU(reading), wear, reading.dimension());
        own.add(expected);
        closed &= expected.isNormal();
        sum += 1.0 / (expected.sigma * expected.sigma);
      }
    }
    this.y = Arrays.copyOf(lengths, n);
    this.plain = closed;
    this.weight = c * c * sum;
    this.best = mostLikely();
  }

  /** The readings by calipers that share their error with at least one other, caliper by caliper. */
  static List<CommonError> of(List<Reading> readings, List<PartSpread> spreads, double wear) {
    List<CommonError> groups = new ArrayList<>();
    for (Instrument caliper : Instrument.ALL) {
      int count = 0;
      for (Reading reading : readings) {
        count += isBy(caliper, reading) ? 1 : 0;
      }
      if (count > 1) {
        groups.add(new CommonError(caliper, readings, spreads, wear));
      }
    }
    return groups;
  }

  /** What the readings by one caliper, any number of them, tell of its error. */
  static CommonError of(
      Instrument caliper, List<Reading> readings, List<PartSpread> spreads, double wear) {
    return new CommonError(caliper, readings, spreads, wear);
  }

  /** Whether a reading is by this caliper. */
  static boolean isBy(Instrument caliper, Reading reading) {
    return reading.caliper().isPresent() && reading.caliper().get() == caliper;
  }

  double chiSquare() {
    double square = best / c * (best / c);
    for (int j = 0; j < y.length; j++) {
      double z = own.get(j).misfit(y[j] - best);
      square += z * z;
    }
    return square;
  }

  double logLikelihood() {
    return plain
        ? logDensities(best) - 0.5 * Math.log1p(weight)
        : Statistics.logSumExp(logs()) + Math.log(step() / c) - Statistics.LN_SQRT_TWO_PI;
  }

  /** Mean and variance that are left for the common error. */
  record Left(double mean, double variance) {}

  /**
   * What is left of the common error once the readings are known, were the plug of the profile.
   *
   * <pre>
   *   mean e*, variance c²/(1 + c² Σ 1/σ_j²)   where all f_j are normal; else the moments of φ(e/c) Π f_j(y_j − e)
   * </pre>
   */
  Left left() {
    if (plain) {
      return new Left(best, c * c / (1.0 + weight));
    }
    double[] logs = logs();
    double all = Statistics.logSumExp(logs);
    double mean = 0.0;
    double square = 0.0;
    for (int k = 0; k < logs.length; k++) {
      double away = (k - logs.length / 2) * step();
      double share = Math.exp(logs[k] - all);
      mean += share * away;
      square += share * away * away;
    }
    return new Left(best + mean, square - mean * mean);
  }

  /** Whether a reading shares its error with another of these. */
  static boolean shares(List<CommonError> groups, Reading reading) {
    return reading.caliper().isPresent()
        && groups.stream().anyMatch(group -> group.caliper == reading.caliper().get());
  }

  /** What is left of a reading's uncertainty without the common part [mm]. */
  static double ownU(Reading reading) {
    double u = reading.standardUncertainty().millimetres();
    double c = reading.caliper().orElseThrow().commonUncertainty().millimetres();
    return Math.sqrt((u - c) * (u + c));
  }

  /** Zero of the slope of χ², which only rises: in closed form, or by halving. */
  private double mostLikely() {
    double high = 0.0;
    double low = 0.0;
    for (int j = 0; j < y.length; j++) {
      double pull = c * c * beyond(j, 0.0) / (own.get(j).sigma * own.get(j).sigma);
      high += Math.max(0.0, pull);
      low += Math.min(0.0, pull);
    }
    if (plain) {
      return (low + high) / (1.0 + weight);
    }
    for (int i = 0; i < 60 && high - low > 1.0e-12 * c; i++) {
      double middle = 0.5 * (low + high);
      double slope = middle / (c * c);
      for (int j = 0; j < y.length; j++) {
        slope -= beyond(j, middle) / (own.get(j).sigma * own.get(j).sigma);
      }
      if (slope > 0.0) {
        high = middle;
      } else {
        low = middle;
      }
    }
    return 0.5 * (low + high);
  }

  /** How far a reading less e lies from what is allowed. */
  private double beyond(int j, double e) {
    Expected expected = own.get(j);
    return y[j] - e - Math.max(expected.low, Math.min(expected.high, y[j] - e));
  }

  /** ln of φ(e/c) Π f_j(y_j − e) without the factor of φ that the integral over e takes out again. */
  private double logDensities(double e) {
    double sum = -0.5 * (e / c) * (e / c);
    for (int j = 0; j < y.length; j++) {
      sum += own.get(j).logDensity(y[j] - e);
    }
    return sum;
  }

  private double step() {
    return Math.min(COARSEST * c, STEP * c / Math.sqrt(weight));
  }

  /** ln of the integrand at even steps either side of the best. */
  private double[] logs() {
    double step = step();
    int each = (int) Math.ceil(REACH * c / step);
    double[] logs = new double[2 * each + 1];
    for (int k = -each; k <= each; k++) {
      logs[k + each] = logDensities(best + k * step);
    }
    return logs;
  }

  /** Whether the closed form was used. */
  boolean isPlain() {
    return plain;
  }
}
