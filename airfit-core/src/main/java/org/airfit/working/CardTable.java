package org.airfit.working;

import java.util.List;
import java.util.Objects;

/**
 * A table of a pencil card, as printed: rows of a standard beside what was read.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class CardTable {

  private final String title;
  private final List<String> heads;
  private final List<List<String>> rows;

  private CardTable(String title, List<String> heads, List<List<String>> rows) {
    this.title = Markup.requireProse(title, "title of a table");
    this.heads = List.copyOf(heads);
    this.rows = rows.stream().map(List::copyOf).toList();
  }

  /**
   * Obtains a table.
   *
   * @param title what stands in it
   * @param heads the heads of its columns, one at least
   * @param rows its rows, each with a cell for each column
   * @return the table
   * @throws IllegalArgumentException if the title is blank, there is no column, or a row has more or fewer cells
   */
  public static CardTable of(String title, List<String> heads, List<List<String>> rows) {
    Objects.requireNonNull(heads, "heads");
    Objects.requireNonNull(rows, "rows");
    Objects.requireNonNull(title, "title");
    for (List<String> row : rows) {
      if (heads.isEmpty() || row.size() != heads.size()) {
        throw new IllegalArgumentException("every row must have a cell for each of " + heads.size()
            + " columns, one has " + row.size());
      }
    }
    return new CardTable(title, heads, rows);
  }

  /** {@return what stands in it} */
  public String title() {
    return title;
  }

  /** {@return the heads of its columns} */
  public List<String> heads() {
    return heads;
  }

  /** {@return its rows, from left to right} */
  public List<List<String>> rows() {
    return rows;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof CardTable that
        && title.equals(that.title)
        && heads.equals(that.heads)
        && rows.equals(that.rows);
  }

  @Override
  public int hashCode() {
    return Objects.hash(title, heads, rows);
  }

  /** {@return its title, heads and rows as lines of text} */
  @Override
  public String toString() {
    StringBuilder out = new StringBuilder(title).append('\n').append(String.join(" | ", heads));
    rows.forEach(row -> out.append('\n').append(String.join(" | ", row)));
    return out.toString();
  }
}
