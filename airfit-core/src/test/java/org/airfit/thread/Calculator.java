package org.airfit.thread;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.airfit.working.Step;
import org.airfit.working.Working;

/** A pocket calculator that is handed the printed numbers of a working, units struck out. */
final class Calculator {

  private static final Pattern UNIT = Pattern.compile("(?<=[0-9]) (in|mm|m|°|1/in)(?![a-z0-9])");

  private final String text;
  private int at;

  private Calculator(String text) {
    this.text = text;
  }

  /** The printed right side of the step called {@code what}, keyed in. */
  static double keyIn(Working working, String what) {
    return keyIn(step(working, what));
  }

  static double keyIn(Step step) {
    return keyIn(step.inNumbers());
  }

  static Step step(Working working, String what) {
    return working.steps().stream()
        .filter(step -> step.what().equals(what))
        .findFirst()
        .orElseThrow();
  }

  /** The printed result of a step. */
  static double printed(Step step) {
    return Double.parseDouble(step.result().value());
  }

  /** One unit of the last digit printed in a result: the inputs are rounded too. */
  static double lastDigit(Step step) {
    String value = step.result().value();
    int e = value.indexOf('e');
    int exponent = e < 0 ? 0 : Integer.parseInt(value.substring(e + 1));
    String digits = e < 0 ? value : value.substring(0, e);
    int point = digits.indexOf('.');
    return Math.pow(10.0, exponent - (point < 0 ? 0 : digits.length() - point - 1));
  }

  private static double keyIn(String printed) {
    Matcher units = UNIT.matcher(printed);
    Calculator calculator = new Calculator(units
        .replaceAll("")
        .replace(" ", "")
        .replace('−', '-')
        .replace('×', '*')
        .replace("tan", "t"));
    double value = calculator.sum();
    if (calculator.at != calculator.text.length()) {
      throw new IllegalArgumentException(
          "cannot key in \"" + calculator.text + "\" from " + calculator.at);
    }
    return value;
  }

  private double sum() {
    double value = product();
    while (at < text.length() && (text.charAt(at) == '+' || text.charAt(at) == '-')) {
      value += text.charAt(at++) == '+' ? product() : -product();
    }
    return value;
  }

  private double product() {
    double value = factor();
    while (at < text.length() && (text.charAt(at) == '*' || text.charAt(at) == '/')) {
      value = text.charAt(at++) == '*' ? value * factor() : value / factor();
    }
    return value;
  }

  private double factor() {
    char c = text.charAt(at);
    if (c == '-') {
      at++;
      return -factor();
    }
    if (c == 't') {
      at++;
      return Math.tan(Math.toRadians(factor()));
    }
    if (c == '(') {
      at++;
      double value = sum();
      at++;
      return value;
    }
    Matcher number = Pattern.compile("[0-9.]+(e-?[0-9]+)?").matcher(text);
    if (!number.find(at) || number.start() != at) {
      throw new IllegalArgumentException("no number at " + at + " of \"" + text + "\"");
    }
    at = number.end();
    return Double.parseDouble(number.group());
  }
}
