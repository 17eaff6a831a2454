package org.airfit.select;

import java.util.Optional;
import org.airfit.quantity.GaugePressure;

/** The part of a slot that is there and of which a topic asks, and the slot with what was answered of it. */
final class PartThere {

  private PartThere() {}

  /** The part that a topic asks of in a slot; empty where none of that kind is there. */
  static Optional<Part> of(Topic topic, Slot slot) {
    return switch (topic) {
      case HOSE_BORE, HOSE_LENGTH, HOSE_RATING ->
        slot instanceof Slot.Hose hose ? hose.hose().map(Part.class::cast) : Optional.empty();
      case SOCKET_RATING ->
        slot instanceof Slot.Coupling coupling
            ? coupling.socket().map(Part.class::cast)
            : Optional.empty();
      case PLUG_RATING ->
        slot instanceof Slot.Coupling coupling
            ? coupling.plug().map(Part.class::cast)
            : Optional.empty();
      case PART_RATING -> another(slot);
      default -> Optional.empty();
    };
  }

  /** What is there and is no half of a coupling, hose or pipe. */
  private static Optional<Part> another(Slot slot) {
    if (slot instanceof Slot.Regulated regulated) {
      return regulated.regulator().map(Part.class::cast);
    }
    if (slot instanceof Slot.InLine line) {
      return line.device().map(Part.class::cast);
    }
    return slot instanceof Slot.Splitter splitter
        ? splitter.splitter().map(Part.class::cast)
        : Optional.empty();
  }

  /** A slot with a part that is there rated as is printed on it, or as it was told where that is lower. */
  static Slot rated(Topic topic, Slot slot, GaugePressure rating) {
    Part there = of(topic, slot)
        .orElseThrow(() -> new IllegalArgumentException("part that is asked about must be one"
            + " that is there, was \"" + slot.name() + "\", which is to be chosen"));
    return with(slot, there.withFacts(there.facts().rated(rating)));
  }

  private static Slot with(Slot slot, Part part) {
    if (part instanceof Part.Socket socket) {
      return ((Slot.Coupling) slot).withSocket(socket);
    }
    if (part instanceof Part.Plug plug) {
      return ((Slot.Coupling) slot).withPlug(plug);
    }
    if (part instanceof Part.Hose hose) {
      return ((Slot.Hose) slot).with(hose);
    }
    if (part instanceof Part.Regulator regulator) {
      return ((Slot.Regulated) slot).with(regulator);
    }
    return part instanceof Part.Device device
        ? ((Slot.InLine) slot).with(device)
        : ((Slot.Splitter) slot).with((Part.Splitter) part);
  }
}
