package org.airfit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.HashMap;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.airfit.working.Step;
import org.airfit.working.Term;
import org.airfit.working.UnitSystem;
import org.airfit.working.Worked;
import org.airfit.working.Working;
import org.hipparchus.special.Gamma;

/** Works every step of a working again from the printed numbers alone, as a reader with a calculator does. */
public final class Pencil {

  private static final Pattern NUMBER = Pattern.compile("[0-9.]+(e-?[0-9]+)?");

  private final String text;
  private final Map<String, Double> values;
  private int at;

  private Pencil(String text, Map<String, Double> values) {
    this.text = text.replace(" ", "").replace('−', '-');
    this.values = values;
  }

  /**
   * Asserts that the printed numbers give the printed result to one unit of its last digit: half for the rounding of
   * the result, half for that of the numbers put in. A step that was solved by trial must change sign within that unit.
   *
   * @param working the working, with at least one step
   */
  public static void check(Working working) {
    assertThat(working.steps()).isNotEmpty();
    for (Step step : working.steps()) {
      double printed = Double.parseDouble(step.result().value());
      double digit = lastDigit(step.result().value());
      if (step.implicit()) {
        assertThat(residual(step, printed - digit) * residual(step, printed + digit))
            .as(
                "%s: %s has no root within a digit of %s",
                working.title(), step.inNumbers(), printed)
            .isLessThanOrEqualTo(0.0);
      } else {
        String right = step.equation().substring(step.equation().indexOf(" = ") + 3);
        assertThat(worth(right, step, printed))
            .as("%s: %s", working.title(), step.inNumbers())
            .isCloseTo(printed, within(digit));
      }
    }
  }

  /**
   * Asserts the same of an answer in SI units and in US units.
   *
   * @param answer the answer
   */
  public static void check(Worked answer) {
    for (UnitSystem units : UnitSystem.values()) {
      check(answer.working(units));
    }
  }

  private static double residual(Step step, double result) {
    int equals = step.equation().indexOf(" = ");
    return worth(step.equation().substring(0, equals), step, result)
        - worth(step.equation().substring(equals + 3), step, result);
  }

  private static double worth(String expression, Step step, double result) {
    Map<String, Double> values = new HashMap<>();
    values.put(step.result().symbol(), result);
    for (Term term : step.given()) {
      values.put(term.symbol(), Double.parseDouble(term.value()));
    }
    Pencil pencil = new Pencil(expression, values);
    double value = pencil.sum();
    if (pencil.at != pencil.text.length()) {
      throw new IllegalArgumentException(
          "cannot work \"" + pencil.text + "\" from " + pencil.text.substring(pencil.at));
    }
    return value;
  }

  private static double lastDigit(String value) {
    int e = value.indexOf('e');
    int exponent = e < 0 ? 0 : Integer.parseInt(value.substring(e + 1));
    String digits = e < 0 ? value : value.substring(0, e);
    int point = digits.indexOf('.');
    return Math.pow(10.0, exponent - (point < 0 ? 0 : digits.length() - point - 1));
  }

  private boolean take(String token) {
    boolean here = text.startsWith(token, at);
    at += here ? token.length() : 0;
    return here;
  }

  private double sum() {
    double value = product();
    while (true) {
      if (take("+")) {
        value += product();
      } else if (take("-")) {
        value -= product();
      } else {
        return value;
      }
    }
  }

  private double product() {
    double value = power();
    while (true) {
      if (take("×")) {
        value *= power();
      } else if (take("/")) {
        value /= power();
      } else {
        return value;
      }
    }
  }

  private double power() {
    if (take("-")) {
      return -power();
    }
    double base = factor();
    while (true) {
      if (take("²")) {
        base *= base;
      } else if (take("³")) {
        base = base * base * base;
      } else if (take("⁵")) {
        base = Math.pow(base, 5.0);
      } else if (take("^")) {
        base = Math.pow(base, take("-") ? -factor() : factor());
      } else {
        return base;
      }
    }
  }

  private double factor() {
    if (take("(")) {
      double value = sum();
      if (!take(")")) {
        throw new IllegalArgumentException("no ) at " + at + " of \"" + text + "\"");
      }
      return value;
    }
    if (take("√")) {
      return Math.sqrt(factor());
    }
    if (take("log10")) {
      return Math.log10(factor());
    }
    if (take("ln")) {
      return Math.log(factor());
    }
    if (take("exp")) {
      return Math.exp(factor());
    }
    if (take("Q(")) { // the upper regularised gamma function, from a library of its own
      double shape = sum();
      boolean two = take(",");
      double value = Gamma.regularizedGammaQ(shape, sum());
      if (!two || !take(")")) {
        throw new IllegalArgumentException("no Q(a, x) at " + at + " of \"" + text + "\"");
      }
      return value;
    }
    if (take("tan")) {
      double degrees = factor();
      take("°");
      return Math.tan(Math.toRadians(degrees));
    }
    if (take("π")) {
      return Math.PI;
    }
    if (take("⟨")) {
      int end = text.indexOf('⟩', at);
      String symbol = text.substring(at, end);
      at = end + 1;
      for (Map.Entry<String, Double> entry : values.entrySet()) {
        if (entry.getKey().replace(" ", "").equals(symbol)) {
          return entry.getValue();
        }
      }
      throw new IllegalArgumentException("no value for " + symbol + " in \"" + text + "\"");
    }
    Matcher number = NUMBER.matcher(text);
    if (!number.find(at) || number.start() != at) {
      throw new IllegalArgumentException("no number at " + at + " of \"" + text + "\"");
    }
    at = number.end();
    // a constant of the equation may carry its unit
    if (!take("in")) {
      take("mm");
    }
    return Double.parseDouble(number.group());
  }
}
