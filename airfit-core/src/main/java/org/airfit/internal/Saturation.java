package org.airfit.internal;

/** Saturation pressure of water, for the humidity of air. */
public final class Saturation {

  /** Specific gas constant of water vapour [J/(kg K)]: 8.314 462 618 J/(mol K), exact in the SI, over 18.0153 g/mol. */
  public static final double GAS_CONSTANT_OF_VAPOUR = 461.523;

  /** The critical point of water. */
  public static final double CRITICAL_KELVINS = 647.096;

  private static final double CRITICAL_PASCALS = 22.064e6;

  /** The triple point of water. */
  public static final double TRIPLE_KELVINS = 273.16;

  private static final double TRIPLE_PASCALS = 611.657;

  /** Heat of vaporisation over the gas constant of vapour, about: the slope of −ln p over 1/T [K]. */
  private static final double HEAT_OVER_CONSTANT = 5400.0;

  private static final int MOST_STEPS = 40;

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

  /**
   * Saturation pressure of water over ice.
   *
   * <pre>
   *   ln(p/pt) = (a1 θ^b1 + a2 θ^b2 + a3 θ^b3) / θ,  θ = T/Tt
   * </pre>
   *
   * <p>Source: IAPWS R14-08(2011), the sublimation curve, from 50 K to the triple point, 273.16 K and 611.657 Pa.
   * Nothing is checked here.
   *
   * @param t temperature [K], in [50, 273.16]
   * @return the saturation pressure [Pa]
   */
  public static double overIce(double t) {
    double theta = t / TRIPLE_KELVINS;
    double sum = -21.2144006 * Math.pow(theta, 0.00333333333)
        + 27.3203819 * Math.pow(theta, 1.20666667)
        - 6.10598130 * Math.pow(theta, 1.70333333);
    return TRIPLE_PASCALS * Math.exp(sum / theta);
  }

  /**
   * Saturation pressure over what there is at a temperature: ice below the triple point, water from there on.
   *
   * @param t temperature [K], in [50, 647]
   * @return the saturation pressure [Pa]
   */
  public static double overIceOrWater(double t) {
    return t < TRIPLE_KELVINS ? overIce(t) : pressure(t);
  }

  /**
   * The temperature at which a pressure is that of saturation, over ice or water: the inverse of
   * {@link #overIceOrWater}. The logarithm of the pressure is nearly a straight line over 1/T, so that a few steps of
   * the secant end at the last digits.
   *
   * @param p saturation pressure [Pa], in [1e-5, 1e6]
   * @return the temperature [K]
   */
  public static double temperature(double p) {
    double log = Math.log(p);
    double x0 = 1.0 / TRIPLE_KELVINS;
    double f0 = Math.log(overIceOrWater(TRIPLE_KELVINS)) - log;
    double x1 = x0 + f0 / HEAT_OVER_CONSTANT;
    for (int i = 0; i < MOST_STEPS && x1 != x0; i++) {
      double f1 = Math.log(overIceOrWater(1.0 / x1)) - log;
      double x2 = f1 == f0 ? x1 : x1 - f1 * (x1 - x0) / (f1 - f0);
      x0 = x1;
      f0 = f1;
      x1 = x2;
    }
    return 1.0 / x1;
  }
}
