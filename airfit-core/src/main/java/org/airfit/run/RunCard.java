package org.airfit.run;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.flow.FlowElement;
import org.airfit.internal.Digits;
import org.airfit.line.Conduit;
import org.airfit.line.FrictionLaw;
import org.airfit.line.LineLoss;
import org.airfit.plant.RegulatorElement;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.source.Source;
import org.airfit.working.ChartAxis;
import org.airfit.working.Formula;
import org.airfit.working.PencilCard;
import org.airfit.working.PencilChart;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;

/**
 * What arrives at the tool as a pencil card: pressures from element to element, the friction factor and the curve of
 * ISO 6358 read off figures.
 *
 * <pre>
 *   line:  Re = 4 ṁ / (π D μ);  λ from figure;  a = G² R T/p1²;  k = λ L/D + ΣK;  p2 = p1 √(1 − a k (1 + a))
 *   part:  q = ṁ / (C ρ0 p1 √(T0/T));  φ = √(1 − q^(1/m)) from figure;  p2 = b p1 + ((1 − b) p1 − Δpc) φ
 * </pre>
 *
 * <p>The line's last equation stands for that of isothermal flow, p1² − p2² = G² R T (k + 2 ln(p1/p2)), which no pencil
 * solves: −2 ln(p2/p1) is a k in first order. What that leaves out is part of the distance that the card proves.
 *
 * <p>A regulator that has more in front than it is set to holds the pressure behind it, which is given with its droop.
 * Any other element for which no pencil has an equation keeps its drop as it was computed, rounded, and the card says
 * so.
 */
final class RunCard {

  /** From here on a part is so near to choking, or a line loses so much, that a ruler tells nothing [-]; our choice. */
  private static final double NEAR_CHOKING = 0.9;

  /** Between these Reynolds numbers the figure is drawn [-]. */
  private static final double LEAST_REYNOLDS = 100.0;

  private static final double MOST_REYNOLDS = 1.0e8;

  /** How high a figure is, and how wide beside another or alone [mm]. */
  private static final double HEIGHT = 70.0;

  /** How high it is where a run has so many elements that all would not stand on one side [mm]. */
  private static final double LOW = 50.0;

  private static final int MANY = 5;

  private static final double LINES_BESIDE = 56.0;
  private static final double PARTS_BESIDE = 80.0;
  private static final double WIDE = 120.0;

  /** Where the upright axis of the curve of ISO 6358 may begin: so high as shows what is needed. */
  private static final double[] LOWEST = {0.98, 0.95, 0.9, 0.8, 0.6, 0.4, 0.2, 0.0};

  private static final double[] NICE = {1.0, 1.5, 2.0, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0};

  private static final Source DERIVED =
      Source.derived("the equations of the run in units of a pencil");

  private static final ValueKind GRAMS =
      ValueKind.of("kg/s", "g/s", 1.0e-3, "lb/min", 0.453_592_37 / 60.0);
  private static final ValueKind CENTIPOISE = ValueKind.only("Pa·s", "mPa·s", 1.0e-3);
  private static final ValueKind CONDUCTANCE = ValueKind.of(
      "m³/(s·Pa)",
      "L/(s·bar)",
      1.0e-8,
      "cfm ANR/psi",
      0.3048 * 0.3048 * 0.3048 / 60.0 / 6_894.757_293_168_361);

  private static final Symbol FLOW = Symbol.of("ṁ", GRAMS);
  private static final Symbol KELVINS = Symbol.of("T", ValueKind.TEMPERATURE);
  private static final Symbol VISCOSITY = Symbol.of("μ", CENTIPOISE);
  private static final Symbol ATMOSPHERE = Symbol.of("pa", ValueKind.SAID_PRESSURE);
  private static final Symbol AT_SUPPLY = Symbol.of("pg", ValueKind.SAID_PRESSURE);
  private static final Symbol AT_TOOL = Symbol.of("pt", ValueKind.SAID_PRESSURE);
  private static final Symbol LOST = Symbol.of("Δp", ValueKind.SAID_PRESSURE);

  private final Arrival arrival;
  private final RunPath path;
  private final UnitSystem units;
  private final PencilCard.Builder card;
  private final List<ElementLoss> shares;

  /** Of each element the line that a pencil can follow; empty for all else. */
  private final List<Optional<Conduit>> lines;

  /** Of each element the part that a pencil can follow; empty for all else. */
  private final List<Optional<FlowCapacity>> parts;

  private final Optional<PencilChart> friction;
  private final Optional<PencilChart> passage;
  private boolean viscosityGiven;
  private boolean kelvinsGiven;
  private boolean opens;

