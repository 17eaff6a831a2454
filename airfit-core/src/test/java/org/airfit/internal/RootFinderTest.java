package org.airfit.internal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.lang.management.ManagementFactory;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

class RootFinderTest {

  private static final double TOLERANCE = 1.0e-13;

  /** Counts how often a function is asked. */
  private static final class Counted implements DoubleUnaryOperator {
    private final DoubleUnaryOperator function;
    private int count;

    Counted(DoubleUnaryOperator function) {
      this.function = function;
    }

    @Override
    public double applyAsDouble(double x) {
      count++;
      return function.applyAsDouble(x);
    }
  }

  private static void assertRoot(
      DoubleUnaryOperator function, double within, double beyond, double root, int most) {
    Counted counted = new Counted(function);
    double found = RootFinder.find(counted, within, beyond, TOLERANCE);
    assertThat(found).isCloseTo(root, within(2.0 * TOLERANCE + Math.ulp(root)));
    assertThat(function.applyAsDouble(found)).as("not above 0").isLessThanOrEqualTo(0.0);
    assertThat(counted.count).as("evaluations").isLessThanOrEqualTo(most);
  }

  @Test
  void roots_in_closed_form_are_found_within_a_dozen_evaluations() {
    assertRoot(x -> x - 0.377, 0.0, 1.0, 0.377, 5);
    assertRoot(x -> x * x - 2.0, 0.0, 3.0, Math.sqrt(2.0), 12);
    assertRoot(x -> x * x * x - 2.0, 0.0, 3.0, Math.cbrt(2.0), 12);
    assertRoot(x -> Math.exp(x) - 5.0, -3.0, 6.0, Math.log(5.0), 13);
    assertRoot(x -> Math.log(x) - 0.5, 0.1, 10.0, Math.exp(0.5), 13);
    assertRoot(x -> 0.9 - Math.sqrt(1.0 - x), 0.0, 1.0, 0.19, 12);
    assertRoot(Math::sin, -1.0, 2.0, 0.0, 12);
  }

  /** A guess is looked at first: a good one leaves two looks, any other changes neither the root nor the bound. */
  @Test
  void a_guess_is_where_the_search_begins() {
    double root = Math.sqrt(2.0);
    for (double guess : new double[] {
      root,
      root + 1.0e-9,
      0.0,
      1.0e-300,
      2.9999,
      3.0,
      -7.0,
      70.0,
      Double.NaN,
      Double.POSITIVE_INFINITY
    }) {
      Counted counted = new Counted(x -> x * x - 2.0);
      double found = RootFinder.find(counted, 0.0, -2.0, 3.0, 7.0, guess, TOLERANCE);
      assertThat(found).as("from %s", guess).isCloseTo(root, within(2.0 * TOLERANCE));
      assertThat(found * found - 2.0).as("from %s", guess).isLessThanOrEqualTo(0.0);
      assertThat(counted.count)
          .as("from %s", guess)
          .isLessThanOrEqualTo(RootFinder.most(3.0, TOLERANCE));
    }
    Counted narrow = new Counted(x -> x * x - 2.0);
    assertThat(RootFinder.find(
            narrow, 1.41, 1.41 * 1.41 - 2.0, 1.42, 1.42 * 1.42 - 2.0, root, TOLERANCE))
        .isCloseTo(root, within(2.0 * TOLERANCE));
    assertThat(narrow.count).as("looks from the root itself").isEqualTo(2);
  }

  @Test
  void the_point_beyond_may_lie_on_the_left() {
    assertRoot(x -> 2.0 - x * x, 3.0, 0.0, Math.sqrt(2.0), 12);
    assertRoot(x -> 1.0 / x - 4.0, 8.0, 0.01, 0.25, 16);
  }

  @Test
  void a_root_of_third_order_is_found_within_the_bound() {
    assertRoot(x -> Math.pow(x - 0.3, 3.0), 0.0, 1.0, 0.3, 2 + RootFinder.most(1.0, TOLERANCE));
  }

  @Test
  void at_a_jump_the_last_place_before_it_is_found() {
    int most = 2 + RootFinder.most(1.0, TOLERANCE);
    assertRoot(x -> x < 0.377 ? x - 1.0 : x, 0.0, 1.0, 0.377, most);
    assertRoot(x -> x <= 0.377 ? -1.0 : 1.0, 0.0, 1.0, 0.377, most);
    assertRoot(x -> x > 0.377 ? -1.0 : 1.0, 1.0, 0.0, 0.377, most);
  }

  @Test
  void nan_and_infinite_values_count_as_beyond() {
    int most = 2 + RootFinder.most(1.0, TOLERANCE);
    assertRoot(x -> x <= 0.377 ? x - 1.0 : Double.NaN, 0.0, 1.0, 0.377, most);
    assertRoot(x -> x <= 0.377 ? x - 1.0 : Double.POSITIVE_INFINITY, 0.0, 1.0, 0.377, most);
    assertRoot(x -> Math.log(x) + 1.0, 0.0, 1.0, Math.exp(-1.0), most);
  }

