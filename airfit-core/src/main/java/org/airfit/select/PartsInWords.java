package org.airfit.select;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.airfit.run.ElementLoss;
import org.airfit.working.UnitSystem;

/** The parts list of an assembly: why each part is on it, and the pressure that this very part loses. */
final class PartsInWords {

  private PartsInWords() {}

  static List<PartsLine> of(Assembly a, UnitSystem units) {
    Map<Part, List<String>> reasons = new LinkedHashMap<>();
    List<Placed> parts = a.slotParts();
    List<Optional<ElementLoss>> losses = a.losses();
    int joint = 0;
    int placed = 0;
    for (int i = 0; i < parts.size(); i++) {
      Position position = parts.get(i).position();
      String why;
      if (position.isAdapter()) {
        why = "joins " + a.joints().get(joint).where();
      } else {
        why = why(a, placed, units);
        joint += position.isPlug() ? 0 : 1;
        placed++;
      }
      String loss = losses
          .get(i)
          .map(lost -> ", pressure loss " + units.say(lost.drop())
              + (position.isSocket() ? " with its plug" : ""))
          .orElse("");
      reasons.computeIfAbsent(parts.get(i).part(), any -> new ArrayList<>()).add(why + loss);
    }
    return reasons.entrySet().stream()
        .map(entry -> new PartsLine(
            entry.getKey(), entry.getValue().size(), String.join("; ", entry.getValue())))
        .toList();
  }

  /** Why the part at a place of the layout is there. */
  private static String why(Assembly a, int index, UnitSystem units) {
    Placed each = a.placed().get(index);
    if (each.part() instanceof Part.Socket socket) {
      return before(a, index)
          + takes(socket, (Part.Plug) a.placed().get(index + 1).part());
    }
    if (each.part() instanceof Part.Plug plug) {
      return behind(a, index) + goesInto((Part.Socket) a.placed().get(index - 1).part(), plug);
    }
    if (each.part() instanceof Part.Hose hose) {
      return units.say(hose.conduit().length()) + " of " + each.position().noun() + " with "
          + units.sayBore(hose.conduit().bore()) + " of bore";
    }
    return each.position().noun() + " in the line";
  }

  private static String before(Assembly a, int index) {
    return index == 0
        ? "at the outlet: "
        : "on the " + a.placed().get(index - 1).position().noun() + ": ";
  }

  private static String behind(Assembly a, int index) {
    return index == a.placed().size() - 1
        ? "at the tool"
        : "on the " + a.placed().get(index + 1).position().noun();
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
