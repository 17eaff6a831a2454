package org.airfit.select;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import org.airfit.flow.FlowElement;
import org.airfit.joint.End;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.run.ElementLoss;
import org.airfit.run.Run;
import org.airfit.run.RunResult;
import org.jspecify.annotations.Nullable;

/**
 * The parts of a proposal at their positions, the joints between them, the run they make and what arrives at the tool:
 * what a {@link Rule} judges. Of several tools, the way to each is an assembly of its own.
 *
 * @param requirement what was asked for
 * @param placed the parts at the positions of the layout, in the order the air goes, one line after another
 * @param joints the joints from the outlet to the tool: one before every part that is no plug, and one at every tool
 * @param ways the way to each of several tools with all that stands on it; none where there is one tool
 * @param run the run from the supply to the tool, at worst; it follows from what is above. Of several tools that to the
 *     one which is worst off
 * @param result what arrives at that tool at worst; it follows from the run
 * @param atBest what arrives at that tool at best; the same where all is known exactly
 */
record Assembly(
    Requirement requirement,
    List<Placed> placed,
    List<Joint> joints,
    List<Assembly> ways,
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
    return requirement.isOfSeveralTools()
        ? ofSeveralTools(requirement, placed, adapters)
        : ofOneTool(requirement, placed, adapters, Collections.nCopies(placed.size() + 1, ""));
  }

  /** Of one tool, or on the way to one of several: with the line of each part, and at the end that of the tool. */
  private static Assembly ofOneTool(
      Requirement requirement,
      List<Placed> placed,
      List<List<Part.Adapter>> adapters,
      List<String> lines) {
    List<Joint> joints = joints(requirement, placed, adapters, lines);
    Run run = run(requirement, placed, joints, Known.AT_WORST);
    RunResult result = run.at(requirement.demand());
    RunResult atBest = isExact(requirement, placed)
        ? result
        : run(requirement, placed, joints, Known.AT_BEST)
            .at(Known.AT_BEST.of(requirement.demandRange()));
    return new Assembly(requirement, List.copyOf(placed), joints, List.of(), run, result, atBest);
  }

  /** What belongs to one stretch: its parts, with the adapters of the joints in front of each and at its tool. */
  private record Own(
      Stretch stretch, String line, List<Placed> placed, List<List<Part.Adapter>> adapters) {

    static List<Own> of(Requirement job, List<Placed> placed, List<List<Part.Adapter>> adapters) {
      List<Own> each = new ArrayList<>();
      int joint = 0;
      for (Stretch stretch : job.layout().stretches()) {
        List<Placed> parts = placed.stream()
            .filter(part -> part.position().line() == stretch.line())
            .toList();
        int joints =
            (int) parts.stream().filter(part -> !part.position().isPlug()).count()
                + (stretch.isToTool() ? 1 : 0);
        String name = job.named(stretch);
        each.add(new Own(
            stretch,
            name.isEmpty() ? "" : name + ": ",
            parts,
            adapters.subList(joint, joint + joints)));
        joint += joints;
      }
      return each;
    }
  }

  /** The way to each tool shares what stands in front of a splitter, with its joints. */
  private static Assembly ofSeveralTools(
      Requirement requirement, List<Placed> placed, List<List<Part.Adapter>> adapters) {
    List<Own> stretches = Own.of(requirement, placed, adapters);
    List<Assembly> ways = new ArrayList<>();
    Map<Integer, List<Joint>> joints = new TreeMap<>();
    for (Requirement way : requirement.toEachTool()) {
      int tool = ways.size();
      List<Own> there =
          stretches.stream().filter(each -> each.stretch.isOnTheWayTo(tool)).toList();
      List<Placed> parts = new ArrayList<>();
      List<List<Part.Adapter>> between = new ArrayList<>();
      List<String> lines = new ArrayList<>();
      for (Own each : there) {
        parts.addAll(each.placed);
        between.addAll(each.adapters);
        lines.addAll(Collections.nCopies(each.placed.size(), each.line));
      }
      lines.add(there.get(there.size() - 1).line);
      Assembly one = ofOneTool(way, onTheWay(way, parts), between, lines);
      int joint = 0;
      for (Own each : there) {
        int behind = joint + each.adapters.size();
        joints.putIfAbsent(each.stretch.line(), one.joints.subList(joint, behind));
        joint = behind;
      }
      ways.add(one);
    }
    Assembly worst =
        ways.stream().min(Comparator.comparingDouble(Assembly::spareAtWorst)).orElseThrow();
    return new Assembly(
        requirement,
        List.copyOf(placed),
        joints.values().stream().flatMap(List::stream).toList(),
        List.copyOf(ways),
        worst.run,
        worst.result,
        worst.atBest);
  }

  /** The same parts at the positions of one way. */
  private static List<Placed> onTheWay(Requirement way, List<Placed> placed) {
    List<Position> positions = Position.of(way);
    List<Placed> there = new ArrayList<>();
    for (int i = 0; i < placed.size(); i++) {
      there.add(new Placed(positions.get(i), placed.get(i).part()));
    }
    return there;
  }

  /** What the tool has to spare at worst over what it needs at most [Pa]; of several the one that has least. */
  double spareAtWorst() {
    double needed = requirement.least().pascals();
    return ways.isEmpty()
        ? result.<Double>fold(
                delivered -> delivered.atToolGauge().pascals(), starved -> SearchAir.STARVED)
            - needed
        : ways.stream().mapToDouble(Assembly::spareAtWorst).min().orElseThrow();
  }

  /** The way to each tool; itself where there is one. */
  List<Assembly> toEachTool() {
    return ways.isEmpty() ? List.of(this) : ways;
  }

  /** The run of which {@link #run} is that at worst, at best. */
  Run runAtBest() {
    return ways.isEmpty()
        ? run(requirement, placed, joints, Known.AT_BEST)
        : ways.stream()
            .min(Comparator.comparingDouble(Assembly::spareAtWorst))
            .orElseThrow()
            .runAtBest();
  }

  private static Run run(
      Requirement requirement, List<Placed> placed, List<Joint> joints, Known known) {
    return run(
        requirement,
        requirement.toOutlet(known),
        placed,
        joints,
        known,
        position -> position.others().map(known::of));
  }

  /** The run at worst of one tool, but from another run to the outlet. */
  Run runFrom(Run toOutlet) {
    return run(
        requirement,
        toOutlet,
        placed,
        joints,
        Known.AT_WORST,
        position -> position.others().map(Known.AT_WORST::of));
  }

  /** The run at worst of one tool, but that others take so much behind one of its positions. */
  Run runWithOthers(Position shared, FreeAirFlow taken) {
    return run(
        requirement,
        requirement.toOutlet(Known.AT_WORST),
        placed,
        joints,
        Known.AT_WORST,
        position -> position.equals(shared)
            ? Optional.of(taken)
            : position.others().map(Known.AT_WORST::of));
  }

  private static Run run(
      Requirement requirement,
      Run toOutlet,
      List<Placed> placed,
      List<Joint> joints,
      Known known,
      Function<Position, Optional<FreeAirFlow>> others) {
    Set<String> taken = new HashSet<>(requirement.pipeNames());
    Run run = toOutlet;
    int joint = 0;
    for (Placed each : placed) {
      if (!each.position().isPlug()) {
        run = through(run, joints.get(joint), taken);
        run = through(run, each, requirement, known, taken);
        run = others.apply(each.position()).map(run::sharedWith).orElse(run);
        joint++;
      }
    }
    return through(run, joints.get(joint), taken);
  }

  private static List<Joint> joints(
      Requirement job, List<Placed> placed, List<List<Part.Adapter>> adapters, List<String> lines) {
    List<Joint> joints = new ArrayList<>();
    List<String> nouns = Nouns.of(placed, lines.subList(0, placed.size()));
    String from = "outlet";
    End open = job.outlet();
    for (int i = 0; i < placed.size(); i++) {
      Placed each = placed.get(i);
      String noun = nouns.get(i);
      if (!each.position().isPlug()) {
        joints.add(Joint.of(
            lines.get(i) + from + " to " + noun,
            open,
            Ends.upstream(each.part()),
            adapters.get(joints.size())));
      }
      from = noun;
      open = Ends.downstream(each.position(), each.part());
    }
    joints.add(Joint.of(
        lines.get(placed.size()) + from + " to tool",
        open,
        job.toolInlet(),
        adapters.get(joints.size())));
    return List.copyOf(joints);
  }

  /** The stretches of the layout in order. */
  List<Stretch> stretches() {
    return requirement.layout().stretches();
  }

  private Stretch stretch(int line) {
    return stretches().get(line + 1);
  }

  /** The stretch that a position belongs to. */
  Stretch stretch(Position position) {
    return stretch(position.line());
  }

  /** How a line is named in front of what is said of it, such as "line 2, sander: ", of several; else nothing. */
  String line(int line) {
    String name = ways.isEmpty() ? "" : requirement.named(stretch(line));
    return name.isEmpty() ? "" : name + ": ";
  }

  /** The same of the line that a position belongs to. */
  String line(Position position) {
    return line(position.line());
  }

  /** How all lines are named, those to a splitter too. */
  List<String> lines() {
    return ways.isEmpty()
        ? List.of()
        : stretches().stream()
            .map(stretch -> line(stretch.line()))
            .filter(name -> !name.isEmpty())
            .toList();
  }

  /** The line of each part. */
  List<Integer> linesOfPlaced() {
    return placed.stream().map(each -> each.position().line()).toList();
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
    Part part = placed.part();
    if (part instanceof Part.Regulator regulator) {
      FlowElement element =
          placed.position().element(regulator, job.toOutlet().atmosphere(), known);
      return run.through(own(regulator.name(), taken), Objects.requireNonNull(element));
    }
    String name = own(
        part instanceof Part.Socket ? placed.position().called() + ", " + part.name() : part.name(),
        taken);
    return part.line()
        .map(line -> run.through(name, known.of(line)))
        .orElseGet(() -> run.through(name, known.of(part.passage().orElseThrow())));
  }

  /** A name that no other element of the run bears: the second adapter of a kind is "nipple (2)". */
  private static String own(String name, Set<String> taken) {
    String free = name;
    for (int i = 2; !taken.add(free); i++) {
      free = name + " (" + i + ")";
    }
    return free;
  }

  /**
   * A joint at its place.
   *
   * @param joint the joint
   * @param before the part in front of it; null at the outlet
   * @param behind the place of the part behind it; null at the tool
   * @param line which line it belongs to
   * @param count in how many lines alike it is
   */
  record Between(
      Joint joint, @Nullable Placed before, @Nullable Placed behind, int line, int count) {}

  /** The joints in their order, each with the parts around it. */
  List<Between> between() {
    List<Between> between = new ArrayList<>();
    Map<Integer, Placed> last = new HashMap<>();
    Placed before = null;
    for (Placed each : placed) {
      Position position = each.position();
      int line = position.line();
      if (before != null && line != before.position().line()) {
        if (stretch(before.position().line()).isToTool()) {
          between.add(atTool(between.size(), before));
        }
        before = last.get(stretch(line).before());
      }
      last.put(line, each);
      if (!position.isPlug()) {
        between.add(new Between(
            joints.get(between.size()), before, each, position.line(), position.count()));
      }
      before = each;
    }
    between.add(atTool(between.size(), Objects.requireNonNull(before)));
    return List.copyOf(between);
  }

  private Between atTool(int joint, Placed last) {
    return new Between(
        joints.get(joint), last, null, last.position().line(), last.position().count());
  }

  /**
   * Every part from the outlet to the tool with its position, adapters where they stand; one of those in lines alike.
   */
  List<Placed> slotParts() {
    List<Placed> parts = new ArrayList<>();
    int next = 0;
    for (Between each : between()) {
      Position adapter = Position.adapter(each.line, each.count);
      each.joint.adapters().forEach(part -> parts.add(new Placed(adapter, part)));
      if (each.behind != null) {
        parts.add(each.behind);
        next++;
        while (next < placed.size() && placed.get(next).position().isPlug()) {
          parts.add(placed.get(next++));
        }
      }
    }
    return parts;
  }

  /** Every part from the outlet to the tool, one of those in lines alike. */
  List<Part> parts() {
    return slotParts().stream().map(Placed::part).toList();
  }

  /** The same, those of lines that are alike once for each. */
  List<Part> pieces() {
    List<Part> pieces = new ArrayList<>();
    for (Placed each : slotParts()) {
      for (int i = 0; i < each.position().count(); i++) {
        pieces.add(each.part());
      }
    }
    return pieces;
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

  /** What the part in a slot is called in the run; none of a slot that the run does not pass. */
  Optional<String> element(String slot) {
    if (!ways.isEmpty()) {
      return ways.stream()
          .filter(way -> way.run.equals(run))
          .findFirst()
          .flatMap(way -> way.element(slot));
    }
    List<Placed> parts = slotParts();
    List<Optional<Integer>> elements = elements(parts);
    for (int i = 0; i < parts.size(); i++) {
      Slot here = parts.get(i).position().slot();
      if (elements.get(i).isPresent() && here != null && here.name().equals(slot)) {
        return elements.get(i).map(run.names()::get);
      }
    }
    return Optional.empty();
  }

  /** The number of each part among the elements of the run; none of a plug, which counts with its socket. */
  private List<Optional<Integer>> elements(List<Placed> parts) {
    List<Optional<Integer>> elements = new ArrayList<>();
    int next = requirement.pipeNames().size();
    for (Placed each : parts) {
      boolean flows = !each.position().isPlug();
      elements.add(flows ? Optional.of(next) : Optional.empty());
      next += flows ? 1 : 0;
    }
    return elements;
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
    if (!ways.isEmpty()) {
      return lossesOfSeveral();
    }
    List<ElementLoss> losses =
        result.fold(delivered -> delivered.shares(), starved -> starved.before());
    return elements(slotParts()).stream()
        .map(element -> element.filter(number -> number < losses.size()).map(losses::get))
        .toList();
  }

  private List<Optional<ElementLoss>> lossesOfSeveral() {
    List<Placed> parts = slotParts();
    Map<Integer, List<Optional<ElementLoss>>> losses = new TreeMap<>();
    for (int i = 0; i < ways.size(); i++) {
      int tool = i;
      List<Optional<ElementLoss>> own = ways.get(i).losses();
      int from = 0;
      for (Stretch stretch : stretches()) {
        if (stretch.isOnTheWayTo(tool)) {
          int behind = from
              + (int) parts.stream()
                  .filter(each -> each.position().line() == stretch.line())
                  .count();
          losses.putIfAbsent(stretch.line(), own.subList(from, behind));
          from = behind;
        }
      }
    }
    return losses.values().stream().flatMap(List::stream).toList();
  }

  /** Whether all that bears on the air is known exactly. */
  boolean isExact() {
    return isExact(requirement, placed);
  }

  private static boolean isExact(Requirement requirement, List<Placed> placed) {
    MassFlow most = requirement.airAtOutlet().most().massFlow();
    return requirement.isExact()
        && placed.stream()
            .allMatch(each -> each.position().isExact() && Known.isExact(each.part(), most));
  }

  /** Whether it depends on what is not known whether the tool has its air: enough at best, but not at worst. */
  boolean isAirOpen() {
    return toEachTool().stream()
            .allMatch(way -> isAtLeast(way.atBest, way.requirement.leastRange().least()))
        && !toEachTool().stream().allMatch(way -> isAtLeast(way.result, way.requirement.least()));
  }

  /** Whether what regulators are set to is all that decides whether the tool has its air. */
  boolean dependsOnSettingsAlone() {
    return isAirOpen()
        && requirement.isExactButForSettings()
        && parts().stream().allMatch(Known::isExact);
  }

  /** Whether so much pressure arrives. */
  static boolean isAtLeast(RunResult result, GaugePressure needed) {
    return result.fold(
        delivered -> delivered.atToolGauge().compareTo(needed) >= 0, starved -> false);
  }

  /** Ways, run and results follow from the rest. */
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