  @Test
  void no_function_needs_more_than_halving_and_the_spare_steps() {
    SplittableRandom random = new SplittableRandom(12);
    int most = 2 + RootFinder.most(1.0, TOLERANCE);
    for (int i = 0; i < 20_000; i++) {
      double root = random.nextDouble();
      double before = Math.pow(10.0, random.nextDouble(-1.0, 1.0));
      double behind = Math.pow(10.0, random.nextDouble(-1.0, 1.0));
      double jump = Math.pow(10.0, random.nextDouble(-6.0, 2.0));
      double scale = Math.pow(10.0, random.nextDouble(-3.0, 3.0));
      Counted counted = new Counted(
          x -> x <= root ? -scale * Math.pow(root - x, before) : jump + Math.pow(x - root, behind));
      double found = RootFinder.find(counted, 0.0, 1.0, TOLERANCE);
      assertThat(counted.count).isLessThanOrEqualTo(most);
      if (before < 3.0) { // else the function is 0 to all digits well before
        assertThat(found).isCloseTo(root, within(2.0 * TOLERANCE));
      }
    }
  }

  @Test
  void the_bound_is_that_of_halving_and_six() {
    assertThat(RootFinder.most(1.0, 0.5)).isEqualTo(6);
    assertThat(RootFinder.most(1.0, 0.49)).isEqualTo(7);
    assertThat(RootFinder.most(1024.0, 0.5)).isEqualTo(16);
  }

  @Test
  void an_exact_zero_is_the_answer_after_a_look_behind_it_and_a_narrow_width_needs_none() {
    Counted atEnd = new Counted(x -> x - 1.0);
    assertThat(RootFinder.find(atEnd, 1.0, 2.0, TOLERANCE)).isEqualTo(1.0);
    assertThat(atEnd.count).isLessThanOrEqualTo(6);
    Counted narrow = new Counted(x -> x - 0.5);
    assertThat(RootFinder.find(narrow, 0.0, 1.0, 0.5)).isEqualTo(0.0);
    assertThat(narrow.count).isEqualTo(2);
    Counted inTheMiddle = new Counted(x -> x - 0.5);
    assertThat(RootFinder.find(inTheMiddle, 0.0, 1.0, TOLERANCE)).isEqualTo(0.5);
    assertThat(inTheMiddle.count).isEqualTo(4);
  }

  /** Behind a regulator that holds just what is asked for nothing is missing up to the flow at which it opens wide. */
  @Test
  void of_a_span_at_0_the_end_is_found() {
    DoubleUnaryOperator fromBegin = x -> Math.max(0.0, x - 0.3);
    assertThat(RootFinder.find(fromBegin, 0.0, 1.0, TOLERANCE))
        .isCloseTo(0.3, within(2.0 * TOLERANCE));
    DoubleUnaryOperator inBetween = x -> x < 0.2 ? x - 0.2 : Math.max(0.0, x * x - 0.25);
    assertThat(RootFinder.find(inBetween, 0.0, 1.0, TOLERANCE))
        .isCloseTo(0.5, within(2.0 * TOLERANCE));
    DoubleUnaryOperator onTheLeft = x -> Math.max(0.0, 0.3 - x);
    assertThat(RootFinder.find(onTheLeft, 1.0, 0.0, TOLERANCE))
        .isCloseTo(0.3, within(2.0 * TOLERANCE));
  }

  @Test
  void a_tolerance_below_what_a_double_can_tell_still_ends() {
    assertThat(RootFinder.find(x -> x - 1.0e6 / 3.0, 0.0, 1.0e6, 1.0e-30))
        .isCloseTo(1.0e6 / 3.0, within(8.0 * Math.ulp(1.0e6)));
  }

  @Test
  void points_that_do_not_bracket_are_refused() {
    DoubleUnaryOperator straight = x -> x;
    assertThatThrownBy(() -> RootFinder.find(straight, 1.0, 2.0, TOLERANCE))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("value within must be at most 0, was 1.0 at 1.0");
    assertThatThrownBy(() -> RootFinder.find(x -> Double.NaN, 1.0, 2.0, TOLERANCE))
        .hasMessage("value within must be at most 0, was NaN at 1.0");
    assertThatThrownBy(() -> RootFinder.find(straight, -2.0, 0.0, TOLERANCE))
        .hasMessage("value beyond must be above 0 or NaN, was 0.0 at 0.0");
    assertThatThrownBy(() -> RootFinder.find(straight, -1.0, 1.0, 0.0))
        .hasMessage("tolerance must be above 0, was 0.0");
    assertThatThrownBy(() -> RootFinder.find(straight, -1.0, 1.0, Double.NaN))
        .hasMessage("tolerance must be above 0, was NaN");
    assertThatThrownBy(() -> RootFinder.find(straight, -1.0, Double.POSITIVE_INFINITY, TOLERANCE))
        .hasMessage("points must be finite, were -1.0 and Infinity");
  }

  @Test
  void nothing_is_allocated() {
    com.sun.management.ThreadMXBean threads =
        (com.sun.management.ThreadMXBean) ManagementFactory.getThreadMXBean();
    DoubleUnaryOperator function = x -> x * x - 2.0;
    double sum = 0.0;
    for (int i = 0; i < 2_000; i++) {
      sum += RootFinder.find(function, 0.0, 3.0, TOLERANCE);
    }
    long before = threads.getCurrentThreadAllocatedBytes();
    for (int i = 0; i < 1_000; i++) {
      sum += RootFinder.find(function, 0.0, 3.0, TOLERANCE);
    }
    long bytes = threads.getCurrentThreadAllocatedBytes() - before;
    assertThat(sum).isCloseTo(3_000.0 * Math.sqrt(2.0), within(1.0e-6));
    assertThat(bytes).isLessThan(2_000); // a search that made one object each would need 16,000
  }
}
