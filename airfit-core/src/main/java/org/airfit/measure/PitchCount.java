package org.airfit.measure;

import java.util.Objects;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;

/**
 * A length over several pitches of a thread, and how many they are said to be.
 *
 * <pre>
 *   likelihood = 0.97 e^(−½ ((L − n p)/u)²) + 0.02 e^(−½ ((L − (n−1) p)/u)²) + 0.01 e^(−½ ((L − (n+1) p)/u)²)
 * </pre>
 *
 * <p>L is the length, n the count, p the pitch of the thread and u the uncertainty of L. The second term is for threads
 * counted as pitches, the third for one thread overlooked. How often that happens was found nowhere: the shares are
 * choices of this project.
 *
 * @param over the length, in [0.001, 10000] mm, a choice of this project that no thread reaches
 * @param pitches how many pitches that is, in [1, 50]
 * @param uncertainty the standard uncertainty of the length, 1 pm at least
 */
public record PitchCount(Length over, int pitches, Length uncertainty) {

  /** No thread is so fine or so long that its pitches measure less or more [mm]: choices of this project. */
  private static final double SHORTEST_MM = 0.001;

  private static final double LONGEST_MM = 10_000.0;

  private static final double THREADS_COUNTED = 0.02;
  private static final double ONE_OVERLOOKED = 0.01;

  /**
   * Checks the numbers.
   *
   * @param over the length, in [0.001, 10000] mm
   * @param pitches how many pitches that is, in [1, 50]
   * @param uncertainty the standard uncertainty of the length, 1 pm at least
   * @throws IllegalArgumentException if one is out of range
   */
  public PitchCount {
    Objects.requireNonNull(over, "over");
    Objects.requireNonNull(uncertainty, "uncertainty");
    requireMeasured(over);
    if (uncertainty.compareTo(Reading.FINEST) < 0) {
      throw new IllegalArgumentException(
          "uncertainty of the length over the pitches must be at least 1e-9 mm, was "
              + uncertainty.inFull(LengthUnit.MILLIMETRE) + "; no reading is perfect");
    }
    if (pitches < 1 || pitches > 50) {
      throw new IllegalArgumentException("pitches counted must be in [1, 50], was " + pitches);
    }
  }

  private static void requireMeasured(Length over) {
    if (!(over.millimetres() >= SHORTEST_MM && over.millimetres() <= LONGEST_MM)) {
      throw new IllegalArgumentException(
          "length over the pitches must be in [0.001, 10000] mm, was "
              + over.inFull(LengthUnit.MILLIMETRE) + "; check its unit");
    }
  }

  /** {@return the pitch that follows, if the count is right} */
  public Length pitch() {
    return over.times(1.0 / pitches);
  }

  /** {@return the standard uncertainty of {@link #pitch()}, if the count is right} */
  public Length pitchUncertainty() {
    return uncertainty.times(1.0 / pitches);
  }

  /**
   * Obtains how well the length goes with a pitch, a wrong count allowed for.
   *
   * @param pitch the pitch of the thread
   * @return the likelihood over the most that the best reading can have [-], in [0, 1]
   */
  public double likelihood(Length pitch) {
    Objects.requireNonNull(pitch, "pitch");
    double p = pitch.metres();
    double more = ONE_OVERLOOKED * bell(p, pitches + 1);
    // a single thread has no pitch: of one pitch counted there is no smaller count
    double fewer = pitches == 1 ? 0.0 : THREADS_COUNTED * bell(p, pitches - 1);
    return (1.0 - THREADS_COUNTED - ONE_OVERLOOKED) * bell(p, pitches) + fewer + more;
  }

  private double bell(double pitch, int count) {
    double z = (over.metres() - count * pitch) / uncertainty.metres();
    return Math.exp(-0.5 * z * z);
  }

  /**
   * Obtains by how many standard uncertainties the length is off a whole number of pitches.
   *
   * @param pitch the pitch of the thread
   * @param count how many there are taken to be
   * @return (L − count p)/u [-]
   */
  public double deviation(Length pitch, int count) {
    Objects.requireNonNull(pitch, "pitch");
    return (over.metres() - count * pitch.metres()) / uncertainty.metres();
  }
}
