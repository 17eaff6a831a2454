package org.airfit.thread;

import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.airfit.internal.Digits;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.safety.Caution;
import org.airfit.source.Source;
import org.airfit.working.Formula;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/**
 * What readings say about a pipe thread: a ranking over the threads it may be, and one more candidate, none of these.
 *
 * <pre>
 *   chance of i = prior of i × L of i / Σ (prior × L)
 *   L = ∫ ds f(s) B(y1 | s) B(y2 | s)  ×  φ((P − p)/u_P)/u_P  ×  φ((A − α)/u_A)/u_A  ×  taper as seen
 *   B(y | s) = (Φ((y − lo − s)/u) − Φ((y − hi − s)/u)) / (hi − lo)
 * </pre>
 *
 * <table class="striped">
 * <caption>Symbols</caption>
 * <thead><tr><th>symbol</th><th>meaning</th><th>unit</th></tr></thead>
 * <tbody>
 * <tr><td>y1, y2, u</td><td>first and last crest as read, uncertainty of a diameter</td><td>mm</td></tr>
 * <tr><td>s, f</td><td>by how much this piece is larger than basic on all its crests, and how often that is</td>
 *     <td>mm</td></tr>
 * <tr><td>lo, hi</td><td>crest of the basic thread at the ends of the stretch where the reading may have been
 *     taken</td><td>mm</td></tr>
 * <tr><td>P, p, u_P</td><td>pitch read, pitch of the standard, uncertainty</td><td>mm</td></tr>
 * <tr><td>A, α, u_A</td><td>flank angle read, of the standard, uncertainty</td><td>°</td></tr>
 * </tbody>
 * </table>
 *
 * <p>Both diameters lie on one cone. Of a taper thread s is the gauging error, normal with the tolerance as two
 * standard deviations, less what the crests are cut, evenly from nothing to the most; of a straight thread all sizes
 * within its limits are equally likely. The first crest is read within one turn of the end, the last one within two
 * turns of the end of the full thread (of a female thread anywhere in its deeper three quarters); a single diameter of
 * a male taper thread may come from anywhere along it. The crests of a male NPT meet the pipe where their full length
 * ends, and the next two turns, which still look whole, measure as much as the pipe. The eye is right about a taper 19
 * times in 20.
 *
 * <p>None of these has a prior of 0.05 and even densities: 0 to 120 mm of diameter, 3 mm of difference between the
 * diameters, 0 to 3 mm of pitch, 50° to 65° of flank angle. NPT, R, Rc and G share the rest equally; NPSC, NPSM and Rp
 * are met less often and weigh a fifth. These numbers are choices of this project, not data.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class ThreadIdentification implements Worked {

  private static final double DECIDED = 0.95;
  private static final double CONTENDER = 0.01;

  private static final Symbol PITCH_READ = Symbol.of("P", ValueKind.SMALL_LENGTH);
  private static final Symbol PITCH = Symbol.of("p", ValueKind.SMALL_LENGTH);
  private static final Symbol UNCERTAINTY = Symbol.of("u", ValueKind.SMALL_LENGTH);
  private static final Symbol WEIGHT = Symbol.of("w", ValueKind.NUMBER);
  private static final Symbol EVIDENCE = Symbol.of("s", "\\Sigma", ValueKind.NUMBER);
  private static final Formula DEVIATION = Formula.of(
      "Pitch against the standard",
      "⟨z⟩ = (⟨P⟩ − ⟨p⟩) / ⟨u⟩",
      ThreadFamily.NPT.source(),
      Symbol.of("z", ValueKind.NUMBER),
      PITCH_READ,
      PITCH,
      UNCERTAINTY);
  private static final Formula CHANCE = Formula.of(
      "Chance of the likeliest",
      "⟨c⟩ = ⟨w⟩ / ⟨s⟩",
      Source.derived("Bayes' rule over all pipe threads of this gender; priors of this project"),
      Symbol.of("c", ValueKind.NUMBER),
      WEIGHT,
      EVIDENCE);

  private final ThreadReadings readings;
  private final List<ThreadCandidate> candidates;
  private final double unknownProbability;
  private final double evidence;

  /** A reading that would settle a doubt. */
  public enum SettlingReading {
    /** A pitch, or one over more threads. */
    PITCH("measure the length over as many threads as there are, which tells the pitch"),
    /** The crest of the last full thread. */
    LAST_CREST("measure the crest of the last full thread, which tells taper from parallel"),
    /** The angle between the flanks. */
    FLANK_ANGLE(
        "look at the flanks with a thread gauge: 60° is NPT, NPSC or NPSM, 55° is R, Rp or G"),
    /** The first diameter once more, and closer. */
    CLOSER_DIAMETER("measure the first diameter several times with a micrometer or plug gauges");

    private final String request;

    SettlingReading(String request) {
      this.request = request;
    }

    /** {@return what to do and what it tells} */
    public String request() {
      return request;
    }
  }

  private ThreadIdentification(
      ThreadReadings readings,
      List<ThreadCandidate> candidates,
      double unknownProbability,
      double evidence) {
    this.readings = readings;
    this.candidates = List.copyOf(candidates);
    this.unknownProbability = unknownProbability;
    this.evidence = evidence;
  }

  /**
   * Ranks what a thread may be.
   *
   * @param readings the readings of a male or a female thread
   * @return the candidates and the verdict
   */
  public static ThreadIdentification of(ThreadReadings readings) {
    Objects.requireNonNull(readings, "readings");
    double unknown = ThreadHypothesis.unknownWeight(readings);
    double sum = unknown;
    List<ThreadHypothesis> hypotheses = ThreadHypothesis.all(readings.gender());
    double[] weights = new double[hypotheses.size()];
    for (int i = 0; i < weights.length; i++) {
      ThreadHypothesis hypothesis = hypotheses.get(i);
      weights[i] = hypothesis.prior() * hypothesis.likelihood(readings);
      sum += weights[i];
    }
    double total = sum;
    List<ThreadCandidate> candidates = IntStream.range(0, weights.length)
        .mapToObj(i -> new ThreadCandidate(hypotheses.get(i).thread(), weights[i] / total))
        .sorted(Comparator.comparingDouble(ThreadCandidate::probability).reversed())
        .toList();
    return new ThreadIdentification(readings, candidates, unknown / total, total);
  }

  /** {@return the readings} */
  public ThreadReadings readings() {
    return readings;
  }

  /** {@return the threads, likeliest first} */
  public List<ThreadCandidate> candidates() {
    return candidates;
  }

  /** {@return the chance that it is none of these [-]} */
  public double unknownProbability() {
    return unknownProbability;
  }

  /** {@return how firmly the readings speak} */
  public ThreadVerdict verdict() {
    if (unknownProbability >= DECIDED) {
      return ThreadVerdict.NO_MATCH;
    }
    return candidates.get(0).probability() >= DECIDED
        ? ThreadVerdict.IDENTIFIED
        : ThreadVerdict.AMBIGUOUS;
  }

  private List<ThreadCandidate> contenders() {
    return candidates.stream().filter(c -> c.probability() >= CONTENDER).toList();
  }

  /** {@return the readings that would settle an ambiguous answer, the easiest first; empty for any other answer} */
  public List<SettlingReading> settlingReadings() {
    if (verdict() != ThreadVerdict.AMBIGUOUS) {
      return List.of();
    }
    List<ThreadDesignation> threads =
        contenders().stream().map(ThreadCandidate::thread).toList();
    Set<SettlingReading> wanted = EnumSet.noneOf(SettlingReading.class);
    if (readings.pitch().isEmpty() || differ(threads, ThreadDesignation::threadsPerInch)) {
      wanted.add(SettlingReading.PITCH);
    }
    if (readings.lastCrest().isEmpty()
        && threads.stream().anyMatch(thread -> thread.family().isTapered())) {
      wanted.add(SettlingReading.LAST_CREST);
    }
    if (readings.flankAngleDegrees().isEmpty()
        && differ(threads, thread -> thread.family().form())) {
      wanted.add(SettlingReading.FLANK_ANGLE);
    }
    if (wanted.isEmpty()) {
      wanted.add(SettlingReading.CLOSER_DIAMETER);
    }
    return List.copyOf(wanted);
  }

  private static <T> boolean differ(
      List<ThreadDesignation> threads, Function<ThreadDesignation, T> property) {
    return threads.stream().map(property).distinct().count() > 1;
  }

  private static PipeThread geometry(ThreadDesignation thread) {
    return thread.geometry().orElseThrow();
  }

  /** {@return the thread nearest to the readings, for the case that none matches} */
  public ThreadDesignation nearest() {
    return ThreadHypothesis.all(readings.gender()).stream()
        .min(Comparator.comparingDouble(hypothesis -> hypothesis.distance(readings)))
        .orElseThrow()
        .thread();
  }

  /** {@return the answer in plain words, with the reading that would settle a doubt} */
  public String inWords() {
    return switch (verdict()) {
      case IDENTIFIED ->
        candidates.get(0).thread().label() + " (" + percent(candidates.get(0).probability()) + ")";
      case NO_MATCH ->
        "none of the known pipe threads; the nearest is " + nearest().label() + ", which has "
            + nearestMeasures();
      case AMBIGUOUS ->
        "ambiguous between "
            + contenders().stream()
                .map(c -> c.thread().label() + " (" + percent(c.probability()) + ")")
                .collect(Collectors.joining(", "))
            + (unknownProbability >= CONTENDER
                ? " and none of these (" + percent(unknownProbability) + ")"
                : "")
            + "; "
            + settlingReadings().stream()
                .map(SettlingReading::request)
                .collect(Collectors.joining("; "));
    };
  }

  private String nearestMeasures() {
    ThreadDesignation thread = nearest();
    return Digits.plain(thread.threadsPerInch()) + " threads per inch and a first crest of "
        + geometry(thread).firstCrest(thread.gender());
  }

  private static String percent(double probability) {
    return probability > 0.9995
        ? Digits.percent(probability)
        : Digits.significant(100.0 * probability, 3) + " %";
  }

  /** {@return the warnings that go with this answer} */
  public List<Caution> cautions() {
    if (verdict() == ThreadVerdict.IDENTIFIED) {
      return List.of();
    }
    return List.of(new Caution(
        "Do not try it under pressure",
        "A thread that is not known must not be put under pressure with one that seems to fit: threads of two "
            + "standards can run in, hold for a"
            + " while and come apart.",
        Source.handbook("article on thread compatibility; geometry of the standards")));
  }

  /**
   * Tells how the ranking was reached: the leading thread against the readings, step by step.
   *
   * @param units the units to show numbers in
   */
  @Override
  public Working working(UnitSystem units) {
    LengthUnit unit = units.smallLengthUnit();
    int decimals = units.either(2, 4);
    ThreadCandidate best = candidates.get(0);
    String label = best.thread().label();
    PipeThread thread = geometry(best.thread());
    Working.Builder out = Working.titled(
        (readings.gender() == Gender.MALE ? "Male" : "Female") + " thread from "
            + readings.inWords(units),
        units);
    readings.pitch().ifPresent(read -> {
      double u = readings.pitchUncertainty().orElseThrow().metres();
      double standard = Length.ofMillimetres(25.4 / thread.threadsPerInch()).metres();
      out.given(PITCH_READ, read.metres(), 5)
          .given(PITCH, standard, 5)
          .given(UNCERTAINTY, u, 5)
          .step(
              DEVIATION
                  .named("Pitch against " + label)
                  .from(best.thread().family().source()),
              (read.metres() - standard) / u,
              2);
    });
    out.note("The first crest of " + label + " may measure "
        + thread.firstCrest(readings.gender()).format(unit) + ", basic "
        + thread
            .section(readings.gender(), Length.ofMetres(0.0))
            .crest(readings.gender())
            .format(unit, units.either(3, 4))
        + "; read " + readings.firstCrest().format(unit, decimals) + ".");
    readings
        .lastCrest()
        .ifPresent(last -> out.note("The last crest differs from the first by "
            + Digits.fixed(last.in(unit) - readings.firstCrest().in(unit), decimals) + " "
            + unit.symbol() + "; a taper thread grows 1 " + unit.symbol() + " on 16."));
    out.given(WEIGHT, best.probability() * evidence, 5)
        .given(EVIDENCE, evidence, 5)
        .step(CHANCE.named("Chance of " + label), best.probability(), 3)
        .note("Answer: " + inWords() + ". None of these: " + percent(unknownProbability) + ".");
    return readings.pitch().isPresent()
        ? out.answer(DEVIATION.result(), CHANCE.result()).build()
        : out.answer(CHANCE.result()).build();
  }

  /** {@return the standards compared} */
  public static List<Source> sources() {
    return ThreadHypothesis.FAMILIES.stream().map(ThreadFamily::source).toList();
  }

  /** {@return the likeliest thread, if one was identified} */
  public Optional<ThreadDesignation> identified() {
    return verdict() == ThreadVerdict.IDENTIFIED
        ? Optional.of(candidates.get(0).thread())
        : Optional.empty();
  }

  /** Equal readings have equal answers. */
  @Override
  public boolean equals(Object other) {
    return other instanceof ThreadIdentification that && readings.equals(that.readings);
  }

  @Override
  public int hashCode() {
    return readings.hashCode();
  }

  /** {@return the answer in plain words} */
  @Override
  public String toString() {
    return inWords();
  }
}
