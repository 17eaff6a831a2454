package org.airfit.network;

import java.time.Duration;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.airfit.air.AirState;
import org.airfit.internal.Later;
import org.airfit.internal.Seconds;
import org.airfit.plant.PressureBand;
import org.airfit.plant.RegulatorElement;
import org.airfit.plant.SharedBand;
import org.airfit.plant.TimedCompressor;
import org.airfit.plant.WallHeat;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.Volume;
import org.jspecify.annotations.Nullable;

/**
 * A plant and what is taken from it over a day: compressors with cut-in and cut-out, receivers in a row, the header, and
 * users that come and go.
 *
 * <p>The air of each receiver is balanced in time:
 *
 * <pre>
 *   dm/dt = ṁ in − ṁ out,   p = m R T/V
 * </pre>
 *
 * <p>and, where the walls give no heat, dU/dt = Σ cp T ṁ with p = 0.4 U/V. All compressors feed the first receiver and
 * obey the pressure there; the next receiver hangs on it by a join, such as dryer and filters; behind the last, and its
 * regulator if it has one, lies the header.
 *
 * <p><b>What is left out:</b> the header has one pressure, and each user hangs on it by its own drop, whose loss is that
 * of the steady flow of the moment, found by the elements of {@link org.airfit.run.Run}. What users lose together in a
 * main is not in it: solve a {@link Network} at the flows of the lowest moment. Air at the header is as warm
 * as in the last receiver; the working of a lowest moment takes that of the plant. Water, the heat of compression and what
 * a dryer takes for itself are not counted; a purge is a user.
 *
 * <p><b>Source:</b> balance of mass and energy.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class PlantDay {

  private final DayPlan values;
  private final Later<DayResult> result;

  private PlantDay(DayPlan values) {
    this.values = values;
    this.result = Later.of(() -> simulate(DaySolver.USUAL));
  }

  /**
   * Begins a plant.
   *
   * @param atmosphere the pressure around it, against which gauges read
   * @param temperature the temperature of the air in its receivers
   * @return a builder of a day of 24 h, with walls that keep the temperature
   * @throws IllegalArgumentException if there is no air of that pressure and temperature
   */
  public static Builder at(AbsolutePressure atmosphere, Temperature temperature) {
    return new Builder(atmosphere, temperature);
  }

  /** Collects what a plant consists of. Not thread-safe. */
  public static final class Builder {
    private final AbsolutePressure atmosphere;
    private final Temperature temperature;
    private Duration length = Duration.ofDays(1);
    private WallHeat walls = WallHeat.KEEPS;
    private final List<LineReceiver> receivers = new ArrayList<>();
    private final List<TimedCompressor> compressors = new ArrayList<>();
    private @Nullable SharedBand sharedBand;
    private @Nullable RegulatorElement regulator;
    private final List<TimedUse> uses = new ArrayList<>();

    private Builder(AbsolutePressure atmosphere, Temperature temperature) {
      this.atmosphere = Objects.requireNonNull(atmosphere, "atmosphere");
      this.temperature = Objects.requireNonNull(temperature, "temperature");
      AirState.of(atmosphere, temperature); // refuses what air cannot have
    }

    /**
     * Tells how long the day is.
     *
     * @param time the length, above 0 s and at most 7 days
     * @return this
     */
    public Builder lasting(Duration time) {
      length = Objects.requireNonNull(time, "time");
      return this;
    }

    /**
     * Tells what the walls of the receivers do.
     *
     * @param heat what they do
     * @return this
     */
    public Builder walls(WallHeat heat) {
      walls = Objects.requireNonNull(heat, "heat");
      return this;
    }

    /**
     * Adds a receiver behind those added before.
     *
     * @param receiver the receiver
     * @return this
     */
    public Builder receiver(LineReceiver receiver) {
      receivers.add(Objects.requireNonNull(receiver, "receiver"));
      return this;
    }

    /**
     * Adds a compressor; where they share a band the order is that in which they are called.
     *
     * @param compressor the compressor
     * @return this
     */
    public Builder compressor(TimedCompressor compressor) {
      compressors.add(Objects.requireNonNull(compressor, "compressor"));
      return this;
    }

    /**
     * Gives all compressors one band.
     *
     * @param band the band and how the compressors take turns in it
     * @return this
     */
    public Builder sharedBand(SharedBand band) {
      sharedBand = Objects.requireNonNull(band, "band");
      return this;
    }

    /**
     * Puts a regulator between the last receiver and the header.
     *
     * @param element the regulator
     * @return this
     */
    public Builder regulator(RegulatorElement element) {
      regulator = Objects.requireNonNull(element, "element");
      return this;
    }

    /**
     * Adds a user.
     *
     * @param use the user
     * @return this
     */
    public Builder use(TimedUse use) {
      uses.add(Objects.requireNonNull(use, "use"));
      return this;
    }

    /**
     * Builds the plant.
     *
     * @return the plant
     * @throws IllegalArgumentException if the parts do not go together, with what to do
     */
    public PlantDay build() {
      requireLength();
      requireReceivers();
      requireBands();
      Set<String> names = new HashSet<>();
      for (TimedUse use : uses) {
        if (!names.add(use.name())) {
          throw new IllegalArgumentException(
              "name of a user of air must differ from the others, was \"" + use.name()
                  + "\" again; say which");
        }
      }
      return new PlantDay(new DayPlan(
          atmosphere,
          temperature,
          length,
          walls,
          List.copyOf(receivers),
          List.copyOf(compressors),
          Optional.ofNullable(sharedBand),
          Optional.ofNullable(regulator),
          List.copyOf(uses)));
    }

    private void requireLength() {
      if (length.isNegative() || length.isZero() || length.compareTo(DemandTimes.LONGEST) > 0) {
        throw new IllegalArgumentException(
            "length of a day must be above 0 s and at most 604800 s, was " + Seconds.told(length));
      }
    }

    private void requireReceivers() {
      if (receivers.isEmpty()) {
        throw new IllegalArgumentException("receivers of a plant must be at least 1, was 0; a plant"
            + " without one has the volume of its pipes");
      }
      for (int i = 0; i < receivers.size(); i++) {
        LineReceiver receiver = receivers.get(i);
        if (receiver.join().isPresent() == (i == 0)) {
          throw new IllegalArgumentException(
              i == 0
                  ? "the first receiver must have no join, was one to " + receiver.name()
                  : "every receiver but the first must have a join from the one before, was none to "
                      + receiver.name() + "; or add its volume to the one before");
        }
      }
    }

    private void requireBands() {
      Set<String> names = new HashSet<>();
      for (TimedCompressor compressor : compressors) {
        if (compressor.band().isPresent() == (sharedBand != null)) {
          throw new IllegalArgumentException(
              sharedBand != null
                  ? "a compressor must have no band of its own where all share one, was one of "
                      + compressor.name()
                  : "a compressor must have a band of its own where they share none, was none of "
                      + compressor.name());
        }
        if (!names.add(compressor.name())) {
          throw new IllegalArgumentException(
              "name of a compressor must differ from the others, was \"" + compressor.name()
                  + "\" again; say which");
        }
      }
    }
  }

  /** {@return the pressure around it} */
  public AbsolutePressure atmosphere() {
    return values.atmosphere();
  }

  /** {@return the temperature of the air in its receivers} */
  public Temperature temperature() {
    return values.temperature();
  }

  /** {@return how long the day is} */
  public Duration length() {
    return values.length();
  }

  /** {@return what the walls of the receivers do} */
  public WallHeat walls() {
    return values.walls();
  }

  /** {@return the receivers, in the order the air goes} */
  public List<LineReceiver> receivers() {
    return values.receivers();
  }

  /** {@return the compressors, in the order in which they are called} */
  public List<TimedCompressor> compressors() {
    return values.compressors();
  }

  /** {@return the band that all share; empty where each has its own} */
  public Optional<SharedBand> sharedBand() {
    return values.sharedBand();
  }

  /** {@return the regulator in front of the header; empty where there is none} */
  public Optional<RegulatorElement> regulator() {
    return values.regulator();
  }

  /** {@return the users} */
  public List<TimedUse> uses() {
    return values.uses();
  }

  private Builder builder() {
    Builder builder = at(values.atmosphere(), values.temperature())
        .lasting(values.length())
        .walls(values.walls());
    builder.receivers.addAll(values.receivers());
    builder.compressors.addAll(values.compressors());
    builder.sharedBand = values.sharedBand().orElse(null);
    builder.regulator = values.regulator().orElse(null);
    builder.uses.addAll(values.uses());
    return builder;
  }

  /**
   * Obtains this with other walls.
   *
   * @param heat what they do
   * @return this so
   */
  public PlantDay withWalls(WallHeat heat) {
    return builder().walls(heat).build();
  }

  /**
   * Obtains this with another volume of its last receiver, the one next to the users.
   *
   * @param volume how much air it holds
   * @return this so
   * @throws IllegalArgumentException if {@code volume} is out of range
   */
  public PlantDay withLastReceiver(Volume volume) {
    Objects.requireNonNull(volume, "volume");
    Builder builder = builder();
    int last = builder.receivers.size() - 1;
    builder.receivers.set(last, builder.receivers.get(last).withVolume(volume));
    return builder.build();
  }

  /**
   * Obtains this with all bands moved by as much, and the pressures with which the day begins with them.
   *
   * @param pascals by how much [Pa], below 0 for lower bands
   * @return this so
   * @throws IllegalArgumentException if a pressure would not be above 0, or {@code pascals} is not finite
   */
  public PlantDay withBandsMoved(double pascals) {
    Builder builder = builder();
    builder.compressors.replaceAll(
        machine -> machine.withBand(machine.band().map(band -> band.moved(pascals))));
    builder.sharedBand = values
        .sharedBand()
        .map(shared -> new SharedBand(shared.band().moved(pascals), shared.pause()))
        .orElse(null);
    builder.receivers.replaceAll(receiver ->
        receiver.withStart(GaugePressure.ofPascals(receiver.start().pascals() + pascals)));
    return builder.build();
  }

  /**
   * Obtains this with a regulator between the last receiver and the header.
   *
   * @param element the regulator
   * @return this so
   */
  public PlantDay withRegulator(RegulatorElement element) {
    return builder().regulator(element).build();
  }

  /** {@return this with the air of its recordings bunched, see {@link DemandTimes#bunched()}} */
  public PlantDay bunched() {
    Builder builder = builder();
    builder.uses.replaceAll(TimedUse::bunched);
    return builder.build();
  }

  /** {@return whether any user was recorded in averages, which hide every shorter peak} */
  public boolean hasAverages() {
    return values.uses().stream().anyMatch(use -> use.when().averagedOver().isPresent());
  }

  /** {@return the lowest cut-in of the plant; empty without a compressor} */
  public Optional<GaugePressure> lowestCutIn() {
    return values
        .sharedBand()
        .map(shared -> shared.band().cutIn())
        .or(() -> values.compressors().stream()
            .flatMap(machine -> machine.band().stream())
            .map(PressureBand::cutIn)
            .min(GaugePressure::compareTo));
  }

  /**
   * Goes through the day.
   *
   * @return what came of it
   * @throws IllegalArgumentException if the receivers are so small that the compressors would switch more than 200000
   *     times
   * @throws java.util.concurrent.CancellationException if the thread was interrupted
   */
  public DayResult simulate() {
    return result.get();
  }

  /** Goes through the day in steps of another error [-]. */
  DayResult simulate(double tolerance) {
    return new DaySolver(values, tolerance).solve();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof PlantDay that && values.equals(that.values);
  }

  @Override
  public int hashCode() {
    return values.hashCode();
  }

  /** {@return the plant in one line, such as "2 compressors, 1 receiver, 5 users over 86400 s"} */
  @Override
  public String toString() {
    return count(values.compressors().size(), "compressor") + ", "
        + count(values.receivers().size(), "receiver") + ", "
        + count(values.uses().size(), "user")
        + " over " + Seconds.told(values.length());
  }

  private static String count(int number, String what) {
    return number + " " + what + (number == 1 ? "" : "s");
  }
}
