package org.airfit.jobsheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import org.airfit.files.HoseQuestion;
import org.airfit.files.HoseQuestion.Asked;
import org.airfit.quantity.Length;
import org.airfit.quantity.Range;
import org.airfit.run.LongestHose;
import org.airfit.run.WiderHose;
import org.airfit.select.Catalogue;
import org.airfit.select.Part;
import org.airfit.select.Proposal;
import org.airfit.select.Requirement;
import org.airfit.select.Rule;
import org.airfit.select.Selection;
import org.airfit.select.Slot;
import org.airfit.select.ToolLine;
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
                .filter(length -> !isLongerThan(slot(question, job), length))
                .map(length -> with(ofLength(slot(question, job), length), job))
                .map(reaching ->
                    new HoseAnswer(question, reaching, Selection.of(reaching, catalogue))),
            anyLength)
        : anyLength;
  }

  private static boolean isLongerThan(Slot.Hose slot, Length length) {
    return slot.longest().filter(longest -> length.compareTo(longest) > 0).isPresent();
  }

  /** A hose of one length, which is looked for and not needed. */
  private static Slot.Hose ofLength(Slot.Hose slot, Length length) {
    return slot.reaching(Range.exactly(length)).ofAtMost(length);
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

  private static Slot.Hose slot(HoseQuestion question, Requirement job) {
    return (Slot.Hose) job.layout().slot(question.slot()).orElseThrow();
  }

  private static Requirement with(Slot.Hose hose, Requirement job) {
    return job.toBuilder().layout(job.layout().replacing(hose.name(), hose)).build();
  }

  private static HoseAnswer narrowest(HoseQuestion question, Requirement job, Catalogue catalogue) {
    Slot.Hose slot = slot(question, job);
    return first(
        hoses(catalogue).stream()
            .filter(hose -> slot.hose().isEmpty()) // what is there and stays has the bore it has
            .filter(hose -> reaches(hose, slot))
            .map(Part.Hose::bore)
            .sorted()
            .distinct()
            .map(bore -> with(slot.ofBore(bore), job))
            .map(asked -> new HoseAnswer(question, asked, Selection.of(asked, catalogue))),
        new HoseAnswer(question, job, Selection.of(job, catalogue)));
  }

  private static boolean reaches(Part.Hose hose, Slot.Hose slot) {
    return hose.shortest().compareTo(slot.reachRange().least()) >= 0;
  }

  private boolean fits() {
    return best().isPresent();
  }

  private Optional<Proposal> best() {
    return selection.fold(fitting -> Optional.of(fitting.best()), nothing -> Optional.empty());
  }

  /** Whether what is not known decides if the tools have their pressure, or if the hose reaches. */
  private boolean depends() {
    return best().stream()
        .flatMap(proposal -> proposal.open().stream())
        .anyMatch(
            finding -> finding.rule() == Rule.AIR_AT_TOOL || finding.rule() == Rule.HOSE_REACHES);
  }

  /** The heading of the answer on a sheet; of several hoses with the name of the one. */
  String title() {
    String title = question.asked() == Asked.LONGEST ? "Longest hose" : "Least bore";
    return title + (requirement.isOfSeveralTools() ? " (" + question.slot() + ")" : "");
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
    boolean isSeveral = requirement.isOfSeveralTools();
    List<String> sentences = new ArrayList<>();
    sentences.add("The " + (question.asked() == Asked.LONGEST ? "longest" : "narrowest")
        + " hose of the catalogue that "
        + (depends() ? "may leave " : "leaves ")
        + (isSeveral ? "every tool" : "the tool")
        + " its pressure"
        + (isSeveral ? " while all work" : "")
        + (depends() ? ", which depends on what is not known, is " : " is ")
        + proposal.hose(question.slot()).name()
        + inEach() + ".");
    bySize(proposal, units).ifPresent(sentences::add);
    return List.copyOf(sentences);
  }

  /** Where lines are alike, that each of them has such a hose. */
  private String inEach() {
    return inEach(requirement.layout().lines(), 1);
  }

  /** The same of lines that are there so many times. */
  private String inEach(List<ToolLine> lines, int times) {
    for (ToolLine line : lines) {
      int count = times * line.count();
      boolean isThere = line.slots().stream().anyMatch(slot -> slot.name().equals(question.slot()));
      String behind = isThere ? "" : inEach(line.lines(), count);
      if (isThere && count > 1) {
        return ", one in each of the " + count + " lines to " + line.goal();
      }
      if (!behind.isEmpty()) {
        return behind;
      }
    }
    return "";
  }

  /** What hoses of the sizes that exist would bring between the same other parts. */
  private Optional<String> bySize(Proposal proposal, UnitSystem units) {
    List<Proposal> ways = proposal.toEachTool().stream()
        .filter(way -> way.element(question.slot()).isPresent())
        .toList();
    String forAll = ways.size() > 1 ? ", for every tool behind it" : "";
    if (question.asked() == Asked.LONGEST) {
      List<LongestHose> longest =
          LongestHose.forAll(ways.stream().map(way -> longest(way, units)).toList());
      return Optional.of(
          "Between the same other parts, hoses with the bore that their name says may be so long"
              + forAll + ": " + LongestHose.inWords(longest, units));
    }
    // a size that is too narrow for one tool is too narrow: the tool with which most are tried
    // decides
    return ways.stream()
        .map(way -> new Tried(way, tried(way, units)))
        .max(Comparator.comparingInt((Tried each) -> each.sizes().size())
            .thenComparing(each -> !each.sizes().get(each.sizes().size() - 1).isEnough()))
        .map(each -> "Other sizes of the same length, between the same other parts"
            + (ways.size() > 1
                ? ", for the tool that needs the widest ("
                    + each.way().requirement().way().orElse("") + ")"
                : "")
            + ": " + uncapital(WiderHose.inWords(each.sizes(), units)));
  }

  private static String uncapital(String sentence) {
    return sentence.substring(0, 1).toLowerCase(Locale.ROOT) + sentence.substring(1);
  }

  /** The sizes tried on the way to a tool. */
  private record Tried(Proposal way, List<WiderHose> sizes) {}

  private List<LongestHose> longest(Proposal way, UnitSystem units) {
    return LongestHose.ofEverySize(
        way.run(),
        way.element(question.slot()).orElseThrow(),
        way.result().massFlow(),
        way.requirement().least(),
        units);
  }

  private List<WiderHose> tried(Proposal way, UnitSystem units) {
    return WiderHose.triedFromNarrowest(
        way.run(),
        way.element(question.slot()).orElseThrow(),
        way.result().massFlow(),
        way.requirement().least(),
        units);
  }
}
