package org.airfit.thread;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import org.airfit.quantity.Length;
import org.airfit.working.CardTable;
import org.airfit.working.PencilCard;
import org.airfit.working.Term;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class ThreadCardTest {

  private static Length mm(double value) {
    return Length.ofMillimetres(value);
  }

  private static ThreadIdentification quarterNpt() {
    return ThreadIdentification.of(
        ThreadReadings.ofMale(mm(13.13), mm(7.06), 5).withLastCrest(mm(13.7)));
  }

  private static String left(PencilCard card) {
    return card.inWords().get(0);
  }

  @Test
  void the_thread_that_is_left_is_the_one_identified() {
    PencilCard card = quarterNpt().pencilCard(UnitSystem.SI);
    assertThat(left(card)).startsWith("Left: 1/4 NPT male. All others known here, ");
    assertThat(card.lines().get(1)).hasToString("Pitch: P = l / n = 7.06 / 5 = 1.412 mm");
    assertThat(card.lines().get(2))
        .hasToString("Threads per inch: N = 25.4 / P = 25.4 / 1.412 = 17.99");
    CardTable table = card.tables().get(0);
    assertThat(table.heads())
        .containsExactly(
            "thread", "first crest d, mm", "grown Δd, mm", "over 5 pitches l, mm", "left");
    assertThat(table.rows()).hasSize(10);
    assertThat(table.rows().get(0).get(0)).isEqualTo("1/4 NPT male");
    // ASME B1.20.1: 18 threads per inch, five pitches 5 × 25.4/18 = 7.056 mm, less and more two
    // uncertainties
    String[] pitches = table.rows().get(0).get(3).split(" to |: ", -1);
    assertThat(0.5 * (Double.parseDouble(pitches[0]) + Double.parseDouble(pitches[1])))
        .isBetween(7.050, 7.061);
    assertThat(card.inWords().get(2)).endsWith(" is: 1/4 NPT male (> 99.9 %).");
    assertThat(card.toText()).doesNotContain("under pressure");
  }

  private static double number(String text) {
    return Double.parseDouble(text.replace('−', '-'));
  }

  private static double given(PencilCard card, String symbol) {
    return card.given().stream()
        .filter(term -> term.symbol().equals(symbol))
        .map(Term::value)
        .mapToDouble(Double::parseDouble)
        .findFirst()
        .orElseThrow();
  }

  /** What somebody compares who has the printed numbers alone. */
  private static double read(PencilCard card, String head) {
    if (head.startsWith("grown")) {
      return given(card, "d2") - given(card, "d");
    }
    String symbol = head.substring(0, head.indexOf(','));
    return given(card, symbol.substring(symbol.lastIndexOf(' ') + 1));
  }

  private static ThreadReadings some(Random random, ThreadHypothesis thread) {
    double first = thread.crests().least()
        + random.nextDouble() * (thread.crests().most() - thread.crests().least())
        + 0.1 * random.nextGaussian();
    Length crest = mm(0.01 * Math.rint(100.0 * Math.max(2.0, first)));
    ThreadReadings readings = thread.thread().gender() == Gender.MALE
        ? ThreadReadings.ofMale(crest)
        : ThreadReadings.ofFemale(crest);
    int pitches = 3 + random.nextInt(6);
    double over = pitches * thread.pitch() + 0.05 * random.nextGaussian();
    if (random.nextInt(4) > 0) {
      readings = readings.withPitches(mm(0.01 * Math.rint(100.0 * over)), pitches);
    }
    if (random.nextBoolean()) {
      readings = readings.withLastCrest(mm(crest.millimetres()
          + (thread.thread().isTapered() ? 0.5 : 0.0) * (random.nextDouble() + 0.3)));
    }
    if (random.nextInt(3) == 0) {
      readings =
          readings.withFlankAngle(thread.thread().flankAngleDegrees() + random.nextInt(5) - 2, 2.0);
    }
    if (random.nextInt(4) == 0) {
      readings = readings.withPitch(mm(thread.pitch() + 0.02 * random.nextGaussian()), mm(0.02));
    }
    return readings;
  }

  /** The rule of a firm answer in the exact numbers: the card must leave the same threads. */
  private static List<String> exactlyLeft(ThreadReadings readings) {
    return ThreadHypothesis.all(readings.gender()).stream()
        .filter(thread ->
            ThreadFit.asRead(thread, readings) && ThreadFit.pitchIsClose(thread, readings))
        .map(thread -> thread.thread().label())
        .toList();
  }

  @ParameterizedTest
  @EnumSource(UnitSystem.class)
  void every_comparison_of_the_printed_numbers_turns_out_as_printed(UnitSystem units) {
    Random random = new Random(81);
    int settled = 0;
    int onTheLimit = 0;
    for (int i = 0; i < 150; i++) {
      Gender gender = random.nextBoolean() ? Gender.MALE : Gender.FEMALE;
      List<ThreadHypothesis> all = ThreadHypothesis.all(gender);
      ThreadReadings readings = some(random, all.get(random.nextInt(all.size())));
      ThreadIdentification answer = ThreadIdentification.of(readings);
      PencilCard card = answer.pencilCard(units);
      CardTable table = card.tables().get(0);
      for (List<String> row : table.rows()) {
        boolean all3 = true;
        for (int column = 1; column < row.size() - 1; column++) {
          String[] cell = row.get(column).split(" to |: ", -1);
          double read = read(card, table.heads().get(column));
          if (cell[2].equals("on the limit")) {
            onTheLimit++;
            continue;
          }
          boolean fits = read >= number(cell[0]) && read <= number(cell[1]);
          assertThat(fits ? "yes" : "no")
              .as("%s of %s: %s", table.heads().get(column), readings, row)
              .isEqualTo(cell[2]);
          all3 &= fits;
          settled++;
        }
        assertThat(row.get(row.size() - 1).equals("yes") && !all3).isFalse();
      }
      List<String> left = table.rows().stream()
          .filter(row -> row.get(row.size() - 1).equals("yes"))
          .map(row -> row.get(0))
          .toList();
      assertThat(left).containsExactlyInAnyOrderElementsOf(exactlyLeft(readings));
      answer.identified().ifPresent(thread -> assertThat(left).contains(thread.label()));
      answer.foreign().ifPresent(thread -> assertThat(left).contains(thread.label()));
      assertThat(left(card))
          .startsWith(left.isEmpty() ? "No thread is left" : "Left: " + left.get(0));
    }
    assertThat(settled).isGreaterThan(3_000);
    assertThat(onTheLimit).isLessThan(settled / 200);
  }

  @Test
  void a_leaf_and_the_eye_are_told() {
    ThreadReadings readings =
        ThreadReadings.ofMale(mm(13.13)).withThreadsPerInch(18.0).withTaperSeen(true);
    PencilCard card = ThreadIdentification.of(readings).pencilCard(UnitSystem.SI);
    assertThat(card.tables().get(0).heads())
        .containsExactly("thread", "first crest d, mm", "leaf Pl, mm", "left");
    assertThat(card.toText())
        .contains("A taper was seen: the eye is no reading, and is not compared.")
        .contains("A leaf fits within 2 %.")
        .doesNotContain("standard uncertainties", "Δd");
  }

  private static PencilCard ofMale(double first, double over, int pitches) {
    return ThreadIdentification.of(ThreadReadings.ofMale(mm(first), mm(over), pitches))
        .pencilCard(UnitSystem.SI);
  }

  /**
   * No thread to which the chances give a hundredth may be told to fall out: it is left, or named with the slip that it
   * takes. And where more than one may be, the card warns of pressure.
   */
  @Test
  void what_the_chances_hold_for_possible_does_not_fall_out() {
    Random random = new Random(44);
    int perhaps = 0;
    int warned = 0;
    for (int i = 0; i < 200; i++) {
      Gender gender = random.nextBoolean() ? Gender.MALE : Gender.FEMALE;
      List<ThreadHypothesis> all = ThreadHypothesis.all(gender);
      ThreadReadings readings = some(random, all.get(random.nextInt(all.size())));
      ThreadIdentification answer = ThreadIdentification.of(readings);
      PencilCard card = answer.pencilCard(UnitSystem.SI);
      List<String> left = exactlyLeft(readings);
      String told = left(card).split(" All others", 2)[0];
      List<String> possible = all.stream()
          .filter(thread -> ThreadFit.loosely(thread, readings))
          .map(thread -> thread.thread().label())
          .toList();
      for (String each : possible) {
        assertThat(told).as(readings.toString()).contains(each);
      }
      perhaps += possible.size() > left.size() ? 1 : 0;
      boolean isOne = left.size() == 1 && possible.size() == 1 && !told.contains("(on the limit)");
      assertThat(card.inWords().stream()
              .anyMatch(each -> each.contains("do not put it under pressure")))
          .as(readings.toString())
          .isEqualTo(!isOne);
      warned += isOne ? 0 : 1;
    }
    assertThat(perhaps).isGreaterThan(5);
    assertThat(warned).isBetween(20, 199);
  }

  /**
   * 21.00 mm and 14 threads per inch: a taper R 1/2 too, read a few turns from its end; ISO 7-1 has 20.955 mm there.
   */
  @Test
  void a_thread_that_was_not_read_at_its_end_is_named() {
    assertThat(left(ofMale(21.0, 9.07, 5)))
        .startsWith("Left: ")
        .contains(" Also R 1/2 male, if the first crest was not read at the end of the thread.");
  }

  /** Five pitches of 1 mm over 4.90 mm are two standard uncertainties of 0.05 mm short: rounding settles it. */
  @Test
  void a_thread_that_is_left_by_rounding_says_so() {
    assertThat(left(ofMale(9.9, 4.9, 5))).startsWith("Left: M10x1 male (on the limit).");
  }

  @Test
  void what_no_thread_allows_leaves_none() {
    PencilCard card = ThreadIdentification.of(ThreadReadings.ofMale(mm(14.9), mm(9.0), 5))
        .pencilCard(UnitSystem.US);
    assertThat(left(card))
        .startsWith("No thread is left: none that is known here allows all the readings.");
    assertThat(card.tables().get(0).title()).startsWith("Threads that come nearest, none of which");
    assertThat(card.inWords().get(1)).contains("do not put it under pressure");
  }
}
