package org.airfit.browser.probe;

/** Sums, products and remainders with brackets: doubles are not associative, so none may be dropped. */
final class Shapes {

  private static final double[] VALUES = {0.1, 0.7, 3.3, 1.0e16, -2.9, 1.0e-9, 7.0, 1.0 / 3.0};

  private Shapes() {}

  static void tell(Tape tape) {
    tape.group("shape");
    for (double a : VALUES) {
      for (double b : VALUES) {
        for (double c : VALUES) {
          tell(tape, a, b, c);
        }
      }
    }
  }

  private static void tell(Tape tape, double a, double b, double c) {
    tape.number(a + (b + c));
    tape.number(a + (b - c));
    tape.number(a - (b + c));
    tape.number(a - (b - c));
    tape.number(a * (b * c));
    tape.number(a * (b / c));
    tape.number(a / (b * c));
    tape.number(a / (b / c));
    tape.number(a % (b * c));
    tape.number(a % (b / c));
    tape.number(a * (b % c));
    tape.number(a / (b % c));
    tape.number(a % (b % c));
  }
}
