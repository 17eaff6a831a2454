package org.airfit.run;

import java.util.Arrays;

/** One pass of a flow along a run: the air in front of each element and at the tool, as far as the flow gets. */
final class Pass {

  private final double[] pascals;
  private final double[] kelvins;

  Pass(int elements) {
    pascals = new double[elements + 1];
    kelvins = new double[elements + 1];
    Arrays.fill(pascals, Double.NaN);
    Arrays.fill(kelvins, Double.NaN);
  }

  /** Notes the air in front of an element; of their number, the air at the tool. */
  void put(int element, double p, double t) {
    pascals[element] = p;
    kelvins[element] = t;
  }

  /** The pressure [Pa] in front of an element, or NaN where the flow does not get there. */
  double pascals(int element) {
    return pascals[element];
  }

  /** The temperature [K] in front of an element, or NaN where the flow does not get there. */
  double kelvins(int element) {
    return kelvins[element];
  }

  /** The pressure [Pa] at the tool, or NaN where the flow does not get there. */
  double atTool() {
    return pascals[pascals.length - 1];
  }

  /**
   * The first element behind which less than a pressure [Pa] is left, or that does not let the flow pass; their number
   * where there is none.
   */
  int firstBelow(double least) {
    int element = 0;
    while (element + 1 < pascals.length && pascals[element + 1] >= least) {
      element++;
    }
    return element;
  }
}
