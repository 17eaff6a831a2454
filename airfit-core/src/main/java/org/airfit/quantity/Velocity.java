package org.airfit.quantity;

import java.util.List;

/**
 * The mean velocity of the air across a bore.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class Velocity extends Quantity<Velocity, VelocityUnit> {

  private static final Grammar<VelocityUnit> GRAMMAR =
      Grammar.ofUnits("velocity", VelocityUnit.values(), List.of("15 m/s", "30 ft/s"));

  private Velocity(double value, VelocityUnit unit) {
    super(value, unit, 0.0, "velocity");
  }

  /**
   * Obtains a velocity from a value in any unit.
   *
   * @param value the value in {@code unit}
   * @param unit the unit
   * @return the velocity
   * @throws IllegalArgumentException if the value is NaN, infinite or negative
   */
  public static Velocity of(double value, VelocityUnit unit) {
    return new Velocity(value, unit);
  }

  /**
   * Obtains a velocity from metres per second.
   *
   * @param metresPerSecond the velocity [m/s]
   * @return the velocity
   * @throws IllegalArgumentException if {@code metresPerSecond} is NaN, infinite or negative
   */
  public static Velocity ofMetresPerSecond(double metresPerSecond) {
    return of(metresPerSecond, VelocityUnit.METRE_PER_SECOND);
  }

  /**
   * Obtains a velocity from feet per second.
   *
   * @param feetPerSecond the velocity [ft/s]
   * @return the velocity
   * @throws IllegalArgumentException if {@code feetPerSecond} is NaN, infinite or negative
   */
  public static Velocity ofFeetPerSecond(double feetPerSecond) {
    return of(feetPerSecond, VelocityUnit.FOOT_PER_SECOND);
  }

  /**
   * Reads what people type.
   *
   * @param text a number and a unit, such as "15 m/s", "30 ft/s"
   * @return the velocity
   * @throws QuantityFormatException if the text is not a velocity; it tells where and what would be accepted
   */
  public static Velocity parse(String text) {
    return GRAMMAR.read(text, Velocity::of);
  }

  /** {@return this velocity [m/s]} */
  public double metresPerSecond() {
    return in(VelocityUnit.METRE_PER_SECOND);
  }

  /** {@return this velocity [ft/s]} */
  public double feetPerSecond() {
    return in(VelocityUnit.FOOT_PER_SECOND);
  }

  @Override
  public VelocityUnit siUnit() {
    return VelocityUnit.METRE_PER_SECOND;
  }
}
