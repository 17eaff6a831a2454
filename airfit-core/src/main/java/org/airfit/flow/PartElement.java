package org.airfit.flow;

import org.airfit.internal.Digits;

/** A part after ISO 6358, as {@link FlowKernels} has it: plain doubles in SI. The air keeps its temperature. */
final class PartElement implements FlowElement {

  private final double c;
  private final double rho0;
  private final double b;
  private final double m;
  private final double cracking;
  private final boolean isUsual; // m = ½, no cracking pressure
  private final double partOfFlow; // (1 − b)/(C ρ0), w y over the flow at the reference temperature

  /**
   * Prepares the element.
   *
   * @param c sonic conductance [m³/(s Pa)], above 0
   * @param rho0 density of the reference state [kg/m³]
   * @param b critical pressure ratio [-], in [0, 1)
   * @param m subsonic index [-], in (0, 1]
   * @param cracking cracking pressure [Pa], at least 0
   */
  PartElement(double c, double rho0, double b, double m, double cracking) {
    this.c = c;
    this.rho0 = rho0;
    this.b = b;
    this.m = m;
    this.cracking = cracking;
    this.isUsual = m == 0.5 && cracking == 0.0;
    this.partOfFlow = (1.0 - b) / (c * rho0);
  }

  double choked(double p1, double t1) {
    return FlowKernels.choked(c, rho0, p1, t1);
  }

  /** The drop [Pa], or -1 where the flow does not pass. */
  double drop(double flow, double p1, double t1) {
    return FlowKernels.drop(b, m, cracking, flow / choked(p1, t1), p1);
  }

  @Override
  public double outlet(double flow, double pascals, double kelvins, double viscosity) {
    if (isUsual) {
      double part = flow * partOfFlow;
      double far = FlowKernels.outletFarFromChoking(
          pascals * (1.0 - b), part * part * (kelvins * (1.0 / FlowKernels.T0)), pascals);
      if (far > 0.0) {
        return far;
      }
    }
    double drop = drop(flow, pascals, kelvins);
    // with b = 0 the whole choked flow passes into a vacuum only
    return drop >= 0.0 && pascals - drop > 0.0 ? pascals - drop : Double.NaN;
  }

  @Override
  public double largest(double pascals, double kelvins, double viscosity) {
    return cracking < pascals ? choked(pascals, kelvins) : 0.0;
  }

  /** From Δp = Δpc + (p1 (1−b) − Δpc)(1 − √(1−z)), z = y^(1/m): d Δp/dṁ = (p1 (1−b) − Δpc) z/(2 m ṁ √(1−z)). */
  @Override
  public double slope(double flow, double pascals, double kelvins, double viscosity) {
    double choked = choked(pascals, kelvins);
    double share = flow / choked;
    double whole = pascals * (1.0 - b) - cracking;
    if (!(share <= 1.0) || cracking >= pascals) {
      return Double.NaN;
    }
    if (whole <= 0.0) {
      return 0.0;
    }
    double power = m == 0.5 ? share : Math.pow(share, 1.0 / m - 1.0); // z/y
    return -0.5 * whole * power / (m * choked * Math.sqrt(1.0 - power * share));
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof PartElement that
        && c == that.c
        && rho0 == that.rho0
        && b == that.b
        && m == that.m
        && cracking == that.cracking;
  }

  @Override
  public int hashCode() {
    return 31 * (31 * (31 * Double.hashCode(c) + Double.hashCode(b)) + Double.hashCode(m))
        + Double.hashCode(cracking);
  }

  /** {@return the figures in SI} */
  @Override
  public String toString() {
    return "C " + Digits.told(c) + " m³/(s·Pa), b " + Digits.told(b) + ", m " + Digits.told(m)
        + ", cracking " + Digits.told(cracking) + " Pa";
  }
}
