package org.airfit.quantity;

/** Units of powers; the SI unit is the watt. */
public enum PowerUnit implements Unit {
  /** SI unit. */
  WATT("W", 1.0, 1.0, "SI unit"),
  /** 1000 W exactly. */
  KILOWATT("kW", 1000.0, 1.0, "1000 W exactly"),
  /** 550 ft·lbf/s exactly. */
  HORSEPOWER("hp", 745.69987158227022, 1.0, "550 ft·lbf/s exactly", "bhp"),
  /** 75 kgf·m/s exactly. */
  METRIC_HORSEPOWER("hp(metric)", 735.49875, 1.0, "75 kgf·m/s exactly", "PS"),
  /** 746 W exactly. */
  ELECTRIC_HORSEPOWER("hp(electric)", 746.0, 1.0, "746 W exactly"),
  /** The International Table Btu (1055.05585262 J) per hour, exactly. */
  BTU_PER_HOUR("Btu/h", 52_752_792_631.0 / 180_000_000_000.0, 1.0, "the International Table Btu (1055.05585262 J) per hour, exactly");

  private final UnitScale scale;

  PowerUnit(String symbol, double multiplier, double divisor, String definition, String... spellings) {
    scale = UnitScale.of(symbol, multiplier, divisor, 0.0, definition, spellings);
  }

  @Override
  public UnitScale scale() {
    return scale;
  }
}
