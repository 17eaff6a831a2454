package org.airfit.jobsheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.airfit.files.PriceListJob;
import org.airfit.files.UnreadArticle;
import org.airfit.safety.Caution;
import org.airfit.select.FaultEffect;
import org.airfit.select.JobCoverage;
import org.airfit.select.ListFault;
import org.airfit.select.PriceListCheck;
import org.airfit.working.UnitSystem;

/**
 * What is wrong with a price list and what it lacks, as text and page share it.
 *
 * @param job what is asked
 * @param found the faults
 * @param coverage which jobs of the mix the list solves; empty where no mix is told
 */
public record PriceListSheet(
    PriceListJob job, PriceListCheck found, Optional<JobCoverage> coverage) {

  /** What the sheet does not judge, at the place where its answer is read. */
  static final List<String> LIMITS = List.of(
      "\"Cannot be\" is said only where no part can have the figures together: where C is above"
          + " what any b from 0 and any xT up to 1 gives with the Cv or Kv, or a flow is above"
          + " that of a nozzle without loss of the bore that is told. An excess that rounded"
          + " figures can make (5 % each, a bore by 0.25 mm) is only to be checked.",
      "A Cv or Kv is told that is more than 1.5 times that of C and b, or less by as much; a price"
          + " is told that is at least twice the median or half of it, and 3.5 spreads off (1.4826"
          + " × the median deviation), among six or more of the same kind and size. These limits"
          + " are our choice, without a source.",
      "Of profiles only the sizes in the set are compared, with the scatter that it tells.",
      "An adapter counts as used if some chain of up to three adapters could use it between parts"
          + " of the list or usual ends, sensible or not.",
      "Accessories, such as clamps and sealant, are not checked. Nothing is held against makers'"
          + " sheets.");

  static final List<String> LIMITS_OF_JOBS = List.of(
      "Jobs are solved with the list as it is, wrong figures included: mend the faults above"
          + " first, and ask again.",
      "The jobs are drawn from the mix that is told: their shares are worth what the mix is worth."
          + " Each has one coupling at the outlet, one hose and one coupling at the tool, dry air,"
          + " and the tool may be used with every part.",
      "A gap is one part of a standard shape or one figure. It is found and counted with the same"
          + " jobs, so that its share is a little too high; draw with another seed to see by how"
          + " much. Sockets, plugs and two gaps at once are not tried.",
      "A hose is tried with a smooth rubber wall and the bore of its name, an adapter with the"
          + " narrowest bore its ends are reckoned to have. Both are tried as rated for the"
          + " highest pressure of the mix, of stainless steel, static dissipative, and for −20 to"
          + " 60 °C (−4 to 140 °F): ask whether such a part can be had.");

  /**
   * Refuses what is null.
   *
   * @param job what is asked
   * @param found the faults
   * @param coverage which jobs of the mix the list solves; empty where no mix is told
   */
  public PriceListSheet {
    Objects.requireNonNull(job, "job");
    Objects.requireNonNull(found, "found");
    Objects.requireNonNull(coverage, "coverage");
  }

  /**
   * Checks a price list.
   *
   * @param job what is asked
   * @return its faults, and which jobs it solves
   */
  public static PriceListSheet of(PriceListJob job) {
    return new PriceListSheet(
        job,
        PriceListCheck.of(job.list()),
        job.mix().map(mix -> JobCoverage.of(job.catalogue(), mix)));
  }

  UnitSystem units() {
    return job.units();
  }

  /** The whole sheet in a few lines. */
  List<Answer> inShort() {
    List<Answer> lines = new ArrayList<>();
    lines.add(new Answer("Faults", found.inWords()));
    long articles = job.unread().stream()
        .map(each -> each.id().isEmpty() ? each.place() : each.id())
        .distinct()
        .count();
    lines.add(new Answer(
        "Not read",
        articles == 0
            ? "Every article could be read."
            : articles + (articles == 1 ? " article" : " articles") + " could not be read, for "
                + job.unread().size() + (job.unread().size() == 1 ? " reason" : " reasons")
                + "; nothing else is said of them."));
    coverage.ifPresent(of -> {
      lines.add(new Answer("Jobs", String.join(" ", of.inWords())));
      lines.add(new Answer(
          "Gap",
          of.gaps().isEmpty()
              ? "No single part or figure that was tried solves a job more."
              : "What would solve most jobs more: " + of.gaps().get(0).inWords(units()) + ". "
                  + of.gaps().get(0).share() + "."));
    });
    job.remarks().forEach(remark -> lines.add(new Answer("In the file", remark)));
    return lines;
  }

  /** Articles that could not be read: article, place, what is wrong. */
  List<List<String>> unread() {
    return job.unread().stream()
        .map((UnreadArticle each) ->
            List.of(each.id().isEmpty() ? "-" : each.id(), each.place(), each.complaint()))
        .toList();
  }

  /** The effects of which faults were found, the worst first. */
  List<FaultEffect> effects() {
    return List.of(FaultEffect.values()).stream()
        .filter(each -> found.count(each) > 0)
        .toList();
  }

  /** The heading over the faults of one effect. */
  static String heading(FaultEffect effect) {
    return effect == FaultEffect.TO_BE_CHECKED
        ? "To be checked, no fault yet"
        : "Faults: " + effect;
  }

  /** The faults of one effect: articles, kind, what is wrong, what to do. */
  List<List<String>> faults(FaultEffect effect) {
    return found.faults().stream()
        .filter(fault -> fault.effect() == effect)
        .map((ListFault fault) -> List.of(
            String.join(", ", fault.articles()),
            fault.kind() + (fault.isImpossible() ? ": cannot be" : ""),
            fault.inWords(units()),
            fault.toDo()))
        .toList();
  }

  /** What was looked at: the kind, how many were looked at, how many faults. */
  List<List<String>> looked() {
    return found.looked().stream()
        .map((PriceListCheck.Looked each) -> List.of(
            each.kind().toString(), String.valueOf(each.lookedAt()), String.valueOf(each.found())))
        .toList();
  }

  /** The gaps: what is lacking, how many jobs it solves, the share of all. */
  List<List<String>> gaps() {
    return coverage
        .map(of -> of.gaps().stream()
            .map(gap -> List.of(
                gap.inWords(units()),
                String.valueOf(gap.jobs().size()),
                gap.share().inWords()))
            .toList())
        .orElse(List.of());
  }

  /** What stands in the way of jobs without a proposal: the rule, how many jobs. */
  List<List<String>> inTheWay() {
    return coverage
        .map(of -> of.inTheWay().stream()
            .map(each -> List.of(each.rule().title(), String.valueOf(each.jobs())))
            .toList())
        .orElse(List.of());
  }

  List<String> limits() {
    List<String> limits = new ArrayList<>(LIMITS);
    if (coverage.isPresent()) {
      limits.addAll(LIMITS_OF_JOBS);
    }
    return limits;
  }

  List<Caution> cautions() {
    return found.cautions();
  }

  /** What jobs were drawn, in one sentence. */
  String drawn() {
    return coverage
        .map(of -> of.mix().jobs() + " jobs were drawn from " + of.mix().tools().size()
            + " kinds of tools and " + of.mix().places().size() + " kinds of places, with the seed "
            + of.mix().seed() + ".")
        .orElse("");
  }
}
