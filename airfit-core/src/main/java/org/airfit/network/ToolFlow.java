package org.airfit.network;

import java.util.List;
import java.util.Objects;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.MassFlowUnit;
import org.airfit.quantity.PressureUnit;
import org.airfit.run.ToolDemand;
import org.airfit.safety.Caution;
import org.airfit.safety.Ruling;
import org.airfit.safety.SafetyRules;
import org.airfit.working.UnitSystem;

/**
 * What one tool in a network gets.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class ToolFlow {

  private record Values(
      NetworkPlan.Outlet outlet,
      SafetyRules rules,
      MassFlow wanted,
      MassFlow massFlow,
      GaugePressure atTool) {}

  private final Values values;

  private ToolFlow(Values values) {
    this.values = values;
  }

  static ToolFlow of(NetworkPlan plan, int number, double part, double flow, double pascals) {
    NetworkPlan.Outlet outlet = plan.outlets().get(number);
    return new ToolFlow(new Values(
        outlet,
        plan.judged().rules(),
        outlet.tool().rated().massFlow().times(part),
        MassFlow.ofKilogramsPerSecond(Math.max(0.0, flow)),
        GaugePressure.of(AbsolutePressure.ofPascals(pascals), plan.atmosphere())));
  }

  /** {@return its node} */
  public String node() {
    return values.outlet.node();
  }

  /** {@return the tool} */
  public ToolDemand tool() {
    return values.outlet.tool();
  }

  /** {@return the flow it wants: the part of its rated flow that it runs at} */
  public MassFlow wanted() {
    return values.wanted;
  }

  /** {@return the flow it gets} */
  public MassFlow massFlow() {
    return values.massFlow;
  }

  /** {@return the pressure at its inlet as a gauge shows it} */
  public GaugePressure atTool() {
    return values.atTool;
  }

  /** {@return what each safety rule says of the work there, those that do not apply among them} */
  public List<Ruling> rulings() {
    return values.rules.rulings(values.outlet.situation());
  }

  /** {@return the warnings that go with the work there, that codes and makers come first the last of them} */
  public List<Caution> cautions() {
    return cautions(UnitSystem.SI);
  }

  /**
   * Tells the same warnings with their numbers in other units.
   *
   * @param units the units
   * @return the warnings that go with the work there
   */
  public List<Caution> cautions(UnitSystem units) {
    return values
        .rules
        .toldIn(Objects.requireNonNull(units, "units"))
        .cautions(values.outlet.situation());
  }

  /** {@return whether it gets less than it wants, by more than a millionth} */
  public boolean isStarved() {
    return values.massFlow.kilogramsPerSecond()
        < values.wanted.kilogramsPerSecond() * (1.0 - 1.0e-6);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof ToolFlow that && values.equals(that.values);
  }

  @Override
  public int hashCode() {
    return values.hashCode();
  }

  /** {@return the flow in one line, such as "grinder at bench: 0.012 kg/s at 6.1 bar(g)"} */
  @Override
  public String toString() {
    return tool().name() + " at " + node() + ": "
        + values.massFlow.format(MassFlowUnit.KILOGRAM_PER_SECOND) + " at "
        + values.atTool.format(PressureUnit.BAR);
  }
}
