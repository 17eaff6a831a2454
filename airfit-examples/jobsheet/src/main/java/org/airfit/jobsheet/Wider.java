package org.airfit.jobsheet;

import java.util.Optional;
import java.util.stream.Stream;
import org.airfit.joint.HoseSize;
import org.airfit.joint.Tube;
import org.airfit.quantity.Length;
import org.airfit.working.UnitSystem;

/**
 * What a pipe or hose of a network is changed for: the next size that a shop keeps, where the bore is that of a size.
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

  /** How much wider a bore is tried that is none of a size. */
  private static final double OTHERWISE = 1.25;

  static Wider than(Length bore, UnitSystem units) {
    return pipe(bore, units).or(() -> hose(bore, units)).orElseGet(() -> {
      Length wider = bore.times(OTHERWISE);
      return new Wider(wider, "a bore of " + new NetworkAmounts(units).bore(wider));
    });
  }

  private static Optional<Wider> pipe(Length bore, UnitSystem units) {
    boolean known = Tube.all(Tube.Kind.STEEL_PIPE).stream()
        .filter(tube -> tube.type().equals(SCHEDULE))
        .anyMatch(
            tube -> Math.abs(tube.bore().metres() - bore.metres()) < SAME_PIPE * bore.metres());
    return known
        ? Tube.nextSizeUp(Tube.Kind.STEEL_PIPE, SCHEDULE, bore.times(1.0 + SAME_PIPE))
            .map(tube -> new Wider(
                tube.bore(),
                "a " + tube.name() + " pipe of schedule " + SCHEDULE + " ("
                    + new NetworkAmounts(units).bore(tube.bore()) + ")"))
        : Optional.empty();
  }

  private static Optional<Wider> hose(Length bore, UnitSystem units) {
    boolean known = Stream.of(UnitSystem.values())
        .flatMap(system -> HoseSize.all(system).stream())
        .anyMatch(size -> Math.abs(size.bore().millimetres() - bore.millimetres()) < SAME_HOSE_MM);
    return known
        ? HoseSize.widerThan(bore, units).stream()
            .findFirst()
            .map(size -> new Wider(size.bore(), "a " + size))
        : Optional.empty();
  }
}
