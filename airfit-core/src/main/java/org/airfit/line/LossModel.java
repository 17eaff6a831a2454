package org.airfit.line;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Predicate;
import org.airfit.air.AirState;
import org.airfit.flow.FlowElement;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.source.Source;
import org.airfit.working.UnitSystem;
import org.airfit.working.Working;

/**
 * A way to say what pressure a flow loses along a conduit.
 *
 * <p>{@link #isothermal()} is the one to use. {@link #of} gives the other equations of pipe flow with any law of friction, and
 * {@link LineFormula} holds the empirical formulas of the handbooks. {@link LossComparison} shows several side by side.
 */
public interface LossModel {

  /**
   * Obtains the isothermal model with exact Colebrook friction: the one to use where nothing else is asked for.
   *
   * @return the model
   */
  static LossModel isothermal() {
    return of(PipeEquation.ISOTHERMAL, FrictionLaw.COLEBROOK);
  }

  /**
   * Obtains an equation of pipe flow with a law of friction.
   *
   * @param equation the equation
   * @param law the law of friction
   * @return the model
   */
  static LossModel of(PipeEquation equation, FrictionLaw law) {
    return new PipeModel(equation, law);
  }

  /**
   * Obtains the adiabatic model for a conduit that draws air at rest from a tank or header: the air is sped up into the bore without loss,
   * cools by it, and then loses pressure by friction.
   *
   * <pre>
   *   ṁ √(R T0)/(A p0) = √γ M1 (1 + (γ−1)/2 M1²)^(−(γ+1)/(2(γ−1)))    p1 = p0 (1 + (γ−1)/2 M1²)^(−γ/(γ−1)),  then as {@link PipeEquation#ADIABATIC}
   * </pre>
   *
   * <p>The inlet asked for is the air at rest. In the answer the inlet is the air where it has entered the bore, and the drop is counted from
   * rest. A sharp entrance loses more: give its K with the fittings. <b>Source:</b> Shapiro, <cite>Compressible Fluid Flow</cite> (1953),
   * chapters 4 and 6.
   *
   * @param law the law of friction
   * @return the model
   */
  static LossModel fromReservoir(FrictionLaw law) {
    return new ReservoirModel(law);
  }

  /** {@return all models there are, the equations with Colebrook friction first} */
  static List<LossModel> all() {
    List<LossModel> all = new ArrayList<>();
    for (PipeEquation equation : PipeEquation.values()) {
      all.add(of(equation, FrictionLaw.COLEBROOK));
    }
    all.addAll(List.of(LineFormula.values()));
    return List.copyOf(all);
  }

  /**
   * Finds the loss along a conduit.
   *
   * @param conduit what the air runs through
   * @param massFlow the flow; 0 is allowed and loses nothing
   * @param inlet the air as it enters
   * @return the loss, or that the conduit chokes
   */
  LineLoss loss(Conduit conduit, MassFlow massFlow, AirState inlet);

  /**
   * Obtains a conduit by this model on plain doubles, for runs and networks.
   *
   * <p>By way of {@link #loss}, unless a model has kernels of its own.
   *
   * @param conduit what the air runs through
   * @return the conduit as an element
   */
  default FlowElement element(Conduit conduit) {
    return new LossElement(
        this,
        Objects.requireNonNull(conduit, "conduit"),
        (massFlow, inlet) -> loss(conduit, massFlow, inlet));
  }

  /**
   * Tells how this model reached a loss.
   *
   * @param loss a loss this model gave
   * @param units in which units; a formula of a handbook keeps those it was published in, and a reservoir shows SI
   * @return its working
   */
  Working working(LineLoss loss, UnitSystem units);

  /** {@return what the model is called} */
  String title();

  /** {@return what the model holds for, in plain words} */
  String validity();

  /** {@return what the model was fitted to} */
  String fitBasis();

  /** {@return how far it usually lies from the isothermal answer on shop lines} */
  String bias();

