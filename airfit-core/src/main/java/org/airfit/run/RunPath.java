package org.airfit.run;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.DoubleUnaryOperator;
import org.airfit.air.AirState;
import org.airfit.flow.FlowElement;
import org.airfit.flow.FlowElements;
import org.airfit.internal.Later;
import org.airfit.internal.RootFinder;
import org.airfit.plant.Supply;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Temperature;
import org.airfit.safety.Caution;
import org.airfit.working.UnitSystem;

/**
 * What a run is made of, asked on plain doubles in SI by the searches of {@link Run}: supply, atmosphere, elements in
 * order.
 *
 * <p>{@link #pascalsAtTool} allocates nothing where the supply and the elements allocate nothing.
 */
final class RunPath {

  /** What a search leaves open, over what it looks for [-]. */
  static final double TOLERANCE = 1.0e-14;

  /** A flow that passes lies below the largest of an element by at most this part of it [-]. */
  private static final double JUST_BELOW = 1.0e-12;

  /** By how much a pressure is lowered, or a flow raised, to see what stops the flow [-]. */
  private static final double SLIGHTLY = 1.0e-9;

  /** A supply whose pressure falls by more than this part from one flow to the next jumps [-]. */
  private static final double JUMP = 1.0e-6;

  /** Where a search begins that gets nearer from any flow [kg/s]: what a common tool takes. */
  private static final double SOME_FLOW = 0.01;

  /** A step in the logarithm of the flow so short that its square is what is left of the way [-]. */
  private static final double CLOSE = 0.1;

  /** A step in the logarithm of the flow beyond which no tool and no line stands for another [-]. */
  private static final double FARTHEST_STEP = 20.0;

  /** Less than any tool takes [kg/s]. */
  private static final double LITTLE_FLOW = 1.0e-7;

  /** Our choice: a flow nearer than that to choking is searched for from there [-]. */
  private static final double NEXT_TO = 1.0e-3;

  /** A part of the largest flow whose loss is not hidden by rounding: its square counts in a double [-]. */
  private static final double PART = 1.0e-6;

  private static final int MOST_HALVINGS = 6;

  private static final int MOST_SECANTS = 8;

  /** More than any line carries [kg/s]: where nothing limits the flow, a search ends here. */
  private static final double MOST = 1.0e6;

  private final Supply supply;
  private final MassFlow others;
  private final AbsolutePressure atmosphere;
  private final List<Element> elements;
  private final Later<FlowElement> whole;
  private final AirState still;
  private final double kelvins;
  private final double viscosity;

  RunPath(Supply supply, MassFlow others, AbsolutePressure atmosphere, List<Element> elements) {
    this.supply = supply;
    this.others = others;
    this.atmosphere = atmosphere;
    this.elements = List.copyOf(elements);
    this.whole = Later.of(() -> behind(-1));
    this.still = supply.still();
    this.kelvins = still.temperature().kelvins();
    this.viscosity = still.viscosity().pascalSeconds();
    if (still.pressure().compareTo(atmosphere) < 0) {
      throw new IllegalArgumentException("supply pressure must be at least the atmosphere "
          + atmosphere.shown() + ", was " + still.pressure().shown());
    }
  }

  /** The same but for the elements; what follows from the supply is not found again. */
  private RunPath(RunPath like, List<Element> elements) {
    this.supply = like.supply;
    this.others = like.others;
    this.atmosphere = like.atmosphere;
    this.elements = List.copyOf(elements);
    this.whole = Later.of(() -> behind(-1));
    this.still = like.still;
    this.kelvins = like.kelvins;
    this.viscosity = like.viscosity;
  }

  Supply supply() {
    return supply;
  }

  AbsolutePressure atmosphere() {
    return atmosphere;
  }

  List<Element> elements() {
    return elements;
  }

  /** All elements as one. */
  FlowElement element() {
    return whole.get();
  }

  /** Whether an element has a name. */
  boolean hasElement(String name) {
    for (Element element : elements) {
      if (element.name().equals(name)) {
        return true;
      }
    }
    return false;
  }

  AirState still() {
    return still;
  }

  /** What goes with every answer about it but for the caution on its air. */
  List<Caution> cautions() {
    Set<Caution> all = new LinkedHashSet<>();
    all.add(Caution.MORE_SUPPLY_PRESSURE);
    elements.forEach(element -> all.addAll(element.cautions()));
    return List.copyOf(all);
  }

