package org.airfit.select;

import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.airfit.joint.Chain;
import org.airfit.quantity.Length;

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

  private Layout(List<Slot> slots) {
    this.slots = slots;
  }

  /**
   * Obtains a layout.
   *
   * @param slots the slots in the order the air goes
   * @return the layout
   * @throws IllegalArgumentException if there is none, if two bear one name, if a coupling shall have the profile of one
   *     that does not stand before it, or if they could hold more than 63 pieces
   */
  public static Layout of(List<? extends Slot> slots) {
    List<Slot> inRow = List.copyOf(Objects.requireNonNull(slots, "slots"));
    if (inRow.isEmpty()) {
      throw new IllegalArgumentException(
          "slots of a layout must be at least one, were none; say Slot.coupling(…), Slot.hose(…)");
    }
    Set<String> names = new HashSet<>();
    for (Slot slot : inRow) {
      if (!names.add(slot.name())) {
        throw new IllegalArgumentException("names of slots must differ, was \"" + slot.name()
            + "\" again; say which, such as \"" + slot.name() + " 2\"");
      }
    }
    requireCouplingsBefore(inRow);
    int parts =
        inRow.stream().mapToInt(slot -> slot instanceof Slot.Coupling ? 2 : 1).sum();
    int pieces = parts + Chain.MOST_ADAPTERS * (inRow.size() + 1);
    if (pieces > Objective.MOST_PIECES) {
      throw new IllegalArgumentException("slots of a layout must hold at most "
          + Objective.MOST_PIECES + " pieces with " + Chain.MOST_ADAPTERS
          + " adapters at every joint, were " + inRow.size() + " slots with up to " + pieces);
    }
    return new Layout(inRow);
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

  /** {@return the slots in the order the air goes, never empty} */
  public List<Slot> slots() {
    return slots;
  }

  /**
   * Finds a slot.
   *
   * @param name what it is called
   * @return the slot, empty if there is none of that name
   */
  public Optional<Slot> slot(String name) {
    Objects.requireNonNull(name, "name");
    return slots.stream().filter(slot -> slot.name().equals(name)).findFirst();
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
    return slots.stream().anyMatch(Slot.Coupling.class::isInstance);
  }

  /** Whether a hose is part of it. */
  boolean hasHose() {
    return slots.stream().anyMatch(Slot.Hose.class::isInstance);
  }

  /** Whether a hose goes straight to the tool. */
  boolean endsInHose() {
    return slots.get(slots.size() - 1) instanceof Slot.Hose;
  }

  /** Whether a whip hose is the last before the tool. */
  boolean endsInWhipHose() {
    return slots.get(slots.size() - 1) instanceof Slot.Hose hose && hose.isWhip();
  }

  /** Whether a lubricator stands in the line. */
  boolean hasLubricator() {
    return slots.stream().anyMatch(Layout::isLubricator);
  }

  /** Whether a slot stands in front of the first lubricator, which therefore does not oil the air in it. */
  boolean isBeforeLubricator(Slot slot) {
    int first = 0;
    while (first < slots.size() && !isLubricator(slots.get(first))) {
      first++;
    }
    return first < slots.size() && slots.indexOf(slot) < first;
  }

  private static boolean isLubricator(Slot slot) {
    return slot instanceof Slot.InLine line && line.kind() == DeviceKind.LUBRICATOR;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Layout that && slots.equals(that.slots);
  }

  @Override
  public int hashCode() {
    return slots.hashCode();
  }

  /** {@return the names of its slots, such as "outlet, hose, tool"} */
  @Override
  public String toString() {
    return String.join(", ", slots.stream().map(Slot::name).toList());
  }
}
