package org.airfit.plug;

import java.util.List;
import java.util.Objects;
import org.airfit.internal.Digits;
import org.airfit.internal.Statistics;
import org.jspecify.annotations.Nullable;

/**
 * One profile of the set, and how the readings lie to it.
 *
 * <p>Nobody but the identification makes one. This class is immutable and thread-safe.
 */
public final class ProfileCandidate {

  /** A genuine plug fits worse than this once in a hundred times; this project's choice of that risk. */
  static final double REJECTED_BELOW = 0.01;

  private final PlugProfile profile;
  private final double prior;
  private final double probability;
  private final double chiSquare;
  private final int degreesOfFreedom;
  private final double tailProbability;
  private final double logLikelihood;
  private final ProfileFit fit;
  private volatile @Nullable List<Residual> residuals;

  /** Checks that the parts belong together. The residuals are worked out when first asked for, equal whoever does it. */
  ProfileCandidate(
      PlugProfile profile,
      double prior,
      double probability,
      double chiSquare,
      int degreesOfFreedom,
      double tailProbability,
      double logLikelihood,
      ProfileFit fit) {
    if (!(prior >= 0.0 && prior <= 1.0 && probability >= 0.0 && probability <= 1.0 + 1.0e-9)) {
      throw new IllegalArgumentException(
          "chances of a candidate must be in [0, 1], were " + prior + " and " + probability);
    }
    if (fit.compared() != degreesOfFreedom) {
      throw new IllegalArgumentException("residuals of a candidate must be as many as its "
          + degreesOfFreedom + " degrees of freedom, were " + fit.compared());
    }
    this.profile = Objects.requireNonNull(profile, "profile");
    this.prior = prior;
    this.probability = probability;
    this.chiSquare = chiSquare;
    this.degreesOfFreedom = degreesOfFreedom;
    this.tailProbability = tailProbability;
    this.logLikelihood = logLikelihood;
    this.fit = fit;
  }

  /** {@return the profile} */
  public PlugProfile profile() {
    return profile;
  }

  /** {@return the chance it had before the readings} */
  public double prior() {
    return prior;
  }

  /** {@return the chance it has after them, given that the plug is of the set or unknown} */
  public double probability() {
    return probability;
  }

  /** {@return the sum of the squared misfits over the dimensions that were read and that the profile knows} */
  public double chiSquare() {
    return chiSquare;
  }

  /** {@return how many dimensions were read that the profile knows} */
  public int degreesOfFreedom() {
    return degreesOfFreedom;
  }

  /**
   * {@return how often a genuine plug of this profile would fit as badly or worse; 1 if nothing could be compared}
   */
  public double tailProbability() {
    return tailProbability;
  }

  /**
   * {@return the natural logarithm of the density of the readings, in mm to the power of minus the number of
   * readings, and of the chances of the clues}
   */
  public double logLikelihood() {
    return logLikelihood;
  }

  /**
   * {@return reading by reading, in the order of {@link Dimension}; readings the profile does not know are left
   * out}
   */
  public List<Residual> residuals() {
    List<Residual> known = residuals;
    if (known == null) {
      known = List.copyOf(fit.residuals());
      residuals = known;
    }
    return known;
  }

  /** {@return whether the readings could well be of this profile: the tail probability is 0.01 or more} */
  public boolean fits() {
    return tailProbability >= REJECTED_BELOW;
  }

  /** {@return the reading that lies furthest from what the profile allows, in standard deviations; 0 if none does} */
  public double largestMisfit() {
    double largest = 0.0;
    for (Residual residual : residuals()) {
      largest = Math.max(largest, Math.abs(residual.sigmas()));
    }
    return largest;
  }

  /**
   * Obtains how often the largest misfit of as many readings of a genuine plug is as large, which catches the one size
   * that χ² over many sizes lets pass.
   *
   * <pre>
   *   1 − (1 − 2Q(z))ⁿ
   * </pre>
   *
   * @return the chance, after Šidák; 1 if nothing could be compared
   */
  public double largestMisfitProbability() {
    return largestOf(degreesOfFreedom, largestMisfit());
  }

  /** How often the largest of so many standard deviates is as far from 0. */
  static double largestOf(int deviates, double z) {
    double one = 2.0 * Statistics.normalAbove(z);
    return deviates == 0 ? 1.0 : -Math.expm1(deviates * Math.log1p(-Math.min(one, 1.0)));
  }

  /**
   * {@return whether the readings could well be of this profile, all together and each of them: both tail
   * probabilities are 0.01 or more}
   */
  public boolean fitsThroughout() {
    return fitsThroughout(REJECTED_BELOW);
  }

  boolean fitsThroughout(double least) {
    return tailProbability >= least && largestMisfitProbability() >= least;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof ProfileCandidate that
        && profile.equals(that.profile)
        && Double.compare(prior, that.prior) == 0
        && Double.compare(probability, that.probability) == 0
        && Double.compare(chiSquare, that.chiSquare) == 0
        && degreesOfFreedom == that.degreesOfFreedom
        && Double.compare(tailProbability, that.tailProbability) == 0
        && Double.compare(logLikelihood, that.logLikelihood) == 0
        && residuals().equals(that.residuals());
  }

  @Override
  public int hashCode() {
    return Objects.hash(
        profile,
        prior,
        probability,
        chiSquare,
        degreesOfFreedom,
        tailProbability,
        logLikelihood,
        residuals());
  }

  /** {@return the profile and its chance, such as "Finch, 97.1 %"} */
  @Override
  public String toString() {
    return profile.displayName() + ", " + Digits.percent(probability);
  }
}
