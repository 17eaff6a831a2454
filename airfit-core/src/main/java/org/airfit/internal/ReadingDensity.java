package org.airfit.internal;

/**
 * What a reading of one size should be if the part were of one kind: spread from part to part, uncertainty of the
 * reading and wear together.
 *
 * <p>Kernel: any unit of length, the same for all; densities are per that unit; no checks. Immutable. Wear takes an
 * amount away that is evenly likely from 0 to w, in the one direction metal can go:
 *
 * <pre>
 *   f(y) = (1/w) ∫₀ʷ f₀(y − s·δ) dδ,   s = −1 where wear shrinks, +1 where it widens, w = 0 where nothing wears
 * </pre>
 *
 * <p>with f₀ the density of the same reading on a new part. The misfit is the distance of the reading from the nearest
 * size that is allowed, wear included, in standard deviations: the kindest reading of the wear.
 */
public abstract class ReadingDensity {

  /** Over so little wear, in standard deviations, a density is even; between its bounds no digits would be left. */
  private static final double NARROW = 1.0e-8;

  /** Sizes from {@code low} to {@code high}, wear included, are no misfit at all. */
  final double low;

  final double high;

  /** Standard deviation of a reading around what is allowed. */
  final double sigma;

  final double wear;
  private final double sign;

  private ReadingDensity(double low, double high, double sigma, double wear, int sign) {
    this.low = sign < 0 ? low - wear : low;
    this.high = sign > 0 ? high + wear : high;
    this.sigma = sigma;
    this.wear = sign == 0 ? 0.0 : wear;
    this.sign = sign;
  }

  /**
   * A part of an even spread between two limits.
   *
   * @param low the lower limit
   * @param high the upper limit
   * @param u standard uncertainty of the reading
   * @param wear the most that wear may have taken away
   * @param sign −1 where wear shrinks the size, 1 where it widens it, 0 where nothing wears
   * @return the density
   */
  public static ReadingDensity within(double low, double high, double u, double wear, int sign) {
    return new Within(low, high, u, wear, sign);
  }

  /**
   * A part of a normal spread around a nominal.
   *
   * @param nominal the nominal
   * @param s standard deviation from part to part
   * @param u standard uncertainty of the reading
   * @param wear the most that wear may have taken away
   * @param sign −1 where wear shrinks the size, 1 where it widens it, 0 where nothing wears
   * @return the density
   */
  public static ReadingDensity normal(double nominal, double s, double u, double wear, int sign) {
    return new Around.Bell(nominal, Math.sqrt(s * s + u * u), wear, sign);
  }

  /**
   * The next part after a sample of measured ones, by Student's t; after Welch and Satterthwaite (GUM G.4) the
   * reading's own uncertainty counts as known.
   *
   * @param mean the mean of the sample
   * @param s predictive scale of the next part
   * @param degreesOfFreedom ν of the sample
   * @param u standard uncertainty of the reading
   * @param wear the most that wear may have taken away
   * @param sign −1 where wear shrinks the size, 1 where it widens it, 0 where nothing wears
   * @return the density
   */
  public static ReadingDensity student(
      double mean, double s, double degreesOfFreedom, double u, double wear, int sign) {
    double sigma = Math.sqrt(s * s + u * u);
    double ratio = sigma / s;
    return new Around.Student(
        mean, sigma, degreesOfFreedom * ratio * ratio * ratio * ratio, wear, sign);
  }

  /**
   * A part that is a copy of another in most sizes: this size is that of the other, or it was changed, by an amount
   * whose density falls off as an exponential on both sides.
   *
   * <pre>
   *   h(y) = (1 − q) f(y) + q g(y),   g(y) = exp(−d/a) / (2a + high − low),   d the distance of y from [low, high]
   * </pre>
   *
   * @param same what a reading of the other should be
   * @param chance q, how often the size was changed
   * @param scale a, by how much on average
   * @return the density of a reading of the copy
   */
  public static ReadingDensity changed(ReadingDensity same, double chance, double scale) {
    return new Changed(same, chance, scale);
  }

  /** {@return the smallest size that is no misfit, wear included} */
  public final double low() {
    return low;
  }

  /** {@return the largest size that is no misfit, wear included} */
  public final double high() {
    return high;
  }

