package org.airfit.thread;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.airfit.internal.Statistics;
import org.airfit.quantity.Length;
import org.airfit.quantity.NominalThreadSize;

/**
 * One thread that readings may mean, and how well they go with it; the model is that of {@link ThreadIdentification}.
 */
final class ThreadHypothesis {

  static final List<ThreadFamily> FAMILIES = List.of(
      ThreadFamily.NPT,
      ThreadFamily.NPSC,
      ThreadFamily.NPSM,
      ThreadFamily.BSPT,
      ThreadFamily.RP,
      ThreadFamily.BSPP);

  private static final double UNKNOWN_PRIOR = 0.05;
  private static final double RARE = 0.2;
  private static final double EYE = 0.95;

  private static final double UNKNOWN_DIAMETERS_MM = 120.0;
  private static final double UNKNOWN_DIFFERENCES_MM = 3.0;
  private static final double UNKNOWN_PITCHES_MM = 3.0;
  private static final double UNKNOWN_FLANKS_DEG = 15.0;

  /** Gauging errors are summed over ± 3 standard deviations, cut crests from none to all. */
  private static final int GAUGING_NODES = 25;

  private static final int CUTTING_NODES = 7;

  /** Readings further than so many uncertainties outside all a thread may be have no chance worth computing. */
  private static final double OUT_OF_REACH = 9.0;

  /** Computed once: the threads do not change. */
  private static final Map<Gender, List<ThreadHypothesis>> ALL = new EnumMap<>(
      Map.of(Gender.MALE, hypotheses(Gender.MALE), Gender.FEMALE, hypotheses(Gender.FEMALE)));

  private final ThreadDesignation thread;
  private final double prior;
  private final double pitch;
  private final boolean tapered;

  /** Crest of the basic thread at the end [mm], and how much it grows over one turn, less than 0 inside. */
  private final double crest;

  private final double perTurn;
  private final double fullTurns;

  /**
   * The pipe itself [mm], which the crests of a male NPT meet at the end of their full length, and how many turns it is
   * met before the eye says no.
   */
  private final double pipe;

  private final double onPipeTurns;

  /** Standard deviation of the gauging error, and the most the crests are cut, less than 0 outside [mm]. */
  private final double gauging;

  private final double cut;

  /** Limits of a straight thread [mm]. */
  private final double least;

  private final double most;

