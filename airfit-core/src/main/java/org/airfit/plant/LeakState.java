package org.airfit.plant;

/** How far the repair of a leak has come; it is done only when somebody checked it again and found nothing left. */
public enum LeakState {
  /** Nobody repaired it yet. */
  OPEN("open"),
  /** Repaired, but not checked again: whether it holds nobody knows. */
  TO_BE_CHECKED("repaired, to be checked"),
  /** Repaired and checked, and it still loses air, or nobody measured how much is left. */
  STILL_LEAKS("still leaks"),
  /** Repaired and checked, and nothing is left. */
  DONE("done");

  private final String label;

  LeakState(String label) {
    this.label = label;
  }

  /** {@return the state in words, such as "repaired, to be checked"} */
  public String label() {
    return label;
  }
}
