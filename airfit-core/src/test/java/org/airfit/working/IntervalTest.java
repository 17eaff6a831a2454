package org.airfit.working;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;

import java.util.Map;
import java.util.Random;
import java.util.function.BinaryOperator;
import java.util.function.DoubleBinaryOperator;
import java.util.function.DoubleUnaryOperator;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.airfit.source.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What an interval holds is held against many numbers from inside its operands. */
class IntervalTest {

  private static final int INTERVALS = 3_000;
  private static final int NUMBERS = 40;

  /** How much wider than its ends demand an interval may be: a last place or so of each end. */
  private static final double TIGHT = 1.0e-12;

  private record Rule(
      String name,
      DoubleUnaryOperator exact,
      UnaryOperator<Interval> rule,
      double from,
      double to,
      boolean isMonotone) {

    @Override
    public String toString() {
      return name;
    }
  }

  private static Stream<Rule> rules() {
    return Stream.of(
        new Rule("root", Math::sqrt, Interval::root, 0.0, 50.0, true),
        new Rule("ln", Math::log, Interval::ln, 1.0e-3, 50.0, true),
        new Rule("log10", Math::log10, Interval::log10, 1.0e-3, 50.0, true),
        new Rule("exp", Math::exp, Interval::exp, -20.0, 20.0, true),
        new Rule("tan", x -> Math.tan(Math.toRadians(x)), Interval::tan, -89.0, 89.0, true),
        new Rule("negative", x -> -x, Interval::negative, -5.0, 5.0, true),
        new Rule("square", x -> x * x, x -> x.power(2), -5.0, 5.0, false),
        new Rule("cube", x -> x * x * x, x -> x.power(3), -5.0, 5.0, true),
        new Rule("fourth", x -> x * x * x * x, x -> x.power(4), -5.0, 5.0, false),
        new Rule("fifth", x -> Math.pow(x, 5.0), x -> x.power(5), -5.0, 5.0, true),
        new Rule("square of a base", x -> x * x, x -> x.power(Interval.of(2.0)), -5.0, 5.0, false),
        new Rule(
            "power 1.7", x -> Math.pow(x, 1.7), x -> x.power(Interval.of(1.7)), 0.0, 9.0, true),
        new Rule(
            "power −0.25",
            x -> Math.pow(x, -0.25),
            x -> x.power(Interval.of(-0.25)),
            0.01,
            9.0,
            true),
        new Rule(
            "power −2 of what is below 0",
            x -> 1.0 / (x * x),
            x -> x.power(Interval.of(-2.0)),
            -9.0,
            -0.1,
            true));
  }

  private static double between(Random random, double from, double to) {
    return from + random.nextDouble() * (to - from);
  }

  private static Interval some(Random random, double from, double to) {
    double one = between(random, from, to);
    // narrow ones as well as wide ones
    double width = Math.pow(10.0, -8.0 * random.nextDouble()) * (to - from);
    return new Interval(Math.max(from, one - 0.5 * width), Math.min(to, one + 0.5 * width));
  }

  @ParameterizedTest
  @MethodSource("rules")
  void a_rule_holds_every_number_and_is_no_wider_than_it_must(Rule rule) {
    Random random = new Random(51);
    for (int i = 0; i < INTERVALS; i++) {
      Interval x = some(random, rule.from, rule.to);
      Interval found = rule.rule.apply(x);
      double least = Double.POSITIVE_INFINITY;
      double most = Double.NEGATIVE_INFINITY;
      for (int j = 0; j <= NUMBERS; j++) {
        double number = j == 0 ? x.lo() : j == 1 ? x.hi() : between(random, x.lo(), x.hi());
        double exact = rule.exact.applyAsDouble(number);
        assertThat(found.holds(exact)).as("%s of %s in %s", rule, number, found).isTrue();
        least = Math.min(least, exact);
        most = Math.max(most, exact);
      }
      if (rule.isMonotone) {
        double size = Math.max(Math.abs(least), Math.abs(most));
        assertThat(found.width()).isLessThanOrEqualTo(most - least + TIGHT * size + 1.0e-300);
      }
    }
  }

