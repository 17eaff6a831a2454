package org.airfit.jobsheet;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.airfit.plug.Identification;
import org.airfit.plug.PlugVerdict;
import org.airfit.plug.Provenance;
import org.airfit.safety.Caution;
import org.airfit.select.Finding;
import org.airfit.select.JobFindings;
import org.airfit.select.Proposal;
import org.airfit.select.RuleOutcome;
import org.airfit.working.UnitSystem;

/** What was found, what is open and what to beware of, as the sheet to hand over says it: short, and each once. */
final class PageFound {

  private PageFound() {}

  /** What was found. */
  static List<Answer> found(JobSheet sheet) {
    List<Answer> lines = new ArrayList<>();
    sheet.plug().ifPresent(plug -> lines.add(new Answer("Plug", plugIs(plug, sheet.units()))));
    sheet
        .socket()
        .ifPresent(socket -> lines.add(new Answer("Plug", "Not at hand: only a socket.")));
    sheet
        .thread()
        .ifPresent(thread -> lines.add(
            new Answer("Its thread", InWords.capital(thread.inWords(sheet.units())) + ".")));
    sheet
        .now()
        .ifPresent(now -> lines.add(new Answer(
            "Now",
            InWords.arrivesNow(sheet)
                + InWords.biggestRestriction(sheet)
                    .map(biggest -> " " + biggest)
                    .orElse("")
                + InWords.beyondTheModel(sheet))));
    lines.add(new Answer(
        "With new parts",
        sheet
            .selection()
            .map(selection -> selection.<String>fold(
                fitting -> InWords.arrives(fitting.best(), sheet) + InWords.beyondTheModel(sheet),
                nothing -> "Nothing in the catalogue fits. "
                    + String.join(" ", nothing.toGive(sheet.units()))
                    + InWords.beyondTheModel(sheet)))
            .orElse("Not chosen before the plug is known.")));
    sheet
        .hose()
        .ifPresent(hose ->
            lines.add(new Answer(hose.title(), String.join(" ", hose.sentences(sheet.units())))));
    sheet
        .receiver()
        .ifPresent(receiver ->
            lines.add(new Answer("Receiver", String.join(" ", receiver.sentences(sheet.units())))));
    proposal(sheet)
        .ifPresent(proposal ->
            InWords.findings(proposal, sheet, RuleOutcome.MET_WHILE_REGULATED).stream()
                .map(Finding::reason)
                .filter(reason -> InWords.cautions(sheet).stream()
                    .noneMatch(caution -> caution.text().contains(reason)))
                .forEach(reason -> lines.add(new Answer("Regulator", reason))));
    return lines;
  }

  /** The proposal that the sheet recommends; a near miss is none. */
  static Optional<Proposal> proposal(JobSheet sheet) {
    return sheet
        .selection()
        .flatMap(selection ->
            selection.fold(fitting -> Optional.of(fitting.best()), nothing -> Optional.empty()));
  }

  /** What a plug is, without its set. */
  static String plugIs(Identification plug, UnitSystem units) {
    String first = sentences(plug, units)[0];
    return switch (plug.verdict()) {
      case IDENTIFIED -> first;
      case CANDIDATE ->
        "Most likely " + first + ofItsSet(plug.weakestProvenance())
            + " Not proven: try the halves with the pressure off.";
      case AMBIGUOUS -> "Not settled: " + first;
      case NO_MATCH -> "None of those known here: " + first;
      case INSUFFICIENT_DATA -> first;
    };
  }

  /** Where its sizes come from, if that proves nothing. */
  private static String ofItsSet(Provenance weakest) {
    return weakest.canIdentify() ? "" : " The sizes it was compared with are " + weakest + ".";
  }

  /** What the answer says without its set: the first sentence, and what follows it. */
  private static String[] sentences(Identification plug, UnitSystem units) {
    String words = plug.inWords(units);
    String set = "the set \"" + plug.referenceSet().name() + "\"";
    int at = words.indexOf(set);
    int colon = at < 0 || plug.verdict() == PlugVerdict.INSUFFICIENT_DATA
        ? -2
        : words.indexOf(": ", at + set.length());
    String body = colon < 0 ? words : words.substring(colon + 2);
    int end = body.indexOf(". ");
    return end < 0
        ? new String[] {body, ""}
        : new String[] {body.substring(0, end + 1), body.substring(end + 2)};
  }

  /** What is still open of a plug, in sentences; empty where nothing is. */
  static String plugAsks(Identification plug, UnitSystem units) {
    return sentences(plug, units)[1];
  }

  /** What must be asked, measured or tried before all is settled, each once. */
  static List<String> open(JobSheet sheet) {
    Set<String> open = new LinkedHashSet<>();
    sheet
        .plug()
        .map(plug -> plugAsks(plug, sheet.units()))
        .filter(rest -> !rest.isBlank())
        .ifPresent(open::add);
    sheet.socket().ifPresent(socket -> socket.waysOut().forEach(way -> open.add(way.toString())));
    if (sheet.selection().isEmpty()) {
      JobFindings.of(sheet.requirement()).findings(sheet.units()).stream()
          .filter(finding -> finding.outcome() == RuleOutcome.OPEN)
          .forEach(finding -> open.add(finding.reason()));
    }
    proposal(sheet).ifPresent(proposal -> {
      InWords.findings(proposal, sheet, RuleOutcome.OPEN)
          .forEach(finding -> open.add(finding.reason()));
      open.addAll(InWords.bill(sheet, proposal).questions());
    });
    List<String> read = new ArrayList<>();
    InWords.readOtherwise(sheet).forEach(line -> read.add(line.answer()));
    read.stream().filter(remark -> remark.endsWith("?")).forEach(open::add);
    long remarks = read.stream().filter(remark -> !remark.endsWith("?")).count();
    if (remarks > 0) {
      open.add("Was the job read as it is meant? What it rests on has " + remarks
          + (remarks == 1 ? " remark" : " remarks") + " on that.");
    }
    return List.copyOf(open);
  }

  /** What a rule forbids or the parts do not meet, each once. */
  static List<String> wrong(JobSheet sheet) {
    Set<String> wrong = new LinkedHashSet<>();
    if (sheet.selection().isEmpty()) {
      JobFindings.of(sheet.requirement()).findings(sheet.units()).stream()
          .filter(finding -> finding.outcome() == RuleOutcome.UNMET)
          .forEach(finding -> wrong.add(finding.toString()));
    }
    proposal(sheet)
        .ifPresent(proposal -> InWords.findings(proposal, sheet, RuleOutcome.UNMET)
            .forEach(finding -> wrong.add(finding.toString())));
    return List.copyOf(wrong);
  }

  /**
   * The cautions for whoever fits the parts: to depressurise first, the one that defers to codes and makers last. Why
   * they apply here and what they rest on stands behind, and so does what speaks of the reference set.
   */
  static List<Answer> cautions(JobSheet sheet) {
    Set<Caution> ofTheSet = new LinkedHashSet<>();
    sheet.plug().map(Identification::cautions).ifPresent(ofTheSet::addAll);
    return InWords.cautions(sheet).stream()
        .filter(caution -> !(ofTheSet.contains(caution) && caution.title().equals("Reference set")))
        .map(caution -> new Answer(caution.title(), shortened(caution)))
        .toList();
  }

  private static String shortened(Caution caution) {
    String text = caution.demand();
    return caution.equals(Caution.MORE_SUPPLY_PRESSURE)
        ? text.substring(text.lastIndexOf(". ") + 2)
        : text;
  }
}
