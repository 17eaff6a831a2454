package org.airfit.measure;

/** What a reading proves about limits, see {@link Conformity}. */
public enum ConformityVerdict {
  /** Inside the limits by more than the uncertainty. */
  INSIDE_PROVEN("inside proven"),
  /** Reads inside, but the uncertainty reaches over a limit. */
  INSIDE_NOT_PROVEN("inside not proven"),
  /** Reads outside, but the uncertainty reaches back over the limit. */
  OUTSIDE_NOT_PROVEN("outside not proven"),
  /** Outside the limits by more than the uncertainty. */
  OUTSIDE_PROVEN("outside proven");

  private final String label;

  ConformityVerdict(String label) {
    this.label = label;
  }

  /** {@return the verdict in words} */
  public String label() {
    return label;
  }
}
