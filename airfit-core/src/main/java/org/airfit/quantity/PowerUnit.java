package org.airfit.quantity;

/** Units of powers; the SI unit is the watt. */
public enum PowerUnit implements Unit {
  /** SI unit. */
  WATT("W", 1.0, 1.0, "SI unit", "watt", "watts"),
  /** 1000 W exactly. */
  KILOWATT("kW", 1000.0, 1.0, "1000 W exactly", "kilowatt", "kilowatts"),
  /** 550 ft·lbf/s exactly. */
  HORSEPOWER("hp", 745.6998715822702, 1.0, "550 ft·lbf/s exactly", "bhp", "horsepower"),
  /** 75 kgf·m/s exactly. */
  METRIC_HORSEPOWER("hp(metric)", 73_549_875.0, 1e5, "75 kgf·m/s exactly", "PS", "metric hp"),
  /** 746 W exactly. */
  ELECTRIC_HORSEPOWER("hp(electric)", 746.0, 1.0, "746 W exactly", "electric hp"),
  /** The International Table Btu (1055.05585262 J) per hour, exactly. */
  BTU_PER_HOUR(
      "Btu/h",
      105_505_585_262.0,
      3600e8,
      "the International Table Btu (1055.05585262 J) per hour, exactly",
      "Btu/hr");

  private final UnitScale scale;

  PowerUnit(
      String symbol, double multiplier, double divisor, String definition, String... spellings) {
    scale = UnitScale.of(symbol, multiplier, divisor, 0.0, definition, spellings);
  }

  @Override
  public UnitScale scale() {
    return scale;
  }
}
