package org.airfit.select;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.airfit.quantity.LengthUnit;
import org.airfit.quantity.PressureUnit;
import org.airfit.run.ElementLoss;

/** The parts list of an assembly: why each part is on it, and the pressure that this very part loses. */
final class PartsInWords {

  private PartsInWords() {}

  static List<PartsLine> of(Assembly a) {
    Map<Part, List<String>> reasons = new LinkedHashMap<>();
    List<SlotPart> parts = a.slotParts();
    List<Optional<ElementLoss>> losses = a.losses();
    int joint = 0;
    for (int i = 0; i < parts.size(); i++) {
      Slot slot = parts.get(i).slot();
      joint = Math.max(joint, jointBehind(slot));
      String why = slot == Slot.ADAPTER ? "joins " + a.joints().get(joint).where() : why(a, slot);
      String loss = losses
          .get(i)
          .map(lost -> ", pressure loss " + lost.drop().format(PressureUnit.BAR, 2)
              + (slot.isSocket() ? " with its plug" : ""))
          .orElse("");
      reasons.computeIfAbsent(parts.get(i).part(), any -> new ArrayList<>()).add(why + loss);
    }
    return reasons.entrySet().stream()
        .map(entry -> new PartsLine(
            entry.getKey(), entry.getValue().size(), String.join("; ", entry.getValue())))
        .toList();
  }

  /** The joint that adapters behind a slot belong to. */
  private static int jointBehind(Slot slot) {
    return switch (slot) {
      case HOSE_PLUG -> 1;
      case HOSE -> 2;
      case TOOL_PLUG -> 3;
      case OUTLET_SOCKET, TOOL_SOCKET, ADAPTER -> 0;
    };
  }

  private static String why(Assembly a, Slot slot) {
    return switch (slot) {
      case OUTLET_SOCKET -> "at the outlet: " + takes(a.outletSocket(), a.hosePlug());
      case HOSE_PLUG -> "on the hose" + goesInto(a.outletSocket(), a.hosePlug());
      case HOSE ->
        a.hose().conduit().length().format(LengthUnit.METRE) + " of hose with "
            + a.hose().conduit().bore().format(LengthUnit.MILLIMETRE) + " of bore";
      case TOOL_SOCKET -> "on the hose: " + takes(a.toolSocket(), a.toolPlug());
      case TOOL_PLUG -> "at the tool" + goesInto(a.toolSocket(), a.toolPlug());
      case ADAPTER -> throw new IllegalStateException("an adapter is told by its joint");
    };
  }

  private static boolean mates(Part.Socket socket, Part.Plug plug) {
    return socket.profiles().contains(plug.profile());
  }

  private static String takes(Part.Socket socket, Part.Plug plug) {
    return (mates(socket, plug) ? "takes profile " : "does not take profile ") + plug.profile();
  }

  private static String goesInto(Part.Socket socket, Part.Plug plug) {
    return (mates(socket, plug) ? ", into " : ", does not go into ") + socket.name();
  }
}
