package org.airfit.thread;

import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;

/**
 * The three diameters of a thread in one plane square to its axis, at basic size.
 *
 * <p>On a male thread the major diameter lies over the crests and the minor diameter in the roots; on a female thread the minor diameter is
 * the bore between the crests and the major diameter lies in the roots.
 *
 * @param major the largest diameter
 * @param pitch the diameter where ridge and groove are equally wide
 * @param minor the smallest diameter
 */
public record ThreadSection(Length major, Length pitch, Length minor) {

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
