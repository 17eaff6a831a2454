/**
 * How an answer was reached, so that somebody else can check it with a pencil.
 *
 * <p>A result's {@code working()} returns a {@link org.airfit.working.Working}: its steps in order, each with the
 * equation, the numbers put in with their units, the value that comes out and the source. It prints as plain text,
 * Markdown or LaTeX. The package that computes an answer gives the numbers; this package checks and prints them.
 *
 * <p>The working of an answer, as text:
 *
 * <pre>{@code
 * import org.airfit.air.AirState;
 * import org.airfit.quantity.AbsolutePressure;
 * import org.airfit.quantity.Temperature;
 * import org.airfit.working.Working;
 *
 * class WorkingOfAnAnswer {
 *   public static void main(String[] args) {
 *     AirState air = AirState.of(AbsolutePressure.parse("8 bar(a)"), Temperature.parse("20 °C"));
 *     Working working = air.working();
 *     System.out.println(working.title()); // Air at 8 bar(a), 20 °C
 *     System.out.println(working.toText().contains("R")); // true
 *   }
 * }
 * }</pre>
 *
 * <h2>Specification</h2>
 * <ul>
 *   <li>An equation is written down once, as the definition of a {@link org.airfit.working.Formula}: text, LaTeX and
 *       the check of the number come from it, in SI and in US units.
 *   <li>A working is complete by construction: a value that was not given, a result that nobody uses, a number that
 *       the formula does not give are refused with an {@link IllegalStateException}. Such a defect lies in the
 *       library, never in the data.
 *   <li>The digits printed are the digits a reader should carry: putting the printed numbers in gives the printed
 *       value.
 *   <li>Everything is immutable and thread-safe. A {@code null} argument throws {@link NullPointerException}.
 * </ul>
 */
@NullMarked
package org.airfit.working;

import org.jspecify.annotations.NullMarked;
