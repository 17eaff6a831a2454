package org.airfit.thread;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.airfit.measure.PitchCount;
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
  private static final double RARE_PARALLEL = 0.125;
  private static final double FOREIGN_PORT = 0.3;
  private static final double FOREIGN = 0.1;

  /** How often somebody says outside and means inside. */
  private static final double GENDER_SLIP = 0.01;

  private static final double EYE = 0.95;

  private static final double UNKNOWN_DIAMETERS_MM = 120.0;
  private static final double UNKNOWN_DIFFERENCES_MM = 3.0;
  private static final double UNKNOWN_PITCHES_MM = 3.0;
  private static final double UNKNOWN_FLANKS_DEG = 15.0;

  /** How often two ways of reading one pitch have nothing to do with each other. */
  private static final double DISAGREE = 1.0e-6;

  /** Computed once: the threads do not change. */
  private static final Map<Gender, List<ThreadHypothesis>> ALL = new EnumMap<>(
      Map.of(Gender.MALE, hypotheses(Gender.MALE), Gender.FEMALE, hypotheses(Gender.FEMALE)));

  private final NamedThread thread;
  private final double prior;
  private final double pitch;
  private final CrestModel crests;

  private ThreadHypothesis(NamedThread thread, CrestModel crests, double prior) {
    this.thread = thread;
    this.prior = prior;
    this.pitch = thread.pitch().millimetres();
    this.crests = crests;
  }

  static List<ThreadHypothesis> all(Gender gender) {
    return Objects.requireNonNull(ALL.get(gender));
  }

  private static List<ThreadHypothesis> hypotheses(Gender gender) {
    List<NamedThread> threads = new ArrayList<>();
    List<CrestModel> crests = new ArrayList<>();
    List<Double> shares = new ArrayList<>();
    for (ThreadFamily family : FAMILIES) {
      if (family.has(gender)) {
        for (NominalThreadSize size : family.sizes()) {
          ThreadDesignation thread = new ThreadDesignation(family, size, gender);
          threads.add(thread);
          crests.add(CrestModel.of(thread.geometry().orElseThrow(), gender));
          shares.add(share(family));
        }
      }
    }
    for (ForeignGeometry geometry : ForeignThreads.all()) {
      ForeignThread thread = new ForeignThread(geometry, gender);
      threads.add(thread);
      crests.add(CrestModel.of(thread));
      shares.add(geometry.isPort() ? FOREIGN_PORT : FOREIGN);
    }
    double all = shares.stream().mapToDouble(Double::doubleValue).sum();
    List<ThreadHypothesis> hypotheses = new ArrayList<>();
    for (int i = 0; i < threads.size(); i++) {
      hypotheses.add(new ThreadHypothesis(
          threads.get(i), crests.get(i), (1.0 - UNKNOWN_PRIOR) * shares.get(i) / all));
    }
    return List.copyOf(hypotheses);
  }

  private static double share(ThreadFamily family) {
    return switch (family) {
      case NPSC, NPSM -> RARE;
      case RP -> RARE_PARALLEL;
      default -> 1.0;
    };
  }

  NamedThread thread() {
    return thread;
  }

  CrestModel crests() {
    return crests;
  }

  double pitch() {
    return pitch;
  }

  /** Prior times likelihood; a thread of the other gender than said is a slip of whoever said it. */
  double weight(ThreadReadings r) {
    double slip = thread.gender() == r.gender() ? 1.0 - GENDER_SLIP : GENDER_SLIP;
    return slip * prior * likelihood(r);
  }

  /** Prior times likelihood of none of these. */
  static double unknownWeight(ThreadReadings r) {
    double u = CrestModel.uncertaintyMm(r);
    double weight = UNKNOWN_PRIOR / UNKNOWN_DIAMETERS_MM;
    if (r.lastCrest().isPresent()) {
      // half of the unknown ones are parallel, the others differ by anything
      double apart = r.lastCrest().get().millimetres() - r.firstCrest().millimetres();
      weight *= 0.5 * CrestModel.normal(apart, u * Math.sqrt(2.0)) + 0.5 / UNKNOWN_DIFFERENCES_MM;
    }
    ThreadReadings.Pitches read = r.pitches();
    Length known = null;
    if (read.count() != null) {
      known = read.count().pitch();
      weight *= flat(read.count().pitchUncertainty());
    }
    ThreadReadings.Pitch other = read.other();
    if (other != null) {
      weight *= known == null
          ? flat(other.uncertainty())
          : bell(other.read().millimetres() - known.millimetres(), other.uncertainty()) + DISAGREE;
      known = other.read();
    }
    ThreadReadings.Leaf leaf = read.leaf();
    if (leaf != null) {
      weight *= known == null
          ? 1.0 / leaf.gauge().leaves().size()
          : leaf.gauge().chance(leaf.pitch(), known, leaf.misread()) + DISAGREE;
    }
    if (r.flankAngleDegrees().isPresent()) {
      weight /= UNKNOWN_FLANKS_DEG;
    }
    double seen = r.taperSeen().isPresent() ? 0.5 * weight : weight;
    return Math.max(seen, Double.MIN_NORMAL);
  }

  /** An even density of pitches, over the peak of a reading with uncertainty {@code u}. */
  private static double flat(Length u) {
    return u.millimetres() * Math.sqrt(2.0 * Math.PI) / UNKNOWN_PITCHES_MM;
  }

  private static double bell(double differenceMm, Length u) {
    double z = differenceMm / u.millimetres();
    return Math.exp(-0.5 * z * z);
  }

  double likelihood(ThreadReadings r) {
    double density = pitchLikelihood(r.pitches());
    if (r.flankAngleDegrees().isPresent()) {
      density *= CrestModel.normal(
          r.flankAngleDegrees().getAsDouble() - thread.flankAngleDegrees(),
          r.flankAngleUncertaintyDegrees().orElseThrow());
    }
    if (r.taperSeen().isPresent()) {
      density *= r.taperSeen().get() == thread.isTapered() ? EYE : 1.0 - EYE;
    }
    return density < 1.0e-40 ? 0.0 : density * crests.density(r);
  }

  private double pitchLikelihood(ThreadReadings.Pitches read) {
    double likelihood = 1.0;
    PitchCount count = read.count();
    if (count != null) {
      likelihood *= count.likelihood(thread.pitch());
    }
    ThreadReadings.Pitch other = read.other();
    if (other != null) {
      likelihood *= bell(other.read().millimetres() - pitch, other.uncertainty());
    }
    ThreadReadings.Leaf leaf = read.leaf();
    if (leaf != null && likelihood > 1.0e-40) {
      likelihood *= leaf.gauge().chance(leaf.pitch(), thread.pitch(), leaf.misread());
    }
    return likelihood;
  }

  /**
   * How far the readings lie from this thread: diameters in millimetres, a pitch 0.05 mm away counts like a millimetre.
   */
  double distance(ThreadReadings r) {
    double off = r.pitch().map(read -> (read.millimetres() - pitch) / 0.05).orElse(0.0);
    return Math.hypot(outside(r), off);
  }

  /** How far the first crest lies outside what this thread allows [mm]. */
  double outside(ThreadReadings r) {
    double first = r.firstCrest().millimetres();
    return Math.max(0.0, Math.max(crests.least() - first, first - crests.most()));
  }
}