  private RunCard(Arrival arrival, UnitSystem units) {
    this.arrival = arrival;
    this.path = arrival.path();
    this.units = units;
    this.shares = arrival.shares();
    this.lines = IntStream.range(0, shares.size()).mapToObj(this::line).toList();
    this.parts = IntStream.range(0, shares.size()).mapToObj(this::part).toList();
    this.card = PencilCard.titled("Pressure of the air at the tool", units);
    this.friction = friction();
    this.passage = passage();
  }

  static PencilCard of(Arrival arrival, UnitSystem units) {
    return new RunCard(arrival, units).build();
  }

  private Element alone(int at) {
    return path.elements().get(at).alone();
  }

  /** The flow through an element, that of others who take air behind it with it [kg/s]. */
  private double flow(int at) {
    double others = path.elements().get(at) instanceof Element.Shared shared
        ? shared.others().kilogramsPerSecond()
        : 0.0;
    return arrival.massFlow().kilogramsPerSecond() + others;
  }

  private double reynolds(int at, Conduit conduit) {
    return 4.0 * flow(at) / (Math.PI * conduit.bore().metres() * viscosity());
  }

  private double viscosity() {
    return path.still().viscosity().pascalSeconds();
  }

  private double kelvins() {
    return path.still().temperature().kelvins();
  }

  private Optional<Conduit> line(int at) {
    if (!(alone(at) instanceof Element.Line line) || shares.get(at).unsettled()) {
      return Optional.empty();
    }
    double re = reynolds(at, line.conduit());
    double left = shares.get(at).outlet().pascals() / shares.get(at).inlet().pascals();
    boolean follows = re >= LEAST_REYNOLDS
        && re <= MOST_REYNOLDS
        && 1.0 - left * left <= NEAR_CHOKING
        && !shares.get(at).chokes()
        && arrival.explanation(at).working() instanceof LineLoss.Flowing flowing
        && flowing.friction().isPresent();
    return follows ? Optional.of(line.conduit()) : Optional.empty();
  }

  private double ofChoked(int at, FlowCapacity capacity) {
    return flow(at)
        / capacity
            .chokedFlow(AirState.of(shares.get(at).inlet(), path.still().temperature()))
            .kilogramsPerSecond();
  }

  private Optional<FlowCapacity> part(int at) {
    if (!(alone(at) instanceof Element.Part part) || shares.get(at).chokes()) {
      return Optional.empty();
    }
    FlowCapacity capacity = part.capacity();
    double opens =
        capacity.crackingPressure().pascals() / shares.get(at).inlet().pascals();
    boolean follows = flow(at) > 0.0
        && ofChoked(at, capacity) <= NEAR_CHOKING
        && 1.0 - capacity.criticalPressureRatio() - opens > 1.0 - NEAR_CHOKING;
    return follows ? Optional.of(capacity) : Optional.empty();
  }

  private static String curve(Conduit conduit) {
    return "ε/D = " + Digits.read(Digits.significant(conduit.relativeRoughness(), 3));
  }

  private static DoubleUnaryOperator darcy(Conduit conduit) {
    double rough = conduit.relativeRoughness();
    return re -> FrictionLaw.COLEBROOK.factor(re, rough).darcy();
  }

  /** The friction factor over the Reynolds number, a curve for each wall. */
  private Optional<PencilChart> friction() {
    List<Conduit> conduits = new ArrayList<>();
    double least = Double.POSITIVE_INFINITY;
    double most = 0.0;
    for (int i = 0; i < shares.size(); i++) {
      Optional<Conduit> conduit = lines.get(i);
      if (conduit.isPresent()) {
        conduits.add(conduit.get());
        least = Math.min(least, reynolds(i, conduit.get()));
        most = Math.max(most, reynolds(i, conduit.get()));
      }
    }
    if (conduits.isEmpty()) {
      return Optional.empty();
    }
    double from = nice(0.8 * least, false);
    double to = nice(Math.max(1.25 * most, 2.0 * from), true);
    double lowest = Double.POSITIVE_INFINITY;
    double highest = 0.0;
    for (Conduit conduit : conduits) {
      for (double re : new double[] {from, to, FrictionLaw.LAMINAR_BELOW, 2299.9}) {
        double value = darcy(conduit).applyAsDouble(Math.max(from, Math.min(to, re)));
        lowest = Math.min(lowest, value);
        highest = Math.max(highest, value);
      }
    }
    PencilChart chart = PencilChart.of(
        "Friction factor λ of Darcy over the Reynolds number, after Colebrook (1939); 64/Re below"
            + " 2300",
        ChartAxis.logarithmic(
            "Re", from, to, parts.stream().anyMatch(Optional::isPresent) ? LINES_BESIDE : WIDE),
        ChartAxis.logarithmic(
            "λ", nice(0.99 * lowest, false), nice(1.01 * highest, true), height()));
    List<String> drawn = new ArrayList<>();
    for (Conduit conduit : conduits) {
      if (!drawn.contains(curve(conduit))) {
        drawn.add(curve(conduit));
        chart = chart.with(curve(conduit), darcy(conduit), FrictionLaw.LAMINAR_BELOW);
      }
    }
    return Optional.of(chart);
  }

