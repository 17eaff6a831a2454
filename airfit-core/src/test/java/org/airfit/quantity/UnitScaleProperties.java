package org.airfit.quantity;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Objects;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.api.Test;

/** Conversions against whole numbers of any length, and the product of halves against a fused multiply-add. */
class UnitScaleProperties {

  /** Below this the error itself would fall out of the normal range. */
  private static final double LEAST = 0x1p-900;

  @Property(tries = 20_000)
  void what_a_product_loses_is_what_a_fused_multiply_add_finds(
      @ForAll @DoubleRange(min = 1.0, max = 2.0) double one,
      @ForAll @IntRange(min = -1020, max = 1023) int exponentOfOne,
      @ForAll @DoubleRange(min = -2.0, max = -1.0) double other,
      @ForAll @IntRange(min = -1020, max = 1023) int exponentOfOther) {
    double left = Math.scalb(one, exponentOfOne - (one == 2.0 ? 1 : 0));
    double right = Math.scalb(other, exponentOfOther - (other == -2.0 ? 1 : 0));
    double product = left * right;
    Assume.that(Double.isFinite(product) && Math.abs(product) > LEAST);
    assertThat(UnitScale.lostByProduct(left, right, product))
        .as("%s × %s", left, right)
        .isEqualTo(Math.fma(left, right, -product));
  }

  /** Every unit there is, in both directions, from what a workshop holds to the ends of what a double holds. */
  @Property(tries = 2000)
  void a_conversion_gives_the_bits_of_one_with_a_fused_multiply_add(
      @ForAll @DoubleRange(min = -10.0, max = 10.0) double value,
      @ForAll @IntRange(min = -250, max = 300) int decade) {
    double scaled = value * Math.pow(10.0, decade);
    Assume.that(Math.abs(scaled) > 1.0e-250 || scaled == 0.0);
    for (Class<?> units : Objects.requireNonNull(Unit.class.getPermittedSubclasses())) {
      for (Object constant : Objects.requireNonNull(units.getEnumConstants())) {
        Unit unit = (Unit) constant;
        assertThat(unit.toSi(scaled))
            .as("%s %s", scaled, unit)
            .isEqualTo(toSi(unit.scale(), scaled));
        if (unit.scale().offset() == 0.0) {
          assertThat(unit.fromSi(scaled))
              .as("%s in %s", scaled, unit)
              .isEqualTo(
                  scaled(scaled, 0.0, unit.scale().divisor(), unit.scale().multiplier()));
        }
      }
    }
  }

  /** By whole numbers of any length: no double of the same size is nearer, and of two as near it is the even one. */
  @Property(tries = 300)
  void a_conversion_gives_the_double_nearest_to_the_fraction(
      @ForAll @DoubleRange(min = -10.0, max = 10.0) double value,
      @ForAll @IntRange(min = -240, max = 290) int decade) {
    double scaled = value * Math.pow(10.0, decade);
    for (Class<?> units : Objects.requireNonNull(Unit.class.getPermittedSubclasses())) {
      for (Object constant : Objects.requireNonNull(units.getEnumConstants())) {
        UnitScale scale = ((Unit) constant).scale();
        if (scale.offset() == 0.0) {
          assertNearest(scale.toSi(scaled), scaled, scale.multiplier(), scale.divisor());
          assertNearest(scale.fromSi(scaled), scaled, scale.divisor(), scale.multiplier());
        }
      }
    }
  }

  /** Where the true value lies in the middle between two doubles, or a hair beside it. */
  @Property(tries = 2000)
  void of_two_doubles_that_are_as_near_a_conversion_gives_the_even_one(
      @ForAll @LongRange(min = 1L << 52, max = (1L << 53) - 1L) long whole,
      @ForAll @IntRange(min = -300, max = 300) int exponent) {
    double value = Math.scalb((double) whole, exponent);
    double[][] fractions = {
      {3.0, 2.0}, {5.0, 4.0}, {9.0, 8.0}, {7.0, 2.0}, {3.0, 7.0}, {1025.0, 1024.0}
    };
    for (double[] fraction : fractions) {
      UnitScale scale = new UnitScale("x", fraction[0], fraction[1], 0.0, "a fraction", List.of());
      assertNearest(scale.toSi(value), value, fraction[0], fraction[1]);
      assertNearest(scale.fromSi(value), value, fraction[1], fraction[0]);
    }
  }

