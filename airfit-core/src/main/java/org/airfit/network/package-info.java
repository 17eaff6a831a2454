/**
 * Headers, branches and rings with several tools: flows and pressures when they all run, or over a simulated shift.
 *
 * <p>A {@link org.airfit.network.Network} is built from the elements of the packages below and solved for a
 * {@link org.airfit.network.NetworkResult}. One supply, its elements in a row and one tool are a
 * {@link org.airfit.run.Run}.
 *
 * <p>A tool on a ring:
 *
 * <pre>{@code
 * import org.airfit.air.AirState;
 * import org.airfit.line.Conduit;
 * import org.airfit.line.Wall;
 * import org.airfit.network.Network;
 * import org.airfit.plant.Supply;
 * import org.airfit.quantity.AbsolutePressure;
 * import org.airfit.quantity.FreeAirFlow;
 * import org.airfit.quantity.GaugePressure;
 * import org.airfit.quantity.Length;
 * import org.airfit.quantity.Temperature;
 * import org.airfit.run.ToolDemand;
 * import org.airfit.working.UnitSystem;
 *
 * class ToolOnARing {
 *   public static void main(String[] args) {
 *     AbsolutePressure atmosphere = AbsolutePressure.STANDARD_ATMOSPHERE;
 *     AirState supply = AirState.of(
 *         GaugePressure.parse("7 bar(g)").absolute(atmosphere), Temperature.parse("20 °C"));
 *     Conduit main = Conduit.of(Length.parse("1 in"), Length.parse("30 m"), Wall.COMMERCIAL_STEEL);
 *     Network ring = Network.at(atmosphere)
 *         .supply("compressor", Supply.fixed(supply))
 *         .line("north", "compressor", "bench", main)
 *         .line("south", "compressor", "bench", main)
 *         .tool("bench", ToolDemand.fixed("sander", FreeAirFlow.parse("40 L/s ANR")))
 *         .build();
 *     System.out.println(ring.solve().<String>fold(
 *         solved -> UnitSystem.SI.say(solved.at("bench")), none -> none.reason())); // 7.979 bar(a)
 *   }
 * }
 * }</pre>
 *
 * <h2>Specification</h2>
 * <ul>
 *   <li>Every element takes its whole mass flow exactly. Conductances are never added up.
 *   <li>A tool without enough pressure and a branch that chokes are results, not exceptions.
 *   <li>Everything is immutable and thread-safe. A {@code null} argument throws {@link NullPointerException}.
 * </ul>
 */
@NullMarked
package org.airfit.network;

import org.jspecify.annotations.NullMarked;
