package org.airfit.fleet;

import org.airfit.quantity.GaugePressure;
import org.airfit.run.RunResult;

/** How a tool fares at its drop. */
enum DropVerdict {
  /** It has the pressure it needs. */
  ENOUGH("enough"),
  /** It has, by so little that a tenth more loss than was computed would take it, or that no usual gauge shows it. */
  JUST_ENOUGH("just enough"),
  /** At the worst of what is not known exactly it has not; at the best it may. */
  OPEN("open"),
  /** It has less than it needs. */
  TOO_LITTLE("too little"),
  /** Its air does not get there. */
  STARVED("starved");

  private final String word;

  DropVerdict(String word) {
    this.word = word;
  }

  /** What it is called in a table. */
  String word() {
    return word;
  }

  /** Whether the tool surely has what it needs. */
  boolean isMet() {
    return this == ENOUGH || this == JUST_ENOUGH;
  }

  /** The verdict on an answer at the worst of what is known. */
  static DropVerdict of(RunResult result, GaugePressure needed, boolean isExact) {
    return result.fold(
        delivered -> delivered.atToolGauge().compareTo(needed) < 0
            ? isExact ? TOO_LITTLE : OPEN
            : delivered.justEnough(needed).isPresent()
                    || delivered.lessThanAGaugeShows(needed).isPresent()
                ? JUST_ENOUGH
                : ENOUGH,
        starved -> isExact ? STARVED : OPEN);
  }
}
