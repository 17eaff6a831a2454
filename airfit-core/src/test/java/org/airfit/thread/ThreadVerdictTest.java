package org.airfit.thread;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.joint.End;
import org.airfit.quantity.Length;
import org.airfit.thread.ThreadIdentification.SettlingReading;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What it takes to call a thread by its name, and what is said where that is not enough. */
class ThreadVerdictTest {

  private static Length mm(double value) {
    return Length.ofMillimetres(value);
  }

  /** Two diameters of 1/4 NPT: the first crest by the table, the last as large as the pipe. */
  private static ThreadReadings quarterNpt() {
    return ThreadReadings.ofMale(mm(13.25)).withLastCrest(mm(13.71));
  }

  /**
   * Two diameters of 1 NPT, whose crests may as well be those of R 1: only the pitch tells 11.5 from 11 threads per
   * inch.
   */
  private static ThreadReadings oneNpt() {
    return ThreadReadings.ofMale(mm(32.59)).withLastCrest(mm(33.40));
  }

  private static NamedThread named(String name, Gender gender) {
    return ForeignThread.find(name, gender)
        .<NamedThread>map(thread -> thread)
        .orElseGet(() -> ((End.Threaded) End.parse(name + " " + gender.label())).thread());
  }

  static Stream<Row> foreignCases() {
    return Rows.of(ThreadVerdictTest.class, "foreign_identification_cases.csv");
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("foreignCases")
  void worked_cases_with_foreign_threads_are_told_or_left_open_as_they_should_be(Row row) {
    Gender gender = row.text("member").equals("male") ? Gender.MALE : Gender.FEMALE;
    Length first = mm(row.number("dia_first_mm"));
    ThreadReadings readings =
        gender == Gender.MALE ? ThreadReadings.ofMale(first) : ThreadReadings.ofFemale(first);
    if (row.has("dia_last_mm")) {
      readings = readings.withLastCrest(mm(row.number("dia_last_mm")));
    }
    if (row.has("pitches_counted")) {
      readings = readings.withPitches(
          mm(row.number("length_over_pitches_mm")), (int) row.number("pitches_counted"));
    }
    ThreadIdentification answer = ThreadIdentification.of(readings);
    List<NamedThread> open = new ArrayList<>();
    answer.candidates().stream()
        .filter(candidate -> candidate.probability() > 0.05)
        .forEach(candidate -> open.add(candidate.thread()));
    List<String> forbidden = row.has("must_not_report")
        ? List.of(row.text("must_not_report").split(";", -1))
        : List.of();
    for (String never : forbidden) {
      assertThat(open)
          .as("%s: %s", row.text("why"), answer)
          .doesNotContain(named(never.strip(), gender));
    }
    if (row.text("expected").equals("ambiguous")) {
      assertThat(answer.verdict()).isEqualTo(ThreadVerdict.AMBIGUOUS);
      for (String alternative : row.text("acceptable_alternatives").split(";", -1)) {
        assertThat(open)
            .as("%s: %s", row.text("why"), answer)
            .contains(named(alternative.strip(), gender));
      }
    } else {
      assertThat(answer.verdict())
          .as("%s: %s", row.text("why"), answer)
          .isEqualTo(ThreadVerdict.FOREIGN);
      assertThat(answer.foreign()).contains((ForeignThread) named(row.text("expected"), gender));
      assertThat(answer.identified()).isEmpty();
      assertThat(answer.inWords())
          .startsWith("looks like " + answer.foreign().orElseThrow().label())
          .contains("not a pipe thread")
          .contains("does not mate with");
    }
  }

  static Stream<Row> confusions() {
    return Rows.of(ThreadVerdictTest.class, "confusions.csv");
  }

  /**
   * Both threads of a pair that is easily confused, in the middle of their crests, with the pitch of each over eight.
   */
  @ParameterizedTest(name = "{0}")
  @MethodSource("confusions")
  void threads_that_are_easily_confused_are_told_apart_by_a_counted_pitch_and_the_flanks(Row row) {
    for (String side : List.of("a", "b")) {
      NamedThread truth = named(row.text("end_" + side), Gender.MALE);
      double least = row.number(side + "_crest_min_mm");
      double most = row.number(side + "_crest_max_mm");
      double first = 0.5 * (least + most) - (truth.isTapered() ? 0.1 * (most - least) : 0.0);
      double last = truth.isTapered() ? first + 5.0 / 16.0 * truth.pitch().millimetres() : first;
      ThreadReadings readings = ThreadReadings.ofMale(mm(first))
          .withLastCrest(mm(last))
          .withPitches(mm(8.0 * row.number(side + "_pitch_mm")), 8)
          .withFlankAngle(truth.flankAngleDegrees(), 1.0);
      ThreadIdentification answer = ThreadIdentification.of(readings);
      assertThat(answer.candidates().get(0).thread()).as(answer.inWords()).isEqualTo(truth);
      assertThat(answer.verdict()).isIn(ThreadVerdict.IDENTIFIED, ThreadVerdict.FOREIGN);
    }
  }

  @Test
  void two_diameters_alone_never_identify() {
    ThreadIdentification answer = ThreadIdentification.of(quarterNpt());
    assertThat(answer.candidates().get(0).probability()).isGreaterThan(0.99);
    assertThat(answer.verdict()).isEqualTo(ThreadVerdict.AMBIGUOUS);
    assertThat(answer.identified()).isEmpty();
    assertThat(answer.settlingReadings()).containsExactly(SettlingReading.PITCH);
    assertThat(answer.inWords())
        .isEqualTo(
            "likely 1/4 NPT male (> 99.9 %) of the threads compared, which these readings do not prove; "
                + SettlingReading.PITCH.request());
  }

  @ParameterizedTest
  @CsvSource({"4, AMBIGUOUS", "5, IDENTIFIED", "6, IDENTIFIED"})
  void five_pitches_counted_are_enough_and_four_are_not(int pitches, ThreadVerdict verdict) {
    assertThat(ThreadIdentification.of(oneNpt().withPitches(mm(pitches * 25.4 / 11.5), pitches))
            .verdict())
        .isEqualTo(verdict);
  }

  @ParameterizedTest
  @CsvSource({"2, AMBIGUOUS", "3, IDENTIFIED", "4, IDENTIFIED"})
  void three_pitches_and_a_leaf_that_agrees_are_enough(int pitches, ThreadVerdict verdict) {
    assertThat(ThreadIdentification.of(
                oneNpt().withPitches(mm(pitches * 25.4 / 11.5), pitches).withThreadsPerInch(11.5))
            .verdict())
        .isEqualTo(verdict);
  }

  @ParameterizedTest
  @CsvSource({"0.01, IDENTIFIED", "0.0441, IDENTIFIED", "0.0442, AMBIGUOUS"})
  void a_pitch_read_otherwise_counts_up_to_two_percent(double uncertainty, ThreadVerdict verdict) {
    ThreadReadings otherwise = oneNpt().withPitch(mm(2.2087), mm(uncertainty));
    assertThat(ThreadIdentification.of(otherwise).verdict()).isEqualTo(ThreadVerdict.AMBIGUOUS);
    assertThat(ThreadIdentification.of(otherwise.withThreadsPerInch(11.5)).verdict())
        .isEqualTo(verdict);
  }

  /**
   * R 1/4 begins 0.47 mm smaller than NPT 1/4 and G 1/4 is parallel: two diameters of NPT 1/4 say 18 threads per inch
   * by themselves, those of NPT 1 do not say 11.5.
   */
  @Test
  void crests_that_tell_the_pitch_and_one_reading_of_it_are_two_evidences() {
    for (ThreadReadings told : List.of(
        quarterNpt().withThreadsPerInch(18),
        quarterNpt().withPitches(mm(3.0 * 25.4 / 18.0), 3),
        quarterNpt().withPitch(mm(1.411), mm(0.028)))) {
      assertThat(ThreadIdentification.of(told).identified().map(ThreadDesignation::label))
          .as(told.toString())
          .contains("1/4 NPT male");
    }
    for (ThreadReadings open : List.of(
        quarterNpt(),
        quarterNpt().withPitches(mm(2.0 * 25.4 / 18.0), 2),
        quarterNpt().withPitch(mm(1.411), mm(0.029)),
        ThreadReadings.ofMale(mm(13.25)).withThreadsPerInch(18),
        ThreadReadings.ofMale(mm(13.25)).withThreadsPerInch(18).withTaperSeen(true),
        oneNpt().withThreadsPerInch(11.5),
        oneNpt().withThreadsPerInch(11.5).withTaperSeen(true))) {
      ThreadIdentification answer = ThreadIdentification.of(open);
      assertThat(answer.verdict()).as(open.toString()).isEqualTo(ThreadVerdict.AMBIGUOUS);
      assertThat(answer.settlingReadings()).contains(SettlingReading.PITCH);
    }
  }

  /** G 5/8, 22.627 to 22.911 mm, has no neighbour: its two diameters and its leaf agree as well. */
  @Test
  void a_foreign_thread_is_told_by_its_crests_and_a_leaf_too() {
    ThreadReadings readings = ThreadReadings.ofMale(mm(22.77)).withLastCrest(mm(22.77));
    assertThat(ThreadIdentification.of(readings).verdict()).isEqualTo(ThreadVerdict.AMBIGUOUS);
    assertThat(ThreadIdentification.of(readings.withThreadsPerInch(14.0))
            .foreign()
            .map(ForeignThread::name))
        .contains("G 5/8");
  }

  /** One leaf off, either way, and two: none may end firm and wrong. */
  @ParameterizedTest
  @ValueSource(doubles = {14, 16, 19, 20})
  void a_misread_leaf_is_seen_and_identifies_nothing(double leaf) {
    ThreadIdentification alone = ThreadIdentification.of(quarterNpt().withThreadsPerInch(leaf));
    assertThat(alone.identified()).isEmpty();
    assertThat(alone.settlingReadings())
        .contains(SettlingReading.PITCH, SettlingReading.PITCH_AGAIN);
    ThreadIdentification counted =
        ThreadIdentification.of(quarterNpt().withPitches(mm(7.06), 5).withThreadsPerInch(leaf));
    assertThat(counted.verdict()).isEqualTo(ThreadVerdict.AMBIGUOUS);
    assertThat(counted.explanations())
        .first()
        .satisfies(each -> assertThat(each.slip()).isEqualTo(ThreadSlip.LEAF_MISREAD));
    assertThat(counted.settlingReadings()).contains(SettlingReading.PITCH_AGAIN);
  }

  @ParameterizedTest
  @CsvSource({
    "0.525, 7.06, IDENTIFIED",
    "0.532, 7.06, IDENTIFIED",
    "0.535, 7.06, AMBIGUOUS",
    "0.504, 7.06, NO_MATCH"
  })
  void a_first_crest_outside_what_the_thread_allows_cannot_be_identified(
      double inches, double overFive, ThreadVerdict verdict) {
    ThreadReadings readings = ThreadReadings.ofMale(Length.ofInches(inches), mm(overFive), 5)
        .withLastCrest(Length.ofInches(Math.min(0.540, inches + 0.015)))
        .withFlankAngle(60.0, 1.0);
    ThreadIdentification answer = ThreadIdentification.of(readings);
    assertThat(answer.candidates().get(0).thread().label()).isEqualTo("1/4 NPT male");
    assertThat(answer.verdict()).as(answer.inWords()).isEqualTo(verdict);
    assertThat(answer.working().toText())
        .contains(verdict == ThreadVerdict.IDENTIFIED ? "which fits" : "which does not fit");
  }

  @Test
  void one_diameter_in_the_middle_of_a_taper_thread_is_not_taken_for_its_first_crest() {
    ThreadIdentification answer = ThreadIdentification.of(
        ThreadReadings.ofMale(Length.ofInches(0.535)).withThreadsPerInch(18.0));
    assertThat(answer.identified()).isEmpty();
    assertThat(answer.settlingReadings())
        .contains(SettlingReading.FIRST_CREST, SettlingReading.PITCH);
    assertThat(answer.inWords()).contains("the diameter was not taken at the first full thread");
  }

  private static void explained(ThreadReadings readings, ThreadSlip slip) {
    ThreadIdentification answer = ThreadIdentification.of(readings);
    assertThat(answer.verdict()).as(answer.inWords()).isEqualTo(ThreadVerdict.NO_MATCH);
    assertThat(answer.explanations()).first().hasToString("1/4 NPT male if " + slip.label());
    assertThat(answer.inWords()).contains(slip.label()).contains("check: is it metric");
    assertThat(answer.settlingReadings()).isEmpty();
    assertThat(answer.cautions()).isNotEmpty();
    assertThat(slip.check()).isNotBlank();
  }

  @Test
  void a_slip_that_would_explain_the_readings_is_named() {
    ThreadReadings good = quarterNpt().withPitches(mm(7.06), 5);
    explained(good.withPitches(mm(7.06), 6), ThreadSlip.THREADS_COUNTED_AS_PITCHES);
    explained(good.withPitches(mm(7.06), 4), ThreadSlip.ONE_THREAD_OVERLOOKED);
    explained(
        ThreadReadings.ofMale(mm(13.71)).withLastCrest(mm(13.25)).withPitches(mm(7.06), 5),
        ThreadSlip.ENDS_SWAPPED);
    explained(
        ThreadReadings.ofFemale(mm(13.25)).withLastCrest(mm(13.71)).withPitches(mm(7.06), 5),
        ThreadSlip.INSIDE_OUTSIDE_SWAPPED);
    assertThat(ThreadIdentification.of(good).explanations()).isEmpty();
  }

  @Test
  void a_foreign_thread_makes_no_end_of_an_air_part() {
    ThreadIdentification answer = ThreadIdentification.of(
        ThreadReadings.ofMale(mm(13.9), mm(7.5), 5).withLastCrest(mm(13.9)));
    assertThat(answer.foreign().orElseThrow().name()).isEqualTo("M14x1.5");
    assertThat(answer.candidates().get(0).pipeThread()).isEmpty();
    assertThat(answer.inWords())
        .contains("looks like M14x1.5 male")
        .contains("a metric thread, not a pipe thread")
        .contains("does not mate with");
    assertThat(answer.cautions()).isNotEmpty();
    assertThatThrownBy(() -> End.parse("M14x1.5 male"))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void the_eye_may_be_wrong_but_then_nothing_is_sure() {
    ThreadReadings good = quarterNpt().withPitches(mm(7.06), 5);
    assertThat(ThreadIdentification.of(good.withTaperSeen(true)).identified()).isPresent();
    ThreadIdentification doubted = ThreadIdentification.of(good.withTaperSeen(false));
    assertThat(doubted.verdict()).isEqualTo(ThreadVerdict.AMBIGUOUS);
    assertThat(doubted.candidates().get(0).thread().label()).isEqualTo("1/4 NPT male");
  }

  @Test
  void one_reading_that_does_not_fit_keeps_the_answer_from_being_firm() {
    ThreadReadings good = quarterNpt().withPitches(mm(7.06), 5);
    assertThat(ThreadIdentification.of(good.withFlankAngle(60.0, 1.0)).identified())
        .isPresent();
    assertThat(ThreadIdentification.of(good.withFlankAngle(63.0, 1.0)).identified())
        .isPresent();
    assertThat(ThreadIdentification.of(good.withFlankAngle(63.3, 1.0)).identified())
        .isEmpty();
    assertThat(ThreadIdentification.of(good.withFlankAngle(55.0, 1.0)).identified())
        .isEmpty();
    assertThat(ThreadIdentification.of(good.withPitch(mm(1.42), mm(0.01))).identified())
        .isPresent();
    ThreadIdentification apart = ThreadIdentification.of(good.withPitch(mm(1.336), mm(0.01)));
    assertThat(apart.identified()).isEmpty();
    // a cone that grows half of what it should, or far too much
    for (double last : new double[] {13.35, 14.4}) {
      assertThat(ThreadIdentification.of(good.withLastCrest(mm(last))).identified())
          .as("last crest %s mm", last)
          .isEmpty();
    }
  }

  @Test
  void a_shop_that_misreads_more_leaves_trusts_them_less() {
    ThreadReadings readings = ThreadReadings.ofMale(mm(12.95)).withThreadsPerInch(19);
    double usual = ThreadIdentification.of(readings).candidates().get(0).probability();
    double careless = ThreadIdentification.of(readings.withLeafMisread(0.4))
        .candidates()
        .get(0)
        .probability();
    assertThat(careless).isLessThan(usual);
    ThreadReadings without = quarterNpt();
    assertThatThrownBy(() -> without.withLeafMisread(0.1))
        .hasMessageContaining("add the leaf first");
    assertThatThrownBy(() -> readings.withLeafMisread(0.51)).hasMessageContaining("[0, 0.5]");
    assertThatThrownBy(() -> without.withMetricLeaf(mm(0.19)))
        .hasMessageContaining("[0.2, 6.5] mm");
    assertThatThrownBy(() -> without.withMetricLeaf(mm(6.51)))
        .hasMessageContaining("[0.2, 6.5] mm");
    assertThat(without.withMetricLeaf(mm(0.2)).leafPitch()).contains(mm(0.2));
  }

  /**
   * 1/4 NPT has a pitch of 25.4 mm / 18 = 1.4111 mm. Off by 1.95 standard uncertainties it is firm, by 2.05 it is
   * not: it fits still, and 5 of 100 good readings lie there, but so do more threads of no standard.
   */
  @ParameterizedTest
  @CsvSource({"1.95, true", "-1.95, true", "2.05, false", "-2.05, false", "2.4, false"})
  void a_counted_pitch_is_firm_within_two_standard_uncertainties(double sigmas, boolean firm) {
    double over = 5.0 * 25.4 / 18.0;
    ThreadReadings counted = quarterNpt().withPitches(mm(over), 5);
    double u = counted.pitchCount().orElseThrow().uncertainty().millimetres();
    ThreadReadings readings =
        quarterNpt().withPitches(mm(over + sigmas * u), 5).withFlankAngle(60.0, 1.0);
    ThreadReadings otherwise = counted.withPitch(mm(25.4 / 18.0 + sigmas * 0.01), mm(0.01));
    for (ThreadReadings each : List.of(readings, otherwise.withFlankAngle(60.0, 1.0))) {
      ThreadIdentification answer = ThreadIdentification.of(each);
      assertThat(answer.candidates().get(0).thread().label()).isEqualTo("1/4 NPT male");
      assertThat(answer.candidates().get(0).probability()).isGreaterThan(0.95);
      assertThat(answer.verdict())
          .isEqualTo(firm ? ThreadVerdict.IDENTIFIED : ThreadVerdict.AMBIGUOUS);
      if (!firm) {
        assertThat(answer.settlingReadings()).containsExactly(SettlingReading.PITCH_CLOSER);
        assertThat(answer.inWords())
            .startsWith("likely 1/4 NPT male")
            .endsWith(
                " of the threads compared, which these readings do not prove; measure the length over the pitches again, over as many as you can: it lies"
                    + " farther off the likeliest thread than 95 of 100 good readings do");
      }
      assertThat(answer.working().toText().contains("A firm answer takes a z from −2 to 2"))
          .isEqualTo(!firm);
    }
  }

  @Test
  void readings_tell_the_misread_leaf_and_the_pitch_found_otherwise() {
    ThreadReadings plain = ThreadReadings.ofMale(Length.ofMillimetres(13.1));
    assertThat(plain.leafMisread()).isEmpty();
    assertThat(plain.otherPitch()).isEmpty();
    assertThat(plain.otherPitchUncertainty()).isEmpty();
    ThreadReadings read = plain
        .withPitches(Length.ofMillimetres(7.06), 5)
        .withThreadsPerInch(18.0)
        .withPitch(Length.ofMillimetres(1.411), Length.ofMillimetres(0.01));
    assertThat(read.leafMisread()).hasValue(org.airfit.measure.PitchGauge.USUAL_MISREAD);
    assertThat(read.withLeafMisread(0.2).leafMisread()).hasValue(0.2);
    assertThat(read.otherPitch()).contains(Length.ofMillimetres(1.411));
    assertThat(read.otherPitchUncertainty()).contains(Length.ofMillimetres(0.01));
  }
}
