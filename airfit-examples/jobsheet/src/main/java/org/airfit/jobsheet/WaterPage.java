package org.airfit.jobsheet;

import java.util.ArrayList;
import java.util.List;
import org.airfit.air.PurityVerdict;
import org.airfit.files.Printable;
import org.airfit.files.WaterJob;
import org.airfit.safety.Caution;

/** The sheet of water and purity as one HTML page, with the water along each train. */
public final class WaterPage {

  private static final String STYLE = """
      .heading { border-bottom: 3px solid var(--line); padding-bottom: 6px; margin-bottom: 10px; }
      .heading p { margin: 0; }
      .care { border: 1.5px solid var(--line); padding: 8px 14px 4px; margin-top: 16px; }
      .care h2 { margin-top: 0; }
      section.train { border-top: 1.5px solid var(--line); margin-top: 22px; }
      section.train h2 { margin-top: 10px; }
      svg .pale { fill: var(--hair); } svg .dark { fill: var(--run); } svg .short { fill: var(--warn); }
      .key { display: inline-block; width: .8em; height: .8em; }
      .key.pale { background: var(--hair); } .key.dark { background: var(--run); }
      .key.short { background: var(--warn); }
      .wide table { min-width: 36em; }
      @media print { .wide { overflow: visible; } .wide table { min-width: 0; } .key { print-color-adjust: exact;
        -webkit-print-color-adjust: exact; } .care { padding: 1.2mm 3mm .4mm; font-size: 8.5pt; } }
      """;

  private final StringBuilder out = new StringBuilder();
  private final WaterSheet sheet;

  private WaterPage(WaterSheet sheet) {
    this.sheet = sheet;
  }

  /**
   * Writes the page.
   *
   * @param sheet what is answered
   * @return one HTML file that needs no other
   */
  public static String of(WaterSheet sheet) {
    WaterPage page = new WaterPage(sheet);
    page.write();
    return Printable.lines(page.out.toString());
  }

  private void element(String tag, String text) {
    Html.element(out, tag, text);
  }

  private void write() {
    String title = sheet.job().title();
    Html.head(out, "Water: " + title, PageStyle.of("Water and purity, " + title, STYLE));
    out.append("<header class=\"top\">\n<div class=\"heading\">\n");
    element("h1", title);
    element("p", "Water and purity of the compressed air of " + sheet.job().customer());
    out.append("</div>\n</header>\n<main>\n");
    element("h2", "In short");
    out.append("<dl class=\"facts\">\n");
    sheet.inShort().forEach(line -> Html.fact(out, line.what(), InWords.capital(line.answer())));
    out.append("</dl>\n");
    sheet.job().trains().forEach(this::train);
    element("h2", "How far this can be trusted");
    list(WaterSheet.LIMITS);
    out.append("<section class=\"care\">\n");
    element("h2", "Before anyone opens it or trusts the air");
    for (Caution caution : sheet.cautions()) {
      out.append("<p><strong>").append(Html.escaped(caution.title())).append(".</strong> ");
      out.append(Html.escaped(caution.text())).append("</p>\n");
    }
    out.append("</section>\n</main>\n");
    element(
        "footer class=\"bottom\"",
        "Pressures stand above the atmosphere unless they say (a) or psia. The program prints the"
            + " working.");
    out.append("</body>\n</html>\n");
  }

  private void train(WaterJob.Train train) {
    out.append("<section class=\"train\">\n");
    element("h2", InWords.capital(train.name()));
    sheet.judged(train).ifPresent(answer -> {
      element("h3", "Which purity it reaches");
      List<List<String>> rows = new ArrayList<>();
      List<Boolean> unmet = new ArrayList<>();
      for (WaterSheet.Reached row : sheet.reached(answer)) {
        rows.add(List.of(row.what(), row.asked(), row.told(), row.verdict().label(), row.why()));
        unmet.add(row.verdict() != PurityVerdict.REACHED);
      }
      table(
          "Purity of " + train.name(),
          List.of("what", "asked", "told", "reached?", "why"),
          rows,
          unmet);
    });
    element("h3", "Where water falls out in " + sheet.shift());
    out.append("<figure class=\"chart\">\n")
        .append(WaterChart.of(sheet, train))
        .append("<figcaption>");
    key("pale", "goes on as vapour");
    key("dark", "leaves as liquid, by a drain or in the dryer");
    key("short", "goes on as liquid");
    out.append("at its warmest with the dampest air; the numbers are those of the table.")
        .append("</figcaption>\n</figure>\n");
    List<List<String>> rows = new ArrayList<>();
    List<Boolean> missing = new ArrayList<>();
    int number = 1;
    for (WaterSheet.Water row : sheet.water(train)) {
      rows.add(
          List.of(number++ + " " + row.place(), row.warm(), row.cold(), row.most(), row.need()));
      missing.add(row.isMissing());
    }
    table(
        "Water of " + train.name(),
        List.of("place", "warm", "cold", "at most", "drain"),
        rows,
        missing);
    element("p", sheet.balance(train));
    sheet.undried(train).ifPresent(said -> element("p", said));
    element("h3", "Drains and fall");
    list(sheet.drains(train));
    losses(train);
    out.append("</section>\n");
  }

  private void losses(WaterJob.Train train) {
    List<List<String>> rows = new ArrayList<>();
    List<Boolean> none = new ArrayList<>();
    for (WaterSheet.Loss row : sheet.losses(train)) {
      rows.add(List.of(
          row.name(), row.clean(), row.changeOut(), row.costs(), row.extra(), row.paidBack()));
      none.add(false);
    }
    if (rows.isEmpty()) {
      return;
    }
    element("h3", "The pressure that it takes, and what that costs");
    table(
        "Pressure losses of " + train.name(),
        List.of(
            "stage",
            "clean",
            "change-out",
            "costs in a year",
            "clogged costs more",
            "new element paid back in"),
        rows,
        none);
    element("p", sheet.lossInAll(train));
  }

  private void key(String kind, String text) {
    out.append("<span class=\"key ")
        .append(kind)
        .append("\"></span> ")
        .append(Html.escaped(text))
        .append("; ");
  }

  private void list(List<String> lines) {
    out.append("<ul>\n");
    lines.forEach(line -> element("li", InWords.capital(line)));
    out.append("</ul>\n");
  }

  private void table(
      String label, List<String> heads, List<List<String>> rows, List<Boolean> unmet) {
    out.append("<div class=\"wide\" tabindex=\"0\" role=\"region\" aria-label=\"")
        .append(Html.escaped(label))
        .append("\">\n<table>\n<thead><tr>");
    for (String head : heads) {
      out.append("<th scope=\"col\">").append(Html.escaped(head)).append("</th>");
    }
    out.append("</tr></thead>\n<tbody>\n");
    for (int r = 0; r < rows.size(); r++) {
      List<String> row = rows.get(r);
      out.append(unmet.get(r) ? "<tr class=\"unmet\">" : "<tr>");
      out.append("<th scope=\"row\">").append(Html.shown(row.get(0))).append("</th>");
      for (int i = 1; i < row.size(); i++) {
        out.append("<td>").append(Html.shown(row.get(i))).append("</td>");
      }
      out.append("</tr>\n");
    }
    out.append("</tbody>\n</table>\n</div>\n");
  }
}
