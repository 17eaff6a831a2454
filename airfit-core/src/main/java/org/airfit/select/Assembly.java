package org.airfit.select;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.airfit.quantity.GaugePressure;
import org.airfit.run.ElementLoss;
import org.airfit.run.Run;
import org.airfit.run.RunResult;

/**
 * The parts of a proposal in their slots, the joints between them, the run they make and what arrives at the tool:
 * what a {@link Rule} judges.
 *
 * @param requirement what was asked for
 * @param outletSocket the socket at the outlet
 * @param hosePlug the plug that goes into it
 * @param hose the hose
 * @param toolSocket the socket at the hose's downstream end
 * @param toolPlug the plug that goes into it
 * @param joints the four joints from the outlet to the tool
 * @param run the run from the supply to the tool; it follows from what is above
 * @param result what arrives at the tool; it follows from the run
 */
record Assembly(
    Requirement requirement,
    Part.Socket outletSocket,
    Part.Plug hosePlug,
    Part.Hose hose,
    Part.Socket toolSocket,
    Part.Plug toolPlug,
    List<Joint> joints,
    Run run,
    RunResult result) {

  static Assembly of(
      Requirement requirement,
      Part.Socket outletSocket,
      Part.Plug hosePlug,
      Part.Hose hose,
      Part.Socket toolSocket,
      Part.Plug toolPlug,
      List<Joint> joints) {
    Set<String> taken = new HashSet<>(requirement.pipeNames());
    Run run = through(requirement.toOutlet(), joints.get(0), taken);
    run =
        run.through(own("outlet coupling, " + outletSocket.name(), taken), outletSocket.capacity());
    run = through(run, joints.get(1), taken).through(own(hose.name(), taken), hose.conduit());
    run = through(run, joints.get(2), taken);
    run = run.through(own("tool coupling, " + toolSocket.name(), taken), toolSocket.capacity());
    run = through(run, joints.get(3), taken);
    return new Assembly(
        requirement,
        outletSocket,
        hosePlug,
        hose,
        toolSocket,
        toolPlug,
        List.copyOf(joints),
        run,
        run.at(requirement.demand()));
  }

  private static Run through(Run run, Joint joint, Set<String> taken) {
    Run longer = run;
    for (Part.Adapter adapter : joint.adapters()) {
      longer = longer.through(own(adapter.name(), taken), adapter.conduit());
    }
    return longer;
  }

  /** A name that no other element of the run bears: the second adapter of a kind is "nipple (2)". */
  private static String own(String name, Set<String> taken) {
    String free = name;
    for (int i = 2; !taken.add(free); i++) {
      free = name + " (" + i + ")";
    }
    return free;
  }

  /** Every part from the outlet to the tool with its slot, adapters where they stand. */
  List<SlotPart> slotParts() {
    List<SlotPart> parts = new ArrayList<>();
    adapters(parts, 0);
    parts.add(new SlotPart(Slot.OUTLET_SOCKET, outletSocket));
    parts.add(new SlotPart(Slot.HOSE_PLUG, hosePlug));
    adapters(parts, 1);
    parts.add(new SlotPart(Slot.HOSE, hose));
    adapters(parts, 2);
    parts.add(new SlotPart(Slot.TOOL_SOCKET, toolSocket));
    parts.add(new SlotPart(Slot.TOOL_PLUG, toolPlug));
    adapters(parts, 3);
    return parts;
  }

  private void adapters(List<SlotPart> parts, int joint) {
    joints.get(joint).adapters().forEach(part -> parts.add(new SlotPart(Slot.ADAPTER, part)));
  }

  /** Every part from the outlet to the tool. */
  List<Part> parts() {
    return slotParts().stream().map(SlotPart::part).toList();
  }

  /** The lowest rating of all parts of which one is known. */
  Optional<GaugePressure> lowestRating() {
    GaugePressure lowest = null;
    for (Part part : parts()) {
      GaugePressure rating = part.facts().rating().orElse(null);
      if (rating != null && (lowest == null || rating.compareTo(lowest) < 0)) {
        lowest = rating;
      }
    }
    return Optional.ofNullable(lowest);
  }

  /**
   * The loss of every part in the order of {@link #slotParts}; none where the air does not get behind it. A plug is no
   * element: it counts with its socket.
   */
  List<Optional<ElementLoss>> losses() {
    List<ElementLoss> losses =
        result.fold(delivered -> delivered.shares(), starved -> starved.before());
    List<Optional<ElementLoss>> each = new ArrayList<>();
    int element = requirement.pipeNames().size();
    for (SlotPart part : slotParts()) {
      boolean flows = !(part.part() instanceof Part.Plug);
      each.add(
          flows && element < losses.size() ? Optional.of(losses.get(element)) : Optional.empty());
      element += flows ? 1 : 0;
    }
    return each;
  }

  /** Run and result follow from the rest. */
  @Override
  public boolean equals(Object other) {
    return other instanceof Assembly that
        && requirement.equals(that.requirement)
        && slotParts().equals(that.slotParts())
        && joints.equals(that.joints);
  }

  @Override
  public int hashCode() {
    return Objects.hash(requirement, slotParts(), joints);
  }
}
