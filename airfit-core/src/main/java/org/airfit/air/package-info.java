/**
 * The gas: dry air at a pressure and a temperature.
 *
 * <p>{@link org.airfit.air.AirState} is the ideal gas all flow formulas are made for, {@link org.airfit.air.RealAir}
 * the real one, to 0.1 % on density. Free air and its reference states are quantities; how air flows
 * is computed in {@code org.airfit.flow} and {@code org.airfit.line}.
 *
 * <p>Air in a line, and what its ideal gas misses:
 *
 * <pre>{@code
 * import org.airfit.air.AirState;
 * import org.airfit.quantity.AbsolutePressure;
 * import org.airfit.quantity.Temperature;
 *
 * class AirInALine {
 *   public static void main(String[] args) {
 *     AirState line = AirState.of(AbsolutePressure.parse("8 bar(a)"), Temperature.parse("20 °C"));
 *     System.out.println(line.density().kilogramsPerCubicMetre()); // 9.50688400619174
 *     System.out.println(line.real().density().kilogramsPerCubicMetre()); // 9.533799776415044
 *   }
 * }
 * }</pre>
 *
 * <h2>Specification</h2>
 * <ul>
 *   <li>Ideal gas with R = 287.05287 J/(kg K) (ISO 2533) and a ratio of heat capacities of 1.4. Against real air of 1
 *       to 16 bar and 0 to 60 °C the density is up to 0.9 % low and the speed of sound up to 0.7 % low.
 *   <li>Viscosity after Sutherland with the constants of the US Standard Atmosphere 1976, up to 1.8 % low at 16 bar.
 *   <li>Everything is immutable and thread-safe. A {@code null} argument throws {@link NullPointerException}.
 * </ul>
 */
@NullMarked
package org.airfit.air;

import org.jspecify.annotations.NullMarked;
