package org.airfit.quantity;

import java.util.List;

/**
 * A volume flow at the pressure and temperature the air has where it flows.
 *
 * <p>Not {@link FreeAirFlow}: the same air fills about a seventh of its free volume in a line at 6 bar(g).
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class ActualFlow extends Scalar<ActualFlow, VolumeFlowUnit> {

  private static final Grammar<VolumeFlowUnit> GRAMMAR = Grammar.ofUnits(
      "actual flow",
      VolumeFlowUnit.values(),
      List.of("2.3 L/s", "5 cfm"),
      FreeAirFlow.hintsForActualFlow());

  private ActualFlow(double value, VolumeFlowUnit unit) {
    super(value, unit, 0.0, "actual flow");
  }

  /**
   * Obtains an actual flow from a value in any unit.
   *
   * @param value the value in {@code unit}
   * @param unit the unit
   * @return the actual flow
   * @throws IllegalArgumentException if the value is NaN, infinite or negative
   */
  public static ActualFlow of(double value, VolumeFlowUnit unit) {
    return new ActualFlow(value, unit);
  }

  /**
   * Obtains an actual flow from cubic metres per second.
   *
   * @param cubicMetresPerSecond the actual flow [m³/s]
   * @return the actual flow
   * @throws IllegalArgumentException if {@code cubicMetresPerSecond} is NaN, infinite or negative
   */
  public static ActualFlow ofCubicMetresPerSecond(double cubicMetresPerSecond) {
    return of(cubicMetresPerSecond, VolumeFlowUnit.CUBIC_METRE_PER_SECOND);
  }

  /**
   * Obtains an actual flow from litres per second.
   *
   * @param litresPerSecond the actual flow [L/s]
   * @return the actual flow
   * @throws IllegalArgumentException if {@code litresPerSecond} is NaN, infinite or negative
   */
  public static ActualFlow ofLitresPerSecond(double litresPerSecond) {
    return of(litresPerSecond, VolumeFlowUnit.LITRE_PER_SECOND);
  }

  /**
   * Obtains an actual flow from cubic feet per minute.
   *
   * @param cubicFeetPerMinute the actual flow [cfm]
   * @return the actual flow
   * @throws IllegalArgumentException if {@code cubicFeetPerMinute} is NaN, infinite or negative
   */
  public static ActualFlow ofCubicFeetPerMinute(double cubicFeetPerMinute) {
    return of(cubicFeetPerMinute, VolumeFlowUnit.CUBIC_FOOT_PER_MINUTE);
  }

  /**
   * Reads what people type.
   *
   * @param text a number and a unit, such as "2.3 L/s", "5 cfm"
   * @return the actual flow
   * @throws QuantityFormatException if the text is not an actual flow; it tells where and what would be accepted
   */
  public static ActualFlow parse(String text) {
    return GRAMMAR.read(text, ActualFlow::of);
  }

  /** {@return this actual flow [m³/s]} */
  public double cubicMetresPerSecond() {
    return in(VolumeFlowUnit.CUBIC_METRE_PER_SECOND);
  }

  /** {@return this actual flow [L/s]} */
  public double litresPerSecond() {
    return in(VolumeFlowUnit.LITRE_PER_SECOND);
  }

  /** {@return this actual flow [cfm]} */
  public double cubicFeetPerMinute() {
    return in(VolumeFlowUnit.CUBIC_FOOT_PER_MINUTE);
  }

  /**
   * Converts to a mass flow.
   *
   * @param density the density of the air where it flows
   * @return this times {@code density}
   */
  public MassFlow massFlow(Density density) {
    return MassFlow.ofKilogramsPerSecond(si() * density.kilogramsPerCubicMetre());
  }

  @Override
  VolumeFlowUnit siUnit() {
    return VolumeFlowUnit.CUBIC_METRE_PER_SECOND;
  }
}
