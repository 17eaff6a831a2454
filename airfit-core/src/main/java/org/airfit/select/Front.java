package org.airfit.select;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.airfit.internal.Interruption;

/**
 * Leaves out of choices that have the same open end those that cannot be listed, whatever follows: those that as many
 * others as are listed stand before, and those of the same parts with better adapters.
 *
 * <p>One choice stands before another whatever follows if it is as good in all that counts, and better in something
 * that stays better: misses that are measured, joints and costs are sums, names are compared from the outlet on, and a
 * difference of pressure grows on the way to the tool, because an element takes no less from less pressure. Not
 * thread-safe: it counts.
 */
final class Front {

  /** What ends where its thread is interrupted. */
  static final String SEARCH = "the search for parts";

  /** More than this is left of a difference of whole pascals, whatever computing rounds off. */
  private static final double SURE_PASCALS = 1.001;

  private final int most;
  private int counts;

  /**
   * Obtains a front.
   *
   * @param most how many are listed
   */
  Front(int most) {
    this.most = most;
  }

  /**
   * Those of choices with the same open end that may be listed, in order.
   *
   * @param choices the choices
   * @param staysDifferent whether air arrives in all that will be listed and no regulator is ahead, so that differences
   *     of pressure stay
   */
  List<Choice> of(List<Choice> choices, boolean staysDifferent) {
    List<Choice> sorted = new ArrayList<>(choices);
    sorted.sort(Choice.ORDER);
    List<Choice> kept = new ArrayList<>();
    for (Choice choice : sorted) {
      Interruption.check(SEARCH);
      if (!isBeaten(choice, kept, staysDifferent)) {
        kept.add(choice);
      }
    }
    return kept;
  }

  private boolean isBeaten(Choice choice, List<Choice> kept, boolean staysDifferent) {
    counts++;
    int before = 0;
    for (Choice other : kept) {
      if (other.isAsGoodAs(choice)) {
        if (other.parts == choice.parts) {
          if (hasBetterAdapters(other, choice, staysDifferent)) {
            return true;
          }
        } else if (staysBefore(other, choice, staysDifferent)
            && other.parts.isFirstIn(counts)
            && ++before == most) {
          return true;
        }
      }
    }
    return false;
  }

  /** Of the same parts, so in the same joints: better in what stays better, or with the first adapters by name. */
  private static boolean hasBetterAdapters(Choice one, Choice other, boolean staysDifferent) {
    return one.cost < other.cost
        || one.faults < other.faults
        || one.missedAir < other.missedAir
        || (staysDifferent && one.pascals > other.pascals)
        || Choice.byAdapters(one, other) <= 0;
  }

  private static boolean staysBefore(Choice one, Choice other, boolean staysDifferent) {
    return one.cost < other.cost
        || one.missing < other.missing
        || one.faults < other.faults
        || one.missedLength < other.missedLength
        || one.missedAir < other.missedAir
        || (staysDifferent && one.pascals >= other.pascals + SURE_PASCALS)
        || one.parts.isNamedBefore(other.parts);
  }

  /** Those of candidates that may be part of what is listed; the parts of a position come in order of their names. */
  static List<Candidate> ofCandidates(List<Candidate> candidates, int most) {
    List<Candidate> sorted = new ArrayList<>(candidates);
    sorted.sort(Comparator.comparingLong(Candidate::cost).thenComparingInt(Candidate::rank));
    List<Candidate> kept = new ArrayList<>();
    Map<Long, List<Candidate>> keptByEnds = new HashMap<>(); // no others are as good
    for (Candidate candidate : sorted) {
      Interruption.check(SEARCH);
      List<Candidate> alike = keptByEnds.computeIfAbsent(
          ((long) candidate.near() << Integer.SIZE) + candidate.far(), any -> new ArrayList<>());
      int before = 0;
      for (Candidate other : alike) {
        if (other.isAsGoodAs(candidate)
            && (other.cost() < candidate.cost() || other.rank() < candidate.rank())
            && ++before == most) {
          break;
        }
      }
      if (before < most) {
        kept.add(candidate);
        alike.add(candidate);
      }
    }
    return kept;
  }
}
