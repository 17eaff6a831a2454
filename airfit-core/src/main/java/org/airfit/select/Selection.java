package org.airfit.select;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.function.Function;
import java.util.stream.Stream;
import org.airfit.working.UnitSystem;
import org.airfit.working.Worked;
import org.airfit.working.Working;
import org.jspecify.annotations.Nullable;

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

    private Proposals(Proposal best, List<Proposal> proposals) {
      this.best = best;
      this.proposals = List.copyOf(proposals);
    }

    /**
     * {@return the best {@link #LISTED} of all proposals that break no rule, best first: those whose parts leave the
     * fewest rules open, so that all rules met come before any question; where it depends whether the air is enough,
     * then in how many tenths of what can arrive it is (where settings of regulators alone decide, all but one count as
     * enough: what turning a knob settles shall not cost money); then by the {@link Objective} of the requirement,
     * then most pressure at the tool in whole pascals, then by name in the order the air goes; each set of parts once,
     * with the adapters with which it stands first; never empty}
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
      return whyBest(UnitSystem.SI);
    }

    /**
     * Tells the same with the numbers in other units.
     *
     * @param units the units
     * @return why the best wins, in plain words
     */
    public String whyBest(UnitSystem units) {
      return new BestInWords(best, proposals, Objects.requireNonNull(units, "units")).toString();
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
      return other instanceof Proposals that && proposals.equals(that.proposals);
    }

    @Override
    public int hashCode() {
      return proposals.hashCode();
    }

    /** {@return why the best wins} */
    @Override
    public String toString() {
      return best + ": " + whyBest();
    }
  }

  /** No proposal meets every rule. */
  final class NothingFits implements Selection {

    private final List<Proposal> closest;
    private final List<String> missing;
    private final @Nullable Requirement tooLow;

    private NothingFits(
        List<Proposal> closest, List<String> missing, @Nullable Requirement tooLow) {
      this.closest = List.copyOf(closest);
      this.missing = List.copyOf(missing);
      this.tooLow = tooLow;
    }

    /**
     * {@return the best {@link #LISTED} of all proposals that miss least of what is asked, each set of parts with its
     * best adapters; empty where a kind of part is missing altogether, and where no part can mend what is missed,
     * because less stands in front of the parts than a tool needs}
     *
     * <p>A rule that is broken counts as one; a hose that is too short and a tool that has too little pressure count as
     * the part that lacks of what is asked. Those that miss as much come in this order: the fewest standard adapters
     * missing where nothing joins two ends (a joint of threads of two standards counts as more, and one that no
     * standard adapters join as more than all others), the fewest parts that break a rule, the fewest rules left open by
     * the parts, the least doubt about the air, the {@link Objective}, most pressure in whole pascals, names.
     */
    public List<Proposal> nearest() {
      return tooLow == null ? closest : List.of();
    }

    /** Those that miss least, whether parts can mend what is missed or not. */
    List<Proposal> closest() {
      return closest;
    }

    /** {@return what would have to give, in plain words; what no part can mend stands first} */
    public List<String> toGive() {
      return toGive(UnitSystem.SI);
    }

    /**
     * Tells the same with the numbers in other units.
     *
     * @param units the units
     * @return what would have to give, in plain words
     */
    public List<String> toGive(UnitSystem units) {
      Objects.requireNonNull(units, "units");
      if (tooLow != null) {
        List<String> give = new ArrayList<>(SupplyTooLow.inWords(tooLow, units));
        broken(units)
            .filter(finding -> finding.rule() != Rule.AIR_AT_TOOL)
            .forEach(finding -> give.add(finding.toString()));
        return List.copyOf(give);
      }
      return closest.isEmpty() ? missing : broken(units).map(Finding::toString).toList();
    }

    /** The rules that are broken by what misses least, whether parts can mend them or not. */
    private Stream<Finding> broken(UnitSystem units) {
      return closest.get(0).findings(units).stream()
          .filter(finding -> finding.outcome() == RuleOutcome.UNMET);
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
      if (nearest().isEmpty()) {
        return working.answer(String.join(" ", toGive(units))).build();
      }
      Proposal miss = closest.get(0);
      toGive(units).forEach(working::note);
      return working
          .include(miss.working(units))
          .answer("No combination of parts meets every rule.")
          .build();
    }

    @Override
    public boolean equals(Object other) {
      return other instanceof NothingFits that
          && closest.equals(that.closest)
          && missing.equals(that.missing)
          && Objects.equals(tooLow, that.tooLow);
    }

    @Override
    public int hashCode() {
      return Objects.hash(closest, missing, tooLow);
    }

    /** {@return what would have to give} */
    @Override
    public String toString() {
      return "Nothing in the catalogue fits: " + String.join(" ", toGive());
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
   * @throws CancellationException if the thread is interrupted before the answer is found; it stays interrupted
   */
  static Selection of(Requirement requirement, Catalogue catalogue) {
    Objects.requireNonNull(requirement, "requirement");
    Objects.requireNonNull(catalogue, "catalogue");
    Optional<String> refusal = requirement.medium().refusalInWords();
    if (refusal.isPresent()) {
      return new NothingFits(List.of(), List.of(refusal.get()), /* tooLow= */ null);
    }
    PartSearch search = new PartSearch(requirement, catalogue, LISTED);
    List<String> missing = search.missing();
    if (!missing.isEmpty()) {
      return new NothingFits(List.of(), missing, /* tooLow= */ null);
    }
    List<Proposal> fitting = search.fitting();
    if (!fitting.isEmpty()) {
      return new Proposals(fitting.get(0), fitting);
    }
    return new NothingFits(
        search.nearest(), List.of(), SupplyTooLow.isSo(requirement) ? requirement : null);
  }
}
