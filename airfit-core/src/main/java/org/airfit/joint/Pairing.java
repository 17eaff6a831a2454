package org.airfit.joint;

import java.util.function.Function;
import org.airfit.source.Source;
import org.airfit.working.UnitSystem;

/**
 * How two ends go together, why, and the standard or practice that says so.
 *
 * @param verdict how they go together
 * @param inSi why, with lengths in millimetres
 * @param inUs why, with lengths in inches
 * @param source the standard or practice
 */
record Pairing(MatingVerdict verdict, String inSi, String inUs, Source source) {

  /** Where the reason holds no length. */
  Pairing(MatingVerdict verdict, String reason, Source source) {
    this(verdict, reason, reason, source);
  }

  /** Where the reason holds lengths. */
  Pairing(MatingVerdict verdict, Function<UnitSystem, String> reason, Source source) {
    this(verdict, reason.apply(UnitSystem.SI), reason.apply(UnitSystem.US), source);
  }

  String reason(UnitSystem units) {
    return units.either(inSi, inUs);
  }
}
