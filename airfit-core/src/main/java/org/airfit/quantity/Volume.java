package org.airfit.quantity;

import java.util.List;
import java.util.Map;

/**
 * A volume, such as that of an air receiver.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class Volume extends AdditiveQuantity<Volume, VolumeUnit> {

  private static final String WHICH_GALLON =
      "tells neither the US nor the imperial gallon: say US gal or imp gal";

  private static final Grammar<VolumeUnit> GRAMMAR = Grammar.ofUnits(
      "volume",
      VolumeUnit.values(),
      List.of("200 L", "7 ft3", "60 US gal"),
      Map.of("gal", WHICH_GALLON, "gallon", WHICH_GALLON, "gallons", WHICH_GALLON));

  private Volume(double value, VolumeUnit unit) {
    super(value, unit, "volume");
  }

  /**
   * Obtains a volume from a value in any unit.
   *
   * @param value the value in {@code unit}
   * @param unit the unit
   * @return the volume
   * @throws IllegalArgumentException if the value is NaN, infinite or negative
   */
  public static Volume of(double value, VolumeUnit unit) {
    return new Volume(value, unit);
  }

  /**
   * Obtains a volume from cubic metres.
   *
   * @param cubicMetres the volume [m³]
   * @return the volume
   * @throws IllegalArgumentException if {@code cubicMetres} is NaN, infinite or negative
   */
  public static Volume ofCubicMetres(double cubicMetres) {
    return of(cubicMetres, VolumeUnit.CUBIC_METRE);
  }

  /**
   * Obtains a volume from litres.
   *
   * @param litres the volume [L]
   * @return the volume
   * @throws IllegalArgumentException if {@code litres} is NaN, infinite or negative
   */
  public static Volume ofLitres(double litres) {
    return of(litres, VolumeUnit.LITRE);
  }

  /**
   * Obtains a volume from cubic feet.
   *
   * @param cubicFeet the volume [ft³]
   * @return the volume
   * @throws IllegalArgumentException if {@code cubicFeet} is NaN, infinite or negative
   */
  public static Volume ofCubicFeet(double cubicFeet) {
    return of(cubicFeet, VolumeUnit.CUBIC_FOOT);
  }

  /**
   * Obtains a volume from US gallons.
   *
   * @param usGallons the volume [US gal]
   * @return the volume
   * @throws IllegalArgumentException if {@code usGallons} is NaN, infinite or negative
   */
  public static Volume ofUsGallons(double usGallons) {
    return of(usGallons, VolumeUnit.US_GALLON);
  }

  /**
   * Reads what people type.
   *
   * @param text a number and a unit, such as "200 L", "7 ft3", "60 US gal"
   * @return the volume
   * @throws QuantityFormatException if the text is not a volume; it tells where and what would be accepted
   */
  public static Volume parse(String text) {
    return GRAMMAR.read(text, Volume::of);
  }

  /** {@return this volume [m³]} */
  public double cubicMetres() {
    return in(VolumeUnit.CUBIC_METRE);
  }

  /** {@return this volume [L]} */
  public double litres() {
    return in(VolumeUnit.LITRE);
  }

  /** {@return this volume [ft³]} */
  public double cubicFeet() {
    return in(VolumeUnit.CUBIC_FOOT);
  }

  /** {@return this volume [US gal]} */
  public double usGallons() {
    return in(VolumeUnit.US_GALLON);
  }

  @Override
  Volume ofSi(double value) {
    return new Volume(value, VolumeUnit.CUBIC_METRE);
  }

  @Override
  public VolumeUnit siUnit() {
    return VolumeUnit.CUBIC_METRE;
  }
}
