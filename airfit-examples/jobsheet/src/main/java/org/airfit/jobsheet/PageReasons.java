package org.airfit.jobsheet;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import org.airfit.drawing.PlugDrawing;
import org.airfit.files.Printable;
import org.airfit.joint.Seal;
import org.airfit.plug.Identification;
import org.airfit.plug.PlugProfile;
import org.airfit.plug.ProfileCandidate;
import org.airfit.plug.Residual;
import org.airfit.run.ElementLoss;
import org.airfit.run.RunResult;
import org.airfit.safety.Caution;
import org.airfit.select.Finding;
import org.airfit.select.Joint;
import org.airfit.select.Offer;
import org.airfit.select.Part;
import org.airfit.select.Proposal;
import org.airfit.select.RuleOutcome;
import org.airfit.select.Selection;
import org.airfit.working.UnitSystem;
import org.airfit.working.Working;

/**
 * What the answers of a job sheet rest on, from the readings to the working, as a page of its own: for whoever checks
 * it. Its printed sides carry the job and their number.
 */
public final class PageReasons {

  private static final String STYLE = """
      h1 { border-bottom: 3px solid var(--line); padding-bottom: 6px; }
      .answer { font-size: 1.1em; border-left: 5px solid var(--run); padding: 2px 0 2px 12px; margin: 0 0 10px; }
      .beside { display: flex; flex-wrap: wrap; gap: 0 24px; align-items: flex-start; }
      .beside > div { flex: 1 1 240px; min-width: 0; }
      .beside > div + div { flex: 0 0 auto; max-width: 100%; }
      .beside figcaption { max-width: 100mm; }
      dl.rules { margin: 0; }
      dl.rules div { break-inside: avoid; border-bottom: 1px solid var(--hair); padding: 3px 0 4px; }
      dl.rules dt { font-weight: bold; }
      dl.rules dd { margin: 0; }
      .unmet dd { font-weight: bold; }
      .l:target, .l:target + .l, li:target { background: var(--tint); outline: 2px solid var(--run); }
      @media print { pre a, td a { text-decoration: none; } }
      """;

  private final StringBuilder out = new StringBuilder();
  private final WorkingLinks links;

  private PageReasons(WorkingLinks links) {
    this.links = links;
  }

  /**
   * Writes the page.
   *
   * @param sheet what is answered
   * @return one HTML file that needs no other
   */
  public static String of(JobSheet sheet) {
    return of(sheet, Letterhead.BLANK);
  }

  /**
   * Writes the page.
   *
   * @param sheet what is answered
   * @param head the number of the job and the date
   * @return one HTML file that needs no other
   */
  public static String of(JobSheet sheet, Letterhead head) {
    Objects.requireNonNull(sheet, "sheet");
    Objects.requireNonNull(head, "head");
    if (sheet.refusal().isPresent()) {
      return Printable.lines(RefusalSheet.page(sheet.refusal().get(), head));
    }
    PageReasons reasons = new PageReasons(new WorkingLinks(sheet.units()));
    reasons.write(sheet, head);
    return Printable.lines(reasons.out.toString());
  }

  private void write(JobSheet sheet, Letterhead head) {
    String title = sheet.job().title();
    Html.head(
        out,
        "What the job sheet rests on: " + title,
        PageStyle.of(head.footer(title) + ", what it rests on", STYLE));
    out.append("<header class=\"top\">\n");
    element("h1", "What the job sheet rests on");
    element(
        "p",
        title + ". For " + sheet.job().customer()
            + head.number().map(number -> ". Job no. " + number).orElse("")
            + head.date().map(date -> ". " + date).orElse("") + ".");
    element(
        "p class=\"soft screen\"",
        "A pressure loss leads to its equation in the working, and an equation to its source.");
    out.append("</header>\n<main>\n");
    String working = working(sheet);
    plug(sheet);
    thread(sheet);
    now(sheet);
    parts(sheet);
    cautions(sheet);
    taken(sheet);
    asRead(sheet);
    out.append(working).append(links.list());
    out.append("</main>\n</body>\n</html>\n");
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
        .ifPresent(hand -> element("p class=\"soft\"", "It is from: " + hand.where() + "."));
    out.append("<table>\n<thead><tr><th scope=\"col\">it may be</th>")
        .append("<th scope=\"col\" class=\"n\">chance</th></tr></thead>\n<tbody>\n");
    InWords.chances(plug).forEach((what, chance) -> row(what, Amounts.percent(chance)));
    out.append("</tbody>\n</table>\n");
    element("p class=\"soft\"", InWords.takenForGranted(plug, sheet.units()));
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
          out.append("<figure class=\"scale\" tabindex=\"0\">\n")
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
    out.append("<tr><th scope=\"row\">").append(Html.shown(what)).append("</th><td class=\"n\">");
    out.append(Html.escaped(number)).append("</td></tr>\n");
  }

