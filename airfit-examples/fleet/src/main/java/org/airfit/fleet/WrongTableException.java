package org.airfit.fleet;

/** A table as a whole cannot be judged: its columns are not those of its kind, or it is not there. */
final class WrongTableException extends Exception {

  private static final long serialVersionUID = 1L;

  WrongTableException(String complaint) {
    super(complaint);
  }
}
