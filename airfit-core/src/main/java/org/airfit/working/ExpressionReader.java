package org.airfit.working;

import java.util.ArrayList;
import java.util.List;

/**
 * Reads the definition of a formula, by recursive descent, for one system of units.
 *
 * <pre>
 *   equation = sum " = " sum
 *   sum      = product { ( "+" | "−" ) product }
 *   product  = power { ( "×" | "/" ) power }
 *   power    = "−" power | factor { "²" | "³" | "⁴" | "⁵" | "^" [ "−" ] factor }
 *   factor   = "(" sum ")" | function factor | "Q(" sum "," sum ")" | "⟨" symbol "⟩" | number [ unit ] | "π" | choice
 *   choice   = "[" product "]" | "[" [ product ] "|" [ product ] "]"   (g_c stands for its number)
 *   function = "√" | "ln" | "log10" | "exp" | "tan" (degrees: its factor is followed by "°")
 * </pre>
 *
 * <p>A choice holds what only US units need, or what SI needs and what US units need with a stroke between. It is a
 * factor.
 */
final class ExpressionReader {

  private static final Expression NOTHING = new Expression.Nothing();
  private static final List<String> FUNCTIONS = List.of("√", "log10", "ln", "exp", "tan");
  private static final List<String> UNITS = List.of("mm", "in");
  private static final String POWERS = "²³⁴⁵";

  private final String text;
  private final UnitSystem units;
  private int at;

  private ExpressionReader(String text, UnitSystem units) {
    this.text = text;
    this.units = units;
  }

  /** An equation as it stands in one system of units. */
  record Equation(Expression left, Expression right) {}

  /** Reads a definition whole. */
  static Equation read(String definition, UnitSystem units) {
    ExpressionReader reader = new ExpressionReader(definition, units);
    Expression left = reader.sum();
    if (!reader.take('=')) {
      throw reader.refused("=");
    }
    Expression right = reader.sum();
    reader.blanks();
    if (reader.at < definition.length()) {
      throw reader.refused("the end or an operator");
    }
    if (left == NOTHING || right == NOTHING) {
      throw reader.refused("more than a factor of one system of units on each side");
    }
    return new Equation(left, right);
  }

  private IllegalArgumentException refused(String wanted) {
    return new IllegalArgumentException(
        "definition \"" + text + "\" must have " + wanted + " at character " + (at + 1)
            + (at < text.length() ? ", was \"" + text.substring(at) + "\"" : ", but ends"));
  }

  private void blanks() {
    while (at < text.length() && text.charAt(at) == ' ') {
      at++;
    }
  }

  private boolean take(char sign) {
    blanks();
    boolean here = at < text.length() && text.charAt(at) == sign;
    at += here ? 1 : 0;
    return here;
  }

  private void require(char sign) {
    if (!take(sign)) {
      throw refused(String.valueOf(sign));
    }
  }

  private boolean take(String word) {
    blanks();
    boolean here = text.startsWith(word, at);
    at += here ? word.length() : 0;
    return here;
  }

  /** Takes one of two operators; 0 if neither is here. */
  private char operator(char one, char other) {
    return take(one) ? one : take(other) ? other : 0;
  }

  /** Whether a blank stands before the sign just taken. */
  private boolean spaced() {
    return at > 1 && text.charAt(at - 2) == ' ';
  }

  private Expression sum() {
    List<Expression.Operand> operands = new ArrayList<>();
    operands.add(new Expression.Operand('+', false, product()));
    while (true) {
      char sign = operator('+', '−');
      if (sign == 0) {
        break;
      }
      operands.add(new Expression.Operand(sign, spaced(), product()));
    }
    if (operands.size() == 1) {
      return operands.get(0).value();
    }
    for (Expression.Operand operand : operands) {
      if (operand.value() == NOTHING) {
        throw refused("what only one system of units needs as a factor, not as a summand,");
      }
    }
    return new Expression.Sum(List.copyOf(operands));
  }

  private Expression product() {
    List<Expression.Operand> operands = new ArrayList<>();
    add(operands, '×', true, power());
    while (true) {
      char sign = operator('×', '/');
      if (sign == 0) {
        break;
      }
      add(operands, sign, spaced(), power());
    }
    if (operands.isEmpty()) {
      return NOTHING;
    }
    if (operands.get(0).sign() == '/') {
      operands.add(0, new Expression.Operand('×', true, new Expression.Constant(1.0, "1", "")));
    }
    return operands.size() == 1
        ? operands.get(0).value()
        : new Expression.Product(List.copyOf(operands));
  }

