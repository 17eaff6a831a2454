package org.airfit.network;

import java.util.List;
import org.airfit.run.ToolDemand;

/**
 * What the tools at each node take at a pressure.
 *
 * <p>Below 100 Pa of gauge pressure it goes in a straight line to nothing at the atmosphere, so that a tool that
 * cannot be fed starves within a thousandth of a bar.
 */
final class SolverTools {

  private static final double RAMP_PASCALS = 100.0;

  private final double atmosphere;
  private final List<List<ToolDemand>> at; // by node, at the load they run at

  SolverTools(double atmosphere, List<List<ToolDemand>> at) {
    this.atmosphere = atmosphere;
    this.at = at;
  }

  /** What the tools at a node take [kg/s]. */
  double flow(int node, double p) {
    double sum = 0.0;
    for (ToolDemand tool : at.get(node)) {
      sum += flow(tool, p);
    }
    return sum;
  }

  /** What one tool at a node takes [kg/s]. */
  double flow(int node, int tool, double p) {
    return flow(at.get(node).get(tool), p);
  }

  private double flow(ToolDemand tool, double p) {
    double whole = Math.max(p, atmosphere + RAMP_PASCALS);
    double full = tool.flow(whole, atmosphere);
    return p >= whole ? full : full * (p - atmosphere) / RAMP_PASCALS;
  }

  /** How fast that rises with the pressure [kg/(s Pa)], at least 0. */
  double slope(int node, double p) {
    double corner = atmosphere + RAMP_PASCALS;
    double sum = 0.0;
    for (ToolDemand tool : at.get(node)) {
      sum += p < corner ? tool.flow(corner, atmosphere) / RAMP_PASCALS : tool.slope(p, atmosphere);
    }
    return sum;
  }

  /** Whether any tool at a node takes air at all. */
  boolean any(int node) {
    return at.get(node).stream().anyMatch(tool -> tool.load() > 0.0);
  }

  /** What all tools are rated at together [kg/s], running or not: the measure of a small flow. */
  double rated() {
    double sum = 0.0;
    for (List<ToolDemand> tools : at) {
      for (ToolDemand tool : tools) {
        sum += tool.rated().massFlow().kilogramsPerSecond();
      }
    }
    return sum > 0.0 ? sum : 1.0e-3;
  }
}
