/**
 * Ends and what joins them: which end goes into which, how it seals, and what goes between.
 *
 * <p>"Will this go into that?" is {@link org.airfit.joint.Mating#of(End, End)}. "What goes between?" is
 * {@link org.airfit.joint.Mating#between()} for the standard shapes of adapters, and a {@link org.airfit.joint.Chain}
 * for those or for the parts in stock. Tubes and hoses with their bores are here too. The threads themselves are in
 * {@link org.airfit.thread}. Nothing here knows flow: {@link org.airfit.joint.End#clearBore()} gives the bore to
 * expect.
 *
 * <p>Does this go into that, and what goes between?
 *
 * <pre>{@code
 * import org.airfit.joint.End;
 * import org.airfit.joint.Mating;
 *
 * class DoesItFit {
 *   public static void main(String[] args) {
 *     Mating pair = Mating.of(End.parse("3/8 NPT male"), End.parse("1/4 NPT female"));
 *     System.out.println(pair.verdict().isSound()); // false
 *     System.out.println(pair.between()); // [female × male reducer 3/8 NPT female × 1/4 NPT male]
 *   }
 * }
 * }</pre>
 *
 * <h2>Specification</h2>
 * <ul>
 *   <li>A pair of 60° and 55° threads is never said to seal. What no table seen decides is not judged, and not sound.
 *   <li>Steel pipe after ASME B36.10M, copper tube after ASTM B88, plastic tube, hose bores after ISO 1307: tables with
 *       the source of every row, read on first use.
 *   <li>Everything is immutable and thread-safe. A {@code null} argument throws {@link NullPointerException}.
 * </ul>
 */
@NullMarked
package org.airfit.joint;

import org.jspecify.annotations.NullMarked;
