package org.airfit.jobsheet;

import static org.airfit.jobsheet.Html.escaped;

import java.util.List;
import java.util.function.Function;
import org.airfit.files.Printable;
import org.airfit.safety.Caution;

/** The frame of a page that answers a file: its head, what it says in short, lists, tables, and cautions at the end. */
final class AnswerPage {

  private static final String STYLE = """
      .heading { border-bottom: 3px solid var(--line); padding-bottom: 6px; margin-bottom: 10px; }
      .heading p { margin: 0; }
      .care { border: 1.5px solid var(--line); padding: 8px 14px 4px; margin-top: 16px; }
      .care h2 { margin-top: 0; }
      @media print {
        .wide { overflow: visible; }
        .wide table { min-width: 0; }
        .care { padding: 1.2mm 3mm .4mm; font-size: 8pt; }
        .care .cautions { columns: 2; column-gap: 5mm; }
      }
      """;

  /** Rows that are all alike. */
  static final Function<List<String>, String> PLAIN = row -> "";

  private final StringBuilder out = new StringBuilder();

  /**
   * Begins the page.
   *
   * @param kind what it is, such as "Diagnosis"
   * @param title what it is about
   * @param whose what stands under the title
   * @param style its own style, behind which that of the frame stands
   */
  AnswerPage(String kind, String title, String whose, String style) {
    Html.head(out, kind + ": " + title, PageStyle.of(kind + ", " + title, style + STYLE));
    out.append("<header class=\"top\">\n<div class=\"heading\">\n");
    element("h1", title);
    element("p", whose);
    out.append("</div>\n</header>\n<main>\n");
  }

  /** Where what the frame does not know is written. */
  StringBuilder out() {
    return out;
  }

  void element(String tag, String text) {
    Html.element(out, tag, text);
  }

  /** The whole answer in a few lines. */
  void inShort(List<Answer> lines) {
    element("h2", "In short");
    out.append("<dl class=\"facts\">\n");
    lines.forEach(line -> Html.fact(out, line.what(), line.answer()));
    out.append("</dl>\n");
  }

  void list(List<String> lines) {
    out.append("<ul>\n");
    lines.forEach(line -> element("li", line));
    out.append("</ul>\n");
  }

  /** A table of words. */
  void table(String label, List<String> heads, List<List<String>> rows) {
    table(label, heads, rows, heads.size(), PLAIN);
  }

  /**
   * A table that scrolls where it is too wide.
   *
   * @param label its name for those who hear it
   * @param heads the heads of its columns
   * @param rows its rows, the first cell of each its name
   * @param numbers the column from which on there are numbers
   * @param kind the class of a row; blank for most
   */
  void table(
      String label,
      List<String> heads,
      List<List<String>> rows,
      int numbers,
      Function<List<String>, String> kind) {
    open(label, numbers < heads.size() ? "wide few" : "wide"); // numbers need less room than words
    out.append("<thead><tr>");
    for (int i = 0; i < heads.size(); i++) {
      out.append(i < numbers ? "<th scope=\"col\">" : "<th scope=\"col\" class=\"n\">")
          .append(escaped(heads.get(i)))
          .append("</th>");
    }
    out.append("</tr></thead>\n<tbody>\n");
    for (List<String> row : rows) {
      String of = kind.apply(row);
      out.append(of.isEmpty() ? "<tr>" : "<tr class=\"" + of + "\">");
      out.append("<th scope=\"row\">").append(Html.shown(row.get(0))).append("</th>");
      for (int i = 1; i < row.size(); i++) {
        out.append(i < numbers ? "<td>" : "<td class=\"n\">")
            .append(Html.shown(row.get(i)))
            .append("</td>");
      }
      out.append("</tr>\n");
    }
    close();
  }

  /** Begins a table of which its writer writes the rows. */
  void open(String label, String kind) {
    out.append("<div class=\"" + kind + "\" tabindex=\"0\" role=\"region\" aria-label=\"")
        .append(escaped(label))
        .append("\">\n<table>\n");
  }

  /** Ends such a table. */
  void close() {
    out.append("</tbody>\n</table>\n</div>\n");
  }

  /**
   * Ends the page with what must be minded.
   *
   * @param heading over the cautions
   * @param cautions the cautions
   * @param footer what the reader ought to know of the numbers
   * @return the page, one HTML file that needs no other
   */
  String end(String heading, List<Caution> cautions, String footer) {
    out.append("<section class=\"care\">\n");
    element("h2", heading);
    out.append("<div class=\"cautions\">\n");
    for (Caution caution : cautions) {
      out.append("<p><strong>").append(escaped(caution.title())).append(".</strong> ");
      out.append(escaped(caution.text())).append("</p>\n");
    }
    out.append("</div>\n</section>\n</main>\n");
    element("footer class=\"bottom\"", footer);
    return Printable.lines(out.append("</body>\n</html>\n").toString());
  }
}
