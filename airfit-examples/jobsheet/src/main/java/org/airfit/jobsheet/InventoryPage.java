package org.airfit.jobsheet;

import static org.airfit.jobsheet.Html.escaped;

import java.util.List;
import org.airfit.files.Printable;
import org.airfit.safety.Caution;

/** The sheet of an inventory of couplings as one HTML page. */
public final class InventoryPage {

  private static final String STYLE = """
      .heading { border-bottom: 3px solid var(--line); padding-bottom: 6px; margin-bottom: 10px; }
      .heading p { margin: 0; }
      .wide table { min-width: 34em; }
      .wide tr:last-child.sum th, .wide tr:last-child.sum td { font-weight: bold; border-bottom: 0; }
      ol.stops > li { margin-bottom: 10px; }
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

  private InventoryPage() {}

  /**
   * Writes the page.
   *
   * @param sheet what is answered
   * @return one HTML file that needs no other
   */
  public static String of(InventorySheet sheet) {
    InventoryPage page = new InventoryPage();
    page.write(sheet);
    return Printable.lines(page.out.toString());
  }

  private void element(String tag, String text) {
    Html.element(out, tag, text);
  }

  private void write(InventorySheet sheet) {
    String title = sheet.job().title();
    Html.head(out, "Couplings: " + title, PageStyle.of("Couplings, " + title, STYLE));
    out.append("<header class=\"top\">\n<div class=\"heading\">\n");
    element("h1", title);
    element("p", "Couplings of " + sheet.job().customer());
    out.append("</div>\n</header>\n<main>\n");
    element("h2", "In short");
    out.append("<dl class=\"facts\">\n");
    sheet.inShort().forEach(line -> Html.fact(out, line.what(), line.answer()));
    out.append("</dl>\n");
    element("h2", "Each bay");
    table(
        "Each bay",
        List.of("bay", "now", "keeps", "sockets to change", "plugs to change"),
        sheet.bays(),
        3);
    if (!sheet.stops().isEmpty()) {
      element("h2", "What to take from the shelf and to buy");
      table(
          "What to take from the shelf and to buy",
          List.of("part", "from the shelf", "to buy", "each", "together"),
          sheet.purchases(),
          1);
      element("h2", "In which order");
      element("p", InventorySheet.ORDER);
      out.append("<ol class=\"stops\">\n");
      for (InventorySheet.Stop stop : sheet.stops()) {
        out.append("<li>").append(escaped(stop.what() + " " + stop.gain())).append('\n');
        list(stop.until());
        out.append("</li>\n");
      }
      out.append("</ol>\n");
    }
    listed("The air at each tool", sheet.air());
    element("h2", "What can be plugged together wrongly today");
    if (sheet.wrongToday().isEmpty()) {
      element("p", sheet.noneWrong());
    } else {
      table(
          "What can be plugged together wrongly today",
          List.of("plug", "socket", "what happens", "ways"),
          sheet.wrongToday(),
          3);
    }
    listed("Sizes of pairs that nobody told of; they do not tell what happens", sheet.sizes());
    listed("Why others are not kept", sheet.notKept());
    element("h2", "Spare pieces");
    element("p", sheet.spareInWords());
    if (sheet.found().best().isPresent()) {
      table(
          "Spare pieces afterwards",
          List.of("kind", "in use afterwards", "spare"),
          sheet.spare(/* isAfter= */ true),
          1);
    }
    element("h2", "How far this can be trusted");
    list(InventorySheet.LIMITS);
    out.append("<section class=\"care\">\n");
    element("h2", "Before anyone changes a coupling");
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

  private void listed(String heading, List<String> lines) {
    if (!lines.isEmpty()) {
      element("h2", heading);
      list(lines);
    }
  }

  private void list(List<String> lines) {
    out.append("<ul>\n");
    lines.forEach(line -> element("li", line));
    out.append("</ul>\n");
  }

  /** A table whose columns from one on hold numbers. */
  private void table(String label, List<String> heads, List<List<String>> rows, int numbers) {
    out.append("<div class=\"wide\" tabindex=\"0\" role=\"region\" aria-label=\"")
        .append(escaped(label))
        .append("\">\n<table>\n<thead><tr>");
    for (int i = 0; i < heads.size(); i++) {
      out.append(i < numbers ? "<th scope=\"col\">" : "<th scope=\"col\" class=\"n\">")
          .append(escaped(heads.get(i)))
          .append("</th>");
    }
    out.append("</tr></thead>\n<tbody>\n");
    for (List<String> row : rows) {
      out.append(row.get(0).equals("together") ? "<tr class=\"sum\">" : "<tr>");
      out.append("<th scope=\"row\">").append(Html.shown(row.get(0))).append("</th>");
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
