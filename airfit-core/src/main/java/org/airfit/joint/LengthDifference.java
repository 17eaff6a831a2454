package org.airfit.joint;

import java.util.Objects;
import org.airfit.internal.Digits;
import org.airfit.quantity.Length;

/**
 * By how much one length exceeds another, such as a clearance between two threads; below 0 where it falls short.
 *
 * @param of the length asked about
 * @param over what it is compared with
 */
public record LengthDifference(Length of, Length over) implements Comparable<LengthDifference> {

  /**
   * Refuses {@code null}.
   *
   * @param of the length asked about
   * @param over what it is compared with
   */
  public LengthDifference {
    Objects.requireNonNull(of, "of");
    Objects.requireNonNull(over, "over");
  }

  /** {@return the difference [mm], below 0 where {@link #of()} is the shorter} */
  public double millimetres() {
    return of.millimetres() - over.millimetres();
  }

  /** {@return whether {@link #of()} is the shorter} */
  public boolean isNegative() {
    return millimetres() < 0.0;
  }

  /** {@return the difference without its sign} */
  public Length magnitude() {
    return Length.ofMillimetres(Math.abs(millimetres()));
  }

  /** Compares the differences alone, not the lengths they are of. */
  @Override
  public int compareTo(LengthDifference other) {
    return Double.compare(millimetres(), other.millimetres());
  }

  /** {@return the difference, such as "-0.021 mm"} */
  @Override
  public String toString() {
    return Digits.fixed(millimetres(), 3) + " mm";
  }
}
