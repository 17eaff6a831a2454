package org.airfit.line;

import org.airfit.air.AirState;
import org.airfit.quantity.ReferenceState;

/**
 * The numbers of the handbooks' formulas, on plain doubles in SI without checks or allocation. {@link LineFormula}
 * wraps them.
 */
enum FormulaLaw {
  HARRIS(false, 2.0),
  UNWIN(true, 2.0),
  BABCOCK(true, 2.0),
  WEYMOUTH(true, 2.0),
  PANHANDLE_A(true, 1.0 / 0.5394),
  SPITZGLASS_HIGH(true, 2.0),
  SPITZGLASS_LOW(false, 2.0),
  OLIPHANT(true, 2.0),
  FRITZSCHE(true, 1.0 / 0.538),
  METRIC_185(false, 1.85);

  /** The standard state the constants of the gas-main formulas hide: 60 °F as 288.7 K, and one atmosphere. */
  static final double TS = 288.7;

  static final double PS = 101325.0;

  private static final double ANR = ReferenceState.ANR.density().kilogramsPerCubicMetre();
  private static final double SCFM_60F = ReferenceState.SCFM_60F.density().kilogramsPerCubicMetre();

  private final boolean squares;
  private final double power;

  FormulaLaw(boolean squares, double power) {
    this.squares = squares;
    this.power = power;
  }

  /** Whether the formula gives p1² − p2², not p1 − p2. */
  boolean givesSquares() {
    return squares;
  }

  /** The power of the flow that the loss of the wall goes with. */
  double power() {
    return power;
  }

  /** Free air [m³/s] as the formula counts it. */
  double freeAir(double flow) {
    return switch (this) {
      case METRIC_185 -> flow / ANR;
      case HARRIS, SPITZGLASS_LOW -> flow / SCFM_60F;
      default -> flow * AirState.GAS_CONSTANT * TS / PS;
    };
  }

  /** p1² − p2² [Pa²] or p1 − p2 [Pa] of the wall alone. */
  double wall(double length, double bore, double flow, double p1, double t) {
    double q = freeAir(flow);
    return switch (this) {
      case HARRIS -> FormulaKernels.harris(length, bore, q, p1);
      case UNWIN -> FormulaKernels.unwin(0.005, length, bore, flow, t);
      case BABCOCK -> FormulaKernels.unwin(0.0027, length, bore, flow, t);
      case WEYMOUTH ->
        length * t * FormulaKernels.square(q * PS / (137.32958 * TS * Math.pow(bore, 2.667)));
      case PANHANDLE_A ->
        length
            * t
            * Math.pow(
                q / (158.02053 * 0.92 * Math.pow(TS / PS, 1.0788) * Math.pow(bore, 2.6182)),
                1.0 / 0.5394);
      case SPITZGLASS_HIGH ->
        length
            * t
            * (1.0 + 0.09144 / bore + 150.0 * bore / 127.0)
            * FormulaKernels.square(q * PS / (125.1060 * TS * Math.pow(bore, 2.5)));
      case SPITZGLASS_LOW -> FormulaKernels.spitzglassLow(length, bore, q);
      case OLIPHANT ->
        length
            * t
            * FormulaKernels.square(
                q * PS / (84.5872 * TS * (Math.pow(bore, 2.5) + 0.20915 * bore * bore * bore)));
      case FRITZSCHE ->
        length * t * Math.pow(q * PS / (93.500 * TS * Math.pow(bore, 2.69)), 1.0 / 0.538);
      case METRIC_185 -> 1600.0 * Math.pow(q, 1.85) * length / (Math.pow(bore, 5.0) * p1);
    };
  }

  /** What the wall loses over the inlet pressure or its square, and the fittings with it [-]; fittings is a ΣK. */
  double lost(double wall, double fittings, double p1) {
    return squares ? wall / (p1 * p1) + fittings : wall / p1 + 0.5 * fittings;
  }

  /** (p1 − p2)/p1 from what is lost; 1 or more where nothing is left. */
  double dropShare(double lost) {
    return !squares ? lost : lost >= 1.0 ? 1.0 : lost / (1.0 + Math.sqrt(1.0 - lost));
  }
}
