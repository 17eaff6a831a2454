package org.airfit.select;

import java.util.Comparator;

/**
 * What puts proposals in order before their pressure and their names. Of a choice that is not whole it is the least
 * that can become of it.
 *
 * @param missed how far it misses what is asked, in billionths
 * @param missing how many standard adapters are missing where nothing joins two ends
 * @param asked how many rules the parts leave open
 * @param cost what it costs by the objective
 */
record Key(long missed, int missing, int asked, long cost) implements Comparable<Key> {

  private static final Comparator<Key> ORDER = Comparator.comparingLong(Key::missed)
      .thenComparingInt(Key::missing)
      .thenComparingInt(Key::asked)
      .thenComparingLong(Key::cost);

  @Override
  public int compareTo(Key other) {
    return ORDER.compare(this, other);
  }

  /** Whether they differ in the cost at most. */
  boolean isAsWellSuitedAs(Key other) {
    return missed == other.missed && missing == other.missing && asked == other.asked;
  }
}
