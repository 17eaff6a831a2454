package org.airfit.run;

/** Whether the tool of a run took air when a gauge was read. */
public enum ToolState {
  /** Nothing runs: only a leak takes air. */
  AT_REST("at rest"),
  /** The tool runs as it does at work, and the pointer stands still. */
  RUNNING("while it runs");

  private final String words;

  ToolState(String words) {
    this.words = words;
  }

  /** {@return the state in words, such as "at rest"} */
  @Override
  public String toString() {
    return words;
  }
}
