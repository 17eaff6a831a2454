package org.airfit.select;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.airfit.flow.FlowCapacity;
import org.airfit.flow.FlowElement;
import org.airfit.plant.RegulatorElement;
import org.airfit.plant.SupplyRange;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.jspecify.annotations.Nullable;

/**
 * The place of one part in the run, as far as a rule asks. A coupling has two: its socket and its plug.
 *
 * @param kind what stands there
 * @param slot the slot it belongs to; null of adapters, which stand where they are needed
 * @param isAtOutlet whether it is the first coupling of the run
 * @param isBehindHose whether a hose stands before it
 * @param pressures between which pressures it can stand in front of it; null of adapters, for which the supply's count
 */
record Position(
    Kind kind,
    @Nullable Slot slot,
    boolean isAtOutlet,
    boolean isBehindHose,
    @Nullable SupplyRange pressures) {

  /** What can stand in a run. */
  enum Kind {
    SOCKET,
    PLUG,
    HOSE,
    WHIP_HOSE,
    DEVICE,
    REGULATOR,
    ADAPTER
  }

  /** How a name begins that tells where something stands. */
  private static final List<String> PLACES =
      List.of("at ", "on ", "in ", "by ", "near ", "behind ", "before ", "between ", "under ");

  /** Between two others, wherever it is needed. */
  static final Position ADAPTER = new Position(Kind.ADAPTER, null, false, false, null);

  /** The positions of a job in the order the air goes. */
  static List<Position> of(Requirement job) {
    List<Position> positions = new ArrayList<>();
    boolean coupled = false;
    boolean behindHose = false;
    SupplyRange pressures = job.pressures();
    for (Slot slot : job.layout().slots()) {
      if (slot instanceof Slot.Coupling) {
        positions.add(new Position(Kind.SOCKET, slot, !coupled, behindHose, pressures));
        positions.add(new Position(Kind.PLUG, slot, !coupled, behindHose, pressures));
        coupled = true;
      } else if (slot instanceof Slot.Hose hose) {
        Kind kind = hose.isWhip() ? Kind.WHIP_HOSE : Kind.HOSE;
        positions.add(new Position(kind, slot, false, behindHose, pressures));
        behindHose = true;
      } else if (slot instanceof Slot.Regulated regulated) {
        positions.add(new Position(Kind.REGULATOR, slot, false, behindHose, pressures));
        pressures = regulated.behind(pressures);
      } else {
        positions.add(new Position(Kind.DEVICE, slot, false, behindHose, pressures));
      }
    }
    return positions;
  }

  /** Whether more than a part is rated for can stand in front of it. */
  boolean canExceed(GaugePressure rating, Requirement job) {
    return (pressures == null ? job.pressures() : pressures).canExceed(rating);
  }

  boolean isSocket() {
    return kind == Kind.SOCKET;
  }

  boolean isPlug() {
    return kind == Kind.PLUG;
  }

  boolean isCoupling() {
    return isSocket() || isPlug();
  }

  boolean isHose() {
    return kind == Kind.HOSE || kind == Kind.WHIP_HOSE;
  }

  boolean isAdapter() {
    return kind == Kind.ADAPTER;
  }

  /** What its slot is called. */
  String name() {
    return slot == null ? "adapter" : slot.name();
  }

  /** What a coupling is called in a sentence: one named "at the bench" is the coupling at the bench. */
  String called() {
    if (name().contains("coupling")) {
      return name();
    }
    return PLACES.stream().anyMatch(name()::startsWith)
        ? "coupling " + name()
        : name() + " coupling";
  }

  /** How long a hose must be here. */
  Optional<Length> reach() {
    return slot instanceof Slot.Hose hose ? Optional.of(hose.reach()) : Optional.empty();
  }

  boolean isRegulator() {
    return kind == Kind.REGULATOR;
  }

  /** What a part does to the air here: a regulator holds what its slot sets it to. Null of a plug. */
  @Nullable
  FlowElement element(Part part, AbsolutePressure atmosphere, Known known) {
    return part instanceof Part.Regulator regulator
        ? regulated(regulator, known.of(regulator.capacityRange()), atmosphere).orElse(null)
        : SearchAir.element(part, known);
  }

  /** What a regulator of this capacity does to the air here; empty where the slot is not one of a regulator. */
  Optional<FlowElement> regulated(
      Part.Regulator regulator, FlowCapacity capacity, AbsolutePressure atmosphere) {
    return slot instanceof Slot.Regulated at
        ? Optional.of(RegulatorElement.of(capacity, at.set().absolute(atmosphere))
            .withDroop(regulator.droop(), regulator.atFlow()))
        : Optional.empty();
  }

  /** The profile that a coupling must have here. */
  Optional<String> profile(Requirement job) {
    return slot instanceof Slot.Coupling coupling
        ? coupling.profile().or(job::profile)
        : Optional.empty();
  }

  /** The coupling of which one here must have the profile, by name. */
  Optional<String> sameAs() {
    return slot instanceof Slot.Coupling coupling ? coupling.sameAs() : Optional.empty();
  }

  /** What stands here, in a word. */
  String noun() {
    return switch (kind) {
      case SOCKET -> "socket";
      case PLUG -> "plug";
      case HOSE -> "hose";
      case WHIP_HOSE -> "whip hose";
      case DEVICE -> slot instanceof Slot.InLine line ? line.kind().toString() : "part";
      case REGULATOR -> "regulator";
      case ADAPTER -> "adapter";
    };
  }
}