  /** {@return where the model stands} */
  Source source();

  /**
   * Finds the flow that arrives at a pressure.
   *
   * @param conduit what the air runs through
   * @param inlet the air as it enters
   * @param outlet the pressure wanted at the outlet, at most that at the inlet
   * @return the largest flow that still has {@code outlet} behind it; where the conduit chokes first, the choking flow
   * @throws IllegalArgumentException if {@code outlet} is above the inlet pressure
   */
  default MassFlow flowFor(Conduit conduit, AirState inlet, AbsolutePressure outlet) {
    double allowed = inlet.pressure().dropTo(outlet).pascals();
    Predicate<MassFlow> arrives = flow -> drops(conduit, flow, inlet) <= allowed;
    double high = 1.0e-6;
    while (arrives.test(MassFlow.ofKilogramsPerSecond(high)) && high < 1.0e9) {
      high *= 2.0;
    }
    return MassFlow.ofKilogramsPerSecond(
        Search.last(0.0, high, flow -> arrives.test(MassFlow.ofKilogramsPerSecond(flow))));
  }

  /**
   * Finds the smallest bore through which a flow arrives at a pressure.
   *
   * @param conduit the conduit with any bore; its length, roughness and fittings are kept
   * @param massFlow the flow
   * @param inlet the air as it enters
   * @param outlet the pressure wanted at the outlet, at most that at the inlet
   * @return the bore, or empty where even 10 m is too narrow
   * @throws IllegalArgumentException if {@code outlet} is above the inlet pressure
   */
  default Optional<Length> boreFor(
      Conduit conduit, MassFlow massFlow, AirState inlet, AbsolutePressure outlet) {
    double allowed = inlet.pressure().dropTo(outlet).pascals();
    // a wall may be no rougher than 0.05 of the bore
    double least = Math.max(1.0e-5, 20.0 * conduit.roughness().metres() * (1.0 + 1.0e-12));
    Predicate<Double> narrow =
        bore -> drops(conduit.withBore(Length.ofMetres(bore)), massFlow, inlet) > allowed;
    if (narrow.test(10.0)) {
      return Optional.empty();
    }
    if (!narrow.test(least)) {
      return Optional.of(Length.ofMetres(least));
    }
    return Optional.of(Length.ofMetres(Search.first(least, 10.0, narrow)));
  }

  /**
   * Finds the longest conduit through which a flow arrives at a pressure.
   *
   * @param conduit the conduit with any length; its bore, roughness and fittings are kept
   * @param massFlow the flow, above 0
   * @param inlet the air as it enters
   * @param outlet the pressure wanted at the outlet, at most that at the inlet
   * @return the length, or empty where the fittings alone take more
   * @throws IllegalArgumentException if {@code outlet} is above the inlet pressure, or nothing flows and any length would do
   */
  default Optional<Length> lengthFor(
      Conduit conduit, MassFlow massFlow, AirState inlet, AbsolutePressure outlet) {
    double allowed = inlet.pressure().dropTo(outlet).pascals();
    if (massFlow.kilogramsPerSecond() == 0.0) {
      throw new IllegalArgumentException(
          "mass flow must be above 0 kg/s to find a length, was 0 kg/s");
    }
    Predicate<Double> arrives =
        length -> drops(conduit.withLength(Length.ofMetres(length)), massFlow, inlet) <= allowed;
    if (!arrives.test(0.0)) {
      return Optional.empty();
    }
    double high = 1.0e-3;
    while (arrives.test(high) && high < 1.0e12) {
      high *= 2.0;
    }
    return Optional.of(Length.ofMetres(Search.last(0.0, high, arrives)));
  }

  private double drops(Conduit conduit, MassFlow massFlow, AirState inlet) {
    return loss(conduit, massFlow, inlet)
        .fold(flowing -> flowing.drop().pascals(), choked -> Double.POSITIVE_INFINITY);
  }
}
