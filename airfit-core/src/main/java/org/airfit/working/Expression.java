package org.airfit.working;

import java.util.Collection;
import java.util.List;
import java.util.function.Function;
import org.airfit.internal.Statistics;

/**
 * One side of an equation: evaluates on doubles, writes itself as text and as LaTeX. Symbols stand in angle brackets
 * in both.
 */
sealed interface Expression {

  /** What symbols are worth, and what becomes of a result that a double holds with fewer digits. */
  interface Values {

    /** The worth of a symbol. */
    double of(String symbol);

    /** What to go on with instead of a product, a quotient or a power too small for a double to keep its digits. */
    default double small(double result) {
      return result;
    }

    /** A result, of factors of which one may be 0. */
    private double kept(double result, boolean ofZero) {
      return Math.abs(result) < Double.MIN_NORMAL && !ofZero ? small(result) : result;
    }
  }

  /** The worth of this, symbols having the values given. */
  double worth(Values values);

  /** Writes this as it stands in a text. */
  void text(StringBuilder out);

  /** Writes this in LaTeX; {@code inLine} keeps strokes as strokes, as an exponent needs it. */
  void latex(StringBuilder out, boolean inLine);

  /** Collects the symbols of this in the order they come, one as often as it stands there. */
  void symbols(Collection<String> found);

  /** What this may come to while symbols lie within intervals; each place of a symbol is taken by itself. */
  Interval bounds(Function<String, Interval> values);

  /** How many operations it takes to work this out with a pencil: a sign in front of a number is none. */
  int operations();

  /** What is left where a bracket stands only in the other system of units: a factor 1 that is not written. */
  record Nothing() implements Expression {

    @Override
    public double worth(Values values) {
      return 1.0;
    }

    @Override
    public void text(StringBuilder out) {}

    @Override
    public void latex(StringBuilder out, boolean inLine) {}

    @Override
    public void symbols(Collection<String> found) {}

    @Override
    public Interval bounds(Function<String, Interval> values) {
      return Interval.of(1.0);
    }

    @Override
    public int operations() {
      return 0;
    }
  }

  /** A number of the equation, which may carry a unit; π too. */
  record Constant(double worth, String digits, String unit) implements Expression {

    @Override
    public double worth(Values values) {
      return worth;
    }

    @Override
    public void text(StringBuilder out) {
      out.append(digits);
      if (!unit.isEmpty()) {
        out.append(' ').append(unit);
      }
    }

    @Override
    public void latex(StringBuilder out, boolean inLine) {
      int exponent = digits.indexOf('e');
      if (digits.equals("π")) {
        out.append("\\pi");
      } else if (exponent < 0) {
        out.append(digits);
      } else {
        out.append(digits, 0, exponent)
            .append(" \\times 10^{")
            .append(digits.substring(exponent + 1))
            .append('}');
      }
      if (!unit.isEmpty()) {
        out.append("\\,\\mathrm{").append(unit).append('}');
      }
    }

    @Override
    public void symbols(Collection<String> found) {}

    @Override
    public Interval bounds(Function<String, Interval> values) {
      return digits.equals("π") ? Interval.ofPrinted(worth) : ofDigits();
    }

    @Override
    public int operations() {
      return 0;
    }

    /** A whole number is held exactly, another to a last place. */
    private Interval ofDigits() {
      return worth == Math.rint(worth) ? Interval.of(worth) : Interval.ofPrinted(worth);
    }
  }

  /** A symbol. */
  record Variable(String symbol) implements Expression {

    @Override
    public double worth(Values values) {
      return values.of(symbol);
    }

    @Override
    public void text(StringBuilder out) {
      out.append('⟨').append(symbol).append('⟩');
    }

    @Override
    public void latex(StringBuilder out, boolean inLine) {
      text(out);
    }

    @Override
    public void symbols(Collection<String> found) {
      found.add(symbol);
    }

    @Override
    public Interval bounds(Function<String, Interval> values) {
      return values.apply(symbol);
    }

    @Override
    public int operations() {
      return 0;
    }
  }

  /** Round brackets. LaTeX drops them where a fraction, a root or an exponent keeps the inner part together. */
  record Bracket(Expression inner) implements Expression {

    @Override
    public double worth(Values values) {
      return inner.worth(values);
    }

    @Override
    public void text(StringBuilder out) {
      out.append('(');
      inner.text(out);
      out.append(')');
    }

    @Override
    public void latex(StringBuilder out, boolean inLine) {
      out.append(inLine ? "(" : "\\left(");
      inner.latex(out, inLine);
      out.append(inLine ? ")" : "\\right)");
    }

    @Override
    public void symbols(Collection<String> found) {
      inner.symbols(found);
    }

    @Override
    public Interval bounds(Function<String, Interval> values) {
      return inner.bounds(values);
    }

    @Override
    public int operations() {
      return inner.operations();
    }
  }

  /** The negative of a factor. */
  record Negative(Expression inner) implements Expression {

