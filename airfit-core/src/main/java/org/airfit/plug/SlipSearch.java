package org.airfit.plug;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.airfit.internal.Statistics;
import org.airfit.measure.CaliperSlip;
import org.airfit.measure.Reading;
import org.airfit.quantity.Length;

/**
 * Looks for the slip that would explain readings which agree with no profile, or not well: each reading in turn is put
 * as it may have been meant, and the set is asked again.
 *
 * <pre>
 *   weight of slip i of reading j, of profile k:  ε_i L_k(y₁ … meant_ij … y_n) |d meant/dy| / (ways to slip so)
 *   misread:                                      ε L_k(without y_j) / 10 mm
 * </pre>
 *
 * <p>against the weight L_k of the profiles as read and that of unknown plugs. Two slips in one plug are not looked for,
 * but for all readings typed in one wrong unit.
 */
final class SlipSearch {

  /** So many slips at most are told. */
  private static final int MOST = 3;

  /** A reading agrees with a profile within so many standard deviations. */
  private static final double AGREES = 3.0;

  private final ReferenceSet set;
  private final Assumptions assumptions;
  private final List<PlugReading> readings;
  private final List<Clue> clues;
  private final double logSum;
  private final List<Found> found = new ArrayList<>();

  /** One slip that may have happened. */
  private static final class Found {

    final List<PlugReading> slipped;
    final CaliperSlip kind;
    final Optional<Length> meant;
    final Optional<Dimension> measured;

    /** ln of its weight, profile by profile. */
    final double[] logWeight;

    Found(
        List<PlugReading> slipped,
        CaliperSlip kind,
        Optional<Length> meant,
        Optional<Dimension> measured,
        double[] logWeight) {
      this.slipped = slipped;
      this.kind = kind;
      this.meant = meant;
      this.measured = measured;
      this.logWeight = logWeight;
    }
  }

  private SlipSearch(
      ReferenceSet set,
      Assumptions assumptions,
      List<PlugReading> readings,
      List<Clue> clues,
      double logSum) {
    this.logSum = logSum;
    this.set = set;
    this.assumptions = assumptions;
    this.readings = readings;
    this.clues = clues;
  }

  /**
   * Looks for slips.
   *
   * @param asRead how well the profiles suit the readings as they stand
   * @param logSum ln of the weight of all that is not a slip
   * @return the slips that are likely enough to be told, the likeliest first; one at most of each reading
   */
  static List<ReadingSlip> of(
      ReferenceSet set,
      Assumptions assumptions,
      List<PlugReading> readings,
      List<Clue> clues,
      Scores asRead,
      double logSum) {
    SlipSearch search = new SlipSearch(set, assumptions, readings, clues, logSum);
    search.run(asRead);
    return search.slips();
  }

  /** Most plugs have no slip, so what cannot be one is found out first. */
  private void run(Scores asRead) {
    for (CaliperSlip kind : List.of(CaliperSlip.INCHES_TYPED, CaliperSlip.MILLIMETRES_TYPED)) {
      if (readings.size() > 1 && asRead.allAgreeIf(kind.stretch())) {
        all(kind);
      }
    }
    boolean one = asRead.allButOneAgree();
    for (int j = 0; one && j < readings.size(); j++) {
      PlugReading reading = readings.get(j);
      for (CaliperSlip kind : CaliperSlip.values()) {
        switch (kind) {
          case INCHES_TYPED, MILLIMETRES_TYPED, DIGITS_EXCHANGED, DECIMAL_POINT -> {
            List<Length> meant = kind.meant(reading.length());
            for (Length length : meant) {
              add(
                  j,
                  kind,
                  as(reading, length),
                  Optional.of(length),
                  Optional.empty(),
                  meant.size());
            }
          }
          case OTHER_SIZE -> {
            Set<Dimension> known = set.dimensions();
            for (Dimension other : known) {
              if (other != reading.dimension()) {
                PlugReading of = PlugReading.of(other, reading.reading());
                add(j, kind, of, Optional.empty(), Optional.of(other), known.size() - 1);
              }
            }
          }
          case MISREAD -> misread(j);
        }
      }
    }
  }

  private static PlugReading as(PlugReading reading, Length length) {
    return new PlugReading(
        reading.dimension(),
        new Reading(length, reading.standardUncertainty(), reading.caliper()),
        reading.ball());
  }

