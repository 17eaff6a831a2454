package org.airfit.run;

import java.util.List;
import org.airfit.air.AirState;
import org.airfit.flow.AirKernel;
import org.airfit.plant.Supply;
import org.airfit.quantity.MassFlow;

/**
 * A run forward, from supply to tool: plain doubles in SI, no checks, no allocation where supply and models have kernels.
 *
 * <p>Each element is solved exactly with the whole flow, one after another. The questions of a {@link Run} that search ask this; {@link Run#at} solves the same elements by the same kernels, once, and
 * keeps what they say.
 */
public final class RunKernel {

  private final Supply supply;
  private final AirKernel[] elements;

  RunKernel(Supply supply, List<Element> elements) {
    this.supply = supply;
    this.elements = elements.stream().map(Element::kernel).toArray(AirKernel[]::new);
  }

  /**
   * Writes an air state down.
   *
   * @param state the air state
   * @param air where to write it
   */
  public static void put(AirState state, double[] air) {
    air[AirKernel.PASCALS] = state.pressure().pascals();
    air[AirKernel.KELVINS] = state.temperature().kelvins();
    air[AirKernel.VISCOSITY] = state.viscosity().pascalSeconds();
  }

  /** Fills in the air at the supply; false where it does not give that much. */
  boolean enter(double massFlow, double[] air) {
    if (supply instanceof Supply.Fixed fixed) {
      put(fixed.still(), air);
      return true;
    }
    AirState given = supply.at(MassFlow.ofKilogramsPerSecond(massFlow)).orElse(null);
    if (given == null) {
      return false;
    }
    put(given, air);
    return true;
  }

  /** Leads a flow on from an element, the first of which is 0: the element that stops it, or their number where the flow arrives. */
  int lead(double massFlow, double[] air, int from) {
    int at = from;
    while (at < elements.length && elements[at].pass(massFlow, air)) {
      at++;
    }
    return at;
  }

  /** The pressure [Pa] that arrives at the tool, or −1 where the flow does not. */
  double pascalsAtTool(double massFlow, double[] air) {
    return enter(massFlow, air) && lead(massFlow, air, 0) == elements.length
        ? air[AirKernel.PASCALS]
        : -1.0;
  }
}
