package org.airfit.pinned;

import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.line.Conduit;
import org.airfit.line.Wall;
import org.airfit.network.BranchFlow;
import org.airfit.network.Network;
import org.airfit.network.NetworkResult;
import org.airfit.network.ToolFlow;
import org.airfit.plant.Supply;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.run.ElementLoss;
import org.airfit.run.Run;
import org.airfit.run.RunResult;
import org.airfit.run.SupplyNeeded;
import org.airfit.run.ToolDemand;

/** What arrives at a tool, alone and in a network. */
final class PinnedRuns {

  private static final AbsolutePressure ATMOSPHERE = AbsolutePressure.ofBar(1.0);
  private static final AirState SUPPLY =
      AirState.of(AbsolutePressure.ofBar(8.0), Temperature.ofCelsius(20.0));

  private PinnedRuns() {}

  static void ask(Pins pins) {
    for (double bore : new double[] {8.0, 10.0, 13.0}) {
      for (double metres : new double[] {5.0, 15.0, 30.0}) {
        run(pins, bore, metres);
      }
    }
    for (boolean isClosed : new boolean[] {false, true}) {
      network(pins, isClosed);
    }
  }

  private static FlowCapacity coupling(double c) {
    return FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(c), 0.3);
  }

  private static Conduit hose(double bore, double metres) {
    return Conduit.of(Length.ofMillimetres(bore), Length.ofMetres(metres), Wall.SMOOTH_RUBBER_HOSE);
  }

  private static void run(Pins pins, double bore, double metres) {
    Run run = Run.from(SUPPLY, ATMOSPHERE)
        .through("outlet", coupling(7.0))
        .through("hose", hose(bore, metres))
        .through("tool coupling", coupling(5.0));
    String of = " behind 8 bar(a), 20 °C, a coupling of C 7, a hose of " + bore + " mm, " + metres
        + " m, a coupling of C 5, b 0.3";
    RunResult result = run.at(FreeAirFlow.ofAnrLitresPerSecond(12.0));
    if (result instanceof RunResult.Delivered delivered) {
      pins.quantity("run", "Pressure at 12 L/s ANR" + of, delivered.atTool());
      for (ElementLoss share : delivered.shares()) {
        pins.quantity("run", "Loss at 12 L/s ANR in the " + share.name() + of, share.lost());
      }
    } else if (result instanceof RunResult.Starved starved) {
      pins.word("run", "What stops 12 L/s ANR" + of, starved.element());
    }
    ToolDemand tool = ToolDemand.following(
        "grinder", FreeAirFlow.ofAnrLitresPerSecond(14.0), AbsolutePressure.ofBar(7.3));
    RunResult balance = run.balance(tool);
    pins.quantity("run", "Flow of a tool of 14 L/s ANR at 7.3 bar(a)" + of, balance.massFlow());
    run.largestFlow(GaugePressure.ofBar(5.0))
        .ifPresent(
            largest -> pins.quantity("run", "Largest flow at 5 bar(g)" + of, largest.massFlow()));
    run.supplyNeeded(tool, GaugePressure.ofBar(6.0))
        .map(SupplyNeeded::needed)
        .ifPresent(
            needed -> pins.quantity("run", "Supply needed for 6 bar(g) at that tool" + of, needed));
  }

  private static void network(Pins pins, boolean isClosed) {
    Network.Builder builder = Network.at(ATMOSPHERE)
        .supply("compressor", Supply.fixed(SUPPLY))
        .line("header", "compressor", "a", steel(40.0, 10.0))
        .line("left", "a", "b", steel(26.0, 30.0))
        .line("right", "a", "c", steel(26.0, 20.0))
        .part("coupling", "b", "d", coupling(6.0))
        .tool("d", tool("grinder", 18.0))
        .tool("c", tool("sander", 12.0));
    if (isClosed) {
      builder.line("across", "b", "c", steel(20.0, 25.0));
    }
    String of = isClosed ? " of a ring of 75 m" : " of two branches of 20 and 30 m";
    if (!(builder.build().solve() instanceof NetworkResult.Solved solved)) {
      throw new IllegalStateException("the network has a solution");
    }
    solved.pressures().forEach((node, pressure) -> {
      if (!node.equals("compressor")) {
        pins.quantity("network", "Pressure at " + node + of, pressure);
      }
    });
    for (BranchFlow branch : solved.branches()) {
      pins.quantity("network", "Flow in " + branch.name() + of, branch.massFlow());
      pins.quantity("network", "Loss of " + branch.name() + of, branch.drop());
    }
    for (ToolFlow tool : solved.tools()) {
      pins.quantity("network", "Flow of the " + tool.tool().name() + of, tool.massFlow());
    }
  }

  private static Conduit steel(double bore, double metres) {
    return Conduit.of(Length.ofMillimetres(bore), Length.ofMetres(metres), Wall.COMMERCIAL_STEEL);
  }

  private static ToolDemand tool(String name, double litres) {
    return ToolDemand.following(
        name, FreeAirFlow.ofAnrLitresPerSecond(litres), AbsolutePressure.ofBar(7.3));
  }
}
