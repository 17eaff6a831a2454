package org.airfit.counter.stock;

import java.util.Objects;

/**
 * A row of a table that was not stored, and why.
 *
 * @param row the row as a spreadsheet counts it, the heading being row 1
 * @param column the column that is wrong; empty for the row as a whole
 * @param value what stands there; empty where nothing does
 * @param reason what is wrong with it and what is accepted
 */
public record Reject(long row, String column, String value, String reason) {

  /**
   * Refuses what is null.
   *
   * @param row the row as a spreadsheet counts it, the heading being row 1
   * @param column the column that is wrong; empty for the row as a whole
   * @param value what stands there; empty where nothing does
   * @param reason what is wrong with it and what is accepted
   */
  public Reject {
    Objects.requireNonNull(column, "column");
    Objects.requireNonNull(value, "value");
    Objects.requireNonNull(reason, "reason");
  }
}
