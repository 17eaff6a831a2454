package org.airfit.plug;

import java.util.Objects;
import java.util.Optional;
import org.airfit.measure.Instrument;

/**
 * A dimension not yet read, and what reading it is expected to bring.
 *
 * @param dimension what to measure
 * @param instrument what it would be measured with
 * @param expectedDropBits how much doubt the reading takes away on average [bit]; one bit is the doubt between two
 *     equals
 * @param doubtBits the doubt there is now [bit]
 * @param chanceOfSettling how often one profile would afterwards stand above the confidence asked for
 * @param ball the ball to take a tip length by; empty for the edge, and for any other dimension
 */
public record NextReading(
    Dimension dimension,
    Instrument instrument,
    double expectedDropBits,
    double doubtBits,
    double chanceOfSettling,
    Optional<GaugeBall> ball) {
  /**
   * Checks the components.
   *
   * @param dimension what to measure
   * @param instrument what it would be measured with
   * @param expectedDropBits how much doubt the reading takes away on average [bit]; one bit is the doubt between two
   *     equals
   * @param doubtBits the doubt there is now [bit]
   * @param chanceOfSettling how often one profile would afterwards stand above the confidence asked for
   * @param ball the ball to take a tip length by; empty for the edge, and for any other dimension
   * @throws IllegalArgumentException if a number is not finite, the doubt is below 0 or the chance is outside [0, 1]
   */
  public NextReading {
    Objects.requireNonNull(dimension, "dimension");
    Objects.requireNonNull(instrument, "instrument");
    Objects.requireNonNull(ball, "ball");
    if (!Double.isFinite(expectedDropBits)) {
      throw new IllegalArgumentException(
          "expected drop of doubt must be finite [bit], was " + expectedDropBits);
    }
    if (!(doubtBits >= 0.0 && doubtBits < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException(
          "doubt must be finite and at least 0 bit, was " + doubtBits);
    }
    if (!(chanceOfSettling >= 0.0 && chanceOfSettling <= 1.0)) {
      throw new IllegalArgumentException(
          "chance of settling must be in [0, 1], was " + chanceOfSettling);
    }
  }

  /** {@return what to do and what to expect of it, in plain words} */
  public String inWords() {
    return "Measure the " + dimension + " (" + how(dimension, ball) + "). " + effect();
  }

  /** {@return the same as {@link #inWords}} */
  @Override
  public String toString() {
    return inWords();
  }

  /** How to take a dimension, by a ball where there is one. */
  static String how(Dimension dimension, Optional<GaugeBall> ball) {
    return ball.map(by -> "outside jaws from the tip face over " + by
            + " pushed against the groove wall, less its diameter")
        .orElse(dimension.howToMeasure());
  }

  private String effect() {
    long inHundred = Math.round(100.0 * chanceOfSettling);
    String settled = inHundred >= 100
        ? "almost always"
        : inHundred <= 0
            ? "hardly ever"
            : "about " + (inHundred == 1 ? "once" : inHundred + " times") + " in 100";
    return "On average it takes away " + takenAway()
        + " of the present doubt; one profile will then" + " stand out " + settled + ".";
  }

  /** How much of the doubt goes, without the unit of information. */
  private String takenAway() {
    double share = doubtBits > 0.0 ? Math.max(0.0, expectedDropBits / doubtBits) : 0.0;
    return share >= 0.995 ? "almost all" : "about " + Math.round(100.0 * share) + " %";
  }
}
