package org.airfit.thread;

import java.util.Map;
import java.util.function.ToDoubleFunction;
import org.airfit.Comparison;
import org.airfit.Rows.Row;
import org.airfit.quantity.Length;

/** Compares columns of a printed table with a thread, at the digits printed. */
final class ThreadTables {

  static final Length END = Length.ofMetres(0.0);

  private ThreadTables() {}

  static String unit(String column) {
    return column.endsWith("_mm") ? "mm" : column.endsWith("_in") ? "in" : "-";
  }

  static <T> void compare(
      String chapter, Row row, T thread, Map<String, ToDoubleFunction<T>> columns) {
    columns.forEach((column, ours) -> {
      if (row.has(column)) {
        compare(
            chapter,
            row,
            column,
            ours.applyAsDouble(thread),
            row.halfDigit(column),
            "digits printed");
      }
    });
  }

  static void compare(
      String chapter, Row row, String column, double ours, double allowed, String why) {
    Comparison.of(chapter, row + ", " + column, row.number(column), unit(column), row.source())
        .isMetBy(ours, allowed, why);
  }
}
