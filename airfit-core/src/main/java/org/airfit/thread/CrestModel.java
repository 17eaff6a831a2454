package org.airfit.thread;

import org.airfit.internal.Statistics;
import org.airfit.quantity.Length;

/**
 * What the crests of one thread may measure, and how likely two readings of them are; the model is that of
 * {@link ThreadIdentification}.
 *
 * <p>Kernel: lengths in mm. The diameters of a taper thread change by one sixteenth of the length along the thread, of
 * a straight one not at all.
 */
final class CrestModel {

  /** This share of threads is worn, by anything up to {@link #WEAR} on the diameter: choices of this project. */
  static final double WORN = 0.1;

  static final double WEAR = 0.1;

  /** Half of the variance of a diameter is that of the caliper, which both diameters share. */
  private static final double MEAN = Math.sqrt(0.75);

  /** How often first and last crest are taken for each other. */
  private static final double ENDS_SWAPPED = 0.02;

  /** How often the only diameter of a taper thread is not taken near its end. */
  private static final double ELSEWHERE = 0.3;

  /** How often jaws as wide as {@link #JAWS} rest on the highest crest under them, and not on the first one. */
  private static final double WIDE_JAWS = 0.2;

  private static final double JAWS = 2.0;

  /** How many turns behind the last full one still look whole outside. */
  private static final double LOOK_WHOLE = 2.0;

  /** How often a female thread is deeper than its standard asks, and how much deeper it may be: choices of this project. */
  private static final double DEEPER = 0.3;

  private static final double AS_DEEP = 1.5;

  /** How often the last crest is not among the last two turns. */
  private static final double NOT_LAST = 0.25;

  /** How often a male NPT goes on as a cone where others are as large as the pipe. */
  private static final double MACHINED = 0.3;

  private static final int SHIFTS = 49;
  private static final int CUTS = 7;
  private static final int WEARS = 4;

  /** Readings further than so many uncertainties outside all a thread may be have no chance worth computing. */
  private static final double OUT_OF_REACH = 9.0;

  private final boolean tapered;

  /** +1 outside, −1 inside. */
  private final double sign;

  /** Crest of the basic thread at the end, and how much it grows over one turn, less than 0 inside. */
  private final double crest;

  private final double perTurn;
  private final double fullTurns;

  /** So many turns from the end crests may still be measured. */
  private final double reach;

  /** How many turns lie under wide jaws, one at least. */
  private final double underJaws;

  /** The pipe itself, which the crests of a male NPT meet; infinite for all others. */
  private final double pipe;

  private final double least;
  private final double most;

  /** By how much a piece is larger than basic, and how often. */
  private final double[] shifts;

  private final double[] shares;

  private CrestModel(
      boolean tapered,
      Gender gender,
      double crest,
      double pitch,
      double fullTurns,
      double pipe,
      double least,
      double most,
      double crestSlack) {
    this.tapered = tapered;
    this.sign = gender == Gender.MALE ? 1.0 : -1.0;
    this.crest = crest;
    this.perTurn = tapered ? sign * pitch / 16.0 : 0.0;
    this.fullTurns = fullTurns;
    this.reach = gender == Gender.MALE ? fullTurns + LOOK_WHOLE : AS_DEEP * fullTurns;
    this.underJaws = Math.max(1.0, JAWS / pitch);
    this.pipe = pipe;
    this.least = least;
    this.most = most;
    double gauging = gender == Gender.MALE ? most - crest : crest - least;
    this.shifts = new double[SHIFTS];
    this.shares = new double[SHIFTS];
    if (tapered) {
      share(gauging, crestSlack);
    }
  }

  static CrestModel of(PipeThread thread, Gender gender) {
    double pitch = 25.4 / thread.threadsPerInch();
    boolean cutOnPipe = gender == Gender.MALE && thread instanceof NptThread;
    return new CrestModel(
        thread.family().isTapered(),
        gender,
        thread.section(gender, Length.ofMetres(0.0)).crest(gender).millimetres(),
        pitch,
        fullThread(thread, gender).millimetres() / pitch,
        cutOnPipe ? ((NptThread) thread).pipeDiameter().millimetres() : Double.POSITIVE_INFINITY,
        thread.firstCrest(gender).least().millimetres(),
        thread.firstCrest(gender).most().millimetres(),
        thread.crestSlack().millimetres());
  }

