package org.airfit.jobsheet;

import java.util.List;
import org.airfit.files.Printable;
import org.airfit.network.DayResult;
import org.airfit.safety.Caution;

/** The sheet of a day as one HTML page, with the pressure over the day. */
public final class DayPage {

  private static final String STYLE = """
      .top h1 { margin: 0; }
      .heading { border-bottom: 3px solid var(--line); padding-bottom: 6px; margin-bottom: 10px; }
      .heading p { margin: 0; }
      .care { border: 1.5px solid var(--line); padding: 8px 14px 4px; margin-top: 16px; }
      .care h2 { margin-top: 0; }
      svg .pale { fill: var(--hair); } svg .dark { fill: var(--run); } svg .short { fill: var(--warn); }
      .key { display: inline-block; width: .8em; height: .8em; }
      .key.pale { background: var(--hair); } .key.dark { background: var(--run); }
      .key.short { background: var(--warn); border-radius: 50%; }
      .wide table { min-width: 34em; }
      @media print { .wide { overflow: visible; } .wide table { min-width: 0; } .key { print-color-adjust: exact;
        -webkit-print-color-adjust: exact; } }
      """;

  private final StringBuilder out = new StringBuilder();

  private DayPage() {}

  /**
   * Writes the page.
   *
   * @param sheet what is answered
   * @return one HTML file that needs no other
   */
  public static String of(DaySheet sheet) {
    DayPage page = new DayPage();
    page.write(sheet, new DayWords(sheet));
    return Printable.lines(page.out.toString());
  }

  private void element(String tag, String text) {
    Html.element(out, tag, text);
  }

  private void list(List<String> items) {
    out.append("<ul>\n");
    items.forEach(item -> element("li", InWords.capital(item)));
    out.append("</ul>\n");
  }

  private void write(DaySheet sheet, DayWords words) {
    String title = sheet.job().title();
    Html.head(out, "Day: " + title, PageStyle.of("Day, " + title, STYLE));
    out.append("<header class=\"top\">\n<div class=\"heading\">\n");
    element("h1", title);
    element("p", "Air over a day, for " + sheet.job().customer());
    out.append("</div>\n</header>\n<main>\n");
    element("h2", "In short");
    out.append("<dl class=\"facts\">\n");
    words.inShort().forEach(line -> Html.fact(out, line.what(), line.said()));
    out.append("</dl>\n");
    chart(sheet);
    users(sheet, words);
    compressors(sheet, words);
    element("h2", "What would change");
    list(words.changes());
    element("h2", "What to know of these numbers");
    list(words.limits());
    out.append("<section class=\"care\">\n");
    element("h2", "Before anyone works on it");
    for (Caution caution : sheet.day().cautions()) {
      out.append("<p><strong>").append(Html.escaped(caution.title())).append(".</strong> ");
      out.append(Html.escaped(caution.text())).append("</p>\n");
    }
    out.append("</section>\n</main>\n");
    element(
        "footer class=\"bottom\"",
        "Found by a balance of mass in steps whose error is held below a ten-millionth; the program prints the working of"
            + " the balance and of the lowest moment.");
    out.append("</body>\n</html>\n");
  }

  private void chart(DaySheet sheet) {
    element("h2", "The pressure over the day");
    out.append("<figure class=\"chart\">\n").append(DayChart.of(sheet)).append("<figcaption>");
    key("dark", "in the header");
    key("pale", "at the compressors");
    if (sheet.day().isShort()) {
      key("short", "lowest moment of a user that is short, by the pressure in the header");
    }
    out.append("each bar spans the lowest and the highest of ")
        .append(Html.escaped(DayWords.said(sheet.job().day().length().dividedBy(480))))
        .append(".</figcaption>\n</figure>\n");
  }

  private void key(String kind, String text) {
    out.append("<span class=\"key ")
        .append(kind)
        .append("\"></span> ")
        .append(Html.escaped(text))
        .append("; ");
  }

  private void users(DaySheet sheet, DayWords words) {
    element("h2", "What each user has");
    rows(
        "user",
        sheet.day().uses().stream()
            .map(use -> new Row(use.name(), words.had(use), use.isShort()))
            .toList());
  }

  private void compressors(DaySheet sheet, DayWords words) {
    if (sheet.day().compressors().isEmpty()) {
      return;
    }
    element("h2", "What each compressor does");
    rows(
        "compressor",
        sheet.day().compressors().stream()
            .map((DayResult.CompressorDay did) -> new Row(did.name(), words.did(did), false))
            .toList());
  }

  /** A row of a table: a name and what is said of it. */
  private record Row(String name, String said, boolean isUnmet) {}

  private void rows(String what, List<Row> rows) {
    out.append("<table>\n<thead><tr><th scope=\"col\">")
        .append(what)
        .append("</th><th scope=\"col\">over the day</th></tr></thead>\n<tbody>\n");
    for (Row row : rows) {
      out.append(row.isUnmet ? "<tr class=\"unmet\">" : "<tr>");
      element("th scope=\"row\"", row.name);
      element("td", InWords.capital(row.said));
      out.append("</tr>\n");
    }
    out.append("</tbody>\n</table>\n");
  }
}
