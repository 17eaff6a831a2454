/**
 * Outlines, sheets, overlays and sections of plugs and threads, to true scale, as SVG.
 *
 * <p>The only package that writes SVG. What is drawn comes from {@link org.airfit.plug} and {@link org.airfit.thread}.
 *
 * <h2>Specification</h2>
 * <ul>
 *   <li>One unit of a drawing is one millimetre on paper; magnified parts say by how much. Every sheet has a ruler.
 *   <li>Everything is immutable and thread-safe. A {@code null} argument throws {@link NullPointerException}.
 * </ul>
 */
@NullMarked
package org.airfit.drawing;

import org.jspecify.annotations.NullMarked;