  /** {@return the standard deviation of a reading around what is allowed} */
  public final double sigma() {
    return sigma;
  }

  /** {@return the wear that is allowed for here, 0 where nothing wears} */
  public final double wear() {
    return wear;
  }

  /**
   * Density of a reading.
   *
   * @param y the reading
   * @return ln of its density
   */
  public final double logDensity(double y) {
    if (wear < Math.max(NARROW * sigma, 4.0 * Math.ulp(y))) {
      return logDensityNew(sign < 0 ? y + 0.5 * wear : y - 0.5 * wear);
    }
    double from = sign < 0 ? y : y - wear;
    return logChance(from, from + wear) - Math.log(wear);
  }

  /**
   * Density of a reading, for many that are multiplied: right to the digits of {@link #logDensity}, but 0 where that is
   * below some −700.
   *
   * @param y the reading
   * @return its density
   */
  public final double density(double y) {
    if (wear < Math.max(NARROW * sigma, 4.0 * Math.ulp(y))) {
      return densityNew(sign < 0 ? y + 0.5 * wear : y - 0.5 * wear);
    }
    double from = sign < 0 ? y : y - wear;
    return share(from, from + wear) / wear;
  }

  /** The same for a new part. */
  abstract double densityNew(double y);

  /** The chance that a reading of a new part lies between two bounds. */
  abstract double share(double from, double to);

  /**
   * How fast the density grows away from the real axis, which says how widely it may be stepped along.
   *
   * <pre>
   *   |f(y + iη)| ≤ e^growth f(y),   growth = η²/(2σ²)
   * </pre>
   *
   * <p>for a mixture of normal densities of that σ, shifted at will, as those of limits and wear are.
   *
   * @param square η²
   * @return the growth, at least what it is for any y
   */
  double growth(double square) {
    return 0.5 * square / (sigma * sigma);
  }

  /**
   * By how much the logarithm of the density rises at most towards its middle, per unit of length; 0 where it is
   * concave, which tells more.
   */
  double steepest() {
    return 0.0;
  }

  /**
   * The power p of a density that is a peak times a base to the power of −p, so that the bases of several may be multiplied
   * before the power is taken; 0 of any other.
   */
  double power() {
    return 0.0;
  }

  /** The base of such a density, 1 at its peak. */
  double base(double y) {
    throw new UnsupportedOperationException("a density without a power has no base");
  }

  /** The peak of such a density. */
  double peak() {
    throw new UnsupportedOperationException("a density without a power has no such peak");
  }

  /** How strongly a reading at a distance from what is allowed is drawn to it: minus the slope of ln f over the distance. */
  double stiffness(double distance) {
    return 1.0 / (sigma * sigma);
  }

  /** How far below its peak the density is at a distance from what is allowed [σ], twice in logarithms, roughly. */
  double drop(double sigmas) {
    return sigmas * sigmas;
  }

  /**
   * Density of a reading of a size that was changed by an amount that falls off as an exponential on both sides.
   *
   * <pre>
   *   g(y) = exp(−d/a) / (2a + high − low)
   * </pre>
   *
   * @param y the reading
   * @param scale a, by how much on average
   * @return the density
   */
  public final double densityIfChanged(double y, double scale) {
    double beyond = Math.max(0.0, Math.max(low - y, y - high));
    return Math.exp(-beyond / scale) / (2.0 * scale + high - low);
  }

  /** The same for a new part. */
  abstract double logDensityNew(double y);

  /** {@return whether the density is that of the normal distribution, nothing worn} */
  public boolean isNormal() {
    return false;
  }

  /** ln of the chance that a reading of a new part lies between two bounds. */
  abstract double logChance(double from, double to);

  /**
   * How far a reading lies from what is allowed.
   *
   * @param y the reading
   * @return the distance in standard deviations, signed
   */
  public double misfit(double y) {
    return (y < low ? y - low : y > high ? y - high : 0.0) / sigma;
  }

  /**
   * How far beyond what is allowed a reading goes with a given chance on each side.
   *
   * @param tail the chance, in (0, 0.5]
   * @return the distance
   */
  public double margin(double tail) {
    return sigma * Statistics.normalScore(tail);
  }

  /** {@return the distance from what is allowed beyond which the density counts for nothing in an integral} */
  public double reach() {
    return 6.1 * sigma;
  }

