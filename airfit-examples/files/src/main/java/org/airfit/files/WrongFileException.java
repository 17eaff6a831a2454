package org.airfit.files;

/** A file that can't be used. Its message is one line that names file, field, value and what is accepted. */
public final class WrongFileException extends Exception {

  private static final long serialVersionUID = 1L;

  private static final String ACCEPTED = "; accepted: ";

  /** The file. */
  private final String file;
  /** The row or field in it. */
  private final String place;
  /** What is wrong there. */
  private final String complaint;
  /** Whether the file itself is not there. */
  private final boolean missing;

  /**
   * Makes the one line.
   *
   * @param file the name of the file
   * @param place the field, or row and column, in it; empty for the file as a whole
   * @param complaint what was found there and what is accepted instead
   */
  public WrongFileException(String file, String place, String complaint) {
    this(file, place, complaint, /* missing= */ false);
  }

  private WrongFileException(String file, String place, String complaint, boolean missing) {
    super(Printable.line((place.isEmpty() ? file : file + ": " + place) + ": "
        + complaint.replaceAll("\\s+", " ").strip()));
    this.file = Printable.line(file);
    this.place = Printable.line(place);
    this.complaint = Printable.line(complaint.replaceAll("\\s+", " ").strip());
    this.missing = missing;
  }

  /** That there is no file of a name; of which kind it should be is told. */
  static WrongFileException missing(String file, String kind) {
    return new WrongFileException(
        file, "", "there is no such file; give the path of " + kind, /* missing= */ true);
  }

  /** {@return the name of the file} */
  public String file() {
    return file;
  }

  /** {@return the field, or row and column, in it; empty for the file as a whole} */
  public String place() {
    return place;
  }

  /** {@return what was found there and what is accepted instead} */
  public String complaint() {
    return complaint;
  }

  /** {@return whether the file itself is not there} */
  public boolean isMissing() {
    return missing;
  }

  /** {@return what is accepted there; empty where the complaint does not list it} */
  public String accepted() {
    int at = complaint.lastIndexOf(ACCEPTED);
    return at < 0 ? "" : complaint.substring(at + ACCEPTED.length());
  }
}
