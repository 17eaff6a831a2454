package org.airfit.internal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.stream.Stream;
import org.airfit.Comparison;
import org.airfit.Evidence;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.hipparchus.distribution.continuous.ChiSquaredDistribution;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.distribution.continuous.TDistribution;
import org.hipparchus.special.Erf;
import org.hipparchus.special.Gamma;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Against Hipparchus, whose distributions promise about ten digits, and the printed quantiles. */
class StatisticsTest {

  private static final double HIPPARCHUS = 1.0e-9;

  static Stream<Row> critical_values() {
    return Rows.of(StatisticsTest.class, "chi2_critical.csv");
  }

  @ParameterizedTest
  @MethodSource("critical_values")
  void chi_square_tails_at_the_printed_quantiles_agree(Row row) {
    int degrees = Integer.parseInt(row.text("degrees_of_freedom"));
    for (String column : new String[] {"p_0_95", "p_0_99", "p_0_999"}) {
      double below = Double.parseDouble(column.substring(2).replace('_', '.'));
      double quantile = row.number(column);
      double slope = new ChiSquaredDistribution(degrees).density(quantile);
      Comparison.of(
              "Statistics: chi-square",
              degrees + " degrees of freedom, " + column,
              1.0 - below,
              "-",
              row.evidence(column))
          .isMetBy(
              Statistics.chiSquareAbove(quantile, degrees),
              slope * row.halfDigit(column),
              "the tail moved by half the last digit of the printed quantile");
    }
  }

  @ParameterizedTest
  @CsvSource({
    "0.01,1", "0.5,1", "3,1", "40,1", "0.2,2", "9,2", "5,3", "7.3,4", "30,5", "2,9", "60,12", "0,3"
  })
  void chi_square_tails_agree_with_an_independent_library(double chiSquare, int degrees) {
    double theirs = 1.0 - new ChiSquaredDistribution(degrees).cumulativeProbability(chiSquare);
    assertThat(Statistics.chiSquareAbove(chiSquare, degrees)).isCloseTo(theirs, within(HIPPARCHUS));
  }

  /** DLMF 8.4.10 in thirty digits; the whole sum is e^(x/2), so that no logarithm is needed. */
  @ParameterizedTest
  @CsvSource({
    "1400,1200", "900,1200", "2000,1200", "19900,20000", "100000,100000", "100900,100000",
    "99000,100000", "103000,100000", "101,400", "101,402", "1002,24", "1100,2"
  })
  void chi_square_tails_of_very_many_degrees_keep_their_digits(int chiSquare, int degrees) {
    MathContext digits = new MathContext(30);
    BigDecimal half = new BigDecimal(chiSquare).divide(new BigDecimal(2), digits);
    BigDecimal term = BigDecimal.ONE;
    BigDecimal sum = BigDecimal.ONE;
    BigDecimal tail = BigDecimal.ONE;
    BigDecimal least = BigDecimal.ONE.movePointLeft(40);
    for (int j = 1; j < degrees / 2 || term.compareTo(sum.multiply(least)) > 0; j++) {
      term = term.multiply(half, digits).divide(new BigDecimal(j), digits);
      sum = sum.add(term, digits);
      tail = j < degrees / 2 ? sum : tail;
    }
    double known = tail.divide(sum, digits).doubleValue();
    assertThat(Statistics.chiSquareAbove(chiSquare, degrees) / known)
        .isCloseTo(1.0, within(2.0e-13));
  }

  @ParameterizedTest
  @ValueSource(doubles = {-6.0, -2.2, -1.0, -0.1, 0.0, 0.3, 1.4, 2.0, 2.2, 3.9, 6.0})
  void normal_tails_agree_with_an_independent_library(double z) {
    assertThat(Statistics.normalAbove(z))
        .isCloseTo(new NormalDistribution().cumulativeProbability(-z), within(1.0e-14));
    assertThat(ErrorFunction.scaledErfc(Math.abs(z)))
        .isCloseTo(Math.exp(z * z) * Erf.erfc(Math.abs(z)), within(1.0e-10));
  }

  /** DLMF 7.6.2, erf x = 2/√π e^(−x²) Σ 2ⁿ x^(2n+1)/(1·3·5···(2n+1)). */
  private static double scaledErfcBySeries(double x) {
    double term = x;
    double sum = x;
    for (int n = 1; n < 200; n++) {
      term *= 2.0 * x * x / (2 * n + 1);
      sum += term;
    }
    return Math.exp(x * x) - 2.0 / Math.sqrt(Math.PI) * sum;
  }

  /** DLMF 7.9.1, √π e^(x²) erfc x = 1/(x + (1/2)/(x + (2/2)/(x + …))), from the far end. */
  private static double scaledErfcByFraction(double x) {
    double rest = x;
    for (int n = 2000; n > 0; n--) {
      rest = x + 0.5 * n / rest;
    }
    return 1.0 / (Math.sqrt(Math.PI) * rest);
  }

