package org.airfit.plug;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.airfit.internal.ReadingDensity;
import org.airfit.internal.SharedError;
import org.airfit.internal.Statistics;
import org.airfit.measure.Access;
import org.airfit.measure.Instrument;
import org.jspecify.annotations.Nullable;

/**
 * What readings and clues make of a set: the chance of each profile and of the unknown, and what one more reading would
 * bring.
 *
 * <p>Immutable. What is worked out when first asked for is equal whoever computes it, so a race does no harm.
 */
final class Evidence {

  /** So near to certainty that no profile may be left out of the sum for being out of reach. */
  private static final double CERTAIN = 1.0 - 1.0e-12;

  /** A near copy less likely than this counts as spread as a plug from elsewhere when next readings are ranked. */
  private static final double COPY_COUNTS = 0.001;

  private final ReferenceSet set;
  private final Assumptions assumptions;
  private final Map<Dimension, PlugReading> readings;
  private final List<Clue> clues;
  private final Scores scores;

  /** ln of the sum of all weights, the prior of the profiles left out. */
  private final double logSum;

  /** ln of the weight of a near copy, profile by profile; empty where none is about. */
  private final double[] logNear;

  private final double elsewhereProbability;
  private final double nearCopyProbability;
  private final List<ProfileCandidate> likely;
  private final boolean unknownLikely;

  /** The readings in the order of {@link Dimension}. */
  private final List<PlugReading> taken;

  private volatile @Nullable ProfileCandidate best;
  private volatile @Nullable List<ProfileCandidate> candidates;
  private volatile @Nullable List<NextReading> nextReadings;
  private volatile @Nullable List<ReadingSlip> slips;

  /**
   * @param readings taken over and not copied
   */
  Evidence(
      ReferenceSet set,
      Assumptions assumptions,
      Map<Dimension, PlugReading> readings,
      List<Clue> clues) {
    this.set = set;
    this.assumptions = assumptions;
    this.readings = readings;
    this.taken = List.copyOf(readings.values());
    this.clues = List.copyOf(clues);
    double logElsewhere =
        Math.log(assumptions.elsewherePrior() / prior()) + logElsewhereLikelihood();
    this.scores = scores(
        assumptions.confidence() < CERTAIN ? Scores.REACH : Double.POSITIVE_INFINITY, logElsewhere);
    this.logNear = logNear();
    this.logSum = logSum(scores, logElsewhere, logNear);
    this.elsewhereProbability = Math.exp(logElsewhere - logSum);
    double near = 0.0;
    for (double log : logNear) {
      near += log > Double.NEGATIVE_INFINITY ? Math.exp(log - logSum) : 0.0;
    }
    this.nearCopyProbability = near;
    double unknownProbability = elsewhereProbability + near;

    List<ProfileCandidate> needed = new ArrayList<>(2);
    boolean[] used = new boolean[scores.count()];
    double sum = 0.0;
    boolean unknownCounted = false;
    while (needed.size() < scores.count()) {
      int k = likeliest(used);
      double chance = chance(scores, k);
      if (!unknownCounted && sum < assumptions.confidence() && unknownProbability > chance) {
        unknownCounted = true;
        sum += unknownProbability;
      }
      if (sum >= assumptions.confidence()) {
        break;
      }
      used[k] = true;
      needed.add(candidate(scores, k));
      sum += chance;
    }
    this.likely = Collections.unmodifiableList(needed);
    this.unknownLikely = unknownCounted || sum < assumptions.confidence();
  }

  private Scores scores(double reach, double logElsewhere) {
    return Scores.of(
        set.sizes(), taken, clues, assumptions.wear().millimetres(), reach, logElsewhere);
  }

  /** The chance of each profile before the readings. */
  private double prior() {
    return (1.0 - assumptions.unknownPrior()) / set.profiles().size();
  }

