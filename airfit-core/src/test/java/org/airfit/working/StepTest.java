package org.airfit.working;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;
import static org.assertj.core.api.Assertions.within;

import java.lang.reflect.Modifier;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.airfit.source.Source;
import org.junit.jupiter.api.Test;

class StepTest {

  private static final Source SOURCE = Source.handbook("definition");
  private static final Symbol D = Symbol.of("D", ValueKind.LENGTH);
  private static final Symbol A = Symbol.of("A", ValueKind.AREA);
  private static final Symbol P = Symbol.of("p", ValueKind.SAID_PRESSURE);
  private static final Symbol P1 = Symbol.of("p1", ValueKind.SAID_PRESSURE);
  private static final Symbol P2 = Symbol.of("p2", ValueKind.SAID_PRESSURE);
  private static final Symbol P12 = Symbol.of("p12", ValueKind.SAID_PRESSURE);
  private static final Symbol X = Symbol.of("x", ValueKind.NUMBER);
  private static final Symbol Y = Symbol.of("y", ValueKind.NUMBER);
  private static final Symbol Z = Symbol.of("z", ValueKind.NUMBER);
  private static final Formula AREA =
      Formula.of("Area of the bore", "⟨A⟩ = π/4 × ⟨D⟩²", SOURCE, A, D);

  private static Working.Builder builder() {
    return Working.titled("Some working", UnitSystem.SI);
  }

  private static Step only(Working working) {
    assertThat(working.steps()).hasSize(1);
    return working.steps().get(0);
  }

  private static Step area(double bore, int digits) {
    return only(builder()
        .given(D, bore, 5)
        .step(AREA, Math.PI / 4.0 * bore * bore, digits)
        .answer(A)
        .build());
  }

  private static Step area() {
    return area(0.0095, 7);
  }

  /** x = 1 + 1/x has the golden ratio for its root. */
  private static Step golden() {
    Formula golden = Formula.solvedFor(X, "Golden ratio", "⟨x⟩ = 1 + 1/⟨x⟩", SOURCE);
    return only(
        builder().step(golden, (1.0 + Math.sqrt(5.0)) / 2.0, 6).answer(X).build());
  }

  private static Step square(double x, ValueKind kind) {
    Symbol side = Symbol.of("x", kind);
    Formula square = Formula.of("Square", "⟨y⟩ = ⟨x⟩²", SOURCE, Y, side);
    return only(builder().given(side, x, 4).step(square, x * x, 4).answer(Y).build());
  }

  @Test
  void the_equation_is_shown_in_symbols_and_in_numbers() {
    assertThat(area().inSymbols()).isEqualTo("A = π/4 × D²");
    assertThat(area().inNumbers()).isEqualTo("π/4 × (0.0095 m)²");
    assertThat(area().result().quantity()).isEqualTo("7.088218 × 10⁻⁵ m²");
  }

  @Test
  void the_same_stands_in_latex() {
    assertThat(area().latexInSymbols()).isEqualTo("{A} = \\frac{\\pi}{4} \\cdot {D}^2");
    assertThat(area().latexInNumbers())
        .isEqualTo("\\frac{\\pi}{4} \\cdot {(0.0095\\,\\mathrm{m})}^2");
  }

  @Test
  void a_step_keeps_what_its_formula_says() {
    assertThat(area().what()).isEqualTo("Area of the bore");
    assertThat(area().equation()).isEqualTo("⟨A⟩ = π/4 × ⟨D⟩²");
    assertThat(area().latex()).isEqualTo("⟨A⟩ = \\frac{\\pi}{4} \\cdot ⟨D⟩^2");
    assertThat(area().source()).isEqualTo(SOURCE);
    assertThat(area().given()).containsExactly(D.term(0.0095, 5, UnitSystem.SI));
    assertThat(area().implicit()).isFalse();
    assertThat(golden().implicit()).isTrue();
    assertThat(area()).hasToString("Area of the bore: A = π/4 × D²");
  }

