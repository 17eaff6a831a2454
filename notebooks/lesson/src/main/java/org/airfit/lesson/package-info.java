/**
 * What the notebooks need beside the library: comparisons with published numbers, plots, tables, and the checking of exercises.
 *
 * <p>Nothing here computes anything about air; that is the library's.
 *
 * <h2>Specification</h2>
 * <ul>
 *   <li>A comparison outside its tolerance throws, so that a wrong number ends the notebook.
 *   <li>Plots are SVG, readable in black and white: lines differ by dash and mark, and axes carry their unit.
 *   <li>{@link org.airfit.lesson.Exercises} remembers how often it was asked, so it is for one notebook and one thread; the rest is immutable or
 *       built up once.
 * </ul>
 */
@NullMarked
package org.airfit.lesson;

import org.jspecify.annotations.NullMarked;
