package org.airfit.run;

import java.util.List;
import java.util.Optional;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.flow.FlowElement;
import org.airfit.flow.FlowTable;
import org.airfit.flow.OutletAtFlow;
import org.airfit.internal.Digits;
import org.airfit.line.Conduit;
import org.airfit.line.LineLoss;
import org.airfit.line.LossModel;
import org.airfit.plant.RegulatorCurve;
import org.airfit.plant.RegulatorElement;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.VolumeFlowUnit;
import org.airfit.safety.Caution;
import org.airfit.working.UnitSystem;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/**
 * A named element of a run: a line, a part, or an element of the user's own. It explains the numbers that its
 * {@link FlowElement} found.
 */
sealed interface Element {

  /** {@return its name in the run} */
  String name();

  /** {@return what it does to the air, on plain doubles} */
  FlowElement flow();

  /**
   * What belongs to the numbers found.
   *
   * @param inletMach the Mach number at the inlet [-]; 0 for what is no line
   * @param outletMach the Mach number at the outlet [-]; 0 for what is no line
   * @param working how the outlet pressure follows from the flow
   */
  record Explanation(double inletMach, double outletMach, Worked working) {

    /** What lies outside a model's validity; nothing of a flow that does not pass a line. */
    List<String> warnings(UnitSystem units) {
      if (working instanceof LineLoss.Flowing line) {
        return line.warnings(units);
      }
      if (working instanceof OwnWorking own) {
        return own.warnings(units);
      }
      return working instanceof OutletAtFlow part ? part.warnings(units) : List.of();
    }
  }

  /** {@return the warnings that go with what it is made of} */
  default List<Caution> cautions() {
    return List.of();
  }

  /** {@return what stays of a pressure [Pa] where it loses nothing: of a regulator, what it is set to at most} */
  default double withoutLoss(double pascals) {
    return pascals;
  }

  /**
   * {@return it with what a regulator holds at the end of its maker's curve, behind which nothing is told; empty where
   * that ends behind the flow, and of all else}
   *
   * @param flow the flow to the tool [kg/s]
   */
  default Optional<CurveEnd> endOfCurve(double flow) {
    return Optional.empty();
  }

  /**
   * A regulator through which more flows than its maker's curve tells.
   *
   * @param held the same that holds behind the end of the curve what it holds there: the most that it can hold
   * @param end where the curve ends
   * @param largest the flow to the tool at which it ends, without that of others beside it
   */
  record CurveEnd(Element held, FreeAirFlow end, MassFlow largest) {}

  /**
   * Explains what it makes of a flow.
   *
   * @param massFlow the flow
   * @param inlet the air in front
   * @return what belongs to the numbers, or why the flow does not pass
   */
  Explanation explain(MassFlow massFlow, AirState inlet);

  /**
   * Multiplies its loss, for wear and dirt.
   *
   * @param factor the factor [-], above 0
   * @return this with its loss multiplied
   */
  Element withLossFactor(double factor);

  /** {@return the element itself, without the air that others take behind it} */
  default Element alone() {
    return this;
  }

  /**
   * Puts another element in the place of this, with the same air of others through it.
   *
   * @param other what takes its place
   * @return {@code other} in this place
   */
  default Element exchangedFor(Element other) {
    return other;
  }

  /**
   * An element that carries the air of others as well, who take it somewhere behind.
   *
   * @param alone the element
   * @param others the flow of the others
   * @param flow what it does to the flow to the tool, on plain doubles
   */
  record Shared(Element alone, MassFlow others, FlowElement flow) implements Element {

    static Element of(Element element, MassFlow others) {
      if (element instanceof Shared shared) {
        return of(
            shared.alone,
            MassFlow.ofKilogramsPerSecond(
                shared.others.kilogramsPerSecond() + others.kilogramsPerSecond()));
      }
      return new Shared(element, others, new Beside(element.flow(), others.kilogramsPerSecond()));
    }

    @Override
    public String name() {
      return alone.name();
    }

    @Override
    public Element exchangedFor(Element other) {
      return of(other, others);
    }

