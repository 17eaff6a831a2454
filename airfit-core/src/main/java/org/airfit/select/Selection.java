package org.airfit.select;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.airfit.quantity.PressureUnit;
import org.airfit.safety.Caution;
import org.airfit.working.Working;

/** Which parts of a catalogue solve a job: proposals that fit, best first, or none and the nearest miss. */
public sealed interface Selection {

  /** How many proposals are listed at most, the best of all. */
  int LISTED = 20;

  /**
   * Handles both cases.
   *
   * @param <R> what is made of them
   * @param fitting what to make of proposals that fit
   * @param nothingFits what to make of none
   * @return what was made
   */
  <R> R fold(
      Function<? super Fitting, ? extends R> fitting,
      Function<? super NothingFits, ? extends R> nothingFits);

  /** {@return how the answer was reached} */
  Working working();

  /**
   * At least one proposal meets every rule.
   *
   * @param ranking the best {@link #LISTED} of all proposals that fit, best first: by the {@link Objective} of the requirement, then most pressure
   *     at the tool in whole pascals, then by name, the hose first
   */
  record Fitting(List<Proposal> ranking) implements Selection {

    /** {@return the best} */
    public Proposal best() {
      return ranking.get(0);
    }

    /** {@return why the best wins, in plain words} */
    public String whyBest() {
      String own = best().pieces() + " pieces to buy, "
          + best().priceInWords().map(price -> price + ", ").orElse("")
          + best().result().fold(d -> d.atToolGauge().format(PressureUnit.BAR, 2), s -> "no air")
          + " at the tool.";
      if (ranking.size() == 1) {
        return "It is the only combination that meets every rule: " + own;
      }
      return "Of all combinations that meet every rule "
          + (best().requirement().ranking() == Objective.LOWEST_PRICE
              ? best().unpriced().isEmpty()
                  ? "it costs least"
                  : "it has the fewest pieces of unknown price, and costs least as far as prices are known"
              : "it needs the fewest pieces to buy, and of those it keeps the most pressure")
          + ": " + own;
    }

    @Override
    public <R> R fold(
        Function<? super Fitting, ? extends R> fitting,
        Function<? super NothingFits, ? extends R> nothingFits) {
      return fitting.apply(this);
    }

    @Override
    public Working working() {
      return best().working();
    }
  }

  /**
   * No proposal meets every rule.
   *
   * @param nearest the best {@link #LISTED} of all proposals with the fewest rules unmet: most pressure at the tool first, in whole pascals, then
   *     the fewest joints that nothing joins, then by the {@link Objective} of the requirement, then by name, the hose first; empty where a kind of part is missing altogether
   * @param toGive what would have to give, in plain words
   */
  record NothingFits(List<Proposal> nearest, List<String> toGive) implements Selection {

    @Override
    public <R> R fold(
        Function<? super Fitting, ? extends R> fitting,
        Function<? super NothingFits, ? extends R> nothingFits) {
      return nothingFits.apply(this);
    }

    @Override
    public Working working() {
      Working.Builder working = Working.titled("Nothing in the catalogue fits");
      toGive.forEach(working::note);
      nearest.stream().findFirst().ifPresent(miss -> working.include(miss.working()));
      return working.build();
    }
  }

  /**
   * Finds the best of all combinations of parts.
   *
   * <p>The answer does not depend on the order of the catalogue, nor on parts that are not in it: without a part that the best does not use,
   * the best stays the best.
   *
   * @param requirement what the job asks
   * @param catalogue the parts to choose from
   * @return the proposals that fit, or the nearest miss; for another medium than compressed air, nothing and why
   */
  static Selection of(Requirement requirement, Catalogue catalogue) {
    Optional<Caution> refusal = requirement.medium().refusal();
    if (refusal.isPresent()) {
      return new NothingFits(
          List.of(),
          List.of("airfit advises on compressed air for tools only, not on " + requirement.medium()
              + ". " + refusal.get()));
    }
    CatalogueSearch search = new CatalogueSearch(requirement, catalogue, LISTED);
    List<String> missing = search.missing();
    if (!missing.isEmpty()) {
      return new NothingFits(List.of(), missing);
    }
    List<Proposal> fitting = search.fitting();
    if (!fitting.isEmpty()) {
      return new Fitting(fitting);
    }
    List<Proposal> nearest = search.nearest();
    return new NothingFits(
        nearest, nearest.get(0).unmet().stream().map(Finding::toString).toList());
  }
}
