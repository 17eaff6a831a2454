/**
 * How much air a part lets through.
 *
 * <p>One model serves every restriction: the sonic conductance and critical pressure ratio of ISO 6358. Thread size
 * never enters. What is lost along pipe and hose is computed in {@code org.airfit.line},
 * which rests on this package.
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
