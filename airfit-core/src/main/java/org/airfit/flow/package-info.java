/**
 * How much air a part lets through.
 *
 * <p>One model serves every restriction: the sonic conductance and critical pressure ratio of ISO 6358. Thread size
 * never enters. What is lost along pipe and hose is computed in {@code org.airfit.line},
 * which rests on this package.
 *
 * <p>What a coupling passes, and where it chokes:
 *
 * <pre>{@code
 * import org.airfit.air.AirState;
 * import org.airfit.flow.FlowAtOutlet;
 * import org.airfit.flow.FlowCapacity;
 * import org.airfit.quantity.AbsolutePressure;
 * import org.airfit.quantity.SonicConductance;
 * import org.airfit.quantity.Temperature;
 * import org.airfit.working.UnitSystem;
 *
 * class CouplingPasses {
 *   public static void main(String[] args) {
 *     FlowCapacity coupling = FlowCapacity.of(SonicConductance.parse("6 dm³/(s·bar)"), 0.3);
 *     AirState inlet = AirState.of(AbsolutePressure.parse("8 bar(a)"), Temperature.parse("20 °C"));
 *     FlowAtOutlet open = coupling.flow(inlet, AbsolutePressure.parse("1 bar(a)"));
 *     System.out.println(open.regime()); // CHOKED
 *     System.out.println(UnitSystem.SI.say(open.massFlow())); // 0.05688 kg/s
 *   }
 * }
 * }</pre>
 *
 * <h2>Specification</h2>
 * <ul>
 *   <li>Conductance is counted at ISO 8778 reference (ANR), with the density of 1.185 kg/m³ that ISO 6358 prescribes.
 *   <li>Choking is a result, never an exception.
 *   <li>The equation of ISO 6358-1:2013 was recalled, and read in documentation of general modelling libraries; the
 *       standard's own page was not seen.
 *   <li>Everything is immutable and thread-safe. A {@code null} argument throws {@link NullPointerException}.
 * </ul>
 */
@NullMarked
package org.airfit.flow;

import org.jspecify.annotations.NullMarked;