  private ThreadHypothesis(ThreadDesignation designation, PipeThread thread, double prior) {
    Gender gender = designation.gender();
    this.thread = designation;
    this.prior = prior;
    this.pitch = 25.4 / thread.threadsPerInch();
    this.tapered = designation.family().isTapered();
    this.crest = thread.section(gender, Length.ofMetres(0.0)).crest(gender).millimetres();
    this.perTurn = (gender == Gender.MALE ? 1.0 : -1.0) * pitch / 16.0;
    this.fullTurns = fullThread(thread, gender).millimetres() / pitch;
    boolean cutOnPipe = gender == Gender.MALE && thread instanceof NptThread;
    this.pipe =
        cutOnPipe ? ((NptThread) thread).pipeDiameter().millimetres() : Double.POSITIVE_INFINITY;
    this.onPipeTurns = cutOnPipe ? 2.0 : 0.0;
    this.least = thread.firstCrest(gender).least().millimetres();
    this.most = thread.firstCrest(gender).most().millimetres();
    this.gauging = 0.5 * (gender == Gender.MALE ? most - crest : crest - least);
    this.cut = (gender == Gender.MALE ? -1.0 : 1.0) * thread.crestSlack().millimetres();
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

  static List<ThreadHypothesis> all(Gender gender) {
    return Objects.requireNonNull(ALL.get(gender));
  }

  private static List<ThreadHypothesis> hypotheses(Gender gender) {
    List<ThreadDesignation> threads = new ArrayList<>();
    double shares = 0.0;
    for (ThreadFamily family : FAMILIES) {
      if (family.has(gender)) {
        for (NominalThreadSize size : family.sizes()) {
          threads.add(new ThreadDesignation(family, size, gender));
          shares += share(family);
        }
      }
    }
    double all = shares;
    return threads.stream()
        .map(one -> new ThreadHypothesis(
            one, one.geometry().orElseThrow(), (1.0 - UNKNOWN_PRIOR) * share(one.family()) / all))
        .toList();
  }

  private static double share(ThreadFamily family) {
    return family == ThreadFamily.NPSC || family == ThreadFamily.NPSM || family == ThreadFamily.RP
        ? RARE
        : 1.0;
  }

  ThreadDesignation thread() {
    return thread;
  }

  double prior() {
    return prior;
  }

  /** Prior times likelihood of none of these. */
  static double unknownWeight(ThreadReadings r) {
    double weight = UNKNOWN_PRIOR / UNKNOWN_DIAMETERS_MM;
    if (r.lastCrest().isPresent()) {
      weight /= UNKNOWN_DIFFERENCES_MM;
    }
    if (r.pitch().isPresent()) {
      weight /= UNKNOWN_PITCHES_MM;
    }
    if (r.flankAngleDegrees().isPresent()) {
      weight /= UNKNOWN_FLANKS_DEG;
    }
    return r.taperSeen().isPresent() ? 0.5 * weight : weight;
  }

  double likelihood(ThreadReadings r) {
    double density = 1.0;
    if (r.pitch().isPresent()) {
      density *= normal(
          r.pitch().get().millimetres() - pitch,
          r.pitchUncertainty().orElseThrow().millimetres());
    }
    if (r.flankAngleDegrees().isPresent()) {
      density *= normal(
          r.flankAngleDegrees().getAsDouble() - thread.family().flankAngleDegrees(),
          r.flankAngleUncertaintyDegrees().orElseThrow());
    }
    if (r.taperSeen().isPresent()) {
      density *= r.taperSeen().get() == tapered ? EYE : 1.0 - EYE;
    }
    return density == 0.0 ? 0.0 : density * diameters(r);
  }

  private static double normal(double difference, double u) {
    double z = difference / u;
    return Math.exp(-0.5 * z * z - Statistics.LN_SQRT_TWO_PI) / u;
  }

  private double diameters(ThreadReadings r) {
    double u = r.diameterUncertainty().millimetres();
    double first = r.firstCrest().millimetres();
    double last = r.lastCrest().map(Length::millimetres).orElse(Double.NaN);
    double reach = 2.0 * OUT_OF_REACH * u + fullTurns * Math.abs(perTurn) + most - least;
    if (Math.abs(first - crest) > reach) {
      return 0.0;
    }
    return tapered ? onCone(first, last, u) : onCylinder(first, last, u);
  }

  private double onCylinder(double first, double last, double u) {
    if (Double.isNaN(last)) {
      return inBand(first, least, most, u);
    }
    double mean = 0.5 * (first + last);
    return normal(first - last, u * Math.sqrt(2.0)) * inBand(mean, least, most, u / Math.sqrt(2.0));
  }

  private double onCone(double first, double last, double u) {
    boolean both = !Double.isNaN(last);
    boolean inside = perTurn < 0.0;
    double lastTo = fullTurns + onPipeTurns;
    double firstTo = both ? 1.0 : inside ? 2.0 : lastTo;
    double lastFrom = inside ? 0.25 * fullTurns : fullTurns - 2.0;
    double sum = 0.0;
    double weights = 0.0;
    int cuts = cut == 0.0 ? 1 : CUTTING_NODES;
    for (int i = 0; i < GAUGING_NODES; i++) {
      double z = 3.0 * (2.0 * i / (GAUGING_NODES - 1) - 1.0);
      double weight = Math.exp(-0.5 * z * z);
      for (int j = 0; j < cuts; j++) {
        double s = z * gauging + cut * (j + 0.5) / cuts;
        double at = crest + s;
        double density = inStretch(first, at, 0.0, firstTo, u);
        if (both && density > 0.0) {
          density *= inStretch(last, at, lastFrom, lastTo, u);
        }
        sum += weight * density;
        weights += weight;
      }
    }
    return sum / weights;
  }

  /** A reading taken anywhere between two turns of a cone, or on the pipe where the cone has met it. */
  private double inStretch(double y, double start, double fromTurns, double toTurns, double u) {
    double meets =
        perTurn < 0.0 ? toTurns : Math.max(fromTurns, Math.min(toTurns, (pipe - start) / perTurn));
    double one = start + fromTurns * perTurn;
    double other = start + meets * perTurn;
    double onCone = (meets - fromTurns) / (toTurns - fromTurns);
    double density =
        onCone > 0.0 ? onCone * inBand(y, Math.min(one, other), Math.max(one, other), u) : 0.0;
    return onCone < 1.0 ? density + (1.0 - onCone) * normal(y - pipe, u) : density;
  }

  private static double inBand(double y, double low, double high, double u) {
    if (y < low - OUT_OF_REACH * u || y > high + OUT_OF_REACH * u) {
      return 0.0;
    }
    return Statistics.normalBetween((y - high) / u, (y - low) / u) / (high - low);
  }

  /**
   * How far the readings lie from this thread: diameters in millimetres, a pitch 0.05 mm away counts like a millimetre.
   */
  double distance(ThreadReadings r) {
    double first = r.firstCrest().millimetres();
    double outside = Math.max(0.0, Math.max(least - first, first - most));
    double off = r.pitch().map(read -> (read.millimetres() - pitch) / 0.05).orElse(0.0);
    return Math.hypot(outside, off);
  }
}
