package org.airfit.internal;

/** Saturation pressure of water, for the humidity of air. */
public final class Saturation {

  /** Specific gas constant of water vapour [J/(kg K)]: 8.314 462 618 J/(mol K), exact in the SI, over 18.0153 g/mol. */
  public static final double GAS_CONSTANT_OF_VAPOUR = 461.523;

  private static final double CRITICAL_KELVINS = 647.096;
  private static final double CRITICAL_PASCALS = 22.064e6;

  private Saturation() {}

  /**
   * Saturation pressure of water over liquid.
   *
   * <pre>
   *   ln(p/pc) = Tc/T (a1 τ + a2 τ^1.5 + a3 τ³ + a4 τ^3.5 + a5 τ⁴ + a6 τ^7.5),  τ = 1 − T/Tc
   * </pre>
   *
   * <p>Source: W. Wagner and A. Pruss, J. Phys. Chem. Ref. Data 22 (1993) 783, the auxiliary equation. Stated from
   * the triple point, 273.16 K, to the critical point, 647.096 K; 0 °C lies 0.01 K below and is taken as belonging to
   * it. Nothing is checked here.
   *
   * @param t temperature [K], in [273.15, 647]
   * @return the saturation pressure [Pa]
   */
  public static double pressure(double t) {
    double tau = 1.0 - t / CRITICAL_KELVINS;
    double root = Math.sqrt(tau);
    double tau3 = tau * tau * tau;
    double sum = -7.85951783 * tau
        + 1.84408259 * tau * root
        - 11.7866497 * tau3
        + 22.6807411 * tau3 * root
        - 15.9618719 * tau3 * tau
        + 1.80122502 * tau3 * tau3 * tau * root;
    return CRITICAL_PASCALS * Math.exp(CRITICAL_KELVINS / t * sum);
  }
}
