/**
 * Pipe threads and hose ends: their geometry, what a thread in the hand is, and what goes into what.
 *
 * <p>Geometry is computed from the formulas of the standards, not looked up. Nothing here knows flow: thread size is not flow size.
 *
 * <h2>Specification</h2>
 * <ul>
 *   <li>NPT after ASME B1.20.1, sizes 1/16 to 2. R and Rc after ISO 7-1 and G after ISO 228-1, sizes 1/16 to 2. The ISO 7-1 values
 *       come from other documents that quote it.
 *   <li>A size a standard does not have is refused with the sizes it has.
 *   <li>An ambiguous thread is a result. A pair of NPT and 55° threads is never said to seal.
 *   <li>Everything is immutable and thread-safe. A {@code null} argument throws {@link NullPointerException}.
 * </ul>
 */
@NullMarked
package org.airfit.thread;

import org.jspecify.annotations.NullMarked;
