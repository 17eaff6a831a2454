/**
 * What the notebooks need in addition to the library: comparisons with published numbers, plots, tables, and the checks
 * of the exercises.
 *
 * <p>Nothing here computes anything about air; the library does that.
 *
 * <h2>Specification</h2>
 * <ul>
 *   <li>A comparison outside its tolerance throws, so that a wrong number stops the notebook.
 *   <li>Plots are SVG and readable in black and white: lines differ by dash and mark, and each axis shows its unit.
 *   <li>{@link org.airfit.lesson.Exercises} counts the wrong answers, so it is for one notebook and one thread; the
 *       rest is immutable or built up once.
 * </ul>
 */
@NullMarked
package org.airfit.lesson;

import org.jspecify.annotations.NullMarked;
