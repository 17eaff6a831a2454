package org.airfit.air;

/**
 * Dry air as a real gas: plain doubles in SI, no checks, no allocation. Callers validate.
 *
 * <p>Equation of state: E. W. Lemmon, R. T. Jacobsen, S. G. Penoncello, D. G. Friend, J. Phys. Chem. Ref. Data 29
 * (2000) 331, pseudo-pure air, with τ = 132.6312 K / T and δ = ρ / (10.4477 mol/dm³). Viscosity: E. W. Lemmon, R. T.
 * Jacobsen, Int. J. Thermophys. 25 (2004) 21.
 */
final class RealAirKernels {

  /** Gas constant of the equation of state [J/(mol K)], as the paper has it. */
  static final double MOLAR_GAS_CONSTANT = 8.31451;

  /** Molar mass of air [kg/mol], as the paper has it. */
  static final double MOLAR_MASS = 0.02896546;

  /** Gas constant of dry air that follows from the two [J/(kg K)]. */
  static final double GAS_CONSTANT = MOLAR_GAS_CONSTANT / MOLAR_MASS;

  private static final double REDUCING_KELVINS = 132.6312;
  private static final double REDUCING_MOLES = 10447.7;

  /** Residual part, one row per term: n, exponent of δ, exponent of τ, exponent of δ inside exp(−δ^l) or 0. */
  private static final double[][] RESIDUAL = {
    {0.118160747229, 1, 0, 0},
    {0.713116392079, 1, 0.33, 0},
    {-1.61824192067, 1, 1.01, 0},
    {0.0714140178971, 2, 0, 0},
    {-0.0865421396646, 3, 0, 0},
    {0.134211176704, 3, 0.15, 0},
    {0.0112626704218, 4, 0, 0},
    {-0.0420533228842, 4, 0.2, 0},
    {0.0349008431982, 4, 0.35, 0},
    {0.000164957183186, 6, 1.35, 0},
    {-0.101365037912, 1, 1.6, 1},
    {-0.17381369097, 3, 0.8, 1},
    {-0.0472103183731, 5, 0.95, 1},
    {-0.0122523554253, 6, 1.25, 1},
    {-0.146629609713, 1, 3.6, 2},
    {-0.0316055879821, 3, 6, 2},
    {0.000233594806142, 11, 3.25, 2},
    {0.0148287891978, 1, 3.5, 3},
    {-0.00938782884667, 3, 15, 3},
  };

  private static final int MAX_ITERATIONS = 50;

  private RealAirKernels() {}

  static double tau(double t) {
    return REDUCING_KELVINS / t;
  }

  static double delta(double rho) {
    return rho / (REDUCING_MOLES * MOLAR_MASS);
  }

  private static double term(double[] row, double tau, double delta) {
    double value = row[0] * Math.pow(delta, row[1]) * Math.pow(tau, row[2]);
    return row[3] == 0.0 ? value : value * Math.exp(-Math.pow(delta, row[3]));
  }

  /** d − l δ^l: what a derivative in δ brings down from one term. */
  private static double slope(double[] row, double delta) {
    return row[1] - row[3] * Math.pow(delta, row[3]);
  }

  /** δ ∂αr/∂δ, which is Z − 1. */
  static double firstByDensity(double tau, double delta) {
    double sum = 0.0;
    for (double[] row : RESIDUAL) {
      sum += term(row, tau, delta) * slope(row, delta);
    }
    return sum;
  }

  /** δ² ∂²αr/∂δ². */
  static double secondByDensity(double tau, double delta) {
    double sum = 0.0;
    for (double[] row : RESIDUAL) {
      double slope = slope(row, delta);
      sum += term(row, tau, delta)
          * (slope * (slope - 1.0) - row[3] * row[3] * Math.pow(delta, row[3]));
    }
    return sum;
  }

  /** δ τ ∂²αr/∂δ∂τ. */
  static double mixed(double tau, double delta) {
    double sum = 0.0;
    for (double[] row : RESIDUAL) {
      sum += term(row, tau, delta) * slope(row, delta) * row[2];
    }
    return sum;
  }

  /** τ² ∂²αr/∂τ². */
  private static double secondByTemperature(double tau, double delta) {
    double sum = 0.0;
    for (double[] row : RESIDUAL) {
      sum += term(row, tau, delta) * row[2] * (row[2] - 1.0);
    }
    return sum;
  }

  /** τ² ∂²α0/∂τ² of the ideal gas. */
  private static double idealSecondByTemperature(double tau) {
    double molecules = -2.490888032
        - 0.791309509 * einstein(25.36365 * tau)
        - 0.212236768 * einstein(16.90741 * tau);
    double power = 12.0 * 6.057194e-8 / (tau * tau * tau)
        - 6.0 * 2.10274769e-5 / (tau * tau)
        - 2.0 * 0.000158860716 / tau
        - 0.75 * 0.00019536342 * tau * Math.sqrt(tau);
    double x = 87.31279 * tau;
    double y = 2.0 / 3.0 * Math.exp(-x);
    return power + molecules - 0.197938904 * x * x * y / ((1.0 + y) * (1.0 + y));
  }

  /** x² eˣ/(eˣ − 1)², the heat capacity of a vibration. */
  private static double einstein(double x) {
    double y = Math.exp(-x);
    return x * x * y / ((1.0 - y) * (1.0 - y));
  }

  /** Density [kg/m³] from p = ρ R T (1 + δ ∂αr/∂δ), by Newton from the ideal gas until it stands still. */
  static double density(double p, double t) {
    double tau = tau(t);
    double rt = GAS_CONSTANT * t;
    double rho = p / rt;
    for (int i = 0; i < MAX_ITERATIONS; i++) {
      double delta = delta(rho);
      double first = firstByDensity(tau, delta);
      double slope = rt * (1.0 + 2.0 * first + secondByDensity(tau, delta));
      double next = rho - (rho * rt * (1.0 + first) - p) / slope;
      double change = Math.abs(next - rho);
      rho = next;
      if (change <= 1.0e-14 * rho) {
        break;
      }
    }
    return rho;
  }

  /** Heat capacity at constant volume [J/(kg K)]: −R τ² (∂²α0/∂τ² + ∂²αr/∂τ²). */
  static double isochoricHeatCapacity(double tau, double delta) {
    return -GAS_CONSTANT * (idealSecondByTemperature(tau) + secondByTemperature(tau, delta));
  }

  /** Viscosity of the dilute gas [Pa s]: 0.0266958 √(M T) / (σ² Ω) µPa s, M = 28.9586 g/mol, σ = 0.360 nm. */
  static double diluteViscosity(double t) {
    double s = Math.log(t / 103.3);
    double omega = Math.exp(0.431 + s * (-0.4623 + s * (0.08406 + s * (0.005341 - s * 0.00331))));
    return 0.0266958e-6 * Math.sqrt(28.9586 * t) / (0.360 * 0.360 * omega);
  }

  /** What density adds to the viscosity [Pa s]. */
  static double residualViscosity(double tau, double delta) {
    double fade = Math.exp(-delta);
    return 1.0e-6
        * (10.72 * Math.pow(tau, 0.2) * delta
            + 1.122 * Math.pow(tau, 0.05) * Math.pow(delta, 4)
            + 0.002019 * Math.pow(tau, 2.4) * Math.pow(delta, 9)
            - 8.876 * Math.pow(tau, 0.6) * delta * fade
            - 0.02916 * Math.pow(tau, 3.6) * Math.pow(delta, 8) * fade);
  }
}
