package org.airfit.internal;

import java.util.function.IntToDoubleFunction;

/** A sum that makes up for its rounding, after Kahan (1965): to the last bit that of a stream, in less time. */
public final class Sum {

  private Sum() {}

  /**
   * Adds numbers up.
   *
   * @param count how many there are
   * @param numbers each of them by its index from 0; finite
   * @return their sum
   */
  public static double of(int count, IntToDoubleFunction numbers) {
    double sum = 0.0;
    double tooMuch = 0.0;
    for (int i = 0; i < count; i++) {
      double next = numbers.applyAsDouble(i) - tooMuch;
      double then = sum + next;
      tooMuch = (then - sum) - next;
      sum = then;
    }
    return sum - tooMuch;
  }
}
