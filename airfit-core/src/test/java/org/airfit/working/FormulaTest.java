package org.airfit.working;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.airfit.source.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class FormulaTest {

  private static final Source SOURCE = Source.handbook("definition");
  private static final Symbol X = number("x");
  private static final Symbol Y = number("y");
  private static final Symbol Z = number("z");
  private static final Symbol FLOW = Symbol.of("ṁ", ValueKind.MASS_FLOW);
  private static final Symbol AREA = Symbol.of("A", ValueKind.AREA);
  private static final Symbol CONSTANT = Symbol.of("R", ValueKind.HEAT_CAPACITY);
  private static final Symbol KELVINS = Symbol.of("T", ValueKind.TEMPERATURE);
  private static final Symbol P1 = Symbol.of("p1", ValueKind.PRESSURE);
  private static final Symbol P2 = Symbol.of("p2", ValueKind.PRESSURE);
  private static final Symbol RATIO = number("γ");
  private static final Symbol MACH = number("M1");

  private static final Formula CHOKING = Formula.of(
      "Pressure at the outlet where it chokes",
      "⟨p2⟩ = ⟨ṁ⟩ / ⟨A⟩ / [144] × √(⟨R⟩ × ⟨T⟩ / [g_c])",
      SOURCE,
      P2,
      FLOW,
      AREA,
      CONSTANT,
      KELVINS);

  private static final Formula COLEBROOK = Formula.solvedFor(
      number("λ"),
      "Friction factor",
      "1/√⟨λ⟩ = −2 × log10(⟨ε/D⟩ / 3.7 + 2.51 / (⟨Re⟩ × √⟨λ⟩))",
      SOURCE,
      number("ε/D"),
      number("Re"));

  private static Symbol number(String text) {
    return Symbol.of(text, ValueKind.NUMBER);
  }

  /** y of x. */
  private static Formula of(String right) {
    return Formula.of("Something", "⟨y⟩ = " + right, SOURCE, Y, X);
  }

  private static double worth(String right, double x) {
    return of(right).evaluate(UnitSystem.SI, Map.of(X, x));
  }

  /** Worked by hand. */
  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "⟨x⟩ + 2 × 3; 4; 10",
        "(⟨x⟩ + 2) × 3; 4; 18",
        "⟨x⟩ − 2 − 1; 4; 1",
        "⟨x⟩ / 2 / 4; 16; 2",
        "⟨x⟩ / (2 / 4); 16; 32",
        "⟨x⟩ / 2 × 4; 16; 32",
        "−⟨x⟩²; 3; -9",
        "(−⟨x⟩)²; 3; 9",
        "2 × −⟨x⟩; 3; -6",
        "⟨x⟩³; 2; 8",
        "⟨x⟩⁴; 2; 16",
        "⟨x⟩⁵; 2; 32",
        "⟨x⟩^5; 2; 32",
        "⟨x⟩^(−3); 2; 0.125",
        "⟨x⟩^−3; 2; 0.125",
        "⟨x⟩^(1/2); 9; 3",
        "10^5 × ⟨x⟩; 2; 200000",
        "√⟨x⟩ × 2; 9; 6",
        "√(⟨x⟩ × 4); 9; 6",
        "√⟨x⟩²; 9; 9",
        "√9 / ⟨x⟩; 3; 1",
        "ln(⟨x⟩); 1; 0",
        "exp(⟨x⟩); 0; 1",
        "log10(⟨x⟩); 1000; 3",
        "log10⟨x⟩²; 1000; 9",
        "tan⟨x⟩°; 45; 1",
        "1.5e-3 × ⟨x⟩; 2; 0.003",
        "2e3 × ⟨x⟩; 2; 4000",
        "(25.4 mm) / ⟨x⟩; 4; 6.35",
        "(0.8 × ⟨x⟩ + 6.8 in) × 2; 1; 15.2",
        "π × ⟨x⟩; 1; 3.141592653589793",
        "Q(⟨x⟩/2, 1); 4; 0.7357588823428847"
      })
  void an_expression_is_worth_what_the_hand_works_out(String right, double x, double y) {
    assertThat(worth(right, x)).isCloseTo(y, within(1e-14 * Math.max(1.0, Math.abs(y))));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "⟨x⟩ + 2 × 3",
        "−(⟨x⟩ − 1)/2",
        "(⟨x⟩^(1 / 0.538) − 1)²",
        "1/√⟨x⟩ + √(2 × π)",
        "⟨x⟩ − log10(⟨x⟩) × ln(⟨x⟩)^⟨x⟩",
        "tan30° × ⟨x⟩",
        "(1.1 in) / ⟨x⟩ − 2.5e-5",
        "Q(⟨x⟩/2, ⟨x⟩)"
      })
  void the_text_is_the_definition_without_the_angle_brackets(String right) {
    for (UnitSystem units : UnitSystem.values()) {
      assertThat(of(right).toText(units))
          .isEqualTo("y = " + right.replace("⟨", "").replace("⟩", ""));
    }
  }

  @Test
  void what_only_us_units_need_is_not_printed_in_si() {
    assertThat(CHOKING.toText(UnitSystem.SI)).isEqualTo("p2 = ṁ / A × √(R × T)");
    assertThat(CHOKING.toText(UnitSystem.US))
        .isEqualTo("p2 = ṁ / A / 144 × √(R × T / 32.17404856)");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "[144] × ⟨x⟩; ⟨x⟩; 144 × ⟨x⟩",
        "[144] / ⟨x⟩; 1 / ⟨x⟩; 144 / ⟨x⟩",
        "⟨x⟩ / ([g_c] × [144]²); ⟨x⟩; ⟨x⟩ / (32.17404856 × 144²)",
        "⟨x⟩ × √[g_c]; ⟨x⟩; ⟨x⟩ × √32.17404856",
        "⟨x⟩ / (2 × ⟨x⟩ × [144] × [g_c]); ⟨x⟩ / (2 × ⟨x⟩); ⟨x⟩ / (2 × ⟨x⟩ × 144 × 32.17404856)",
        "⟨x⟩ / [30.48|100]; ⟨x⟩ / 30.48; ⟨x⟩ / 100",
        "⟨x⟩ × [1000|]; ⟨x⟩ × 1000; ⟨x⟩",
        "⟨x⟩ × [|144]; ⟨x⟩; ⟨x⟩ × 144",
        "⟨x⟩ / [2 × 3|4 / 5]; ⟨x⟩ / (2 × 3); ⟨x⟩ / (4 / 5)",
        "⟨x⟩ + [1.01353|14.7]; ⟨x⟩ + 1.01353; ⟨x⟩ + 14.7"
      })
  void a_square_bracket_is_chosen_by_the_units(String right, String si, String us) {
    assertThat(of(right).toText(UnitSystem.SI)).isEqualTo("y = " + bare(si));
    assertThat(of(right).toText(UnitSystem.US)).isEqualTo("y = " + bare(us));
  }

  private static String bare(String template) {
    return template.replace("⟨", "").replace("⟩", "");
  }

  @Test
  void a_symbol_may_stand_in_one_system_only() {
    Formula either = Formula.of("Flow", "⟨y⟩ = [⟨x⟩|⟨z⟩] × 2", SOURCE, Y, X, Z);
    assertThat(either.inputs(UnitSystem.SI)).containsExactly(X);
    assertThat(either.inputs(UnitSystem.US)).containsExactly(Z);
  }

  @Test
  void both_systems_give_the_same() {
    Map<Symbol, Double> values =
        Map.of(FLOW, 0.02, AREA, 5.0e-4, CONSTANT, 287.05287, KELVINS, 293.15);
    double si = CHOKING.evaluate(UnitSystem.SI, values);
    assertThat(si).isCloseTo(0.02 / 5.0e-4 * Math.sqrt(287.05287 * 293.15), within(1e-9));
    // g_c is printed to ten digits
    assertThat(CHOKING.evaluate(UnitSystem.US, values)).isCloseTo(si, within(2e-10 * si));
  }

  @Test
  void latex_has_fractions_and_roots() {
    assertThat(CHOKING.toLatex(UnitSystem.SI))
        .isEqualTo("{p_2} = \\frac{{\\dot m}}{{A}} \\cdot \\sqrt{{R} \\cdot {T}}");
    assertThat(CHOKING.toLatex(UnitSystem.US))
        .isEqualTo("{p_2} = \\frac{{\\dot m}}{{A} \\cdot 144} \\cdot"
            + " \\sqrt{\\frac{{R} \\cdot {T}}{32.17404856}}");
    assertThat(COLEBROOK.toLatex(UnitSystem.SI))
        .isEqualTo("\\frac{1}{\\sqrt{{\\lambda}}} = -2 \\cdot \\log_{10} \\left("
            + "\\frac{{\\varepsilon/D}}{3.7} + \\frac{2.51}{{\\mathrm{Re}} \\cdot"
            + " \\sqrt{{\\lambda}}}\\right)");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "4 × ⟨x⟩ / (π × ⟨x⟩); \\frac{4 \\cdot {x}}{\\pi \\cdot {x}}",
        "π / 4 × ⟨x⟩²; \\frac{\\pi}{4} \\cdot {x}^2",
        "(⟨x⟩ + 1) / (⟨x⟩ − 1); \\frac{{x} + 1}{{x} - 1}",
        "(⟨x⟩ + 1) × 2; \\left({x} + 1\\right) \\cdot 2",
        "⟨x⟩ / 2 / 3 × 4; \\frac{{x}}{2 \\cdot 3} \\cdot 4",
        "(⟨x⟩ − 1)² / (2 × ⟨x⟩); \\frac{\\left({x} - 1\\right)^2}{2 \\cdot {x}}",
        "(2 / (⟨x⟩ + 1))^((⟨x⟩ + 1) / (2 × (⟨x⟩ − 1)));"
            + " \\left(\\frac{2}{{x} + 1}\\right)^{({x} + 1)/(2 \\cdot ({x} - 1))}",
        "10^(−5) × ⟨x⟩^−3; 10^{-5} \\cdot {x}^{-3}",
        "−ln(⟨x⟩ / 2)/2; \\frac{-\\ln \\left(\\frac{{x}}{2}\\right)}{2}",
        "ln(⟨x⟩)²; \\left(\\ln \\left({x}\\right)\\right)^2",
        "√⟨x⟩²; \\left(\\sqrt{{x}}\\right)^2",
        "exp(⟨x⟩) − tan⟨x⟩°; \\exp \\left({x}\\right) - \\tan {x}^\\circ",
        "(25.4 mm) / ⟨x⟩; \\frac{25.4\\,\\mathrm{mm}}{{x}}",
        "2.5e-5 × ⟨x⟩; 2.5 \\times 10^{-5} \\cdot {x}",
        "Q(⟨x⟩/2, 1); Q\\left(\\frac{{x}}{2}, 1\\right)",
        "2^(Q(⟨x⟩, (1)) + √(⟨x⟩)); 2^{Q({x}, (1)) + \\sqrt{{x}}}"
      })
  void latex_follows_from_the_definition(String right, String latex) {
    assertThat(of(right).toLatex(UnitSystem.SI)).isEqualTo("{y} = " + latex);
  }

  @Test
  void latex_uses_only_what_a_page_can_show() {
    String all = COLEBROOK.toLatex(UnitSystem.US)
        + CHOKING.toLatex(UnitSystem.US)
        + of("−2.5e-5 × tan⟨x⟩° × exp(⟨x⟩)^(1/2) × ln(π) × Q(1, ⟨x⟩) × (1 in)")
            .toLatex(UnitSystem.SI);
    Matcher command = Pattern.compile("\\\\([a-z]+|,)").matcher(all);
    Set<String> commands = new TreeSet<>();
    while (command.find()) {
      commands.add(command.group(1));
    }
    assertThat(commands)
        .isSubsetOf(
            ",",
            "cdot",
            "circ",
            "dot",
            "exp",
            "frac",
            "lambda",
            "left",
            "ln",
            "log",
            "mathrm",
            "pi",
            "right",
            "sqrt",
            "tan",
            "times",
            "varepsilon");
    assertThat(all.chars().filter(sign -> sign == '{').count())
        .isEqualTo(all.chars().filter(sign -> sign == '}').count());
    assertThat(all.split("\\\\left", -1)).hasSameSizeAs(all.split("\\\\right", -1));
  }

  @Test
  void a_quotient_as_a_symbol_keeps_together() {
    Symbol quotient = number("T/T0");
    Formula formula = Formula.of(
        "Pressure",
        "⟨y⟩ = ⟨T/T0⟩^(1 / 2) + √⟨T/T0⟩ + 1 / ⟨T/T0⟩ + ⟨T/T0⟩ / 2",
        SOURCE,
        Y,
        quotient);
    assertThat(formula.toText(UnitSystem.SI))
        .isEqualTo("y = (T/T0)^(1 / 2) + √(T/T0) + 1 / (T/T0) + T/T0 / 2");
    assertThat(formula.toLatex(UnitSystem.SI))
        .isEqualTo("{y} = {\\left(T/T_0\\right)}^{1/2} + \\sqrt{{T/T_0}} + \\frac{1}{{T/T_0}}"
            + " + \\frac{{T/T_0}}{2}");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "⟨y⟩ =; a number, a symbol or a bracket at character 6, but ends",
        "⟨y⟩ = ⟨x⟩ +; a number, a symbol or a bracket at character 12, but ends",
        "⟨y⟩ = (⟨x⟩; ) at character 11, but ends",
        "⟨y⟩ = ⟨x⟩); the end or an operator at character 10, was \")\"",
        "⟨y⟩ = ⟨x; ⟩ behind it at character 8, was \"x\"",
        "⟨y⟩; = at character 4, but ends",
        "⟨y⟩ = ⟨x⟩ = 2; the end or an operator at character 11, was \"= 2\"",
        "⟨y⟩ = 2.⟨x⟩; a digit at character 9, was \"⟨x⟩\"",
        "⟨y⟩ = 2e⟨x⟩; a digit at character 9, was \"⟨x⟩\"",
        "⟨y⟩ = .5 × ⟨x⟩; a number, a symbol or a bracket at character 7, was \".5 × ⟨x⟩\"",
        "⟨y⟩ = 2 ⟨x⟩; the end or an operator at character 9, was \"⟨x⟩\"",
        "⟨y⟩ = 2 inches × ⟨x⟩; the end or an operator at character 9, was \"inches × ⟨x⟩\"",
        "⟨y⟩ = sin(⟨x⟩); a number, a symbol or a bracket at character 7, was \"sin(⟨x⟩)\"",
        "⟨y⟩ = tan⟨x⟩; ° at character 13, but ends",
        "⟨y⟩ = Q(⟨x⟩); , at character 12, was \")\"",
        "⟨y⟩ = [144 × ⟨x⟩; ] at character 17, but ends",
        "⟨y⟩ = ⟨x⟩ × []; a number, a symbol or a bracket at character 14, was \"]\"",
        "⟨y⟩ = ⟨x⟩ × [|]; something between the square brackets that end at character 16, but ends",
        "⟨y⟩ = [144]; more than a factor of one system of units on each side at character 12, but ends",
        "⟨y⟩ = ⟨x⟩ + [144]; what only one system of units needs as a factor, not as a summand,"
            + " at character 18, but ends"
      })
  void what_cannot_be_read_is_refused(String definition, String missing) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Formula.of("Something", definition, SOURCE, Y, X))
        .withMessage("definition \"" + definition + "\" must have " + missing);
  }

  @Test
  void a_symbol_that_was_not_given_is_refused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Formula.of("Something", "⟨y⟩ = ⟨x⟩ + ⟨z⟩", SOURCE, Y, X))
        .withMessage("symbol z of \"⟨y⟩ = ⟨x⟩ + ⟨z⟩\" must be among the symbols given");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Formula.of("Something", "⟨y⟩ = ⟨x⟩ × [⟨z⟩]", SOURCE, Y, X))
        .withMessageContaining("must be among the symbols given");
  }

  @Test
  void a_symbol_that_is_not_used_or_stands_twice_is_refused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Formula.of("Something", "⟨y⟩ = ⟨x⟩", SOURCE, Y, X, Z))
        .withMessage("every symbol of a formula must stand in it, z is not in \"⟨y⟩ = ⟨x⟩\"");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Formula.of("Something", "⟨y⟩ = ⟨x⟩", SOURCE, Y, X, X))
        .withMessage("every symbol of \"⟨y⟩ = ⟨x⟩\" must be given once, x was twice");
  }

  @ParameterizedTest
  @ValueSource(strings = {"⟨y⟩ / 2 = ⟨x⟩", "⟨y⟩ = ⟨x⟩ + ⟨y⟩", "2 × ⟨y⟩ = ⟨x⟩", "(⟨y⟩) = ⟨x⟩"})
  void unless_solved_the_result_stands_alone_on_the_left(String definition) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Formula.of("Something", definition, SOURCE, Y, X))
        .withMessage("result must stand alone on the left of \"" + definition
            + "\"; a formula that is solved may hold it anywhere");
    Formula solved = Formula.solvedFor(Y, "Something", definition, SOURCE, X);
    assertThat(solved.isSolved()).isTrue();
    assertThat(solved.result()).isEqualTo(Y);
    assertThatIllegalStateException()
        .isThrownBy(() -> solved.evaluate(UnitSystem.SI, Map.of(X, 1.0)))
        .withMessage("\"" + definition + "\" is solved by trial");
  }

  @Test
  void the_result_is_the_same_in_both_systems() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Formula.of("Something", "[⟨y⟩|⟨z⟩] = ⟨x⟩", SOURCE, Y, X, Z))
        .withMessageStartingWith("result must stand alone on the left of ");
    for (String right : List.of("[⟨y⟩|2]", "[2|⟨y⟩]")) {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> Formula.solvedFor(Y, "Something", "⟨x⟩ = 3 × " + right, SOURCE, X))
          .withMessage("result y must stand in \"⟨x⟩ = 3 × " + right + "\" in SI and in US units");
    }
  }

  @Test
  void a_value_that_is_missing_is_named() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> of("⟨x⟩²").evaluate(UnitSystem.SI, Map.of()))
        .withMessage("every symbol put in must have a value, x has none");
  }

  @Test
  void a_formula_keeps_what_it_was_made_of() {
    assertThat(CHOKING.what()).isEqualTo("Pressure at the outlet where it chokes");
    assertThat(CHOKING.source()).isEqualTo(SOURCE);
    assertThat(CHOKING.result()).isEqualTo(P2);
    assertThat(CHOKING.isSolved()).isFalse();
    assertThat(CHOKING.inputs(UnitSystem.US)).containsExactly(FLOW, AREA, CONSTANT, KELVINS);
    assertThat(CHOKING.definition()).startsWith("⟨p2⟩ = ⟨ṁ⟩ / ⟨A⟩ / [144]");
    assertThat(CHOKING)
        .hasToString("Pressure at the outlet where it chokes: p2 = ṁ / A × √(R × T)");
    Source other = Source.demo("elsewhere");
    assertThat(CHOKING.from(other).source()).isEqualTo(other);
    assertThat(CHOKING.named("Pressure").what()).isEqualTo("Pressure");
    assertThat(CHOKING.named("Pressure").toText(UnitSystem.SI))
        .isEqualTo(CHOKING.toText(UnitSystem.SI));
  }

  @Test
  void formulas_are_compared_by_value() {
    assertThat(of("2 × ⟨x⟩")).isEqualTo(of("2 × ⟨x⟩")).hasSameHashCodeAs(of("2 × ⟨x⟩"));
    assertThat(of("2 × ⟨x⟩")).isNotEqualTo(of("3 × ⟨x⟩"));
    assertThat(of("2 × ⟨x⟩")).isNotEqualTo(of("2 × ⟨x⟩").named("Other"));
    assertThat(of("2 × ⟨x⟩")).isNotEqualTo(of("2 × ⟨x⟩").from(Source.demo("other")));
    assertThat(of("2 × ⟨x⟩")).isNotEqualTo("y = 2 × x");
  }

  @Test
  void a_formula_says_what_it_finds() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Formula.of(" ", "⟨y⟩ = ⟨x⟩", SOURCE, Y, X))
        .withMessage("name of a formula must say something, was blank");
  }

  @Test
  void the_mach_number_of_a_pipe_is_right_in_both_systems() {
    Formula mach = Formula.of(
        "Mach number",
        "⟨M1⟩ = ⟨ṁ⟩ / (⟨A⟩ × ⟨p1⟩ × [144]) × √(⟨R⟩ × ⟨T⟩ / (⟨γ⟩ × [g_c]))",
        SOURCE,
        MACH,
        FLOW,
        AREA,
        P1,
        CONSTANT,
        KELVINS,
        RATIO);
    Map<Symbol, Double> values = Map.of(
        FLOW, 0.02, AREA, 5.0e-4, P1, 7.0e5, CONSTANT, 287.05287, KELVINS, 293.15, RATIO, 1.4);
    // 40 kg/(s m²) over 8.3185 kg/m³ over 343.23 m/s, the density and speed of sound of air there
    assertThat(mach.evaluate(UnitSystem.SI, values)).isCloseTo(0.014010, within(1e-6));
    assertThat(mach.evaluate(UnitSystem.US, values)).isCloseTo(0.014010, within(1e-6));
  }

  @Test
  @SuppressWarnings("NullAway") // the point is what happens to callers without such a check
  void nothing_is_not_a_part_of_a_formula() {
    assertThatNullPointerException().isThrownBy(() -> Formula.of(null, "⟨y⟩ = ⟨x⟩", SOURCE, Y, X));
    assertThatNullPointerException().isThrownBy(() -> Formula.of("Something", null, SOURCE, Y, X));
    assertThatNullPointerException()
        .isThrownBy(() -> Formula.of("Something", "⟨y⟩ = ⟨x⟩", null, Y, X))
        .withMessage("source");
    assertThatNullPointerException()
        .isThrownBy(() -> Formula.of("Something", "⟨y⟩ = ⟨x⟩", SOURCE, Y, null));
    assertThatNullPointerException().isThrownBy(() -> of("⟨x⟩").from(null)).withMessage("source");
    assertThatNullPointerException().isThrownBy(() -> of("⟨x⟩").named(null));
  }
}
