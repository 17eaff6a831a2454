package org.airfit.thread;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import org.airfit.internal.Digits;
import org.airfit.internal.Statistics;
import org.airfit.quantity.Length;
import org.airfit.source.Source;
import org.airfit.working.Term;
import org.airfit.working.Working;

/**
 * What readings say about a male pipe thread: a ranking over NPT, R and G, and one more candidate, none of these.
 *
 * <p>A crest may lie anywhere between the full and the most truncated thread, and a reading of a taper thread anywhere within two turns of
 * its end (anywhere along it where only one diameter was read). The likelihood of a diameter is a normal error around that even
 * band; that of the pitch a normal error around the standard's pitch.
 *
 * <pre>
 *   L = (Φ((y − lo)/u) − Φ((y − hi)/u)) / (hi − lo) × φ((P − p)/u_P) / u_P
 * </pre>
 *
 * <p>None of these has a prior of 0.05 and an even density over 0 to 120 mm of diameter and 0 to 3 mm of pitch. The others share the rest
 * equally. These priors are a choice of this project.
 *
 * <p>This class is immutable and thread-safe.
 */
public final class ThreadIdentification {

  private static final double UNKNOWN_PRIOR = 0.05;
  private static final double DECIDED = 0.95;

  private final ThreadReadings readings;
  private final List<Candidate> ranking;
  private final double unknownProbability;

  /**
   * One thread the readings may mean.
   *
   * @param end the thread
   * @param probability its chance [-]
   */
  public record Candidate(End.Threaded end, double probability) {}

  /** How firmly the readings speak. */
  public enum Verdict {
    /** One thread has 95 % of the chance or more. */
    IDENTIFIED,
    /** Several threads, or none of these, share the chance. */
    AMBIGUOUS,
    /** None of these has 95 % of the chance or more. */
    NO_MATCH
  }

  private record Band(double low, double high) {}

  private record Hypothesis(End.Threaded end, double pitch, Band first, Band last) {}

  private ThreadIdentification(
      ThreadReadings readings, List<Candidate> ranking, double unknownProbability) {
    this.readings = readings;
    this.ranking = List.copyOf(ranking);
    this.unknownProbability = unknownProbability;
  }

  /**
   * Ranks what a male thread may be.
   *
   * @param readings the readings
   * @return the ranking and the verdict
   */
  public static ThreadIdentification of(ThreadReadings readings) {
    List<Hypothesis> hypotheses = hypotheses(readings.lastCrest().isPresent());
    double prior = (1.0 - UNKNOWN_PRIOR) / hypotheses.size();
    double diameters = readings.lastCrest().isPresent() ? 2.0 : 1.0;
    double unknown = UNKNOWN_PRIOR / 3.0 / Math.pow(120.0, diameters);
    double sum = unknown;
    List<Candidate> weighed = new ArrayList<>();
    for (Hypothesis hypothesis : hypotheses) {
      double weight = prior * likelihood(hypothesis, readings);
      sum += weight;
      weighed.add(new Candidate(hypothesis.end(), weight));
    }
    double total = sum;
    List<Candidate> ranking = weighed.stream()
        .map(c -> new Candidate(c.end(), c.probability() / total))
        .sorted(Comparator.comparingDouble(Candidate::probability).reversed())
        .toList();
    return new ThreadIdentification(readings, ranking, unknown / total);
  }

  private static double likelihood(Hypothesis h, ThreadReadings r) {
    double u = r.diameterUncertainty().millimetres();
    double up = r.pitchUncertainty().millimetres();
    double z = (r.pitch().millimetres() - h.pitch()) / up;
    double density = Math.exp(-0.5 * z * z - Statistics.LN_SQRT_TWO_PI) / up;
    density *= inBand(r.firstCrest().millimetres(), h.first(), u);
    if (r.lastCrest().isPresent()) {
      density *= inBand(r.lastCrest().get().millimetres(), h.last(), u);
    }
    return density;
  }

  private static double inBand(double y, Band band, double u) {
    return Statistics.normalBetween((y - band.high()) / u, (y - band.low()) / u)
        / (band.high() - band.low());
  }

