/**
 * Pipe threads, and the threads that are taken for them: their geometry, and what a thread in the hand is.
 *
 * <p>"What is this?" is {@link org.airfit.thread.ThreadIdentification#of(ThreadReadings)}. "What does it measure?" is a
 * {@link org.airfit.thread.PipeThread}, computed from the formulas of its standard and not looked up. "Will this go
 * into that?" is asked of {@code org.airfit.joint}.
 *
 * <p>Two crests and a counted pitch:
 *
 * <pre>{@code
 * import org.airfit.quantity.Length;
 * import org.airfit.thread.ThreadIdentification;
 * import org.airfit.thread.ThreadReadings;
 *
 * class ThreadInTheHand {
 *   public static void main(String[] args) {
 *     ThreadReadings readings = ThreadReadings.ofMale(Length.parse("20.8 mm"))
 *         .withLastCrest(Length.parse("21.3 mm"))
 *         .withPitches(Length.parse("9.07 mm"), 5);
 *     System.out.println(ThreadIdentification.of(readings).inWords()); // 1/2 NPT male (> 99.9 %)
 *   }
 * }
 * }</pre>
 *
 * <h2>Specification</h2>
 * <ul>
 *   <li>NPT, NPSC and NPSM after ASME B1.20.1; R, Rc and Rp after ISO 7-1; G after ISO 228-1, classes A and B; sizes
 *       1/16 to 4, as far as the standard has them. All were seen in copies and quotations, not in the originals. The
 *       dryseal threads of ASME B1.20.3 are known to mating only.
 *   <li>Where printed tables and formulas differ in the last digit, the formula stands. L1 of NPT and the gauge length
 *       of R have none and are tabulated.
 *   <li>Foreign threads ({@link org.airfit.thread.ForeignThread}) are known by their limits only, so that they can be
 *       named; nothing joins them to an air part. Metric after ISO 965-1 (6g, 6H), unified after ASME B1.1 (2A, 2B), G of
 *       odd size, hose threads.
 *   <li>A thread is called identified only with a counted pitch, or two evidences of it that agree, and if every
 *       reading fits it. Mistakes of whoever measures are part of the model; their rates are choices of this project.
 *   <li>A size a standard does not have is refused with the nearest it has. An ambiguous thread is a result, and names
 *       the reading that would settle it. A pair of 60° and 55° threads is never said to seal.
 *   <li>Numbers from memory and common practice say so in their {@link org.airfit.source.Source}.
 *   <li>Everything is immutable and thread-safe. A {@code null} argument throws {@link NullPointerException}.
 * </ul>
 */
@NullMarked
package org.airfit.thread;

import org.jspecify.annotations.NullMarked;
