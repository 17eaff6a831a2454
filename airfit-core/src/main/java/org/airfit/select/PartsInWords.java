package org.airfit.select;

import java.util.ArrayList;
import java.util.HashMap;
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
  private final List<Optional<ElementLoss>> losses;
  private final List<String> nouns;
  private final Map<Part, List<String>> reasons = new LinkedHashMap<>();
  private final Map<Part, Integer> counts = new HashMap<>();
  private int counted;

  private PartsInWords(Assembly a, UnitSystem units) {
    this.a = a;
    this.units = units;
    this.losses = a.losses();
    this.nouns = Nouns.of(a.placed(), a.linesOfPlaced());
  }

  static List<BillLine> of(Assembly a, UnitSystem units) {
    return new PartsInWords(a, units).lines();
  }

  private List<BillLine> lines() {
    int placed = 0;
    for (Assembly.Between each : a.between()) {
      for (Part.Adapter adapter : each.joint().adapters()) {
        add(adapter, ByLine.saying(a, "joins", each.joint().where()), "", each.count());
      }
      boolean isAtTool = each.behind() == null;
      while (!isAtTool
          && placed < a.placed().size()
          && (a.placed().get(placed).equals(each.behind()) || isPlug(placed))) {
        Position position = a.placed().get(placed).position();
        add(
            a.placed().get(placed).part(),
            why(placed),
            position.isSocket() ? " with its plug" : "",
            position.count());
        placed++;
      }
    }
    List<BillLine> lines = new ArrayList<>();
    reasons.forEach((part, why) -> lines.add(new BillLine(
        part instanceof Part.Adapter ? BillLine.Kind.ADAPTER : BillLine.Kind.PART,
        part.facts().name(),
        Optional.of(part.facts()),
        counts.getOrDefault(part, 0),
        ByLine.joined(a, why, "; "),
        Optional.empty())));
    return lines;
  }

  private boolean isPlug(int index) {
    return a.placed().get(index).position().isPlug();
  }

  /** Adds the next part in the order of {@link Assembly#slotParts}, with the pressure that it loses. */
  private void add(Part part, String why, String lostBy, int count) {
    String loss = losses
        .get(counted++)
        .map(lost -> ", pressure loss " + units.say(lost.lost()) + lostBy)
        .orElse("");
    reasons.computeIfAbsent(part, any -> new ArrayList<>()).add(why + loss);
    counts.merge(part, count, Integer::sum);
  }

  /** Why the part at a place of the layout is there. */
  private String why(int index) {
    Placed each = a.placed().get(index);
    String line = a.line(each.position());
    if (each.part() instanceof Part.Socket socket) {
      return line
          + before(index)
          + takes(socket, (Part.Plug) a.placed().get(index + 1).part());
    }
    if (each.part() instanceof Part.Plug plug) {
      return line
          + behind(index)
          + goesInto((Part.Socket) a.placed().get(index - 1).part(), plug);
    }
    if (each.part() instanceof Part.Hose hose) {
      return line + length(hose) + " of " + each.position().noun() + " with " + bore(hose)
          + " of bore";
    }
    if (each.position().slot() instanceof Slot.Regulated regulated) {
      return line + nouns.get(index) + " in the line, set to "
          + units.sayRange(regulated.setRange())
          + otherwiseSet((Part.Regulator) each.part(), regulated)
              .map(taken -> " (" + taken + ")")
              .orElse("");
    }
    return line
        + (each.part() instanceof Part.Splitter
            ? "leads to the lines"
            : nouns.get(index) + " in the line");
  }

  /** What is taken of a regulator whose maker draws its curve at another setting. */
  private Optional<String> otherwiseSet(Part.Regulator there, Slot.Regulated slot) {
    return there
        .curve()
        .flatMap(curve -> curve
            .otherwiseSet(slot.setRange().least(), units)
            .or(() -> curve.otherwiseSet(slot.setRange().most(), units)));
  }

  /** The length of a hose, or between which lengths it is. */
  private String length(Part.Hose hose) {
    String least = units.say(hose.shortest());
    String most = units.say(hose.longest());
    return least.equals(most) ? least : least + " to " + most;
  }

  /** The bore of a hose, or between which sizes it is. */
  private String bore(Part.Hose hose) {
    String least = units.sayBore(hose.conduit().bore());
    String most = units.sayBore(hose.widestBore());
    return least.equals(most) ? least : least + " to " + most;
  }

  private String before(int index) {
    if (index == 0) {
      return "at the outlet: ";
    }
    Position here = a.placed().get(index).position();
    Position there = a.placed().get(index - 1).position();
    return here.line() == there.line()
        ? "on the " + nouns.get(index - 1) + ": "
        : "on the splitter: ";
  }

  private String behind(int index) {
    boolean isLast = index == a.placed().size() - 1
        || a.placed().get(index + 1).position().line()
            != a.placed().get(index).position().line();
    boolean isAtTool =
        isLast && (a.ways().isEmpty() || a.placed().get(index).position().line() != Stretch.SHARED);
    if (!isAtTool) {
      return "on the " + nouns.get(index + 1);
    }
    return hangsOnWhipHose(a.placed().get(index).position())
        ? "on the whip hose of the tool"
        : "at the tool";
  }

  /** Whether the tool at the end of the line of a position has a whip hose of its own. */
  private boolean hangsOnWhipHose(Position position) {
    Requirement job = a.requirement();
    return job.layout().stretches().stream()
        .filter(stretch -> stretch.line() == position.line())
        .map(stretch -> job.toEachTool().get(stretch.firstTool()))
        .anyMatch(Requirement::hasWhipHose);
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
