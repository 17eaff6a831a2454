package org.airfit.thread;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.airfit.internal.Digits;
import org.airfit.measure.PitchCount;
import org.airfit.measure.PitchGauge;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.working.UnitSystem;
import org.jspecify.annotations.Nullable;

/**
 * What a caliper, a pitch gauge and the eye say of a thread.
 *
 * <p>Only the first crest is asked for: the diameter over the first full thread of a male thread, or the bore between
 * the crests at the mouth of a female one. Everything else makes the answer firmer. The pitch may be read in three ways,
 * one does not replace another: counted ({@link #withPitches}), with a leaf of a pitch gauge ({@link
 * #withThreadsPerInch}, {@link #withMetricLeaf}), or otherwise ({@link #withPitch}). A thread is only called identified
 * where five pitches or more were counted, or two evidences of the pitch agree: two ways of reading it, or one way and
 * the diameters at both ends, where these alone leave but one pitch.
 *
 * <p>Uncertainties are standard uncertainties; those given unless told otherwise (0.03 mm on a diameter, 0.05 mm on a
 * length over pitches) are judgements from memory, and so is the share of misread leaves, {@link
 * PitchGauge#USUAL_MISREAD}.
 *
 * <p>This class is immutable, thread-safe and value-based; {@code with} methods return fuller readings.
 */
public final class ThreadReadings {

  private static final Length DIAMETER_UNCERTAINTY = Length.ofMillimetres(0.03);
  private static final double OVER_PITCHES_UNCERTAINTY_MM = 0.05;

  /** A pitch found in a way that is not told, and its standard uncertainty. */
  record Pitch(Length read, Length uncertainty) {}

  /** A leaf of a gauge, and the share of leaves that are misread. */
  record Leaf(PitchGauge gauge, Length pitch, double misread) {}

  /** The pitch in up to three ways. */
  record Pitches(
      @Nullable PitchCount count,
      @Nullable Leaf leaf,
      @Nullable Pitch other) {}

  private static final Pitches NO_PITCH = new Pitches(null, null, null);

  /** The angle between the flanks and its standard uncertainty [°]. */
  private record Flanks(double degrees, double uncertainty) {}

  private final Gender gender;
  private final Length firstCrest;
  private final @Nullable Length lastCrest;
  private final Length diameterUncertainty;
  private final Pitches pitches;
  private final @Nullable Boolean taperSeen;
  private final @Nullable Flanks flanks;

  private ThreadReadings(
      Gender gender,
      Length firstCrest,
      @Nullable Length lastCrest,
      Length diameterUncertainty,
      Pitches pitches,
      @Nullable Boolean taperSeen,
      @Nullable Flanks flanks) {
    this.gender = gender;
    this.firstCrest = firstCrest;
    this.lastCrest = lastCrest;
    this.diameterUncertainty = diameterUncertainty;
    this.pitches = pitches;
    this.taperSeen = taperSeen;
    this.flanks = flanks;
  }

  /**
   * Takes down a reading of a male thread.
   *
   * @param firstCrest the diameter over the crests of the first full thread
   * @return the reading
   * @throws IllegalArgumentException if it is 0
   */
  public static ThreadReadings ofMale(Length firstCrest) {
    return of(Gender.MALE, firstCrest, "firstCrest", "diameter of the first crest");
  }

  /**
   * Takes down a reading of a female thread.
   *
   * @param mouthBore the bore between the crests at the mouth
   * @return the reading
   * @throws IllegalArgumentException if it is 0
   */
  public static ThreadReadings ofFemale(Length mouthBore) {
    return of(Gender.FEMALE, mouthBore, "mouthBore", "bore at the mouth");
  }

  private static ThreadReadings of(Gender gender, Length firstCrest, String name, String what) {
    Objects.requireNonNull(firstCrest, name);
    requirePositive(what, firstCrest);
    return new ThreadReadings(gender, firstCrest, null, DIAMETER_UNCERTAINTY, NO_PITCH, null, null);
  }

  /**
   * Takes down readings of a male thread.
   *
   * @param firstCrest the diameter over the crests of the first full thread
   * @param overPitches the length over several pitches, in [0.001, 10000] mm
   * @param pitches how many pitches that is, in [1, 50]
   * @return the readings
   * @throws IllegalArgumentException if a number is out of range
   */
  public static ThreadReadings ofMale(Length firstCrest, Length overPitches, int pitches) {
    return ofMale(firstCrest).withPitches(overPitches, pitches);
  }

