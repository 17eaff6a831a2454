package org.airfit.jobsheet;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.airfit.plug.Identification;
import org.airfit.plug.PlugVerdict;
import org.airfit.plug.ReadingSlip;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.LengthUnit;
import org.airfit.quantity.ReferenceState;
import org.airfit.run.Run;
import org.airfit.run.RunResult;
import org.airfit.safety.Caution;
import org.airfit.select.Proposal;
import org.airfit.select.Selection;

/** The sentences of a job sheet that text and page share. */
final class InWords {

  private InWords() {}

  /** The whole sheet in a few lines, for somebody who reads no further. */
  static List<Answer> inShort(JobSheet sheet) {
    List<Answer> lines = new ArrayList<>();
    lines.add(new Answer(
        "Plug", sheet.plug().map(Identification::inWords).orElse("not at hand, only a socket")));
    sheet.thread().ifPresent(thread -> lines.add(new Answer("Its thread", thread.inWords())));
    sheet
        .now()
        .ifPresent(now -> lines.add(new Answer(
            "Now",
            arrives(now, sheet.requirement().least())
                + now.<String>fold(
                    delivered ->
                        " Biggest restriction: " + delivered.bottleneck().name() + ".",
                    starved -> ""))));
    lines.add(new Answer(
        "Recommended parts",
        sheet
            .selection()
            .map(selection -> selection.<String>fold(
                fitting -> arrives(fitting.best().result(), sheet.requirement().least()) + " "
                    + fitting.best().partsList().stream()
                        .filter(part -> !part.existing())
                        .map(part -> part.quantity() + " × " + part.part().id())
                        .collect(Collectors.joining(", ", "To buy: ", ""))
                    + fitting
                        .best()
                        .priceInWords()
                        .map(price -> "; together " + price)
                        .orElse("")
                    + ".",
                nothing -> "nothing in the catalogue fits: " + String.join(" ", nothing.toGive())))
            .orElse("not chosen before the plug is known")));
    return lines;
  }

  /** What arrives, against what is needed, in a sentence. */
  static String arrives(RunResult result, GaugePressure least) {
    return result.fold(
        delivered -> "At the tool " + Amounts.pressure(delivered.atToolGauge()) + ", needed "
            + Amounts.pressure(least) + ": "
            + (delivered.atToolGauge().compareTo(least) >= 0 ? "enough." : "too little."),
        starved -> "The tool starves: " + starved.element()
            + " does not let that air through. With the outlet wide open it" + " passes "
            + Amounts.flow(FreeAirFlow.from(starved.largest(), ReferenceState.ANR)) + ".");
  }

  /** What the run carries at the pressure the tool needs, against what the tool takes. */
  static String carries(JobSheet sheet, Run run) {
    String takes = sheet.job().toolName() + " takes "
        + Amounts.flow(sheet.requirement().demand()) + " of free air. ";
    String least = Amounts.pressure(sheet.requirement().least());
    return run.largestFlow(sheet.requirement().least())
        .map(most -> takes + "At " + least + " this run carries up to "
            + Amounts.flow(FreeAirFlow.from(most.massFlow(), ReferenceState.ANR)) + ".")
        .orElse(takes + "The supply itself stands below the " + least + " the tool needs.");
  }

  /**
   * What the plug may be, with its chance: the profiles, a profile with a slip in a reading, a near copy, none. The
   * chances of an identification hold for readings without a slip; here they leave room for the slips that are told.
   */
  static Map<String, Double> chances(Identification plug) {
    double slips = plug.slips().stream().mapToDouble(ReadingSlip::probability).sum();
    double right = Math.max(0.0, 1.0 - slips);
    Map<String, Double> chances = new LinkedHashMap<>();
    plug.candidates()
        .forEach(candidate ->
            chances.put(candidate.profile().displayName(), right * candidate.probability()));
    plug.slips()
        .forEach(slip -> chances.put(
            slip.profile().displayName() + ", with a slip: " + slip.kind().label(),
            slip.probability()));
    if (plug.expectsNearCopies()) {
      chances.put("a near copy of one", right * plug.nearCopyProbability());
    }
    chances.put("none of these", right * plug.elsewhereProbability());
    return chances;
  }

  /** What was taken for granted about the plug, and how the job file changes it. */
  static String takenForGranted(Identification plug) {
    String wear = plug.wearAllowance().metres() > 0.0
        ? "Wear of up to " + plug.wearAllowance().format(LengthUnit.MILLIMETRE)
            + " was allowed for (the job's \"worn\" says otherwise)"
        : "The plug was taken as new";
    return wear
        + (plug.expectsNearCopies()
            ? ". Near copies were taken to be about, unless the job says \"noNearCopies\"."
            : ". No near copies are about, as the job says.");
  }

  /** Whether the next reading is worth telling, though the answer stands already. */
  static boolean leavesDoubt(Identification plug) {
    return plug.verdict() == PlugVerdict.CANDIDATE
        && !plug.nextReadings().isEmpty()
        && plug.nextReadings().get(0).expectedDropBits() >= 0.01;
  }

  /** Every caution once, those of the plug first, the one that defers to codes and makers last. */
  static List<Caution> cautions(JobSheet sheet) {
    List<Caution> all = new ArrayList<>();
    sheet.plug().map(Identification::cautions).ifPresent(all::addAll);
    sheet.socket().ifPresent(socket -> all.addAll(socket.cautions()));
    sheet.now().ifPresent(now -> all.addAll(now.cautions()));
    sheet
        .selection()
        .ifPresent(selection -> selection.fold(
            fitting -> all.addAll(fitting.best().cautions()),
            nothing -> nothing.nearest().stream()
                .findFirst()
                .map(Proposal::cautions)
                .map(all::addAll)
                .orElse(false)));
    Map<String, Caution> once = new LinkedHashMap<>();
    all.forEach(caution -> once.putIfAbsent(caution.title(), caution));
    return List.copyOf(once.values());
  }

  /** The proposal to show: the best that fits, or the nearest miss. */
  static Optional<Proposal> shown(Selection selection) {
    return selection.fold(
        fitting -> Optional.of(fitting.best()),
        nothing -> nothing.nearest().stream().findFirst());
  }

  /** A sentence begins with a capital letter. */
  static String capital(String text) {
    return Character.toUpperCase(text.charAt(0)) + text.substring(1);
  }
}
