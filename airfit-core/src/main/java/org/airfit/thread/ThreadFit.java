package org.airfit.thread;

import java.util.Optional;
import org.airfit.internal.Statistics;
import org.airfit.measure.PitchCount;
import org.airfit.quantity.Length;

/**
 * Whether readings fit a thread at all, however much likelier it is than others: an outlier test over all of them.
 *
 * <p>No reading may lie further outside what the thread allows than k of its standard uncertainties, with k the score
 * that one of m good readings exceeds in one piece of a hundred: Q(k) = 0.005/m (Bonferroni). A leaf fits a pitch
 * within 2 %.
 *
 * <p>For a firm answer a pitch must lie nearer: within two standard uncertainties, which 95 of 100 good readings do
 * (the expanded uncertainty of the GUM). It alone tells a thread of a standard from one of none that has its
 * diameter.
 */
final class ThreadFit {

  /** So many pitches counted are enough by themselves. */
  static final int ENOUGH_PITCHES = 5;

  /** So many pitches counted are one of two ways. */
  private static final int SOME_PITCHES = 3;

  static final double LEAF = 0.02;
  private static final double OTHER_WAY = 0.02;
  private static final double OUTLIER = 0.01;
  static final double COVERAGE = 2.0;
  private static final double ROUNDED = 0.005;

  private ThreadFit() {}

  /** k, for the readings there are. */
  static double limit(ThreadReadings r) {
    int m = 1;
    m += r.lastCrest().isPresent() ? 1 : 0;
    m += r.pitchCount().isPresent() ? 1 : 0;
    m += r.pitches().other() != null ? 1 : 0;
    m += r.flankAngleDegrees().isPresent() ? 1 : 0;
    return Statistics.normalScore(0.5 * OUTLIER / m);
  }

  /** Whether all readings fit as they were taken, the eye included. */
  static boolean asRead(ThreadHypothesis h, ThreadReadings r) {
    return h.thread().gender() == r.gender()
        && r.taperSeen().map(seen -> seen == h.thread().isTapered()).orElse(true)
        && measured(h, r);
  }

  /** Whether all readings but that of the eye fit as they were taken. */
  private static boolean measured(ThreadHypothesis h, ThreadReadings r) {
    return h.thread().gender() == r.gender()
        && firstFits(h, r)
        && lastFits(h, r)
        && flanksFit(h, r)
        && pitchesAgree(h, r);
  }

  /** Whether they fit but for the eye, a leaf, or the place where the diameter was taken. */
  static boolean loosely(ThreadHypothesis h, ThreadReadings r) {
    return measured(h, r)
        || slip(h, r)
            .filter(slip -> slip == ThreadSlip.LEAF_MISREAD || slip == ThreadSlip.NOT_AT_THE_END)
            .isPresent();
  }

  /** The one slip that would explain why the readings do not fit; empty if they fit, or if there is none. */
  static Optional<ThreadSlip> slip(ThreadHypothesis h, ThreadReadings r) {
    if (h.thread().gender() != r.gender()) {
      return measured(h, r.ofOtherGender())
          ? Optional.of(ThreadSlip.INSIDE_OUTSIDE_SWAPPED)
          : Optional.empty();
    }
    if (measured(h, r)) {
      return Optional.empty();
    }
    if (r.leafPitch().isPresent() && measured(h, r.withoutLeaf())) {
      return Optional.of(ThreadSlip.LEAF_MISREAD);
    }
    if (r.pitchCount().isPresent()) {
      int count = r.pitchCount().get().pitches();
      if (count > 1 && measured(h, r.recounted(count - 1))) {
        return Optional.of(ThreadSlip.THREADS_COUNTED_AS_PITCHES);
      }
      if (count < 50 && measured(h, r.recounted(count + 1))) {
        return Optional.of(ThreadSlip.ONE_THREAD_OVERLOOKED);
      }
    }
    if (r.lastCrest().isPresent() && measured(h, r.withEndsSwapped())) {
      return Optional.of(ThreadSlip.ENDS_SWAPPED);
    }
    return anywhereFits(h, r) && flanksFit(h, r) && pitchesAgree(h, r)
        ? Optional.of(ThreadSlip.NOT_AT_THE_END)
        : Optional.empty();
  }

