package org.airfit;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/** The rows of a table of published values, a CSV file beside the test with a heading, a source and a basis column. */
public final class Rows {

  private Rows() {}

  /**
   * Reads a table.
   *
   * @param test the test class the file lies beside
   * @param file its name
   * @return its rows
   */
  public static Stream<Row> of(Class<?> test, String file) {
    List<List<String>> lines = parse(text(test, file));
    List<String> heading = lines.get(0);
    return lines.stream().skip(1).map(cells -> {
      if (cells.size() != heading.size()) {
        throw new IllegalArgumentException(
            file + " must have " + heading.size() + " cells in every row, was " + cells);
      }
      return new Row(file, heading, cells);
    });
  }

  private static String text(Class<?> test, String file) {
    try (InputStream in = test.getResourceAsStream(file)) {
      if (in == null) {
        throw new IllegalArgumentException("no file " + file + " beside " + test.getName());
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** RFC 4180: quoted cells may hold commas, quotes doubled, and line ends. */
  private static List<List<String>> parse(String text) {
    List<List<String>> lines = new ArrayList<>();
    List<String> cells = new ArrayList<>();
    StringBuilder cell = new StringBuilder();
    boolean quoted = false;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (quoted) {
        boolean doubled = c == '"' && i + 1 < text.length() && text.charAt(i + 1) == '"';
        if (doubled) {
          i++;
        }
        if (c == '"' && !doubled) {
          quoted = false;
        } else {
          cell.append(c);
        }
      } else if (c == '"') {
        quoted = true;
      } else if (c == ',' || c == '\n') {
        cells.add(cell.toString());
        cell.setLength(0);
        if (c == '\n') {
          lines.add(cells);
          cells = new ArrayList<>();
        }
      } else if (c != '\r') {
        cell.append(c);
      }
    }
    if (cell.length() > 0 || !cells.isEmpty()) {
      cells.add(cell.toString());
      lines.add(cells);
    }
    return lines;
  }

  /**
   * One row.
   *
   * @param file the file it comes from
   * @param heading the names of the columns
   * @param cells its cells
   */
  public record Row(String file, List<String> heading, List<String> cells) {

    /**
     * Obtains a cell as text.
     *
     * @param column the name of its column
     * @return the text, empty for an empty cell
     */
    public String text(String column) {
      int at = heading.indexOf(column);
      if (at < 0) {
        throw new IllegalArgumentException(file + " has no column " + column + ", only " + heading);
      }
      return cells.get(at);
    }

    /**
     * Says whether a cell holds anything.
     *
     * @param column the name of its column
     * @return whether it is not empty
     */
    public boolean has(String column) {
      return !text(column).isEmpty();
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
     * Obtains half a unit of the last digit printed in a cell, the most by which a correct rounding may differ.
     *
     * @param column the name of its column
     * @return half of the last digit's unit
     */
    public double halfDigit(String column) {
      String mantissa = text(column).toLowerCase(Locale.ROOT);
      int e = mantissa.indexOf('e');
      int exponent = e < 0 ? 0 : Integer.parseInt(mantissa.substring(e + 1).replace("+", ""));
      String digits = e < 0 ? mantissa : mantissa.substring(0, e);
      int point = digits.indexOf('.');
      int decimals = point < 0 ? 0 : digits.length() - point - 1;
      // a hair more than one half, because both numbers are binary
      return 0.5 * Math.pow(10.0, exponent - decimals) * (1.0 + 1.0e-9);
    }

    /** {@return the source and its basis, to be shown when a row fails} */
    public String source() {
      return text("source") + " (" + text("basis") + ")";
    }

    /** {@return the row's first cell, for the name of the test} */
    @Override
    public String toString() {
      return cells.get(0);
    }
  }
}
