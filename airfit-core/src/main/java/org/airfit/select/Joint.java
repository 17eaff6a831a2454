package org.airfit.select;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import org.airfit.joint.Chain;
import org.airfit.joint.ChainVerdict;
import org.airfit.joint.End;
import org.airfit.joint.Mating;
import org.airfit.safety.Caution;
import org.airfit.working.UnitSystem;

/**
 * Two ends that must be joined, and the adapters that join them soundly, at most three: those with which the whole
 * proposal stands first.
 *
 * <p>This class is immutable and thread-safe.
 */
public final class Joint {

  private final String where;
  private final Chain<Part.Adapter> chain;

  Joint(String where, Chain<Part.Adapter> chain) {
    this.where = where;
    this.chain = chain;
  }

  /** That way as a joint, with its pairs of ends worked out; no adapters where the ends meet or nothing joins them. */
  static Joint of(String where, End upstream, End downstream, List<Part.Adapter> adapters) {
    return new Joint(where, chain(upstream, downstream, adapters));
  }

  /** Which way round each adapter stands is found from its ends; both may do, and then the first is taken. */
  private static Chain<Part.Adapter> chain(
      End upstream, End downstream, List<Part.Adapter> adapters) {
    List<Mating> matings = new ArrayList<>();
    if (!turned(upstream, downstream, adapters, 0, matings)) {
      return new Chain<>(upstream, downstream, List.of(), List.of(Mating.of(upstream, downstream)));
    }
    return new Chain<>(upstream, downstream, adapters, matings);
  }

  private static boolean turned(
      End open, End goal, List<Part.Adapter> adapters, int next, List<Mating> matings) {
    if (next == adapters.size()) {
      matings.add(Mating.of(open, goal));
      return Mating.isSound(open, goal);
    }
    Part.Adapter adapter = adapters.get(next);
    return turned(open, goal, adapters, next, matings, adapter.one(), adapter.other())
        || turned(open, goal, adapters, next, matings, adapter.other(), adapter.one());
  }

  private static boolean turned(
      End open,
      End goal,
      List<Part.Adapter> adapters,
      int next,
      List<Mating> matings,
      End near,
      End far) {
    if (!Mating.isSound(open, near)) {
      return false;
    }
    int before = matings.size();
    matings.add(Mating.of(open, near));
    if (turned(far, goal, adapters, next + 1, matings)) {
      return true;
    }
    matings.subList(before, matings.size()).clear();
    return false;
  }

  /** {@return what is joined, such as "outlet to socket"} */
  public String where() {
    return where;
  }

  /** {@return the ends, the adapters between them and every pair that meets, from the supply on} */
  public Chain<Part.Adapter> chain() {
    return chain;
  }

  /** {@return the end towards the supply} */
  public End upstream() {
    return chain.from();
  }

  /** {@return the end towards the tool} */
  public End downstream() {
    return chain.to();
  }

  /** {@return the adapters between, from the supply on; empty where the ends meet directly or nothing joins them} */
  public List<Part.Adapter> adapters() {
    return chain.adapters();
  }

  /** {@return every pair of ends that meet, from the supply on} */
  public List<Mating> matings() {
    return chain.matings();
  }

  /** {@return whether every pair of ends that meet is sound} */
  public boolean isSound() {
    return chain.verdict() != ChainVerdict.NOT_JOINED;
  }

  /** {@return whether a pair that meets is meant for low pressure only} */
  public boolean isForLowPressure() {
    return matings().stream().anyMatch(Mating::isForLowPressure);
  }

  /** {@return the warnings of every pair of ends that meet, and of a stack of adapters} */
  public List<Caution> cautions() {
    Set<Caution> each = new LinkedHashSet<>();
    matings().forEach(mating -> each.addAll(mating.cautions()));
    each.addAll(chain.cautions());
    return List.copyOf(each);
  }

  /** {@return what meets what, in words; where nothing joins them, also which standard adapters would} */
  public String inWords() {
    return inWords(UnitSystem.SI);
  }

  /**
   * Tells the same with the numbers in other units.
   *
   * @param units the units
   * @return what meets what, in words
   */
  public String inWords(UnitSystem units) {
    if (!isSound()) {
      String reason = matings().get(0).reason(units);
      return where + ": " + upstream().label() + " and " + downstream().label()
          + " are not joined. " + standards() + reason.substring(0, reason.length() - 1);
    }
    if (adapters().isEmpty()) {
      return where + ": " + upstream().label() + " straight to " + downstream().label();
    }
    return where + ": " + upstream().label() + " to " + downstream().label() + " through "
        + adapters().stream().map(Part.Adapter::name).collect(Collectors.joining(" and "));
  }

  /** The families of two threads of two standards; blank of all else. */
  private String standards() {
    return upstream() instanceof End.Threaded one
            && downstream() instanceof End.Threaded other
            && Ends.areOfTwoStandards(one, other)
        ? "The threads are of two standards, " + familyInWords(one) + " and " + familyInWords(other)
            + ". "
        : "";
  }

  private static String familyInWords(End.Threaded end) {
    return end.family() + " (" + end.family().flankAngleDegrees() + "°)";
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Joint that && where.equals(that.where) && chain.equals(that.chain);
  }

  @Override
  public int hashCode() {
    return Objects.hash(where, chain);
  }

  /** {@return what meets what, in words} */
  @Override
  public String toString() {
    return inWords();
  }
}