  /** With the caution on the air: the highest pressure, the densest air, is that of the supply at rest. */
  static List<Caution> withAir(List<Caution> cautions, AirState still, UnitSystem units) {
    List<Caution> all = new ArrayList<>(cautions);
    still.caution(units).ifPresent(caution -> all.add(1, caution));
    return List.copyOf(all);
  }

  RunPath suppliedBy(Supply other) {
    return new RunPath(other, others, atmosphere, elements);
  }

  RunPath of(List<Element> changed) {
    return new RunPath(this, changed);
  }

  /** The same with one element exchanged. */
  RunPath with(int at, Element other) {
    List<Element> changed = new ArrayList<>(elements);
    changed.set(at, elements.get(at).exchangedFor(other));
    return of(changed);
  }

  /** The same with others who take air at its end: the supply and all elements carry that as well. */
  RunPath sharedWith(MassFlow flow) {
    return new RunPath(
        supply,
        MassFlow.ofKilogramsPerSecond(others.kilogramsPerSecond() + flow.kilogramsPerSecond()),
        atmosphere,
        elements.stream().map(element -> Element.Shared.of(element, flow)).toList());
  }

  /** The flow of others that the supply gives beside that to the tool. */
  MassFlow others() {
    return others;
  }

  /** What the supply gives in all for a flow to the tool. */
  MassFlow fromSupply(MassFlow toTool) {
    return MassFlow.ofKilogramsPerSecond(toTool.kilogramsPerSecond() + others.kilogramsPerSecond());
  }

  /** The pressure [Pa] that the supply gives at a flow to the tool, that of the others beside it. */
  double given(double flow) {
    return supply.pascals(flow + others.kilogramsPerSecond());
  }

  /** The most [kg/s] that the supply gives to the tool, beside the others. */
  double mostGiven() {
    return Math.max(0.0, supply.largest() - others.kilogramsPerSecond());
  }

  /** The same with one element that loses nothing: a regulator still holds what it is set to. */
  RunPath without(int element) {
    Element lossy = elements.get(element);
    return with(element, new Element.Own(lossy.name(), new Lossless(lossy)));
  }

  /**
   * An element of which nothing is left but what it is set to, if it is a regulator.
   *
   * @param element the element
   */
  private record Lossless(Element element) implements FlowElement {

    @Override
    public double outlet(double flow, double pascals, double kelvins, double viscosity) {
      return element.withoutLoss(pascals);
    }

    @Override
    public double largest(double pascals, double kelvins, double viscosity) {
      return Double.POSITIVE_INFINITY;
    }
  }

  /** The elements behind one of them as one element; all of them behind -1. */
  private FlowElement behind(int element) {
    return FlowElements.inSeries(elements.subList(element + 1, elements.size()).stream()
        .map(Element::flow)
        .toList());
  }

  /** The pressure [Pa] that arrives at the tool, or NaN where the flow does not. */
  double pascalsAtTool(double flow) {
    double given = given(flow);
    return given > 0.0 ? whole.get().outlet(flow, given, kelvins, viscosity) : Double.NaN;
  }

  /** The pressure [Pa] that arrives at the tool from a pressure held at the supply, or NaN. */
  double pascalsAtTool(double flow, double held) {
    return whole.get().outlet(flow, held, kelvins, viscosity);
  }

  /** The pressure [Pa] that arrives at the tool where one element loses nothing, or NaN. */
  double pascalsWithout(int element, double flow, Pass pass) {
    Pass without = new Pass(elements.size());
    double held = elements.get(element).withoutLoss(pass.pascals(element));
    without.put(element + 1, held, pass.kelvins(element));
    lead(flow, without, element + 1);
    return without.atTool();
  }

  /** Leads a flow along, and keeps what is found on the way. */
  Pass pass(double flow) {
    Pass pass = new Pass(elements.size());
    double given = given(flow);
    if (given > 0.0) {
      pass.put(0, given, kelvins);
      lead(flow, pass, 0);
    }
    return pass;
  }

  /** Leads a flow on from the air in front of an element. */
  private void lead(double flow, Pass pass, int from) {
    double p = pass.pascals(from);
    double t = pass.kelvins(from);
    for (int i = from; i < elements.size(); i++) {
      FlowElement element = elements.get(i).flow();
      double outlet = element.outlet(flow, p, t, viscosity);
      if (outlet > 0.0) {
        t = element.outletKelvins(flow, p, t, viscosity);
        pass.put(i + 1, outlet, t);
      } else {
        return;
      }
      p = outlet;
    }
  }

