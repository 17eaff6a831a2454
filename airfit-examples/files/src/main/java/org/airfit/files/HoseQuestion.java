package org.airfit.files;

import java.util.Objects;

/**
 * What a job asks of one of its hoses.
 *
 * @param slot what the hose is called in the line
 * @param asked what is asked
 */
public record HoseQuestion(String slot, Asked asked) {

  /** What can be asked. */
  public enum Asked {
    /** How long the hose may be. */
    LONGEST("longest"),
    /** How wide it must be. */
    LEAST_BORE("least");

    private final String word;

    Asked(String word) {
      this.word = word;
    }

    /** {@return the word of the file, such as "longest"} */
    @Override
    public String toString() {
      return word;
    }
  }

  /**
   * Refuses what is null.
   *
   * @param slot what the hose is called in the line
   * @param asked what is asked
   */
  public HoseQuestion {
    Objects.requireNonNull(slot, "slot");
    Objects.requireNonNull(asked, "asked");
  }
}
