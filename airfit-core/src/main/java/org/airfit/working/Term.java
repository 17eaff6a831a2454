package org.airfit.working;

import org.airfit.internal.Digits;

/**
 * A symbol with the value it has in one calculation.
 *
 * @param symbol the symbol in plain text, such as "ṁ"
 * @param latex the symbol in LaTeX, such as "\dot m"
 * @param value the value as printed, such as "0.002"
 * @param unit the unit as printed, such as "kg/s"; empty for a pure number
 */
public record Term(String symbol, String latex, String value, String unit) {

  /**
   * Obtains a term from a number.
   *
   * @param symbol the symbol in plain text
   * @param latex the symbol in LaTeX
   * @param value the value, finite
   * @param unit the unit; empty for a pure number
   * @param digits the number of significant digits to print, from 1 to 17
   * @return the term
   * @throws IllegalArgumentException if {@code digits} is out of range
   */
  public static Term of(String symbol, String latex, double value, String unit, int digits) {
    return new Term(symbol, latex, Digits.significant(value, digits), unit);
  }

  /** {@return the value with its unit, such as "0.002 kg/s"} */
  public String quantity() {
    return unit.isEmpty() ? value : value + " " + unit;
  }

  String latexQuantity() {
    int exponent = value.indexOf('e');
    String number = exponent < 0
        ? value
        : value.substring(0, exponent) + " \\times 10^{" + value.substring(exponent + 1) + "}";
    return unit.isEmpty() ? number : number + "\\,\\mathrm{" + latexUnit(unit) + "}";
  }

  private static String latexUnit(String unit) {
    return unit.replace("²", "^2")
        .replace("³", "^3")
        .replace("·", "\\cdot ")
        .replace("µ", "\\mu ")
        .replace("°", "^\\circ ")
        .replace("%", "\\%")
        .replace(" ", "\\,");
  }
}
