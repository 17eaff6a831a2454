package org.airfit.line;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.airfit.internal.Digits;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.quantity.Range;
import org.airfit.source.Source;

/**
 * A pipe, tube or hose as well as it is known: one, or somewhere between two because its bore, its wall, its length or
 * its fittings are not told well enough.
 *
 * <p>The two ends bound the pressure loss of every conduit within, at every flow and inlet: whoever has a bore, length,
 * roughness and sum of fitting losses between those of the ends loses at least what {@code most} loses and at most what
 * {@code least} loses, and chokes at a flow between theirs.
 *
 * <p><b>Why the ends bound.</b> What a line loses rises with G²(λL/D + ΣK), G = 4ṁ/(πD²), and, where the acceleration
 * of the air is counted, with G² as well.
 *
 * <ul>
 *   <li>It rises with L and ΣK, of which it is a sum with factors that are not negative.
 *   <li>It rises with the roughness, or stays: λ does so at every Re, laminar flow not minding it.
 *   <li>It falls as the bore grows. G² falls with D⁻⁴, and at a fixed flow Re with D⁻¹. λ does not fall faster than
 *       Re⁻¹, the slope of laminar flow, nor rise as ε/D falls, so that λL/D · G² falls at least with D⁻⁴.
 *   <li>At Re 2300 λ jumps up as Re rises, so a wider bore can only fall from turbulent to laminar, which lowers the
 *       loss: the order holds across the jump.
 * </ul>
 *
 * @param least the one that lets least through: the narrowest, longest, roughest, with most fittings
 * @param most the one that lets most through
 * @param assumptions what was taken for what is not known, each by itself; none where all is as told
 */
public record ConduitRange(Conduit least, Conduit most, List<Source> assumptions) {

  private static final Source TOLD = Source.derived("as told, nothing assumed");

  private static final Source LENGTH_UNTOLD = Source.commonPractice(
      "length not told: from the nearest to the farthest that it may have to reach; its loss is that of the farthest");

  /**
   * Checks the components.
   *
   * @param least the one that lets least through: the narrowest, longest, roughest, with most fittings
   * @param most the one that lets most through
   * @param assumptions what was taken for what is not known, each by itself; none where all is as told
   * @throws IllegalArgumentException if the bore of {@code least} is larger than that of {@code most}, or its length,
   *     roughness or sum of fitting losses is smaller
   */
  public ConduitRange {
    Objects.requireNonNull(least, "least");
    Objects.requireNonNull(most, "most");
    assumptions = List.copyOf(Objects.requireNonNull(assumptions, "assumptions"));
    if (least.bore().compareTo(most.bore()) > 0) {
      throw wrong(
          "bore",
          "at most",
          most.bore().inFull(LengthUnit.MILLIMETRE),
          least.bore().inFull(LengthUnit.MILLIMETRE));
    }
    if (least.length().compareTo(most.length()) < 0) {
      throw wrong(
          "length",
          "at least",
          most.length().inFull(LengthUnit.METRE),
          least.length().inFull(LengthUnit.METRE));
    }
    if (least.roughness().compareTo(most.roughness()) < 0) {
      throw wrong(
          "roughness",
          "at least",
          most.roughness().inFull(LengthUnit.MILLIMETRE),
          least.roughness().inFull(LengthUnit.MILLIMETRE));
    }
    if (least.fittingLoss() < most.fittingLoss()) {
      throw wrong(
          "sum of fitting losses K",
          "at least",
          Digits.inFull(most.fittingLoss()),
          Digits.inFull(least.fittingLoss()));
    }
  }

  /**
   * Obtains the range of which one thing was taken for what is not known.
   *
   * @param least the one that lets least through: the narrowest, longest, roughest, with most fittings
   * @param most the one that lets most through
   * @param assumption what was taken
   * @throws IllegalArgumentException if the bore of {@code least} is larger than that of {@code most}, or its length,
   *     roughness or sum of fitting losses is smaller
   */
  public ConduitRange(Conduit least, Conduit most, Source assumption) {
    this(least, most, List.of(Objects.requireNonNull(assumption, "assumption")));
  }

  /** {@return what was taken for what is not known, in one; that nothing was assumed where all is as told} */
  public Source assumption() {
    return assumptions.isEmpty() ? TOLD : Source.together(assumptions);
  }

  /** {@return whether all is as told, be it exactly or as a range: nothing was taken for what is not known} */
  public boolean isTold() {
    return assumptions.isEmpty();
  }

  /** {@return whether its bore is all that the name of a hose may mean, as nobody measured it} */
  public boolean isBoreByName() {
    return assumptions.stream().anyMatch(ConduitReader::isBoreOfHose);
  }

  private static IllegalArgumentException wrong(
      String what, String order, String most, String least) {
    return new IllegalArgumentException(what + " of the conduit that lets least through must be "
        + order + " that of the other, " + most + ", was " + least);
  }

  /**
   * Obtains the range of a conduit that is known.
   *
   * @param conduit the conduit
   * @return the range with {@code conduit} at both ends
   */
  public static ConduitRange exactly(Conduit conduit) {
    Objects.requireNonNull(conduit, "conduit");
    return new ConduitRange(conduit, conduit, List.of());
  }

