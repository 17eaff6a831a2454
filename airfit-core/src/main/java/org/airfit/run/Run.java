package org.airfit.run;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.flow.FlowElement;
import org.airfit.internal.Digits;
import org.airfit.line.Conduit;
import org.airfit.line.LossModel;
import org.airfit.line.LossModels;
import org.airfit.plant.Supply;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureUnit;
import org.airfit.safety.Medium;
import org.jspecify.annotations.Nullable;

/**
 * The way of the air from a supply through pipes, couplers and hoses to a tool.
 *
 * <p>Where the pressure goes, element by element:
 *
 * <pre>{@code
 * import org.airfit.air.AirState;
 * import org.airfit.flow.FlowCapacity;
 * import org.airfit.line.Conduit;
 * import org.airfit.line.Wall;
 * import org.airfit.quantity.AbsolutePressure;
 * import org.airfit.quantity.FreeAirFlow;
 * import org.airfit.quantity.GaugePressure;
 * import org.airfit.quantity.Length;
 * import org.airfit.quantity.SonicConductance;
 * import org.airfit.quantity.Temperature;
 * import org.airfit.run.Run;
 * import org.airfit.run.RunResult;
 * import org.airfit.working.UnitSystem;
 *
 * class WhereItGoes {
 *   public static void main(String[] args) {
 *     AbsolutePressure atmosphere = AbsolutePressure.STANDARD_ATMOSPHERE;
 *     AirState supply = AirState.of(
 *         GaugePressure.parse("90 psig").absolute(atmosphere), Temperature.parse("68 °F"));
 *     FlowCapacity coupling = FlowCapacity.of(SonicConductance.parse("6 dm³/(s·bar)"), 0.3);
 *     Conduit hose = Conduit.of(Length.parse("3/8 in"), Length.parse("50 ft"), Wall.SMOOTH_RUBBER_HOSE);
 *     RunResult.Delivered fed = (RunResult.Delivered) Run.from(supply, atmosphere)
 *         .through("coupling", coupling)
 *         .through("hose", hose)
 *         .at(FreeAirFlow.parse("20 scfm"));
 *     System.out.println(UnitSystem.US.say(fed.atToolGauge())); // 79.5 psig
 *     System.out.println(fed.bottleneck().name()); // hose
 *   }
 * }
 * }</pre>
 *
 * <p>This class is immutable and thread-safe; {@code through} returns a longer run.
 */
public final class Run {

  private final RunPath path;

  private Run(RunPath path) {
    this.path = path;
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
    return from(Supply.fixed(Objects.requireNonNull(supply, "supply")), atmosphere);
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
    return new Run(new RunPath(
        Objects.requireNonNull(supply, "supply"),
        MassFlow.ofKilogramsPerSecond(0.0),
        Objects.requireNonNull(atmosphere, "atmosphere"),
        List.of()));
  }

  /**
   * Leads the run through a pipe, tube or hose, with the isothermal model.
   *
   * @param name what to call it, different from the other elements
   * @param conduit the pipe, tube or hose
   * @return the longer run
   * @throws IllegalArgumentException if an element of this run has that name
   */
  public Run through(String name, Conduit conduit) {
    return through(name, conduit, LossModels.isothermal());
  }

  /**
   * Leads the run through a pipe, tube or hose.
   *
   * @param name what to call it, different from the other elements
   * @param conduit the pipe, tube or hose
   * @param model how its loss is found
   * @return the longer run
   * @throws IllegalArgumentException if an element of this run has that name
   */
  public Run through(String name, Conduit conduit, LossModel model) {
    return with(new Element.Line(
        Objects.requireNonNull(name, "name"),
        Objects.requireNonNull(conduit, "conduit"),
        Objects.requireNonNull(model, "model")));
  }

  /**
   * Leads the run through a coupler, valve, filter or the like.
   *
   * @param name what to call it, different from the other elements
   * @param capacity how much it lets through
   * @return the longer run
   * @throws IllegalArgumentException if an element of this run has that name
   */
  public Run through(String name, FlowCapacity capacity) {
    return with(new Element.Part(
        Objects.requireNonNull(name, "name"), Objects.requireNonNull(capacity, "capacity")));
  }

