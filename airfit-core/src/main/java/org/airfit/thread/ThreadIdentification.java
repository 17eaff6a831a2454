package org.airfit.thread;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import org.airfit.safety.Caution;
import org.airfit.source.Source;
import org.airfit.working.PencilCard;
import org.airfit.working.UnitSystem;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/**
 * What readings say about a thread: a ranking over the pipe threads and the foreign threads it may be, and one more
 * candidate, none of these.
 *
 * <pre>
 *   chance of i = prior of i × L of i / Σ (prior × L)
 *   L = D(y1, y2)  ×  count  ×  leaf  ×  φ((A − α)/u_A)/u_A  ×  taper as seen
 *   D = 0.98 D₀(y1, y2) + 0.02 D₀(y2, y1)
 *   D₀ = ∫ ds f(s) B(y1 | s) B(y2 | s),     B(y | s) = (Φ((y − lo − s)/u) − Φ((y − hi − s)/u)) / (hi − lo)
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
 * <tr><td>count, leaf</td>
 *     <td>likelihood of a pitch that was counted or read with a gauge, mistakes allowed for: {@link
 *     org.airfit.measure.PitchCount}, {@link org.airfit.measure.PitchGauge}</td><td>-</td></tr>
 * <tr><td>A, α, u_A</td><td>flank angle read, of the standard, uncertainty</td><td>°</td></tr>
 * </tbody>
 * </table>
 *
 * <p>Both diameters lie on one cone. Of a taper thread s is the gauging error, evenly within the tolerance, with soft
 * edges, less what the crests are cut, evenly from nothing to the most; of a straight thread all sizes within its
 * limits are equally likely, and half of the variance of a diameter is that of the caliper, which both diameters
 * share. One thread in ten is worn, by up to 0.1 mm on the diameter. The first crest is read within one turn of the
 * end, two times in ten anywhere under jaws 2 mm wide. The standards state the least length; two turns more still look
 * whole outside, and a female thread is three times in ten up to half as deep again. The last crest is read from two
 * turns before the end of the full thread on, one time in four from its middle on (of a female thread from a quarter
 * of its depth on); a single diameter of a taper thread comes three times in ten from anywhere along it. Seven male
 * NPT in ten measure as much as the pipe where their cone meets it. First and last diameter are swapped two times in a
 * hundred, outside and inside one time. The eye is right about a taper 19 times in 20.
 *
 * <p>None of these has a prior of 0.05 and even densities: 0 to 120 mm of diameter, 0 to 3 mm of pitch, 50° to 65° of
 * flank angle; half of the unknown threads are parallel, the diameters of the others differ by anything up to 3 mm.
 * NPT, R, Rc and G share the rest equally; NPSC and NPSM are met less often and weigh a fifth, Rp an eighth, a foreign
 * thread of ports, flares and hoses three tenths, any other a tenth. All these numbers are choices of this project,
 * not data.
 *
 * <p>A chance alone identifies nothing. The verdict <b>identified</b>, or <b>foreign</b>, asks for three things: the
 * chance; a pitch counted over five pitches or more, or two evidences of it that agree; and that every reading fits the
 * thread as it was taken, a measured pitch within two of its standard uncertainties, see {@link #verdict()}.
 *
 * <p>A leaf alone does not identify, a counted pitch does:
 *
 * <pre>{@code
 * import org.airfit.quantity.Length;
 * import org.airfit.thread.ThreadIdentification;
 * import org.airfit.thread.ThreadReadings;
 *
 * class CountedPitch {
 *   public static void main(String[] args) {
 *     ThreadReadings crests =
 *         ThreadReadings.ofMale(Length.parse("13.25 mm")).withLastCrest(Length.parse("13.71 mm"));
 *     ThreadIdentification counted =
 *         ThreadIdentification.of(crests.withPitches(Length.parse("7.06 mm"), 5));
 *     System.out.println(ThreadIdentification.of(crests).verdict()); // AMBIGUOUS
 *     System.out.println(counted.verdict() + ": " + counted.identified().orElseThrow());
 *     // IDENTIFIED: 1/4 NPT male
 *   }
 * }
 * }</pre>
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class ThreadIdentification implements Worked {

  private final ThreadRanking ranking;

  /** A reading that would settle a doubt. */
  public enum SettlingReading {
    /** A pitch, or one over more threads. */
    PITCH("count five pitches or more and measure the length over them, which tells the pitch"),
    /** The pitch once more, because what was read does not agree. */
    PITCH_AGAIN("read the pitch again: it does not agree with the likeliest thread"),
    /** The pitch once more, and closer, because it lies at the edge of what the likeliest thread allows. */
    PITCH_CLOSER(
        "measure the length over the pitches again, over as many as you can: it lies farther off the"
            + " likeliest thread than 95 of 100 good readings do"),
    /** The diameter of the first full thread once more. */
    FIRST_CREST("measure the first full thread at the open end again"),
    /** The crest of the last full thread. */
    LAST_CREST("measure the crest of the last full thread, which tells taper from parallel"),
    /** The angle between the flanks. */
    FLANK_ANGLE("look at the flanks with a thread gauge: 60° is NPT, NPSC, NPSM, metric or "
        + "unified, 55° is R, Rp or G"),
    /** The side once more, where threads of both are left. */
    SIDE(
        "look again whether it is a male or a female thread: a male one is measured over its crests, "
            + "a female one between them"),
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

  private ThreadIdentification(ThreadRanking ranking) {
    this.ranking = ranking;
  }

  /**
   * Ranks what a thread may be.
   *
   * @param readings the readings of a male or a female thread
   * @return the candidates and the verdict
   */
  public static ThreadIdentification of(ThreadReadings readings) {
    Objects.requireNonNull(readings, "readings");
    return new ThreadIdentification(ThreadRanking.of(readings));
  }

  /** {@return the readings} */
  public ThreadReadings readings() {
    return ranking.readings();
  }

  /**
   * {@return the pipe threads and the foreign threads, likeliest first; also those of the other gender, because outside
   * and inside are at times swapped}
   */
  public List<ThreadCandidate> candidates() {
    return ranking.candidates();
  }

  /** {@return the chance that it is none of these [-]} */
  public double unknownProbability() {
    return ranking.unknownProbability();
  }

  /**
   * Says how firmly the readings speak.
   *
   * <p>Firm (identified or foreign): the likeliest thread has a chance of 95 % or more; five pitches or more were
   * counted, or two evidences of the pitch agree; and every reading fits that thread within the limits that {@link
   * #working} states, a measured pitch within two of its standard uncertainties. The evidences are a count of three
   * or four, a leaf, a pitch read otherwise to 2 %, and two diameters that alone leave 95 % to threads of one pitch;
   * two diameters alone are never firm. No match: none of these has 95 % or more, or each thread with a chance would
   * take a slip to fit, see {@link #explanations}.
   *
   * @return the verdict
   */
  public ThreadVerdict verdict() {
    return ranking.verdict();
  }

  /**
   * {@return which threads would fit if one slip had been made, likeliest first, at most three; empty for a firm
   * answer}
   */
  public List<SlipCandidate> explanations() {
    return ranking.explanations();
  }

  /** {@return the readings that would settle an ambiguous answer, the easiest first; empty for any other answer} */
  public List<SettlingReading> settlingReadings() {
    if (verdict() != ThreadVerdict.AMBIGUOUS) {
      return List.of();
    }
    ThreadReadings readings = readings();
    ThreadHypothesis best = ranking.best();
    List<NamedThread> threads =
        ranking.contenders().stream().map(ThreadCandidate::thread).toList();
    Set<SettlingReading> wanted = EnumSet.noneOf(SettlingReading.class);
    if (!ranking.pitchIsSure() || differ(threads, NamedThread::threadsPerInch)) {
      wanted.add(SettlingReading.PITCH);
    }
    if (readings.pitch().isPresent() && !ThreadFit.pitchesAgree(best, readings)) {
      wanted.add(SettlingReading.PITCH_AGAIN);
    } else if (!ThreadFit.pitchIsClose(best, readings)) {
      wanted.add(SettlingReading.PITCH_CLOSER);
    }
    if (!ThreadFit.firstFits(best, readings)) {
      wanted.add(SettlingReading.FIRST_CREST);
    }
    if (readings.lastCrest().isEmpty() && threads.stream().anyMatch(NamedThread::isTapered)) {
      wanted.add(SettlingReading.LAST_CREST);
    }
    if (readings.flankAngleDegrees().isEmpty() && differ(threads, NamedThread::flankAngleDegrees)) {
      wanted.add(SettlingReading.FLANK_ANGLE);
    }
    if (wanted.isEmpty()) {
      boolean oneSide = threads.stream().allMatch(each -> each.gender() == readings.gender());
      wanted.add(oneSide ? SettlingReading.CLOSER_DIAMETER : SettlingReading.SIDE);
    }
    return List.copyOf(wanted);
  }

  /** Whether a property differs by more than the rounding of a standard. */
  private static boolean differ(List<NamedThread> threads, ToDoubleFunction<NamedThread> property) {
    double first = threads.isEmpty() ? 0.0 : property.applyAsDouble(threads.get(0));
    return threads.stream()
        .anyMatch(thread -> Math.abs(property.applyAsDouble(thread) / first - 1.0) > 0.005);
  }

  /** {@return the pipe thread nearest to the readings, for the case that none matches} */
  public ThreadDesignation nearest() {
    return ranking.nearest();
  }

  /** {@return the answer in plain words, with the reading that would settle a doubt} */
  public String inWords() {
    return inWords(UnitSystem.SI);
  }

  /**
   * Tells the same with lengths in millimetres or inches.
   *
   * @param units the units
   * @return the answer in plain words
   */
  public String inWords(UnitSystem units) {
    return ThreadWords.of(
        ranking,
        settlingReadings().stream().map(SettlingReading::request).toList(),
        Objects.requireNonNull(units, "units"));
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
    return ThreadWorking.of(ranking, inWords(units), units);
  }

  /**
   * Obtains the comparisons behind the answer on one page for a pencil: each reading against the limits of the threads
   * it may belong to, rounded so that every comparison turns out as with exact numbers, and which threads are left.
   *
   * <p>The chances stand there in words only. What {@link #cautions} says goes with the card too.
   *
   * @param units the units to show numbers in
   * @return the card; it answers in words
   */
  public PencilCard pencilCard(UnitSystem units) {
    return ThreadCard.of(ranking, inWords(units), units);
  }

  /** {@return the standards compared: of the pipe threads, then of the foreign ones} */
  public static List<Source> sources() {
    List<Source> sources = new ArrayList<>();
    ThreadHypothesis.FAMILIES.forEach(family -> sources.add(family.source()));
    for (ForeignStandard standard : ForeignStandard.values()) {
      sources.add(standard.source());
    }
    return List.copyOf(sources);
  }

  /** {@return the pipe thread, if one was identified} */
  public Optional<ThreadDesignation> identified() {
    return verdict() == ThreadVerdict.IDENTIFIED
        ? candidates().get(0).pipeThread()
        : Optional.empty();
  }

  /** {@return the foreign thread, if the verdict is that it is one} */
  public Optional<ForeignThread> foreign() {
    return ranking.foreign();
  }

  /** Equal readings have equal answers. */
  @Override
  public boolean equals(Object other) {
    return other instanceof ThreadIdentification that && readings().equals(that.readings());
  }

  @Override
  public int hashCode() {
    return readings().hashCode();
  }

  /** {@return the answer in plain words} */
  @Override
  public String toString() {
    return inWords();
  }
}
