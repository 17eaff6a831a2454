package org.airfit.working;

import org.airfit.quantity.LengthUnit;
import org.airfit.quantity.MassFlowUnit;
import org.airfit.quantity.PressureUnit;

/**
 * In which units a working shows its numbers. A {@link ValueKind} knows the unit of a quantity in each.
 *
 * <p>In US units force and mass have units of their own: an equation then needs {@link #G_C} wherever they meet, and
 * 144 in²/ft² wherever a pressure meets a length. A {@link Formula} has both forms from one definition.
 */
public enum UnitSystem {
  /** kg, m, s, K, Pa and bar. */
  SI,
  /** lb, ft, s, °R and psi. */
  US;

  /** lb·ft/(lbf·s²), the standard acceleration of fall 9.80665 m/s² in ft/s², as it stands in equations in US units. */
  public static final String G_C = "32.17404856";

  /**
   * Chooses between the two forms of a unit, a symbol or a number of decimals.
   *
   * @param <T> what is chosen
   * @param si the form in SI
   * @param us the form in US units
   * @return the form in these units
   */
  public <T> T either(T si, T us) {
    return this == SI ? si : us;
  }

  /** {@return the unit of a mass flow in a sentence, kg/s or lb/s} */
  public MassFlowUnit massFlowUnit() {
    return either(MassFlowUnit.KILOGRAM_PER_SECOND, MassFlowUnit.POUND_PER_SECOND);
  }

  /** {@return the unit of a small length in a sentence, mm or in} */
  public LengthUnit smallLengthUnit() {
    return either(LengthUnit.MILLIMETRE, LengthUnit.INCH);
  }

  /** {@return the unit of a pressure in a sentence, bar or psi} */
  public PressureUnit pressureUnit() {
    return either(PressureUnit.BAR, PressureUnit.PSI);
  }
}
