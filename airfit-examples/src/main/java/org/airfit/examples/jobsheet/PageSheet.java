package org.airfit.examples.jobsheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.airfit.drawing.PlugDrawing;
import org.airfit.plug.Identification;
import org.airfit.plug.PlugProfile;
import org.airfit.plug.ProfileCandidate;
import org.airfit.plug.Residual;
import org.airfit.quantity.Money;
import org.airfit.quantity.PressureUnit;
import org.airfit.run.ElementLoss;
import org.airfit.run.RunResult;
import org.airfit.safety.Caution;
import org.airfit.select.Finding;
import org.airfit.select.PartsLine;
import org.airfit.select.Proposal;
import org.airfit.select.RuleOutcome;
import org.airfit.select.Selection;

/**
 * The job sheet as one HTML page that needs nothing but itself, to be read on a screen and printed on A4 or Letter.
 *
 * <p>The sheet to sign and hand over is its first printed side: answers, parts, what to ask, cautions. What they rest on follows from the second side on.
 */
final class PageSheet {

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
      pre { font: 8pt/1.4 "DejaVu Sans Mono", Menlo, Consolas, monospace; white-space: pre-wrap; overflow-wrap: anywhere; margin: 0; }
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
      @media print { main { margin: 0 auto; padding: 0; } h1 { font-size: 16pt; } header { padding-bottom: 2mm; margin-bottom: 3mm; } .behind { border: 0; margin: 0; padding: 0; } }
      """;

  private final StringBuilder out = new StringBuilder();

  private PageSheet() {}

  static String of(JobSheet sheet) {
    PageSheet page = new PageSheet();
    page.write(sheet);
    return page.out.toString();
  }

  static String escaped(String text) {
    return text.replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\"", "&quot;");
  }

  private void element(String tag, String text) {
    element(out, tag, text);
  }

  static void element(StringBuilder out, String tag, String text) {
    out.append('<').append(tag).append('>').append(escaped(text)).append("</");
    out.append(tag.replaceFirst(" .*", "")).append(">\n");
  }

  /** Begins a page that needs nothing but itself. */
  static void head(StringBuilder out, String title, String style, String heading, String forWhom) {
    out.append("<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n");
    out.append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n");
    element(out, "title", title);
    out.append("<style>\n").append(style).append("</style>\n</head>\n<body>\n<main>\n<header>\n");
    element(out, "h1", heading);
    element(out, "div class=\"quiet\"", forWhom);
    out.append("</header>\n");
  }

  private void write(JobSheet sheet) {
    head(
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
            + sheet.job().atmosphere().format(PressureUnit.BAR)
            + "; free air is counted at 20 °C, 1 bar and 65 % humidity (ANR), in brackets at 60 °F and 14.7 psia. The sides that follow show what this rests on.");
    out.append("</section>\n<section class=\"behind\">\n");
    plug(sheet);
    thread(sheet);
    now(sheet);
    parts(sheet);
    working(sheet);
    out.append("</section>\n</main>\n</body>\n</html>\n");
  }

  private void inShort(JobSheet sheet) {
    out.append("<table class=\"short\">\n");
    for (InWords.Line line : InWords.inShort(sheet)) {
      out.append("<tr><th>").append(escaped(line.what())).append("</th><td>");
      out.append(escaped(capital(line.answer()))).append("</td></tr>\n");
    }
    out.append("</table>\n");
  }

  private void plug(JobSheet sheet) {
    element("h2", "The plug at hand");
    sheet.socket().ifPresent(socket -> {
      element("p class=\"answer\"", socket.reason());
      out.append("<ol>\n");
      socket.waysOut().forEach(way -> element("li", way.toString()));
      out.append("</ol>\n");
    });
    sheet.plug().ifPresent(plug -> identified(sheet, plug));
  }

  private void identified(JobSheet sheet, Identification plug) {
    element("p class=\"answer\"", plug.inWords());
    out.append("<div class=\"beside\">\n<div>\n");
    element("p class=\"quiet\"", "It is from: " + sheet.job().plugWhere() + ".");
    out.append("<table>\n<tr><th>it may be</th><th class=\"n\">chance</th></tr>\n");
    for (ProfileCandidate candidate : plug.ranking()) {
      row(candidate.profile().displayName(), InWords.percent(candidate.probability()));
    }
    row("none of these", InWords.percent(plug.unknownProbability()));
    out.append("</table>\n");
    ProfileCandidate best = plug.ranking().get(0);
    if (!best.residuals().isEmpty()) {
      element("p", "How the readings lie to " + best.profile().displayName() + ":");
      out.append("<ul>\n");
      for (Residual residual : best.residuals()) {
        element("li", residual.inWords() + ".");
      }
      out.append("</ul>\n");
    }
    if (InWords.leavesDoubt(plug)) {
      element("p", "To be surer: " + plug.nextReadings().get(0).inWords());
    }
    out.append("</div>\n<div>\n");
    drawn(plug).stream()
        .filter(profile -> PlugDrawing.missing(profile).isEmpty())
        .forEach(profile -> {
          out.append("<figure class=\"scale\">\n")
              .append(PlugDrawing.of(profile).svg());
          element(
              "figcaption",
              profile.displayName()
                  + " to true scale. Print at 100 % and lay a rule on the 50 mm mark: if it is not 50 mm, do not hold a plug against it.");
          out.append("</figure>\n");
        });
    out.append("</div>\n</div>\n");
  }

  /** What is worth holding the plug against: the one it is, or all it may be. */
  private static List<PlugProfile> drawn(Identification plug) {
    return plug.profile()
        .map(List::of)
        .orElseGet(() -> plug.likely().stream().map(ProfileCandidate::profile).toList());
  }

  private void row(String what, String number) {
    out.append("<tr><td>").append(escaped(what)).append("</td><td class=\"n\">");
    out.append(escaped(number)).append("</td></tr>\n");
  }

  private void thread(JobSheet sheet) {
    sheet.thread().ifPresent(thread -> {
      element("h2", "Its thread");
      element("p class=\"answer\"", capital(thread.inWords()) + ".");
      element("p class=\"quiet\"", "Read: " + thread.readings() + ".");
    });
  }

  private static String capital(String text) {
    return Character.toUpperCase(text.charAt(0)) + text.substring(1);
  }

  private void now(JobSheet sheet) {
    sheet.now().ifPresent(now -> {
      element("h2", "The air as things stand");
      element("p class=\"answer\"", InWords.arrives(now, sheet.requirement().least()));
      sheet.job().now().ifPresent(run -> element("p", InWords.carries(sheet, run)));
      now.fold(
          delivered -> {
            element("p", "Most is gained at: " + delivered.bottleneck().name() + ".");
            return delivered;
          },
          starved -> starved);
      chart(sheet, "As things stand", now);
      shares(now);
    });
  }

  private void chart(JobSheet sheet, String title, RunResult result) {
    List<RunResult> all = new ArrayList<>();
    sheet.now().ifPresent(all::add);
    sheet.selection().flatMap(InWords::shown).map(Proposal::result).ifPresent(all::add);
    PressureChart.Scale scale = PressureChart.Scale.of(
        all,
        sheet.job().supply().pressure(),
        sheet.job().atmosphere(),
        sheet.requirement().least());
    out.append("<figure class=\"chart\">\n");
    out.append(PressureChart.of(
        title + ": pressure from the supply to the tool",
        result,
        sheet.job().atmosphere(),
        sheet.requirement().least(),
        scale));
    element("figcaption", title + ": the pressure from the supply down to the tool.");
    out.append("</figure>\n");
  }

  private void shares(RunResult result) {
    List<ElementLoss> shares = result.fold(RunResult.Delivered::shares, RunResult.Starved::before);
    out.append("<table>\n<tr><th>where the pressure goes</th><th class=\"n\">takes</th>"
        + "<th class=\"n\">of the loss</th><th class=\"n\">gain without it</th></tr>\n");
    for (ElementLoss share : shares) {
      out.append("<tr><td>").append(escaped(share.name()));
      share
          .warnings()
          .forEach(warning ->
              out.append("<br><span class=\"quiet\">").append(escaped(warning)).append("</span>"));
      out.append("</td><td class=\"n\">").append(InWords.drop(share.drop()));
      out.append("</td><td class=\"n\">").append(InWords.share(share.fraction()));
      out.append("</td><td class=\"n\">").append(InWords.drop(share.gain())).append("</td></tr>\n");
    }
    out.append("</table>\n");
  }

  private void parts(JobSheet sheet) {
    element("h2", "Why these parts");
    if (sheet.selection().isEmpty()) {
      element("p class=\"answer\"", "Not chosen yet: the profile must be known first.");
      return;
    }
    Selection selection = sheet.selection().get();
    selection.fold(
        fitting -> {
          element(
              "p class=\"answer\"",
              InWords.arrives(fitting.best().result(), sheet.requirement().least()));
          element("p", InWords.carries(sheet, fitting.best().run()));
          element("p", fitting.whyBest());
          return fitting;
        },
        nothing -> {
          element("p class=\"answer\"", "Nothing in the catalogue fits. What would have to give:");
          out.append("<ul>\n");
          nothing.toGive().forEach(give -> element("li", give));
          out.append("</ul>\n");
          return nothing;
        });
    InWords.shown(selection).ifPresent(proposal -> proposal(sheet, proposal));
  }

  /** What to buy, what to ask and what is not right: all that someone at the counter needs. */
  private void order(JobSheet sheet) {
    if (sheet.selection().isEmpty()) {
      return;
    }
    Selection selection = sheet.selection().get();
    boolean fits = selection.fold(fitting -> true, nothing -> false);
    InWords.shown(selection).ifPresent(proposal -> {
      element("h2", fits ? "The parts" : "The nearest miss, not to be sold as it is");
      list(proposal);
      sentences("Not right with it:", proposal.unmet());
      sentences("Still to be asked:", proposal.open());
    });
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

  private void list(Proposal proposal) {
    boolean priced = proposal.price().isPresent();
    out.append("<table>\n<tr><th class=\"n\">pieces</th><th>part</th><th>what</th><th>why</th>")
        .append(priced ? "<th class=\"n\">each</th><th class=\"n\">price</th>" : "")
        .append("</tr>\n");
    for (PartsLine part : proposal.partsList()) {
      out.append("<tr><td class=\"n\">")
          .append(part.existing() ? "there" : Integer.toString(part.quantity()));
      out.append("</td><td class=\"nowrap\">").append(escaped(part.part().id()));
      out.append("</td><td>").append(escaped(part.part().name()));
      out.append("</td><td>").append(escaped(part.reason()));
      if (priced) {
        out.append("</td><td class=\"n\">").append(money(part, part.priceEach()));
        out.append("</td><td class=\"n\">").append(money(part, part.price()));
      }
      out.append("</td></tr>\n");
    }
    proposal
        .price()
        .ifPresent(total -> out.append("<tr class=\"total\"><td></td><td></td><td></td><td>")
            .append(escaped(
                proposal.unpriced().isEmpty()
                    ? "together"
                    : "together, as far as prices are known"))
            .append("</td><td></td><td class=\"n\">")
            .append(escaped(total.format(2)))
            .append("</td></tr>\n"));
    out.append("</table>\n");
  }

  private void proposal(JobSheet sheet, Proposal proposal) {
    chart(sheet, "With these parts", proposal.result());
    shares(proposal.result());
    out.append("<table>\n<tr><th>rule</th><th>verdict</th><th>why</th><th>rests on</th></tr>\n");
    for (Finding finding : proposal.findings()) {
      if (finding.outcome() == RuleOutcome.DOES_NOT_APPLY) {
        continue;
      }
      out.append(
          finding.outcome() == RuleOutcome.UNMET ? "<tr class=\"unmet\"><td>" : "<tr><td>");
      out.append(escaped(finding.rule().title())).append("</td><td class=\"nowrap\">");
      out.append(
          switch (finding.outcome()) {
            case MET -> "met";
            case UNMET -> "not met";
            case OPEN -> "ask";
            case DOES_NOT_APPLY -> "";
          });
      out.append("</td><td>").append(escaped(finding.reason()));
      out.append("</td><td class=\"quiet\">").append(escaped(finding.source().toString()));
      out.append("</td></tr>\n");
    }
    out.append("</table>\n");
  }

  /** Nothing for what is there already, a question mark for what nobody told. */
  private static String money(PartsLine part, Optional<Money> amount) {
    return amount.map(known -> escaped(known.format(2))).orElse(part.existing() ? "" : "?");
  }

  private void cautions(JobSheet sheet) {
    out.append("<section class=\"before\">\n");
    element("h2", "Before anyone connects this");
    for (Caution caution : InWords.cautions(sheet)) {
      out.append("<p class=\"caution\"><strong>").append(escaped(caution.title()));
      out.append(".</strong> ").append(escaped(caution.text()));
      out.append(" <cite>").append(escaped(caution.source().toString())).append("</cite></p>\n");
    }
    out.append("</section>\n");
  }

  private void working(JobSheet sheet) {
    element("h2", "The working");
    out.append("<pre>");
    sheet.plug().ifPresent(plug -> pre(plug.working().toText()));
    sheet.thread().ifPresent(thread -> pre(thread.working().toText()));
    sheet.now().ifPresent(now -> pre("As things stand\n" + now.working().toText()));
    sheet.selection().ifPresent(selection -> pre(selection.working().toText()));
    out.append("</pre>\n");
  }

  private void pre(String text) {
    out.append(escaped(text)).append('\n');
  }
}
