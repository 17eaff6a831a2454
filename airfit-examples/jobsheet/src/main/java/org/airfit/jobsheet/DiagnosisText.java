package org.airfit.jobsheet;

/** The sheet of a diagnosis as plain text, with the working. */
public final class DiagnosisText {

  private final Lines out = new Lines();

  private DiagnosisText() {}

  /**
   * Writes the text.
   *
   * @param sheet what is answered
   * @return lines, the working last
   */
  public static String of(DiagnosisSheet sheet) {
    DiagnosisText text = new DiagnosisText();
    text.write(sheet);
    return text.out.toString();
  }

  private void write(DiagnosisSheet sheet) {
    out.wrapped("", "DIAGNOSIS  " + sheet.job().title());
    out.wrapped("", "for " + sheet.job().customer());
    out.heading("In short");
    sheet.inShort().forEach(line -> out.wrapped("", line.what() + ": " + line.answer()));
    out.heading("What may be wrong, the most probable first");
    for (DiagnosisSheet.Listed each : sheet.explanations()) {
      out.wrapped(
          "  ",
          each.what() + ": " + each.chance() + (each.value().isEmpty() ? "" : "; " + each.value())
              + "; " + each.fit());
    }
    out.heading("What the gauges showed, and what they would show if all were as told");
    for (DiagnosisSheet.Shown each : sheet.readings()) {
      out.wrapped(
          "  ",
          each.place() + ", " + each.state() + ", " + each.gauge() + ": " + each.shown()
              + ", as told " + each.told() + ": " + each.apart());
    }
    out.heading("How far this can be trusted");
    out.wrapped("", DiagnosisSheet.LIMITS);
    out.heading("Before anyone works on it");
    sheet.cautions().forEach(caution -> out.wrapped("  - ", caution.toString()));
    out.heading("The working");
    out.add(sheet.found().working(sheet.units()).toText() + "\n");
  }
}
