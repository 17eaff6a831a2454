/**
 * Pressure lost along pipe, tube and hose.
 *
 * <p>A {@link org.airfit.line.Conduit} is what the air runs through, a {@link org.airfit.line.LossModel} says how much
 * pressure is lost, and a {@link org.airfit.line.LineLoss} is the answer. Couplers and valves are in
 * {@link org.airfit.flow}, whole runs in {@code org.airfit.run}.
 *
 * <p>What a hose loses:
 *
 * <pre>{@code
 * import org.airfit.air.AirState;
 * import org.airfit.line.Conduit;
 * import org.airfit.line.LineLoss;
 * import org.airfit.line.LossModels;
 * import org.airfit.line.Wall;
 * import org.airfit.quantity.AbsolutePressure;
 * import org.airfit.quantity.FreeAirFlow;
 * import org.airfit.quantity.Length;
 * import org.airfit.quantity.Temperature;
 * import org.airfit.working.UnitSystem;
 *
 * class HoseLoses {
 *   public static void main(String[] args) {
 *     Conduit hose = Conduit.of(Length.parse("3/8 in"), Length.parse("15 m"), Wall.SMOOTH_RUBBER_HOSE);
 *     AirState inlet = AirState.of(AbsolutePressure.parse("8 bar(a)"), Temperature.parse("20 °C"));
 *     LineLoss loss =
 *         LossModels.isothermal().loss(hose, FreeAirFlow.parse("15 L/s ANR").massFlow(), inlet);
 *     System.out.println(loss.<String>fold(
 *         flowing -> UnitSystem.SI.say(flowing.drop()), choked -> "the hose chokes")); // 1.23 bar
 *   }
 * }
 * }</pre>
 *
 * <h2>Specification</h2>
 * <ul>
 *   <li>Pressures are absolute. The drop is counted along the flow.
 *   <li>The isothermal equation with exact Colebrook friction is the model to use. The others, and the formulas of
 *       the handbooks, are here to follow and to judge calculations made with them. Outside the range they hold for,
 *       their answer has a warning.
 *   <li>Choking is a result. A flow of zero is an answer. Reynolds numbers between 2300 and 4000 are answered with a
 *       warning.
 *   <li>Everything is immutable and thread-safe. A {@code null} argument throws {@link NullPointerException}.
 * </ul>
 */
@NullMarked
package org.airfit.line;

import org.jspecify.annotations.NullMarked;
