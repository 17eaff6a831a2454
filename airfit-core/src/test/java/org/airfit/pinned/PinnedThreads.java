package org.airfit.pinned;

import java.util.List;
import org.airfit.joint.Chain;
import org.airfit.joint.End;
import org.airfit.joint.HoseRules;
import org.airfit.joint.Mating;
import org.airfit.joint.Tube;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.quantity.NominalThreadSize;
import org.airfit.thread.BsppThread;
import org.airfit.thread.BsptThread;
import org.airfit.thread.NptThread;
import org.airfit.thread.ThreadCandidate;
import org.airfit.thread.ThreadIdentification;
import org.airfit.thread.ThreadReadings;

/** Pipe threads: their sizes, which one lies on the counter, what goes together. */
final class PinnedThreads {

  private static final String AREA = "thread";

  private PinnedThreads() {}

  static void ask(Pins pins) {
    for (String size : List.of("1/8", "1/4", "3/8", "1/2", "3/4", "1", "2")) {
      sizes(pins, size);
    }
    identified(pins, "13.16 mm", 18.0, "male");
    identified(pins, "13.16 mm", 19.0, "male");
    identified(pins, "20.9 mm", 14.0, "male");
    identified(pins, "16.6 mm", 19.0, "male");
    identified(pins, "17.0 mm", 18.0, "male");
    identified(pins, "11.5 mm", 19.0, "female");
    identified(pins, "18.7 mm", 14.0, "female");
    identified(pins, "26.4 mm", 14.0, "male");
    identified(pins, "33.2 mm", 11.0, "male");
    identified(pins, "31.0 mm", 16.0, "male");
    mated(pins, "1/4 NPT male", "1/4 NPT female");
    mated(pins, "1/4 NPT male", "Rc 1/4 female");
    mated(pins, "R 1/2 male", "1/2 NPT female");
    mated(pins, "R 1/2 male", "Rp 1/2 female");
    mated(pins, "R 1/4 male", "G 1/4 female");
    mated(pins, "G 1/4 male", "1/4 NPT female");
    mated(pins, "3/8 in barb", "3/8 in hose");
    mated(pins, "1/4 in barb", "3/8 in hose");
    mated(pins, "8 mm push-in", "8 mm tube");
    mated(pins, "1/2 NPT male", "3/8 NPT female");
    for (double bar : new double[] {10.0, 16.0}) {
      pins.quantity(
          "joint",
          "Least burst pressure of a hose of " + bar + " bar(g)",
          HoseRules.leastBurst(GaugePressure.ofBar(bar)));
    }
    for (String size : List.of("1/2", "1", "2")) {
      pins.quantity(
          "joint",
          "Bore of steel pipe " + size + " schedule 40",
          Tube.steelPipe(NominalThreadSize.parse(size), 40).bore());
    }
  }

  private static void sizes(Pins pins, String size) {
    NominalThreadSize nominal = NominalThreadSize.parse(size);
    NptThread npt = NptThread.of(nominal);
    BsptThread bspt = BsptThread.of(nominal);
    BsppThread bspp = BsppThread.of(nominal);
    pins.quantity(AREA, "E0 of NPT " + size, npt.pitchDiameterAtSmallEnd());
    pins.quantity(AREA, "E1 of NPT " + size, npt.pitchDiameterAtHandTight());
    pins.quantity(AREA, "L2 of NPT " + size, npt.effectiveLength());
    pins.quantity(AREA, "First crest of NPT " + size, npt.firstThreadCrestDiameter());
    pins.quantity(
        AREA, "Least minor diameter of G " + size, bspp.femaleMinorDiameter().least());
    pins.quantity(AREA, "Pitch diameter of G " + size, bspp.pitchDiameter());
    pins.quantity(AREA, "Useful length of R " + size, bspt.usefulLength());
    pins.quantity(AREA, "Tolerance of the gauge length of R " + size, bspt.gaugeTolerance());
  }

  private static void identified(Pins pins, String crest, double perInch, String gender) {
    Length over = Length.of(6.0 / perInch, LengthUnit.INCH);
    Length read = Length.parse(crest);
    ThreadReadings readings = (gender.equals("male")
            ? ThreadReadings.ofMale(read)
            : ThreadReadings.ofFemale(read))
        .withPitches(over, 6);
    ThreadIdentification answer = ThreadIdentification.of(readings);
    String of =
        " of a " + gender + " thread of " + crest + ", six pitches of " + perInch + " to the inch";
    pins.word(AREA, "Verdict" + of, answer.verdict());
    ThreadCandidate first = answer.candidates().get(0);
    pins.word(AREA, "Most likely" + of, first.thread().label());
    pins.ratio(AREA, "Chance of the most likely" + of, first.probability());
    pins.ratio(AREA, "Chance of an unknown thread" + of, answer.unknownProbability());
  }

  private static void mated(Pins pins, String one, String other) {
    Mating mating = Mating.of(End.parse(one), End.parse(other));
    pins.word("joint", "Whether " + one + " goes with " + other, mating.verdict());
    pins.word(
        "joint",
        "Adapters between " + one + " and " + other,
        Chain.between(End.parse(one), End.parse(other)).adapters().size());
    mating.engagement().ifPresent(engagement -> {
      pins.quantity(
          "joint", "Engagement by hand of " + one + " in " + other, engagement.handTightLength());
      pins.ratio("joint", "Turns in all of " + one + " in " + other, engagement.totalTurns());
    });
    mating.mismatch().ifPresent(mismatch -> {
      pins.number(
          "joint",
          "Clearance of the flanks of " + one + " in " + other,
          mismatch.pitchClearance().millimetres(),
          "mm");
      mismatch
          .turns()
          .ifPresent(
              turns -> pins.ratio("joint", "Turns until " + one + " binds in " + other, turns));
    });
  }
}
