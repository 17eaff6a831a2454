package org.airfit.thread;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.airfit.internal.Digits;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.working.UnitSystem;
import org.jspecify.annotations.Nullable;

/**
 * What a caliper, a pitch gauge and the eye say of a pipe thread.
 *
 * <p>Only the first crest is asked for: the diameter over the first full thread of a male thread, or the bore between
 * the crests at the mouth of a female one. Everything else makes the answer firmer. Uncertainties are standard
 * uncertainties; those given unless told otherwise (0.03 mm on a diameter, 0.05 mm on a length over pitches, 1 % on a
 * leaf of a pitch gauge) are judgements from memory.
 *
 * <p>This class is immutable, thread-safe and value-based; {@code with} methods return fuller readings.
 */
public final class ThreadReadings {

  private static final Length DIAMETER_UNCERTAINTY = Length.ofMillimetres(0.03);
  private static final double OVER_PITCHES_UNCERTAINTY_MM = 0.05;
  private static final double LEAF_UNCERTAINTY = 0.01;

  /** A pitch and its standard uncertainty. */
  private record Pitch(Length read, Length uncertainty) {}

  /** The angle between the flanks and its standard uncertainty [°]. */
  private record Flanks(double degrees, double uncertainty) {}

  private final Gender gender;
  private final Length firstCrest;
  private final @Nullable Length lastCrest;
  private final Length diameterUncertainty;
  private final @Nullable Pitch pitch;
  private final @Nullable Boolean taperSeen;
  private final @Nullable Flanks flanks;

  private ThreadReadings(
      Gender gender,
      Length firstCrest,
      @Nullable Length lastCrest,
      Length diameterUncertainty,
      @Nullable Pitch pitch,
      @Nullable Boolean taperSeen,
      @Nullable Flanks flanks) {
    this.gender = gender;
    this.firstCrest = firstCrest;
    this.lastCrest = lastCrest;
    this.diameterUncertainty = diameterUncertainty;
    this.pitch = pitch;
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
    return new ThreadReadings(gender, firstCrest, null, DIAMETER_UNCERTAINTY, null, null, null);
  }

  /**
   * Takes down readings of a male thread.
   *
   * @param firstCrest the diameter over the crests of the first full thread
   * @param overPitches the length over several pitches
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
          what + " must be above 0 mm, was " + length.format(LengthUnit.MILLIMETRE));
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
        gender, firstCrest, crest, diameterUncertainty, pitch, taperSeen, flanks);
  }

  /**
   * Adds a length over several pitches: the more of them, the better.
   *
   * @param overPitches the length
   * @param pitches how many pitches that is, in [1, 50]
   * @return this with the pitch that follows
   * @throws IllegalArgumentException if a number is out of range
   */
  public ThreadReadings withPitches(Length overPitches, int pitches) {
    Objects.requireNonNull(overPitches, "overPitches");
    requirePositive("length over the pitches", overPitches);
    if (pitches < 1 || pitches > 50) {
      throw new IllegalArgumentException("pitches counted must be in [1, 50], was " + pitches);
    }
    return withPitch(
        overPitches.times(1.0 / pitches),
        Length.ofMillimetres(OVER_PITCHES_UNCERTAINTY_MM / pitches));
  }

  /**
   * Adds what the leaf of a pitch gauge that fits says.
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
    Length read = Length.ofInches(1.0 / threadsPerInch);
    return withPitch(read, read.times(LEAF_UNCERTAINTY));
  }

  /**
   * Adds a pitch, however it was found.
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
    Pitch known = new Pitch(read, uncertainty);
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
    return new ThreadReadings(gender, firstCrest, lastCrest, uncertainty, pitch, taperSeen, flanks);
  }

  /**
   * Adds what the eye says: a straight edge along the crests shows a taper, or none.
   *
   * @param seen whether a taper is seen
   * @return this with {@code seen}
   */
  public ThreadReadings withTaperSeen(boolean seen) {
    return new ThreadReadings(
        gender, firstCrest, lastCrest, diameterUncertainty, pitch, seen, flanks);
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
        gender, firstCrest, lastCrest, diameterUncertainty, pitch, taperSeen, known);
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

  /** {@return the pitch, if it was read} */
  public Optional<Length> pitch() {
    return Optional.ofNullable(pitch).map(Pitch::read);
  }

  /** {@return the standard uncertainty of the pitch, if it was read} */
  public Optional<Length> pitchUncertainty() {
    return Optional.ofNullable(pitch).map(Pitch::uncertainty);
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
        && Objects.equals(pitch, that.pitch)
        && Objects.equals(taperSeen, that.taperSeen)
        && Objects.equals(flanks, that.flanks);
  }

  @Override
  public int hashCode() {
    return Objects.hash(
        gender, firstCrest, lastCrest, diameterUncertainty, pitch, taperSeen, flanks);
  }

  /** {@return the readings in words} */
  @Override
  public String toString() {
    return inWords(UnitSystem.SI);
  }

  /** The same with lengths in millimetres or inches. */
  String inWords(UnitSystem units) {
    LengthUnit unit = units.smallLengthUnit();
    StringBuilder out =
        new StringBuilder(gender == Gender.MALE ? "first crest " : "bore at the mouth ");
    out.append(firstCrest.format(unit));
    if (lastCrest != null) {
      out.append(", last ").append(lastCrest.format(unit));
    }
    if (pitch != null) {
      out.append(", pitch ")
          .append(pitch.read.format(unit))
          .append(" (")
          .append(Digits.significant(25.4 / pitch.read.millimetres(), 4))
          .append(" threads per inch)");
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
