package org.airfit.plug;

import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import org.airfit.internal.SharedError;
import org.airfit.internal.Statistics;
import org.airfit.measure.Instrument;
import org.jspecify.annotations.Nullable;

/**
 * How well the readings of one plug suit each profile of a set, all profiles in one go.
 *
 * <pre>
 *   ln L = −(χ² + ln |V|)/2 − n ln √(2π) − m ln 10 + Σ ln P(clue)
 *
 *   e  = c² Σ r/σ² / (1 + W),   W = c² Σ 1/σ²,   r = y − µ,   σ² = s² + u² − c²
 *   χ² = Σ (r − e)²/σ² + (e/c)²,                 |V| = (1 + W) Π σ²
 * </pre>
 *
 * <table class="striped">
 * <caption>Symbols</caption>
 * <thead><tr><th>symbol</th><th>meaning</th><th>unit</th></tr></thead>
 * <tbody>
 * <tr><td>y, u</td><td>a reading and its standard uncertainty</td><td>mm</td></tr>
 * <tr><td>µ, s</td><td>nominal of the profile and its standard deviation from part to part</td><td>mm</td></tr>
 * <tr><td>c</td><td>what the readings by one caliper share; 0 for readings on their own</td><td>mm</td></tr>
 * <tr><td>e</td><td>the most likely error of that caliper, were the plug of the profile</td><td>mm</td></tr>
 * <tr><td>n, m</td><td>how many of the dimensions read the profile knows, and does not know</td><td>-</td></tr>
 * </tbody>
 * </table>
 *
 * <p>with the sums taken caliper by caliper. This is the multivariate normal density, V the covariance of the readings.
 *
 * <p><b>Limits, pieces and wear</b> have densities f that are not normal and go the long way of {@link ProfileFit}. A
 * profile out of reach of the likeliest is spared that way; it keeps a bound instead:
 *
 * <pre>
 *   ln L ≤ −(Σ q + ln B)/2 − n ln √(2π) − m ln 10 + Σ ln P(clue),   B = Π b / 2^g,   h = 2 g' c²
 *
 *   limits, width a:   q = d²/(u² − c² + h),       b = max(a²/(2π), u² − c²)
 *   deviation:         q = d²/(σ² + h),            b = σ²
 *   pieces:            q = min( (d/2)²/h, (ν + 1) ln(1 + (d/2)²/(νσ²)) ),   b = σ²
 * </pre>
 *
 * <p>with d the distance to the nearest size allowed, wear included, g the number of calipers that share an error and
 * g' how many readings share this one. No density is above its peak 1/√(2πb), nor falls off slower than said, wear
 * averaged or not. Half the exponent of φ(e/c) is left to pay for e, reading by reading, the other half integrates to
 * √2.
 *
 * <p><b>Source:</b> the density, see {@link SharedError}; the bound is elementary.
 *
 * <p>Kernel: millimetres; no checks; immutable once built, but for what is worked out when first asked for, equal whoever
 * does it.
 */
final class Scores {

  /** e to the minus this changes no digit of a sum of chances. */
  static final double REACH = 40.0;

  /** A reading that far beyond what is allowed, in standard deviations, is of no unchanged size. */
  private static final double CHANGED_BEYOND = 6.0;

  /** 99 of 100 genuine plugs read within so many standard deviations. */
  private static final double BAND_SIGMAS = 2.576;

  private static final double INV_SQRT_TWO_PI = Math.exp(-Statistics.LN_SQRT_TWO_PI);

  /** The bell of the common error at each step for near copies, over its peak. */
  private static final double[] AT_STEP = new double[2 * SharedError.COPY_STEPS + 1];

  static {
    for (int i = 0; i < AT_STEP.length; i++) {
      double x = (i - SharedError.COPY_STEPS) * SharedError.COPY_STEP;
      AT_STEP[i] = Math.exp(-0.5 * x * x);
    }
  }

  private static final double LN_COPY_STEP =
      Math.log(SharedError.COPY_STEP) - Statistics.LN_SQRT_TWO_PI;

