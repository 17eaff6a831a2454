package org.airfit.jobsheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import org.airfit.files.DiagnosisJob;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.PressureDrop;
import org.airfit.run.Diagnosis;
import org.airfit.run.Explanation;
import org.airfit.run.GaugeReading;
import org.airfit.run.SuspectKind;
import org.airfit.safety.Caution;
import org.airfit.safety.SafetyRules;
import org.airfit.safety.Situation;
import org.airfit.working.UnitSystem;

/**
 * What the gauges of a run say, as text and page share it.
 *
 * @param job the run and the readings
 * @param found what they say
 */
public record DiagnosisSheet(DiagnosisJob job, Diagnosis found) {

  /** An explanation less probable than this is not listed: our choice. */
  private static final double LISTED = 0.005;

  /** Less than this is not told [Pa]: half of the last digit. */
  private static final double SAME = 500.0;

  /** What the sheet does not judge, at the place where its answer is read. */
  static final String LIMITS =
      "One fault at a time is judged, in a run to one tool. Chances rest on what is"
          + " told of the run and of the gauges, and on starting chances that are our choice; a fault that shifts"
          + " no pressure by 0.1 bar (1.5 psi) counts as none. In a simulation by another model than the judge's"
          + " it was counted how often such answers are right: docs/reliability.md.";

  /** Refuses what is null. */
  public DiagnosisSheet {
    Objects.requireNonNull(job, "job");
    Objects.requireNonNull(found, "found");
  }

  /**
   * Answers a run with its readings.
   *
   * @param job the run and the readings
   * @return what the readings say
   */
  public static DiagnosisSheet of(DiagnosisJob job) {
    return new DiagnosisSheet(job, job.test().read(job.readings()));
  }

  UnitSystem units() {
    return job.units();
  }

  /** The whole sheet in a few lines. */
  List<Answer> inShort() {
    List<String> said = found.inWords(units());
    List<Answer> lines = new ArrayList<>();
    for (int i = 0; i < said.size(); i++) {
      boolean isNext = said.get(i).startsWith("Read ") || said.get(i).startsWith("No further");
      lines.add(new Answer(i == 0 ? "Found" : isNext ? "Next" : "Contradiction", said.get(i)));
    }
    if (found.culprit().isPresent()) {
      lines.add(new Answer(
          "Next",
          "Mend or replace it, and read again: the run is right when the readings say so."));
    }
    return lines;
  }

  /** A reading beside what it would be where all is as told. */
  record Shown(String place, String state, String gauge, String shown, String told, String apart) {}

  List<Shown> readings() {
    List<GaugePressure> told = found.expectedAsTold();
    List<Shown> all = new ArrayList<>();
    for (int i = 0; i < job.readings().size(); i++) {
      GaugeReading reading = job.readings().get(i);
      double apart = reading.shown().pascals() - told.get(i).pascals();
      all.add(new Shown(
          reading.place().equals(GaugeReading.SUPPLY) ? "supply" : "behind " + reading.place(),
          reading.state().toString(),
          reading.gauge().name(),
          units().say(reading.shown()),
          units().say(told.get(i)),
          apart(apart)));
    }
    return all;
  }

  /** By how much a reading is away from what it would be [Pa]. */
  private String apart(double pascals) {
    return Math.abs(pascals) < SAME
        ? "as told"
        : units().say(PressureDrop.ofPascals(Math.abs(pascals)))
            + (pascals < 0.0 ? " less" : " more");
  }

  /** An explanation as it is listed. */
  record Listed(String what, String chance, String value, String fit) {}

  List<Listed> explanations() {
    return found.explanations().stream()
        .filter(each -> each.probability() >= LISTED)
        .map(each -> new Listed(
            each.suspect().toString(),
            Amounts.percent(each.probability()),
            hasValue(each) ? each.value(units()) : "",
            fit(each.fit())))
        .toList();
  }

  private static boolean hasValue(Explanation each) {
    return each.suspect().kind() != SuspectKind.NOTHING
        && each.suspect().kind() != SuspectKind.OTHER;
  }

  private static String fit(OptionalDouble fit) {
    if (fit.isEmpty()) {
      return "not tested";
    }
    return fit.getAsDouble() >= 0.05
        ? "fits"
        : fit.getAsDouble() >= 0.01 ? "fits badly" : "does not fit";
  }

  /** All cautions once, to let the pressure out first, and last the one that defers to local codes. */
  List<Caution> cautions() {
    Situation work = Situation.describe().quickCouplers().maintenance().build();
    SafetyRules rules = SafetyRules.usFederal().toldIn(units());
    List<Caution> all = new ArrayList<>(found.cautions());
    rules.cautions(work).stream().filter(each -> !all.contains(each)).forEach(all::add);
    Caution last = rules.deference();
    all.remove(last);
    all.add(last);
    return all;
  }
}