  /** Spread around one nominal. */
  private abstract static class Around extends ReadingDensity {

    final double nominal;

    Around(double nominal, double sigma, double wear, int sign) {
      super(nominal, nominal, sigma, wear, sign);
      this.nominal = nominal;
    }

    private static final class Bell extends Around {

      private final double logPeak;
      private final double peak;

      Bell(double nominal, double sigma, double wear, int sign) {
        super(nominal, sigma, wear, sign);
        this.logPeak = -Math.log(sigma) - Statistics.LN_SQRT_TWO_PI;
        this.peak = Math.exp(logPeak);
      }

      @Override
      public boolean isNormal() {
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

      @Override
      double densityNew(double y) {
        double z = (y - nominal) / sigma;
        return peak * Math.exp(-0.5 * z * z);
      }

      @Override
      double share(double from, double to) {
        return Statistics.normalShare((from - nominal) / sigma, (to - nominal) / sigma);
      }
    }

    private static final class Student extends Around {

      /** A tail below this is no tail of any part; an approximation serves there, before the exact tail underflows. */
      private static final double NO_TAIL = 1.0e-200;

      /** So near the pole of the density no bound of its growth is asked for. */
      private static final double POLE = 0.95;

      /** From so many degrees of freedom on, 1 + t²/ν would lose the digits of t²/ν. */
      private static final double MANY = 1.0e4;

      private static final int MOST_PANELS = 6;

      private final double degreesOfFreedom;
      private final double logPeak;
      private final double peak;
      private final double steepest;

      Student(double nominal, double sigma, double degreesOfFreedom, double wear, int sign) {
        super(nominal, sigma, wear, sign);
        this.degreesOfFreedom = degreesOfFreedom;
        this.logPeak = Statistics.logStudentDensity(0.0, degreesOfFreedom) - Math.log(sigma);
        this.peak = Math.exp(logPeak);
        this.steepest = 0.5 * (degreesOfFreedom + 1.0) / (Math.sqrt(degreesOfFreedom) * sigma);
      }

      /** Where t² = ν. */
      @Override
      double steepest() {
        return steepest;
      }

      @Override
      double power() {
        return wear == 0.0 && degreesOfFreedom < MANY ? 0.5 * (degreesOfFreedom + 1.0) : 0.0;
      }

      @Override
      double base(double y) {
        double t = (y - nominal) / sigma;
        return 1.0 + t * t / degreesOfFreedom;
      }

      @Override
      double peak() {
        return peak;
      }

      @Override
      double stiffness(double distance) {
        return (degreesOfFreedom + 1.0) / (degreesOfFreedom * sigma * sigma + distance * distance);
      }

      @Override
      double drop(double sigmas) {
        return (degreesOfFreedom + 1.0) * Math.log1p(sigmas * sigmas / degreesOfFreedom);
      }

      /** As a bell is the normal one: never above −(ν + 1)/2 ln(1 − v), v = η²/(νσ²), with v + v²/(2 (1 − v)) for −ln. */
      @Override
      double growth(double square) {
        double v = square / (degreesOfFreedom * sigma * sigma);
        return v < POLE
            ? 0.5 * (degreesOfFreedom + 1.0) * (v + 0.5 * v * v / (1.0 - v))
            : Double.POSITIVE_INFINITY;
      }

      @Override
      double densityNew(double y) {
        return peak * shape((y - nominal) / sigma);
      }

      /**
       * By Gauss's rule on panels so narrow that ten points give ten digits: within half the distance of the pole, and
       * over which the density changes by e⁸ at most. What is as wide as many panels is the difference of two tails.
       */
      @Override
      double share(double from, double to) {
        double low = (from - nominal) / sigma;
        double high = (to - nominal) / sigma;
        double root = Math.sqrt(degreesOfFreedom);
        double near = low < 0.0 && high > 0.0 ? 0.0 : Math.min(Math.abs(low), Math.abs(high));
        double far = Math.max(Math.abs(low), Math.abs(high));
        double at = Math.max(near, Math.min(far, root)); // where the logarithm is steepest
        double steepest = (degreesOfFreedom + 1.0) * at / (degreesOfFreedom + at * at);
        double half = Math.min(Math.min(1.25, 0.5 * root), 4.0 / steepest);
        double panels = Math.ceil((high - low) / (2.0 * half));
        if (panels > MOST_PANELS) {
          return Math.exp(Statistics.logStudentBetween(low, high, degreesOfFreedom));
        }
        half = 0.5 * (high - low) / panels;
        double sum = 0.0;
        for (int panel = 0; panel < panels; panel++) {
          double middle = low + (2 * panel + 1) * half;
          for (int i = 0; i < Quadrature.TEN_POINTS.length; i++) {
            double away = Quadrature.TEN_POINTS[i] * half;
            sum += Quadrature.TEN_WEIGHTS[i] * (shape(middle - away) + shape(middle + away));
          }
        }
        return half * sigma * peak * sum;
      }

