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
 * <p>Otherwise the integral is a sum over even steps, whose width is chosen by a bound of what they miss, and which end
 * where a bound of what is beyond lets them: the sum is good to 10⁻⁹ of itself. e* is then the most likely e with every
 * scatter taken as normal.
 *
 * <p><b>Source:</b> GUM 5.2.2 for the covariance, C. R. Rao, <cite>Linear statistical inference</cite>, for the inverse
 * of diag + c².
 *
 * <p>Kernel: any unit of length, the same for all; no checks. Immutable.
 */
public final class SharedError {

  /** What the sum over even steps may differ from the integral, in the share of it. */
  private static final double ALIAS = 2.5e-10;

  /** What may lie beyond the last step on each side, likewise. */
  private static final double TAIL = 1.0e-10;

  /** ln(2/{@link #ALIAS}). */
  private static final double LN_ALIAS = Math.log(2.0 / ALIAS);

  /** How far from the real axis growth is looked at, in shares of what is best for normal scatter. */
  private static final int DEPTHS = 8;

  /** With densities this far below their peaks, in the unit of χ², no product of densities underflows where it counts. */
  private static final double NEAR = 400.0;

  /** The middle of the integrand need not be exact, to this share of the common error, nor be sought for long. */
  private static final double CLOSE = 0.1;

  private static final int MOST_STEPS = 20;

