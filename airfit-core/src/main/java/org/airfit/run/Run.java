package org.airfit.run;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.DoublePredicate;
import java.util.function.DoubleUnaryOperator;
import java.util.function.UnaryOperator;
import org.airfit.air.AirState;
import org.airfit.flow.AirKernel;
import org.airfit.flow.FlowCapacity;
import org.airfit.line.Conduit;
import org.airfit.line.LossModel;
import org.airfit.line.LossModels;
import org.airfit.plant.Supply;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.safety.Caution;
import org.airfit.source.Source;
import org.airfit.working.Worked;
import org.jspecify.annotations.Nullable;

/**
 * The way of the air from a supply through pipes, couplers and hoses to a tool.
 *
 * <p>This class is immutable and thread-safe; {@code through} returns a longer run.
 */
public final class Run {

  private static final Caution BUDGET = new Caution(
      "More than a tenth of the pressure is lost",
      "Between the receiver and the tool at most 10 % of the pressure should be lost. Look at the largest shares first.",
      Source.handbook(
          "Fluid Power Journal, article on Compressed Air Challenge training: at most 10 percent from receiver to point of use"));

  private static final double BUDGET_SHARE = 0.1;
  private static final double HIGHEST_SUPPLY_PASCALS = 1.0e8;

  private final Supply supply;
  private final AbsolutePressure atmosphere;
  private final List<Element> elements;
  private final RunKernel kernel;

  private Run(Supply supply, AbsolutePressure atmosphere, List<Element> elements) {
    if (supply.still().pressure().compareTo(atmosphere) < 0) {
      throw new IllegalArgumentException("supply pressure must be at least the atmosphere "
          + atmosphere + ", was " + supply.still().pressure());
    }
    this.supply = supply;
    this.atmosphere = atmosphere;
    this.elements = List.copyOf(elements);
    this.kernel = new RunKernel(supply, this.elements);
  }

  /**
   * Starts a run at a supply that holds its pressure.
   *
   * @param supply the air at the supply
   * @param atmosphere the pressure around it, against which gauges read
   * @return a run without elements
   * @throws IllegalArgumentException if the supply is below the atmosphere
   */
  public static Run from(AirState supply, AbsolutePressure atmosphere) {
    return from(Supply.fixed(supply), atmosphere);
  }

  /**
   * Starts a run at a supply.
   *
   * @param supply what feeds it
   * @param atmosphere the pressure around it, against which gauges read
   * @return a run without elements
   * @throws IllegalArgumentException if the supply is below the atmosphere while nothing flows
   */
  public static Run from(Supply supply, AbsolutePressure atmosphere) {
    return new Run(supply, atmosphere, List.of());
  }

  /**
   * Leads the run through a pipe, tube or hose, with the isothermal model.
   *
   * @param name what to call it
   * @param conduit the pipe, tube or hose
   * @return the longer run
   */
  public Run through(String name, Conduit conduit) {
    return through(name, conduit, LossModels.isothermal());
  }

  /**
   * Leads the run through a pipe, tube or hose.
   *
   * @param name what to call it
   * @param conduit the pipe, tube or hose
   * @param model how its loss is found
   * @return the longer run
   */
  public Run through(String name, Conduit conduit, LossModel model) {
    return with(new Element.Line(name, conduit, model));
  }

  /**
   * Leads the run through a coupler, valve, filter or the like.
   *
   * @param name what to call it
   * @param capacity how much it lets through
   * @return the longer run
   */
  public Run through(String name, FlowCapacity capacity) {
    return with(new Element.Part(name, capacity));
  }

  private Run with(Element element) {
    List<Element> longer = new ArrayList<>(elements);
    longer.add(element);
    return new Run(supply, atmosphere, longer);
  }

  /**
   * Obtains this run with every line of a name replaced.
   *
   * @param name the name of a pipe, tube or hose of this run
   * @param conduit what to put in its place
   * @return this with {@code conduit}
   * @throws IllegalArgumentException if no line has that name
   */
  public Run replacing(String name, Conduit conduit) {
    return mapping(
        name,
        "line",
        element -> element instanceof Element.Line line
            ? new Element.Line(name, conduit, line.model())
            : null);
  }

  /**
   * Obtains this run with every part of a name replaced.
   *
   * @param name the name of a coupler, valve, filter or the like of this run
   * @param capacity what to put in its place
   * @return this with {@code capacity}
   * @throws IllegalArgumentException if no part has that name
   */
  public Run replacing(String name, FlowCapacity capacity) {
    return mapping(
        name,
        "part",
        element -> element instanceof Element.Part ? new Element.Part(name, capacity) : null);
  }

