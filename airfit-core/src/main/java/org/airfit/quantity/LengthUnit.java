package org.airfit.quantity;

/** Units of lengths; the SI unit is the metre. */
public enum LengthUnit implements Unit {
  /** SI base unit. */
  METRE("m", 1.0, 1.0, "SI base unit", "metre", "meter", "metres", "meters"),
  /** 1/1000 m. */
  MILLIMETRE(
      "mm", 1.0, 1000.0, "1/1000 m", "millimetre", "millimeter", "millimetres", "millimeters"),
  /** 1/100 m. */
  CENTIMETRE("cm", 1.0, 100.0, "1/100 m", "centimetre", "centimeter", "centimetres", "centimeters"),
  /** 1/1 000 000 m. */
  MICROMETRE(
      "µm", 1.0, 1e6, "1/1 000 000 m", "um", "micron", "microns", "micrometre", "micrometer"),
  /** 0.0254 m exactly: the international inch of 1959. */
  INCH(
      "in",
      254.0,
      10_000.0,
      "0.0254 m exactly: the international inch of 1959",
      "inch",
      "inches",
      "\"",
      "''"),
  /** 12 in, 0.3048 m exactly. */
  FOOT("ft", 3048.0, 10_000.0, "12 in, 0.3048 m exactly", "foot", "feet", "'"),
  /** 3 ft, 0.9144 m exactly. */
  YARD("yd", 9144.0, 10_000.0, "3 ft, 0.9144 m exactly", "yard", "yards"),
  /** 5280 ft, 1609.344 m exactly. */
  MILE("mi", 1_609_344.0, 1000.0, "5280 ft, 1609.344 m exactly", "mile", "miles"),
  /** 1/1000 in, 0.0000254 m exactly. */
  MIL("mil", 254.0, 1e7, "1/1000 in, 0.0000254 m exactly", "mils", "thou");

  private final UnitScale scale;

  LengthUnit(
      String symbol, double multiplier, double divisor, String definition, String... spellings) {
    scale = UnitScale.of(symbol, multiplier, divisor, 0.0, definition, spellings);
  }

  @Override
  public UnitScale scale() {
    return scale;
  }
}