  static CrestModel of(ForeignThread thread) {
    Limits limits = thread.crest();
    return new CrestModel(
        false,
        thread.gender(),
        limits.most().millimetres(),
        thread.pitch().millimetres(),
        1.0,
        Double.POSITIVE_INFINITY,
        limits.least().millimetres(),
        limits.most().millimetres(),
        0.0);
  }

  /** How long full crests are; of no use for a straight thread, whose crests are all alike. */
  private static Length fullThread(PipeThread thread, Gender gender) {
    if (thread instanceof NptThread npt) {
      return gender == Gender.MALE
          ? npt.fullCrestLength()
          : npt.handTightLength().plus(npt.wrenchLength());
    }
    if (thread instanceof BsptThread r) {
      return gender == Gender.MALE ? r.usefulLength() : r.leastFemaleUsefulLength();
    }
    return thread.pitch();
  }

  /** The gauging error evenly within its tolerance, with soft edges; cut and worn crests take from it. */
  private void share(double gauging, double slack) {
    double edge = gauging / 5.0;
    double from = -gauging - 3.0 * edge - slack - WEAR;
    double to = gauging + 3.0 * edge;
    double sum = 0.0;
    for (int i = 0; i < SHIFTS; i++) {
      double outward = from + (to - from) * i / (SHIFTS - 1);
      shifts[i] = sign * outward;
      shares[i] = (1.0 - WORN) * cut(outward, gauging, edge, slack);
      for (int j = 0; j < WEARS; j++) {
        shares[i] += WORN / WEARS * cut(outward + WEAR * (j + 0.5) / WEARS, gauging, edge, slack);
      }
      sum += shares[i];
    }
    for (int i = 0; i < SHIFTS; i++) {
      shares[i] /= sum;
    }
  }

  /** How often a piece is so much larger, but for a factor that is the same for all. */
  private static double cut(double outward, double gauging, double edge, double slack) {
    int cuts = slack == 0.0 ? 1 : CUTS;
    double sum = 0.0;
    for (int j = 0; j < cuts; j++) {
      double s = outward + slack * ((j + 0.5) / cuts);
      sum += Statistics.normalBetween((s - gauging) / edge, (s + gauging) / edge);
    }
    return sum;
  }

  double least() {
    return least;
  }

  double most() {
    return most;
  }

  boolean isTapered() {
    return tapered;
  }

  static double normal(double difference, double u) {
    double z = difference / u;
    return Math.exp(-0.5 * z * z - Statistics.LN_SQRT_TWO_PI) / u;
  }

  /** Density of the diameters read [1/mm, or 1/mm² for two]. */
  double density(ThreadReadings r) {
    double u = uncertaintyMm(r);
    double first = r.firstCrest().millimetres();
    double near = 2.0 * OUT_OF_REACH * u + reach * Math.abs(perTurn) + most - least;
    if (Math.abs(first - crest) > near + WEAR) {
      return 0.0;
    }
    if (r.lastCrest().isEmpty()) {
      return tapered ? onCone(first, Double.NaN, u) : worn(first, u);
    }
    double last = r.lastCrest().get().millimetres();
    if (!tapered) {
      return normal(first - last, u * Math.sqrt(2.0)) * worn(0.5 * (first + last), u * MEAN);
    }
    return (1.0 - ENDS_SWAPPED) * onCone(first, last, u) + ENDS_SWAPPED * onCone(last, first, u);
  }

  /** The uncertainty of a diameter; nobody reads finer than a nanometre. */
  static double uncertaintyMm(ThreadReadings r) {
    return Math.max(1.0e-6, r.diameterUncertainty().millimetres());
  }

  private double worn(double y, double u) {
    return (1.0 - WORN) * inBand(y, least, most, u) + WORN * inBand(y, least(WEAR), most(WEAR), u);
  }

