package org.airfit.run;

import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import org.airfit.internal.Digits;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureDrop;

/**
 * What a change gains at the tool, and how much of it for the money.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class RankedChange {

  private static final GaugePressure ATMOSPHERE = GaugePressure.ofPascals(0.0);

  private record Values(Run run, Change change, RunResult before, RunResult after) {}

  private final Values values;

  private RankedChange(Values values) {
    this.values = values;
  }

  /**
   * Ranks single changes by what the tool gains for the money.
   *
   * @param run the run as it is now
   * @param tool what the tool takes
   * @param changes changes to the run, each with the run after it and its price, all in one currency
   * @return the changes, most pressure at the tool for the money first; of those that cost nothing, the largest gain
   * @throws IllegalArgumentException if the currencies differ
   * @throws IllegalStateException if a run has no elements
   */
  public static List<RankedChange> rank(Run run, ToolDemand tool, List<Change> changes) {
    Objects.requireNonNull(tool, "tool");
    List<Change> all = List.copyOf(Objects.requireNonNull(changes, "changes"));
    RunResult now = Objects.requireNonNull(run, "run").balance(tool);
    all.forEach(change -> change.price().compareTo(all.get(0).price())); // one currency
    return all.stream()
        .map(
            change -> new RankedChange(new Values(run, change, now, change.run().balance(tool))))
        .sorted(Comparator.comparingDouble(RankedChange::pascalsPerUnit)
            .thenComparingDouble(RankedChange::gainPascals)
            .reversed())
        .toList();
  }

  /** {@return the change} */
  public Change change() {
    return values.change;
  }

  /** {@return how the tool fares after it} */
  public RunResult result() {
    return values.after;
  }

  /**
   * {@return the pressure at the tool before the change; that of the atmosphere where it cannot be fed, and the least
   * at a jump of friction}
   */
  public GaugePressure pressureBefore() {
    return pressure(values.run, values.before);
  }

  /**
   * {@return the pressure at the tool after the change; that of the atmosphere where it cannot be fed, and the least at
   * a jump of friction}
   */
  public GaugePressure pressureAfter() {
    return pressure(values.change.run(), values.after);
  }

  /** {@return the flow of the tool before the change; where it cannot be fed, the most that gets through} */
  public MassFlow flowBefore() {
    return flow(values.run, values.before);
  }

  /** {@return the flow of the tool after the change; where it cannot be fed, the most that gets through} */
  public MassFlow flowAfter() {
    return flow(values.change.run(), values.after);
  }

  /** {@return how much more pressure the tool has; 0 where it has less} */
  public PressureDrop gain() {
    return PressureDrop.ofPascals(Math.max(0.0, gainPascals()));
  }

  /** {@return how much less pressure the tool has; 0 where it has more} */
  public PressureDrop loss() {
    return PressureDrop.ofPascals(Math.max(0.0, -gainPascals()));
  }

  private double gainPascals() {
    return pressureAfter().pascals() - pressureBefore().pascals();
  }

  private static GaugePressure pressure(Run run, RunResult result) {
    return result.fold(
        delivered -> GaugePressure.of(delivered.leastAtTool(), run.atmosphere()),
        starved -> ATMOSPHERE);
  }

  private static MassFlow flow(Run run, RunResult result) {
    return result.fold(
        RunResult.Delivered::massFlow,
        starved -> run.largestFlow(ATMOSPHERE)
            .map(LargestFlow::massFlow)
            .orElse(MassFlow.ofKilogramsPerSecond(0.0)));
  }

  /**
   * {@return the gain, or minus the loss, over the price [Pa per unit of the currency]; infinite for one that costs
   * nothing}
   */
  public double pascalsPerUnit() {
    double price = values.change.price().amount().doubleValue();
    double gain = gainPascals();
    return price > 0.0
        ? gain / price
        : gain == 0.0 ? 0.0 : Math.copySign(Double.POSITIVE_INFINITY, gain);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof RankedChange that && values.equals(that.values);
  }

  @Override
  public int hashCode() {
    return values.hashCode();
  }

  /** {@return the change in one line, such as "wider hose: 0.42 bar more for 30 USD"} */
  @Override
  public String toString() {
    double gain = gainPascals();
    return values.change.name() + ": " + Digits.significant(Math.abs(gain) / 1.0e5, 3) + " bar "
        + (gain < 0.0 ? "less" : "more") + " for " + values.change.price();
  }
}