  private double height() {
    return shares.size() <= MANY ? HEIGHT : LOW;
  }

  /** The next number with one digit, or 1.5, below or above. */
  private static double nice(double value, boolean isUp) {
    double decade = Math.pow(10.0, Math.floor(Math.log10(value)));
    if (isUp) {
      for (double each : NICE) {
        if (each * decade >= value) {
          return each * decade;
        }
      }
      return 10.0 * decade;
    }
    double found = decade;
    for (double each : NICE) {
      found = each * decade <= value ? each * decade : found;
    }
    return found;
  }

  private static String curve(FlowCapacity capacity) {
    return "m = " + Digits.significant(capacity.subsonicIndex(), 3);
  }

  private static DoubleUnaryOperator subsonic(double m) {
    return q -> Math.sqrt(Math.max(0.0, 1.0 - Math.pow(q, 1.0 / m)));
  }

  /** The curve of ISO 6358, as much of it as is needed. */
  private Optional<PencilChart> passage() {
    double most = 0.0;
    List<FlowCapacity> capacities = new ArrayList<>();
    for (int i = 0; i < shares.size(); i++) {
      Optional<FlowCapacity> capacity = parts.get(i);
      if (capacity.isPresent()) {
        most = Math.max(most, ofChoked(i, capacity.get()));
        capacities.add(capacity.get());
      }
    }
    if (capacities.isEmpty()) {
      return Optional.empty();
    }
    double to = Math.min(1.0, 0.1 * Math.ceil(11.5 * most));
    double lowest = 1.0;
    for (FlowCapacity capacity : capacities) {
      lowest = Math.min(lowest, subsonic(capacity.subsonicIndex()).applyAsDouble(to));
    }
    PencilChart chart = PencilChart.of(
        "Curve of ISO 6358: φ = √(1 − q^(1/m)), q the flow over the choked flow"
            + (to == 1.0 ? "" : "; the part of it that is needed"),
        ChartAxis.even("q", 0.0, to, friction.isPresent() ? PARTS_BESIDE : WIDE),
        ChartAxis.even("φ", beginning(to == 1.0 ? 0.0 : lowest), 1.0, height()));
    List<String> drawn = new ArrayList<>();
    for (FlowCapacity capacity : capacities) {
      if (!drawn.contains(curve(capacity))) {
        drawn.add(curve(capacity));
        chart = chart.with(curve(capacity), subsonic(capacity.subsonicIndex()));
      }
    }
    return Optional.of(chart);
  }

  private static double beginning(double lowest) {
    for (double each : LOWEST) {
      if (each < lowest) {
        return each;
      }
    }
    return 0.0;
  }

  private static Symbol pressure(int at) {
    return Symbol.of("p" + at, ValueKind.SAID_PRESSURE);
  }

  private static Symbol number(String letter, int at) {
    return Symbol.of(letter + at, ValueKind.NUMBER);
  }

  private static String in(Symbol symbol) {
    return "⟨" + symbol.text() + "⟩";
  }

  private void step(String what, String definition, Symbol... symbols) {
    card.step(Formula.of(what, definition, DERIVED, symbols));
  }

  private PencilCard build() {
    double atmosphere = arrival.atmosphere().pascals();
    double atSupply = arrival.atSupply().pascals();
    double atTool = arrival.atTool().pascals();
    card.heading("where the run starts");
    card.given(AT_SUPPLY, atSupply - atmosphere)
        .given(ATMOSPHERE, atmosphere)
        .given(FLOW, arrival.massFlow().kilogramsPerSecond());
    step("Absolute pressure", "⟨p1⟩ = ⟨pg⟩ + ⟨pa⟩", pressure(1), AT_SUPPLY, ATMOSPHERE);
    for (int i = 0; i < shares.size(); i++) {
      element(i);
    }
    Symbol last = pressure(shares.size() + 1);
    card.heading("at the tool");
    step(
        "Pressure that a gauge shows", "⟨pt⟩ = " + in(last) + " − ⟨pa⟩", AT_TOOL, last, ATMOSPHERE);
    step(
        "Pressure lower than where the run starts", "⟨Δp⟩ = ⟨pg⟩ − ⟨pt⟩", LOST, AT_SUPPLY, AT_TOOL);
    arrival
        .jump()
        .filter(jump -> jump.shows(units.pressureUnit()))
        .ifPresent(jump ->
            card.note("No flow is steady here, for friction jumps: the pressure may be as low as "
                + jump.least().format(units.pressureUnit()) + " absolute. Count on that."));
    letters();
    return card.answer(AT_TOOL, atTool - atmosphere)
        .answer(LOST, atSupply - atTool)
        .build();
  }

