package org.airfit.run;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.airfit.internal.Later;
import org.airfit.quantity.GaugePressure;
import org.airfit.safety.Caution;
import org.airfit.source.Source;
import org.airfit.working.UnitSystem;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/**
 * What gauges on a run say: which explanations there are, how probable each is, and what to read next.
 *
 * <p>An explanation is named firmly ({@link DiagnosisVerdict#FOUND}) where it is at least 99 % probable, readings fit
 * it as badly in at least 5 of 100 cases, and nothing else contradicts the readings: these bounds are our choice. How
 * often such an answer is right was tried in a simulation that draws from another model; its table is in
 * docs/reliability.md. Two faults at once are outside of what is judged, and mostly end as {@link
 * DiagnosisVerdict#SEVERAL} or {@link DiagnosisVerdict#NONE_FITS}.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class Diagnosis implements Worked {

  private static final double FIRM = 0.99;
  private static final double FITS = 0.05;
  private static final double MORE_LIKELY_THAN_NOT = 0.5;
  private static final double NOT_RULED_OUT = 0.05;
  private static final double CONSIDERED = 0.01;

  private static final Caution VENT = new Caution(
      "Let the pressure out first",
      "Before a gauge, a tee or a part is put in or taken out, shut the supply off, let the air out"
          + " and see that the pressure is gone. Fit gauges and tees that are rated for the highest pressure of the"
          + " supply. Follow the local codes and the rules of the site; whoever works on a fixed line must be"
          + " allowed to.",
      Source.commonPractice("pressure is let out before a line is opened"));

  private static final Caution RUNNING = new Caution(
      "Readings while the tool runs",
      "Hold the tool as its maker says, at its usual work and within its rated pressure, with the"
          + " guards on; nobody else stands near the hose.",
      Source.commonPractice("a tool under test is handled as one at work"));

  private record Found(
      List<Explanation> explanations,
      List<Contradiction> contradictions,
      Later<Optional<NextGaugeReading>> next) {}

  private final GaugeModel model;
  private final List<GaugeReading> readings;
  private final double[] asTold; // what would be shown where all is as told [Pa]
  private final Found found;

  private Diagnosis(GaugeModel model, List<GaugeReading> readings, double[] asTold, Found found) {
    this.model = model;
    this.readings = readings;
    this.asTold = asTold;
    this.found = found;
  }

  static Diagnosis of(GaugeModel model, List<GaugeReading> readings) {
    GaugeJudge judge = new GaugeJudge(model, readings);
    return new Diagnosis(
        model,
        readings,
        judge.asTold(),
        new Found(judge.explanations(), judge.contradictions(), Later.of(judge::next)));
  }

  /**
   * {@return what each reading would show where all is as told, or of an unmarked element where its value fits best, in
   * the order of the readings}
   */
  public List<GaugePressure> expectedAsTold() {
    return Arrays.stream(asTold).mapToObj(GaugePressure::ofPascals).toList();
  }

  /** {@return the readings that were judged} */
  public List<GaugeReading> readings() {
    return readings;
  }

  /** {@return all explanations, the most probable first; something else is always one} */
  public List<Explanation> explanations() {
    return found.explanations;
  }

  /** {@return readings that cannot be right together; empty where all agree with physics} */
  public List<Contradiction> contradictions() {
    return found.contradictions;
  }

  /** {@return the answer in one word of a fixed list} */
  public DiagnosisVerdict verdict() {
    Explanation best = found.explanations.get(0);
    SuspectKind kind = best.suspect().kind();
    boolean isFirm = best.probability() >= FIRM
        && best.fit().isPresent()
        && best.fit().getAsDouble() >= FITS
        && (kind != SuspectKind.GAUGE || isReadAmongOthers(best.suspect().place()));
    boolean contradicts = !found.contradictions.isEmpty();
    if (contradicts && !(isFirm && (kind == SuspectKind.GAUGE || kind == SuspectKind.LEAK))) {
      return DiagnosisVerdict.CONTRADICTED;
    }
    if (kind == SuspectKind.OTHER || nothingFits()) {
      return DiagnosisVerdict.NONE_FITS;
    }
    if (isFirm && kind != SuspectKind.NOTHING) {
      return DiagnosisVerdict.FOUND;
    }
    if (isBase(best) && best.probability() >= MORE_LIKELY_THAN_NOT) {
      return DiagnosisVerdict.AS_TOLD;
    }
    return notRuledOut().size() > 1 ? DiagnosisVerdict.SEVERAL : DiagnosisVerdict.LIKELY;
  }

  /**
   * Whether a gauge was read at a place of another gauge, or on both sides of one. Otherwise a valve that sticks between
   * the two looks as if one of them were wrong.
   */
  private boolean isReadAmongOthers(String gauge) {
    int least = Integer.MAX_VALUE;
    int most = Integer.MIN_VALUE;
    for (GaugeReading reading : readings) {
      if (reading.gauge().name().equals(gauge)) {
        least = Math.min(least, model.names().indexOf(reading.place()));
        most = Math.max(most, model.names().indexOf(reading.place()));
      }
    }
    boolean isBehind = true;
    boolean isBefore = true;
    for (GaugeReading reading : readings) {
      if (!reading.gauge().name().equals(gauge)) {
        isBehind &= model.names().indexOf(reading.place()) < least;
        isBefore &= model.names().indexOf(reading.place()) > most;
      }
    }
    return !isBehind && !isBefore;
  }

  /** Whether an explanation has all as told but for what is unmarked. */
  private boolean isBase(Explanation each) {
    return each.suspect().kind() == SuspectKind.NOTHING
        || model.unmarked().filter(each.suspect()::equals).isPresent();
  }

  /** Whether every explanation that counts is refused by the readings. */
  private boolean nothingFits() {
    return found.explanations.stream()
        .filter(
            each -> each.suspect().kind() != SuspectKind.OTHER && each.probability() >= CONSIDERED)
        .allMatch(each -> each.fit().isPresent() && !each.fits());
  }

  private List<Explanation> notRuledOut() {
    return found.explanations.stream()
        .filter(each -> each.probability() >= NOT_RULED_OUT)
        .toList();
  }

  /** {@return what is named firmly; empty where nothing is} */
  public Optional<Explanation> culprit() {
    return verdict() == DiagnosisVerdict.FOUND
        ? Optional.of(found.explanations.get(0))
        : Optional.empty();
  }

  /** {@return the explanations that cannot be told apart by these readings; empty where there are no several} */
  public List<Explanation> alike() {
    return verdict() == DiagnosisVerdict.SEVERAL ? notRuledOut() : List.of();
  }

  /**
   * {@return the reading that is expected to tell most, at a place and in a state not read yet; empty where one is named,
   * or no such reading makes the most probable explanation right in 2 of 100 more cases}
   */
  public Optional<NextGaugeReading> next() {
    return verdict() == DiagnosisVerdict.FOUND ? Optional.empty() : found.next.get();
  }

  /**
   * Tells the answer in words, without the explanations one by one.
   *
   * @param units the units to write it in
   * @return sentences: the verdict, what contradicts, what to read next
   */
  public List<String> inWords(UnitSystem units) {
    Objects.requireNonNull(units, "units");
    DiagnosisVerdict verdict = verdict();
    List<String> lines = new ArrayList<>(DiagnosisWords.of(
        verdict, found.explanations, alike(), found.contradictions, model.unmarked(), units));
    if (verdict != DiagnosisVerdict.FOUND) {
      lines.add(next()
          .map(NextGaugeReading::toString)
          .orElse(
              verdict == DiagnosisVerdict.AS_TOLD
                  ? "No further reading with these gauges is expected to change that."
                  : "No further reading with these gauges is expected to settle it: put a part that is known"
                      + " in the place of one that is suspected, and read again."));
    }
    return List.copyOf(lines);
  }

  /**
   * {@return the warnings that belong to reading gauges and changing parts, and those of the run; they defer to local
   * codes and the makers' ratings}
   */
  public List<Caution> cautions() {
    List<Caution> all = new ArrayList<>();
    all.add(VENT);
    all.add(RUNNING);
    all.add(Caution.FEELING_FOR_LEAKS);
    all.addAll(model.scene().path().cautions());
    return List.copyOf(all);
  }

  @Override
  public Working working(UnitSystem units) {
    return DiagnosisWorking.of(
        readings,
        found.explanations.get(0),
        asTold,
        model.at(found.explanations.get(0)),
        Objects.requireNonNull(units, "units"));
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Diagnosis that
        && model.scene().equals(that.model.scene())
        && readings.equals(that.readings)
        && found.explanations.equals(that.found.explanations);
  }

  @Override
  public int hashCode() {
    return Objects.hash(model.scene(), readings);
  }

  /** {@return the answer in one sentence} */
  @Override
  public String toString() {
    return inWords(UnitSystem.SI).get(0);
  }
}
