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
  /** The tube goes into the push-in end, whose grip holds it and whose ring seals on it. */
  HOLDS_IN_GRIP("holds in the grip and seals on a ring"),
  /** The heads lock on each other with part of a turn, and their gaskets seal. */
  LOCKS_ON_CLAWS("locks on its claws and seals on gaskets"),
  /** The table that would decide it was not seen: neither allowed nor proved wrong. Ask the maker. */
  NOT_JUDGED("not judged: table not seen"),
  /** They go together and may even look tight, but must not be relied on to seal or hold. */
  NOT_TO_BE_RELIED_ON("assembles, but must not be relied on"),
  /** They start and then jam. */
  STARTS_AND_JAMS("starts and jams"),
  /** They do not start, or have nothing to hold on to. */
  DOES_NOT_FIT("does not go together");

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
        || this == HOLDS_WITH_CLAMP
        || this == HOLDS_IN_GRIP
        || this == LOCKS_ON_CLAWS;
  }
}
