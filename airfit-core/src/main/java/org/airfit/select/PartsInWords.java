package org.airfit.select;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.airfit.run.ElementLoss;
import org.airfit.working.UnitSystem;

/** The parts of an assembly as lines of a bill: why each is on it, and the pressure that this very part loses. */
final class PartsInWords {

  private final Assembly a;
  private final UnitSystem units;

  private PartsInWords(Assembly a, UnitSystem units) {
    this.a = a;
    this.units = units;
  }

  static List<BillLine> of(Assembly a, UnitSystem units) {
    return new PartsInWords(a, units).lines();
  }

  private List<BillLine> lines() {
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
        why = why(placed);
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
    List<BillLine> lines = new ArrayList<>();
    reasons.forEach((part, why) -> lines.add(new BillLine(
        part instanceof Part.Adapter ? BillLine.Kind.ADAPTER : BillLine.Kind.PART,
        part.facts().name(),
        Optional.of(part.facts()),
        why.size(),
        String.join("; ", why),
        Optional.empty())));
    return lines;
  }

  /** Why the part at a place of the layout is there. */
  private String why(int index) {
    Placed each = a.placed().get(index);
    if (each.part() instanceof Part.Socket socket) {
      return before(index) + takes(socket, (Part.Plug) a.placed().get(index + 1).part());
    }
    if (each.part() instanceof Part.Plug plug) {
      return behind(index) + goesInto((Part.Socket) a.placed().get(index - 1).part(), plug);
    }
    if (each.part() instanceof Part.Hose hose) {
      return units.say(hose.shortest()) + " of " + each.position().noun() + " with "
          + units.sayBore(hose.conduit().bore()) + " of bore";
    }
    return each.position().noun() + " in the line";
  }

  private String before(int index) {
    return index == 0
        ? "at the outlet: "
        : "on the " + a.placed().get(index - 1).position().noun() + ": ";
  }

  private String behind(int index) {
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
