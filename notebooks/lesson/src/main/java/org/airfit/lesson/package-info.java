/**
 * What the notebooks need in addition to the library: comparisons with published numbers, plots, tables, the checks and
 * variants of the exercises, and the measuring form.
 *
 * <p>Only {@link org.airfit.lesson.Variants} computes anything about air, by the formulas that a learner uses with a
 * pencil, so that its key is a check of the library; all else is the library's.
 *
 * <h2>Specification</h2>
 * <ul>
 *   <li>A comparison outside its tolerance throws, so that a wrong number stops the notebook.
 *   <li>Plots are SVG and readable in black and white: lines differ by dash and mark, and each axis shows its unit. They
 *       say in words what they show, and hold a narrow form for telephones.
 *   <li>A seed gives the same variants on every computer.
 *   <li>{@link org.airfit.lesson.Exercises} counts the wrong answers, so it is for one notebook and one thread; the
 *       rest is immutable or built up once.
 * </ul>
 */
@NullMarked
package org.airfit.lesson;

import org.jspecify.annotations.NullMarked;
