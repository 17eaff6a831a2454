/**
 * Quantities of compressed air that cannot be mistaken for one another.
 *
 * <p>Gauge pressure, absolute pressure and pressure drop are three types. A volume of free air has its reference
 * state with it. A thread size, a body size and a hose bore are three types, none of which turns into another. What a
 * mistake at the counter would mix up does not compile.
 *
 * <p>Texts in, quantities out, and what a mistake at a counter would mix up does not compile:
 *
 * <pre>{@code
 * import org.airfit.quantity.AbsolutePressure;
 * import org.airfit.quantity.GaugePressure;
 * import org.airfit.quantity.PressureDrop;
 * import org.airfit.working.UnitSystem;
 *
 * class NotMixedUp {
 *   public static void main(String[] args) {
 *     GaugePressure atGauge = GaugePressure.parse("90 psig");
 *     PressureDrop lost = PressureDrop.parse("8 psi");
 *     System.out.println(UnitSystem.US.say(atGauge.minus(lost))); // 82 psig
 *     System.out.println(UnitSystem.US.say(atGauge.absolute(AbsolutePressure.STANDARD_ATMOSPHERE)));
 *     // 104.7 psia
 *   }
 * }
 * }</pre>
 *
 * <h2>Specification</h2>
 * <ul>
 *   <li>A measured quantity holds one {@code double} in its coherent SI unit; factories and readers name the unit.
 *       Free-air flow holds its {@link org.airfit.quantity.ReferenceState} as well, a hose bore the words it was given
 *       in.
 *   <li>Values are immutable, thread-safe and value-based. {@code equals} is exact; nearness is the caller's, with a
 *       tolerance.
 *   <li>What physics refuses (NaN, infinite, below absolute zero, below a vacuum, negative) throws
 *       {@link IllegalArgumentException} with the quantity, the range, the value and the unit it was given in.
 *   <li>{@code parse} reads what people type and what {@code toString} writes. A text it cannot read, or whose value
 *       physics refuses, throws {@link org.airfit.quantity.QuantityFormatException}. {@code format} writes for people.
 *       None of them looks at the locale. A text is read to 200 characters; a longer one is refused.
 *   <li>A decimal comma is refused unless a {@link org.airfit.quantity.DecimalMark} asks for it.
 *   <li>What adds up is an {@link org.airfit.quantity.AdditiveQuantity}. The other quantities have no sum.
 *   <li>A conversion is the exact factor of {@link org.airfit.quantity.Unit#definition()}, rounded once. There and back
 *       returns within 2 ulp of the value in its SI unit: for a temperature, of its value in kelvins.
 *   <li>A {@code null} argument throws {@link NullPointerException} with the name of the parameter.
 * </ul>
 *
 * <h2>Where the trade is silent</h2>
 * <ul>
 *   <li>A bare "scfm" names no reference state. {@link org.airfit.quantity.FreeAirFlow#parse(String)} reads it as 60 °F
 *       and 14.7 psia and says so when it prints it; the other conventions have names of their own.
 *   <li>A bare "psi" or "bar" is a pressure drop and nothing else: for a gauge reading or an absolute pressure the mark
 *       must be there.
 *   <li>A bare "gal" is refused, as it is two units.
 * </ul>
 */
@NullMarked
package org.airfit.quantity;

import org.jspecify.annotations.NullMarked;
