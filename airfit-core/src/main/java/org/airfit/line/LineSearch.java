package org.airfit.line;

import java.util.Objects;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.airfit.air.AirState;
import org.airfit.internal.RootFinder;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.jspecify.annotations.Nullable;

/**
 * The searches of a flow, a bore and a length that leave a wanted pressure at the outlet.
 *
 * <p>What is brought to 0 is half the logarithm of p1² − p2² over what it may be. It goes nearly straight with the
 * logarithm of the flow (slope 0.5 in laminar flow to 1 in rough bores) and of the bore (−2 to −2.7), and p1² − p2²
 * itself goes nearly straight with the length. Where a line chokes, it is carried on from the pressure at choking by
 * the logarithm of the flow over the largest, so that it stays continuous there.
 */
final class LineSearch {

  /** A model's answer for a flow along a conduit. */
  interface Asked {
    LineLoss at(Conduit conduit, MassFlow massFlow, AirState inlet);
  }

  /** Of the answer: half the distance of the two points that hold it, as a share. */
  private static final double TOLERANCE = 1.0e-13;

  /** The friction factor to start from. */
  private static final double DARCY = 0.025;

  private static final double NARROWEST = 1.0e-5;
  private static final double WIDEST = 10.0;
  private static final double LEAST_FLOW = 1.0e-100;
  private static final double MOST_FLOW = 1.0e9;
  private static final double LONGEST = 1.0e12;

  /** How far a step goes beyond where a straight line would end, so that the answer comes to lie between. */
  private static final double BEYOND = 1.1;

  private static final double FARTHER = 0.01;
  private static final double LARGEST_STEP = 5.0;

  /** The outlet pressure over the one wanted from which on an answer counts as limited by something else. */
  private static final double LEFT_OVER = 1.0 + 1.0e-9;

  private final Asked model;
  private final Conduit conduit;
  private final MassFlow massFlow;
  private final AirState inlet;
  private final AbsolutePressure outlet;
  private final double allowed;
  private final double wantedSquares;

  /** The first answer that said the line chokes at a pressure above the one wanted. No search of a flow need go on. */
  private LineLoss.@Nullable Choked limit;

  private boolean isFlowUnknown;

