package org.airfit.network;

import org.airfit.plant.Supply;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.MassFlowUnit;

/**
 * What one supply gives to a network. A higher supply shuts its non-return valve; where it has none, it takes air back.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class SupplyFlow {

  private record Values(
      String node,
      Supply supply,
      boolean hasNonReturnValve,
      MassFlow given,
      MassFlow takenBack,
      boolean idle,
      boolean exhausted) {}

  private final Values values;

  private SupplyFlow(Values values) {
    this.values = values;
  }

  static SupplyFlow of(String node, Supply supply, SolverSupply solved) {
    return new SupplyFlow(new Values(
        node,
        supply,
        !solved.letsBack,
        MassFlow.ofKilogramsPerSecond(Math.max(0.0, solved.flow)),
        MassFlow.ofKilogramsPerSecond(solved.letsBack ? Math.max(0.0, -solved.flow) : 0.0),
        solved.idle,
        solved.exhausted()));
  }

  /** {@return its node} */
  public String node() {
    return values.node;
  }

  /** {@return the supply} */
  public Supply supply() {
    return values.supply;
  }

  /** {@return whether it has a non-return valve, so that no air flows back into it} */
  public boolean hasNonReturnValve() {
    return values.hasNonReturnValve;
  }

  /** {@return what it gives; 0 where it is idle or air flows back into it} */
  public MassFlow given() {
    return values.given;
  }

  /** {@return what flows back into it from a higher supply; 0 where it gives or has a non-return valve} */
  public MassFlow takenBack() {
    return values.takenBack;
  }

  /** {@return whether it gives nothing because a higher supply keeps its non-return valve shut} */
  public boolean idle() {
    return values.idle;
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
    if (values.idle) {
      return values.node + " gives nothing, its non-return valve is shut";
    }
    boolean gives = values.takenBack.kilogramsPerSecond() == 0.0;
    return values.node
        + (gives ? " gives " : " takes back ")
        + (gives ? values.given : values.takenBack).format(MassFlowUnit.KILOGRAM_PER_SECOND);
  }
}
