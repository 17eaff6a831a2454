package org.airfit.select;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * One position with its candidates. What may be listed of those that break nothing is found at once, of all only where
 * it is asked for: a candidate that breaks nothing gives way to such alone. Not thread-safe: it remembers.
 */
final class Row {

  /** Some of the candidates in groups. */
  private record Groups(
      List<Candidate> all,
      Map<Integer, List<Candidate>> byEnd,
      Map<String, List<Candidate>> byProfile) {

    static Groups of(List<Candidate> candidates) {
      Map<Integer, List<Candidate>> byEnd = new LinkedHashMap<>();
      Map<String, List<Candidate>> byProfile = new LinkedHashMap<>();
      for (Candidate candidate : candidates) {
        byEnd.computeIfAbsent(candidate.near(), any -> new ArrayList<>()).add(candidate);
        for (String profile : candidate.takes()) {
          byProfile.computeIfAbsent(profile, any -> new ArrayList<>()).add(candidate);
        }
      }
      return new Groups(candidates, byEnd, byProfile);
    }
  }

  private final Position place;
  private final List<Candidate> candidates;
  private final int most;
  private final Groups unbroken;
  private @Nullable Groups kept;

  /**
   * Takes those of candidates that may be part of so many that are listed.
   *
   * @param place the position
   * @param candidates what could stand there
   * @param most how many are listed
   */
  Row(Position place, List<Candidate> candidates, int most) {
    this.place = place;
    this.candidates = candidates;
    this.most = most;
    this.unbroken = Groups.of(
        Front.ofCandidates(candidates.stream().filter(Candidate::isSuited).toList(), most));
  }

  /** The same candidates where another number of proposals is listed. */
  Row listing(int other) {
    return other == most ? this : new Row(place, candidates, other);
  }

  /** The position. */
  Position place() {
    return place;
  }

  /** Whether nothing could stand here. */
  boolean isEmpty() {
    return candidates.isEmpty();
  }

  /** What could stand here, whether it may be listed or not. */
  List<Candidate> candidates() {
    return candidates;
  }

  /** The parts that may be listed here. */
  List<Candidate> kept() {
    return groups(false).all;
  }

  /** What may be listed here, by the profile of the plug. */
  Map<String, List<Candidate>> byProfile(boolean isSuited) {
    return groups(isSuited).byProfile;
  }

  /** What may be listed here, by the end towards the supply. */
  Map<Integer, List<Candidate>> byEnd(boolean isSuited) {
    return groups(isSuited).byEnd;
  }

  /** What may be listed here, all or what breaks nothing. */
  List<Candidate> suited(boolean isSuited) {
    return groups(isSuited).all;
  }

  private Groups groups(boolean isSuited) {
    if (isSuited) {
      return unbroken;
    }
    Groups all = kept;
    if (all == null) {
      all = Groups.of(Front.ofCandidates(candidates, most));
      kept = all;
    }
    return all;
  }
}
