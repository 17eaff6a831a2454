package org.airfit.thread;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * The threads that readings may mean, weighed and judged: what an identification answers from.
 *
 * @param readings the readings
 * @param candidates the threads, likeliest first
 * @param best the likeliest
 * @param unknownProbability the chance of none of these [-]
 * @param evidence what all chances are parts of
 * @param pitchIsSure whether five pitches were counted or two evidences agree on the pitch of the likeliest
 * @param verdict how firmly the readings speak
 * @param explanations what would fit if one slip had been made
 */
record ThreadRanking(
    ThreadReadings readings,
    List<ThreadCandidate> candidates,
    ThreadHypothesis best,
    double unknownProbability,
    double evidence,
    boolean pitchIsSure,
    ThreadVerdict verdict,
    List<SlipCandidate> explanations) {

  /** The chance it takes [-]. */
  static final double DECIDED = 0.95;

  /** From here on a thread is named among those it may be [-]. */
  static final double CONTENDER = 0.01;

  private static final int MOST_EXPLANATIONS = 3;

  /** A thread and its prior times likelihood. */
  private record Weighed(ThreadHypothesis hypothesis, double weight) {}

  /** Ranks what a thread may be. */
  static ThreadRanking of(ThreadReadings readings) {
    double unknown = ThreadHypothesis.unknownWeight(readings);
    List<Weighed> all = weighed(readings);
    all.sort(Comparator.comparingDouble(Weighed::weight).reversed());
    double total = unknown + sum(all);
    List<ThreadCandidate> candidates = all.stream()
        .map(each -> new ThreadCandidate(each.hypothesis.thread(), each.weight / total))
        .toList();
    ThreadHypothesis best = all.get(0).hypothesis;
    boolean pitchSure = pitchIsSure(best, readings);
    ThreadVerdict verdict = verdict(readings, all, unknown, total, pitchSure);
    boolean firm = verdict == ThreadVerdict.IDENTIFIED || verdict == ThreadVerdict.FOREIGN;
    return new ThreadRanking(
        readings,
        candidates,
        best,
        unknown / total,
        total,
        pitchSure,
        verdict,
        firm ? List.of() : explanations(readings, all));
  }

  private static List<Weighed> weighed(ThreadReadings readings) {
    List<Weighed> all = new ArrayList<>();
    for (Gender gender : List.of(readings.gender(), readings.gender().other())) {
      for (ThreadHypothesis hypothesis : ThreadHypothesis.all(gender)) {
        all.add(new Weighed(hypothesis, hypothesis.weight(readings)));
      }
    }
    return all;
  }

  private static double sum(List<Weighed> all) {
    return all.stream().mapToDouble(Weighed::weight).sum();
  }

  /** The pitch was counted over enough, or read in two ways, or in one that the crests alone agree with. */
  private static boolean pitchIsSure(ThreadHypothesis best, ThreadReadings readings) {
    if (ThreadFit.hasPitch(readings)) {
      return true;
    }
    if (!ThreadFit.hasPitchAndCrests(readings) || !ThreadFit.pitchesAgree(best, readings)) {
      return false;
    }
    ThreadReadings crests = readings.withoutPitch();
    List<Weighed> all = weighed(crests);
    double ofThisPitch = sum(
        all.stream().filter(each -> ThreadFit.samePitch(each.hypothesis, best)).toList());
    return ofThisPitch >= DECIDED * (sum(all) + ThreadHypothesis.unknownWeight(crests));
  }

  private static ThreadVerdict verdict(
      ThreadReadings readings, List<Weighed> all, double unknown, double total, boolean pitchSure) {
    ThreadHypothesis best = all.get(0).hypothesis;
    if (all.get(0).weight >= DECIDED * total
        && pitchSure
        && ThreadFit.asRead(best, readings)
        && ThreadFit.pitchIsClose(best, readings)) {
      return best.thread() instanceof ThreadDesignation
          ? ThreadVerdict.IDENTIFIED
          : ThreadVerdict.FOREIGN;
    }
    boolean someFits = all.stream()
        .filter(each -> each.weight >= CONTENDER * total)
        .anyMatch(each -> ThreadFit.loosely(each.hypothesis, readings));
    return unknown >= DECIDED * total || !someFits
        ? ThreadVerdict.NO_MATCH
        : ThreadVerdict.AMBIGUOUS;
  }

  private static List<SlipCandidate> explanations(ThreadReadings readings, List<Weighed> all) {
    List<SlipCandidate> found = new ArrayList<>();
    for (Weighed each : all) {
      if (found.size() < MOST_EXPLANATIONS) {
        ThreadFit.slip(each.hypothesis, readings)
            .ifPresent(slip -> found.add(new SlipCandidate(slip, each.hypothesis.thread())));
      }
    }
    return found;
  }

  /** The threads worth naming. */
  List<ThreadCandidate> contenders() {
    return candidates.stream().filter(c -> c.probability() >= CONTENDER).toList();
  }

  /** The chance that it is not the likeliest [-], which is not lost beside 1. */
  double restProbability() {
    double rest = unknownProbability;
    for (ThreadCandidate candidate : candidates.subList(1, candidates.size())) {
      rest += candidate.probability();
    }
    return rest;
  }

  /** The foreign thread, if the verdict is that it is one. */
  Optional<ForeignThread> foreign() {
    return verdict == ThreadVerdict.FOREIGN
        ? Optional.of((ForeignThread) candidates.get(0).thread())
        : Optional.empty();
  }

  /** The pipe thread nearest to the readings. */
  ThreadDesignation nearest() {
    return nearest(thread -> true, Comparator.comparingDouble(each -> each.distance(readings)));
  }

  /** The usual pipe thread of the nearest diameter, for which the thread may be taken; of two the nearer pitch. */
  ThreadDesignation lookalike() {
    return nearest(
        thread -> thread.family() == ThreadFamily.NPT
            || thread.family() == ThreadFamily.BSPT
            || thread.family() == ThreadFamily.BSPP,
        Comparator.<ThreadHypothesis>comparingDouble(each -> each.outside(readings))
            .thenComparingDouble(each -> each.distance(readings)));
  }

  private ThreadDesignation nearest(
      Predicate<ThreadDesignation> among, Comparator<ThreadHypothesis> nearer) {
    ThreadHypothesis nearest = ThreadHypothesis.all(readings.gender()).stream()
        .filter(hypothesis ->
            hypothesis.thread() instanceof ThreadDesignation thread && among.test(thread))
        .min(nearer)
        .orElseThrow();
    return (ThreadDesignation) nearest.thread();
  }
}
