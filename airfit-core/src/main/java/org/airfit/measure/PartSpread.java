package org.airfit.measure;

import java.util.List;
import java.util.Objects;
import org.airfit.internal.Statistics;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;

/**
 * How one dimension of a profile varies from part to part: a nominal with a standard deviation, limits, or the
 * statistics of pieces that were measured.
 */
public sealed interface PartSpread {

  /** {@return the middle of the spread} */
  Length nominal();

  /** {@return the standard deviation from part to part; for a sample, of the next piece to come} */
  Length standardDeviation();

  /**
   * Obtains a spread from a nominal and a standard deviation.
   *
   * @param nominal the nominal, above 0 and at most 10 m
   * @param standardDeviation the standard deviation from part to part, above 0
   * @return the spread
   * @throws IllegalArgumentException if one of them is zero or above 10 m
   */
  static PartSpread normal(Length nominal, Length standardDeviation) {
    Objects.requireNonNull(nominal, "nominal");
    Objects.requireNonNull(standardDeviation, "standardDeviation");
    return new Normal(nominal, standardDeviation);
  }

  /**
   * Obtains a spread from the two limits a standard prints.
   *
   * @param low the lower limit, above 0
   * @param high the upper limit, above {@code low} and at most 10 m
   * @return the spread
   * @throws IllegalArgumentException if the limits are not in order
   */
  static PartSpread limits(Length low, Length high) {
    Objects.requireNonNull(low, "low");
    Objects.requireNonNull(high, "high");
    return new Limits(low, high);
  }

  /**
   * Obtains a spread from one reading each of several known plugs.
   *
   * @param readings the readings, two at least, not all alike
   * @return the spread
   * @throws IllegalArgumentException if there are fewer than two readings or no spread among them
   */
  static PartSpread measured(List<Length> readings) {
    Objects.requireNonNull(readings, "readings");
    int n = readings.size();
    if (n < 2) {
      throw new IllegalArgumentException("readings must be at least 2 to show a spread, was " + n);
    }
    double mean = 0.0;
    for (Length reading : readings) {
      mean += reading.metres() / n;
    }
    double squares = 0.0;
    for (Length reading : readings) {
      squares += (reading.metres() - mean) * (reading.metres() - mean);
    }
    return new Sample(n, Length.ofMetres(mean), Length.ofMetres(Math.sqrt(squares / (n - 1))));
  }

  /**
   * A bell-shaped spread around a nominal.
   *
   * @param nominal the nominal, above 0 and at most 10 m
   * @param standardDeviation the standard deviation from part to part, above 0
   */
  record Normal(Length nominal, Length standardDeviation) implements PartSpread {
    /**
     * Checks that both are above zero.
     *
     * @param nominal the nominal, above 0 and at most 10 m
     * @param standardDeviation the standard deviation from part to part, above 0
     * @throws IllegalArgumentException if one of them is zero or above 10 m
     */
    public Normal {
      Objects.requireNonNull(nominal, "nominal");
      Objects.requireNonNull(standardDeviation, "standardDeviation");
      requireSize("nominal", nominal);
      requireSize("standard deviation", standardDeviation);
    }
  }

  /**
   * An even spread between two limits.
   *
   * @param low the lower limit, above 0
   * @param high the upper limit, above {@code low} and at most 10 m
   */
  record Limits(Length low, Length high) implements PartSpread {
    /**
     * Checks that the limits are in order.
     *
     * @param low the lower limit, above 0
     * @param high the upper limit, above {@code low} and at most 10 m
     * @throws IllegalArgumentException if they are not
     */
    public Limits {
      Objects.requireNonNull(low, "low");
      Objects.requireNonNull(high, "high");
      requireSize("lower limit", low);
      if (!(high.compareTo(low) > 0)) {
        throw new IllegalArgumentException("upper limit must be above the lower limit "
            + low.inFull(LengthUnit.MILLIMETRE) + ", was " + high.inFull(LengthUnit.MILLIMETRE)
            + "; give the smaller one first");
      }
      requireSize("upper limit", high);
    }

    /** {@return the middle between the limits} */
    @Override
    public Length nominal() {
      return low.plus(high).times(0.5);
    }

    /** {@return the standard deviation of an even spread, its width divided by √12} */
    @Override
    public Length standardDeviation() {
      return high.minus(low).times(1.0 / Math.sqrt(12.0));
    }
  }

