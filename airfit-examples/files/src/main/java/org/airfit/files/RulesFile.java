package org.airfit.files;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.airfit.safety.SafetyRules;

/** What a file of safety rules says, a table; docs/rules-file.md has the columns. */
public final class RulesFile {

  private RulesFile() {}

  /**
   * Reads rules of one's own.
   *
   * @param document a table
   * @return the rules
   * @throws WrongFileException if it is no table, or a cell is missing or refused
   */
  public static SafetyRules read(Document document) throws WrongFileException {
    if (!(document.content() instanceof List<?> content)) {
      throw new WrongFileException(
          document.name(),
          "",
          "is no table; give the rules as a CSV file, its name ending in .csv");
    }
    List<List<String>> rows = new ArrayList<>();
    int width = content.stream().findFirst().map(RulesFile::width).orElse(0);
    for (Object row : content) {
      if (row instanceof List<?> items && items.stream().allMatch(""::equals)) {
        continue; // millions of empty rows are none
      }
      List<String> cells = new ArrayList<>();
      if (row instanceof List<?> items) {
        items.forEach(item -> cells.add(String.valueOf(item)));
      }
      while (cells.size() < width) {
        cells.add(""); // empty cells at the end of a row are left out by some programs
      }
      rows.add(cells);
    }
    try {
      return SafetyRules.ofRows(rows);
    } catch (IllegalArgumentException e) {
      throw new WrongFileException(document.name(), "", String.valueOf(e.getMessage()));
    }
  }

  /** The rules of a place, federal law where none is told, and those of the works. */
  static SafetyRules of(Optional<Field> place, Optional<Field> own, Document naming)
      throws WrongFileException {
    SafetyRules rules =
        place.isPresent() ? SafetyRules.bundled().in(place.get().text()) : SafetyRules.usFederal();
    return own.isPresent() ? rules.with(read(naming.shelf().open(own.get().text()))) : rules;
  }

  private static int width(Object row) {
    return row instanceof List<?> cells ? cells.size() : 0;
  }
}
