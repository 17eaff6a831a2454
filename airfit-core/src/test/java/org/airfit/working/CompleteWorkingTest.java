package org.airfit.working;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;

import org.airfit.Pencil;
import org.airfit.source.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class CompleteWorkingTest {

  private static final Source DEFINITION = Source.handbook("definition");
  private static final Symbol FLOW = Symbol.of("ṁ", ValueKind.MASS_FLOW);
  private static final Symbol BORE = Symbol.of("D", ValueKind.LENGTH);
  private static final Symbol DENSITY = Symbol.of("ρ", ValueKind.DENSITY);
  private static final Symbol AREA = Symbol.of("A", ValueKind.AREA);
  private static final Symbol VELOCITY = Symbol.of("w", ValueKind.VELOCITY);
  private static final Symbol X = Symbol.of("x", ValueKind.NUMBER);
  private static final Symbol Y = Symbol.of("y", ValueKind.NUMBER);

  private static final Formula AREA_OF_BORE =
      Formula.of("Area of the bore", "⟨A⟩ = π/4 × ⟨D⟩²", DEFINITION, AREA, BORE);
  private static final Formula VELOCITY_IN_BORE =
      Formula.of("Velocity", "⟨w⟩ = ⟨ṁ⟩ / (⟨ρ⟩ × ⟨A⟩)", DEFINITION, VELOCITY, FLOW, DENSITY, AREA);
  private static final Formula GOLDEN =
      Formula.solvedFor(X, "Golden ratio", "⟨x⟩ = 1 + 1/⟨x⟩", DEFINITION);
  private static final Formula TWICE = Formula.of("Twice", "⟨y⟩ = 2 × ⟨x⟩", DEFINITION, Y, X);

  private static final double A = Math.PI / 4.0 * 0.0095 * 0.0095;
  private static final double W = 0.01 / (8.0 * A);
  private static final double PHI = (1.0 + Math.sqrt(5.0)) / 2.0;

  private static Working.Builder builder() {
    return Working.titled("Some working", UnitSystem.SI);
  }

  private static Working velocity(UnitSystem units) {
    return Working.titled("Velocity in the bore", units)
        .given(FLOW, 0.01, 4)
        .given(DENSITY, 8.0, 4)
        .given(BORE, 0.0095, 5)
        .step(AREA_OF_BORE, A, 5)
        .note("The bore is the measured one.")
        .step(VELOCITY_IN_BORE, W, 5)
        .answer(VELOCITY)
        .build();
  }

  private static String numbers(double x, int asked, int digits) {
    return builder()
        .given(X, x, asked)
        .step(TWICE, 2.0 * x, digits)
        .answer(Y)
        .build()
        .steps()
        .get(0)
        .inNumbers();
  }

  /** Of the first number six digits may have been typed; of the others four are enough for a result of two. */
  @Test
  void a_number_given_is_printed_as_it_was_typed_and_another_with_four_digits() {
    assertThat(numbers(1.23456, 8, 2)).isEqualTo("2 × 1.23456");
    assertThat(numbers(841300.0, 8, 2)).isEqualTo("2 × 841300");
    assertThat(numbers(0.1 + 0.2, 8, 2)).isEqualTo("2 × 0.3");
    assertThat(numbers(1.2345678, 8, 2)).isEqualTo("2 × 1.235");
    assertThat(numbers(1.2345678, 3, 2)).isEqualTo("2 × 1.23");
    assertThat(numbers(841312.34, 8, 2)).isEqualTo("2 × (8.413 × 10⁵)");
    assertThat(numbers(8.0e7, 8, 2)).isEqualTo("2 × (8 × 10⁷)");
  }

  /** Two to six digits: 2 × 1.23457 = 2.46914 is 2.469136 but for a hair, 2 × 1.2346 is not. */
  @Test
  void a_step_whose_result_needs_more_digits_prints_more() {
    assertThat(numbers(1.2345678, 8, 4)).isEqualTo("2 × 1.2346");
    assertThat(numbers(1.2345678, 8, 6)).isEqualTo("2 × 1.234568");
  }

  /** Four digits are printed, and the fifth and sixth must be right all the same. */
  @Test
  void a_result_of_four_digits_is_checked_to_six() {
    builder().given(X, 1.2345678, 8).step(TWICE, 2.469140, 4);
    assertThatIllegalStateException()
        .isThrownBy(() -> builder().given(X, 1.2345678, 8).step(TWICE, 2.469155, 4))
        .withMessageContaining("y = 2.469155 to 1.0E-5");
    builder().given(X, 1.2345678, 8).step(TWICE, 2.469, 4); // a number that was rounded
    builder().given(X, 1.2345678, 8).step(TWICE, 2.4687, 3);
  }

  /** Nothing to four digits is less than a unit of the fourth decimal. */
  @Test
  void nothing_is_checked_to_its_decimals() {
    Symbol z = Symbol.of("z", ValueKind.NUMBER);
    Formula difference = Formula.of("Difference", "⟨y⟩ = ⟨x⟩ − ⟨z⟩", DEFINITION, Y, X, z);
    builder().given(X, 1.00005, 8).given(z, 1.0, 8).step(difference, 0.0, 4);
    assertThatIllegalStateException()
        .isThrownBy(() -> builder().given(X, 1.0002, 8).given(z, 1.0, 8).step(difference, 0.0, 4));
  }

  /** A standard rounds its sizes: 5/16 in is 7.9375 mm, and 12.5 mm are 0.041010 ft. */
  @Test
  void a_length_of_few_digits_in_inches_or_micrometres_is_one_that_was_rounded() {
    Symbol half = Symbol.of("H", ValueKind.LENGTH);
    Formula twice = Formula.of("Twice", "⟨D⟩ = 2 × ⟨H⟩", DEFINITION, BORE, half);
    builder().given(half, 0.00793790 / 2.0, 8).step(twice, 0.0079375, 4);
    assertThatIllegalStateException()
        .isThrownBy(() -> builder().given(half, 0.0079376 / 2.0, 8).step(twice, 0.0079372, 4));
    Working.titled("Feet", UnitSystem.US).given(half, 0.0125001 / 2.0, 8).step(twice, 0.0125, 4);
    assertThatIllegalStateException()
        .isThrownBy(() -> Working.titled("Feet", UnitSystem.US)
            .given(half, 0.0125004 / 2.0, 8)
            .step(twice, 0.0125003, 4));
  }

  /**
   * By hand: (x − 1)² = 10⁻¹⁴ has its roots at 1 ± 10⁻⁷. A unit of the fourth digit, 0.001, to both sides moves the
   * residual by 2 × 10⁻⁷ for one of x. y known to 10⁻¹² moves x by 5 × 10⁻⁶, and with 10⁻⁵ of the sixth digit 1.5 ×
   * 10⁻⁵ are left open: a residual of 3 × 10⁻¹². In US units ten digits of the right side, 2, leave 2 × 10⁻³ more.
   */
  @Test
  void where_two_roots_lie_close_together_as_much_is_left_open_as_is_not_known() {
    Formula close = Formula.solvedFor(X, "Close roots", "⟨x⟩² + ⟨y⟩ = 2 × ⟨x⟩", DEFINITION, Y);
    double root = 1.0 + 1.0e-7;
    double y = 1.0 - 1.0e-14;
    for (UnitSystem units : UnitSystem.values()) {
      double open = units.either(3.0e-12, 2.0e-7 * (2.0e-3 + 1.5e-5));
      for (int sign = -1; sign <= 1; sign += 2) {
        double within = y + sign * 0.9 * open;
        double beyond = y + sign * 1.1 * open;
        Working.titled("Close", units).given(Y, within, 4).step(close, root, 4);
        assertThatIllegalStateException()
            .isThrownBy(
                () -> Working.titled("Close", units).given(Y, beyond, 4).step(close, root, 4))
            .withMessageContaining("has its root elsewhere");
      }
    }
  }

  /** Nobody pays in tens. */
  @Test
  void money_is_printed_whole() {
    Symbol cost = Symbol.of("K", ValueKind.MONEY);
    Formula price = Formula.of("Price", "⟨K⟩ = 2 × ⟨x⟩", DEFINITION, cost, X);
    Working working = builder()
        .given(X, 61_728.394, 9)
        .step(price, 123_456.788, 4)
        .answer(cost)
        .build();
    assertThat(working.toText()).contains("= 123457\n");
    Pencil.check(working);
  }

  @Test
  void values_are_given_once_and_found_by_their_symbols() {
    assertThat(velocity(UnitSystem.SI).toText()).isEqualTo("""
        Velocity in the bore
          Area of the bore
            A = π/4 × D²
              = π/4 × (0.0095 m)²
              = 7.0882 × 10⁻⁵ m²
            [definition (handbook)]
          The bore is the measured one.
          Velocity
            w = ṁ / (ρ × A)
              = (0.01 kg/s) / ((8 kg/m³) × (7.0882 × 10⁻⁵ m²))
              = 17.635 m/s
            [definition (handbook)]
        """);
    assertThat(velocity(UnitSystem.US).toText())
        .contains("(0.0220462 lb/s)", "ft²", "= 57.857 ft/s");
  }

  @ParameterizedTest
  @EnumSource
  void the_printed_numbers_give_the_printed_answer(UnitSystem units) {
    Pencil.check(velocity(units));
    Pencil.check(Working.titled("Root", units).step(GOLDEN, PHI, 6).answer(X).build());
  }

  @ParameterizedTest
  @EnumSource
  void a_step_that_is_left_out_is_missed(UnitSystem units) {
    Completeness.check(velocity(units));
    assertThat(velocity(units).ownSteps()).isEqualTo(2);
  }

  @Test
  void the_answer_is_told_as_printed() {
    assertThat(velocity(UnitSystem.SI).answers())
        .containsExactly(VELOCITY.term(W, 5, UnitSystem.SI));
  }

  /** 100 − 99.99: two digits of the difference need more than four of what it comes from. */
  @Test
  void what_is_put_in_gets_as_many_digits_as_the_result_needs() {
    Symbol z = Symbol.of("z", ValueKind.NUMBER);
    Formula difference = Formula.of("Difference", "⟨z⟩ = ⟨x⟩ − ⟨y⟩", DEFINITION, z, X, Y);
    Working working = builder()
        .given(X, 100.123456789, 4)
        .given(Y, 100.12, 4)
        .step(difference, 0.003456789, 2)
        .answer(z)
        .build();
    assertThat(working.toText()).contains("= 100.12346 − 100.12\n", "= 0.0035\n");
    Pencil.check(working);
  }

  @Test
  void a_root_gets_digits_by_how_steeply_it_moves() {
    Formula root = Formula.solvedFor(Y, "Root", "⟨y⟩² = ⟨x⟩", DEFINITION, X);
    Working working = builder()
        .given(X, 2.123456789, 1)
        .step(root, Math.sqrt(2.123456789), 6)
        .answer(Y)
        .build();
    assertThat(working.toText()).contains("check:  1.45721² = 2.12346\n");
    Pencil.check(working);
  }

  @Test
  void a_result_is_reused_in_another_unit_of_the_same_quantity() {
    Symbol p = Symbol.of("p", ValueKind.PRESSURE);
    Symbol said = p.as(ValueKind.SAID_PRESSURE);
    Symbol twice = Symbol.of("q", ValueKind.SAID_PRESSURE);
    Formula formula = Formula.of("Twice", "⟨q⟩ = 2 × ⟨p⟩", DEFINITION, twice, said);
    Working working =
        builder().given(p, 3.5e5, 5).step(formula, 7.0e5, 3).answer(twice).build();
    assertThat(working.toText()).contains("2 × (3.5 bar)", "= 7 bar");
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.9985, 1.0015, 0.5, -1.0})
  void a_result_that_the_formula_does_not_give_is_refused(double factor) {
    assertThatIllegalStateException()
        .isThrownBy(() -> builder().given(BORE, 0.0095, 5).step(AREA_OF_BORE, factor * A, 4))
        .withMessageStartingWith("\"Area of the bore\" must give what was computed, A = ")
        .withMessageEndingWith("but A = π/4 × D² gives 7.08821842466E-5");
    assertThatIllegalStateException()
        .isThrownBy(() -> builder().step(GOLDEN, factor * PHI, 4))
        .withMessageContaining("but x = 1 + 1/x has its root elsewhere, by ");
  }

  @Test
  void a_result_may_be_one_unit_of_its_last_digit_off() {
    builder().given(X, 1.0, 3).step(TWICE, 2.0099, 3);
    builder().given(X, 1.0, 3).step(TWICE, 1.9901, 3);
    assertThatIllegalStateException()
        .isThrownBy(() -> builder().given(X, 1.0, 3).step(TWICE, 2.0101, 3));
    assertThatIllegalStateException()
        .isThrownBy(() -> builder().given(X, 1.0, 3).step(TWICE, 1.9899, 3));
    builder().given(X, 0.0, 3).step(TWICE, 0.0, 3);
    assertThatIllegalStateException()
        .isThrownBy(() -> builder().given(X, 0.01, 3).step(TWICE, 0.0, 3));
    builder().given(X, 61_728.0, 3).step(TWICE, 123_456.9, 3);
    assertThatIllegalStateException()
        .isThrownBy(() -> builder().given(X, 61_728.0, 3).step(TWICE, 123_457.1, 3));
  }

  @Test
  void a_symbol_that_was_not_given_is_refused() {
    assertThatIllegalStateException()
        .isThrownBy(() -> builder().step(TWICE, 2.0, 3))
        .withMessage("every symbol must be given or found before, x of \"Twice\" was not");
  }

  @Test
  void what_is_given_or_found_must_be_used() {
    assertThatIllegalStateException()
        .isThrownBy(() -> builder().given(X, 1.0, 3).answer("Nothing.").build())
        .withMessage("what is given must be used or be the answer in \"Some working\", x is not");
    assertThatIllegalStateException()
        .isThrownBy(() ->
            builder().given(X, 1.0, 3).step(TWICE, 2.0, 3).answer("Nothing.").build())
        .withMessage("what is found must be used or be the answer in \"Some working\", y is not");
  }

  @Test
  void a_working_names_its_answer() {
    assertThatIllegalStateException()
        .isThrownBy(() -> builder().given(X, 1.0, 3).step(TWICE, 2.0, 3).build())
        .withMessage("\"Some working\" must name its answer");
    assertThatIllegalStateException()
        .isThrownBy(() -> builder().given(X, 1.0, 3).answer(X))
        .withMessage("an answer must be found by a step, x of \"Some working\" was given");
    assertThatIllegalStateException()
        .isThrownBy(() -> builder().answer(Y))
        .withMessage("every symbol must be given or found before, y of \"Some working\" was not");
  }

  @Test
  void an_answer_may_be_a_sentence() {
    Working still = builder().answer("Nothing flows, so nothing is lost.").build();
    assertThat(still.toText()).isEqualTo("Some working\n  Nothing flows, so nothing is lost.\n");
    assertThat(still.toMarkdown())
        .isEqualTo("### Some working\n\nNothing flows, so nothing is lost.\n\n");
    assertThat(still.toLatex())
        .isEqualTo("\\paragraph{Some working}\nNothing flows, so nothing is lost.\\par\n");
    assertThat(still.answers()).isEmpty();
    assertThatIllegalArgumentException()
        .isThrownBy(() -> builder().answer(" "))
        .withMessage("answer of a working must say something, was blank");
  }

  @Test
  void a_symbol_has_one_value_until_it_is_forgotten() {
    assertThatIllegalStateException()
        .isThrownBy(() -> builder().given(X, 1.0, 3).given(X, 2.0, 3))
        .withMessage(
            "a symbol must have one value in \"Some working\", x has two; forget the first where it ends");
    Symbol z = Symbol.of("z", ValueKind.NUMBER);
    Formula sum = Formula.of("Sum", "⟨z⟩ = ⟨x⟩ + ⟨y⟩", DEFINITION, z, X, Y);
    Working working = builder()
        .given(X, 1.0, 3)
        .step(TWICE, 2.0, 3)
        .forget(X)
        .given(X, 5.0, 3)
        .step(sum, 7.0, 3)
        .answer(z)
        .build();
    assertThat(working.toText()).contains("2 × 1\n", "5 + 2\n");
    Completeness.check(working);
  }

  @Test
  void only_what_was_used_is_forgotten() {
    assertThatIllegalStateException()
        .isThrownBy(() -> builder().given(X, 1.0, 3).forget(X))
        .withMessage("a symbol must be used before it is forgotten in \"Some working\", x was not");
    assertThatIllegalStateException().isThrownBy(() -> builder().forget(X));
  }

  @Test
  void a_symbol_keeps_its_quantity() {
    Symbol length = Symbol.of("x", ValueKind.LENGTH);
    assertThatIllegalStateException()
        .isThrownBy(() -> builder().given(length, 1.0, 3).step(TWICE, 2.0, 3))
        .withMessage("x of \"Twice\" must be in \"m\" as before, was in \"\"");
  }

  @Test
  void an_included_working_has_symbols_of_its_own() {
    Working inner = builder().given(X, 3.0, 3).step(TWICE, 6.0, 3).answer(Y).build();
    Working outer = Working.titled("Outer", UnitSystem.SI)
        .include(inner)
        .given(X, 1.0, 3)
        .step(TWICE, 2.0, 3)
        .answer(Y)
        .build();
    assertThat(outer.steps()).hasSize(2);
    Completeness.check(outer);
  }

  @Test
  void an_answer_of_an_included_working_is_taken_by_name() {
    Working inner = builder().step(GOLDEN, PHI, 6).answer(X).build();
    Working outer = Working.titled("Outer", UnitSystem.SI)
        .include(inner, X)
        .step(TWICE, 2.0 * PHI, 6)
        .answer(Y)
        .build();
    assertThat(outer.toText()).contains("= 2 × 1.618034\n", "= 3.23607\n");
    assertThat(Working.titled("Outer", UnitSystem.SI)
            .include(inner, X)
            .answer(X)
            .build()
            .answers())
        .containsExactly(X.term(PHI, 6, UnitSystem.SI));
    assertThatIllegalStateException()
        .isThrownBy(() -> Working.titled("Outer", UnitSystem.SI)
            .include(inner, X)
            .answer("Nothing.")
            .build())
        .withMessage("what is found must be used or be the answer in \"Outer\", x is not");
  }

  @Test
  void the_only_answer_of_an_included_working_may_get_another_name() {
    Symbol x1 = Symbol.of("x1", ValueKind.NUMBER);
    Symbol x2 = Symbol.of("x2", ValueKind.NUMBER);
    Formula sum = Formula.of("Sum", "⟨y⟩ = ⟨x1⟩ + ⟨x2⟩", DEFINITION, Y, x1, x2);
    Working inner = builder().step(GOLDEN, PHI, 6).answer(X).build();
    Working outer = Working.titled("Outer", UnitSystem.SI)
        .include(inner, x1)
        .include(inner, x2)
        .step(sum, 2.0 * PHI, 6)
        .answer(Y)
        .build();
    Pencil.check(outer);
    assertThatIllegalStateException()
        .isThrownBy(() -> builder().include(inner, x1, x2))
        .withMessage("x1 must be an answer of \"Some working\"");
    assertThatIllegalStateException()
        .isThrownBy(() -> builder().include(inner, BORE))
        .withMessage("D must be in \"\" as in \"Some working\", was in \"m\"");
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY})
  void what_is_no_number_is_never_put_in(double value) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> builder().given(X, value, 3))
        .withMessage("a number to print must be finite, was " + value);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> builder().given(X, 1.0, 3).step(TWICE, value, 3));
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 18})
  void digits_have_bounds(int digits) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> builder().given(X, 1.0, digits))
        .withMessage("digits must be in [1, 17], was " + digits);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> builder().given(X, 1.0, 3).step(TWICE, 2.0, digits));
  }

  @Test
  @SuppressWarnings("NullAway") // the point is what happens to callers without such a check
  void nothing_is_not_a_part_of_a_working() {
    assertThatNullPointerException()
        .isThrownBy(() -> Working.titled("Some working", null))
        .withMessage("units");
    assertThatNullPointerException().isThrownBy(() -> builder().given(null, 1.0, 3));
    assertThatNullPointerException().isThrownBy(() -> builder().step(null, 1.0, 3));
    assertThatNullPointerException().isThrownBy(() -> builder().answer((String) null));
  }
}
