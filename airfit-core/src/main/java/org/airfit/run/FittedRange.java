package org.airfit.run;

import java.util.Objects;
import org.airfit.quantity.Quantity;

/**
 * A value that was fitted to readings: with a chance of 95 % it lies between two others, if its explanation is the
 * right one.
 *
 * @param <Q> the type of the quantity
 * @param least below it with a chance of 2.5 %
 * @param best as likely below as above it
 * @param most above it with a chance of 2.5 %
 */
public record FittedRange<Q extends Quantity<Q, ?>>(Q least, Q best, Q most) {

  /**
   * Checks the components.
   *
   * @param least below it with a chance of 2.5 %
   * @param best as likely below as above it, at least {@code least}
   * @param most above it with a chance of 2.5 %, at least {@code best}
   * @throws IllegalArgumentException if they do not rise
   */
  public FittedRange {
    Objects.requireNonNull(least, "least");
    Objects.requireNonNull(best, "best");
    Objects.requireNonNull(most, "most");
    if (least.compareTo(best) > 0 || best.compareTo(most) > 0) {
      throw new IllegalArgumentException("least, best and most must rise, were " + least.shown()
          + ", " + best.shown() + " and " + most.shown());
    }
  }

  /** {@return the values in one line, such as "8.1 mm, between 7.9 mm and 8.3 mm"} */
  @Override
  public String toString() {
    return best + ", between " + least + " and " + most;
  }
}
