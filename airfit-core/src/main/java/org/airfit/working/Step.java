package org.airfit.working;

import java.util.List;
import java.util.function.Function;
import org.airfit.source.Source;

/**
 * One step of a calculation: an equation, what was put in and what came out.
 *
 * @param what what this step finds, such as "Reynolds number"
 * @param equation the equation in plain text with its symbols in angle brackets, such as "⟨A⟩ = π/4 × ⟨D⟩²"
 * @param latex the same equation in LaTeX, with the same symbols in angle brackets
 * @param given the symbols put in, with their values
 * @param result the symbol found, with its value
 * @param implicit whether the equation holds the result on both sides, so that it is checked by putting the result in
 * @param source where the equation comes from
 */
public record Step(
    String what,
    String equation,
    String latex,
    List<Term> given,
    Term result,
    boolean implicit,
    Source source) {

  /**
   * Checks the components.
   *
   * @param what what this step finds, such as "Reynolds number"
   * @param equation the equation in plain text with its symbols in angle brackets, such as "⟨A⟩ = π/4 × ⟨D⟩²"
   * @param latex the same equation in LaTeX, with the same symbols in angle brackets
   * @param given the symbols put in, with their values
   * @param result the symbol found, with its value
   * @param implicit whether the equation holds the result on both sides, so that it is checked by putting the result in
   * @param source where the equation comes from
   */
  public Step {
    given = List.copyOf(given);
    requireValues(equation, given, result);
    requireValues(latex, given, result);
  }

  private static void requireValues(String template, List<Term> given, Term result) {
    String left = filled(template, given, result, term -> "");
    if (left.contains("⟨") || left.contains("⟩")) {
      throw new IllegalArgumentException(
          "every symbol of \"" + template + "\" must be given or be the result");
    }
  }

  private static String filled(
      String template, List<Term> given, Term result, Function<Term, String> filling) {
    String text = template.replace("⟨" + result.symbol() + "⟩", filling.apply(result));
    for (Term term : given) {
      text = text.replace("⟨" + term.symbol() + "⟩", filling.apply(term));
    }
    return text;
  }

  /** {@return the equation in symbols, such as "A = π/4 × D²"} */
  public String inSymbols() {
    return filled(equation, given, result, Term::symbol);
  }

  /** {@return the equation with numbers and units put in; the left side is kept only where the result stands on both sides} */
  public String inNumbers() {
    return rightSide(filled(equation, given, result, Step::factor));
  }

  /** A value with a unit keeps together inside a product or a power by brackets. */
  private static String factor(Term term) {
    return term.unit().isEmpty() && !term.value().startsWith("-")
        ? term.value()
        : "(" + term.quantity() + ")";
  }

  String latexInSymbols() {
    return filled(latex, given, result, term -> "{" + term.latex() + "}");
  }

  String latexInNumbers() {
    return rightSide(filled(
        latex,
        given,
        result,
        term -> term.unit().isEmpty() && !term.value().startsWith("-")
            ? "{" + term.latexQuantity() + "}"
            : "{(" + term.latexQuantity() + ")}"));
  }

  private String rightSide(String filled) {
    int equals = filled.indexOf(" = ");
    return implicit || equals < 0 ? filled : filled.substring(equals + 3);
  }
}