  /** What becomes of an element; null where it is not of the kind asked for. */
  private interface Exchange {
    @Nullable
    Element of(Element element);
  }

  private Run mapping(String name, String kind, Exchange exchange) {
    List<Element> others = new ArrayList<>();
    boolean found = false;
    for (Element element : elements) {
      Element other = element.name().equals(name) ? exchange.of(element) : null;
      found |= other != null;
      others.add(other != null ? other : element);
    }
    if (!found) {
      throw new IllegalArgumentException("name must be that of a " + kind + " of this run, of "
          + names() + ", was \"" + name + "\"");
    }
    return new Run(supply, atmosphere, others);
  }

  RunKernel kernel() {
    return kernel;
  }

  private List<String> names() {
    return elements.stream().map(Element::name).toList();
  }

  /**
   * Obtains this run without the elements of a name.
   *
   * @param name the name of an element of this run
   * @return this without it
   * @throws IllegalArgumentException if no element has that name
   */
  public Run without(String name) {
    List<Element> others =
        elements.stream().filter(element -> !element.name().equals(name)).toList();
    if (others.size() == elements.size()) {
      throw new IllegalArgumentException(
          "name must be that of an element of this run, of " + names() + ", was \"" + name + "\"");
    }
    return new Run(supply, atmosphere, others);
  }

  /**
   * Obtains this run with all its lines computed by one model, such as adiabatic flow.
   *
   * @param model the model
   * @return this by {@code model}
   */
  public Run by(LossModel model) {
    return each(element -> element instanceof Element.Line line
        ? new Element.Line(line.name(), line.conduit(), model)
        : element);
  }

  /**
   * Obtains this run as it may be after years: every element loses more, by a factor of the user's own.
   *
   * <p>A line's λL/D + ΣK is multiplied by it; a part's C is divided by its root, which multiplies the drop far from choking.
   *
   * @param factor the factor on the loss [-], in [1, 10]
   * @return this with a margin for wear and dirt
   * @throws IllegalArgumentException if {@code factor} is out of range
   */
  public Run withLossFactor(double factor) {
    if (!(factor >= 1.0 && factor <= 10.0)) {
      throw new IllegalArgumentException("factor on the loss must be in [1, 10], was " + factor);
    }
    return each(element -> element.withLossFactor(factor));
  }

  private Run each(UnaryOperator<Element> change) {
    return new Run(supply, atmosphere, elements.stream().map(change).toList());
  }

  /**
   * Obtains this run from another supply.
   *
   * @param other what feeds it
   * @return this from {@code other}
   * @throws IllegalArgumentException if it is below the atmosphere while nothing flows
   */
  public Run suppliedBy(Supply other) {
    return new Run(other, atmosphere, elements);
  }

  /** {@return the air at the supply while nothing flows} */
  public AirState supply() {
    return supply.still();
  }

  /** {@return what feeds this run} */
  public Supply source() {
    return supply;
  }

  /** {@return the pressure against which gauges read} */
  public AbsolutePressure atmosphere() {
    return atmosphere;
  }

  /**
   * Finds what arrives at the tool.
   *
   * @param demand the flow the tool takes
   * @return the pressure at the tool and where the rest went, or the element that chokes
   */
  public RunResult at(FreeAirFlow demand) {
    return at(demand.massFlow());
  }

  /**
   * Finds what arrives at the tool.
   *
   * @param demand the flow the tool takes
   * @return the pressure at the tool and where the rest went, or the element that chokes
   * @throws IllegalStateException if the run has no elements
   */
  public RunResult at(MassFlow demand) {
    requireElements();
    AirState air = supply.at(demand).orElse(null);
    if (air == null || air.pressure().compareTo(atmosphere) < 0) {
      return new RunResult.Starved(
          demand,
          "supply",
          supply.still().pressure(),
          MassFlow.ofKilogramsPerSecond(
              largest(0.0, demand.kilogramsPerSecond(), this::isSupplied)),
          List.of(),
          units -> supply.working(demand, units),
          List.of(Caution.MORE_SUPPLY_PRESSURE));
    }
    AirState first = air;
    List<Element.Outcome> outcomes = new ArrayList<>();
    for (Element element : elements) {
      Element.Outcome outcome = element.solve(demand, air);
      boolean reaches = outcome.passes() && outcome.outlet().pressure().compareTo(atmosphere) >= 0;
      if (!reaches) {
        return new RunResult.Starved(
            demand,
            element.name(),
            air.pressure(),
            largestToAtmosphere(element, air, outcome.passes() ? demand : outcome.largest()),
            shares(demand, first, outcomes, air.pressure(), false),
            outcome.working(),
            List.of(Caution.MORE_SUPPLY_PRESSURE));
      }
      outcomes.add(outcome);
      air = outcome.outlet();
    }
    return new RunResult.Delivered(
        demand,
        first.pressure(),
        air.pressure(),
        GaugePressure.of(air.pressure(), atmosphere),
        shares(demand, first, outcomes, air.pressure(), true),
        cautions(first.pressure(), air.pressure()),
        supplyWorking(demand));
  }