  /**
   * The pass of a flow at which friction jumps, a part of the way over the jump. At that flow a line has any loss
   * between that before and that behind the jump. So it is with a supply that gives one flow at many pressures.
   *
   * @param flow the flow just before the jump [kg/s]
   * @param more a flow just behind it [kg/s]
   * @param ofSupply the part of the way of the supply [-], in [0, 1]
   * @param ofLines the part of the way of all lines that jump [-], in [0, 1]
   * @return the pass, the lines that jump marked
   */
  Pass standing(double flow, double more, double ofSupply, double ofLines) {
    Pass pass = new Pass(elements.size());
    double p = between(given(flow), given(more), ofSupply);
    double t = kelvins;
    pass.put(0, p, t);
    for (int i = 0; i < elements.size() && p > 0.0; i++) {
      FlowElement element = elements.get(i).flow();
      double outlet = element.outlet(flow, p, t, viscosity);
      if (element.nextJump(flow, viscosity) <= more) {
        pass.markUnsettled(i);
        outlet = between(outlet, element.outlet(more, p, t, viscosity), ofLines);
      }
      t = element.outletKelvins(flow, p, t, viscosity);
      p = outlet;
      pass.put(i + 1, p, t);
    }
    return pass;
  }

  /** A part of the way from one pressure [Pa] to another, which is 0 where the flow does not pass. */
  private static double between(double before, double behind, double part) {
    return (1.0 - part) * before + part * (behind > 0.0 ? behind : 0.0);
  }

  /**
   * The pass of a flow at a jump at which a pressure arrives at the tool; where the flow chokes on the way to that, the
   * last with which it still arrives.
   *
   * @param flow the flow just before the jump [kg/s]
   * @param more a flow just behind it [kg/s]
   * @param atTool the pressure to arrive at the tool [Pa], at most what arrives of the flow and at least what arrives
   *     of more
   * @return the pass; {@link Pass#least} and {@link Pass#most} tell of the two sides of the jump where friction jumps
   */
  Pass standing(double flow, double more, double atTool) {
    DoubleUnaryOperator missing =
        part -> atTool - standing(flow, more, part, part).atTool();
    double atFar = missing.applyAsDouble(1.0);
    double part = atFar <= 0.0
        ? 1.0
        : RootFinder.find(
            missing, 0.0, Math.min(0.0, missing.applyAsDouble(0.0)), 1.0, atFar, TOLERANCE);
    return withSides(standing(flow, more, part, part), flow, more, part);
  }

  /** Whether friction in a line, or the pressure of the supply, jumps between two flows [kg/s] next to each other. */
  boolean jumps(double flow, double more) {
    return given(more) < given(flow) * (1.0 - JUMP) || element().nextJump(flow, viscosity) <= more;
  }

  /** The first element that passes no more of a flow [kg/s] with a little less pressure in front; or their number. */
  int chokingAlong(Pass pass, double flow) {
    int i = 0;
    while (i < elements.size()
        && elements
                .get(i)
                .flow()
                .outlet(flow, pass.pascals(i) * (1.0 - SLIGHTLY), pass.kelvins(i), viscosity)
            > 0.0) {
      i++;
    }
    return i;
  }

  /** Notes what arrives on both sides of a jump of friction; never less than the atmosphere. */
  private Pass withSides(Pass pass, double flow, double more, double ofSupply) {
    boolean jumps = false;
    for (int i = 0; i < elements.size(); i++) {
      jumps |= pass.unsettled(i);
    }
    if (jumps) {
      double behind = standing(flow, more, ofSupply, 1.0).atTool();
      double least = behind > atmosphere.pascals() ? behind : atmosphere.pascals();
      pass.between(least, standing(flow, more, ofSupply, 0.0).atTool());
    }
    return pass;
  }

  /** The pass of a flow [kg/s] just before a jump, if it stands at one. */
  Pass before(double flow, double more) {
    return withSides(standing(flow, more, 0.0, 0.0), flow, more, 0.0);
  }

  /**
   * A flow [kg/s] so little above one found by a search that only a jump or an end lies between them; none above none.
   */
  double justAbove(double flow) {
    return flow == 0.0 ? 0.0 : Math.max(flow * (1.0 + SLIGHTLY), flow + 4.0 * TOLERANCE * bound());
  }

