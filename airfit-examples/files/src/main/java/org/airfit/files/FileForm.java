package org.airfit.files;

import java.util.Objects;

/** How a file that tells its form begins. */
final class FileForm {

  private static final int FORM = 1;

  private FileForm() {}

  /**
   * The object of a file of form 1 about compressed air. Another medium is refused before anything else of it is read.
   *
   * @param version the field that tells the form
   */
  static Field of(Document document, String version) throws WrongFileException {
    Objects.requireNonNull(document, "document");
    Refusal.requireNone(document);
    Field file = Field.of(document);
    Field form = file.field(version, "1, the form of file that this is");
    if (form.wholeNumber() != FORM) {
      throw form.wrong("was " + form.wholeNumber() + "; accepted: 1");
    }
    file.find("medium"); // refused above unless it is compressed air
    return file;
  }
}
