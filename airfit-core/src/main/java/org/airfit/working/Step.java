package org.airfit.working;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import org.airfit.internal.Digits;
import org.airfit.source.Source;

/**
 * One step of a calculation: an equation, what was put in and what came out.
 *
 * <p>Only a {@link Working.Builder} makes one, of a {@link Formula} and after it checked the result.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class Step {

  private final String what;
  private final String equation;
  private final String latex;
  private final List<Term> given;
  private final Term result;
  private final boolean implicit;
  private final Source source;

  /** The given terms and the result stand for the symbols of the formula in these units, each for one. */
  Step(Formula formula, UnitSystem units, List<Term> given, Term result) {
    this.what = formula.what();
    this.equation = formula.template(units);
    this.latex = formula.latexTemplate(units);
    this.given = List.copyOf(given);
    this.result = result;
    this.implicit = formula.isSolved();
    this.source = formula.source();
  }

  /** {@return what this step finds, such as "Reynolds number"} */
  public String what() {
    return what;
  }

  /** {@return the equation in plain text with its symbols in angle brackets, such as "⟨A⟩ = π/4 × ⟨D⟩²"} */
  public String equation() {
    return equation;
  }

  /** {@return the same equation in LaTeX, with the same symbols in angle brackets} */
  public String latex() {
    return latex;
  }

  /** {@return the symbols put in, with their values} */
  public List<Term> given() {
    return given;
  }

  /** {@return the symbol found, with its value} */
  public Term result() {
    return result;
  }

  /** {@return whether the result was found by trial, so that it is checked by putting it in} */
  public boolean implicit() {
    return implicit;
  }

  /** {@return where the equation comes from} */
  public Source source() {
    return source;
  }

  /** {@return the equation in symbols, such as "A = π/4 × D²"} */
  public String inSymbols() {
    return Template.inSymbols(equation);
  }

  /** {@return the equation with numbers and units put in; the left side is kept only where the result was put in} */
  public String inNumbers() {
    return rightSide(Template.filled(
        equation,
        fillings(term -> term.standsAlone() ? term.value() : "(" + term.quantity() + ")")));
  }

  /** The same with numbers alone: their units stand where they are given. */
  String inBareNumbers() {
    return rightSide(Template.filled(
        equation,
        fillings(term -> term.value().startsWith("-") || term.value().contains("e")
            ? "(" + Digits.read(term.value()) + ")"
            : term.value())));
  }

  String latexInSymbols() {
    return Template.latexInSymbols(latex, fillings(Term::latex));
  }

  String latexInNumbers() {
    return rightSide(Template.filled(
        latex,
        fillings(term -> term.standsAlone()
            ? "{" + term.latexQuantity() + "}"
            : "{(" + term.latexQuantity() + ")}")));
  }

  /** What stands for each symbol. A value with a unit keeps together inside a product or a power by brackets. */
  private Map<String, String> fillings(Function<Term, String> filling) {
    Map<String, String> fillings = new HashMap<>();
    fillings.put(result.symbol(), filling.apply(result));
    for (Term term : given) {
      fillings.put(term.symbol(), filling.apply(term));
    }
    return fillings;
  }

  private String rightSide(String filled) {
    return implicit ? filled : filled.substring(filled.indexOf(" = ") + 3);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Step that
        && what.equals(that.what)
        && equation.equals(that.equation)
        && latex.equals(that.latex)
        && given.equals(that.given)
        && result.equals(that.result)
        && implicit == that.implicit
        && source.equals(that.source);
  }

  @Override
  public int hashCode() {
    return Objects.hash(what, equation, latex, given, result, implicit, source);
  }

  /** {@return what it finds and the equation, such as "Area of the bore: A = π/4 × D²"} */
  @Override
  public String toString() {
    return what + ": " + inSymbols();
  }
}
