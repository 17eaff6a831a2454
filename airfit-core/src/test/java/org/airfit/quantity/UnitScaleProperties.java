package org.airfit.quantity;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Objects;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

/** The product of halves against the machine's fused multiply-add: the same bits. */
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
