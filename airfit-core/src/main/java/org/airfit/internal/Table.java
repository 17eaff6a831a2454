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

/** A CSV table that lies beside a class: a heading, one line to a row, commas inside quotes. */
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
      // a last line without an end, and one with an end, are the same
      String text = new String(in.readAllBytes(), StandardCharsets.UTF_8).stripTrailing();
      List<String> lines = List.of(text.split("\n", -1));
      List<String> heading = cells(lines.get(0));
      return lines.stream().skip(1).map(line -> Row.of(heading, cells(line))).toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static List<String> cells(String line) {
    List<String> cells = new ArrayList<>();
    StringBuilder cell = new StringBuilder();
    boolean quoted = false;
    for (int i = 0; i < line.length(); i++) {
      char c = line.charAt(i);
      if (c == '"') {
        quoted = !quoted;
      } else if (c == ',' && !quoted) {
        cells.add(cell.toString());
        cell.setLength(0);
      } else {
        cell.append(c);
      }
    }
    cells.add(cell.toString());
    return cells;
  }

  /**
   * A row by the names of its columns.
   *
   * @param cells the cells
   */
  public record Row(Map<String, String> cells) {

    static Row of(List<String> heading, List<String> cells) {
      Map<String, String> row = new HashMap<>();
      for (int i = 0; i < heading.size(); i++) {
        row.put(heading.get(i), cells.get(i));
      }
      return new Row(row);
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
