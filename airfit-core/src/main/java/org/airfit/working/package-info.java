/**
 * How an answer was reached, so that somebody else can check it with a pencil.
 *
 * <p>A result's {@code working()} returns a {@link org.airfit.working.Working}: its steps in order, each with the equation, the
 * numbers put in with their units, the value that comes out and the source. It prints as plain text, Markdown or LaTeX. Nothing is
 * computed here; the numbers come from whoever computed them.
 *
 * <h2>Specification</h2>
 * <ul>
 *   <li>Equations are written once as plain text and once as LaTeX. In both, a symbol in angle brackets, such as ⟨Re⟩, is printed as
 *       that symbol in the equation and as its value in the line below.
 *   <li>The digits printed are the digits a reader should carry: putting the printed numbers in gives the printed value.
 *   <li>Everything is immutable and thread-safe. A {@code null} argument throws {@link NullPointerException}.
 * </ul>
 */
@NullMarked
package org.airfit.working;

import org.jspecify.annotations.NullMarked;
