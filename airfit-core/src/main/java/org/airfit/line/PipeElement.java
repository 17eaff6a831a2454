package org.airfit.line;

import java.util.function.DoubleUnaryOperator;
import org.airfit.air.AirState;
import org.airfit.flow.FlowElement;
import org.airfit.internal.Digits;
import org.airfit.internal.RootFinder;

/** One line by an equation of pipe flow: plain doubles in SI, no checks, no allocation. {@link PipeModel} wraps it. */
final class PipeElement implements FlowElement {

  /** Of the largest flow, in its logarithm. */
  private static final double TOLERANCE = 1.0e-15;

  /** Where the largest flow is looked for, as a logarithm: beyond 10⁴³ times the flow of a = 1 nothing limits it. */
  private static final double FARTHEST = 100.0;

  private static final double STEP = 1.0e-4;

  /** A smaller flow loses nothing [kg/s]; see {@link LossModel#loss}. */
  static final double COUNTS_FROM = 1.0e-100;

  /** A larger flow passes nowhere [kg/s]; see {@link LossModel#loss}. */
  static final double MOST_FLOW = 1.0e90;

  private final PipeEquation equation;
  private final FrictionLaw law;
  private final double bore;
  private final double length;
  private final double diameters; // L/D
  private final double relativeRoughness;
  private final double fittingLoss;
  private final double area;

  PipeElement(PipeEquation equation, FrictionLaw law, Conduit conduit) {
    this.equation = equation;
    this.law = law;
    this.bore = conduit.bore().metres();
    this.length = conduit.length().metres();
    this.diameters = length / bore;
    this.relativeRoughness = conduit.relativeRoughness();
    this.fittingLoss = conduit.fittingLoss();
    this.area = 0.25 * Math.PI * bore * bore;
  }

  /** Whether a flow is so small that its square and its Reynolds number leave the range of a double. */
  static boolean countsAsNone(double flow) {
    return flow < COUNTS_FROM;
  }

  /** Whether a flow is so large that its square times a length or a ΣK of 0 is no number. */
  static boolean passesNowhere(double flow) {
    return flow > MOST_FLOW;
  }

  /** Re = 4 ṁ/(π D μ). */
  static double reynolds(double flow, double bore, double viscosity) {
    return 4.0 * flow / (Math.PI * bore * viscosity);
  }

  /** k = λL/D + ΣK. */
  static double resistance(double darcy, double length, double bore, double fittingLoss) {
    return darcy * (length / bore) + fittingLoss;
  }

  /**
   * The least flow [kg/s] in a bore at which friction jumps and that lies above a flow; infinite where there is none.
   */
  static double nextJump(FrictionLaw law, double above, double bore, double viscosity) {
    if (!law.jumps()) {
      return Double.POSITIVE_INFINITY;
    }
    double flow = 0.25 * FrictionLaw.LAMINAR_BELOW * Math.PI * bore * viscosity;
    while (reynolds(flow, bore, viscosity) < FrictionLaw.LAMINAR_BELOW) {
      flow = Math.nextUp(flow);
    }
    return flow > above ? flow : Double.POSITIVE_INFINITY;
  }

  /** A flow [kg/s] that passes: the one given, or less by as many of its last digits as rounding calls for. */
  static double passing(
      FlowElement element, double flow, double pascals, double kelvins, double viscosity) {
    double less = Math.ulp(1.0);
    double passing = Math.min(flow, MOST_FLOW);
    while (Double.isNaN(element.outlet(passing, pascals, kelvins, viscosity))) {
      passing = Math.min(flow, MOST_FLOW) * (1.0 - less);
      less *= 2.0;
    }
    return passing;
  }

  double darcy(double flow, double viscosity) {
    return law.darcy(reynolds(flow, bore, viscosity), relativeRoughness);
  }

  double resistance(double darcy) {
    return darcy * diameters + fittingLoss; // to the last digit that of its parts
  }

  /** a = G² R T/p1². */
  double parameter(double flow, double p1, double t1) {
    return IsothermalKernels.parameter(flow, area, AirState.GAS_CONSTANT * t1, p1);
  }

  /** The flow [kg/s] of a = 1: G = p1/√(R T). */
  private double flowOfOne(double p1, double t1) {
    return area * p1 / Math.sqrt(AirState.GAS_CONSTANT * t1);
  }

  @Override
  public double outlet(double flow, double pascals, double kelvins, double viscosity) {
    if (countsAsNone(flow)) {
      return pascals;
    }
    if (passesNowhere(flow)) {
      return Double.NaN;
    }
    return outletBehind(resistance(darcy(flow, viscosity)), flow, pascals, kelvins);
  }

  /** Friction hangs on the flow alone. */
  @Override
  public DoubleUnaryOperator outletByInlet(double flow, double kelvins, double viscosity) {
    if (countsAsNone(flow) || passesNowhere(flow)) {
      return FlowElement.super.outletByInlet(flow, kelvins, viscosity);
    }
    double k = resistance(darcy(flow, viscosity));
    return pascals -> outletBehind(k, flow, pascals, kelvins);
  }

