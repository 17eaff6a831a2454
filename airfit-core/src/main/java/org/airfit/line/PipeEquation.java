package org.airfit.line;

import org.airfit.air.AirState;

/**
 * How pressure is lost along a bore with a friction factor λ: four equations in k = λL/D + ΣK and G = ṁ/A.
 *
 * <p>{@link #ISOTHERMAL} is the one to use; the others are what other books use, and show how little or how much it
 * matters.
 */
public enum PipeEquation {
  /**
   * Air that keeps its temperature, with what it costs to speed it up.
   *
   * <pre>
   *   p1² − p2² = G² R T (k + 2 ln(p1/p2))
   * </pre>
   */
  ISOTHERMAL(
      "isothermal flow",
      "ideal gas at one temperature, any length, up to choking at Mach 0.845; within 0.5 % of adiabatic flow in "
          + "long shop lines",
      "none: other models are held against this one",
      "isothermal pipe flow, as in Crane TP-410 and textbooks of gas dynamics"),
  /**
   * Air that neither takes up nor gives off heat, from a static inlet state (Fanno). From air at rest see {@link
   * LossModels#fromReservoir}.
   *
   * <pre>
   *   k = (1/γ)(1/M1² − 1/M2²) + (γ+1)/(2γ) ln( M1² (2 + (γ−1)M2²) / (M2² (2 + (γ−1)M1²)) )
   * </pre>
   */
  ADIABATIC(
      "adiabatic flow",
      "ideal gas without heat through the wall, any length, up to choking at Mach 1; the inlet is the static state "
          + "inside the bore",
      "the drop agrees to 0.002 % of the pressure below Mach 0.08; the largest flow is 0.4 % (long) to 7 % (short) "
          + "higher",
      "Shapiro, Compressible Fluid Flow (1953), chapter 6"),
  /**
   * Darcy and Weisbach with the density at the inlet, as for water.
   *
   * <pre>
   *   Δp = k G² / (2 ρ1)
   * </pre>
   */
  DARCY_INLET_DENSITY(
      "Darcy-Weisbach at inlet density",
      "drops below a tenth of the inlet pressure",
      "always low, by about half of Δp/p1: 1.8 % at 3 %, 8 % at 16 %, 29 % at 42 % of the pressure lost",
      "Weisbach 1845, Darcy 1857, as in any textbook"),
  /**
   * Darcy and Weisbach with the mean of the densities at both ends, which is the isothermal equation without its last
   * term.
   *
   * <pre>
   *   p1² − p2² = G² R T k
   * </pre>
   */
  DARCY_MEAN_DENSITY(
      "Darcy-Weisbach at mean density",
      "drops below four tenths of the inlet pressure in bores of many diameters' length; it does not know choking",
      "low by 2 ln(p1/p2)/k: under 0.5 % in shop lines, much in short wide bores and near choking",
      "Crane TP-410 and textbooks of gas dynamics");

  private final String title;
  private final String validity;
  private final String bias;
  private final String citation;

  PipeEquation(String title, String validity, String bias, String citation) {
    this.title = title;
    this.validity = validity;
    this.bias = bias;
    this.citation = citation;
  }

  /** {@return what the equation is called} */
  public String title() {
    return title;
  }

  /** The largest drop over the inlet pressure the equation is meant for. */
  double largestDropShare() {
    return switch (this) {
      case ISOTHERMAL, ADIABATIC -> 1.0;
      case DARCY_INLET_DENSITY -> 0.1;
      case DARCY_MEAN_DENSITY -> 0.4;
    };
  }

  String validity() {
    return validity;
  }

  String bias() {
    return bias;
  }

  String citation() {
    return citation;
  }

  /** The largest k through which a flow of parameter a = G² R T/p1² gets; where a choking model has none left, 0. */
  double largestResistance(double a) {
    return switch (this) {
      case ISOTHERMAL -> IsothermalKernels.largestResistance(a);
      case ADIABATIC -> AdiabaticKernels.largestResistance(a);
      case DARCY_INLET_DENSITY -> 2.0 / a;
      case DARCY_MEAN_DENSITY -> 1.0 / a;
    };
  }

