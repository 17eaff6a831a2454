package org.airfit.lesson;

/** A number that lies further from the published one than its tolerance allows. */
public final class WrongNumberException extends RuntimeException {

  private static final long serialVersionUID = 1L;

  /**
   * Names the number.
   *
   * @param message what was compared, both values, the tolerance and its reason
   */
  WrongNumberException(String message) {
    super(message);
  }
}