  /** With steps wider than this, in standard deviations, or a reading further off, a bell is worked out step by step. */
  private static final double WIDE = 3.0;

  private static final double FAR_OFF = 30.0;

  private static final double LN_TWO = Math.log(2.0);
  private static final double LN_UNKNOWN_WIDTH = Math.log(Assumptions.UNKNOWN_WIDTH_MM);

  private static final List<Instrument> CALIPERS = List.of(Instrument.values());

  /** A product of variances below this is put away as a logarithm before it underflows. */
  private static final double SMALL = 1.0e-100;

  /** Of a sum of squares, more than rounding can take in its few terms and in what is subtracted. */
  private static final double ROUNDING = 1.0e-13;

  /** The logarithm of no product of variances is below. */
  private static final double FAR_BELOW = -1.0e6;

  private final SizeTable table;
  private final Collection<PlugReading> taken;
  private final double wear;

  // the readings, those that share an error with others side by side
  private final SizeTable.Column[] column;
  private final double[] y;
  private final double[] ownVariance;
  private final double[] common;
  private final int[] sharing;
  private int calipers;
  private int laidOut;

  /** The tip length as each profile states it, where it was not taken so. */
  private @Nullable Converted converted;

  // scratch for one profile: residuals, weights and the product of variances
  private final double[] r;
  private final double[] w;
  private double det;

  // scratch for a near copy: what is at each step of the common error
  private final double[] changed = new double[AT_STEP.length];
  private final double[] same = new double[AT_STEP.length];

  private final double[] logLikelihood;
  private final double[] chiSquare;
  private final int[] compared;
  private final @Nullable ProfileFit[] fits;
  private final boolean[] bounded;

  /** The first bound of χ² + ln |V|, profile by profile. */
  private final double[] looked;

  private Scores(SizeTable table, Collection<PlugReading> taken, double wear) {
    int n = taken.size();
    int profiles = table.profiles.size();
    this.table = table;
    this.taken = taken;
    this.wear = wear;
    this.column = new SizeTable.Column[n];
    this.y = new double[n];
    this.ownVariance = new double[n];
    this.common = new double[n];
    this.sharing = new int[n];
    this.r = new double[n];
    this.w = new double[n];
    this.logLikelihood = new double[profiles];
    this.chiSquare = new double[profiles];
    this.compared = new int[profiles];
    this.fits = new ProfileFit[profiles];
    this.bounded = new boolean[profiles];
    this.looked = new double[profiles];
  }

  /**
   * @param reach profiles so far below the likeliest, or less, keep a bound; infinite for none
   */
  static Scores of(
      SizeTable table, Collection<PlugReading> taken, List<Clue> clues, double wear, double reach) {
    return of(table, taken, clues, wear, reach, Double.NEGATIVE_INFINITY);
  }

  /**
   * @param reach profiles so far below the likeliest, or less, keep a bound; infinite for none
   * @param rest ln of another weight against which all are held, in the same unit: profiles so far below it keep a bound
   *     as well, but for the likeliest; minus infinity for none
   */
  static Scores of(
      SizeTable table,
      Collection<PlugReading> taken,
      List<Clue> clues,
      double wear,
      double reach,
      double rest) {
    Scores scores = new Scores(table, taken, wear);
    scores.layOut();
    scores.weigh(clues, reach, rest);
    scores.workOut(clues, reach, rest);
    return scores;
  }

  /** Readings by a caliper that took two or more come side by side, then all others on their own. */
  private void layOut() {
    int[] by = new int[CALIPERS.size()];
    for (PlugReading reading : taken) {
      if (reading.caliper().isPresent()) {
        by[CALIPERS.indexOf(reading.caliper().get())]++;
      }
    }
    for (int i = 0; i < by.length; i++) {
      if (by[i] > 0) {
        Instrument caliper = CALIPERS.get(i);
        boolean shared = by[i] > 1;
        calipers += shared ? 1 : 0;
        double c = shared ? caliper.commonUncertainty().millimetres() : 0.0;
        for (PlugReading reading : taken) {
          if (CaliperGroup.isBy(caliper, reading)) {
            put(reading, c, shared ? by[i] : 1);
          }
        }
      }
    }
    for (PlugReading reading : taken) {
      if (reading.caliper().isEmpty()) {
        put(reading, 0.0, 1);
      }
    }
  }

