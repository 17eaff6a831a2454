package org.airfit.jobsheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.airfit.files.Job;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.PressureDrop;
import org.airfit.run.RunResult;
import org.airfit.safety.Caution;
import org.airfit.select.Finding;
import org.airfit.select.JobFindings;
import org.airfit.select.Proposal;
import org.airfit.select.Requirement;
import org.airfit.select.Rule;
import org.airfit.select.RunNow;
import org.airfit.working.PencilCard;
import org.airfit.working.UnitSystem;

/**
 * The answers of a job as pencil cards: what arrives at the tool now, what arrives with the parts proposed, which thread
 * it is and which plug.
 *
 * @param job what was asked
 * @param cards the cards, each for a page of its own; none where the job has no answer that a pencil can follow
 * @param without what has no card, and why
 */
public record CardSheet(Job job, List<Card> cards, List<String> without) {

  private static final String AT_WORST =
      "The card is worked with the worst of all that is not known exactly: at its best more"
          + " arrives.";

  /**
   * A card with what belongs to its answer.
   *
   * @param question what it answers
   * @param basis what the answer means and for which case it is worked out, the judgement first; none of a thread
   *     or a plug
   * @param card the card
   * @param cautions the warnings that go with the answer, the last that codes and makers come first
   */
  public record Card(String question, List<String> basis, PencilCard card, List<Caution> cautions) {

    /** Copies the lists. */
    public Card {
      basis = List.copyOf(basis);
      cautions = List.copyOf(cautions);
    }
  }

  /** Copies the lists. */
  public CardSheet {
    cards = List.copyOf(cards);
    without = List.copyOf(without);
  }

  /**
   * Makes the cards of a job.
   *
   * @param sheet the answers to the job
   * @return the cards; none for another medium than compressed air
   */
  public static CardSheet of(JobSheet sheet) {
    List<Card> cards = new ArrayList<>();
    List<String> without = new ArrayList<>();
    UnitSystem units = sheet.units();
    sheet.refusal().ifPresent(refusal -> without.add("No card: " + refusal.reason()));
    sheet.now().ifPresent(now -> now(now, sheet, cards, without));
    Optional<Proposal> proposal = sheet.selection().flatMap(JobSheet::shown);
    proposal.ifPresent(
        best -> best.toEachTool().forEach(way -> proposed(way, best, sheet, cards, without)));
    sheet
        .thread()
        .ifPresent(thread -> cards.add(new Card(
            "Which thread it is",
            List.of(),
            thread.pencilCard(units),
            InWords.cautionsWith(sheet, thread.cautions()))));
    sheet
        .plug()
        .filter(plug -> !plug.readings().isEmpty())
        .ifPresent(plug -> cards.add(new Card(
            "Which plug it is",
            List.of(),
            plug.pencilCard(units),
            InWords.cautionsWith(sheet, plug.cautions()))));
    if (sheet.refusal().isEmpty() && proposal.isEmpty()) {
      without.add("What arrives with parts has no card: "
          + (sheet.selection().isPresent()
              ? "nothing in the catalogue can be put together for this job."
              : "no parts are chosen before the plug is known."));
    }
    return new CardSheet(sheet.job(), cards, without);
  }

  private static void now(RunResult now, JobSheet sheet, List<Card> cards, List<String> without) {
    UnitSystem units = sheet.units();
    String question = "What arrives at the tool now";
    List<Caution> cautions = new ArrayList<>(now.cautions(units));
    cautions.addAll(JobFindings.of(sheet.requirement()).cautions(units));
    List<String> basis = new ArrayList<>();
    basis.add(InWords.arrivesNow(sheet) + InWords.beyondTheModel(sheet));
    if (!sheet.job().now().map(RunNow::isExact).orElse(true)) {
      basis.add(AT_WORST);
    }
    card(question, basis, now, sheet.requirement(), sheet, cautions)
        .ifPresentOrElse(cards::add, () -> without.add(starved(question, now)));
  }

  /** Of parts for several tools each tool has a card. */
  private static void proposed(
      Proposal way, Proposal all, JobSheet sheet, List<Card> cards, List<String> without) {
    UnitSystem units = sheet.units();
    boolean fits = sheet.selection().orElseThrow().<Boolean>fold(fitting -> true, nothing -> false);
    String question = "What arrives with the parts "
        + (fits ? "proposed" : "that come nearest, which are no recommendation")
        + way.requirement().way().map(name -> ": " + name).orElse("");
    List<String> basis = new ArrayList<>();
    basis.add(way.findings(units).stream()
            .filter(finding -> finding.rule() == Rule.AIR_AT_TOOL)
            .map(Finding::toString)
            .findFirst()
            .orElseGet(() -> InWords.arrives(way, sheet))
        + InWords.beyondTheModel(sheet));
    if (!way.result().equals(way.resultAtBest())) {
      basis.add(AT_WORST);
    }
    card(question, basis, way.result(), way.requirement(), sheet, all.cautions(units))
        .ifPresentOrElse(cards::add, () -> without.add(starved(question, way.result())));
  }

  private static Optional<Card> card(
      String question,
      List<String> judged,
      RunResult result,
      Requirement job,
      JobSheet sheet,
      List<Caution> cautions) {
    return result.fold(
        delivered -> {
          List<String> basis = new ArrayList<>(judged);
          basis.add(start(delivered, job, sheet));
          basis.add(flow(delivered, job, sheet));
          basis.addAll(sheet.job().remarks());
          return Optional.of(new Card(
              question,
              basis,
              delivered.pencilCard(sheet.units()),
              InWords.cautionsWith(sheet, cautions)));
        },
        starved -> Optional.empty());
  }

  private static String starved(String question, RunResult result) {
    return result.fold(
        delivered -> "",
        starved -> question + " has no card: " + starved.element()
            + (starved.endOfCurve().isPresent()
                ? " carries more than its maker's curve tells, so that no pressure is known to work"
                    + " out."
                : " does not carry the flow that the tool asks for, so that there is no pressure to"
                    + " work out."));
  }

  /** Where the run starts: behind the regulator of the supply, or with the lowest that the supply falls to. */
  private static String start(RunResult.Delivered delivered, Requirement job, JobSheet sheet) {
    UnitSystem units = sheet.units();
    Optional<InWords.AtSupply> regulator = InWords.atSupply(delivered, sheet);
    if (regulator.isPresent()) {
      PressureDrop lost = regulator.get().lost();
      return "pg is what stands behind the regulator at the supply: it is set to "
          + units.say(regulator.get().set())
          + (lost.pascals() > 0.0
              ? ", and " + units.say(lost) + " less is held while the tool runs."
              : ", and holds that.");
    }
    GaugePressure lowest = job.pressures().lowest();
    GaugePressure usual = job.pressures().usual();
    return lowest.compareTo(usual) < 0
        ? "pg is the lowest pressure at the supply, of " + units.say(lowest) + " to "
            + units.say(usual) + " that was told."
        : "pg is the pressure at the supply that was told.";
  }

  /** From which flow of free air the mass flow comes. */
  private static String flow(RunResult.Delivered delivered, Requirement job, JobSheet sheet) {
    return "ṁ is the flow that the tool takes while it runs, "
        + sheet
            .units()
            .sayBoth(FreeAirFlow.from(delivered.massFlow(), job.demand().reference()))
        + " of free air" + (job.demandRange().isExact() ? "." : ", the most that it may be.");
  }
}
