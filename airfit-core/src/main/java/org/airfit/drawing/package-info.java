/**
 * Outlines, sheets, overlays and sections of plugs and threads, to true scale, as SVG.
 *
 * <p>The only package that writes SVG. What is drawn comes from {@link org.airfit.plug} and {@link org.airfit.thread}.
 *
 * <p>A thread and a plug, to true scale:
 *
 * <pre>{@code
 * import org.airfit.drawing.PlugDrawing;
 * import org.airfit.drawing.ThreadDrawing;
 * import org.airfit.plug.DemoProfiles;
 * import org.airfit.quantity.NominalThreadSize;
 * import org.airfit.thread.NptThread;
 *
 * class TrueScale {
 *   public static void main(String[] args) {
 *     ThreadDrawing thread = ThreadDrawing.of(NptThread.of(NominalThreadSize.ONE_QUARTER));
 *     PlugDrawing plug = PlugDrawing.of(DemoProfiles.birds().profiles().get(0));
 *     System.out.println(thread.svg().startsWith("<svg")); // true
 *     System.out.println(plug.width().millimetres() > 0.0); // true
 *   }
 * }
 * }</pre>
 *
 * <h2>Specification</h2>
 * <ul>
 *   <li>One unit of a drawing is one millimetre on paper; magnified parts say by how much. Every sheet has a ruler.
 *   <li>Everything is immutable and thread-safe. A {@code null} argument throws {@link NullPointerException}.
 * </ul>
 */
@NullMarked
package org.airfit.drawing;

import org.jspecify.annotations.NullMarked;