  private void put(PlugReading reading, double c, int together) {
    int j = laidOut++;
    double u = reading.standardUncertainty().millimetres();
    column[j] = table.column(reading.dimension());
    y[j] = reading.length().millimetres();
    ownVariance[j] = (u - c) * (u + c);
    common[j] = c;
    sharing[j] = together;
    if (!table.takenAsStated(reading)) {
      converted = new Converted(table.profiles, reading, j);
    }
  }

  /** A tip length that was not taken as all profiles state it. */
  private static final class Converted {

    /** Which of the readings it is. */
    final int j;

    /** What to add, profile by profile [mm]; NaN where it cannot be compared. */
    final double[] shift;

    /** How uncertain that is [mm²]. */
    final double[] variance;

    Converted(List<PlugProfile> profiles, PlugReading reading, int j) {
      this.j = j;
      this.shift = new double[profiles.size()];
      this.variance = new double[shift.length];
      for (int k = 0; k < shift.length; k++) {
        Optional<TipLength.Bridge> bridge =
            profiles.get(k).sizes().bridge(reading.ball(), profiles.get(k).tipLengthBall());
        shift[k] = bridge.map(TipLength.Bridge::shift).orElse(Double.NaN);
        variance[k] = bridge.map(by -> by.u() * by.u()).orElse(Double.NaN);
      }
    }
  }

  private double length(int j, int k) {
    return converted != null && converted.j == j ? y[j] + converted.shift[k] : y[j];
  }

  private double variance(int j, int k) {
    return converted != null && converted.j == j
        ? ownVariance[j] + converted.variance[k]
        : ownVariance[j];
  }

  private boolean compares(int j, int k) {
    return column[j].kind[k] != SizeTable.Kind.NOTHING
        && (converted == null || converted.j != j || !Double.isNaN(converted.shift[k]));
  }

  private void weigh(List<Clue> clues, double reach, double other) {
    boolean simple = converted == null;
    for (SizeTable.Column sizes : column) {
      simple &= sizes.allNormal && (wear == 0.0 || sizes.wearSign == 0);
    }
    double best = Double.NEGATIVE_INFINITY;
    if (simple) {
      lookOver();
    }
    for (int k = 0; k < logLikelihood.length; k++) {
      boolean normal = true;
      int n = simple ? y.length : 0;
      for (int j = 0; j < y.length && !simple; j++) {
        if (compares(j, k)) {
          n++;
          normal &= column[j].isNormal(k, wear);
        }
      }
      compared[k] = n;
      double rest = logChance(clues, table.profiles.get(k))
          - n * Statistics.LN_SQRT_TWO_PI
          - (y.length - n) * LN_UNKNOWN_WIDTH;
      double least = Math.min(best, Math.max(best, other) - reach);
      if (simple) {
        // the bound that was looked over, and only what it leaves in reach is worked out
        logLikelihood[k] = rest - 0.5 * looked[k];
        bounded[k] = logLikelihood[k] < least;
        if (bounded[k]) {
          chiSquare[k] = Double.NaN;
          continue;
        }
      }
      chiSquare[k] = Double.NaN;
      double drop = normal ? normal(k) : bound(k);
      // the exponent of a number is never above its logarithm to the base two
      logLikelihood[k] = rest - 0.5 * (drop + LN_TWO * Math.getExponent(det));
      bounded[k] = !normal || logLikelihood[k] < least;
      if (!bounded[k]) {
        logLikelihood[k] = rest - 0.5 * (drop + Math.log(det));
        best = Math.max(best, logLikelihood[k]);
      }
    }
  }

