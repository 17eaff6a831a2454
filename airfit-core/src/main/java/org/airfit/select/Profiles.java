package org.airfit.select;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/**
 * The profiles of the couplings that are chosen so far. What counts in the end is how many there are; until the last
 * coupling is chosen it matters which.
 *
 * @param had those that the couplings have or must have; none any more behind the last coupling
 * @param atLeast how many there are in the end, at least
 */
record Profiles(Set<String> had, int atLeast) {

  /**
   * Those of a job of which nothing is chosen yet.
   *
   * @param couplings for each coupling the profiles that its plug may have
   */
  static Profiles ahead(List<Set<String>> couplings) {
    Set<String> forced = new LinkedHashSet<>();
    Set<String> apart = new LinkedHashSet<>();
    int least = 0;
    for (Set<String> each : couplings) {
      if (each.size() == 1) {
        forced.addAll(each);
      }
      if (each.stream().noneMatch(apart::contains)) {
        least++; // it shares none with those counted before
        apart.addAll(each);
      }
    }
    return new Profiles(Set.copyOf(forced), least);
  }

  /** With one more coupling; behind the last one only how many there are. */
  Profiles with(String profile, boolean isLast) {
    Set<String> more = had;
    if (!had.contains(profile)) {
      more = new LinkedHashSet<>(had);
      more.add(profile);
    }
    return isLast
        ? new Profiles(Set.of(), Math.max(atLeast, more.size()))
        : new Profiles(more, atLeast);
  }

  int count() {
    return Math.max(atLeast, had.size());
  }

  /** How many there are with one more coupling, at least. */
  int countWith(String profile) {
    return had.contains(profile) ? count() : countWithAnother();
  }

  /** How many there are with one more coupling that has none of these, at least. */
  int countWithAnother() {
    return Math.max(atLeast, had.size() + 1);
  }

  /** Whether there are no more of them in the end, whatever follows. */
  boolean areAsFewAs(Profiles other) {
    return count() <= other.count() && (had == other.had || other.had.containsAll(had));
  }
}
