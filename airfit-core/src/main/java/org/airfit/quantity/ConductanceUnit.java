package org.airfit.quantity;

/** Units of sonic conductances; the SI unit is the cubic metre per second and pascal. */
public enum ConductanceUnit implements Unit {
  /** SI unit, at ISO 8778 reference (ANR). */
  CUBIC_METRE_PER_SECOND_PASCAL(
      "m³/(s·Pa)", 1.0, 1.0, "SI unit, at ISO 8778 reference (ANR)", "m³/s/Pa"),
  /** 0.001 m³ / (s × 100 000 Pa) exactly, the unit of ISO 6358. */
  CUBIC_DECIMETRE_PER_SECOND_BAR(
      "dm³/(s·bar)",
      1.0,
      1e8,
      "0.001 m³ / (s × 100 000 Pa) exactly, the unit of ISO 6358",
      "L/(s·bar)",
      "L/s/bar",
      "dm³/s/bar"),
  /** 0.001 m³ / (60 s × 100 000 Pa) exactly. */
  LITRE_PER_MINUTE_BAR(
      "L/(min·bar)",
      1.0,
      6e9,
      "0.001 m³ / (60 s × 100 000 Pa) exactly",
      "L/min/bar",
      "dm³/(min·bar)");

  private final UnitScale scale;

  ConductanceUnit(
      String symbol, double multiplier, double divisor, String definition, String... spellings) {
    scale = UnitScale.of(symbol, multiplier, divisor, 0.0, definition, spellings);
  }

  @Override
  public UnitScale scale() {
    return scale;
  }
}