  /** The gauge pressure is what there is to lose. */
  private List<Caution> cautions(AbsolutePressure from, AbsolutePressure to) {
    double lost = from.pascals() - to.pascals();
    double toLose = from.pascals() - atmosphere.pascals();
    return lost > BUDGET_SHARE * toLose
        ? List.of(Caution.MORE_SUPPLY_PRESSURE, BUDGET)
        : List.of(Caution.MORE_SUPPLY_PRESSURE);
  }

  private List<Worked> supplyWorking(MassFlow demand) {
    return supply instanceof Supply.Fixed
        ? List.of()
        : List.of(units -> supply.working(demand, units));
  }

  private boolean isSupplied(double flow) {
    return supply
        .at(MassFlow.ofKilogramsPerSecond(flow))
        .filter(air -> air.pressure().compareTo(atmosphere) >= 0)
        .isPresent();
  }

  /** What an element lets through into the open; a flow that would need less than the atmosphere behind it does not pass. */
  private MassFlow largestToAtmosphere(Element element, AirState inlet, MassFlow tooMuch) {
    AirKernel passage = element.kernel();
    double[] air = new double[AirKernel.SIZE];
    DoublePredicate arrives = flow -> {
      RunKernel.put(inlet, air);
      return passage.pass(flow, air) && air[AirKernel.PASCALS] >= atmosphere.pascals();
    };
    return arrives.test(tooMuch.kilogramsPerSecond())
        ? tooMuch
        : MassFlow.ofKilogramsPerSecond(largest(0.0, tooMuch.kilogramsPerSecond(), arrives));
  }

  /** The largest flow [kg/s] that still passes, where {@code low} does and {@code high} does not. */
  private static double largest(double low, double high, DoublePredicate passes) {
    double best = low;
    double worst = high;
    for (int i = 0; i < 100 && worst - best > 2.0e-16 * worst; i++) {
      double middle = 0.5 * (best + worst);
      if (passes.test(middle)) {
        best = middle;
      } else {
        worst = middle;
      }
    }
    return best;
  }

  private void requireElements() {
    if (elements.isEmpty()) {
      throw new IllegalStateException(
          "a run needs at least one element between supply and tool, say through(…)");
    }
  }

  private List<ElementLoss> shares(
      MassFlow demand,
      AirState first,
      List<Element.Outcome> outcomes,
      AbsolutePressure end,
      boolean withGain) {
    double lost = first.pressure().pascals() - end.pascals();
    List<ElementLoss> shares = new ArrayList<>();
    AbsolutePressure inlet = first.pressure();
    for (int i = 0; i < outcomes.size(); i++) {
      Element.Outcome outcome = outcomes.get(i);
      AbsolutePressure outlet = outcome.outlet().pressure();
      PressureDrop drop = inlet.dropTo(outlet);
      double gain =
          withGain ? gain(demand, i, i == 0 ? first : outcomes.get(i - 1).outlet(), end) : 0.0;
      shares.add(new ElementLoss(
          elements.get(i).name(),
          inlet,
          outlet,
          drop,
          lost > 0.0 ? drop.pascals() / lost : 0.0,
          PressureDrop.ofPascals(gain),
          false,
          outcome.inletMach(),
          outcome.mach(),
          outcome.warnings(),
          outcome.working()));
      inlet = outlet;
    }
    return List.copyOf(shares);
  }

  /** How much more pressure [Pa] would arrive with one element left out, from the air in front of it on; none where the flow would not get there. */
  private double gain(MassFlow demand, int leftOut, AirState inFront, AbsolutePressure end) {
    double[] air = new double[AirKernel.SIZE];
    RunKernel.put(inFront, air);
    boolean arrives = kernel.lead(demand.kilogramsPerSecond(), air, leftOut + 1) == elements.size();
    return arrives ? Math.max(0.0, air[AirKernel.PASCALS] - end.pascals()) : 0.0;
  }

