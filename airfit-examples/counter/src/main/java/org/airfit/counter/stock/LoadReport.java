package org.airfit.counter.stock;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.airfit.files.Csv;
import org.airfit.files.Printable;

/**
 * What became of the rows of a table: each was stored or is among the rejects.
 *
 * @param file the name of the table
 * @param rowsIn how many rows it has below the heading, empty ones aside
 * @param stored how many of them were stored
 * @param rejects the others, in their order
 */
public record LoadReport(String file, int rowsIn, int stored, List<Reject> rejects) {

  /** A longer value is cut in the report [letters]. */
  private static final int LONGEST_VALUE = 200;

  /**
   * Checks that no row is missing.
   *
   * @param file the name of the table
   * @param rowsIn how many rows it has below the heading, empty ones aside
   * @param stored how many of them were stored
   * @param rejects the others, in their order
   * @throws IllegalArgumentException if {@code stored} and {@code rejects} are not {@code rowsIn} together
   */
  public LoadReport {
    Objects.requireNonNull(file, "file");
    rejects = List.copyOf(Objects.requireNonNull(rejects, "rejects"));
    if (rowsIn != stored + rejects.size()) {
      throw new IllegalArgumentException("rows in must be stored + rejected, were " + rowsIn + ", "
          + stored + " and " + rejects.size());
    }
  }

  /**
   * {@return the rejects as a table with the columns row, column, value and reason; a value that a spreadsheet would
   * compute has an apostrophe in front}
   */
  public String toCsv() {
    List<List<String>> rows = new ArrayList<>();
    rows.add(List.of("row", "column", "value", "reason"));
    for (Reject reject : rejects) {
      String value = reject.value();
      String shown =
          value.length() > LONGEST_VALUE ? value.substring(0, LONGEST_VALUE) + "…" : value;
      rows.add(List.of(
          String.valueOf(reject.row()),
          reject.column(),
          Csv.asText(Printable.line(shown)),
          Printable.line(reject.reason())));
    }
    return Csv.write(rows);
  }

  /** {@return the counts in a sentence} */
  @Override
  public String toString() {
    return file + ": " + rowsIn + " rows in, " + stored + " stored, " + rejects.size()
        + " rejected";
  }
}
