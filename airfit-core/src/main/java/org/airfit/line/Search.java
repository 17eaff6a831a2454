package org.airfit.line;

import java.util.function.Predicate;

/** Halving between a value that has a property and one that has not. */
final class Search {

  private static final int HALVINGS = 120;

  private Search() {}

  /** The last value from {@code low} up that still has the property, where {@code low} has it and {@code high} has not. */
  static double last(double low, double high, Predicate<Double> has) {
    double best = low;
    double worst = high;
    for (int i = 0; i < HALVINGS && worst - best > 1.0e-16 * worst; i++) {
      double middle = 0.5 * (best + worst);
      if (has.test(middle)) {
        best = middle;
      } else {
        worst = middle;
      }
    }
    return best;
  }

  /** The first value from {@code low} up that has the property no more, where {@code low} has it and {@code high} has not. */
  static double first(double low, double high, Predicate<Double> has) {
    double worst = low;
    double best = high;
    for (int i = 0; i < HALVINGS && best - worst > 1.0e-16 * best; i++) {
      double middle = 0.5 * (best + worst);
      if (has.test(middle)) {
        worst = middle;
      } else {
        best = middle;
      }
    }
    return best;
  }
}
