package org.airfit.jobsheet;

import static org.airfit.jobsheet.Html.escaped;

import java.util.List;
import org.airfit.files.Printable;
import org.airfit.safety.Caution;

/** The sheet of a diagnosis as one HTML page. */
public final class DiagnosisPage {

  private static final String STYLE = """
      .top { padding-top: 16px; }
      .heading { border-bottom: 3px solid var(--line); padding-bottom: 6px; margin-bottom: 10px; }
      .heading p { margin: 0; }
      .wide table { min-width: 34em; }
      .care { border: 1.5px solid var(--line); padding: 8px 14px 4px; margin-top: 16px; }
      .care h2 { margin-top: 0; }
      .wide .n + :not(.n) { padding-left: 12px; }
      @media print {
        .wide { overflow: visible; }
        .wide table { min-width: 0; }
        .care { padding: 1.2mm 3mm .4mm; font-size: 8pt; }
        .care .cautions { columns: 2; column-gap: 5mm; }
      }
      """;

  private final StringBuilder out = new StringBuilder();

  private DiagnosisPage() {}

  /**
   * Writes the page.
   *
   * @param sheet what is answered
   * @return one HTML file that needs no other
   */
  public static String of(DiagnosisSheet sheet) {
    DiagnosisPage page = new DiagnosisPage();
    page.write(sheet);
    return Printable.lines(page.out.toString());
  }

  private void element(String tag, String text) {
    Html.element(out, tag, text);
  }

  private void write(DiagnosisSheet sheet) {
    String title = sheet.job().title();
    Html.head(out, "Diagnosis: " + title, PageStyle.of("Diagnosis, " + title, STYLE));
    out.append("<header class=\"top\">\n<div class=\"heading\">\n");
    element("h1", title);
    element("p", "Diagnosis by gauges for " + sheet.job().customer());
    out.append("</div>\n</header>\n<main>\n");
    element("h2", "In short");
    out.append("<dl class=\"facts\">\n");
    sheet.inShort().forEach(line -> Html.fact(out, line.what(), line.answer()));
    out.append("</dl>\n");
    element("h2", "What may be wrong, the most probable first");
    table(
        "What may be wrong",
        List.of("what", "chance", "value, if it is that", "the readings"),
        sheet.explanations().stream()
            .map(each -> List.of(each.what(), each.chance(), each.value(), each.fit()))
            .toList());
    element("h2", "What the gauges showed");
    table(
        "What the gauges showed",
        List.of("where", "when", "gauge", "shown", "if all were as told", "that is"),
        sheet.readings().stream()
            .map(each -> List.of(
                each.place(), each.state(), each.gauge(), each.shown(), each.told(), each.apart()))
            .toList());
    element("h2", "How far this can be trusted");
    element("p", DiagnosisSheet.LIMITS);
    out.append("<section class=\"care\">\n");
    element("h2", "Before anyone works on it");
    out.append("<div class=\"cautions\">\n");
    for (Caution caution : sheet.cautions()) {
      out.append("<p><strong>").append(escaped(caution.title())).append(".</strong> ");
      out.append(escaped(caution.text())).append("</p>\n");
    }
    out.append("</div>\n</section>\n</main>\n");
    element(
        "footer class=\"bottom\"",
        "Pressures stand above the atmosphere. The program prints the working, and where each caution is"
            + " from.");
    out.append("</body>\n</html>\n");
  }

  private void table(String label, List<String> heads, List<List<String>> rows) {
    out.append("<div class=\"wide\" tabindex=\"0\" role=\"region\" aria-label=\"")
        .append(escaped(label))
        .append("\">\n<table>\n<thead><tr>");
    heads.forEach(head -> out.append("<th scope=\"col\">").append(escaped(head)).append("</th>"));
    out.append("</tr></thead>\n<tbody>\n");
    for (List<String> row : rows) {
      out.append("<tr><th scope=\"row\">").append(Html.shown(row.get(0))).append("</th>");
      row.subList(1, row.size())
          .forEach(cell -> out.append("<td>").append(Html.shown(cell)).append("</td>"));
      out.append("</tr>\n");
    }
    out.append("</tbody>\n</table>\n</div>\n");
  }
}
