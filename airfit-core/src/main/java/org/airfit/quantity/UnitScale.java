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
 * @param symbol how the unit is printed
 * @param multiplier the top of the factor to the SI unit
 * @param divisor the bottom of that factor
 * @param offset added before scaling, of two decimals at most: 273.15 for °C, 459.67 for °F, otherwise 0 [unit]
 * @param definition the definition of the unit in words
 * @param spellings other ways in which people write the unit
 */
public record UnitScale(
    String symbol,
    double multiplier,
    double divisor,
    double offset,
    String definition,
    List<String> spellings) {

  /** Veltkamp's, for a significand of 53 bits. */
  private static final double SPLIT = 0x1p27 + 1.0;

  private static final double LARGE = 0x1p990;
  private static final double SHRINK = 0x1p100;

  /**
   * Checks the components.
   *
   * @param symbol how the unit is printed
   * @param multiplier the top of the factor to the SI unit
   * @param divisor the bottom of that factor
   * @param offset added before scaling, of two decimals at most: 273.15 for °C, 459.67 for °F, otherwise 0 [unit]
   * @param definition the definition of the unit in words
   * @param spellings other ways in which people write the unit
   * @throws IllegalArgumentException if the factor is not positive and finite, or the offset not finite
   */
  public UnitScale {
    Objects.requireNonNull(symbol, "symbol");
    Objects.requireNonNull(definition, "definition");
    Objects.requireNonNull(spellings, "spellings");
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
    spellings = List.copyOf(spellings);
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

  /** Whether it is the SI unit itself: nothing is to be converted, and nothing rounded. */
  private boolean isSi() {
    return multiplier == 1.0 && divisor == 1.0 && offset == 0.0;
  }

  double toSi(double value) {
    if (isSi()) {
      return value + 0.0; // -0.0 becomes 0.0, as below
    }
    double sum = value + offset;
    if (offset == 0.0 || sum == 0.0 || !Double.isFinite(sum)) {
      // at a sum of 0, who typed -273.15 °C meant absolute zero, not the hair beside it that a
      // double holds
      return scaled(sum, 0.0, multiplier, divisor);
    }
    return scaled(sum, lostBySum(value, offset, sum) + lostByOffset(), multiplier, divisor);
  }

  double fromSi(double si) {
    if (isSi()) {
      return si + 0.0;
    }
    double scaled = scaled(si, 0.0, divisor, multiplier);
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
   * (value + lost) × top / bottom with one rounding: what product and quotient round off is caught exactly and put
   * back.
   */
  private static double scaled(double value, double lost, double top, double bottom) {
    double product = value * top;
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
}
