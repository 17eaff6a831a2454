package org.airfit.quantity;

import java.util.List;
import java.util.Objects;

/**
 * How a unit stands to the SI unit of its quantity.
 *
 * <pre>
 *   si = (value + offset) × multiplier / divisor
 * </pre>
 *
 * <p>The factor is held as the fraction of its definition, so that it is exact, and a conversion rounds once: it gives
 * the double nearest to the true value, so that 3/8 in is 9.525 mm and 212 °F is 100 °C. The one factor too long for a
 * fraction of doubles, that of the horsepower of 550 ft·lbf/s, is the nearest double. There and back returns within 2
 * ulp of the value in the SI unit, as long as neither overflows nor falls below the normal range of a double; for the
 * temperatures with an offset, from 170 K up.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class UnitScale {

  /** Veltkamp's, for a significand of 53 bits. */
  private static final double SPLIT = 0x1p27 + 1.0;

  private static final double LARGE = 0x1p990;
  private static final double SHRINK = 0x1p100;

  private final String symbol;
  private final double multiplier;
  private final double divisor;
  private final double offset;
  private final String definition;
  private final List<String> spellings;
  private final Factor up;
  private final Factor down;

  /**
   * Obtains a scale.
   *
   * @param symbol how the unit is printed
   * @param multiplier the top of the factor to the SI unit
   * @param divisor the bottom of that factor
   * @param offset added before scaling, of two decimals at most: 273.15 for °C, 459.67 for °F, otherwise 0 [unit]
   * @param definition the definition of the unit in words
   * @param spellings other ways in which people write the unit
   * @throws IllegalArgumentException if the factor is not positive and finite, or the offset not finite
   */
  public UnitScale(
      String symbol,
      double multiplier,
      double divisor,
      double offset,
      String definition,
      List<String> spellings) {
    this.symbol = Objects.requireNonNull(symbol, "symbol");
    this.definition = Objects.requireNonNull(definition, "definition");
    this.spellings = List.copyOf(Objects.requireNonNull(spellings, "spellings"));
    if (!(multiplier > 0.0
        && multiplier <= Double.MAX_VALUE
        && divisor > 0.0
        && divisor <= Double.MAX_VALUE)) {
      throw new IllegalArgumentException("multiplier and divisor must be positive and finite, were "
          + multiplier + " and " + divisor);
    }
    if (!(Double.isFinite(offset) && Math.rint(100.0 * offset) / 100.0 == offset)) {
      throw new IllegalArgumentException(
          "offset must be finite, of two decimals at most, was " + offset + " " + symbol);
    }
    this.multiplier = multiplier;
    this.divisor = divisor;
    this.offset = offset;
    this.up = new Factor(multiplier, divisor);
    this.down = new Factor(divisor, multiplier);
  }

  static UnitScale of(
      String symbol,
      double multiplier,
      double divisor,
      double offset,
      String definition,
      String... spellings) {
    return new UnitScale(symbol, multiplier, divisor, offset, definition, List.of(spellings));
  }

  /** {@return how the unit is printed} */
  public String symbol() {
    return symbol;
  }

  /** {@return the top of the factor to the SI unit} */
  public double multiplier() {
    return multiplier;
  }

  /** {@return the bottom of that factor} */
  public double divisor() {
    return divisor;
  }

  /** {@return what is added before scaling [unit]} */
  public double offset() {
    return offset;
  }

  /** {@return the definition of the unit in words} */
  public String definition() {
    return definition;
  }

  /** {@return other ways in which people write the unit} */
  public List<String> spellings() {
    return spellings;
  }

  double toSi(double value) {
    double sum = value + offset;
    if (offset == 0.0 || sum == 0.0 || !Double.isFinite(sum)) {
      // at a sum of 0, who typed -273.15 °C meant absolute zero, not the hair beside it that a
      // double holds
      return up.times(sum);
    }
    return scaled(sum, lostBySum(value, offset, sum) + lostByOffset(), multiplier, divisor);
  }

  double fromSi(double si) {
    double scaled = down.times(si);
    if (offset == 0.0) {
      return scaled;
    }
    double value = scaled - offset;
    double round = Math.rint(value * 1.0e9) / 1.0e9;
    // several values stand for one SI value, as the offset took their last digits: the roundest is
    // what was typed
    return toSi(round) == si ? round : value;
  }

  /**
   * A factor top / bottom, as the sum of two doubles: with the second it is known to 106 bits.
   *
   * <pre>
   *   v F = p + t,   p = fl(v F₁),   t = fl((v F₁ − p) + fl(v F₂)),   |error of p + t| ≤ 2⁻¹⁰⁴ |p|
   * </pre>
   *
   * <p>F₁ is within 2⁻⁵³ of F, F₂ within 2⁻⁵³ of what that lacks; v F₁ − p is exact; the product with F₂, the sum t, and
   * what F₁ + F₂ lacks are out by 2⁻¹⁰⁶ + 2⁻¹⁰⁵ + 2⁻¹⁰⁶ of p. Where p + t rounds to one double from a little below and
   * from a little above, this double is nearest to the true value, which lies between (the rounding test of A. Ziv, ACM
   * Trans. Math. Softw. 17, 1991, 410-423). Elsewhere, which is next to the middle between two doubles only, and for
   * values so large or small that their halves might not be doubles, the long way decides.
   */
  private static final class Factor {

    /** More than t is out by, and than is rounded off when it is added to t [-]. */
    private static final double DOUBT = 0x1p-102;

    private static final double SMALLEST = 0x1p-400;
    private static final double LARGEST = 0x1p400;

    private final double top;
    private final double bottom;

    /** Whether one multiplication or division is all, which rounds once by itself. */
    private final boolean isSimple;

    /** F₁, of which the halves have 26 bits each; NaN where the long way is the only one. */
    private final double first;

    private final double firstHigh;
    private final double firstLow;
    private final double second;

    Factor(double top, double bottom) {
      this.top = top;
      this.bottom = bottom;
      this.isSimple = top == 1.0 || bottom == 1.0;
      double factor = top / bottom;
      boolean isMiddling = isMiddling(top) && isMiddling(bottom) && isMiddling(factor);
      this.first = isMiddling ? factor : Double.NaN;
      this.firstHigh = highHalf(first);
      this.firstLow = first - firstHigh;
      double back = first * bottom;
      this.second = ((top - back) - lostByProduct(first, bottom, back)) / bottom;
    }

    private static boolean isMiddling(double value) {
      double size = Math.abs(value);
      return size >= SMALLEST && size <= LARGEST;
    }

    /** The double nearest to value × top / bottom. */
    double times(double value) {
      if (isSimple || !isMiddling(value)) {
        return scaled(value, 0.0, top, bottom);
      }
      double product = value * first;
      double high = highHalf(value);
      double low = value - high;
      double lost =
          ((high * firstHigh - product) + high * firstLow + low * firstHigh) + low * firstLow;
      double rest = lost + value * second;
      double doubt = product * DOUBT;
      double one = product + (rest - doubt);
      return one == product + (rest + doubt) ? one : scaled(value, 0.0, top, bottom);
    }
  }

  /**
   * (value + lost) × top / bottom with one rounding: what product and quotient round off is caught exactly and put
   * back. Where only one of the two is left to do, it rounds once by itself.
   */
  private static double scaled(double value, double lost, double top, double bottom) {
    double product = value * top;
    if (bottom == 1.0 && lost == 0.0) {
      return product;
    }
    if (top == 1.0 && lost == 0.0) {
      return value / bottom;
    }
    if (!Double.isFinite(product)) {
      return value / bottom * top;
    }
    double lostByProduct = lostByProduct(value, top, product);
    double quotient = product / bottom;
    double back = quotient * bottom;
    double lostByQuotient = (product - back) - lostByProduct(quotient, bottom, back);
    return quotient + (lostByQuotient + lostByProduct + lost * top) / bottom;
  }

  /**
   * What rounding took from one × other, exactly, as long as it does not fall below the normal range: Dekker's
   * product of halves that Veltkamp's split makes (T. J. Dekker, Numerische Mathematik 18, 1971, 224-242). A fused
   * multiply-add would give the same, but not every place where this runs has one.
   */
  static double lostByProduct(double one, double other, double product) {
    if (Math.abs(product) > LARGE || Math.abs(one) > LARGE || Math.abs(other) > LARGE) {
      // the split would overflow: the larger factor is made smaller by a power of two, which rounds
      // nothing
      boolean isOneLarger = Math.abs(one) > Math.abs(other);
      return lostByProduct(
              isOneLarger ? one / SHRINK : one,
              isOneLarger ? other : other / SHRINK,
              product / SHRINK)
          * SHRINK;
    }
    double oneHigh = highHalf(one);
    double oneLow = one - oneHigh;
    double otherHigh = highHalf(other);
    double otherLow = other - otherHigh;
    return ((oneHigh * otherHigh - product) + oneHigh * otherLow + oneLow * otherHigh)
        + oneLow * otherLow;
  }

  private static double highHalf(double value) {
    double shifted = SPLIT * value;
    return shifted - (shifted - value);
  }

  /** What rounding took from one + other, exactly (Knuth's two-sum). */
  private static double lostBySum(double one, double other, double sum) {
    double part = sum - one;
    return (one - (sum - part)) + (other - part);
  }

  /** By how much the offset, a decimal of two places, lies above the double that holds it. */
  private double lostByOffset() {
    double hundredths = 100.0 * offset;
    double above = hundredths - Math.rint(hundredths) + lostByProduct(offset, 100.0, hundredths);
    return -above / 100.0;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof UnitScale that
        && symbol.equals(that.symbol)
        && multiplier == that.multiplier
        && divisor == that.divisor
        && offset == that.offset
        && definition.equals(that.definition)
        && spellings.equals(that.spellings);
  }

  @Override
  public int hashCode() {
    return Objects.hash(symbol, multiplier, divisor, offset, definition, spellings);
  }

  /** {@return the symbol and the definition, such as "bar: 100 000 Pa exactly"} */
  @Override
  public String toString() {
    return symbol + ": " + definition;
  }
}