  /** Whether a flow of parameter a does not get through a resistance k. */
  boolean chokes(double a, double k) {
    return switch (this) {
      case ISOTHERMAL -> IsothermalKernels.chokes(a, k);
      case ADIABATIC -> AdiabaticKernels.chokes(a, k);
      case DARCY_INLET_DENSITY, DARCY_MEAN_DENSITY -> k > largestResistance(a);
    };
  }

  /**
   * The parameter a that not even an inlet without resistance behind it passes; infinite for models that do not know
   * choking.
   */
  double largestParameter() {
    return switch (this) {
      case ISOTHERMAL -> 1.0;
      case ADIABATIC -> G;
      case DARCY_INLET_DENSITY, DARCY_MEAN_DENSITY -> Double.POSITIVE_INFINITY;
    };
  }

  /**
   * A smooth function of ln a that is 0 where {@code k} is the largest resistance, and above 0 where a flow does not
   * get through: the logarithm of z (w + 1 − ln z), which comes from 1/z − 1 + ln z = w, or of the pressure lost over
   * that in front.
   */
  double tooMuch(double logOfA, double k) {
    return switch (this) {
      case ISOTHERMAL -> logOfA + Math.log(k + 1.0 - logOfA);
      case ADIABATIC -> {
        double z = AdiabaticKernels.inverseOfOneAndY(Math.exp(logOfA));
        yield Math.log(z * (AdiabaticKernels.wanted(k) + 1.0 - Math.log(z)));
      }
      case DARCY_INLET_DENSITY -> logOfA + Math.log(0.5 * k);
      case DARCY_MEAN_DENSITY -> logOfA + Math.log(k);
    };
  }

  /** Whether the air cools on its way. */
  boolean cools() {
    return this == ADIABATIC;
  }

  /** d(p2/p1)/d ln ṁ from dk/d ln ṁ, for the equations that keep the temperature. */
  double slope(double a, double k, double kByFlow) {
    if (this == DARCY_INLET_DENSITY) {
      return -a * (k + 0.5 * kByFlow);
    }
    double share = dropShare(a, k, 0.0);
    double lost = share * (2.0 - share); // v = 1 − (p2/p1)²
    double byFlow = 2.0 * lost + a * kByFlow;
    double rest = 1.0 - lost;
    double feedback = this == ISOTHERMAL ? Math.max(0.0, 1.0 - a / rest) : 1.0;
    return -0.5 * byFlow / (feedback * Math.sqrt(rest));
  }

  /**
   * What both ratios of adiabatic flow follow from, found by trial; the others have no use for it. For k not above
   * {@link #largestResistance}.
   */
  double root(double a, double k) {
    return this == ADIABATIC ? AdiabaticKernels.difference(a, k) : 0.0;
  }

  /** (p1 − p2)/p1. */
  double dropShare(double a, double k, double root) {
    return switch (this) {
      case ISOTHERMAL -> IsothermalKernels.dropShare(a, k);
      case ADIABATIC -> AdiabaticKernels.dropShare(a, root);
      case DARCY_INLET_DENSITY -> 0.5 * a * k;
      case DARCY_MEAN_DENSITY -> a * k / (1.0 + Math.sqrt(1.0 - a * k));
    };
  }

  /** p2/p1: the rest of {@link #dropShare}, in fewer steps where that has some. */
  double leftShare(double a, double k, double root) {
    return this == ISOTHERMAL ? IsothermalKernels.leftShare(a, k) : 1.0 - dropShare(a, k, root);
  }

  /** T2/T1. */
  double temperatureRatio(double a, double root) {
    return this == ADIABATIC ? AdiabaticKernels.temperatureRatio(a, root) : 1.0;
  }

  /** p2/p1 where a flow of parameter {@code a} chokes; 0 for models that do not know choking. */
  double chokingPressureRatio(double a) {
    return switch (this) {
      case ISOTHERMAL -> Math.sqrt(a);
      case ADIABATIC -> Math.sqrt(a / G * (2.0 + (G - 1.0) * a / G) / (G + 1.0));
      case DARCY_INLET_DENSITY, DARCY_MEAN_DENSITY -> 0.0;
    };
  }

  private static final double G = AirState.HEAT_CAPACITY_RATIO;
}
