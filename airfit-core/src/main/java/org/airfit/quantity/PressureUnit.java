package org.airfit.quantity;

/** Units of pressures; the SI unit is the pascal. */
public enum PressureUnit implements Unit {
  /** SI unit, 1 N/m². */
  PASCAL("Pa", 1.0, 1.0, "SI unit, 1 N/m²", "pascal", "pascals"),
  /** 1000 Pa exactly. */
  KILOPASCAL("kPa", 1000.0, 1.0, "1000 Pa exactly", "kilopascal", "kilopascals"),
  /** 1 000 000 Pa exactly. */
  MEGAPASCAL("MPa", 1e6, 1.0, "1 000 000 Pa exactly"),
  /** 100 000 Pa exactly. */
  BAR("bar", 1e5, 1.0, "100 000 Pa exactly", "bars"),
  /** 100 Pa exactly. */
  MILLIBAR("mbar", 100.0, 1.0, "100 Pa exactly", "hPa"),
  /** 1 lbf/in² = 0.45359237 kg × 9.80665 m/s² / (0.0254 m)² exactly. */
  PSI(
      "psi",
      44_482_216_152_605.0,
      6_451_600_000.0,
      "1 lbf/in² = 0.45359237 kg × 9.80665 m/s² / (0.0254 m)² exactly",
      "lbf/in²",
      "lb/in²"),
  /** 1000 psi exactly. */
  KSI("ksi", 44_482_216_152_605.0, 6_451_600.0, "1000 psi exactly"),
  /** 1 lbf/ft² exactly. */
  POUND_PER_SQUARE_FOOT(
      "lbf/ft²", 44_482_216_152_605.0, 929_030_400_000.0, "1 lbf/ft² exactly", "psf"),
  /** Standard atmosphere, 101 325 Pa exactly. */
  ATMOSPHERE("atm", 101325.0, 1.0, "standard atmosphere, 101 325 Pa exactly"),
  /** 9.80665 N / (0.01 m)² exactly. */
  KILOGRAM_FORCE_PER_SQUARE_CENTIMETRE(
      "kgf/cm²", 98066.5, 1.0, "9.80665 N / (0.01 m)² exactly", "kg/cm²"),
  /** 1/760 atm exactly. */
  TORR("Torr", 101_325.0, 760.0, "1/760 atm exactly"),
  /** 1 mm × 13 595.1 kg/m³ × 9.80665 m/s², the conventional value. */
  MILLIMETRE_OF_MERCURY(
      "mmHg",
      133_322_387_415.0,
      1e9,
      "1 mm × 13 595.1 kg/m³ × 9.80665 m/s², the conventional value"),
  /** 1 in × 13 595.1 kg/m³ × 9.80665 m/s², the conventional value. */
  INCH_OF_MERCURY(
      "inHg",
      3_386_388_640_341.0,
      1e9,
      "1 in × 13 595.1 kg/m³ × 9.80665 m/s², the conventional value",
      "\"Hg"),
  /** 1 mm × 1000 kg/m³ × 9.80665 m/s², the conventional value. */
  MILLIMETRE_OF_WATER(
      "mmH₂O", 980_665.0, 1e5, "1 mm × 1000 kg/m³ × 9.80665 m/s², the conventional value", "mm WC"),
  /** 1 in × 1000 kg/m³ × 9.80665 m/s², the conventional value. */
  INCH_OF_WATER(
      "inH₂O",
      24_908_891.0,
      1e5,
      "1 in × 1000 kg/m³ × 9.80665 m/s², the conventional value",
      "in WC",
      "\"WC");

  private final UnitScale scale;

  PressureUnit(
      String symbol, double multiplier, double divisor, String definition, String... spellings) {
    scale = UnitScale.of(symbol, multiplier, divisor, 0.0, definition, spellings);
  }

  /**
   * Prints a pressure in bar or in psi, whichever takes fewer digits, as a refusal does: a pressure that somebody typed
   * is most likely told in the unit that was typed.
   */
  static String inFewestDigits(Quantity<?, PressureUnit> pressure) {
    String bar = pressure.inFull(BAR);
    String psi = pressure.inFull(PSI);
    return psi.indexOf(' ') < bar.indexOf(' ') ? psi : bar;
  }

  @Override
  public UnitScale scale() {
    return scale;
  }
}
