package org.airfit.select;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * One position with its candidates.
 *
 * @param place the position
 * @param kept the parts that may be listed there
 * @param unbroken those of them that break nothing
 */
record Row(Position place, List<Candidate> kept, List<Candidate> unbroken) {

  /** Those of candidates that may be part of so many that are listed. */
  static Row of(Position place, List<Candidate> candidates, int most) {
    List<Candidate> kept = Front.ofCandidates(candidates, most);
    return new Row(place, kept, kept.stream().filter(Candidate::isSuited).toList());
  }

  /** What may be listed here, by the profile of the plug. */
  Map<String, List<Candidate>> byProfile(boolean isSuited) {
    Map<String, List<Candidate>> groups = new LinkedHashMap<>();
    for (Candidate candidate : suited(isSuited)) {
      for (String profile : candidate.takes()) {
        groups.computeIfAbsent(profile, any -> new ArrayList<>()).add(candidate);
      }
    }
    return groups;
  }

  /** What may be listed here, by the end towards the supply. */
  Map<Integer, List<Candidate>> byEnd(boolean isSuited) {
    Map<Integer, List<Candidate>> groups = new LinkedHashMap<>();
    for (Candidate candidate : suited(isSuited)) {
      groups.computeIfAbsent(candidate.near(), any -> new ArrayList<>()).add(candidate);
    }
    return groups;
  }

  /** What may be listed here, all or what breaks nothing. */
  List<Candidate> suited(boolean isSuited) {
    return isSuited ? unbroken : kept;
  }
}
