package org.airfit.browser.lessons;

import static org.airfit.browser.lessons.Numbers.form;

import java.util.ArrayList;
import java.util.List;
import org.airfit.drawing.ReadingOverlay;
import org.airfit.lesson.Boatyard;
import org.airfit.lesson.Chances;
import org.airfit.lesson.Say;
import org.airfit.lesson.Table;
import org.airfit.measure.Instrument;
import org.airfit.plug.Dimension;
import org.airfit.plug.Identification;
import org.airfit.plug.Identifier;
import org.airfit.plug.NextReading;
import org.airfit.plug.PlugProfile;
import org.airfit.plug.PlugReading;
import org.airfit.plug.PlugVerdict;
import org.airfit.plug.ProfileCandidate;
import org.airfit.plug.ReferenceSet;
import org.airfit.plug.Residual;
import org.airfit.quantity.Length;
import org.airfit.working.UnitSystem;

/** Identify an unmarked plug: readings, ranking, next reading, drawing. */
final class Lesson1 {

  private static final ReferenceSet YARD = Boatyard.profiles();
  private static final Identifier IDENTIFIER = Identifier.of(YARD);

  /** Above this chance the summary asks for no further reading; our choice. */
  private static final double SURE = 0.95;

  private Lesson1() {}

  static List<Figure> figures() {
    return List.of(
        new Figure(
            "1-tip",
            1,
            "Change the reading",
            List.of(reading(Dimension.TIP_DIAMETER, "11.92 mm")),
            "cell-09-0",
            Lesson1::first),
        new Figure(
            "1-readings",
            1,
            "Change the readings, add some, or clear a field",
            List.of(
                reading(Dimension.TIP_DIAMETER, "11.92 mm").orNone(),
                reading(Dimension.GROOVE_WIDTH, "5.16 mm").orNone(),
                reading(Dimension.TIP_TO_COLLAR, "9.77 mm").orNone(),
                reading(Dimension.COLLAR_DIAMETER, "").orNone(),
                reading(Dimension.TIP_LENGTH, "").orNone(),
                reading(Dimension.INSERTION_LENGTH, "").orNone(),
                reading(Dimension.GROOVE_DIAMETER, "").orNone(),
                reading(Dimension.SHOULDER_DIAMETER, "").orNone(),
                reading(Dimension.BORE, "").orNone()),
            "cell-12-0",
            Lesson1::all));
  }

  /** The slider goes from half a millimetre below the smallest size of the yard's list to as much above the largest. */
  private static Input reading(Dimension dimension, String text) {
    double low = Double.POSITIVE_INFINITY;
    double high = 0.0;
    for (PlugProfile profile : YARD.profiles()) {
      double size = profile.spread(dimension).orElseThrow().nominal().millimetres();
      low = Math.min(low, size);
      high = Math.max(high, size);
    }
    return Input.of(
            dimension.name(),
            dimension.label(),
            Kind.MILLIMETRES,
            text,
            Numbers.written(low - 0.5, 4),
            Numbers.written(high + 0.5, 4),
            0.01)
        .typed(0.5, 60.0);
  }

  private static List<PlugReading> readings(Given given, Dimension... dimensions) {
    List<PlugReading> readings = new ArrayList<>();
    for (Dimension dimension : dimensions) {
      if (given.has(dimension.name())) {
        readings.add(
            PlugReading.of(dimension, Instrument.DIGITAL_CALIPER, given.length(dimension.name())));
      }
    }
    return readings;
  }

  private static void first(Given given, Shown shown) {
    List<PlugReading> tip = readings(given, Dimension.TIP_DIAMETER);
    Identification answer = IDENTIFIER.identify(tip);
    shown.html("cell-07-0", () -> Say.typeset(tip.get(0)));
    shown.markdown("cell-09-0", () -> ranking(answer));
    shown.html("cell-10-0", () -> Say.typeset(answer.inWords()));
    Table next = Table.of("read next", "what it brings");
    for (NextReading reading : answer.nextReadings()) {
      String words = reading.inWords();
      next.row(reading.dimension().label(), words.substring(words.indexOf("On average")));
    }
    shown.markdown("cell-next-0", () -> next.toMarkdown());
    shown.sum(ranked(answer));
  }

  private static void all(Given given, Shown shown) {
    List<PlugReading> readings = readings(
        given,
        Dimension.TIP_DIAMETER,
        Dimension.GROOVE_WIDTH,
        Dimension.TIP_TO_COLLAR,
        Dimension.COLLAR_DIAMETER,
        Dimension.TIP_LENGTH,
        Dimension.INSERTION_LENGTH,
        Dimension.GROOVE_DIAMETER,
        Dimension.SHOULDER_DIAMETER,
        Dimension.BORE);
    if (readings.isEmpty()) {
      throw new IllegalArgumentException("Give at least one reading.");
    }
    Identification answer = IDENTIFIER.identify(readings);
    shown.markdown("cell-12-0", () -> ranking(answer));
    shown.svg("cell-13-0", () -> ReadingOverlay.of(answer).svg());
    List<Object> lines = new ArrayList<>();
    lines.add(answer.inWords());
    lines.add("Verdict: " + answer.verdict().label());
    answer.cautions().forEach(caution -> lines.add("! " + caution.text()));
    shown.html("cell-15-0", () -> Say.typeset(lines.toArray()));
    shown.html("cell-17-0", () -> Say.typeset(misfits(given, answer).toArray()));
    shown.markdown("cell-working-0", () -> answer.working(UnitSystem.SI).toMarkdown());
    shown.sum(ranked(answer));
  }

  private static List<String> misfits(Given given, Identification answer) {
    ProfileCandidate best = answer.candidates().get(0);
    List<String> misfits =
        new ArrayList<>(best.residuals().stream().map(Residual::inWords).toList());
    for (PlugReading reading : answer.readings()) {
      if (reading.dimension() == Dimension.TIP_TO_COLLAR) {
        double scatter = Math.hypot(0.06, reading.standardUncertainty().millimetres());
        double read = given.number(Dimension.TIP_TO_COLLAR.name());
        misfits.add(form(
            "Pencil, tip to collar: against Gannet %.2f, against Tern %.1f",
            (read - nominal("gannet", Dimension.TIP_TO_COLLAR)) / scatter,
            (read - nominal("tern", Dimension.TIP_TO_COLLAR)) / scatter));
      }
    }
    return misfits;
  }

  private static double nominal(String kind, Dimension dimension) {
    Length nominal =
        YARD.profile(kind).orElseThrow().spread(dimension).orElseThrow().nominal();
    return nominal.millimetres();
  }

  private static String ranking(Identification answer) {
    Chances table = Chances.of("kind");
    for (ProfileCandidate candidate : answer.candidates()) {
      table.row(candidate.profile().displayName(), candidate.probability());
    }
    return table
        .row("a near copy of one", answer.nearCopyProbability())
        .rest("none of these")
        .toMarkdown();
  }

  private static String ranked(Identification answer) {
    ProfileCandidate best = answer.candidates().get(0);
    if (answer.verdict() == PlugVerdict.NO_MATCH) {
      return "None of the list: the nearest, " + best.profile().displayName() + ", has a chance of "
          + Say.percent(best.probability()) + ".";
    }
    return "Most likely of the list: " + best.profile().displayName() + ", "
        + Say.percent(best.probability()) + ". The answer: " + answer.verdict().label() + "."
        + (best.probability() < SURE && !answer.nextReadings().isEmpty()
            ? " Read next: " + answer.nextReadings().get(0).dimension().label() + "."
            : "");
  }
}
