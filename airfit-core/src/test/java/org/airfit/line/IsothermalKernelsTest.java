package org.airfit.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import org.airfit.Comparison;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The equation knows no gas: textbooks with other gases than air can be asked as well. */
class IsothermalKernelsTest {

  private static final String CHAPTER = "Line: isothermal flow of other gases";

  private static Row example(String id) {
    return Rows.of(IsothermalKernelsTest.class, "worked_examples.csv")
        .filter(row -> row.text("id").equals(id))
        .findFirst()
        .orElseThrow();
  }

  private static double outlet(double g, double rt, double p1, double k) {
    double a = IsothermalKernels.parameter(g, 1.0, rt, p1);
    return IsothermalKernels.chokes(a, k) ? 0.0 : p1 * (1.0 - IsothermalKernels.dropShare(a, k));
  }

  /** Where a rising function is met, by halving. */
  private static double where(DoubleUnaryOperator rising, double wanted, double low, double high) {
    double from = low;
    double to = high;
    for (int i = 0; i < 100; i++) {
      double middle = 0.5 * (from + to);
      if (rising.applyAsDouble(middle) < wanted) {
        from = middle;
      } else {
        to = middle;
      }
    }
    return to;
  }

  /** Methane in a pipeline of 161 km. */
  @Test
  void the_inlet_pressure_of_a_pipeline_is_that_of_the_textbook() {
    Row row = example("LL22");
    double g = 2.077 * 16.0 / (Math.PI / 4.0 * 1.016 * 1.016);
    double rt = 8314.34 / 16.0 * 288.8;
    double k = 4.0 * 0.0027 * 160.9e3 / 1.016;
    double p1 = where(p -> outlet(g, rt, p, k), 170.3e3, 2.0e5, 2.0e6);
    Comparison.of(
            CHAPTER,
            row + ", " + row.text("question"),
            row.number("published_answer"),
            "Pa",
            row.evidence("published_answer"))
        .isMetWithinFraction(p1, 1.0e-4, "the gas constant, 8314.3 or 8314.34");
  }

  /** R/(ρu²) is an eighth of Darcy's factor. */
  @Test
  void the_flow_in_a_vacuum_line_is_that_of_the_textbook() {
    Row row = example("LL23");
    double rt = 400.0 * 211.5;
    double k = 8.0 * 0.005 * 30.0 / 0.15;
    double g = where(flux -> -outlet(flux, rt, 400.0, k), -130.0, 1.0e-3, 1.0);
    Comparison.of(
            CHAPTER,
            row + ", " + row.text("question"),
            row.number("published_answer"),
            "kg/(m² s)",
            row.evidence("published_answer"))
        .isMetBy(g, row.halfDigit("published_answer"), "half a unit of the last digit printed");
  }

  /** Both forms of the equation, for small drops and large, and the edge between them. */
  @ParameterizedTest
  @ValueSource(doubles = {1.0e-12, 1.0e-6, 0.01, 0.3, 0.499999, 0.500001, 0.7, 0.9, 0.99, 0.9999})
  void the_share_fulfils_its_equation(double part) {
    for (double k : new double[] {1.0e-3, 0.1, 1.0, 30.0, 1.0e4}) {
      // part of the way to choking, where a and k belong together
      double a = part * where(flow -> -IsothermalKernels.largestResistance(flow), -k, 1.0e-9, 1.0);
      double s = IsothermalKernels.dropShare(a, k);
      double left = s * (2.0 - s) - a * (k - 2.0 * Math.log1p(-s));
      assertThat(IsothermalKernels.chokes(a, k)).isFalse();
      assertThat(left).as("k = " + k).isCloseTo(0.0, within(1.0e-15 + 1.0e-14 * s));
    }
  }

  /** Where one step is near enough and where it is not, and on the way from one to the other. */
  @Test
  void the_share_fulfils_its_equation_wherever_it_is_looked_for() {
    SplittableRandom random = new SplittableRandom(19);
    for (int i = 0; i < 200_000; i++) {
      double a = Math.pow(10.0, random.nextDouble(-5.0, 0.0));
      double k = random.nextDouble() * IsothermalKernels.largestResistance(a);
      double s = IsothermalKernels.dropShare(a, k);
      double left = s * (2.0 - s) - a * (k - 2.0 * Math.log1p(-s));
      assertThat(left).as("a = " + a + ", k = " + k).isCloseTo(0.0, within(1.0e-15 + 1.0e-14 * s));
    }
  }

  @Test
  void what_is_left_and_what_is_lost_are_the_whole() {
    SplittableRandom random = new SplittableRandom(20);
    for (int i = 0; i < 200_000; i++) {
      double a = Math.pow(10.0, random.nextDouble(-12.0, 0.0));
      double k = random.nextDouble() * IsothermalKernels.largestResistance(a);
      double left = IsothermalKernels.leftShare(a, k);
      assertThat(left)
          .as("a = " + a + ", k = " + k)
          .isCloseTo(1.0 - IsothermalKernels.dropShare(a, k), within(3.0e-16));
    }
  }

  @Test
  void the_quick_look_at_choking_agrees_with_the_long_one() {
    for (double k = 1.0e-6; k < 1.0e6; k *= 1.7) {
      for (double a = 1.0e-8; a < 1.2; a *= 1.3) {
        assertThat(IsothermalKernels.chokes(a, k))
            .as("a = " + a + ", k = " + k)
            .isEqualTo(a >= 1.0 || k > IsothermalKernels.largestResistance(a));
      }
    }
  }

  /** Below 0.01 to the last digits; above, to those that 1 − z has left. */
  @ParameterizedTest
  @ValueSource(doubles = {0.0, 1.0e-300, 1.0e-9, 0.003, 0.00999999, 0.01, 0.5, 0.999})
  void the_logarithm_of_what_is_left_has_all_digits(double z) {
    assertThat(IsothermalKernels.logOfRest(z))
        .isCloseTo(
            Math.log1p(-z),
            within((z < 0.01 ? 0.0 : 2.0e-16) + 4.0e-16 * Math.abs(Math.log1p(-z))));
  }

  /** At choking (p2/p1)² = a, where 1 − e⁻ᵘ − a (k + u) has its double root: half the digits are left, and no more goes. */
  @Test
  void the_pressure_at_choking_is_the_root_of_the_parameter_and_not_below() {
    for (double a = 1.0e-6; a < 1.0; a += 0.003) {
      double left = 1.0 - IsothermalKernels.dropShare(a, IsothermalKernels.largestResistance(a));
      assertThat(left)
          .as("a = " + a)
          .isGreaterThanOrEqualTo(Math.sqrt(a) * (1.0 - 4.0e-16))
          .isCloseTo(Math.sqrt(a), within(1.0e-7));
    }
  }
}
