package org.airfit.working;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.airfit.source.Source;

/**
 * An equation, written down once: it evaluates, prints as text and as LaTeX, in SI and in US units.
 *
 * <p>Written once, printed in either system:
 *
 * <pre>{@code
 * import org.airfit.source.Source;
 * import org.airfit.working.Formula;
 * import org.airfit.working.Symbol;
 * import org.airfit.working.UnitSystem;
 * import org.airfit.working.ValueKind;
 *
 * class ChokingPressure {
 *   public static void main(String[] args) {
 *     Symbol flow = Symbol.of("ṁ", ValueKind.MASS_FLOW);
 *     Symbol area = Symbol.of("A", ValueKind.AREA);
 *     Symbol constant = Symbol.of("R", ValueKind.HEAT_CAPACITY);
 *     Symbol kelvins = Symbol.of("T", ValueKind.TEMPERATURE);
 *     Symbol p2 = Symbol.of("p2", ValueKind.PRESSURE);
 *     Formula choking = Formula.of(
 *         "Pressure at the outlet where it chokes",
 *         "⟨p2⟩ = ⟨ṁ⟩ / ⟨A⟩ / [144] × √(⟨R⟩ × ⟨T⟩ / [g_c])",
 *         Source.handbook("isothermal flow"),
 *         p2,
 *         flow,
 *         area,
 *         constant,
 *         kelvins);
 *     System.out.println(choking.toText(UnitSystem.SI)); // p2 = ṁ / A × √(R × T)
 *     System.out.println(choking.toText(UnitSystem.US)); // p2 = ṁ / A / 144 × √(R × T / 32.17404856)
 *     System.out.println(choking.toLatex(UnitSystem.SI));
 *     // {p_2} = \frac{{\dot m}}{{A}} \cdot \sqrt{{R} \cdot {T}}
 *   }
 * }
 * }</pre>
 *
 * <p>In a definition symbols stand in angle brackets; operators are + − × / ^ ² ³ ⁴ ⁵, functions √ ln log10 exp tan…°
 * and Q(a, x), the upper regularised gamma function. √, ln, log10 and exp take the one factor behind them. A number
 * may carry mm or in. In square brackets stands a factor that only US units need, {@code [144]}, or one for each
 * system, {@code [30.48|100]}; g_c is {@link UnitSystem#G_C}. In the other system it is 1 and not printed.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class Formula {

  /** Into so many pieces a symbol that stands twice in an equation is cut to bound it. */
  private static final int PIECES = 32;

  /** So many symbols at most are cut; all others are taken whole at each of their places. */
  private static final int MOST_CUT = 2;

  private final String what;
  private final String definition;
  private final Source source;
  private final Symbol result;
  private final Map<String, Symbol> symbols;
  private final boolean solved;
  private final Written si;
  private final Written us;

  /** The equation as it stands in one system of units. */
  private record Written(
      Expression left, Expression right, String text, String latex, Set<String> symbols) {

    private static Written of(String definition, UnitSystem units) {
      ExpressionReader.Equation equation = ExpressionReader.read(definition, units);
      StringBuilder text = new StringBuilder();
      equation.left().text(text);
      text.append(" = ");
      equation.right().text(text);
      StringBuilder latex = new StringBuilder();
      equation.left().latex(latex, false);
      latex.append(" = ");
      equation.right().latex(latex, false);
      Set<String> symbols = new LinkedHashSet<>();
      equation.left().symbols(symbols);
      equation.right().symbols(symbols);
      return new Written(
          equation.left(), equation.right(), text.toString(), latex.toString(), symbols);
    }
  }

  private Formula(
      String what,
      String definition,
      Source source,
      Symbol result,
      Map<String, Symbol> symbols,
      boolean solved,
      Written si,
      Written us) {
    this.what = Markup.requireProse(what, "name of a formula");
    this.definition = definition;
    this.source = Objects.requireNonNull(source, "source");
    this.result = result;
    this.symbols = symbols;
    this.solved = solved;
    this.si = si;
    this.us = us;
  }

  /**
   * Obtains a formula whose result stands alone on the left.
   *
   * @param what what it finds, such as "Reynolds number"
   * @param definition the equation, such as "⟨A⟩ = π/4 × ⟨D⟩²"
   * @param source where the equation comes from
   * @param symbols all its symbols, in any order
   * @return the formula
   * @throws IllegalArgumentException if the definition cannot be read, has a symbol that is not among {@code symbols}
   *     or lacks one of them, or if its result does not stand alone on the left
   */
  public static Formula of(String what, String definition, Source source, Symbol... symbols) {
    Written si = Written.of(definition, UnitSystem.SI);
    Written us = Written.of(definition, UnitSystem.US);
    Map<String, Symbol> named = named(definition, List.of(symbols), si, us);
    String text = si.symbols.isEmpty() ? "" : si.symbols.iterator().next();
    for (Written written : List.of(si, us)) {
      Set<String> right = new LinkedHashSet<>();
      written.right.symbols(right);
      boolean alone = written.left instanceof Expression.Variable variable
          && variable.symbol().equals(text)
          && !right.contains(text);
      if (!alone) {
        throw new IllegalArgumentException("result must stand alone on the left of \"" + definition
            + "\"; a formula that is solved may hold it anywhere");
      }
    }
    Symbol result = Objects.requireNonNull(named.get(text));
    return new Formula(what, definition, source, result, named, false, si, us);
  }

  /**
   * Obtains a formula whose result is found by trial, and checked by putting it in.
   *
   * @param result the symbol that is found, which the equation may hold anywhere
   * @param what what it finds, such as "Pressure at the outlet"
   * @param definition the equation, such as "1/√⟨λ⟩ = −2 × log10(2.51 / (⟨Re⟩ × √⟨λ⟩))"
   * @param source where the equation comes from
   * @param symbols the other symbols, in any order
   * @return the formula
   * @throws IllegalArgumentException if the definition cannot be read, its symbols are not those given, or the result
   *     does not stand in it in both systems of units
   */
  public static Formula solvedFor(
      Symbol result, String what, String definition, Source source, Symbol... symbols) {
    Written si = Written.of(definition, UnitSystem.SI);
    Written us = Written.of(definition, UnitSystem.US);
    List<Symbol> all = new ArrayList<>(List.of(symbols));
    all.add(result);
    Map<String, Symbol> named = named(definition, all, si, us);
    if (!si.symbols.contains(result.text()) || !us.symbols.contains(result.text())) {
      throw new IllegalArgumentException(
          "result " + result + " must stand in \"" + definition + "\" in SI and in US units");
    }
    return new Formula(what, definition, source, result, named, true, si, us);
  }

  private static Map<String, Symbol> named(
      String definition, List<Symbol> symbols, Written si, Written us) {
    Map<String, Symbol> named = new LinkedHashMap<>();
    for (Symbol symbol : symbols) {
      if (named.put(symbol.text(), symbol) != null) {
        throw new IllegalArgumentException(
            "every symbol of \"" + definition + "\" must be given once, " + symbol + " was twice");
      }
      if (!si.symbols.contains(symbol.text()) && !us.symbols.contains(symbol.text())) {
        throw new IllegalArgumentException("every symbol of a formula must stand in it, " + symbol
            + " is not in \"" + definition + "\"");
      }
    }
    for (Written written : List.of(si, us)) {
      for (String text : written.symbols) {
        if (!named.containsKey(text)) {
          throw new IllegalArgumentException(
              "symbol " + text + " of \"" + definition + "\" must be among the symbols given");
        }
      }
    }
    return Map.copyOf(named);
  }

  /**
   * Obtains this equation with another source, such as that of the model that uses it.
   *
   * @param other where the equation comes from
   * @return this from {@code other}
   */
  public Formula from(Source other) {
    return new Formula(what, definition, other, result, symbols, solved, si, us);
  }

  /**
   * Obtains this equation under another name.
   *
   * @param other what it finds here
   * @return this as {@code other}
   * @throws IllegalArgumentException if {@code other} is blank
   */
  public Formula named(String other) {
    return new Formula(other, definition, source, result, symbols, solved, si, us);
  }

  /** {@return what this finds, such as "Reynolds number"} */
  public String what() {
    return what;
  }

  /** {@return the equation as it was written down} */
  public String definition() {
    return definition;
  }

  /** {@return where the equation comes from} */
  public Source source() {
    return source;
  }

  /** {@return the symbol that is found} */
  public Symbol result() {
    return result;
  }

  /** {@return whether the result is found by trial and may stand anywhere} */
  public boolean isSolved() {
    return solved;
  }

  /**
   * Lists the symbols that are put in.
   *
   * @param units SI or US units
   * @return the symbols in the order they stand, without the result
   */
  public List<Symbol> inputs(UnitSystem units) {
    return written(units).symbols.stream()
        .filter(text -> !text.equals(result.text()))
        .map(text -> Objects.requireNonNull(symbols.get(text)))
        .toList();
  }

  /**
   * Writes the equation in symbols.
   *
   * @param units SI or US units
   * @return the equation, such as "Re = 4 × ṁ / (π × D × μ)"
   */
  public String toText(UnitSystem units) {
    return Template.inSymbols(written(units).text);
  }

  /**
   * Writes the equation in LaTeX.
   *
   * @param units SI or US units
   * @return the equation in symbols, without dollar signs
   */
  public String toLatex(UnitSystem units) {
    Map<String, String> latex = new HashMap<>();
    symbols.forEach((text, symbol) -> latex.put(text, symbol.latex()));
    return Template.latexInSymbols(written(units).latex, latex);
  }

  /**
   * Evaluates the right side, by the equation as it stands in one system of units.
   *
   * @param units SI or US units: the answer is the same, but for rounding
   * @param values what is put in, each in the base of its kind
   * @return the result in the base of its kind; NaN or infinite where the equation has no value or one too large to hold
   * @throws IllegalArgumentException if a symbol of the right side has no value
   * @throws IllegalStateException if this formula is solved: it finds its result by trial
   */
  public double evaluate(UnitSystem units, Map<Symbol, Double> values) {
    if (solved) {
      throw new IllegalStateException("\"" + definition + "\" is solved by trial");
    }
    Map<String, Double> shown = new HashMap<>();
    values.forEach((symbol, value) -> shown.put(symbol.text(), symbol.kind().shown(value, units)));
    double right = written(units).right.worth(text -> {
      Double value = shown.get(text);
      if (value == null) {
        throw new IllegalArgumentException(
            "every symbol put in must have a value, " + text + " has none");
      }
      return value;
    });
    return result.kind().value(right, units);
  }

  /** The right side, of printed values. */
  double right(UnitSystem units, Map<String, Double> shown) {
    return written(units).right.worth(text -> Objects.requireNonNull(shown.get(text)));
  }

  /** How far the right side moves, or what the left side is above it, by what a double loses below 2.2e-308. */
  double movedBySmallResults(UnitSystem units, Map<String, Double> shown) {
    Expression.Values exact = text -> Objects.requireNonNull(shown.get(text));
    Expression.Values moved = new Expression.Values() {
      @Override
      public double of(String symbol) {
        return exact.of(symbol);
      }

      @Override
      public double small(double result) {
        return result + Double.MIN_VALUE;
      }
    };
    Written written = written(units);
    double right = written.right.worth(moved) - written.right.worth(exact);
    return solved ? written.left.worth(moved) - written.left.worth(exact) - right : right;
  }

  /** What the left side is above the right side, of printed values, the result among them. */
  double residual(UnitSystem units, Map<String, Double> shown) {
    return written(units).left.worth(text -> Objects.requireNonNull(shown.get(text)))
        - right(units, shown);
  }

  /**
   * What the right side may come to while what is put in lies within intervals, printed values all. A symbol that
   * stands there twice is cut into pieces, for each of its places is taken by itself.
   */
  Interval bounds(UnitSystem units, Map<String, Interval> shown) {
    Expression right = written(units).right;
    List<String> all = new ArrayList<>();
    right.symbols(all);
    List<String> twice = all.stream()
        .distinct()
        .filter(symbol -> Collections.frequency(all, symbol) > 1)
        .filter(symbol -> Objects.requireNonNull(shown.get(symbol)).width() > 0.0)
        .toList();
    return cut(right, new HashMap<>(shown), twice, 0);
  }

  private static Interval cut(
      Expression right, Map<String, Interval> values, List<String> twice, int at) {
    if (at == Math.min(twice.size(), MOST_CUT)) {
      return right.bounds(text -> Objects.requireNonNull(values.get(text)));
    }
    String symbol = twice.get(at);
    Interval whole = Objects.requireNonNull(values.get(symbol));
    Interval found = null;
    double from = whole.lo();
    for (int i = 1; i <= PIECES; i++) {
      double to =
          i == PIECES ? whole.hi() : Math.min(whole.hi(), whole.lo() + i * whole.width() / PIECES);
      values.put(symbol, new Interval(from, to));
      Interval piece = cut(right, values, twice, at + 1);
      found = found == null ? piece : found.with(piece);
      from = to;
    }
    values.put(symbol, whole);
    return Objects.requireNonNull(found);
  }

  /** How many operations the right side takes with a pencil. */
  int operations(UnitSystem units) {
    return written(units).right.operations();
  }

  /** The equation in these units with its symbols in angle brackets. */
  String template(UnitSystem units) {
    return written(units).text;
  }

  String latexTemplate(UnitSystem units) {
    return written(units).latex;
  }

  private Written written(UnitSystem units) {
    return units.either(si, us);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Formula that
        && what.equals(that.what)
        && definition.equals(that.definition)
        && source.equals(that.source)
        && result.equals(that.result)
        && symbols.equals(that.symbols)
        && solved == that.solved;
  }

  @Override
  public int hashCode() {
    return Objects.hash(what, definition, source, result, symbols, solved);
  }

  /** {@return what it finds with the equation in SI, such as "Reynolds number: Re = 4 × ṁ / (π × D × μ)"} */
  @Override
  public String toString() {
    return what + ": " + toText(UnitSystem.SI);
  }
}
