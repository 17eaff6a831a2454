package org.airfit.calls;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.airfit.files.CatalogueShelf;
import org.airfit.files.Document;
import org.airfit.files.Refusal;
import org.airfit.files.WrongFileException;
import org.airfit.jobsheet.Answer;
import org.airfit.jobsheet.SheetParts;
import org.airfit.safety.Medium;

/** A file in, its sheet out: in short, with its limits and cautions, as text and as a page. */
final class FileCall {

  private static final String TEXT = "text";
  private static final String PAGE = "page";
  private static final String MEDIUM = "medium";

  private static final Set<String> ALL = Set.of(TEXT, PAGE);

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
      Asked asked, Optional<CatalogueShelf> house, String usual, Reader reader)
      throws RefusedException {
    Object file = asked.value("file", ACCEPTED);
    Given files = Given.files(asked.object("files", "texts of files by name")).over(house);
    Set<String> only = only(asked.find("only"));
    asked.requireNothingElse();
    boolean isName = file instanceof String text && files.has(text);
    if (!isName && !(file instanceof Map) && !(file instanceof String)) {
      throw RefusedException.field("file", "was " + file, ACCEPTED);
    }
    String name = isName ? String.valueOf(file) : usual;
    Given given = isName ? files : files.with(name, file);
    try {
      return answer(given.open(name), only, reader);
    } catch (WrongFileException e) {
      throw file instanceof Map
          ? RefusedException.asked(e, name, Map.of())
          : RefusedException.file(e);
    }
  }

  private static Map<String, Object> answer(Document document, Set<String> only, Reader reader)
      throws WrongFileException {
    Optional<Refusal> refusal = Refusal.of(document);
    return refusal.isPresent() ? refused(refusal.get(), only) : told(reader.answer(document), only);
  }

  /** Which of text and page are wanted; both where nobody says. */
  static Set<String> only(Optional<Object> told) throws RefusedException {
    if (told.isEmpty()) {
      return ALL;
    }
    Set<String> only = new LinkedHashSet<>();
    for (Object each : told.get() instanceof List<?> list ? list : List.of(told.get())) {
      if (!ALL.contains(String.valueOf(each))) {
        throw RefusedException.field("only", "was \"" + each + "\"", TEXT + ", " + PAGE);
      }
      only.add(String.valueOf(each));
    }
    return only;
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

  static Map<String, Object> refused(Refusal refusal, Set<String> only) {
    return told("refused", SheetParts.of(refusal), only);
  }

  /** A sheet as plain values. */
  static Map<String, Object> told(SheetParts sheet, Set<String> only) {
    return told("answered", sheet, only);
  }

  private static Map<String, Object> told(String kind, SheetParts sheet, Set<String> only) {
    Map<String, Object> answer = new LinkedHashMap<>();
    List<Object> lines = new ArrayList<>();
    for (Answer line : sheet.inShort()) {
      Map<String, Object> told = new LinkedHashMap<>();
      told.put("what", line.what());
      told.put("text", line.answer());
      lines.add(told);
    }
    answer.put("kind", kind);
    answer.put(
        "headline",
        sheet.inShort().isEmpty()
            ? "Nothing can be told; what stands against it is told under the limits."
            : sheet.inShort().get(0).answer());
    answer.put("title", sheet.title());
    answer.put("customer", sheet.customer());
    answer.put("inShort", lines);
    answer.put("limits", sheet.limits());
    answer.put("cautions", Shown.cautions(sheet.cautions()));
    answer.put(TEXT, only.contains(TEXT) ? sheet.text() : "");
    answer.put(PAGE, only.contains(PAGE) ? sheet.page() : "");
    return answer;
  }
}
