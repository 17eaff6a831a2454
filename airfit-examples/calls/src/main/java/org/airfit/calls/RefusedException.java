package org.airfit.calls;

import java.util.Map;
import org.airfit.files.Printable;
import org.airfit.files.WrongFileException;

/** What was given cannot be used: where it stands, and what is accepted there. */
public final class RefusedException extends Exception {

  static final String WRONG_FIELD = "WrongField";
  static final String WRONG_FILE = "WrongFile";

  private static final long serialVersionUID = 1L;

  private final String name;
  private final String file;
  private final String field;
  private final String accepted;

  private RefusedException(
      String name, String file, String field, String message, String accepted) {
    super(Printable.line(message));
    this.name = name;
    this.file = file;
    this.field = field;
    this.accepted = accepted;
  }

  /** A field of what was asked. */
  static RefusedException field(String field, String complaint, String accepted) {
    return new RefusedException(
        WRONG_FIELD,
        "",
        field,
        (field.isEmpty() ? "" : field + ": ")
            + complaint
            + (accepted.isEmpty() ? "" : "; accepted: " + accepted),
        accepted);
  }

  /** A file that was given. */
  static RefusedException file(WrongFileException wrong) {
    return new RefusedException(
        WRONG_FILE,
        wrong.file(),
        wrong.place(),
        String.valueOf(wrong.getMessage()),
        wrong.accepted());
  }

  /**
   * What was asked was told to a reader of files, whose complaint is put in the words of what was asked: its fields by
   * the beginnings of their places in the file.
   */
  static RefusedException asked(WrongFileException wrong, String file, Map<String, String> places) {
    if (!wrong.file().equals(file)) {
      return file(wrong);
    }
    String field = place(wrong.place(), places);
    return new RefusedException(
        WRONG_FIELD,
        "",
        field,
        (field.isEmpty() ? "" : field + ": ") + wrong.complaint(),
        wrong.accepted());
  }

  private static String place(String place, Map<String, String> places) {
    for (Map.Entry<String, String> each : places.entrySet()) {
      if (place.startsWith(each.getKey())) {
        return each.getValue() + place.substring(each.getKey().length());
      }
    }
    return place;
  }

  /** {@return whether a field was asked wrongly, "WrongField", or a file was given that cannot be used, "WrongFile"} */
  public String name() {
    return name;
  }

  /** {@return the file; empty for what was asked} */
  public String file() {
    return file;
  }

  /** {@return the field; empty for all of it} */
  public String field() {
    return field;
  }

  /** {@return what is accepted there; empty where the message alone says it} */
  public String accepted() {
    return accepted;
  }
}