  /**
   * Leads the run through an element of one's own, such as the table of a filter's sheet.
   *
   * @param name what to call it, different from the other elements
   * @param element what it does to the air, such as {@link org.airfit.flow.FlowElements#ofTable}
   * @return the longer run
   * @throws IllegalArgumentException if an element of this run has that name
   */
  public Run through(String name, FlowElement element) {
    return with(new Element.Own(
        Objects.requireNonNull(name, "name"), Objects.requireNonNull(element, "element")));
  }

  /**
   * Tells that others take air at the end of this run, as behind a splitter: the supply and all elements so far carry it
   * beside the air of the tool, those that follow do not.
   *
   * @param flow the flow of the others
   * @return the run shared with them
   */
  public Run sharedWith(FreeAirFlow flow) {
    return new Run(path.sharedWith(Objects.requireNonNull(flow, "flow").massFlow()));
  }

  private Run with(Element element) {
    if (path.hasElement(element.name())) {
      throw new IllegalArgumentException(
          "name of an element must differ from the others of the run, "
              + names() + ", was \"" + element.name() + "\" again; say which, such as \""
              + element.name() + " 2\"");
    }
    int count = path.elements().size();
    Element[] longer = path.elements().toArray(new Element[count + 1]);
    longer[count] = element;
    return new Run(path.of(List.of(longer)));
  }

  /**
   * Obtains this run with the line of a name replaced.
   *
   * @param name the name of a pipe, tube or hose of this run
   * @param conduit what to put in its place
   * @return this with {@code conduit}
   * @throws IllegalArgumentException if no line has that name
   */
  public Run replacing(String name, Conduit conduit) {
    Objects.requireNonNull(conduit, "conduit");
    return mapping(
        name,
        "a line",
        element -> element instanceof Element.Line line
            ? new Element.Line(name, conduit, line.model())
            : null);
  }

  /**
   * Obtains this run with the part of a name replaced.
   *
   * @param name the name of a coupler, valve, filter or the like of this run
   * @param capacity what to put in its place
   * @return this with {@code capacity}
   * @throws IllegalArgumentException if no part has that name
   */
  public Run replacing(String name, FlowCapacity capacity) {
    Objects.requireNonNull(capacity, "capacity");
    return mapping(
        name,
        "a part",
        element -> element instanceof Element.Part ? new Element.Part(name, capacity) : null);
  }

  /**
   * Obtains this run with the element of one's own of a name replaced.
   *
   * @param name the name of an element of one's own of this run
   * @param other what to put in its place
   * @return this with {@code other}
   * @throws IllegalArgumentException if no element of one's own has that name
   */
  public Run replacing(String name, FlowElement other) {
    Objects.requireNonNull(other, "other");
    return mapping(
        name,
        "an element of one's own",
        element -> element instanceof Element.Own ? new Element.Own(name, other) : null);
  }

  /** What becomes of an element; null where it is not of the kind asked for. */
  private interface Exchange {
    @Nullable
    Element of(Element element);
  }

  private Run mapping(String name, String kind, Exchange exchange) {
    Objects.requireNonNull(name, "name");
    List<Element> others = new ArrayList<>();
    boolean found = false;
    for (Element element : path.elements()) {
      Element other = element.name().equals(name) ? exchange.of(element.alone()) : null;
      found |= other != null;
      others.add(other != null ? element.exchangedFor(other) : element);
    }
    if (!found) {
      throw new IllegalArgumentException("name must be that of " + kind + " of this run, of "
          + names() + ", was \"" + name + "\"");
    }
    return new Run(path.of(others));
  }

  /** {@return the same on plain doubles} */
  RunPath path() {
    return path;
  }

  /** {@return its elements in a row on plain doubles, without the supply, for whoever asks at many pressures} */
  public FlowElement element() {
    return path.element();
  }

  /** {@return the names of its elements, in the order the air goes} */
  public List<String> names() {
    return path.elements().stream().map(Element::name).toList();
  }

