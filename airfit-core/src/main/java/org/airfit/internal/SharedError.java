package org.airfit.internal;

/**
 * Readings by one instrument, whose error they share: y_j = size_j + own error_j + e, one e for all of them.
 *
 * <pre>
 *   L = ∫ φ(e/c)/c Π f_j(y_j − e) de
 *   χ² = min over e of  Σ z_j(y_j − e)² + (e/c)²
 * </pre>
 *
 * <p>with f_j and z_j the density and the misfit of a reading without the common part of its error. Where all f_j are
 * normal this is the multivariate normal distribution with covariance diag(σ_j²) + c², and in closed form
 *
 * <pre>
 *   e* = c² Σ r_j/σ_j² / (1 + c² Σ 1/σ_j²),   ln L = Σ ln f_j(y_j − e*) − (e* /c)²/2 − ln(1 + c² Σ 1/σ_j²)/2
 * </pre>
 *
 * <p>Otherwise the integral is a sum over even steps, which for such smooth integrands is as good as exact; e* is then
 * the most likely e with every scatter taken as normal.
 *
 * <p><b>Source:</b> GUM 5.2.2 for the covariance, C. R. Rao, <cite>Linear statistical inference</cite>, for the inverse
 * of diag + c².
 *
 * <p>Kernel: any unit of length, the same for all; no checks. Immutable.
 */
public final class SharedError {

  /** Even steps no wider than this share of the narrowest part; the sum of a normal curve is then good to 1e-5. */
  private static final double STEP = 1.2;

  /** And no wider than this share of the common error itself. */
  private static final double COARSEST = 0.4;

  private static final double REACH = 5.5;

  /** Even steps of the error for a copy, in standard deviations of it. */
  public static final double COPY_STEP = 0.9;

  /** How many of those either way. */
  public static final int COPY_STEPS = 4;

  private final double c;
  private final double[] y;
  private final ReadingDensity[] own;
  private final boolean plain;
  private final double best;
  private final double weight;

  private SharedError(double c, double[] y, ReadingDensity[] own) {
    this.c = c;
    this.y = y;
    this.own = own;
    boolean closed = true;
    double sum = 0.0;
    for (ReadingDensity density : own) {
      closed &= density.isNormal();
      sum += 1.0 / (density.sigma * density.sigma);
    }
    this.plain = closed;
    this.weight = c * c * sum;
    this.best = mostLikely();
  }

  /**
   * Takes readings by one instrument together.
   *
   * @param c standard deviation of the error they share, above 0
   * @param y the readings, taken over and not copied; none is allowed, and leaves the error as it was
   * @param own what each should be, without the shared part of its error, in the same order, taken over likewise
   * @return the readings with what they tell of the error
   */
  public static SharedError of(double c, double[] y, ReadingDensity[] own) {
    return new SharedError(c, y, own);
  }

  /**
   * What is left of the uncertainty of a reading without the part it shares.
   *
   * @param u standard uncertainty of the reading
   * @param c standard deviation of the shared error, not above {@code u}
   * @return √(u² − c²)
   */
  public static double ownUncertainty(double u, double c) {
    return Math.sqrt((u - c) * (u + c));
  }

  /** {@return the standard deviation of the shared error} */
  public double c() {
    return c;
  }

  /** {@return the most likely shared error e*} */
  public double best() {
    return best;
  }

  /** {@return c² Σ 1/σ²} */
  public double weight() {
    return weight;
  }

  /**
   * What one of the readings should be, without the shared part of its error.
   *
   * @param j which, from 0
   * @return its density
   */
  public ReadingDensity own(int j) {
    return own[j];
  }

  /** {@return χ² of all the readings together} */
  public double chiSquare() {
    double square = best / c * (best / c);
    for (int j = 0; j < y.length; j++) {
      double z = own[j].misfit(y[j] - best);
      square += z * z;
    }
    return square;
  }

  /** {@return ln L of all the readings together} */
  public double logLikelihood() {
    return plain
        ? logDensities(best) - 0.5 * Math.log1p(weight)
        : Statistics.logSumExp(logs()) + Math.log(step() / c) - Statistics.LN_SQRT_TWO_PI;
  }

  /**
   * What is left of the shared error.
   *
   * @param mean its mean
   * @param variance its variance
   */
  public record Left(double mean, double variance) {}

  /**
   * What is left of the common error once the readings are known, were the part of the kind.
   *
   * <pre>
   *   mean e*, variance c²/(1 + c² Σ 1/σ_j²)   where all f_j are normal; else the moments of φ(e/c) Π f_j(y_j − e)
   * </pre>
   *
   * @return mean and variance
   */
  public Left left() {
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

  /** Zero of the slope of χ², which only rises: in closed form, or by the root finder. */
  private double mostLikely() {
    double high = 0.0;
    double low = 0.0;
    for (int j = 0; j < y.length; j++) {
      double pull = c * c * beyond(j, 0.0) / (own[j].sigma * own[j].sigma);
      high += Math.max(0.0, pull);
      low += Math.min(0.0, pull);
    }
    if (plain) {
      return (low + high) / (1.0 + weight);
    }
    double more = 1.0e-9 * (c + high - low); // so that rounding leaves the signs at the ends
    return RootFinder.find(this::slope, low - more, high + more, 0.5e-12 * c);
  }

  /** Half the slope of χ² at e. */
  private double slope(double e) {
    double slope = e / (c * c);
    for (int j = 0; j < y.length; j++) {
      slope -= beyond(j, e) / (own[j].sigma * own[j].sigma);
    }
    return slope;
  }

  /** How far a reading less e lies from what is allowed. */
  private double beyond(int j, double e) {
    ReadingDensity expected = own[j];
    return y[j] - e - Math.max(expected.low, Math.min(expected.high, y[j] - e));
  }

  /** ln of φ(e/c) Π f_j(y_j − e) without the factor of φ that the integral over e takes out again. */
  private double logDensities(double e) {
    double sum = -0.5 * (e / c) * (e / c);
    for (int j = 0; j < y.length; j++) {
      sum += own[j].logDensity(y[j] - e);
    }
    return sum;
  }

  /**
   * The same for a copy of the part, each of whose sizes may have been changed, see {@link ReadingDensity#changed}.
   *
   * <pre>
   *   ∫ φ(e/c)/c Π h_j(y_j − e) de   and   (1 − q)ⁿ ∫ φ(e/c)/c Π f_j(y_j − e) de
   * </pre>
   *
   * <p>by the same few steps of e from −3.6 to 3.6 standard deviations, which is good to a few per cent of the first.
   *
   * @param chance q, how often a size was changed
   * @param scale by how much on average
   * @return ln of both, the second being the part of the first in which nothing was changed
   */
  public double[] logLikelihoodsOfCopy(double chance, double scale) {
    double any = 0.0;
    double none = 0.0;
    for (int k = -COPY_STEPS; k <= COPY_STEPS; k++) {
      double e = k * COPY_STEP * c;
      double start = Math.exp(-0.5 * (e / c) * (e / c));
      double changed = start;
      double same = start;
      for (int j = 0; j < own.length; j++) {
        double f = (1.0 - chance) * Math.exp(own[j].logDensity(y[j] - e));
        changed *= f + chance * own[j].densityIfChanged(y[j] - e, scale);
        same *= f;
      }
      any += changed;
      none += same;
    }
    double width = Math.log(COPY_STEP) - Statistics.LN_SQRT_TWO_PI;
    return new double[] {Math.log(any) + width, Math.log(none) + width};
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

  /** {@return whether the closed form was used} */
  public boolean isPlain() {
    return plain;
  }
}
