package org.airfit.quantity;

/** Units of volumes; the SI unit is the cubic metre. */
public enum VolumeUnit implements Unit {
  /** SI unit. */
  CUBIC_METRE("m³", 1.0, 1.0, "SI unit", "cu m"),
  /** 1/1000 m³. */
  LITRE("L", 1.0, 1000.0, "1/1000 m³", "l", "ltr", "litre", "liter", "litres", "liters", "dm³"),
  /** (0.3048 m)³ exactly. */
  CUBIC_FOOT(
      "ft³", 28_316_846_592.0, 1e12, "(0.3048 m)³ exactly", "cu ft", "cubic feet", "cubic foot"),
  /** (0.0254 m)³ exactly. */
  CUBIC_INCH("in³", 16_387_064.0, 1e12, "(0.0254 m)³ exactly", "cu in"),
  /** 231 in³ exactly. */
  US_GALLON(
      "US gal",
      3_785_411_784.0,
      1e12,
      "231 in³ exactly",
      "gal us",
      "usg",
      "us gallon",
      "us gallons"),
  /** 4.54609 L exactly. */
  IMPERIAL_GALLON(
      "imp gal",
      454_609.0,
      1e8,
      "4.54609 L exactly",
      "gal imp",
      "uk gal",
      "imperial gallon",
      "imperial gallons");

  private final UnitScale scale;

  VolumeUnit(
      String symbol, double multiplier, double divisor, String definition, String... spellings) {
    scale = UnitScale.of(symbol, multiplier, divisor, 0.0, definition, spellings);
  }

  @Override
  public UnitScale scale() {
    return scale;
  }
}