  /**
   * A bound of χ² + ln |V| from below for all profiles at once, where all densities are normal and nothing is missing:
   * the same sums in another order, in which digits may be lost, and less by what that can be.
   *
   * <pre>
   *   χ² = Σ r²/σ² − c² (Σ r/σ²)²/(1 + W)
   * </pre>
   */
  private void lookOver() {
    int profiles = logLikelihood.length;
    double[] bound = looked;
    double[] squares = new double[profiles];
    double[] pull = new double[profiles];
    double[] weight = new double[profiles];
    double[] product = new double[profiles];
    int end;
    for (int start = 0; start < y.length; start = end) {
      end = start + sharing[start];
      double c2 = common[start] * common[start];
      Arrays.fill(product, 1.0);
      Arrays.fill(squares, 0.0);
      Arrays.fill(pull, 0.0);
      Arrays.fill(weight, 0.0);
      for (int j = start; j < end; j++) {
        add(y[j], ownVariance[j], column[j], squares, pull, weight, product);
      }
      for (int k = 0; k < profiles; k++) {
        double all = 1.0 + c2 * weight[k];
        double determinant = product[k] * all;
        // the exponent of a number is never above its logarithm to the base two; one that
        // underflows tells nothing
        bound[k] += squares[k] * (1.0 - ROUNDING)
            - c2 * pull[k] * pull[k] / all
            + (determinant > SMALL ? LN_TWO * Math.getExponent(determinant) : FAR_BELOW);
      }
    }
  }

  private static void add(
      double y,
      double own,
      SizeTable.Column sizes,
      double[] squares,
      double[] pull,
      double[] weight,
      double[] product) {
    double[] nominal = sizes.nominal;
    double[] variance = sizes.variance;
    for (int k = 0; k < squares.length; k++) {
      double sigma2 = variance[k] + own;
      double w = 1.0 / sigma2;
      double r = y - nominal[k];
      squares[k] += r * r * w;
      pull[k] += r * w;
      weight[k] += w;
      product[k] *= sigma2;
    }
  }

  private static double logChance(List<Clue> clues, PlugProfile profile) {
    double log = 0.0;
    for (Clue clue : clues) {
      log += Math.log(clue.chance(profile));
    }
    return log;
  }

  /** χ² + ln |V| of a profile whose densities are all normal, less the logarithm of what it leaves in {@link #det}. */
  private double normal(int k) {
    double square = 0.0;
    double log = 0.0;
    det = 1.0;
    int end;
    for (int start = 0; start < y.length; start = end) {
      end = start + sharing[start];
      double pull = 0.0;
      double weight = 0.0;
      for (int j = start; j < end; j++) {
        if (compares(j, k)) {
          double sigma2 = column[j].variance[k] + variance(j, k);
          r[j] = length(j, k) - column[j].nominal[k];
          w[j] = 1.0 / sigma2;
          weight += w[j];
          pull += r[j] * w[j];
          det *= sigma2;
          if (det < SMALL) {
            log += Math.log(det);
            det = 1.0;
          }
        } else {
          r[j] = 0.0;
          w[j] = 0.0;
        }
      }
      double c2 = common[start] * common[start];
      double e = c2 * pull / (1.0 + c2 * weight);
      for (int j = start; j < end; j++) {
        square += (r[j] - e) * (r[j] - e) * w[j];
      }
      if (c2 > 0.0) {
        square += e * e / c2;
        det *= 1.0 + c2 * weight;
      }
    }
    chiSquare[k] = square;
    return square + log;
  }

  /** Σ q + ln B of any other profile, likewise. */
  private double bound(int k) {
    double drop = 0.0;
    double log = -calipers * LN_TWO;
    det = 1.0;
    for (int j = 0; j < y.length; j++) {
      if (!compares(j, k)) {
        continue;
      }
      SizeTable.Column sizes = column[j];
      double sigma2 = sizes.variance[k] + variance(j, k);
      double room = 2.0 * sharing[j] * common[j] * common[j];
      double width = 2.0 * sizes.half[k];
      double d = sizes.beyond(k, length(j, k), wear);
      if (d > 0.0 && sizes.kind[k] == SizeTable.Kind.PIECES) {
        double ratio = sigma2 / sizes.variance[k];
        double nu = sizes.freedom[k] * ratio * ratio;
        double quarter = 0.25 * d * d;
        double far = (nu + 1.0) * LN_TWO * Math.getExponent(1.0 + quarter / (nu * sigma2));
        drop += Math.min(quarter / room, far);
      } else {
        drop += d * d / (sigma2 + room);
      }
      det *= Math.max(width * width / (2.0 * Math.PI), sigma2);
      if (det < SMALL) {
        log += Math.log(det);
        det = 1.0;
      }
    }
    return drop + log;
  }

