package org.airfit.internal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.function.DoubleUnaryOperator;
import org.airfit.internal.SharedError.Left;
import org.hipparchus.distribution.multivariate.MultivariateNormalDistribution;
import org.junit.jupiter.api.Test;

/** Against the multivariate normal distribution of an independent library, and the integral over the error. */
class SharedErrorTest {

  private static final double C = 0.025;

  private static ReadingDensity bell(double nominal, double sigma) {
    return ReadingDensity.normal(nominal, 0.0, sigma, 0.0, 0);
  }

  private static ReadingDensity limits(double low, double high, double u, double wear) {
    return ReadingDensity.within(low, high, u, wear, -1);
  }

  /** Simpson's rule over the error, ten deviations either way. */
  private static double integral(DoubleUnaryOperator f, double c) {
    int steps = 1_000;
    double width = 20.0 * c / steps;
    double sum = 0.0;
    for (int i = 0; i <= steps; i++) {
      sum += (i == 0 || i == steps ? 1.0 : i % 2 == 1 ? 4.0 : 2.0)
          * f.applyAsDouble(-10.0 * c + i * width);
    }
    return sum * width / 3.0;
  }

  private static double prior(double e, double c) {
    return Math.exp(-0.5 * (e / c) * (e / c)) / (c * Math.sqrt(2.0 * Math.PI));
  }

  /** φ(e/c)/c Π f_j(y_j − e). */
  private static double joint(double e, double c, double[] y, ReadingDensity[] own) {
    double product = prior(e, c);
    for (int j = 0; j < y.length; j++) {
      product *= Math.exp(own[j].logDensity(y[j] - e));
    }
    return product;
  }

