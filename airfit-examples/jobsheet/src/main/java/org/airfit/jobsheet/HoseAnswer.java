package org.airfit.jobsheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.Iterator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import org.airfit.files.HoseQuestion;
import org.airfit.files.HoseQuestion.Asked;
import org.airfit.quantity.Length;
import org.airfit.run.LongestHose;
import org.airfit.run.Run;
import org.airfit.run.WiderHose;
import org.airfit.select.Catalogue;
import org.airfit.select.Layout;
import org.airfit.select.Part;
import org.airfit.select.Proposal;
import org.airfit.select.Requirement;
import org.airfit.select.Rule;
import org.airfit.select.Selection;
import org.airfit.select.Slot;
import org.airfit.working.UnitSystem;

/**
 * How long a hose of a job may be, or how wide it must be: the hose of the catalogue that does, found by the search over
 * all parts, and beside it what hoses of every size that exists would bring.
 *
 * @param question what was asked
 * @param requirement the job with what was found
 * @param selection the parts with that hose; nothing fits where no hose of the catalogue does
 */
public record HoseAnswer(HoseQuestion question, Requirement requirement, Selection selection) {

  /**
   * Refuses what is null.
   *
   * @param question what was asked
   * @param requirement the job with what was found
   * @param selection the parts with that hose
   */
  public HoseAnswer {
    Objects.requireNonNull(question, "question");
    Objects.requireNonNull(requirement, "requirement");
    Objects.requireNonNull(selection, "selection");
  }

  /** Searches the catalogue: for the longest from the longest on, for the least bore from the narrowest on. */
  static HoseAnswer of(HoseQuestion question, Requirement job, Catalogue catalogue) {
    return question.asked() == Asked.LONGEST
        ? longest(question, job, catalogue)
        : narrowest(question, job, catalogue);
  }

  private static List<Part.Hose> hoses(Catalogue catalogue) {
    return catalogue.parts().stream()
        .filter(Part.Hose.class::isInstance)
        .map(Part.Hose.class::cast)
        .toList();
  }

  private static HoseAnswer longest(HoseQuestion question, Requirement job, Catalogue catalogue) {
    HoseAnswer anyLength = new HoseAnswer(question, job, Selection.of(job, catalogue));
    return anyLength.fits()
        ? first(
            hoses(catalogue).stream()
                .map(Part.Hose::shortest)
                .sorted(Comparator.reverseOrder())
                .distinct()
                .map(length -> reaching(question, job, length))
                .map(reaching ->
                    new HoseAnswer(question, reaching, Selection.of(reaching, catalogue))),
            anyLength)
        : anyLength;
  }

  /** The first answer in which the tool surely has its pressure, else the first in which it may. */
  private static HoseAnswer first(Stream<HoseAnswer> tried, HoseAnswer otherwise) {
    HoseAnswer mayDo = null;
    for (Iterator<HoseAnswer> answers = tried.iterator(); answers.hasNext(); ) {
      HoseAnswer answer = answers.next();
      if (answer.fits() && !answer.depends()) {
        return answer;
      }
      mayDo = mayDo == null && answer.fits() ? answer : mayDo;
    }
    return mayDo == null ? otherwise : mayDo;
  }

  private static Requirement reaching(HoseQuestion question, Requirement job, Length length) {
    List<Slot> slots = new ArrayList<>();
    for (Slot slot : job.layout().slots()) {
      slots.add(
          slot instanceof Slot.Hose hose && hose.name().equals(question.slot())
              ? new Slot.Hose(hose.name(), length, hose.isWhip(), hose.hose())
              : slot);
    }
    return job.toBuilder().layout(Layout.of(slots)).build();
  }