  /**
   * A bound nearer to the value, but for pieces, for which it is infinite: with the error of each caliper the best there
   * is.
   *
   * <pre>
   *   ln L ≤ −(min χ² + ln B)/2 − n ln √(2π) − m ln 10 + Σ ln P(clue),   b as above, g = 0
   * </pre>
   *
   * <p>No density is above its peak times exp(−d²/(2σ²)), and χ² as a function of e rises from its least by (e − e*)²/c²
   * at least, so that the integral over e is 1 at most.
   */
  private double tighterBound(int k, List<Clue> clues) {
    double sum = logChance(clues, table.profiles.get(k))
        - compared[k] * Statistics.LN_SQRT_TWO_PI
        - (y.length - compared[k]) * LN_UNKNOWN_WIDTH;
    double square = 0.0;
    int end;
    for (int start = 0; start < y.length; start = end) {
      end = start + sharing[start];
      double c = common[start];
      double e = c > 0.0 ? mostLikelyError(start, end, k) : 0.0;
      if (Double.isNaN(e)) {
        return Double.POSITIVE_INFINITY;
      }
      square += c > 0.0 ? e / c * (e / c) : 0.0;
      for (int j = start; j < end; j++) {
        if (compares(j, k)) {
          SizeTable.Column sizes = column[j];
          if (sizes.kind[k] == SizeTable.Kind.PIECES) {
            return Double.POSITIVE_INFINITY;
          }
          double sigma2 = sizes.variance[k] + variance(j, k);
          double d = sizes.beyond(k, length(j, k) - e, wear);
          double width = 2.0 * sizes.half[k];
          square += d * d / sigma2;
          sum -= 0.5 * Math.log(Math.max(width * width / (2.0 * Math.PI), sigma2));
        }
      }
    }
    return sum - 0.5 * square * (1.0 - ROUNDING) + ROUNDING * Math.abs(sum);
  }

  /** Where χ² of the readings by one caliper is least, as in {@link SharedError}; NaN if it is not found. */
  private double mostLikelyError(int start, int end, int k) {
    double e = 0.0;
    for (int i = 0; i < 4 + 2 * y.length; i++) {
      double pull = 0.0;
      double stiff = 1.0 / (common[start] * common[start]);
      for (int j = start; j < end; j++) {
        if (compares(j, k)) {
          double at = length(j, k) - e;
          double beyond = column[j].beyond(k, at, wear);
          if (beyond > 0.0) {
            double w = 1.0 / (column[j].variance[k] + variance(j, k));
            double signed = at > column[j].nominal[k] ? beyond : -beyond;
            pull += (signed + e) * w;
            stiff += w;
          }
        }
      }
      double next = pull / stiff;
      if (Math.abs(next - e) <= 1.0e-14 * Math.abs(next)) {
        return next;
      }
      e = next;
    }
    return Double.NaN;
  }

  /** Puts the exact value for the bound where that is within reach, the highest bound first. */
  private void workOut(List<Clue> clues, double reach, double rest) {
    boolean[] lowered = new boolean[logLikelihood.length];
    double best = Double.NEGATIVE_INFINITY;
    for (int k = 0; k < logLikelihood.length; k++) {
      best = bounded[k] ? best : Math.max(best, logLikelihood[k]);
    }
    while (true) {
      int next = -1;
      for (int k = 0; k < logLikelihood.length; k++) {
        if (bounded[k] && (next < 0 || logLikelihood[k] > logLikelihood[next])) {
          next = k;
        }
      }
      double least = Math.min(best, Math.max(best, rest) - reach);
      if (next < 0 || logLikelihood[next] < least) {
        return;
      }
      if (!lowered[next]) {
        lowered[next] = true;
        logLikelihood[next] = Math.min(logLikelihood[next], tighterBound(next, clues));
        continue;
      }
      double log = fit(next).logLikelihood() + logChance(clues, table.profiles.get(next));
      logLikelihood[next] = log;
      bounded[next] = false;
      best = Math.max(best, log);
    }
  }