      /** The density over that at its middle. */
      private double shape(double t) {
        double x = t * t / degreesOfFreedom;
        double log = degreesOfFreedom < MANY ? Math.log(1.0 + x) : Math.log1p(x);
        return Math.exp(-0.5 * (degreesOfFreedom + 1.0) * log);
      }

      @Override
      double logDensityNew(double y) {
        double t = (y - nominal) / sigma;
        return logPeak - 0.5 * (degreesOfFreedom + 1.0) * Math.log1p(t * t / degreesOfFreedom);
      }

      @Override
      double logChance(double from, double to) {
        double share = share(from, to);
        return share > NO_TAIL
            ? Math.log(share)
            : Statistics.logStudentBetween(
                (from - nominal) / sigma, (to - nominal) / sigma, degreesOfFreedom);
      }

      /** The normal score with the same tail, so that chi-square stays a chi-square. */
      @Override
      public double misfit(double y) {
        double t = super.misfit(y);
        double tail = Statistics.studentAbove(Math.abs(t), degreesOfFreedom);
        double score = tail > NO_TAIL
            ? Statistics.normalScore(tail)
            : Math.sqrt(
                degreesOfFreedom * Math.log1p(t * t / degreesOfFreedom)); // after Wallace (1959)
        return Math.copySign(score, t);
      }

      @Override
      public double margin(double tail) {
        return sigma * Statistics.studentScore(tail, degreesOfFreedom);
      }

      /**
       * Where the density is a hundred-millionth of its peak, as that of a normal one is at six; its tails are longer.
       */
      @Override
      public double reach() {
        double power = Math.pow(1.0e-8, -2.0 / (degreesOfFreedom + 1.0));
        return sigma * Math.min(40.0, Math.sqrt(degreesOfFreedom * (power - 1.0)));
      }
    }
  }

  /** Even spread between two limits. */
  private static final class Within extends ReadingDensity {

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

    @Override
    double densityNew(double y) {
      return Statistics.normalShare((y - b) / sigma, (y - a) / sigma) / (b - a);
    }

    @Override
    double share(double from, double to) {
      return sigma
          / (b - a)
          * Statistics.secondDifference(
              (from - b) / sigma, (from - a) / sigma, (to - from) / sigma);
    }
  }

  /** As another, or changed. */
  private static final class Changed extends ReadingDensity {

    private final ReadingDensity same;
    private final double chance;
    private final double scale;

    Changed(ReadingDensity same, double chance, double scale) {
      super(same.low, same.high, same.sigma, 0.0, 0);
      this.same = same;
      this.chance = chance;
      this.scale = scale;
    }

    @Override
    double logDensityNew(double y) {
      return Math.log(
          (1.0 - chance) * Math.exp(same.logDensity(y)) + chance * same.densityIfChanged(y, scale));
    }

    @Override
    double densityNew(double y) {
      return (1.0 - chance) * same.density(y) + chance * same.densityIfChanged(y, scale);
    }

    /** Asked for by wear only, which the other has in it. */
    @Override
    double share(double from, double to) {
      throw new UnsupportedOperationException("the wear of a copy is in what it is a copy of");
    }

    /** Asked for by wear only, which the other has in it. */
    @Override
    double logChance(double from, double to) {
      throw new UnsupportedOperationException("the wear of a copy is in what it is a copy of");
    }

    /** Where an exponential has lost all but one part in a hundred and fifty. */
    @Override
    public double reach() {
      return same.reach() + 5.0 * scale;
    }
  }
}
