package org.airfit.plug;

/**
 * One way to go on where something cannot be told.
 *
 * @param title what it is, in a few words
 * @param what what to do
 * @param check what must be checked before and after
 */
public record SocketRemedy(String title, String what, String check) {

  /** {@return the way out in one line} */
  @Override
  public String toString() {
    return title + ": " + what + " Check: " + check;
  }
}