  @Test
  void normal_readings_are_the_multivariate_normal_distribution() {
    double[] y = {12.03, 15.02, 19.95};
    ReadingDensity[] own = {bell(12.0, 0.02), bell(15.0, 0.03), bell(20.0, 0.05)};
    double[][] covariance = new double[3][3];
    double[] spread = {0.02, 0.03, 0.05};
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        covariance[i][j] = C * C + (i == j ? spread[i] * spread[i] : 0.0);
      }
    }
    double density =
        new MultivariateNormalDistribution(new double[] {12.0, 15.0, 20.0}, covariance).density(y);
    SharedError shared = SharedError.of(C, y, own);
    assertThat(shared.isPlain()).isTrue();
    assertThat(shared.logLikelihood()).isCloseTo(Math.log(density), within(1.0e-10));
    // what remains of ln of that density without its peak is half of χ²
    double peak = new MultivariateNormalDistribution(new double[] {12.0, 15.0, 20.0}, covariance)
        .density(new double[] {12.0, 15.0, 20.0});
    assertThat(shared.chiSquare()).isCloseTo(2.0 * Math.log(peak / density), within(1.0e-10));
    assertThat(shared.c()).isEqualTo(C);
    assertThat(shared.own(1)).isSameAs(own[1]);
  }

  /** Two equal readings of deviation σ = c: weight 2, e* = (r₁ + r₂)/3, and a third of the variance is left. */
  @Test
  void two_readings_as_sure_as_the_caliper_leave_a_third() {
    SharedError shared = SharedError.of(
        C, new double[] {12.03, 15.06}, new ReadingDensity[] {bell(12.0, C), bell(15.0, C)});
    assertThat(shared.weight()).isCloseTo(2.0, within(1.0e-12));
    assertThat(shared.best()).isCloseTo(0.03, within(1.0e-12));
    Left left = shared.left();
    assertThat(left.mean()).isCloseTo(0.03, within(1.0e-12));
    assertThat(left.variance()).isCloseTo(C * C / 3.0, within(1.0e-15));
    assertThat(shared.chiSquare())
        .isCloseTo((0.03 * 0.03 + 0.0 + 0.03 * 0.03) / (C * C), within(1.0e-9));
  }

  @Test
  void without_a_reading_the_error_is_as_it_was() {
    SharedError none = SharedError.of(C, new double[0], new ReadingDensity[0]);
    assertThat(none.isPlain()).isTrue();
    assertThat(none.best()).isZero();
    assertThat(none.chiSquare()).isZero();
    assertThat(none.logLikelihood()).isZero();
    assertThat(none.left()).isEqualTo(new Left(0.0, C * C));
  }

  @Test
  void what_is_left_of_an_uncertainty_without_the_shared_part() {
    assertThat(SharedError.ownUncertainty(0.05, 0.03)).isCloseTo(0.04, within(1.0e-15));
    assertThat(SharedError.ownUncertainty(0.05, 0.05)).isZero();
  }

  /** Readings off to one side, to both, within the limits, and worn. */
  private static double[][] readings() {
    return new double[][] {
      {12.0, 15.0, 20.0}, {12.08, 15.07, 20.15}, {11.9, 14.88, 19.8}, {12.09, 14.9, 20.0}
    };
  }

  private static ReadingDensity[][] kinds() {
    return new ReadingDensity[][] {
      {limits(11.95, 12.05, 0.02, 0.0), limits(14.95, 15.05, 0.03, 0.0), bell(20.0, 0.05)},
      {limits(11.95, 12.05, 0.02, 0.1), bell(15.0, 0.04), limits(19.9, 20.1, 0.03, 0.1)},
      {
        bell(12.0, 0.03),
        ReadingDensity.student(15.0, 0.03, 4.0, 0.02, 0.1, 1),
        ReadingDensity.normal(20.0, 0.03, 0.02, 0.1, -1)
      }
    };
  }

  @Test
  void any_other_readings_are_the_integral_over_the_error() {
    for (ReadingDensity[] own : kinds()) {
      for (double[] y : readings()) {
        SharedError shared = SharedError.of(C, y, own);
        assertThat(shared.isPlain()).isFalse();
        double whole = integral(e -> joint(e, C, y, own), C);
        double mean = integral(e -> e * joint(e, C, y, own), C) / whole;
        double square = integral(e -> e * e * joint(e, C, y, own), C) / whole;
        assertThat(shared.logLikelihood()).isCloseTo(Math.log(whole), within(1.0e-4));
        assertThat(shared.left().mean()).isCloseTo(mean, within(1.0e-4 * C));
        assertThat(shared.left().variance())
            .isCloseTo(square - mean * mean, within(1.0e-3 * C * C));
      }
    }
  }

  /** χ² at e by its definition; the answer is the least there is, found here by trying e after e. */
  @Test
  void the_most_likely_error_has_the_least_chi_square() {
    for (ReadingDensity[] own : kinds()) {
      if (own[1].misfit(15.3) != (15.3 - own[1].high()) / own[1].sigma()) {
        continue; // the misfit to a sample is told as a normal score, and is not what is least
      }
      for (double[] y : readings()) {
        SharedError shared = SharedError.of(C, y, own);
        double least = Double.POSITIVE_INFINITY;
        double at = 0.0;
        for (int i = -4_000; i <= 4_000; i++) {
          double e = i * 1.0e-3 * C;
          double square = e / C * (e / C);
          for (int j = 0; j < y.length; j++) {
            double z = own[j].misfit(y[j] - e);
            square += z * z;
          }
          at = square < least ? e : at;
          least = Math.min(least, square);
        }
        assertThat(shared.best()).isCloseTo(at, within(1.0e-3 * C));
        assertThat(shared.chiSquare()).isCloseTo(least, within(1.0e-5));
      }
    }
  }

  @Test
  void readings_within_their_limits_leave_the_caliper_without_an_error() {
    SharedError shared = SharedError.of(C, new double[] {12.0, 15.02}, new ReadingDensity[] {
      limits(11.95, 12.05, 0.02, 0.0), limits(14.95, 15.05, 0.03, 0.0)
    });
    assertThat(shared.best()).isCloseTo(0.0, within(1.0e-12));
    assertThat(shared.chiSquare()).isCloseTo(0.0, within(1.0e-20));
  }

  /** Readings that scatter more widely than the caliper is off: then the few steps are as good as many. */
  @Test
  void a_copy_is_the_integral_over_the_error_of_same_or_changed_sizes() {
    double chance = 0.3;
    double scale = 0.5;
    double[] y = {12.05, 15.4, 20.02};
    ReadingDensity[] own = {bell(12.0, 0.08), limits(14.95, 15.05, 0.09, 0.1), bell(20.0, 0.07)};
    double[] logs = SharedError.of(C, y, own).logLikelihoodsOfCopy(chance, scale);
    double changed = integral(
        e -> {
          double product = prior(e, C);
          for (int j = 0; j < y.length; j++) {
            product *= 0.7 * Math.exp(own[j].logDensity(y[j] - e))
                + 0.3 * own[j].densityIfChanged(y[j] - e, scale);
          }
          return product;
        },
        C);
    double same = 0.7 * 0.7 * 0.7 * integral(e -> joint(e, C, y, own), C);
    // beyond ±4.05 deviations lie 5e-5 of the error, and a reading off may lean there
    assertThat(logs[0]).isCloseTo(Math.log(changed), within(1.0e-3));
    assertThat(logs[1]).isCloseTo(Math.log(same), within(1.0e-2));
  }
}
