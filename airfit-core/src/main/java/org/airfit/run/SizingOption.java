package org.airfit.run;

import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Money;
import org.airfit.quantity.PressureDrop;

/**
 * One combination of what is on offer, and how the tool fares with it.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class SizingOption {

  /** The most margin first. */
  static final Comparator<SizingOption> BY_MARGIN =
      Comparator.comparingDouble(SizingOption::marginPascals).reversed();

  /** The cheapest first; of equal prices, the most margin. */
  static final Comparator<SizingOption> BY_PRICE =
      Comparator.comparing(SizingOption::price).thenComparing(BY_MARGIN);

  private record Values(
      Map<String, String> chosen, Money price, Run run, RunResult result, GaugePressure least) {}

  private final Values values;

  SizingOption(
      Map<String, String> chosen, Money price, Run run, RunResult result, GaugePressure least) {
    this.values = new Values(
        Collections.unmodifiableMap(new LinkedHashMap<>(chosen)), price, run, result, least);
  }

  /** {@return the name of what is chosen for each place} */
  public Map<String, String> chosen() {
    return values.chosen;
  }

  /** {@return what they cost together} */
  public Money price() {
    return values.price;
  }

  /** {@return the run with them, new and clean} */
  public Run run() {
    return values.run;
  }

  /**
   * {@return how the tool fares with the margin for wear and dirt; as new where that leaves less, at a jump of
   * friction}
   */
  public RunResult result() {
    return values.result;
  }

  /** {@return the pressure at the tool then; empty where it cannot be fed} */
  public Optional<GaugePressure> atTool() {
    return values.result.fold(
        delivered -> Optional.of(delivered.atToolGauge()), starved -> Optional.empty());
  }

  /** {@return whether the tool has at least its least pressure then, at a jump of friction on its lower side too} */
  public boolean keepsPressure() {
    return marginPascals() >= 0.0;
  }

  /** {@return by how much the tool has more than its least pressure; 0 where it has less} */
  public PressureDrop margin() {
    return PressureDrop.ofPascals(Math.max(0.0, marginPascals()));
  }

  /** {@return by how much the tool misses its least pressure, all of it where it cannot be fed; 0 where it has it} */
  public PressureDrop lack() {
    return PressureDrop.ofPascals(
        Math.min(values.least.pascals(), Math.max(0.0, -marginPascals())));
  }

  /**
   * The margin [Pa] that can be counted on; negative where the pressure is missed, and by more than the whole where
   * the tool cannot be fed.
   */
  double marginPascals() {
    double least = values.least.pascals();
    return values.result.fold(
        delivered ->
            GaugePressure.of(delivered.leastAtTool(), values.run.atmosphere()).pascals() - least,
        starved -> -least - 1.0);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof SizingOption that && values.equals(that.values);
  }

  @Override
  public int hashCode() {
    return values.hashCode();
  }

  /** {@return the combination in one line, such as "hose 1/2 in, pipe 1 in for 30 USD"} */
  @Override
  public String toString() {
    return values.chosen.entrySet().stream()
            .map(choice -> choice.getKey() + " " + choice.getValue())
            .collect(Collectors.joining(", "))
        + " for " + values.price;
  }
}
