package org.airfit.jobsheet;

import org.airfit.files.Refusal;

/** The sheet of a job for anything but compressed air: a refusal with its reason, and nothing computed. */
final class RefusalSheet {

  private static final String STYLE = """
      body { font: 10.5pt/1.45 Georgia, "DejaVu Serif", serif; color: #1d2429; background: #fff; margin: 0; }
      main { max-width: 180mm; margin: 10mm auto; padding: 0 4mm; }
      header { border-bottom: 2.5pt solid #1d2429; padding-bottom: 3mm; margin-bottom: 5mm; }
      .quiet { color: #46525a; }
      .answer { font-size: 12pt; border-left: 4pt solid #1d4e6b; padding: 1mm 0 1mm 4mm; }
      """;

  private static final String NOTHING = "Nothing was computed and no part was chosen.";

  private RefusalSheet() {}

  static String text(Refusal refusal) {
    Lines out = new Lines();
    out.line("JOB SHEET  " + title(refusal));
    if (!refusal.customer().isBlank()) {
      out.line("for " + refusal.customer());
    }
    out.heading("Refused");
    out.wrapped("", refusal.reason());
    out.wrapped("", NOTHING);
    return out.toString();
  }

  static String page(Refusal refusal) {
    StringBuilder out = new StringBuilder();
    Html.head(
        out,
        "Job sheet: " + title(refusal),
        STYLE,
        title(refusal),
        refusal.customer().isBlank() ? "Job sheet" : "Job sheet for " + refusal.customer());
    Html.element(out, "h2", "Refused");
    Html.element(out, "p class=\"answer\"", refusal.reason());
    Html.element(out, "p", NOTHING);
    return out.append("</main>\n</body>\n</html>\n").toString();
  }

  /** A file that is refused need not tell what it is about: nothing else of it is read. */
  private static String title(Refusal refusal) {
    return refusal.title().isBlank() ? "Job without a title" : refusal.title();
  }
}
