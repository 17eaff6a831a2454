package org.airfit.quantity;

import java.util.List;
import java.util.Objects;

/**
 * A pressure above a perfect vacuum, such as '7.2 bar(a)': the only kind a gas law takes.
 *
 * <p>Not interchangeable with {@link GaugePressure}: the atmosphere must be named to cross over.
 *
 * <p>A gauge reading becomes absolute only with the atmosphere that it was read in:
 *
 * <pre>{@code
 * import org.airfit.quantity.AbsolutePressure;
 * import org.airfit.quantity.GaugePressure;
 *
 * class FromGauge {
 *   public static void main(String[] args) {
 *     AbsolutePressure high = AbsolutePressure.parse("84.5 kPa(a)");
 *     AbsolutePressure inLine = GaugePressure.parse("7 bar(g)").absolute(high);
 *     System.out.println(inLine.bar()); // 7.845
 *     System.out.println(inLine.dropTo(AbsolutePressure.parse("6 bar(a)")).bar()); // 1.845
 *   }
 * }
 * }</pre>
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class AbsolutePressure extends Quantity<AbsolutePressure, PressureUnit> {

  /** The standard atmosphere, 101 325 Pa exactly (ISO 2533, at sea level). */
  public static final AbsolutePressure STANDARD_ATMOSPHERE =
      new AbsolutePressure(101_325.0, PressureUnit.PASCAL);

  private static final Grammar<PressureUnit> GRAMMAR = Grammar.ofPressures(
      PressureKind.ABSOLUTE, List.of("7.2 bar(a)", "104.7 psia", "700 kPa abs"));

  private AbsolutePressure(double value, PressureUnit unit) {
    super(value, unit, 0.0, "absolute pressure");
  }

  /**
   * Obtains an absolute pressure from a value in any unit.
   *
   * @param value the value in {@code unit}
   * @param unit the unit
   * @return the absolute pressure
   * @throws IllegalArgumentException if the value is NaN, infinite or negative
   */
  public static AbsolutePressure of(double value, PressureUnit unit) {
    return new AbsolutePressure(value, unit);
  }

  /**
   * Obtains an absolute pressure from pascals.
   *
   * @param pascals the absolute pressure [Pa]
   * @return the absolute pressure
   * @throws IllegalArgumentException if {@code pascals} is NaN, infinite or negative
   */
  public static AbsolutePressure ofPascals(double pascals) {
    return of(pascals, PressureUnit.PASCAL);
  }

  /**
   * Obtains an absolute pressure from bar.
   *
   * @param bar the absolute pressure [bar]
   * @return the absolute pressure
   * @throws IllegalArgumentException if {@code bar} is NaN, infinite or negative
   */
  public static AbsolutePressure ofBar(double bar) {
    return of(bar, PressureUnit.BAR);
  }

  /**
   * Obtains an absolute pressure from kilopascals.
   *
   * @param kilopascals the absolute pressure [kPa]
   * @return the absolute pressure
   * @throws IllegalArgumentException if {@code kilopascals} is NaN, infinite or negative
   */
  public static AbsolutePressure ofKilopascals(double kilopascals) {
    return of(kilopascals, PressureUnit.KILOPASCAL);
  }

  /**
   * Obtains an absolute pressure from psi.
   *
   * @param psi the absolute pressure [psi]
   * @return the absolute pressure
   * @throws IllegalArgumentException if {@code psi} is NaN, infinite or negative
   */
  public static AbsolutePressure ofPsi(double psi) {
    return of(psi, PressureUnit.PSI);
  }

  /**
   * Reads what people type.
   *
   * @param text a number and a unit, such as "7.2 bar(a)", "104.7 psia", "700 kPa abs"
   * @return the absolute pressure
   * @throws QuantityFormatException if the text is not an absolute pressure; it tells where and what would be accepted
   */
  public static AbsolutePressure parse(String text) {
    return GRAMMAR.read(text, AbsolutePressure::of);
  }

  /** {@return this absolute pressure [Pa]} */
  public double pascals() {
    return si();
  }

  /** {@return this absolute pressure [bar]} */
  public double bar() {
    return in(PressureUnit.BAR);
  }

  /** {@return this absolute pressure [kPa]} */
  public double kilopascals() {
    return in(PressureUnit.KILOPASCAL);
  }

  /** {@return this absolute pressure [psi]} */
  public double psi() {
    return in(PressureUnit.PSI);
  }

  /**
   * Takes a drop away.
   *
   * @param drop the drop, no larger than this
   * @return this minus {@code drop}
   * @throws IllegalArgumentException if the result would lie below a perfect vacuum
   */
  public AbsolutePressure minus(PressureDrop drop) {
    return new AbsolutePressure(
        si() - Objects.requireNonNull(drop, "drop").pascals(), PressureUnit.PASCAL);
  }

  /**
   * Adds a drop, going against the flow.
   *
   * @param drop the drop to add
   * @return this plus {@code drop}
   */
  public AbsolutePressure plus(PressureDrop drop) {
    return new AbsolutePressure(
        si() + Objects.requireNonNull(drop, "drop").pascals(), PressureUnit.PASCAL);
  }

  /**
   * Obtains the drop from this pressure to a lower one downstream.
   *
   * @param downstream the pressure downstream, no higher than this
   * @return this minus {@code downstream}
   * @throws IllegalArgumentException if {@code downstream} is higher than this
   */
  public PressureDrop dropTo(AbsolutePressure downstream) {
    if (Objects.requireNonNull(downstream, "downstream").si() > si()) {
      throw new IllegalArgumentException("downstream pressure must be at most the upstream "
          + inFull(PressureUnit.BAR) + ", was " + downstream.inFull(PressureUnit.BAR));
    }
    return PressureDrop.ofPascals(si() - downstream.si());
  }

  @Override
  public PressureUnit siUnit() {
    return PressureUnit.PASCAL;
  }

  @Override
  String written(PressureUnit unit) {
    return PressureKind.ABSOLUTE.written(unit);
  }

  /**
   * Prints this pressure in bar or in psi, whichever takes fewer digits, as a refusal does: a pressure that somebody typed
   * is most likely told in the unit that was typed.
   *
   * @return the pressure with all its digits, such as "14.7 psia" or "1.013 bar(a)"; in bar where both take as many
   */
  public String inFewestDigits() {
    return PressureUnit.inFewestDigits(this);
  }
}
