package org.airfit.plug;

import java.util.Objects;
import java.util.Optional;
import org.airfit.internal.Digits;
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
   * Checks that nothing is missing.
   *
   * @param dimension what to measure
   * @param instrument what it would be measured with
   * @param expectedDropBits how much doubt the reading takes away on average [bit]; one bit is the doubt between two
   *     equals
   * @param doubtBits the doubt there is now [bit]
   * @param chanceOfSettling how often one profile would afterwards stand above the confidence asked for
   * @param ball the ball to take a tip length by; empty for the edge, and for any other dimension
   */
  public NextReading {
    Objects.requireNonNull(dimension, "dimension");
    Objects.requireNonNull(instrument, "instrument");
    Objects.requireNonNull(ball, "ball");
  }

  /** {@return what to do and what to expect of it, in plain words} */
  public String inWords() {
    return "Measure the " + dimension + " (" + how(dimension, ball) + "). " + effect();
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
    return "Of the present doubt of " + Digits.fixed(doubtBits, 2) + " bit it is expected to leave "
        + Digits.fixed(Math.max(0.0, doubtBits - expectedDropBits), 2)
        + "; one profile will then stand out " + settled
        + ".";
  }
}
