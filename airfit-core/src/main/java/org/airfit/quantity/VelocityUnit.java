package org.airfit.quantity;

/** Units of velocities; the SI unit is the metre per second. */
public enum VelocityUnit implements Unit {
  /** SI unit. */
  METRE_PER_SECOND("m/s", 1.0, 1.0, "SI unit"),
  /** 0.3048 m/s exactly. */
  FOOT_PER_SECOND("ft/s", 3048.0, 10_000.0, "0.3048 m/s exactly", "fps"),
  /** 0.3048 m / 60 s exactly. */
  FOOT_PER_MINUTE("ft/min", 3048.0, 600_000.0, "0.3048 m / 60 s exactly", "fpm");

  private final UnitScale scale;

  VelocityUnit(
      String symbol, double multiplier, double divisor, String definition, String... spellings) {
    scale = UnitScale.of(symbol, multiplier, divisor, 0.0, definition, spellings);
  }

  @Override
  public UnitScale scale() {
    return scale;
  }
}
