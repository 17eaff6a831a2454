package org.airfit.joint;

import java.util.Optional;
import java.util.function.Function;
import org.airfit.internal.Digits;
import org.airfit.quantity.HoseBore;
import org.airfit.quantity.Length;
import org.airfit.source.Source;
import org.airfit.working.UnitSystem;

/**
 * A hose on a barb, and a tube in a push-in end.
 *
 * <p>A barb is made for every bore that ISO 1307 lets a hose of its name have, however the hose is made; so a hose
 * goes on if the bore it is named by lies inside these limits. Where the barb has no name of the standard nothing says
 * which bores it is made for, and a name that is merely near is not judged. A push-in end takes the tube of its name.
 */
final class HosePairs {

  /** The least spread of a bore in ISO 1307 table 1 [mm], of type A. Names that differ by less may be one bore. */
  private static final double LEAST_SPREAD = 0.8;

  /** From this difference on two tubes cannot be taken for each other [mm]. A choice of this project. */
  private static final double NEAR_TUBE = 0.1;

  private static final Source MADE_FOR =
      Source.commonPractice("a barb takes the hose bore it is made for, with a clamp");

  private static final Source TUBES = Source.derived(
      "outside diameters of inch and metric tube; tolerances of tube (ISO 14743 and its tubes) were not seen");

  private static final String CLAMPED =
      " It holds with a clamp or ferrule of the hose maker's choosing.";

  private HosePairs() {}

  static Pairing of(End.HoseEnd hose, End.Barb barb) {
    HoseBore bore = hose.bore();
    if (bore.equals(barb.bore())) {
      return holds(units -> "The barb is made for this bore.", MADE_FOR);
    }
    Optional<StandardHose> madeFor = StandardHose.calledBy(barb.bore());
    if (madeFor.isPresent()) {
      StandardHose standard = madeFor.get();
      if (StandardHose.calledBy(bore).equals(madeFor)) {
        return holds(
            units -> "The barb is made for this bore: " + barb.bore().label() + " and "
                + bore.label() + " are names of one hose. "
                + limits(barb.bore(), standard, units) + ".",
            standard.source());
      }
      if (standard.anyBore().contains(bore.nominal())) {
        return holds(
            units -> "The barb is made for " + Article.with(barb.bore().toString()) + ". "
                + limits(barb.bore(), standard, units) + ", and " + bore.label()
                + " lies inside"
                + (standard.bore(StandardHose.Type.A).orElseThrow().contains(bore.nominal())
                    ? "."
                    : ", as a hose made without a mandrel may have it."),
            standard.source());
      }
      return differs(
          barb, hose, units -> limits(barb.bore(), standard, units) + ": i", standard.source());
    }
    boolean near = StandardHose.calledBy(bore)
        .map(standard -> standard.anyBore().contains(barb.bore().nominal()))
        .orElse(Math.abs(barb.bore().nominal().millimetres() - bore.nominal().millimetres())
            <= LEAST_SPREAD);
    return near
        ? new Pairing(
            MatingVerdict.NOT_JUDGED,
            "No standard that was seen tells which bores " + Article.with(barb.label())
                + " is made for. Ask its maker, or measure: a barb must be larger than the bore, and the hose"
                + " stretches over it.",
            Source.standard("ISO 1307:2006, table 1, ten of its sizes"))
        : differs(barb, hose, units -> "I", MADE_FOR);
  }

  private static String limits(HoseBore named, StandardHose standard, UnitSystem units) {
    return "ISO 1307 lets " + Article.with(named.label()) + " hose measure "
        + Digits.significant(standard.anyBore().least().in(units.smallLengthUnit()), 4) + " to "
        + units.saySmall(standard.anyBore().most());
  }

  private static Pairing holds(Function<UnitSystem, String> why, Source source) {
    return new Pairing(MatingVerdict.HOLDS_WITH_CLAMP, units -> why.apply(units) + CLAMPED, source);
  }

  /** With the limits of the standard and the first letter of what follows them. */
  private static Pairing differs(
      End.Barb barb, End.HoseEnd hose, Function<UnitSystem, String> limits, Source source) {
    boolean loose = hose.bore().compareTo(barb.bore()) > 0;
    return new Pairing(
        MatingVerdict.DOES_NOT_FIT,
        units -> "The barb is made for " + Article.with(barb.bore().toString())
            + ", the hose has "
            + Article.with(hose.bore().toString()) + ". " + limits.apply(units)
            + (loose ? "t would sit loose." : "t would not go on, or split."),
        source);
  }

  static Pairing of(End.TubeEnd tube, End.PushIn grip) {
    Length outside = tube.outside();
    double larger = outside.millimetres() - grip.outside().millimetres();
    if (larger == 0.0) {
      return new Pairing(
          MatingVerdict.HOLDS_IN_GRIP,
          "The push-in end is made for this tube: the grip holds it, a ring seals on its outside.",
          Source.commonPractice("a push-in end takes the tube of its name"));
    }
    Function<UnitSystem, String> measured = units -> "The tube measures " + units.saySmall(outside)
        + ", the grip is made for " + units.saySmall(grip.outside()) + ": ";
    if (Math.abs(larger) < NEAR_TUBE) {
      return new Pairing(
          MatingVerdict.NOT_JUDGED,
          units -> measured.apply(units)
              + "it may go in and seem to hold. The tolerances of tube and grip were not seen: ask the maker, and"
              + " do not accept it without.",
          TUBES);
    }
    return new Pairing(
        MatingVerdict.DOES_NOT_FIT,
        units -> measured.apply(units)
            + (larger > 0.0 ? "it does not enter." : "it sits loose, leaks or blows out."),
        TUBES);
  }
}
