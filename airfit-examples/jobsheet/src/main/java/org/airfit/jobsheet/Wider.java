package org.airfit.jobsheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.airfit.joint.HoseSize;
import org.airfit.joint.Tube;
import org.airfit.quantity.Length;
import org.airfit.working.UnitSystem;

/**
 * What a pipe or hose of a network is changed for: a size that a shop keeps, where the bore is that of a size.
 *
 * @param bore the bore of it
 * @param words what to ask for, such as "a 13 mm hose"
 */
record Wider(Length bore, String words) {

  /** The wall of most steel pipe for air. */
  private static final String SCHEDULE = "40";

  /** A bore is that of a pipe where they differ by less than this share; our choice, as is the next. */
  private static final double SAME_PIPE = 0.01;

  private static final double SAME_HOSE_MM = 0.2;

  /** By how much each bore is wider than the one before, where today's is none of a size. */
  private static final double OTHERWISE = 1.25;

  /** So many such bores are tried. */
  private static final int OTHERS = 5;

  /** All that are wider than a bore, the next first. */
  static List<Wider> all(Length bore, UnitSystem units) {
    if (isPipe(bore)) {
      return Tube.all(Tube.Kind.STEEL_PIPE).stream()
          .filter(tube -> tube.type().equals(SCHEDULE))
          .filter(tube -> tube.bore().metres() > bore.metres() * (1.0 + SAME_PIPE))
          .sorted(Comparator.comparing(Tube::bore))
          .map(tube -> new Wider(
              tube.bore(),
              "a " + tube.name() + " in pipe of schedule " + SCHEDULE + " (bore "
                  + new NetworkAmounts(units).bore(tube.bore()) + ")"))
          .toList();
    }
    if (isHose(bore)) {
      List<Wider> hoses = HoseSize.widerThan(bore, units).stream()
          .map(size -> new Wider(size.bore(), "a " + size))
          .toList();
      return hoses.isEmpty() ? others(bore, units) : hoses;
    }
    return others(bore, units);
  }

  private static boolean isPipe(Length bore) {
    return Tube.all(Tube.Kind.STEEL_PIPE).stream()
        .filter(tube -> tube.type().equals(SCHEDULE))
        .anyMatch(
            tube -> Math.abs(tube.bore().metres() - bore.metres()) < SAME_PIPE * bore.metres());
  }

  private static boolean isHose(Length bore) {
    return Stream.of(UnitSystem.values())
        .flatMap(system -> HoseSize.all(system).stream())
        .anyMatch(size -> Math.abs(size.bore().millimetres() - bore.millimetres()) < SAME_HOSE_MM);
  }

  private static List<Wider> others(Length bore, UnitSystem units) {
    List<Wider> wider = new ArrayList<>();
    Length next = bore;
    for (int i = 0; i < OTHERS; i++) {
      next = next.times(OTHERWISE);
      wider.add(new Wider(next, "a bore of " + new NetworkAmounts(units).bore(next)));
    }
    return wider;
  }
}
