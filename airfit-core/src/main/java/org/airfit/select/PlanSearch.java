package org.airfit.select;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Which profile each bay gets, exactly: of every set of one to three profiles the cheapest way to share the bays out.
 *
 * <p>What a profile costs for a set of bays is known whole, because pieces on the shelf serve any of them; different
 * profiles share nothing. So every way to share the bays among three profiles is tried, 3ⁿ of them, and nothing is left
 * out by a bound. A set of bays is a number whose bits are the bays.
 */
final class PlanSearch {

  /** More profiles than this are no standard: our choice. */
  static final int MOST_KEPT = 3;

  /**
   * How good a plan is: first how many bays have an open question of air, then the money.
   *
   * @param open how many bays are open
   * @param cost what it costs [1/10⁴ of the currency]
   */
  record Score(int open, long cost) {
    boolean isBelow(Score other) {
      return open < other.open || (open == other.open && cost < other.cost);
    }

    Score plus(Score other) {
      return new Score(open + other.open, cost + other.cost);
    }
  }

  /** The score of a profile for a set of bays; empty where it cannot be had. */
  interface Costs {
    Optional<Score> of(int profile, int bays);
  }

  /**
   * Bays that are shared out.
   *
   * @param profiles the profiles, by number
   * @param bays the bays of each
   * @param score how good that is
   */
  record Found(List<Integer> profiles, List<Integer> bays, Score score) {}

  private final int all;
  private final List<List<Optional<Score>>> scores = new ArrayList<>();

  PlanSearch(int profiles, int bays, Costs costs) {
    this.all = (1 << bays) - 1;
    for (int profile = 0; profile < profiles; profile++) {
      List<Optional<Score>> ofProfile = new ArrayList<>();
      for (int some = 0; some <= all; some++) {
        ofProfile.add(some == 0 ? Optional.empty() : costs.of(profile, some));
      }
      scores.add(ofProfile);
    }
  }

  private Optional<Score> score(int profile, int bays) {
    return scores.get(profile).get(bays);
  }

  /** The best way to share all bays among these profiles, each of which gets one at least. */
  Optional<Found> best(List<Integer> profiles) {
    return switch (profiles.size()) {
      case 1 -> score(profiles.get(0), all).map(score -> new Found(profiles, List.of(all), score));
      case 2 -> shared(profiles.get(0), profiles.get(1), all);
      default -> amongThree(profiles.get(0), profiles.get(1), profiles.get(2));
    };
  }

  private Optional<Found> shared(int one, int other, int bays) {
    Found best = null;
    for (int some = (bays - 1) & bays; some > 0; some = (some - 1) & bays) {
      Optional<Score> mine = score(one, some);
      Optional<Score> theirs = score(other, bays ^ some);
      if (mine.isPresent() && theirs.isPresent()) {
        Score sum = mine.get().plus(theirs.get());
        if (best == null || sum.isBelow(best.score)) {
          best = new Found(List.of(one, other), List.of(some, bays ^ some), sum);
        }
      }
    }
    return Optional.ofNullable(best);
  }

  private Optional<Found> amongThree(int one, int other, int third) {
    Found best = null;
    for (int some = (all - 1) & all; some > 0; some = (some - 1) & all) {
      Optional<Score> mine = score(one, some);
      if (mine.isEmpty()) {
        continue;
      }
      Optional<Found> rest = shared(other, third, all ^ some);
      if (rest.isPresent()) {
        Score sum = mine.get().plus(rest.get().score);
        if (best == null || sum.isBelow(best.score)) {
          best = new Found(
              List.of(one, other, third),
              List.of(some, rest.get().bays.get(0), rest.get().bays.get(1)),
              sum);
        }
      }
    }
    return Optional.ofNullable(best);
  }

  /** Every set of one to three of so many profiles, the smaller sets first. */
  static List<List<Integer>> sets(int profiles) {
    List<List<Integer>> sets = new ArrayList<>();
    for (int a = 0; a < profiles; a++) {
      sets.add(List.of(a));
    }
    for (int a = 0; a < profiles; a++) {
      for (int b = a + 1; b < profiles; b++) {
        sets.add(List.of(a, b));
      }
    }
    for (int a = 0; a < profiles; a++) {
      for (int b = a + 1; b < profiles; b++) {
        for (int c = b + 1; c < profiles; c++) {
          sets.add(List.of(a, b, c));
        }
      }
    }
    return sets;
  }
}
