package org.airfit.fleet;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import org.airfit.files.Csv;
import org.airfit.safety.Caution;
import org.airfit.safety.SafetyRules;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;

/** The parts of a summary: tables as CSV, drawings as SVG, and one page that shows them. */
final class Summary {

  private static final String FOLDER = "summary/";

  /** So many lines of a table stand on the page; the file has all. */
  private static final int MOST_SHOWN = 20;

  private final WholeOutput output;
  private final StringBuilder page = new StringBuilder();

  Summary(WholeOutput output, String title, String headline) {
    this.output = output;
    page.append("<!doctype html>\n<html lang=\"en\"><head><meta charset=\"utf-8\">\n<title>")
        .append(SharesChart.escaped(title))
        .append("</title>\n<style>body{font-family:sans-serif;max-width:60rem;margin:1rem auto;"
            + "padding:0 1rem}table{display:block;overflow-x:auto;border-collapse:collapse;font-size:.85rem}"
            + "td:first-child{white-space:nowrap}"
            + "td,th{border:1px solid #999;padding:.2rem .5rem;text-align:left}"
            + "svg{max-width:100%;height:auto}</style></head><body>\n<h1>")
        .append(SharesChart.escaped(title))
        .append("</h1>\n<p>")
        .append(SharesChart.escaped(headline))
        .append("</p>\n");
  }

  /**
   * Writes a table, row by row, however long it is, with nothing in it that a spreadsheet computes; the page shows its
   * first lines.
   */
  void table(String name, String title, Dataset<Row> table) throws IOException {
    List<String> heading = List.of(table.columns());
    List<List<String>> shown = new ArrayList<>();
    long lines = 0;
    try (OutputStream out = output.stream(FOLDER + name + ".csv")) {
      out.write(Csv.write(List.of(heading)).getBytes(StandardCharsets.UTF_8));
      for (Iterator<Row> rows = table.toLocalIterator(); rows.hasNext(); lines++) {
        List<String> cells = cells(rows.next());
        out.write(Csv.write(List.of(cells.stream().map(Csv::asText).toList()))
            .getBytes(StandardCharsets.UTF_8));
        if (lines < MOST_SHOWN) {
          shown.add(cells);
        }
      }
    }
    page.append("<h2>").append(SharesChart.escaped(title)).append("</h2>\n<table><tr>");
    heading.forEach(
        cell -> page.append("<th>").append(SharesChart.escaped(cell)).append("</th>"));
    page.append("</tr>\n");
    for (List<String> row : shown) {
      page.append("<tr>");
      row.forEach(cell -> page.append("<td>").append(SharesChart.escaped(cell)).append("</td>"));
      page.append("</tr>\n");
    }
    page.append("</table>\n");
    if (lines > shown.size()) {
      page.append("<p>The first ")
          .append(shown.size())
          .append(" of ")
          .append(lines)
          .append(" lines; the others stand in ")
          .append(name)
          .append(".csv.</p>\n");
    }
  }

  private static List<String> cells(Row row) {
    List<String> cells = new ArrayList<>();
    for (int i = 0; i < row.length(); i++) {
      Object cell = row.isNullAt(i) ? "" : row.get(i);
      cells.add(
          cell instanceof Double number
              ? String.format(Locale.ROOT, "%.3f", number)
              : String.valueOf(cell));
    }
    return cells;
  }

  /** Writes a drawing. */
  void drawing(String name, SharesChart chart) throws IOException {
    output.write(FOLDER + name + ".svg", chart.svg());
    page.append(chart.svg());
  }

  /** Tells warnings whole, and that it is no approval; writes the page. */
  void complete(List<Caution> cautions) throws IOException {
    page.append("<h2>Cautions</h2>\n");
    List<Caution> all = new ArrayList<>(cautions);
    all.add(SafetyRules.usFederal().deference());
    for (Caution caution : all) {
      page.append("<p><b>")
          .append(SharesChart.escaped(caution.title()))
          .append("</b>: ")
          .append(SharesChart.escaped(caution.text()))
          .append("</p>\n");
    }
    output.write(FOLDER + "index.html", page.append("</body></html>\n").toString());
  }
}
