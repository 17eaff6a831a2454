package org.airfit.calls;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.airfit.measure.Instrument;
import org.airfit.plug.Dimension;
import org.airfit.plug.Identification;
import org.airfit.plug.Identifier;
import org.airfit.plug.PlugReading;
import org.airfit.plug.ReferenceSet;
import org.airfit.quantity.Length;
import org.junit.jupiter.api.Test;

/** What the plug is, as the library asked directly tells it. */
class IdentifyCallTest {

  private static Map<String, Object> identify(Object... fields) throws RefusedException {
    return Calls.answer("identify", Spread.of(fields));
  }

  private static void assertRefused(String field, String words, Object... fields) {
    assertThatExceptionOfType(RefusedException.class)
        .isThrownBy(() -> identify(fields))
        .withMessageContaining(words)
        .satisfies(refused -> {
          assertThat(refused.field()).isEqualTo(field);
          assertThat(refused.name()).isEqualTo("WrongField");
          assertThat(refused.getMessage()).doesNotContain("\n");
        });
  }

  /** Nobody told a place: the rules are those that a job is judged by then. */
  @Test
  void no_rules_of_other_places_are_said_to_have_judged() throws Exception {
    for (Map<String, Object> answer : List.of(
        identify("set", Example.workshop(), "readings", Spread.of("tip diameter", "11.9 mm")),
        Calls.answer("willItGo", Spread.of("one", "1/4 NPT male", "other", "1/4 NPT female")))) {
      assertThat(String.valueOf(answer.get("cautions")))
          .contains("judged by rules of US federal law, as far as airfit holds them");
    }
  }

  @Test
  void the_answer_is_that_of_the_library() throws Exception {
    ReferenceSet set = SetCall.read(Example.workshop(), Optional.empty()).set();
    Identification direct = Identifier.of(set)
        .withInstrument(Instrument.VERNIER_CALIPER_0_02)
        .withWearAllowance(Identifier.usualWear())
        .identify(List.of(
            PlugReading.of(
                Dimension.TIP_DIAMETER,
                Instrument.VERNIER_CALIPER_0_02,
                Length.ofMillimetres(11.92),
                Length.ofMillimetres(11.96)),
            PlugReading.of(
                Dimension.GROOVE_WIDTH,
                Instrument.VERNIER_CALIPER_0_02,
                Length.ofMillimetres(5.18))));
    Map<String, Object> answer = identify(
        "set",
        Example.workshop(),
        "caliper",
        Instrument.VERNIER_CALIPER_0_02.label(),
        "readings",
        Spread.of("tip diameter", List.of("11.92 mm", "11.96 mm"), "groove width", "5.18 mm"));
    assertThat(answer.get("kind")).isEqualTo("candidate");
    assertThat(answer.get("profile"))
        .isEqualTo(Map.of("id", direct.best().profile().id(), "name", "Gannet"));
    List<Object> chances = new ArrayList<>();
    direct.candidates().forEach(candidate -> chances.add(candidate.probability()));
    assertThat((List<?>) answer.get("candidates"))
        .extracting(candidate -> ((Map<?, ?>) candidate).get("probability"))
        .isEqualTo(chances);
    assertThat((List<?>) answer.get("next"))
        .extracting(next -> ((Map<?, ?>) next).get("text"))
        .isEqualTo(direct.nextReadings().stream().map(next -> next.inWords()).toList());
    assertThat(answer.get("working")).isNull();
  }

  @Test
  void what_is_left_blank_is_not_read_yet_and_something_is_still_to_be_read_first()
      throws Exception {
    Map<String, Object> answer = identify(
        "set",
        Example.workshop(),
        "readings",
        Spread.of("tip diameter", " ", "bore", List.of("", " ")));
    assertThat(answer.get("kind")).isEqualTo("insufficientData");
    assertThat((List<?>) answer.get("next")).hasSize(9);
    assertThat(answer).doesNotContainKey("picture");
  }

  @Test
  void inches_typed_as_millimetres_are_told_as_a_slip() throws Exception {
    Map<String, Object> answer = identify(
        "set",
        Example.workshop(),
        "readings",
        Spread.of(
            "tip diameter", "0.468 mm", "collar diameter", "0.594 mm", "groove width", "0.142 mm"));
    assertThat((List<?>) answer.get("slips")).isNotEmpty();
    assertThat(String.valueOf(answer.get("slips"))).contains("in");
    assertThat(answer.get("kind")).isEqualTo("ambiguous");
  }

  @Test
  void a_socket_and_a_thread_need_no_set() throws Exception {
    assertThat(identify("socketOnly", true).get("kind")).isEqualTo("socketOnly");
    Map<String, Object> thread = identify(
        "thread", Spread.of("firstCrest", "13.2 mm", "pitches", 5, "overPitches", "7.05 mm"));
    assertThat(thread.get("kind")).isEqualTo("threadOnly");
    assertThat(thread).containsKey("thread").doesNotContainKey("set");
    assertThat(thread.get("headline")).isEqualTo("Only its thread was read.");
    Map<String, Object> beside = identify(
        "set",
        Example.workshop(),
        "thread",
        Spread.of("firstCrest", "13.2 mm", "pitches", 5, "overPitches", "7.05 mm"));
    assertThat(beside.get("headline")).isEqualTo("Only its thread was read.");
    assertThat(beside.get("kind")).isEqualTo("insufficientData");
    assertThat((List<?>) beside.get("next")).isNotEmpty();
    assertThat(identify("set", Example.workshop(), "readings", Map.of()).get("headline"))
        .isEqualTo("Nothing was read yet.");
    assertRefused("set", "without one no plug can be named", "readings", Map.of());
  }

  @Test
  void a_refusal_names_the_field_of_the_call() throws Exception {
    String set = Example.workshop();
    assertRefused(
        "readings.tip diameter",
        "a comma",
        "set",
        set,
        "readings",
        Spread.of("tip diameter", "11,2 mm"));
    assertRefused(
        "readings.bore[2]",
        "the unit is missing",
        "set",
        set,
        "readings",
        Spread.of("bore", List.of("7.6 mm", "7.6")));
    assertRefused("readings", "nearest: bore", "set", set, "readings", Spread.of("bor", "7 mm"));
    assertRefused(
        "caliper",
        "digital caliper 0.01 mm",
        "set",
        set,
        "caliper",
        "ruler",
        "readings",
        Spread.of("bore", "7 mm"));
    assertRefused("worn", "the unit is missing", "set", set, "worn", "3");
    assertRefused(
        "profilesInUse", "goes with socketOnly", "set", set, "profilesInUse", List.of("tern"));
    assertRefused("reading", "is no field here", "set", set, "reading", Map.of());
    assertRefused("working", "true, false", "set", set, "working", "yes");
    assertRefused("units", "was \"metric\"; accepted: SI, US", "set", set, "units", "metric");
  }
}
