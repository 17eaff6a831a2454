package org.airfit.source;

import java.util.Collections;
import java.util.List;

/** How far a number can be trusted: what kind of place it comes from, strongest first. */
public enum Basis {
  /** A published standard. */
  STANDARD("standard"),
  /** The words of a law or a regulation, or the rules of a works. */
  REGULATION("text of the rule"),
  /** A handbook, paper, government document or textbook. */
  HANDBOOK("handbook"),
  /** Computed from other sourced values by a formula that is shown. */
  DERIVED("derived"),
  /** Measured by whoever owns the data, with instrument and method on record. */
  MEASURED("measured"),
  /** What the trade does. No source says so. */
  COMMON_PRACTICE("common practice, no source"),
  /** Recalled, and seen in no source. */
  FROM_MEMORY("from memory"),
  /** Invented for a demonstration or a test; belongs to no real part. */
  DEMO("invented for demonstration");

  private final String label;

  Basis(String label) {
    this.label = label;
  }

  /** {@return this basis in words, such as "common practice, no source"} */
  public String label() {
    return label;
  }

  /**
   * Obtains the weaker of two: what an answer that used both may claim.
   *
   * @param other the other basis
   * @return whichever of this and {@code other} deserves less trust
   */
  public Basis weaker(Basis other) {
    return Collections.max(List.of(this, other));
  }
}
