package org.airfit.lesson;

import java.util.List;
import java.util.Locale;
import java.util.Random;

/** Draws numbers for the variants of one exercise: the same seed gives the same numbers on every computer. */
final class Draw {

  private static final long LESSONS = 1_000_003L;

  private final Random random;

  /** Each exercise has a sequence of its own, so that a change of one leaves the others as they are. */
  Draw(long seed, String id) {
    random = new Random(seed * LESSONS + id.hashCode());
    random.nextInt();
  }

  /** A number from low to high, in steps. */
  double number(double low, double high, double step) {
    int steps = (int) Math.round((high - low) / step);
    return low + step * random.nextInt(steps + 1);
  }

  boolean coin() {
    return random.nextInt(2) == 1;
  }

  <T> T one(List<T> choices) {
    return choices.get(random.nextInt(choices.size()));
  }

  /** The text with its numbers, the same in every country. */
  static String text(String format, Object... values) {
    return String.format(Locale.ROOT, format, values);
  }
}
