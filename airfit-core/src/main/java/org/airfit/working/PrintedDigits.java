package org.airfit.working;

import org.airfit.internal.Digits;

/** How many digits of a number stand in a working: the one rule for all of them. */
final class PrintedDigits {

  /** Digits of a number, where a step below does not need more: what a pencil carries; our choice. */
  static final int MOST = 4;

  /** A number given that so many digits tell is printed with all of them: somebody typed or read it. */
  private static final int TYPED = 6;

  /** What changes of unit round off, as a fraction. */
  private static final double CONVERTED = 1.0e-12;

  /** From here on numbers are printed with an exponent, whatever they are. */
  private static final double LARGE = 1.0e9;

  private PrintedDigits() {}

  /**
   * Of a number that is given those it was typed with, of another at most four. A step whose result needs more prints
   * more.
   */
  static int ofGiven(double shown, int asked) {
    for (int digits = 1; digits <= TYPED; digits++) {
      if (isShort(shown, digits)) {
        int whole = whole(shown);
        return whole <= TYPED ? Math.max(digits, whole) : digits;
      }
    }
    return Math.min(asked, MOST);
  }

  /** Of a result as many as are asked for; of money all before the point, for nobody pays in tens. */
  static int ofResult(ValueKind kind, double value, int asked) {
    boolean money = kind.equals(ValueKind.MONEY) && Math.abs(value) < LARGE;
    return money && asked >= 1 ? Math.max(asked, whole(value)) : asked;
  }

  /** So many digits of a number, with the zeros at its end where those do not tell it whole. */
  static String text(double shown, int digits) {
    String rounded = Digits.rounded(shown, digits);
    return isShort(shown, digits) ? rounded : Digits.padded(shown, digits);
  }

  /** Whether so many digits tell a number whole, but for what a change of units rounds off. */
  static boolean isShort(double value, int digits) {
    double printed = Double.parseDouble(Digits.rounded(value, digits));
    return Math.abs(printed - value) <= CONVERTED * Math.abs(value);
  }

  /** How many digits stand before the point, at least one. */
  private static int whole(double value) {
    return 1 + (int) Math.floor(Math.log10(Math.max(1.0, Math.abs(value))));
  }
}
