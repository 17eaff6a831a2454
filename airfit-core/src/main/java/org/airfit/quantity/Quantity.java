package org.airfit.quantity;

import java.util.Objects;
import org.airfit.internal.Digits;

/**
 * A measured quantity: one value in the SI unit of its kind, with units to give it, read it and print it in.
 *
 * <p>Each kind is a type of its own, so that what must not be mixed up does not compile. Values of one kind have an
 * order: {@code Stream.of("3/8 in", "1/2 in").map(Length::parse).max(Length::compareTo)} is the larger bore. Sums and
 * differences stand at the types for which physics has them.
 *
 * <p>All quantities are immutable, thread-safe and value-based.
 *
 * @param <Q> the kind of quantity
 * @param <U> its units
 */
public abstract sealed class Quantity<Q extends Quantity<Q, U>, U extends Unit>
    implements Comparable<Q>
    permits AbsolutePressure,
        AdditiveQuantity,
        Density,
        DynamicViscosity,
        GaugePressure,
        SonicConductance,
        Temperature,
        Velocity {

  /** The lowest value of a quantity that may be negative. */
  static final double UNBOUNDED = -Double.MAX_VALUE;

  private final double si;

  /** Checks in the SI unit, but complains in the unit that was given: that is what the reader typed. */
  Quantity(double value, U unit, double lowest, String quantity) {
    double converted = Objects.requireNonNull(unit, "unit").toSi(value);
    if (!(converted >= lowest && converted <= Double.MAX_VALUE)) {
      throw new IllegalArgumentException(quantity + " must be finite" + atLeast(lowest, unit)
          + ", was " + refused(value, unit, lowest) + " " + written(unit)
          + (Double.isFinite(value) && Double.isInfinite(converted) ? ", too large to hold" : ""));
    }
    this.si = converted + 0.0; // -0.0 becomes 0.0, so that equals agrees with ==
  }

  /** Without what is left of a rounding, but where that is why the value is refused. */
  private static String refused(double value, Unit unit, double lowest) {
    String told = Digits.told(value);
    double converted = unit.toSi(Double.parseDouble(told));
    return converted >= lowest && converted <= Double.MAX_VALUE ? Double.toString(value) : told;
  }

  private String atLeast(double lowest, U unit) {
    return lowest == UNBOUNDED
        ? ""
        : " and at least " + Digits.plain(unit.fromSi(lowest)) + " " + written(unit);
  }

  /** {@return the SI unit of this kind; {@code in(siUnit())} is the value this quantity holds} */
  public abstract U siUnit();

  /** How {@code unit} is printed behind a value of this kind: "psi" becomes "psig" for a gauge pressure. */
  String written(U unit) {
    return unit.symbol();
  }

  final double si() {
    return si;
  }

  /**
   * Reads this quantity in a unit.
   *
   * @param unit the unit asked for
   * @return the value in {@code unit}
   */
  public final double in(U unit) {
    return Objects.requireNonNull(unit, "unit").fromSi(si);
  }

  /**
   * Prints this quantity in a unit for people: four significant digits, no trailing zeros, whole digits never rounded
   * away, whatever the locale.
   *
   * @param unit the unit asked for
   * @return the value and the unit, such as "12.7 mm"
   */
  public final String format(U unit) {
    return Digits.significant(in(unit), 4) + " " + written(unit);
  }

  /**
   * Prints this quantity in a unit with a fixed number of decimals, whatever the locale.
   *
   * @param unit the unit asked for
   * @param decimals the number of digits after the point, from 0 to 15
   * @return the value and the unit, such as "12.70 mm"
   * @throws IllegalArgumentException if {@code decimals} is out of range
   */
  public final String format(U unit, int decimals) {
    return Digits.fixed(in(unit), decimals) + " " + written(unit);
  }

  /**
   * Prints this quantity in a unit with all digits that tell it from others, as a refusal must: a value just above a
   * limit does not look like the limit. What a conversion of units rounds is left out.
   *
   * @param unit the unit asked for
   * @return the value and the unit, such as "0.50001 mm"; in words such as "Infinity mm" where the value is too large
   *     for the unit
   */
  public final String inFull(U unit) {
    double value = in(unit);
    return (Double.isFinite(value) ? Digits.inFull(value) : String.valueOf(value)) + " "
        + written(unit);
  }

  /**
   * Compares two quantities of one kind.
   *
   * @param other the quantity to compare with
   * @return below 0, 0 or above 0 as this is smaller than, equal to or larger than {@code other}
   */
  @Override
  public int compareTo(Q other) {
    return Double.compare(si, Objects.requireNonNull(other, "other").si());
  }

  // The types are final, and a drop of 5 psi is not a gauge pressure of 5 psi.
  @SuppressWarnings("EqualsGetClass")
  @Override
  public boolean equals(Object other) {
    return other != null && other.getClass() == getClass() && ((Quantity<?, ?>) other).si == si;
  }

  @Override
  public int hashCode() {
    return Double.hashCode(si);
  }

  /**
   * Tells this quantity in a sentence, such as why it is refused: the value in the SI unit to twelve significant
   * digits, so that what sums and changes of unit round off does not show.
   *
   * @return the text, such as "101300.0 Pa(a)" where {@link #toString} has all digits, "101299.99999999999 Pa(a)"
   */
  public final String shown() {
    return Digits.told(si) + " " + written(siUnit());
  }

  /** {@return the value in the SI unit with all its digits, as the type's {@code parse} reads it back} */
  @Override
  public String toString() {
    return si + " " + written(siUnit());
  }
}
