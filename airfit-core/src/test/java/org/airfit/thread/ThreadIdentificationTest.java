package org.airfit.thread;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.Stream;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.quantity.Length;
import org.airfit.thread.ThreadIdentification.Verdict;
import org.airfit.working.Step;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class ThreadIdentificationTest {

  private static Length mm(double value) {
    return Length.ofMillimetres(value);
  }

  static Stream<Row> cases() {
    return Rows.of(ThreadIdentificationTest.class, "identification_cases.csv")
        .filter(row -> row.text("member").equals("male"))
        // comes with the model that reads both diameters on one cone
        .filter(row -> !row.text("id").equals("I05"));
  }

  private static ThreadReadings readings(Row row) {
    ThreadReadings readings = ThreadReadings.ofMale(
        mm(row.number("dia_first_mm")), mm(row.number("length_over_pitches_mm")), (int)
            row.number("pitches_counted"));
    return row.has("dia_last_mm")
        ? readings.withLastCrest(mm(row.number("dia_last_mm")))
        : readings;
  }

  private static End end(String written, Row row) {
    return End.parse(written.strip() + " " + row.text("member"));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("cases")
  void worked_cases_are_told_or_left_open_as_they_should_be(Row row) {
    ThreadIdentification answer = ThreadIdentification.of(readings(row));
    for (String never : row.text("must_not_report").split(";", -1)) {
      assertThat(answer.verdict() == Verdict.IDENTIFIED
              && answer.ranking().get(0).end().equals(end(never, row)))
          .as(row.text("why"))
          .isFalse();
    }
    if (row.text("expected").equals("ambiguous")) {
      assertThat(answer.verdict()).isEqualTo(Verdict.AMBIGUOUS);
      List<End.Threaded> open = answer.ranking().stream()
          .filter(candidate -> candidate.probability() > 0.05)
          .map(ThreadIdentification.Candidate::end)
          .toList();
      for (String alternative : row.text("acceptable_alternatives").split(";", -1)) {
        assertThat(open).as(row.text("why")).anyMatch(end(alternative, row)::equals);
      }
    } else {
      assertThat(answer.verdict()).as(row.text("why")).isEqualTo(Verdict.IDENTIFIED);
      assertThat(answer.ranking().get(0).end()).isEqualTo(end(row.text("expected"), row));
    }
  }

  @Test
  void an_ambiguous_answer_names_the_reading_that_would_settle_it() {
    ThreadReadings one = ThreadReadings.ofMale(mm(21.00), mm(9.07), 5);
    assertThat(ThreadIdentification.of(one).inWords()).contains("last full thread");
  }

  @Test
  void readings_outside_any_thread_match_none_and_the_nearest_is_offered() {
    ThreadIdentification answer =
        ThreadIdentification.of(ThreadReadings.ofMale(mm(18.4), mm(7.5), 5));
    assertThat(answer.verdict()).isEqualTo(Verdict.NO_MATCH);
    assertThat(answer.unknownProbability()).isGreaterThan(0.95);
    assertThat(answer.inWords()).contains("nearest");
    assertThat(answer).hasToString(answer.inWords());
  }

  @Test
  void chances_add_up_to_one() {
    ThreadIdentification answer =
        ThreadIdentification.of(ThreadReadings.ofMale(mm(20.7), mm(9.07), 5));
    assertThat(answer.ranking().stream()
                .mapToDouble(ThreadIdentification.Candidate::probability)
                .sum()
            + answer.unknownProbability())
        .isCloseTo(1.0, within(1.0e-12));
  }

  @Test
  void the_working_tells_what_was_compared() {
    ThreadReadings readings = ThreadReadings.ofMale(mm(9.99), mm(4.70), 5).withLastCrest(mm(10.29));
    ThreadIdentification answer = ThreadIdentification.of(readings);
    assertThat(answer.readings()).isSameAs(readings);
    for (Step step : answer.working().steps()) {
      assertThat(Calculator.keyIn(step))
          .isCloseTo(Calculator.printed(step), within(Calculator.lastDigit(step)));
    }
    assertThat(answer.working().toText()).contains("1/8 NPT male").contains("None of these");
    assertThat(ThreadIdentification.sources()).isNotEmpty();
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 51})
  void pitches_counted_out_of_range_are_refused(int pitches) {
    assertThatThrownBy(() -> ThreadReadings.ofMale(mm(10.0), mm(5.0), pitches))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("pitches counted must be in [1, 50], was " + pitches);
  }

  @Test
  void readings_of_nothing_are_refused() {
    assertThatThrownBy(() -> ThreadReadings.ofMale(mm(0.0), mm(5.0), 5))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("first crest must be above 0 mm");
    assertThatThrownBy(() -> ThreadReadings.ofMale(mm(10.0), mm(0.0), 5))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("length over the pitches must be above 0 mm");
    assertThatThrownBy(() -> ThreadReadings.ofMale(mm(10.0), mm(5.0), 5).withLastCrest(mm(0.0)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("last crest must be above 0 mm");
  }

  @Test
  void readings_print_in_millimetres_with_threads_per_inch() {
    assertThat(ThreadReadings.ofMale(mm(9.99), mm(4.70), 5)
            .withLastCrest(mm(10.29))
            .toString())
        .contains("9.99 mm")
        .contains("10.29 mm")
        .contains("27.02 threads per inch");
  }
}
