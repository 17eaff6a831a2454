package org.airfit.line;

import org.airfit.flow.AirKernel;

/** A model of line loss that has a kernel. */
public interface LineKernels {

  /**
   * Prepares the kernel of one line.
   *
   * @param bore the inside diameter [m], above 0
   * @param length the length [m]
   * @param roughness the roughness of the wall [m]
   * @param fittingLoss the sum of the loss coefficients of the fittings [-]
   * @return the kernel
   */
  AirKernel kernel(double bore, double length, double roughness, double fittingLoss);
}
