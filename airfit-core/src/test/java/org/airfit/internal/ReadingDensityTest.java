package org.airfit.internal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.function.DoubleUnaryOperator;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.distribution.continuous.TDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Against the definitions of the densities, integrated with distributions of an independent library. */
class ReadingDensityTest {

  private static final NormalDistribution NORMAL = new NormalDistribution();

  /** Simpson's rule. */
  private static double integral(DoubleUnaryOperator f, double low, double high) {
    int steps = 2_000;
    double width = (high - low) / steps;
    double sum = f.applyAsDouble(low) + f.applyAsDouble(high);
    for (int i = 1; i < steps; i++) {
      sum += (i % 2 == 1 ? 4.0 : 2.0) * f.applyAsDouble(low + i * width);
    }
    return sum * width / 3.0;
  }

  /** (1/w) ∫ f₀(y − s δ) dδ over the wear, as the definition has it. */
  private static double worn(DoubleUnaryOperator ofNew, double y, double wear, int sign) {
    return wear == 0.0 || sign == 0
        ? ofNew.applyAsDouble(y)
        : integral(lost -> ofNew.applyAsDouble(y - sign * lost), 0.0, wear) / wear;
  }

  private static void agrees(
      ReadingDensity density, DoubleUnaryOperator ofNew, double wear, int sign) {
    for (double y = 11.4; y < 12.7; y += 0.05) {
      double known = Math.log(worn(ofNew, y, wear, sign));
      assertThat(density.logDensity(y))
          .as("at %s, worn %s to the %s", y, wear, sign)
          .isCloseTo(known, within(1.0e-6 * (1.0 + Math.abs(known))));
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {-1, 0, 1})
  void a_normal_spread_is_that_of_part_and_reading_together(int sign) {
    NormalDistribution known = new NormalDistribution(12.0, 0.05);
    for (double wear : new double[] {0.0, 0.2}) {
      ReadingDensity density = ReadingDensity.normal(12.0, 0.03, 0.04, wear, sign);
      agrees(density, known::density, wear, sign);
      assertThat(density.sigma()).isCloseTo(0.05, within(1.0e-15));
      assertThat(density.isNormal()).isEqualTo(wear == 0.0 || sign == 0);
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {-1, 0, 1})
  void limits_are_an_even_spread_and_the_scatter_of_the_reading(int sign) {
    DoubleUnaryOperator known = y -> (NORMAL.cumulativeProbability((12.1 - y) / 0.04)
            - NORMAL.cumulativeProbability((11.9 - y) / 0.04))
        / 0.2;
    // a difference of two chances near 1 or 0 keeps 14 digits less what cancels: near the limits
    // only
    for (double wear : new double[] {0.0, 0.15}) {
      ReadingDensity density = ReadingDensity.within(11.9, 12.1, 0.04, wear, sign);
      for (double y = 11.75; y < 12.25; y += 0.01) {
        assertThat(Math.exp(density.logDensity(y)))
            .as("at %s, worn %s to the %s", y, wear, sign)
            .isCloseTo(worn(known, y, wear, sign), within(1.0e-6));
      }
      assertThat(density.sigma()).isEqualTo(0.04);
      assertThat(density.isNormal()).isFalse();
    }
  }

  /** GUM G.4 with ν of the sample and infinitely many of the reading: ν (σ/s)⁴. */
  @ParameterizedTest
  @ValueSource(ints = {-1, 0, 1})
  void a_sample_is_students_t_with_the_degrees_of_welch_and_satterthwaite(int sign) {
    double degrees = 4.0 * Math.pow(0.05 / 0.03, 4.0);
    TDistribution t = new TDistribution(degrees);
    DoubleUnaryOperator known = y -> t.density((y - 12.0) / 0.05) / 0.05;
    for (double wear : new double[] {0.0, 0.2}) {
      ReadingDensity density = ReadingDensity.student(12.0, 0.03, 4.0, 0.04, wear, sign);
      agrees(density, known, wear, sign);
      assertThat(density.sigma()).isCloseTo(0.05, within(1.0e-15));
      assertThat(density.isNormal()).isFalse();
    }
  }

  /** Shafts lose metal and read small, bores lose metal and read large, a pitch loses nothing. */
  @Test
  void wear_widens_what_is_allowed_in_the_one_direction_metal_can_go() {
    ReadingDensity shaft = ReadingDensity.within(11.9, 12.1, 0.04, 0.25, -1);
    assertThat(shaft.low()).isCloseTo(11.65, within(1.0e-12));
    assertThat(shaft.high()).isEqualTo(12.1);
    assertThat(shaft.wear()).isEqualTo(0.25);
    ReadingDensity bore = ReadingDensity.normal(12.0, 0.03, 0.04, 0.25, 1);
    assertThat(bore.low()).isEqualTo(12.0);
    assertThat(bore.high()).isEqualTo(12.25);
    ReadingDensity pitch = ReadingDensity.within(11.9, 12.1, 0.04, 0.25, 0);
    assertThat(pitch.low()).isEqualTo(11.9);
    assertThat(pitch.high()).isEqualTo(12.1);
    assertThat(pitch.wear()).isZero();
  }

  @Test
  void what_is_allowed_is_no_misfit_and_beyond_it_counts_in_standard_deviations() {
    ReadingDensity shaft = ReadingDensity.within(11.9, 12.1, 0.04, 0.25, -1);
    assertThat(shaft.misfit(11.65)).isZero();
    assertThat(shaft.misfit(12.1)).isZero();
    assertThat(shaft.misfit(11.57)).isCloseTo(-2.0, within(1.0e-9));
    assertThat(shaft.misfit(12.22)).isCloseTo(3.0, within(1.0e-9));
    ReadingDensity bell = ReadingDensity.normal(12.0, 0.03, 0.04, 0.0, 0);
    assertThat(bell.misfit(11.9)).isCloseTo(-2.0, within(1.0e-9));
    assertThat(bell.margin(0.025)).isCloseTo(0.05 * 1.959963984540054, within(1.0e-12));
    assertThat(bell.reach()).isCloseTo(0.305, within(1.0e-12)); // the density's own choice: 6.1
  }

  /** A misfit by Student's t is told as the normal score that as few exceed, so that squares add up to chi-square. */
  @Test
  void the_misfit_to_a_sample_is_the_normal_score_of_the_same_tail() {
    ReadingDensity density = ReadingDensity.student(12.0, 0.03, 4.0, 1.0e-9, 0.0, 0);
    TDistribution t = new TDistribution(4.0);
    for (double z : new double[] {-5.0, -1.0, 0.5, 2.0, 6.0}) {
      double tail = t.cumulativeProbability(-Math.abs(z));
      double score = -NORMAL.inverseCumulativeProbability(tail);
      assertThat(density.misfit(12.0 + 0.03 * z))
          .as("t = %s", z)
          .isCloseTo(Math.copySign(score, z), within(1.0e-7));
    }
    assertThat(density.misfit(12.0)).isZero();
    assertThat(density.margin(0.025)).isCloseTo(0.03 * 2.776445, within(3.0e-8)); // t table
  }

  /**
   * Where a tail is no number any more the misfit goes on by the approximation of D. L. Wallace, Ann. Math. Stat. 30
   * (1959) 1124: √(ν ln(1 + t²/ν)). For many degrees of freedom both are known to be near there.
   */
  @Test
  void a_misfit_beyond_every_tail_still_grows() {
    ReadingDensity density = ReadingDensity.student(0.0, 1.0, 400.0, 1.0e-6, 0.0, 0);
    double known = Math.sqrt(400.0 * Math.log1p(80.0 * 80.0 / 400.0));
    assertThat(density.misfit(80.0)).isCloseTo(known, within(1.0e-6));
    assertThat(density.misfit(-80.0)).isCloseTo(-known, within(1.0e-6));
    double before = 0.0;
    for (double t = 1.0; t < 200.0; t += 0.5) {
      double misfit = density.misfit(t);
      assertThat(misfit).as("t = %s", t).isGreaterThan(before);
      before = misfit;
    }
  }

  /** The density of t at its reach is a hundred-millionth of the peak, and forty deviations at most. */
  @Test
  void the_reach_of_a_sample_is_where_its_density_has_all_but_gone() {
    ReadingDensity density = ReadingDensity.student(0.0, 1.0, 30.0, 1.0e-9, 0.0, 0);
    double drop = density.logDensity(density.reach()) - density.logDensity(0.0);
    assertThat(drop).isCloseTo(Math.log(1.0e-8), within(1.0e-6));
    assertThat(ReadingDensity.student(0.0, 2.0, 1.0, 1.0e-9, 0.0, 0).reach())
        .isCloseTo(80.0, within(1.0e-9));
  }

  /** g falls off as an exponential with mean a on both sides of what is allowed, and is level between. */
  @Test
  void a_changed_size_falls_off_as_an_exponential_on_both_sides() {
    ReadingDensity density = ReadingDensity.within(11.9, 12.1, 0.04, 0.1, -1);
    double peak = 1.0 / (2.0 * 0.5 + 0.3);
    assertThat(density.densityIfChanged(11.8, 0.5)).isCloseTo(peak, within(1.0e-12));
    assertThat(density.densityIfChanged(12.1, 0.5)).isCloseTo(peak, within(1.0e-12));
    assertThat(density.densityIfChanged(11.3, 0.5)).isCloseTo(peak / Math.E, within(1.0e-12));
    assertThat(density.densityIfChanged(12.6, 0.5)).isCloseTo(peak / Math.E, within(1.0e-12));
    assertThat(integral(y -> density.densityIfChanged(y, 0.5), -8.2, 11.8)
            + integral(y -> density.densityIfChanged(y, 0.5), 11.8, 12.1)
            + integral(y -> density.densityIfChanged(y, 0.5), 12.1, 32.1))
        .isCloseTo(1.0, within(1.0e-8));
  }

  @Test
  void a_copy_is_the_same_or_changed() {
    ReadingDensity same = ReadingDensity.normal(12.0, 0.03, 0.04, 0.2, -1);
    ReadingDensity copy = ReadingDensity.changed(same, 0.3, 0.5);
    for (double y : new double[] {11.2, 11.9, 12.0, 12.7}) {
      double known = 0.7 * Math.exp(same.logDensity(y)) + 0.3 * same.densityIfChanged(y, 0.5);
      assertThat(Math.exp(copy.logDensity(y))).isCloseTo(known, within(1.0e-12));
    }
    assertThat(copy.low()).isEqualTo(same.low());
    assertThat(copy.high()).isEqualTo(12.0);
    assertThat(copy.sigma()).isEqualTo(same.sigma());
    assertThat(copy.wear()).isZero();
    assertThat(copy.isNormal()).isFalse();
    assertThat(copy.reach()).isCloseTo(6.1 * 0.05 + 2.5, within(1.0e-12));
    assertThatThrownBy(() -> copy.logChance(11.0, 12.0))
        .isInstanceOf(UnsupportedOperationException.class)
        .hasMessage("the wear of a copy is in what it is a copy of");
  }

  /** The chance of a reading anywhere is one, whatever the spread, new and worn. */
  @Test
  void every_density_adds_up_to_one() {
    for (int sign = -1; sign <= 1; sign++) {
      for (double wear : new double[] {0.0, 0.2}) {
        for (ReadingDensity density : new ReadingDensity[] {
          ReadingDensity.within(11.9, 12.1, 0.04, wear, sign),
          ReadingDensity.normal(12.0, 0.03, 0.04, wear, sign),
          ReadingDensity.student(12.0, 0.03, 9.0, 0.04, wear, sign)
        }) {
          double sum = integral(y -> Math.exp(density.logDensity(y)), 10.0, 14.0);
          assertThat(sum).isCloseTo(1.0, within(1.0e-6));
        }
      }
    }
  }

  /** Wear that a double does not add to the reading wears nothing off; what little more does lies next to it. */
  @ParameterizedTest
  @ValueSource(doubles = {1.0e-300, 1.0e-22, 1.0e-13, 1.0e-11, 1.0e-9})
  void hardly_any_wear_is_next_to_none(double wear) {
    double y = 1951.69;
    for (int sign : new int[] {-1, 1}) {
      double worn = ReadingDensity.normal(12.0, 0.03, 0.018, wear, sign).logDensity(y);
      double asNew = ReadingDensity.normal(12.0, 0.03, 0.018, 0.0, 0).logDensity(y);
      assertThat(worn).isCloseTo(asNew, within(1.0e-12 * Math.abs(asNew)));
      double wornLimits = ReadingDensity.within(11.9, 12.0, 0.018, wear, sign).logDensity(y);
      double limits = ReadingDensity.within(11.9, 12.0, 0.018, 0.0, 0).logDensity(y);
      assertThat(wornLimits).isCloseTo(limits, within(1.0e-12 * Math.abs(limits)));
    }
  }
}