  private static Stream<Arguments> operations() {
    return Stream.of(
        operation("plus", Double::sum, Interval::plus, -9.0),
        operation("minus", (x, y) -> x - y, Interval::minus, -9.0),
        operation("times", (x, y) -> x * y, Interval::times, -9.0),
        operation("over", (x, y) -> x / y, Interval::over, -9.0),
        operation("power", Math::pow, Interval::power, 0.01));
  }

  private static Arguments operation(
      String name, DoubleBinaryOperator exact, BinaryOperator<Interval> rule, double from) {
    return Arguments.of(name, exact, rule, from);
  }

  /** Each is monotone in either operand, or ends at corners: it is tight, for its ends are met there. */
  @ParameterizedTest(name = "{0}")
  @MethodSource("operations")
  void an_operation_holds_every_number_and_ends_at_corners(
      String name, DoubleBinaryOperator exact, BinaryOperator<Interval> rule, double from) {
    Random random = new Random(52);
    int there = 0;
    for (int i = 0; i < INTERVALS; i++) {
      Interval x = some(random, from, 9.0);
      Interval y = some(random, -4.0, 4.0);
      Interval found = rule.apply(x, y);
      if (!found.isThere()) {
        assertThat(name).as("%s, %s", x, y).isEqualTo("over");
        assertThat(y.holds(0.0)).isTrue();
        continue;
      }
      there++;
      double least = Double.POSITIVE_INFINITY;
      double most = Double.NEGATIVE_INFINITY;
      for (int j = 0; j < NUMBERS; j++) {
        double one = j < 4 ? (j % 2 == 0 ? x.lo() : x.hi()) : between(random, x.lo(), x.hi());
        double other = j < 4 ? (j < 2 ? y.lo() : y.hi()) : between(random, y.lo(), y.hi());
        double result = exact.applyAsDouble(one, other);
        assertThat(found.holds(result))
            .as("%s of %s and %s in %s", name, one, other, found)
            .isTrue();
        least = Math.min(least, result);
        most = Math.max(most, result);
      }
      double size = Math.max(Math.abs(least), Math.abs(most)) + Math.abs(x.hi()) + Math.abs(x.lo());
      assertThat(found.width()).isLessThanOrEqualTo(most - least + TIGHT * size);
    }
    assertThat(there).isGreaterThan(INTERVALS / 2);
  }

  @Test
  void what_has_no_result_somewhere_has_no_interval() {
    assertThat(new Interval(-1.0e-9, 1.0).root().isThere()).isFalse();
    assertThat(new Interval(0.0, 1.0).ln().isThere()).isFalse();
    assertThat(new Interval(0.0, 1.0).log10().isThere()).isFalse();
    assertThat(Interval.of(1.0).over(new Interval(-1.0, 1.0)).isThere()).isFalse();
    assertThat(Interval.of(1.0).over(new Interval(0.0, 1.0)).isThere()).isFalse();
    assertThat(new Interval(80.0, 90.0).tan().isThere()).isFalse();
    assertThat(new Interval(-1.0, 1.0).power(Interval.of(0.5)).isThere()).isFalse();
    assertThat(new Interval(0.0, 1.0).power(Interval.of(-1.0)).isThere()).isFalse();
    assertThat(new Interval(700.0, 800.0).exp().isThere()).isFalse();
    assertThat(Interval.NONE.plus(Interval.of(1.0)).isThere()).isFalse();
    assertThat(Interval.of(1.0).with(Interval.NONE).isThere()).isFalse();
    assertThat(Interval.NONE.holds(0.0)).isFalse();
  }

  @Test
  void a_printed_number_is_held_between_its_neighbours() {
    Interval tenth = Interval.ofPrinted(0.1);
    assertThat(tenth.lo()).isLessThan(0.1);
    assertThat(tenth.hi()).isGreaterThan(0.1);
    assertThat(tenth.width()).isLessThan(1.0e-16);
    assertThat(Interval.of(0.1).plus(Interval.of(0.2)).holds(0.3)).isTrue();
  }

