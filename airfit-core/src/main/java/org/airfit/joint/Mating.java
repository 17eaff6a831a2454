package org.airfit.joint;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.quantity.NominalThreadSize;
import org.airfit.safety.Caution;
import org.airfit.source.Source;
import org.airfit.thread.BsptThread;
import org.airfit.thread.Gender;
import org.airfit.thread.NptThread;
import org.airfit.thread.PipeThread;
import org.airfit.thread.ThreadFamily;
import org.airfit.working.UnitSystem;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/**
 * Will this go into that? Whether one end goes into another, and whether it seals.
 *
 * <p>Pairs of one standard are judged by that standard, pairs of 60° and 55° threads by the geometry of a {@link
 * ThreadMismatch}, which is never sound. It matters which of the two is male: R 1/8 drops loosely into NPT 1/8, NPT 1/8
 * does not start in G 1/8.
 *
 * <p>Only {@link #of} makes one. This class is immutable, thread-safe and value-based.
 */
public final class Mating implements Worked {

  private static final Caution LOW_PRESSURE = new Caution(
      "Straight coupling",
      "A straight coupling thread holds fewer threads than a taper one and is meant for low pressure: ask the maker "
          + "for a rating for"
          + " compressed air.",
      Source.standard(
          "ASME B1.20.1 table of NPSC, pressure-tight joints with lubricant or sealer"));

  private static final Caution SEAT = new Caution(
      "Seat or washer",
      "Both parts must carry the seat, or the washer or ring must lie between their faces. Without it the joint "
          + "leaks however far it is"
          + " turned.",
      Source.standard("ISO 228-1 scope; NPSM seats in trade articles"));

  private static final Caution MISMATCH = new Caution(
      "Threads of two standards",
      "Do not put pressure on it. Sealant does not make the pair safe; under pressure the parts can separate. Use "
          + "an adapter that carries each"
          + " thread on its own end.",
      Source.handbook("article on thread compatibility; geometry of the standards"));

  private static final Caution CLAMP = new Caution(
      "Hose on a barb",
      "Push the hose to the stop and clamp it behind the ridge. Only a push-in barb with the hose its maker names "
          + "for it holds without a clamp."
          + " The bore through the barb is smaller than that of the hose.",
      Source.commonPractice(
          "the barb is larger than the hose bore, and the hose stretches over it"));

  private final End one;
  private final End other;
  private final Pairing pairing;

  private Mating(End one, End other, Pairing pairing) {
    this.one = one;
    this.other = other;
    this.pairing = pairing;
  }

  private Mating(End one, End other, MatingVerdict verdict, String reason, Source source) {
    this(one, other, new Pairing(verdict, reason, source));
  }

