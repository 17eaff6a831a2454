package org.airfit.air;

/** Whether a train of filters and dryers gives air of the purity that is asked for. */
public enum PurityVerdict {
  /** What the makers warrant gives it, in the worst air that was told. */
  REACHED("reached"),
  /** What the makers warrant gives less, or a stage is loaded beyond what its maker warrants. */
  NOT_REACHED("not reached"),
  /** A figure is missing without which nobody can say. */
  NOT_TOLD("not told");

  private final String label;

  PurityVerdict(String label) {
    this.label = label;
  }

  /** {@return the verdict in words, such as "not reached"} */
  public String label() {
    return label;
  }
}