  private static final Symbol X = Symbol.of("x", ValueKind.NUMBER);
  private static final Symbol Y = Symbol.of("y", ValueKind.NUMBER);
  private static final Symbol Z = Symbol.of("z", ValueKind.NUMBER);

  private static Formula formula(String right, Symbol... symbols) {
    Symbol[] all = new Symbol[symbols.length + 1];
    all[0] = Z;
    System.arraycopy(symbols, 0, all, 1, symbols.length);
    return Formula.of("Something", "⟨z⟩ = " + right, Source.handbook("definition"), all);
  }

  /**
   * Symbols that stand twice: what is sampled is never missed. Of what the plain interval is too wide by, cutting into
   * 32 pieces leaves a part in proportion (Moore); a sixteenth is allowed, for the sample misses the ends.
   */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "⟨x⟩ − ⟨x⟩ × ⟨y⟩",
        "(⟨x⟩ + ⟨y⟩) / (⟨x⟩ + 1)",
        "⟨x⟩² − ⟨x⟩ + ln(⟨x⟩ × ⟨y⟩)",
        "1 / (0.25 + ⟨y⟩)^⟨x⟩ + exp(−⟨x⟩)",
        "log10(⟨y⟩ / 3.7 + 5.74 / ⟨x⟩^0.9)² + ⟨x⟩"
      })
  void an_equation_holds_every_number_of_its_symbols(String right) {
    Formula formula = formula(right, X, Y);
    Random random = new Random(53);
    int cut = 0;
    for (int i = 0; i < 300; i++) {
      Interval x = some(random, 0.5, 3.0);
      Interval y = some(random, 0.05, 0.5);
      Interval found = formula.bounds(UnitSystem.SI, Map.of("x", x, "y", y));
      double least = Double.POSITIVE_INFINITY;
      double most = Double.NEGATIVE_INFINITY;
      for (int j = 0; j <= 20; j++) {
        for (int k = 0; k <= 20; k++) {
          double result = formula.right(
              UnitSystem.SI,
              Map.of("x", x.lo() + j / 20.0 * x.width(), "y", y.lo() + k / 20.0 * y.width()));
          assertThat(found.holds(result)).as("%s in %s", result, found).isTrue();
          least = Math.min(least, result);
          most = Math.max(most, result);
        }
      }
      double plain = ExpressionReader.read("⟨z⟩ = " + right, UnitSystem.SI)
          .right()
          .bounds(symbol -> symbol.equals("x") ? x : y)
          .width();
      assertThat(found.width())
          .isLessThanOrEqualTo(most - least + (plain - most + least) / 16.0 + 1.0e-12);
      cut += found.width() < 0.999 * plain ? 1 : 0;
    }
    assertThat(cut).as("bounds that cutting made narrower").isGreaterThan(0);
  }

  @Test
  void operations_are_counted_as_a_pencil_does_them() {
    assertThat(formula("⟨x⟩", X).operations(UnitSystem.SI)).isZero();
    assertThat(formula("⟨x⟩ + 1", X).operations(UnitSystem.SI)).isEqualTo(1);
    assertThat(formula("−⟨x⟩² / (2 × √(1 + ⟨y⟩))", X, Y).operations(UnitSystem.SI))
        .isEqualTo(5);
    assertThat(formula("⟨x⟩^(1 / ⟨y⟩)", X, Y).operations(UnitSystem.SI)).isEqualTo(2);
    Formula us = formula("⟨x⟩ × [144]", X);
    assertThat(us.operations(UnitSystem.SI)).isZero();
    assertThat(us.operations(UnitSystem.US)).isEqualTo(1);
  }

  @Test
  void no_card_works_out_the_gamma_function() {
    Formula gamma = formula("Q(⟨x⟩, ⟨y⟩)", X, Y);
    assertThatIllegalStateException()
        .isThrownBy(() ->
            gamma.bounds(UnitSystem.SI, Map.of("x", Interval.of(1.0), "y", Interval.of(1.0))));
  }
}
