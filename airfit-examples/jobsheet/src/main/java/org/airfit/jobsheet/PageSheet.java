package org.airfit.jobsheet;

import java.util.List;
import java.util.Set;
import org.airfit.files.Printable;
import org.airfit.safety.Caution;
import org.airfit.select.Finding;
import org.airfit.select.Offer;
import org.airfit.select.Offers;
import org.airfit.select.RuleOutcome;
import org.airfit.select.Selection;
import org.airfit.working.UnitSystem;

/**
 * The job sheet as one HTML page that needs nothing but itself, to be read on a screen and printed on A4 or Letter.
 *
 * <p>The sheet to sign and hand over is its first printed side: answers, parts, what to ask, cautions. The reasons
 * follow from the second side on.
 */
public final class PageSheet {

  private static final String STYLE = """
      @page { margin: 11mm 14mm; }
      * { box-sizing: border-box; }
      body { font: 10.5pt/1.45 Georgia, "DejaVu Serif", serif; color: #1d2429; background: #fff; margin: 0; }
      main { max-width: 180mm; margin: 10mm auto; padding: 0 4mm; }
      header { border-bottom: 2.5pt solid #1d2429; padding-bottom: 3mm; margin-bottom: 5mm; }
      h1 { font-size: 19pt; line-height: 1.2; margin: 0 0 1mm; }
      h2 { font-size: 13pt; margin: 8mm 0 2mm; break-after: avoid; }
      p { margin: 0 0 2.5mm; }
      .answer { font-size: 12pt; border-left: 4pt solid #1d4e6b; padding: 1mm 0 1mm 4mm; margin: 0 0 4mm; }
      .quiet { color: #46525a; }
      table { border-collapse: collapse; width: 100%; margin: 0 0 4mm; font-size: 9.5pt; }
      th, td { text-align: left; vertical-align: top; padding: 1.2mm 3mm 1.2mm 0; border-bottom: 0.5pt solid #c6cdd1; }
      th { font-weight: bold; border-bottom: 1pt solid #1d2429; }
      td.n, th.n { text-align: right; white-space: nowrap; }
      td.nowrap { white-space: nowrap; }
      tr, figure, .caution { break-inside: avoid; }
      tr:first-child { break-after: avoid; }
      figure { margin: 0 0 4mm; }
      figcaption { font-size: 9.5pt; color: #46525a; }
      figure.chart svg { width: 100%; height: auto; }
      figure.scale { overflow-x: auto; }
      .beside { display: flex; flex-wrap: wrap; gap: 0 6mm; align-items: flex-start; }
      .beside > div { flex: 1 1 62mm; min-width: 0; }
      .beside > div + div { flex: 0 0 auto; max-width: 100%; }
      .beside figcaption { max-width: 100mm; }
      .beside ul { padding-left: 5mm; font-size: 9.5pt; }
      table.short { font-size: 10.5pt; border: 1pt solid #1d2429; margin-bottom: 6mm; }
      table.short th { border: 0; white-space: nowrap; padding: 1.2mm 4mm; }
      table.short td { border: 0; }
      .unmet, .total td { font-weight: bold; }
      .caution { margin: 0 0 2.5mm; }
      .caution cite { color: #46525a; font-size: 8.5pt; font-style: normal; }
      .before { border: 1pt solid #1d2429; padding: 3mm 4mm 1mm; margin-top: 8mm; }
      .before h2 { margin-top: 0; }
      pre { font: 8pt/1.4 "DejaVu Sans Mono", Menlo, Consolas, monospace; margin: 0; }
      pre { white-space: pre-wrap; overflow-wrap: anywhere; }
      footer { border-top: 0.5pt solid #1d2429; margin-top: 3mm; padding-top: 1mm; font-size: 8pt; color: #46525a; }
      .sheet { font-size: 9pt; line-height: 1.28; }
      .sheet h2 { font-size: 11pt; margin: 3mm 0 0.8mm; }
      .sheet table { font-size: 8.5pt; margin-bottom: 2mm; }
      .sheet th, .sheet td { padding: 0.4mm 3mm 0.4mm 0; }
      .sheet table.short { font-size: 9.5pt; }
      .sheet table.short th { padding: 0.8mm 4mm; }
      .sheet ul { margin: 0 0 2mm; padding-left: 5mm; }
      .sheet .before { padding: 1.5mm 3mm 0.3mm; margin-top: 3mm; }
      .sheet .before h2 { margin-top: 0; }
      .sheet .caution { margin-bottom: 0.7mm; font-size: 7.8pt; line-height: 1.24; }
      .sheet .caution cite { font-size: 7pt; }
      .behind { break-before: page; border-top: 2.5pt solid #1d2429; margin-top: 10mm; padding-top: 3mm; }
      @media print {
        main { margin: 0 auto; padding: 0; }
        h1 { font-size: 16pt; }
        header { padding-bottom: 2mm; margin-bottom: 3mm; }
        .behind { border: 0; margin: 0; padding: 0; }
      }
      """;

