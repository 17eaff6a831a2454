package org.airfit.plug;

import java.util.Objects;

/**
 * One way to go on where something cannot be told.
 *
 * @param title what it is, in a few words
 * @param what what to do
 * @param check what must be checked before and after
 */
public record SocketRemedy(String title, String what, String check) {
  /**
   * Checks that nothing is missing.
   *
   * @param title what it is, in a few words
   * @param what what to do
   * @param check what must be checked before and after
   */
  public SocketRemedy {
    Objects.requireNonNull(title, "title");
    Objects.requireNonNull(what, "what");
    Objects.requireNonNull(check, "check");
  }

  /** {@return the way out in one line} */
  @Override
  public String toString() {
    return title + ": " + what + " Check: " + check;
  }
}
