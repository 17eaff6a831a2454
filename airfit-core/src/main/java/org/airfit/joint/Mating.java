package org.airfit.joint;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import org.airfit.quantity.NominalThreadSize;
import org.airfit.safety.Caution;
import org.airfit.source.Source;
import org.airfit.thread.BsptThread;
import org.airfit.thread.Gender;
import org.airfit.thread.NptThread;
import org.airfit.thread.ThreadFamily;
import org.airfit.working.UnitSystem;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/**
 * Will this go into that? Whether one end goes into another, and whether it seals.
 *
 * <p>Where the pair is no joint to build, {@link #between()} tells what goes between: the fewest standard adapters.
 *
 * <p>Pairs of one standard are judged by that standard, pairs of 60° and 55° threads by the geometry of a {@link
 * ThreadMismatch}, which is never sound. It matters which of the two is male: R 1/8 drops loosely into NPT 1/8, NPT 1/8
 * does not start in G 1/8.
 *
 * <p>A pair that runs in and does not seal, and a sound one:
 *
 * <pre>{@code
 * import org.airfit.joint.End;
 * import org.airfit.joint.Mating;
 *
 * class SoundOrNot {
 *   public static void main(String[] args) {
 *     System.out.println(Mating.of(End.parse("1/2 NPT male"), End.parse("G 1/2 female")).verdict());
 *     // NOT_TO_BE_RELIED_ON
 *     Mating sound = Mating.of(End.parse("1/4 NPT male"), End.parse("1/4 NPT female"));
 *     System.out.println(sound.verdict()); // SEALS_WITH_SEALANT
 *     System.out.println(sound.seal().orElseThrow()); // THREAD_SEALANT
 *   }
 * }
 * }</pre>
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

  private static final Caution MISMATCH = new Caution(
      "Threads of two standards",
      "Do not put pressure on it. Sealant does not make the pair safe; under pressure the parts can separate. Use "
          + "an adapter that carries each"
          + " thread on its own end.",
      Source.handbook("article on thread compatibility; geometry of the standards"));

  private static final Caution UNPAIRED = new Caution(
      "Pair of no standard",
      "Do not put pressure on it: no standard pairs these threads, and neither sealant nor a washer changes that. Use "
          + "an adapter that carries the mate of each thread on its own end.",
      Source.derived("pairs named in ASME B1.20.1, ISO 7-1 and ISO 228-1"));

  private static final Caution ASK = new Caution(
      "Not judged",
      "Do not put pressure on it before the maker of one of the parts has said that the pair is one to build.",
      Source.derived("the table that would decide was not seen"));

  private static final Caution FEWER_THREADS = new Caution(
      "Dryseal with fewer threads",
      "Only full-length NPTF in NPTF seals on every thread. This pair seals on fewer, with a straight female thread on "
          + "about one, as far as the metal gives. Use a sealant where it must stay tight, and test it.",
      Source.standard("ASME B1.20.3-1976 (R2018) section 1.4.1; the one thread is from memory"));

  private static final Caution PUSH = new Caution(
      "Tube in a push-in end",
      "Cut the tube square and without burrs, push it to the stop and pull back on it. Tube and end must be of one "
          + "system, inch or metric, and the tube of a kind that the maker of the end names.",
      Source.commonPractice("assembly of push-in fittings"));

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
    return new Mating(one, other, EndPairs.of(one, other));
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
    return EndPairs.isSound(one, other);
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

  /** {@return why, in plain sentences; where the joint is not sound, also what goes between the ends} */
  public String reason() {
    return reason(UnitSystem.SI);
  }

  /**
   * Tells the same with the numbers in other units.
   *
   * @param units the units
   * @return why, and where the joint is not sound what goes between the ends
   */
  public String reason(UnitSystem units) {
    String reason = pairing.reason(units);
    return verdict().isSound() ? reason : reason + " " + betweenInWords();
  }

  /**
   * Obtains what goes between the two ends where they are no joint to build, found by a search over {@link
   * StandardAdapter#all()} for the fewest pieces.
   *
   * @return the adapters from {@link #one()} on, every joint of them sound; empty if the two ends are a sound joint
   *     themselves, or if nothing standard goes between
   */
  public List<StandardAdapter> between() {
    return verdict().isSound() ? List.of() : AdapterSearch.between(one, other);
  }

  private String betweenInWords() {
    if (isForWater()) {
      return "Nothing goes between: no adapter makes a water hose an air hose. Use an air hose with ends for air.";
    }
    List<StandardAdapter> between = between();
    if (between.isEmpty()) {
      if (isFourLug(one) != isFourLug(other)) {
        return "There are claw adapters from a four-lug claw to 1-1/4, 1-1/2 or 2 NPT (from"
            + " memory), but that four-lug heads of different sizes lock on each other was not"
            + " read, so that none is named here: ask the maker of the head for the one that goes"
            + " on it.";
      }
      String unserved = List.of(one, other).stream()
          .filter(end -> !AdapterSearch.isServed(end))
          .map(End::label)
          .collect(Collectors.joining(" or "));
      return "Nothing standard goes between: "
          + (unserved.isEmpty()
              ? "more than " + AdapterSearch.MOST_ADAPTERS
                  + " adapters on one another would be needed."
              : "no standard adapter has an end for " + unserved
                  + ". Check the size, or ask the maker of the part.");
    }
    return "Between them "
        + (between.size() == 1 ? "goes " : "go, one after the other, ")
        + between.stream()
            .map(adapter -> Article.with(adapter.name()))
            .collect(Collectors.joining(", then "))
        + ".";
  }

  private static boolean isFourLug(End end) {
    return end instanceof End.Claw claw && claw.head() == ClawHead.FOUR_LUG;
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
        .flatMap(
            male -> threaded(Gender.FEMALE).flatMap(female -> ThreadPairs.mismatch(male, female)));
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

  /** {@return what keeps the joint tight; empty where it is none to build} */
  public Optional<Seal> seal() {
    return switch (verdict()) {
      case SEALS_WITH_SEALANT -> Optional.of(Seal.THREAD_SEALANT);
      case SEALS_DRY -> Optional.of(Seal.DRY_THREAD);
      case SEALS_ON_FACE -> Optional.of(SealOfEnds.onFace(one, other));
      case HOLDS_WITH_CLAMP -> Optional.of(Seal.CLAMP_OR_FERRULE);
      case HOLDS_IN_GRIP, LOCKS_ON_CLAWS -> Optional.of(Seal.RING_OF_PART);
      case NOT_JUDGED, NOT_TO_BE_RELIED_ON, STARTS_AND_JAMS, DOES_NOT_FIT -> Optional.empty();
    };
  }

  /**
   * {@return what has to be bought beside the parts to make the joint tight, by name and size, such as "thread sealant
   * for 1/2 NPT", "sealing washer for G 1/4" or "clamp or ferrule for 3/8 in hose"; empty where nothing is, or where
   * it is no joint to build}
   */
  public Optional<String> sealItem() {
    return seal().flatMap(seal -> SealOfEnds.item(seal, one, other));
  }

  /**
   * {@return what has to be bought beside the parts so that the joint cannot part by itself, such as "retaining clip or
   * pin for a two-lug claw"; empty where nothing is, or where it is no joint to build}
   */
  public Optional<String> retainer() {
    return verdict() == MatingVerdict.LOCKS_ON_CLAWS
        ? Optional.of("retaining clip or pin for " + Article.with(one.label()))
        : Optional.empty();
  }

  /**
   * {@return what has to turn so that the joint closes; empty where it is none to build. Of the joints of a run, one
   * that turns a part with all that is fixed to it cannot be closed last between two parts that stand still}
   */
  public Optional<Turning> turning() {
    return verdict().isSound()
        ? Optional.of(SealOfEnds.turning(verdict(), one, other))
        : Optional.empty();
  }

  /** {@return how to use sealant on it, or that it does no good; each with its source or marked common practice} */
  public List<Caution> sealantNotes() {
    return switch (verdict()) {
      case SEALS_WITH_SEALANT ->
        Sealant.onTaper(
            threaded(Gender.MALE).map(End.Threaded::size).orElse(NominalThreadSize.ONE));
      case SEALS_DRY -> List.of(Sealant.DRY);
      case SEALS_ON_FACE ->
        List.of(
            seal().filter(seal -> seal == Seal.CONE).isPresent()
                ? Sealant.NOT_ON_CONE
                : Sealant.NOT_ON_PARALLEL);
      case NOT_TO_BE_RELIED_ON, STARTS_AND_JAMS -> List.of(Sealant.NO_CURE);
      case HOLDS_WITH_CLAMP, HOLDS_IN_GRIP, LOCKS_ON_CLAWS, NOT_JUDGED, DOES_NOT_FIT -> List.of();
    };
  }

  /** {@return whether it seals, but is meant for low pressure: a taper thread in a straight coupling} */
  public boolean isForLowPressure() {
    return verdict().isSound()
        && threaded(Gender.FEMALE)
            .filter(end -> end.family() == ThreadFamily.NPSC)
            .isPresent();
  }

  private boolean isOfOneForm() {
    return one instanceof End.Threaded a
        && other instanceof End.Threaded b
        && ThreadPairs.isOfOneForm(a, b);
  }

  private boolean isForWater() {
    return isWater(one) || isWater(other);
  }

  private static boolean isWater(End end) {
    return end instanceof End.Formed formed && formed.form() == SealForm.WATER;
  }

  private boolean isOneThread() {
    return one instanceof End.Formed a
        && other instanceof End.Formed b
        && ThreadNames.of(a.thread()).equals(ThreadNames.of(b.thread()));
  }

  private boolean isFullDryseal() {
    return one instanceof End.Threaded a
        && other instanceof End.Threaded b
        && a.family() == ThreadFamily.NPTF
        && b.family() == ThreadFamily.NPTF;
  }

  /** {@return the warnings that go with this pair} */
  public List<Caution> cautions() {
    List<Caution> cautions = new ArrayList<>();
    switch (verdict()) {
      case SEALS_WITH_SEALANT -> cautions.add(Sealant.LOOSE);
      case SEALS_ON_FACE -> cautions.add(MatingCautions.onFace(seal().orElseThrow()));
      case LOCKS_ON_CLAWS -> cautions.addAll(MatingCautions.claws(one));
      case HOLDS_WITH_CLAMP -> cautions.add(CLAMP);
      case HOLDS_IN_GRIP -> cautions.add(PUSH);
      case NOT_JUDGED -> cautions.add(ASK);
      case NOT_TO_BE_RELIED_ON, STARTS_AND_JAMS ->
        cautions.add(
            isForWater()
                ? MatingCautions.WATER
                : isOneThread() ? MatingCautions.FORMS : isOfOneForm() ? UNPAIRED : MISMATCH);
      case SEALS_DRY -> {
        if (!isFullDryseal()) {
          cautions.add(FEWER_THREADS);
        }
      }
      case DOES_NOT_FIT -> {
        if (isForWater()) {
          cautions.add(MatingCautions.WATER);
        }
      }
    }
    if (isForLowPressure()) {
      cautions.add(LOW_PRESSURE);
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
        .answer(verdict().label() + ". " + reason(units) + " [" + source() + "]");
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
    return inWords(UnitSystem.SI);
  }

  /**
   * Tells the same with the numbers in other units.
   *
   * @param units the units
   * @return the answer in one line
   */
  public String inWords(UnitSystem units) {
    return one.label() + " and " + other.label() + ": " + verdict().label() + ". " + reason(units);
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
