package org.airfit.network;

import java.util.List;
import java.util.Objects;
import org.airfit.air.AirState;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.MassFlowUnit;
import org.airfit.quantity.PressureDrop;
import org.airfit.run.Run;
import org.airfit.run.RunResult;
import org.airfit.safety.Caution;
import org.airfit.working.UnitSystem;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/**
 * The flow through one branch of a network. Its working tells how the pressure behind follows from the flow.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class BranchFlow implements Worked {

  private static final double LEAST_FLOW = 1.0e-30;
  private static final AbsolutePressure VACUUM = AbsolutePressure.ofPascals(0.0);

  private record Values(
      Branch branch,
      AirState air,
      String from,
      String to,
      MassFlow massFlow,
      AbsolutePressure inlet,
      AbsolutePressure outlet,
      boolean chokes,
      boolean unsettled,
      boolean dead,
      boolean standsBy,
      boolean shut,
      List<Caution> cautions) {}

  private final Values values;

  private BranchFlow(Values values) {
    this.values = values;
  }

  static BranchFlow of(
      Branch branch,
      SolverBranch solved,
      boolean still,
      boolean standsBy,
      List<String> nodes,
      double[] pascals,
      AirState air) {
    int from = solved.inletNode();
    int to = solved.outletNode();
    // a drop below the last digit of the pressure may come out negative
    double behind = solved.isShut() ? pascals[to] : Math.min(pascals[to], pascals[from]);
    AbsolutePressure inlet = AbsolutePressure.ofPascals(pascals[from]);
    // what Newton leaves of no flow may be too small to have a friction factor
    double left = Math.abs(solved.flow) < LEAST_FLOW ? 0.0 : Math.abs(solved.flow);
    MassFlow flow = MassFlow.ofKilogramsPerSecond(left);
    return new BranchFlow(new Values(
        branch,
        air.at(inlet),
        nodes.get(from),
        nodes.get(to),
        flow,
        inlet,
        AbsolutePressure.ofPascals(behind),
        solved.chokes(pascals[from], pascals[to]),
        solved.stands,
        still && !standsBy,
        standsBy,
        solved.isShut() && !still,
        branch.cautions()));
  }

  /** What a run through the branch alone has at this flow, worked out when it is asked for. */
  private RunResult alone() {
    return values.branch.lead(Run.from(values.air, VACUUM)).at(values.massFlow);
  }

  /** {@return the branch} */
  public String name() {
    return values.branch.name();
  }

  /** {@return the warnings that go with what it is made of} */
  public List<Caution> cautions() {
    return values.cautions;
  }

  /** {@return the node the air comes from} */
  public String from() {
    return values.from;
  }

  /** {@return the node it goes to} */
  public String to() {
    return values.to;
  }

  /** {@return the flow} */
  public MassFlow massFlow() {
    return values.massFlow;
  }

  /** {@return the pressure in front} */
  public AbsolutePressure inlet() {
    return values.inlet;
  }

  /** {@return the pressure behind} */
  public AbsolutePressure outlet() {
    return values.outlet;
  }

  /** {@return the pressure it loses; none where it is shut and more stands behind it than in front} */
  public PressureDrop drop() {
    return values.outlet.compareTo(values.inlet) > 0
        ? PressureDrop.ofPascals(0.0)
        : values.inlet.dropTo(values.outlet);
  }

  /** {@return whether it lets no more through however low the pressure behind it} */
  public boolean chokes() {
    return values.chokes;
  }

  /** {@return whether its flow stands at Re 2300, with a drop between the laminar and the turbulent one} */
  public boolean unsettled() {
    return values.unsettled;
  }

  /**
   * {@return whether it is a dead leg, or part of one: no air flows through it, as no tool that runs and no supply lies
   * beyond it}
   */
  public boolean dead() {
    return values.dead;
  }

  /** {@return whether no air flows through it only because the supply beyond it is idle} */
  public boolean standsBy() {
    return values.standsBy;
  }

  /** {@return whether it is a check valve or a regulator that is shut, as what stands behind it is not less than it leaves} */
  public boolean shut() {
    return values.shut;
  }

  /** {@return where its model is near or outside what it holds for} */
  public List<String> warnings() {
    return alone().fold(delivered -> delivered.shares().get(0).warnings(), starved -> List.of());
  }

  @Override
  public Working working(UnitSystem units) {
    Objects.requireNonNull(units, "units");
    return alone()
        .<Worked>fold(delivered -> delivered.shares().get(0), starved -> starved)
        .working(units);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof BranchFlow that && values.equals(that.values);
  }

  @Override
  public int hashCode() {
    return values.hashCode();
  }

  /** {@return the flow in one line, such as "main: 0.05 kg/s from s to a"} */
  @Override
  public String toString() {
    return values.branch.name() + ": " + values.massFlow.format(MassFlowUnit.KILOGRAM_PER_SECOND)
        + " from " + values.from + " to " + values.to;
  }
}