  /**
   * Judges a pair of ends.
   *
   * @param one one end
   * @param other the other end
   * @return what happens when they are put together; it does not matter which is named first
   */
  public static Mating of(End one, End other) {
    Objects.requireNonNull(one, "one");
    Objects.requireNonNull(other, "other");
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
        MatingVerdict.DOES_NOT_FIT,
        "A " + one.label() + " and a " + other.label() + " have nothing to hold on to.",
        Source.commonPractice("ends of different kinds need an adapter"));
  }

  /**
   * Tells whether a pair of ends is a joint to build, without the reasons: for a search over many ends.
   *
   * @param one one end
   * @param other the other end
   * @return whether the verdict of {@link #of} is sound
   */
  public static boolean isSound(End one, End other) {
    Objects.requireNonNull(one, "one");
    Objects.requireNonNull(other, "other");
    if (one instanceof End.Threaded a && other instanceof End.Threaded b) {
      // threads of two sizes or two forms are never sound, and their reasons are long
      return a.gender() != b.gender()
          && a.size() == b.size()
          && a.family().form() == b.family().form()
          && of(one, other).verdict().isSound();
    }
    return (one instanceof End.Threaded) == (other instanceof End.Threaded)
        && of(one, other).verdict().isSound();
  }

  private static Mating hoseOnBarb(End one, End other, End.HoseEnd hose, End.Barb barb) {
    Optional<StandardHose> standard = StandardHose.of(hose.bore());
    boolean same = hose.bore().equals(barb.bore());
    boolean paired = standard.isPresent() && standard.equals(StandardHose.of(barb.bore()));
    if (!same && !paired) {
      boolean loose = hose.bore().compareTo(barb.bore()) > 0;
      return new Mating(
          one,
          other,
          MatingVerdict.DOES_NOT_FIT,
          "The barb is made for a " + barb.bore() + ", the hose has a " + hose.bore() + ": "
              + (loose ? "it would sit loose." : "it would not go on, or split."),
          Source.commonPractice("a barb takes the hose bore it is made for"));
    }
    return new Mating(
        one,
        other,
        MatingVerdict.HOLDS_WITH_CLAMP,
        "The barb is made for this bore"
            + (same ? "" : ", which goes by both names")
            + "; it holds with a clamp or ferrule of the hose maker's choosing.",
        Source.commonPractice("a barb takes the hose bore it is made for, with a clamp"));
  }

  private static Mating threads(End.Threaded a, End.Threaded b) {
    if (a.gender() == b.gender()) {
      return new Mating(
          a,
          b,
          MatingVerdict.DOES_NOT_FIT,
          "Both are " + a.gender().label() + "; a "
              + (a.gender() == Gender.MALE ? "coupling" : "nipple") + " must go between.",
          a.family().source());
    }
    End.Threaded male = a.gender() == Gender.MALE ? a : b;
    End.Threaded female = a.gender() == Gender.MALE ? b : a;
    Pairing pairing = male.size() != female.size()
        ? sizesDiffer(male, female)
        : male.family().form() == female.family().form()
            ? Pairing.ofOneForm(male.family(), female.family())
            : mixedForms(male, female);
    return new Mating(a, b, pairing);
  }

  private static Pairing sizesDiffer(End.Threaded male, End.Threaded female) {
    boolean larger = male.size().compareTo(female.size()) > 0;
    String measured = male.thread()
        .geometry()
        .flatMap(m -> female.thread().geometry().map(f -> measured(m, f)))
        .orElse("");
    return new Pairing(
        MatingVerdict.DOES_NOT_FIT,
        "The sizes differ: male " + male.size() + ", female " + female.size() + measured
            + ", so it "
            + (larger ? "does not enter" : "drops in without catching") + ". A "
            + (larger ? "reducing coupling" : "bushing") + " must go between.",
        male.family().source());
  }

  private static String measured(PipeThread male, PipeThread female) {
    Length end = Length.ofMetres(0.0);
    return " (" + male.section(Gender.MALE, end).major().format(LengthUnit.MILLIMETRE)
        + " over the crests into a bore of "
        + female.section(Gender.FEMALE, end).minor().format(LengthUnit.MILLIMETRE) + ")";
  }

  private static Pairing mixedForms(End.Threaded male, End.Threaded female) {
    Source source = Source.derived("thread forms of ASME B1.20.1 and ISO 7-1 / ISO 228-1");
    String why =
        " 60° flats against 55° rounds leave a spiral path open, and under pressure the parts can separate.";
    return mismatch(male, female)
        .map(mismatch -> new Pairing(mismatch.verdict(), mismatch.inWords() + why, source))
        .orElseGet(() -> new Pairing(
            MatingVerdict.NOT_TO_BE_RELIED_ON,
            "How far it goes was not worked out." + why,
            source));
  }

  private static Optional<ThreadMismatch> mismatch(End.Threaded male, End.Threaded female) {
    return male.size() == female.size()
            && male.family().form() != female.family().form()
        ? male.thread()
            .geometry()
            .flatMap(m -> female.thread().geometry().map(f -> new ThreadMismatch(m, f)))
        : Optional.empty();
  }

  /** {@return one end} */
  public End one() {
    return one;
  }

  /** {@return the other end} */
  public End other() {
    return other;
  }

  /** {@return what happens when they are put together} */
  public MatingVerdict verdict() {
    return pairing.verdict();
  }

  /** {@return why, in one or two plain sentences} */
  public String reason() {
    return pairing.reason();
  }

  /** {@return the standard or practice it rests on} */
  public Source source() {
    return pairing.source();
  }

  private Optional<End.Threaded> threaded(Gender gender) {
    return List.of(one, other).stream()
        .filter(End.Threaded.class::isInstance)
        .map(End.Threaded.class::cast)
        .filter(end -> end.gender() == gender)
        .findFirst();
  }

  /** {@return how far a pair of 60° and 55° threads of one size goes, empty for all other pairs} */
  public Optional<ThreadMismatch> mismatch() {
    return threaded(Gender.MALE)
        .flatMap(male -> threaded(Gender.FEMALE).flatMap(female -> mismatch(male, female)));
  }

  /**
   * {@return how far to turn it by hand and by wrench, empty where it does not seal on a taper thread or no table was
   * seen}
   */
  public Optional<Engagement> engagement() {
    if (verdict() != MatingVerdict.SEALS_WITH_SEALANT) {
      return Optional.empty();
    }
    return threaded(Gender.MALE)
        .flatMap(end -> end.thread().geometry())
        .flatMap(thread -> thread instanceof NptThread npt
            ? Optional.of(Engagement.of(npt))
            : thread instanceof BsptThread r ? Optional.of(Engagement.of(r)) : Optional.empty());
  }

  /** {@return how to use sealant on it, or that it does no good; each with its source or marked common practice} */
  public List<Caution> sealantNotes() {
    return switch (verdict()) {
      case SEALS_WITH_SEALANT ->
        Sealant.onTaper(
            threaded(Gender.MALE).map(End.Threaded::size).orElse(NominalThreadSize.ONE));
      case SEALS_DRY -> List.of(Sealant.DRY);
      case SEALS_ON_FACE -> List.of(Sealant.NOT_ON_PARALLEL);
      case NOT_TO_BE_RELIED_ON, STARTS_AND_JAMS -> List.of(Sealant.NO_CURE);
      case HOLDS_WITH_CLAMP, DOES_NOT_FIT -> List.of();
    };
  }

  /** {@return whether it seals, but is meant for low pressure: a taper thread in a straight coupling} */
  public boolean isForLowPressure() {
    return verdict().isSound()
        && threaded(Gender.FEMALE)
            .filter(end -> end.family() == ThreadFamily.NPSC)
            .isPresent();
  }

  /** {@return the warnings that go with this pair} */
  public List<Caution> cautions() {
    List<Caution> cautions = new ArrayList<>();
    switch (verdict()) {
      case SEALS_WITH_SEALANT -> cautions.add(Sealant.LOOSE);
      case SEALS_ON_FACE -> cautions.add(SEAT);
      case HOLDS_WITH_CLAMP -> cautions.add(CLAMP);
      default -> {}
    }
    if (isForLowPressure()) {
      cautions.add(LOW_PRESSURE);
    }
    if (verdict() == MatingVerdict.NOT_TO_BE_RELIED_ON
        || verdict() == MatingVerdict.STARTS_AND_JAMS) {
      cautions.add(MISMATCH);
    }
    return List.copyOf(cautions);
  }

  /**
   * Tells how the verdict was reached, with the geometry that was used.
   *
   * @param units the units to show numbers in
   */
  @Override
  public Working working(UnitSystem units) {
    Working.Builder out = Working.titled(one.label() + " and " + other.label(), units)
        .answer(verdict().label() + ". " + reason() + " [" + source() + "]");
    mismatch().ifPresent(mismatch -> out.include(mismatch.working(units)));
    engagement().ifPresent(engagement -> {
      threaded(Gender.MALE)
          .flatMap(end -> end.thread().geometry())
          .ifPresent(thread -> out.include(thread.working(units)));
      out.note(engagement.inWords(units) + " [" + engagement.handTightSource() + "; "
          + engagement.wrenchSource() + "].");
    });
    return out.build();
  }

  /** {@return the answer in one line, such as "G 1/2 male into G 1/2 female: seals on a face, …"} */
  public String inWords() {
    return one.label() + " and " + other.label() + ": " + verdict().label() + ". " + reason();
  }

  /** Equal for equal ends named in the same order. */
  @Override
  public boolean equals(Object other) {
    return other instanceof Mating that
        && one.equals(that.one)
        && this.other.equals(that.other)
        && pairing.equals(that.pairing);
  }

  @Override
  public int hashCode() {
    return Objects.hash(one, other, pairing);
  }

  /** {@return the answer in one line, as {@link #inWords()}} */
  @Override
  public String toString() {
    return inWords();
  }
}
