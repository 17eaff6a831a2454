package org.airfit.run;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
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
          cautions(path));
    }
    Pass pass = path.pass(flow);
    int stop = pass.firstBelow(least);
    return stop < path.elements().size()
        ? starved(path, demand, pass, stop)
        : delivered(path, demand, pass, -1);
  }

  private static RunResult.Starved starved(RunPath path, MassFlow demand, Pass pass, int stop) {
    Element element = path.elements().get(stop);
    AirState inlet = path.air(pass, stop);
    return new RunResult.Starved(
        demand,
        element.name(),
        inlet.pressure(),
        intoTheOpen(path, demand, pass, stop),
        shares(path, demand, pass, stop, -1),
        element.explain(demand, inlet).working(),
        cautions(path));
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

  /** The answer of a pass that gets to the tool; the element that chokes, or -1. */
  private static RunResult.Delivered delivered(
      RunPath path, MassFlow demand, Pass pass, int choking) {
    AbsolutePressure from = AbsolutePressure.ofPascals(pass.pascals(0));
    AbsolutePressure to = AbsolutePressure.ofPascals(pass.atTool());
    return new RunResult.Delivered(
        demand,
        path.supply(),
        from,
        to,
        path.atmosphere(),
        shares(path, demand, pass, path.elements().size(), choking),
        cautions(path, from, to),
        Optional.empty());
  }

  /** The gauge pressure is what there is to lose. */
  private static List<Caution> cautions(RunPath path, AbsolutePressure from, AbsolutePressure to) {
    double lost = from.pascals() - to.pascals();
    double toLose = from.pascals() - path.atmosphere().pascals();
    return lost > BUDGET_SHARE * toLose ? cautions(path, BUDGET) : cautions(path);
  }

  /** Those of every run, those given, and those of what its lines are made of, each once. */
  private static List<Caution> cautions(RunPath path, Caution... more) {
    Set<Caution> all = new LinkedHashSet<>();
    all.add(Caution.MORE_SUPPLY_PRESSURE);
    all.addAll(List.of(more));
    path.elements().forEach(element -> all.addAll(element.cautions()));
    return List.copyOf(all);
  }

  /** What the first elements lose. */
  private static List<ElementLoss> shares(
      RunPath path, MassFlow demand, Pass pass, int count, int choking) {
    double lost = pass.pascals(0) - pass.pascals(count);
    boolean arrives = count == path.elements().size();
    List<ElementLoss> shares = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      double drop = pass.pascals(i) - pass.pascals(i + 1);
      Element element = path.elements().get(i);
      shares.add(new ElementLoss(
          element.name(),
          AbsolutePressure.ofPascals(pass.pascals(i)),
          AbsolutePressure.ofPascals(pass.pascals(i + 1)),
          lost > 0.0 ? drop / lost : 0.0,
          PressureDrop.ofPascals(arrives ? gain(path, demand, pass, i) : 0.0),
          i == choking,
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
    double atmosphere = path.atmosphere().pascals();
    if (!tool.followsPressure()) {
      RunResult result = at(path, tool.flowAt(path.atmosphere(), path.atmosphere()));
      return result.fold(delivered -> delivered.to(tool), starved -> starved);
    }
    double most = tool.flow(path.still().pressure().pascals(), atmosphere);
    double flow = RunPath.last(
        f -> f - tool.flow(path.pascalsAtTool(f), atmosphere), Math.min(most, path.bound()));
    return at(path, MassFlow.ofKilogramsPerSecond(flow))
        .fold(
            delivered -> withTool(path, delivered, tool),
            // the last pascal below the atmosphere, where nothing is asked for either
            starved -> starved);
  }

  private static RunResult withTool(RunPath path, RunResult.Delivered found, ToolDemand tool) {
    double atmosphere = path.atmosphere().pascals();
    double flow = found.massFlow().kilogramsPerSecond();
    if (tool.flow(found.atTool().pascals(), atmosphere) <= flow * (1.0 + WANTS_MORE)) {
      return found.to(tool);
    }
    double more = flow * (1.0 + SLIGHTLY);
    if (Double.isNaN(path.supply().pascals(more))) {
      return at(path, MassFlow.ofKilogramsPerSecond(more));
    }
    int choking = path.pass(more).firstBelow(0.0);
    if (choking == path.elements().size()) {
      return found.to(tool); // the pressure jumps at Re 2300
    }
    double behind =
        path.pascalsBehind(choking, flow, path.pass(flow), tool.pascalsFor(flow, atmosphere));
    return delivered(path, found.massFlow(), path.pass(flow, choking, behind), choking)
        .to(tool);
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
