/**
 * The run from supply to tool: what pressure arrives, where it goes, and what holds it back.
 *
 * <p>A {@link org.airfit.circuit.Run} strings the lines and parts of the floors below together, from a {@link org.airfit.circuit.Supply} to a
 * {@link org.airfit.circuit.ToolDemand}; a {@link org.airfit.circuit.Network} joins them in trees and rings. An {@link org.airfit.circuit.AirPlant} tells what air costs. Which parts to choose is told above.
 *
 * <h2>Specification</h2>
 * <ul>
 *   <li>Elements are solved one after another with the same mass flow, each exactly. Conductances are never added up.
 *   <li>The temperature stays that of the supply, but for lines computed by an adiabatic model, which hand on colder air.
 *   <li>Choking is a result that names the element.
 *   <li>Everything is immutable and thread-safe. A {@code null} argument throws {@link NullPointerException}.
 * </ul>
 */
@NullMarked
package org.airfit.circuit;

import org.jspecify.annotations.NullMarked;
