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

  /** A result of four digits is checked to so many; our choice. */
  private static final int CHECKED_DIGITS = 6;

  /** Below this a whole number is checked to one. */
  private static final double WHOLE = 1.0e9;

  private static final double IN_MICROMETRES = 1.0e6;
  private static final double IN_INCHES = 0.0254;

  /** More than any double has. */
  static final int MOST_DIGITS = 17;

  /** What a search leaves of a value: none is known better, as a fraction of it. */
  private static final double KNOWN_TO = 1.0e-12;

  /** What the least numbers may lose, of one unit of the last digit printed. */
  private static final double SHARE_LOST = 0.1;

  /** What constants written with ten digits leave open, such as g_c in US units. */
  private static final double TEN_DIGITS = 2.0e-10;

  private final Formula formula;
  private final UnitSystem units;
  private final Map<String, Double> shown = new HashMap<>();
  private final double claimed;
  private final double claimedBase;
  private final double unit;
  private final double drift;

  /** A step, and whether its numbers are too small to work it again. */
  record Made(Step step, boolean tooSmall) {}

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
    this.claimedBase = claimed;
    this.unit = lastDigit(this.claimed, digits);
    this.drift = Math.min(unit, drift(digits));
    shown.put(formula.result().text(), this.claimed);
  }

  /**
   * Obtains the step. Where numbers are so small that a double has lost digits of them which show, nothing is refused.
   *
   * @param inputs a value for each symbol that is put in
   * @param claimed what was computed, in the base of its kind
   * @param digits how many digits of it are printed
   * @throws IllegalStateException if the formula gives something else
   */
  static Made of(
      Formula formula, UnitSystem units, List<Input> inputs, double claimed, int digits) {
    Term result = formula.result().term(claimed, digits, units);
    CheckedStep step = new CheckedStep(formula, units, inputs, claimed, digits);
    boolean tooSmall = step.isTooSmall(inputs);
    if (!tooSmall) {
      step.requireNoDrift(inputs);
    }
    List<Term> given = new ArrayList<>();
    for (Input input : inputs) {
      given.add(step.printed(input, inputs.size()));
    }
    return new Made(new Step(formula, units, given, result), tooSmall);
  }

  /**
   * Whether what a double loses of its digits below 2.2e-308 shows in the result: that of the result itself, of what
   * is put in and of what comes in between.
   */
  private boolean isTooSmall(List<Input> inputs) {
    double lost = lost(formula.result(), claimedBase, claimed)
        + size(formula.movedBySmallResults(units, shown));
    for (Input input : inputs) {
      String symbol = input.symbol.text();
      double loses = lost(input.symbol, input.value, value(symbol));
      if (loses > 0.0) {
        lost += moved(symbol, value(symbol) + loses);
      }
    }
    return lost > SHARE_LOST * unit;
  }

  /** A change of the residual, or of the result, as one of the result. */
  private double size(double change) {
    return formula.isSolved() && change != 0.0 ? Math.abs(change) / slope() : Math.abs(change);
  }

  /** What a value may be off by in the unit printed, for it is too small in one or the other. */
  private double lost(Symbol symbol, double value, double shownValue) {
    boolean small = value != 0.0
        && (Math.abs(value) < Double.MIN_NORMAL || Math.abs(shownValue) < Double.MIN_NORMAL);
    if (!small) {
      return 0.0;
    }
    ValueKind kind = symbol.kind();
    return Math.max(Double.MIN_VALUE, kind.shown(Double.MIN_VALUE, units) - kind.shown(0.0, units));
  }

  /** One unit of the last digit printed. */
  private static double lastDigit(double value, int digits) {
    if (value == 0.0) {
      return Math.pow(10.0, -digits);
    }
    return Math.pow(10.0, (int) Math.floor(Math.log10(Math.abs(value))) - digits + 1);
  }

  /**
   * What the formula may be off by: a unit of the last digit printed, and of a whole number at most one. Where four are
   * printed, as mostly, it is a unit of the sixth, unless the result is itself a number of few digits, as a standard
   * rounds its sizes.
   */
  private double drift(int digits) {
    boolean few = digits != PrintedDigits.MOST
        || PrintedDigits.isShort(claimed, digits)
        || PrintedDigits.isShort(claimedBase * IN_MICROMETRES, digits)
        || PrintedDigits.isShort(claimedBase / IN_INCHES, digits);
    double least = few ? unit : Math.min(unit, lastDigit(claimed, CHECKED_DIGITS));
    return Math.abs(claimed) >= 1.0 && Math.abs(claimed) < WHOLE ? Math.min(1.0, least) : least;
  }

  private void requireNoDrift(List<Input> inputs) {
    double off = off();
    double noise = noise(inputs);
    // a noise that is no number: on the edge of a root or a logarithm nothing can be told
    if (!(off <= drift + noise) && !Double.isNaN(noise)) {
      throw new IllegalStateException("\"" + formula.what() + "\" must give what was computed, "
          + formula.result() + " = " + Digits.told(claimed) + " to " + Digits.told(drift) + ", but "
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