    @Override
    public List<Caution> cautions() {
      return alone.cautions();
    }

    @Override
    public double withoutLoss(double pascals) {
      return alone.withoutLoss(pascals);
    }

    @Override
    public Optional<CurveEnd> endOfCurve(double toTool) {
      double beside = others.kilogramsPerSecond();
      return alone
          .endOfCurve(toTool + beside)
          .map(end -> new CurveEnd(
              end.held,
              end.end,
              MassFlow.ofKilogramsPerSecond(
                  Math.max(0.0, end.largest.kilogramsPerSecond() - beside))));
    }

    @Override
    public Explanation explain(MassFlow massFlow, AirState inlet) {
      return alone.explain(
          MassFlow.ofKilogramsPerSecond(
              massFlow.kilogramsPerSecond() + others.kilogramsPerSecond()),
          inlet);
    }

    @Override
    public Element withLossFactor(double factor) {
      return of(alone.withLossFactor(factor), others);
    }
  }

  /**
   * What an element does to a flow that shares it with others.
   *
   * @param element the element
   * @param others the flow of the others [kg/s]
   */
  record Beside(FlowElement element, double others) implements FlowElement {

    @Override
    public double outlet(double flow, double pascals, double kelvins, double viscosity) {
      return element.outlet(flow + others, pascals, kelvins, viscosity);
    }

    @Override
    public double outletKelvins(double flow, double pascals, double kelvins, double viscosity) {
      return element.outletKelvins(flow + others, pascals, kelvins, viscosity);
    }

    @Override
    public double largest(double pascals, double kelvins, double viscosity) {
      return Math.max(0.0, element.largest(pascals, kelvins, viscosity) - others);
    }

    @Override
    public double nextJump(double above, double viscosity) {
      return element.nextJump(above + others, viscosity) - others;
    }

    @Override
    public double slope(double flow, double pascals, double kelvins, double viscosity) {
      return element.slope(flow + others, pascals, kelvins, viscosity);
    }
  }

  /**
   * A pipe, tube or hose.
   *
   * @param name its name in the run
   * @param conduit its bore, length, wall and fittings
   * @param model the equation of its loss
   * @param flow the two of them on plain doubles
   */
  record Line(String name, Conduit conduit, LossModel model, FlowElement flow) implements Element {

    Line(String name, Conduit conduit, LossModel model) {
      this(name, conduit, model, model.element(conduit));
    }

    @Override
    public List<Caution> cautions() {
      return conduit.cautions();
    }

    @Override
    public Explanation explain(MassFlow massFlow, AirState inlet) {
      LineLoss loss = model.loss(conduit, massFlow, inlet);
      return loss.fold(
          flowing -> new Explanation(flowing.inletMach(), flowing.outletMach(), loss),
          choked -> new Explanation(0.0, 0.0, loss));
    }

    /** λL/D + ΣK grows by the factor. */
    @Override
    public Element withLossFactor(double factor) {
      return new Line(
          name,
          conduit
              .withLength(Length.ofMetres(factor * conduit.length().metres()))
              .withFittings(factor * conduit.fittingLoss()),
          model);
    }
  }

  /**
   * A coupling, valve, filter or the like.
   *
   * @param name its name in the run
   * @param capacity what it lets through
   */
  record Part(String name, FlowCapacity capacity) implements Element {

    @Override
    public FlowElement flow() {
      return capacity.element();
    }

    @Override
    public Explanation explain(MassFlow massFlow, AirState inlet) {
      OutletAtFlow passage = capacity.passage(massFlow, inlet);
      return new Explanation(0.0, 0.0, passage);
    }

    /** Far from choking the drop goes with 1/C². */
    @Override
    public Element withLossFactor(double factor) {
      return new Part(
          name,
          FlowCapacity.of(
                  SonicConductance.ofCubicMetresPerSecondPascal(
                      capacity.conductance().cubicMetresPerSecondPascal() / Math.sqrt(factor)),
                  capacity.criticalPressureRatio())
              .withSubsonicIndex(capacity.subsonicIndex())
              .withCrackingPressure(capacity.crackingPressure()));
    }
  }

