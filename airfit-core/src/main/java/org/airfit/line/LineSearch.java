package org.airfit.line;

import java.util.Objects;
import java.util.Optional;
import java.util.function.DoubleFunction;
import java.util.function.DoubleUnaryOperator;
import org.airfit.air.AirState;
import org.airfit.internal.RootFinder;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FrictionFactor;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;

/**
 * The searches of a flow, a bore and a length that leave a wanted pressure at the outlet.
 *
 * <p>Each looks for the last place where the logarithm of the drop over the one allowed is not above 0, going by the
 * logarithm of the flow, of one over the bore, or of the length; with the length, what is lost without any is taken off
 * both drops. That function rises at least as fast as in laminar flow: by 1 with the flow and the length, by 4 with one
 * over the bore. So a step by this slope from a first guess, and a little farther, leads past the place; where it does
 * not, steps twice as large follow. The root finder does the rest.
 */
final class LineSearch {

  /** A model's answer for a flow along a conduit. */
  interface Asked {
    LineLoss at(Conduit conduit, MassFlow massFlow, AirState inlet);
  }

  /** Of the answer: half the distance of the two points that hold it, as a share. */
  private static final double TOLERANCE = 1.0e-13;

  /** The friction factor of the first guess. */
  private static final double DARCY = 0.025;

  private static final double NARROWEST = 1.0e-5;
  private static final double WIDEST = 10.0;
  private static final double SHORTEST = 1.0e-9;
  private static final double LONGEST = 1.0e12;

  /** How much farther than the slope says the first step goes, in the logarithm. */
  private static final double FARTHER = 0.01;

  /** How far beyond an answer, as a share, and how far above the pressure wanted, choking is looked for. */
  private static final double NEXT = 1.0e-9;

  private final Asked model;
  private final Conduit conduit;
  private final MassFlow massFlow;
  private final AirState inlet;
  private final AbsolutePressure outlet;
  private final double allowed;

  private LineSearch(
      Asked model, Conduit conduit, MassFlow massFlow, AirState inlet, AbsolutePressure outlet) {
    this.model = model;
    this.conduit = Objects.requireNonNull(conduit, "conduit");
    this.massFlow = Objects.requireNonNull(massFlow, "massFlow");
    this.inlet = Objects.requireNonNull(inlet, "inlet");
    this.outlet = Objects.requireNonNull(outlet, "outlet");
    this.allowed = inlet.pressure().dropTo(outlet).pascals();
  }

  static LineSolution flow(Asked model, Conduit conduit, AirState inlet, AbsolutePressure outlet) {
    MassFlow none = MassFlow.ofKilogramsPerSecond(0.0);
    return new LineSearch(model, conduit, none, inlet, outlet).flow();
  }

  static Optional<LineSolution> bore(
      Asked model, Conduit conduit, MassFlow massFlow, AirState inlet, AbsolutePressure outlet) {
    return new LineSearch(model, conduit, massFlow, inlet, outlet).bore();
  }

  static Optional<LineSolution> length(
      Asked model, Conduit conduit, MassFlow massFlow, AirState inlet, AbsolutePressure outlet) {
    return new LineSearch(model, conduit, massFlow, inlet, outlet).length();
  }

  private LineLoss atFlow(double flow) {
    return model.at(conduit, MassFlow.ofKilogramsPerSecond(flow), inlet);
  }

  private LineLoss atBore(double bore) {
    return model.at(conduit.withBore(Length.ofMetres(bore)), massFlow, inlet);
  }

  private LineLoss atLength(double length) {
    return model.at(conduit.withLength(Length.ofMetres(length)), massFlow, inlet);
  }

  /**
   * ln(Δp/Δp allowed), at most 0 where the flow arrives with what is wanted. Where the line chokes, it is carried on
   * from the drop at choking with the square of the flow, so that it stays continuous there.
   *
   * @param without a drop [Pa] to be taken off both, below the one allowed
   */
  private double excess(LineLoss loss, double without) {
    return loss.fold(
        flowing -> excess(flowing.drop().pascals(), without),
        choked -> excess(inlet.pressure().pascals() - choked.chokingPressure().pascals(), without)
            + 2.0
                * Math.log(choked.massFlow().kilogramsPerSecond()
                    / choked.largest().kilogramsPerSecond()));
  }

  /** In a form whose sign is that of the difference, to the last digit. */
  private double excess(double drop, double without) {
    return Math.log1p(Math.max(-1.0, (drop - allowed) / (allowed - without)));
  }

  /** For a bore or a length, where what does not pass does not arrive: above 0 wherever the line chokes. */
  private double excessOrChoked(LineLoss loss, double without) {
    double excess = excess(loss, without);
    return loss instanceof LineLoss.Choked ? Math.max(excess, Double.MIN_VALUE) : excess;
  }

  /** For a flow: 0, at which the search ends, where the line chokes before the pressure wanted is reached. */
  private double excessOrLimit(LineLoss loss) {
    return loss instanceof LineLoss.Choked choked
            && choked.chokingPressure().pascals() >= outlet.pascals()
        ? 0.0
        : excess(loss, 0.0);
  }

  private LineSolution flow() {
    double found = allowed == 0.0
        ? Double.NaN
        : last(
            x -> excessOrLimit(atFlow(Math.exp(x))),
            Math.log(firstFlow()),
            Math.log(PipeElement.COUNTS_FROM),
            Math.log(PipeElement.MOST_FLOW),
            1.0);
    return atFlow(Double.isNaN(found) ? 0.0 : Math.exp(found))
        .fold(
            flowing -> new LineSolution(LineSolution.Unknown.FLOW, outlet, flowing, false),
            choked -> atLargest(choked.largest().kilogramsPerSecond()));
  }

