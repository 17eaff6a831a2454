package org.airfit.plug;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import org.airfit.internal.ReadingDensity;
import org.airfit.internal.SharedError;
import org.airfit.measure.Instrument;
import org.airfit.measure.PartSpread;
import org.airfit.quantity.Length;
import org.jspecify.annotations.Nullable;

/**
 * One profile compared with the readings of a plug, reading by reading: the long way, for any kind of spread, and for
 * what is shown.
 *
 * <p>Kernel: millimetres; no checks.
 */
final class ProfileFit {

  private static final double LN_UNKNOWN_WIDTH = Math.log(Assumptions.UNKNOWN_WIDTH_MM);

  private final List<PlugReading> readings;
  private final List<PartSpread> spreads;
  private final double wear;
  private final int unknown;
  private final int known;
  private volatile @Nullable List<CaliperGroup> groups;

  private ProfileFit(PlugProfile profile, Collection<PlugReading> taken, double wear) {
    this.wear = wear;
    this.readings = new ArrayList<>(taken.size());
    this.spreads = new ArrayList<>(taken.size());
    int missing = 0;
    for (PlugReading reading : taken) {
      PartSpread spread = profile.dimensions().get(reading.dimension());
      Optional<PlugReading> stated =
          spread == null ? Optional.empty() : profile.sizes().asStated(reading);
      if (spread == null || stated.isEmpty()) {
        missing++;
      } else {
        readings.add(stated.get());
        spreads.add(spread);
      }
    }
    this.unknown = missing;
    this.known = profile.dimensions().size();
  }

  static ProfileFit of(PlugProfile profile, Collection<PlugReading> taken, double wear) {
    return new ProfileFit(profile, taken, wear);
  }

  /** Worked out when first asked for; equal whoever does it. */
  private List<CaliperGroup> groups() {
    List<CaliperGroup> known = groups;
    if (known == null) {
      known = CaliperGroup.of(readings, spreads, wear);
      groups = known;
    }
    return known;
  }

  private @Nullable ReadingDensity alone(List<CaliperGroup> groups, int j) {
    return CaliperGroup.shares(groups, readings.get(j)) ? null : expected(j);
  }

  private ReadingDensity expected(int j) {
    PlugReading reading = readings.get(j);
    return CaliperGroup.density(
        spreads.get(j), reading.standardUncertainty().millimetres(), wear, reading.dimension());
  }

  /** Of the readings, those of unknown dimensions included. */
  double logLikelihood() {
    double sum = -unknown * LN_UNKNOWN_WIDTH;
    List<CaliperGroup> groups = groups();
    for (CaliperGroup group : groups) {
      sum += group.error().logLikelihood();
    }
    for (int j = 0; j < readings.size(); j++) {
      ReadingDensity single = alone(groups, j);
      sum += single == null ? 0.0 : single.logDensity(readings.get(j).length().millimetres());
    }
    return sum;
  }

  /**
   * Of the readings, were the plug a near copy of the profile: each size changed with a chance q, by an amount that
   * falls off as an exponential, and one size at least changed among the N that the profile knows.
   *
   * <pre>
   *   L = (Π ((1 − q) f_j + q g_j) − (1 − q)^N Π f_j) / (1 − (1 − q)^N)
   * </pre>
   *
   * <p>under the integral over the error that readings share.
   */
  double logLikelihoodOfNearCopy() {
    double any = 0.0;
    double none = 0.0;
    List<CaliperGroup> groups = groups();
    for (CaliperGroup group : groups) {
      double[] logs =
          group.error().logLikelihoodsOfCopy(Assumptions.CHANGED, Assumptions.CHANGED_BY_MM);
      any += logs[0];
      none += logs[1];
    }
    double unchanged = Math.log1p(-Assumptions.CHANGED);
    for (int j = 0; j < readings.size(); j++) {
      ReadingDensity single = alone(groups, j);
      if (single != null) {
        double y = readings.get(j).length().millimetres();
        any += ReadingDensity.changed(single, Assumptions.CHANGED, Assumptions.CHANGED_BY_MM)
            .logDensity(y);
        none += single.logDensity(y) + unchanged;
      }
    }
    return someChanged(any, none, known, readings.size(), readings.size() + unknown);
  }

  /**
   * Leaves out that nothing was changed.
   *
   * @param any ln of the likelihood, whatever was changed
   * @param none ln of the part of it in which none of the sizes read was changed
   * @param known how many sizes the profile knows
   * @param compared how many of them were read
   * @param read how many readings there are
   */
  static double someChanged(double any, double none, int known, int compared, int read) {
    double unchanged = Math.log1p(-Assumptions.CHANGED);
    double rest = -Math.expm1(none + (known - compared) * unchanged - any);
    double some = -Math.expm1(known * unchanged);
    return rest > 0.0
        ? any + Math.log(rest / some) - (read - compared) * LN_UNKNOWN_WIDTH
        : Double.NEGATIVE_INFINITY;
  }

  double chiSquare() {
    double sum = 0.0;
    List<CaliperGroup> groups = groups();
    for (CaliperGroup group : groups) {
      sum += group.error().chiSquare();
    }
    for (int j = 0; j < readings.size(); j++) {
      ReadingDensity single = alone(groups, j);
      if (single != null) {
        double z = single.misfit(readings.get(j).length().millimetres());
        sum += z * z;
      }
    }
    return sum;
  }

  /** What the readings by a caliper leave of its error. */
  SharedError.Left leftOfError(Instrument caliper) {
    return CaliperGroup.of(caliper, readings, spreads, wear).error().left();
  }

  /** How many readings there are of sizes that the profile knows. */
  int compared() {
    return readings.size();
  }

  /** In the order of the readings; those the profile does not know are left out. */
  List<Residual> residuals() {
    List<Residual> residuals = new ArrayList<>(readings.size());
    for (int j = 0; j < readings.size(); j++) {
      double y = readings.get(j).length().millimetres();
      ReadingDensity expected = expected(j);
      residuals.add(new Residual(
          readings.get(j),
          spreads.get(j),
          y - spreads.get(j).nominal().millimetres(),
          Length.ofMillimetres(expected.sigma()),
          expected.misfit(y),
          Length.ofMillimetres(expected.wear())));
    }
    return residuals;
  }
}
