package org.airfit.jobsheet;

import java.util.List;

/** The sheet of a diagnosis as one HTML page. */
public final class DiagnosisPage {

  private static final String STYLE = """
      .top { padding-top: 16px; }
      .wide table { min-width: 34em; }
      .wide .n + :not(.n) { padding-left: 12px; }
      """;

  private DiagnosisPage() {}

  /**
   * Writes the page.
   *
   * @param sheet what is answered
   * @return one HTML file that needs no other
   */
  public static String of(DiagnosisSheet sheet) {
    AnswerPage page = new AnswerPage(
        "Diagnosis",
        sheet.job().title(),
        "Diagnosis by gauges for " + sheet.job().customer(),
        STYLE);
    page.inShort(sheet.inShort());
    page.element("h2", "What may be wrong, the most probable first");
    page.table(
        "What may be wrong",
        List.of("what", "chance", "value, if it is that", "the readings"),
        sheet.explanations().stream()
            .map(each -> List.of(each.what(), each.chance(), each.value(), each.fit()))
            .toList());
    page.element("h2", "What the gauges showed");
    page.table(
        "What the gauges showed",
        List.of("where", "when", "gauge", "shown", "if all were as told", "that is"),
        sheet.readings().stream()
            .map(each -> List.of(
                each.place(), each.state(), each.gauge(), each.shown(), each.told(), each.apart()))
            .toList());
    page.element("h2", "How far this can be trusted");
    page.element("p", DiagnosisSheet.LIMITS);
    return page.end(
        "Before anyone works on it",
        sheet.cautions(),
        "Pressures stand above the atmosphere. The program prints the working, and where each"
            + " caution is from.");
  }
}
