package org.airfit.working;

import java.util.Objects;
import java.util.regex.Pattern;
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

  private static final Pattern NUMBER = Pattern.compile("-?\\d+(\\.\\d+)?(e-?\\d+)?");

  /**
   * Checks the components.
   *
   * @param symbol the symbol in plain text, such as "ṁ"
   * @param latex the symbol in LaTeX, such as "\\dot m"
   * @param value the value as printed, such as "0.002"
   * @param unit the unit as printed, such as "kg/s"; empty for a pure number
   */
  public Term {
    requireSymbol(symbol);
    requireSymbol(latex);
    Objects.requireNonNull(unit, "unit");
    if (!NUMBER.matcher(value).matches()) {
      throw new IllegalArgumentException("value of " + symbol
          + " must be a number such as 0.002 or 1.813e-5, was \"" + value + "\"");
    }
  }

  private static void requireSymbol(String symbol) {
    if (symbol.isBlank() || symbol.contains("⟨") || symbol.contains("⟩")) {
      throw new IllegalArgumentException(
          "symbol must be given without angle brackets, was \"" + symbol + "\"");
    }
  }

  /**
   * Obtains a term from a number.
   *
   * @param symbol the symbol in plain text
   * @param latex the symbol in LaTeX
   * @param value the value, finite
   * @param unit the unit; empty for a pure number
   * @param digits the number of significant digits to print, from 1 to 17
   * @return the term
   * @throws IllegalArgumentException if {@code value} is not finite or {@code digits} is out of range
   */
  public static Term of(String symbol, String latex, double value, String unit, int digits) {
    Objects.requireNonNull(latex, "latex");
    Objects.requireNonNull(symbol, "symbol");
    return new Term(symbol, latex, Digits.significant(value, digits), unit);
  }

  /** {@return the value with its unit, such as "0.002 kg/s"} */
  public String quantity() {
    return unit.isEmpty() ? value : value + " " + unit;
  }

  /** Whether the value needs no brackets inside a product or a power. */
  boolean standsAlone() {
    return unit.isEmpty() && !value.startsWith("-") && !value.contains("e");
  }

  String latexQuantity() {
    int exponent = value.indexOf('e');
    String number = exponent < 0
        ? value
        : value.substring(0, exponent) + " \\times 10^{" + value.substring(exponent + 1) + "}";
    return unit.isEmpty() ? number : number + "\\,\\mathrm{" + latexUnit(unit) + "}";
  }

  private static String latexUnit(String unit) {
    return unit.replace(" ", "\\,") // before the spaces that end a command below
        .replace("²", "^2")
        .replace("³", "^3")
        .replace("₂", "_2")
        .replace("·", "\\cdot ")
        .replace("µ", "\\mu ")
        .replace("°", "^\\circ ")
        .replace("%", "\\%");
  }
}