  @Test
  void the_rational_forms_are_the_series_and_the_continued_fraction() {
    for (int i = 0; i <= 10_000; i++) {
      double x = 0.006 * i;
      double known = x < 1.0 ? scaledErfcBySeries(x) : scaledErfcByFraction(x);
      // the series takes away what leaves a fifth of it: five units of the last bit, times a few
      // roundings
      assertThat(ErrorFunction.scaledErfc(x) / known)
          .as("x = %s", x)
          .isCloseTo(1.0, within(5.0e-15));
    }
  }

  @Test
  void a_normal_tail_keeps_its_digits_where_it_is_tiny() {
    // Q(20) = 2.753624118606233e-89, DLMF 7.12.1 summed to its smallest term
    assertThat(Statistics.normalAbove(20.0) / 2.753624118606233e-89)
        .isCloseTo(1.0, within(1.0e-12));
  }

  @ParameterizedTest
  @CsvSource({"-1,1", "0.5,2", "-3,-2", "2,9", "5,5.1", "-0.000001,0.000002", "-30,30"})
  void chances_between_two_bounds_agree(double low, double high) {
    NormalDistribution normal = new NormalDistribution();
    double theirs = high <= 0 || low >= 0
        ? normal.cumulativeProbability(-Math.min(Math.abs(low), Math.abs(high)))
            - normal.cumulativeProbability(-Math.max(Math.abs(low), Math.abs(high)))
        : normal.cumulativeProbability(high) - normal.cumulativeProbability(low);
    assertThat(Statistics.normalBetween(low, high)).isCloseTo(theirs, within(1.0e-12));
    assertThat(Statistics.logNormalBetween(low, high)).isCloseTo(Math.log(theirs), within(1.0e-6));
  }

