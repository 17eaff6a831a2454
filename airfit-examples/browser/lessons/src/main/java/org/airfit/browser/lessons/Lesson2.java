package org.airfit.browser.lessons;

import static org.airfit.browser.lessons.Numbers.form;
import static org.airfit.browser.lessons.Numbers.plain;

import java.util.List;
import org.airfit.lesson.Chances;
import org.airfit.lesson.Say;
import org.airfit.quantity.Length;
import org.airfit.thread.ThreadIdentification;
import org.airfit.thread.ThreadReadings;
import org.airfit.working.UnitSystem;

/** Which thread is this: readings of a thread, the candidates, the working. */
final class Lesson2 {

  /** A thread below this chance is not named in the summary; our choice. */
  private static final double UNLIKELY = 0.1;

  private Lesson2() {}

  static List<Figure> figures() {
    return List.of(
        new Figure(
            "2-crest",
            2,
            "Change the reading",
            List.of(Input.of(
                    "crest",
                    "diameter over the first crest",
                    Kind.MILLIMETRES,
                    "13.25 mm",
                    7,
                    35,
                    0.05)
                .typed(3, 120)),
            "cell-06-0",
            Lesson2::hasty),
        new Figure(
            "2-male",
            2,
            "Change the readings, or clear a field",
            List.of(
                Input.of(
                        "crest",
                        "diameter over the first crest",
                        Kind.MILLIMETRES,
                        "13.25 mm",
                        7,
                        35,
                        0.05)
                    .typed(3, 120),
                Input.of(
                        "last",
                        "diameter over the last full crest",
                        Kind.MILLIMETRES,
                        "13.71 mm",
                        7,
                        35,
                        0.05)
                    .typed(3, 120)
                    .orNone(),
                Input.of(
                        "over", "length over the pitches", Kind.MILLIMETRES, "7.06 mm", 2, 15, 0.01)
                    .typed(0.5, 60)
                    .orNone(),
                Input.of("count", "how many pitches", Kind.NUMBER, "5", 1, 10, 1),
                Input.of(
                        "leaf",
                        "leaf of the pitch gauge that fits, per inch",
                        Kind.NUMBER,
                        "",
                        8,
                        32,
                        0.5)
                    .orNone()),
            "cell-09-0",
            Lesson2::male),
        new Figure(
            "2-outlet",
            2,
            "Change the readings of the outlet",
            List.of(
                Input.of(
                        "crest",
                        "diameter at the mouth, inside",
                        Kind.MILLIMETRES,
                        "11.55 mm",
                        7,
                        35,
                        0.05)
                    .typed(3, 120),
                Input.of("last", "diameter further in", Kind.MILLIMETRES, "11.56 mm", 7, 35, 0.05)
                    .typed(3, 120)
                    .orNone(),
                Input.of(
                        "leaf",
                        "leaf of the pitch gauge that fits, per inch",
                        Kind.NUMBER,
                        "19",
                        8,
                        32,
                        0.5)
                    .orNone(),
                Input.choice(
                    "angle",
                    "flank angle by the gauge",
                    "55",
                    "55",
                    "55° ± 2°",
                    "60",
                    "60° ± 2°",
                    "",
                    "not read")),
            "cell-outlet-0",
            Lesson2::outlet));
  }

  private static String ranking(ThreadIdentification answer, int most) {
    Chances table = Chances.of("thread");
    answer.candidates().stream()
        .limit(most)
        .forEach(candidate -> table.row(candidate.thread().label(), candidate.probability()));
    return table.rest("all others, and none of these").toMarkdown();
  }

  private static String ranked(ThreadIdentification answer) {
    if (answer.candidates().isEmpty() || answer.candidates().get(0).probability() < UNLIKELY) {
      return "None of the known threads is likely.";
    }
    return "Most likely: " + answer.candidates().get(0).thread().label() + ", "
        + Say.percent(answer.candidates().get(0).probability()) + ".";
  }

  private static void hasty(Given given, Shown shown) {
    ThreadIdentification answer =
        ThreadIdentification.of(ThreadReadings.ofMale(given.length("crest")));
    shown.markdown("cell-06-0", () -> ranking(answer, 4));
    shown.said("cell-07-0", answer.inWords());
    shown.sum(ranked(answer));
  }

  private static void male(Given given, Shown shown) {
    ThreadReadings readings = ThreadReadings.ofMale(given.length("crest"));
    double count = given.number("count");
    if (count != Math.rint(count)) {
      throw new IllegalArgumentException("Count whole pitches.");
    }
    if (given.has("over")) {
      readings = readings.withPitches(given.length("over"), (int) count);
    }
    if (given.has("last")) {
      readings = readings.withLastCrest(given.length("last"));
    }
    if (given.has("leaf")) {
      readings = readings.withThreadsPerInch(given.number("leaf"));
    }
    ThreadIdentification answer = ThreadIdentification.of(readings);
    shown.markdown("cell-09-0", () -> ranking(answer, 3));
    shown.said("cell-10-0", pencil(given, answer, count));
    shown.markdown("cell-working-0", () -> answer.working(UnitSystem.SI).toMarkdown());
    shown.sum(ranked(answer));
  }

  private static String[] pencil(Given given, ThreadIdentification answer, double count) {
    if (!given.has("over")) {
      return new String[] {answer.inWords()};
    }
    String pitches = plain(count);
    String over = plain(Length.parse(given.text("over")).millimetres());
    return new String[] {
      answer.inWords(),
      form(
          "Threads per inch from the caliper: %s x 25.4 / %s = %.2f",
          pitches, over, count * 25.4 / given.number("over")),
      form(
          "%s: 18 per inch %.2f mm, 19 per inch %.2f mm",
          count == 5 ? "Five pitches" : pitches + " pitches", count * 25.4 / 18, count * 25.4 / 19)
    };
  }

  private static void outlet(Given given, Shown shown) {
    ThreadReadings readings = ThreadReadings.ofFemale(given.length("crest"));
    if (given.has("last")) {
      readings = readings.withLastCrest(given.length("last"));
    }
    if (given.has("leaf")) {
      readings = readings.withThreadsPerInch(given.number("leaf"));
    }
    if (given.has("angle")) {
      readings = readings.withFlankAngle(Double.parseDouble(given.text("angle")), 2);
    }
    ThreadIdentification answer = ThreadIdentification.of(readings);
    shown.markdown("cell-outlet-0", () -> ranking(answer, 3));
    shown.sum(ranked(answer));
  }
}
