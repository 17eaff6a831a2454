package org.airfit.quantity;

import java.util.List;
import java.util.Objects;

/**
 * A pressure above (or, if negative, below) the surrounding atmosphere, such as '90 psig' or '6.2 bar(g)'.
 *
 * <p>Not interchangeable with {@link AbsolutePressure}: the atmosphere must be named to cross over.
 *
 * <p>What people type, and what is refused because it may be either:
 *
 * <pre>{@code
 * import org.airfit.quantity.GaugePressure;
 * import org.airfit.quantity.QuantityFormatException;
 * import org.airfit.working.UnitSystem;
 *
 * class TypedAtTheCounter {
 *   public static void main(String[] args) {
 *     System.out.println(UnitSystem.SI.say(GaugePressure.parse("90 psig"))); // 6.21 bar(g)
 *     System.out.println(GaugePressure.parse("6.2 bar(g)")); // 620000.0 Pa(g)
 *     try {
 *       GaugePressure.parse("90 psi");
 *     } catch (QuantityFormatException e) {
 *       System.out.println(e.getMessage());
 *       // "90 psi": "psi" does not tell from where the pressure counts: say psig for a gauge reading or psia
 *       // for an absolute one, at position 3; accepted: a number with its unit, such as "90 psig", "6.2
 *       // bar(g)", "620 kPa(g)"; the units are Pa(g), kPa(g), MPa(g), bar(g), mbar(g), psig, ksi(g),
 *       // lbf/ft²(g), atm(g), kgf/cm²(g), Torr(g), mmHg(g), inHg(g), mmH₂O(g), inH₂O(g)
 *     }
 *   }
 * }
 * }</pre>
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class GaugePressure extends Quantity<GaugePressure, PressureUnit> {

  private static final Grammar<PressureUnit> GRAMMAR =
      Grammar.ofPressures(PressureKind.GAUGE, List.of("90 psig", "6.2 bar(g)", "620 kPa(g)"));

  private GaugePressure(double value, PressureUnit unit) {
    super(value, unit, UNBOUNDED, "gauge pressure");
  }

  /**
   * Obtains a gauge pressure from a value in any unit.
   *
   * @param value the value in {@code unit}
   * @param unit the unit
   * @return the gauge pressure
   * @throws IllegalArgumentException if the value is NaN or infinite
   */
  public static GaugePressure of(double value, PressureUnit unit) {
    return new GaugePressure(value, unit);
  }

  /**
   * Obtains what a gauge reads at an absolute pressure.
   *
   * @param pressure the absolute pressure
   * @param atmosphere the pressure the gauge reads against
   * @return {@code pressure} minus {@code atmosphere}, negative for a vacuum
   */
  public static GaugePressure of(AbsolutePressure pressure, AbsolutePressure atmosphere) {
    Objects.requireNonNull(pressure, "pressure");
    Objects.requireNonNull(atmosphere, "atmosphere");
    return ofPascals(pressure.pascals() - atmosphere.pascals());
  }

  /**
   * Obtains a gauge pressure from pascals.
   *
   * @param pascals the gauge pressure [Pa]
   * @return the gauge pressure
   * @throws IllegalArgumentException if {@code pascals} is NaN or infinite
   */
  public static GaugePressure ofPascals(double pascals) {
    return of(pascals, PressureUnit.PASCAL);
  }

  /**
   * Obtains a gauge pressure from bar.
   *
   * @param bar the gauge pressure [bar]
   * @return the gauge pressure
   * @throws IllegalArgumentException if {@code bar} is NaN or infinite
   */
  public static GaugePressure ofBar(double bar) {
    return of(bar, PressureUnit.BAR);
  }

  /**
   * Obtains a gauge pressure from kilopascals.
   *
   * @param kilopascals the gauge pressure [kPa]
   * @return the gauge pressure
   * @throws IllegalArgumentException if {@code kilopascals} is NaN or infinite
   */
  public static GaugePressure ofKilopascals(double kilopascals) {
    return of(kilopascals, PressureUnit.KILOPASCAL);
  }

  /**
   * Obtains a gauge pressure from psi.
   *
   * @param psi the gauge pressure [psi]
   * @return the gauge pressure
   * @throws IllegalArgumentException if {@code psi} is NaN or infinite
   */
  public static GaugePressure ofPsi(double psi) {
    return of(psi, PressureUnit.PSI);
  }

  /**
   * Reads what people type.
   *
   * @param text a number and a unit, such as "90 psig", "6.2 bar(g)", "620 kPa(g)"
   * @return the gauge pressure
   * @throws QuantityFormatException if the text is not a gauge pressure; it tells where and what would be accepted
   */
  public static GaugePressure parse(String text) {
    return GRAMMAR.read(text, GaugePressure::of);
  }

  /** {@return this gauge pressure [Pa]} */
  public double pascals() {
    return si();
  }

  /** {@return this gauge pressure [bar]} */
  public double bar() {
    return in(PressureUnit.BAR);
  }

  /** {@return this gauge pressure [kPa]} */
  public double kilopascals() {
    return in(PressureUnit.KILOPASCAL);
  }

  /** {@return this gauge pressure [psi]} */
  public double psi() {
    return in(PressureUnit.PSI);
  }

  /**
   * Converts to an absolute pressure.
   *
   * @param atmosphere the pressure this gauge reads against
   * @return {@code atmosphere} plus this
   * @throws IllegalArgumentException if the sum would lie below a perfect vacuum
   */
  public AbsolutePressure absolute(AbsolutePressure atmosphere) {
    if (-si() > Objects.requireNonNull(atmosphere, "atmosphere").pascals()) {
      throw new IllegalArgumentException("gauge pressure must be at least minus the atmosphere of "
          + atmosphere.inFewestDigits() + ", was "
          + inFewestDigits());
    }
    return AbsolutePressure.ofPascals(atmosphere.pascals() + si());
  }

  /**
   * Takes a drop away.
   *
   * @param drop the drop
   * @return this minus {@code drop}; negative for a vacuum
   */
  public GaugePressure minus(PressureDrop drop) {
    return ofPascals(si() - Objects.requireNonNull(drop, "drop").si());
  }

  /**
   * Adds a drop, going against the flow.
   *
   * @param drop the drop to add
   * @return this plus {@code drop}
   */
  public GaugePressure plus(PressureDrop drop) {
    return ofPascals(si() + Objects.requireNonNull(drop, "drop").si());
  }

  /**
   * Obtains the drop from this pressure to a lower one downstream, both read against the same atmosphere.
   *
   * @param downstream the pressure downstream, no higher than this
   * @return this minus {@code downstream}
   * @throws IllegalArgumentException if {@code downstream} is higher than this
   */
  public PressureDrop dropTo(GaugePressure downstream) {
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
    return PressureKind.GAUGE.written(unit);
  }

  /**
   * Prints this pressure in bar or in psi, whichever takes fewer digits, as a refusal does: a pressure that somebody typed
   * is most likely told in the unit that was typed.
   *
   * @return the pressure with all its digits, such as "90 psig" or "6.2 bar(g)"; in bar where both take as many
   */
  public String inFewestDigits() {
    return PressureUnit.inFewestDigits(this);
  }
}