  @Test
  void chances_far_out_keep_their_logarithm() {
    assertThat(Statistics.logNormalBetween(50.0, 51.0))
        .as("ln Q(50) = −1254.8313611394199 from the asymptotic series DLMF 7.12.1")
        .isCloseTo(-1254.8313611394199, within(1.0e-9));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.5, 0.25, 0.05, 0.025, 0.001, 1.0e-8, 1.0e-100})
  void normal_scores_have_the_tail_they_were_found_for(double tail) {
    double z = Statistics.normalScore(tail);
    assertThat(Statistics.normalAbove(z) / tail).isCloseTo(1.0, within(1.0e-11));
  }

  @ParameterizedTest
  @CsvSource({"0,3", "0.5,1", "-1.2,4", "2.776445,4", "12.7,1", "3.3,30.5", "-8,2.5", "1,200"})
  void student_tails_and_densities_agree_with_an_independent_library(double t, double degrees) {
    TDistribution theirs = new TDistribution(degrees);
    assertThat(Statistics.studentAbove(t, degrees))
        .isCloseTo(theirs.cumulativeProbability(-t), within(HIPPARCHUS));
    assertThat(Statistics.logStudentDensity(t, degrees))
        .isCloseTo(theirs.logDensity(t), within(HIPPARCHUS));
  }

  @ParameterizedTest
  @CsvSource({"-1,2,3", "0.2,0.9,4", "-5,-4,2.5", "1,1.00001,7", "30,31,5", "0,0.00001,3"})
  void student_chances_between_two_bounds_agree(double low, double high, double degrees) {
    TDistribution theirs = new TDistribution(degrees);
    double chance = high - low < 1.0e-3
        ? theirs.density(0.5 * (low + high)) * (high - low)
        : theirs.cumulativeProbability(high) - theirs.cumulativeProbability(low);
    assertThat(Math.exp(Statistics.logStudentBetween(low, high, degrees)))
        .isCloseTo(chance, within(HIPPARCHUS));
  }

  @Test
  void a_student_chance_beyond_every_plug_is_still_a_number() {
    assertThat(Statistics.logStudentBetween(1.0e60, 1.1e60, 5.0)).isNegative().isFinite();
  }

  @ParameterizedTest
  @CsvSource({"0.025,4,2.776445", "0.025,9,2.262157", "0.05,1,6.313752", "0.005,30,2.749996"})
  void student_scores_agree_with_the_printed_table(double tail, double degrees, double printed) {
    Comparison.of(
            "Statistics: Student t",
            "upper tail " + tail + ", " + degrees + " degrees of freedom",
            printed,
            "-",
            Evidence.recalled("NIST/SEMATECH e-Handbook of Statistical Methods 1.3.6.7.2"))
        .isMetBy(Statistics.studentScore(tail, degrees), 5.0e-7, "six decimals printed");
    assertThat(Statistics.studentScore(tail, degrees))
        .isCloseTo(-new TDistribution(degrees).inverseCumulativeProbability(tail), within(1.0e-8));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.5, 1.0, 1.5, 2.0, 7.25, 11.9, 12.0, 100.0})
  void log_gamma_agrees_with_an_independent_library(double x) {
    assertThat(Statistics.logGamma(x))
        .isCloseTo(Gamma.logGamma(x), within(1.0e-12 * (1.0 + Math.abs(Gamma.logGamma(x)))));
  }

  /** G(z) = zΦ(z) + φ(z): the second difference is the integral of Φ(t + width) − Φ(t) over t. */
  @ParameterizedTest
  @CsvSource({"-1,1,0.5", "-3,-1,2", "1,2,0.7", "0,0.0005,1", "-1,1,0.0005", "4,6,3"})
  void second_differences_are_the_integral_of_chances(double low, double high, double width) {
    int steps = 20_000;
    double sum = 0.0;
    for (int i = 0; i < steps; i++) {
      double t = low + (high - low) * (i + 0.5) / steps;
      sum += Statistics.normalBetween(t, t + width) * (high - low) / steps;
    }
    assertThat(Math.exp(Statistics.logSecondDifference(low, high, width)))
        .as("midpoint rule, error below width × (high − low)³/(24 steps²)")
        .isCloseTo(sum, within(1.0e-6 * sum + 1.0e-12));
  }

  /**
   * The logarithm beside −x²/2 of the nearest corner x, from the confluent hypergeometric function U in mpmath 1.3 with
   * 80 digits: 1 − x R(x) with Mills' ratio R(x) = U(1/2, 1/2, x²/2)/√2. What a double holds of −x²/2 is its last digit.
   */
  @ParameterizedTest
  @CsvSource({
    "-120, -101, 0.7, 100.3, -10.1355680275264892",
    "99, 150, 3, 99, -10.1094842154551178",
    "-1050, -1000, 40, 960, -14.6528083573244076",
    "-5e4, -2e4, 1e4, 1e4, -19.3396193071570372",
    "-3e5, -2e5, 0.5, 199999.5, -25.3310788243337706",
    "-2e7, -1.5e7, 3e6, 1.2e7, -33.5197729487092424",
    "-4e12, -3e12, 1e12, 2e12, -57.5672751261816598"
  })
  void far_out_second_differences_keep_their_digits(
      double low, double high, double width, double corner, double beside) {
    double wanted = beside - 0.5 * corner * corner;
    assertThat(Statistics.logSecondDifference(low, high, width))
        .isCloseTo(wanted, within(1.0e-11 + Math.ulp(wanted)));
  }

  @Test
  void sums_of_exponentials_do_not_overflow() {
    assertThat(Statistics.logSumExp(new double[] {1000.0, 1000.0}))
        .isCloseTo(1000.0 + Math.log(2.0), within(1e-12));
    assertThat(Statistics.logSumExp(new double[] {Double.NEGATIVE_INFINITY}))
        .isEqualTo(Double.NEGATIVE_INFINITY);
  }

  /**
   * One degree of freedom is Cauchy's distribution, two have a root for a tail; both from handbooks, neither uses the
   * beta function.
   */
  @ParameterizedTest
  @ValueSource(doubles = {0.0, 1.0e-9, 0.3, 1.0, 4.0, 63.7, 1.0e6})
  void student_tails_of_one_and_two_degrees_have_closed_forms(double t) {
    double one = Math.atan2(1.0, t) / Math.PI;
    double two = 1.0 / (Math.sqrt(2.0 + t * t) * (Math.sqrt(2.0 + t * t) + t));
    assertThat(Statistics.studentAbove(t, 1.0) / one).isCloseTo(1.0, within(1.0e-11));
    assertThat(Statistics.studentAbove(t, 2.0) / two).isCloseTo(1.0, within(1.0e-11));
    assertThat(Statistics.studentAbove(-t, 2.0)).isCloseTo(1.0 - two, within(1.0e-14));
  }

  @Test
  void a_student_tail_whose_square_overflows_is_none() {
    assertThat(Statistics.studentAbove(1.0e200, 5.0)).isZero();
    assertThat(Statistics.studentAbove(-1.0e200, 5.0)).isEqualTo(1.0);
    assertThat(Statistics.studentAbove(1.0e150, 1.0) * 1.0e150)
        .isCloseTo(1.0 / Math.PI, within(1.0e-9));
  }

  /** With many degrees of freedom t becomes normal: the difference is of the order of 1/ν. */
  @ParameterizedTest
  @ValueSource(doubles = {0.5, 1.96, 4.0})
  void many_degrees_of_freedom_are_normal(double z) {
    assertThat(Statistics.studentAbove(z, 1.0e7) / Statistics.normalAbove(z))
        .isCloseTo(1.0, within(1.0e-5));
    assertThat(Statistics.studentScore(Statistics.normalAbove(z), 1.0e7))
        .isCloseTo(z, within(1.0e-5));
  }

  @ParameterizedTest
  @CsvSource({"0,0", "-2,2", "1.5,1.5", "-1,3"})
  void chances_over_a_range_add_up_to_those_of_its_parts(double low, double high) {
    double middle = 0.5 * (low + high) + 0.1;
    double last = high + 1.0;
    assertThat(Statistics.normalBetween(low, middle) + Statistics.normalBetween(middle, last))
        .isCloseTo(Statistics.normalBetween(low, last), within(1.0e-14));
    assertThat(Statistics.normalBetween(-40.0, 40.0)).isEqualTo(1.0);
    assertThat(Statistics.normalBetween(low, low)).isZero();
    assertThat(Statistics.logStudentBetween(low, low, 3.0)).isEqualTo(Double.NEGATIVE_INFINITY);
  }
}