  private LineSearch(
      Asked model, Conduit conduit, MassFlow massFlow, AirState inlet, AbsolutePressure outlet) {
    this.model = model;
    this.conduit = Objects.requireNonNull(conduit, "conduit");
    this.massFlow = Objects.requireNonNull(massFlow, "massFlow");
    this.inlet = Objects.requireNonNull(inlet, "inlet");
    this.outlet = Objects.requireNonNull(outlet, "outlet");
    this.allowed = inlet.pressure().dropTo(outlet).pascals();
    this.wantedSquares = squares(allowed);
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

  /** p1² − p2² [Pa²] of a drop, with all its digits. */
  private double squares(double drop) {
    return drop * (2.0 * inlet.pressure().pascals() - drop);
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

  /** What is brought to 0: at most 0 where the flow arrives with what is wanted, above 0 where not. */
  private double excess(LineLoss loss) {
    return loss.fold(
        flowing -> signed(
            0.5 * Math.log(squares(flowing.drop().pascals()) / wantedSquares),
            flowing.drop().pascals() <= allowed),
        choked -> signed(
            Math.max(0.0, atChoking(choked))
                + Math.log(
                    choked.massFlow().kilogramsPerSecond() / choked.largest().kilogramsPerSecond()),
            false));
  }

  private double atChoking(LineLoss.Choked choked) {
    double drop = inlet.pressure().pascals() - choked.chokingPressure().pascals();
    double value = 0.5 * Math.log(squares(drop) / wantedSquares);
    if (!(value > 0.0) && isFlowUnknown && limit == null) {
      limit = choked;
    }
    return value;
  }

  /** A value whose rounding does not contradict what is known of its sign. */
  private static double signed(double value, boolean arrives) {
    if (arrives) {
      return Math.min(value, 0.0);
    }
    return Math.max(value, Double.MIN_VALUE);
  }

  /** Half the logarithm of S/S0 to (S − S0)/S0, which is straight in the length as long as the flow arrives. */
  private double straightExcess(LineLoss loss) {
    double value = excess(loss);
    return signed(Math.expm1(2.0 * value), value <= 0.0);
  }

  private LineSolution flow() {
    isFlowUnknown = true;
    if (allowed == 0.0) {
      return solution(LineSolution.Unknown.FLOW, atFlow(0.0), false);
    }
    double x = search(
        flow -> excess(atFlow(Math.exp(flow))),
        Math.log(firstFlow()),
        Math.log(LEAST_FLOW),
        Math.log(MOST_FLOW),
        1.0);
    if (limit != null) {
      return atLargest(limit.largest().kilogramsPerSecond());
    }
    return solution(LineSolution.Unknown.FLOW, atFlow(Double.isNaN(x) ? 0.0 : Math.exp(x)), false);
  }

  /** What passes at most. The model may still call it too much, by its last digits. */
  private LineSolution atLargest(double largest) {
    double less = 0.0;
    LineLoss loss = atFlow(largest);
    while (loss instanceof LineLoss.Choked) {
      less = less == 0.0 ? 1.0e-15 : 8.0 * less;
      loss = atFlow(largest * (1.0 - less));
    }
    return solution(LineSolution.Unknown.FLOW, loss, true);
  }

  /** A flow near the answer: that of a usual friction factor, or that of laminar flow where it is laminar. */
  private double firstFlow() {
    double bore = conduit.bore().metres();
    double length = conduit.length().metres();
    double p1 = inlet.pressure().pascals();
    double rt = AirState.GAS_CONSTANT * inlet.temperature().kelvins();
    double viscosity = inlet.viscosity().pascalSeconds();
    double area = conduit.area().squareMetres();
    double k = Math.max(0.1, DARCY * length / bore + conduit.fittingLoss());
    double turbulent = area * Math.sqrt(wantedSquares / (rt * k));
    double laminar = wantedSquares
        * Math.PI
        * Math.pow(bore, 4.0)
        / (256.0 * viscosity * Math.max(bore, length) * rt);
    boolean isLaminar = PipeElement.reynolds(laminar, bore, viscosity) < FrictionLaw.LAMINAR_BELOW;
    double flow = isLaminar ? Math.min(laminar, turbulent) : turbulent;
    return Math.min(MOST_FLOW, Math.max(LEAST_FLOW, Math.min(flow, area * p1 / Math.sqrt(rt))));
  }

  private Optional<LineSolution> bore() {
    // a wall may be no rougher than 0.05 of the bore
    double least = Math.max(NARROWEST, 20.0 * conduit.roughness().metres() * (1.0 + 1.0e-12));
    if (massFlow.kilogramsPerSecond() == 0.0 || allowed == 0.0) {
      return arrives(LineSolution.Unknown.BORE, atBore(least));
    }
    double x = search(
        bore -> excess(atBore(Math.exp(bore))),
        Math.log(Math.min(WIDEST, Math.max(least, firstBore()))),
        Math.log(WIDEST),
        Math.log(least),
        2.4);
    if (Double.isNaN(x)) {
      return Optional.empty();
    }
    double found = Math.exp(x);
    LineLoss loss = atBore(Math.min(WIDEST, Math.max(least, found)));
    return Optional.of(solution(
        LineSolution.Unknown.BORE,
        loss,
        hasLeft(loss) && chokes(atBore(nextNarrower(found, least)))));
  }

  private static double nextNarrower(double bore, double least) {
    return Math.max(least, bore * (1.0 - 1.0e-9));
  }

  /** The bore of a usual friction factor, in a few steps of what a line and its fittings ask for. */
  private double firstBore() {
    double rt = AirState.GAS_CONSTANT * inlet.temperature().kelvins();
    double flow = massFlow.kilogramsPerSecond();
    double fluxes = 16.0 * flow * flow * rt / (Math.PI * Math.PI * wantedSquares);
    double bore = Math.pow(fluxes * DARCY * Math.max(conduit.length().metres(), 1.0e-3), 0.2);
    for (int i = 0; i < 4; i++) {
      double k = DARCY * conduit.length().metres() / bore + conduit.fittingLoss();
      bore = Math.pow(fluxes * Math.max(0.1, k), 0.25);
    }
    return bore;
  }

  private Optional<LineSolution> length() {
    if (massFlow.kilogramsPerSecond() == 0.0) {
      throw new IllegalArgumentException(
          "mass flow must be above 0 kg/s to find a length, was 0 kg/s");
    }
    LineLoss without = atLength(0.0);
    if (allowed == 0.0) {
      return arrives(LineSolution.Unknown.LENGTH, without);
    }
    double atNone = straightExcess(without);
    if (atNone > 0.0) {
      return Optional.empty();
    }
    double x = firstLength();
    double y = straightExcess(atLength(x));
    double within = 0.0;
    double atWithin = atNone;
    double beyond = Double.NaN;
    double atBeyond = Double.NaN;
    double aside = FARTHER;
    while (true) {
      if (y <= 0.0) {
        within = x;
        atWithin = y;
        if (x >= LONGEST) {
          return Optional.of(solution(LineSolution.Unknown.LENGTH, atLength(x), false));
        }
      } else {
        beyond = x;
        atBeyond = y;
      }
      if (within > 0.0 && beyond > 0.0) {
        break;
      }
      // straight from no length to here, and a little farther, so that the answer comes to lie
      // between
      double straight = x * atNone / (atNone - y);
      x = y > 0.0
          ? Math.max(0.01 * x, Math.min(x, straight) * (1.0 - aside))
          : Math.min(LONGEST, Math.min(100.0 * x, Math.max(x, straight) * (1.0 + aside)));
      aside = Math.min(0.5, 2.0 * aside);
      if (!(x > Double.MIN_NORMAL)) {
        return Optional.of(solution(LineSolution.Unknown.LENGTH, without, false));
      }
      y = straightExcess(atLength(x));
    }
    double found = RootFinder.find(
        length -> straightExcess(atLength(length)),
        within,
        atWithin,
        beyond,
        atBeyond,
        TOLERANCE * within);
    LineLoss loss = atLength(found);
    return Optional.of(solution(
        LineSolution.Unknown.LENGTH,
        loss,
        hasLeft(loss) && chokes(atLength(found * (1.0 + 1.0e-9)))));
  }

  /** The length of a usual friction factor. */
  private double firstLength() {
    double flux = massFlow.kilogramsPerSecond() / conduit.area().squareMetres();
    double k = wantedSquares
            / (flux * flux * AirState.GAS_CONSTANT * inlet.temperature().kelvins())
        - conduit.fittingLoss();
    return Math.min(LONGEST, Math.max(1.0e-6, Math.max(0.1, k) * conduit.bore().metres() / DARCY));
  }

  /**
   * Finds where a function passes 0 on the way from a point within to one beyond: brackets it from a first guess, by
   * steps along its slope, and then asks the root finder. NaN where even {@code farWithin} is beyond; {@code
   * farBeyond} where that is still within.
   *
   * @param slope how fast the function rises on the way, about
   */
  private double search(
      DoubleUnaryOperator function,
      double first,
      double farWithin,
      double farBeyond,
      double slope) {
    double way = farBeyond > farWithin ? 1.0 : -1.0;
    double x = first;
    double y = function.applyAsDouble(x);
    double before = Double.NaN;
    double atBefore = Double.NaN;
    double steepness = slope;
    while (true) {
      if (y <= 0.0 ? x == farBeyond : x == farWithin) {
        return y <= 0.0 ? x : Double.NaN;
      }
      if (limit != null) {
        return x;
      }
      if (y <= 0.0 != atBefore <= 0.0 && !Double.isNaN(atBefore)) {
        break;
      }
      double secant = way * (y - atBefore) / (x - before);
      if (secant > 0.4 * slope && secant < 3.0 * slope) {
        steepness = secant;
      }
      double step = Math.min(LARGEST_STEP, BEYOND * Math.abs(y) / steepness + FARTHER);
      before = x;
      atBefore = y;
      x += (y <= 0.0 ? way : -way) * step;
      x = Math.min(Math.max(farWithin, farBeyond), Math.max(Math.min(farWithin, farBeyond), x));
      y = function.applyAsDouble(x);
    }
    return y <= 0.0
        ? RootFinder.find(function, x, y, before, atBefore, TOLERANCE)
        : RootFinder.find(function, before, atBefore, x, y, TOLERANCE);
  }

  private static boolean chokes(LineLoss loss) {
    return loss instanceof LineLoss.Choked;
  }

  /** Whether more pressure is left than was wanted, as before a jump. */
  private boolean hasLeft(LineLoss loss) {
    return loss.fold(
        flowing -> flowing.outlet().pressure().pascals() > outlet.pascals() * LEFT_OVER,
        choked -> false);
  }

  private Optional<LineSolution> arrives(LineSolution.Unknown unknown, LineLoss loss) {
    return loss.fold(
        flowing -> flowing.drop().pascals() <= allowed
            ? Optional.of(new LineSolution(unknown, outlet, flowing, false))
            : Optional.empty(),
        choked -> Optional.empty());
  }

  private LineSolution solution(LineSolution.Unknown unknown, LineLoss loss, boolean choked) {
    if (loss instanceof LineLoss.Flowing flowing) {
      return new LineSolution(unknown, outlet, flowing, choked);
    }
    throw new IllegalStateException("a search ended where nothing arrives: " + loss);
  }
}
