package org.airfit.quantity;

/** Units of energies; the SI unit is the joule. */
public enum EnergyUnit implements Unit {
  /** SI unit. */
  JOULE("J", 1.0, 1.0, "SI unit"),
  /** 1000 J exactly. */
  KILOJOULE("kJ", 1000.0, 1.0, "1000 J exactly"),
  /** 1 000 000 J exactly. */
  MEGAJOULE("MJ", 1e6, 1.0, "1 000 000 J exactly"),
  /** 1000 W × 3600 s exactly. */
  KILOWATT_HOUR("kWh", 3.6e6, 1.0, "1000 W × 3600 s exactly"),
  /** 0.3048 m × 4.4482216152605 N exactly. */
  FOOT_POUND_FORCE(
      "ft·lbf",
      3_389_544_870_828_501.0,
      2.5e15,
      "0.3048 m × 4.4482216152605 N exactly",
      "ft lb",
      "ft-lbf",
      "ft-lb"),
  /** International Table Btu, 1055.05585262 J exactly. */
  BTU("Btu", 105_505_585_262.0, 1e8, "International Table Btu, 1055.05585262 J exactly");

  private final UnitScale scale;

  EnergyUnit(
      String symbol, double multiplier, double divisor, String definition, String... spellings) {
    scale = UnitScale.of(symbol, multiplier, divisor, 0.0, definition, spellings);
  }

  @Override
  public UnitScale scale() {
    return scale;
  }
}
