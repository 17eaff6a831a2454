/**
 * Millions of tool drops, plug readings or rows of a price list, judged by Apache Spark with the library itself.
 *
 * <p>{@link org.airfit.fleet.Main} is the program. Rows are read by the readers of job files and catalogues, so that
 * the same words are accepted and the same complaints made; nothing is computed here that the library does not compute.
 *
 * <h2>Specification</h2>
 * <ul>
 *   <li>Every row that comes in goes out once: with a verdict, or as a reject with key, field, value and reason.
 *   <li>An output is there whole or not at all.
 *   <li>A {@code null} argument throws {@link NullPointerException}.
 * </ul>
 */
@NullMarked
package org.airfit.fleet;

import org.jspecify.annotations.NullMarked;
