package org.airfit.fleet;

import java.util.Iterator;
import java.util.function.Function;
import org.apache.spark.sql.Row;

/** Rows made of rows, one at a time. */
final class Mapped implements Iterator<Row> {

  private final Iterator<Row> rows;
  private final Function<Row, Row> function;

  Mapped(Iterator<Row> rows, Function<Row, Row> function) {
    this.rows = rows;
    this.function = function;
  }

  @Override
  public boolean hasNext() {
    return rows.hasNext();
  }

  @Override
  public Row next() {
    return function.apply(rows.next());
  }
}
