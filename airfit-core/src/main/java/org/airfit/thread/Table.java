package org.airfit.thread;

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
import org.airfit.source.Basis;
import org.airfit.source.Source;

/** A CSV table that lies beside the classes: a heading, one line to a row, commas inside quotes. */
final class Table {

  private static final Map<String, Basis> BASES = Map.of(
      "read", Basis.STANDARD, "memory", Basis.FROM_MEMORY, "practice", Basis.COMMON_PRACTICE);

  private Table() {}

  static List<Row> read(String file) {
    try (InputStream in = Objects.requireNonNull(Table.class.getResourceAsStream(file), file)) {
      List<String> lines =
          new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().toList();
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

  /** A row by the names of its columns. */
  record Row(Map<String, String> cells) {

    static Row of(List<String> heading, List<String> cells) {
      Map<String, String> row = new HashMap<>();
      for (int i = 0; i < heading.size(); i++) {
        row.put(heading.get(i), cells.get(i));
      }
      return new Row(row);
    }

    String text(String column) {
      return Objects.requireNonNull(cells.get(column), column);
    }

    double number(String column) {
      return Double.parseDouble(text(column));
    }

    Optional<Double> optional(String column) {
      return text(column).isEmpty() ? Optional.empty() : Optional.of(number(column));
    }

    Source source() {
      return new Source(Objects.requireNonNull(BASES.get(text("basis"))), text("source"));
    }
  }
}