  private void thread(JobSheet sheet) {
    sheet.thread().ifPresent(thread -> {
      element("h2", "Its thread");
      element("p class=\"answer\"", InWords.capital(thread.inWords(sheet.units())) + ".");
      thread.cautions().forEach(caution -> element("p", caution.text()));
      element("p class=\"soft\"", "Read: " + thread.readings().inWords(sheet.units()) + ".");
    });
  }

  private void now(JobSheet sheet) {
    sheet.now().ifPresent(now -> {
      element("h2", "The air now");
      element("p class=\"answer\"", InWords.arrivesNow(sheet));
      InWords.carriesNow(sheet).ifPresent(carries -> element("p", carries));
      InWords.biggestRestriction(sheet).ifPresent(biggest -> element("p", biggest));
      InWords.atWorstNow(sheet).ifPresent(atWorst -> element("p", atWorst));
      InWords.widerHose(sheet, now).ifPresent(wider -> element("p", wider));
      chart(sheet, "Now", now);
      shares(now, sheet);
    });
  }

  private void chart(JobSheet sheet, String title, RunResult result) {
    PressureChart.Scale scale = InWords.scale(sheet);
    out.append("<figure class=\"chart\">\n");
    out.append(PressureChart.of(
        title + ": pressure from the supply to the tool",
        result,
        sheet.job().atmosphere(),
        sheet.requirement().least(),
        scale));
    boolean isRegulated = PressureChart.shares(result).stream()
        .anyMatch(share -> share.regulated().pascals() > 0.0);
    element(
        "figcaption",
        title + ": the pressure from the supply down to the tool."
            + (isRegulated
                ? " A thin stroke is what a regulator takes down to what it is set to, which is no loss."
                : ""));
    out.append("</figure>\n");
  }

