package org.airfit.lesson;

/** A number that differs from the published one by more than its tolerance. */
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
