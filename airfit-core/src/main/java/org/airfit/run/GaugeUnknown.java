package org.airfit.run;

import java.util.List;
import java.util.Optional;
import org.airfit.flow.FlowElement;
import org.airfit.plant.Regulator;
import org.airfit.plant.RegulatorElement;
import org.airfit.plant.Supply;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureDrop;

/**
 * One unknown: how a value of it changes a run, and between which values it may lie.
 *
 * <p>The unknown x is the logarithm of a factor on what was told (C, bore, air of the tool), the logarithm of a flow
 * in kg/s (leak) or a droop in pascals. Between its bounds every x is as probable as another before anything was read:
 * the bounds and that are our choice.
 *
 * @param suspect what is unknown
 * @param place the place in the run: of an element the one behind it
 * @param low the least x
 * @param high the most x
 */
record GaugeUnknown(Suspect suspect, int place, double low, double high) {

  /** A part lets through between a twelfth and nearly all of what was told: our choice. */
  private static final double LEAST_CAPACITY = 1.0 / 12.0;

  /** The bore is between four tenths and nearly all of what was told: our choice. */
  private static final double LEAST_BORE = 0.4;

  /** The roughest wall that a line is computed with, over its bore. */
  private static final double ROUGHEST = 0.05;

  /** What nearly all is: less of a loss than any gauge shows. */
  private static final double NEARLY = 0.98;

  /** An unmarked part lets through between a fifth and five times of what was guessed: our choice. */
  private static final double UNMARKED_CAPACITY = 5.0;

  /** The bore of an unmarked line is between 0.4 and 2.5 times of what was guessed: our choice. */
  private static final double UNMARKED_BORE = 2.5;

  /** A tool takes between a third and three times of what was told: our choice. */
  private static final double TOOL_FACTOR = 3.0;

  /** A leak takes between a hundredth and three times of the air of the tool: our choice. */
  private static final double LEAST_LEAK = 0.01;

  private static final double MOST_LEAK = 3.0;

  /** A regulator droops by up to 3 bar, or eight tenths of what it holds: our choice. */
  private static final double MOST_DROOP = 3.0e5;

  private static final double MOST_DROOP_SHARE = 0.8;

  /** The unknown of a suspect in a run. */
  static GaugeUnknown of(Suspect suspect, GaugeScene scene, int place, boolean unmarked) {
    return switch (suspect.kind()) {
      case PART ->
        unmarked
            ? logs(suspect, place, 1.0 / UNMARKED_CAPACITY, UNMARKED_CAPACITY)
            : logs(suspect, place, LEAST_CAPACITY, NEARLY);
      case BORE ->
        unmarked
            ? logs(suspect, place, leastBore(scene, place), UNMARKED_BORE)
            : logs(suspect, place, leastBore(scene, place), NEARLY);
      case TOOL_AIR -> logs(suspect, place, 1.0 / TOOL_FACTOR, TOOL_FACTOR);
      case LEAK -> {
        double air = toolFlow(scene.tool());
        yield logs(suspect, place, LEAST_LEAK * air, MOST_LEAK * air);
      }
      case DROOP ->
        new GaugeUnknown(
            suspect,
            place,
            0.0,
            Math.min(MOST_DROOP, MOST_DROOP_SHARE * held(scene.path(), place)));
      case NOTHING, GAUGE, OTHER -> throw new IllegalStateException(suspect + " has no unknown");
    };
  }

  private static GaugeUnknown logs(Suspect suspect, int place, double low, double high) {
    return new GaugeUnknown(suspect, place, Math.log(low), Math.log(high));
  }

  /** No bore is less than 20 times its roughness. */
  private static double leastBore(GaugeScene scene, int place) {
    Element.Line line = (Element.Line) scene.path().elements().get(place - 1).alone();
    double roughest = line.conduit().relativeRoughness() / ROUGHEST;
    return Math.min(0.9 * NEARLY, Math.max(LEAST_BORE, roughest * (1.0 + 1.0e-9)));
  }

  private static double toolFlow(ToolDemand tool) {
    return tool.load() * tool.rated().massFlow().kilogramsPerSecond();
  }