  /** In the unit of {@link Scores}, in which a profile has its likelihood for weight. */
  private double[] logNear() {
    if (!assumptions.nearCopiesCount()) {
      return new double[0];
    }
    double[] logs = new double[scores.count()];
    double each = Math.log(assumptions.nearCopyPrior() / (1.0 - assumptions.unknownPrior()));
    for (int k = 0; k < logs.length; k++) {
      logs[k] = each + scores.logLikelihoodOfNearCopy(k, clues.size());
    }
    return logs;
  }

  /**
   * ln of the likelihood of a plug from elsewhere in the size class, in mm to the power of minus the number of readings.
   */
  double logElsewhereLikelihood() {
    return -readings.size() * Math.log(Assumptions.UNKNOWN_WIDTH_MM)
        + clues.size() * Math.log(Clue.BY_CHANCE);
  }

  private static double logSum(Scores scores, double logElsewhere, double[] logNear) {
    double largest = logElsewhere;
    for (double near : logNear) {
      largest = Math.max(largest, near);
    }
    for (int k = 0; k < scores.count(); k++) {
      largest = Math.max(largest, scores.logLikelihood(k));
    }
    double sum = 0.0;
    for (int k = 0; k < scores.count(); k++) {
      double below = scores.logLikelihood(k) - largest;
      sum += below < -Scores.REACH ? 0.0 : Math.exp(below);
    }
    for (double near : logNear) {
      sum += near > Double.NEGATIVE_INFINITY ? Math.exp(near - largest) : 0.0;
    }
    return largest + Math.log(sum + Math.exp(logElsewhere - largest));
  }

  private double chance(Scores of, int k) {
    return Math.exp(of.logLikelihood(k) - logSum);
  }

  /** Of the profiles not used yet; of equals the one with the first id. */
  private int likeliest(boolean[] used) {
    int best = -1;
    for (int k = 0; k < used.length; k++) {
      if (!used[k] && (best < 0 || goesBefore(k, best))) {
        best = k;
      }
    }
    return best;
  }

  private boolean goesBefore(int k, int other) {
    double by = scores.logLikelihood(k) - scores.logLikelihood(other);
    return by > 0.0 || (by == 0.0 && profile(k).id().compareTo(profile(other).id()) < 0);
  }

  private PlugProfile profile(int k) {
    return set.profiles().get(k);
  }

  private ProfileCandidate candidate(Scores of, int k) {
    int compared = of.compared(k);
    double chiSquare = of.chiSquare(k);
    return new ProfileCandidate(
        profile(k),
        prior(),
        chance(of, k),
        chiSquare,
        compared,
        compared == 0 ? 1.0 : Statistics.chiSquareAbove(chiSquare, compared),
        of.logLikelihood(k),
        of.fit(k));
  }

  /** The chances in the order of the set; 0 where a profile is out of reach. */
  private double[] chances() {
    double[] chances = new double[scores.count()];
    for (int k = 0; k < chances.length; k++) {
      chances[k] = scores.isOutOfReach(k) ? 0.0 : chance(scores, k);
    }
    return chances;
  }

  /** The chances of the profiles, then those of near copies, where any are about. */
  private double[] chancesWithCopies() {
    double[] profiles = chances();
    double[] all = Arrays.copyOf(profiles, profiles.length + logNear.length);
    for (int k = 0; k < logNear.length; k++) {
      all[profiles.length + k] = Math.exp(logNear[k] - logSum);
    }
    return all;
  }

