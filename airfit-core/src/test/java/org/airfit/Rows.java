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
      return new Row(name(test, file), heading, cells, lines.subList(1, lines.size()));
    });
  }

  /** The file with its package, such as "line/roughness.csv". */
  private static String name(Class<?> test, String file) {
    String path = file.startsWith("/")
        ? file.substring(1)
        : test.getPackageName().replace('.', '/') + "/" + file;
    return path.substring("org/airfit/".length());
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

  /**
   * Reads CSV, RFC 4180: quoted cells may hold commas, quotes doubled, and line ends.
   *
   * @param text the text
   * @return the cells of its rows, the heading first
   */
  public static List<List<String>> parse(String text) {
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

  /** A number as it is written: the unit of its last digit, and how many digits it has from the first that is not 0. */
  private record Figure(double unit, int digits) {

    static Figure of(String text) {
      String mantissa = text.toLowerCase(Locale.ROOT);
      int e = mantissa.indexOf('e');
      int exponent = e < 0 ? 0 : Integer.parseInt(mantissa.substring(e + 1).replace("+", ""));
      String digits = e < 0 ? mantissa : mantissa.substring(0, e);
      int point = digits.indexOf('.');
      int decimals = point < 0 ? 0 : digits.length() - point - 1;
      String figures = digits.replace(".", "").replace("-", "").replaceFirst("^0+", "");
      return new Figure(Math.pow(10.0, exponent - decimals), figures.length());
    }
  }

  /**
   * One row.
   *
   * @param table the table it comes from, such as "line/roughness.csv"
   * @param heading the names of the columns
   * @param cells its cells
   * @param lines the cells of all rows of the table
   */
  public record Row(
      String table, List<String> heading, List<String> cells, List<List<String>> lines) {

    /**
     * Obtains a cell as text.
     *
     * @param column the name of its column
     * @return the text, empty for an empty cell
     */
    public String text(String column) {
      int at = heading.indexOf(column);
      if (at < 0) {
        throw new IllegalArgumentException(
            table + " has no column " + column + ", only " + heading);
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
     * Obtains half a unit of the last digit of a cell, the most by which a correct rounding may differ.
     *
     * <p>In a printed column that is the last digit printed. A program drops trailing zeros: in any other column 0.5
     * beside 0.123456789 has nine decimals, and as many digits as its neighbours.
     *
     * @param column the name of its column
     * @return half of the last digit's unit
     */
    public double halfDigit(String column) {
      double unit = Figure.of(text(column)).unit();
      if (EvidenceList.kind(this, column) == Evidence.Kind.RECOMPUTED) {
        Figure finest = finest(column);
        double byDigits = Math.pow(
            10.0, Math.floor(Math.log10(Math.abs(number(column)))) - finest.digits() + 1.0);
        unit = Math.min(unit, Math.max(finest.unit(), number(column) == 0.0 ? 0.0 : byDigits));
      }
      // a hair more than one half, because both numbers are binary
      return 0.5 * unit * (1.0 + 1.0e-9);
    }

    /** The most digits and the smallest last digit of all cells of a column. */
    private Figure finest(String column) {
      int at = heading.indexOf(column);
      double unit = Double.MAX_VALUE;
      int digits = 0;
      for (List<String> line : lines) {
        if (!line.get(at).isEmpty()) {
          Figure figure = Figure.of(line.get(at));
          unit = Math.min(unit, figure.unit());
          digits = Math.max(digits, figure.digits());
        }
      }
      return new Figure(unit, digits);
    }

    /**
     * Obtains what a number is worth. The basis belongs to the column: {@code evidence.csv} lists every column that
     * is compared.
     *
     * @param column the name of its column
     * @return how it came about, and where it stands
     */
    public Evidence evidence(String column) {
      return EvidenceList.of(this, column);
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
