package org.airfit;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import org.airfit.Rows.Row;

/** The list {@code evidence.csv}: for every column of a table that is compared, how its numbers came about. */
final class EvidenceList {

  private static final Map<String, Row> COLUMNS = read();

  private EvidenceList() {}

  private static Map<String, Row> read() {
    Map<String, Row> columns = new HashMap<>();
    Rows.of(Evidence.class, "evidence.csv")
        .forEach(row -> columns.put(row.text("table") + " " + row.text("column"), row));
    return columns;
  }

  /**
   * The evidence of one cell. A row that was derived is recomputed in every column, and a row that was recalled is
   * recalled in every column.
   */
  static Evidence of(Row row, String column) {
    String source = listed(row, column).text("source_if_not_of_the_row");
    return new Evidence(
        weaker(kind(row, column), row.text("basis")), source.isEmpty() ? ofRow(row) : source);
  }

  /** The tables about plugs number their sources apart from those about threads. */
  private static String ofRow(Row row) {
    return row.table().startsWith("plug/")
        ? row.text("source").replaceAll("\\bS([0-9]{2})\\b", "P$1")
        : row.text("source");
  }

  /** How the column came about, whatever the row. */
  static Evidence.Kind kind(Row row, String column) {
    return Evidence.Kind.valueOf(listed(row, column).text("evidence").toUpperCase(Locale.ROOT));
  }

  private static Row listed(Row row, String column) {
    Row listed = COLUMNS.get(row.table() + " " + column);
    if (listed == null) {
      throw new IllegalArgumentException("evidence.csv must say how the numbers of column " + column
          + " of " + row.table() + " came about: printed, recomputed, transcribed or recalled");
    }
    return listed;
  }

  private static Evidence.Kind weaker(Evidence.Kind kind, String basis) {
    if (basis.startsWith("memory")) {
      return Evidence.Kind.RECALLED;
    }
    return basis.startsWith("derived") && kind == Evidence.Kind.PRINTED
        ? Evidence.Kind.RECOMPUTED
        : kind;
  }
}
