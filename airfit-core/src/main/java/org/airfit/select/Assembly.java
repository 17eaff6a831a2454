package org.airfit.select;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.airfit.flow.FlowCapacity;
import org.airfit.flow.FlowElement;
import org.airfit.joint.End;
import org.airfit.quantity.GaugePressure;
import org.airfit.run.ElementLoss;
import org.airfit.run.Run;
import org.airfit.run.RunResult;

/**
 * The parts of a proposal at their positions, the joints between them, the run they make and what arrives at the tool:
 * what a {@link Rule} judges.
 *
 * @param requirement what was asked for
 * @param placed the parts at the positions of the layout, in the order the air goes
 * @param joints the joints from the outlet to the tool: one before every part that is no plug, and one at the tool
 * @param run the run from the supply to the tool, at worst; it follows from what is above
 * @param result what arrives at the tool at worst; it follows from the run
 * @param atBest what arrives at the tool at best; the same where all is known exactly
 */
record Assembly(
    Requirement requirement,
    List<Placed> placed,
    List<Joint> joints,
    Run run,
    RunResult result,
    RunResult atBest) {

  /**
   * Obtains an assembly.
   *
   * @param requirement what was asked for
   * @param placed the parts at the positions of the layout
   * @param adapters the adapters of every joint
   */
  static Assembly of(
      Requirement requirement, List<Placed> placed, List<List<Part.Adapter>> adapters) {
    List<Joint> joints = joints(requirement, placed, adapters);
    Run run = run(requirement, placed, joints, Known.AT_WORST);
    RunResult result = run.at(requirement.demand());
    RunResult atBest = isExact(requirement, placed)
        ? result
        : run(requirement, placed, joints, Known.AT_BEST)
            .at(Known.AT_BEST.of(requirement.demandRange()));
    return new Assembly(requirement, List.copyOf(placed), joints, run, result, atBest);
  }

  private static Run run(
      Requirement requirement, List<Placed> placed, List<Joint> joints, Known known) {
    Set<String> taken = new HashSet<>(requirement.pipeNames());
    Run run = requirement.toOutlet(known);
    int joint = 0;
    for (Placed each : placed) {
      if (!each.position().isPlug()) {
        run = through(run, joints.get(joint), taken);
        run = through(run, each, requirement, known, taken);
        joint++;
      }
    }
    return through(run, joints.get(joint), taken);
  }

  private static List<Joint> joints(
      Requirement job, List<Placed> placed, List<List<Part.Adapter>> adapters) {
    List<Joint> joints = new ArrayList<>();
    String from = "outlet";
    End open = job.outlet();
    for (Placed each : placed) {
      String noun = each.position().noun();
      if (!each.position().isPlug()) {
        joints.add(Joint.of(
            from + " to " + noun, open, Ends.upstream(each.part()), adapters.get(joints.size())));
      }
      from = noun;
      open = Ends.downstream(each.part());
    }
    joints.add(Joint.of(from + " to tool", open, job.toolInlet(), adapters.get(joints.size())));
    return List.copyOf(joints);
  }

  private static Run through(Run run, Joint joint, Set<String> taken) {
    Run longer = run;
    for (Part.Adapter adapter : joint.adapters()) {
      longer = longer.through(own(adapter.name(), taken), adapter.conduit());
    }
    return longer;
  }

  private static Run through(
      Run run, Placed placed, Requirement job, Known known, Set<String> taken) {
    if (placed.part() instanceof Part.Hose hose) {
      return run.through(own(hose.name(), taken), known.of(hose.conduitRange()));
    }
    if (placed.part() instanceof Part.Socket socket) {
      String name = placed.position().called() + ", " + socket.name();
      return run.through(own(name, taken), known.of(socket.capacityRange()));
    }
    if (placed.part() instanceof Part.Regulator regulator) {
      FlowElement element =
          placed.position().element(regulator, job.toOutlet().atmosphere(), known);
      return run.through(own(regulator.name(), taken), Objects.requireNonNull(element));
    }
    FlowCapacity capacity = known.of(((Part.Device) placed.part()).capacityRange());
    return run.through(own(placed.part().name(), taken), capacity);
  }

  /** A name that no other element of the run bears: the second adapter of a kind is "nipple (2)". */
  private static String own(String name, Set<String> taken) {
    String free = name;
    for (int i = 2; !taken.add(free); i++) {
      free = name + " (" + i + ")";
    }
    return free;
  }

  /** Every part from the outlet to the tool with its position, adapters where they stand. */
  List<Placed> slotParts() {
    List<Placed> parts = new ArrayList<>();
    int joint = 0;
    for (Placed each : placed) {
      if (!each.position().isPlug()) {
        adapters(parts, joint++);
      }
      parts.add(each);
    }
    adapters(parts, joint);
    return parts;
  }

  private void adapters(List<Placed> parts, int joint) {
    joints.get(joint).adapters().forEach(part -> parts.add(new Placed(Position.ADAPTER, part)));
  }

  /** Every part from the outlet to the tool. */
  List<Part> parts() {
    return slotParts().stream().map(Placed::part).toList();
  }

  /** A socket with the plug that goes into it. */
  record Pair(Position position, Part.Socket socket, Part.Plug plug) {}

  /** The couplings in the order the air goes. */
  List<Pair> couplings() {
    List<Pair> couplings = new ArrayList<>();
    for (int i = 1; i < placed.size(); i++) {
      if (placed.get(i - 1).part() instanceof Part.Socket socket
          && placed.get(i).part() instanceof Part.Plug plug) {
        couplings.add(new Pair(placed.get(i - 1).position(), socket, plug));
      }
    }
    return couplings;
  }

  /** The hoses in the order the air goes. */
  List<Placed> hoses() {
    return placed.stream().filter(each -> each.position().isHose()).toList();
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
    for (Placed part : slotParts()) {
      boolean flows = !(part.part() instanceof Part.Plug);
      each.add(
          flows && element < losses.size() ? Optional.of(losses.get(element)) : Optional.empty());
      element += flows ? 1 : 0;
    }
    return each;
  }

  /** Whether all that bears on the air is known exactly. */
  boolean isExact() {
    return isExact(requirement, placed);
  }

  private static boolean isExact(Requirement requirement, List<Placed> placed) {
    return requirement.isExact() && placed.stream().allMatch(each -> Known.isExact(each.part()));
  }

  /** Whether it depends on what is not known whether the tool has its air: enough at best, but not at worst. */
  boolean isAirOpen() {
    return isAtLeast(atBest, requirement.leastRange().least())
        && !isAtLeast(result, requirement.least());
  }

  /** Whether so much pressure arrives. */
  static boolean isAtLeast(RunResult result, GaugePressure needed) {
    return result.fold(
        delivered -> delivered.atToolGauge().compareTo(needed) >= 0, starved -> false);
  }

  /** Run and results follow from the rest. */
  @Override
  public boolean equals(Object other) {
    return other instanceof Assembly that
        && requirement.equals(that.requirement)
        && placed.equals(that.placed)
        && joints.equals(that.joints);
  }

  @Override
  public int hashCode() {
    return Objects.hash(requirement, placed, joints);
  }
}
