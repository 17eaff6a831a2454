package org.airfit;

import java.util.Objects;

/**
 * What a number is worth that we compare with: how it came about, and where it stands.
 *
 * @param kind how it came about
 * @param source where it stands, as the row of the table says it
 */
public record Evidence(Kind kind, String source) {

  /** How a number came about, the strongest first. */
  public enum Kind {
    /** Printed in a standard, a handbook or a paper, and computed by us. */
    PRINTED("printed"),
    /** Computed by another program, from the same equation or by another method. */
    RECOMPUTED("recomputed"),
    /** A constant of ours held against the table it was copied from. */
    TRANSCRIBED("transcribed"),
    /** Recalled, not seen. */
    RECALLED("recalled");

    private final String word;

    Kind(String word) {
      this.word = word;
    }

    /** {@return the word in the report} */
    public String word() {
      return word;
    }
  }

  /**
   * Checks the components.
   *
   * @param kind how it came about
   * @param source where it stands
   */
  public Evidence {
    Objects.requireNonNull(kind, "kind");
    if (source.isBlank()) {
      throw new IllegalArgumentException("source must say where the number stands, was blank");
    }
  }

  /**
   * Obtains the evidence of a number that was seen in print.
   *
   * @param source where
   * @return the evidence
   */
  public static Evidence printed(String source) {
    return new Evidence(Kind.PRINTED, source);
  }

  /**
   * Obtains the evidence of a constant that was copied.
   *
   * @param source where from
   * @return the evidence
   */
  public static Evidence transcribed(String source) {
    return new Evidence(Kind.TRANSCRIBED, source);
  }

  /**
   * Obtains the evidence of a number that another program computed.
   *
   * @param source which, and from what
   * @return the evidence
   */
  public static Evidence recomputed(String source) {
    return new Evidence(Kind.RECOMPUTED, source);
  }

  /**
   * Obtains the evidence of a number nobody saw.
   *
   * @param source where it is thought to stand
   * @return the evidence
   */
  public static Evidence recalled(String source) {
    return new Evidence(Kind.RECALLED, source);
  }
}