  /** The pressure [Pa] at the tool, or -1 where the flow does not get there. */
  private double pascalsAtTool(MassFlow demand) {
    return kernel.pascalsAtTool(demand.kilogramsPerSecond(), new double[AirKernel.SIZE]);
  }

  /**
   * Finds the largest flow that still arrives at a pressure.
   *
   * @param atTool the least pressure at the tool, not below the atmosphere
   * @return the flow, or empty where the supply itself is lower than {@code atTool}
   * @throws IllegalArgumentException if {@code atTool} is negative
   * @throws IllegalStateException if the run has no elements
   */
  public Optional<MassFlow> largestFlow(GaugePressure atTool) {
    requireNoVacuum(atTool);
    requireElements();
    double wanted = atTool.absolute(atmosphere).pascals();
    if (supply.still().pressure().pascals() < wanted) {
      return Optional.empty();
    }
    double[] air = new double[AirKernel.SIZE];
    DoublePredicate arrives = flow -> kernel.pascalsAtTool(flow, air) >= wanted;
    double low = 0.0;
    double high = 1.0e-3;
    while (arrives.test(high) && high < 1.0e6) {
      low = high;
      high *= 2.0;
    }
    return Optional.of(MassFlow.ofKilogramsPerSecond(largest(low, high, arrives)));
  }

  /**
   * Finds the flow and the pressure at which the tool and the run agree.
   *
   * <p>Found by halving the flow. Where a compressor's curve ends before the tool has what it would take, the supply is what starves it. Where an element chokes before the tool has what it would take, the pressure behind that element falls until the tool takes no more than passes.
   *
   * @param tool what the tool takes
   * @return the pressure at the tool and where the rest went; a tool of fixed flow may be starved
   * @throws IllegalStateException if the run has no elements
   */
  public RunResult balance(ToolDemand tool) {
    requireElements();
    if (!tool.followsPressure()) {
      return at(tool.flowAt(atmosphere, atmosphere));
    }
    double most = tool.flowAt(supply.still().pressure(), atmosphere).kilogramsPerSecond();
    double[] air = new double[AirKernel.SIZE];
    DoublePredicate takesIt = flow -> {
      double pascals = kernel.pascalsAtTool(flow, air);
      return pascals > 0.0 && tool.flowAt(pascals, atmosphere, tool.load()) >= flow;
    };
    double flow = takesIt.test(most) ? most : largest(0.0, most, takesIt);
    MassFlow balanced = MassFlow.ofKilogramsPerSecond(flow);
    return at(balanced)
        .fold(
            delivered -> withTool(delivered, tool, flow),
            // the last pascal below the atmosphere, where nothing is asked for either
            starved -> starved);
  }

  private RunResult withTool(RunResult.Delivered delivered, ToolDemand tool, double flow) {
    RunResult.Delivered whole = delivered;
    double arriving = delivered.atTool().pascals();
    boolean wantsMore = tool.flowAt(arriving, atmosphere, tool.load()) > flow * (1.0 + 1.0e-10);
    MassFlow slightlyMore = MassFlow.ofKilogramsPerSecond(flow * (1.0 + 1.0e-9));
    if (wantsMore && supply.at(slightlyMore).isEmpty()) {
      return at(slightlyMore);
    }
    int choking = wantsMore ? stopping(slightlyMore) : -1;
    if (choking >= 0) {
      whole = choked(delivered, choking, tool.pascalsFor(flow, arriving, atmosphere));
    }
    List<Worked> ends = new ArrayList<>(whole.ends());
    AbsolutePressure atTool = whole.atTool();
    ends.add(units -> tool.working(atTool, atmosphere, units));
    return new RunResult.Delivered(
        whole.massFlow(),
        whole.supply(),
        whole.atTool(),
        whole.atToolGauge(),
        whole.shares(),
        whole.cautions(),
        ends);
  }

  /** The element that does not pass a flow, or -1. */
  private int stopping(MassFlow demand) {
    double[] air = new double[AirKernel.SIZE];
    double flow = demand.kilogramsPerSecond();
    int at = kernel.enter(flow, air) ? kernel.lead(flow, air, 0) : elements.size();
    return at < elements.size() ? at : -1;
  }

