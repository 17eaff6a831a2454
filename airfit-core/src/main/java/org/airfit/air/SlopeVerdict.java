package org.airfit.air;

/** Whether a main falls enough for water to run to its drains. */
public enum SlopeVerdict {
  /** It falls as much as is asked, or more. */
  ENOUGH("falls enough"),
  /** It falls less than is asked. */
  TOO_FLAT("is too flat");

  private final String label;

  SlopeVerdict(String label) {
    this.label = label;
  }

  /** {@return the verdict in words, such as "is too flat"} */
  public String label() {
    return label;
  }
}
