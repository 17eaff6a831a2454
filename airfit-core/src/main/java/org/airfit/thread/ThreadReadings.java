package org.airfit.thread;

import java.util.Optional;
import java.util.OptionalDouble;
import org.airfit.internal.Digits;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.jspecify.annotations.Nullable;

/**
 * What a caliper, a pitch gauge and the eye say of a pipe thread.
 *
 * <p>Only the first crest is asked for: the diameter over the first full thread of a male thread, or the bore between the crests at the mouth
 * of a female one. Everything else makes the answer firmer. Uncertainties are standard uncertainties; those given unless told otherwise
 * (0.03 mm on a diameter, 0.05 mm on a length over pitches, 1 % on a leaf of a pitch gauge) are judgements from memory.
 *
 * <p>This class is immutable and thread-safe; {@code with} methods return fuller readings.
 */
public final class ThreadReadings {

  private static final Length DIAMETER_UNCERTAINTY = Length.ofMillimetres(0.03);
  private static final double OVER_PITCHES_UNCERTAINTY_MM = 0.05;
  private static final double LEAF_UNCERTAINTY = 0.01;

  private final Gender gender;
  private final Length firstCrest;
  private final @Nullable Length lastCrest;
  private final Length diameterUncertainty;
  private final @Nullable Length pitch;
  private final @Nullable Length pitchUncertainty;
  private final @Nullable Boolean taperSeen;
  private final double flankAngle;
  private final double flankAngleUncertainty;

  private ThreadReadings(Draft draft) {
    this.gender = draft.gender;
    this.firstCrest = draft.firstCrest;
    this.lastCrest = draft.lastCrest;
    this.diameterUncertainty = draft.diameterUncertainty;
    this.pitch = draft.pitch;
    this.pitchUncertainty = draft.pitchUncertainty;
    this.taperSeen = draft.taperSeen;
    this.flankAngle = draft.flankAngle;
    this.flankAngleUncertainty = draft.flankAngleUncertainty;
  }

  /** What the next readings are made from. */
  private static final class Draft {
    private final Gender gender;
    private final Length firstCrest;
    private @Nullable Length lastCrest;
    private Length diameterUncertainty = DIAMETER_UNCERTAINTY;
    private @Nullable Length pitch;
    private @Nullable Length pitchUncertainty;
    private @Nullable Boolean taperSeen;
    private double flankAngle;
    private double flankAngleUncertainty;

    Draft(Gender gender, Length firstCrest) {
      this.gender = gender;
      this.firstCrest = firstCrest;
    }
  }

  private Draft draft() {
    Draft draft = new Draft(gender, firstCrest);
    draft.lastCrest = lastCrest;
    draft.diameterUncertainty = diameterUncertainty;
    draft.pitch = pitch;
    draft.pitchUncertainty = pitchUncertainty;
    draft.taperSeen = taperSeen;
    draft.flankAngle = flankAngle;
    draft.flankAngleUncertainty = flankAngleUncertainty;
    return draft;
  }

  /**
   * Takes down a reading of a male thread.
   *
   * @param firstCrest the diameter over the crests of the first full thread
   * @return the reading
   * @throws IllegalArgumentException if it is 0
   */
  public static ThreadReadings ofMale(Length firstCrest) {
    return of(Gender.MALE, firstCrest, "diameter of the first crest");
  }

  /**
   * Takes down a reading of a female thread.
   *
   * @param mouthBore the bore between the crests at the mouth
   * @return the reading
   * @throws IllegalArgumentException if it is 0
   */
  public static ThreadReadings ofFemale(Length mouthBore) {
    return of(Gender.FEMALE, mouthBore, "bore at the mouth");
  }

  private static ThreadReadings of(Gender gender, Length firstCrest, String what) {
    requirePositive(what, firstCrest);
    return new ThreadReadings(new Draft(gender, firstCrest));
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
   * Adds the diameter over the crests of the last full thread, of a female thread the bore between the deepest crests that can be reached. It
   * tells taper from parallel.
   *
   * @param crest the diameter
   * @return this with {@code crest}
   * @throws IllegalArgumentException if {@code crest} is 0
   */
  public ThreadReadings withLastCrest(Length crest) {
    requirePositive("diameter of the last crest", crest);
    Draft draft = draft();
    draft.lastCrest = crest;
    return new ThreadReadings(draft);
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
    requirePositive("pitch", read);
    requirePositive("uncertainty of the pitch", uncertainty);
    Draft draft = draft();
    draft.pitch = read;
    draft.pitchUncertainty = uncertainty;
    return new ThreadReadings(draft);
  }

  /**
   * Gives the diameters another uncertainty.
   *
   * @param uncertainty the standard uncertainty of one diameter, above 0
   * @return this with {@code uncertainty}
   * @throws IllegalArgumentException if it is 0
   */
  public ThreadReadings withDiameterUncertainty(Length uncertainty) {
    requirePositive("uncertainty of a diameter", uncertainty);
    Draft draft = draft();
    draft.diameterUncertainty = uncertainty;
    return new ThreadReadings(draft);
  }

  /**
   * Adds what the eye says: a straight edge along the crests shows a taper, or none.
   *
   * @param seen whether a taper is seen
   * @return this with {@code seen}
   */
  public ThreadReadings withTaperSeen(boolean seen) {
    Draft draft = draft();
    draft.taperSeen = seen;
    return new ThreadReadings(draft);
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
    Draft draft = draft();
    draft.flankAngle = degrees;
    draft.flankAngleUncertainty = uncertaintyDegrees;
    return new ThreadReadings(draft);
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
    return Optional.ofNullable(pitch);
  }

  /** {@return the standard uncertainty of the pitch, if it was read} */
  public Optional<Length> pitchUncertainty() {
    return Optional.ofNullable(pitchUncertainty);
  }

  /** {@return whether a taper is seen, if anybody looked} */
  public Optional<Boolean> taperSeen() {
    return Optional.ofNullable(taperSeen);
  }

  /** {@return the angle between the flanks [°], if it was read} */
  public OptionalDouble flankAngleDegrees() {
    return flankAngle > 0.0 ? OptionalDouble.of(flankAngle) : OptionalDouble.empty();
  }

  /** {@return the standard uncertainty of the angle between the flanks [°], if it was read} */
  public OptionalDouble flankAngleUncertaintyDegrees() {
    return flankAngle > 0.0 ? OptionalDouble.of(flankAngleUncertainty) : OptionalDouble.empty();
  }

  /** {@return the readings in words} */
  @Override
  public String toString() {
    StringBuilder out =
        new StringBuilder(gender == Gender.MALE ? "first crest " : "bore at the mouth ");
    out.append(firstCrest.format(LengthUnit.MILLIMETRE));
    if (lastCrest != null) {
      out.append(", last ").append(lastCrest.format(LengthUnit.MILLIMETRE));
    }
    if (pitch != null) {
      out.append(", pitch ")
          .append(pitch.format(LengthUnit.MILLIMETRE))
          .append(" (")
          .append(Digits.significant(25.4 / pitch.millimetres(), 4))
          .append(" threads per inch)");
    }
    if (taperSeen != null) {
      out.append(taperSeen ? ", taper seen" : ", no taper seen");
    }
    if (flankAngle > 0.0) {
      out.append(", flanks ").append(Digits.significant(flankAngle, 4)).append("°");
    }
    return out.toString();
  }
}
