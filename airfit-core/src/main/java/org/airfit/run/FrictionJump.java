package org.airfit.run;

import java.util.List;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.PressureUnit;
import org.airfit.safety.Caution;
import org.airfit.source.Source;

/**
 * What is known where a run stands at a jump of friction: a flow at which the air in a line changes between laminar
 * and turbulent, Re 2300.
 *
 * <p>With a little less flow the tool would have the {@linkplain #most most} and take more; with a little more flow it
 * would have the {@linkplain #least least} and take less. No flow meets both the law of the line and that of the tool.
 * The true pressure lies somewhere between the two, and may swing; a judgement counts on the least.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class FrictionJump {

  private static final Source SOURCE = Source.derived(
      "the friction factor jumps at Re 2300, and the curve of the tool passes through the jump");

  private record Values(List<String> elements, AbsolutePressure least, AbsolutePressure most) {}

  private final Values values;

  FrictionJump(List<String> elements, AbsolutePressure least, AbsolutePressure most) {
    this.values = new Values(List.copyOf(elements), least, most);
  }

  /** {@return the lines in which friction jumps at the flow, in the order the air goes} */
  public List<String> elements() {
    return values.elements;
  }

  /** {@return the pressure at the tool while the flow is turbulent; the atmosphere where it does not get there} */
  public AbsolutePressure least() {
    return values.least;
  }

  /** {@return the pressure at the tool while the flow is laminar} */
  public AbsolutePressure most() {
    return values.most;
  }

  /** Whether the two pressures differ in the digits printed: a smaller jump is there, and nobody need know. */
  boolean shows(PressureUnit unit) {
    return !values.least.format(unit).equals(values.most.format(unit));
  }

  /** Whether the two pressures differ in the digits printed in one of the units that sheets have. */
  boolean shows() {
    return shows(PressureUnit.BAR) || shows(PressureUnit.PSI);
  }

  Caution caution() {
    return new Caution(
        "The friction jumps at this flow",
        "The flow in " + String.join(" and ", values.elements)
            + " is at Re 2300, between laminar and turbulent. The pressure at the tool may stand anywhere"
            + " between the two, or swing: count on the lower one.",
        SOURCE);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof FrictionJump that && values.equals(that.values);
  }

  @Override
  public int hashCode() {
    return values.hashCode();
  }

  /** {@return the jump in one line, such as "hose at Re 2300: 5.1 bar(a) to 5.9 bar(a) at the tool"} */
  @Override
  public String toString() {
    return String.join(" and ", values.elements) + " at Re 2300: "
        + values.least.format(PressureUnit.BAR) + " to " + values.most.format(PressureUnit.BAR)
        + " at the tool";
  }
}
