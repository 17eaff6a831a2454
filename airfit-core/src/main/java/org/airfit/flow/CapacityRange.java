package org.airfit.flow;

import java.util.Objects;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.source.Source;

/**
 * A capacity that is not known well: somewhere between two, because a rating does not tell enough.
 *
 * <p>The two ends bound the flow between any two pressures: no capacity that fits the rating passes less than {@code
 * least} or more than {@code most}. One capacity is rarely both the narrowest near closing and the narrowest when it
 * chokes, so an end need not fit the rating itself. {@link #ofRatedFlow(FreeAirFlow, AbsolutePressure, PressureDrop,
 * Temperature)} says how they are found.
 *
 * @param least a capacity that passes at most as much as any that the rating allows
 * @param most a capacity that passes at least as much as any that the rating allows
 * @param assumption what was taken for what the rating does not tell
 */
public record CapacityRange(FlowCapacity least, FlowCapacity most, Source assumption) {

  private static final double LOW_B = 0.2;
  private static final double HIGH_B = 0.5;

  /**
   * Checks the components.
   *
   * @param least a capacity that passes at most as much as any that the rating allows
   * @param most a capacity that passes at least as much as any that the rating allows
   * @param assumption what was taken for what the rating does not tell
   * @throws IllegalArgumentException if {@code least} conducts more than {@code most}
   */
  public CapacityRange {
    Objects.requireNonNull(least, "least");
    Objects.requireNonNull(most, "most");
    Objects.requireNonNull(assumption, "assumption");
    if (least.conductance().compareTo(most.conductance()) > 0) {
      throw new IllegalArgumentException("smallest capacity must be at most the largest, "
          + most.conductance().shown() + ", was " + least.conductance().shown());
    }
  }

  /**
   * Obtains the range that a rating leaves open which tells the inlet pressure and the drop, but not b.
   *
   * <pre>
   *   least:  C = min C(b),  1 − b = C² / min(C(b)²/(1 − b))
   *   most:   C = max C(b),  1 − b = C² / max(C(b)²/(1 − b))
   * </pre>
   *
   * <p>C(b) is the conductance that gives the rated flow with one b. When it chokes a capacity passes in proportion
   * to C; with little drop in proportion to √(C²/(1 − b)). A capacity that has the least of both passes at most as much
   * as every other at any drop, because the share of the choked flow falls steadily with the drop over 1 − b. Where
   * the part chokes in the rating, C is the same for every b, and the least capacity is that of the lowest b.
   *
   * @param rated the flow
   * @param inlet the pressure in front of the part in the rating
   * @param drop the drop across the part in the rating, above 0 and less than {@code inlet}
   * @param temperature the temperature of the air in the rating
   * @return the range, for b from 0.2 to 0.5
   * @throws IllegalArgumentException if an argument is out of range
   */
  public static CapacityRange ofRatedFlow(
      FreeAirFlow rated, AbsolutePressure inlet, PressureDrop drop, Temperature temperature) {
    double ofLow = conductance(rated, inlet, drop, temperature, LOW_B);
    double ofHigh = conductance(rated, inlet, drop, temperature, HIGH_B);
    return new CapacityRange(
        least(ofLow, ofHigh),
        most(ofLow, ofHigh),
        Source.commonPractice("b of couplers and valves taken from 0.2 to 0.5"));
  }

  /**
   * Obtains the range that a rating leaves open which tells a flow and nothing else.
   *
   * <p>Taken are an inlet of 100 psig and a drop that may be anything from 5 psi, as couplers are mostly rated, to
   * all of it, which is the most the part can pass. The two ends lie a factor of three apart: ask for the conditions.
   *
   * @param rated the flow
   * @return the range
   */
  public static CapacityRange ofRatedFlow(FreeAirFlow rated) {
    AbsolutePressure inlet = AbsolutePressure.ofPsi(114.7);
    Temperature shop = Temperature.ofCelsius(20.0);
    PressureDrop all = PressureDrop.ofPsi(100.0);
    PressureDrop usual = PressureDrop.ofPsi(5.0);
    return new CapacityRange(
        least(
            conductance(rated, inlet, all, shop, LOW_B),
            conductance(rated, inlet, all, shop, HIGH_B)),
        most(
            conductance(rated, inlet, usual, shop, LOW_B),
            conductance(rated, inlet, usual, shop, HIGH_B)),
        Source.commonPractice(
            "inlet taken as 100 psig, drop from 5 psi to all of it, b from 0.2 to 0.5"));
  }

  private static double conductance(
      FreeAirFlow rated,
      AbsolutePressure inlet,
      PressureDrop drop,
      Temperature temperature,
      double b) {
    return FlowCapacity.ofRatedFlow(rated, inlet, drop, temperature, b)
        .conductance()
        .cubicMetresPerSecondPascal();
  }

  /** C(b) falls with b and C(b)²/(1 − b) rises with b, so the least of each lies at an end. */
  private static FlowCapacity least(double ofLow, double ofHigh) {
    double share = ofHigh / ofLow;
    return capacity(ofHigh, 1.0 - (1.0 - LOW_B) * share * share);
  }

  private static FlowCapacity most(double ofLow, double ofHigh) {
    double share = ofLow / ofHigh;
    return capacity(ofLow, 1.0 - (1.0 - HIGH_B) * share * share);
  }

  private static FlowCapacity capacity(double conductance, double b) {
    return FlowCapacity.of(SonicConductance.ofCubicMetresPerSecondPascal(conductance), b);
  }

  /** {@return the ends, such as "C 3.5 … 4.4 dm³/(s·bar), uncertain"} */
  @Override
  public String toString() {
    return "from " + least + " to " + most + ", uncertain";
  }
}
