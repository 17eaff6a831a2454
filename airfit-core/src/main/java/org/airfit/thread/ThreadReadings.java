package org.airfit.thread;

import java.util.Optional;
import org.airfit.internal.Digits;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.jspecify.annotations.Nullable;

/**
 * What a caliper and a pitch gauge say of a male pipe thread.
 *
 * <p>This class is immutable and thread-safe.
 */
public final class ThreadReadings {

  private final Length firstCrest;
  private final @Nullable Length lastCrest;
  private final Length pitch;
  private final Length diameterUncertainty;
  private final Length pitchUncertainty;

  private ThreadReadings(
      Length firstCrest,
      @Nullable Length lastCrest,
      Length pitch,
      Length diameterUncertainty,
      Length pitchUncertainty) {
    this.firstCrest = firstCrest;
    this.lastCrest = lastCrest;
    this.pitch = pitch;
    this.diameterUncertainty = diameterUncertainty;
    this.pitchUncertainty = pitchUncertainty;
  }

  /**
   * Takes down readings of a male thread.
   *
   * @param firstCrest the diameter over the crests of the first full thread
   * @param overPitches the length over several pitches
   * @param pitches how many pitches that is, at least 1
   * @return the readings, with a standard uncertainty of 0.03 mm for a diameter and 0.05 mm for the length over the pitches, which is
   *     a judgement from memory for a caliper on thread crests
   * @throws IllegalArgumentException if a number is out of range
   */
  public static ThreadReadings ofMale(Length firstCrest, Length overPitches, int pitches) {
    if (pitches < 1 || pitches > 50) {
      throw new IllegalArgumentException("pitches counted must be in [1, 50], was " + pitches);
    }
    requirePositive("diameter of the first crest", firstCrest);
    requirePositive("length over the pitches", overPitches);
    return new ThreadReadings(
        firstCrest,
        null,
        overPitches.times(1.0 / pitches),
        Length.ofMillimetres(0.03),
        Length.ofMillimetres(0.05 / pitches));
  }

  private static void requirePositive(String what, Length length) {
    if (!(length.metres() > 0.0)) {
      throw new IllegalArgumentException(
          what + " must be above 0 mm, was " + length.format(LengthUnit.MILLIMETRE));
    }
  }

  /**
   * Adds the diameter over the crests of the last full thread, which tells taper from parallel.
   *
   * @param crest the diameter
   * @return this with {@code crest}
   * @throws IllegalArgumentException if {@code crest} is 0
   */
  public ThreadReadings withLastCrest(Length crest) {
    requirePositive("diameter of the last crest", crest);
    return new ThreadReadings(firstCrest, crest, pitch, diameterUncertainty, pitchUncertainty);
  }

  /** {@return the diameter over the crests of the first full thread} */
  public Length firstCrest() {
    return firstCrest;
  }

  /** {@return the diameter over the crests of the last full thread, if it was read} */
  public Optional<Length> lastCrest() {
    return Optional.ofNullable(lastCrest);
  }

  /** {@return the pitch, the length over the pitches divided by their number} */
  public Length pitch() {
    return pitch;
  }

  /** {@return the standard uncertainty of a diameter} */
  public Length diameterUncertainty() {
    return diameterUncertainty;
  }

  /** {@return the standard uncertainty of the pitch} */
  public Length pitchUncertainty() {
    return pitchUncertainty;
  }

  /** {@return the readings in words} */
  @Override
  public String toString() {
    String last = lastCrest == null ? "" : ", last " + lastCrest.format(LengthUnit.MILLIMETRE);
    return "first crest " + firstCrest.format(LengthUnit.MILLIMETRE) + last + ", pitch "
        + pitch.format(LengthUnit.MILLIMETRE) + " ("
        + Digits.significant(25.4 / pitch.millimetres(), 4)
        + " threads per inch)";
  }
}
