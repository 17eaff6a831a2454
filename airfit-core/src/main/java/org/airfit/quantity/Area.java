package org.airfit.quantity;

import java.util.List;
import java.util.Objects;

/**
 * An area, such as the clear section of a bore.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class Area extends AdditiveQuantity<Area, AreaUnit> {

  private static final Grammar<AreaUnit> GRAMMAR =
      Grammar.ofUnits("area", AreaUnit.values(), List.of("71 mm2", "0.11 in2"));

  private Area(double value, AreaUnit unit) {
    super(value, unit, "area");
  }

  /**
   * Obtains an area from a value in any unit.
   *
   * @param value the value in {@code unit}
   * @param unit the unit
   * @return the area
   * @throws IllegalArgumentException if the value is NaN, infinite or negative
   */
  public static Area of(double value, AreaUnit unit) {
    return new Area(value, unit);
  }

  /**
   * Obtains an area from square metres.
   *
   * @param squareMetres the area [m²]
   * @return the area
   * @throws IllegalArgumentException if {@code squareMetres} is NaN, infinite or negative
   */
  public static Area ofSquareMetres(double squareMetres) {
    return of(squareMetres, AreaUnit.SQUARE_METRE);
  }

  /**
   * Obtains an area from square millimetres.
   *
   * @param squareMillimetres the area [mm²]
   * @return the area
   * @throws IllegalArgumentException if {@code squareMillimetres} is NaN, infinite or negative
   */
  public static Area ofSquareMillimetres(double squareMillimetres) {
    return of(squareMillimetres, AreaUnit.SQUARE_MILLIMETRE);
  }

  /**
   * Obtains an area from square inches.
   *
   * @param squareInches the area [in²]
   * @return the area
   * @throws IllegalArgumentException if {@code squareInches} is NaN, infinite or negative
   */
  public static Area ofSquareInches(double squareInches) {
    return of(squareInches, AreaUnit.SQUARE_INCH);
  }

  /**
   * Reads what people type.
   *
   * @param text a number and a unit, such as "71 mm2", "0.11 in2"
   * @return the area
   * @throws QuantityFormatException if the text is not an area; it tells where and what would be accepted
   */
  public static Area parse(String text) {
    return GRAMMAR.read(text, Area::of);
  }

  /** {@return this area [m²]} */
  public double squareMetres() {
    return in(AreaUnit.SQUARE_METRE);
  }

  /** {@return this area [mm²]} */
  public double squareMillimetres() {
    return in(AreaUnit.SQUARE_MILLIMETRE);
  }

  /** {@return this area [in²]} */
  public double squareInches() {
    return in(AreaUnit.SQUARE_INCH);
  }

  /**
   * Obtains the area of a circle.
   *
   * @param diameter the diameter of the circle
   * @return π/4 times the square of {@code diameter}
   */
  public static Area ofCircle(Length diameter) {
    double metres = Objects.requireNonNull(diameter, "diameter").metres();
    return new Area(Math.PI / 4.0 * metres * metres, AreaUnit.SQUARE_METRE);
  }

  @Override
  Area ofSi(double value) {
    return new Area(value, AreaUnit.SQUARE_METRE);
  }

  @Override
  public AreaUnit siUnit() {
    return AreaUnit.SQUARE_METRE;
  }
}
