package org.airfit.network;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Random;
import org.airfit.internal.Interruption;
import org.airfit.plant.ReceiverSize;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.Volume;
import org.airfit.run.ToolDemand;

/**
 * What came of drawing at random which tools run.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class NetworkSimulation {

  /** How many sets of running tools are kept with what came of them: our choice, for the memory they take. */
  private static final int MOST_KNOWN = 10_000;

  private record Values(
      long seed,
      int trials,
      int unsolved,
      MassFlow meanFlow,
      MassFlow flow95,
      List<ToolRecord> tools) {}

  private final Values values;

  private NetworkSimulation(Values values) {
    this.values = values;
  }

  /** What comes of a set of tools that run; no tools where no steady flow was found. */
  private record Trial(boolean solved, double taken, List<ToolFlow> tools) {

    static Trial of(NetworkPlan plan, SteadyFlow steady, BitSet runs) {
      double[] parts = new double[plan.outlets().size()];
      for (int i = 0; i < parts.length; i++) {
        parts[i] = runs.get(i) ? plan.outlets().get(i).tool().load() : 0.0;
      }
      return steady
          .with(parts)
          .fold(
              found -> new Trial(true, found.taken().kilogramsPerSecond(), found.tools()),
              none -> new Trial(false, 0.0, List.of()));
    }
  }

  /** Draws which tools of a plan run, and solves again unless the same tools ran in a trial before. */
  static NetworkSimulation of(NetworkPlan plan, long seed, int trials) {
    SteadyFlow steady = new SteadyFlow(plan);
    Random random = new Random(seed);
    int tools = plan.outlets().size();
    List<List<ToolFlow>> flows = new ArrayList<>();
    plan.outlets().forEach(outlet -> flows.add(new ArrayList<>()));
    List<Double> taken = new ArrayList<>();
    Map<BitSet, Trial> known = new HashMap<>();
    for (int number = 0; number < trials; number++) {
      Interruption.check(NetworkSolver.SUBJECT);
      BitSet runs = new BitSet(tools);
      for (int i = 0; i < tools; i++) {
        runs.set(i, random.nextDouble() < plan.outlets().get(i).tool().duty());
      }
      Trial trial = known.get(runs);
      if (trial == null) {
        trial = Trial.of(plan, steady, runs);
        if (known.size() < MOST_KNOWN) {
          known.put(runs, trial);
        }
      }
      if (trial.solved) {
        taken.add(trial.taken);
        for (int i = runs.nextSetBit(0); i >= 0; i = runs.nextSetBit(i + 1)) {
          flows.get(i).add(trial.tools.get(i));
        }
      }
    }
    double[] sorted = taken.stream().mapToDouble(Double::doubleValue).sorted().toArray();
    List<ToolRecord> records = new ArrayList<>();
    for (int i = 0; sorted.length > 0 && i < tools; i++) {
      records.add(ToolRecord.of(plan.outlets().get(i), flows.get(i)));
    }
    double mean = Arrays.stream(sorted).average().orElse(0.0);
    double high = sorted.length == 0
        ? 0.0
        : sorted[(int) Math.min(sorted.length - 1.0, Math.floor(0.95 * sorted.length))];
    return new NetworkSimulation(new Values(
        seed,
        trials,
        trials - sorted.length,
        MassFlow.ofKilogramsPerSecond(mean),
        MassFlow.ofKilogramsPerSecond(high),
        List.copyOf(records)));
  }

  /** {@return where the random numbers began} */
  public long seed() {
    return values.seed;
  }

  /** {@return how often it was drawn} */
  public int trials() {
    return values.trials;
  }

  /** {@return how often no steady flow was found; those trials are left out of all that follows} */
  public int unsolved() {
    return values.unsolved;
  }

  /** {@return the mean of all that the tools took} */
  public MassFlow meanFlow() {
    return values.meanFlow;
  }

  /** {@return what they took at most in 95 % of the trials} */
  public MassFlow flow95() {
    return values.flow95;
  }

  /** {@return how each tool fared, in the order they were added to the network} */
  public List<ToolRecord> tools() {
    return values.tools;
  }

  /**
   * How one tool fared.
   *
   * <p>This class is immutable, thread-safe and value-based.
   */
  public static final class ToolRecord {

    private record Fare(
        String node, ToolDemand tool, int ran, int starved, List<GaugePressure> pressure) {}

    private final Fare fare;

    private ToolRecord(Fare fare) {
      this.fare = fare;
    }

    private static ToolRecord of(NetworkPlan.Outlet outlet, List<ToolFlow> flows) {
      return new ToolRecord(new Fare(
          outlet.node(),
          outlet.tool(),
          flows.size(),
          (int) flows.stream().filter(ToolFlow::isStarved).count(),
          flows.stream().map(ToolFlow::atTool).sorted().toList()));
    }

    /** {@return its node} */
    public String node() {
      return fare.node;
    }

    /** {@return the tool} */
    public ToolDemand tool() {
      return fare.tool;
    }

    /** {@return in how many trials it ran} */
    public int ran() {
      return fare.ran;
    }

    /** {@return in how many of these it got less than it wanted} */
    public int starved() {
      return fare.starved;
    }

    /** {@return what it had at its inlet, lowest first, of the trials in which it ran} */
    public List<GaugePressure> pressure() {
      return fare.pressure;
    }

    /**
     * Finds the pressure that it had or missed in a part of the trials in which it ran.
     *
     * @param share the part with less pressure [-], in [0, 1]; 0 for the lowest
     * @return the pressure, or empty where it never ran
     * @throws IllegalArgumentException if {@code share} is out of range
     */
    public Optional<GaugePressure> quantile(double share) {
      if (!(share >= 0.0 && share <= 1.0)) {
        throw new IllegalArgumentException("share must be in [0, 1], was " + share);
      }
      int count = fare.pressure.size();
      return count == 0
          ? Optional.empty()
          : Optional.of(fare.pressure.get((int) Math.min(count - 1.0, Math.floor(share * count))));
    }

    @Override
    public boolean equals(Object other) {
      return other instanceof ToolRecord that && fare.equals(that.fare);
    }

    @Override
    public int hashCode() {
      return fare.hashCode();
    }

    /** {@return the tool in one line, such as "grinder at bench: starved in 12 of 400 trials"} */
    @Override
    public String toString() {
      return fare.tool.name() + " at " + fare.node + ": starved in " + fare.starved + " of "
          + fare.ran + " trials";
    }
  }

  /**
   * Finds the receiver that carries the peaks: what all tools take at most in 95 % of the trials, over a time in
   * which the compressor does not keep up.
   *
   * @param delivery what the compressor delivers meanwhile
   * @param time how long a peak lasts
   * @param start the pressure when it begins
   * @param least the least pressure it may fall to, below {@code start}
   * @param temperature the temperature in the receiver, above 0 K
   * @param pipes the volume of the pipes, such as {@link Network#pipeVolume()}
   * @return the receiver, or empty where the compressor keeps up with that peak
   * @throws IllegalArgumentException if an argument is out of range
   */
  public Optional<ReceiverSize> receiver(
      FreeAirFlow delivery,
      Duration time,
      AbsolutePressure start,
      AbsolutePressure least,
      Temperature temperature,
      Volume pipes) {
    Objects.requireNonNull(delivery, "delivery");
    Objects.requireNonNull(time, "time");
    Objects.requireNonNull(start, "start");
    Objects.requireNonNull(least, "least");
    Objects.requireNonNull(temperature, "temperature");
    Objects.requireNonNull(pipes, "pipes");
    if (flow95().compareTo(delivery.massFlow()) <= 0) {
      return Optional.empty();
    }
    FreeAirFlow peak = FreeAirFlow.from(flow95(), delivery.reference());
    return Optional.of(new ReceiverSize(peak, delivery, time, start, least, temperature, pipes));
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof NetworkSimulation that && values.equals(that.values);
  }

  @Override
  public int hashCode() {
    return values.hashCode();
  }

  /** {@return the simulation in one line, such as "1000 trials with 12 tools from seed 42"} */
  @Override
  public String toString() {
    return values.trials + " trials with " + values.tools.size() + " tools from seed "
        + values.seed;
  }
}