  /**
   * What several known pieces measured.
   *
   * @param pieces how many pieces, two at least
   * @param mean the mean of their readings, above 0
   * @param sampleDeviation their standard deviation s with n − 1 in the denominator, above 0
   */
  record Sample(int pieces, Length mean, Length sampleDeviation) implements PartSpread {
    /**
     * Checks that there is a spread to speak of.
     *
     * @param pieces how many pieces, two at least
     * @param mean the mean of their readings, above 0
     * @param sampleDeviation their standard deviation s with n − 1 in the denominator, above 0
     * @throws IllegalArgumentException if there are fewer than two pieces, or the mean or the deviation is zero
     */
    public Sample {
      Objects.requireNonNull(mean, "mean");
      Objects.requireNonNull(sampleDeviation, "sampleDeviation");
      if (pieces < 2) {
        throw new IllegalArgumentException(
            "pieces must be at least 2 to show a spread, was " + pieces);
      }
      requireSize("mean", mean);
      if (!(sampleDeviation.metres() > 0.0)) {
        throw new IllegalArgumentException(
            "standard deviation of the pieces must be above 0 mm, was 0 mm"
                + "; pieces that all read alike were read too coarsely, give the step of the instrument as limits");
      }
      requireSize("standard deviation of the pieces", sampleDeviation);
    }

    /** {@return the mean} */
    @Override
    public Length nominal() {
      return mean;
    }

    /**
     * Obtains the scale by which the next piece is expected to differ from the mean.
     *
     * <pre>
     *   s √(1 + 1/n)
     * </pre>
     *
     * @return the predictive scale of Student's t with n − 1 degrees of freedom
     */
    @Override
    public Length standardDeviation() {
      return sampleDeviation.times(Math.sqrt(1.0 + 1.0 / pieces));
    }

    /**
     * Joins two samples into the one that all their pieces together would give.
     *
     * <pre>
     *   n = n₁ + n₂,   x̄ = (n₁x̄₁ + n₂x̄₂)/n,   (n − 1)s² = (n₁ − 1)s₁² + (n₂ − 1)s₂² + n₁n₂/n · (x̄₁ − x̄₂)²
     * </pre>
     *
     * @param other a sample of other pieces
     * @return the joint sample
     * @throws IllegalArgumentException if the pieces of both together are more than 2147483647
     */
    public Sample joinedWith(Sample other) {
      Objects.requireNonNull(other, "other");
      long together = (long) pieces + other.pieces;
      if (together > Integer.MAX_VALUE) {
        throw new IllegalArgumentException("pieces of both samples must be at most "
            + Integer.MAX_VALUE + " together, were " + together + "; join fewer");
      }
      int n = (int) together;
      double apart = mean.millimetres() - other.mean.millimetres();
      double squares = (pieces - 1) * square(sampleDeviation)
          + (other.pieces - 1) * square(other.sampleDeviation)
          + (double) pieces * other.pieces / n * apart * apart;
      return new Sample(
          n,
          mean.times(pieces / (double) n).plus(other.mean.times(other.pieces / (double) n)),
          Length.ofMillimetres(Math.sqrt(squares / (n - 1))));
    }

    private static double square(Length length) {
      return length.millimetres() * length.millimetres();
    }

    /** {@return n − 1} */
    public int degreesOfFreedom() {
      return pieces - 1;
    }

    /**
     * Obtains the interval in which the next piece is expected, by Student's t.
     *
     * @param confidence the wanted chance that the next piece lies inside, in (0, 1)
     * @return the interval
     * @throws IllegalArgumentException if {@code confidence} is outside its range, or the interval reaches below 0
     */
    public Limits nextPiece(double confidence) {
      if (!(confidence > 0.0 && confidence < 1.0)) {
        throw new IllegalArgumentException("confidence must be in (0, 1), was " + confidence);
      }
      Length reach = standardDeviation()
          .times(Statistics.studentScore(0.5 * (1.0 - confidence), degreesOfFreedom()));
      return new Limits(mean.minus(reach), mean.plus(reach));
    }
  }

  private static void requireSize(String name, Length length) {
    if (!(length.metres() > 0.0 && length.metres() <= Reading.LONGEST)) {
      throw new IllegalArgumentException(name + " must be above 0 mm and at most 10000 mm, was "
          + length.inFull(LengthUnit.MILLIMETRE));
    }
  }
}