  /**
   * Obtains this range with fittings on it, instead of those it has.
   *
   * @param fittings the fittings
   * @return this with the largest loss the words leave open on {@code least}, and the least on {@code most}
   * @throws IllegalArgumentException if a bore is not above 0.5 mm
   */
  public ConduitRange withFittings(FittingList fittings) {
    Objects.requireNonNull(fittings, "fittings");
    List<Source> taken = new ArrayList<>(assumptions);
    taken.addAll(fittings.assumptions());
    return new ConduitRange(
        least.withFittings(fittings.mostLoss(least.bore())),
        most.withFittings(fittings.leastLoss(most.bore())),
        taken);
  }

  /**
   * Obtains this range with its bore measured. Nothing is then taken for the bore any more.
   *
   * @param measured the true bore, of both ends; of a wall that may be rougher than 0.05 of it, as much is taken
   * @return this with that bore
   * @throws IllegalArgumentException if {@code measured} is out of the range of {@link Conduit#of}
   */
  public ConduitRange ofBore(Length measured) {
    Objects.requireNonNull(measured, "measured");
    List<Source> taken = new ArrayList<>(assumptions);
    boolean wasCapped = taken.remove(capped(least.roughness()));
    taken.removeIf(ConduitReader::isBoreOfHose);
    Length roughest = wasCapped ? uncapped(least) : least.roughness();
    Conduit narrow = ofBore(least, measured, roughest);
    if (narrow.roughness().compareTo(roughest) < 0) {
      taken.add(capped(narrow.roughness()));
    }
    return new ConduitRange(narrow, ofBore(most, measured, most.roughness()), taken);
  }

  /**
   * Obtains this range with its length measured. Nothing is then taken for the length any more.
   *
   * @param measured the length, or between which two it lies
   * @return this with the longest at {@code least} and the shortest at {@code most}
   * @throws IllegalArgumentException if {@code measured} is out of the range of {@link Conduit#of}
   */
  public ConduitRange ofLength(Range<Length> measured) {
    Objects.requireNonNull(measured, "measured");
    List<Source> taken = new ArrayList<>(assumptions);
    taken.remove(LENGTH_UNTOLD);
    return new ConduitRange(
        least.withLength(measured.most()), most.withLength(measured.least()), taken);
  }

  /**
   * Obtains this range of a hose whose length nobody told, only how far it must reach: it may be as short as the nearest
   * of that, and as long as the farthest. Where that is one length, it is taken to be told so.
   *
   * @param reach how far it must reach
   * @return this with that length, which is not told but where {@code reach} is exact
   * @throws IllegalArgumentException if {@code reach} is out of the range of {@link Conduit#of}
   */
  public ConduitRange ofUntoldLength(Range<Length> reach) {
    ConduitRange reaching = ofLength(Objects.requireNonNull(reach, "reach"));
    if (reach.isExact()) {
      return reaching;
    }
    List<Source> taken = new ArrayList<>(reaching.assumptions);
    taken.add(LENGTH_UNTOLD);
    return new ConduitRange(reaching.least, reaching.most, taken);
  }

  /** {@return whether its length was taken from how far it must reach, as nobody told it} */
  public boolean isLengthUntold() {
    return assumptions.contains(LENGTH_UNTOLD);
  }

  /**
   * How rough a wall may be that was taken no rougher than a narrower bore allows: as rough as an old one of its kind,
   * and one that is not told as an old hose of smooth rubber.
   */
  private static Length uncapped(Conduit conduit) {
    Length old = conduit.wall().orElse(Wall.SMOOTH_RUBBER_HOSE).most().times(ConduitReader.AGED);
    return old.compareTo(conduit.roughness()) > 0 ? old : conduit.roughness();
  }

  /** A wall of a roughness, or as rough as its bore allows. */
  private static Conduit ofBore(Conduit conduit, Length measured, Length roughness) {
    Length roughest = measured.times(FrictionLaw.ROUGHEST);
    if (conduit.roughness().equals(roughness) && roughness.compareTo(roughest) <= 0) {
      return conduit.withBore(measured);
    }
    Conduit rough = Conduit.of(
            measured, conduit.length(), roughness.compareTo(roughest) < 0 ? roughness : roughest)
        .withFittings(conduit.fittingLoss());
    return conduit.wall().map(rough::withWall).orElse(rough);
  }

  /** That a wall is taken no rougher than so, where its name allows more. */
  static Source capped(Length roughest) {
    return Source.derived("roughness at most " + Digits.significant(roughest.millimetres(), 3)
        + " mm (" + Digits.significant(roughest.in(LengthUnit.INCH), 3) + " in), 0.05 of the bore");
  }

  /** {@return whether the two ends are one conduit} */
  public boolean isExact() {
    return least.equals(most);
  }

  /** {@return the ends, such as "from 10 m of 5.6 mm bore to 10 m of 7.2 mm bore"; the conduit where it is known} */
  @Override
  public String toString() {
    return isExact() ? least.toString() : "from " + least + " to " + most;
  }
}
