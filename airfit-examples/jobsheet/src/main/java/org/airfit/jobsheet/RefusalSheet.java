package org.airfit.jobsheet;

import java.util.List;
import org.airfit.files.Refusal;
import org.airfit.safety.Caution;

/** The sheet of a job for anything but compressed air: a refusal with its reason, and nothing computed. */
final class RefusalSheet {

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

  static String page(Refusal refusal, Letterhead head) {
    StringBuilder out = new StringBuilder();
    String title = title(refusal);
    Html.head(out, "Job sheet: " + title, PageStyle.of(head.footer(title), PageSheet.STYLE));
    PageHead.write(out, head, title, refusal.customer(), "Job sheet");
    out.append("<main>\n");
    Html.element(out, "h2", "Refused");
    Html.element(out, "p", withoutSource(refusal.reason()));
    Html.element(out, "p", NOTHING);
    return out.append("</main>\n</body>\n</html>\n").toString();
  }

  /** The page of a refused file that is no job. */
  static String page(Refusal refusal, List<Caution> cautions) {
    String customer = refusal.customer();
    AnswerPage page = new AnswerPage(
        "Refused",
        refusal.title().isBlank() ? "Not compressed air" : refusal.title(),
        customer.isBlank() ? "Not for compressed air that drives tools" : "For " + customer,
        "");
    page.inShort(List.of(new Answer("Refused", withoutSource(refusal.reason()))));
    return page.end("What stands against it", cautions, "Nothing was computed.");
  }

  /** What it rests on stands on the sheet for the terminal. */
  private static String withoutSource(String reason) {
    return reason.replaceFirst(" \\[[^\\]]*\\]$", "");
  }

  /** A file that is refused need not tell what it is about: nothing else of it is read. */
  private static String title(Refusal refusal) {
    return refusal.title().isBlank() ? "Job without a title" : refusal.title();
  }
}
