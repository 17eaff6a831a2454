package org.airfit.quantity;

/** Units of volume flows; the SI unit is the cubic metre per second. */
public enum VolumeFlowUnit implements Unit {
  /** SI unit. */
  CUBIC_METRE_PER_SECOND("m³/s", 1.0, 1.0, "SI unit"),
  /** 1/60 m³/s. */
  CUBIC_METRE_PER_MINUTE("m³/min", 1.0, 60.0, "1/60 m³/s"),
  /** 1/3600 m³/s. */
  CUBIC_METRE_PER_HOUR("m³/h", 1.0, 3600.0, "1/3600 m³/s", "m³/hr", "cmh"),
  /** 1/1000 m³/s. */
  LITRE_PER_SECOND("L/s", 1.0, 1000.0, "1/1000 m³/s", "l/sec", "dm³/s"),
  /** 1/60 000 m³/s. */
  LITRE_PER_MINUTE("L/min", 1.0, 60000.0, "1/60 000 m³/s", "lpm", "dm³/min"),
  /** (0.3048 m)³/s exactly. */
  CUBIC_FOOT_PER_SECOND("cfs", 28_316_846_592.0, 1e12, "(0.3048 m)³/s exactly", "ft³/s"),
  /** (0.3048 m)³ / 60 s exactly. */
  CUBIC_FOOT_PER_MINUTE(
      "cfm", 28_316_846_592.0, 60e12, "(0.3048 m)³ / 60 s exactly", "ft³/min", "cu ft/min"),
  /** (0.3048 m)³ / 3600 s exactly. */
  CUBIC_FOOT_PER_HOUR("cfh", 28_316_846_592.0, 3600e12, "(0.3048 m)³ / 3600 s exactly", "ft³/h");

  private final UnitScale scale;

  VolumeFlowUnit(
      String symbol, double multiplier, double divisor, String definition, String... spellings) {
    scale = UnitScale.of(symbol, multiplier, divisor, 0.0, definition, spellings);
  }

  @Override
  public UnitScale scale() {
    return scale;
  }
}
