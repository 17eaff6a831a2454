package org.airfit.internal;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;

/** Laws of the digits printed, over every finite double. */
class DigitsProperties {

  /** Evenly over the bits, so that every magnitude comes up. */
  @Provide
  Arbitrary<Double> finite() {
    return Arbitraries.longs().map(Double::longBitsToDouble).filter(Double::isFinite);
  }

  @Property
  void a_plain_number_reads_back_exactly(@ForAll("finite") double value) {
    assertThat(Double.parseDouble(Digits.plain(value))).isEqualTo(value + 0.0);
  }

  @Property
  void a_plain_number_has_no_digit_to_spare(@ForAll("finite") double value) {
    BigDecimal printed = new BigDecimal(Digits.plain(value)).stripTrailingZeros();
    for (int digits = printed.precision() - 1; digits >= 1; digits--) {
      BigDecimal shorter =
          new BigDecimal(value).round(new MathContext(digits, RoundingMode.HALF_EVEN));
      assertThat(shorter.doubleValue()).isNotEqualTo(value);
    }
  }

  @Property
  void seventeen_digits_read_back_exactly(@ForAll("finite") double value) {
    assertThat(Double.parseDouble(Digits.significant(value, 17))).isEqualTo(value + 0.0);
  }

  /** Half a unit of the last digit asked for is what correct rounding leaves. */
  @Property
  void significant_digits_lie_within_half_of_the_last_one(
      @ForAll("finite") double signed, @ForAll @IntRange(min = 1, max = 17) int digits) {
    double value = Math.abs(signed);
    BigDecimal exact = new BigDecimal(value);
    BigDecimal unit = BigDecimal.ONE.scaleByPowerOfTen(exact.precision() - exact.scale() - digits);
    assertThat(new BigDecimal(Digits.significant(value, digits)).subtract(exact).abs())
        .isLessThanOrEqualTo(unit.multiply(new BigDecimal("0.5")));
  }

  @Property
  void a_larger_number_never_prints_smaller(
      @ForAll @DoubleRange(min = -1.0e10, max = 1.0e10) double one,
      @ForAll @DoubleRange(min = -1.0e10, max = 1.0e10) double other,
      @ForAll @IntRange(min = 1, max = 17) int digits) {
    double smaller = Math.min(one, other);
    double larger = Math.max(one, other);
    assertThat(Double.parseDouble(Digits.significant(smaller, digits)))
        .isLessThanOrEqualTo(Double.parseDouble(Digits.significant(larger, digits)));
  }

  @Property
  void the_sign_is_kept_and_nothing_else_changes(
      @ForAll("finite") double signed, @ForAll @IntRange(min = 1, max = 17) int digits) {
    double value = Math.abs(signed);
    Assume.that(value > 0.0);
    assertThat(Digits.significant(-value, digits))
        .isEqualTo("-" + Digits.significant(value, digits));
    assertThat(Digits.plain(-value)).isEqualTo("-" + Digits.plain(value));
  }

  /** Numbers as sheets have them: near the middle of two that are printed, and on it, more often than chance has it. */
  @Provide
  Arbitrary<Double> common() {
    Arbitrary<Double> anywhere =
        Arbitraries.doubles().between(-4.0, 9.2).map(exponent -> Math.pow(10.0, exponent));
    Arbitrary<Double> middles = Arbitraries.integers()
        .between(0, 10_000_000)
        .flatMap(whole ->
            Arbitraries.of(2.0, 8.0, 20.0, 2000.0, 2.0e7, 1.0e4).map(part -> whole / part));
    Arbitrary<Double> beside = middles.flatMap(middle -> Arbitraries.of(
        middle, Math.nextUp(middle), Math.nextDown(Math.max(middle, Double.MIN_VALUE))));
    return Arbitraries.oneOf(anywhere, beside);
  }

  /** The rounding of {@link BigDecimal}, half to even, of the exact value of the double. */
  @Property(tries = 20_000)
  void common_numbers_are_rounded_half_to_even(
      @ForAll("common") double value, @ForAll @IntRange(min = 1, max = 17) int digits) {
    BigDecimal exact = new BigDecimal(value);
    int decimals = Math.min(digits - 1, 15);
    assertThat(Digits.fixed(value, decimals))
        .isEqualTo(exact.setScale(decimals, RoundingMode.HALF_EVEN).toPlainString());
    if (value >= 1.0e-4 && value < 1.0e9) {
      int behind = Math.max(0, digits - (exact.precision() - exact.scale()));
      BigDecimal rounded = exact.setScale(behind, RoundingMode.HALF_EVEN);
      assertThat(Digits.significant(value, digits))
          .isEqualTo(rounded.stripTrailingZeros().toPlainString());
    }
  }
}
