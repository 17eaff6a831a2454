package org.airfit.line;

import org.airfit.air.AirState;
import org.airfit.flow.FlowElement;
import org.airfit.internal.Digits;
import org.airfit.internal.RootFinder;

/** One line by a handbook's formula: plain doubles in SI, no checks, no allocation. {@link LineFormula} wraps it. */
final class FormulaElement implements FlowElement {

  /** Of the largest flow, in its logarithm. */
  private static final double TOLERANCE = 1.0e-15;

  private final FormulaLaw law;
  private final double bore;
  private final double length;
  private final double fittingLoss;
  private final double area;

  FormulaElement(FormulaLaw law, Conduit conduit) {
    this.law = law;
    this.bore = conduit.bore().metres();
    this.length = conduit.length().metres();
    this.fittingLoss = conduit.fittingLoss();
    this.area = conduit.area().squareMetres();
  }

  private double fittings(double flow, double p1, double t) {
    return fittingLoss * IsothermalKernels.parameter(flow, area, AirState.GAS_CONSTANT * t, p1);
  }

  private double lost(double flow, double p1, double t) {
    return law.lost(law.wall(length, bore, flow, p1, t), fittings(flow, p1, t), p1);
  }

  /** (p1 − p2)/p1, fittings and all; 1 or more where nothing is left. */
  double dropShare(double flow, double p1, double t) {
    return law.dropShare(lost(flow, p1, t));
  }

  @Override
  public double outlet(double flow, double pascals, double kelvins, double viscosity) {
    if (PipeElement.countsAsNone(flow)) {
      return pascals;
    }
    if (PipeElement.passesNowhere(flow)) {
      return Double.NaN;
    }
    double outlet = pascals * (1.0 - dropShare(flow, pascals, kelvins));
    return outlet > 0.0 ? outlet : Double.NaN;
  }

  /** The flow that leaves nothing. What is lost goes with a power of the flow from 1.85 to 2. */
  @Override
  public double largest(double pascals, double kelvins, double viscosity) {
    double first = Math.log(area * pascals / Math.sqrt(AirState.GAS_CONSTANT * kelvins));
    double atFirst = Math.log(lost(Math.exp(first), pascals, kelvins));
    if (atFirst == Double.NEGATIVE_INFINITY) {
      return Double.POSITIVE_INFINITY;
    }
    double second = first - atFirst / 1.8 - Math.copySign(1.0e-9, atFirst);
    double atSecond = Math.log(lost(Math.exp(second), pascals, kelvins));
    boolean rising = atFirst <= 0.0;
    double found = RootFinder.find(
        x -> Math.log(lost(Math.exp(x), pascals, kelvins)),
        rising ? first : second,
        rising ? atFirst : atSecond,
        rising ? second : first,
        rising ? atSecond : atFirst,
        TOLERANCE);
    return PipeElement.passing(this, Math.exp(found), pascals, kelvins, viscosity);
  }

  @Override
  public double slope(double flow, double pascals, double kelvins, double viscosity) {
    if (PipeElement.countsAsNone(flow)) {
      return 0.0;
    }
    double wall = law.wall(length, bore, flow, pascals, kelvins);
    double fittings = fittings(flow, pascals, kelvins);
    double byFlow = law.lost(law.power() * wall, 2.0 * fittings, pascals);
    double share = law.dropShare(law.lost(wall, fittings, pascals));
    if (!(share < 1.0)) {
      return Double.NaN;
    }
    return -pascals * byFlow / flow / (law.givesSquares() ? 2.0 * (1.0 - share) : 1.0);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof FormulaElement that
        && law == that.law
        && bore == that.bore
        && length == that.length
        && fittingLoss == that.fittingLoss;
  }

  @Override
  public int hashCode() {
    return 31 * (31 * law.hashCode() + Double.hashCode(bore)) + Double.hashCode(length);
  }

  /** {@return the line in SI} */
  @Override
  public String toString() {
    return law + " along " + Digits.told(length) + " m of " + Digits.told(bore) + " m bore";
  }
}
