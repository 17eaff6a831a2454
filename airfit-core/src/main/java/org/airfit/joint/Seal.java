package org.airfit.joint;

/**
 * What keeps a sound joint tight, see {@link Mating#seal()}; a list of parts takes from it what has to be bought with
 * the joint.
 */
public enum Seal {
  /** Tape or paste on a taper thread. */
  THREAD_SEALANT("thread sealant, tape or paste", true),
  /** The flanks and crests of a dryseal thread; no sealant is needed. */
  DRY_THREAD("the thread itself, dry", false),
  /** The metal cones of both parts, as of a flare; sealant has no place on it. */
  CONE("the metal cones of both parts", false),
  /** The seats of both parts, as of a free-fitting swivel thread; a part without its seat needs a washer. */
  SEAT("the seats of both parts", false),
  /** An O-ring, elastomer ring or gasket that belongs to one of the parts and comes with it. */
  RING_OF_PART("a ring or gasket that belongs to the part", false),
  /** A sealing washer or bonded seal between two flat faces. */
  WASHER("a sealing washer between flat faces", true),
  /** The hose pressed on the barb by a clamp or a ferrule, chosen by the outside diameter of the hose. */
  CLAMP_OR_FERRULE("the hose pressed on the barb by a clamp or ferrule", true);

  private final String label;
  private final boolean isBought;

  Seal(String label, boolean isBought) {
    this.label = label;
    this.isBought = isBought;
  }

  /** {@return what keeps the joint tight, in words} */
  public String label() {
    return label;
  }

  /** {@return whether it is bought beside the parts: sealant, washer, clamp or ferrule} */
  public boolean isBought() {
    return isBought;
  }
}
