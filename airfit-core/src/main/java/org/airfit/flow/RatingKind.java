package org.airfit.flow;

/** What a {@link Rating} is made of. */
public enum RatingKind {
  /** Cv or Kv. */
  COEFFICIENT("flow coefficient"),
  /** C of ISO 6358, with or without b. */
  CONDUCTANCE("sonic conductance"),
  /** S, the section of a loss-free nozzle of the same choked flow. */
  EFFECTIVE_AREA("effective area"),
  /** A flow at an inlet pressure and a drop. */
  RATED_FLOW("flow at a pressure drop"),
  /** A flow into the open. */
  FULL_FLOW("full flow"),
  /** A flow whose drop is not told. */
  BARE_FLOW("flow without a pressure drop"),
  /** Several flows, each with its drop. */
  POINTS("table of points");

  private final String label;

  RatingKind(String label) {
    this.label = label;
  }

  /** {@return the kind in words} */
  public String label() {
    return label;
  }
}
