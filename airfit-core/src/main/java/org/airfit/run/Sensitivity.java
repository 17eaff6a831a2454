package org.airfit.run;

import java.util.List;
import java.util.function.BiFunction;
import org.airfit.flow.FlowCapacity;
import org.airfit.internal.Digits;
import org.airfit.line.Conduit;
import org.airfit.quantity.Length;
import org.airfit.quantity.SonicConductance;

/**
 * How much one input of a run matters.
 *
 * @param element the element it belongs to; "the run" for the flow and the supply
 * @param input the input
 * @param elasticity percent of the whole loss for a percent of the input [-]
 */
public record Sensitivity(String element, Input input, double elasticity) {

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

    private interface Change {
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
      return capacity(element).criticalPressureRatio() < 0.999
          ? List.of(CONDUCTANCE, CRITICAL_PRESSURE_RATIO)
          : List.of(CONDUCTANCE);
    }

    Element scaled(Element element, double part) {
      return scaling.apply(element, part);
    }

    private static Length times(Length length, double part) {
      return Length.ofMetres(part * length.metres());
    }

    private static Element line(Element element, Change change) {
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

  /** {@return the sensitivity in one line, such as "bore of hose: 1 % more changes the loss by -4.3 %"} */
  @Override
  public String toString() {
    return input.words() + " of " + element + ": 1 % more changes the loss by "
        + Digits.significant(elasticity, 3) + " %";
  }
}
