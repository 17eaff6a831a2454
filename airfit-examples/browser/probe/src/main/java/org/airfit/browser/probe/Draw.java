package org.airfit.browser.probe;

/** Numbers drawn alike on the JVM and in JavaScript; whole numbers of java.util.Random are not. */
final class Draw {

  private int state;

  Draw(int seed) {
    state = seed * 2 + 1;
  }

  /** A number from 0 up to 1: two steps of a linear congruential generator modulo 2³² with the multiplier 1664525 (from memory). */
  double unit() {
    state = state * 1664525 + 1013904223;
    int high = state >>> 6;
    state = state * 1664525 + 1013904223;
    int low = state >>> 5;
    return (high * 134217728.0 + low) / 9007199254740992.0;
  }

  /** A number of a range, evenly. */
  double between(double least, double most) {
    return least + (most - least) * unit();
  }

  /** A number of a range of many powers of ten, its logarithm evenly. */
  double over(double least, double most) {
    return least * Math.exp(Math.log(most / least) * unit());
  }

  /** A whole number below a bound. */
  int below(int bound) {
    return (int) (unit() * bound);
  }
}
