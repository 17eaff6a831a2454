package org.airfit.counter.stock;

import java.util.Collections;
import java.util.Map;
import java.util.Objects;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Pieces that are held for somebody, or were.
 *
 * @param reference what the caller calls it
 * @param state what became of it
 * @param pieces how many pieces of which articles, by their numbers
 */
public record Reservation(String reference, State state, Map<String, Integer> pieces) {

  /** What became of a reservation. */
  public enum State {
    /** The pieces lie on the shelf for somebody. */
    HELD,
    /** The pieces were sold and are gone. */
    SOLD,
    /** The pieces are free again. */
    RELEASED
  }

  /**
   * Copies the pieces; refuses what is null.
   *
   * @param reference what the caller calls it
   * @param state what became of it
   * @param pieces how many pieces of which articles, by their numbers
   */
  public Reservation {
    Objects.requireNonNull(reference, "reference");
    Objects.requireNonNull(state, "state");
    SortedMap<String, Integer> sorted = new TreeMap<>(Objects.requireNonNull(pieces, "pieces"));
    pieces = Collections.unmodifiableSortedMap(sorted);
  }
}
