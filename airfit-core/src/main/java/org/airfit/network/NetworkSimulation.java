package org.airfit.network;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.airfit.plant.ReceiverSize;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.Volume;
import org.airfit.run.ToolDemand;
import org.jspecify.annotations.Nullable;

/**
 * What came of drawing at random which tools run.
 *
 * @param seed where the random numbers began
 * @param trials how often it was drawn
 * @param unsolved how often no steady flow was found; those trials are left out of all that follows
 * @param meanFlow the mean of all that the tools took
 * @param flow95 what they took at most in 95 % of the trials
 * @param tools how each tool fared, in the order they were added to the network
 */
public record NetworkSimulation(
    long seed,
    int trials,
    int unsolved,
    MassFlow meanFlow,
    MassFlow flow95,
    List<ToolRecord> tools) {

  /**
   * Copies the list.
   *
   * @param seed where the random numbers began
   * @param trials how often it was drawn
   * @param unsolved how often no steady flow was found
   * @param meanFlow the mean of all that the tools took
   * @param flow95 what they took at most in 95 % of the trials
   * @param tools how each tool fared
   */
  public NetworkSimulation {
    tools = List.copyOf(tools);
  }

  /**
   * How one tool fared.
   *
   * @param node its node
   * @param tool the tool
   * @param ran in how many trials it ran
   * @param starved in how many of these it got less than it wanted
   * @param pressure what it had at its inlet, lowest first, of the trials in which it ran
   */
  public record ToolRecord(
      String node, ToolDemand tool, int ran, int starved, List<GaugePressure> pressure) {

    /**
     * Copies the list.
     *
     * @param node its node
     * @param tool the tool
     * @param ran in how many trials it ran
     * @param starved in how many of these it got less than it wanted
     * @param pressure what it had at its inlet, lowest first
     */
    public ToolRecord {
      pressure = List.copyOf(pressure);
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
      return pressure.isEmpty()
          ? Optional.empty()
          : Optional.of(pressure.get(
              (int) Math.min(pressure.size() - 1.0, Math.floor(share * pressure.size()))));
    }
  }

  /**
   * Finds the receiver that carries the peaks: what all tools take at most in 95 % of the trials, over a time in which the compressor does not keep up.
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
    if (flow95.compareTo(delivery.massFlow()) <= 0) {
      return Optional.empty();
    }
    FreeAirFlow peak = FreeAirFlow.from(flow95, delivery.reference());
    return Optional.of(new ReceiverSize(peak, delivery, time, start, least, temperature, pipes));
  }

  /** Counts. */
  static final class Tally {
    private final long seed;
    private final List<List<NetworkResult.ToolFlow>> flows = new ArrayList<>();
    private final List<Double> taken = new ArrayList<>();
    private int trials;
    private NetworkResult.@Nullable Solved last;

    Tally(long seed, int tools) {
      this.seed = seed;
      for (int i = 0; i < tools; i++) {
        flows.add(new ArrayList<>());
      }
    }

    void add(boolean[] runs, NetworkResult result) {
      trials++;
      if (result instanceof NetworkResult.Solved solved) {
        last = solved;
        taken.add(solved.taken().kilogramsPerSecond());
        for (int i = 0; i < runs.length; i++) {
          if (runs[i]) {
            flows.get(i).add(solved.tools().get(i));
          }
        }
      }
    }

    NetworkSimulation finished() {
      double[] sorted = taken.stream().mapToDouble(Double::doubleValue).sorted().toArray();
      List<ToolRecord> records = new ArrayList<>();
      for (int i = 0; last != null && i < flows.size(); i++) {
        List<NetworkResult.ToolFlow> of = flows.get(i);
        NetworkResult.ToolFlow any = last.tools().get(i);
        records.add(new ToolRecord(
            any.node(),
            any.tool(),
            of.size(),
            (int) of.stream().filter(NetworkResult.ToolFlow::isStarved).count(),
            of.stream().map(NetworkResult.ToolFlow::atTool).sorted().toList()));
      }
      double mean = Arrays.stream(sorted).average().orElse(0.0);
      double high = sorted.length == 0
          ? 0.0
          : sorted[(int) Math.min(sorted.length - 1.0, Math.floor(0.95 * sorted.length))];
      return new NetworkSimulation(
          seed,
          trials,
          trials - sorted.length,
          MassFlow.ofKilogramsPerSecond(mean),
          MassFlow.ofKilogramsPerSecond(high),
          records);
    }
  }
}
