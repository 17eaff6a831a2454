package org.airfit.plug;

import java.util.Objects;
import java.util.Optional;
import java.util.function.Supplier;
import org.airfit.measure.Access;
import org.airfit.measure.Instrument;
import org.airfit.measure.Reading;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.working.UnitSystem;

/**
 * One dimension of a plug as read.
 *
 * @param dimension what was measured
 * @param reading what was read, and what that may be off
 * @param ball the ball a tip length is referred to, see {@link GaugeBall}; empty for the edge, and for any other
 *     dimension
 */
public record PlugReading(Dimension dimension, Reading reading, Optional<GaugeBall> ball) {

  /**
   * Checks that a ball stands with a tip length only.
   *
   * @param dimension what was measured
   * @param reading what was read, and what that may be off
   * @param ball the ball a tip length is referred to, see {@link GaugeBall}; empty for the edge, and for any other
   *     dimension
   * @throws IllegalArgumentException if a ball stands with another dimension than the tip length
   */
  public PlugReading {
    Objects.requireNonNull(dimension, "dimension");
    Objects.requireNonNull(reading, "reading");
    Objects.requireNonNull(ball, "ball");
    if (ball.isPresent() && dimension != Dimension.TIP_LENGTH) {
      throw new IllegalArgumentException("dimension taken by a ball must be the "
          + Dimension.TIP_LENGTH + ", was the " + dimension + "; leave the ball out");
    }
  }

  /**
   * Takes down a reading with an uncertainty of one's own; a tip length is one to the edge.
   *
   * @param dimension what was measured
   * @param reading what was read, and what that may be off
   * @return the reading of that dimension
   */
  public static PlugReading of(Dimension dimension, Reading reading) {
    Objects.requireNonNull(dimension, "dimension");
    Objects.requireNonNull(reading, "reading");
    return new PlugReading(dimension, reading, Optional.empty());
  }

  /**
   * Takes down a reading made with a class of instrument, or the mean of several readings of one dimension of one plug,
   * such as three taken 120° apart; a tip length is one to the edge.
   *
   * @param dimension what was measured
   * @param instrument what with
   * @param repeats what the instrument showed, one length at least, each above 0 and not more than 600 mm
   * @return the mean with its uncertainty
   * @throws IllegalArgumentException if there is none, or one is outside the range
   */
  public static PlugReading of(Dimension dimension, Instrument instrument, Length... repeats) {
    Objects.requireNonNull(instrument, "instrument");
    Objects.requireNonNull(repeats, "repeats");
    Objects.requireNonNull(dimension, "dimension");
    return of(
        dimension, named(dimension, () -> Reading.by(instrument, dimension.access(), repeats)));
  }

  /**
   * Obtains the tip length to the edge from a measurement over a ball.
   *
   * @param ball the ball in the groove
   * @param overBall what was measured from the tip face over the ball
   * @param instrument what with, by its outside jaws
   * @param collar the collar diameter as read
   * @param groove the groove diameter as read, below that of the collar
   * @return the tip length with its uncertainty
   * @throws IllegalArgumentException if the readings are of other dimensions, the groove is no groove, or the
   *     measurement is too short for the ball
   */
  public static PlugReading overBall(
      GaugeBall ball,
      Length overBall,
      Instrument instrument,
      PlugReading collar,
      PlugReading groove) {
    Objects.requireNonNull(ball, "ball");
    Objects.requireNonNull(overBall, "overBall");
    Objects.requireNonNull(instrument, "instrument");
    Objects.requireNonNull(collar, "collar");
    Objects.requireNonNull(groove, "groove");
    require(collar, Dimension.COLLAR_DIAMETER);
    require(groove, Dimension.GROOVE_DIAMETER);
    double d = ball.diameter().millimetres();
    double h = 0.5 * (collar.length().millimetres() - groove.length().millimetres());
    if (!(h > 0.0)) {
      throw new IllegalArgumentException(
          groove.dimension() + " must be below the " + collar.dimension() + " of "
              + collar.length().inFull(LengthUnit.MILLIMETRE) + ", was "
              + groove.length().inFull(LengthUnit.MILLIMETRE) + "; check both");
    }
    double x = GaugeBall.fromWall(d, h);
    double length = overBall.millimetres() - 0.5 * d - x;
    if (!(length > 0.0)) {
      throw new IllegalArgumentException("measurement over the ball must be above "
          + Length.ofMillimetres(0.5 * d + x).inFull(LengthUnit.MILLIMETRE) + " for a ball of "
          + ball.diameter().inFull(LengthUnit.MILLIMETRE) + ", was "
          + overBall.inFull(LengthUnit.MILLIMETRE) + "; measure from the tip face");
    }
    double ofHeight = 0.5
        * Math.hypot(
            collar.standardUncertainty().millimetres(),
            groove.standardUncertainty().millimetres());
    double ofMeasurement = ofMeasurement(overBall, instrument).millimetres();
    return of(
        Dimension.TIP_LENGTH,
        new Reading(
            Length.ofMillimetres(length),
            Length.ofMillimetres(Math.hypot(ofMeasurement, GaugeBall.slope(d, h) * ofHeight)),
            Optional.of(instrument)));
  }

