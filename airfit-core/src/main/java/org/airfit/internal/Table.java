package org.airfit.internal;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/** A CSV table: a heading, one row to a line; quoted cells may hold commas, line ends, and quotes written twice. */
public final class Table {

  private Table() {}

  /**
   * Reads a table of the core's own resources.
   *
   * @param beside the class it lies beside
   * @param file its name
   * @return its rows
   */
  public static List<Row> read(Class<?> beside, String file) {
    try (InputStream in = Objects.requireNonNull(beside.getResourceAsStream(file), file)) {
      return of(new String(in.readAllBytes(), StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * Reads a table from its text. Rows without anything in them are left out; they count as rows of the sheet.
   *
   * @param text the text, with whatever line ends, with or without a byte order mark
   * @return its rows
   * @throws IllegalArgumentException if it has no heading, a column twice, a row of another width or an open quote
   */
  public static List<Row> of(String text) {
    List<List<String>> lines = lines(text.startsWith("\uFEFF") ? text.substring(1) : text);
    if (lines.isEmpty() || isBlank(lines.get(0))) {
      throw new IllegalArgumentException("table must begin with a heading, was empty");
    }
    List<String> heading = lines.get(0);
    for (int i = 0; i < heading.size(); i++) {
      if (heading.indexOf(heading.get(i)) != i) {
        throw new IllegalArgumentException(
            "row 1 must name each column once, was \"" + heading.get(i) + "\" twice");
      }
    }
    List<Row> rows = new ArrayList<>();
    for (int i = 1; i < lines.size(); i++) {
      List<String> cells = lines.get(i);
      if (isBlank(cells)) {
        continue;
      }
      if (cells.size() != heading.size()) {
        throw new IllegalArgumentException("row " + (i + 1) + " must have " + heading.size()
            + " cells as the heading has, was " + cells.size()
            + "; put a cell with a comma in quotation marks");
      }
      rows.add(Row.of(i + 1, heading, cells));
    }
    return List.copyOf(rows);
  }

  private static boolean isBlank(List<String> cells) {
    for (String cell : cells) {
      if (!cell.isBlank()) {
        return false;
      }
    }
    return true;
  }

  private static List<List<String>> lines(String text) {
    List<List<String>> lines = new ArrayList<>();
    List<String> cells = new ArrayList<>();
    StringBuilder cell = new StringBuilder();
    boolean quoted = false;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (quoted && c == '"' && i + 1 < text.length() && text.charAt(i + 1) == '"') {
        cell.append(c);
        i++;
      } else if (c == '"') {
        quoted = !quoted;
      } else if (c == ',' && !quoted) {
        cells.add(cell.toString());
        cell.setLength(0);
      } else if (c == '\n' && !quoted) {
        cells.add(cell.toString());
        lines.add(cells);
        cells = new ArrayList<>();
        cell.setLength(0);
      } else if (c != '\r') {
        cell.append(c);
      }
    }
    if (quoted) {
      throw new IllegalArgumentException("row " + (lines.size() + 1)
          + " must close its quotation marks, was open to the end of the table");
    }
    if (cell.length() > 0 || !cells.isEmpty()) {
      cells.add(cell.toString()); // a last line without an end
      lines.add(cells);
    }
    return lines;
  }

  /**
   * A row by the names of its columns.
   *
   * @param number its number in the sheet, counted from the heading as 1
   * @param cells the cells
   */
  public record Row(int number, Map<String, String> cells) {

    static Row of(int number, List<String> heading, List<String> cells) {
      Map<String, String> row = new HashMap<>();
      for (int i = 0; i < heading.size(); i++) {
        row.put(heading.get(i), cells.get(i));
      }
      return new Row(number, row);
    }

    /**
     * Obtains a cell.
     *
     * @param column the name of its column
     * @return the text, empty for an empty cell
     */
    public String text(String column) {
      return Objects.requireNonNull(cells.get(column), column);
    }

    /**
     * Tells whether the table has a column.
     *
     * @param column its name
     * @return whether it has
     */
    public boolean has(String column) {
      return cells.containsKey(column);
    }

    /**
     * Obtains a cell as a number.
     *
     * @param column the name of its column
     * @return the number
     */
    public double number(String column) {
      return Double.parseDouble(text(column));
    }

    /**
     * Obtains a cell that may be empty as a number.
     *
     * @param column the name of its column
     * @return the number, or empty
     */
    public Optional<Double> optional(String column) {
      return text(column).isEmpty() ? Optional.empty() : Optional.of(number(column));
    }
  }
}