  /**
   * An element of the user's own, such as the table of a filter's sheet.
   *
   * @param name its name in the run
   * @param flow what it does to the air
   */
  record Own(String name, FlowElement flow) implements Element {

    @Override
    public double withoutLoss(double pascals) {
      FlowElement asNew = flow instanceof WornElement worn ? worn.element() : flow;
      return asNew instanceof RegulatorElement regulator
          ? Math.min(pascals, regulator.set().pascals())
          : pascals;
    }

    @Override
    public Optional<CurveEnd> endOfCurve(double toTool) {
      if (!(flow instanceof RegulatorElement regulator)
          || regulator.tells(MassFlow.ofKilogramsPerSecond(toTool))) {
        return Optional.empty();
      }
      RegulatorCurve curve = regulator.curve().orElseThrow();
      PressureDrop atEnd =
          curve.most().compareTo(regulator.droop()) < 0 ? curve.most() : regulator.droop();
      return Optional.of(new CurveEnd(
          new Own(name, regulator.withCurve(curve, atEnd)),
          curve.end(),
          curve.end().massFlow()));
    }

    @Override
    public Explanation explain(MassFlow massFlow, AirState inlet) {
      return new Explanation(0.0, 0.0, new OwnWorking(this, massFlow, inlet));
    }

    /** Where the drop goes with the square of the flow, this multiplies it. */
    @Override
    public Element withLossFactor(double factor) {
      return new Own(name, WornElement.of(flow, Math.sqrt(factor)));
    }
  }

  /** What an element of the user's own made of a flow, in words: how it does so is known to the user. */
  record OwnWorking(Own own, MassFlow massFlow, AirState inlet) implements Worked {

    /** That what a regulator holds is not told, where more flows than its maker's curve tells. */
    List<String> warnings(UnitSystem units) {
      return own.endOfCurve(massFlow.kilogramsPerSecond())
          .map(beyond -> List.of("the curve of its maker ends at " + units.say(beyond.end())
              + ", and " + units.say(FreeAirFlow.from(massFlow, beyond.end().reference()))
              + " flow: what it holds then is not known, and all that it may lose is counted"))
          .orElse(List.of());
    }

    @Override
    public Working working(UnitSystem units) {
      double behind = own.flow.outlet(
          massFlow.kilogramsPerSecond(),
          inlet.pressure().pascals(),
          inlet.temperature().kelvins(),
          inlet.viscosity().pascalSeconds());
      if (own.flow instanceof RegulatorElement regulator) {
        return regulator.working(massFlow, inlet, units);
      }
      Working.Builder working = Working.titled("Pressure behind " + own.name, units);
      FlowElement asNew = own.flow instanceof WornElement worn ? worn.element() : own.flow;
      if (asNew instanceof FlowTable table) {
        FreeAirFlow last = table.points().get(table.points().size() - 1).flow();
        working.note("A table of " + table.points().size() + " points up to "
            + last.format(
                units.either(VolumeFlowUnit.LITRE_PER_SECOND, VolumeFlowUnit.CUBIC_FOOT_PER_MINUTE))
            + " gives it, read with air at " + table.inlet().in(units)
            + " in front [" + table.source()
            + "]. At another inlet the pressure ratio is that of the"
            + " same ṁ √T/p1; the Reynolds number is left out.");
      }
      if (own.flow instanceof WornElement worn) {
        working.note("It is counted as worn or dirty: it loses what it would lose when new at "
            + Digits.significant(worn.factor(), 4) + " times the flow.");
      }
      String asked = massFlow.format(units.massFlowUnit()) + " from "
          + inlet.pressure().format(units.pressureUnit());
      return working
          .answer(
              Double.isNaN(behind)
                  ? asked + " is more than it lets through."
                  : asked + " leaves "
                      + AbsolutePressure.ofPascals(behind).format(units.pressureUnit())
                      + " behind it.")
          .build();
    }
  }
}
