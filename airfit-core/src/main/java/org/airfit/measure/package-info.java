/**
 * What a person with a caliper measures, and how far it may be off.
 *
 * <p>Here are the classes of calipers with their limits of error, a reading with its standard uncertainty, how a size
 * varies from part to part, a pitch that was counted or read with a leaf, mistakes included, what wear does to it, and
 * what a reading proves about two limits. Not here: which sizes a plug or a thread has, and what readings say about
 * it; see {@code org.airfit.plug} and {@code org.airfit.thread}.
 *
 * <p>A reading with its uncertainty, and what it proves about limits:
 *
 * <pre>{@code
 * import org.airfit.measure.Access;
 * import org.airfit.measure.Conformity;
 * import org.airfit.measure.Instrument;
 * import org.airfit.measure.PartSpread;
 * import org.airfit.measure.Reading;
 * import org.airfit.quantity.Length;
 *
 * class WithinLimits {
 *   public static void main(String[] args) {
 *     Reading tip = Reading.by(Instrument.DIGITAL_CALIPER, Access.OUTSIDE, Length.parse("11.98 mm"));
 *     PartSpread.Limits limits = new PartSpread.Limits(Length.parse("11.9 mm"), Length.parse("12.1 mm"));
 *     System.out.println(Conformity.of(limits, tip).verdict()); // INSIDE_PROVEN
 *   }
 * }
 * }</pre>
 *
 * <h2>Specification</h2>
 * <ul>
 *   <li>Every uncertainty is a standard uncertainty, one standard deviation, unless its name says otherwise.
 *   <li>The error of one caliper is common to all readings with it: {@link org.airfit.measure.Reading#caliper} keeps
 *       which it was.
 *   <li>Everything is immutable and thread-safe. A {@code null} argument throws {@link NullPointerException}.
 * </ul>
 *
 * <h2>Standards, and where they are silent</h2>
 * Limits of error of calipers are those of DIN 862; the guarded verdict is that of ISO 14253-1 and ILAC-G8;
 * uncertainties combine as in the GUM. No source was found for technique at steps, grooves and bores: those numbers are
 * marked where they stand.
 */
@NullMarked
package org.airfit.measure;

import org.jspecify.annotations.NullMarked;