  /**
   * Obtains the pipe, tube or hose of a name.
   *
   * @param name the name of an element of this run
   * @return the conduit; empty where the element is none, such as a coupler
   * @throws IllegalArgumentException if no element has that name
   */
  public Optional<Conduit> conduit(String name) {
    Objects.requireNonNull(name, "name");
    Element named = path.elements().stream()
        .filter(element -> element.name().equals(name))
        .findFirst()
        .orElseThrow(
            () -> new IllegalArgumentException("name must be that of an element of this run, of "
                + names() + ", was \"" + name + "\""));
    return named.alone() instanceof Element.Line line
        ? Optional.of(line.conduit())
        : Optional.empty();
  }

  /**
   * Obtains this run without the element of a name.
   *
   * @param name the name of an element of this run
   * @return this without it
   * @throws IllegalArgumentException if no element has that name
   */
  public Run without(String name) {
    Objects.requireNonNull(name, "name");
    List<Element> others =
        path.elements().stream().filter(element -> !element.name().equals(name)).toList();
    if (others.size() == path.elements().size()) {
      throw new IllegalArgumentException(
          "name must be that of an element of this run, of " + names() + ", was \"" + name + "\"");
    }
    return new Run(path.of(others));
  }

  /**
   * Obtains this run with all its lines computed by one model, such as adiabatic flow.
   *
   * @param model the model
   * @return this by {@code model}
   */
  public Run by(LossModel model) {
    Objects.requireNonNull(model, "model");
    return each(element -> element.alone() instanceof Element.Line line
        ? element.exchangedFor(new Element.Line(line.name(), line.conduit(), model))
        : element);
  }

  /**
   * Obtains this run as it may be after years: every element loses more, by a factor of the user's own.
   *
   * <p>A line's λL/D + ΣK is multiplied by it; a part's C is divided by its root, which multiplies the drop far from
   * choking.
   *
   * @param factor the factor on the loss [-], in [1, 10]
   * @return this with a margin for wear and dirt
   * @throws IllegalArgumentException if {@code factor} is out of range
   */
  public Run withLossFactor(double factor) {
    if (!(factor >= 1.0 && factor <= 10.0)) {
      throw new IllegalArgumentException(
          "factor on the loss must be in [1, 10], was " + Digits.told(factor));
    }
    return each(element -> element.withLossFactor(factor));
  }

  private Run each(UnaryOperator<Element> change) {
    return new Run(path.of(path.elements().stream().map(change).toList()));
  }

  /**
   * Obtains this run from another supply.
   *
   * @param other what feeds it
   * @return this from {@code other}
   * @throws IllegalArgumentException if it is below the atmosphere while nothing flows
   */
  public Run suppliedBy(Supply other) {
    return new Run(path.suppliedBy(Objects.requireNonNull(other, "other")));
  }

  /**
   * Tells what this run carries. It is compressed air for tools: nothing of a run is computed for anything else.
   *
   * @param medium what it carries
   * @return this
   * @throws IllegalArgumentException with the reason if it is anything but compressed air
   */
  public Run carrying(Medium medium) {
    Objects.requireNonNull(medium, "medium").requireCompressedAir();
    return this;
  }

  /** {@return the air at the supply while nothing flows} */
  public AirState stillAir() {
    return path.still();
  }

  /** {@return what feeds this run} */
  public Supply supply() {
    return path.supply();
  }

  /** {@return the pressure against which gauges read} */
  public AbsolutePressure atmosphere() {
    return path.atmosphere();
  }

  /**
   * Finds what arrives at the tool.
   *
   * @param demand the flow the tool takes
   * @return the pressure at the tool and where the rest went, or the element that chokes
   */
  public RunResult at(FreeAirFlow demand) {
    return at(Objects.requireNonNull(demand, "demand").massFlow());
  }

  /**
   * Finds what arrives at the tool.
   *
   * @param demand the flow the tool takes
   * @return the pressure at the tool and where the rest went, or the element that chokes
   * @throws IllegalStateException if the run has no elements
   */
  public RunResult at(MassFlow demand) {
    Objects.requireNonNull(demand, "demand");
    requireElements();
    return RunAnswers.at(path, demand);
  }

