package org.airfit.select;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import org.airfit.internal.Interruption;

/**
 * Leaves out of choices that have the same open end those that cannot be listed, whatever follows: those that as many
 * others as are listed stand before, and those of the same parts with better adapters.
 *
 * <p>One choice stands before another whatever follows if it is as good in all that counts, and better in something
 * that stays better: misses that are measured, joints and costs are sums, names are compared from the outlet on, and a
 * difference of pressure grows on the way to the tool, because an element takes no less from less pressure.
 */
final class Front {

  /** What ends where its thread is interrupted. */
  static final String SEARCH = "the search for parts";

  /** More than this is left of a difference of whole pascals, whatever computing rounds off. */
  private static final double SURE_PASCALS = 1.001;

  private final int most;

  /**
   * Obtains a front.
   *
   * @param most how many are listed
   */
  Front(int most) {
    this.most = most;
  }

  /** Choices of the same parts that were kept, with different adapters, most pressure first. */
  private static final class Variants {

    private final List<Choice> byPressure = new ArrayList<>();

    /** The most pressure of any [Pa]; kept here, as it is looked at far more often than it changes. */
    double mostPascals;

    /** How many have as much pressure at least [Pa]. */
    int withAsMuch(double pascals) {
      int from = 0;
      int to = byPressure.size();
      while (from < to) {
        int middle = (from + to) / 2;
        if (byPressure.get(middle).pascals >= pascals) {
          from = middle + 1;
        } else {
          to = middle;
        }
      }
      return from;
    }

    void add(Choice choice) {
      byPressure.add(withAsMuch(choice.pascals), choice);
      mostPascals = byPressure.get(0).pascals;
    }
  }

  /**
   * Those of choices with the same open end that may be listed, in order.
   *
   * <p>What has less pressure is as good as none that has more. Of thousands that were kept it is enough to ask those
   * of each set of parts that have as much, from the one on that has least of it, as that is mostly the cheapest.
   *
   * @param choices the choices
   * @param staysDifferent whether air arrives in all that will be listed and no regulator is ahead, so that differences
   *     of pressure stay
   */
  List<Choice> of(List<Choice> choices, boolean staysDifferent) {
    List<Choice> sorted = new ArrayList<>(choices);
    sorted.sort(Choice.ORDER);
    List<Choice> kept = new ArrayList<>();
    IdentityHashMap<Choice.Parts, Variants> byParts = new IdentityHashMap<>();
    List<Variants> byPressure = new ArrayList<>();
    for (Choice choice : sorted) {
      Interruption.check(SEARCH);
      Variants own = byParts.computeIfAbsent(choice.parts, any -> new Variants());
      if (!isBeaten(choice, own, byPressure, staysDifferent)) {
        kept.add(choice);
        own.add(choice);
        if (own.mostPascals == choice.pascals) {
          byPressure.remove(own);
          byPressure.add(place(byPressure, choice.pascals), own);
        }
      }
    }
    return kept;
  }

  /** Where variants with so much pressure at most belong [Pa]. */
  private static int place(List<Variants> byPressure, double pascals) {
    int place = 0;
    while (place < byPressure.size() && byPressure.get(place).mostPascals >= pascals) {
      place++;
    }
    return place;
  }

  private boolean isBeaten(
      Choice choice, Variants own, List<Variants> byPressure, boolean staysDifferent) {
    for (int i = own.withAsMuch(choice.pascals) - 1; i >= 0; i--) {
      Choice other = own.byPressure.get(i);
      if (other.isAsGoodAs(choice) && hasBetterAdapters(other, choice, staysDifferent)) {
        return true;
      }
    }
    int before = 0;
    for (Variants others : byPressure) {
      if (others.mostPascals < choice.pascals) {
        return false;
      }
      if (others != own && isBefore(others, choice, staysDifferent) && ++before == most) {
        return true;
      }
    }
    return false;
  }

  /** Whether one of the variants stands before a choice whatever follows. */
  private static boolean isBefore(Variants others, Choice choice, boolean staysDifferent) {
    for (int i = others.withAsMuch(choice.pascals) - 1; i >= 0; i--) {
      Choice other = others.byPressure.get(i);
      if (other.isAsGoodAs(choice) && staysBefore(other, choice, staysDifferent)) {
        return true;
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