  /**
   * Lowers the pressure behind a choking element until another pressure arrives at the tool. Where that is not to be
   * had because an element further on then chokes as well, the pressure behind that one is lowered too, and so on to
   * the tool: a flow that chokes fixes no pressure behind the place.
   *
   * @param pass the pass of the flow at the pressures at which the element just chokes; it is changed
   * @param flow the flow [kg/s]
   * @param choking the first element that chokes
   * @param atTool the pressure to arrive at the tool [Pa], at most that of the pass
   * @return the pass, its choking elements marked
   */
  Pass lowered(Pass pass, double flow, int choking, double atTool) {
    int element = choking;
    while (element < elements.size()) {
      pass.markChoking(element);
      double behind = pascalsBehind(element, flow, pass, atTool);
      double t = pass.kelvins(element + 1);
      pass.put(element + 1, behind, t);
      lead(flow, pass, element + 1);
      // slightly less pressure behind it, and the flow does not get past the next one that chokes
      Pass less = new Pass(elements.size());
      less.put(element + 1, behind * (1.0 - SLIGHTLY), t);
      lead(flow, less, element + 1);
      element = less.endsAt(element + 1) - 1;
    }
    pass.put(elements.size(), atTool, pass.kelvins(elements.size()));
    return pass;
  }

  /** The air of a pass in front of an element; of their number, at the tool. */
  AirState air(Pass pass, int element) {
    AbsolutePressure pressure = AbsolutePressure.ofPascals(pass.pascals(element));
    return pass.kelvins(element) == kelvins
        ? still.at(pressure)
        : AirState.of(pressure, Temperature.ofKelvins(pass.kelvins(element)))
            .withViscosity(still.viscosity());
  }

  /** Above every flow [kg/s] that gets to the tool, or the largest that does. */
  double bound() {
    double passes = whole.get().largest(still.pressure().pascals(), kelvins, viscosity);
    double most = Math.min(MOST, Math.min(passes, mostGiven()));
    // from a supply that sags the air may cool more on the way to a regulator, and a little more of
    // it chokes behind
    while (most == passes && pascalsAtTool(most * (1.0 + SLIGHTLY)) > 0.0) {
      passes *= 1.0 + NEXT_TO;
      most = Math.min(MOST, Math.min(passes, mostGiven()));
    }
    return most;
  }

  /**
   * The end of the flows that get somewhere.
   *
   * @param flow the last of them [kg/s]
   * @param more so little above it that only a jump or an end lies between them [kg/s]; none above none
   * @param isPassedByMore whether it is known that more gets there as well, with less left
   */
  record Last(double flow, double more, boolean isPassedByMore) {}

  /** The largest flow that gets to the tool with at least a pressure [Pa] left there; none where no air stands there. */
  Optional<Last> largest(double least) {
    double found = largestByPowers(least);
    if (found > 0.0 && !isNextToChoking(found)) {
      return Optional.of(new Last(found, found * (1.0 + SLIGHTLY), true));
    }
    double atRest = pascalsAtTool(0.0);
    if (!(atRest >= least)) {
      return Optional.empty();
    }
    double bound = bound();
    // all that stands there at rest is left of a flow only where a regulator holds it, not where
    // rounding hides the loss
    boolean isForNone = atRest == least && !(pascalsAtTool(PART * bound) >= least);
    double flow = isForNone ? 0.0 : largest(this::pascalsAtTool, least, bound);
    return Optional.of(new Last(flow, justAbove(flow), false));
  }

  /**
   * The same where nothing chokes or jumps on the way, otherwise NaN.
   *
   * <p>The loss of the squares of pressures, p₀² − p², goes nearly with a power of the flow. A secant through the
   * logarithms of both finds the flow in a few steps, from any flow that passes. A search between two flows close to it
   * has the last word.
   */
  private double largestByPowers(double least) {
    double atRest = given(0.0);
    double flow = SOME_FLOW;
    double left = pascalsAtTool(flow);
    while (Double.isNaN(left) && flow > LITTLE_FLOW) {
      flow *= 0.25;
      left = pascalsAtTool(flow);
    }
    double power = 2.0;
    double uncertain = 0.0;
    for (int i = 0; i < MOST_SECANTS; i++) {
      double step = logOfLost(atRest, least, left) / power;
      if (!(Math.abs(step) <= FARTHEST_STEP)) {
        return Double.NaN;
      }
      // so far beyond the place looked for that it lies between the two
      double next = flow * Math.exp(step * (1.0 + uncertain));
      double then = pascalsAtTool(next);
      if (Math.abs(step) <= CLOSE && then < least != left < least) {
        boolean isNextWithin = left < least;
        return RootFinder.find(
            f -> least - pascalsAtTool(f),
            isNextWithin ? next : flow,
            least - Math.max(left, then),
            isNextWithin ? flow : next,
            least - Math.min(left, then),
            flow + (next - flow) * (left - least) / (left - then),
            TOLERANCE * next);
      }
      power = logOfLost(atRest, then, left) / Math.log(next / flow);
      uncertain = Math.abs(step);
      flow = next;
      left = then;
    }
    return Double.NaN;
  }