  /**
   * Whether half of the sizes at least could be those of the profile. Of no other profile can a plug be a near copy.
   */
  boolean mostAgree(int k) {
    int missed = 0;
    for (int j = 0; j < y.length && 2 * missed <= compared[k]; j++) {
      missed += compares(j, k) && !agrees(j, k, 1.0) ? 1 : 0;
    }
    return 2 * missed <= compared[k];
  }

  /** How many sizes could be those of the profile, were all readings that many times as long. */
  private int agreeing(int k, double times) {
    int agree = 0;
    for (int j = 0; j < y.length; j++) {
      agree += compares(j, k) && agrees(j, k, times) ? 1 : 0;
    }
    return agree;
  }

  private boolean agrees(int j, int k, double times) {
    double d = column[j].beyond(k, times * length(j, k), wear);
    double sigma2 = column[j].variance[k] + variance(j, k) + common[j] * common[j];
    return d * d <= CHANGED_BEYOND * CHANGED_BEYOND * sigma2;
  }

  /** Whether there is a profile whose sizes all readings but one could be: only then may one of them be a slip. */
  boolean allButOneAgree() {
    for (int k = 0; k < count(); k++) {
      if (agreeing(k, 1.0) >= y.length - 1) {
        return true;
      }
    }
    return false;
  }

  /** Whether there is a profile whose sizes all readings could be, were they that many times as long. */
  boolean allAgreeIf(double times) {
    for (int k = 0; k < count(); k++) {
      if (agreeing(k, times) == y.length) {
        return true;
      }
    }
    return false;
  }

  /** The likelihood of the readings and clues, were the plug a near copy of the profile. */
  double logLikelihoodOfNearCopy(int k, int clues) {
    if (!mostAgree(k)) {
      return Double.NEGATIVE_INFINITY;
    }
    boolean normal = true;
    for (int j = 0; j < y.length; j++) {
      normal &= !compares(j, k) || column[j].isNormal(k, wear);
    }
    double log = normal ? normalCopy(k) : fit(k).logLikelihoodOfNearCopy();
    return log + clues * Math.log(Clue.BY_CHANCE);
  }

  /** The same as {@link ProfileFit#logLikelihoodOfNearCopy} for densities that are all normal. */
  private double normalCopy(int k) {
    double any = 0.0;
    double none = 0.0;
    int end;
    for (int start = 0; start < y.length; start = end) {
      end = start + sharing[start];
      double c = common[start];
      int steps = c > 0.0 && comparedBetween(start, end, k) > 1 ? SharedError.COPY_STEPS : 0;
      // a reading that shares its error with none that is compared has the error in its own scatter
      double more = steps == 0 ? c * c : 0.0;
      for (int i = 0; i <= 2 * steps; i++) {
        changed[i] = steps == 0 ? 1.0 : AT_STEP[i];
        same[i] = changed[i];
      }
      for (int j = start; j < end; j++) {
        if (compares(j, k)) {
          double variance = column[j].variance[k] + variance(j, k) + more;
          multiply(length(j, k) - column[j].nominal[k], variance, SharedError.COPY_STEP * c, steps);
        }
      }
      double sumAny = 0.0;
      double sumNone = 0.0;
      for (int i = 0; i <= 2 * steps; i++) {
        sumAny += changed[i];
        sumNone += same[i];
      }
      double width = steps == 0 ? 0.0 : LN_COPY_STEP;
      any += Math.log(sumAny) + width;
      none += Math.log(sumNone) + width;
    }
    return ProfileFit.someChanged(
        any, none, table.profiles.get(k).dimensions().size(), compared[k], y.length);
  }

