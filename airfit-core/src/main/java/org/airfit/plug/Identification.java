package org.airfit.plug;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.airfit.internal.Digits;
import org.airfit.internal.Statistics;
import org.airfit.quantity.Length;
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

  private final Identifier identifier;
  private final Map<Dimension, Reading> readings;
  private final List<Clue> clues;
  private final List<Candidate> ranking;
  private final double unknownProbability;
  private final List<Candidate> likely;
  private final boolean unknownLikely;
  private final Verdict verdict;
  private final double[] probabilities;

  /** Worked out when first asked for: most callers want only the verdict. Equal whoever computes it, so a race does no harm. */
  private volatile @Nullable List<NextReading> nextReadings;

  private Identification(
      Identifier identifier,
      Map<Dimension, Reading> readings,
      List<Clue> clues,
      List<Candidate> ranking,
      double[] probabilities,
      double unknownProbability) {
    this.identifier = identifier;
    this.readings = readings;
    this.clues = clues;
    this.ranking = List.copyOf(ranking);
    this.unknownProbability = unknownProbability;
    this.probabilities = probabilities;

    List<Candidate> needed = new ArrayList<>();
    double sum = 0.0;
    boolean unknownCounted = false;
    for (Candidate candidate : ranking) {
      if (!unknownCounted
          && sum < identifier.confidence()
          && unknownProbability > candidate.probability()) {
        unknownCounted = true;
        sum += unknownProbability;
      }
      if (sum >= identifier.confidence()) {
        break;
      }
      needed.add(candidate);
      sum += candidate.probability();
    }
    this.likely = List.copyOf(needed);
    this.unknownLikely = unknownCounted || sum < identifier.confidence();
    this.verdict = judge();
  }

  static Identification of(
      Identifier identifier, Map<Dimension, Reading> readings, List<Clue> clues) {
    List<PlugProfile> profiles = identifier.referenceSet().profiles();
    int n = profiles.size();
    double wear = identifier.wearAllowance().millimetres();
    double prior = (1.0 - identifier.unknownPrior()) / n;
    double unknownLogDensity = -Math.log(Identifier.UNKNOWN_WIDTH_MM);
    boolean together = readings.values().stream()
            .filter(reading -> reading.caliper().isPresent())
            .count()
        > 1;

    double[] chiSquare = new double[n];
    double[] logLikelihood = new double[n];
    double[] logJoint = new double[n + 1];
    List<List<Residual>> residuals = new ArrayList<>();
    for (int k = 0; k < n; k++) {
      List<Residual> own = new ArrayList<>();
      for (Reading taken : readings.values()) {
        PartSpread spread = profiles.get(k).dimensions().get(taken.dimension());
        Reading reading =
            spread == null ? null : TipLength.asStatedBy(profiles.get(k), taken).orElse(null);
        if (spread == null || reading == null) {
          logLikelihood[k] += unknownLogDensity;
          continue;
        }
        double y = reading.length().millimetres();
        Expected expected = Expected.of(
            spread, reading.standardUncertainty().millimetres(), wear, reading.dimension());
        double misfit = expected.misfit(y);
        own.add(new Residual(
            reading,
            spread,
            y - spread.nominal().millimetres(),
            Length.ofMillimetres(expected.sigma),
            misfit,
            Length.ofMillimetres(expected.wear)));
        if (!together || reading.caliper().isEmpty()) {
          chiSquare[k] += misfit * misfit;
          logLikelihood[k] += expected.logDensity(y);
        }
      }
      if (together) {
        List<CommonError> groups = CommonError.of(own, wear);
        for (CommonError group : groups) {
          chiSquare[k] += group.chiSquare;
          logLikelihood[k] += group.logLikelihood;
        }
        for (Residual single : own) {
          Reading reading = single.reading();
          if (reading.caliper().isPresent() && !CommonError.shares(groups, reading)) {
            chiSquare[k] += single.sigmas() * single.sigmas();
            logLikelihood[k] += Expected.of(
                    single.spread(),
                    reading.standardUncertainty().millimetres(),
                    wear,
                    reading.dimension())
                .logDensity(reading.length().millimetres());
          }
        }
      }
      for (Clue clue : clues) {
        logLikelihood[k] += Math.log(clue.chance(profiles.get(k)));
      }
      residuals.add(own);
      logJoint[k] = Math.log(prior) + logLikelihood[k];
    }
    logJoint[n] = Math.log(identifier.unknownPrior())
        + readings.size() * unknownLogDensity
        + clues.size() * Math.log(Clue.BY_CHANCE);
    double logSum = Statistics.logSumExp(logJoint);

    double[] probabilities = new double[n];
    List<Candidate> ranking = new ArrayList<>();
    for (int k = 0; k < n; k++) {
      probabilities[k] = Math.exp(logJoint[k] - logSum);
      int compared = residuals.get(k).size();
      ranking.add(new Candidate(
          profiles.get(k),
          prior,
          probabilities[k],
          chiSquare[k],
          compared,
          compared == 0 ? 1.0 : Statistics.chiSquareAbove(chiSquare[k], compared),
          logLikelihood[k],
          residuals.get(k)));
    }
    ranking.sort(Comparator.comparingDouble(Candidate::logLikelihood)
        .reversed()
        .thenComparing(candidate -> candidate.profile().id()));
    double unknown = Math.exp(logJoint[n] - logSum);
    return new Identification(identifier, readings, clues, ranking, probabilities, unknown);
  }

  private static List<NextReading> nextReadings(
      Identifier identifier, Set<Dimension> taken, double[] probabilities, double unknown) {
    List<PlugProfile> profiles = identifier.referenceSet().profiles();
    double doubt = Information.bits(probabilities, unknown);
    Set<Dimension> open = EnumSet.noneOf(Dimension.class);
    open.addAll(identifier.referenceSet().dimensions());
    open.removeAll(taken);
    List<NextReading> next = new ArrayList<>();
    for (Dimension dimension : open) {
      Optional<GaugeBall> ball = dimension == Dimension.TIP_LENGTH
          ? TipLength.usual(identifier.referenceSet())
          : Optional.empty();
      double u = uncertainty(identifier.instrument(), dimension, ball);
      @Nullable Expected[] models = new Expected[profiles.size()];
      for (int k = 0; k < models.length; k++) {
        models[k] = TipLength.expected(
            profiles.get(k), dimension, ball, u, identifier.wearAllowance().millimetres());
      }
      Information.Outlook outlook =
          Information.of(probabilities, models, unknown, identifier.confidence());
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
    return next;
  }

  /** Standard uncertainty of a reading to come [mm]; over a ball as on a cylinder. */
  static double uncertainty(Instrument instrument, Dimension dimension, Optional<GaugeBall> ball) {
    return instrument
        .standardUncertainty(ball.isPresent() ? Dimension.COLLAR_DIAMETER : dimension)
        .millimetres();
  }

  private Verdict judge() {
    if (ranking.stream().allMatch(candidate -> candidate.degreesOfFreedom() == 0)) {
      return Verdict.INSUFFICIENT_DATA;
    }
    if (likely.stream().noneMatch(Candidate::fits)) {
      return Verdict.NO_MATCH;
    }
    if (likely.size() > 1 || unknownLikely) {
      return Verdict.AMBIGUOUS;
    }
    if (likely.get(0).degreesOfFreedom() < FEWEST_READINGS) {
      return Verdict.INSUFFICIENT_DATA;
    }
    return weakestProvenance().canIdentify() ? Verdict.IDENTIFIED : Verdict.CANDIDATE;
  }

  /** {@return the verdict; handle every one of them} */
  public Verdict verdict() {
    return verdict;
  }

  /** {@return the profile that stands out, for {@link Verdict#IDENTIFIED} and {@link Verdict#CANDIDATE} only} */
  public Optional<PlugProfile> profile() {
    return verdict == Verdict.IDENTIFIED || verdict == Verdict.CANDIDATE
        ? Optional.of(ranking.get(0).profile())
        : Optional.empty();
  }

  /** {@return every profile of the set, the likeliest first} */
  public List<Candidate> ranking() {
    return ranking;
  }

  /** {@return the chance that the plug is of no profile in the set} */
  public double unknownProbability() {
    return unknownProbability;
  }

  /** {@return the fewest profiles that, with the unknown where it is likely, hold the confidence asked for} */
  public List<Candidate> likely() {
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
  public List<Reading> readings() {
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
    return Information.bits(
        ranking.stream().mapToDouble(Candidate::probability).toArray(), unknownProbability);
  }

  /**
   * Obtains the dimensions not read yet, the one that is expected to take away most doubt first.
   *
   * @return the next readings; empty if everything the set knows was read
   */
  public List<NextReading> nextReadings() {
    List<NextReading> known = nextReadings;
    if (known == null) {
      known = List.copyOf(
          nextReadings(identifier, readings.keySet(), probabilities, unknownProbability));
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
    boolean open = verdict == Verdict.AMBIGUOUS || verdict == Verdict.INSUFFICIENT_DATA;
    return open && !nextReadings().isEmpty()
        ? answer + " " + nextReadings().get(0).inWords()
        : answer;
  }

  private String answer() {
    Candidate best = ranking.get(0);
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
        ? profiles + ", or none of the set, " + percent(unknownProbability)
        : profiles;
  }

  private String noMatch(Candidate best) {
    if (best.fits()) {
      return "the plug is of none of its profiles, " + percent(unknownProbability);
    }
    return "the nearest is " + best.profile().displayName() + ", and "
        + percent(best.tailProbability()) + " of its genuine plugs fit as badly";
  }

  private String insufficient(Candidate best) {
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

  private static String chance(Candidate candidate) {
    return candidate.profile().displayName() + ", " + percent(candidate.probability());
  }

  /** Never says 0 % or 100 %: nothing here is certain. */
  static String percent(double probability) {
    if (probability < 0.0005) {
      return "less than 0.1 %";
    }
    return probability > 0.9995 ? "more than 99.9 %" : Digits.fixed(100.0 * probability, 1) + " %";
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
