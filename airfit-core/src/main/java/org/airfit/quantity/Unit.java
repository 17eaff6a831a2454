package org.airfit.quantity;

/** A unit a quantity can be given, read or printed in. Each quantity has an enum of its own units. */
public sealed interface Unit
    permits LengthUnit,
        AreaUnit,
        VolumeUnit,
        PressureUnit,
        TemperatureUnit,
        MassFlowUnit,
        VolumeFlowUnit,
        DensityUnit,
        VelocityUnit,
        ViscosityUnit,
        PowerUnit,
        EnergyUnit,
        ConductanceUnit {

  /** {@return how this unit stands to the SI unit, with its definition and its spellings} */
  UnitScale scale();

  /** {@return how this unit is printed, such as "mm"} */
  default String symbol() {
    return scale().symbol();
  }

  /** {@return the exact definition of this unit, such as "12 in, 0.3048 m exactly"} */
  default String definition() {
    return scale().definition();
  }

  /**
   * Converts a value in this unit to the SI unit.
   *
   * @param value the value in this unit
   * @return the value in the SI unit
   */
  default double toSi(double value) {
    return scale().toSi(value);
  }

  /**
   * Converts a value in the SI unit to this unit.
   *
   * @param si the value in the SI unit
   * @return the value in this unit
   */
  default double fromSi(double si) {
    return scale().fromSi(si);
  }
}