  private static void requirePositive(String what, Length length) {
    if (!(length.metres() > 0.0)) {
      throw new IllegalArgumentException(
          what + " must be above 0 mm, was " + length.inFull(LengthUnit.MILLIMETRE));
    }
  }

  /**
   * Adds the diameter over the crests of the last full thread, of a female thread the bore between the deepest crests
   * that can be reached. It tells taper from parallel.
   *
   * @param crest the diameter
   * @return this with {@code crest}
   * @throws IllegalArgumentException if {@code crest} is 0
   */
  public ThreadReadings withLastCrest(Length crest) {
    Objects.requireNonNull(crest, "crest");
    requirePositive("diameter of the last crest", crest);
    return new ThreadReadings(
        gender, firstCrest, crest, diameterUncertainty, pitches, taperSeen, flanks);
  }

  /**
   * Adds a length over several pitches that were counted: the more of them, the better, and five at least. Two threads
   * next to each other are one pitch apart: over six threads there are five pitches.
   *
   * @param overPitches the length, in [0.001, 10000] mm
   * @param pitches how many pitches that is, in [1, 50]
   * @return this with the pitch that follows
   * @throws IllegalArgumentException if a number is out of range
   */
  public ThreadReadings withPitches(Length overPitches, int pitches) {
    Objects.requireNonNull(overPitches, "overPitches");
    return with(new Pitches(
        new PitchCount(overPitches, pitches, Length.ofMillimetres(OVER_PITCHES_UNCERTAINTY_MM)),
        this.pitches.leaf,
        this.pitches.other));
  }

  /**
   * Adds what the leaf of an inch pitch gauge that fits says. It takes the place of a leaf read before.
   *
   * @param threadsPerInch the number on the leaf, in [4, 80]
   * @return this with the pitch that follows
   * @throws IllegalArgumentException if the number is out of range
   */
  public ThreadReadings withThreadsPerInch(double threadsPerInch) {
    if (!(threadsPerInch >= 4.0 && threadsPerInch <= 80.0)) {
      throw new IllegalArgumentException(
          "threads per inch must be in [4, 80] 1/in, was " + threadsPerInch);
    }
    return withLeaf(
        new Leaf(PitchGauge.INCH, Length.ofInches(1.0 / threadsPerInch), PitchGauge.USUAL_MISREAD));
  }

  /**
   * Adds what the leaf of a metric pitch gauge that fits says. It takes the place of a leaf read before.
   *
   * @param pitch the pitch on the leaf, in [0.2, 6.5] mm
   * @return this with the pitch
   * @throws IllegalArgumentException if the pitch is out of range
   */
  public ThreadReadings withMetricLeaf(Length pitch) {
    Objects.requireNonNull(pitch, "pitch");
    if (!(pitch.millimetres() >= 0.2 && pitch.millimetres() <= 6.5)) {
      throw new IllegalArgumentException("pitch on a metric leaf must be in [0.2, 6.5] mm, was "
          + pitch.inFull(LengthUnit.MILLIMETRE));
    }
    return withLeaf(new Leaf(PitchGauge.METRIC, pitch, PitchGauge.USUAL_MISREAD));
  }

  private ThreadReadings withLeaf(Leaf leaf) {
    return with(new Pitches(pitches.count, leaf, pitches.other));
  }

  /**
   * Gives the leaf another share of misreadings, if a shop knows its own.
   *
   * @param share how often a leaf nearby is taken for the right one [-], in [0, 0.5]
   * @return this with {@code share}
   * @throws IllegalArgumentException if {@code share} is out of range
   * @throws IllegalStateException if no leaf was read; add the leaf first
   */
  public ThreadReadings withLeafMisread(double share) {
    PitchGauge.requireMisread(share);
    Leaf leaf = pitches.leaf;
    if (leaf == null) {
      throw new IllegalStateException("no leaf of a pitch gauge was read; add the leaf first");
    }
    return withLeaf(new Leaf(leaf.gauge, leaf.pitch, share));
  }