  private double outletBehind(double k, double flow, double pascals, double kelvins) {
    double a = parameter(flow, pascals, kelvins);
    if (equation.chokes(a, k)) {
      return Double.NaN;
    }
    double outlet = pascals * equation.leftShare(a, k, equation.root(a, k));
    return outlet > 0.0 ? outlet : Double.NaN;
  }

  @Override
  public double outletKelvins(double flow, double pascals, double kelvins, double viscosity) {
    if (countsAsNone(flow) || !equation.cools()) {
      return kelvins;
    }
    double k = resistance(darcy(flow, viscosity));
    double a = parameter(flow, pascals, kelvins);
    return kelvins * equation.temperatureRatio(a, equation.root(a, k));
  }

  /** By the root finder in x = ½ ln a, which is the logarithm of the flow over that of a = 1. */
  @Override
  public double largest(double pascals, double kelvins, double viscosity) {
    double flowOfOne = flowOfOne(pascals, kelvins);
    double reynoldsOfOne = reynolds(flowOfOne, bore, viscosity);
    double highest = 0.5 * Math.log(equation.largestParameter());
    double beyond = Math.min(highest, 0.0);
    double atBeyond = tooMuch(beyond, reynoldsOfOne);
    double within = beyond;
    double atWithin = atBeyond;
    while (atBeyond <= 0.0) {
      if (beyond >= highest) {
        return passing(this, flowOfOne * Math.exp(highest), pascals, kelvins, viscosity);
      }
      if (beyond > FARTHEST) {
        return Double.POSITIVE_INFINITY;
      }
      within = beyond;
      atWithin = atBeyond;
      beyond = Math.min(highest, beyond + Math.min(10.0, Math.max(0.25, -atBeyond)));
      atBeyond = tooMuch(beyond, reynoldsOfOne);
    }
    // the function rises at least as fast as x but for short wide bores
    while (atWithin > 0.0) {
      beyond = within;
      atBeyond = atWithin;
      within -= Math.max(0.25, atWithin);
      atWithin = tooMuch(within, reynoldsOfOne);
    }
    double found = RootFinder.find(
        x -> tooMuch(x, reynoldsOfOne), within, atWithin, beyond, atBeyond, TOLERANCE);
    return passing(this, flowOfOne * Math.exp(found), pascals, kelvins, viscosity);
  }

  private double tooMuch(double x, double reynoldsOfOne) {
    double darcy = law.darcy(reynoldsOfOne * Math.exp(x), relativeRoughness);
    return equation.tooMuch(2.0 * x, resistance(darcy));
  }

  @Override
  public double nextJump(double above, double viscosity) {
    return nextJump(law, above, bore, viscosity);
  }

  /** In closed form, but by a difference for adiabatic flow and for λ of laws other than Colebrook's. */
  @Override
  public double slope(double flow, double pascals, double kelvins, double viscosity) {
    if (countsAsNone(flow)) {
      // Hagen and Poiseuille: Δp = 128 μ L ṁ/(π D⁴ ρ)
      double density = pascals / (AirState.GAS_CONSTANT * kelvins);
      return -128.0 * viscosity * length / (Math.PI * bore * bore * bore * bore * density);
    }
    if (equation.cools()) {
      return FlowElement.super.slope(flow, pascals, kelvins, viscosity);
    }
    double darcy = darcy(flow, viscosity);
    double k = resistance(darcy);
    double a = parameter(flow, pascals, kelvins);
    if (equation.chokes(a, k)) {
      return Double.NaN;
    }
    double bySelf = equation.slope(a, k, darcyByFlow(flow, darcy, viscosity) * diameters);
    return pascals * bySelf / flow;
  }

  /** dλ/d ln ṁ. */
  private double darcyByFlow(double flow, double darcy, double viscosity) {
    double reynolds = reynolds(flow, bore, viscosity);
    if (reynolds < FrictionLaw.LAMINAR_BELOW && law.jumps()) {
      return -darcy;
    }
    if (law == FrictionLaw.COLEBROOK) {
      return FrictionKernels.colebrookByLogRe(reynolds, relativeRoughness, darcy);
    }
    boolean atJump = law.jumps() && reynolds * (1.0 - STEP) < FrictionLaw.LAMINAR_BELOW;
    double low = atJump ? 0.0 : STEP;
    double atLow = atJump ? darcy : law.darcy(reynolds * (1.0 - STEP), relativeRoughness);
    return (law.darcy(reynolds * (1.0 + STEP), relativeRoughness) - atLow) / (STEP + low);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof PipeElement that
        && equation == that.equation
        && law == that.law
        && bore == that.bore
        && length == that.length
        && relativeRoughness == that.relativeRoughness
        && fittingLoss == that.fittingLoss;
  }

  @Override
  public int hashCode() {
    return 31 * (31 * equation.hashCode() + Double.hashCode(bore)) + Double.hashCode(length);
  }

  /** {@return the line in SI} */
  @Override
  public String toString() {
    return equation.title() + " along " + Digits.told(length) + " m of " + Digits.told(bore)
        + " m bore";
  }
}
