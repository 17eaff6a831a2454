package org.airfit.measure;

/** What wear, which only removes metal, does to a size. */
public enum Wear {
  /** Worn parts read smaller. */
  SHRINKS,
  /** Worn parts read larger: the walls of a groove move apart. */
  GROWS,
  /** Nothing rubs or locks there; wear is not counted. */
  NONE;

  /**
   * Obtains the sign of the change: the true size of a worn part is that of a new one plus this times what has gone.
   *
   * @return −1, 0 or 1
   */
  public int sign() {
    return this == SHRINKS ? -1 : this == GROWS ? 1 : 0;
  }
}
