package org.airfit.plug;

import java.util.List;
import java.util.Objects;

/**
 * One profile of the set, and how the readings lie to it.
 *
 * @param profile the profile
 * @param prior the chance it had before the readings
 * @param probability the chance it has after them, given that the plug is of the set or unknown
 * @param chiSquare the sum of the squared misfits over the dimensions that were read and that the profile knows
 * @param degreesOfFreedom how many those are
 * @param tailProbability how often a genuine plug of this profile would fit as badly or worse; 1 if nothing could be
 *     compared
 * @param logLikelihood the natural logarithm of the density of the readings, in mm to the power of minus the number of
 *     readings, and of the chances of the clues
 * @param residuals reading by reading, in the order of {@link Dimension}; readings the profile does not know are left
 *     out
 */
public record ProfileCandidate(
    PlugProfile profile,
    double prior,
    double probability,
    double chiSquare,
    int degreesOfFreedom,
    double tailProbability,
    double logLikelihood,
    List<Residual> residuals) {

  /** A genuine plug fits worse than this once in a hundred times; this project's choice of that risk. */
  static final double REJECTED_BELOW = 0.01;

  /**
   * Checks that the parts belong together and keeps a copy of the list.
   *
   * @param profile the profile
   * @param prior the chance it had before the readings
   * @param probability the chance it has after them, given that the plug is of the set or unknown
   * @param chiSquare the sum of the squared misfits over the dimensions that were read and that the profile knows
   * @param degreesOfFreedom how many those are
   * @param tailProbability how often a genuine plug of this profile would fit as badly or worse; 1 if nothing could be
   *     compared
   * @param logLikelihood the natural logarithm of the density of the readings, in mm to the power of minus the number
   *     of readings, and of the chances of the clues
   * @param residuals reading by reading, in the order of {@link Dimension}; readings the profile does not know are left
   *     out
   * @throws IllegalArgumentException if a chance is outside [0, 1], or the residuals are not as many as the degrees of
   *     freedom
   */
  public ProfileCandidate {
    Objects.requireNonNull(profile, "profile");
    Objects.requireNonNull(residuals, "residuals");
    if (!(prior >= 0.0 && prior <= 1.0 && probability >= 0.0 && probability <= 1.0 + 1.0e-9)) {
      throw new IllegalArgumentException(
          "chances of a candidate must be in [0, 1], were " + prior + " and " + probability);
    }
    if (residuals.size() != degreesOfFreedom) {
      throw new IllegalArgumentException("residuals of a candidate must be as many as its "
          + degreesOfFreedom + " degrees of freedom, were " + residuals.size());
    }
    residuals = List.copyOf(residuals);
  }

  /** {@return whether the readings could well be of this profile: the tail probability is 0.01 or more} */
  public boolean fits() {
    return tailProbability >= REJECTED_BELOW;
  }
}
