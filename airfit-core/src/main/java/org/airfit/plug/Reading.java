package org.airfit.plug;

import java.util.Optional;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;

/**
 * One dimension of a plug as read, with what the reading may be off.
 *
 * @param dimension what was measured
 * @param length what was read
 * @param standardUncertainty one standard deviation of the reading, of instrument and user together, above 0; take it from an
 *     {@link Instrument} or from the spread of your own repeats
 * @param ball the ball a tip length is referred to, see {@link GaugeBall}; empty for the edge, and for any other dimension
 * @param caliper the caliper whose error is in the uncertainty and common to all readings with it; empty for a reading on its own
 */
public record Reading(
    Dimension dimension,
    Length length,
    Length standardUncertainty,
    Optional<GaugeBall> ball,
    Optional<Instrument> caliper) {

  /**
   * Takes down a reading with an uncertainty of its own, which it shares with no other.
   *
   * @param dimension what was measured
   * @param length what was read
   * @param standardUncertainty one standard deviation of the reading, above 0
   * @throws IllegalArgumentException if the length or the uncertainty is zero
   */
  public Reading(Dimension dimension, Length length, Length standardUncertainty) {
    this(dimension, length, standardUncertainty, Optional.empty(), Optional.empty());
  }

  /**
   * Checks that there is something read and that it is not taken as perfect.
   *
   * @param dimension what was measured
   * @param length what was read
   * @param standardUncertainty one standard deviation of the reading, of instrument and user together, above 0; take it from an {@link Instrument} or from the spread of your own repeats
   * @param ball the ball a tip length is referred to, see {@link GaugeBall}; empty for the edge, and for any other dimension
   * @param caliper the caliper whose error is in the uncertainty and common to all readings with it; empty for a reading on its own
   * @throws IllegalArgumentException if the length or the uncertainty is zero, the uncertainty is less than the caliper's own, or a ball
   *     stands with another dimension than the tip length
   */
  public Reading {
    if (ball.isPresent() && dimension != Dimension.TIP_LENGTH) {
      throw new IllegalArgumentException("dimension taken by a ball must be the "
          + Dimension.TIP_LENGTH + ", was the " + dimension + "; leave the ball out");
    }
    if (!(length.metres() > 0.0)) {
      throw new IllegalArgumentException(dimension + " must be above 0 mm, was "
          + length.format(LengthUnit.MILLIMETRE) + "; leave out what was not measured");
    }
    if (!(standardUncertainty.metres() > 0.0)) {
      throw new IllegalArgumentException(
          "standard uncertainty of the " + dimension + " must be above 0 mm, was "
              + standardUncertainty.format(LengthUnit.MILLIMETRE)
              + "; no reading is perfect, take it from an Instrument");
    }
    caliper.ifPresent(by -> {
      if (!(standardUncertainty.compareTo(by.commonUncertainty()) > 0)) {
        throw new IllegalArgumentException("standard uncertainty of the " + dimension
            + " must be above that of a " + by.label() + ", "
            + by.commonUncertainty().format(LengthUnit.MILLIMETRE, 4) + ", was "
            + standardUncertainty.format(LengthUnit.MILLIMETRE, 4)
            + "; leave the caliper out if you know it better than its class");
      }
    });
  }

  /** {@return the same reading as one on its own, its error shared with no other} */
  public Reading alone() {
    return new Reading(dimension, length, standardUncertainty, ball, Optional.empty());
  }

  /** {@return the reading in words, such as "tip diameter (D_t) 18.72 mm ± 0.013 mm"} */
  @Override
  public String toString() {
    return dimension + " " + length.format(LengthUnit.MILLIMETRE, 2) + " ± "
        + standardUncertainty.format(LengthUnit.MILLIMETRE, 3)
        + ball.map(by -> ", by " + by).orElse("");
  }
}
