package org.airfit.browser.probe;

/** Numbers from text and back: on the JVM by the JDK, in JavaScript by the browser. */
final class Decimals {

  private static final String[] ODD = {
    "",
    " ",
    ".",
    "-",
    "+",
    "1e",
    "1e+",
    "1,5",
    "1_0",
    "1.2.3",
    "--1",
    "+-1",
    "1 2",
    "e5",
    ".e5",
    "abc",
    "nan",
    "infinity",
    "NaN",
    "+NaN",
    "-NaN",
    "Infinity",
    "-Infinity",
    "+Infinity",
    "Infinityd",
    "1f",
    "1D",
    "1.d",
    ".5F",
    "5.",
    "+.5e-3f",
    " 12 ",
    "\t-7.5\n",
    "00012.50",
    "1E5",
    "1e-5",
    "1e400",
    "-1e400",
    "1e-400",
    "-0",
    "-0.0",
    "0e9",
    "4.9E-324",
    "2.4E-324",
    "2.5E-324",
    "1.7976931348623157E308",
    "1.7976931348623159E308",
    "9007199254740993",
    "1e5d",
    "1e5e",
    "5dd",
    "½",
    "١",
  };

  private Decimals() {}

  static void tell(Tape tape, int each) {
    tape.group("decimal");
    for (String odd : ODD) {
      tape.text(odd + " is " + read(odd));
    }
    Draw draw = new Draw(6);
    for (int i = 0; i < each; i++) {
      String typed = typed(draw, 1 + draw.below(25), draw.below(660) - 340);
      tape.text(typed + " is " + read(typed));
      // Of so few digits one text is shortest; from 1e17 on JDK 17 writes longer ones.
      double few = Double.parseDouble(typed(draw, 1 + draw.below(14), draw.below(22) - 20));
      tape.text(Double.toString(few));
      tape.text(String.valueOf(Double.parseDouble(Double.toString(few)) == few));
      double any = Double.longBitsToDouble(
          ((long) (draw.unit() * 4294967296.0) << 32) | (long) (draw.unit() * 4294967296.0));
      tape.text(
          String.valueOf(Double.isNaN(any) || Double.parseDouble(Double.toString(any)) == any));
      tape.number(Double.isFinite(any) ? any : 0.0);
    }
  }

  /** What is read, bit by bit, or how it is refused. */
  private static String read(String typed) {
    try {
      return Long.toHexString(Double.doubleToLongBits(Double.parseDouble(typed)));
    } catch (NumberFormatException e) {
      return "refused: " + e.getMessage();
    }
  }

  private static String typed(Draw draw, int digits, int exponent) {
    StringBuilder out = new StringBuilder(draw.below(3) == 0 ? "-" : "");
    int point = draw.below(digits + 1);
    for (int i = 0; i < digits; i++) {
      if (i == point) {
        out.append('.');
      }
      out.append((char) ('0' + draw.below(10)));
    }
    return draw.below(4) == 0
        ? out.toString()
        : out.append('e').append(exponent).toString();
  }
}
