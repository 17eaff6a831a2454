package org.airfit.select;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
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
   * @param lines the lines behind the splitter, which take its outlets in order; empty where the layout has one tool
   * @return the layout
   * @throws IllegalArgumentException if there is no slot, if lines are told and the last is no splitter or is one with too
   *     few outlets, if it would lead to one tool alone, if two slots bear one name, if a coupling shall have the profile
   *     of one that does not stand before it on its way, or if they could hold more than 127 pieces
   */
  public static Layout of(List<? extends Slot> slots, List<ToolLine> lines) {
    List<Slot> inRow = List.copyOf(Objects.requireNonNull(slots, "slots"));
    List<ToolLine> behind = List.copyOf(Objects.requireNonNull(lines, "lines"));
    if (inRow.isEmpty()) {
      throw new IllegalArgumentException(
          "slots of a layout must be at least one, were none; say Slot.coupling(…), Slot.hose(…)");
    }
    Set<String> names = new HashSet<>();
    requireNewNames(inRow, names);
    behind.forEach(line -> requireNewNames(line.slots(), names));
    requireCouplingsBefore(inRow);
    for (ToolLine line : behind) {
      requireCouplingsBefore(joined(inRow, line.slots()));
    }
    if (!behind.isEmpty()) {
      requireSplitter(inRow.get(inRow.size() - 1), behind);
    }
    int pieces = mostPieces(inRow, behind.isEmpty());
    for (ToolLine line : behind) {
      pieces += line.count() * mostPieces(line.slots(), /* endsAtTool= */ true);
    }
    if (pieces > Objective.MOST_PIECES) {
      throw new IllegalArgumentException("slots of a layout must hold at most "
          + Objective.MOST_PIECES + " pieces with " + Chain.MOST_ADAPTERS
          + " adapters at every joint, were " + inRow.size() + " slots "
          + (behind.isEmpty() ? "" : "and " + behind.size() + " lines behind them ") + "with up to "
          + pieces);
    }
    return new Layout(inRow, behind);
  }

  private static void requireNewNames(List<Slot> slots, Set<String> names) {
    for (Slot slot : slots) {
      if (!names.add(slot.name())) {
        throw new IllegalArgumentException("names of slots must differ, was \"" + slot.name()
            + "\" again; say which, such as \"" + slot.name() + " 2\"");
      }
    }
  }

  private static void requireSplitter(Slot last, List<ToolLine> lines) {
    if (!(last instanceof Slot.Splitter splitter)) {
      throw new IllegalArgumentException(
          "last slot in front of several lines must be a splitter, was " + last
              + "; say Slot.splitter(…)");
    }
    int tools = lines.stream().mapToInt(ToolLine::count).sum();
    if (tools + (splitter.others().isPresent() ? 1 : 0) < 2) {
      throw new IllegalArgumentException("lines behind " + splitter.name()
          + " must be at least two, was one to " + lines.get(0).tool()
          + "; put its slots behind those of the layout, or say what others take");
    }
    int outlets = splitter.splitter().map(there -> there.outlets().size()).orElse(tools);
    if (outlets < splitter.outlet() + tools) {
      throw new IllegalArgumentException("splitter " + splitter.name() + " must have at least "
          + (splitter.outlet() + tools) + " outlets, one for every line, had " + outlets);
    }
  }

  private static List<Slot> joined(List<Slot> one, List<Slot> other) {
    List<Slot> all = new ArrayList<>(one);
    all.addAll(other);
    return List.copyOf(all);
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

  /** The layouts on the way to each tool, with the air of the others; itself where there is one tool. */
  List<Layout> toEachTool() {
    if (lines.isEmpty()) {
      return List.of(this);
    }
    Slot.Splitter splitter = (Slot.Splitter) slots.get(slots.size() - 1);
    List<Layout> ways = new ArrayList<>();
    int outlet = splitter.outlet();
    for (int i = 0; i < lines.size(); i++) {
      List<Slot> way = new ArrayList<>(slots.subList(0, slots.size() - 1));
      way.add(splitter.onTheWay(others(splitter, i), outlet));
      way.addAll(lines.get(i).slots());
      ways.add(new Layout(List.copyOf(way), List.of()));
      outlet += lines.get(i).count();
    }
    return List.copyOf(ways);
  }

  /** What all lines draw but one of a kind. */
  private Range<FreeAirFlow> others(Slot.Splitter splitter, int line) {
    Stream<Range<FreeAirFlow>> tools = IntStream.range(0, lines.size())
        .boxed()
        .flatMap(i -> lines.get(i).drawn(lines.get(i).count() - (i == line ? 1 : 0)));
    return Flows.sum(Stream.concat(splitter.others().stream(), tools));
  }

  /** {@return the slots, and behind them those of the lines to several tools, one line after another} */
  public List<Slot> allSlots() {
    List<Slot> all = new ArrayList<>(slots);
    lines.forEach(line -> all.addAll(line.slots()));
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
        replacing(slots, name, slot),
        lines.stream()
            .map(line -> line.with(replacing(line.slots(), name, slot)))
            .toList());
  }

  /** This with another line in place of one, counted from 0. */
  Layout with(int line, ToolLine other) {
    List<ToolLine> changed = new ArrayList<>(lines);
    changed.set(line, other);
    return of(slots, changed);
  }

  private static List<Slot> replacing(List<Slot> slots, String name, Slot other) {
    return slots.stream().map(slot -> slot.name().equals(name) ? other : slot).toList();
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

  /** {@return whether a lubricator stands in it, or in one of its lines} */
  public boolean hasLubricator() {
    return allSlots().stream().anyMatch(Layout::isLubricator);
  }

  /** Whether the air in a slot is not oiled by a lubricator that stands elsewhere: behind it, or in another line. */
  boolean isBeforeLubricator(Slot slot) {
    List<Slot> way = slots.contains(slot)
        ? slots
        : lines.stream()
            .map(line -> joined(slots, line.slots()))
            .filter(joined -> joined.contains(slot))
            .findFirst()
            .orElse(List.of());
    return hasLubricator()
        && way.subList(0, way.indexOf(slot) + 1).stream().noneMatch(Layout::isLubricator);
  }

  private static boolean isLubricator(Slot slot) {
    return slot instanceof Slot.InLine line && line.kind() == DeviceKind.LUBRICATOR;
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