  /** What passes at most. The model may still call it too much, by its last digits. */
  private LineSolution atLargest(double largest) {
    double less = 1.0e-15;
    LineLoss loss = atFlow(largest);
    while (loss instanceof LineLoss.Choked) {
      loss = atFlow(largest * (1.0 - less));
      less *= 8.0;
    }
    return new LineSolution(LineSolution.Unknown.FLOW, outlet, (LineLoss.Flowing) loss, true);
  }

  private Optional<LineSolution> bore() {
    // a wall may be no rougher than 0.05 of the bore
    double least = Math.max(NARROWEST, 20.0 * conduit.roughness().metres() * (1.0 + 1.0e-12));
    if (allowed == 0.0) {
      return arriving(LineSolution.Unknown.BORE, atBore(least));
    }
    return arriving(
        LineSolution.Unknown.BORE,
        x -> atBore(Math.exp(-x)),
        0.0,
        -Math.log(firstBore()),
        -Math.log(WIDEST),
        -Math.log(least),
        4.0);
  }

  private Optional<LineSolution> length() {
    if (massFlow.kilogramsPerSecond() == 0.0) {
      throw new IllegalArgumentException(
          "mass flow must be above 0 kg/s to find a length, was 0 kg/s");
    }
    Optional<LineSolution> none = arriving(LineSolution.Unknown.LENGTH, atLength(0.0));
    double without = none.map(solution -> solution.loss().drop().pascals()).orElse(allowed);
    if (without == allowed) {
      return none;
    }
    return arriving(
            LineSolution.Unknown.LENGTH,
            x -> atLength(Math.exp(x)),
            without,
            Math.log(firstLength(none.get().loss())),
            Math.log(SHORTEST),
            Math.log(LONGEST),
            1.0)
        .or(() -> none);
  }

  /**
   * (p² − p2²)/(R T) [kg²/(m⁴ s²)]: the square of the flux that a resistance of 1 lets through, from what is left of the
   * pressure after a drop [Pa].
   */
  private double squareOfFlux(double without) {
    double left = allowed - without;
    double rt = AirState.GAS_CONSTANT * inlet.temperature().kelvins();
    return left * (left + 2.0 * outlet.pascals()) / rt;
  }

  /** The flow of a usual friction factor, and of one more resistance of 1 where the line has next to none. */
  private double firstFlow() {
    double k = PipeElement.resistance(
        DARCY, conduit.length().metres(), conduit.bore().metres(), conduit.fittingLoss());
    return conduit.area().squareMetres() * Math.sqrt(squareOfFlux(0.0) / (1.0 + k));
  }

  /** The bore of a usual friction factor, for the wall or for the fittings, whichever asks for more. */
  private double firstBore() {
    double flow = massFlow.kilogramsPerSecond();
    double ratio = 16.0 * flow * flow / (Math.PI * Math.PI * squareOfFlux(0.0));
    return Math.max(
        Math.pow(ratio * DARCY * conduit.length().metres(), 0.2),
        Math.pow(ratio * (1.0 + conduit.fittingLoss()), 0.25));
  }

  /** The length of the flow's own friction factor, if the model has one, for what is left without any length. */
  private double firstLength(LineLoss.Flowing without) {
    double darcy = without.friction().map(FrictionFactor::darcy).orElse(DARCY);
    double flux = massFlow.kilogramsPerSecond() / conduit.area().squareMetres();
    double k = squareOfFlux(without.drop().pascals()) / (flux * flux);
    return conduit.bore().metres() * k / darcy;
  }

  /** The last place before a line takes too much or chokes; empty where the first does already. */
  private Optional<LineSolution> arriving(
      LineSolution.Unknown unknown,
      DoubleFunction<LineLoss> at,
      double without,
      double first,
      double low,
      double high,
      double slope) {
    double x = last(place -> excessOrChoked(at.apply(place), without), first, low, high, slope);
    if (Double.isNaN(x)) {
      return Optional.empty();
    }
    LineLoss.Flowing loss = (LineLoss.Flowing) at.apply(x);
    boolean hasLeft = loss.outlet().pressure().pascals() > outlet.pascals() * (1.0 + NEXT);
    boolean chokes = hasLeft && at.apply(Math.min(high, x + NEXT)) instanceof LineLoss.Choked;
    return Optional.of(new LineSolution(unknown, outlet, loss, chokes));
  }

  private Optional<LineSolution> arriving(LineSolution.Unknown unknown, LineLoss loss) {
    return loss.fold(
        flowing -> flowing.drop().pascals() <= allowed
            ? Optional.of(new LineSolution(unknown, outlet, flowing, false))
            : Optional.empty(),
        choked -> Optional.empty());
  }

  /**
   * Finds the last place at which a rising function is not above 0, or one at which it is 0.
   *
   * @param slope how fast the function rises at least, about
   * @return the place; {@code high} where the function is still below 0 there, NaN where it is above 0 even at
   *     {@code low}
   */
  private static double last(
      DoubleUnaryOperator function, double first, double low, double high, double slope) {
    double x = Math.min(high, Math.max(low, first));
    double y = function.applyAsDouble(x);
    double step = Math.abs(y) / slope + FARTHER;
    boolean isBeyond = y > 0.0;
    double end = isBeyond ? low : high;
    while (x != end && y != 0.0) {
      double next = isBeyond ? Math.max(low, x - step) : Math.min(high, x + step);
      double atNext = function.applyAsDouble(next);
      if (atNext > 0.0 != isBeyond) {
        return isBeyond
            ? RootFinder.find(function, next, atNext, x, y, TOLERANCE)
            : RootFinder.find(function, x, y, next, atNext, TOLERANCE);
      }
      x = next;
      y = atNext;
      step *= 2.0;
    }
    return isBeyond ? Double.NaN : x;
  }
}
