package org.airfit.plant;

import java.util.Optional;
import org.airfit.air.AirState;
import org.airfit.quantity.MassFlow;
import org.airfit.working.UnitSystem;
import org.airfit.working.Working;

/** What feeds a run or a network: a pressure that holds, a {@link Regulator} with droop, or a {@link Compressor} with its receiver. */
public sealed interface Supply permits Supply.Fixed, Regulator, Compressor {

  /**
   * Obtains a supply whose pressure does not depend on the flow.
   *
   * @param air the air at the supply
   * @return the supply
   */
  static Supply fixed(AirState air) {
    return new Fixed(air);
  }

  /** {@return the air while nothing flows} */
  AirState still();

  /**
   * Finds the air it gives at a flow.
   *
   * @param flow the flow
   * @return the air, or empty where it cannot give that much
   */
  Optional<AirState> at(MassFlow flow);

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

    @Override
    public Optional<AirState> at(MassFlow flow) {
      return Optional.of(still);
    }

    @Override
    public Working working(MassFlow flow, UnitSystem units) {
      return Working.titled("Supply")
          .note("The supply holds "
              + still.pressure().format(units.pressureUnit())
              + " whatever flows.")
          .build();
    }
  }
}
