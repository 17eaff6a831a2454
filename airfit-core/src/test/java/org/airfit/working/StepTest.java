package org.airfit.working;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.airfit.source.Source;
import org.junit.jupiter.api.Test;

class StepTest {

  private static final Source SOURCE = Source.handbook("definition");
  private static final Term D = Term.of("D", "D", 0.0095, "m", 5);
  private static final Term A = Term.of("A", "A", Math.PI / 4.0 * 0.0095 * 0.0095, "m²", 7);
  private static final String AREA = "⟨A⟩ = π/4 × ⟨D⟩²";
  private static final String AREA_LATEX = "⟨A⟩ = \\frac{\\pi}{4} ⟨D⟩^2";

  private static Step area() {
    return new Step("Area of the bore", AREA, AREA_LATEX, List.of(D), A, false, SOURCE);
  }

  /** x = 1 + 1/x has the golden ratio for its root. */
  private static Step golden() {
    Term x = Term.of("x", "x", (1.0 + Math.sqrt(5.0)) / 2.0, "", 6);
    return new Step(
        "Golden ratio", "⟨x⟩ = 1 + 1/⟨x⟩", "⟨x⟩ = 1 + 1/⟨x⟩", List.of(), x, true, SOURCE);
  }

  private static Step step(String equation, Term result, Term... given) {
    return new Step("Some step", equation, equation, List.of(given), result, false, SOURCE);
  }

  private static Term term(String symbol, double value, String unit) {
    return Term.of(symbol, symbol, value, unit, 4);
  }

  @Test
  void the_equation_is_shown_in_symbols_and_in_numbers() {
    assertThat(area().inSymbols()).isEqualTo("A = π/4 × D²");
    assertThat(area().inNumbers()).isEqualTo("π/4 × (0.0095 m)²");
    assertThat(area().result().quantity()).isEqualTo("7.088218e-5 m²");
  }

  @Test
  void the_same_stands_in_latex() {
    assertThat(area().latexInSymbols()).isEqualTo("{A} = \\frac{\\pi}{4} {D}^2");
    assertThat(area().latexInNumbers()).isEqualTo("\\frac{\\pi}{4} {(0.0095\\,\\mathrm{m})}^2");
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
    assertThat(golden().latexInNumbers()).isEqualTo("{1.61803} = 1 + 1/{1.61803}");
  }

  @Test
  void a_solved_step_may_hold_its_result_anywhere() {
    Term p2 = term("p2", 3.0, "bar");
    Step step = new Step(
        "Outlet",
        "⟨p1⟩² − ⟨p2⟩² = 7",
        "⟨p1⟩^2 - ⟨p2⟩^2 = 7",
        List.of(term("p1", 4.0, "bar")),
        p2,
        true,
        SOURCE);
    assertThat(step.inNumbers()).isEqualTo("(4 bar)² − (3 bar)² = 7");
  }

  @Test
  void a_number_that_would_fall_apart_in_a_product_or_a_power_is_bracketed() {
    Term y = term("y", 1.0, "");
    String square = "⟨y⟩ = ⟨x⟩²";
    assertThat(step(square, y, term("x", 3.0, "")).inNumbers()).isEqualTo("3²");
    assertThat(step(square, y, term("x", 3.0, "m")).inNumbers()).isEqualTo("(3 m)²");
    assertThat(step(square, y, term("x", -3.0, "")).inNumbers()).isEqualTo("(-3)²");
    assertThat(step(square, y, term("x", 3.0e-6, "")).inNumbers()).isEqualTo("(3e-6)²");
    assertThat(step(square, y, term("x", 3.0e-6, "")).latexInNumbers())
        .isEqualTo("{(3 \\times 10^{-6})}²");
  }

  @Test
  void symbols_that_begin_alike_are_not_mixed_up() {
    Step step = step(
        "⟨p⟩ = ⟨p1⟩ + ⟨p12⟩",
        term("p", 3.0, "bar"),
        term("p1", 1.0, "bar"),
        term("p12", 2.0, "bar"));
    assertThat(step.inSymbols()).isEqualTo("p = p1 + p12");
    assertThat(step.inNumbers()).isEqualTo("(1 bar) + (2 bar)");
  }

