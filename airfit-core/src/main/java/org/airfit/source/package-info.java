/**
 * Where numbers come from.
 *
 * <p>Here is the vocabulary only: a {@link org.airfit.source.Source} and its {@link org.airfit.source.Basis}. The
 * sources themselves stand beside the numbers they belong to.
 *
 * <p>A number, and where it comes from:
 *
 * <pre>{@code
 * import org.airfit.source.Basis;
 * import org.airfit.source.Source;
 *
 * class SourceOfANumber {
 *   public static void main(String[] args) {
 *     Source table = Source.handbook("ASTM B88, in the Copper Tube Handbook");
 *     System.out.println(table); // ASTM B88, in the Copper Tube Handbook (handbook)
 *     System.out.println(Basis.HANDBOOK.weaker(Basis.COMMON_PRACTICE).label()); // common practice, no source
 *   }
 * }
 * }</pre>
 *
 * <h2>Specification</h2>
 * <ul>
 *   <li>A {@code null} argument throws {@link NullPointerException}.
 *   <li>Everything is immutable and thread-safe.
 * </ul>
 */
@NullMarked
package org.airfit.source;

import org.jspecify.annotations.NullMarked;