  /** A sum is brought back to the size of a new term when that is larger than it by e to this. */
  private static final double ROOM = 300.0;

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
    if (plain) {
      return logDensities(best) - 0.5 * Math.log1p(weight);
    }
    Moments sum = integral();
    return sum.log + Math.log(sum.all * sum.step / c) - Statistics.LN_SQRT_TWO_PI;
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
    Moments sum = integral();
    double mean = sum.first / sum.all;
    return new Left(sum.middle + mean, sum.second / sum.all - mean * mean);
  }

  /**
   * Zero of the slope of χ², which only rises and is straight between the ends of what is allowed: by Newton's method,
   * exact once it stays between two of them.
   */
  private double mostLikely() {
    double e = 0.0;
    for (int i = 0; i < 4 + 2 * y.length; i++) {
      double pull = 0.0;
      double stiff = 1.0 / (c * c);
      for (int j = 0; j < y.length; j++) {
        ReadingDensity expected = own[j];
        double end = Math.max(expected.low, Math.min(expected.high, y[j] - e));
        if (end != y[j] - e) {
          double w = 1.0 / (expected.sigma * expected.sigma);
          pull += (y[j] - end) * w;
          stiff += w;
        }
      }
      double next = pull / stiff;
      if (next == e) {
        return e;
      }
      e = next;
    }
    return mostLikelyByBrackets();
  }

  private double mostLikelyByBrackets() {
    double high = 0.0;
    double low = 0.0;
    for (int j = 0; j < y.length; j++) {
      double pull = c * c * beyond(j, 0.0) / (own[j].sigma * own[j].sigma);
      high += Math.max(0.0, pull);
      low += Math.min(0.0, pull);
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
        double f = (1.0 - chance) * own[j].density(y[j] - e);
        changed *= f + chance * own[j].densityIfChanged(y[j] - e, scale);
        same *= f;
      }
      any += changed;
      none += same;
    }
    double width = Math.log(COPY_STEP) - Statistics.LN_SQRT_TWO_PI;
    return new double[] {Math.log(any) + width, Math.log(none) + width};
  }

  /**
   * The widest step with which the sum is as good as the integral.
   *
   * <pre>
   *   |sum/integral − 1| ≤ 2 exp(G(η) − 2π η/h) for any η &gt; 0,   G(η) = η²/(2c²) + Σ growth of f_j
   * </pre>
   *
   * <p>because the sum is out by the Fourier transform at 2π/h and its multiples, for which the line of integration is
   * moved by η. Without pieces G is η²/(2s²), s² = c²/(1 + W), and the best η makes h = 2π s/√(2 ln(2/ε)) = 0.93 s.
   */
  private double step() {
    double deepest = c * Math.sqrt(2.0 * LN_ALIAS / (1.0 + weight));
    double widest = 0.0;
    for (int i = DEPTHS; i >= 1; i--) {
      double depth = deepest * i / DEPTHS;
      double growth = 0.5 * depth * depth / (c * c);
      for (ReadingDensity density : own) {
        growth += density.growth(depth * depth);
      }
      double step = 2.0 * Math.PI * depth / (LN_ALIAS + growth);
      if (step < widest) {
        return widest; // past the best
      }
      widest = step;
    }
    return widest;
  }

  /** A sum over even steps, with what is taken out of it lest it overflow. */
  private static final class Moments {
    final double step;
    final double middle;
    double log;
    double all;
    double first;
    double second;

    Moments(double step, double middle, double log) {
      this.step = step;
      this.middle = middle;
      this.log = log;
    }

    void add(double value, double away) {
      all += value;
      first += value * away;
      second += value * away * away;
    }

    void addLog(double term, double away) {
      if (term > log + ROOM) {
        double by = Math.exp(log - term);
        all *= by;
        first *= by;
        second *= by;
        log = term;
      }
      add(Math.exp(term - log), away);
    }
  }

  /** The integrand at even steps either side of its middle, until what lies beyond counts for nothing. */
  private Moments integral() {
    double middle = middle();
    boolean near = drop(middle) < NEAR;
    Moments sum = new Moments(step(), middle, near ? 0.0 : logDensities(middle));
    if (near) {
      sum.add(bells(middle) * pieces(middle), 0.0);
      goOn(sum, sum.step);
      goOn(sum, -sum.step);
    } else {
      sum.add(1.0, 0.0);
      goOnFar(sum, sum.step);
      goOnFar(sum, -sum.step);
    }
    return sum;
  }

  /**
   * About where the integrand is largest. A reading that is far from what pieces were found to be pulls less than
   * under normal scatter, and the less the further it is off: the weights of the iteration for Student's t, each step of
   * which makes the integrand larger.
   */
  private double middle() {
    double e = 0.0;
    for (int i = 0; i < MOST_STEPS; i++) {
      double pull = 0.0;
      double stiff = 1.0 / (c * c);
      for (int j = 0; j < y.length; j++) {
        double beyond = beyond(j, e);
        if (beyond != 0.0) {
          double w = own[j].stiffness(beyond);
          pull += (beyond + e) * w;
          stiff += w;
        }
      }
      double next = pull / stiff;
      if (Math.abs(next - e) < CLOSE * c) {
        return next;
      }
      e = next;
    }
    return e;
  }

  /** How far the densities are below their peaks at an error, in the unit of χ². */
  private double drop(double e) {
    double drop = e / c * (e / c);
    for (int j = 0; j < y.length; j++) {
      drop += own[j].drop(beyond(j, e) / own[j].sigma);
    }
    return drop;
  }

  /**
   * To one side. The part without pieces is log-concave: its steps fall by ever more. The part of pieces rises by λ at
   * most, and not at all past its middle. So, with r the ratio of a step to the one before in the first part,
   *
   * <pre>
   *   what lies beyond is at most R/(1 − R) of the last step, R = r exp(h Σ λ of what is still to rise)
   * </pre>
   */
  private void goOn(Moments sum, double step) {
    double before = bells(sum.middle);
    double left = Double.POSITIVE_INFINITY;
    for (int k = 1; left > TAIL * sum.all; k++) {
      double e = sum.middle + k * step;
      double bells = bells(e);
      double all = bells * pieces(e);
      sum.add(all, k * step);
      left = bells == 0.0 ? 0.0 : left(all, bells / before, e, step);
      before = bells;
    }
  }

  /** The same by logarithms, for readings far from what is expected. */
  private void goOnFar(Moments sum, double step) {
    double before = logBells(sum.middle);
    double left = Double.POSITIVE_INFINITY;
    for (int k = 1; left > TAIL * sum.all; k++) {
      double e = sum.middle + k * step;
      double bells = logBells(e);
      double all = logDensities(e);
      sum.addLog(all, k * step);
      left = left(Math.exp(all - sum.log), Math.exp(bells - before), e, step);
      before = bells;
    }
  }

  private double left(double last, double ratio, double e, double step) {
    double rise = 0.0;
    for (int j = 0; j < y.length; j++) {
      rise += hasPassed(j, e, step) ? 0.0 : own[j].steepest();
    }
    double most = rise > 0.0 ? ratio * Math.exp(rise * Math.abs(step)) : ratio;
    return most < 1.0 ? last * most / (1.0 - most) : Double.POSITIVE_INFINITY;
  }

  private double bells(double e) {
    double product = Math.exp(-0.5 * (e / c) * (e / c));
    for (int j = 0; j < y.length; j++) {
      if (own[j].steepest() == 0.0) {
        product *= own[j].density(y[j] - e);
      }
    }
    return product;
  }

  /** Of densities of one power the bases are multiplied first: one logarithm for them, and one exponential for all. */
  private double pieces(double e) {
    double product = 1.0;
    double base = 1.0;
    double power = 0.0;
    double log = 0.0;
    for (int j = 0; j < y.length; j++) {
      ReadingDensity density = own[j];
      if (density.steepest() == 0.0) {
        continue;
      }
      double its = density.power();
      if (its == 0.0) {
        product *= density.density(y[j] - e);
        continue;
      }
      if (its != power) {
        log += power * Math.log(base);
        base = 1.0;
        power = its;
      }
      base *= density.base(y[j] - e);
      product *= density.peak();
    }
    log += power * Math.log(base);
    return log == 0.0 ? product : product * Math.exp(-log);
  }

  private double logBells(double e) {
    double sum = -0.5 * (e / c) * (e / c);
    for (int j = 0; j < y.length; j++) {
      sum += own[j].steepest() == 0.0 ? own[j].logDensity(y[j] - e) : 0.0;
    }
    return sum;
  }

  /** Whether the density of a reading only falls from here on. */
  private boolean hasPassed(int j, double e, double step) {
    return step > 0.0 ? y[j] - e <= own[j].low : y[j] - e >= own[j].high;
  }

  /** {@return whether the closed form was used} */
  public boolean isPlain() {
    return plain;
  }
}