  private static HoseAnswer narrowest(HoseQuestion question, Requirement job, Catalogue catalogue) {
    Slot.Hose slot = (Slot.Hose) job.layout().slot(question.slot()).orElseThrow();
    return first(
        hoses(catalogue).stream()
            .filter(hose -> reaches(hose, slot))
            .map(hose -> hose.bore().nominal())
            .sorted()
            .distinct()
            .map(bore ->
                new HoseAnswer(question, job, Selection.of(job, ofBore(bore, slot, catalogue)))),
        new HoseAnswer(question, job, Selection.of(job, catalogue)));
  }

  /** Of the hoses that reach only those of a bore. */
  private static Catalogue ofBore(Length bore, Slot.Hose slot, Catalogue catalogue) {
    List<Part> kept = catalogue.parts().stream()
        .filter(part -> !(part instanceof Part.Hose hose)
            || !reaches(hose, slot)
            || hose.bore().nominal().equals(bore))
        .toList();
    return Catalogue.of(kept, catalogue.accessories());
  }

  private static boolean reaches(Part.Hose hose, Slot.Hose slot) {
    return hose.shortest().compareTo(slot.reach()) >= 0;
  }

  private boolean fits() {
    return best().isPresent();
  }

  private Optional<Proposal> best() {
    return selection.fold(fitting -> Optional.of(fitting.best()), nothing -> Optional.empty());
  }

  /** Whether what is not known decides if the tool has its pressure. */
  private boolean depends() {
    return best().stream()
        .flatMap(proposal -> proposal.open().stream())
        .anyMatch(finding -> finding.rule() == Rule.AIR_AT_TOOL);
  }

  /** The heading of the answer on a sheet. */
  String title() {
    return question.asked() == Asked.LONGEST ? "Longest hose" : "Least bore";
  }

  /** The answer in sentences: the hose of the catalogue, then the sizes that exist. */
  List<String> sentences(UnitSystem units) {
    Optional<Proposal> best = best();
    if (best.isEmpty()) {
      return List.of("No hose of the catalogue does, whatever its "
          + (question.asked() == Asked.LONGEST ? "length" : "bore")
          + ": see what would have to change below.");
    }
    Proposal proposal = best.get();
    Part.Hose hose = proposal.hose(question.slot());
    List<String> sentences = new ArrayList<>();
    sentences.add("The " + (question.asked() == Asked.LONGEST ? "longest" : "narrowest")
        + " hose of the catalogue that "
        + (depends()
            ? "may leave the tool its pressure, which depends on what is not known, is "
            : "leaves the tool its pressure is ")
        + hose.name() + ".");
    bySize(proposal, units).ifPresent(sentences::add);
    return List.copyOf(sentences);
  }

  /** What hoses of the sizes that exist would bring between the same other parts. */
  private Optional<String> bySize(Proposal proposal, UnitSystem units) {
    Run run = proposal.run();
    Optional<String> element = element(proposal);
    if (element.isEmpty()) {
      return Optional.empty();
    }
    if (question.asked() == Asked.LONGEST) {
      String longest = LongestHose.inWords(
          LongestHose.ofEverySize(
              run, element.get(), proposal.result().massFlow(), requirement.least(), units),
          units);
      return Optional.of(
          "By the bore that its name says, between the other parts proposed: " + longest);
    }
    String tried = WiderHose.inWords(
        WiderHose.triedFromNarrowest(
            run, element.get(), proposal.result().massFlow(), requirement.least(), units),
        units);
    return Optional.of(
        "Every size between the other parts proposed, with the length of that hose: " + tried);
  }

  /** What the hose is called in the run: a second hose of one name has a number behind it. */
  private Optional<String> element(Proposal proposal) {
    String name = proposal.hose(question.slot()).name();
    int before = 0;
    for (Slot slot : requirement.layout().slots()) {
      if (slot.name().equals(question.slot())) {
        break;
      }
      if (slot instanceof Slot.Hose && proposal.hose(slot.name()).name().equals(name)) {
        before++;
      }
    }
    return proposal.run().names().stream()
        .filter(each -> each.equals(name) || each.startsWith(name + " ("))
        .skip(before)
        .findFirst();
  }
}
