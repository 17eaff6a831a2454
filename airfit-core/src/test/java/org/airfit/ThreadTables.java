package org.airfit;

import java.util.Map;
import java.util.function.ToDoubleFunction;
import org.airfit.Rows.Row;
import org.airfit.quantity.Length;

/** Compares columns of a printed table with a thread, at the digits printed. */
public final class ThreadTables {

  public static final Length END = Length.ofMetres(0.0);

  private ThreadTables() {}

  public static String unit(String column) {
    return column.endsWith("_mm") ? "mm" : column.endsWith("_in") ? "in" : "-";
  }

  public static <T> void compare(
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

  public static void compare(
      String chapter, Row row, String column, double ours, double allowed, String why) {
    Comparison.of(
            chapter, row + ", " + column, row.number(column), unit(column), row.evidence(column))
        .isMetBy(ours, allowed, why);
  }
}