  /** Rounding the bore to 5 digits moves nothing here, so the result may be half its own last digit off. */
  @Test
  void the_printed_numbers_worked_again_give_the_printed_result() {
    Matcher printed = Pattern.compile("π/4 × \\(([0-9.]+) m\\)²").matcher(area().inNumbers());
    assertThat(printed.matches()).isTrue();
    double bore = Double.parseDouble(printed.group(1));
    assertThat(Math.PI / 4.0 * bore * bore)
        .isCloseTo(Double.parseDouble(area().result().value()), within(0.5e-11));
  }

  @Test
  void a_solved_step_shows_both_sides_with_the_result_put_in() {
    assertThat(golden().inSymbols()).isEqualTo("x = 1 + 1/x");
    assertThat(golden().inNumbers()).isEqualTo("1.61803 = 1 + 1/1.61803");
    assertThat(golden().latexInNumbers()).isEqualTo("{1.61803} = 1 + \\frac{1}{{1.61803}}");
  }

  @Test
  void a_solved_step_may_hold_its_result_anywhere() {
    Formula outlet = Formula.solvedFor(P2, "Outlet", "⟨p1⟩² − ⟨p2⟩² = 7", SOURCE, P1);
    Step step =
        only(builder().given(P1, 4.0e5, 4).step(outlet, 3.0e5, 4).answer(P2).build());
    assertThat(step.inNumbers()).isEqualTo("(4 bar)² − (3 bar)² = 7");
  }

  @Test
  void a_number_that_would_fall_apart_in_a_product_or_a_power_is_bracketed() {
    assertThat(square(3.0, ValueKind.NUMBER).inNumbers()).isEqualTo("3²");
    assertThat(square(3.0, ValueKind.LENGTH).inNumbers()).isEqualTo("(3 m)²");
    assertThat(square(-3.0, ValueKind.NUMBER).inNumbers()).isEqualTo("(-3)²");
    assertThat(square(3.0e-6, ValueKind.NUMBER).inNumbers()).isEqualTo("(3 × 10⁻⁶)²");
    assertThat(square(3.0e-6, ValueKind.NUMBER).latexInNumbers())
        .isEqualTo("{(3 \\times 10^{-6})}^2");
  }

  @Test
  void symbols_that_begin_alike_are_not_mixed_up() {
    Formula sum = Formula.of("Sum", "⟨p⟩ = ⟨p1⟩ + ⟨p12⟩", SOURCE, P, P1, P12);
    Step step = only(builder()
        .given(P1, 1.0e5, 4)
        .given(P12, 2.0e5, 4)
        .step(sum, 3.0e5, 4)
        .answer(P)
        .build());
    assertThat(step.inSymbols()).isEqualTo("p = p1 + p12");
    assertThat(step.inNumbers()).isEqualTo("(1 bar) + (2 bar)");
  }

