package org.airfit.joint;

/** What happens when two ends are put together. */
public enum MatingVerdict {
  /** They assemble and seal on the thread, with a sealant. */
  SEALS_WITH_SEALANT("seals on the thread, with a sealant"),
  /** They assemble and seal on the thread as they are; a lubricant does no harm. */
  SEALS_DRY("seals on the thread, dry"),
  /** They assemble and seal on a face, seat or ring, not on the thread. */
  SEALS_ON_FACE("seals on a face, seat or ring, not on the thread"),
  /** The hose goes on the barb and holds with a clamp. */
  HOLDS_WITH_CLAMP("holds with a clamp"),
  /** They go together and may even look tight, but must not be relied on to seal or hold. */
  NOT_TO_BE_RELIED_ON("assembles, but must not be relied on"),
  /** They start and then jam. */
  STARTS_AND_JAMS("starts and jams"),
  /** They do not start, or have nothing to hold on to. */
  DOES_NOT_FIT("does not start");

  private final String label;

  MatingVerdict(String label) {
    this.label = label;
  }

  /** {@return the verdict in words} */
  public String label() {
    return label;
  }

  /** {@return whether the joint is one to build} */
  public boolean isSound() {
    return this == SEALS_WITH_SEALANT
        || this == SEALS_DRY
        || this == SEALS_ON_FACE
        || this == HOLDS_WITH_CLAMP;
  }
}
