package org.airfit.run;

import java.util.Arrays;

/** One pass of a flow along a run: the air in front of each element and at the tool, as far as the flow gets. */
final class Pass {

  /** Of no element: most passes have none that chokes or stands at a jump. */
  private static final boolean[] NONE = {};

  private final double[] pascals;
  private final double[] kelvins;
  private boolean[] chokes = NONE;
  private boolean[] unsettled = NONE;
  private double least = Double.NaN;
  private double most = Double.NaN;

  Pass(int elements) {
    pascals = new double[elements + 1];
    kelvins = new double[elements + 1];
    Arrays.fill(pascals, Double.NaN);
  }

  /** Notes the air in front of an element; of their number, the air at the tool. */
  void put(int element, double p, double t) {
    pascals[element] = p;
    kelvins[element] = t;
  }

  /** The first place from one on that the flow does not get to; one more than all places where it gets to the tool. */
  int endsAt(int from) {
    int place = from;
    while (place < pascals.length && pascals[place] > 0.0) {
      place++;
    }
    return place;
  }

  private boolean[] marked(boolean[] marks, int element) {
    boolean[] all = Arrays.copyOf(marks, pascals.length - 1);
    all[element] = true;
    return all;
  }

  /** Notes that an element lets no more through, however low the pressure behind it. */
  void markChoking(int element) {
    chokes = marked(chokes, element);
  }

  boolean chokes(int element) {
    return element < chokes.length && chokes[element];
  }

  /** Notes that an element stands at a jump of its friction. */
  void markUnsettled(int element) {
    unsettled = marked(unsettled, element);
  }

  boolean unsettled(int element) {
    return element < unsettled.length && unsettled[element];
  }

  /** Notes the pressures [Pa] at the tool on both sides of a jump of friction. */
  void between(double behindJump, double beforeJump) {
    least = behindJump;
    most = beforeJump;
  }

  /** The pressure [Pa] at the tool behind the jump of friction at which this stands; NaN where it stands at none. */
  double least() {
    return least;
  }

  /** The pressure [Pa] at the tool before the jump of friction at which this stands; NaN where it stands at none. */
  double most() {
    return most;
  }

  /** The pressure [Pa] in front of an element, or NaN where the flow does not get there. */
  double pascals(int element) {
    return pascals[element];
  }

  /** The temperature [K] in front of an element that the flow gets to. */
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
