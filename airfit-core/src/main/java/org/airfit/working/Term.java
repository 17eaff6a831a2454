package org.airfit.working;

import java.util.Objects;
import org.airfit.internal.Digits;

/**
 * A symbol with the value it has in one calculation, as printed. Only the step of a working makes one.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class Term {

  private final String symbol;
  private final String latex;
  private final String value;
  private final String unit;

  private Term(String symbol, String latex, String value, String unit) {
    this.symbol = symbol;
    this.latex = latex;
    this.value = value;
    this.unit = unit;
  }

  /**
   * Obtains a term from a number.
   *
   * @param value the value in {@code unit}, finite
   * @param unit the unit; empty for a pure number
   * @param digits the number of significant digits to print, from 1 to 17
   * @throws IllegalArgumentException if {@code value} is not finite or {@code digits} is out of range
   */
  static Term of(String symbol, String latex, double value, String unit, int digits) {
    return new Term(symbol, latex, PrintedDigits.text(value, digits), unit);
  }

  /** {@return the symbol in plain text, such as "ṁ"} */
  public String symbol() {
    return symbol;
  }

  /** {@return the symbol in LaTeX, such as "\dot m"} */
  public String latex() {
    return latex;
  }

  /** {@return the value that is printed, as a program reads it, such as "0.002" or "1.813e-5"} */
  public String value() {
    return value;
  }

  /** {@return the unit as printed, such as "kg/s"; empty for a pure number} */
  public String unit() {
    return unit;
  }

  /** {@return the value with its unit as it is read, such as "0.002 kg/s" or "1.813 × 10⁻⁵ Pa·s"} */
  public String quantity() {
    String number = Digits.read(value);
    return unit.isEmpty() ? number : number + " " + unit;
  }

  /** The same with zeros at its end, so that it has so many digits: those of a result that is carried. */
  Term padded(int digits) {
    return new Term(symbol, latex, Digits.padded(Double.parseDouble(value), digits), unit);
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

  @Override
  public boolean equals(Object other) {
    return other instanceof Term that
        && symbol.equals(that.symbol)
        && latex.equals(that.latex)
        && value.equals(that.value)
        && unit.equals(that.unit);
  }

  @Override
  public int hashCode() {
    return Objects.hash(symbol, latex, value, unit);
  }

  /** {@return the symbol and its value, such as "ṁ = 0.002 kg/s"} */
  @Override
  public String toString() {
    return symbol + " = " + quantity();
  }
}