  /**
   * Multiplies what is at each step of the error by the densities of a reading of a size that is the same, and of one
   * that is the same or changed. Each step of a bell is the one before times a ratio that itself changes by one factor,
   * and an exponential keeps its ratio on either side, so that neither is worked out step by step.
   *
   * <pre>
   *   f(d − h) = f(d) t,   t(d) = exp((d h − h²/2)/σ²),   t(d − h) = t(d) exp(−h²/σ²)
   * </pre>
   */
  private void multiply(double off, double variance, double step, int steps) {
    double peak = (1.0 - Assumptions.CHANGED) * INV_SQRT_TWO_PI / Math.sqrt(variance);
    double all = Assumptions.CHANGED / (2.0 * Assumptions.CHANGED_BY_MM);
    double sharp = step / variance;
    double f = peak * Math.exp(-0.5 * off * off / variance);
    double nearness = Math.exp(-Math.abs(off) / Assumptions.CHANGED_BY_MM);
    times(steps, f, all * nearness);
    if (steps == 0) {
      return;
    }
    boolean byRatio = step * sharp < WIDE * WIDE && off * off < FAR_OFF * FAR_OFF * variance;
    double up = byRatio ? Math.exp((off - 0.5 * step) * sharp) : 0.0;
    double factor = byRatio ? Math.exp(-step * sharp) : 0.0;
    double fall = Math.exp(-step / Assumptions.CHANGED_BY_MM);
    for (int side = -1; side <= 1; side += 2) {
      double ratio = side > 0 ? up : factor / up;
      double value = f;
      double near = nearness;
      double d = off;
      for (int i = 1; i <= steps; i++) {
        double before = d;
        d = off - side * i * step;
        value = byRatio ? value * ratio : peak * Math.exp(-0.5 * d * d / variance);
        ratio *= factor;
        near = before < 0.0 == d < 0.0
            ? Math.abs(d) < Math.abs(before) ? near / fall : near * fall
            : Math.exp(-Math.abs(d) / Assumptions.CHANGED_BY_MM);
        times(steps + side * i, value, all * near);
      }
    }
  }

  private void times(int at, double f, double g) {
    changed[at] *= f + g;
    same[at] *= f;
  }

  private int comparedBetween(int start, int end, int k) {
    int n = 0;
    for (int j = start; j < end; j++) {
      n += compares(j, k) ? 1 : 0;
    }
    return n;
  }

  /**
   * How often a plug from anywhere in the size class would agree with the profile in all that was read, by chance: the
   * product over the dimensions of the width in which 99 of 100 genuine plugs read over that of the size class.
   */
  double coincidence(int k) {
    double chance = 1.0;
    for (int j = 0; j < y.length; j++) {
      if (compares(j, k)) {
        double sigma2 = column[j].variance[k] + variance(j, k) + common[j] * common[j];
        double width = 2.0 * (column[j].half[k] + BAND_SIGMAS * Math.sqrt(sigma2))
            + (column[j].wearSign == 0 ? 0.0 : wear);
        chance *= width < column[j].classWidth ? width / column[j].classWidth : 1.0;
      }
    }
    return chance;
  }

  /** How many profiles there are. */
  int count() {
    return logLikelihood.length;
  }

  /**
   * The likelihood of the readings and clues, in mm to the power of minus the number of readings, or a bound where out
   * of reach.
   */
  double logLikelihood(int k) {
    return logLikelihood[k];
  }

  boolean isOutOfReach(int k) {
    return bounded[k];
  }

  /** How many readings could be compared with the profile. */
  int compared(int k) {
    return compared[k];
  }

  /** χ² of the profile; to be asked of profiles within reach. */
  double chiSquare(int k) {
    return Double.isNaN(chiSquare[k]) ? fit(k).chiSquare() : chiSquare[k];
  }

  /** Reading by reading. */
  ProfileFit fit(int k) {
    ProfileFit fit = fits[k];
    if (fit == null) {
      fit = ProfileFit.of(table.profiles.get(k), taken, wear);
      fits[k] = fit;
    }
    return fit;
  }
}
