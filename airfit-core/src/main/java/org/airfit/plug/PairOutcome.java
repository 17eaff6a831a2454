package org.airfit.plug;

import org.airfit.internal.Labels;

/** What happens when a plug is pushed into a socket that may be of another profile. */
public enum PairOutcome {
  /** It goes in, locks and seals. */
  FITS("goes in and seals"),
  /** It goes in and is held, and air escapes. */
  LEAKS("goes in and leaks"),
  /** It goes in and is not held: under pressure it can fly out. */
  LETS_GO("goes in and lets go"),
  /** It does not go in. */
  DOES_NOT_GO_IN("does not go in"),
  /** Nobody told. It counts as if it could let go. */
  NOT_TOLD("not told");

  private final String label;

  PairOutcome(String label) {
    this.label = label;
  }

  /**
   * Reads an outcome.
   *
   * @param text the outcome in words, as {@link #toString} prints it
   * @return the outcome
   * @throws IllegalArgumentException if {@code text} is no outcome
   */
  public static PairOutcome parse(String text) {
    return Labels.parse("what happens", text, values());
  }

  /** {@return the outcome in words, such as "goes in and lets go"} */
  @Override
  public String toString() {
    return label;
  }
}