  /** The same with the pressure behind a choking element lowered until the tool has what it takes. */
  private RunResult.Delivered choked(RunResult.Delivered passing, int choking, double atTool) {
    MassFlow flow = passing.massFlow();
    AirState inlet = supply.at(flow).orElseThrow();
    for (int i = 0; i < choking; i++) {
      inlet = elements.get(i).solve(flow, inlet).outlet();
    }
    AirState full = elements.get(choking).solve(flow, inlet).outlet();
    double[] behind = new double[AirKernel.SIZE];
    double low = atTool;
    double high = full.pressure().pascals();
    for (int i = 0; i < 100 && high - low > 1.0e-15 * high; i++) {
      double middle = 0.5 * (low + high);
      RunKernel.put(full, behind);
      behind[AirKernel.PASCALS] = middle;
      boolean arrives =
          kernel.lead(flow.kilogramsPerSecond(), behind, choking + 1) == elements.size();
      if (arrives && behind[AirKernel.PASCALS] >= atTool) {
        high = middle;
      } else {
        low = middle;
      }
    }
    List<Element.Outcome> outcomes = new ArrayList<>();
    AirState air = supply.at(flow).orElseThrow();
    for (int i = 0; i < elements.size(); i++) {
      Element.Outcome outcome = elements.get(i).solve(flow, air);
      AirState outlet =
          i == choking ? outcome.outlet().at(AbsolutePressure.ofPascals(high)) : outcome.outlet();
      outcomes.add(new Element.Outcome(
          true,
          outlet,
          flow,
          outcome.inletMach(),
          outcome.mach(),
          outcome.warnings(),
          outcome.working()));
      air = outlet;
    }
    AbsolutePressure end = air.pressure();
    List<ElementLoss> shares =
        new ArrayList<>(shares(flow, supply.at(flow).orElseThrow(), outcomes, end, true));
    ElementLoss share = shares.get(choking);
    shares.set(
        choking,
        new ElementLoss(
            share.name(),
            share.inlet(),
            share.outlet(),
            share.drop(),
            share.fraction(),
            share.gain(),
            true,
            share.inletMach(),
            share.outletMach(),
            share.warnings(),
            share.reached()));
    return new RunResult.Delivered(
        flow,
        passing.supply(),
        end,
        GaugePressure.of(end, atmosphere),
        List.copyOf(shares),
        cautions(passing.supply(), end),
        passing.ends());
  }

  /**
   * Finds the pressure the supply would need for a tool to have its own, and tells what raising it costs.
   *
   * @param tool what the tool takes
   * @param atTool the pressure the tool is to have, not below the atmosphere
   * @return the pressure needed, or empty where not even 1000 bar would do
   * @throws IllegalArgumentException if {@code atTool} is negative
   * @throws IllegalStateException if the run has no elements
   */
  public Optional<SupplyNeeded> supplyNeeded(ToolDemand tool, GaugePressure atTool) {
    requireNoVacuum(atTool);
    requireElements();
    AbsolutePressure wanted = atTool.absolute(atmosphere);
    MassFlow flow = tool.flowAt(wanted, atmosphere);
    AirState still = supply.still();
    DoublePredicate tooLow = pascals ->
        suppliedBy(Supply.fixed(still.at(AbsolutePressure.ofPascals(pascals)))).pascalsAtTool(flow)
            < wanted.pascals();
    double low = wanted.pascals();
    double high = low;
    while (tooLow.test(high)) {
      low = high;
      high *= 2.0;
      if (high > HIGHEST_SUPPLY_PASCALS) {
        return Optional.empty();
      }
    }
    for (int i = 0; i < 100 && high - low > 1.0e-14 * high; i++) {
      double middle = 0.5 * (low + high);
      if (tooLow.test(middle)) {
        low = middle;
      } else {
        high = middle;
      }
    }
    AbsolutePressure needed = AbsolutePressure.ofPascals(high);
    AbsolutePressure present = supply
        .at(flow)
        .filter(air -> air.pressure().compareTo(atmosphere) >= 0)
        .orElse(still)
        .pressure();
    return Optional.of(new SupplyNeeded(
        flow,
        present,
        needed,
        GaugePressure.of(needed, atmosphere),
        SupplyNeeded.work(still, atmosphere, present),
        SupplyNeeded.work(still, atmosphere, needed),
        suppliedBy(Supply.fixed(still.at(needed))).at(flow),
        List.of(Caution.MORE_SUPPLY_PRESSURE)));
  }

  static void requireNoVacuum(GaugePressure atTool) {
    if (atTool.pascals() < 0.0) {
      throw new IllegalArgumentException(
          "pressure at the tool must be at least 0 Pa(g), was " + atTool);
    }
  }

