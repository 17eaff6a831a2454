package org.airfit.working;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.airfit.internal.Digits;

/**
 * Makes a step of a formula and values: finds how many digits of what is put in give the printed result again, and
 * refuses a result that the formula does not give.
 */
final class CheckedStep {

  /**
   * What rounding all inputs may move the result by, of one unit of its last printed digit; half a unit is the
   * result's own rounding.
   */
  private static final double SHARE_OF_INPUTS = 0.4;

  /** More than any double has. */
  static final int MOST_DIGITS = 17;

  /** What a search leaves of a value: none is known better, as a fraction of it. */
  private static final double KNOWN_TO = 1.0e-12;

  /** What constants written with ten digits leave open, such as g_c in US units. */
  private static final double TEN_DIGITS = 2.0e-10;

  private final Formula formula;
  private final UnitSystem units;
  private final Map<String, Double> shown = new HashMap<>();
  private final double claimed;
  private final double unit;

  /** A value put in, with as many digits as are printed at least. */
  record Input(Symbol symbol, double value, int digits) {}

  private CheckedStep(
      Formula formula, UnitSystem units, List<Input> inputs, double claimed, int digits) {
    this.formula = formula;
    this.units = units;
    for (Input input : inputs) {
      shown.put(input.symbol.text(), input.symbol.kind().shown(input.value, units));
    }
    this.claimed = formula.result().kind().shown(claimed, units);
    this.unit = lastDigit(this.claimed, digits);
    shown.put(formula.result().text(), this.claimed);
  }

  /**
   * Obtains the step.
   *
   * @param inputs a value for each symbol that is put in
   * @param claimed what was computed, in the base of its kind
   * @param digits how many digits of it are printed
   * @throws IllegalStateException if the formula gives something else
   */
  static Step of(
      Formula formula, UnitSystem units, List<Input> inputs, double claimed, int digits) {
    Term result = formula.result().term(claimed, digits, units);
    CheckedStep step = new CheckedStep(formula, units, inputs, claimed, digits);
    step.requireNoDrift(inputs);
    List<Term> given = new ArrayList<>();
    for (Input input : inputs) {
      given.add(step.printed(input, inputs.size()));
    }
    return new Step(formula, units, given, result);
  }

  /** One unit of the last digit printed. Whole digits are printed whatever the number of digits. */
  private static double lastDigit(double value, int digits) {
    if (value == 0.0) {
      return Math.pow(10.0, -digits);
    }
    double magnitude = Math.abs(value);
    int exponent = (int) Math.floor(Math.log10(magnitude)) - digits + 1;
    return Math.pow(10.0, magnitude >= 1.0 && magnitude < 1.0e9 ? Math.min(0, exponent) : exponent);
  }

  private void requireNoDrift(List<Input> inputs) {
    double off = off();
    double noise = noise(inputs);
    // a noise that is no number: on the edge of a root or a logarithm nothing can be told
    if (!(off <= unit + noise) && !Double.isNaN(noise)) {
      throw new IllegalStateException("\"" + formula.what() + "\" must give what was computed, "
          + formula.result() + " = " + Digits.told(claimed) + " to " + Digits.told(unit) + ", but "
          + formula.toText(units)
          + (formula.isSolved()
              ? " has its root elsewhere, by " + Digits.told(off)
              : " gives " + Digits.told(found())));
    }
  }

  private double found() {
    return formula.right(units, shown);
  }

  /** How far the formula's result lies from that claimed; the root of a solved formula by its slope. */
  private double off() {
    if (!formula.isSolved()) {
      return Math.abs(found() - claimed);
    }
    return Math.abs(formula.residual(units, shown)) / slope();
  }

  /** The change of the residual for one unit of the result. */
  private double slope() {
    return Math.abs(residualAt(claimed + unit) - residualAt(claimed - unit)) / (2.0 * unit);
  }

  private double residualAt(double result) {
    Map<String, Double> moved = new HashMap<>(shown);
    moved.put(formula.result().text(), result);
    return formula.residual(units, moved);
  }

  /** How far the result moves when an input becomes {@code value}. */
  private double moved(String symbol, double value) {
    Map<String, Double> moved = new HashMap<>(shown);
    moved.put(symbol, value);
    return formula.isSolved()
        ? Math.abs(formula.residual(units, moved) - formula.residual(units, shown)) / slope()
        : Math.abs(formula.right(units, moved) - found());
  }

  /**
   * How far the result moves when what is put in moves by as much as it is known to, and the constants of US units by
   * what their ten digits leave open: much where two roots lie close together, as they do next to choking. A
   * difference of two large values is known no better than they are.
   */
  private double noise(List<Input> inputs) {
    double noise = Math.abs(claimed) * KNOWN_TO;
    if (formula.isSolved() && units == UnitSystem.US) {
      noise += TEN_DIGITS * Math.abs(formula.right(units, shown)) / slope();
    }
    for (Input input : inputs) {
      String symbol = input.symbol.text();
      noise += moved(symbol, value(symbol) * (1.0 + KNOWN_TO));
      if (input.symbol.kind().equals(formula.result().kind())) {
        noise = Math.max(noise, Math.abs(value(symbol)) * KNOWN_TO);
      }
    }
    return noise;
  }

  private double value(String symbol) {
    Double value = shown.get(symbol);
    if (value == null) {
      throw new IllegalStateException("no value for " + symbol);
    }
    return value;
  }

  /** As few digits as are asked for, as many as the result needs. */
  private Term printed(Input input, int inputs) {
    String symbol = input.symbol.text();
    double allowed = SHARE_OF_INPUTS * unit / inputs;
    for (int digits = input.digits; ; digits++) {
      Term term = input.symbol.term(input.value, digits, units);
      double rounded = Double.parseDouble(term.value());
      if (digits >= MOST_DIGITS || rounded == value(symbol) || moved(symbol, rounded) <= allowed) {
        return term;
      }
    }
  }
}