  /** What a regulator or the supply holds at rest, above the atmosphere [Pa]. */
  private static double held(RunPath path, int place) {
    double pascals = place == 0
        ? path.still().pressure().pascals()
        : regulator(path, place).orElseThrow().set().pascals();
    return pascals - path.atmosphere().pascals();
  }

  /** The regulator at a place of a run, if there is one. */
  static Optional<RegulatorElement> regulator(RunPath path, int place) {
    Element element = path.elements().get(place - 1).alone();
    return element instanceof Element.Own own && own.flow() instanceof RegulatorElement regulator
        ? Optional.of(regulator)
        : Optional.empty();
  }

  /** A run in which the unknown has a value. */
  GaugeScene in(GaugeScene scene, double x) {
    RunPath path = scene.path();
    return switch (suspect.kind()) {
      case PART -> {
        Element element = path.elements().get(place - 1);
        yield scene.on(with(path, element.alone().withLossFactor(Math.exp(-2.0 * x))));
      }
      case BORE -> {
        Element.Line line = (Element.Line) path.elements().get(place - 1).alone();
        Length bore = Length.ofMetres(line.conduit().bore().metres() * Math.exp(x));
        if (line.conduit().roughness().metres() > ROUGHEST * bore.metres()) {
          bore = Length.ofMetres(line.conduit().roughness().metres() / ROUGHEST * (1.0 + 1.0e-9));
        }
        yield scene.on(
            with(path, new Element.Line(line.name(), line.conduit().withBore(bore), line.model())));
      }
      case DROOP -> scene.on(drooping(scene, x));
      case LEAK ->
        new GaugeScene(
            path, scene.tool(), place, Math.exp(x) / path.still().pressure().pascals());
      case TOOL_AIR -> scene.with(taking(scene.tool(), Math.exp(x)));
      case NOTHING, GAUGE, OTHER -> scene;
    };
  }

  private RunPath with(RunPath path, Element other) {
    return path.with(place - 1, other);
  }

  /** By the droop at the air that the tool is rated at. */
  private RunPath drooping(GaugeScene scene, double droop) {
    RunPath path = scene.path();
    FreeAirFlow flow = scene.tool().rated().times(scene.tool().load());
    if (place == 0) {
      double still = path.still().pressure().pascals();
      return path.suppliedBy(
          new Regulator(path.still(), flow, AbsolutePressure.ofPascals(still - droop)));
    }
    FlowElement other =
        regulator(path, place).orElseThrow().withDroop(PressureDrop.ofPascals(droop), flow);
    return with(path, new Element.Own(path.elements().get(place - 1).name(), other));
  }

  /** The tool at a factor on its air. */
  static ToolDemand taking(ToolDemand tool, double factor) {
    FreeAirFlow rated = tool.rated().times(factor);
    ToolDemand other = tool.ratedInlet()
        .map(inlet -> ToolDemand.following(tool.name(), rated, inlet))
        .orElseGet(() -> ToolDemand.fixed(tool.name(), rated));
    return other.withDuty(tool.duty()).withLoad(tool.load());
  }

  /** The supply of a run at other pressures: that at rest is higher by so many pascals, the droop the same. */
  static RunPath raised(RunPath path, double pascals) {
    Supply supply = path.supply();
    AbsolutePressure other =
        AbsolutePressure.ofPascals(path.still().pressure().pascals() + pascals);
    Supply raised = supply instanceof Regulator regulator
        ? new Regulator(
            path.still().at(other),
            regulator.flow(),
            AbsolutePressure.ofPascals(regulator.pressure().pascals() + pascals))
        : Supply.fixed(path.still().at(other));
    return path.suppliedBy(raised);
  }

  /** What escapes at the pressure of the supply [kg/s]. */
  static MassFlow leak(double x) {
    return MassFlow.ofKilogramsPerSecond(Math.exp(x));
  }

  /** Whether a list has an unknown of an element. */
  static boolean concerns(List<GaugeUnknown> unknowns, int element) {
    return unknowns.stream()
        .anyMatch(unknown -> unknown.place == element + 1
            && (unknown.suspect.kind() == SuspectKind.PART
                || unknown.suspect.kind() == SuspectKind.BORE));
  }
}
