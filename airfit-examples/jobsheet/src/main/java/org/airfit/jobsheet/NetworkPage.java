package org.airfit.jobsheet;

import static org.airfit.jobsheet.Html.escaped;

import java.util.List;
import java.util.stream.Collectors;
import org.airfit.files.Printable;
import org.airfit.line.PipeDuty;
import org.airfit.line.PipeVelocity;
import org.airfit.line.VelocityVerdict;
import org.airfit.quantity.MassFlow;
import org.airfit.safety.Caution;

/** The sheet of a network as one HTML page; a ring of six drops fits on one side of A4 or Letter. */
public final class NetworkPage {

  private static final int MOST_IMPROVEMENTS = 3;
  private static final double MUCH_PASCALS = 2.0e4;

  private static final String STYLE = """
      @page { margin: 10mm 13mm; }
      * { box-sizing: border-box; }
      body { font: 8.3pt/1.28 Georgia, "DejaVu Serif", serif; color: #1d2429; background: #fff; margin: 0; }
      main { max-width: 184mm; margin: 0 auto; }
      header { border-bottom: 2pt solid #1d2429; padding-bottom: 1.5mm; margin-bottom: 3mm; }
      h1 { font-size: 15pt; line-height: 1.2; margin: 0 0 0.5mm; }
      h2 { font-size: 10pt; margin: 2.2mm 0 0.6mm; break-after: avoid; }
      p { margin: 0 0 1mm; }
      .quiet { color: #46525a; }
      table { border-collapse: collapse; width: 100%; margin: 0 0 1.5mm; font-size: 8pt; }
      th, td { text-align: left; vertical-align: top; padding: 0.4mm 2.5mm 0.4mm 0; }
      th, td { border-bottom: 0.5pt solid #c6cdd1; }
      th { border-bottom: 1pt solid #1d2429; }
      td.n, th.n { text-align: right; white-space: nowrap; }
      table.short { font-size: 8.3pt; border: 1pt solid #1d2429; }
      table.short th { border: 0; white-space: nowrap; padding: 0.5mm 3mm; }
      table.short td { border: 0; }
      .unmet { font-weight: bold; }
      tr.quiet td { border: 0; font-size: 7pt; padding-bottom: 0; }
      ul, ol { margin: 0 0 1mm; padding-left: 5mm; }
      .before { border: 1pt solid #1d2429; padding: 1.5mm 3mm 0.5mm; margin-top: 3mm; break-inside: avoid; }
      .before h2 { margin-top: 0; }
      .before p { margin: 0 0 1mm; font-size: 8pt; }
      cite { color: #46525a; font-size: 7.5pt; font-style: normal; }
      footer { border-top: 0.5pt solid #1d2429; margin-top: 3mm; padding-top: 1mm; font-size: 7.5pt; color: #46525a; }
      """;

  private final StringBuilder out = new StringBuilder();

  private NetworkPage() {}

  /**
   * Writes the page.
   *
   * @param sheet what is answered
   * @return one HTML file that needs no other
   */
  public static String of(NetworkSheet sheet) {
    NetworkPage page = new NetworkPage();
    page.write(sheet);
    return Printable.lines(page.out.toString());
  }

  private void element(String tag, String text) {
    Html.element(out, tag, text);
  }

  private void write(NetworkSheet sheet) {
    Html.head(
        out,
        "Network: " + sheet.job().title(),
        STYLE,
        sheet.job().title(),
        "Network sheet for " + sheet.job().customer());
    out.append("<table class=\"short\">\n");
    for (Answer line : NetworkWords.inShort(sheet)) {
      out.append("<tr><th>").append(escaped(line.what())).append("</th><td>");
      out.append(escaped(line.answer())).append("</td></tr>\n");
    }
    out.append("</table>\n");
    drops(sheet);
    branches(sheet);
    lists(sheet);
    out.append("<section class=\"before\">\n");
    element("h2", "Before anyone works on it");
    for (Caution caution : sheet.cautions()) {
      out.append("<p><strong>").append(escaped(caution.title())).append(".</strong> ");
      out.append(escaped(caution.text())).append(" <cite>");
      out.append(escaped(caution.source().toString())).append("</cite></p>\n");
    }
    out.append("</section>\n");
    element(
        "footer",
        "Pressures stand above an atmosphere of "
            + sheet.amounts().absolute(sheet.job().atmosphere())
            + "; free air is counted at "
            + sheet
                .job()
                .units()
                .either("20 °C, 1 bar and 65 % humidity (ANR)", "60 °F, 14.7 psi, dry (scfm)")
            + ". Isothermal flow with Colebrook"
            + " friction;"
            + " the program prints the working of every branch."
            + NetworkWords.checked(sheet).map(checked -> " " + checked).orElse(""));
    out.append("</main>\n</body>\n</html>\n");
  }

