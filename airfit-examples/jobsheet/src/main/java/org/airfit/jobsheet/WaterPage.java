package org.airfit.jobsheet;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.airfit.air.PurityVerdict;
import org.airfit.files.WaterJob;

/** The sheet of water and purity as one HTML page, with the water along each train. */
public final class WaterPage {

  private static final String STYLE = """
      section.train { border-top: 1.5px solid var(--line); margin-top: 22px; }
      section.train h2 { margin-top: 10px; }
      svg .pale { fill: var(--hair); } svg .dark { fill: var(--run); } svg .short { fill: var(--warn); }
      .key { display: inline-block; width: .8em; height: .8em; }
      .key.pale { background: var(--hair); } .key.dark { background: var(--run); }
      .key.short { background: var(--warn); }
      .wide table { min-width: 36em; }
      @media print { .key { print-color-adjust: exact; -webkit-print-color-adjust: exact; } }
      """;

  private final AnswerPage page;
  private final StringBuilder out;
  private final WaterSheet sheet;

  private WaterPage(AnswerPage page, WaterSheet sheet) {
    this.page = page;
    this.out = page.out();
    this.sheet = sheet;
  }

  /**
   * Writes the page.
   *
   * @param sheet what is answered
   * @return one HTML file that needs no other
   */
  public static String of(WaterSheet sheet) {
    return of(sheet, sheet.inShort());
  }

  /** The same with other lines in short. */
  static String of(WaterSheet sheet, List<Answer> inShort) {
    AnswerPage page = new AnswerPage(
        "Water and purity",
        sheet.job().title(),
        "Water and purity of the compressed air of " + sheet.job().customer(),
        STYLE);
    new WaterPage(page, sheet).write(inShort);
    return page.end(
        "Before anyone opens it or trusts the air",
        sheet.cautions(),
        "Pressures stand above the atmosphere unless they say (a) or psia. The program prints the"
            + " working.");
  }

  private void write(List<Answer> inShort) {
    page.inShort(inShort.stream()
        .map(line -> new Answer(line.what(), InWords.capital(line.answer())))
        .toList());
    sheet.job().trains().forEach(this::train);
    page.element("h2", "How far this can be trusted");
    list(WaterSheet.LIMITS);
  }

  private void train(WaterJob.Train train) {
    out.append("<section class=\"train\">\n");
    page.element("h2", InWords.capital(train.name()));
    sheet.judged(train).ifPresent(answer -> {
      page.element("h3", "Which purity it reaches");
      List<List<String>> rows = new ArrayList<>();
      Set<List<String>> unmet = new HashSet<>();
      for (WaterSheet.Reached row : sheet.reached(answer)) {
        List<String> cells =
            List.of(row.what(), row.asked(), row.told(), row.verdict().label(), row.why());
        rows.add(cells);
        if (row.verdict() != PurityVerdict.REACHED) {
          unmet.add(cells);
        }
      }
      table(
          "Purity of " + train.name(),
          List.of("what", "asked", "told", "reached?", "why"),
          rows,
          unmet);
    });
    page.element("h3", "Where water falls out in " + sheet.shift());
    out.append("<figure class=\"chart\">\n")
        .append(WaterChart.of(sheet, train))
        .append("<figcaption>");
    key("pale", "goes on as vapour");
    key("dark", "leaves as liquid, by a drain or in the dryer");
    key("short", "goes on as liquid");
    out.append("at its warmest with the dampest air; the numbers are those of the table.")
        .append("</figcaption>\n</figure>\n");
    List<List<String>> rows = new ArrayList<>();
    Set<List<String>> missing = new HashSet<>();
    int number = 1;
    for (WaterSheet.Water row : sheet.water(train)) {
      List<String> cells =
          List.of(number++ + " " + row.place(), row.warm(), row.cold(), row.most(), row.need());
      rows.add(cells);
      if (row.isMissing()) {
        missing.add(cells);
      }
    }
    table(
        "Water of " + train.name(),
        List.of("place", "warm", "cold", "at most", "drain"),
        rows,
        missing);
    page.element("p", sheet.balance(train));
    sheet.undried(train).ifPresent(said -> page.element("p", said));
    page.element("h3", "Drains and fall");
    list(sheet.drains(train));
    losses(train);
    out.append("</section>\n");
  }

  private void losses(WaterJob.Train train) {
    List<List<String>> rows = new ArrayList<>();
    for (WaterSheet.Loss row : sheet.losses(train)) {
      rows.add(List.of(
          row.name(), row.clean(), row.changeOut(), row.costs(), row.extra(), row.paidBack()));
    }
    if (rows.isEmpty()) {
      return;
    }
    page.element("h3", "The pressure that it takes, and what that costs");
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
        Set.of());
    page.element("p", sheet.lossInAll(train));
  }

  private void key(String kind, String text) {
    out.append("<span class=\"key ")
        .append(kind)
        .append("\"></span> ")
        .append(Html.escaped(text))
        .append("; ");
  }

  private void list(List<String> lines) {
    page.list(lines.stream().map(InWords::capital).toList());
  }

  /** A table whose rows that tell of something missing are marked. */
  private void table(
      String label, List<String> heads, List<List<String>> rows, Set<List<String>> unmet) {
    page.table(label, heads, rows, heads.size(), row -> unmet.contains(row) ? "unmet" : "");
  }
}
