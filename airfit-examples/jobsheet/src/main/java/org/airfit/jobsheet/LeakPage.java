package org.airfit.jobsheet;

import java.util.List;
import org.airfit.files.LeakJob;
import org.airfit.files.Printable;
import org.airfit.plant.Leak;
import org.airfit.plant.LeakLedger;
import org.airfit.safety.Caution;

/** The sheet of a ledger of leaks as one HTML page to hang up: the dearest leaks first, and what was done. */
public final class LeakPage {

  private static final String STYLE = """
      .heading { border-bottom: 3px solid var(--line); padding-bottom: 6px; margin-bottom: 10px; }
      .heading p { margin: 0; }
      .wide table { min-width: 40em; }
      .care { border: 1.5px solid var(--line); padding: 8px 14px 4px; margin-top: 16px; }
      .care h2 { margin-top: 0; }
      td.tag { font-weight: bold; white-space: nowrap; }
      @media print {
        .wide { overflow: visible; }
        .wide table { min-width: 0; }
        .heading { padding-bottom: 1mm; margin-bottom: 2mm; border-bottom-width: 2pt; }
        dl.facts { grid-template-columns: 34mm 1fr; gap: .5mm 3mm; }
        .care { padding: 1.2mm 3mm .4mm; margin-top: 2mm; border-width: 1pt; font-size: 8.5pt; }
      }
      """;

  private final StringBuilder out = new StringBuilder();

  private LeakPage() {}

  /**
   * Writes the page.
   *
   * @param job the ledger
   * @return one HTML file that needs no other
   */
  public static String of(LeakJob job) {
    return of(job, LeakText.inShort(job));
  }

  /** The same with other lines in short. */
  static String of(LeakJob job, List<Answer> inShort) {
    LeakPage page = new LeakPage();
    page.write(job, inShort);
    return Printable.lines(page.out.toString());
  }

  private void element(String tag, String text) {
    Html.element(out, tag, text);
  }

  private void write(LeakJob job, List<Answer> inShort) {
    Html.head(out, "Leaks: " + job.title(), PageStyle.of("Leaks, " + job.title(), STYLE));
    out.append("<header class=\"top\">\n<div class=\"heading\">\n");
    element("h1", "Leaks: " + job.title());
    element("p", "For " + job.customer());
    out.append("</div>\n</header>\n<main>\n");
    element("h2", "In short");
    out.append("<dl class=\"facts\">\n");
    inShort.forEach(line -> Html.fact(out, line.what(), InWords.capital(line.answer())));
    out.append("</dl>\n");
    leaks(job);
    element("h2", "Repaired, checked and tight");
    element(
        "p",
        LeakText.done(job).isEmpty() ? "None yet." : String.join(", ", LeakText.done(job)) + ".");
    element("h2", "The whole plant");
    list("ul", LeakText.tests(job));
    out.append("<section class=\"care\">\n");
    element("h2", "Before anyone looks for leaks or repairs them");
    for (Caution caution : job.ledger().cautions(job.units())) {
      out.append("<p><strong>");
      out.append(Html.shown(caution.title()));
      out.append(".</strong> ");
      out.append(Html.shown(caution.text()));
      out.append("</p>\n");
    }
    out.append("</section>\n");
    element("h2", "How it was reckoned");
    list("ul", LeakText.notes(job));
    out.append("</main>\n</body>\n</html>\n");
  }

  private void list(String tag, Iterable<String> items) {
    out.append('<').append(tag).append(">\n");
    items.forEach(item -> element("li", item));
    out.append("</").append(tag).append(">\n");
  }

  private void leaks(LeakJob job) {
    element("h2", "The dearest first");
    if (job.ledger().entries().isEmpty()) {
      element("p", "No leak is open.");
      return;
    }
    out.append("<div class=\"wide\" role=\"region\" tabindex=\"0\" aria-label=\"Table: the dearest"
        + " first\">\n"
        + "<table>\n"
        + "<thead><tr>");
    for (String heading :
        new String[] {"Tag", "Where and what", "Rank", "Loses", "Costs in a year", "Repair"}) {
      out.append("<th>").append(heading).append("</th>");
    }
    out.append("</tr></thead>\n<tbody>\n");
    for (LeakLedger.Entry entry : job.ledger().entries()) {
      Leak leak = entry.leak();
      out.append("<tr>");
      element("td class=\"tag\"", leak.tag());
      element("td", leak.place() + ", " + leak.what());
      element("td class=\"id\"", LeakText.rank(entry));
      element("td", InWords.capital(LeakText.loses(leak, job.units())));
      element("td", InWords.capital(LeakText.cost(entry)));
      element("td", InWords.capital(LeakText.repair(entry)));
      out.append("</tr>\n");
    }
    out.append("</tbody>\n</table>\n</div>\n");
  }
}