  private static List<Hypothesis> hypotheses(boolean bothEnds) {
    List<Hypothesis> all = new ArrayList<>();
    for (NptThread t : NptThread.all()) {
      double small = t.firstThreadCrestDiameter().millimetres();
      double large = t.pipeDiameter().millimetres();
      double turns = 2.0 * t.pitch().millimetres() / 16.0;
      double slack = t.crestSlack().millimetres();
      all.add(new Hypothesis(
          new End.Threaded(ThreadFamily.NPT, t.size(), Gender.MALE),
          t.pitch().millimetres(),
          new Band(small - slack, bothEnds ? small + turns : large),
          new Band(large - turns - slack, large)));
    }
    for (BsptThread t : BsptThread.all()) {
      double pitch = t.pitch().millimetres();
      double small = t.section(Gender.MALE, Length.ofMetres(0.0)).major().millimetres();
      double large = t.section(Gender.MALE, t.usefulLength()).major().millimetres();
      double turn = t.pitch().millimetres() / 16.0;
      all.add(new Hypothesis(
          new End.Threaded(ThreadFamily.BSPT, t.size(), Gender.MALE),
          pitch,
          new Band(small - turn, bothEnds ? small + 2.0 * turn : large + turn),
          new Band(large - 2.0 * turn, large + turn)));
    }
    for (BsppThread t : BsppThread.all()) {
      Band parallel = new Band(
          t.maleMajorDiameter().least().millimetres(), t.majorDiameter().millimetres());
      all.add(new Hypothesis(
          new End.Threaded(ThreadFamily.BSPP, t.size(), Gender.MALE),
          t.pitch().millimetres(),
          parallel,
          parallel));
    }
    return all;
  }

  /** {@return the readings} */
  public ThreadReadings readings() {
    return readings;
  }

  /** {@return the threads, likeliest first} */
  public List<Candidate> ranking() {
    return ranking;
  }

  /** {@return the chance that it is none of these [-]} */
  public double unknownProbability() {
    return unknownProbability;
  }

  /** {@return how firmly the readings speak} */
  public Verdict verdict() {
    if (unknownProbability >= DECIDED) {
      return Verdict.NO_MATCH;
    }
    return ranking.get(0).probability() >= DECIDED ? Verdict.IDENTIFIED : Verdict.AMBIGUOUS;
  }

  /** {@return the answer in plain words, with the reading that would settle a doubt} */
  public String inWords() {
    return switch (verdict()) {
      case IDENTIFIED ->
        ranking.get(0).end().label() + " (" + percent(ranking.get(0).probability()) + ")";
      case NO_MATCH ->
        "none of the known pipe threads; the nearest in diameter is "
            + nearest().label();
      case AMBIGUOUS ->
        "ambiguous between "
            + ranking.stream()
                .filter(c -> c.probability() >= 0.01)
                .map(c -> c.end().label() + " (" + percent(c.probability()) + ")")
                .collect(Collectors.joining(", "))
            + "; "
            + (readings.lastCrest().isEmpty()
                ? "measure the crest of the last full thread, which tells taper from parallel"
                : "look at the flanks with a thread gauge: 60° is NPT, 55° is R or G");
    };
  }

  private End.Threaded nearest() {
    double wanted = readings.firstCrest().millimetres();
    return hypotheses(true).stream()
        .min(Comparator.comparingDouble(
            h -> Math.abs(0.5 * (h.first().low() + h.first().high()) - wanted)))
        .orElseThrow()
        .end();
  }

  private static String percent(double probability) {
    return Digits.significant(100.0 * probability, 3) + " %";
  }

  /** {@return how the ranking was reached} */
  public Working working() {
    Candidate best = ranking.get(0);
    Hypothesis h = hypotheses(readings.lastCrest().isPresent()).stream()
        .filter(hypothesis -> hypothesis.end().equals(best.end()))
        .findFirst()
        .orElseThrow();
    return Working.titled("Male thread from " + readings)
        .step(
            "Pitch against " + best.end().label(),
            "⟨z⟩ = (⟨P⟩ − ⟨p⟩) / ⟨u⟩",
            "⟨z⟩ = \\frac{⟨P⟩ - ⟨p⟩}{⟨u⟩}",
            List.of(
                Term.of("P", "P", readings.pitch().millimetres(), "mm", 5),
                Term.of("p", "p", h.pitch(), "mm", 5),
                Term.of("u", "u", readings.pitchUncertainty().millimetres(), "mm", 5)),
            Term.of(
                "z",
                "z",
                (readings.pitch().millimetres() - h.pitch())
                    / readings.pitchUncertainty().millimetres(),
                "",
                3),
            best.end().family().source())
        .note("First crest may lie between " + Digits.fixed(h.first().low(), 3) + " and "
            + Digits.fixed(h.first().high(), 3) + " mm, last between "
            + Digits.fixed(h.last().low(), 3) + " and " + Digits.fixed(h.last().high(), 3) + " mm.")
        .note("Answer: " + inWords() + ". None of these: " + percent(unknownProbability) + ".")
        .build();
  }

  /** {@return the standards compared} */
  public static List<Source> sources() {
    return List.of(
        ThreadFamily.NPT.source(), ThreadFamily.BSPT.source(), ThreadFamily.BSPP.source());
  }

  /** {@return the answer in plain words} */
  @Override
  public String toString() {
    return inWords();
  }
}