  private void shares(RunResult result, JobSheet sheet) {
    UnitSystem units = sheet.units();
    List<ElementLoss> shares = WorkingLinks.sharesOf(result);
    InWords.sharesOf(result, sheet).ifPresent(of -> element("p", of));
    if (shares.isEmpty()) {
      return;
    }
    out.append("<table>\n<thead><tr><th scope=\"col\">where pressure is lost</th>")
        .append(
            "<th scope=\"col\" class=\"n\">pressure<br>loss</th><th scope=\"col\" class=\"n\">share</th>")
        .append("<th scope=\"col\" class=\"n\">gain<br>without it</th></tr></thead>\n<tbody>\n");
    InWords.atSupply(result, sheet)
        .ifPresent(regulator -> out.append("<tr><th scope=\"row\">")
            .append(Html.shown(InWords.AT_SUPPLY))
            .append("<br><span class=\"soft\">")
            .append(Html.shown(regulator.note(units)))
            .append("</span></th><td class=\"n\">")
            .append(Html.escaped(units.say(regulator.lost())))
            .append("</td><td class=\"n\"></td><td class=\"n\"></td></tr>\n"));
    for (ElementLoss share : shares) {
      out.append("<tr><th scope=\"row\">").append(Html.shown(share.name()));
      List<String> notes = new ArrayList<>();
      InWords.regulated(share, sheet).ifPresent(notes::add);
      notes.addAll(share.warnings(units));
      notes.forEach(note ->
          out.append("<br><span class=\"soft\">").append(Html.shown(note)).append("</span>"));
      String lost = Html.escaped(units.say(share.lost()));
      out.append("</th><td class=\"n\">")
          .append(links
              .equationOf(share)
              .map(place -> "<a href=\"#" + place + "\">" + lost + "</a>")
              .orElse(lost));
      out.append("</td><td class=\"n\">").append(Html.escaped(Amounts.share(share.fraction())));
      out.append("</td><td class=\"n\">")
          .append(Html.escaped(units.say(share.gain())))
          .append("</td></tr>\n");
    }
    out.append("</tbody>\n</table>\n");
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
          if (!nothing.nearest().isEmpty()) {
            element("p", InWords.NEAREST);
          }
          return nothing;
        });
    JobSheet.shown(selection).ifPresent(proposal -> proposal(sheet, proposal));
  }

  private void proposal(JobSheet sheet, Proposal proposal) {
    BillPage.write(out, InWords.bill(sheet, proposal), proposal);
    for (Proposal way : proposal.toEachTool()) {
      String to = way.requirement().way().map(name -> ", " + name).orElse("");
      chart(sheet, "With these parts" + to, way.result());
      shares(way.result(), sheet);
    }
    joints(proposal);
    element("h3", "Rule by rule");
    out.append("<dl class=\"rules\">\n");
    for (Finding finding : proposal.findings(sheet.units())) {
      if (finding.outcome() == RuleOutcome.DOES_NOT_APPLY) {
        continue;
      }
      out.append(finding.outcome() == RuleOutcome.UNMET ? "<div class=\"unmet\">" : "<div>");
      element(
          "dt",
          finding.rule().title() + ": "
              + switch (finding.outcome()) {
                case MET -> "met";
                case MET_WHILE_REGULATED -> finding.outcomeInWords();
                case UNMET -> "not met";
                case OPEN -> "ask";
                case DOES_NOT_APPLY -> "";
              });
      element("dd", finding.reason());
      element("dd class=\"soft\"", finding.source().toString());
      out.append("</div>\n");
    }
    out.append("</dl>\n");
    sheet.offers().ifPresent(offers -> {
      element("h3", "The offers");
      out.append("<ul>\n");
      offers.offers().stream()
          .filter(offer -> !offer.aims().equals(Set.of(Offer.Aim.MOST_MARGIN)))
          .forEach(offer -> element("li", InWords.offer(offer)));
      out.append("</ul>\n");
      offers.remarks(sheet.units()).stream()
          .filter(remark -> !remark.contains("margin"))
          .forEach(remark -> element("p", remark));
    });
  }

  /** Every joint from the outlet to the tool, with both its ends and what stands between. */
  private void joints(Proposal proposal) {
    element("h3", "The joints, from the outlet to the tool");
    out.append("<table>\n<thead><tr><th scope=\"col\">joint</th><th scope=\"col\">between</th>")
        .append("<th scope=\"col\">kept tight by</th></tr></thead>\n<tbody>\n");
    String line = "";
    for (Joint joint : proposal.joints()) {
      String of = proposal.line(joint).orElse("");
      if (!of.equals(line)) {
        line = of;
        out.append("</tbody>\n<tbody>\n<tr><th scope=\"rowgroup\" colspan=\"3\">")
            .append(Html.shown(InWords.capital(line)))
            .append("</th></tr>\n");
      }
      String between =
          joint.adapters().stream().map(Part.Adapter::name).collect(Collectors.joining(", "));
      Set<String> seals = new LinkedHashSet<>();
      joint.matings().forEach(mating -> mating.seal().map(Seal::label).ifPresent(seals::add));
      out.append("<tr><th scope=\"row\">").append(Html.shown(BillPlaces.between(joint, line)));
      out.append("</th><td>").append(Html.shown(between.isEmpty() ? "nothing" : between));
      out.append("</td><td>")
          .append(
              joint.isSound() ? Html.shown(String.join(", ", seals)) : "they do not go together")
          .append("</td></tr>\n");
    }
    out.append("</tbody>\n</table>\n");
  }

  /** Every caution whole, with what it rests on. */
  private void cautions(JobSheet sheet) {
    element("h2", "The cautions, with what they rest on");
    for (Caution caution : InWords.cautions(sheet)) {
      out.append("<p><strong>").append(Html.shown(caution.title())).append(".</strong> ");
      out.append(Html.shown(caution.text())).append(" <span class=\"soft\">");
      out.append(Html.shown(caution.source().toString())).append("</span></p>\n");
    }
  }

  /** What was taken for what the ratings and names of parts do not tell, each part once. */
  private void taken(JobSheet sheet) {
    Map<String, String> taken = TakenForParts.of(sheet);
    if (taken.isEmpty()) {
      return;
    }
    element("h2", "What was taken for what the parts do not tell");
    out.append("<ul>\n");
    taken.forEach((part, what) -> element("li", part + ": " + what + "."));
    out.append("</ul>\n");
  }

  /** How the files were read. */
  private void asRead(JobSheet sheet) {
    element("h2", "How the files were read");
    out.append("<ul>\n");
    InWords.readOtherwise(sheet).forEach(line -> element("li", line.what() + ": " + line.answer()));
    element("li", "Parts from " + sheet.job().catalogue().name() + ".");
    element(
        "li",
        "Pressures stand above an atmosphere of "
            + sheet.units().say(sheet.job().atmosphere())
            + "; free air is counted "
            + sheet
                .units()
                .either(
                    "at 20 °C, 1 bar and 65 % humidity, marked ANR (in brackets at 60 °F and 14.7 psia)",
                    "at 60 °F and 14.7 psia (in brackets, marked ANR, at 20 °C, 1 bar and 65 % humidity)")
            + ", unless marked otherwise.");
    element("li", "Told in " + sheet.job().units().inWords());
    out.append("</ul>\n");
  }

  /** The workings, written before the tables whose numbers lead there. */
  private String working(JobSheet sheet) {
    sheet.now().ifPresent(links::expect);
    sheet
        .selection()
        .flatMap(JobSheet::shown)
        .ifPresent(best -> best.toEachTool().forEach(way -> links.expect(way.result())));
    StringBuilder below = new StringBuilder();
    Html.element(below, "h2", "The working");
    sheet.plug().ifPresent(plug -> pre(below, plug.working(sheet.units())));
    sheet.thread().ifPresent(thread -> pre(below, thread.working(sheet.units())));
    sheet.now().ifPresent(now -> {
      Html.element(below, "h3", "Now");
      pre(below, now.working(sheet.units()));
    });
    sheet.selection().ifPresent(selection -> pre(below, selection.working(sheet.units())));
    sheet
        .receiver()
        .flatMap(ReceiverAnswer::use)
        .ifPresent(use -> pre(below, use.working(sheet.units())));
    return below.toString();
  }

  private void pre(StringBuilder below, Working working) {
    below.append("<pre>").append(WorkingHtml.of(working, links)).append("</pre>\n");
  }
}
