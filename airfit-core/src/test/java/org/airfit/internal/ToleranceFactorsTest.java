package org.airfit.internal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.hipparchus.distribution.continuous.ChiSquaredDistribution;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The factors integrate over the mean of the sample with the tail of its deviation; these tests integrate over the
 * deviation with the tail of the mean, by another rule and with the distributions of an independent library.
 */
class ToleranceFactorsTest {

  private static final NormalDistribution NORMAL = new NormalDistribution();

  /**
   * Simpson's rule over the density of s, in σ, from where the chance begins: s² (n − 1) is chi-square. With s = from +
   * x² a chance that begins as a root has no bend.
   */
  private static double overDeviation(int pieces, double from, DoubleUnaryOperator chance) {
    int degrees = pieces - 1;
    ChiSquaredDistribution square = new ChiSquaredDistribution(degrees);
    double most = Math.sqrt(1.0 + 8.0 / Math.sqrt(degrees) - from);
    int steps = 1_000;
    double sum = 0.0;
    for (int i = 1; i <= steps; i++) { // at x = 0 nothing, for ds = 2 x dx
      double x = most * i / steps;
      double s = from + x * x;
      double density = square.density(s * s * degrees) * 2.0 * s * degrees;
      sum +=
          density * chance.applyAsDouble(s) * 2.0 * x * (i == steps ? 1.0 : i % 2 == 1 ? 4.0 : 2.0);
    }
    return sum * most / steps / 3.0;
  }

  /** The largest distance of the mean at which mean ± reach still hold the share. */
  private static double largestOff(double reach, double coverage) {
    double low = 0.0;
    double high = 40.0;
    for (int i = 0; i < 60; i++) {
      double off = 0.5 * (low + high);
      boolean holds =
          NORMAL.cumulativeProbability(off + reach) - NORMAL.cumulativeProbability(off - reach)
              >= coverage;
      low = holds ? off : low;
      high = holds ? high : off;
    }
    return low;
  }

  @ParameterizedTest
  @CsvSource({
    "2,0.95,0.95",
    "3,0.9,0.99",
    "5,0.95,0.95",
    "10,0.5,0.5",
    "12,0.5,0.9",
    "30,0.99,0.9",
    "200,0.9999,0.75"
  })
  void one_limit_holds_its_share_with_the_chance_asked_for(
      int pieces, double coverage, double confidence) {
    double k = ToleranceFactors.oneSided(pieces, coverage, confidence);
    double quantile = NORMAL.inverseCumulativeProbability(coverage);
    double root = Math.sqrt(pieces);
    double chance =
        overDeviation(pieces, 0.0, s -> NORMAL.cumulativeProbability((k * s - quantile) * root));
    assertThat(chance).isCloseTo(confidence, within(1.0e-8));
  }

  @ParameterizedTest
  @CsvSource({"2,0.95,0.9", "3,0.9,0.99", "5,0.95,0.95", "10,0.5,0.5", "12,0.5,0.9", "30,0.99,0.9"})
  void two_limits_hold_their_share_with_the_chance_asked_for(
      int pieces, double coverage, double confidence) {
    double k = ToleranceFactors.twoSided(pieces, coverage, confidence);
    double root = Math.sqrt(pieces);
    double least = NORMAL.inverseCumulativeProbability(0.5 + 0.5 * coverage);
    double chance = overDeviation(
        pieces,
        least / k,
        s -> 2.0 * NORMAL.cumulativeProbability(largestOff(k * s, coverage) * root) - 1.0);
    assertThat(chance).isCloseTo(confidence, within(1.0e-8));
  }