  private void element(int i) {
    int at = i + 1;
    Symbol before = pressure(at);
    Symbol behind = pressure(at + 1);
    String name = shares.get(i).name();
    Optional<Conduit> line = lines.get(i);
    Optional<FlowCapacity> part = parts.get(i);
    card.heading(at + ". " + name);
    if (line.isPresent()) {
      along(line.get(), i, before, behind);
    } else if (part.isPresent()) {
      through(part.get(), i, before, behind);
    } else if (shares.get(i).regulated().pascals() > 0.0) {
      card.note(held(i, behind));
      card.given(behind, shares.get(i).outlet().pascals());
    } else {
      card.note(why(i));
      Symbol drop = Symbol.of("Δp" + at, ValueKind.SAID_PRESSURE);
      card.given(drop, shares.get(i).drop().pascals());
      step(
          "Absolute pressure",
          in(behind) + " = " + in(before) + " − " + in(drop),
          behind,
          before,
          drop);
    }
  }

  private Optional<RegulatorElement> regulator(int i) {
    FlowElement flow = alone(i).flow();
    return (flow instanceof WornElement worn ? worn.element() : flow)
            instanceof RegulatorElement regulator
        ? Optional.of(regulator)
        : Optional.empty();
  }

  /** What a regulator holds, and from where that is known; what is taken for a droop that nobody told is no reading. */
  private String held(int i, Symbol behind) {
    Optional<RegulatorElement> found = regulator(i);
    String holds = "It holds the pressure behind it, " + behind.text();
    if (found.isEmpty()) {
      return holds + ", which is given.";
    }
    RegulatorElement regulator = found.get();
    MassFlow through = MassFlow.ofKilogramsPerSecond(flow(i));
    if (regulator.isWideOpen(
        through, AirState.of(shares.get(i).inlet(), path.still().temperature()))) {
      return "Its valve stands wide open and holds nothing: the pressure behind it, "
          + behind.text() + ", is taken from the exact calculation.";
    }
    String set = units.say(GaugePressure.of(regulator.set(), arrival.atmosphere()));
    PressureDrop droop = PressureDrop.ofPascals(
        Math.max(0.0, regulator.set().pascals() - shares.get(i).outlet().pascals()));
    holds += ": it is set to " + set
        + (droop.pascals() > 0.0
            ? ", less a droop of " + units.say(droop) + " at this flow"
            : ", and droops by nothing at this flow");
    if (alone(i).flow() instanceof WornElement) {
      return holds + ", counted as worn.";
    }
    if (regulator.curve().isPresent()) {
      return regulator.tells(through)
          ? holds + ", from its maker's curve."
          : holds + ". That is assumed: the curve ends at a smaller flow.";
    }
    if (regulator.atFlow().isPresent()) {
      return holds + ", in a straight line from " + units.say(regulator.droop()) + " at "
          + units.say(regulator.atFlow().get()) + ".";
    }
    return regulator.droop().pascals() > 0.0
        ? holds + ". That is assumed: by how much it droops at this flow is not known."
        : holds + ".";
  }

  /** What the letters of the card mean, those alone that stand on it. */
  private void letters() {
    card.heading("the letters");
    card.note(
        "pg and pt are gauge pressures, above the pressure of the atmosphere, pa; p1, p2 and so on"
            + " are absolute. ṁ is the mass flow."
            + (kelvinsGiven ? " T is the absolute temperature of the air." : "")
            + (friction.isEmpty()
                ? ""
                : " μ is the viscosity of the air, D the bore of a line, L its length, ΣK its loss"
                    + " factors of fittings and ends together, ε/D the roughness of its wall"
                    + " over the bore.")
            + (passage.isEmpty()
                ? ""
                : " C is the sonic conductance of a part, b its critical pressure ratio, m its"
                    + " subsonic index (ISO 6358)."
                    + (opens ? " Δpc is the pressure that opens its valve." : "")));
  }

