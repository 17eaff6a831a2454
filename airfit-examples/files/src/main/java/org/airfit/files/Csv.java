package org.airfit.files;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/**
 * CSV text after RFC 4180 to rows of cells and back; what the cells mean is not known here.
 *
 * <p>Quoted cells may hold commas, line ends and doubled quotes. Spreadsheets in some countries separate cells by
 * semicolons; the heading tells which.
 */
public final class Csv {

  /** A set of ten thousand profiles has fewer, and more would not fit into the memory a program is given. */
  private static final int MOST_CELLS = 1_000_000;

  private static final Pattern NUMBER = Pattern.compile("[+-]?[0-9]+(?:[.,][0-9]+)?");

  private final String file;
  private final String text;
  private final char comma;
  private final List<List<String>> rows = new ArrayList<>();
  private final List<String> cells = new ArrayList<>();
  private List<String> blank = List.of();
  private boolean filled;
  private int filledCells;
  private final StringBuilder cell = new StringBuilder();
  private boolean wasQuoted;

  private Csv(String file, String text) {
    this.file = file;
    String whole =
        text.startsWith("\ufeff") ? text.substring(1) : text; // spreadsheets put it there
    this.text =
        whole.indexOf('\n') < 0 ? whole.replace('\r', '\n') : whole; // old ones end lines so
    int end = this.text.indexOf('\n');
    String heading = end < 0 ? this.text : this.text.substring(0, end);
    this.comma = heading.indexOf(',') < 0 && heading.indexOf(';') >= 0 ? ';' : ',';
  }

  /**
   * Reads a text.
   *
   * @param file the name of the file, for complaints
   * @param text the text of the file
   * @return the rows, the heading among them; cells are stripped unless they were quoted
   * @throws WrongFileException if a quotation mark stands where it may not, or there are more than a million filled
   *     cells
   */
  public static List<List<String>> read(String file, String text) throws WrongFileException {
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

  private void endCell() throws WrongFileException {
    String words = wasQuoted ? cell.toString() : cell.toString().strip();
    if (words.isEmpty()) {
      cells.add("");
    } else {
      filledCells++;
      if (filledCells > MOST_CELLS) {
        throw wrong("is more than " + MOST_CELLS + " filled cells; split the table");
      }
      cells.add(words);
      filled = true;
    }
    cell.setLength(0);
    wasQuoted = false;
  }

  private void endRow() throws WrongFileException {
    endCell();
    if (filled) {
      rows.add(List.copyOf(cells));
      filled = false;
    } else {
      if (cells.size() != blank.size()) {
        blank = List.copyOf(cells); // millions of empty rows are one and the same
      }
      rows.add(blank);
    }
    cells.clear();
  }

  /**
   * Writes rows with commas between the cells.
   *
   * @param rows the rows, the heading among them
   * @return the text, which ends with a line feed
   */
  public static String write(List<List<String>> rows) {
    StringBuilder out = new StringBuilder();
    for (List<String> row : rows) {
      for (int i = 0; i < row.size(); i++) {
        out.append(i == 0 ? "" : ",").append(written(row.get(i)));
      }
      out.append('\n');
    }
    return out.toString();
  }

  /**
   * Makes a cell that a spreadsheet shows as it is. What begins like a formula would be computed there, and a price list
   * may hold one that was put into it: such a text gets an apostrophe in front. Numbers stay as they are.
   *
   * @param text a text of somebody else's
   * @return the cell
   */
  public static String asText(String text) {
    boolean isFormula = !text.isEmpty() && "=+-@\t\r".indexOf(text.charAt(0)) >= 0;
    return isFormula && !NUMBER.matcher(text).matches() ? "'" + text : text;
  }

  private static String written(String cell) {
    boolean plain =
        cell.equals(cell.strip()) && cell.chars().noneMatch(c -> ",\"\r\n".indexOf(c) >= 0);
    return plain ? cell : '"' + cell.replace("\"", "\"\"") + '"';
  }
}
