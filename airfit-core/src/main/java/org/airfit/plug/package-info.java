/**
 * Plugs of quick-action couplings: their shape, caliper readings of them, and what the readings say.
 *
 * <p>Here is the method: dimensions and how they vary, readings and clues and what they may be off, the comparison with
 * a reference set, what to measure first and next, sets built from a shop's own pieces, and outlines to true scale. Not
 * here: any table of real plugs. None could be read from a published source, so none is built in;
 * {@link org.airfit.plug.DemoProfiles} is invented. A shop brings its own set, entered from a standard it holds or
 * measured on known plugs.
 *
 * <p>Readings of a plug, compared with a set of profiles:
 *
 * <pre>{@code
 * import java.util.List;
 * import org.airfit.measure.Instrument;
 * import org.airfit.plug.DemoProfiles;
 * import org.airfit.plug.Dimension;
 * import org.airfit.plug.Identification;
 * import org.airfit.plug.Identifier;
 * import org.airfit.plug.PlugReading;
 * import org.airfit.quantity.Length;
 *
 * class PlugInTheHand {
 *   public static void main(String[] args) {
 *     PlugReading tip =
 *         PlugReading.of(Dimension.TIP_DIAMETER, Instrument.DIGITAL_CALIPER, Length.parse("18.78 mm"));
 *     Identification answer = Identifier.of(DemoProfiles.birds()).identify(List.of(tip));
 *     System.out.println(answer.verdict()); // AMBIGUOUS
 *     System.out.println(answer.candidates().get(0).profile().id()); // demo-curlew
 *   }
 * }
 * }</pre>
 *
 * <h2>Specification</h2>
 * <ul>
 *   <li>An answer is a probability, a fit and a verdict. "Of none in the set" is always one of the possibilities: from
 *       elsewhere in the size class, or a near copy of a profile, unless the user knows that none are about.
 *   <li>A plug is <em>identified</em> when its profile stands out, all readings fit, and every dimension that decides
 *       the mating was read. Where the set does not know one of these the plug is a candidate at most. A reading that
 *       looks like a slip is told, and never corrected.
 *   <li>Only sets entered from a standard, or measured on five pieces or more, can say <em>identified</em>; any other
 *       says <em>candidate</em> at most. Every answer carries the weakest provenance of the set it was compared with.
 *   <li>Matching dimensions do not prove safe mating; every answer says so. Welding-gas and hydraulic profiles are
 *       refused from a set.
 *   <li>Letters and trade words are aliases and may mean several profiles. A socket without its plug is not identified.
 *   <li>Densities are per millimetre. Everything is immutable and thread-safe. A {@code null} argument throws
 *       {@link NullPointerException}.
 * </ul>
 *
 * <h2>Standards, and where they are silent</h2>
 * Error limits of calipers are those of DIN 862; the guarded verdict is that of ISO 14253-1 and ILAC-G8; uncertainties
 * combine as in the GUM. ISO 6150 fixes the plugs themselves and was not seen. No source was found for wear, for
 * technique at steps and grooves, for how common unknown plugs, near copies and slips are, or for how near copies
 * differ: those numbers are marked where they stand.
 */
@NullMarked
package org.airfit.plug;

import org.jspecify.annotations.NullMarked;
