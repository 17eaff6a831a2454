package org.airfit.run;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;
import org.airfit.air.AirState;
import org.airfit.flow.FlowElement;
import org.airfit.plant.Supply;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.safety.Caution;
import org.airfit.source.Source;
import org.airfit.working.UnitSystem;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/**
 * Makes the answer of a run for a flow, and for a tool: one {@link Pass} finds the numbers, each element then explains
 * its own.
 */
final class RunAnswers {

  private static final Caution BUDGET = new Caution(
      "More than a tenth of the pressure is lost",
      "Between the receiver and the tool at most 10 % of the pressure should be lost."
          + " Look at the largest shares first.",
      Source.handbook("Fluid Power Journal, article on Compressed Air Challenge training:"
          + " at most 10 percent from receiver to point of use"));

  private static final double BUDGET_SHARE = 0.1;

  /**
   * A tool that wants more than it has by more than this part of it is held back by something that chokes or ends [-].
   */
  private static final double WANTS_MORE = 1.0e-10;

  /** By how much a flow is raised to see what stops it [-]. */
  private static final double SLIGHTLY = 1.0e-9;

  private RunAnswers() {}

  /** How a supply's pressure follows from the flow. */
  private record SupplyWorking(Supply supply, MassFlow flow) implements Worked {

    @Override
    public Working working(UnitSystem units) {
      return supply.working(flow, units);
    }
  }

  /** What arrives of a flow. */
  static RunResult at(RunPath path, MassFlow demand) {
    double flow = demand.kilogramsPerSecond();
    double least = path.atmosphere().pascals();
    Supply supply = path.supply();
    if (!(supply.pascals(flow) >= least)) {
      double most = RunPath.largest(supply::pascals, least, Math.min(flow, supply.largest()));
      return new RunResult.Starved(
          demand,
          "supply",
          path.still().pressure(),
          MassFlow.ofKilogramsPerSecond(most),
          List.of(),
          new SupplyWorking(supply, demand),
          path.cautions());
    }
    Pass pass = path.pass(flow);
    int stop = pass.firstBelow(least);
    return stop < path.elements().size()
        ? starved(path, demand, pass, stop)
        : delivered(path, demand, pass, i -> gain(path, demand, pass, i));
  }

  private static RunResult.Starved starved(RunPath path, MassFlow demand, Pass pass, int stop) {
    Element element = path.elements().get(stop);
    AirState inlet = path.air(pass, stop);
    return new RunResult.Starved(
        demand,
        element.name(),
        inlet.pressure(),
        intoTheOpen(path, demand, pass, stop),
        shares(path, demand, pass, stop, i -> 0.0),
        element.explain(demand, inlet).working(),
        path.cautions());
  }

  /**
   * What an element lets through into the open, of a flow that is too much: less than the atmosphere behind it cannot
   * be.
   */
  private static MassFlow intoTheOpen(RunPath path, MassFlow tooMuch, Pass pass, int stop) {
    FlowElement element = path.elements().get(stop).flow();
    double p = pass.pascals(stop);
    double t = pass.kelvins(stop);
    double viscosity = path.still().viscosity().pascalSeconds();
    double bound = Math.min(tooMuch.kilogramsPerSecond(), element.largest(p, t, viscosity));
    return MassFlow.ofKilogramsPerSecond(RunPath.largest(
        flow -> element.outlet(flow, p, t, viscosity), path.atmosphere().pascals(), bound));
  }

  /** The answer of a pass that gets to the tool. */
  private static RunResult.Delivered delivered(
      RunPath path, MassFlow demand, Pass pass, IntToDoubleFunction gain) {
    AbsolutePressure from = AbsolutePressure.ofPascals(pass.pascals(0));
    AbsolutePressure to = AbsolutePressure.ofPascals(pass.atTool());
    return new RunResult.Delivered(
        demand,
        path.supply(),
        from,
        to,
        path.atmosphere(),
        shares(path, demand, pass, path.elements().size(), gain),
        cautions(path, from, to),
        Optional.empty());
  }

  /** The gauge pressure is what there is to lose. */
  private static List<Caution> cautions(RunPath path, AbsolutePressure from, AbsolutePressure to) {
    List<Caution> cautions = new ArrayList<>(path.cautions());
    double lost = from.pascals() - to.pascals();
    double toLose = from.pascals() - path.atmosphere().pascals();
    if (lost > BUDGET_SHARE * toLose) {
      cautions.add(BUDGET);
    }
    return cautions;
  }

