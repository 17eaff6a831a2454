package org.airfit.run;

import java.util.List;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;
import org.airfit.air.AirState;
import org.airfit.flow.FlowElement;
import org.airfit.internal.Later;
import org.airfit.plant.Supply;
import org.airfit.quantity.MassFlow;
import org.airfit.working.UnitSystem;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/**
 * Makes the answer of a run for a flow, and for a tool: one {@link Pass} finds the numbers, each element then explains
 * its own.
 */
final class RunAnswers {

  /**
   * A tool that wants more than it has by more than this part of it is held back by something that chokes or ends [-].
   */
  private static final double WANTS_MORE = 1.0e-10;

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
    if (!(path.given(flow) >= least)) {
      return new RunResult.Starved(
          demand,
          "supply",
          path.still().pressure(),
          Optional.empty(),
          Later.of(() -> mostGiven(path, flow)),
          Later.of(List::of),
          Later.of(() -> new SupplyWorking(path.supply(), path.fromSupply(demand))),
          path.still(),
          Later.of(path::cautions));
    }
    Pass pass = path.pass(flow);
    int stop = pass.firstBelow(least);
    if (stop == path.elements().size()) {
      return delivered(path, demand, pass, i -> gain(path, demand, pass, i));
    }
    int untold = firstBehindCurve(path, flow, stop);
    return untold < stop
        ? behindCurve(path, demand, pass, untold)
        : starved(path, demand, pass, stop);
  }

  /** The first element in front of another through which more flows than its maker's curve tells; that other if none. */
  private static int firstBehindCurve(RunPath path, double flow, int stop) {
    int element = 0;
    while (element < stop && path.elements().get(element).endOfCurve(flow).isEmpty()) {
      element++;
    }
    return element;
  }

  /**
   * The answer where the flow stops behind the end of a regulator's curve. With what the regulators hold at the ends of
   * their curves, the most that they can hold, it may get to the tool: then nobody knows, and the element further on is
   * not to blame. Where it stops then too, that element stops it whatever they hold.
   */
  private static RunResult.Starved behindCurve(
      RunPath path, MassFlow demand, Pass pass, int untold) {
    double flow = demand.kilogramsPerSecond();
    RunPath held = path;
    for (int i = untold; i < path.elements().size(); i++) {
      Optional<Element.CurveEnd> end = path.elements().get(i).endOfCurve(flow);
      held = end.isPresent() ? held.with(i, end.get().held()) : held;
    }
    Pass most = held.pass(flow);
    int stop = most.firstBelow(path.atmosphere().pascals());
    if (stop < path.elements().size()) {
      return starved(held, demand, most, stop);
    }
    Element regulator = path.elements().get(untold);
    Element.CurveEnd end = regulator.endOfCurve(flow).orElseThrow();
    AirState inlet = path.air(pass, untold);
    return new RunResult.Starved(
        demand,
        regulator.name(),
        inlet.pressure(),
        Optional.of(end.end()),
        Later.of(end::largest),
        Later.of(() -> Arrival.shares(path, demand, pass, untold, i -> 0.0)),
        Later.of(() -> regulator.explain(demand, inlet).working()),
        path.still(),
        Later.of(path::cautions));
  }

  private static RunResult.Starved starved(RunPath path, MassFlow demand, Pass pass, int stop) {
    Element element = path.elements().get(stop);
    AirState inlet = path.air(pass, stop);
    return new RunResult.Starved(
        demand,
        element.name(),
        inlet.pressure(),
        Optional.empty(),
        Later.of(() -> intoTheOpen(path, demand, pass, stop)),
        Later.of(() -> Arrival.shares(path, demand, pass, stop, i -> 0.0)),
        Later.of(() -> element.explain(demand, inlet).working()),
        path.still(),
        Later.of(path::cautions));
  }

  /** The most that a supply gives at the atmosphere or more, of a flow [kg/s] that is too much. */
  private static MassFlow mostGiven(RunPath path, double tooMuch) {
    return MassFlow.ofKilogramsPerSecond(RunPath.largest(
        path::given, path.atmosphere().pascals(), Math.min(tooMuch, path.mostGiven())));
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
    return new RunResult.Delivered(new Arrival(path, demand, pass, gain, Optional.empty()));
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
  static double agreed(RunPath path, ToolDemand tool) {
    double atmosphere = path.atmosphere().pascals();
    double most = tool.flow(path.still().pressure().pascals(), atmosphere);
    return path.lastArriving(flow -> tooMuch(path, tool, flow), most);
  }

  /** How much more [kg/s] a flow is than what the tool takes of it; NaN where it does not arrive. */
  private static double tooMuch(RunPath path, ToolDemand tool, double flow) {
    double pascals = path.pascalsAtTool(flow);
    return Double.isNaN(pascals)
        ? Double.NaN
        : flow - tool.flow(pascals, path.atmosphere().pascals());
  }

  private static RunResult withTool(RunPath path, RunResult.Delivered found, ToolDemand tool) {
    double flow = found.massFlow().kilogramsPerSecond();
    if (flow == 0.0 || takesAll(path, tool, flow, found.atTool().pascals())) {
      return found.to(tool);
    }
    double more = path.justAbove(flow);
    if (Double.isNaN(path.given(more))) {
      return at(path, MassFlow.ofKilogramsPerSecond(more));
    }
    Pass pass = settled(path, tool, flow);
    return delivered(path, found.massFlow(), pass, i -> gain(path, tool, pass, i))
        .to(tool);
  }

  private static boolean takesAll(RunPath path, ToolDemand tool, double flow, double atTool) {
    return tool.flow(atTool, path.atmosphere().pascals()) <= flow * (1.0 + WANTS_MORE);
  }

  /**
   * The pass of a flow that a tool and the run agree on. Where the tool would take more and friction or the supply
   * jumps, the pressure lies on the way over the jump. Where an element chokes, the pressure behind that element falls
   * until the tool takes what passes, or until the next element chokes as well.
   */
  static Pass settled(RunPath path, ToolDemand tool, double flow) {
    Pass pass = path.pass(flow);
    if (!(flow > 0.0) || takesAll(path, tool, flow, pass.atTool())) {
      return pass;
    }
    double wanted = tool.pascalsFor(flow, path.atmosphere().pascals());
    double more = path.justAbove(flow);
    if (!path.jumps(flow, more)) {
      int choking = path.pass(more).firstBelow(0.0);
      return choking < path.elements().size() ? path.lowered(pass, flow, choking, wanted) : pass;
    }
    Pass standing = path.standing(flow, more, wanted);
    int choking = path.chokingAlong(standing, flow);
    return takesAll(path, tool, flow, standing.atTool())
            || choking == path.elements().size()
        ? standing
        : path.lowered(standing, flow, choking, wanted);
  }

  /** How much more pressure [Pa] a tool would have with one element left out, where another flow may then agree. */
  private static double gain(RunPath path, ToolDemand tool, Pass pass, int leftOut) {
    RunPath without = path.without(leftOut);
    double then = settled(without, tool, agreed(without, tool)).atTool();
    return then > pass.atTool() ? then - pass.atTool() : 0.0;
  }

  /** What arrives of the largest flow that still arrives at a pressure: a little more may be behind a jump. */
  static RunResult atLargest(RunPath path, RunPath.Last last) {
    MassFlow largest = MassFlow.ofKilogramsPerSecond(last.flow());
    RunResult just = at(path, largest);
    if (!path.jumps(last.flow(), last.more())) {
      return just;
    }
    return just.fold(
        found -> delivered(
            path,
            largest,
            path.before(last.flow(), last.more()),
            i -> found.shares().get(i).gain().pascals()),
        starved -> starved);
  }

  /** What stops a flow [kg/s], if it is not just the pressure that falls: "supply" or an element. */
  static Optional<String> stopping(RunPath path, double more) {
    if (Double.isNaN(path.given(more))) {
      return Optional.of("supply");
    }
    int stop = path.pass(more).firstBelow(0.0);
    return stop < path.elements().size()
        ? Optional.of(path.elements().get(stop).name())
        : Optional.empty();
  }
}
