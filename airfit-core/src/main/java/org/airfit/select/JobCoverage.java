package org.airfit.select;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.concurrent.CancellationException;
import org.airfit.internal.Interruption;

/**
 * Which jobs of a mix a catalogue solves, and which single part or figure it lacks most.
 *
 * <p>Each job is solved by {@link Selection}. It is <em>solved</em> where a proposal meets every rule, <em>open</em>
 * where every proposal that breaks none leaves something to ask, and <em>without a proposal</em> where each breaks a
 * rule. For those of the last two kinds up to {@link #MOST_CANDIDATES} gaps are tried, of each kind those that most
 * jobs suggest: an adapter of a standard shape where two ends do not go together, a hose of a standard bore that is
 * long enough, the rating of a part that tells none, and what decides the air through a part where that is only known
 * as a range. A gap counts for a job that is solved when it is solved again with it alone. A hose is left out where
 * one that is neither wider nor longer solves all that it does.
 *
 * <p><b>Limits.</b> A hose is tried with the ends of a hose of the catalogue, and where that has none with the usual ends
 * ({@link PriceList#USUAL_ENDS}) on which most of its plugs and sockets go; an adapter with the narrowest bore that its
 * ends are reckoned to have. Both are tried as rated for the highest pressure of the mix, of stainless steel, static
 * dissipative, and for −20 to 60 °C. Sockets, plugs and regulators are not tried, as no standard tells them. Two gaps
 * at once are not tried. A gap is found and counted with the same jobs, so its share is a little too
 * high: draw with another seed to see how much. <b>Cost:</b> at most {@link JobMix#MOST_JOBS} × (1 + {@link
 * #MOST_CANDIDATES}) selections, of some ten milliseconds each for a catalogue of hundreds, and of
 * seconds for one of 10,000 with thousands of adapters.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class JobCoverage {

  /** So many gaps are tried. */
  public static final int MOST_CANDIDATES = 24;

  /** What came of a job. */
  public enum Outcome {
    /** A proposal meets every rule. */
    SOLVED,
    /** No proposal that breaks no rule leaves nothing to ask. */
    OPEN,
    /** Each proposal breaks a rule, or a kind of part is missing. */
    NO_PROPOSAL
  }

  /**
   * How often a rule stands in the way.
   *
   * @param rule the rule
   * @param jobs of how many jobs without a proposal the one that misses least breaks it
   */
  public record InTheWay(Rule rule, int jobs) {
    /**
     * Refuses what is null.
     *
     * @param rule the rule
     * @param jobs of how many jobs without a proposal the one that misses least breaks it
     */
    public InTheWay {
      Objects.requireNonNull(rule, "rule");
    }
  }

  private final JobMix mix;
  private final List<Outcome> outcomes;
  private final List<CatalogueGap> gaps;
  private final List<InTheWay> inTheWay;

  private JobCoverage(
      JobMix mix, List<Outcome> outcomes, List<CatalogueGap> gaps, List<InTheWay> inTheWay) {
    this.mix = mix;
    this.outcomes = List.copyOf(outcomes);
    this.gaps = List.copyOf(gaps);
    this.inTheWay = List.copyOf(inTheWay);
  }

  /**
   * Solves the jobs of a mix with a catalogue.
   *
   * @param catalogue the parts to choose from
   * @param mix the jobs
   * @return which are solved, and what is lacking most
   * @throws CancellationException if the thread is interrupted before the answer is found; it stays interrupted
   */
  public static JobCoverage of(Catalogue catalogue, JobMix mix) {
    Objects.requireNonNull(catalogue, "catalogue");
    Objects.requireNonNull(mix, "mix");
    List<JobMix.Job> jobs = mix.drawn();
    List<Outcome> outcomes = new ArrayList<>();
    List<JobMix.Job> unsolved = new ArrayList<>();
    Map<Rule, Integer> broken = new TreeMap<>();
    GapCandidates candidates = new GapCandidates(catalogue, mix);
    for (JobMix.Job job : jobs) {
      Selection selection = Selection.of(job.requirement(), catalogue);
      Outcome outcome = outcome(selection);
      outcomes.add(outcome);
      if (outcome == Outcome.SOLVED) {
        continue;
      }
      unsolved.add(job);
      candidates.add(job.requirement(), selection);
      if (selection instanceof Selection.NothingFits none && !none.closest().isEmpty()) {
        none.closest()
            .get(0)
            .unmet()
            .forEach(finding -> broken.merge(finding.rule(), 1, Integer::sum));
      }
    }
    List<CatalogueGap> gaps = new ArrayList<>();
    for (GapCandidates.Candidate candidate : candidates.most()) {
      List<Integer> solved = new ArrayList<>();
      Catalogue fuller = candidate.in(catalogue);
      for (JobMix.Job job : unsolved) {
        Interruption.check("The search for gaps");
        if (outcome(Selection.of(job.requirement(), fuller)) == Outcome.SOLVED) {
          solved.add(job.number());
        }
      }
      if (!solved.isEmpty()) {
        gaps.add(new CatalogueGap(
            candidate.kind(), candidate.part(), solved, new JobShare(solved.size(), jobs.size())));
      }
    }
    gaps.removeIf(gap -> gaps.stream().anyMatch(other -> isNoMore(gap, other)));
    gaps.sort(Comparator.comparing((CatalogueGap gap) -> -gap.jobs().size())
        .thenComparing(CatalogueGap::kind)
        .thenComparing(JobCoverage::size)
        .thenComparing(gap -> gap.inWords()));
    List<InTheWay> inTheWay = new ArrayList<>();
    broken.forEach((rule, count) -> inTheWay.add(new InTheWay(rule, count)));
    inTheWay.sort(Comparator.comparing(each -> -each.jobs()));
    return new JobCoverage(mix, outcomes, gaps, inTheWay);
  }

  /** Whether a hose solves nothing that another does not, which is neither wider nor longer. */
  private static boolean isNoMore(CatalogueGap gap, CatalogueGap other) {
    if (gap.equals(other)
        || !(gap.part() instanceof Part.Hose hose && other.part() instanceof Part.Hose least)
        || gap.kind() != CatalogueGap.Kind.HOSE
        || other.kind() != CatalogueGap.Kind.HOSE) {
      return false;
    }
    return least.bore().compareTo(hose.bore()) <= 0
        && least.longest().compareTo(hose.longest()) <= 0
        && size(other) < size(gap)
        && other.jobs().containsAll(gap.jobs());
  }

  /** The inside of a hose [m³], by which of two that solve as many the smaller comes first; 0 of other parts. */
  private static double size(CatalogueGap gap) {
    return gap.part() instanceof Part.Hose hose
        ? hose.bore().nominal().metres()
            * hose.bore().nominal().metres()
            * hose.longest().metres()
        : 0.0;
  }

  private static Outcome outcome(Selection selection) {
    return selection.fold(
        found -> found.best().open().isEmpty() ? Outcome.SOLVED : Outcome.OPEN,
        none -> Outcome.NO_PROPOSAL);
  }

  /** {@return the mix} */
  public JobMix mix() {
    return mix;
  }

  /** {@return what came of each job, in the order they were drawn} */
  public List<Outcome> outcomes() {
    return outcomes;
  }

  /**
   * Counts jobs.
   *
   * @param outcome what came of them
   * @return their share of all
   */
  public JobShare share(Outcome outcome) {
    return new JobShare(
        Collections.frequency(outcomes, Objects.requireNonNull(outcome, "outcome")), mix.jobs());
  }

  /** {@return the gaps that solve at least one job, the one that solves most first} */
  public List<CatalogueGap> gaps() {
    return gaps;
  }

  /** {@return the rules that stand in the way of jobs without a proposal, the most frequent first} */
  public List<InTheWay> inTheWay() {
    return inTheWay;
  }

  /** {@return the answer in sentences} */
  public List<String> inWords() {
    List<String> said = new ArrayList<>();
    said.add("Every rule is met in " + share(Outcome.SOLVED) + ".");
    said.add("Something is left to ask in " + share(Outcome.OPEN) + ".");
    said.add("No proposal meets the rules in " + share(Outcome.NO_PROPOSAL) + ".");
    return List.copyOf(said);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof JobCoverage that
        && mix.equals(that.mix)
        && outcomes.equals(that.outcomes)
        && gaps.equals(that.gaps)
        && inTheWay.equals(that.inTheWay);
  }

  @Override
  public int hashCode() {
    return Objects.hash(mix, outcomes, gaps);
  }

  /** {@return how many jobs are solved} */
  @Override
  public String toString() {
    return inWords().get(0);
  }
}