  @Test
  void a_symbol_without_a_value_is_refused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> step("⟨y⟩ = ⟨x⟩ + ⟨z⟩", term("y", 1.0, ""), term("x", 1.0, "")))
        .withMessage("every symbol of \"⟨y⟩ = ⟨x⟩ + ⟨z⟩\" must be given or be the result");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Step("Area", AREA, "⟨A⟩ = ⟨k⟩ ⟨D⟩^2", List.of(D), A, false, SOURCE))
        .withMessageStartingWith("every symbol of \"⟨A⟩ = ⟨k⟩ ⟨D⟩^2\"");
  }

  @Test
  void a_bracket_without_its_partner_is_refused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> step("⟨y⟩ = ⟨x⟩ + z⟩", term("y", 1.0, ""), term("x", 1.0, "")))
        .withMessageContaining("must be given or be the result");
  }

  @Test
  void a_value_that_the_equation_does_not_show_is_refused() {
    assertThatIllegalArgumentException()
        .isThrownBy(
            () -> step("⟨y⟩ = ⟨x⟩", term("y", 1.0, ""), term("x", 1.0, ""), term("z", 1.0, "")))
        .withMessage("every value of a step must stand in its equation, z is not in \"⟨y⟩ = ⟨x⟩\"");
    assertThatIllegalArgumentException()
        .isThrownBy(
            () -> new Step("Area", AREA, "⟨A⟩ = 7.09\\cdot 10^{-5}", List.of(D), A, false, SOURCE))
        .withMessageContaining("D is not in \"⟨A⟩ = 7.09");
  }

  @Test
  void a_symbol_has_one_value() {
    assertThatIllegalArgumentException()
        .isThrownBy(
            () -> step("⟨y⟩ = ⟨x⟩", term("y", 1.0, ""), term("x", 1.0, ""), term("x", 2.0, "")))
        .withMessage("every symbol of a step must have one value, x has two");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> step("⟨y⟩ = 2", term("y", 1.0, ""), term("y", 2.0, "")))
        .withMessage("every symbol of a step must have one value, y has two");
  }

  @Test
  void unless_solved_the_result_stands_alone_on_the_left() {
    for (String equation : List.of("⟨y⟩/2 = ⟨x⟩", "⟨x⟩ = ⟨y⟩", "⟨y⟩ = ⟨x⟩ + ⟨y⟩", "⟨y⟩ > ⟨x⟩")) {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> step(equation, term("y", 1.0, ""), term("x", 1.0, "")))
          .withMessage("result must stand alone on the left of \"" + equation
              + "\", was ⟨y⟩; a step that is solved may hold it anywhere");
    }
  }

  @Test
  void a_step_says_what_it_finds() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Step(" ", AREA, AREA_LATEX, List.of(D), A, false, SOURCE))
        .withMessage("name of a step must say something, was blank");
  }

  @Test
  @SuppressWarnings("NullAway") // the point is what happens to callers without such a check
  void nothing_is_not_a_part_of_a_step() {
    assertThatNullPointerException()
        .isThrownBy(() -> new Step(null, AREA, AREA_LATEX, List.of(D), A, false, SOURCE));
    assertThatNullPointerException()
        .isThrownBy(() -> new Step("Area", null, AREA_LATEX, List.of(D), A, false, SOURCE));
    assertThatNullPointerException()
        .isThrownBy(() -> new Step("Area", AREA, null, List.of(D), A, false, SOURCE));
    assertThatNullPointerException()
        .isThrownBy(() -> new Step("Area", AREA, AREA_LATEX, null, A, false, SOURCE));
    assertThatNullPointerException()
        .isThrownBy(() -> new Step("Area", AREA, AREA_LATEX, List.of(D), null, false, SOURCE));
    assertThatNullPointerException()
        .isThrownBy(() -> new Step("Area", AREA, AREA_LATEX, List.of(D), A, false, null))
        .withMessage("source");
  }

  @Test
  void a_step_does_not_change_with_the_list_it_was_made_of() {
    List<Term> terms = new ArrayList<>(List.of(D));
    Step step = new Step("Area", AREA, AREA_LATEX, terms, A, false, SOURCE);
    terms.clear();
    assertThat(step.given()).containsExactly(D);
    assertThatExceptionOfType(UnsupportedOperationException.class)
        .isThrownBy(() -> step.given().clear());
  }
}
