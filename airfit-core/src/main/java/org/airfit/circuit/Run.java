package org.airfit.circuit;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoublePredicate;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.line.Conduit;
import org.airfit.line.LossModel;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.safety.Caution;
import org.airfit.source.Source;

/**
 * The way of the air from a supply through pipes, couplers and hoses to a tool.
 *
 * <p>This class is immutable and thread-safe; {@code through} returns a longer run.
 */
public final class Run {

  private static final Caution SUPPLY = new Caution(
      "More pressure at the supply is no cure",
      "Pressure above the tool's rating damages tools; too little flow starves them. A larger coupler or hose does not push more"
          + " air into a tool than it takes at its pressure. Remove the restriction before raising the supply.",
      Source.commonPractice("over-pressure damages tools, under-flow starves them"));

  private final AirState supply;
  private final AbsolutePressure atmosphere;
  private final List<Element> elements;

  private Run(AirState supply, AbsolutePressure atmosphere, List<Element> elements) {
    if (supply.pressure().compareTo(atmosphere) < 0) {
      throw new IllegalArgumentException("supply pressure must be at least the atmosphere "
          + atmosphere + ", was " + supply.pressure());
    }
    this.supply = supply;
    this.atmosphere = atmosphere;
    this.elements = List.copyOf(elements);
  }

  /**
   * Starts a run at a supply.
   *
   * @param supply the air at the supply
   * @param atmosphere the pressure around it, against which gauges read
   * @return a run without elements
   * @throws IllegalArgumentException if the supply is below the atmosphere
   */
  public static Run from(AirState supply, AbsolutePressure atmosphere) {
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
    return through(name, conduit, LossModel.isothermal());
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

  /** {@return the air at the supply} */
  public AirState supply() {
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
    List<Element.Outcome> outcomes = new ArrayList<>();
    AirState air = supply;
    for (Element element : elements) {
      Element.Outcome outcome = element.solve(demand, air);
      boolean reaches = outcome.passes() && outcome.outlet().pressure().compareTo(atmosphere) >= 0;
      if (!reaches) {
        return new RunResult.Starved(
            demand,
            element.name(),
            air.pressure(),
            largestToAtmosphere(element, air, outcome.passes() ? demand : outcome.largest()),
            shares(demand, outcomes, air.pressure(), false),
            outcome.working().get(),
            List.of(SUPPLY));
      }
      outcomes.add(outcome);
      air = outcome.outlet();
    }
    return new RunResult.Delivered(
        demand,
        supply.pressure(),
        air.pressure(),
        air.pressure().above(atmosphere),
        shares(demand, outcomes, air.pressure(), true),
        List.of(SUPPLY));
  }

  /** What an element lets through into the open; a flow that would need less than the atmosphere behind it does not pass. */
  private MassFlow largestToAtmosphere(Element element, AirState inlet, MassFlow tooMuch) {
    double open = atmosphere.pascals();
    if (element.outletPascals(tooMuch, inlet) >= open) {
      return tooMuch;
    }
    return MassFlow.ofKilogramsPerSecond(largest(
        0.0,
        tooMuch.kilogramsPerSecond(),
        flow -> element.outletPascals(MassFlow.ofKilogramsPerSecond(flow), inlet) >= open));
  }

  /** The largest flow [kg/s] that still passes, where {@code low} does and {@code high} does not. */
  private static double largest(double low, double high, DoublePredicate passes) {
    double best = low;
    double worst = high;
    for (int i = 0; i < 100 && worst - best > 1.0e-13 * worst; i++) {
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

  private List<Share> shares(
      MassFlow demand, List<Element.Outcome> outcomes, AbsolutePressure end, boolean withGain) {
    double lost = supply.pressure().pascals() - end.pascals();
    List<Share> shares = new ArrayList<>();
    AbsolutePressure inlet = supply.pressure();
    for (int i = 0; i < outcomes.size(); i++) {
      Element.Outcome outcome = outcomes.get(i);
      AbsolutePressure outlet = outcome.outlet().pressure();
      PressureDrop drop = inlet.dropTo(outlet);
      double gain = withGain ? Math.max(0.0, pascalsAtTool(demand, i) - end.pascals()) : 0.0;
      shares.add(new Share(
          elements.get(i).name(),
          inlet,
          outlet,
          drop,
          lost > 0.0 ? drop.pascals() / lost : 0.0,
          PressureDrop.ofPascals(gain),
          outcome.mach(),
          outcome.warnings(),
          outcome.working()));
      inlet = outlet;
    }
    return List.copyOf(shares);
  }

  /** The pressure at the tool with one element left out (none for -1), or -1 where another chokes. */
  private double pascalsAtTool(MassFlow demand, int leftOut) {
    AirState air = supply;
    for (int i = 0; i < elements.size(); i++) {
      if (i == leftOut) {
        continue;
      }
      double pascals = elements.get(i).outletPascals(demand, air);
      if (!(pascals > 0.0)) {
        return -1.0;
      }
      air = air.at(AbsolutePressure.ofPascals(pascals));
    }
    return air.pressure().pascals();
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
    if (atTool.pascals() < 0.0) {
      throw new IllegalArgumentException(
          "pressure at the tool must be at least 0 Pa(g), was " + atTool);
    }
    requireElements();
    double wanted = atTool.above(atmosphere).pascals();
    if (supply.pressure().pascals() < wanted) {
      return Optional.empty();
    }
    DoublePredicate arrives =
        flow -> pascalsAtTool(MassFlow.ofKilogramsPerSecond(flow), -1) >= wanted;
    double low = 0.0;
    double high = 1.0e-3;
    while (arrives.test(high) && high < 1.0e6) {
      low = high;
      high *= 2.0;
    }
    return Optional.of(MassFlow.ofKilogramsPerSecond(largest(low, high, arrives)));
  }
}
