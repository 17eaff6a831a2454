package org.airfit.run;

import java.util.Objects;
import java.util.Optional;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.MassFlowUnit;
import org.airfit.quantity.PressureUnit;
import org.airfit.working.UnitSystem;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/**
 * The largest flow that still arrives at a pressure, and what holds it there.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class LargestFlow implements Worked {

  private record Values(GaugePressure atTool, RunResult result, Optional<String> stopping) {}

  private final Values values;

  private LargestFlow(Values values) {
    this.values = values;
  }

  /** The largest flow along a path; empty where less than the pressure asked for is at the tool also without flow. */
  static Optional<LargestFlow> of(RunPath path, GaugePressure atTool) {
    double wanted = atTool.absolute(path.atmosphere()).pascals();
    return path.largest(wanted)
        .map(last -> new LargestFlow(new Values(
            atTool,
            RunAnswers.atLargest(path, last),
            last.isPassedByMore() ? Optional.empty() : RunAnswers.stopping(path, last.more()))));
  }

  /** {@return the flow} */
  public MassFlow massFlow() {
    return values.result.massFlow();
  }

  /** {@return the least pressure at the tool that was asked for} */
  public GaugePressure atTool() {
    return values.atTool;
  }

  /** {@return how the run fares with that flow} */
  public RunResult result() {
    return values.result;
  }

  /**
   * {@return what lets no more through, an element or "supply"; empty where the pressure asked for is what holds the
   * flow}
   */
  public Optional<String> stopping() {
    return values.stopping;
  }

  @Override
  public Working working(UnitSystem units) {
    Objects.requireNonNull(units, "units");
    String pressure = values.atTool.format(units.pressureUnit());
    return Working.titled("Largest flow of air that arrives at " + pressure, units)
        .note("The flow was raised until " + end(units))
        .include(values.result.working(units))
        .answer("The largest flow is " + massFlow().format(units.massFlowUnit()) + ".")
        .build();
  }

  /** What ended the search. */
  private String end(UnitSystem units) {
    String pressure = values.atTool.format(units.pressureUnit());
    return values
        .stopping
        .map(name -> "more of it would not get through: " + name + " stops it.")
        .orElseGet(() ->
            arrived().pascals() > values.atTool.pascals() + 1.0e-6 * arrived().pascals()
                ? "a little more of it would leave less than " + pressure + " at the tool at once."
                : "just " + pressure + " was left at the tool.");
  }

  private GaugePressure arrived() {
    return values.result.fold(RunResult.Delivered::atToolGauge, starved -> values.atTool);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof LargestFlow that && values.equals(that.values);
  }

  @Override
  public int hashCode() {
    return values.hashCode();
  }

  /** {@return the answer in one line, such as "0.012 kg/s at 6.2 bar(g) or more"} */
  @Override
  public String toString() {
    return massFlow().format(MassFlowUnit.KILOGRAM_PER_SECOND) + " at "
        + values.atTool.format(PressureUnit.BAR) + " or more";
  }
}
