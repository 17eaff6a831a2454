package org.airfit.lesson;

import java.util.ArrayList;
import java.util.List;

/** A table for a notebook, in Markdown. */
public final class Table {

  private final List<String> headings;
  private final List<List<String>> rows = new ArrayList<>();

  private Table(List<String> headings) {
    this.headings = headings;
  }

  /**
   * Starts a table.
   *
   * @param headings one heading a column
   * @return the table, without rows
   */
  public static Table of(String... headings) {
    return new Table(List.of(headings));
  }

  /**
   * Adds a row.
   *
   * @param cells one value a column; written as its text
   * @return this
   * @throws IllegalArgumentException if there are not as many cells as columns
   */
  public Table row(Object... cells) {
    if (cells.length != headings.size()) {
      throw new IllegalArgumentException(
          "cells must be " + headings.size() + ", were " + cells.length);
    }
    rows.add(List.of(cells).stream()
        .map(cell -> String.valueOf(cell).replace("|", "\\|"))
        .toList());
    return this;
  }

  /** {@return the table in Markdown} */
  public String toMarkdown() {
    StringBuilder text = new StringBuilder();
    line(text, headings);
    line(text, headings.stream().map(heading -> "---").toList());
    rows.forEach(row -> line(text, row));
    return text.toString();
  }

  private static void line(StringBuilder text, List<String> cells) {
    text.append("| ").append(String.join(" | ", cells)).append(" |\n");
  }
}
