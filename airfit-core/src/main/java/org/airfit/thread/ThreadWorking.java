package org.airfit.thread;

import org.airfit.internal.Digits;
import org.airfit.measure.PitchCount;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.source.Source;
import org.airfit.working.Formula;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;
import org.airfit.working.Working;

/** The working of an identification: the leading thread against the readings, one by one. */
final class ThreadWorking {

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
  private static final Symbol REST = Symbol.of("r", ValueKind.NUMBER);
  private static final Source BAYES = Source.derived(
      "Bayes' rule over all threads, pipe and foreign; priors and mistakes are this project's");
  private static final Formula REST_CHANCE = Formula.of(
      "Chance of all others",
      "⟨q⟩ = ⟨r⟩ / ⟨s⟩",
      BAYES,
      Symbol.of("q", ValueKind.NUMBER),
      REST,
      EVIDENCE);
  private static final Formula CHANCE = Formula.of(
      "Chance of the likeliest",
      "⟨c⟩ = ⟨w⟩ / ⟨s⟩",
      BAYES,
      Symbol.of("c", ValueKind.NUMBER),
      WEIGHT,
      EVIDENCE);

  private final ThreadRanking answer;
  private final String words;
  private final ThreadReadings readings;
  private final UnitSystem units;
  private final LengthUnit unit;
  private final NamedThread thread;
  private final Working.Builder out;

  private ThreadWorking(ThreadRanking answer, String words, UnitSystem units) {
    this.answer = answer;
    this.words = words;
    this.readings = answer.readings();
    this.units = units;
    this.unit = units.smallLengthUnit();
    this.thread = answer.best().thread();
    this.out = Working.titled(
        (readings.gender() == Gender.MALE ? "Male" : "Female") + " thread from "
            + readings.inWords(units),
        units);
  }

  static Working of(ThreadRanking answer, String words, UnitSystem units) {
    return new ThreadWorking(answer, words, units).working();
  }

  private Working working() {
    ThreadCandidate best = answer.candidates().get(0);
    boolean stepped = pitches();
    crests();
    // where rounding would print 1, the chance of all others is told: nothing measured is certain
    boolean nearlySure = best.probability() >= 0.9995;
    Formula chance = nearlySure ? REST_CHANCE : CHANCE;
    if (nearlySure) {
      out.given(REST, answer.restProbability() * answer.evidence(), 5)
          .given(EVIDENCE, answer.evidence(), 5)
          .step(
              chance.named("Chance that it is not " + thread.label()), answer.restProbability(), 2);
    } else {
      out.given(WEIGHT, best.probability() * answer.evidence(), 5)
          .given(EVIDENCE, answer.evidence(), 5)
          .step(chance.named("Chance of " + thread.label()), best.probability(), 3);
    }
    out.note("Answer: " + words + ". None of these: " + Digits.percent(answer.unknownProbability())
        + ".");
    return stepped
        ? out.answer(DEVIATION.result(), chance.result()).build()
        : out.answer(chance.result()).build();
  }

  /** The pitch in one way as a step, in the others as notes. */
  private boolean pitches() {
    ThreadReadings.Pitches read = readings.pitches();
    PitchCount count = read.count();
    ThreadReadings.Pitch other = read.other();
    if (count != null) {
      deviation(count.pitch(), count.pitchUncertainty());
      out.note("Counted over " + count.pitches() + ": "
          + (count.pitches() >= ThreadFit.ENOUGH_PITCHES
              ? "enough"
              : "five or more would be enough by themselves")
          + ".");
    }
    if (other != null) {
      if (count == null) {
        deviation(other.read(), other.uncertainty());
      } else {
        out.note("Read in another way: " + other.read().format(unit, units.either(3, 5)) + ".");
      }
    }
    ThreadReadings.Leaf leaf = read.leaf();
    if (leaf != null) {
      double off = leaf.pitch().millimetres() / thread.pitch().millimetres() - 1.0;
      out.note("The leaf has a pitch of " + leaf.pitch().format(unit, units.either(3, 5))
          + ", which is " + Digits.fixed(100.0 * Math.abs(off), 1)
          + " % off; a leaf fits within 2 %, and "
          + Digits.percent(leaf.misread()) + " of leaves are taken to be misread (our choice).");
    }
    return count != null || other != null;
  }

  private void deviation(Length read, Length uncertainty) {
    double standard = thread.pitch().metres();
    out.given(PITCH_READ, read.metres(), 5)
        .given(PITCH, standard, 5)
        .given(UNCERTAINTY, uncertainty.metres(), 5)
        .step(
            DEVIATION.named("Pitch against " + thread.label()).from(thread.source()),
            (read.metres() - standard) / uncertainty.metres(),
            2);
    if (!ThreadFit.pitchIsClose(answer.best(), readings)) {
      out.note("A firm answer takes a z from −2 to 2, where 95 of 100 good readings lie.");
    }
  }

  private void crests() {
    int decimals = units.either(2, 4);
    CrestModel crests = answer.best().crests();
    double[] allowed = crests.firstAllowed();
    double margin = ThreadFit.margin(readings);
    out.note("The first crest of " + thread.label() + " may measure "
        + new Limits(mm(crests.least()), mm(crests.most())).format(unit)
        + " by its standard; with "
        + (crests.isTapered() ? "one turn along the cone, " : "")
        + "wear of up to " + mm(CrestModel.WEAR).format(unit, units.either(1, 4))
        + " and " + Digits.fixed(ThreadFit.limit(readings), 2)
        + " uncertainties of the reading, "
        + new Limits(mm(Math.max(0.0, allowed[0] - margin)), mm(allowed[1] + margin)).format(unit)
        + "; read " + readings.firstCrest().format(unit, decimals) + ", which "
        + (ThreadFit.firstFits(answer.best(), readings) ? "fits" : "does not fit") + ".");
    readings
        .lastCrest()
        .ifPresent(last -> out.note("The last crest differs from the first by "
            + Digits.fixed(last.in(unit) - readings.firstCrest().in(unit), decimals) + " "
            + unit.symbol() + "; a taper thread grows 1 " + unit.symbol() + " on 16."));
  }

  private static Length mm(double value) {
    return Length.ofMillimetres(value);
  }
}
