package org.airfit.quantity;

/** Units of mass flows; the SI unit is the kilogram per second. */
public enum MassFlowUnit implements Unit {
  /** SI unit. */
  KILOGRAM_PER_SECOND("kg/s", 1.0, 1.0, "SI unit"),
  /** 1/60 kg/s. */
  KILOGRAM_PER_MINUTE("kg/min", 1.0, 60.0, "1/60 kg/s"),
  /** 1/3600 kg/s. */
  KILOGRAM_PER_HOUR("kg/h", 1.0, 3600.0, "1/3600 kg/s", "kg/hr"),
  /** 1/1000 kg/s. */
  GRAM_PER_SECOND("g/s", 1.0, 1000.0, "1/1000 kg/s"),
  /** 0.45359237 kg/s exactly: the international pound of 1959. */
  POUND_PER_SECOND(
      "lb/s",
      45_359_237.0,
      1e8,
      "0.45359237 kg/s exactly: the international pound of 1959",
      "lbm/s"),
  /** 0.45359237 kg / 60 s exactly. */
  POUND_PER_MINUTE("lb/min", 45_359_237.0, 60e8, "0.45359237 kg / 60 s exactly", "lbm/min"),
  /** 0.45359237 kg / 3600 s exactly. */
  POUND_PER_HOUR("lb/h", 45_359_237.0, 3600e8, "0.45359237 kg / 3600 s exactly", "lbm/h", "lb/hr");

  private final UnitScale scale;

  MassFlowUnit(
      String symbol, double multiplier, double divisor, String definition, String... spellings) {
    scale = UnitScale.of(symbol, multiplier, divisor, 0.0, definition, spellings);
  }

  @Override
  public UnitScale scale() {
    return scale;
  }
}
