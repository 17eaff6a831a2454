package org.airfit.jobsheet;

import java.util.List;
import java.util.Map;
import org.airfit.plug.Identification;
import org.airfit.plug.Residual;
import org.airfit.run.ElementLoss;
import org.airfit.run.RunResult;
import org.airfit.safety.Caution;
import org.airfit.select.Finding;
import org.airfit.select.Offer;
import org.airfit.select.Proposal;
import org.airfit.select.RuleOutcome;
import org.airfit.select.Selection;
import org.airfit.working.UnitSystem;

/** The job sheet as plain text for a terminal, about a hundred characters wide. */
public final class TextSheet {

  private static final int NAME = 46;

  private final Lines out = new Lines();

  private TextSheet() {}

  /**
   * Writes the text.
   *
   * @param sheet what is answered
   * @return lines, the working last
   */
  public static String of(JobSheet sheet) {
    if (sheet.refusal().isPresent()) {
      return RefusalSheet.text(sheet.refusal().get());
    }
    TextSheet text = new TextSheet();
    text.head(sheet);
    text.inShort(sheet);
    text.plug(sheet);
    text.thread(sheet);
    text.now(sheet);
    text.parts(sheet);
    text.offers(sheet);
    text.cautions(sheet);
    text.working(sheet);
    return text.out.toString();
  }

  private void line(String text) {
    out.line(text);
  }

  private void heading(String text) {
    out.heading(text);
  }

  private void wrapped(String indent, String text) {
    out.wrapped(indent, text);
  }

  private static String padded(String text, int width) {
    return text + " ".repeat(Math.max(1, width - text.length()));
  }

  private static String right(String text, int width) {
    return " ".repeat(Math.max(0, width - text.length())) + text;
  }

  private void head(JobSheet sheet) {
    line("JOB SHEET  " + sheet.job().title());
    line("for " + sheet.job().customer() + "; parts from "
        + sheet.job().catalogue().name());
    wrapped("", "Told in " + sheet.job().units().inWords());
  }

  private void inShort(JobSheet sheet) {
    heading("In short");
    for (Answer line : InWords.inShort(sheet)) {
      wrapped(padded(line.what() + ":", 20), line.answer());
    }
  }

  private void plug(JobSheet sheet) {
    if (sheet.job().atHand().isEmpty()) {
      return;
    }
    heading("The plug at hand");
    sheet.socket().ifPresent(socket -> {
      wrapped("", socket.reason());
      socket.waysOut().forEach(way -> wrapped("  - ", way.toString()));
    });
    sheet.plug().ifPresent(plug -> identified(sheet, plug));
  }

  private void identified(JobSheet sheet, Identification plug) {
    sheet.job().atHand().ifPresent(hand -> wrapped("", "It is from: " + hand.where() + "."));
    wrapped("", plug.inWords(sheet.units()));
    Map<String, Double> chances = InWords.chances(plug);
    int wide = chances.keySet().stream().mapToInt(String::length).max().orElse(0);
    int name = Math.max(28, wide + 2);
    chances.forEach(
        (what, chance) -> line("  " + padded(what, name) + right(Amounts.percent(chance), 8)));
    wrapped("", InWords.takenForGranted(plug, sheet.units()));
    for (Residual residual : plug.candidates().get(0).residuals()) {
      wrapped("    ", residual.inWords(sheet.units()) + ".");
    }
    if (InWords.leavesDoubt(plug)) {
      wrapped("", "To be surer: " + plug.nextReadings().get(0).inWords());
    }
  }

  private void thread(JobSheet sheet) {
    sheet.thread().ifPresent(thread -> {
      heading("Its thread");
      wrapped("", "Read: " + thread.readings().inWords(sheet.units()) + ".");
      wrapped("", InWords.capital(thread.inWords(sheet.units())) + ".");
      thread.cautions().forEach(caution -> wrapped("", caution.text()));
    });
  }

  private void now(JobSheet sheet) {
    sheet.now().ifPresent(now -> {
      heading("The air now");
      wrapped("", InWords.arrivesNow(sheet));
      InWords.carriesNow(sheet).ifPresent(carries -> wrapped("", carries));
      InWords.atWorstNow(sheet).ifPresent(atWorst -> wrapped("", atWorst));
      shares(now, sheet);
      InWords.widerHose(sheet, now).ifPresent(wider -> wrapped("  ", wider));
    });
  }

