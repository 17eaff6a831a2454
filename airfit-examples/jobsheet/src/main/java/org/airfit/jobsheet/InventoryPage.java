package org.airfit.jobsheet;

import static org.airfit.jobsheet.Html.escaped;

import java.util.List;

/** The sheet of an inventory of couplings as one HTML page. */
public final class InventoryPage {

  private static final String STYLE = """
      .wide table { min-width: 34em; }
      .wide tr:last-child.sum th, .wide tr:last-child.sum td { font-weight: bold; border-bottom: 0; }
      ol.stops > li { margin-bottom: 10px; }
      """;

  private final AnswerPage page;

  private InventoryPage(AnswerPage page) {
    this.page = page;
  }

  /**
   * Writes the page.
   *
   * @param sheet what is answered
   * @return one HTML file that needs no other
   */
  public static String of(InventorySheet sheet) {
    AnswerPage page = new AnswerPage(
        "Couplings", sheet.job().title(), "Couplings of " + sheet.job().customer(), STYLE);
    new InventoryPage(page).write(sheet);
    return page.end(
        "Before anyone changes a coupling",
        sheet.cautions(),
        "Pressures stand above the atmosphere. The program prints where each caution is from.");
  }

  private void write(InventorySheet sheet) {
    page.inShort(sheet.inShort());
    page.element("h2", "Each bay");
    table(
        "Each bay",
        List.of("bay", "now", "keeps", "sockets to change", "plugs to change"),
        sheet.bays(),
        3);
    if (!sheet.stops().isEmpty()) {
      page.element("h2", "What to take from the shelf and to buy");
      table(
          "What to take from the shelf and to buy",
          List.of("part", "from the shelf", "to buy", "each", "together"),
          sheet.purchases(),
          1);
      page.element("h2", "In which order");
      page.element("p", InventorySheet.ORDER);
      page.out().append("<ol class=\"stops\">\n");
      for (InventorySheet.Stop stop : sheet.stops()) {
        page.out()
            .append("<li>")
            .append(escaped(stop.what() + " " + stop.gain()))
            .append('\n');
        page.list(stop.until());
        page.out().append("</li>\n");
      }
      page.out().append("</ol>\n");
    }
    listed("The air at each tool", sheet.air());
    page.element("h2", "What can be plugged together wrongly today");
    if (sheet.wrongToday().isEmpty()) {
      page.element("p", sheet.noneWrong());
    } else {
      table(
          "What can be plugged together wrongly today",
          List.of("plug", "socket", "what happens", "ways"),
          sheet.wrongToday(),
          3);
    }
    listed("Sizes of pairs that nobody told of; they do not tell what happens", sheet.sizes());
    listed("Why others are not kept", sheet.notKept());
    page.element("h2", "Spare pieces");
    page.element("p", sheet.spareInWords());
    if (sheet.found().best().isPresent()) {
      table(
          "Spare pieces afterwards",
          List.of("kind", "in use afterwards", "spare"),
          sheet.spare(/* isAfter= */ true),
          1);
    }
    page.element("h2", "How far this can be trusted");
    page.list(InventorySheet.LIMITS);
  }

  private void listed(String heading, List<String> lines) {
    if (!lines.isEmpty()) {
      page.element("h2", heading);
      page.list(lines);
    }
  }

  /** A table whose columns from one on hold numbers, and whose last row may be their sum. */
  private void table(String label, List<String> heads, List<List<String>> rows, int numbers) {
    page.table(label, heads, rows, numbers, row -> row.get(0).equals("together") ? "sum" : "");
  }
}