  /**
   * Obtains the tip length by a ball from a measurement over it, for a profile that states its tip length so.
   *
   * @param ball the ball in the groove
   * @param overBall what was measured from the tip face over the ball
   * @param instrument what with, by its outside jaws
   * @return the tip length by the ball with its uncertainty
   * @throws IllegalArgumentException if the measurement is not longer than the ball
   */
  public static PlugReading byBall(GaugeBall ball, Length overBall, Instrument instrument) {
    Objects.requireNonNull(ball, "ball");
    Objects.requireNonNull(overBall, "overBall");
    Objects.requireNonNull(instrument, "instrument");
    if (!(overBall.compareTo(ball.diameter()) > 0)) {
      throw new IllegalArgumentException("measurement over the ball must be above its diameter of "
          + ball.diameter().inFull(LengthUnit.MILLIMETRE) + ", was "
          + overBall.inFull(LengthUnit.MILLIMETRE) + "; measure from the tip face");
    }
    return new PlugReading(
        Dimension.TIP_LENGTH,
        new Reading(
            overBall.minus(ball.diameter()),
            ofMeasurement(overBall, instrument),
            Optional.of(instrument)),
        Optional.of(ball));
  }

  /** Outside jaws on a face and a ball are as good as on a cylinder. */
  private static Length ofMeasurement(Length overBall, Instrument instrument) {
    named(Dimension.TIP_LENGTH, () -> Reading.by(instrument, Access.OUTSIDE, overBall));
    return instrument.standardUncertainty(Access.OUTSIDE);
  }

  private static void require(PlugReading reading, Dimension dimension) {
    if (reading.dimension() != dimension) {
      throw new IllegalArgumentException(
          "reading must be of the " + dimension + ", was of the " + reading.dimension());
    }
  }

  /** Makes a reading whose refusal says which dimension it is of. */
  private static Reading named(Dimension dimension, Supplier<Reading> reading) {
    try {
      return reading.get();
    } catch (IllegalArgumentException e) {
      throw new IllegalArgumentException(dimension + ": " + e.getMessage(), e);
    }
  }

  /** {@return what was read} */
  public Length length() {
    return reading.length();
  }

  /** {@return one standard deviation of the reading} */
  public Length standardUncertainty() {
    return reading.standardUncertainty();
  }

  /**
   * {@return the caliper whose error is in the uncertainty and common to all readings with it; empty for a reading on
   * its own}
   */
  public Optional<Instrument> caliper() {
    return reading.caliper();
  }

  /** {@return the same reading as one on its own, its error shared with no other} */
  public PlugReading alone() {
    return new PlugReading(dimension, reading.alone(), ball);
  }

  /** The reading in words, in millimetres or inches. */
  String inWords(UnitSystem units) {
    if (units == UnitSystem.SI) {
      return toString();
    }
    return dimension + " " + length().format(LengthUnit.INCH, 4) + " ± "
        + standardUncertainty().format(LengthUnit.INCH, 5) + byBall();
  }

  private String byBall() {
    return ball.map(by -> ", by " + by).orElse("");
  }

  /** {@return the reading in words, such as "tip diameter (D_t) 18.72 mm ± 0.013 mm"} */
  @Override
  public String toString() {
    return dimension + " " + reading + byBall();
  }
}
