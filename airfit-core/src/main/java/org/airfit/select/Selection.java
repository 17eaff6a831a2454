package org.airfit.select;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import org.airfit.working.UnitSystem;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/** Which parts of a catalogue solve a job: proposals that fit, best first, or none and the nearest miss. */
public sealed interface Selection extends Worked {

  /** How many proposals are listed at most, the best of all. */
  int LISTED = 20;

  /**
   * Handles both cases.
   *
   * @param <R> what is made of them
   * @param proposals what to make of proposals that fit
   * @param nothingFits what to make of none
   * @return what was made
   */
  <R> R fold(
      Function<? super Proposals, ? extends R> proposals,
      Function<? super NothingFits, ? extends R> nothingFits);

  /** At least one proposal breaks no rule; {@link #whyBest} says whether every rule is met, or what must be asked. */
  final class Proposals implements Selection {

    private final Proposal best;
    private final List<Proposal> proposals;
    private final boolean hasAdapters;

    private Proposals(Proposal best, List<Proposal> proposals, boolean hasAdapters) {
      this.best = best;
      this.proposals = List.copyOf(proposals);
      this.hasAdapters = hasAdapters;
    }

    /**
     * {@return the best {@link #LISTED} of all proposals that break no rule, best first: those whose parts leave the
     * fewest rules open, so that all rules met come before any question; then by the {@link Objective} of the
     * requirement, then most pressure at the tool in whole pascals, then by name, the hose first; never empty}
     */
    public List<Proposal> proposals() {
      return proposals;
    }

    /** {@return the best} */
    public Proposal best() {
      return best;
    }

    /** {@return why the best wins, in plain words: what is met, what is still to be asked, and what it costs} */
    public String whyBest() {
      return new BestInWords(best, proposals, hasAdapters).toString();
    }

    @Override
    public <R> R fold(
        Function<? super Proposals, ? extends R> proposals,
        Function<? super NothingFits, ? extends R> nothingFits) {
      Objects.requireNonNull(nothingFits, "nothingFits");
      return Objects.requireNonNull(proposals, "proposals").apply(this);
    }

    @Override
    public Working working(UnitSystem units) {
      return best.working(units);
    }

    @Override
    public boolean equals(Object other) {
      return other instanceof Proposals that
          && proposals.equals(that.proposals)
          && hasAdapters == that.hasAdapters;
    }

    @Override
    public int hashCode() {
      return Objects.hash(proposals, hasAdapters);
    }

    /** {@return why the best wins} */
    @Override
    public String toString() {
      return best + ": " + whyBest();
    }
  }

  /** No proposal meets every rule. */
  final class NothingFits implements Selection {

    private final List<Proposal> nearest;
    private final List<String> toGive;
    private final boolean hasAdapters;

    private NothingFits(List<Proposal> nearest, List<String> toGive, boolean hasAdapters) {
      this.nearest = List.copyOf(nearest);
      this.toGive = List.copyOf(toGive);
      this.hasAdapters = hasAdapters;
    }

    /**
     * {@return the best {@link #LISTED} of all proposals with the fewest rules unmet: those whose parts leave the
     * fewest rules open first, then most pressure at the tool, in whole pascals, then the fewest joints that nothing
     * joins, then by the {@link Objective} of the requirement, then by name, the hose first; empty where a kind of part
     * is missing altogether}
     */
    public List<Proposal> nearest() {
      return nearest;
    }

    /** {@return what would have to give, in plain words} */
    public List<String> toGive() {
      return toGive;
    }

    @Override
    public <R> R fold(
        Function<? super Proposals, ? extends R> proposals,
        Function<? super NothingFits, ? extends R> nothingFits) {
      Objects.requireNonNull(proposals, "proposals");
      return Objects.requireNonNull(nothingFits, "nothingFits").apply(this);
    }

    @Override
    public Working working(UnitSystem units) {
      Working.Builder working = Working.titled("Nothing in the catalogue fits", units);
      if (nearest.isEmpty()) {
        return working.answer(String.join(" ", toGive)).build();
      }
      Proposal miss = nearest.get(0);
      miss.findings(units).stream()
          .filter(finding -> finding.outcome() == RuleOutcome.UNMET)
          .forEach(finding -> working.note(finding.toString()));
      return working
          .include(miss.working(units))
          .answer(
              "No combination of parts meets every rule" + BestInWords.adapters(hasAdapters) + ".")
          .build();
    }

    @Override
    public boolean equals(Object other) {
      return other instanceof NothingFits that
          && nearest.equals(that.nearest)
          && toGive.equals(that.toGive)
          && hasAdapters == that.hasAdapters;
    }

    @Override
    public int hashCode() {
      return Objects.hash(nearest, toGive, hasAdapters);
    }

    /** {@return what would have to give} */
    @Override
    public String toString() {
      return "Nothing in the catalogue fits: " + String.join(" ", toGive);
    }
  }

  /**
   * Finds the best of all combinations of parts.
   *
   * <p>The answer does not depend on the order of the catalogue, nor on parts that are not in it: without a part that
   * the best does not use,
   * the best stays the best.
   *
   * @param requirement what the job asks
   * @param catalogue the parts to choose from
   * @return the proposals that fit, or the nearest miss; for another medium than compressed air, nothing and why
   */
  static Selection of(Requirement requirement, Catalogue catalogue) {
    Objects.requireNonNull(requirement, "requirement");
    Objects.requireNonNull(catalogue, "catalogue");
    Optional<String> refusal = requirement.medium().refusalInWords();
    if (refusal.isPresent()) {
      return new NothingFits(List.of(), List.of(refusal.get()), false);
    }
    CatalogueSearch search = new CatalogueSearch(requirement, catalogue, LISTED);
    List<String> missing = search.missing();
    if (!missing.isEmpty()) {
      return new NothingFits(List.of(), missing, false);
    }
    boolean hasAdapters = !catalogue.all(Part.Adapter.class).isEmpty();
    List<Proposal> fitting = search.fitting();
    if (!fitting.isEmpty()) {
      return new Proposals(fitting.get(0), fitting, hasAdapters);
    }
    List<Proposal> nearest = search.nearest();
    return new NothingFits(
        nearest, nearest.get(0).unmet().stream().map(Finding::toString).toList(), hasAdapters);
  }
}