  private void add(
      int j,
      CaliperSlip kind,
      PlugReading meant,
      Optional<Length> length,
      Optional<Dimension> measured,
      int ways) {
    List<PlugReading> as = new ArrayList<>(readings);
    as.set(j, meant);
    double log = Math.log(kind.chance() * stretch(kind, readings.get(j), meant) / ways);
    found.add(new Found(List.of(readings.get(j)), kind, length, measured, weights(as, log)));
  }

  private static double stretch(CaliperSlip kind, PlugReading read, PlugReading meant) {
    return kind == CaliperSlip.DECIMAL_POINT
        ? meant.length().metres() / read.length().metres()
        : kind.stretch();
  }

  /** Two other readings at least must speak for a profile before one can be told to be misread. */
  private void misread(int j) {
    if (readings.size() <= Identification.FEWEST_READINGS) {
      return;
    }
    List<PlugReading> as = new ArrayList<>(readings);
    as.remove(j);
    double log = Math.log(CaliperSlip.MISREAD.chance() / Assumptions.UNKNOWN_WIDTH_MM);
    found.add(new Found(
        List.of(readings.get(j)),
        CaliperSlip.MISREAD,
        Optional.empty(),
        Optional.empty(),
        weights(as, log)));
  }

  private void all(CaliperSlip kind) {
    List<PlugReading> as = readings.stream()
        .flatMap(
            reading -> kind.meant(reading.length()).stream().map(length -> as(reading, length)))
        .toList();
    if (as.size() < readings.size()) {
      return;
    }
    double log = Math.log(kind.chance()) + readings.size() * Math.log(kind.stretch());
    found.add(new Found(readings, kind, Optional.empty(), Optional.empty(), weights(as, log)));
  }

  /** Of profiles that all readings fit, as they may have been meant; of others there is none. */
  private double[] weights(List<PlugReading> as, double log) {
    Scores scores = Scores.of(
        set.sizes(), as, clues, assumptions.wear().millimetres(), Scores.REACH, logSum - log);
    double[] weights = new double[scores.count()];
    for (int k = 0; k < weights.length; k++) {
      boolean fits = !scores.isOutOfReach(k)
          && scores.compared(k) == as.size()
          && Statistics.chiSquareAbove(scores.chiSquare(k), scores.compared(k))
              >= ProfileCandidate.REJECTED_BELOW;
      weights[k] = fits ? log + scores.logLikelihood(k) : Double.NEGATIVE_INFINITY;
    }
    return weights;
  }

  private List<ReadingSlip> slips() {
    double largest = logSum;
    for (Found one : found) {
      for (double weight : one.logWeight) {
        largest = Math.max(largest, weight);
      }
    }
    double total = Math.exp(logSum - largest);
    for (Found one : found) {
      for (double weight : one.logWeight) {
        total += Math.exp(weight - largest);
      }
    }
    Map<Dimension, ReadingSlip> best = new EnumMap<>(Dimension.class);
    for (Found one : found) {
      for (int k = 0; k < one.logWeight.length; k++) {
        double chance = Math.exp(one.logWeight[k] - largest) / total;
        Dimension dimension = one.slipped.get(0).dimension();
        if (chance >= 1.0 - assumptions.confidence()) {
          best.merge(dimension, slip(one, k, chance), SlipSearch::better);
        }
      }
    }
    return best.values().stream()
        .sorted(Comparator.comparingDouble(ReadingSlip::probability).reversed())
        .limit(MOST)
        .toList();
  }

  /**
   * The one to tell of two slips of a reading: the likelier. But that a reading may be misread, which is looked for last,
   * says nothing of how, so that a slip which says it is told before, with the chance of both: the reading is wrong and
   * the profile is this one.
   */
  private static ReadingSlip better(ReadingSlip one, ReadingSlip other) {
    boolean alike = one.profile().equals(other.profile());
    if (alike && one.kind() != CaliperSlip.MISREAD && other.kind() == CaliperSlip.MISREAD) {
      return one.with(other.probability());
    }
    return other.probability() > one.probability() ? other : one;
  }

  private ReadingSlip slip(Found one, int k, double chance) {
    PlugProfile profile = set.profiles().get(k);
    List<Residual> residuals =
        ProfileFit.of(profile, readings, assumptions.wear().millimetres()).residuals();
    int agreeing = (int) residuals.stream()
        .filter(residual -> Math.abs(residual.sigmas()) <= AGREES
            && one.slipped.stream().noneMatch(slip -> slip.dimension() == residual.dimension()))
        .count();
    return new ReadingSlip(
        one.slipped, one.kind, profile, one.meant, one.measured, agreeing, chance);
  }
}