  /**
   * Adds a pitch that was found in another way, such as on a profile projector.
   *
   * @param read the pitch
   * @param uncertainty its standard uncertainty, above 0
   * @return this with {@code read}
   * @throws IllegalArgumentException if one of them is 0
   */
  public ThreadReadings withPitch(Length read, Length uncertainty) {
    Objects.requireNonNull(read, "read");
    Objects.requireNonNull(uncertainty, "uncertainty");
    requirePositive("pitch", read);
    requirePositive("uncertainty of the pitch", uncertainty);
    return with(new Pitches(pitches.count, pitches.leaf, new Pitch(read, uncertainty)));
  }

  private ThreadReadings with(Pitches known) {
    return new ThreadReadings(
        gender, firstCrest, lastCrest, diameterUncertainty, known, taperSeen, flanks);
  }

  /**
   * Gives the diameters another uncertainty.
   *
   * @param uncertainty the standard uncertainty of one diameter, above 0
   * @return this with {@code uncertainty}
   * @throws IllegalArgumentException if it is 0
   */
  public ThreadReadings withDiameterUncertainty(Length uncertainty) {
    Objects.requireNonNull(uncertainty, "uncertainty");
    requirePositive("uncertainty of a diameter", uncertainty);
    return new ThreadReadings(
        gender, firstCrest, lastCrest, uncertainty, pitches, taperSeen, flanks);
  }

  /**
   * Adds what the eye says: a straight edge along the crests shows a taper, or none.
   *
   * @param seen whether a taper is seen
   * @return this with {@code seen}
   */
  public ThreadReadings withTaperSeen(boolean seen) {
    return new ThreadReadings(
        gender, firstCrest, lastCrest, diameterUncertainty, pitches, seen, flanks);
  }

  /**
   * Adds the angle between the flanks, from a thread gauge or a profile projector.
   *
   * @param degrees the angle [°], in [30, 90]
   * @param uncertaintyDegrees its standard uncertainty [°], in [0.05, 20]; about 1 for a gauge held against the light
   * @return this with the angle
   * @throws IllegalArgumentException if a number is out of range
   */
  public ThreadReadings withFlankAngle(double degrees, double uncertaintyDegrees) {
    if (!(degrees >= 30.0 && degrees <= 90.0)) {
      throw new IllegalArgumentException("flank angle must be in [30, 90] °, was " + degrees);
    }
    if (!(uncertaintyDegrees >= 0.05 && uncertaintyDegrees <= 20.0)) {
      throw new IllegalArgumentException(
          "uncertainty of the flank angle must be in [0.05, 20] °, was " + uncertaintyDegrees);
    }
    Flanks known = new Flanks(degrees, uncertaintyDegrees);
    return new ThreadReadings(
        gender, firstCrest, lastCrest, diameterUncertainty, pitches, taperSeen, known);
  }

  /** {@return whether the thread is outside or inside} */
  public Gender gender() {
    return gender;
  }

  /** {@return the diameter over the first full crest, or the bore at the mouth} */
  public Length firstCrest() {
    return firstCrest;
  }

  /** {@return the diameter over the last full crest, or the bore at the deepest one reached, if it was read} */
  public Optional<Length> lastCrest() {
    return Optional.ofNullable(lastCrest);
  }

  /** {@return the standard uncertainty of a diameter} */
  public Length diameterUncertainty() {
    return diameterUncertainty;
  }

  /** {@return the pitch, if it was read: as counted, else in another way, else of the leaf} */
  public Optional<Length> pitch() {
    if (pitches.count != null) {
      return Optional.of(pitches.count.pitch());
    }
    return pitches.other != null ? Optional.of(pitches.other.read) : leafPitch();
  }

  /** {@return the length over pitches that were counted, if that was done} */
  public Optional<PitchCount> pitchCount() {
    return Optional.ofNullable(pitches.count);
  }

  /** {@return the pitch on the leaf of a gauge, if one was read} */
  public Optional<Length> leafPitch() {
    return Optional.ofNullable(pitches.leaf).map(Leaf::pitch);
  }

  /** {@return the gauge of the leaf, if one was read} */
  public Optional<PitchGauge> gauge() {
    return Optional.ofNullable(pitches.leaf).map(Leaf::gauge);
  }

  /** {@return the share of leaves that are misread, as it was told or as is usual; empty where no leaf was read} */
  public OptionalDouble leafMisread() {
    return pitches.leaf == null ? OptionalDouble.empty() : OptionalDouble.of(pitches.leaf.misread);
  }

  /** {@return the pitch that {@link #withPitch} told, beside a count or a leaf too} */
  public Optional<Length> otherPitch() {
    return Optional.ofNullable(pitches.other).map(Pitch::read);
  }

