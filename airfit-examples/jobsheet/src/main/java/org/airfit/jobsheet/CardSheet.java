package org.airfit.jobsheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.airfit.files.Job;
import org.airfit.run.RunResult;
import org.airfit.safety.Caution;
import org.airfit.select.Proposal;
import org.airfit.working.PencilCard;
import org.airfit.working.UnitSystem;

/**
 * The answers of a job as pencil cards: what arrives at the tool now, what arrives with the parts proposed, and which
 * thread it is.
 *
 * @param job what was asked
 * @param cards the cards, each for a page of its own; none where the job has no answer that a pencil can follow
 * @param without what has no card, and why
 */
public record CardSheet(Job job, List<Card> cards, List<String> without) {

  /**
   * A card with what belongs to its answer.
   *
   * @param question what it answers
   * @param card the card
   * @param cautions the warnings that go with the answer
   */
  public record Card(String question, PencilCard card, List<Caution> cautions) {

    /** Copies the list. */
    public Card {
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
    sheet.now().ifPresent(now -> run("What arrives at the tool now", now, units, cards, without));
    Optional<Proposal> proposal = sheet.selection().flatMap(JobSheet::shown);
    proposal.ifPresent(
        best -> run("What arrives with the parts proposed", best.result(), units, cards, without));
    sheet
        .thread()
        .ifPresent(thread ->
            cards.add(new Card("Which thread it is", thread.pencilCard(units), thread.cautions())));
    if (sheet.plug().isPresent()) {
      without.add("Which plug it is has no card: its readings share errors of the caliper, and the"
          + " working weighs them together.");
    }
    return new CardSheet(sheet.job(), cards, without);
  }

  private static void run(
      String question, RunResult result, UnitSystem units, List<Card> cards, List<String> without) {
    result.fold(
        delivered ->
            cards.add(new Card(question, delivered.pencilCard(units), result.cautions(units))),
        starved -> without.add(question + " has no card: the flow does not pass "
            + starved.element() + ", so that no pressure arrives."));
  }
}
