package org.airfit.joint;

import java.util.function.Function;
import org.airfit.quantity.Length;
import org.airfit.source.Source;
import org.airfit.working.UnitSystem;

/** Heads of claw couplings against each other. */
final class ClawPairs {

  /** How far the claws of a European head are apart; see {@link ClawHead#EUROPEAN}. */
  private static final Length SPACING = Length.ofMillimetres(42.0);

  private ClawPairs() {}

  static Pairing of(End.Claw one, End.Claw other) {
    if (one.head() != other.head()) {
      return new Pairing(
          MatingVerdict.DOES_NOT_FIT,
          "The heads are different parts, although the trade calls more than one of them universal: "
              + one.label() + " and " + other.label()
              + " do not lock on each other. Exchange one of the halves for one of the other kind.",
          Source.handbook("public note on claw couplings, quoting DIN 3489: never pair them"));
    }
    return switch (one.head()) {
      case EUROPEAN ->
        locks(
            units -> "Claws of this kind are " + units.saySmall(SPACING)
                + " apart on every size, so that halves of different hose and thread sizes lock on each other; their"
                + " gaskets seal.",
            one.head());
      case TWO_LUG ->
        locks(
            units ->
                "Two-lug heads are of one class up to 1 in hose bore: they lock on each other whatever is on their other"
                    + " ends; their gaskets seal.",
            one.head());
      case FOUR_LUG ->
        new Pairing(
            MatingVerdict.NOT_JUDGED,
            "Four-lug heads are made for hose of 1-1/4 to 2 in. That heads of different sizes lock on each other was not"
                + " read: ask the maker, or hold both to each other.",
            one.head().source());
    };
  }

  /** Whether {@link #of} finds a joint to build. */
  static boolean isSound(End.Claw one, End.Claw other) {
    return one.head() == other.head() && one.head() != ClawHead.FOUR_LUG;
  }

  private static Pairing locks(Function<UnitSystem, String> why, ClawHead head) {
    return new Pairing(MatingVerdict.LOCKS_ON_CLAWS, why, head.source());
  }
}