    @Override
    public double worth(Values values) {
      return -inner.worth(values);
    }

    @Override
    public void text(StringBuilder out) {
      out.append('−');
      inner.text(out);
    }

    @Override
    public void latex(StringBuilder out, boolean inLine) {
      out.append('-');
      inner.latex(out, inLine);
    }

    @Override
    public void symbols(Collection<String> found) {
      inner.symbols(found);
    }

    @Override
    public Interval bounds(Function<String, Interval> values) {
      return inner.bounds(values).negative();
    }

    @Override
    public int operations() {
      return inner.operations();
    }
  }

  /** An operand of a sum or a product with the sign in front of it, blanks included where the definition has them. */
  record Operand(char sign, boolean spaced, Expression value) {

    private void writeSign(StringBuilder out) {
      out.append(spaced ? " " + sign + " " : String.valueOf(sign));
    }
  }

  /** A sum; the sign of the first operand is not written. */
  record Sum(List<Operand> operands) implements Expression {

    @Override
    public double worth(Values values) {
      double sum = operands.get(0).value.worth(values);
      for (Operand operand : operands.subList(1, operands.size())) {
        double value = operand.value.worth(values);
        sum = operand.sign == '+' ? sum + value : sum - value;
      }
      return sum;
    }

    @Override
    public void text(StringBuilder out) {
      operands.get(0).value.text(out);
      for (Operand operand : operands.subList(1, operands.size())) {
        operand.writeSign(out);
        operand.value.text(out);
      }
    }

    @Override
    public void latex(StringBuilder out, boolean inLine) {
      operands.get(0).value.latex(out, inLine);
      for (Operand operand : operands.subList(1, operands.size())) {
        out.append(operand.sign == '+' ? " + " : " - ");
        operand.value.latex(out, inLine);
      }
    }

    @Override
    public void symbols(Collection<String> found) {
      operands.forEach(operand -> operand.value.symbols(found));
    }

    @Override
    public Interval bounds(Function<String, Interval> values) {
      Interval sum = operands.get(0).value.bounds(values);
      for (Operand operand : operands.subList(1, operands.size())) {
        Interval value = operand.value.bounds(values);
        sum = operand.sign == '+' ? sum.plus(value) : sum.minus(value);
      }
      return sum;
    }

    @Override
    public int operations() {
      return operationsOf(operands);
    }
  }

  /** A product with quotients, worked from left to right; the first operand is a factor. */
  record Product(List<Operand> operands) implements Expression {

    @Override
    public double worth(Values values) {
      double product = operands.get(0).value.worth(values);
      for (Operand operand : operands.subList(1, operands.size())) {
        double value = operand.value.worth(values);
        product = operand.sign == '×'
            ? values.kept(product * value, product == 0.0 || value == 0.0)
            : values.kept(product / value, product == 0.0);
      }
      return product;
    }

    @Override
    public void text(StringBuilder out) {
      operands.get(0).value.text(out);
      for (Operand operand : operands.subList(1, operands.size())) {
        operand.writeSign(out);
        operand.value.text(out);
      }
    }

    @Override
    public void latex(StringBuilder out, boolean inLine) {
      if (inLine) {
        operands.get(0).value.latex(out, true);
        for (Operand operand : operands.subList(1, operands.size())) {
          out.append(operand.sign == '×' ? " \\cdot " : "/");
          operand.value.latex(out, true);
        }
        return;
      }
      int at = 0;
      while (at < operands.size()) {
        int strokes = run(at + 1, '×');
        int end = run(strokes, '/');
        if (at > 0) {
          out.append(" \\cdot ");
        }
        // the last run of factors is no numerator if no stroke follows
        if (strokes == end) {
          factors(out, at, strokes, false);
        } else {
          out.append("\\frac{");
          factors(out, at, strokes, true);
          out.append("}{");
          factors(out, strokes, end, true);
          out.append('}');
        }
        at = end;
      }
    }

    /** Where the operands of one sign end that begin at {@code from}. */
    private int run(int from, char sign) {
      int end = from;
      while (end < operands.size() && operands.get(end).sign == sign) {
        end++;
      }
      return end;
    }

    private void factors(StringBuilder out, int from, int end, boolean keptTogether) {
      for (int i = from; i < end; i++) {
        if (i > from) {
          out.append(" \\cdot ");
        }
        if (keptTogether && end - from == 1) {
          bare(operands.get(i).value).latex(out, false);
        } else {
          operands.get(i).value.latex(out, false);
        }
      }
    }

    @Override
    public void symbols(Collection<String> found) {
      operands.forEach(operand -> operand.value.symbols(found));
    }

    @Override
    public Interval bounds(Function<String, Interval> values) {
      Interval product = operands.get(0).value.bounds(values);
      for (Operand operand : operands.subList(1, operands.size())) {
        Interval value = operand.value.bounds(values);
        product = operand.sign == '×' ? product.times(value) : product.over(value);
      }
      return product;
    }