  private final StringBuilder out = new StringBuilder();

  private PageSheet() {}

  /**
   * Writes the page.
   *
   * @param sheet what is answered
   * @return one HTML file that needs no other
   */
  public static String of(JobSheet sheet) {
    if (sheet.refusal().isPresent()) {
      return RefusalSheet.page(sheet.refusal().get());
    }
    PageSheet page = new PageSheet();
    page.write(sheet);
    return Printable.lines(page.out.toString());
  }

  private void element(String tag, String text) {
    Html.element(out, tag, text);
  }

  private void write(JobSheet sheet) {
    Html.head(
        out,
        "Job sheet: " + sheet.job().title(),
        STYLE,
        sheet.job().title(),
        "Job sheet for " + sheet.job().customer());
    out.append("<section class=\"sheet\">\n");
    inShort(sheet);
    order(sheet);
    cautions(sheet);
    element(
        "footer",
        "Parts from " + sheet.job().catalogue().name() + ". Pressures stand above an atmosphere of "
            + sheet.units().say(sheet.job().atmosphere()) + "; free air is counted "
            + sheet
                .units()
                .either(
                    "at 20 °C, 1 bar and 65 % humidity, marked ANR (in brackets at 60 °F and 14.7 psia)",
                    "at 60 °F and 14.7 psia (in brackets, marked ANR, at 20 °C, 1 bar and 65 % humidity)")
            + ", unless marked otherwise. Told in " + sheet.job().units().inWords()
            + " The sides that follow show what this rests on.");
    out.append("</section>\n<section class=\"behind\">\n");
    PageReasons.write(sheet, out);
    out.append("</section>\n</main>\n</body>\n</html>\n");
  }

  private void inShort(JobSheet sheet) {
    out.append("<table class=\"short\">\n");
    for (Answer line : InWords.inShort(sheet)) {
      out.append("<tr><th>").append(Html.escaped(line.what())).append("</th><td>");
      out.append(Html.escaped(InWords.capital(line.answer()))).append("</td></tr>\n");
    }
    out.append("</table>\n");
  }

  /** What to buy, what to ask and what is not right: all that someone at the counter needs. */
  private void order(JobSheet sheet) {
    if (sheet.selection().isEmpty()) {
      return;
    }
    Selection selection = sheet.selection().get();
    boolean fits = selection.fold(fitting -> true, nothing -> false);
    InWords.shown(selection).ifPresent(proposal -> {
      element("h2", fits ? "Recommended parts" : "The nearest miss, not to be sold as it is");
      BillPage.write(out, InWords.bill(sheet, proposal), proposal);
      sentences("Not right with it:", InWords.findings(proposal, sheet, RuleOutcome.UNMET));
      sentences("Still to be asked:", InWords.findings(proposal, sheet, RuleOutcome.OPEN));
    });
    sheet.offers().ifPresent(offers -> offers(offers, sheet.units()));
  }

  /** For the customer: what the shop earns stands on the sheet for the terminal alone. */
  private void offers(Offers offers, UnitSystem units) {
    List<Offer> shown = offers.offers().stream()
        .filter(offer -> !offer.aims().equals(Set.of(Offer.Aim.MOST_MARGIN)))
        .toList();
    element("h2", "Offers");
    out.append("<ul>\n");
    shown.forEach(offer -> element("li", InWords.offer(offer)));
    out.append("</ul>\n");
    offers.remarks(units).stream()
        .filter(remark -> !remark.contains("margin"))
        .forEach(remark -> element("p", remark));
  }

  private void sentences(String heading, List<Finding> findings) {
    if (findings.isEmpty()) {
      return;
    }
    element("p", heading);
    out.append("<ul>\n");
    findings.forEach(finding -> element("li", finding.reason()));
    out.append("</ul>\n");
  }

  private void cautions(JobSheet sheet) {
    out.append("<section class=\"before\">\n");
    element("h2", "Before anyone connects this");
    for (Caution caution : InWords.cautions(sheet)) {
      out.append("<p class=\"caution\"><strong>").append(Html.escaped(caution.title()));
      out.append(".</strong> ").append(Html.escaped(caution.text()));
      out.append(" <cite>")
          .append(Html.escaped(caution.source().toString()))
          .append("</cite></p>\n");
    }
    out.append("</section>\n");
  }
}
