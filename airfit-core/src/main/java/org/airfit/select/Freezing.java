package org.airfit.select;

import java.util.Optional;
import org.airfit.quantity.Temperature;
import org.airfit.safety.Caution;
import org.airfit.source.Source;
import org.airfit.working.UnitSystem;

/** The warning where the air or the parts of a job see frost: water that the air carries freezes in what it passes. */
final class Freezing {

  /** Where water begins to freeze. */
  static final Temperature POINT = Temperature.ofCelsius(0.0);

  private static final Source SOURCE =
      Source.handbook("training notes of a US Industrial Training and Assessment Center,"
          + " and MIL-HDBK-1191 p 9-37: refrigerated dryers reach a pressure dew point of 35 to 40 degF; that water left in"
          + " the air freezes below 32 degF: common practice");

  private Freezing() {}

  /**
   * Warns of water that freezes, unless nothing of the job is below 0 °C. A dryer alone does not settle it: its dew point
   * must lie below the coldest place.
   *
   * @param job what is needed
   * @param units the units
   * @return the warning
   */
  static Optional<Caution> of(Requirement job, UnitSystem units) {
    Temperature coldest = PartChecks.coldest(job);
    if (coldest.compareTo(POINT) >= 0) {
      return Optional.empty();
    }
    String why = "It may be " + units.say(coldest) + " there, and water in the air freezes below "
        + units.say(POINT)
        + ": it blocks drains, pipes, regulators and tools. ";
    String refrigerated = "a refrigerated dryer leaves water down to "
        + units.either("2 to 4 °C", "35 to 40 °F") + ", which is not enough.";
    boolean isDried = job.isDried().orElse(false);
    return Optional.of(new Caution(
        "Frost",
        why
            + (isDried
                ? "See that the pressure dew point of the dryer lies below that temperature: "
                : "Drain receivers and low points before frost, and dry the air to a pressure dew point below that"
                    + " temperature: ")
            + refrigerated,
        SOURCE));
  }
}
