package org.airfit.plug;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.airfit.measure.Instrument;
import org.airfit.measure.PartSpread;
import org.airfit.quantity.Length;
import org.airfit.safety.Caution;
import org.airfit.source.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ClueTest {

  private static Length mm(double value) {
    return Length.ofMillimetres(value);
  }

  private static PlugProfile.Builder twin(String id) {
    return PlugProfile.builder(id)
        .from(Provenance.standardEntered(), Source.demo("twins for a test"))
        .dimension(Dimension.TIP_DIAMETER, PartSpread.normal(mm(10.0), mm(0.02)))
        .dimension(Dimension.TIP_LENGTH, PartSpread.normal(mm(20.0), mm(0.05)));
  }

  /** Two profiles that no caliper tells apart, and a third that is bare of clues. */
  private static final ReferenceSet TWINS = ReferenceSet.of(
      "twins",
      List.of(
          twin("left").aliases("M", "I").grooveForm(GrooveForm.FLAT).build(),
          twin("right").aliases("M", "T").grooveForm(GrooveForm.VEE).build(),
          twin("bare").build()));

  private static final List<PlugReading> READINGS = List.of(
      PlugReading.of(Dimension.TIP_DIAMETER, Instrument.DIGITAL_CALIPER, mm(10.0)),
      PlugReading.of(Dimension.TIP_LENGTH, Instrument.DIGITAL_CALIPER, mm(20.0)));

  private static Identification with(Clue... clues) {
    return Identifier.of(TWINS).withUnknownPrior(0.0).identify(READINGS, List.of(clues));
  }

  private static double chance(Identification answer, String id) {
    return answer.candidates().stream()
        .filter(candidate -> candidate.profile().id().equals(id))
        .findFirst()
        .orElseThrow()
        .probability();
  }

  /** By Bayes' rule with equal likelihoods of the lengths: 0.9 : 0.1 : 0.5. */
  @Test
  void a_groove_form_shifts_the_chances_by_its_reliability() {
    Identification answer = with(Clue.grooveForm(GrooveForm.VEE, 0.9));
    assertThat(chance(answer, "right")).isCloseTo(0.9 / 1.5, within(1.0e-12));
    assertThat(chance(answer, "left")).isCloseTo(0.1 / 1.5, within(1.0e-12));
    assertThat(chance(answer, "bare")).isCloseTo(0.5 / 1.5, within(1.0e-12));
  }

  @Test
  void a_letter_points_at_every_profile_it_may_mean() {
    Identification answer = with(Clue.marking(" m ", 0.8));
    assertThat(chance(answer, "left"))
        .isCloseTo(0.8 / 2.1, within(1.0e-12))
        .isEqualTo(chance(answer, "right"));
    assertThat(chance(with(Clue.marking("T", 0.8)), "right"))
        .isCloseTo(0.8 / (0.8 + 0.2 + 0.5), within(1.0e-12));
    assertThat(answer.cautions()).extracting(Caution::title).contains("Markings");
    assertThat(with().cautions()).extracting(Caution::title).doesNotContain("Markings");
  }

  @Test
  void a_gauge_says_yes_or_no() {
    assertThat(chance(with(Clue.gauge("left", true, 0.95)), "left"))
        .isCloseTo(0.95 / 1.05, within(1.0e-12));
    assertThat(chance(with(Clue.gauge("left", false, 0.95)), "left"))
        .isCloseTo(0.05 / 1.95, within(1.0e-12));
  }

  @Test
  void two_clues_that_agree_multiply() {
    Identification answer =
        with(Clue.grooveForm(GrooveForm.VEE, 0.9), Clue.gauge("right", true, 0.8));
    assertThat(chance(answer, "right"))
        .isCloseTo(0.72 / (0.72 + 0.1 * 0.2 + 0.5 * 0.2), within(1.0e-12));
    assertThat(answer.clues()).hasSize(2);
    assertThat(answer.inWords())
        .contains("Counted as clues", "its groove is V-shaped", "the gauge for right takes it");
  }

  @Test
  void a_clue_worth_nothing_changes_nothing() {
    Identification without = Identifier.of(TWINS).identify(READINGS);
    Identification with = Identifier.of(TWINS).identify(READINGS, List.of(Clue.marking("I", 0.5)));
    assertThat(chance(with, "left")).isCloseTo(chance(without, "left"), within(1.0e-12));
    assertThat(with.unknownProbability()).isCloseTo(without.unknownProbability(), within(1.0e-12));
  }

  @Test
  void clues_alone_never_identify() {
    Identification answer = Identifier.of(TWINS)
        .identify(List.of(), List.of(Clue.marking("T", 0.999), Clue.gauge("right", true, 0.999)));
    assertThat(answer.verdict()).isEqualTo(PlugVerdict.INSUFFICIENT_DATA);
    assertThat(answer.profile()).isEmpty();
    assertThat(answer.working().toText()).contains("Clue 1, marked \"T\"");
  }

  @Test
  void the_working_adds_the_clues_to_the_likelihood() {
    String text = Identifier.of(TWINS)
        .identify(READINGS, List.of(Clue.gauge("left", false, 0.75)))
        .working()
        .toText();
    assertThat(text)
        .contains(
            "Clue: the gauge for left does not take it (reliability 0.75).",
            "shows it with the chance 0.25.",
            "ln c1",
            "ln(1/2)");
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.499, 1.0, Double.NaN})
  void a_certain_or_a_perverse_clue_is_refused(double reliability) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Clue.marking("M", reliability))
        .withMessageContainingAll("reliability", "[0.5, 1)");
  }

  @Test
  void clues_that_tell_of_nothing_or_twice_of_one_thing_are_refused() {
    assertThatIllegalArgumentException().isThrownBy(() -> Clue.marking(" ", 0.8));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Clue(Clue.Kind.GROOVE_FORM, "SQUARE", 0.8))
        .withMessageContainingAll("FLAT", "SQUARE");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> with(Clue.gauge("elsewhere", true, 0.9)))
        .withMessageContaining("must be in the set");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> with(Clue.gauge("left", true, 0.9), Clue.gauge("left", false, 0.9)))
        .withMessageContaining("two of the gauge for left");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> with(Clue.marking("M", 0.9), Clue.marking("M", 0.9)));
    assertThatIllegalArgumentException()
        .isThrownBy(() ->
            with(Clue.grooveForm(GrooveForm.FLAT, 0.9), Clue.grooveForm(GrooveForm.ROUND, 0.9)));
  }
}
