package org.airfit.quantity;

import java.util.Objects;

/**
 * A quantity whose values add up: two lengths make a length, half of an energy is an energy.
 *
 * <p>Pressures and temperatures are none: the sum of two absolute pressures means nothing. A {@link PressureDrop} is
 * one, and it is added to a pressure or taken off it.
 *
 * <p>Results below the lowest value of a quantity are refused, as are those that are no finite number.
 *
 * @param <Q> the kind of quantity
 * @param <U> its units
 */
public abstract sealed class AdditiveQuantity<Q extends AdditiveQuantity<Q, U>, U extends Unit>
    extends Quantity<Q, U>
    permits Area, Energy, FreeAirFlow, Length, MassFlow, Power, PressureDrop, Volume {

  AdditiveQuantity(double value, U unit, String quantity) {
    super(value, unit, 0.0, quantity);
  }

  /** The quantity of this kind with a value in the SI unit. */
  abstract Q ofSi(double value);

  /**
   * Adds.
   *
   * @param other what to add
   * @return this plus {@code other}
   * @throws IllegalArgumentException if the sum is too large to hold
   */
  public Q plus(Q other) {
    return ofSi(si() + Objects.requireNonNull(other, "other").si());
  }

  /**
   * Takes away.
   *
   * @param other what to take away, no larger than this
   * @return this minus {@code other}
   * @throws IllegalArgumentException if {@code other} is larger than this
   */
  public Q minus(Q other) {
    return ofSi(si() - Objects.requireNonNull(other, "other").si());
  }

  /**
   * Multiplies.
   *
   * @param factor the factor [-], at least 0
   * @return this times {@code factor}
   * @throws IllegalArgumentException if the product is negative or not finite
   */
  public final Q times(double factor) {
    return ofSi(si() * factor);
  }

  /**
   * Divides into equal parts.
   *
   * @param divisor the number of parts [-], above 0
   * @return this over {@code divisor}
   * @throws IllegalArgumentException if the quotient is negative or not finite
   */
  public final Q dividedBy(double divisor) {
    return ofSi(si() / divisor);
  }
}
