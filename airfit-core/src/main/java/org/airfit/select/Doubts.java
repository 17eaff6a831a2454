package org.airfit.select;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.run.Run;

/** What is not known exactly of parts in their places and decides whether the tool has its air. */
final class Doubts {

  private Doubts() {}

  /** Those of an assembly, what settles it alone first, then what makes most difference; none where it is settled. */
  static List<Doubt> of(Assembly assembly) {
    if (!assembly.isAirOpen()) {
      return List.of();
    }
    return assembly.ways().isEmpty() ? unknowns(assembly).doubts() : ofSeveral(assembly);
  }

  /** Those of each way of which it depends whether its tool has its air, each once. */
  private static List<Doubt> ofSeveral(Assembly assembly) {
    Set<Doubt> all = new LinkedHashSet<>();
    for (Assembly way : assembly.ways()) {
      String of = way.requirement().way().map(name -> " (" + name + ")").orElse("");
      Doubts.of(way).forEach(doubt -> all.add(doubt.on(of)));
    }
    return List.copyOf(all);
  }

  /** Up to which droop of the supply's regulator there is enough; empty where that does not decide it alone. */
  static Optional<PressureDrop> enoughDroop(Assembly way) {
    return way.isAirOpen() ? unknowns(way).enoughDroop() : Optional.empty();
  }

  private static Unknowns unknowns(Assembly assembly) {
    Requirement job = assembly.requirement();
    Run worst = assembly.run();
    Unknowns unknowns = new Unknowns(job, worst, lastRegulator(assembly));
    unknowns.ofJob(assembly::runFrom);
    for (Placed placed : assembly.placed()) {
      placed
          .position()
          .others()
          .ifPresent(air -> unknowns.others(
              placed.position().name(),
              air,
              flow -> assembly.runWithOthers(placed.position(), flow)));
    }
    elements(assembly).forEach((name, placed) -> part(unknowns, name, placed, assembly));
    return unknowns;
  }

  private static void part(Unknowns unknowns, String name, Placed placed, Assembly assembly) {
    if (placed.part() instanceof Part.Regulator regulator) {
      unknowns.regulator(
          name,
          regulator.range(),
          placed.position().setting().orElseThrow(),
          mostThrough(placed, assembly));
    } else {
      placed.part().line().ifPresent(line -> unknowns.conduit(name, line));
      placed.part().passage().ifPresent(passage -> unknowns.capacity(name, passage));
    }
  }

  /** What the last regulator on the way to a tool is called in its run; empty where none stands on it. */
  private static Optional<String> lastRegulator(Assembly assembly) {
    return elements(assembly).entrySet().stream()
        .filter(element -> element.getValue().part() instanceof Part.Regulator)
        .map(Map.Entry::getKey)
        .reduce((any, behind) -> behind);
  }

  /** The parts that are elements of the run, by what they are called there, in its order; a plug is none. */
  private static Map<String, Placed> elements(Assembly assembly) {
    Map<String, Placed> elements = new LinkedHashMap<>();
    int element = assembly.requirement().pipes().size();
    for (Placed placed : assembly.slotParts()) {
      if (!placed.position().isPlug()) {
        elements.put(assembly.run().names().get(element++), placed);
      }
    }
    return elements;
  }

  /** The most air that goes through a part: that of the tool, and of all others that draw at it or behind it. */
  private static FreeAirFlow mostThrough(Placed part, Assembly assembly) {
    List<Placed> placed = assembly.placed();
    return Flows.sum(Stream.concat(
            Stream.of(assembly.requirement().demandRange()),
            placed.subList(placed.indexOf(part), placed.size()).stream()
                .flatMap(behind -> behind.position().others().stream())))
        .most();
  }
}