  /**
   * Ranks single changes by what the tool gains for the money.
   *
   * @param tool what the tool takes
   * @param changes changes to this run, each with the run after it and its price, all in one currency
   * @return the changes, most pressure at the tool for the money first
   * @throws IllegalArgumentException if the currencies differ
   */
  public List<RankedChange> rank(ToolDemand tool, List<Change> changes) {
    RunResult now = balance(tool);
    changes.forEach(change -> change.price().compareTo(changes.get(0).price())); // one currency
    return changes.stream()
        .map(change -> {
          RunResult then = change.run().balance(tool);
          return new RankedChange(
              change, then, gaugePascals(then) - gaugePascals(now), arriving(then) - arriving(now));
        })
        .sorted(Comparator.comparingDouble(RankedChange::pascalsPerUnit).reversed())
        .toList();
  }

  private static double gaugePascals(RunResult result) {
    return result.fold(delivered -> delivered.atToolGauge().pascals(), starved -> 0.0);
  }

  private static double arriving(RunResult result) {
    return result.fold(
        delivered -> delivered.massFlow().kilogramsPerSecond(),
        starved -> starved.largest().kilogramsPerSecond());
  }

  /**
   * Finds how much each input matters: by what part the whole loss changes when one input changes by a small part, all else the same.
   *
   * <pre>
   *   e = (x/Δp) ∂Δp/∂x
   * </pre>
   *
   * <p>Found from differences at 0.01 % to either side. An elasticity of −5 says that 1 % more of the input takes 5 % off the loss. Where friction jumps or an element chokes within that step, the input
   * is left out.
   *
   * @param demand the flow the tool takes, above 0
   * @return the inputs that matter, the strongest first; empty where the flow does not arrive
   * @throws IllegalArgumentException if {@code demand} is 0
   * @throws IllegalStateException if the run has no elements
   */
  public List<Sensitivity> sensitivities(MassFlow demand) {
    if (demand.kilogramsPerSecond() == 0.0) {
      throw new IllegalArgumentException("flow must be above 0 kg/s to have a loss, was 0 kg/s");
    }
    requireElements();
    List<Sensitivity> found = new ArrayList<>();
    if (!(at(demand) instanceof RunResult.Delivered)) {
      return List.of();
    }
    add(found, "the run", Sensitivity.Input.FLOW, part -> lost(demand.times(part)));
    add(
        found,
        "the run",
        Sensitivity.Input.SUPPLY_PRESSURE,
        part -> suppliedBy(Supply.fixed(first(demand, part))).lost(demand));
    for (int i = 0; i < elements.size(); i++) {
      int at = i;
      for (Sensitivity.Input input : Sensitivity.Input.of(elements.get(i))) {
        add(
            found,
            elements.get(i).name(),
            input,
            part -> withElement(at, input.scaled(elements.get(at), part)).lost(demand));
      }
    }
    found.sort(
        Comparator.comparingDouble((Sensitivity sensitivity) -> Math.abs(sensitivity.elasticity()))
            .reversed());
    return List.copyOf(found);
  }

  private AirState first(MassFlow demand, double part) {
    AirState air = supply.at(demand).orElseThrow();
    return air.at(AbsolutePressure.ofPascals(part * air.pressure().pascals()));
  }

  private Run withElement(int at, Element other) {
    List<Element> others = new ArrayList<>(elements);
    others.set(at, other);
    return new Run(supply, atmosphere, others);
  }

  /** The pressure [Pa] lost on the way, or NaN where the flow does not get there. */
  private double lost(MassFlow demand) {
    double end = pascalsAtTool(demand);
    return end > 0.0 ? supply.at(demand).orElseThrow().pressure().pascals() - end : Double.NaN;
  }

  private static void add(
      List<Sensitivity> found, String element, Sensitivity.Input input, DoubleUnaryOperator lost) {
    double step = 1.0e-4;
    double less = lost.applyAsDouble(1.0 - step);
    double here = lost.applyAsDouble(1.0);
    double more = lost.applyAsDouble(1.0 + step);
    double before = (here - less) / (step * here);
    double behind = (more - here) / (step * here);
    // a jump inside the step shows as two slopes that have nothing to do with each other; NaN fails
    // as well
    if (Math.abs(behind - before) <= 0.05 * (1.0 + Math.abs(before))) {
      found.add(new Sensitivity(element, input, 0.5 * (before + behind)));
    }
  }
}