  private static void add(
      List<Expression.Operand> operands, char sign, boolean spaced, Expression value) {
    if (value != NOTHING) {
      operands.add(new Expression.Operand(sign, spaced, value));
    }
  }

  private Expression power() {
    if (take('−')) {
      Expression inner = power();
      return inner == NOTHING ? NOTHING : new Expression.Negative(inner);
    }
    Expression base = factor();
    while (true) {
      int power = at < text.length() ? POWERS.indexOf(text.charAt(at)) : -1;
      if (power >= 0) {
        at++;
        base = raised(
            base,
            POWERS.charAt(power),
            new Expression.Constant(power + 2.0, String.valueOf(power + 2), ""));
      } else if (at < text.length() && text.charAt(at) == '^') {
        at++;
        Expression exponent = take('−') ? new Expression.Negative(factor()) : factor();
        base = raised(base, '^', exponent);
      } else {
        return base;
      }
    }
  }

  private static Expression raised(Expression base, char sign, Expression exponent) {
    if (base == NOTHING) {
      return NOTHING;
    }
    return new Expression.Power(base, sign, exponent);
  }

  private Expression factor() {
    if (take("Q(")) {
      Expression shape = sum();
      require(',');
      Expression from = sum();
      require(')');
      return new Expression.UpperGamma(shape, from);
    }
    for (String function : FUNCTIONS) {
      if (take(function)) {
        Expression argument = factor();
        if (function.equals("tan")) {
          require('°');
        }
        return argument == NOTHING ? NOTHING : new Expression.Call(function, argument);
      }
    }
    if (take('(')) {
      Expression inner = sum();
      require(')');
      return inner == NOTHING ? NOTHING : new Expression.Bracket(inner);
    }
    if (take('[')) {
      return choice();
    }
    if (take('⟨')) {
      int end = text.indexOf('⟩', at);
      if (end < 0) {
        throw refused("⟩ behind it");
      }
      String symbol = text.substring(at, end);
      at = end + 1;
      return new Expression.Variable(symbol);
    }
    if (take("g_c")) {
      return new Expression.Constant(Double.parseDouble(UnitSystem.G_C), UnitSystem.G_C, "");
    }
    if (take('π')) {
      return new Expression.Constant(Math.PI, "π", "");
    }
    return number();
  }

  private Expression choice() {
    Expression first = side('|');
    Expression second;
    if (take('|')) {
      second = side(']');
    } else {
      second = first;
      first = NOTHING;
    }
    require(']');
    if (first == NOTHING && second == NOTHING) {
      throw refused("something between the square brackets that end");
    }
    return units.either(first, second);
  }

  /** One side of a choice; what holds more than one factor keeps together by round brackets. */
  private Expression side(char end) {
    blanks();
    if (at < text.length() && text.charAt(at) == end) {
      return NOTHING;
    }
    Expression side = product();
    boolean apart = side instanceof Expression.Product || side instanceof Expression.Negative;
    return apart ? new Expression.Bracket(side) : side;
  }

  private Expression number() {
    blanks();
    int start = at;
    digits();
    if (at > start && at < text.length() && text.charAt(at) == '.') {
      at++;
      int point = at;
      digits();
      if (at == point) {
        throw refused("a digit");
      }
    }
    if (at == start) {
      throw refused("a number, a symbol or a bracket");
    }
    if (at < text.length() && text.charAt(at) == 'e') {
      at++;
      if (at < text.length() && text.charAt(at) == '-') {
        at++;
      }
      int exponent = at;
      digits();
      if (at == exponent) {
        throw refused("a digit");
      }
    }
    String digits = text.substring(start, at);
    return new Expression.Constant(Double.parseDouble(digits), digits, unit());
  }

  private void digits() {
    while (at < text.length() && text.charAt(at) >= '0' && text.charAt(at) <= '9') {
      at++;
    }
  }

  private String unit() {
    for (String unit : UNITS) {
      int end = at + unit.length() + 1;
      boolean whole = end >= text.length() || !Character.isLetterOrDigit(text.charAt(end));
      if (whole && text.startsWith(" " + unit, at)) {
        at = end;
        return unit;
      }
    }
    return "";
  }
}
