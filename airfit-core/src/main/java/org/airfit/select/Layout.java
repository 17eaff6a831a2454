package org.airfit.select;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.airfit.joint.Chain;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.Length;
import org.airfit.quantity.Range;

/**
 * What stands between the outlet and the tool, in the order the air goes: couplings, hoses and what is in the line, each
 * in its {@link Slot}.
 *
 * <p>A line slot by slot, in the order in which the air goes:
 *
 * <pre>{@code
 * import java.util.List;
 * import org.airfit.quantity.GaugePressure;
 * import org.airfit.quantity.Length;
 * import org.airfit.select.Layout;
 * import org.airfit.select.Slot;
 *
 * class SlotsInOrder {
 *   public static void main(String[] args) {
 *     Layout layout = Layout.of(List.of(
 *         Slot.regulator("regulator", GaugePressure.parse("90 psig")),
 *         Slot.coupling("outlet"),
 *         Slot.hose("hose", Length.parse("30 ft")),
 *         Slot.coupling("tool")));
 *     System.out.println(layout); // regulator, outlet, hose, tool
 *   }
 * }
 * }</pre>
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class Layout {

  /** What the coupling at the outlet, the hose and the coupling at the tool are called where nobody told. */
  static final String OUTLET = "outlet";

  static final String HOSE = "hose";
  static final String TOOL = "tool";

  private final List<Slot> slots;
  private final List<ToolLine> lines;

  private Layout(List<Slot> slots, List<ToolLine> lines) {
    this.slots = slots;
    this.lines = lines;
  }

  /**
   * Obtains a layout.
   *
   * @param slots the slots in the order the air goes
   * @return the layout
   * @throws IllegalArgumentException if there is none, if two bear one name, if a coupling shall have the profile of one
   *     that does not stand before it, or if they could hold more than 127 pieces
   */
  public static Layout of(List<? extends Slot> slots) {
    return of(slots, List.of());
  }

  /**
   * Obtains a layout of several tools on one outlet. All of them are taken to work at once.
   *
   * @param slots the slots that carry the air of all, in the order the air goes; the last is a splitter
   * @param lines the lines behind the splitter, which take its outlets in order, each to a tool or to a splitter with
   *     lines of its own; empty where the layout has one tool
   * @return the layout
   * @throws IllegalArgumentException if there is no slot, if lines are told and the last is no splitter or is one with
   *     too few outlets, if one would lead to one tool alone, if two slots bear one name, if a coupling shall have the
   *     profile of one that does not stand before it on its way, or if they could hold more than 127 pieces
   */
  public static Layout of(List<? extends Slot> slots, List<ToolLine> lines) {
    List<Slot> inRow = List.copyOf(Objects.requireNonNull(slots, "slots"));
    List<ToolLine> behind = List.copyOf(Objects.requireNonNull(lines, "lines"));
    if (inRow.isEmpty()) {
      throw new IllegalArgumentException(
          "slots of a layout must be at least one, were none; say Slot.coupling(…), Slot.hose(…)");
    }
    List<Stretch> stretches = Stretch.of(inRow, behind);
    requireNewNames(stretches.stream().flatMap(each -> each.slots().stream()).toList());
    for (int tool = 0; tool < stretches.get(0).tools(); tool++) {
      requireCouplingsBefore(onTheWay(stretches, tool));
    }
    for (Stretch each : stretches) {
      if (!each.isToTool()) {
        ToolLine.requireSplitter(each.slots(), each.lines());
      }
    }
    int pieces = stretches.stream()
        .mapToInt(each -> each.count() * mostPieces(each.slots(), each.isToTool()))
        .sum();
    if (pieces > Objective.MOST_PIECES) {
      throw new IllegalArgumentException("slots of a layout must hold at most "
          + Objective.MOST_PIECES + " pieces with " + Chain.MOST_ADAPTERS
          + " adapters at every joint, were " + inRow.size() + " slots "
          + (behind.isEmpty() ? "" : "and " + (stretches.size() - 1) + " lines behind them ")
          + "with up to " + pieces
          + (behind.isEmpty()
              ? ""
              : "; make a job of some of the lines, with what others take in place of the rest"));
    }
    return new Layout(inRow, behind);
  }

  private static void requireNewNames(List<Slot> slots) {
    Set<String> names = new HashSet<>();
    for (Slot slot : slots) {
      if (!names.add(slot.name())) {
        throw new IllegalArgumentException("names of slots must differ, was \"" + slot.name()
            + "\" again; say which, such as \"" + slot.name() + " 2\"");
      }
    }
  }

  /** The slots on the way to a tool. */
  private static List<Slot> onTheWay(List<Stretch> stretches, int tool) {
    return stretches.stream()
        .filter(each -> each.isOnTheWayTo(tool))
        .flatMap(each -> each.slots().stream())
        .toList();
  }

  /** How many pieces slots hold at most, with all adapters there can be. */
  private static int mostPieces(List<Slot> slots, boolean endsAtTool) {
    int parts =
        slots.stream().mapToInt(slot -> slot instanceof Slot.Coupling ? 2 : 1).sum();
    return parts + Chain.MOST_ADAPTERS * (slots.size() + (endsAtTool ? 1 : 0));
  }

  private static void requireCouplingsBefore(List<Slot> inRow) {
    Set<String> couplings = new HashSet<>();
    for (Slot slot : inRow) {
      if (slot instanceof Slot.Coupling coupling) {
        coupling.sameAs().filter(other -> !couplings.contains(other)).ifPresent(other -> {
          throw new IllegalArgumentException("coupling of which " + coupling.name()
              + " has the profile must stand before it, was \"" + other + "\"; name one of: "
              + String.join(", ", new TreeSet<>(couplings)));
        });
        couplings.add(coupling.name());
      }
    }
  }

  /**
   * Obtains the layout of most jobs: a coupling at the outlet, a hose and a coupling at the tool, called "outlet",
   * "hose" and "tool".
   *
   * @param reach how long the hose must be at least
   * @return the layout
   */
  public static Layout ofHose(Length reach) {
    return of(List.of(Slot.coupling(OUTLET), Slot.hose(HOSE, reach), Slot.coupling(TOOL)));
  }

  /** {@return the slots in the order the air goes, never empty; of several tools those in front of the lines} */
  public List<Slot> slots() {
    return slots;
  }

  /** {@return the lines behind the last slot, a splitter; empty where the layout has one tool} */
  public List<ToolLine> lines() {
    return lines;
  }

  /**
   * {@return every line that ends at a tool, wherever it begins, as often as there are such lines in all: of two lines
   * alike that end in a splitter with three lines to a sander, six. Empty where the layout has one tool}
   */
  public List<ToolLine> toolLines() {
    List<ToolLine> all = new ArrayList<>();
    lines.forEach(line -> all.addAll(line.toolLines()));
    return List.copyOf(all);
  }

  /** Its stretches in order, what stands in front of all lines first. */
  List<Stretch> stretches() {
    return Stretch.of(slots, lines);
  }

  /** The layouts on the way to each tool, with the air of the others; itself where there is one tool. */
  List<Layout> toEachTool() {
    if (lines.isEmpty()) {
      return List.of(this);
    }
    List<Stretch> stretches = stretches();
    List<Layout> ways = new ArrayList<>();
    for (int tool = 0; tool < stretches.get(0).tools(); tool++) {
      int to = tool;
      List<Stretch> way =
          stretches.stream().filter(each -> each.isOnTheWayTo(to)).toList();
      List<Slot> all = new ArrayList<>();
      for (int i = 0; i < way.size(); i++) {
        Stretch each = way.get(i);
        all.addAll(each.slots());
        if (!each.isToTool()) {
          all.set(all.size() - 1, onTheWay(each, way.get(i + 1).place()));
        }
      }
      ways.add(new Layout(List.copyOf(all), List.of()));
    }
    return List.copyOf(ways);
  }

  /** The splitter at the end of a stretch as it is on the way along one of its lines. */
  private static Slot onTheWay(Stretch stretch, int along) {
    Slot.Splitter splitter = (Slot.Splitter) stretch.last();
    List<ToolLine> lines = stretch.lines();
    Stream<Range<FreeAirFlow>> others = IntStream.range(0, lines.size())
        .boxed()
        .flatMap(i -> lines.get(i).drawn(lines.get(i).count() - (i == along ? 1 : 0)));
    return splitter.onTheWay(
        Flows.sum(Stream.concat(splitter.others().stream(), others)),
        splitter.outlet() + stretch.outlet(along));
  }

  /** {@return the slots, and behind them those of the lines, one line after another with the lines behind it} */
  public List<Slot> allSlots() {
    List<Slot> all = new ArrayList<>(slots);
    lines.forEach(line -> all.addAll(line.allSlots()));
    return all;
  }

  /**
   * Finds a slot.
   *
   * @param name what it is called
   * @return the slot, empty if there is none of that name
   */
  public Optional<Slot> slot(String name) {
    Objects.requireNonNull(name, "name");
    return allSlots().stream().filter(slot -> slot.name().equals(name)).findFirst();
  }

  /**
   * Obtains this with another slot in place of one, in a line too.
   *
   * @param name what the one is called
   * @param slot the other
   * @return the changed layout
   * @throws IllegalArgumentException if there is no slot of that name, or the layout could not be made with the other
   */
  public Layout replacing(String name, Slot slot) {
    Objects.requireNonNull(slot, "slot");
    if (slot(name).isEmpty()) {
      throw new IllegalArgumentException(
          "name must be that of a slot of the layout (" + this + "), was \"" + name + "\"");
    }
    return of(
        replaced(slots, name, slot),
        lines.stream()
            .map(line -> line.withSlots(each -> replaced(each, name, slot)))
            .toList());
  }

  private static List<Slot> replaced(List<Slot> slots, String name, Slot other) {
    return slots.stream().map(slot -> slot.name().equals(name) ? other : slot).toList();
  }

  /** This with something else told of the tool of one line, tools alike counted as one, from 0. */
  Layout withTool(int tool, UnaryOperator<ToolLine> told) {
    return of(slots, ToolLine.withTool(lines, tool, told));
  }

  /** {@return the socket of the first coupling, if it is there and stays} */
  public Optional<Part.Socket> firstSocket() {
    return slots.stream()
        .filter(Slot.Coupling.class::isInstance)
        .map(Slot.Coupling.class::cast)
        .findFirst()
        .flatMap(Slot.Coupling::socket);
  }

  /** Whether a coupling is part of it. */
  boolean hasCoupling() {
    return allSlots().stream().anyMatch(Slot.Coupling.class::isInstance);
  }

  /** Whether a hose is part of it. */
  boolean hasHose() {
    return allSlots().stream().anyMatch(Slot.Hose.class::isInstance);
  }

  /** Whether a hose goes straight to the tool. */
  boolean endsInHose() {
    return slots.get(slots.size() - 1) instanceof Slot.Hose;
  }

  /** Whether a whip hose is the last before the tool. */
  boolean endsInWhipHose() {
    return slots.get(slots.size() - 1) instanceof Slot.Hose hose && hose.isWhip();
  }

  /** {@return whether a lubricator stands in it, or in one of its lines, alone or in one piece with a regulator} */
  public boolean hasLubricator() {
    return allSlots().stream().anyMatch(Layout::isLubricator);
  }

  /** Whether the air in a slot is not oiled by a lubricator that stands elsewhere: behind it, or in another line. */
  boolean isBeforeLubricator(Slot slot) {
    List<Stretch> stretches = stretches();
    List<Slot> way = IntStream.range(0, stretches.get(0).tools())
        .mapToObj(tool -> onTheWay(stretches, tool))
        .filter(slots -> slots.contains(slot))
        .findFirst()
        .orElse(List.of());
    return hasLubricator()
        && way.subList(0, way.indexOf(slot) + 1).stream().noneMatch(Layout::isLubricator);
  }

  private static boolean isLubricator(Slot slot) {
    return (slot instanceof Slot.InLine line && line.kind() == DeviceKind.LUBRICATOR)
        || (slot instanceof Slot.Regulated regulated && regulated.kind().isLubricator());
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Layout that && slots.equals(that.slots) && lines.equals(that.lines);
  }

  @Override
  public int hashCode() {
    return Objects.hash(slots, lines);
  }

  /** {@return the names of its slots, such as "outlet, hose, tool", and the lines behind a splitter} */
  @Override
  public String toString() {
    return String.join(", ", slots.stream().map(Slot::name).toList())
        + (lines.isEmpty()
            ? ""
            : "; " + String.join("; ", lines.stream().map(ToolLine::toString).toList()));
  }
}
