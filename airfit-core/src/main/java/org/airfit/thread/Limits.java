package org.airfit.thread;

import java.util.Objects;
import org.airfit.internal.Digits;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;

/**
 * The least and the most a standard allows of a length.
 *
 * @param least the lower limit
 * @param most the upper limit, at least {@code least}
 */
public record Limits(Length least, Length most) {

  /**
   * Checks the order.
   *
   * @param least the lower limit
   * @param most the upper limit, at least {@code least}
   * @throws IllegalArgumentException if {@code least} is above {@code most}
   */
  public Limits {
    Objects.requireNonNull(least, "least");
    Objects.requireNonNull(most, "most");
    if (least.compareTo(most) > 0) {
      throw new IllegalArgumentException("least must be at most "
          + most.inFull(LengthUnit.MILLIMETRE) + ", was " + least.inFull(LengthUnit.MILLIMETRE));
    }
  }

  static Limits about(Length middle, Length tolerance) {
    return new Limits(middle.minus(tolerance), middle.plus(tolerance));
  }

  /**
   * Says whether a length keeps the limits.
   *
   * @param length the length
   * @return whether it lies between them or on one of them
   */
  public boolean contains(Length length) {
    Objects.requireNonNull(length, "length");
    return length.compareTo(least) >= 0 && length.compareTo(most) <= 0;
  }

  /**
   * Writes the limits in a unit.
   *
   * @param unit the unit
   * @return both limits to 0.001 mm or 0.0001 in, such as "0.5082 to 0.5180 in"
   */
  public String format(LengthUnit unit) {
    Objects.requireNonNull(unit, "unit");
    int decimals = unit == LengthUnit.INCH ? 4 : 3;
    return Digits.fixed(least.in(unit), decimals) + " to " + most.format(unit, decimals);
  }

  /** {@return the limits in millimetres, such as "12.907 to 13.157 mm"} */
  @Override
  public String toString() {
    return format(LengthUnit.MILLIMETRE);
  }
}
