package org.airfit.flow;

import java.util.Objects;
import org.airfit.internal.Digits;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.SonicConductance;
import org.airfit.working.UnitSystem;

/**
 * The figures of ISO 6358 that say how much air a part lets through; {@link FlowCapacity} calculates with them.
 *
 * @param conductance the sonic conductance C, above 0
 * @param criticalPressureRatio the critical pressure ratio b [-], in [0, 1)
 * @param subsonicIndex the subsonic index m [-], in (0, 1]
 * @param crackingPressure the drop Δpc below which nothing flows, 0 for a part without a check valve
 */
public record FlowCoefficients(
    SonicConductance conductance,
    double criticalPressureRatio,
    double subsonicIndex,
    PressureDrop crackingPressure) {

  /**
   * Checks the components.
   *
   * @param conductance the sonic conductance C, above 0
   * @param criticalPressureRatio the critical pressure ratio b [-], in [0, 1)
   * @param subsonicIndex the subsonic index m [-], in (0, 1]
   * @param crackingPressure the drop Δpc below which nothing flows
   * @throws IllegalArgumentException if one is out of range
   */
  public FlowCoefficients {
    Objects.requireNonNull(conductance, "conductance");
    Objects.requireNonNull(crackingPressure, "crackingPressure");
    if (!(conductance.cubicMetresPerSecondPascal() > 0.0)) {
      throw new IllegalArgumentException(
          "sonic conductance must be above 0, was " + conductance.shown());
    }
    if (!(criticalPressureRatio >= 0.0 && criticalPressureRatio < 1.0)) {
      throw new IllegalArgumentException(
          "critical pressure ratio must be in [0, 1), was " + Digits.told(criticalPressureRatio));
    }
    if (!(subsonicIndex > 0.0 && subsonicIndex <= 1.0)) {
      throw new IllegalArgumentException(
          "subsonic index must be in (0, 1], was " + Digits.told(subsonicIndex));
    }
    criticalPressureRatio += 0.0; // -0.0 becomes 0.0
  }

  /** {@return the figures, such as "C 3.5 dm³/(s·bar), b 0.25"; m and Δpc where they are not the usual} */
  @Override
  public String toString() {
    return inWords(UnitSystem.SI);
  }

  /** The same in the units of a working. */
  String inWords(UnitSystem units) {
    return "C " + units.say(conductance) + ", b "
        + Digits.significant(criticalPressureRatio, 4)
        + (subsonicIndex == 0.5 ? "" : ", m " + Digits.significant(subsonicIndex, 4))
        + (crackingPressure.pascals() == 0.0
            ? ""
            : ", opens at " + units.either(crackingPressure.shown(), units.say(crackingPressure)));
  }
}
