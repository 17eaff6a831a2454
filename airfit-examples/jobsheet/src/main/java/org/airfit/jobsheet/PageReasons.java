package org.airfit.jobsheet;

import java.util.ArrayList;
import java.util.List;
import org.airfit.drawing.PlugDrawing;
import org.airfit.plug.Identification;
import org.airfit.plug.PlugProfile;
import org.airfit.plug.ProfileCandidate;
import org.airfit.plug.Residual;
import org.airfit.run.ElementLoss;
import org.airfit.run.RunResult;
import org.airfit.select.Finding;
import org.airfit.select.Proposal;
import org.airfit.select.RuleOutcome;
import org.airfit.select.Selection;
import org.airfit.working.UnitSystem;

/** The sides of the page behind the first: what its answers rest on, from the readings to the working. */
final class PageReasons {

  private final StringBuilder out;

  private PageReasons(StringBuilder out) {
    this.out = out;
  }

  static void write(JobSheet sheet, StringBuilder out) {
    PageReasons reasons = new PageReasons(out);
    reasons.plug(sheet);
    reasons.thread(sheet);
    reasons.now(sheet);
    reasons.parts(sheet);
    reasons.working(sheet);
  }

  private void element(String tag, String text) {
    Html.element(out, tag, text);
  }

  private void plug(JobSheet sheet) {
    if (sheet.job().atHand().isEmpty()) {
      return;
    }
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
    element("p class=\"answer\"", plug.inWords(sheet.units()));
    out.append("<div class=\"beside\">\n<div>\n");
    sheet
        .job()
        .atHand()
        .ifPresent(hand -> element("p class=\"quiet\"", "It is from: " + hand.where() + "."));
    out.append("<table>\n<tr><th>it may be</th><th class=\"n\">chance</th></tr>\n");
    InWords.chances(plug).forEach((what, chance) -> row(what, Amounts.percent(chance)));
    out.append("</table>\n");
    element("p class=\"quiet\"", InWords.takenForGranted(plug, sheet.units()));
    ProfileCandidate best = plug.candidates().get(0);
    if (!best.residuals().isEmpty()) {
      element("p", "How the readings lie to " + best.profile().displayName() + ":");
      out.append("<ul>\n");
      for (Residual residual : best.residuals()) {
        element("li", residual.inWords(sheet.units()) + ".");
      }
      out.append("</ul>\n");
    }
    if (InWords.leavesDoubt(plug)) {
      element("p", "To be surer: " + plug.nextReadings().get(0).inWords());
    }
    out.append("</div>\n<div>\n");
    String mark = sheet.units().either("50 mm", "2 in");
    drawn(plug).stream()
        .filter(profile -> PlugDrawing.missing(profile).isEmpty())
        .forEach(profile -> {
          out.append("<figure class=\"scale\">\n")
              .append(PlugDrawing.of(profile, sheet.units()).svg());
          element(
              "figcaption",
              profile.displayName()
                  + " to true scale. Print at 100 % and lay a rule on the " + mark
                  + " mark: if it is not " + mark
                  + ", do not"
                  + " hold a plug against it.");
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
    out.append("<tr><td>").append(Html.escaped(what)).append("</td><td class=\"n\">");
    out.append(Html.escaped(number)).append("</td></tr>\n");
  }

  private void thread(JobSheet sheet) {
    sheet.thread().ifPresent(thread -> {
      element("h2", "Its thread");
      element("p class=\"answer\"", InWords.capital(thread.inWords(sheet.units())) + ".");
      thread.cautions().forEach(caution -> element("p", caution.text()));
      element("p class=\"quiet\"", "Read: " + thread.readings().inWords(sheet.units()) + ".");
    });
  }

  private void now(JobSheet sheet) {
    sheet.now().ifPresent(now -> {
      element("h2", "The air now");
      element("p class=\"answer\"", InWords.arrives(now, sheet));
      sheet.job().now().ifPresent(run -> element("p", InWords.carries(sheet, run)));
      now.fold(
          delivered -> {
            element("p", "Biggest restriction: " + delivered.bottleneck().name() + ".");
            return delivered;
          },
          starved -> starved);
      InWords.widerHose(sheet, now).ifPresent(wider -> element("p", wider));
      chart(sheet, "Now", now);
      shares(now, sheet.units());
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
        sheet.requirement().least(),
        sheet.units());
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

  private void shares(RunResult result, UnitSystem units) {
    List<ElementLoss> shares = result.fold(RunResult.Delivered::shares, RunResult.Starved::before);
    out.append("<table>\n<tr><th>where pressure is lost</th><th class=\"n\">pressure loss</th>"
        + "<th class=\"n\">share</th><th class=\"n\">gain without it</th></tr>\n");
    for (ElementLoss share : shares) {
      out.append("<tr><td>").append(Html.escaped(share.name()));
      share
          .warnings(units)
          .forEach(warning -> out.append("<br><span class=\"quiet\">")
              .append(Html.escaped(warning))
              .append("</span>"));
      out.append("</td><td class=\"n\">").append(units.say(share.drop()));
      out.append("</td><td class=\"n\">").append(Amounts.share(share.fraction()));
      out.append("</td><td class=\"n\">").append(units.say(share.gain())).append("</td></tr>\n");
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
          element("p class=\"answer\"", InWords.arrives(fitting.best(), sheet));
          element("p", InWords.carries(sheet, fitting.best()));
          element("p", fitting.whyBest(sheet.units()));
          return fitting;
        },
        nothing -> {
          element(
              "p class=\"answer\"", "Nothing in the catalogue fits. What would have to change:");
          out.append("<ul>\n");
          nothing.toGive(sheet.units()).forEach(give -> element("li", give));
          out.append("</ul>\n");
          element("p", InWords.NEAREST);
          return nothing;
        });
    InWords.shown(selection).ifPresent(proposal -> proposal(sheet, proposal));
  }

  private void proposal(JobSheet sheet, Proposal proposal) {
    for (Proposal way : proposal.toEachTool()) {
      String to = way.requirement().way().map(name -> ", " + name).orElse("");
      chart(sheet, "With these parts" + to, way.result());
      shares(way.result(), sheet.units());
    }
    out.append("<table>\n<tr><th>rule</th><th>verdict</th><th>why</th><th>rests on</th></tr>\n");
    for (Finding finding : proposal.findings(sheet.units())) {
      if (finding.outcome() == RuleOutcome.DOES_NOT_APPLY) {
        continue;
      }
      out.append(finding.outcome() == RuleOutcome.UNMET ? "<tr class=\"unmet\"><td>" : "<tr><td>");
      out.append(Html.escaped(finding.rule().title())).append("</td><td class=\"nowrap\">");
      out.append(
          switch (finding.outcome()) {
            case MET -> "met";
            case MET_WHILE_REGULATED -> finding.outcome().toString();
            case UNMET -> "not met";
            case OPEN -> "ask";
            case DOES_NOT_APPLY -> "";
          });
      out.append("</td><td>").append(Html.escaped(finding.reason()));
      out.append("</td><td class=\"quiet\">")
          .append(Html.escaped(finding.source().toString()));
      out.append("</td></tr>\n");
    }
    out.append("</table>\n");
  }

  private void working(JobSheet sheet) {
    element("h2", "The working");
    out.append("<pre>");
    sheet.plug().ifPresent(plug -> pre(plug.working(sheet.units()).toText()));
    sheet.thread().ifPresent(thread -> pre(thread.working(sheet.units()).toText()));
    sheet.now().ifPresent(now -> pre("Now\n" + now.working(sheet.units()).toText()));
    sheet
        .selection()
        .ifPresent(selection -> pre(selection.working(sheet.units()).toText()));
    sheet
        .receiver()
        .flatMap(ReceiverAnswer::use)
        .ifPresent(use -> pre(use.working(sheet.units()).toText()));
    out.append("</pre>\n");
  }

  private void pre(String text) {
    out.append(Html.escaped(text)).append('\n');
  }
}
