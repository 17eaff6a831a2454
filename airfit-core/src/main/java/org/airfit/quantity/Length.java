package org.airfit.quantity;

import java.util.List;
import java.util.Objects;
import org.airfit.internal.Digits;

/**
 * A length or a distance, such as a caliper reading '12.70 mm' or a hose '25 ft' long.
 *
 * <p>Not a nominal size: a pipe thread called 3/8 is a {@link NominalThreadSize}, and nothing on it measures 3/8 inch.
 *
 * <p>Inches as they are written, and a difference:
 *
 * <pre>{@code
 * import org.airfit.quantity.Length;
 *
 * class Inches {
 *   public static void main(String[] args) {
 *     Length reach = Length.parse("25 ft").plus(Length.parse("1-1/2 in"));
 *     System.out.println(reach.metres()); // 7.6581
 *     System.out.println(Length.parse("3/8 in").millimetres()); // 9.525
 *   }
 * }
 * }</pre>
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class Length extends AdditiveQuantity<Length, LengthUnit> {

  private static final Grammar<LengthUnit> GRAMMAR = Grammar.ofUnits(
      "length", LengthUnit.values(), List.of("12.7 mm", "3/8 in", "1-1/4\"", "25 ft"));

  private Length(double value, LengthUnit unit) {
    super(value, unit, "length");
  }

  /**
   * Obtains a length from a value in any unit.
   *
   * @param value the value in {@code unit}
   * @param unit the unit
   * @return the length
   * @throws IllegalArgumentException if the value is NaN, infinite or negative
   */
  public static Length of(double value, LengthUnit unit) {
    return new Length(value, unit);
  }

  /**
   * Obtains a length from metres.
   *
   * @param metres the length [m]
   * @return the length
   * @throws IllegalArgumentException if {@code metres} is NaN, infinite or negative
   */
  public static Length ofMetres(double metres) {
    return of(metres, LengthUnit.METRE);
  }

  /**
   * Obtains a length from millimetres.
   *
   * @param millimetres the length [mm]
   * @return the length
   * @throws IllegalArgumentException if {@code millimetres} is NaN, infinite or negative
   */
  public static Length ofMillimetres(double millimetres) {
    return of(millimetres, LengthUnit.MILLIMETRE);
  }

  /**
   * Obtains a length from inches.
   *
   * @param inches the length [in]
   * @return the length
   * @throws IllegalArgumentException if {@code inches} is NaN, infinite or negative
   */
  public static Length ofInches(double inches) {
    return of(inches, LengthUnit.INCH);
  }

  /**
   * Obtains a length from feet.
   *
   * @param feet the length [ft]
   * @return the length
   * @throws IllegalArgumentException if {@code feet} is NaN, infinite or negative
   */
  public static Length ofFeet(double feet) {
    return of(feet, LengthUnit.FOOT);
  }

  /**
   * Reads what people type.
   *
   * @param text a number and a unit, such as "12.7 mm", "3/8 in", "1-1/4&quot;", "25 ft"
   * @return the length
   * @throws QuantityFormatException if the text is not a length; it tells where and what would be accepted
   */
  public static Length parse(String text) {
    return GRAMMAR.read(text, Length::of);
  }

  /** {@return this length [m]} */
  public double metres() {
    return in(LengthUnit.METRE);
  }

  /** {@return this length [mm]} */
  public double millimetres() {
    return in(LengthUnit.MILLIMETRE);
  }

  /** {@return this length [in]} */
  public double inches() {
    return in(LengthUnit.INCH);
  }

  /** {@return this length [ft]} */
  public double feet() {
    return in(LengthUnit.FOOT);
  }

  /**
   * Prints this length with as few digits as {@link #parse} reads back exactly.
   *
   * @param unit the unit wanted; another is taken where twelve digits of this one do not read back and those of the
   *     other do
   * @return the text, such as "14.7447 mm" where {@link #toString} has "0.014744700000000001 m"
   */
  public String label(LengthUnit unit) {
    Objects.requireNonNull(unit, "unit");
    for (int most : new int[] {12, 17}) {
      for (LengthUnit each : List.of(unit, LengthUnit.MILLIMETRE, LengthUnit.INCH)) {
        String text = readBack(each, most);
        if (!text.isEmpty()) {
          return text;
        }
      }
    }
    return toString();
  }

  private String readBack(LengthUnit unit, int most) {
    for (int digits = 1; digits <= most; digits++) {
      String number = Digits.significant(in(unit), digits);
      if (of(Double.parseDouble(number), unit).equals(this)) {
        return number + " " + written(unit);
      }
    }
    return "";
  }

  @Override
  Length ofSi(double value) {
    return new Length(value, LengthUnit.METRE);
  }

  @Override
  public LengthUnit siUnit() {
    return LengthUnit.METRE;
  }
}
