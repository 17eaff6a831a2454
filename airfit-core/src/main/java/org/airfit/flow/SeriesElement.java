package org.airfit.flow;

import java.util.List;
import org.airfit.internal.RootFinder;

/** Elements in a row as one: each gets what the one in front leaves. */
final class SeriesElement implements FlowElement {

  /** Of the largest flow, in its logarithm. */
  private static final double TOLERANCE = 2.5e-13;

  private static final double DECADES = 70.0;

  private final List<FlowElement> elements;
  private final FlowElement[] inOrder;

  SeriesElement(List<FlowElement> elements) {
    this.elements = elements;
    this.inOrder = elements.toArray(FlowElement[]::new);
  }

  @Override
  public double outlet(double flow, double pascals, double kelvins, double viscosity) {
    double p = pascals;
    double t = kelvins;
    for (int i = 0; i < inOrder.length; i++) {
      double behind = inOrder[i].outlet(flow, p, t, viscosity);
      if (!(behind > 0.0)) {
        return Double.NaN;
      }
      if (i + 1 < inOrder.length) {
        t = inOrder[i].outletKelvins(flow, p, t, viscosity);
      }
      p = behind;
    }
    return p;
  }

  @Override
  public double outletKelvins(double flow, double pascals, double kelvins, double viscosity) {
    double p = pascals;
    double t = kelvins;
    for (FlowElement element : inOrder) {
      double behind = element.outlet(flow, p, t, viscosity);
      t = element.outletKelvins(flow, p, t, viscosity);
      p = behind;
    }
    return t;
  }

  /** The first element's largest flow where that gets through all, otherwise the last flow that does. */
  @Override
  public double largest(double pascals, double kelvins, double viscosity) {
    // pressure over the root of temperature falls along a run, so no element passes more than from
    // the first inlet
    double most = Double.POSITIVE_INFINITY;
    for (FlowElement element : inOrder) {
      most = Math.min(most, element.largest(pascals, kelvins, viscosity));
    }
    if (most == 0.0 || most == Double.POSITIVE_INFINITY) {
      return most;
    }
    double just = most * (1.0 - TOLERANCE);
    if (!Double.isNaN(outlet(just, pascals, kelvins, viscosity))) {
      return most;
    }
    double high = Math.log(just);
    double low = high;
    double step = 0.25;
    do {
      high = low;
      low -= step;
      step *= 2.0;
      if (step > DECADES) {
        return 0.0;
      }
    } while (Double.isNaN(outlet(Math.exp(low), pascals, kelvins, viscosity)));
    return Math.exp(RootFinder.find(
        x -> Double.isNaN(outlet(Math.exp(x), pascals, kelvins, viscosity)) ? 1.0 : -1.0,
        low,
        -1.0,
        high,
        1.0,
        TOLERANCE));
  }

  @Override
  public double nextJump(double above, double viscosity) {
    double next = Double.POSITIVE_INFINITY;
    for (FlowElement element : inOrder) {
      next = Math.min(next, element.nextJump(above, viscosity));
    }
    return next;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof SeriesElement that && elements.equals(that.elements);
  }

  @Override
  public int hashCode() {
    return elements.hashCode();
  }

  /** {@return the elements in order} */
  @Override
  public String toString() {
    return "in series: " + elements;
  }
}
