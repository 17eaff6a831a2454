package org.airfit.thread;

import java.util.Objects;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;

/**
 * The three diameters of a thread in one plane square to its axis, at basic size.
 *
 * <p>On a male thread the major diameter lies over the crests and the minor diameter in the roots; on a female thread
 * the minor diameter is the bore between the crests and the major diameter lies in the roots.
 *
 * @param major the largest diameter
 * @param pitch the diameter where ridge and groove are equally wide
 * @param minor the smallest diameter
 */
public record ThreadSection(Length major, Length pitch, Length minor) {

  /**
   * Checks the order.
   *
   * @param major the largest diameter, at least {@code pitch}
   * @param pitch the diameter where ridge and groove are equally wide
   * @param minor the smallest diameter, at most {@code pitch}
   * @throws IllegalArgumentException if the diameters are not in that order
   */
  public ThreadSection {
    Objects.requireNonNull(major, "major");
    Objects.requireNonNull(pitch, "pitch");
    Objects.requireNonNull(minor, "minor");
    if (major.compareTo(pitch) < 0) {
      throw new IllegalArgumentException("major must be at least pitch, "
          + pitch.inFull(LengthUnit.MILLIMETRE) + ", was " + major.inFull(LengthUnit.MILLIMETRE));
    }
    if (minor.compareTo(pitch) > 0) {
      throw new IllegalArgumentException("minor must be at most pitch, "
          + pitch.inFull(LengthUnit.MILLIMETRE) + ", was " + minor.inFull(LengthUnit.MILLIMETRE));
    }
  }

  static ThreadSection about(Length pitch, Length outward, Length inward) {
    return new ThreadSection(pitch.plus(outward), pitch, pitch.minus(inward));
  }

  /**
   * Obtains the diameter a caliper rests on.
   *
   * @param gender outside or inside
   * @return the major diameter of a male thread, the minor diameter of a female one
   */
  public Length crest(Gender gender) {
    Objects.requireNonNull(gender, "gender");
    return gender == Gender.MALE ? major : minor;
  }

  /** {@return the three diameters in millimetres} */
  @Override
  public String toString() {
    return "major " + major.format(LengthUnit.MILLIMETRE, 3) + ", pitch "
        + pitch.format(LengthUnit.MILLIMETRE, 3) + ", minor "
        + minor.format(LengthUnit.MILLIMETRE, 3);
  }
}
