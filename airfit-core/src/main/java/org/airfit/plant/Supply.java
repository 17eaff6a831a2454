package org.airfit.plant;

import java.util.Objects;
import java.util.Optional;
import org.airfit.air.AirState;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.working.UnitSystem;
import org.airfit.working.Working;

/**
 * What feeds a run or a network: a pressure that holds, a {@link Regulator} with droop, or a {@link Compressor} with
 * its
 * receiver.
 *
 * <p>Searches and solvers ask on plain doubles: {@link #pascals}, {@link #largest}, {@link #slope}. The pressure
 * falls or stays
 * as the flow rises.
 */
public sealed interface Supply permits Supply.Fixed, Regulator, Compressor {

  /**
   * Obtains a supply whose pressure does not depend on the flow.
   *
   * @param air the air at the supply
   * @return the supply
   */
  static Supply fixed(AirState air) {
    return new Fixed(Objects.requireNonNull(air, "air"));
  }

  /** {@return the air while nothing flows} */
  AirState still();

  /**
   * Finds the air it gives at a flow.
   *
   * @param flow the flow
   * @return the air, or empty where it cannot give that much
   */
  default Optional<AirState> at(MassFlow flow) {
    double pascals = pascals(Objects.requireNonNull(flow, "flow").kilogramsPerSecond());
    return Double.isNaN(pascals)
        ? Optional.empty()
        : Optional.of(still().at(AbsolutePressure.ofPascals(pascals)));
  }

  /**
   * Finds the pressure it gives at a flow.
   *
   * @param flow the flow [kg/s], at least 0
   * @return the absolute pressure [Pa], or NaN where it cannot give that much
   */
  double pascals(double flow);

  /** {@return the most it gives [kg/s]; infinite where there is no end} */
  double largest();

  /**
   * Finds how fast the pressure falls as the flow rises.
   *
   * @param flow the flow [kg/s], one that it gives
   * @return d pressure / d flow [Pa s/kg], at most 0; of the smaller flows where the curve has a corner; minus infinity
   *     where it falls more steeply than a number tells. Of a flow that it does not give the slope tells nothing:
   *     that of a compressor is NaN
   */
  double slope(double flow);

  /** {@return whether its pressure is the same whatever flows, also where air flows back into it} */
  default boolean holds() {
    return false;
  }

  /**
   * Tells how the pressure follows from the flow, in SI units.
   *
   * @param flow the flow
   * @return the working
   */
  default Working working(MassFlow flow) {
    return working(flow, UnitSystem.SI);
  }

  /**
   * Tells how the pressure follows from the flow.
   *
   * @param flow the flow
   * @param units the units to show numbers in
   * @return the working
   */
  Working working(MassFlow flow, UnitSystem units);

  /**
   * A pressure that holds whatever flows.
   *
   * @param still the air
   */
  record Fixed(AirState still) implements Supply {

    /**
     * Checks the component.
     *
     * @param still the air
     */
    public Fixed {
      Objects.requireNonNull(still, "still");
    }

    @Override
    public double pascals(double flow) {
      return still.pressure().pascals();
    }

    @Override
    public double largest() {
      return Double.POSITIVE_INFINITY;
    }

    @Override
    public double slope(double flow) {
      return 0.0;
    }

    @Override
    public boolean holds() {
      return true;
    }

    @Override
    public Working working(MassFlow flow, UnitSystem units) {
      Objects.requireNonNull(flow, "flow");
      return Working.titled("Supply", units)
          .answer("The supply holds "
              + still.pressure().format(units.pressureUnit())
              + " whatever flows.")
          .build();
    }
  }
}