  /**
   * Finds the pressure at the tool alone, for whoever tries many flows or parts: much faster than {@link #at(FreeAirFlow)},
   * which also tells where the rest went.
   *
   * @param demand the flow the tool takes
   * @return the pressure at the tool, empty where the air does not get there
   * @throws IllegalStateException if the run has no elements
   */
  public Optional<GaugePressure> arriving(FreeAirFlow demand) {
    double flow = Objects.requireNonNull(demand, "demand").massFlow().kilogramsPerSecond();
    requireElements();
    double atmosphere = path.atmosphere().pascals();
    double found = path.pascalsAtTool(flow);
    return found >= atmosphere
        ? Optional.of(GaugePressure.ofPascals(found - atmosphere))
        : Optional.empty();
  }

  private void requireElements() {
    if (path.elements().isEmpty()) {
      throw new IllegalStateException(
          "a run needs at least one element between supply and tool, say through(…)");
    }
  }

  /**
   * Finds the largest flow that still arrives at a pressure.
   *
   * @param atTool the least pressure at the tool, not below the atmosphere
   * @return the flow, or empty where less than {@code atTool} is at the tool also without flow: a compressor counts at
   *     cut-in
   * @throws IllegalArgumentException if {@code atTool} is negative
   * @throws IllegalStateException if the run has no elements
   */
  public Optional<LargestFlow> largestFlow(GaugePressure atTool) {
    requireNoVacuum(Objects.requireNonNull(atTool, "atTool"));
    requireElements();
    return LargestFlow.of(path, atTool);
  }

  /**
   * Finds the flow and the pressure at which the tool and the run agree.
   *
   * <p>Where a compressor's curve ends before the tool has what it would take, the supply is what starves it. Where an
   * element chokes before that, the pressure behind that element falls until the tool takes no more than passes. Where
   * friction jumps at Re 2300, no flow may meet both: the answer then stands at the jump, at the pressure at which the
   * tool takes that flow, and {@link RunResult.Delivered#jump} tells between which pressures that lies.
   *
   * @param tool what the tool takes
   * @return the pressure at the tool and where the rest went; a tool of fixed flow may be starved
   * @throws IllegalStateException if the run has no elements
   */
  public RunResult balance(ToolDemand tool) {
    Objects.requireNonNull(tool, "tool");
    requireElements();
    return RunAnswers.balance(path, tool);
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
    Objects.requireNonNull(tool, "tool");
    requireNoVacuum(Objects.requireNonNull(atTool, "atTool"));
    requireElements();
    return SupplyNeeded.of(path, tool, atTool);
  }

  /** Whether what arrives is at least a pressure, at a jump of friction on its lower side too. */
  boolean keeps(GaugePressure least, RunResult arriving) {
    return arriving.fold(
        delivered -> GaugePressure.of(delivered.leastAtTool(), atmosphere()).compareTo(least) >= 0,
        starved -> false);
  }

  static void requireNoVacuum(GaugePressure atTool) {
    if (atTool.pascals() < 0.0) {
      throw new IllegalArgumentException(
          "pressure at the tool must be at least 0 Pa(g), was " + atTool.shown());
    }
  }

  /**
   * Finds how much each input matters: by what part the whole loss changes when one input changes by a small part,
   * all else the same.
   *
   * <pre>
   *   e = (x/Δp) ∂Δp/∂x
   * </pre>
   *
   * <p>Found from differences at 0.01 % to either side. An elasticity of −5 says that 1 % more of the input takes 5 %
   * off the loss. Where friction jumps or an element chokes within that step, the input
   * is left out.
   *
   * @param demand the flow the tool takes, above 0
   * @return the inputs that matter, the strongest first; empty where the flow does not arrive
   * @throws IllegalArgumentException if {@code demand} is 0
   * @throws IllegalStateException if the run has no elements
   */
  public List<Sensitivity> sensitivities(MassFlow demand) {
    if (Objects.requireNonNull(demand, "demand").kilogramsPerSecond() == 0.0) {
      throw new IllegalArgumentException("flow must be above 0 kg/s to have a loss, was 0 kg/s");
    }
    requireElements();
    return Sensitivity.of(path, demand);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Run that && path.equals(that.path);
  }

  @Override
  public int hashCode() {
    return path.hashCode();
  }

  /** {@return the run in one line, such as "8 bar(a) through coupling, hose"} */
  @Override
  public String toString() {
    return path.still().pressure().format(PressureUnit.BAR) + " through "
        + String.join(", ", names());
  }
}
