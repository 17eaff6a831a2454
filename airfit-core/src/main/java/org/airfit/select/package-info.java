/**
 * Choosing parts: what a job requires, what a catalogue has, and which parts solve it, with a reason for each.
 *
 * <p>Here are the {@link org.airfit.select.Requirement}, the {@link org.airfit.select.Catalogue}, the
 * {@link org.airfit.select.Rule}s and the {@link org.airfit.select.Selection}. Catalogues are the user's data: none
 * is compiled in. Colours, marks and codes are not prescribed.
 *
 * <p>Parts for a job, with the reasons:
 *
 * <pre>{@code
 * import java.util.List;
 * import java.util.Set;
 * import org.airfit.air.AirState;
 * import org.airfit.flow.FlowCapacity;
 * import org.airfit.joint.End;
 * import org.airfit.line.Conduit;
 * import org.airfit.line.Wall;
 * import org.airfit.quantity.AbsolutePressure;
 * import org.airfit.quantity.FreeAirFlow;
 * import org.airfit.quantity.GaugePressure;
 * import org.airfit.quantity.HoseBore;
 * import org.airfit.quantity.Length;
 * import org.airfit.quantity.SonicConductance;
 * import org.airfit.quantity.Temperature;
 * import org.airfit.select.Catalogue;
 * import org.airfit.select.Part;
 * import org.airfit.select.PartFacts;
 * import org.airfit.select.Proposal;
 * import org.airfit.select.Requirement;
 * import org.airfit.select.Selection;
 *
 * class PartsForAJob {
 *   public static void main(String[] args) {
 *     FlowCapacity capacity = FlowCapacity.of(SonicConductance.parse("8 dm³/(s·bar)"), 0.3);
 *     End female = End.parse("3/8 NPT female");
 *     End male = End.parse("3/8 NPT male");
 *     Conduit bore = Conduit.of(Length.parse("3/8 in"), Length.parse("10 m"), Wall.SMOOTH_RUBBER_HOSE);
 *     Catalogue catalogue = Catalogue.of(List.of(
 *         new Part.Socket(PartFacts.of("S-1", "socket"), Set.of("gannet"), female, capacity),
 *         new Part.Plug(PartFacts.of("P-1", "plug of the hose"), "gannet", female),
 *         new Part.Plug(PartFacts.of("P-2", "plug of the tool"), "gannet", End.parse("1/4 NPT male")),
 *         new Part.Hose(PartFacts.of("H-1", "hose"), HoseBore.parse("3/8 in"), bore, male, male)));
 *     Requirement job = Requirement.forTool(
 *             FreeAirFlow.parse("10 L/s ANR"), GaugePressure.parse("6.2 bar(g)"))
 *         .toolInlet(End.parse("1/4 NPT female"))
 *         .supply(
 *             AirState.of(AbsolutePressure.parse("8 bar(a)"), Temperature.parse("20 °C")),
 *             AbsolutePressure.parse("1 bar(a)"))
 *         .outlet(male)
 *         .reach(Length.parse("10 m"))
 *         .build();
 *     Proposal best = Selection.of(job, catalogue)
 *         .fold(Selection.Proposals::best, nothing -> nothing.nearest().get(0));
 *     System.out.println(best.parts().stream().map(part -> part.facts().name()).toList());
 *     // [socket, plug of the hose, hose, socket, plug of the tool]
 *   }
 * }
 * }</pre>
 *
 * <h2>Specification</h2>
 * <ul>
 *   <li>A run is chosen whole: socket at the outlet, plug and hose, socket at the tool, plug of the tool, and the
 *       adapters between them. The pressure at the tool is computed, never read off a label.
 *   <li>The list is that of all combinations, found without building them. It does not depend on the order of the
 *       catalogue, nor on parts that it does not use. Adapters are chosen with the rest: with which ones a set of parts
 *       stands first depends on the air it has to spare.
 *   <li>Every rule gives a verdict, a reason and its source. What was not told is a question to ask, never a guess.
 *       Proposals whose parts leave fewer rules open stand above those that leave more, whatever they cost.
 *   <li>Nothing that fits is a result: the nearest miss and what would have to give. A hose that is a little short is nearer than one that is far too short.
 *   <li>A search takes as long as the catalogue and the open questions make it. Who does not wait for it any more
 *       interrupts its thread: it ends soon with a {@link java.util.concurrent.CancellationException}, never with half
 *       an answer. No clock is read here.
 *   <li>Everything is immutable and thread-safe. A {@code null} argument throws {@link NullPointerException}.
 * </ul>
 */
@NullMarked
package org.airfit.select;

import org.jspecify.annotations.NullMarked;
