/**
 * A run from the supply to a tool: what pressure arrives, which element loses how much, and what limits the flow.
 *
 * <p>A {@link org.airfit.run.Run} is a row of elements between a supply and a {@link org.airfit.run.ToolDemand}.
 * Networks
 * with branches and rings are in {@code org.airfit.network}, the supplies themselves in {@link org.airfit.plant}.
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
