package org.airfit.quantity;

/** Units of dynamic viscosities; the SI unit is the pascal second. */
public enum ViscosityUnit implements Unit {
  /** SI unit. */
  PASCAL_SECOND("Pa·s", 1.0, 1.0, "SI unit", "N·s/m²", "kg/(m·s)"),
  /** 1/1000 Pa·s exactly. */
  CENTIPOISE("cP", 1.0, 1000.0, "1/1000 Pa·s exactly", "mPa·s"),
  /** 1/1 000 000 Pa·s exactly. */
  MICROPASCAL_SECOND("µPa·s", 1.0, 1e6, "1/1 000 000 Pa·s exactly", "uPa·s"),
  /** 0.45359237 kg / (0.3048 m × 1 s) exactly. */
  POUND_PER_FOOT_SECOND(
      "lb/(ft·s)", 45_359_237.0, 30_480_000.0, "0.45359237 kg / (0.3048 m × 1 s) exactly"),
  /** 4.4482216152605 N s / (0.3048 m)² exactly. */
  POUND_FORCE_SECOND_PER_SQUARE_FOOT(
      "lbf·s/ft²",
      44_482_216_152_605.0,
      929_030_400_000.0,
      "4.4482216152605 N s / (0.3048 m)² exactly");

  private final UnitScale scale;

  ViscosityUnit(
      String symbol, double multiplier, double divisor, String definition, String... spellings) {
    scale = UnitScale.of(symbol, multiplier, divisor, 0.0, definition, spellings);
  }

  @Override
  public UnitScale scale() {
    return scale;
  }
}