  /** Where the product overflows it is divided first, which rounds twice; below the normal range digits are missing. */
  @Property(tries = 500)
  void next_to_the_ends_of_the_range_a_conversion_is_within_two_last_digits(
      @ForAll @DoubleRange(min = 1.0, max = 10.0) double value,
      @ForAll @IntRange(min = 0, max = 30) int step,
      @ForAll boolean isLarge) {
    double scaled = value * Math.pow(10.0, isLarge ? 270.0 + step : -323.0 + step);
    Assume.that(Double.isFinite(scaled));
    for (PressureUnit unit : PressureUnit.values()) {
      BigDecimal exact = new BigDecimal(scaled)
          .multiply(new BigDecimal(unit.scale().multiplier()))
          .divide(new BigDecimal(unit.scale().divisor()), new MathContext(60));
      double found = unit.toSi(scaled);
      if (exact.compareTo(new BigDecimal(Double.MAX_VALUE)) < 0) {
        assertThat(new BigDecimal(found).subtract(exact).abs())
            .as("%s %s", scaled, unit)
            .isLessThanOrEqualTo(new BigDecimal(2.0).multiply(new BigDecimal(Math.ulp(found))));
      }
    }
  }

  private static void assertNearest(double found, double value, double top, double bottom) {
    BigDecimal exact = new BigDecimal(value).multiply(new BigDecimal(top));
    BigDecimal off = distance(found, exact, bottom);
    boolean isEven = (Double.doubleToRawLongBits(found) & 1L) == 0L;
    for (double beside : new double[] {Math.nextUp(found), Math.nextDown(found)}) {
      int nearer = off.compareTo(distance(beside, exact, bottom));
      assertThat(nearer < 0 || (nearer == 0 && isEven))
          .as("%s × %s / %s is %s and not %s", value, top, bottom, found, beside)
          .isTrue();
    }
  }

  /** How far a double is from a fraction, times its bottom. */
  private static BigDecimal distance(double found, BigDecimal exact, double bottom) {
    return new BigDecimal(found)
        .multiply(new BigDecimal(bottom))
        .subtract(exact)
        .abs();
  }

  @Test
  void the_ends_of_the_range_lose_nothing_to_an_overflow() {
    assertThat(UnitScale.lostByProduct(Double.MAX_VALUE, 1.0, Double.MAX_VALUE)).isZero();
    assertThat(UnitScale.lostByProduct(1.0, -Double.MAX_VALUE, -Double.MAX_VALUE))
        .isZero();
    double nearlyAll = Math.nextDown(Double.MAX_VALUE) / 3.0;
    assertThat(UnitScale.lostByProduct(nearlyAll, 2.9, nearlyAll * 2.9))
        .isEqualTo(Math.fma(nearlyAll, 2.9, -(nearlyAll * 2.9)));
  }

  private static double toSi(UnitScale scale, double value) {
    double sum = value + scale.offset();
    if (scale.offset() == 0.0 || sum == 0.0 || !Double.isFinite(sum)) {
      return scaled(sum, 0.0, scale.multiplier(), scale.divisor());
    }
    double part = sum - value;
    double lostBySum = (value - (sum - part)) + (scale.offset() - part);
    double lostByOffset =
        -Math.fma(scale.offset(), 100.0, -Math.rint(100.0 * scale.offset())) / 100.0;
    return scaled(sum, lostBySum + lostByOffset, scale.multiplier(), scale.divisor());
  }

  private static double scaled(double value, double lost, double top, double bottom) {
    double product = value * top;
    if (!Double.isFinite(product)) {
      return value / bottom * top;
    }
    double quotient = product / bottom;
    return quotient
        + (Math.fma(-quotient, bottom, product) + Math.fma(value, top, -product) + lost * top)
            / bottom;
  }
}
