package org.airfit.quantity;

/** Units of densities; the SI unit is the kilogram per cubic metre. */
public enum DensityUnit implements Unit {
  /** SI unit. */
  KILOGRAM_PER_CUBIC_METRE("kg/m³", 1.0, 1.0, "SI unit"),
  /** 1/1,000,000 kg/m³; oil and dust in air are told in it. */
  MILLIGRAM_PER_CUBIC_METRE("mg/m³", 1.0, 1.0e6, "1/1000000 kg/m³"),
  /** 0.45359237 kg / (0.3048 m)³ exactly. */
  POUND_PER_CUBIC_FOOT(
      "lb/ft³",
      453_592_370_000.0,
      28_316_846_592.0,
      "0.45359237 kg / (0.3048 m)³ exactly",
      "lbm/ft³");

  private final UnitScale scale;

  DensityUnit(
      String symbol, double multiplier, double divisor, String definition, String... spellings) {
    scale = UnitScale.of(symbol, multiplier, divisor, 0.0, definition, spellings);
  }

  @Override
  public UnitScale scale() {
    return scale;
  }
}
