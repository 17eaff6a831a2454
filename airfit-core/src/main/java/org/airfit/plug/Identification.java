package org.airfit.plug;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.airfit.internal.Digits;
import org.airfit.internal.ReadingDensity;
import org.airfit.internal.SharedError;
import org.airfit.internal.Statistics;
import org.airfit.measure.Access;
import org.airfit.measure.Instrument;
import org.airfit.safety.Caution;
import org.airfit.working.Working;
import org.jspecify.annotations.Nullable;

/**
 * What readings say about a plug: a ranking, a verdict, what to measure next, and the warnings that go with it.
 *
 * <p>The probabilities hold for plugs of the kinds in the set, equally common, and for unknown ones with the chance given. Together they
 * are 1.
 *
 * <p>This class is immutable and thread-safe.
 */
public final class Identification {

  /** One dimension alone names no profile. This project's rule. */
  static final int FEWEST_READINGS = 2;

  /** So near to certainty that no profile may be left out of the sum for being out of reach. */
  private static final double CERTAIN = 1.0 - 1.0e-12;

  private final Identifier identifier;
  private final Map<Dimension, PlugReading> readings;
  private final List<Clue> clues;
  private final Scores scores;

  /** ln of the sum of all weights, the prior of the profiles left out. */
  private final double logSum;

  private final double unknownProbability;
  private final List<ProfileCandidate> likely;
  private final boolean unknownLikely;
  private final PlugVerdict verdict;

  /** Worked out when first asked for: most callers want only the verdict. Equal whoever computes them, so a race does no harm. */
  private volatile @Nullable List<ProfileCandidate> ranking;

  private volatile @Nullable List<NextReading> nextReadings;

  private Identification(
      Identifier identifier, Map<Dimension, PlugReading> readings, List<Clue> clues, Scores scores) {
    this.identifier = identifier;
    this.readings = readings;
    this.clues = clues;
    this.scores = scores;
    double logUnknown = Math.log(identifier.unknownPrior() / prior())
        - readings.size() * Math.log(Identifier.UNKNOWN_WIDTH_MM)
        + clues.size() * Math.log(Clue.BY_CHANCE);
    this.logSum = logSum(scores, logUnknown);
    this.unknownProbability = Math.exp(logUnknown - logSum);

    List<ProfileCandidate> needed = new ArrayList<>(2);
    boolean[] used = new boolean[scores.count()];
    double sum = 0.0;
    boolean unknownCounted = false;
    while (needed.size() < scores.count()) {
      int k = likeliest(used);
      double chance = chance(scores, k);
      if (!unknownCounted && sum < identifier.confidence() && unknownProbability > chance) {
        unknownCounted = true;
        sum += unknownProbability;
      }
      if (sum >= identifier.confidence()) {
        break;
      }
      used[k] = true;
      needed.add(candidate(scores, k));
      sum += chance;
    }
    this.likely = Collections.unmodifiableList(needed);
    this.unknownLikely = unknownCounted || sum < identifier.confidence();
    this.verdict = judge();
  }

  static Identification of(
      Identifier identifier, Map<Dimension, PlugReading> readings, List<Clue> clues) {
    double reach = identifier.confidence() < CERTAIN ? Scores.REACH : Double.POSITIVE_INFINITY;
    return new Identification(
        identifier, readings, clues, score(identifier, readings, clues, reach));
  }

  private static Scores score(
      Identifier identifier, Map<Dimension, PlugReading> readings, List<Clue> clues, double reach) {
    return Scores.of(
        identifier.referenceSet().sizes(),
        readings.values(),
        clues,
        identifier.wearAllowance().millimetres(),
        reach);
  }

  /** The chance of each profile before the readings. */
  private double prior() {
    return (1.0 - identifier.unknownPrior())
        / identifier.referenceSet().profiles().size();
  }

