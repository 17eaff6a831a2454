package org.airfit.jobsheet;

import java.util.List;
import org.airfit.select.FaultEffect;

/** The sheet of a checked price list as one HTML page. */
public final class PriceListPage {

  private static final String STYLE = """
      .wide table { min-width: 40em; }
      .wide.few table { min-width: 0; }
      .wide th[scope=row] { overflow-wrap: anywhere; max-width: 12em; }
      .do { margin-top: 4px; font-style: italic; }
      """;

  private final AnswerPage page;

  private PriceListPage(AnswerPage page) {
    this.page = page;
  }

  /**
   * Writes the page.
   *
   * @param sheet what was found
   * @return one HTML file that needs no other
   */
  public static String of(PriceListSheet sheet) {
    AnswerPage page = new AnswerPage(
        "Price list", sheet.job().title(), "Price list of " + sheet.job().customer(), STYLE);
    new PriceListPage(page).write(sheet);
    return page.end(
        "Before anything is sold by this list",
        sheet.cautions(),
        "Pressures stand above the atmosphere. The program prints where each caution is from.");
  }

  private void write(PriceListSheet sheet) {
    page.inShort(sheet.inShort());
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
    page.element("h2", "How far this can be trusted");
    page.list(sheet.limits());
  }

  private void jobs(PriceListSheet sheet) {
    if (sheet.gaps().isEmpty()) {
      page.element("h2", "What would solve more jobs");
      page.element(
          "p", sheet.drawn() + " No single part or figure that was tried solves a job more.");
    } else {
      table(
          "What would solve more jobs",
          List.of("what is lacking", "jobs more", "share of all jobs"),
          sheet.gaps(),
          1);
      page.element("p", sheet.drawn());
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
    page.element("h2", label);
    page.open(label, "wide few");
    StringBuilder out = page.out();
    out.append("<thead><tr><th scope=\"col\">article</th>")
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
    page.close();
  }

  /** A table under its heading, whose columns from one on hold numbers. */
  private void table(String label, List<String> heads, List<List<String>> rows, int numbers) {
    page.element("h2", label);
    page.table(label, heads, rows, numbers, AnswerPage.PLAIN);
  }
}
