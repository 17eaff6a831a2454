package org.airfit.flow;

/** A part after ISO 6358, as {@link FlowKernels} has it: the air keeps its temperature. */
public final class PartKernel implements AirKernel {

  private final double c;
  private final double rho0;
  private final double b;
  private final double m;
  private final double cracking;

  /**
   * Prepares the kernel of a part.
   *
   * @param c sonic conductance [m³/(s Pa)], above 0
   * @param rho0 density of the reference state [kg/m³]
   * @param b critical pressure ratio [-], in [0, 1)
   * @param m subsonic index [-], in (0, 1]
   * @param cracking cracking pressure [Pa], at least 0
   */
  public PartKernel(double c, double rho0, double b, double m, double cracking) {
    this.c = c;
    this.rho0 = rho0;
    this.b = b;
    this.m = m;
    this.cracking = cracking;
  }

  /**
   * Finds the choked flow.
   *
   * @param p1 pressure in front [Pa]
   * @param t1 temperature in front [K]
   * @return the flow [kg/s]
   */
  public double choked(double p1, double t1) {
    return FlowKernels.choked(c, rho0, p1, t1);
  }

  /**
   * Finds the drop of a flow.
   *
   * @param massFlow the flow [kg/s]
   * @param p1 pressure in front [Pa]
   * @param t1 temperature in front [K]
   * @return the drop [Pa], or -1 where the flow does not pass
   */
  public double drop(double massFlow, double p1, double t1) {
    return FlowKernels.drop(b, m, cracking, massFlow / choked(p1, t1), p1);
  }

  @Override
  public boolean pass(double massFlow, double[] air) {
    double p1 = air[PASCALS];
    double drop = drop(massFlow, p1, air[KELVINS]);
    // with b = 0 the whole choked flow passes into a vacuum only
    if (drop < 0.0 || !(p1 - drop > 0.0)) {
      return false;
    }
    air[PASCALS] = p1 - drop;
    return true;
  }
}