  /** What the first elements lose, and how much more pressure [Pa] the tool would have without each. */
  private static List<ElementLoss> shares(
      RunPath path, MassFlow demand, Pass pass, int count, IntToDoubleFunction gain) {
    double lost = pass.pascals(0) - pass.pascals(count);
    List<ElementLoss> shares = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      double drop = pass.pascals(i) - pass.pascals(i + 1);
      Element element = path.elements().get(i);
      shares.add(new ElementLoss(
          element.name(),
          AbsolutePressure.ofPascals(pass.pascals(i)),
          AbsolutePressure.ofPascals(pass.pascals(i + 1)),
          lost > 0.0 ? drop / lost : 0.0,
          PressureDrop.ofPascals(gain.applyAsDouble(i)),
          pass.chokes(i),
          element.explain(demand, path.air(pass, i))));
    }
    return List.copyOf(shares);
  }

  /** How much more pressure [Pa] would arrive with one element left out; none where the flow would not get there. */
  private static double gain(RunPath path, MassFlow demand, Pass pass, int leftOut) {
    double without = path.pascalsWithout(leftOut, demand.kilogramsPerSecond(), pass);
    return without > pass.atTool() ? without - pass.atTool() : 0.0;
  }

  /** The flow and pressure at which a tool and the run agree. */
  static RunResult balance(RunPath path, ToolDemand tool) {
    if (!tool.followsPressure()) {
      RunResult result = at(path, tool.flowAt(path.atmosphere(), path.atmosphere()));
      return result.fold(delivered -> delivered.to(tool), starved -> starved);
    }
    double flow = agreed(path, tool);
    return at(path, MassFlow.ofKilogramsPerSecond(flow))
        .fold(
            delivered -> withTool(path, delivered, tool),
            // the last pascal below the atmosphere, where nothing is asked for either
            starved -> starved);
  }

  /** The largest flow [kg/s] that gets to a tool and is at most what it takes there. */
  private static double agreed(RunPath path, ToolDemand tool) {
    double atmosphere = path.atmosphere().pascals();
    double most = tool.flow(path.still().pressure().pascals(), atmosphere);
    return RunPath.last(
        f -> f - tool.flow(path.pascalsAtTool(f), atmosphere), Math.min(most, path.bound()));
  }

  private static RunResult withTool(RunPath path, RunResult.Delivered found, ToolDemand tool) {
    double flow = found.massFlow().kilogramsPerSecond();
    if (takesAll(path, tool, flow, found.atTool().pascals())) {
      return found.to(tool);
    }
    double more = flow * (1.0 + SLIGHTLY);
    if (Double.isNaN(path.supply().pascals(more))) {
      return at(path, MassFlow.ofKilogramsPerSecond(more));
    }
    Pass pass = settled(path, tool, flow);
    return pass.anyChokes()
        ? delivered(path, found.massFlow(), pass, i -> gain(path, tool, pass, i))
            .to(tool)
        : found.to(tool); // the pressure jumps at Re 2300
  }

  private static boolean takesAll(RunPath path, ToolDemand tool, double flow, double atTool) {
    return tool.flow(atTool, path.atmosphere().pascals()) <= flow * (1.0 + WANTS_MORE);
  }

  /**
   * The pass of a flow that a tool and the run agree on. Where the tool would take more and an element chokes, the
   * pressure behind that element falls until the tool takes what passes, or until the next element chokes as well.
   */
  private static Pass settled(RunPath path, ToolDemand tool, double flow) {
    Pass pass = path.pass(flow);
    if (!(flow > 0.0) || takesAll(path, tool, flow, pass.atTool())) {
      return pass;
    }
    int choking = path.pass(flow * (1.0 + SLIGHTLY)).firstBelow(0.0);
    return choking < path.elements().size()
        ? path.lowered(
            pass, flow, choking, tool.pascalsFor(flow, path.atmosphere().pascals()))
        : pass;
  }

  /** How much more pressure [Pa] a tool would have with one element left out, where another flow may then agree. */
  private static double gain(RunPath path, ToolDemand tool, Pass pass, int leftOut) {
    RunPath without = path.without(leftOut);
    double then = settled(without, tool, agreed(without, tool)).atTool();
    return then > pass.atTool() ? then - pass.atTool() : 0.0;
  }

  /**
   * What stops a flow slightly larger than one that arrives, if it is not just the pressure that falls: "supply" or an
   * element.
   */
  static Optional<String> stopping(RunPath path, double flow) {
    double more = flow * (1.0 + SLIGHTLY);
    if (Double.isNaN(path.supply().pascals(more))) {
      return Optional.of("supply");
    }
    int stop = path.pass(more).firstBelow(0.0);
    return stop < path.elements().size()
        ? Optional.of(path.elements().get(stop).name())
        : Optional.empty();
  }
}