  /** ln of how many times more is lost of the squares of pressures [Pa] with one left than with another. */
  private static double logOfLost(double atRest, double one, double other) {
    return Math.log((atRest - one) * (atRest + one) / ((atRest - other) * (atRest + other)));
  }

  /** The largest flow [kg/s] from none up that still gets somewhere, with at least a pressure [Pa] left there. */
  static double largest(Outlet outlet, double least, double bound) {
    return last(flow -> least - outlet.pascals(flow), bound);
  }

  /**
   * The same of a function of what arrives at the tool, which is NaN from the flow on that does not get there. Where
   * the most does not, halving soon finds a flow that gets there with too little left, and one with enough, if choking
   * is not what ends the flow.
   */
  double lastArriving(DoubleUnaryOperator function, double most) {
    double atMost = function.applyAsDouble(most);
    if (!Double.isNaN(atMost)) {
      return last(function, most, atMost);
    }
    double within = 0.0;
    double atWithin = Double.NaN;
    double beyond = most;
    double atBeyond = atMost;
    for (int i = 0; i < MOST_HALVINGS && (within == 0.0 || Double.isNaN(atBeyond)); i++) {
      double middle = 0.5 * (within + beyond);
      double atMiddle = function.applyAsDouble(middle);
      if (atMiddle <= 0.0) {
        within = middle;
        atWithin = atMiddle;
      } else {
        beyond = middle;
        atBeyond = atMiddle;
      }
    }
    if (atWithin < 0.0 && atBeyond > 0.0) {
      double found =
          RootFinder.find(function, within, atWithin, beyond, atBeyond, TOLERANCE * within);
      if (!isNextToChoking(found)) {
        return found;
      }
    }
    return last(function, Math.min(most, bound()));
  }

  /** Whether a flow [kg/s] is so near to what lets no more through that the last digits of it decide what is left. */
  private boolean isNextToChoking(double flow) {
    return Double.isNaN(pascalsAtTool(flow * (1.0 + NEXT_TO)));
  }

  /** The pressure [Pa] somewhere at a flow [kg/s], or NaN where the flow does not get there. */
  interface Outlet {
    double pascals(double flow);
  }

  /**
   * The last flow [kg/s] from none up at which a function that rises with the flow is not above 0; none where it is at
   * no flow.
   */
  static double last(DoubleUnaryOperator function, double bound) {
    return last(function, bound, function.applyAsDouble(bound));
  }

  /** The same from the value known at the bound. */
  private static double last(DoubleUnaryOperator function, double bound, double atBound) {
    double atNone = function.applyAsDouble(0.0);
    if (!(atNone <= 0.0)) {
      return 0.0;
    }
    if (atBound <= 0.0) {
      return bound;
    }
    if (atBound > 0.0) {
      return RootFinder.find(
          function,
          0.0,
          atNone,
          bound,
          atBound,
          bound * atNone / (atNone - atBound),
          Math.max(TOLERANCE * bound, Double.MIN_VALUE));
    }
    double just = bound * (1.0 - JUST_BELOW);
    double atJust = function.applyAsDouble(just);
    return atJust <= 0.0
        ? just
        : RootFinder.find(
            function, 0.0, atNone, just, atJust, Math.max(TOLERANCE * bound, Double.MIN_VALUE));
  }

  /** The least pressure [Pa] behind a choking element at which at least a pressure arrives at the tool. */
  private double pascalsBehind(int choking, double flow, Pass pass, double atTool) {
    FlowElement rest = behind(choking);
    double t = pass.kelvins(choking + 1);
    double full = pass.pascals(choking + 1);
    DoubleUnaryOperator missing = pascals -> atTool - rest.outlet(flow, pascals, t, viscosity);
    return missing.applyAsDouble(atTool) <= 0.0
        ? atTool
        : RootFinder.find(missing, full, atTool, TOLERANCE * atTool);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof RunPath that
        && supply.equals(that.supply)
        && others.equals(that.others)
        && atmosphere.equals(that.atmosphere)
        && elements.equals(that.elements);
  }

  @Override
  public int hashCode() {
    return Objects.hash(supply, others, atmosphere, elements);
  }
}
