/**
 * The supply side: supplies, compressors, regulators, receivers, and what compressed air costs.
 *
 * <p>A {@link org.airfit.plant.Supply} says which pressure it gives at a flow. An {@link org.airfit.plant.AirPlant}
 * says what a flow, a leak or a setting that is too high costs in a year. Runs and networks begin at a supply; they
 * are in {@code org.airfit.run} and {@code org.airfit.network}.
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
