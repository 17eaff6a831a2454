package org.airfit.network;

import java.util.Objects;
import java.util.Optional;
import java.util.function.IntPredicate;
import org.airfit.flow.FlowCapacity;
import org.airfit.internal.Seconds;
import org.airfit.plant.RegulatorElement;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.ReferenceState;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Volume;

/**
 * Something changed in a plant, and the day gone through again with it.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class DayChange {

  /** What is changed. */
  public enum Kind {
    /** The volume of the last receiver. */
    RECEIVER("last receiver"),
    /** Cut-in and cut-out of all compressors. */
    BANDS("bands of the compressors"),
    /** A regulator between the last receiver and the header. */
    REGULATOR("regulator at the header");

    private final String words;

    Kind(String words) {
      this.words = words;
    }

    /** {@return it in words, such as "last receiver"} */
    @Override
    public String toString() {
      return words;
    }
  }

  /** A receiver so many times as large is not looked beyond: our choice. */
  private static final double LARGEST = 64.0;

  /** How fine bands and regulators are set [Pa]: our choice. */
  static final double STEP = 5.0e3;

  /** Bands are raised by at most so many steps. */
  private static final int MOST_STEPS = 60;

  private static final double VALVE = 4.0;

  private static final double VALVE_CRITICAL_RATIO = 0.3;

  private record Values(Kind kind, PlantDay day, DayResult result) {}

  private final Values values;

  private DayChange(Kind kind, PlantDay day, DayResult result) {
    this.values = new Values(
        Objects.requireNonNull(kind, "kind"), Objects.requireNonNull(day, "day"), result);
  }

  private static DayChange of(Kind kind, PlantDay day) {
    return new DayChange(kind, day, day.simulate());
  }

  /**
   * Finds the last receiver with which no user falls below its need, by going through the day with each that is tried.
   *
   * @param day the plant
   * @return what came of it, of the smallest that does to two digits; of one 64 times as large where not even that
   *     does; empty where no user falls below its need now
   * @throws java.util.concurrent.CancellationException if the thread was interrupted
   */
  public static Optional<DayChange> largerReceiver(PlantDay day) {
    Objects.requireNonNull(day, "day");
    if (!day.simulate().isShort()) {
      return Optional.empty();
    }
    double now = day.receivers().get(day.receivers().size() - 1).volume().cubicMetres();
    DayChange most = ofVolume(day, LARGEST * now);
    if (most.result().isShort()) {
      return Optional.of(most);
    }
    double tooSmall = now;
    double enough = LARGEST * now;
    while (enough > 1.02 * tooSmall) {
      double middle = Math.sqrt(tooSmall * enough);
      if (ofVolume(day, middle).result().isShort()) {
        tooSmall = middle;
      } else {
        enough = middle;
      }
    }
    double digit = Math.pow(10.0, Math.floor(Math.log10(enough)) - 1.0);
    double rounded = digit * Math.ceil(enough / digit - 1.0e-9);
    DayChange found = ofVolume(day, rounded);
    while (found.result().isShort() && rounded < LARGEST * now) {
      rounded += digit;
      found = ofVolume(day, rounded);
    }
    return Optional.of(found);
  }

  private static DayChange ofVolume(PlantDay day, double cubicMetres) {
    return of(Kind.RECEIVER, day.withLastReceiver(Volume.ofCubicMetres(cubicMetres)));
  }

  /**
   * Finds how far all bands must be raised so that no user falls below its need, or may be lowered where none does now,
   * in steps of 0.05 bar, by going through the day with each that is tried.
   *
   * @param day the plant
   * @return what came of it, of the least step up or the last step down; of 3 bar up where not even that does; empty
   *     where the bands may not be lowered by a step, or there is no compressor
   * @throws java.util.concurrent.CancellationException if the thread was interrupted
   */
  public static Optional<DayChange> movedBands(PlantDay day) {
    Objects.requireNonNull(day, "day");
    Optional<GaugePressure> cutIn = day.lowestCutIn();
    if (cutIn.isEmpty()) {
      return Optional.empty();
    }
    if (day.simulate().isShort()) {
      int steps =
          least(MOST_STEPS, step -> !day.withBandsMoved(step * STEP).simulate().isShort());
      return Optional.of(of(Kind.BANDS, day.withBandsMoved(Math.min(MOST_STEPS, steps) * STEP)));
    }
    double lowest = cutIn.get().pascals();
    for (LineReceiver receiver : day.receivers()) {
      lowest = Math.min(lowest, receiver.start().pascals());
    }
    int room = Math.min(MOST_STEPS, (int) Math.ceil(lowest / STEP) - 1);
    int tooLow = least(room, step -> day.withBandsMoved(-step * STEP).simulate().isShort());
    return tooLow <= 1
        ? Optional.empty()
        : Optional.of(of(Kind.BANDS, day.withBandsMoved(-(tooLow - 1) * STEP)));
  }

  /** The least number from 1 to a largest at which something holds that holds from there on; one more where none does. */
  private static int least(int largest, IntPredicate holds) {
    int not = 0;
    int does = largest + 1;
    while (does - not > 1) {
      int middle = (not + does) >>> 1;
      if (holds.test(middle)) {
        does = middle;
      } else {
        not = middle;
      }
    }
    return does;
  }

  /**
   * Finds what a regulator between the last receiver and the header saves, set as low as the users allow in steps of 0.05
   * bar, by going through the day with each setting that is tried. Its valve chokes at four times what all users take
   * together, our choice.
   *
   * @param day the plant
   * @return what came of it; empty where there is a regulator already, no user tells what it needs, or every setting
   *     leaves some user longer without its need than now
   * @throws java.util.concurrent.CancellationException if the thread was interrupted
   */
  public static Optional<DayChange> regulatedHeader(PlantDay day) {
    Objects.requireNonNull(day, "day");
    if (day.regulator().isPresent()
        || day.uses().stream().allMatch(use -> use.need().isEmpty())) {
      return Optional.empty();
    }
    double most = day.uses().stream()
        .mapToDouble(use -> use.tool().rated().massFlow().kilogramsPerSecond())
        .sum();
    double highest = day.receivers().stream()
        .mapToDouble(receiver -> receiver.start().pascals())
        .max()
        .orElse(0.0);
    double cutIn = day.lowestCutIn().map(GaugePressure::pascals).orElse(highest);
    double conductance = VALVE
        * most
        / (ReferenceState.ANR.density().kilogramsPerCubicMetre()
            * (Math.min(cutIn, highest) + day.atmosphere().pascals()));
    FlowCapacity valve = FlowCapacity.of(
        SonicConductance.ofCubicMetresPerSecondPascal(conductance), VALVE_CRITICAL_RATIO);
    double shortNow = shortSeconds(day.simulate());
    int room = Math.max(1, (int) Math.ceil(Math.max(cutIn, highest) / STEP));
    int set = least(
        room,
        step -> shortSeconds(day.withRegulator(set(day, valve, step)).simulate())
            <= shortNow + DayResult.MOMENT);
    return set > room
        ? Optional.empty()
        : Optional.of(of(Kind.REGULATOR, day.withRegulator(set(day, valve, set))));
  }

  private static RegulatorElement set(PlantDay day, FlowCapacity valve, int step) {
    return RegulatorElement.of(
        valve, GaugePressure.ofPascals(step * STEP).absolute(day.atmosphere()));
  }

  private static double shortSeconds(DayResult result) {
    return result.uses().stream().mapToDouble(use -> Seconds.of(use.below())).sum();
  }

  /** {@return what is changed} */
  public Kind kind() {
    return values.kind;
  }

  /** {@return the plant with the change} */
  public PlantDay day() {
    return values.day;
  }

  /** {@return what came of the day with it} */
  public DayResult result() {
    return values.result;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof DayChange that && values.equals(that.values);
  }

  @Override
  public int hashCode() {
    return values.hashCode();
  }

  /** {@return the change in one line, such as "last receiver changed: no user below its need"} */
  @Override
  public String toString() {
    return values.kind + " changed: "
        + (values.result.isShort() ? "a user falls below its need" : "no user below its need");
  }
}
