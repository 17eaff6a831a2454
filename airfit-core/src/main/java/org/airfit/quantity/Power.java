package org.airfit.quantity;

import java.time.Duration;
import java.util.List;
import java.util.Objects;
import org.airfit.internal.Seconds;

/**
 * A power, such as that of a compressor motor.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class Power extends AdditiveQuantity<Power, PowerUnit> {

  private static final Grammar<PowerUnit> GRAMMAR =
      Grammar.ofUnits("power", PowerUnit.values(), List.of("7.5 kW", "10 hp"));

  private Power(double value, PowerUnit unit) {
    super(value, unit, "power");
  }

  /**
   * Obtains a power from a value in any unit.
   *
   * @param value the value in {@code unit}
   * @param unit the unit
   * @return the power
   * @throws IllegalArgumentException if the value is NaN, infinite or negative
   */
  public static Power of(double value, PowerUnit unit) {
    return new Power(value, unit);
  }

  /**
   * Obtains a power from watts.
   *
   * @param watts the power [W]
   * @return the power
   * @throws IllegalArgumentException if {@code watts} is NaN, infinite or negative
   */
  public static Power ofWatts(double watts) {
    return of(watts, PowerUnit.WATT);
  }

  /**
   * Obtains a power from kilowatts.
   *
   * @param kilowatts the power [kW]
   * @return the power
   * @throws IllegalArgumentException if {@code kilowatts} is NaN, infinite or negative
   */
  public static Power ofKilowatts(double kilowatts) {
    return of(kilowatts, PowerUnit.KILOWATT);
  }

  /**
   * Obtains a power from horsepower.
   *
   * @param horsepower the power [hp]
   * @return the power
   * @throws IllegalArgumentException if {@code horsepower} is NaN, infinite or negative
   */
  public static Power ofHorsepower(double horsepower) {
    return of(horsepower, PowerUnit.HORSEPOWER);
  }

  /**
   * Reads what people type.
   *
   * @param text a number and a unit, such as "7.5 kW", "10 hp"
   * @return the power
   * @throws QuantityFormatException if the text is not a power; it tells where and what would be accepted
   */
  public static Power parse(String text) {
    return GRAMMAR.read(text, Power::of);
  }

  /** {@return this power [W]} */
  public double watts() {
    return in(PowerUnit.WATT);
  }

  /** {@return this power [kW]} */
  public double kilowatts() {
    return in(PowerUnit.KILOWATT);
  }

  /** {@return this power [hp]} */
  public double horsepower() {
    return in(PowerUnit.HORSEPOWER);
  }

  /**
   * Converts to the energy spent in a time.
   *
   * @param time the time, not negative
   * @return this times {@code time}
   * @throws IllegalArgumentException if {@code time} is negative
   */
  public Energy over(Duration time) {
    if (Objects.requireNonNull(time, "time").isNegative()) {
      throw new IllegalArgumentException("time must be at least 0 s, was " + Seconds.told(time));
    }
    return Energy.ofJoules(si() * Seconds.of(time));
  }

  @Override
  Power ofSi(double value) {
    return new Power(value, PowerUnit.WATT);
  }

  @Override
  public PowerUnit siUnit() {
    return PowerUnit.WATT;
  }
}
