package org.airfit.run;

import java.util.Objects;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.PressureDrop;
import org.airfit.working.UnitSystem;

/**
 * Two readings that cannot both be right, within what their gauges may be off, if no air escapes at rest.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class Contradiction {

  private record Values(GaugeReading upstream, GaugeReading downstream, PressureDrop allowed) {}

  private final Values values;

  private Contradiction(Values values) {
    this.values = values;
  }

  static Contradiction of(GaugeReading upstream, GaugeReading downstream, double allowed) {
    return new Contradiction(new Values(upstream, downstream, PressureDrop.ofPascals(allowed)));
  }

  /** {@return the reading nearer to the supply} */
  public GaugeReading upstream() {
    return values.upstream;
  }

  /** {@return the reading nearer to the tool} */
  public GaugeReading downstream() {
    return values.downstream;
  }

  /** {@return by how much the two gauges may differ at one pressure: three standard deviations} */
  public PressureDrop allowed() {
    return values.allowed;
  }

  /**
   * Tells it in words.
   *
   * @param units the units to write pressures in
   * @return what was shown, what that contradicts and what it may mean
   */
  public String said(UnitSystem units) {
    Objects.requireNonNull(units, "units");
    GaugePressure up = values.upstream.shown();
    GaugePressure down = values.downstream.shown();
    boolean rises = down.compareTo(up) > 0;
    PressureDrop apart = PressureDrop.ofPascals(Math.abs(down.pascals() - up.pascals()));
    String places = values.upstream.gauge().name() + " "
        + GaugeReading.at(values.upstream.place()) + " and "
        + values.downstream.gauge().name()
        + " " + GaugeReading.at(values.downstream.place());
    String beyond = ", more than the " + units.say(values.allowed) + " by which they may differ";
    if (values.upstream.state() == ToolState.AT_REST) {
      return "At rest " + places + " should show one pressure and differ by " + units.say(apart)
          + beyond
          + (rises
              ? ": a gauge is wrong. Exchange the two and read again."
              : ": a gauge is wrong, a leak flows at rest, or a valve between them sticks. Exchange the two"
                  + " gauges and read again.");
    }
    return "While it runs the pressure rises along the flow by " + units.say(apart) + " between "
        + places + beyond + ": a gauge is wrong.";
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Contradiction that && values.equals(that.values);
  }

  @Override
  public int hashCode() {
    return values.hashCode();
  }

  /** {@return the contradiction in words} */
  @Override
  public String toString() {
    return said(UnitSystem.SI);
  }
}