  private static boolean within(double value, double[] stretch, double margin) {
    return value >= stretch[0] - margin && value <= stretch[1] + margin;
  }

  /** By how much a diameter may be read outside its stretch [mm]. */
  static double margin(ThreadReadings r) {
    return limit(r) * r.diameterUncertainty().millimetres();
  }

  static boolean firstFits(ThreadHypothesis h, ThreadReadings r) {
    return within(r.firstCrest().millimetres(), h.crests().firstAllowed(), margin(r));
  }

  private static boolean lastFits(ThreadHypothesis h, ThreadReadings r) {
    return r.lastCrest()
        .map(last -> within(
            last.millimetres() - r.firstCrest().millimetres(),
            h.crests().growthAllowed(),
            Math.sqrt(2.0) * margin(r)))
        .orElse(true);
  }

  private static boolean anywhereFits(ThreadHypothesis h, ThreadReadings r) {
    double[] stretch = h.crests().anywhereAllowed();
    double first = r.firstCrest().millimetres();
    double last = r.lastCrest().map(Length::millimetres).orElse(first);
    double growth = r.gender() == Gender.MALE ? last - first : first - last;
    return h.thread().isTapered()
        && within(first, stretch, margin(r))
        && within(last, stretch, margin(r))
        && (r.lastCrest().isEmpty() || growth > margin(r));
  }

  private static boolean flanksFit(ThreadHypothesis h, ThreadReadings r) {
    return r.flankAngleDegrees().isEmpty()
        || Math.abs(r.flankAngleDegrees().getAsDouble() - h.thread().flankAngleDegrees())
            <= limit(r) * r.flankAngleUncertaintyDegrees().orElseThrow();
  }

  /** Whether the pitch fits in every way in which it was read. */
  static boolean pitchesAgree(ThreadHypothesis h, ThreadReadings r) {
    ThreadReadings.Leaf leaf = r.pitches().leaf();
    return measuredWithin(limit(r), h, r)
        && (leaf == null || Math.abs(leaf.pitch().millimetres() / h.pitch() - 1.0) <= LEAF);
  }

  /** Whether every pitch that was measured lies so near that it speaks for this thread. */
  static boolean pitchIsClose(ThreadHypothesis h, ThreadReadings r) {
    return measuredWithin(COVERAGE, h, r);
  }

  /** Whether a pitch counted, and one read otherwise, lie within so many of their standard uncertainties. */
  private static boolean measuredWithin(double k, ThreadHypothesis h, ThreadReadings r) {
    PitchCount count = r.pitches().count();
    ThreadReadings.Pitch other = r.pitches().other();
    return (count == null || Math.abs(count.deviation(h.thread().pitch(), count.pitches())) <= k)
        && (other == null
            || Math.abs(other.read().millimetres() - h.pitch())
                <= k * other.uncertainty().millimetres());
  }

  /** Whether five pitches were counted, or the pitch was read in two ways. */
  static boolean hasPitch(ThreadReadings r) {
    int counted = r.pitchCount().map(PitchCount::pitches).orElse(0);
    return counted >= ENOUGH_PITCHES || ways(r) >= 2;
  }

  /** Whether the pitch was read at all and the crests were read at both ends, which may tell it too. */
  static boolean hasPitchAndCrests(ThreadReadings r) {
    return ways(r) >= 1 && r.lastCrest().isPresent();
  }

  /** In how many ways the pitch was read that count. */
  private static int ways(ThreadReadings r) {
    int ways = r.pitchCount().filter(count -> count.pitches() >= SOME_PITCHES).isPresent() ? 1 : 0;
    ways += r.leafPitch().isPresent() ? 1 : 0;
    ThreadReadings.Pitch other = r.pitches().other();
    boolean close =
        other != null && other.uncertainty().compareTo(other.read().times(OTHER_WAY)) <= 0;
    return ways + (close ? 1 : 0);
  }

  /** Whether two threads have one pitch; standards round it to a micrometre. */
  static boolean samePitch(ThreadHypothesis one, ThreadHypothesis other) {
    return Math.abs(one.pitch() / other.pitch() - 1.0) <= ROUNDED;
  }
}
