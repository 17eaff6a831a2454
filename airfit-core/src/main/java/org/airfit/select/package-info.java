/**
 * Choosing parts: what a job requires, what a catalogue has, and which parts solve it, with a reason for each.
 *
 * <p>Here are the {@link org.airfit.select.Requirement}, the {@link org.airfit.select.Catalogue}, the
 * {@link org.airfit.select.Rule}s and the {@link org.airfit.select.Selection}. Catalogues are the user's data: none
 * is compiled in. Colours, marks and codes are not prescribed.
 *
 * <h2>Specification</h2>
 * <ul>
 *   <li>A run is chosen whole: socket at the outlet, plug and hose, socket at the tool, plug of the tool, and the
 *       adapters between them. The pressure at the tool is computed, never read off a label.
 *   <li>The list is that of all combinations, found without building them. It does not depend on the order of the
 *       catalogue, nor on parts that it does not use. Adapters are chosen with the rest: with which ones a set of parts
 *       stands first depends on the air it has to spare.
 *   <li>Every rule gives a verdict, a reason and its source. What was not told is a question to ask, never a guess.
 *       Proposals whose parts leave fewer rules open stand above those that leave more, whatever they cost.
 *   <li>Nothing that fits is a result: the nearest miss and what would have to give. A hose that is a little short is nearer than one that is far too short.
 *   <li>A search takes as long as the catalogue and the open questions make it. Who does not wait for it any more
 *       interrupts its thread: it ends soon with a {@link java.util.concurrent.CancellationException}, never with half
 *       an answer. No clock is read here.
 *   <li>Everything is immutable and thread-safe. A {@code null} argument throws {@link NullPointerException}.
 * </ul>
 */
@NullMarked
package org.airfit.select;

import org.jspecify.annotations.NullMarked;
