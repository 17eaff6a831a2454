package org.airfit.run;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.BiFunction;
import java.util.function.DoubleUnaryOperator;
import org.airfit.flow.FlowCapacity;
import org.airfit.internal.Digits;
import org.airfit.line.Conduit;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.SonicConductance;

/**
 * How much one input of a run matters.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class Sensitivity {

  /** How far an input is varied to either side [-]. */
  private static final double STEP = 1.0e-4;

  /** What can be varied about a run. */
  public enum Input {
    /** The flow the tool takes. */
    FLOW("flow", (element, part) -> element),
    /** The absolute pressure of the supply. */
    SUPPLY_PRESSURE("supply pressure", (element, part) -> element),
    /** The bore of a line. */
    BORE(
        "bore",
        (element, part) -> line(element, conduit -> conduit.withBore(times(conduit.bore(), part)))),
    /** The length of a line. */
    LENGTH(
        "length",
        (element, part) ->
            line(element, conduit -> conduit.withLength(times(conduit.length(), part)))),
    /** The roughness of a line. */
    ROUGHNESS(
        "roughness",
        (element, part) -> line(
            element,
            conduit -> Conduit.of(
                    conduit.bore(), conduit.length(), times(conduit.roughness(), part))
                .withFittings(conduit.fittingLoss()))),
    /** The loss coefficients of the fittings on a line. */
    FITTINGS(
        "fittings",
        (element, part) ->
            line(element, conduit -> conduit.withFittings(conduit.fittingLoss() * part))),
    /** The sonic conductance C of a part. */
    CONDUCTANCE(
        "conductance",
        (element, part) -> part(
            element,
            part * capacity(element).conductance().cubicMetresPerSecondPascal(),
            capacity(element).criticalPressureRatio())),
    /** The critical pressure ratio b of a part. */
    CRITICAL_PRESSURE_RATIO(
        "critical pressure ratio",
        (element, part) -> part(
            element,
            capacity(element).conductance().cubicMetresPerSecondPascal(),
            part * capacity(element).criticalPressureRatio()));

    private interface OtherConduit {
      Conduit of(Conduit conduit);
    }

    private final String words;
    private final BiFunction<Element, Double, Element> scaling;

    Input(String words, BiFunction<Element, Double, Element> scaling) {
      this.words = words;
      this.scaling = scaling;
    }

    /** {@return the input in words, such as "supply pressure"} */
    public String words() {
      return words;
    }

    /** The inputs of an element that may be varied by a small part to either side without leaving their range. */
    static List<Input> of(Element element) {
      if (element instanceof Element.Line line) {
        return line.conduit().relativeRoughness() < 0.0499
            ? List.of(BORE, LENGTH, ROUGHNESS, FITTINGS)
            : List.of(LENGTH, FITTINGS);
      }
      if (element instanceof Element.Part part) {
        return part.capacity().criticalPressureRatio() < 0.999
            ? List.of(CONDUCTANCE, CRITICAL_PRESSURE_RATIO)
            : List.of(CONDUCTANCE);
      }
      return List.of();
    }

    Element scaled(Element element, double part) {
      return scaling.apply(element, part);
    }

    private static Length times(Length length, double part) {
      return Length.ofMetres(part * length.metres());
    }

    private static Element line(Element element, OtherConduit change) {
      Element.Line line = (Element.Line) element;
      return new Element.Line(line.name(), change.of(line.conduit()), line.model());
    }

    private static FlowCapacity capacity(Element element) {
      return ((Element.Part) element).capacity();
    }

    private static Element part(Element element, double c, double b) {
      FlowCapacity capacity = capacity(element);
      return new Element.Part(
          element.name(),
          FlowCapacity.of(SonicConductance.ofCubicMetresPerSecondPascal(c), b)
              .withSubsonicIndex(capacity.subsonicIndex())
              .withCrackingPressure(capacity.crackingPressure()));
    }
  }

  private record Values(String element, Input input, double elasticity) {}

  private final Values values;

  private Sensitivity(Values values) {
    this.values = values;
  }

  /** The inputs of a path that matter at a flow that arrives, the strongest first. */
  static List<Sensitivity> of(RunPath path, MassFlow demand) {
    double flow = demand.kilogramsPerSecond();
    if (!(path.pascalsAtTool(flow) >= path.atmosphere().pascals())) {
      return List.of();
    }
    List<Sensitivity> found = new ArrayList<>();
    double supplied = path.given(flow);
    add(found, "the run", Input.FLOW, part -> lost(path, part * flow));
    add(
        found,
        "the run",
        Input.SUPPLY_PRESSURE,
        part -> part * supplied - path.pascalsAtTool(flow, part * supplied));
    for (int i = 0; i < path.elements().size(); i++) {
      int at = i;
      Element element = path.elements().get(i).alone();
      for (Input input : Input.of(element)) {
        add(
            found,
            element.name(),
            input,
            part -> lost(path.with(at, input.scaled(element, part)), flow));
      }
    }
    found.sort(
        Comparator.comparingDouble((Sensitivity sensitivity) -> Math.abs(sensitivity.elasticity()))
            .reversed());
    return List.copyOf(found);
  }

  /** The pressure [Pa] lost on the way, or NaN where the flow does not get there. */
  private static double lost(RunPath path, double flow) {
    return path.given(flow) - path.pascalsAtTool(flow);
  }

  private static void add(
      List<Sensitivity> found, String element, Input input, DoubleUnaryOperator lost) {
    double less = lost.applyAsDouble(1.0 - STEP);
    double here = lost.applyAsDouble(1.0);
    double more = lost.applyAsDouble(1.0 + STEP);
    double before = (here - less) / (STEP * here);
    double behind = (more - here) / (STEP * here);
    // a jump inside the step shows as two slopes that have nothing to do with each other; NaN fails
    // as well
    if (Math.abs(behind - before) <= 0.05 * (1.0 + Math.abs(before))) {
      found.add(new Sensitivity(new Values(element, input, 0.5 * (before + behind))));
    }
  }

  /** {@return the element it belongs to; "the run" for the flow and the supply} */
  public String element() {
    return values.element;
  }

  /** {@return the input} */
  public Input input() {
    return values.input;
  }

  /** {@return percent of the whole loss for a percent of the input [-]} */
  public double elasticity() {
    return values.elasticity;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Sensitivity that && values.equals(that.values);
  }

  @Override
  public int hashCode() {
    return values.hashCode();
  }

  /** {@return the sensitivity in one line, such as "bore of hose: 1 % more changes the loss by -4.3 %"} */
  @Override
  public String toString() {
    return values.input.words() + " of " + values.element + ": 1 % more changes the loss by "
        + Digits.significant(values.elasticity, 3) + " %";
  }
}
