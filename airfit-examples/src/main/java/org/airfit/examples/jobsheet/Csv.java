package org.airfit.examples.jobsheet;

import java.util.ArrayList;
import java.util.List;

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
