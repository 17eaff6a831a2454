/**
 * Headers, branches and rings with several tools: flows and pressures when they all run, or over a simulated shift.
 *
 * <p>A {@link org.airfit.network.Network} is built from the elements of the packages below and solved for a
 * {@link org.airfit.network.NetworkResult}. One supply, its elements in a row and one tool are a
 * {@link org.airfit.run.Run}.
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