  private void drops(NetworkSheet sheet) {
    element("h2", "At the drops");
    out.append("<table>\n<tr><th>drop</th><th>tool</th><th class=\"n\">needs</th>"
        + "<th class=\"n\">all running</th><th></th><th class=\"n\">air it gets and wants</th>"
        + "<th class=\"n\">19 of 20 times at least</th></tr>\n<tr class=\"quiet\"><td></td><td></td>"
        + "<td class=\"n\">bar / psi (g)</td><td class=\"n\">bar / psi (g)</td><td></td>"
        + "<td class=\"n\">" + sheet.job().units().either("L/s ANR", "scfm")
        + "</td><td class=\"n\">bar / psi (g)</td></tr>\n");
    for (NetworkSheet.DropAnswer answer : sheet.drops()) {
      out.append(answer.isEnough() ? "<tr>" : "<tr class=\"unmet\">");
      cell(answer.drop().name(), false);
      cell(answer.drop().tool(), false);
      cell(both(answer.drop().needs().bar(), answer.drop().needs().psi()), true);
      cell(both(answer.flow().atTool().bar(), answer.flow().atTool().psi()), true);
      cell(answer.verdict(), false);
      cell(
          free(sheet, answer.flow().massFlow()) + " / "
              + free(sheet, answer.flow().wanted()),
          true);
      cell(answer.usual().map(usual -> both(usual.bar(), usual.psi())).orElse("never runs"), true);
      out.append("</tr>\n");
    }
    out.append("</table>\n");
  }

  private static String both(double bar, double psi) {
    return Amounts.fixed(bar, 2) + " / " + Amounts.fixed(psi, 0);
  }

  private static String free(NetworkSheet sheet, MassFlow flow) {
    return NetworkAmounts.number(sheet.amounts().flow(flow));
  }

  private void cell(String text, boolean number) {
    out.append(number ? "<td class=\"n\">" : "<td>").append(escaped(text)).append("</td>");
  }

  private void branches(NetworkSheet sheet) {
    element("h2", "On the way there, all tools running");
    out.append("<table>\n<tr><th>pipe or part</th><th>towards</th>"
        + "<th class=\"n\">air, " + sheet.job().units().either("L/s ANR", "scfm")
        + "</th><th class=\"n\">pressure loss, bar / psi</th><th class=\"n\">velocity and rule, "
        + sheet.job().units().either("m/s", "ft/s") + "</th></tr>\n");
    List<NetworkSheet.BranchAnswer> shown =
        sheet.branches().stream().filter(NetworkPage::isShown).toList();
    for (NetworkSheet.BranchAnswer branch : shown) {
      out.append(isMarked(branch) ? "<tr class=\"unmet\">" : "<tr>");
      cell(
          branch.flow().name()
              + (branch.flow().chokes() ? " (chokes)" : "")
              + (branch.flow().dead() ? " (dead leg)" : "")
              + (branch.flow().standsBy() ? " (stands by)" : "")
              + (branch.flow().shut() ? " (shut)" : ""),
          false);
      cell(branch.velocity().isPresent() && isMain(branch) ? branch.flow().to() : "", false);
      cell(free(sheet, branch.flow().massFlow()), true);
      cell(
          Amounts.fixed(branch.flow().drop().bar(), 2) + " / "
              + Amounts.fixed(branch.flow().drop().psi(), 1),
          true);
      cell(branch.velocity().map(velocity -> velocity(sheet, velocity)).orElse(""), true);
      out.append("</tr>\n");
    }
    out.append("</table>\n");
    int left = sheet.branches().size() - shown.size();
    if (left > 0) {
      out.append("<p class=\"quiet\">")
          .append(left + " drops and parts that each lose less than 0.2 bar are left out.")
          .append("</p>\n");
    }
  }

  private static boolean isMarked(NetworkSheet.BranchAnswer branch) {
    return branch.flow().chokes()
        || branch
            .velocity()
            .filter(velocity -> velocity.verdict() == VelocityVerdict.ABOVE)
            .isPresent();
  }

  private static boolean isMain(NetworkSheet.BranchAnswer branch) {
    return branch
        .velocity()
        .filter(velocity -> velocity.duty() != PipeDuty.BRANCH)
        .isPresent();
  }

  private static String velocity(NetworkSheet sheet, PipeVelocity velocity) {
    return (velocity.verdict() == VelocityVerdict.ABOVE ? "too fast: " : "")
        + NetworkAmounts.number(sheet.amounts().velocity(velocity.velocity())) + " / "
        + NetworkAmounts.number(sheet.amounts().velocity(velocity.duty().highest()));
  }

  /** Mains, what is marked, and what takes much; the rest would fill a second page. */
  private static boolean isShown(NetworkSheet.BranchAnswer branch) {
    return isMain(branch) || isMarked(branch) || branch.flow().drop().pascals() >= MUCH_PASCALS;
  }

  private void lists(NetworkSheet sheet) {
    element("h2", "What to change");
    if (sheet.improvements().isEmpty()) {
      element("p", NetworkWords.nothing(sheet));
    } else {
      out.append("<ol>\n");
      sheet.improvements().stream()
          .limit(MOST_IMPROVEMENTS)
          .forEach(improvement ->
              element("li", NetworkWords.sentence(sheet, improvement, "the weakest drop")));
      out.append("</ol>\n");
    }
    element("h2", "One main closed for repair, all tools running");
    out.append("<ul>\n");
    String may = sheet.closures().stream()
        .filter(NetworkSheet.Closure::serves)
        .map(NetworkSheet.Closure::pipe)
        .collect(Collectors.joining(", "));
    if (!may.isEmpty()) {
      element("li", "no drop falls short that did not before: " + may);
    }
    sheet.closures().stream()
        .filter(closure -> !closure.serves())
        .forEach(closure -> element("li", closure.pipe() + ": " + closure.answer()));
    out.append("</ul>\n");
  }
}
