package org.airfit.working;

/**
 * All numbers from one to another, both ends among them: what a step of a card may come to. Every operation encloses
 * the exact results of all numbers of its operands: its ends are moved outward by more than a double rounds (R. E.
 * Moore, <cite>Interval Analysis</cite>, 1966, from memory). Where some of them have no result, such as the root of a
 * negative number, there is no interval: both ends are NaN.
 *
 * @param lo the least
 * @param hi the largest
 */
record Interval(double lo, double hi) {

  /** No interval: not all numbers have a result. */
  static final Interval NONE = new Interval(Double.NaN, Double.NaN);

  /** At least a last place of a double, and less than two [-]: a sum, product, quotient or root rounds by half. */
  private static final double ROUNDING = 0x1.0p-52;

  /** More than any platform's logarithm, exponential, power or tangent is off [-]; a browser's are some places off. */
  private static final double OF_FUNCTIONS = 1.0e-14;

  /** One number. */
  static Interval of(double value) {
    return new Interval(value, value);
  }

  /** A number as it is printed, which a double need not hold exactly. */
  static Interval ofPrinted(double value) {
    return outward(value, value, ROUNDING);
  }

  /** Whether every number of the operands has a result, none beyond a double. */
  boolean isThere() {
    return Double.isFinite(lo) && Double.isFinite(hi);
  }

  boolean holds(double value) {
    return value >= lo && value <= hi;
  }

  double width() {
    return hi - lo;
  }

  /** The least interval that holds both. */
  Interval with(Interval other) {
    if (!isThere() || !other.isThere()) {
      return NONE;
    }
    return new Interval(Math.min(lo, other.lo), Math.max(hi, other.hi));
  }

  /** This with both ends moved outward. */
  Interval widened(double by) {
    return outward(lo - by, hi + by, ROUNDING);
  }

  private static Interval outward(double lo, double hi, double part) {
    if (!(Double.isFinite(lo) && Double.isFinite(hi))) {
      return NONE;
    }
    return new Interval(
        lo - Math.abs(lo) * part - Double.MIN_NORMAL, hi + Math.abs(hi) * part + Double.MIN_NORMAL);
  }

  private static Interval outward(double lo, double hi) {
    return outward(lo, hi, ROUNDING);
  }

  Interval plus(Interval other) {
    return outward(lo + other.lo, hi + other.hi);
  }

  Interval minus(Interval other) {
    return outward(lo - other.hi, hi - other.lo);
  }

  Interval negative() {
    return new Interval(-hi, -lo);
  }

  Interval times(Interval other) {
    return hull(lo * other.lo, lo * other.hi, hi * other.lo, hi * other.hi, ROUNDING);
  }

  /** No interval where the divisor may be 0. */
  Interval over(Interval other) {
    if (!(other.lo > 0.0 || other.hi < 0.0)) {
      return NONE;
    }
    return hull(lo / other.lo, lo / other.hi, hi / other.lo, hi / other.hi, ROUNDING);
  }

  private static Interval hull(double a, double b, double c, double d, double part) {
    return outward(
        Math.min(Math.min(a, b), Math.min(c, d)), Math.max(Math.max(a, b), Math.max(c, d)), part);
  }

  /** A whole power from 1 up: an even one falls below 0 and rises above it, an odd one rises. */
  Interval power(int exponent) {
    double low = Math.pow(lo, exponent);
    double high = Math.pow(hi, exponent);
    if (exponent % 2 != 0) {
      return outward(low, high, OF_FUNCTIONS);
    }
    double least = lo <= 0.0 && hi >= 0.0 ? 0.0 : Math.min(low, high);
    Interval squared = outward(least, Math.max(low, high), OF_FUNCTIONS);
    return squared.isThere() ? new Interval(Math.max(0.0, squared.lo), squared.hi) : NONE;
  }

  /**
   * Any power of a base above 0: y ln x is linear in y and in ln x, so that its ends lie at corners. Of other bases, a
   * whole power.
   */
  Interval power(Interval exponent) {
    boolean whole = exponent.lo == exponent.hi
        && exponent.lo == Math.rint(exponent.lo)
        && Math.abs(exponent.lo) <= 100.0;
    if (whole && exponent.lo >= 1.0) {
      return power((int) exponent.lo);
    }
    if (lo > 0.0) {
      return hull(
          Math.pow(lo, exponent.lo),
          Math.pow(lo, exponent.hi),
          Math.pow(hi, exponent.lo),
          Math.pow(hi, exponent.hi),
          OF_FUNCTIONS);
    }
    if (lo == 0.0 && exponent.lo > 0.0) {
      double most = Math.max(Math.pow(hi, exponent.lo), Math.pow(hi, exponent.hi));
      Interval above = outward(0.0, most, OF_FUNCTIONS);
      return above.isThere() ? new Interval(0.0, above.hi) : NONE;
    }
    return whole && exponent.lo < 0.0 ? of(1.0).over(power((int) -exponent.lo)) : NONE;
  }

  /** Rises; no interval where a number is below 0. */
  Interval root() {
    if (!(lo >= 0.0)) {
      return NONE;
    }
    Interval root = outward(Math.sqrt(lo), Math.sqrt(hi));
    return new Interval(Math.max(0.0, root.lo), root.hi);
  }

  /** Rises; no interval where a number is not above 0. */
  Interval ln() {
    return lo > 0.0 ? outward(Math.log(lo), Math.log(hi), OF_FUNCTIONS) : NONE;
  }

  /** Rises; no interval where a number is not above 0. */
  Interval log10() {
    return lo > 0.0 ? outward(Math.log10(lo), Math.log10(hi), OF_FUNCTIONS) : NONE;
  }

  /** Rises. */
  Interval exp() {
    return outward(Math.exp(lo), Math.exp(hi), OF_FUNCTIONS);
  }

  /** Of degrees: rises between −90° and 90°; no interval beyond. */
  Interval tan() {
    return lo > -90.0 && hi < 90.0
        ? outward(Math.tan(Math.toRadians(lo)), Math.tan(Math.toRadians(hi)), OF_FUNCTIONS)
        : NONE;
  }

  @Override
  public String toString() {
    return "[" + lo + ", " + hi + "]";
  }
}