  /** The smallest and the largest a crest may be at the end, if so much may be worn off. */
  double least(double wear) {
    return sign > 0.0 ? least - wear : least;
  }

  double most(double wear) {
    return sign > 0.0 ? most : most + wear;
  }

  private double onCone(double first, double last, double u) {
    double sum = 0.0;
    for (int i = 0; i < SHIFTS; i++) {
      if (shares[i] > 1.0e-9) {
        double at = crest + shifts[i];
        double density = Double.isNaN(last) ? alone(first, at, u) : atFirst(first, at, u);
        if (!Double.isNaN(last) && density > 0.0) {
          density *= atLast(last, at, u);
        }
        sum += shares[i] * density;
      }
    }
    return sum;
  }

  private double alone(double y, double at, double u) {
    return (1.0 - ELSEWHERE) * atFirst(y, at, u) + ELSEWHERE * inStretch(y, at, 0.0, reach, u);
  }

  private double atFirst(double y, double at, double u) {
    return (1.0 - WIDE_JAWS) * inStretch(y, at, 0.0, 1.0, u)
        + WIDE_JAWS * inStretch(y, at, 0.0, underJaws, u);
  }

  /** Inside, the last crest is the deepest that can be reached. */
  private double atLast(double y, double at, double u) {
    if (sign < 0.0) {
      double from = 0.25 * fullTurns;
      return (1.0 - DEEPER) * inStretch(y, at, from, fullTurns, u)
          + DEEPER * inStretch(y, at, from, reach, u);
    }
    return (1.0 - NOT_LAST) * outside(y, at, fullTurns - 2.0, u)
        + NOT_LAST * outside(y, at, 0.5 * fullTurns, u);
  }

  private double outside(double y, double at, double fromTurns, double u) {
    double cone = inStretch(y, at, fromTurns, reach, u);
    return pipe == Double.POSITIVE_INFINITY
        ? cone
        : MACHINED * cone + (1.0 - MACHINED) * onPipe(y, at, fromTurns, reach, u);
  }

  private double inStretch(double y, double start, double fromTurns, double toTurns, double u) {
    double one = start + fromTurns * perTurn;
    double other = start + toTurns * perTurn;
    return inBand(y, Math.min(one, other), Math.max(one, other), u);
  }

  /** A reading taken anywhere between two turns of a cone, or on the pipe where the cone has met it. */
  private double onPipe(double y, double start, double fromTurns, double toTurns, double u) {
    double meets = Math.max(fromTurns, Math.min(toTurns, (pipe - start) / perTurn));
    double onCone = (meets - fromTurns) / (toTurns - fromTurns);
    double density = onCone > 0.0 ? onCone * inStretch(y, start, fromTurns, meets, u) : 0.0;
    return onCone < 1.0 ? density + (1.0 - onCone) * normal(y - pipe, u) : density;
  }

  private static double inBand(double y, double low, double high, double u) {
    if (y < low - OUT_OF_REACH * u || y > high + OUT_OF_REACH * u) {
      return 0.0;
    }
    return Statistics.normalBetween((y - high) / u, (y - low) / u) / (high - low);
  }

  /**
   * The stretch in which the first crest may be read, within one turn of the end, worn crests included.
   */
  double[] firstAllowed() {
    double turn = Math.abs(perTurn);
    return sign > 0.0
        ? new double[] {least(WEAR), most + turn}
        : new double[] {least - turn, most(WEAR)};
  }

  /** The stretch in which a single diameter may be read anywhere on the thread. */
  double[] anywhereAllowed() {
    double along = reach * Math.abs(perTurn);
    return sign > 0.0
        ? new double[] {least(WEAR), most + along}
        : new double[] {least - along, most(WEAR)};
  }

  /** By how much the last crest may be larger than the first, less than 0 inside. */
  double[] growthAllowed() {
    double some = (sign < 0.0 ? 0.25 : 0.5) * fullTurns - 1.0;
    double one = Math.max(0.0, some) * perTurn;
    double other = reach * perTurn;
    return new double[] {Math.min(one, other), Math.max(one, other)};
  }
}