  private List<NextReading> rankNextReadings() {
    Instrument instrument = assumptions.instrument();
    double wear = assumptions.wear().millimetres();
    double[] chances = chancesWithCopies();
    int profiles = scores.count();
    double doubt = Information.bits(chances, elsewhereProbability);
    SharedError.@Nullable Left[] left = leftOfCommonError(chances, profiles);
    Set<Dimension> open = EnumSet.noneOf(Dimension.class);
    open.addAll(set.dimensions());
    open.removeAll(readings.keySet());
    List<NextReading> next = new ArrayList<>();
    for (Dimension dimension : open) {
      Optional<GaugeBall> ball =
          dimension == Dimension.TIP_LENGTH ? set.sizes().usualBall() : Optional.empty();
      double u = uncertainty(instrument, dimension, ball);
      double ownU = SharedError.ownUncertainty(u, instrument.commonUncertainty().millimetres());
      @Nullable ReadingDensity[] models = new ReadingDensity[chances.length];
      for (int k = 0; k < profiles; k++) {
        SharedError.Left error = left[k];
        TipLength sizes = profile(k).sizes();
        ReadingDensity expected = error == null
            ? sizes.expected(dimension, ball, u, wear)
            : sizes.expected(dimension, ball, error, ownU, wear);
        models[k] = expected;
        if (chances.length > profiles && chances[profiles + k] > COPY_COUNTS && expected != null) {
          models[profiles + k] =
              ReadingDensity.changed(expected, Assumptions.CHANGED, Assumptions.CHANGED_BY_MM);
        }
      }
      Information.Outlook outlook =
          Information.of(chances, models, profiles, elsewhereProbability, assumptions.confidence());
      next.add(new NextReading(
          dimension,
          instrument,
          doubt - outlook.expectedBits(),
          doubt,
          outlook.chanceOfSettling(),
          ball));
    }
    // what does not differ by a hundredth of a bit is taken in the order of the bench: diameters
    // and lengths first, and before them what the likeliest profile must be held to
    Set<Dimension> deciding = best().profile().decidingDimensions();
    next.sort(Comparator.<NextReading>comparingLong(
            reading -> Math.round(-100.0 * reading.expectedDropBits()))
        .thenComparing(reading -> !deciding.contains(reading.dimension()))
        .thenComparing(NextReading::dimension));
    return List.copyOf(next);
  }

  /**
   * What the readings so far leave of the error of the caliper that the next one is by, profile by profile; nothing if
   * it took none.
   */
  private SharedError.@Nullable Left[] leftOfCommonError(double[] chances, int profiles) {
    Instrument instrument = assumptions.instrument();
    SharedError.@Nullable Left[] left = new SharedError.Left[profiles];
    boolean none = taken.stream().noneMatch(reading -> CaliperGroup.isBy(instrument, reading));
    for (int k = 0; k < profiles && !none; k++) {
      double copy = logNear.length > 0 ? chances[profiles + k] : 0.0;
      if (chances[k] + copy > Information.NEGLIGIBLE) {
        left[k] = scores.fit(k).leftOfError(instrument);
      }
    }
    return left;
  }

  /** Standard uncertainty of a reading to come [mm]; over a ball as on a cylinder. */
  static double uncertainty(Instrument instrument, Dimension dimension, Optional<GaugeBall> ball) {
    return instrument
        .standardUncertainty(ball.isPresent() ? Access.OUTSIDE : dimension.access())
        .millimetres();
  }

  /** Whether no reading is of a dimension that a profile knows. */
  boolean nothingCompared() {
    for (int k = 0; k < scores.count(); k++) {
      if (scores.compared(k) > 0) {
        return false;
      }
    }
    return true;
  }

  /** The likeliest profile. */
  ProfileCandidate best() {
    if (!likely.isEmpty()) {
      return likely.get(0);
    }
    ProfileCandidate known = best;
    if (known == null) {
      known = candidate(scores, likeliest(new boolean[scores.count()]));
      best = known;
    }
    return known;
  }

  /** Every profile of the set, the likeliest first. */
  List<ProfileCandidate> candidates() {
    List<ProfileCandidate> known = candidates;
    if (known == null) {
      known = rankCandidates();
      candidates = known;
    }
    return known;
  }

  private List<ProfileCandidate> rankCandidates() {
    Scores all = scores(Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY);
    List<ProfileCandidate> ranked = new ArrayList<>();
    for (int k = 0; k < all.count(); k++) {
      ranked.add(candidate(all, k));
    }
    ranked.sort(Comparator.comparingDouble(ProfileCandidate::logLikelihood)
        .reversed()
        .thenComparing(candidate -> candidate.profile().id()));
    return List.copyOf(ranked);
  }

  /** The dimensions not read yet, the one that is expected to take away most doubt first. */
  List<NextReading> nextReadings() {
    List<NextReading> known = nextReadings;
    if (known == null) {
      known = rankNextReadings();
      nextReadings = known;
    }
    return known;
  }

