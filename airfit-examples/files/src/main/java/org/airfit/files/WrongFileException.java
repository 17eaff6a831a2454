package org.airfit.files;

/** A file that can't be used. Its message is one line that names file, field, value and what is accepted. */
public final class WrongFileException extends Exception {

  private static final long serialVersionUID = 1L;

  /**
   * Makes the one line.
   *
   * @param file the name of the file
   * @param place the field, or row and column, in it; empty for the file as a whole
   * @param complaint what was found there and what is accepted instead
   */
  public WrongFileException(String file, String place, String complaint) {
    super(Printable.line((place.isEmpty() ? file : file + ": " + place) + ": "
        + complaint.replaceAll("\\s+", " ").strip()));
  }
}
