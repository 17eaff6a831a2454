package org.airfit.examples.jobsheet;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Tables of text after RFC 4180: quoted cells may hold commas, line ends and doubled quotes. Spreadsheets in some countries part cells by
 * semicolons; the heading tells which.
 */
final class Csv {

  private final String file;
  private final String text;
  private final char comma;
  private final List<List<String>> rows = new ArrayList<>();
  private List<String> cells = new ArrayList<>();
  private final StringBuilder cell = new StringBuilder();
  private boolean wasQuoted;

  private Csv(String file, String text) {
    this.file = file;
    this.text = text.startsWith("\ufeff") ? text.substring(1) : text; // spreadsheets put it there
    String heading = this.text.lines().findFirst().orElse("");
    this.comma = heading.indexOf(',') < 0 && heading.indexOf(';') >= 0 ? ';' : ',';
  }

  /** The rows of a text, the heading among them; cells are stripped unless they were quoted. */
  static List<List<String>> rows(String file, String text) throws WrongFileException {
    Csv csv = new Csv(file, text);
    csv.read();
    return csv.rows;
  }

  /**
   * The filled cells of each row by the names of their columns, the heading left out: the second row of the file comes first. A row of empty cells is an empty map.
   */
  static List<Map<String, String>> table(String file, String text, List<String> columns)
      throws WrongFileException {
    List<List<String>> rows = rows(file, text);
    if (rows.isEmpty()) {
      throw new WrongFileException(
          file, "", "is empty; type the heading " + String.join(",", columns));
    }
    List<String> heading = heading(file, rows.get(0), columns);
    List<Map<String, String>> table = new ArrayList<>();
    for (int i = 1; i < rows.size(); i++) {
      table.add(cells(file, heading, rows.get(i), i + 1));
    }
    return table;
  }

  private static List<String> heading(String file, List<String> heading, List<String> columns)
      throws WrongFileException {
    Set<String> seen = new HashSet<>();
    for (String column : heading) {
      if (!columns.contains(column)) {
        throw new WrongFileException(
            file,
            "row 1",
            "\"" + column + "\" is no column here; accepted: " + String.join(", ", columns));
      }
      if (!seen.add(column)) {
        throw new WrongFileException(
            file, "row 1", "column " + column + " stands twice; leave one out");
      }
    }
    return heading;
  }

  private static Map<String, String> cells(
      String file, List<String> heading, List<String> row, int number) throws WrongFileException {
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

  private void read() throws WrongFileException {
    int i = 0;
    while (i < text.length()) {
      char c = text.charAt(i);
      if (c == '"' && cell.toString().isBlank() && !wasQuoted) {
        i = quoted(i + 1);
        continue;
      }
      if (c == comma) {
        endCell();
      } else if (c == '\n') {
        endRow();
      } else if (c == '"' || (wasQuoted && !Character.isWhitespace(c))) {
        throw wrong(
            "holds a quotation mark in the middle; put the whole cell in quotation marks and double those inside");
      } else if (c != '\r' && !wasQuoted) {
        cell.append(c);
      }
      i++;
    }
    if (cell.length() > 0 || wasQuoted || !cells.isEmpty()) {
      endRow();
    }
  }

  private int quoted(int from) throws WrongFileException {
    cell.setLength(0);
    wasQuoted = true;
    int i = from;
    while (i < text.length()) {
      char c = text.charAt(i);
      if (c == '"') {
        if (i + 1 >= text.length() || text.charAt(i + 1) != '"') {
          return i + 1;
        }
        i++;
      }
      cell.append(c);
      i++;
    }
    throw wrong("holds a quotation mark that is never closed; close it");
  }

  private WrongFileException wrong(String complaint) {
    return new WrongFileException(
        file, "row " + (rows.size() + 1) + ", cell " + (cells.size() + 1), complaint);
  }

  private void endCell() {
    cells.add(wasQuoted ? cell.toString() : cell.toString().strip());
    cell.setLength(0);
    wasQuoted = false;
  }

  private void endRow() {
    endCell();
    rows.add(cells);
    cells = new ArrayList<>();
  }

  /** A row as a line of the file. */
  static String line(List<String> cells) {
    StringBuilder line = new StringBuilder();
    for (String cell : cells) {
      line.append(line.length() == 0 ? "" : ",").append(written(cell));
    }
    return line.append('\n').toString();
  }

  private static String written(String cell) {
    boolean plain =
        cell.equals(cell.strip()) && cell.chars().noneMatch(c -> ",\"\r\n".indexOf(c) >= 0);
    return plain ? cell : '"' + cell.replace("\"", "\"\"") + '"';
  }

  /** The parts of a cell that holds several words with a bar between; a bar of a word's own stands behind a backslash. */
  static List<String> parts(String cell) {
    List<String> parts = new ArrayList<>();
    StringBuilder part = new StringBuilder();
    for (int i = 0; i < cell.length(); i++) {
      char c = cell.charAt(i);
      if (c == '\\' && i + 1 < cell.length()) {
        part.append(cell.charAt(++i));
      } else if (c == '|') {
        parts.add(part.toString().strip());
        part.setLength(0);
      } else {
        part.append(c);
      }
    }
    parts.add(part.toString().strip());
    return parts;
  }

  /** Several words for one cell. */
  static String joined(Iterable<String> words) {
    StringBuilder cell = new StringBuilder();
    for (String word : words) {
      cell.append(cell.length() == 0 ? "" : " | ")
          .append(word.replace("\\", "\\\\").replace("|", "\\|"));
    }
    return cell.toString();
  }
}
