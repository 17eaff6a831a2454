package org.airfit.thread;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.airfit.Pencil;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.joint.End;
import org.airfit.quantity.Length;
import org.airfit.thread.ThreadIdentification.SettlingReading;
import org.airfit.working.Completeness;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class ThreadIdentificationTest {

  private static Length mm(double value) {
    return Length.ofMillimetres(value);
  }

  static Stream<Row> cases() {
    return Rows.of(ThreadIdentificationTest.class, "identification_cases.csv");
  }

  private static ThreadReadings readings(Row row) {
    Length first = mm(row.number("dia_first_mm"));
    ThreadReadings readings = (row.text("member").equals("male")
            ? ThreadReadings.ofMale(first)
            : ThreadReadings.ofFemale(first))
        .withPitches(mm(row.number("length_over_pitches_mm")), (int) row.number("pitches_counted"));
    return row.has("dia_last_mm")
        ? readings.withLastCrest(mm(row.number("dia_last_mm")))
        : readings;
  }

  private static ThreadDesignation thread(String written) {
    return ((End.Threaded) End.parse(written)).thread();
  }

  private static ThreadDesignation thread(String written, Row row) {
    return thread(written.strip() + " " + row.text("member"));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("cases")
  void worked_cases_are_told_or_left_open_as_they_should_be(Row row) {
    ThreadIdentification answer = ThreadIdentification.of(readings(row));
    for (String never : row.text("must_not_report").split(";", -1)) {
      assertThat(answer.verdict() == ThreadVerdict.IDENTIFIED
              && answer.candidates().get(0).thread().equals(thread(never, row)))
          .as(row.text("why"))
          .isFalse();
    }
    if (row.text("expected").equals("ambiguous")) {
      assertThat(answer.verdict()).isEqualTo(ThreadVerdict.AMBIGUOUS);
      List<NamedThread> open = answer.candidates().stream()
          .filter(candidate -> candidate.probability() > 0.05)
          .map(ThreadCandidate::thread)
          .toList();
      for (String alternative : row.text("acceptable_alternatives").split(";", -1)) {
        assertThat(open).as(row.text("why")).anyMatch(thread(alternative, row)::equals);
      }
    } else {
      assertThat(answer.verdict())
          .as("%s: %s", row.text("why"), answer)
          .isEqualTo(ThreadVerdict.IDENTIFIED);
      assertThat(answer.identified()).contains(thread(row.text("expected"), row));
    }
  }

  @Test
  void an_ambiguous_answer_names_the_readings_that_would_settle_it() {
    ThreadIdentification one =
        ThreadIdentification.of(ThreadReadings.ofMale(mm(21.00), mm(9.07), 5));
    assertThat(one.inWords()).contains("last full thread").contains("flanks");
    assertThat(one.settlingReadings())
        .containsExactly(SettlingReading.LAST_CREST, SettlingReading.FLANK_ANGLE);
    assertThat(one.identified()).isEmpty();
    assertThat(one.cautions()).isNotEmpty();
    ThreadIdentification settled = ThreadIdentification.of(
        ThreadReadings.ofMale(mm(21.00), mm(9.07), 5).withFlankAngle(60.0, 1.0));
    assertThat(settled.candidates().get(0).thread().label()).isEqualTo("1/2 NPT male");
    assertThat(settled.settlingReadings()).isEmpty();
  }

  @Test
  void an_answer_without_a_pitch_asks_for_it() {
    ThreadIdentification answer = ThreadIdentification.of(ThreadReadings.ofMale(mm(13.10)));
    assertThat(answer.verdict()).isEqualTo(ThreadVerdict.AMBIGUOUS);
    assertThat(answer.settlingReadings().get(0)).isEqualTo(SettlingReading.PITCH);
    assertThat(ThreadIdentification.of(
            ThreadReadings.ofMale(mm(13.10)).withThreadsPerInch(19).withTaperSeen(false)))
        .satisfies(
            told -> assertThat(told.candidates().get(0).thread().label()).isEqualTo("G 1/4 male"));
  }

  /**
   * The overlap of trap 7: NPSM 1/2 from 20.65 to 20.90 mm, G 1/2 from 20.671 to 20.955 mm, both 14 per inch and
   * parallel.
   */
  @Test
  void npsm_and_g_of_one_half_are_told_apart_by_nothing_but_the_flanks() {
    ThreadReadings readings =
        ThreadReadings.ofMale(mm(20.80), mm(9.07), 5).withLastCrest(mm(20.80));
    ThreadIdentification answer = ThreadIdentification.of(readings);
    assertThat(answer.verdict()).isEqualTo(ThreadVerdict.AMBIGUOUS);
    assertThat(answer.candidates().subList(0, 2))
        .extracting(candidate -> candidate.thread().label())
        .containsExactly("G 1/2 male", "1/2 NPSM male");
    assertThat(answer.settlingReadings()).containsExactly(SettlingReading.FLANK_ANGLE);
    assertThat(ThreadIdentification.of(readings.withFlankAngle(55.0, 1.0)).identified())
        .contains(thread("G 1/2 male"));
    assertThat(ThreadIdentification.of(readings.withFlankAngle(60.0, 1.0)).identified())
        .contains(thread("1/2 NPSM male"));
  }

  @Test
  void rp_and_g_are_told_apart_by_nothing_but_a_closer_diameter() {
    ThreadIdentification answer = ThreadIdentification.of(ThreadReadings.ofFemale(mm(18.70))
        .withLastCrest(mm(18.70))
        .withPitches(mm(9.07), 5)
        .withFlankAngle(55.0, 0.5));
    assertThat(answer.verdict()).isEqualTo(ThreadVerdict.AMBIGUOUS);
    assertThat(answer.settlingReadings()).containsExactly(SettlingReading.CLOSER_DIAMETER);
    assertThat(answer.inWords()).contains("Rp 1/2 female").contains("G 1/2 female");
  }

  /** A first thread of 13.25 mm lies nearer to G 1/4 (13.157) than to the pipe of NPT 1/4 (13.716): trap 5. */
  @Test
  void the_first_thread_is_not_taken_for_the_gauge_plane() {
    assertThat(ThreadIdentification.of(
                ThreadReadings.ofMale(mm(13.25), mm(7.06), 5).withLastCrest(mm(13.71)))
            .identified())
        .contains(thread("1/4 NPT male"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"1/2 NPT", "1/2 NPSC", "1 NPSM", "Rc 1/2", "G 3/4", "3 NPT", "Rc 4"})
  void a_female_thread_of_basic_size_is_found_or_at_least_not_lost(String written) {
    ThreadDesignation end = thread(written + " female");
    PipeThread thread = end.geometry().orElseThrow();
    Limits first = thread.firstCrest(Gender.FEMALE);
    double mouth = 0.5 * (first.least().millimetres() + first.most().millimetres());
    double taper = end.family().isTapered() ? 6.0 * 25.4 / thread.threadsPerInch() / 16.0 : 0.0;
    ThreadIdentification answer = ThreadIdentification.of(ThreadReadings.ofFemale(mm(mouth))
        .withLastCrest(mm(mouth - taper))
        .withThreadsPerInch(thread.threadsPerInch())
        .withTaperSeen(end.family().isTapered())
        .withFlankAngle(end.family().flankAngleDegrees(), 1.0));
    assertThat(answer.candidates().get(0).thread()).as(answer.inWords()).isEqualTo(end);
  }

  @Test
  void readings_outside_any_thread_match_none_and_the_nearest_is_offered() {
    ThreadIdentification answer =
        ThreadIdentification.of(ThreadReadings.ofMale(mm(18.4), mm(7.5), 5));
    assertThat(answer.verdict()).isEqualTo(ThreadVerdict.NO_MATCH);
    assertThat(answer.explanations())
        .extracting(SlipCandidate::toString)
        .containsExactly("M20x1.5 female if outside and inside are swapped");
    assertThat(answer.inWords())
        .contains("check: is it metric")
        .contains("were threads counted as pitches")
        .contains("the nearest is")
        .contains("threads per inch and a first crest of");
    assertThat(answer).hasToString(answer.inWords());
    assertThat(answer.settlingReadings()).isEmpty();
    assertThat(answer.nearest().size().label()).isIn("3/8", "1/2");
    assertThat(answer.cautions()).isNotEmpty();
  }

  @Test
  void threads_per_inch_of_no_family_match_none() {
    ThreadIdentification answer =
        ThreadIdentification.of(ThreadReadings.ofMale(mm(20.9)).withThreadsPerInch(20));
    assertThat(answer.verdict()).isEqualTo(ThreadVerdict.NO_MATCH);
    assertThat(answer.nearest().family().form()).isNotNull();
  }

  static Stream<ThreadReadings> some() {
    return Stream.of(
        ThreadReadings.ofMale(mm(13.25), mm(7.06), 5).withLastCrest(mm(13.71)),
        ThreadReadings.ofMale(mm(13.9), mm(7.5), 5).withThreadsPerInch(18),
        ThreadReadings.ofMale(mm(13.9)).withMetricLeaf(mm(1.5)).withPitch(mm(1.51), mm(0.01)),
        ThreadReadings.ofFemale(mm(13.25)).withPitches(mm(7.06), 6).withPitch(mm(1.41), mm(0.02)),
        ThreadReadings.ofMale(mm(20.7), mm(9.07), 5),
        ThreadReadings.ofMale(mm(9.99), mm(4.70), 5).withLastCrest(mm(10.29)),
        ThreadReadings.ofMale(mm(21.0)).withTaperSeen(true),
        ThreadReadings.ofFemale(mm(18.4)).withFlankAngle(59.0, 2.0),
        ThreadReadings.ofFemale(mm(150.0)),
        ThreadReadings.ofMale(mm(5.0)).withThreadsPerInch(27).withTaperSeen(false));
  }

  @ParameterizedTest
  @MethodSource("some")
  void chances_add_up_to_one(ThreadReadings readings) {
    ThreadIdentification answer = ThreadIdentification.of(readings);
    assertThat(answer.candidates().stream()
                .mapToDouble(ThreadCandidate::probability)
                .sum()
            + answer.unknownProbability())
        .isCloseTo(1.0, within(1.0e-12));
    assertThat(answer.candidates())
        .extracting(ThreadCandidate::probability)
        .isSortedAccordingTo((a, b) -> Double.compare(b, a));
  }

  @Test
  void a_chance_is_never_printed_as_certain() {
    ThreadIdentification answer = ThreadIdentification.of(
        ThreadReadings.ofMale(mm(13.25), mm(7.06), 5).withLastCrest(mm(13.71)));
    assertThat(answer.candidates().get(0).probability()).isGreaterThan(0.9995);
    assertThat(answer.candidates().get(0).percent()).isEqualTo("> 99.9 %");
    assertThat(answer.inWords()).isEqualTo("1/4 NPT male (> 99.9 %)");
    assertThat(answer.working().toText())
        .contains("1/4 NPT male (> 99.9 %)")
        .contains("Chance that it is not 1/4 NPT male")
        .doesNotContain("100 %")
        .doesNotContain("= 1\n");
  }

  @ParameterizedTest
  @MethodSource("some")
  void the_working_can_be_worked_again(ThreadReadings readings) {
    ThreadIdentification answer = ThreadIdentification.of(readings);
    assertThat(answer.readings()).isSameAs(readings);
    Pencil.check(answer);
    Completeness.check(answer);
    assertThat(answer.working().toText()).contains("None of these").contains("first crest of");
    String title = answer.working(UnitSystem.US).toText().lines().findFirst().orElseThrow();
    assertThat(title).contains(" thread from ", " in");
    // a metric leaf is marked in mm whatever the units of the sheet
    assertThat(title.replace("leaf 1.5 mm", "leaf")).doesNotContain("mm");
    assertThat(ThreadIdentification.sources()).hasSize(10);
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 51})
  void pitches_counted_out_of_range_are_refused(int pitches) {
    assertThatThrownBy(() -> ThreadReadings.ofMale(mm(10.0), mm(5.0), pitches))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("pitches counted must be in [1, 50], was " + pitches);
  }

  @Test
  void a_length_over_pitches_that_no_thread_has_is_refused() {
    ThreadReadings readings = ThreadReadings.ofMale(mm(10.0));
    for (double outside : new double[] {3.0e-320, 0.000999, 10_001.0, 1.0e300}) {
      refused(
          () -> readings.withPitches(mm(outside), 8),
          "length over the pitches must be in [0.001, 10000] mm");
    }
    for (double inside : new double[] {0.001, 10_000.0}) {
      assertThat(readings.withPitches(mm(inside), 50).toString()).contains("counted over 50");
    }
  }

  @Test
  void readings_of_nothing_are_refused() {
    ThreadReadings readings = ThreadReadings.ofMale(mm(10.0));
    Length nothing = mm(0.0);
    refused(() -> ThreadReadings.ofMale(nothing), "first crest must be above 0 mm");
    refused(() -> ThreadReadings.ofFemale(nothing), "bore at the mouth must be above 0 mm");
    refused(
        () -> readings.withPitches(nothing, 5),
        "length over the pitches must be in [0.001, 10000] mm, was 0 mm");
    refused(() -> readings.withLastCrest(nothing), "last crest must be above 0 mm");
    refused(() -> readings.withPitch(nothing, mm(0.1)), "pitch must be above 0 mm");
    refused(() -> readings.withPitch(mm(1.0), nothing), "uncertainty of the pitch must be above");
    refused(() -> readings.withDiameterUncertainty(nothing), "uncertainty of a diameter must be");
  }

  @ParameterizedTest
  @ValueSource(doubles = {3.99, 80.01, Double.NaN})
  void threads_per_inch_out_of_range_are_refused(double threadsPerInch) {
    refused(
        () -> ThreadReadings.ofMale(mm(10.0)).withThreadsPerInch(threadsPerInch),
        "threads per inch must be in [4, 80] 1/in, was " + threadsPerInch);
  }

  @ParameterizedTest
  @ValueSource(doubles = {29.99, 90.01, Double.NaN})
  void flank_angles_out_of_range_are_refused(double degrees) {
    refused(
        () -> ThreadReadings.ofMale(mm(10.0)).withFlankAngle(degrees, 1.0),
        "flank angle must be in [30, 90] °, was " + degrees);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.049, 20.01, Double.NaN})
  void uncertain_flank_angles_are_refused(double uncertainty) {
    refused(
        () -> ThreadReadings.ofMale(mm(10.0)).withFlankAngle(60.0, uncertainty),
        "uncertainty of the flank angle must be in [0.05, 20] °, was " + uncertainty);
  }

  private static void refused(Supplier<ThreadReadings> attempt, String message) {
    assertThatThrownBy(attempt::get)
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining(message);
  }

  @Test
  void bounds_themselves_are_accepted() {
    ThreadReadings readings = ThreadReadings.ofFemale(mm(10.0));
    assertThat(readings.withThreadsPerInch(4.0).pitch().orElseThrow().millimetres())
        .isCloseTo(6.35, within(1e-12));
    assertThat(readings.withThreadsPerInch(80.0).leafPitch()).isPresent();
    assertThat(readings.withFlankAngle(30.0, 0.05).flankAngleDegrees()).hasValue(30.0);
    assertThat(readings.withFlankAngle(90.0, 20.0).flankAngleUncertaintyDegrees())
        .hasValue(20.0);
    assertThat(readings.withPitches(mm(50.0), 50).pitch()).contains(mm(50.0).times(1.0 / 50));
    assertThat(readings.flankAngleDegrees()).isEmpty();
    assertThat(readings.flankAngleUncertaintyDegrees()).isEmpty();
    assertThat(readings.taperSeen()).isEmpty();
    assertThat(readings.gender()).isEqualTo(Gender.FEMALE);
    assertThat(readings.withDiameterUncertainty(mm(0.1)).diameterUncertainty()).isEqualTo(mm(0.1));
  }

  @Test
  void readings_print_in_millimetres_with_threads_per_inch() {
    assertThat(ThreadReadings.ofMale(mm(9.99), mm(4.70), 5).withLastCrest(mm(10.29)))
        .hasToString(
            "first crest 9.99 mm, last 10.29 mm, pitch 0.94 mm (27.02 threads per inch) counted over 5");
    assertThat(ThreadReadings.ofFemale(mm(18.8)).withTaperSeen(false).withFlankAngle(55.0, 1.0))
        .hasToString("bore at the mouth 18.8 mm, no taper seen, flanks 55°");
    assertThat(ThreadReadings.ofMale(mm(21.0)).withTaperSeen(true))
        .hasToString("first crest 21 mm, taper seen");
  }
}
