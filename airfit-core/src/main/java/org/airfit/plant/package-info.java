/**
 * The supply side: supplies, compressors, regulators, receivers, and what compressed air costs.
 *
 * <p>A {@link org.airfit.plant.Supply} says which pressure it gives at a flow. An {@link org.airfit.plant.AirPlant}
 * says what a flow, a leak or a setting that is too high costs in a year. Runs and networks begin at a supply; they
 * are in {@code org.airfit.run} and {@code org.airfit.network}.
 *
 * <p>What a leak costs in a year:
 *
 * <pre>{@code
 * import java.time.Duration;
 * import org.airfit.air.AirState;
 * import org.airfit.air.Compression;
 * import org.airfit.plant.AirPlant;
 * import org.airfit.plant.YearlyCost;
 * import org.airfit.quantity.AbsolutePressure;
 * import org.airfit.quantity.FreeAirFlow;
 * import org.airfit.quantity.Money;
 * import org.airfit.quantity.Temperature;
 *
 * class LeakInAYear {
 *   public static void main(String[] args) {
 *     AirState intake = AirState.of(AbsolutePressure.STANDARD_ATMOSPHERE, Temperature.parse("20 °C"));
 *     AbsolutePressure discharge = AbsolutePressure.parse("8 bar(a)");
 *     AirPlant plant = new AirPlant(
 *         Compression.adiabatic(intake, discharge),
 *         0.75,
 *         0.92,
 *         Duration.ofHours(4000),
 *         Money.parse("0.11 USD"));
 *     YearlyCost leak = plant.ofFlow("leak", FreeAirFlow.parse("5 L/s ANR").massFlow());
 *     System.out.println(leak.money().format(0)); // 895 USD
 *   }
 * }
 * }</pre>
 *
 * <h2>Specification</h2>
 * <ul>
 *   <li>Power is at the shaft unless it says electric. Money carries its currency.
 *   <li>Everything is immutable and thread-safe. A {@code null} argument throws {@link NullPointerException}.
 * </ul>
 */
@NullMarked
package org.airfit.plant;

import org.jspecify.annotations.NullMarked;
