/**
 * A run from the supply to a tool: what pressure arrives, which element loses how much, and what limits the flow.
 *
 * <p>A {@link org.airfit.run.Run} is a row of elements between a supply and a {@link org.airfit.run.ToolDemand}.
 * Networks
 * with branches and rings are in {@code org.airfit.network}, the supplies themselves in {@link org.airfit.plant}.
 *
 * <p>What arrives at the tool:
 *
 * <pre>{@code
 * import org.airfit.air.AirState;
 * import org.airfit.line.Conduit;
 * import org.airfit.line.Wall;
 * import org.airfit.quantity.AbsolutePressure;
 * import org.airfit.quantity.FreeAirFlow;
 * import org.airfit.quantity.GaugePressure;
 * import org.airfit.quantity.Length;
 * import org.airfit.quantity.Temperature;
 * import org.airfit.run.Run;
 * import org.airfit.run.RunResult;
 * import org.airfit.working.UnitSystem;
 *
 * class ArrivesAtTheTool {
 *   public static void main(String[] args) {
 *     AbsolutePressure atmosphere = AbsolutePressure.STANDARD_ATMOSPHERE;
 *     AirState supply = AirState.of(
 *         GaugePressure.parse("7 bar(g)").absolute(atmosphere), Temperature.parse("20 °C"));
 *     Conduit hose = Conduit.of(Length.parse("3/8 in"), Length.parse("15 m"), Wall.SMOOTH_RUBBER_HOSE);
 *     RunResult result =
 *         Run.from(supply, atmosphere).through("hose", hose).at(FreeAirFlow.parse("15 L/s ANR"));
 *     System.out.println(result.<String>fold(
 *         delivered -> UnitSystem.SI.say(delivered.atToolGauge()),
 *         starved -> "no more than " + UnitSystem.SI.say(starved.largest()))); // 5.77 bar(g)
 *   }
 * }
 * }</pre>
 *
 * <h2>Specification</h2>
 * <ul>
 *   <li>Elements are solved one after another with the same mass flow, each exactly. Conductances are never added up.
 *   <li>The temperature stays that of the supply, but for lines computed by an adiabatic model, which pass on
 *       colder air.
 *   <li>Every element is a {@link org.airfit.flow.FlowElement}: one pass finds the pressures, the elements then explain
 *       them. An element of the user's own goes in by {@code through}.
 *   <li>Choking is a result that names the element.
 *   <li>Everything is immutable and thread-safe. A {@code null} argument throws {@link NullPointerException}.
 * </ul>
 */
@NullMarked
package org.airfit.run;

import org.jspecify.annotations.NullMarked;
