package org.airfit.network;

import org.airfit.plant.Supply;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.MassFlowUnit;

/**
 * What one supply gives to a network, or takes back where a higher supply drives air into it.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class SupplyFlow {

  private record Values(
      String node, Supply supply, MassFlow given, MassFlow takenBack, boolean exhausted) {}

  private final Values values;

  private SupplyFlow(Values values) {
    this.values = values;
  }

  static SupplyFlow of(String node, Supply supply, double kilogramsPerSecond, boolean exhausted) {
    return new SupplyFlow(new Values(
        node,
        supply,
        MassFlow.ofKilogramsPerSecond(Math.max(0.0, kilogramsPerSecond)),
        MassFlow.ofKilogramsPerSecond(Math.max(0.0, -kilogramsPerSecond)),
        exhausted));
  }

  /** {@return its node} */
  public String node() {
    return values.node;
  }

  /** {@return the supply} */
  public Supply supply() {
    return values.supply;
  }

  /** {@return what it gives; 0 where air flows back into it} */
  public MassFlow given() {
    return values.given;
  }

  /** {@return what flows back into it from a higher supply; 0 where it gives} */
  public MassFlow takenBack() {
    return values.takenBack;
  }

  /** {@return whether it gives all it can} */
  public boolean exhausted() {
    return values.exhausted;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof SupplyFlow that && values.equals(that.values);
  }

  @Override
  public int hashCode() {
    return values.hashCode();
  }

  /** {@return the flow in one line, such as "compressor gives 0.05 kg/s"} */
  @Override
  public String toString() {
    boolean gives = values.takenBack.kilogramsPerSecond() == 0.0;
    return values.node
        + (gives ? " gives " : " takes back ")
        + (gives ? values.given : values.takenBack).format(MassFlowUnit.KILOGRAM_PER_SECOND);
  }
}
