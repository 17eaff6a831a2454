package org.airfit.run;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.airfit.internal.Digits;
import org.airfit.source.Source;
import org.airfit.working.Formula;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;
import org.airfit.working.Working;

/** Writes down what of a judgement by gauges can be done again with a pencil. */
final class DiagnosisWorking {

  private static final Source READINGS = Source.derived("difference of two readings");

  private static final Source EVEN =
      Source.handbook("GUM (JCGM 100:2008) 4.3.7: an even distribution within limits");

  private static final Source BAYES = Source.derived("rule of Bayes");

  private static final Symbol UP = Symbol.of("p1", "p_1", ValueKind.SAID_PRESSURE);
  private static final Symbol DOWN = Symbol.of("p2", "p_2", ValueKind.SAID_PRESSURE);
  private static final Symbol REST_UP = Symbol.of("r1", "r_1", ValueKind.SAID_PRESSURE);
  private static final Symbol REST_DOWN = Symbol.of("r2", "r_2", ValueKind.SAID_PRESSURE);
  private static final Symbol LOST = Symbol.of("Δp", "\\Delta p", ValueKind.SAID_PRESSURE);
  private static final Symbol TOLD = Symbol.of("Δt", "\\Delta t", ValueKind.SAID_PRESSURE);
  private static final Symbol MORE = Symbol.of("Δe", "\\Delta e", ValueKind.SAID_PRESSURE);
  private static final Symbol LIMIT = Symbol.of("L", ValueKind.SAID_PRESSURE);
  private static final Symbol DEVIATION = Symbol.of("u", ValueKind.SAID_PRESSURE);
  private static final Symbol OTHERS = Symbol.of("w", ValueKind.NUMBER);
  private static final Symbol CHANCE = Symbol.of("P", ValueKind.NUMBER);

  private static final Formula LOSS_SHOWN =
      Formula.of("Loss shown", "⟨Δp⟩ = ⟨p1⟩ − ⟨p2⟩", READINGS, LOST, UP, DOWN);

  private static final Formula LOSS_LESS_REST = Formula.of(
      "Loss shown, less what the gauges differ by at rest",
      "⟨Δp⟩ = ⟨p1⟩ − ⟨p2⟩ − (⟨r1⟩ − ⟨r2⟩)",
      READINGS,
      LOST,
      UP,
      DOWN,
      REST_UP,
      REST_DOWN);

  private static final Formula MORE_THAN_TOLD =
      Formula.of("Loss beyond what was told", "⟨Δe⟩ = ⟨Δp⟩ − ⟨Δt⟩", READINGS, MORE, LOST, TOLD);

  private static final Formula OF_LIMIT =
      Formula.of("Standard deviation of a gauge", "⟨u⟩ = ⟨L⟩ / √(3)", EVEN, DEVIATION, LIMIT);

  private static final Formula PROBABILITY = Formula.of(
      "Probability of the best explanation", "⟨P⟩ = 1 / (1 + ⟨w⟩)", BAYES, CHANCE, OTHERS);

  /** Nearer to 1 no probability is printed as a number. */
  private static final double SURE = 0.9995;

  private DiagnosisWorking() {}

  /**
   * Writes the working.
   *
   * @param readings what was read
   * @param best the most probable explanation
   * @param told what would be shown at each reading where all is as told [Pa]
   * @param fitted the run with the value of the best explanation, if it is one of the run
   */
  static Working of(
      List<GaugeReading> readings,
      Explanation best,
      double[] told,
      Optional<GaugeScene> fitted,
      UnitSystem units) {
    Working.Builder working = Working.titled("Diagnosis of the run by gauges", units);
    readings.stream()
        .map(GaugeReading::gauge)
        .distinct()
        .forEach(gauge -> working.include(gauge(gauge, units)));
    segments(readings, told, units).forEach(working::include);
    fitted.ifPresent(scene -> working
        .note("With " + best.suspect() + " fitted (" + best.value(units)
            + ") the run is computed so:")
        .include(RunAnswers.balance(scene.path(), scene.tool()).working(units)));
    working.note("Before any reading, all as told has a chance of 25 %, a wrong gauge of 10 %,"
        + " something else of 5 %, and the suspects share the rest evenly, what is not suspected with a tenth of"
        + " the chance of a suspect: our choice. The weight of an"
        + " explanation is that chance times how probable it lets the readings be, on the mean over the"
        + " values of its unknown; that is no work for a pencil.");
    double p = best.probability();
    if (p >= SURE) {
      return working
          .answer(
              "The most probable explanation is " + best.suspect() + ", " + Digits.percent(p) + ".")
          .build();
    }
    return working
        .note("w is the weight of all other explanations over that of the best, " + best.suspect()
            + ".")
        .given(OTHERS, (1.0 - p) / p, 5)
        .step(PROBABILITY, p, 4)
        .answer(CHANCE)
        .build();
  }

  private static Working gauge(PressureGauge gauge, UnitSystem units) {
    return Working.titled("Error of " + gauge.name(), units)
        .given(LIMIT, gauge.limit().pascals(), 6)
        .step(OF_LIMIT, gauge.limit().pascals() / Math.sqrt(3.0), 4)
        .answer(DEVIATION)
        .build();
  }

  /** The losses between neighbouring places that were read while the tool ran. */
  private static List<Working> segments(
      List<GaugeReading> readings, double[] told, UnitSystem units) {
    List<Integer> running = new ArrayList<>();
    for (int i = 0; i < readings.size(); i++) {
      String place = readings.get(i).place();
      if (readings.get(i).state() == ToolState.RUNNING
          && running.stream().noneMatch(other -> readings.get(other).place().equals(place))) {
        running.add(i);
      }
    }
    // the pressure falls along the run where all is as told
    running.sort(Comparator.comparingDouble((Integer i) -> told[i]).reversed());
    List<Working> segments = new ArrayList<>();
    for (int i = 0; i + 1 < running.size(); i++) {
      segments.add(segment(readings, told, running.get(i), running.get(i + 1), units));
    }
    return segments;
  }

  private static Working segment(
      List<GaugeReading> readings, double[] told, int up, int down, UnitSystem units) {
    GaugeReading one = readings.get(up);
    GaugeReading other = readings.get(down);
    double lost = one.shown().pascals() - other.shown().pascals();
    double expected = told[up] - told[down];
    Working.Builder working = Working.titled(
            "Loss from " + GaugeReading.at(one.place()) + " to " + GaugeReading.at(other.place()),
            units)
        .given(UP, one.shown().pascals(), 6)
        .given(DOWN, other.shown().pascals(), 6);
    Optional<GaugeReading> restUp = atRest(readings, one);
    Optional<GaugeReading> restDown = atRest(readings, other);
    if (restUp.isPresent() && restDown.isPresent()) {
      double r1 = restUp.get().shown().pascals();
      double r2 = restDown.get().shown().pascals();
      lost = one.shown().pascals() - other.shown().pascals() - (r1 - r2);
      working.given(REST_UP, r1, 6).given(REST_DOWN, r2, 6).step(LOSS_LESS_REST, lost, 5);
    } else {
      working.step(LOSS_SHOWN, lost, 5);
    }
    return working
        .given(TOLD, expected, 5)
        .step(MORE_THAN_TOLD, lost - expected, 4)
        .answer(MORE)
        .build();
  }

  private static Optional<GaugeReading> atRest(List<GaugeReading> readings, GaugeReading running) {
    return readings.stream()
        .filter(reading -> reading.state() == ToolState.AT_REST
            && reading.place().equals(running.place())
            && reading.gauge().equals(running.gauge()))
        .findFirst();
  }
}
