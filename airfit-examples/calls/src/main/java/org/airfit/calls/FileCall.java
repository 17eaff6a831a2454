package org.airfit.calls;

import java.util.Map;
import java.util.Optional;
import org.airfit.files.CatalogueShelf;
import org.airfit.files.Document;
import org.airfit.files.Refusal;
import org.airfit.files.WrongFileException;
import org.airfit.jobsheet.SheetParts;
import org.airfit.safety.Medium;

/** A file in, its sheet out. */
final class FileCall {

  private static final String MEDIUM = "medium";

  private static final String ACCEPTED = "a file: its text, an object, or its name among the files";

  private FileCall() {}

  /** Reads a file and answers it. */
  interface Reader {
    SheetParts answer(Document file) throws WrongFileException;
  }

  /**
   * Answers a file.
   *
   * @param usual the name of a file that was given without one
   */
  static Map<String, Object> answer(
      Asked asked, Optional<CatalogueShelf> house, Wanted wanted, String usual, Reader reader)
      throws RefusedException {
    Object file = asked.value("file", ACCEPTED);
    Given files = Given.files(asked.object("files", "texts of files by name")).over(house);
    asked.requireNothingElse();
    boolean isName = file instanceof String text && files.has(text);
    if (!isName && !(file instanceof Map) && !(file instanceof String)) {
      throw RefusedException.field("file", "was " + file, ACCEPTED);
    }
    String name = isName ? String.valueOf(file) : usual;
    Given given = isName ? files : files.with(name, file);
    try {
      return answer(given.open(name), wanted, reader);
    } catch (WrongFileException e) {
      throw file instanceof Map
          ? RefusedException.asked(e, name, Map.of())
          : RefusedException.file(e);
    }
  }

  private static Map<String, Object> answer(Document document, Wanted wanted, Reader reader)
      throws WrongFileException {
    Optional<Refusal> refusal = Refusal.of(document);
    return refusal.isPresent()
        ? wanted.refused(refusal.get())
        : wanted.told(reader.answer(document));
  }

  /** A refusal of the medium that a question tells, which is compressed air where it tells none. */
  static Optional<Refusal> refusal(Asked asked) throws RefusedException {
    Optional<String> medium = asked.findText(MEDIUM, Medium.COMPRESSED_AIR.toString());
    if (medium.isPresent() && medium.get().isBlank()) {
      throw RefusedException.field(MEDIUM, "is blank", Medium.COMPRESSED_AIR.toString());
    }
    return medium.isPresent()
        ? Refusal.of(Document.of(MEDIUM, Map.of(MEDIUM, medium.get())))
        : Optional.empty();
  }
}
