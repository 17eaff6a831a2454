package org.airfit.run;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.airfit.internal.RootFinder;
import org.airfit.quantity.MassFlow;

/**
 * A run with its tool and at most one leak: what true pressures stand at its places, at rest and while the tool runs.
 *
 * <p>Place 0 is the supply, place i stands behind the i-th element. A leak loses air in proportion to the absolute
 * pressure where it is, as one that chokes does.
 *
 * @param path the run
 * @param tool the tool
 * @param leakAt the place of the leak; −1 for none
 * @param leakPerPascal what escapes over the absolute pressure there [kg/(s Pa)]
 */
record GaugeScene(RunPath path, ToolDemand tool, int leakAt, double leakPerPascal) {

  /** What the search of a leak leaves open, over the most that it can be [-]. */
  private static final double TOLERANCE = 1.0e-7;

  static GaugeScene of(RunPath path, ToolDemand tool) {
    return new GaugeScene(path, tool, -1, 0.0);
  }

  GaugeScene on(RunPath other) {
    return new GaugeScene(other, tool, leakAt, leakPerPascal);
  }

  GaugeScene with(ToolDemand other) {
    return new GaugeScene(path, other, leakAt, leakPerPascal);
  }

  int places() {
    return path.elements().size() + 1;
  }

  /** The gauge pressures [Pa] at all places; NaN where the air does not get to. */
  double[] pressures(ToolState state) {
    RunPath whole = leakAt < 0 ? path : leaking(path, leak(state));
    Pass pass = pass(whole, state);
    double[] pressures = new double[places()];
    for (int i = 0; i < pressures.length; i++) {
      pressures[i] = pass.pascals(i) - path.atmosphere().pascals();
    }
    return pressures;
  }

  /** What escapes [kg/s]: the flow at which the leak and the run agree. */
  double leak(ToolState state) {
    if (leakAt < 0) {
      return 0.0;
    }
    double most = leakPerPascal * path.still().pressure().pascals() * (1.0 + 1.0e-9);
    DoubleUnaryOperator tooMuch = flow -> {
      double there = pass(leaking(path, flow), state).pascals(leakAt);
      return flow - leakPerPascal * (there > 0.0 ? there : 0.0);
    };
    return RootFinder.find(tooMuch, 0.0, most, TOLERANCE * most);
  }

  private RunPath leaking(RunPath run, double flow) {
    MassFlow escaping = MassFlow.ofKilogramsPerSecond(flow);
    List<Element> elements = new ArrayList<>(run.elements());
    for (int i = 0; i < leakAt; i++) {
      elements.set(i, Element.Shared.of(elements.get(i), escaping));
    }
    MassFlow others = MassFlow.ofKilogramsPerSecond(run.others().kilogramsPerSecond() + flow);
    return new RunPath(run.supply(), others, run.atmosphere(), elements);
  }

  private Pass pass(RunPath run, ToolState state) {
    if (state == ToolState.AT_REST) {
      return run.pass(0.0);
    }
    if (!tool.followsPressure()) {
      double atmosphere = run.atmosphere().pascals();
      return run.pass(tool.flow(atmosphere, atmosphere));
    }
    return RunAnswers.settled(run, tool, RunAnswers.agreed(run, tool));
  }
}
