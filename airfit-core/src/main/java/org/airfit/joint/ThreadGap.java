package org.airfit.joint;

import java.util.Optional;
import org.airfit.internal.Digits;
import org.airfit.quantity.Length;
import org.airfit.source.Source;
import org.airfit.thread.ForeignThread;
import org.airfit.thread.Gender;
import org.airfit.thread.Limits;
import org.airfit.thread.NamedThread;
import org.airfit.thread.ThreadDesignation;
import org.airfit.working.UnitSystem;

/**
 * How far a male thread goes into a female one that is not its own, by what both measure at the mouth.
 *
 * <pre>
 *   crest of the male above the root of the female            it does not enter
 *   crest of the male below the crest of the female           it drops in
 *   else, pitches alike                                       it runs in and may look right
 *   else                                                      it catches and jams
 * </pre>
 *
 * @param crest what the crests of the male thread may measure, of a taper thread at its small end
 * @param bore what the crests of the female thread may measure, at its mouth
 * @param root the basic diameter of the roots of the female thread
 * @param malePitch the pitch of the male thread
 * @param femalePitch the pitch of the female thread
 */
record ThreadGap(Limits crest, Limits bore, Length root, Length malePitch, Length femalePitch) {

  /** Pitches that differ by less run into each other over the length of a joint. A choice of this project. */
  private static final double ALIKE = 0.002;

  /** The gap; empty for dryseal threads, of which no table was seen. */
  static Optional<ThreadGap> between(NamedThread male, NamedThread female) {
    return crest(male, Gender.MALE)
        .flatMap(crest -> crest(female, Gender.FEMALE)
            .flatMap(bore -> root(female)
                .map(root -> new ThreadGap(crest, bore, root, male.pitch(), female.pitch()))));
  }

  private static Optional<Limits> crest(NamedThread thread, Gender gender) {
    if (thread instanceof ForeignThread foreign) {
      return Optional.of(foreign.crest());
    }
    return ((ThreadDesignation) thread).geometry().map(pipe -> {
      Length crest = gender == Gender.MALE
          ? pipe.section(gender, Length.ofMetres(0.0)).major()
          : pipe.section(gender, Length.ofMetres(0.0)).minor();
      return new Limits(crest, crest);
    });
  }

  /** The roots of a foreign thread are as wide as the crests of its male thread can be. */
  private static Optional<Length> root(NamedThread female) {
    if (female instanceof ForeignThread foreign) {
      return ForeignThread.find(foreign.name(), Gender.MALE)
          .map(male -> male.crest().most());
    }
    return ((ThreadDesignation) female)
        .geometry()
        .map(pipe -> pipe.section(Gender.FEMALE, Length.ofMetres(0.0)).major());
  }

  private boolean isOnePitch() {
    double one = malePitch.metres();
    return Math.abs(one - femalePitch.metres()) <= ALIKE * one;
  }

  MatingVerdict verdict() {
    if (crest.least().compareTo(root) > 0 || crest.most().compareTo(bore.least()) < 0) {
      return MatingVerdict.DOES_NOT_FIT;
    }
    return isOnePitch() ? MatingVerdict.NOT_TO_BE_RELIED_ON : MatingVerdict.STARTS_AND_JAMS;
  }

  Pairing pairing(String male, String female, Source source) {
    return new Pairing(
        verdict(), units -> "The threads differ. " + measured(male, female, units), source);
  }

  private String measured(String male, String female, UnitSystem units) {
    String measured = male + " measures " + said(crest, units) + " over the crests, " + female
        + " is " + said(bore, units) + " wide inside and " + units.saySmall(root)
        + " at the roots: ";
    return measured
        + switch (verdict()) {
          case DOES_NOT_FIT ->
            crest.least().compareTo(root) > 0
                ? "it does not enter."
                : "it drops in without catching.";
          case NOT_TO_BE_RELIED_ON ->
            "with one pitch it runs in and may look right, but they are threads of two names and nothing seals.";
          default ->
            "it catches, then jams or strips, because the pitches are "
                + units.saySmall(malePitch) + " and "
                + units.saySmall(femalePitch) + ".";
        };
  }

  private static String said(Limits limits, UnitSystem units) {
    String most = units.saySmall(limits.most());
    return limits.least().equals(limits.most())
        ? most
        : Digits.significant(limits.least().in(units.smallLengthUnit()), 4) + " to " + most;
  }

  /** Threads per inch, to the digits that tell threads apart. */
  static String count(double threadsPerInch) {
    return Digits.significant(threadsPerInch, 4);
  }
}
