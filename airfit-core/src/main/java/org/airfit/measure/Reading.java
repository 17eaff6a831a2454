package org.airfit.measure;

import java.util.Objects;
import java.util.Optional;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;

/**
 * One size as read, with what the reading may be off.
 *
 * <p>Repeats make a reading better, but not below what the caliper itself is off:
 *
 * <pre>{@code
 * import org.airfit.measure.Access;
 * import org.airfit.measure.Instrument;
 * import org.airfit.measure.Reading;
 * import org.airfit.quantity.Length;
 *
 * class ThreeRepeats {
 *   public static void main(String[] args) {
 *     Reading once = Reading.by(Instrument.DIGITAL_CALIPER, Access.OUTSIDE, Length.parse("11.98 mm"));
 *     Reading three = Reading.by(
 *         Instrument.DIGITAL_CALIPER,
 *         Access.OUTSIDE,
 *         Length.parse("11.98 mm"),
 *         Length.parse("11.97 mm"),
 *         Length.parse("11.98 mm"));
 *     System.out.println(three.standardUncertainty().compareTo(once.standardUncertainty()) < 0); // true
 *     System.out.println(three.standardUncertainty()
 *         .compareTo(Instrument.DIGITAL_CALIPER.commonUncertainty()) > 0); // true
 *   }
 * }
 * }</pre>
 *
 * @param length what was read, above 0 and at most 10 m
 * @param standardUncertainty one standard deviation of the reading, of instrument and user together, 1 pm at least; take
 *     it from an {@link Instrument} or from the spread of your own repeats
 * @param caliper the caliper whose error is in the uncertainty and common to all readings with it; empty for a reading
 *     on its own
 */
public record Reading(Length length, Length standardUncertainty, Optional<Instrument> caliper) {

  /** The longest size that counts as read [m]; far beyond any caliper, our own choice. */
  static final double LONGEST = 10.0;

  /** The smallest uncertainty, a picometre, which is less than an atom; our own choice. */
  static final Length FINEST = Length.ofMillimetres(1.0e-9);

  /**
   * Checks that there is something read and that it is not taken as perfect.
   *
   * @param length what was read, above 0 and at most 10 m
   * @param standardUncertainty one standard deviation of the reading, of instrument and user together, 1 pm at least;
   *     take it from an {@link Instrument} or from the spread of your own repeats
   * @param caliper the caliper whose error is in the uncertainty and common to all readings with it; empty for a
   *     reading on its own
   * @throws IllegalArgumentException if the length or the uncertainty is outside its range, or the uncertainty is not
   *     above the caliper's own
   */
  public Reading {
    Objects.requireNonNull(length, "length");
    Objects.requireNonNull(standardUncertainty, "standardUncertainty");
    Objects.requireNonNull(caliper, "caliper");
    if (!(length.metres() > 0.0 && length.metres() <= LONGEST)) {
      throw new IllegalArgumentException("reading must be above 0 mm and at most 10000 mm, was "
          + length.inFull(LengthUnit.MILLIMETRE) + "; leave out what was not measured");
    }
    if (standardUncertainty.compareTo(FINEST) < 0) {
      throw new IllegalArgumentException(
          "standard uncertainty of a reading must be at least 1e-9 mm, was "
              + standardUncertainty.inFull(LengthUnit.MILLIMETRE)
              + "; no reading is perfect, take it from an Instrument");
    }
    if (caliper.isPresent()
        && !(standardUncertainty.compareTo(caliper.get().commonUncertainty()) > 0)) {
      throw new IllegalArgumentException(
          "standard uncertainty of a reading must be above that of a "
              + caliper.get().label() + ", "
              + caliper.get().commonUncertainty().inFull(LengthUnit.MILLIMETRE) + ", was "
              + standardUncertainty.inFull(LengthUnit.MILLIMETRE)
              + "; leave the caliper out if you know it better than its class");
    }
  }

  /**
   * Takes down a reading with an uncertainty of its own, which it shares with no other.
   *
   * @param length what was read, above 0 and at most 10 m
   * @param standardUncertainty one standard deviation of the reading, 1 pm at least
   * @return the reading
   * @throws IllegalArgumentException if the length or the uncertainty is outside its range
   */
  public static Reading of(Length length, Length standardUncertainty) {
    Objects.requireNonNull(length, "length");
    Objects.requireNonNull(standardUncertainty, "standardUncertainty");
    return new Reading(length, standardUncertainty, Optional.empty());
  }

  /**
   * Takes down a reading made with a class of instrument, or the mean of several readings of one size of one part, such
   * as three taken 120° apart.
   *
   * @param instrument what the size was read with
   * @param access how the instrument got at it
   * @param repeats what the instrument showed, one length at least, each above 0 and not more than 600 mm
   * @return the mean with its uncertainty
   * @throws IllegalArgumentException if there is none, or one is outside the range
   */
  public static Reading by(Instrument instrument, Access access, Length... repeats) {
    Objects.requireNonNull(instrument, "instrument");
    Objects.requireNonNull(access, "access");
    Objects.requireNonNull(repeats, "repeats");
    int n = repeats.length;
    if (n == 0) {
      throw new IllegalArgumentException("repeats of a reading must be at least one, were none");
    }
    double sum = 0.0;
    for (Length repeat : repeats) {
      instrument.limitOfError(access, Objects.requireNonNull(repeat, "repeats"));
      sum += repeat.millimetres();
    }
    double mean = sum / n;
    double squares = 0.0;
    for (Length repeat : repeats) {
      squares += (repeat.millimetres() - mean) * (repeat.millimetres() - mean);
    }
    double technique = instrument.techniqueMm(access);
    double scatter = n == 1 ? technique : Math.max(technique, Math.sqrt(squares / (n - 1)));
    return new Reading(
        Length.ofMillimetres(mean),
        Length.ofMillimetres(instrument.uncertaintyMm(access, mean, scatter / Math.sqrt(n))),
        Optional.of(instrument));
  }

  /** {@return the same reading as one on its own, its error shared with no other} */
  public Reading alone() {
    return new Reading(length, standardUncertainty, Optional.empty());
  }

  /** {@return the reading in words, such as "18.72 mm ± 0.013 mm"} */
  @Override
  public String toString() {
    return length.format(LengthUnit.MILLIMETRE, 2) + " ± "
        + standardUncertainty.format(LengthUnit.MILLIMETRE, 3);
  }
}