  private void shares(RunResult result, JobSheet sheet) {
    UnitSystem units = sheet.units();
    List<ElementLoss> shares = result.fold(RunResult.Delivered::shares, RunResult.Starved::before);
    InWords.sharesOf(result, sheet).ifPresent(of -> wrapped("", of));
    if (shares.isEmpty()) {
      return;
    }
    line("  " + padded("where pressure is lost", NAME) + right("pressure loss", 20)
        + right("share", 13) + right("gain without it", 20));
    InWords.atSupply(result, sheet).ifPresent(regulator -> {
      line("  " + padded(InWords.AT_SUPPLY, NAME) + right(units.say(regulator.lost()), 20));
      wrapped("      note: ", regulator.note(units));
    });
    for (ElementLoss share : shares) {
      boolean fits = share.name().length() < NAME;
      if (!fits) {
        line("  " + share.name());
      }
      line("  " + padded(fits ? share.name() : "", NAME) + right(units.say(share.lost()), 20)
          + right(Amounts.share(share.fraction()), 13)
          + right(units.say(share.gain()), 20));
      InWords.regulated(share, sheet).ifPresent(set -> wrapped("      note: ", set));
      share.warnings(units).forEach(warning -> wrapped("      note: ", warning));
    }
    result.fold(
        delivered -> {
          wrapped("  ", "Biggest restriction: " + delivered.bottleneckInWords(units));
          return delivered;
        },
        starved -> starved);
  }

  private void parts(JobSheet sheet) {
    heading("Recommended parts");
    if (sheet.selection().isEmpty()) {
      wrapped(
          "",
          "Not chosen yet: the profile must be known first. "
              + (sheet.plug().isPresent()
                  ? "What to read next stands above, at the plug."
                  : "Follow one of the ways above."));
      return;
    }
    Selection selection = sheet.selection().get();
    selection.fold(
        fitting -> {
          wrapped("", fitting.whyBest(sheet.units()));
          return fitting;
        },
        nothing -> {
          wrapped("", "Nothing in the catalogue fits. What would have to change:");
          nothing.toGive(sheet.units()).forEach(give -> wrapped("  - ", give));
          if (!nothing.nearest().isEmpty()) {
            wrapped("", InWords.NEAREST);
          }
          return nothing;
        });
    JobSheet.shown(selection).ifPresent(proposal -> proposal(sheet, proposal));
  }

  private void proposal(JobSheet sheet, Proposal proposal) {
    InWords.tradeWords(sheet, proposal).ifPresent(words -> wrapped("", words));
    BillText.write(out, InWords.bill(sheet, proposal), proposal);
    taken(sheet);
    wrapped("", InWords.arrives(proposal, sheet));
    wrapped("", InWords.carries(sheet, proposal));
    for (Proposal way : proposal.toEachTool()) {
      way.requirement().way().ifPresent(name -> wrapped("", "To the tool of " + name + ":"));
      shares(way.result(), sheet);
    }
    line("  rules");
    for (Finding finding : proposal.findings(sheet.units())) {
      if (finding.outcome() != RuleOutcome.DOES_NOT_APPLY) {
        wrapped("    - ", finding.toString());
      }
    }
  }

  /** What was taken for what the ratings and names of the parts do not tell. */
  private void taken(JobSheet sheet) {
    Map<String, String> taken = TakenForParts.of(sheet);
    if (!taken.isEmpty()) {
      wrapped("", "Taken for what the parts do not tell:");
      taken.forEach((part, what) -> wrapped("  - ", part + ": " + what + "."));
    }
  }

  private void offers(JobSheet sheet) {
    sheet.offers().ifPresent(offers -> {
      heading("Offers");
      for (Offer offer : offers.offers()) {
        wrapped("  - ", InWords.offer(offer));
      }
      offers.remarks(sheet.units()).forEach(remark -> wrapped("  ", remark));
    });
  }

  private void cautions(JobSheet sheet) {
    heading("Before anyone connects this");
    for (Caution caution : InWords.cautions(sheet)) {
      wrapped("  - ", caution.toString());
    }
  }

  private void working(JobSheet sheet) {
    heading("The working");
    sheet.plug().ifPresent(plug -> out.add(plug.working(sheet.units()).toText() + "\n"));
    sheet.thread().ifPresent(thread -> out.add(thread.working(sheet.units()).toText() + "\n"));
    sheet.now().ifPresent(now -> out.add("Now\n" + now.working(sheet.units()).toText() + "\n"));
    sheet
        .selection()
        .ifPresent(selection -> out.add(selection.working(sheet.units()).toText()));
    sheet
        .receiver()
        .flatMap(ReceiverAnswer::use)
        .ifPresent(use -> out.add("\n" + use.working(sheet.units()).toText()));
    sheet
        .offers()
        .ifPresent(offers -> offers
            .offers()
            .forEach(offer -> out.add("\n" + offer.working(sheet.units()).toText())));
    line("");
    line(sheet.units().either("Pressures with (g)", "Pressures in psig")
        + " stand above the atmosphere of " + sheet.units().say(sheet.job().atmosphere()) + ".");
  }
}