    @Override
    public int operations() {
      return operationsOf(operands);
    }
  }

  /** A power; {@code sign} is ², ³, ⁴ or ⁵, or ^ before any other exponent. */
  record Power(Expression base, char sign, Expression exponent) implements Expression {

    @Override
    public double worth(Values values) {
      double worth = base.worth(values);
      double power = switch (sign) {
        case '²' -> worth * worth;
        case '³' -> worth * worth * worth;
        default -> Math.pow(worth, exponent.worth(values));
      };
      return values.kept(power, worth == 0.0);
    }

    @Override
    public void text(StringBuilder out) {
      base.text(out);
      out.append(sign);
      if (sign == '^') {
        exponent.text(out);
      }
    }

    @Override
    public void latex(StringBuilder out, boolean inLine) {
      if (base instanceof Call call) {
        new Bracket(call).latex(out, inLine);
      } else {
        base.latex(out, inLine);
      }
      out.append('^');
      if (sign == '^') {
        out.append('{');
        bare(exponent).latex(out, true);
        out.append('}');
      } else {
        exponent.latex(out, true);
      }
    }

    @Override
    public void symbols(Collection<String> found) {
      base.symbols(found);
      exponent.symbols(found);
    }

    @Override
    public Interval bounds(Function<String, Interval> values) {
      return base.bounds(values).power(exponent.bounds(values));
    }

    @Override
    public int operations() {
      return base.operations() + exponent.operations() + 1;
    }
  }

  /** A function: √, ln, log10, exp, tan of degrees. */
  record Call(String name, Expression argument) implements Expression {

    @Override
    public double worth(Values values) {
      double x = argument.worth(values);
      return switch (name) {
        case "√" -> Math.sqrt(x);
        case "ln" -> Math.log(x);
        case "log10" -> Math.log10(x);
        case "exp" -> Math.exp(x);
        case "tan" -> Math.tan(Math.toRadians(x));
        default -> throw new IllegalStateException("no function " + name);
      };
    }

    @Override
    public void text(StringBuilder out) {
      out.append(name);
      argument.text(out);
      out.append(name.equals("tan") ? "°" : "");
    }

    @Override
    public void latex(StringBuilder out, boolean inLine) {
      switch (name) {
        case "√" -> {
          out.append("\\sqrt{");
          bare(argument).latex(out, inLine);
          out.append('}');
        }
        case "log10" -> {
          out.append("\\log_{10} ");
          argument.latex(out, inLine);
        }
        case "tan" -> {
          out.append("\\tan ");
          argument.latex(out, inLine);
          out.append("^\\circ");
        }
        default -> {
          out.append('\\').append(name).append(' ');
          argument.latex(out, inLine);
        }
      }
    }

    @Override
    public void symbols(Collection<String> found) {
      argument.symbols(found);
    }

    @Override
    public Interval bounds(Function<String, Interval> values) {
      Interval x = argument.bounds(values);
      return switch (name) {
        case "√" -> x.root();
        case "ln" -> x.ln();
        case "log10" -> x.log10();
        case "exp" -> x.exp();
        case "tan" -> x.tan();
        default -> throw new IllegalStateException("no function " + name);
      };
    }

    @Override
    public int operations() {
      return argument.operations() + 1;
    }
  }

  /** Q(a, x), the upper regularised gamma function, for half of a whole number a. */
  record UpperGamma(Expression shape, Expression from) implements Expression {

    @Override
    public double worth(Values values) {
      double twice = 2.0 * shape.worth(values);
      if (!(twice >= 1.0 && twice <= Integer.MAX_VALUE && twice == Math.floor(twice))) {
        return Double.NaN;
      }
      return Statistics.chiSquareAbove(2.0 * from.worth(values), (int) twice);
    }

    @Override
    public void text(StringBuilder out) {
      out.append("Q(");
      shape.text(out);
      out.append(", ");
      from.text(out);
      out.append(')');
    }

    @Override
    public void latex(StringBuilder out, boolean inLine) {
      out.append(inLine ? "Q(" : "Q\\left(");
      shape.latex(out, inLine);
      out.append(", ");
      from.latex(out, inLine);
      out.append(inLine ? ")" : "\\right)");
    }

    @Override
    public void symbols(Collection<String> found) {
      shape.symbols(found);
      from.symbols(found);
    }

    @Override
    public Interval bounds(Function<String, Interval> values) {
      throw new IllegalStateException("no card has Q(a, x): no pencil works it out");
    }

    @Override
    public int operations() {
      return Integer.MAX_VALUE;
    }
  }

  /** One operation between two operands, and those inside them. */
  private static int operationsOf(List<Operand> operands) {
    int count = operands.size() - 1;
    for (Operand operand : operands) {
      count += operand.value.operations();
    }
    return count;
  }

  /** Without the brackets around it. */
  private static Expression bare(Expression expression) {
    return expression instanceof Bracket bracket ? bracket.inner : expression;
  }
}
