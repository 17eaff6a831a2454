package org.airfit.files;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.airfit.quantity.NearWord;
import org.jspecify.annotations.Nullable;

/** A table as rows whose filled cells are fields with the names of their columns. */
final class Table {

  private final String file;
  private final List<String> columns;

  private Table(String file, List<String> columns) {
    this.file = file;
    this.columns = columns;
  }

  /**
   * The rows below the heading, counted as a spreadsheet counts them; rows of empty cells are left out.
   *
   * @param document the file; its first row names the columns, in any order
   * @param columns the names that may stand in the heading
   */
  static List<Field> rows(Document document, List<String> columns) throws WrongFileException {
    return new Table(document.name(), columns).rows(document.content());
  }

  private List<Field> rows(Object content) throws WrongFileException {
    if (!(content instanceof List<?> rows)) {
      throw new WrongFileException(
          file,
          "",
          "holds " + Notation.kind(content) + "; a table is wanted, with the heading "
              + String.join(",", columns));
    }
    int first = 0; // the heading may stand below empty rows
    while (first < rows.size() && isEmpty(rows.get(first))) {
      first++;
    }
    if (first == rows.size()) {
      throw new WrongFileException(
          file, "", "is empty; type the heading " + String.join(",", columns));
    }
    List<String> heading = row(rows.get(first), first + 1);
    requireHeading(heading, first + 1);
    List<Field> fields = new ArrayList<>();
    for (int i = first + 1; i < rows.size(); i++) {
      if (isEmpty(rows.get(i))) {
        continue;
      }
      Map<String, String> cells = cells(heading, row(rows.get(i), i + 1), i + 1);
      if (!cells.isEmpty()) {
        fields.add(Field.ofRow(file, i + 1, cells));
      }
    }
    return fields;
  }

  private List<String> row(@Nullable Object row, int number) throws WrongFileException {
    if (!(row instanceof List<?> items)) {
      throw new WrongFileException(
          file, "row " + number, "was " + Notation.kind(row) + "; a list of texts is wanted");
    }
    List<String> cells = new ArrayList<>();
    for (Object item : items) {
      if (!(item instanceof String cell)) {
        throw new WrongFileException(
            file, "row " + number, "holds " + Notation.kind(item) + "; texts are wanted");
      }
      cells.add(cell);
    }
    return cells;
  }

  private static boolean isEmpty(@Nullable Object row) {
    return row instanceof List<?> cells && cells.stream().allMatch(""::equals);
  }

  private void requireHeading(List<String> heading, int number) throws WrongFileException {
    Set<String> seen = new HashSet<>();
    for (String column : heading) {
      if (!columns.contains(column)) {
        throw new WrongFileException(
            file,
            "row " + number,
            "\"" + column + "\" is no column here" + NearWord.named(column, columns)
                + "; accepted: " + String.join(", ", columns));
      }
      if (!seen.add(column)) {
        throw new WrongFileException(
            file, "row " + number, "column " + column + " stands twice; leave one out");
      }
    }
  }

  private Map<String, String> cells(List<String> heading, List<String> row, int number)
      throws WrongFileException {
    Map<String, String> cells = new LinkedHashMap<>();
    for (int k = 0; k < row.size(); k++) {
      if (row.get(k).isEmpty()) {
        continue;
      }
      if (k >= heading.size()) {
        throw new WrongFileException(
            file,
            "row " + number,
            "has more cells than the heading, \"" + row.get(k)
                + "\" stands under none; put cells with a comma in quotation marks");
      }
      cells.put(heading.get(k), row.get(k));
    }
    return cells;
  }
}
