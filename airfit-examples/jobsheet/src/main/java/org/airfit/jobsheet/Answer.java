package org.airfit.jobsheet;

import java.util.Objects;

/**
 * One line of a sheet's summary.
 *
 * @param what what it is about, such as "Plug"
 * @param answer what is said of it
 */
public record Answer(String what, String answer) {

  /**
   * Refuses what is null.
   *
   * @param what what it is about
   * @param answer what is said of it
   */
  public Answer {
    Objects.requireNonNull(what, "what");
    Objects.requireNonNull(answer, "answer");
  }
}
