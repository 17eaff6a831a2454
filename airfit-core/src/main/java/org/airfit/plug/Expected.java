package org.airfit.plug;

import org.airfit.internal.Statistics;

/**
 * What a reading of one dimension should be if the plug were of one profile: part spread, reading uncertainty and wear together.
 *
 * <p>Kernel: millimetres, because the density of the unknown profile is stated per millimetre; no checks. Wear takes an amount away
 * that is evenly likely from 0 to w, in the one direction metal can go:
 *
 * <pre>
 *   f(y) = (1/w) ∫₀ʷ f₀(y − s·δ) dδ,   s = −1 where wear shrinks, +1 where it widens, w = 0 where nothing wears
 * </pre>
 *
 * <p>with f₀ the density of the same reading on a new plug. The misfit is the distance of the reading from the nearest size that is
 * allowed, wear included, in standard deviations: the kindest reading of the wear.
 */
abstract class Expected {

  /** Sizes from {@code low} to {@code high}, wear included, are no misfit at all. */
  final double low;

  final double high;

  /** Standard deviation of a reading around what is allowed. */
  final double sigma;

  final double wear;
  private final double sign;

  private Expected(double low, double high, double sigma, double wear, int sign) {
    this.low = sign < 0 ? low - wear : low;
    this.high = sign > 0 ? high + wear : high;
    this.sigma = sigma;
    this.wear = sign == 0 ? 0.0 : wear;
    this.sign = sign;
  }

  static Expected of(PartSpread spread, double u, double wear, Dimension dimension) {
    int sign = dimension.wear().sign();
    if (spread instanceof PartSpread.Limits limits) {
      return new Within(limits.low().millimetres(), limits.high().millimetres(), u, wear, sign);
    }
    double nominal = spread.nominal().millimetres();
    double part = spread.standardDeviation().millimetres();
    double sigma = Math.sqrt(part * part + u * u);
    if (spread instanceof PartSpread.Sample sample) {
      // Welch and Satterthwaite (GUM G.4): the reading's own uncertainty counts as known
      double ratio = sigma / part;
      return new Around.Student(
          nominal, sigma, sample.degreesOfFreedom() * ratio * ratio * ratio * ratio, wear, sign);
    }
    return new Around.Bell(nominal, sigma, wear, sign);
  }

  /** ln of the density at a reading, per millimetre. */
  final double logDensity(double y) {
    if (wear == 0.0) {
      return logDensityNew(y);
    }
    double from = sign < 0 ? y : y - wear;
    return logChance(from, from + wear) - Math.log(wear);
  }

  /** The same for a new plug. */
  abstract double logDensityNew(double y);

  /** Whether the density is that of the normal distribution, nothing worn. */
  boolean isNormal() {
    return false;
  }

  /** ln of the chance that a reading of a new plug lies between two bounds. */
  abstract double logChance(double from, double to);

  /** How far a reading lies from what is allowed, signed, in standard deviations. */
  double misfit(double y) {
    return (y < low ? y - low : y > high ? y - high : 0.0) / sigma;
  }

  /** How far beyond what is allowed a reading goes with a given chance on each side. */
  double margin(double tail) {
    return sigma * Statistics.normalScore(tail);
  }

  /** Beyond this many standard deviations the density counts for nothing in an integral. */
  double reach() {
    return 6.1 * sigma;
  }

  /** Spread around one nominal. */
  private abstract static class Around extends Expected {

    final double nominal;

    Around(double nominal, double sigma, double wear, int sign) {
      super(nominal, nominal, sigma, wear, sign);
      this.nominal = nominal;
    }

    private static final class Bell extends Around {

      private final double logPeak;

      Bell(double nominal, double sigma, double wear, int sign) {
        super(nominal, sigma, wear, sign);
        this.logPeak = -Math.log(sigma) - Statistics.LN_SQRT_TWO_PI;
      }

      @Override
      boolean isNormal() {
        return wear == 0.0;
      }

      @Override
      double logDensityNew(double y) {
        double z = (y - nominal) / sigma;
        return logPeak - 0.5 * z * z;
      }

      @Override
      double logChance(double from, double to) {
        return Statistics.logNormalBetween((from - nominal) / sigma, (to - nominal) / sigma);
      }
    }

    private static final class Student extends Around {

      /** A tail below this is no tail of any plug; an approximation serves there, before the exact tail underflows. */
      private static final double NO_TAIL = 1.0e-200;

      private final double degreesOfFreedom;
      private final double logPeak;

      Student(double nominal, double sigma, double degreesOfFreedom, double wear, int sign) {
        super(nominal, sigma, wear, sign);
        this.degreesOfFreedom = degreesOfFreedom;
        this.logPeak = Statistics.logStudentDensity(0.0, degreesOfFreedom) - Math.log(sigma);
      }

      /** Density of Student's t over that at its middle: (1 + t²/ν) to the power of −(ν + 1)/2. */
      @Override
      double logDensityNew(double y) {
        double t = (y - nominal) / sigma;
        return logPeak - 0.5 * (degreesOfFreedom + 1.0) * Math.log1p(t * t / degreesOfFreedom);
      }

      @Override
      double logChance(double from, double to) {
        return Statistics.logStudentBetween(
            (from - nominal) / sigma, (to - nominal) / sigma, degreesOfFreedom);
      }

      /** The normal score with the same tail, so that chi-square stays a chi-square. */
      @Override
      double misfit(double y) {
        double t = super.misfit(y);
        double tail = Statistics.studentAbove(Math.abs(t), degreesOfFreedom);
        double score = tail > NO_TAIL
            ? Statistics.normalScore(tail)
            : Math.sqrt(
                degreesOfFreedom * Math.log1p(t * t / degreesOfFreedom)); // after Wallace (1959)
        return Math.copySign(score, t);
      }

      @Override
      double margin(double tail) {
        return sigma * Statistics.studentScore(tail, degreesOfFreedom);
      }

      /** Where the density is a hundred-millionth of its peak, as that of a normal one is at six; its tails are longer. */
      @Override
      double reach() {
        double power = Math.pow(1.0e-8, -2.0 / (degreesOfFreedom + 1.0));
        return sigma * Math.min(40.0, Math.sqrt(degreesOfFreedom * (power - 1.0)));
      }
    }
  }

  /** Even spread between two limits. */
  private static final class Within extends Expected {

    private final double a;
    private final double b;

    Within(double a, double b, double u, double wear, int sign) {
      super(a, b, u, wear, sign);
      this.a = a;
      this.b = b;
    }

    @Override
    double logDensityNew(double y) {
      return Statistics.logNormalBetween((y - b) / sigma, (y - a) / sigma) - Math.log(b - a);
    }

    /** With G(z) = z Φ(z) + φ(z), the integral of Φ: u/(b−a) × (G(z₄) − G(z₃) − G(z₂) + G(z₁)). */
    @Override
    double logChance(double from, double to) {
      return Math.log(sigma / (b - a))
          + Statistics.logSecondDifference(
              (from - b) / sigma, (from - a) / sigma, (to - from) / sigma);
    }
  }
}