  private String why(int i) {
    if (flow(i) == 0.0) {
      return "Nothing flows here, and nothing is lost.";
    }
    if (shares.get(i).chokes()) {
      return "It chokes: its drop is what the tool leaves of the flow, taken from the exact"
          + " calculation.";
    }
    if (shares.get(i).unsettled()) {
      return "Its flow is at Re 2300, where friction jumps: its drop is taken from the exact"
          + " calculation.";
    }
    return alone(i) instanceof Element.Own
        ? "It has a curve or table of its own: its drop is taken from there."
        : "So near to a limit no pencil tells its drop: it is taken from the exact calculation.";
  }

  private Symbol flowGiven(int i) {
    if (!(path.elements().get(i) instanceof Element.Shared)) {
      return FLOW;
    }
    Symbol all = Symbol.of("ṁ" + (i + 1), GRAMS);
    card.note("Others take air behind it: it carries theirs too.");
    card.given(all, flow(i));
    return all;
  }

  private void kelvinsGiven() {
    if (!kelvinsGiven) {
      card.given(KELVINS, kelvins());
      kelvinsGiven = true;
    }
  }

  private void along(Conduit conduit, int i, Symbol before, Symbol behind) {
    int at = i + 1;
    Symbol flow = flowGiven(i);
    Symbol bore = Symbol.of("D" + at, ValueKind.SMALL_LENGTH);
    Symbol length = Symbol.of("L" + at, ValueKind.LENGTH);
    Symbol fittings = Symbol.of("ΣK" + at, ValueKind.NUMBER);
    Symbol re = number("Re", at);
    Symbol darcy = number("λ", at);
    Symbol a = number("a", at);
    Symbol k = number("k", at);
    if (!viscosityGiven) {
      card.given(VISCOSITY, viscosity());
      viscosityGiven = true;
    }
    kelvinsGiven();
    card.given(bore, conduit.bore().metres())
        .given(length, conduit.length().metres())
        .given(fittings, conduit.fittingLoss());
    step(
        "Reynolds number",
        in(re) + " = [1273|379] × " + in(flow) + " / (" + in(bore) + " × ⟨μ⟩)",
        re,
        flow,
        bore,
        VISCOSITY);
    card.read("Friction factor", friction.orElseThrow(), curve(conduit), re, darcy);
    step(
        "Resistance",
        in(k) + " = [1000|12] × " + in(darcy) + " × " + in(length) + " / " + in(bore) + " + "
            + in(fittings),
        k,
        darcy,
        length,
        bore,
        fittings);
    step(
        "Flow against pressure",
        in(a) + " = [0.04654|0.0007467] × ⟨T⟩ × (" + in(flow) + " / (" + in(bore) + "² × "
            + in(before) + "))²",
        a,
        KELVINS,
        flow,
        bore,
        before);
    step(
        "Absolute pressure",
        in(behind) + " = " + in(before) + " × √(1 − " + in(a) + " × " + in(k) + " × (1 + " + in(a)
            + "))",
        behind,
        before,
        a,
        k);
  }

  private void through(FlowCapacity capacity, int i, Symbol before, Symbol behind) {
    int at = i + 1;
    Symbol flow = flowGiven(i);
    Symbol conductance = Symbol.of("C" + at, CONDUCTANCE);
    Symbol b = number("b", at);
    Symbol q = number("q", at);
    Symbol phi = number("φ", at);
    kelvinsGiven();
    card.given(conductance, capacity.conductance().cubicMetresPerSecondPascal())
        .given(b, capacity.criticalPressureRatio());
    step(
        "Flow over the choked flow",
        in(q) + " = " + in(flow) + " / (" + in(conductance) + " × [1.185|0.07398] × " + in(before)
            + " × √([293.2|527.7] / ⟨T⟩))",
        q,
        flow,
        conductance,
        before,
        KELVINS);
    card.read("Reading of the curve of ISO 6358", passage.orElseThrow(), curve(capacity), q, phi);
    double cracks = capacity.crackingPressure().pascals();
    if (cracks == 0.0) {
      step(
          "Absolute pressure",
          in(behind) + " = " + in(before) + " × (" + in(b) + " + (1 − " + in(b) + ") × " + in(phi)
              + ")",
          behind,
          before,
          b,
          phi);
      return;
    }
    Symbol cracking = Symbol.of("Δpc" + at, ValueKind.SAID_PRESSURE);
    opens = true;
    card.given(cracking, cracks);
    step(
        "Absolute pressure",
        in(behind) + " = " + in(before) + " × " + in(b) + " + (" + in(before) + " × (1 − " + in(b)
            + ") − " + in(cracking) + ") × " + in(phi),
        behind,
        before,
        b,
        cracking,
        phi);
  }
}
