package org.airfit.jobsheet;

import static org.airfit.jobsheet.Html.escaped;

import java.util.List;
import org.airfit.files.Printable;
import org.airfit.safety.Caution;
import org.airfit.select.FaultEffect;

/** The sheet of a checked price list as one HTML page. */
public final class PriceListPage {

  private static final String STYLE = """
      .heading { border-bottom: 3px solid var(--line); padding-bottom: 6px; margin-bottom: 10px; }
      .heading p { margin: 0; }
      .wide table { min-width: 40em; }
      .wide.few table { min-width: 0; }
      .wide th[scope=row] { overflow-wrap: anywhere; max-width: 12em; }
      .do { margin-top: 4px; font-style: italic; }
      .care { border: 1.5px solid var(--line); padding: 8px 14px 4px; margin-top: 16px; }
      .care h2 { margin-top: 0; }
      @media print {
        .wide { overflow: visible; }
        .wide table { min-width: 0; }
        .care { padding: 1.2mm 3mm .4mm; font-size: 8pt; }
        .care .cautions { columns: 2; column-gap: 5mm; }
      }
      """;

  private final StringBuilder out = new StringBuilder();

  private PriceListPage() {}

  /**
   * Writes the page.
   *
   * @param sheet what was found
   * @return one HTML file that needs no other
   */
  public static String of(PriceListSheet sheet) {
    PriceListPage page = new PriceListPage();
    page.write(sheet);
    return Printable.lines(page.out.toString());
  }

  private void element(String tag, String text) {
    Html.element(out, tag, text);
  }

  private void write(PriceListSheet sheet) {
    String title = sheet.job().title();
    Html.head(out, "Price list: " + title, PageStyle.of("Price list, " + title, STYLE));
    out.append("<header class=\"top\">\n<div class=\"heading\">\n");
    element("h1", title);
    element("p", "Price list of " + sheet.job().customer());
    out.append("</div>\n</header>\n<main>\n");
    element("h2", "In short");
    out.append("<dl class=\"facts\">\n");
    sheet.inShort().forEach(line -> Html.fact(out, line.what(), line.answer()));
    out.append("</dl>\n");
    if (!sheet.unread().isEmpty()) {
      table("Could not be read", List.of("article", "field", "what is wrong"), sheet.unread(), 3);
    }
    for (FaultEffect effect : sheet.effects()) {
      faults(PriceListSheet.heading(effect), sheet.faults(effect));
    }
    if (sheet.coverage().isPresent()) {
      jobs(sheet);
    }
    table("What was looked at", List.of("kind of fault", "looked at", "found"), sheet.looked(), 1);
    element("h2", "How far this can be trusted");
    out.append("<ul>\n");
    sheet.limits().forEach(line -> element("li", line));
    out.append("</ul>\n<section class=\"care\">\n");
    element("h2", "Before anything is sold by this list");
    out.append("<div class=\"cautions\">\n");
    for (Caution caution : sheet.cautions()) {
      out.append("<p><strong>").append(escaped(caution.title())).append(".</strong> ");
      out.append(escaped(caution.text())).append("</p>\n");
    }
    out.append("</div>\n</section>\n</main>\n");
    element(
        "footer class=\"bottom\"",
        "Pressures stand above the atmosphere. The program prints where each caution is from.");
    out.append("</body>\n</html>\n");
  }

  private void jobs(PriceListSheet sheet) {
    if (sheet.gaps().isEmpty()) {
      element("h2", "What would solve more jobs");
      element("p", sheet.drawn() + " No single part or figure that was tried solves a job more.");
    } else {
      table(
          "What would solve more jobs",
          List.of("what is lacking", "jobs more", "share of all jobs"),
          sheet.gaps(),
          1);
      element("p", sheet.drawn());
    }
    if (!sheet.inTheWay().isEmpty()) {
      table(
          "What stands in the way of jobs without a proposal",
          List.of("rule", "jobs"),
          sheet.inTheWay(),
          1);
    }
  }

  /** Faults in two columns, so that what to do stands under what is wrong on a narrow screen too. */
  private void faults(String label, List<List<String>> rows) {
    element("h2", label);
    out.append("<div class=\"wide few\" tabindex=\"0\" role=\"region\" aria-label=\"")
        .append(escaped(label))
        .append("\">\n<table>\n<thead><tr><th scope=\"col\">article</th>")
        .append("<th scope=\"col\">what is wrong, and what to do</th></tr></thead>\n<tbody>\n");
    for (List<String> row : rows) {
      out.append("<tr><th scope=\"row\">")
          .append(Html.shown(row.get(0)))
          .append("</th><td><strong>")
          .append(Html.shown(row.get(1)))
          .append(".</strong> ")
          .append(Html.shown(row.get(2)))
          .append("<div class=\"do\">")
          .append(Html.shown(row.get(3)))
          .append("</div></td></tr>\n");
    }
    out.append("</tbody>\n</table>\n</div>\n");
  }

  /** A table under its heading, whose columns from one on hold numbers. */
  private void table(String label, List<String> heads, List<List<String>> rows, int numbers) {
    element("h2", label);
    out.append(numbers < heads.size() ? "<div class=\"wide few\"" : "<div class=\"wide\"");
    out.append(" tabindex=\"0\" role=\"region\" aria-label=\"")
        .append(escaped(label))
        .append("\">\n<table>\n<thead><tr>");
    for (int i = 0; i < heads.size(); i++) {
      out.append(i < numbers ? "<th scope=\"col\">" : "<th scope=\"col\" class=\"n\">")
          .append(escaped(heads.get(i)))
          .append("</th>");
    }
    out.append("</tr></thead>\n<tbody>\n");
    for (List<String> row : rows) {
      out.append("<tr><th scope=\"row\">").append(Html.shown(row.get(0))).append("</th>");
      for (int i = 1; i < row.size(); i++) {
        out.append(i < numbers ? "<td>" : "<td class=\"n\">")
            .append(Html.shown(row.get(i)))
            .append("</td>");
      }
      out.append("</tr>\n");
    }
    out.append("</tbody>\n</table>\n</div>\n");
  }
}