  private static double logSum(Scores scores, double logUnknown) {
    double largest = logUnknown;
    for (int k = 0; k < scores.count(); k++) {
      largest = Math.max(largest, scores.logLikelihood(k));
    }
    double sum = 0.0;
    for (int k = 0; k < scores.count(); k++) {
      double below = scores.logLikelihood(k) - largest;
      sum += below < -Scores.REACH ? 0.0 : Math.exp(below);
    }
    return largest + Math.log(sum + Math.exp(logUnknown - largest));
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
    return identifier.referenceSet().profiles().get(k);
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
        of.fit(k).residuals());
  }

  /** The chances in the order of the set; 0 where a profile is out of reach. */
  private double[] chances() {
    double[] chances = new double[scores.count()];
    for (int k = 0; k < chances.length; k++) {
      chances[k] = scores.isOutOfReach(k) ? 0.0 : chance(scores, k);
    }
    return chances;
  }

  private List<NextReading> rankNextReadings() {
    ReferenceSet set = identifier.referenceSet();
    double wear = identifier.wearAllowance().millimetres();
    double[] chances = chances();
    double doubt = Information.bits(chances, unknownProbability);
    SharedError.@Nullable Left[] left = leftOfCommonError(chances);
    Set<Dimension> open = EnumSet.noneOf(Dimension.class);
    open.addAll(set.dimensions());
    open.removeAll(readings.keySet());
    List<NextReading> next = new ArrayList<>();
    for (Dimension dimension : open) {
      Optional<GaugeBall> ball =
          dimension == Dimension.TIP_LENGTH ? set.sizes().usualBall() : Optional.empty();
      double u = uncertainty(identifier.instrument(), dimension, ball);
      @Nullable ReadingDensity[] models = new ReadingDensity[chances.length];
      for (int k = 0; k < models.length; k++) {
        SharedError.Left error = left[k];
        models[k] = error == null
            ? TipLength.expected(profile(k), dimension, ball, u, wear)
            : TipLength.expected(profile(k), dimension, ball, error, ownU(u), wear);
      }
      Information.Outlook outlook =
          Information.of(chances, models, unknownProbability, identifier.confidence());
      next.add(new NextReading(
          dimension,
          identifier.instrument(),
          doubt - outlook.expectedBits(),
          doubt,
          outlook.chanceOfSettling(),
          ball));
    }
    // what does not differ by a hundredth of a bit is taken in the order of the bench: diameters
    // and lengths first
    next.sort(Comparator.<NextReading>comparingLong(
            reading -> Math.round(-100.0 * reading.expectedDropBits()))
        .thenComparing(NextReading::dimension));
    return List.copyOf(next);
  }

  /** What the readings so far leave of the error of the caliper that the next one is by, profile by profile; nothing if it took none. */
  private SharedError.@Nullable Left[] leftOfCommonError(double[] chances) {
    SharedError.@Nullable Left[] left = new SharedError.Left[chances.length];
    boolean none = readings.values().stream()
        .noneMatch(reading -> reading.caliper().equals(Optional.of(identifier.instrument())));
    for (int k = 0; k < chances.length && !none; k++) {
      if (chances[k] > Information.NEGLIGIBLE) {
        left[k] = scores.fit(k).leftOfError(identifier.instrument());
      }
    }
    return left;
  }

  private double ownU(double u) {
    double c = identifier.instrument().commonUncertainty().millimetres();
    return Math.sqrt((u - c) * (u + c));
  }

  /** Standard uncertainty of a reading to come [mm]; over a ball as on a cylinder. */
  static double uncertainty(Instrument instrument, Dimension dimension, Optional<GaugeBall> ball) {
    return instrument
        .standardUncertainty(ball.isPresent() ? Access.OUTSIDE : dimension.access())
        .millimetres();
  }

  private PlugVerdict judge() {
    if (nothingCompared()) {
      return PlugVerdict.INSUFFICIENT_DATA;
    }
    if (likely.stream().noneMatch(ProfileCandidate::fits)) {
      return PlugVerdict.NO_MATCH;
    }
    if (likely.size() > 1 || unknownLikely) {
      return PlugVerdict.AMBIGUOUS;
    }
    if (likely.get(0).degreesOfFreedom() < FEWEST_READINGS) {
      return PlugVerdict.INSUFFICIENT_DATA;
    }
    return weakestProvenance().canIdentify() ? PlugVerdict.IDENTIFIED : PlugVerdict.CANDIDATE;
  }

  private boolean nothingCompared() {
    for (int k = 0; k < scores.count(); k++) {
      if (scores.compared(k) > 0) {
        return false;
      }
    }
    return true;
  }

  /** {@return the verdict; handle every one of them} */
  public PlugVerdict verdict() {
    return verdict;
  }

  /** {@return the profile that stands out, for {@link PlugVerdict#IDENTIFIED} and {@link PlugVerdict#CANDIDATE} only} */
  public Optional<PlugProfile> profile() {
    return verdict == PlugVerdict.IDENTIFIED || verdict == PlugVerdict.CANDIDATE
        ? Optional.of(best().profile())
        : Optional.empty();
  }

  /** {@return the likeliest profile, the first of the {@link #ranking}; it may not fit, and the unknown may be likelier} */
  public ProfileCandidate best() {
    return likely.isEmpty()
        ? candidate(scores, likeliest(new boolean[scores.count()]))
        : likely.get(0);
  }

  /** {@return every profile of the set, the likeliest first} */
  public List<ProfileCandidate> ranking() {
    List<ProfileCandidate> known = ranking;
    if (known == null) {
      known = rank();
      ranking = known;
    }
    return known;
  }

  private List<ProfileCandidate> rank() {
    Scores all = score(identifier, readings, clues, Double.POSITIVE_INFINITY);
    List<ProfileCandidate> candidates = new ArrayList<>();
    for (int k = 0; k < all.count(); k++) {
      candidates.add(candidate(all, k));
    }
    candidates.sort(Comparator.comparingDouble(ProfileCandidate::logLikelihood)
        .reversed()
        .thenComparing(candidate -> candidate.profile().id()));
    return List.copyOf(candidates);
  }

  /** {@return the chance that the plug is of no profile in the set} */
  public double unknownProbability() {
    return unknownProbability;
  }

  /** {@return the fewest profiles that, with the unknown where it is likely, hold the confidence asked for} */
  public List<ProfileCandidate> likely() {
    return likely;
  }

  /** {@return whether "of none in the set" is among what remains likely} */
  public boolean unknownIsLikely() {
    return unknownLikely;
  }

  /** {@return the weakest provenance among the profiles compared, on which the whole ranking rests} */
  public Provenance weakestProvenance() {
    return identifier.referenceSet().weakestProvenance();
  }

  /** {@return the readings, in the order of {@link Dimension}} */
  public List<PlugReading> readings() {
    return List.copyOf(readings.values());
  }

  /** {@return the clues that were counted, in the order given} */
  public List<Clue> clues() {
    return clues;
  }

  /** {@return what was compared with, and how} */
  public Identifier identifier() {
    return identifier;
  }

  /** {@return which size classes the readings leave open, from memory; empty unless {@link Identifier#withSizeClasses} asked for it} */
  public Optional<SizeClasses> sizeClasses() {
    return identifier.usesSizeClasses()
        ? Optional.of(SizeClasses.of(readings.values()))
        : Optional.empty();
  }

  /** {@return the doubt that is left [bit]; one bit is the doubt between two equals} */
  public double doubtBits() {
    return Information.bits(chances(), unknownProbability);
  }

  /**
   * Obtains the dimensions not read yet, the one that is expected to take away most doubt first.
   *
   * @return the next readings; empty if everything the set knows was read
   */
  public List<NextReading> nextReadings() {
    List<NextReading> known = nextReadings;
    if (known == null) {
      known = readings.isEmpty() && clues.isEmpty()
          ? identifier.firstReadings(this::rankNextReadings)
          : rankNextReadings();
      nextReadings = known;
    }
    return known;
  }

  /** {@return the warnings that go with this answer} */
  public List<Caution> cautions() {
    List<Caution> cautions = new ArrayList<>(PlugCautions.forAnswer(
        weakestProvenance(), clues.stream().anyMatch(clue -> clue.kind() == Clue.Kind.MARKING)));
    sizeClasses().ifPresent(sizes -> cautions.addAll(sizes.cautions()));
    return List.copyOf(cautions);
  }

  /** {@return the answer in a few plain sentences, with what to measure next where that is open} */
  public String inWords() {
    String answer = clues.isEmpty()
        ? answer()
        : answer() + " Counted as clues: "
            + clues.stream().map(Clue::toString).collect(Collectors.joining(", ")) + ".";
    answer += sizeClasses().map(sizes -> " " + sizes.inWords()).orElse("");
    boolean open = verdict == PlugVerdict.AMBIGUOUS || verdict == PlugVerdict.INSUFFICIENT_DATA;
    return open && !nextReadings().isEmpty()
        ? answer + " " + nextReadings().get(0).inWords()
        : answer;
  }

  private String answer() {
    ProfileCandidate best = best();
    String set =
        "the set \"" + identifier.referenceSet().name() + "\" (" + weakestProvenance() + ")";
    return switch (verdict) {
      case IDENTIFIED -> "Identified by " + set + ": " + chance(best) + ".";
      case CANDIDATE ->
        "Candidate only, because of what " + set + " rests on: " + chance(best) + ".";
      case AMBIGUOUS -> "Ambiguous in " + set + ": " + remaining() + ".";
      case NO_MATCH -> "No match in " + set + ": " + noMatch(best) + ".";
      case INSUFFICIENT_DATA -> insufficient(best);
    };
  }

  private String remaining() {
    String profiles = likely.stream().map(Identification::chance).collect(Collectors.joining(", "));
    return unknownLikely
        ? profiles + ", or none of the set, " + Digits.percent(unknownProbability)
        : profiles;
  }

  private String noMatch(ProfileCandidate best) {
    if (best.fits()) {
      return "the plug is of none of its profiles, " + Digits.percent(unknownProbability);
    }
    return "the nearest is " + best.profile().displayName() + ", and "
        + Digits.percent(best.tailProbability()) + " of its genuine plugs fit as badly";
  }

  private String insufficient(ProfileCandidate best) {
    if (readings.isEmpty()) {
      return "Nothing was read yet.";
    }
    if (best.degreesOfFreedom() == 0) {
      return "Not enough readings: nothing was read that the set \""
          + identifier.referenceSet().name() + "\" knows.";
    }
    return "Not enough readings: " + best.profile().displayName()
        + " is the likeliest, but one dimension alone names no profile.";
  }

  private static String chance(ProfileCandidate candidate) {
    return candidate.profile().displayName() + ", " + Digits.percent(candidate.probability());
  }

  /** {@return the chi-square and the posterior arithmetic, step by step} */
  public Working working() {
    return IdentificationWorking.of(this);
  }

  /** {@return the answer in words} */
  @Override
  public String toString() {
    return inWords();
  }
}