  /** The doubt that is left [bit]. */
  double doubtBits() {
    return Information.bits(chancesWithCopies(), elsewhereProbability);
  }

  /** The chance of a plug of no profile in the set: from elsewhere, or a near copy. */
  double unknownProbability() {
    return elsewhereProbability + nearCopyProbability;
  }

  double elsewhereProbability() {
    return elsewhereProbability;
  }

  /** The profile of which the plug is most likely a near copy, if it is one. */
  PlugProfile copied() {
    int best = 0;
    for (int k = 1; k < logNear.length; k++) {
      best = logNear[k] > logNear[best] ? k : best;
    }
    return profile(best);
  }

  double nearCopyProbability() {
    return nearCopyProbability;
  }

  /** The slips that may explain the readings; worked out when first asked for. */
  List<ReadingSlip> slips() {
    List<ReadingSlip> known = slips;
    if (known == null) {
      known = readings.isEmpty()
          ? List.of()
          : SlipSearch.of(set, assumptions, readings(), clues, scores, logSum);
      slips = known;
    }
    return known;
  }

  /**
   * The likeliest profile that the readings fit if the plug is worn as far as is usual, where nobody said how worn it
   * is and it is likely enough; half of all plugs are taken to be worn.
   */
  Optional<PlugProfile> ifWorn() {
    if (assumptions.wearTold() || readings.isEmpty()) {
      return Optional.empty();
    }
    Scores worn =
        Scores.of(set.sizes(), taken, clues, Assumptions.USUAL_WEAR_MM, Scores.REACH, logSum);
    int best = -1;
    for (int k = 0; k < worn.count(); k++) {
      if (!worn.isOutOfReach(k)
          && (best < 0 || worn.logLikelihood(k) > worn.logLikelihood(best))
          && Statistics.chiSquareAbove(worn.chiSquare(k), worn.compared(k))
              >= ProfileCandidate.REJECTED_BELOW) {
        best = k;
      }
    }
    double against = logSum + Math.log(1.0 - assumptions.confidence());
    return best >= 0 && worn.logLikelihood(best) > against
        ? Optional.of(profile(best))
        : Optional.empty();
  }

  /** Whether a profile fits throughout with nothing worn, worse than so many genuine plugs at most. */
  boolean fitsAsNew(ProfileCandidate candidate, double least) {
    ProfileFit asNew = ProfileFit.of(candidate.profile(), taken, 0.0);
    double chiSquare = asNew.chiSquare();
    int n = candidate.degreesOfFreedom();
    double largest = 0.0;
    for (Residual residual : asNew.residuals()) {
      largest = Math.max(largest, Math.abs(residual.sigmas()));
    }
    return Statistics.chiSquareAbove(chiSquare, n) >= least
        && ProfileCandidate.largestOf(n, largest) >= least;
  }

  /** How often a plug from anywhere in the size class would agree with a profile in all that was read, by chance. */
  double coincidence() {
    double sum = 0.0;
    for (int k = 0; k < scores.count(); k++) {
      sum += scores.coincidence(k);
    }
    return Math.min(1.0, sum);
  }

  /** What decides the mating of a profile and was not read yet. */
  List<Dimension> notRead(PlugProfile profile) {
    return profile.decidingDimensions().stream()
        .filter(dimension -> !readings.containsKey(dimension))
        .toList();
  }

  /** Whether everything was read that the set knows of any profile. */
  boolean allRead() {
    return readings.keySet().containsAll(set.dimensions());
  }

  /** The fewest profiles that, with the unknown where it is likely, hold the confidence asked for. */
  List<ProfileCandidate> likely() {
    return likely;
  }

  boolean unknownIsLikely() {
    return unknownLikely;
  }

  ReferenceSet set() {
    return set;
  }

  Assumptions assumptions() {
    return assumptions;
  }

  /** In the order of {@link Dimension}. */
  List<PlugReading> readings() {
    return taken;
  }

  List<Clue> clues() {
    return clues;
  }
}
