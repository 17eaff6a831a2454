package org.airfit.run;

import java.util.Map;

/**
 * How well what is told of a run is known: standard deviations, of losses and of the tool's air as parts of them.
 *
 * @param elements of the loss of elements that were told otherwise than usual [-]
 * @param toolAir of the air of the tool [-]
 * @param level of the pressure of the supply [Pa]
 * @param holding of what the supply holds otherwise while the tool runs, its droop aside [Pa]
 */
record GaugeTolerances(Map<String, Double> elements, double toolAir, double level, double holding) {

  /** A tenth of the loss: our choice. Ratings, roughness and what handbooks say of fittings are no better known. */
  static final double USUAL_LOSS = 0.1;

  /** A tenth of the air: our choice. */
  static final double USUAL_AIR = 0.1;

  /** 0.3 bar: our choice. Readings at rest tell it better. */
  static final double USUAL_LEVEL = 3.0e4;

  /** 0.1 bar: our choice. */
  static final double USUAL_HOLDING = 1.0e4;

  GaugeTolerances {
    elements = Map.copyOf(elements);
  }

  static GaugeTolerances usual() {
    return new GaugeTolerances(Map.of(), USUAL_AIR, USUAL_LEVEL, USUAL_HOLDING);
  }

  double ofElement(String name) {
    return elements.getOrDefault(name, USUAL_LOSS);
  }
}
