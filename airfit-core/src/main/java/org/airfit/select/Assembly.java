package org.airfit.select;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
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
    Run run = through(requirement.toOutlet(), joints.get(0));
    run = run.through("outlet coupling, " + outletSocket.name(), outletSocket.capacity());
    run = through(run, joints.get(1));
    run = run.through(distinct(run, hose.name()), hose.conduit());
    run = through(run, joints.get(2));
    run = run.through("tool coupling, " + toolSocket.name(), toolSocket.capacity());
    run = through(run, joints.get(3));
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

  private static Run through(Run run, Joint joint) {
    Run longer = run;
    for (Part.Adapter adapter : joint.adapters()) {
      longer = longer.through(distinct(longer, adapter.name()), adapter.conduit());
    }
    return longer;
  }

  /** The name of a part, numbered where the run has it already, as it may have two of one adapter. */
  private static String distinct(Run run, String name) {
    String distinct = name;
    for (int i = 2; run.names().contains(distinct); i++) {
      distinct = name + ", " + i;
    }
    return distinct;
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
   * The loss of the socket or hose in a slot; empty where the air does not get behind it. A plug is no element: it
   * counts with its socket.
   */
  Optional<ElementLoss> loss(Slot slot) {
    List<ElementLoss> losses =
        result.fold(delivered -> delivered.shares(), starved -> starved.before());
    int element = requirement.pipeCount();
    for (SlotPart each : slotParts()) {
      if (each.slot() == slot) {
        return element < losses.size() ? Optional.of(losses.get(element)) : Optional.empty();
      }
      if (!(each.part() instanceof Part.Plug)) {
        element++;
      }
    }
    return Optional.empty();
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
