package org.airfit.quantity;

/** Units of areas; the SI unit is the square metre. */
public enum AreaUnit implements Unit {
  /** SI unit. */
  SQUARE_METRE("m²", 1.0, 1.0, "SI unit", "sq m"),
  /** 1/10 000 m². */
  SQUARE_CENTIMETRE("cm²", 1.0, 1e4, "1/10 000 m²"),
  /** 1/1 000 000 m². */
  SQUARE_MILLIMETRE("mm²", 1.0, 1e6, "1/1 000 000 m²", "sq mm"),
  /** (0.0254 m)² exactly. */
  SQUARE_INCH("in²", 64_516.0, 1e8, "(0.0254 m)² exactly", "sq in"),
  /** (0.3048 m)² exactly. */
  SQUARE_FOOT("ft²", 9_290_304.0, 1e8, "(0.3048 m)² exactly", "sq ft");

  private final UnitScale scale;

  AreaUnit(
      String symbol, double multiplier, double divisor, String definition, String... spellings) {
    scale = UnitScale.of(symbol, multiplier, divisor, 0.0, definition, spellings);
  }

  @Override
  public UnitScale scale() {
    return scale;
  }
}
