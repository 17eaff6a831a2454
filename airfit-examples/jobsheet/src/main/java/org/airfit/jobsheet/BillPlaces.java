package org.airfit.jobsheet;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.airfit.joint.End;
import org.airfit.select.BillLine;
import org.airfit.select.Joint;
import org.airfit.select.Part;
import org.airfit.select.Proposal;
import org.airfit.select.Slot;
import org.airfit.working.UnitSystem;

/** Where the lines of a bill go, in a few words: at which coupling, or between which ends. */
final class BillPlaces {

  /** What a hose is called that the job gives no name: that its part is a hose needs no saying. */
  private static final Set<String> UNNAMED = Set.of("hose", "whip hose");

  private BillPlaces() {}

  /** The place of a line; empty where its name says all. */
  static String of(BillLine line, Proposal proposal, UnitSystem units) {
    Set<String> places = new LinkedHashSet<>();
    if (line.kind() == BillLine.Kind.PART) {
      List<Slot> slots = proposal.requirement().layout().allSlots();
      boolean isOfMany = line.quantity() > 1 && manyPlaces(line, proposal, slots);
      boolean manyHoses = slots.stream().filter(Slot.Hose.class::isInstance).count() > 1;
      for (Slot slot : slots) {
        if (slot instanceof Slot.Coupling coupling && isIn(line, proposal, coupling)) {
          places.add(coupling.name());
        } else if (slot instanceof Slot.Hose hose
            && manyHoses
            && isOf(line, proposal.hose(hose.name()))
            && (isOfMany || !UNNAMED.contains(hose.name()))) {
          places.add(hose.name());
        }
      }
      places.addAll(settings(line, proposal, units));
    } else if (line.kind() == BillLine.Kind.ADAPTER) {
      for (Joint joint : proposal.joints()) {
        if (joint.adapters().stream().anyMatch(adapter -> isOf(line, adapter))) {
          places.add(between(joint));
        }
      }
    }
    return places.isEmpty() ? otherwise(line) : String.join("; ", places);
  }

  /** Whether a hose stands in places of which at least one has a name of its own: then all are told. */
  private static boolean manyPlaces(BillLine line, Proposal proposal, List<Slot> slots) {
    return slots.stream()
        .anyMatch(slot -> slot instanceof Slot.Hose hose
            && isOf(line, proposal.hose(hose.name()))
            && !UNNAMED.contains(hose.name()));
  }

  /** To what regulators are set, each with its name where it has one of its own. */
  private static Set<String> settings(BillLine line, Proposal proposal, UnitSystem units) {
    Set<String> settings = new LinkedHashSet<>();
    for (Slot slot : proposal.requirement().layout().allSlots()) {
      if (slot instanceof Slot.Regulated regulated
          && isOf(line, proposal.regulator(regulated.name()))) {
        settings.add((slot.name().equals("regulator") ? "" : slot.name() + ", ") + "set to "
            + units.sayRange(regulated.setRange()));
      }
    }
    return settings;
  }

  private static boolean isIn(BillLine line, Proposal proposal, Slot.Coupling coupling) {
    return isOf(line, proposal.socket(coupling.name()))
        || isOf(line, proposal.plug(coupling.name()));
  }

  private static boolean isOf(BillLine line, Part part) {
    return line.facts().filter(part.facts()::equals).isPresent();
  }

  /** What a joint joins, each side with its end, the one towards the supply first. */
  static String between(Joint joint) {
    return between(joint, "");
  }

  /** The same without the line it belongs to, where that is told already. */
  static String between(Joint joint, String line) {
    String where = line.isEmpty() ? joint.where() : joint.where().substring(line.length() + 2);
    List<String> sides = new ArrayList<>(List.of(where.split(" to ", 2)));
    return sides.size() == 2
        ? side(sides.get(0), joint.upstream()) + " to " + side(sides.get(1), joint.downstream())
        : where + ": " + joint.upstream().label() + " to " + joint.downstream().label();
  }

  private static String side(String name, End end) {
    return name + " (" + end.label() + ")";
  }

  /** What goes with the parts says why in the first words of its reason, of several places once for each of them. */
  private static String otherwise(BillLine line) {
    if (line.kind() == BillLine.Kind.PART) {
      return "";
    }
    Set<String> why = new LinkedHashSet<>();
    String verb = "";
    for (String clause : line.reason().split("; ", -1)) {
      String words = clause.replaceFirst("[;:].*", "");
      String first = words.replaceFirst(" .*", "");
      verb = verb.isEmpty() ? first : verb;
      if (first.equals(verb)) {
        why.add(words);
      }
    }
    return String.join("; ", why);
  }
}
