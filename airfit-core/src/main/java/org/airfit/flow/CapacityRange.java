package org.airfit.flow;

import java.util.Objects;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Temperature;
import org.airfit.source.Source;

/**
 * A capacity that is not known well: somewhere between two, because a rating does not tell enough.
 *
 * @param least the smallest capacity the rating allows
 * @param most the largest capacity the rating allows
 * @param assumption what was taken for what the rating does not tell
 */
public record CapacityRange(FlowCapacity least, FlowCapacity most, Source assumption) {

  private static final double LOW_B = 0.2;
  private static final double HIGH_B = 0.5;

  /**
   * Checks the components.
   *
   * @param least the smallest capacity the rating allows
   * @param most the largest capacity the rating allows
   * @param assumption what was taken for what the rating does not tell
   * @throws IllegalArgumentException if {@code least} conducts more than {@code most}
   */
  public CapacityRange {
    Objects.requireNonNull(least, "least");
    Objects.requireNonNull(most, "most");
    Objects.requireNonNull(assumption, "assumption");
    if (least.conductance().compareTo(most.conductance()) > 0) {
      throw new IllegalArgumentException("smallest capacity must be at most the largest, "
          + most.conductance() + ", was " + least.conductance());
    }
  }

  /**
   * Obtains the range that a rating leaves open which tells the inlet pressure and the drop, but not b.
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
    return new CapacityRange(
        FlowCapacity.ofRatedFlow(rated, inlet, drop, temperature, HIGH_B),
        FlowCapacity.ofRatedFlow(rated, inlet, drop, temperature, LOW_B),
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
    return new CapacityRange(
        FlowCapacity.ofRatedFlow(rated, inlet, PressureDrop.ofPsi(100.0), shop, HIGH_B),
        FlowCapacity.ofRatedFlow(rated, inlet, PressureDrop.ofPsi(5.0), shop, LOW_B),
        Source.commonPractice(
            "inlet taken as 100 psig, drop from 5 psi to all of it, b from 0.2 to 0.5"));
  }

  /** {@return the ends, such as "C 3.5 … 4.4 dm³/(s·bar), uncertain"} */
  @Override
  public String toString() {
    return "from " + least + " to " + most + ", uncertain";
  }
}
