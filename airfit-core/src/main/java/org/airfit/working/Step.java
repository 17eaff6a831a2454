package org.airfit.working;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.Function;
import org.airfit.source.Source;

/**
 * One step of a calculation: an equation, what was put in and what came out.
 *
 * <p>Refused is a step that does not show what it used: a symbol without a value or with two, a value that is not in
 * the equation, or (unless the step is solved) a result that does not stand alone on the left.
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
    Markup.requireProse(what, "name of a step");
    given = List.copyOf(given);
    Objects.requireNonNull(source, "source");
    requireDistinct(given, result);
    for (String template : List.of(equation, latex)) {
      requireValues(template, given, result);
      requireUse(template, given, result);
      if (!implicit) {
        requireAloneOnTheLeft(template, result);
      }
    }
  }

  private static void requireDistinct(List<Term> given, Term result) {
    Set<String> symbols = new HashSet<>();
    symbols.add(result.symbol());
    for (Term term : given) {
      if (!symbols.add(term.symbol())) {
        throw new IllegalArgumentException(
            "every symbol of a step must have one value, " + term.symbol() + " has two");
      }
    }
  }

  private static void requireValues(String template, List<Term> given, Term result) {
    String left = filled(template, given, result, term -> "");
    if (left.contains("⟨") || left.contains("⟩")) {
      throw new IllegalArgumentException(
          "every symbol of \"" + template + "\" must be given or be the result");
    }
  }

  private static void requireUse(String template, List<Term> given, Term result) {
    for (Term term : given) {
      requireUse(template, term);
    }
    requireUse(template, result);
  }

  private static void requireUse(String template, Term term) {
    if (!template.contains(bracketed(term))) {
      throw new IllegalArgumentException("every value of a step must stand in its equation, "
          + term.symbol() + " is not in \"" + template + "\"");
    }
  }

  private static void requireAloneOnTheLeft(String template, Term result) {
    String left = bracketed(result);
    if (!template.startsWith(left + " = ") || template.lastIndexOf(left) > 0) {
      throw new IllegalArgumentException("result must stand alone on the left of \"" + template
          + "\", was " + left + "; a step that is solved may hold it anywhere");
    }
  }

  private static String bracketed(Term term) {
    return "⟨" + term.symbol() + "⟩";
  }

  private static String filled(
      String template, List<Term> given, Term result, Function<Term, String> filling) {
    Map<String, String> values = new HashMap<>();
    values.put(result.symbol(), filling.apply(result));
    for (Term term : given) {
      values.put(term.symbol(), filling.apply(term));
    }
    return Template.filled(template, values);
  }

  /** {@return the equation in symbols, such as "A = π/4 × D²"} */
  public String inSymbols() {
    return Template.inSymbols(equation);
  }

  /**
   * {@return the equation with numbers and units put in; the left side is kept only where the result stands on both
   * sides}
   */
  public String inNumbers() {
    return rightSide(filled(equation, given, result, Step::factor));
  }

  /** A value with a unit keeps together inside a product or a power by brackets. */
  private static String factor(Term term) {
    return term.standsAlone() ? term.value() : "(" + term.quantity() + ")";
  }

  String latexInSymbols() {
    Map<String, String> symbols = new HashMap<>();
    symbols.put(result.symbol(), result.latex());
    for (Term term : given) {
      symbols.put(term.symbol(), term.latex());
    }
    return Template.latexInSymbols(latex, symbols);
  }

  String latexInNumbers() {
    return rightSide(filled(
        latex,
        given,
        result,
        term -> term.standsAlone()
            ? "{" + term.latexQuantity() + "}"
            : "{(" + term.latexQuantity() + ")}"));
  }

  private String rightSide(String filled) {
    return implicit ? filled : filled.substring(filled.indexOf(" = ") + 3);
  }
}
