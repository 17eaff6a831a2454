/**
 * Pressure lost along pipe, tube and hose.
 *
 * <p>A {@link org.airfit.line.Conduit} is what the air runs through, a {@link org.airfit.line.LossModel} says how much
 * pressure is lost, and a {@link org.airfit.line.LineLoss} is the answer. Couplers and valves are in
 * {@link org.airfit.flow}, whole runs in {@code org.airfit.run}.
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