  /**
   * The closed formulas of large samples, from the handbook: what they leave out goes with 1/n, so that at 100,000 pieces
   * four digits are right. They are where the search begins.
   */
  @ParameterizedTest
  @CsvSource({
    "1000,0.9,0.95",
    "1000,0.99,0.9",
    "20000,0.95,0.99",
    "100000,0.9,0.9",
    "100000,0.99,0.95"
  })
  void the_closed_formulas_are_right_for_many_pieces(
      int pieces, double coverage, double confidence) {
    double sure = NORMAL.inverseCumulativeProbability(confidence);
    double oneSided = NORMAL.inverseCumulativeProbability(coverage);
    double k = ToleranceFactors.oneSided(pieces, coverage, confidence);
    assertThat(ToleranceFactors.oneSidedOfMany(pieces, oneSided, sure))
        .isCloseTo(k, within(2.0 * k / pieces));
    double twoSided = NORMAL.inverseCumulativeProbability(0.5 + 0.5 * coverage);
    double k2 = ToleranceFactors.twoSided(pieces, coverage, confidence);
    assertThat(ToleranceFactors.twoSidedOfMany(pieces, twoSided, sure))
        .isCloseTo(k2, within(2.0 * k2 / pieces));
  }

  /** The points where a search asks: first on both sides of the closed formula, then between them. */
  @Test
  void a_search_among_many_pieces_stays_around_the_closed_formula() {
    List<Double> asked = new ArrayList<>();
    DoubleUnaryOperator excess = k -> {
      asked.add(k);
      return k - 2.003;
    };
    assertThat(ToleranceFactors.factor(excess, 1000, 2.0, 9.0)).isCloseTo(2.003, within(1e-12));
    assertThat(asked.get(0)).isCloseTo(2.0 * 0.99 - 0.01, within(1e-12));
    assertThat(asked.get(1)).isCloseTo(2.0 * 1.01 + 0.01, within(1e-12));
    assertThat(asked).hasSizeLessThan(6).allMatch(k -> k > 1.96 && k < 2.04);
  }

  @Test
  void a_search_whose_root_is_elsewhere_or_among_few_pieces_goes_through_all() {
    for (double root : new double[] {0.004, 1.5, 17.0}) {
      assertThat(ToleranceFactors.factor(k -> k - root, 1000, 2.0, 9.0))
          .isCloseTo(root, within(1e-11));
    }
    assertThat(ToleranceFactors.factor(k -> k - 0.004, 100, 0.01, 9.0))
        .as("the lower side would lie below nothing")
        .isCloseTo(0.004, within(1e-12));
    List<Double> asked = new ArrayList<>();
    ToleranceFactors.factor(
        k -> {
          asked.add(k);
          return k - 2.0;
        },
        99,
        2.0,
        9.0);
    assertThat(asked.get(0)).as("of few pieces the upper end").isEqualTo(9.0);
  }

  /** Without a factor only a mean above the quantile holds the share: at the middle that is one in two. */
  @Test
  void a_factor_of_nothing_has_the_chance_of_the_mean_alone() {
    assertThat(ToleranceFactors.oneSidedChance(7, 0.0, 0.0)).isCloseTo(0.5, within(1.0e-15));
    assertThat(ToleranceFactors.oneSidedChance(9, 0.5, 0.0))
        .isCloseTo(NORMAL.cumulativeProbability(-1.5), within(1.0e-14));
    assertThat(ToleranceFactors.oneSided(7, 0.5, 0.5)).isCloseTo(0.0, within(1.0e-12));
  }

  @Test
  void the_reach_of_two_limits_is_the_normal_score_where_the_mean_is_right() {
    assertThat(ToleranceFactors.reach(0.0, 0.95))
        .isCloseTo(NORMAL.inverseCumulativeProbability(0.975), within(1.0e-11));
    for (double off : new double[] {0.1, 0.7, 3.0}) {
      double reach = ToleranceFactors.reach(off, 0.9);
      assertThat(
              NORMAL.cumulativeProbability(off + reach) - NORMAL.cumulativeProbability(off - reach))
          .isCloseTo(0.9, within(1.0e-11));
    }
  }
}