  @Test
  void a_symbol_without_a_value_is_refused() {
    Formula sum = Formula.of("Sum", "⟨y⟩ = ⟨x⟩ + ⟨z⟩", SOURCE, Y, X, Z);
    assertThatIllegalStateException()
        .isThrownBy(() -> builder().given(X, 1.0, 4).step(sum, 1.0, 4))
        .withMessage("every symbol must be given or found before, z of \"Sum\" was not");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Formula.of("Sum", "⟨y⟩ = ⟨x⟩ + ⟨z⟩", SOURCE, Y, X))
        .withMessage("symbol z of \"⟨y⟩ = ⟨x⟩ + ⟨z⟩\" must be among the symbols given");
  }

  @Test
  void a_bracket_without_its_partner_is_refused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Formula.of("Sum", "⟨y⟩ = ⟨x⟩ + z⟩", SOURCE, Y, X))
        .withMessageStartingWith("definition \"⟨y⟩ = ⟨x⟩ + z⟩\" must have ");
  }

  @Test
  void a_value_that_the_equation_does_not_show_is_refused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Formula.of("Same", "⟨y⟩ = ⟨x⟩", SOURCE, Y, X, Z))
        .withMessage("every symbol of a formula must stand in it, z is not in \"⟨y⟩ = ⟨x⟩\"");
    Formula same = Formula.of("Same", "⟨y⟩ = ⟨x⟩", SOURCE, Y, X);
    assertThatIllegalStateException()
        .isThrownBy(() -> builder()
            .given(X, 1.0, 4)
            .given(Z, 1.0, 4)
            .step(same, 1.0, 4)
            .answer(Y)
            .build())
        .withMessage("what is given must be used or be the answer in \"Some working\", z is not");
  }

  @Test
  void a_symbol_has_one_value() {
    assertThatIllegalStateException()
        .isThrownBy(() -> builder().given(X, 1.0, 4).given(X, 2.0, 4))
        .withMessageStartingWith("a symbol must have one value in \"Some working\", x has two");
    Formula two = Formula.of("Two", "⟨y⟩ = 2", SOURCE, Y);
    assertThatIllegalStateException()
        .isThrownBy(() -> builder().given(Y, 2.0, 4).step(two, 2.0, 4))
        .withMessageStartingWith("a symbol must have one value in \"Some working\", y has two");
  }

  @Test
  void unless_solved_the_result_stands_alone_on_the_left() {
    for (String equation : List.of("⟨y⟩/2 = ⟨x⟩", "⟨y⟩ = ⟨x⟩ + ⟨y⟩")) {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> Formula.of("Some step", equation, SOURCE, Y, X))
          .withMessage("result must stand alone on the left of \"" + equation
              + "\"; a formula that is solved may hold it anywhere");
    }
    assertThat(Formula.of("Some step", "⟨x⟩ = ⟨y⟩", SOURCE, Y, X).result()).isEqualTo(X);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Formula.of("Some step", "⟨y⟩ > ⟨x⟩", SOURCE, Y, X))
        .withMessageStartingWith("definition \"⟨y⟩ > ⟨x⟩\" must have ");
  }

  @Test
  void a_step_says_what_it_finds() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> AREA.named(" "))
        .withMessage("name of a formula must say something, was blank");
  }

  @Test
  @SuppressWarnings("NullAway") // the point is what happens to callers without such a check
  void nothing_is_not_a_part_of_a_step() {
    assertThatNullPointerException().isThrownBy(() -> AREA.named(null));
    assertThatNullPointerException().isThrownBy(() -> AREA.from(null)).withMessage("source");
    assertThatNullPointerException().isThrownBy(() -> builder().step(null, 1.0, 4));
    assertThatNullPointerException().isThrownBy(() -> builder().step(null, 4));
  }

  @Test
  void what_a_step_was_given_does_not_change() {
    assertThatExceptionOfType(UnsupportedOperationException.class)
        .isThrownBy(() -> area().given().clear());
  }

  @Test
  void steps_are_compared_by_value() {
    assertThat(area()).isEqualTo(area()).hasSameHashCodeAs(area());
    assertThat(area())
        .isNotEqualTo(area(0.0096, 7))
        .isNotEqualTo(area(0.0095, 6))
        .isNotEqualTo(golden())
        .isNotEqualTo("Area of the bore: A = π/4 × D²");
    for (Formula other : List.of(AREA.named("Area"), AREA.from(Source.demo("a drawing")))) {
      assertThat(only(builder()
              .given(D, 0.0095, 5)
              .step(other, Math.PI / 4.0 * 0.0095 * 0.0095, 7)
              .answer(A)
              .build()))
          .isNotEqualTo(area());
    }
  }

  @Test
  void nobody_else_can_make_a_step() {
    assertThat(Step.class.getConstructors()).isEmpty();
    assertThat(Step.class.getMethods())
        .filteredOn(method -> Modifier.isStatic(method.getModifiers()))
        .isEmpty();
  }
}
