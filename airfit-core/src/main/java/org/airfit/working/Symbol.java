package org.airfit.working;

import java.util.Objects;

/**
 * A letter or short name that stands for a quantity in equations, such as p2 for a pressure.
 *
 * <p>The LaTeX follows from the plain text by rule: Greek letters and dots by name, Δ and Σ in front of what they
 * belong to, everything behind the first letter as an index, a star raised, a stroke as a stroke: p2 is {@code p_2},
 * ṁ* is {@code \dot m^*}, Δpc is {@code \Delta p_c}, ε/D is {@code \varepsilon/D}. Re is set upright. Where no rule
 * can know, it is given: "ln L".
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class Symbol {

  private final String text;
  private final String latex;
  private final ValueKind kind;

  private Symbol(String text, String latex, ValueKind kind) {
    requireBare(text);
    requireBare(latex);
    this.text = text;
    this.latex = latex;
    this.kind = Objects.requireNonNull(kind, "kind");
  }

  /**
   * Obtains a symbol whose LaTeX follows by rule.
   *
   * @param text the symbol in plain text, such as "p2"
   * @param kind what it stands for
   * @return the symbol
   * @throws IllegalArgumentException if {@code text} is blank or holds angle brackets
   */
  public static Symbol of(String text, ValueKind kind) {
    return new Symbol(text, latexOf(text), kind);
  }

  /**
   * Obtains a symbol with a LaTeX that no rule gives.
   *
   * @param text the symbol in plain text, such as "ln L"
   * @param latex the symbol in LaTeX, such as "\\ln L"
   * @param kind what it stands for
   * @return the symbol
   * @throws IllegalArgumentException if {@code text} or {@code latex} is blank or holds angle brackets
   */
  public static Symbol of(String text, String latex, ValueKind kind) {
    Objects.requireNonNull(latex, "latex");
    Objects.requireNonNull(text, "text");
    return new Symbol(text, latex, kind);
  }

  private static void requireBare(String symbol) {
    if (symbol.isBlank() || symbol.contains("⟨") || symbol.contains("⟩")) {
      throw new IllegalArgumentException(
          "symbol must be given without angle brackets, was \"" + symbol + "\"");
    }
  }

  /**
   * Obtains the same symbol printed in other units.
   *
   * @param other a kind with the same base
   * @return this symbol as {@code other}
   * @throws IllegalArgumentException if {@code other} is another quantity
   */
  public Symbol as(ValueKind other) {
    if (!kind.base().equals(other.base())) {
      throw new IllegalArgumentException(
          "kind of " + text + " must be in " + named(kind) + ", was in " + named(other));
    }
    return new Symbol(text, latex, other);
  }

  private static String named(ValueKind kind) {
    return kind.base().isEmpty() ? "no unit" : kind.base();
  }

  /** {@return the symbol in plain text, such as "p2"} */
  public String text() {
    return text;
  }

  /** {@return the symbol in LaTeX, such as "p_2"} */
  public String latex() {
    return latex;
  }

  /** {@return what it stands for} */
  public ValueKind kind() {
    return kind;
  }

  /**
   * Obtains this symbol with a value.
   *
   * @param value the value in the base of its kind, finite
   * @param digits the number of significant digits, from 1 to 17
   * @param units SI or US units
   * @return the term as printed
   */
  Term term(double value, int digits, UnitSystem units) {
    return Term.of(text, latex, kind.shown(value, units), kind.unit(units), digits);
  }

  static String latexOf(String text) {
    StringBuilder out = new StringBuilder();
    int start = 0;
    for (int stroke = text.indexOf('/'); stroke >= 0; stroke = text.indexOf('/', start)) {
      out.append(latexOfPiece(text.substring(start, stroke))).append('/');
      start = stroke + 1;
    }
    return out.append(latexOfPiece(text.substring(start))).toString();
  }

  private static String latexOfPiece(String piece) {
    if (piece.equals("Re")) {
      return "\\mathrm{Re}";
    }
    StringBuilder out = new StringBuilder();
    int at = 0;
    while (at < piece.length() - 1 && "ΔΣ".indexOf(piece.charAt(at)) >= 0) {
      out.append(sign(piece.charAt(at))).append(' ');
      at++;
    }
    if (at < piece.length()) {
      boolean dotted = at + 1 < piece.length() && piece.charAt(at + 1) == '\u0307';
      out.append(dotted ? "\\dot " : "").append(sign(piece.charAt(at)));
      at += dotted ? 2 : 1;
    }
    int end = piece.endsWith("*") && at < piece.length() ? piece.length() - 1 : piece.length();
    if (at < end) {
      out.append('_').append(index(piece.substring(at, end)));
    }
    return out.append(end < piece.length() ? "^*" : "").toString();
  }

  private static String index(String letters) {
    StringBuilder out = new StringBuilder();
    for (int i = 0; i < letters.length(); i++) {
      String sign = sign(letters.charAt(i));
      out.append(sign).append(sign.length() > 1 && i < letters.length() - 1 ? " " : "");
    }
    return letters.length() == 1 ? out.toString() : "{" + out + "}";
  }

  private static String sign(char letter) {
    return switch (letter) {
      case 'ṁ' -> "\\dot m";
      case 'α' -> "\\alpha";
      case 'β' -> "\\beta";
      case 'γ' -> "\\gamma";
      case 'δ' -> "\\delta";
      case 'ε' -> "\\varepsilon";
      case 'ζ' -> "\\zeta";
      case 'η' -> "\\eta";
      case 'θ' -> "\\theta";
      case 'κ' -> "\\kappa";
      case 'λ' -> "\\lambda";
      case 'μ', '\u00b5' -> "\\mu";
      case 'ν' -> "\\nu";
      case 'π' -> "\\pi";
      case 'ρ' -> "\\rho";
      case 'σ' -> "\\sigma";
      case 'τ' -> "\\tau";
      case 'φ' -> "\\varphi";
      case 'χ' -> "\\chi";
      case 'ψ' -> "\\psi";
      case 'ω' -> "\\omega";
      case 'Δ' -> "\\Delta";
      case 'Σ' -> "\\Sigma";
      case 'Φ' -> "\\Phi";
      case 'Ω' -> "\\Omega";
      case '∞' -> "\\infty";
      default -> String.valueOf(letter);
    };
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Symbol that
        && text.equals(that.text)
        && latex.equals(that.latex)
        && kind.equals(that.kind);
  }

  @Override
  public int hashCode() {
    return Objects.hash(text, latex, kind);
  }

  /** {@return the symbol in plain text} */
  @Override
  public String toString() {
    return text;
  }
}