  /** {@return the uncertainty of {@link #otherPitch()}} */
  public Optional<Length> otherPitchUncertainty() {
    return Optional.ofNullable(pitches.other).map(Pitch::uncertainty);
  }

  /** The pitch in all ways. */
  Pitches pitches() {
    return pitches;
  }

  /** The same with another count, for the question what a miscount would explain. */
  ThreadReadings recounted(int count) {
    PitchCount before = Objects.requireNonNull(pitches.count);
    return with(new Pitches(
        new PitchCount(before.over(), count, before.uncertainty()), pitches.leaf, pitches.other));
  }

  /** The same without a pitch. */
  ThreadReadings withoutPitch() {
    return with(NO_PITCH);
  }

  /** The same without a leaf. */
  ThreadReadings withoutLeaf() {
    return with(new Pitches(pitches.count, null, pitches.other));
  }

  /** The same with first and last crest exchanged; both were read. */
  ThreadReadings withEndsSwapped() {
    return new ThreadReadings(
        gender,
        Objects.requireNonNull(lastCrest),
        firstCrest,
        diameterUncertainty,
        pitches,
        taperSeen,
        flanks);
  }

  /** The same as read on a thread of the other gender. */
  ThreadReadings ofOtherGender() {
    return new ThreadReadings(
        gender.other(), firstCrest, lastCrest, diameterUncertainty, pitches, taperSeen, flanks);
  }

  /** {@return whether a taper is seen, if anybody looked} */
  public Optional<Boolean> taperSeen() {
    return Optional.ofNullable(taperSeen);
  }

  /** {@return the angle between the flanks [°], if it was read} */
  public OptionalDouble flankAngleDegrees() {
    return flanks == null ? OptionalDouble.empty() : OptionalDouble.of(flanks.degrees);
  }

  /** {@return the standard uncertainty of the angle between the flanks [°], if it was read} */
  public OptionalDouble flankAngleUncertaintyDegrees() {
    return flanks == null ? OptionalDouble.empty() : OptionalDouble.of(flanks.uncertainty);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof ThreadReadings that
        && gender == that.gender
        && firstCrest.equals(that.firstCrest)
        && Objects.equals(lastCrest, that.lastCrest)
        && diameterUncertainty.equals(that.diameterUncertainty)
        && pitches.equals(that.pitches)
        && Objects.equals(taperSeen, that.taperSeen)
        && Objects.equals(flanks, that.flanks);
  }

  @Override
  public int hashCode() {
    return Objects.hash(
        gender, firstCrest, lastCrest, diameterUncertainty, pitches, taperSeen, flanks);
  }

  /** {@return the readings in words} */
  @Override
  public String toString() {
    return inWords(UnitSystem.SI);
  }

  /**
   * Tells the readings.
   *
   * @param units the units of their lengths: millimetres or inches
   * @return the readings in words
   */
  public String inWords(UnitSystem units) {
    LengthUnit unit = Objects.requireNonNull(units, "units").smallLengthUnit();
    StringBuilder out =
        new StringBuilder(gender == Gender.MALE ? "first crest " : "bore at the mouth ");
    out.append(firstCrest.format(unit));
    if (lastCrest != null) {
      out.append(", last ").append(lastCrest.format(unit));
    }
    if (pitches.count != null) {
      out.append(", pitch ")
          .append(pitches.count.pitch().format(unit))
          .append(" (")
          .append(Digits.significant(25.4 / pitches.count.pitch().millimetres(), 4))
          .append(" threads per inch) counted over ")
          .append(pitches.count.pitches());
    }
    if (pitches.leaf != null) {
      out.append(", leaf ")
          .append(
              pitches.leaf.gauge == PitchGauge.INCH
                  ? Digits.significant(25.4 / pitches.leaf.pitch.millimetres(), 4)
                      + " threads per inch"
                  : pitches.leaf.pitch.format(LengthUnit.MILLIMETRE));
    }
    if (pitches.other != null) {
      out.append(", pitch ").append(pitches.other.read.format(unit));
    }
    if (taperSeen != null) {
      out.append(taperSeen ? ", taper seen" : ", no taper seen");
    }
    if (flanks != null) {
      out.append(", flanks ").append(Digits.significant(flanks.degrees, 4)).append("°");
    }
    return out.toString();
  }
}
