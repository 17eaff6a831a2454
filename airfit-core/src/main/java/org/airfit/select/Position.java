package org.airfit.select;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.airfit.flow.FlowCapacity;
import org.airfit.flow.FlowElement;
import org.airfit.plant.SupplyRange;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.Range;
import org.jspecify.annotations.Nullable;

/**
 * The place of one part in the run, as far as a rule asks. A coupling has two: its socket and its plug.
 *
 * @param kind what stands there
 * @param slot the slot it belongs to; null of adapters, which stand where they are needed
 * @param isAtOutlet whether it is the first coupling of the run
 * @param isBehindHose whether a hose stands before it
 * @param pressures between which pressures it can stand in front of it; null of adapters, for which the supply's count
 * @param line which line of a job of several tools it belongs to; {@link Stretch#SHARED} in front of the lines
 * @param count how many there are of it: a position of lines that are alike stands for one in each
 */
record Position(
    Kind kind,
    @Nullable Slot slot,
    boolean isAtOutlet,
    boolean isBehindHose,
    @Nullable SupplyRange pressures,
    int line,
    int count) {

  /** What can stand in a run. */
  enum Kind {
    SOCKET,
    PLUG,
    HOSE,
    WHIP_HOSE,
    DEVICE,
    REGULATOR,
    SPLITTER,
    PIPE,
    ADAPTER
  }

  /** What a name holds that tells already that it is a coupling, whatever the trade calls it. */
  private static final List<String> COUPLINGS =
      List.of("coupl", "Coupl", "connect", "Connect", "socket", "Socket");

  /** How a name begins that tells where something stands. */
  private static final List<String> PLACES =
      List.of("at ", "on ", "in ", "by ", "near ", "behind ", "before ", "between ", "under ");

  /** Between two others, wherever it is needed. */
  static final Position ADAPTER =
      new Position(Kind.ADAPTER, null, false, false, null, Stretch.SHARED, /* count= */ 1);

  /** An adapter in a line, or in each of those alike. */
  static Position adapter(int line, int count) {
    return new Position(Kind.ADAPTER, null, false, false, null, line, count);
  }

  /** The positions of a job in the order the air goes; of several tools, one line after another. */
  static List<Position> of(Requirement job) {
    List<Position> positions = new ArrayList<>();
    Map<Integer, Walk> walks = new HashMap<>();
    for (Stretch stretch : job.layout().stretches()) {
      Walk before = walks.get(stretch.before());
      Walk walk = before == null
          ? new Walk(job.pressures(), stretch.line(), stretch.count())
          : new Walk(before, stretch.line(), stretch.count());
      stretch.slots().forEach(walk::add);
      walks.put(stretch.line(), walk);
      positions.addAll(walk.positions);
    }
    return positions;
  }

  /** What is remembered on the way from slot to slot. */
  private static final class Walk {

    private final List<Position> positions = new ArrayList<>();
    private final int line;
    private final int count;
    private boolean isCoupled;
    private boolean isBehindHose;
    private SupplyRange pressures;

    Walk(SupplyRange pressures, int line, int count) {
      this.pressures = pressures;
      this.line = line;
      this.count = count;
    }

    /** Goes on behind another. */
    Walk(Walk before, int line, int count) {
      this(before.pressures, line, count);
      this.isCoupled = before.isCoupled;
      this.isBehindHose = before.isBehindHose;
    }

    void add(Slot slot) {
      if (slot instanceof Slot.Coupling) {
        put(Kind.SOCKET, slot, !isCoupled);
        put(Kind.PLUG, slot, !isCoupled);
        isCoupled = true;
      } else if (slot instanceof Slot.Hose hose) {
        put(hose.isWhip() ? Kind.WHIP_HOSE : Kind.HOSE, slot, false);
        isBehindHose = true;
      } else if (slot instanceof Slot.Regulated regulated) {
        put(Kind.REGULATOR, slot, false);
        pressures = regulated.behind(pressures);
      } else if (slot instanceof Slot.Splitter) {
        put(Kind.SPLITTER, slot, false);
      } else if (slot instanceof Slot.Pipe) {
        put(Kind.PIPE, slot, false);
      } else {
        put(Kind.DEVICE, slot, false);
      }
    }

    private void put(Kind kind, Slot slot, boolean isAtOutlet) {
      positions.add(new Position(kind, slot, isAtOutlet, isBehindHose, pressures, line, count));
    }
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
    if (COUPLINGS.stream().anyMatch(name()::contains)) {
      return name();
    }
    return PLACES.stream().anyMatch(name()::startsWith)
        ? "coupling " + name()
        : name() + " coupling";
  }

  /** How long a hose must be here, as well as it is known. */
  Optional<Range<Length>> reach() {
    return slot instanceof Slot.Hose hose ? Optional.of(hose.reachRange()) : Optional.empty();
  }

  /** How long a hose may be here at most; empty where it may be any. */
  Optional<Length> longest() {
    return slot instanceof Slot.Hose hose ? hose.longest() : Optional.empty();
  }

  /** Whether a hose of one length is looked for here, neither longer nor shorter, and it is this. */
  boolean isOfLength(Length length) {
    return slot instanceof Slot.Hose hose
        && hose.reachRange().equals(Range.exactly(length))
        && hose.atMost().filter(length::equals).isPresent();
  }

  /** At which outlet of a splitter the way goes on, of several lines the first. */
  int outlet() {
    return slot instanceof Slot.Splitter splitter ? splitter.outlet() : 0;
  }

  /** What others take behind a part that stands here; empty where nobody does. */
  Optional<Range<FreeAirFlow>> others() {
    return slot instanceof Slot.Splitter splitter ? splitter.others() : Optional.empty();
  }

  boolean isRegulator() {
    return kind == Kind.REGULATOR;
  }

  /** What a part does to the air here: a regulator holds what its slot sets it to. Null of a plug. */
  @Nullable
  FlowElement element(Part part, AbsolutePressure atmosphere, Known known) {
    return part instanceof Part.Regulator regulator
        ? regulated(regulator, known.of(regulator.capacityRange()), known, atmosphere)
            .orElse(null)
        : SearchAir.element(part, known);
  }

  /** What a regulator of this capacity does to the air here; empty where the slot is not one of a regulator. */
  Optional<FlowElement> regulated(
      Part.Regulator regulator, FlowCapacity capacity, Known known, AbsolutePressure atmosphere) {
    return setting()
        .map(known::ofSetting)
        .map(set -> regulator
            .range()
            .element(capacity, known.ofDroop(regulator.range(), set), set, atmosphere));
  }

  /** What a regulator here is set to; empty where the slot is not one of a regulator. */
  Optional<Range<GaugePressure>> setting() {
    return slot instanceof Slot.Regulated at ? Optional.of(at.setRange()) : Optional.empty();
  }

  /** Whether it is known exactly what a regulator here is set to; so it is where none stands. */
  boolean isExact() {
    return setting().map(Range::isExact).orElse(true);
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
      case REGULATOR -> slot instanceof Slot.Regulated at ? at.kind().toString() : "regulator";
      case SPLITTER -> "splitter";
      case PIPE -> "pipe";
      case ADAPTER -> "adapter";
    };
  }
}
