package org.airfit.thread;

import org.airfit.internal.Digits;
import org.airfit.source.Source;

/**
 * Whether one end goes into another, and whether it seals.
 *
 * @param one one end
 * @param other the other end
 * @param verdict what happens when they are put together
 * @param reason why, in one plain sentence
 * @param source the standard or practice it rests on
 */
public record Mating(End one, End other, Verdict verdict, String reason, Source source) {

  /** What happens when two ends are put together. */
  public enum Verdict {
    /** They assemble and seal on the thread, with a sealant. */
    SEALS_WITH_SEALANT,
    /** They assemble and seal on a face or ring, not on the thread. */
    SEALS_ON_FACE,
    /** The hose goes on the barb and holds with a clamp. */
    HOLDS_WITH_CLAMP,
    /** They may go together and may even look tight, but must not be relied on to seal or hold. */
    NOT_TO_BE_RELIED_ON,
    /** They do not go together. */
    DOES_NOT_FIT;

    /** {@return whether the joint is one to build} */
    public boolean isSound() {
      return this == SEALS_WITH_SEALANT || this == SEALS_ON_FACE || this == HOLDS_WITH_CLAMP;
    }
  }

  /**
   * Judges a pair of ends.
   *
   * @param one one end
   * @param other the other end
   * @return what happens when they are put together; the order does not matter
   */
  public static Mating of(End one, End other) {
    if (one instanceof End.Threaded a && other instanceof End.Threaded b) {
      return threads(a, b);
    }
    if (one instanceof End.HoseEnd hose && other instanceof End.Barb barb) {
      return hoseOnBarb(one, other, hose, barb);
    }
    if (one instanceof End.Barb barb && other instanceof End.HoseEnd hose) {
      return hoseOnBarb(one, other, hose, barb);
    }
    return new Mating(
        one,
        other,
        Verdict.DOES_NOT_FIT,
        "A " + one.label() + " and a " + other.label() + " have nothing to hold on to.",
        Source.commonPractice("ends of different kinds need an adapter"));
  }

  private static Mating hoseOnBarb(End one, End other, End.HoseEnd hose, End.Barb barb) {
    boolean same = hose.bore().equals(barb.bore());
    return new Mating(
        one,
        other,
        same ? Verdict.HOLDS_WITH_CLAMP : Verdict.DOES_NOT_FIT,
        same
            ? "The barb is made for this bore; it holds with a clamp or ferrule of the hose maker's choosing."
            : "The barb is made for a " + barb.bore() + ", the hose has a " + hose.bore() + ".",
        Source.commonPractice("a barb takes the hose bore it is made for, with a clamp"));
  }

  private static Mating threads(End.Threaded a, End.Threaded b) {
    if (a.gender() == b.gender()) {
      return new Mating(
          a,
          b,
          Verdict.DOES_NOT_FIT,
          "Both are " + a.gender().label() + "; a nipple or coupling must go between.",
          a.family().source());
    }
    if (a.size() != b.size()) {
      return new Mating(
          a,
          b,
          Verdict.DOES_NOT_FIT,
          "The sizes differ: " + a.size() + " and " + b.size() + ".",
          a.family().source());
    }
    boolean inOrder = a.gender() == Gender.MALE;
    End.Threaded male = inOrder ? a : b;
    End.Threaded female = inOrder ? b : a;
    boolean americanOnly = male.family() == ThreadFamily.NPT && female.family() == ThreadFamily.NPT;
    if (americanOnly) {
      return new Mating(
          a,
          b,
          Verdict.SEALS_WITH_SEALANT,
          "Taper in taper of one standard, made up wrench tight with a sealant.",
          Source.standard("ASME B1.20.1-2013 section 3.1"));
    }
    if (male.family() == ThreadFamily.NPT || female.family() == ThreadFamily.NPT) {
      return new Mating(
          a,
          b,
          Verdict.NOT_TO_BE_RELIED_ON,
          "60° flats meet 55° rounds" + pitches(male, female)
              + ": a spiral path stays open and under pressure the parts can separate. Tape does not cure it.",
          Source.derived("thread forms of ASME B1.20.1 and ISO 7-1 / ISO 228-1"));
    }
    if (male.family() == ThreadFamily.BSPT && female.family() == ThreadFamily.BSPT) {
      return new Mating(
          a,
          b,
          Verdict.SEALS_WITH_SEALANT,
          "Taper in taper of one standard, with a jointing medium.",
          ThreadFamily.BSPT.source());
    }
    if (male.family() == ThreadFamily.BSPP && female.family() == ThreadFamily.BSPP) {
      return new Mating(
          a,
          b,
          Verdict.SEALS_ON_FACE,
          "The thread only pulls: a washer, bonded seal or ring on a face must seal.",
          ThreadFamily.BSPP.source());
    }
    return new Mating(
        a,
        b,
        Verdict.NOT_TO_BE_RELIED_ON,
        male.family() == ThreadFamily.BSPT
            ? "R in G is allowed by some documents and not by others, with a jointing medium and full crests; ask the maker."
            : "G in Rc meets on one plane only and is a pair of no standard.",
        Source.standard("ISO 228-1:2000 introduction; GOST 6357-81"));
  }

  private static String pitches(End.Threaded male, End.Threaded female) {
    double one = perInch(male);
    double other = perInch(female);
    return one == other
        ? " at the same threads per inch, so it runs in and looks right"
        : ", " + Digits.plain(one) + " threads per inch against " + Digits.plain(other);
  }

  private static double perInch(End.Threaded end) {
    return end.thread().map(PipeThread::threadsPerInch).orElse(0.0);
  }
}
