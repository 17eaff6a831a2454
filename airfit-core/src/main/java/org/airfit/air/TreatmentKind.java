package org.airfit.air;

import org.airfit.internal.Labels;

/** What a stage of the treatment of compressed air is. */
public enum TreatmentKind {
  /** Cools the air; water falls out. */
  COOLER("cooler"),
  /** A vessel; the air cools in it. */
  RECEIVER("receiver"),
  /** Takes liquid out by its swirl or by baffles. */
  SEPARATOR("separator"),
  /** Takes mist of oil and water, and particles, out. */
  COALESCING_FILTER("coalescing filter"),
  /** Takes particles out of dry air. */
  PARTICLE_FILTER("particle filter"),
  /** Takes vapour of oil out, by activated carbon. */
  CARBON_FILTER("carbon filter"),
  /** A dryer that cools the air by a refrigerant. */
  REFRIGERATED_DRYER("refrigerated dryer"),
  /** A dryer whose desiccant takes vapour of water up. */
  DESICCANT_DRYER("desiccant dryer"),
  /** A dryer whose membrane lets vapour of water through. */
  MEMBRANE_DRYER("membrane dryer"),
  /** A length of pipe. */
  PIPE("pipe");

  private final String label;

  TreatmentKind(String label) {
    this.label = label;
  }

  /**
   * Reads a kind.
   *
   * @param text the kind, such as "coalescing filter"
   * @return the kind
   * @throws IllegalArgumentException if it is none
   */
  public static TreatmentKind parse(String text) {
    return Labels.parse("kind of a stage", text, values());
  }

  /** {@return whether it takes vapour of water out} */
  public boolean isDryer() {
    return this == REFRIGERATED_DRYER || this == DESICCANT_DRYER || this == MEMBRANE_DRYER;
  }

  /** {@return whether it is a filter} */
  public boolean isFilter() {
    return this == COALESCING_FILTER || this == PARTICLE_FILTER || this == CARBON_FILTER;
  }

  /**
   * {@return whether dust may come out of it: of its desiccant or carbon, or as rust and scale of a vessel or a pipe
   * (common practice, no source for vessels and pipes; two public texts for desiccant)}
   */
  public boolean mayShedDust() {
    return this == DESICCANT_DRYER
        || this == CARBON_FILTER
        || this == COOLER
        || this == RECEIVER
        || this == PIPE;
  }

  /** {@return whether liquid water or oil spoils what is in it: desiccant, carbon or a membrane} */
  public boolean isSpoiltByLiquid() {
    return this == DESICCANT_DRYER || this == CARBON_FILTER || this == MEMBRANE_DRYER;
  }

  /** {@return the kind in words, such as "coalescing filter"} */
  @Override
  public String toString() {
    return label;
  }
}
