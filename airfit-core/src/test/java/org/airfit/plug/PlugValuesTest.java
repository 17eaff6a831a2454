package org.airfit.plug;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;

import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.airfit.Pencil;
import org.airfit.internal.Digits;
import org.airfit.measure.Instrument;
import org.airfit.measure.PartSpread;
import org.airfit.measure.Reading;
import org.airfit.measure.SampleSize;
import org.airfit.quantity.Length;
import org.airfit.safety.Medium;
import org.airfit.source.Source;
import org.airfit.working.Completeness;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Profiles, sets, readings and answers are values: equal by what they say, made of copies, and read back from their
 * labels.
 */
class PlugValuesTest {

  private static Length mm(double value) {
    return Length.ofMillimetres(value);
  }

  private static PlugProfile.Builder profile() {
    return PlugProfile.builder("heron")
        .displayName("Heron")
        .aliases("H")
        .from(Provenance.synthetic(), Source.demo("invented"))
        .dimension(Dimension.TIP_DIAMETER, PartSpread.normal(mm(12.0), mm(0.03)));
  }

  @Test
  void profiles_are_equal_by_what_they_say() {
    assertThat(profile().build())
        .isEqualTo(profile().build())
        .hasSameHashCodeAs(profile().build());
  }

  static Stream<UnaryOperator<PlugProfile.Builder>> changes() {
    return Stream.of(
        builder -> builder.displayName("Grey Heron"),
        builder -> builder.aliases("G"),
        builder -> builder.medium(Medium.HYDRAULIC_OIL),
        builder -> builder.from(Provenance.nominalUnverified(), Source.demo("invented")),
        builder -> builder.from(Provenance.synthetic(), Source.demo("invented again")),
        builder -> builder.dimension(Dimension.BORE, PartSpread.normal(mm(6.0), mm(0.1))),
        builder -> builder.grooveForm(GrooveForm.VEE),
        builder -> builder.tipLengthBy(new GaugeBall(mm(4.0))));
  }

  @ParameterizedTest
  @MethodSource("changes")
  void profiles_that_say_something_else_are_not_equal(UnaryOperator<PlugProfile.Builder> change) {
    assertThat(change.apply(profile()).build()).isNotEqualTo(profile().build());
  }

  @Test
  void sets_and_identifiers_are_equal_by_what_they_hold() {
    ReferenceSet one = ReferenceSet.of("set", List.of(profile().build()));
    ReferenceSet other = ReferenceSet.of("set", List.of(profile().build()));
    assertThat(one).isEqualTo(other).hasSameHashCodeAs(other);
    assertThat(one).isNotEqualTo(ReferenceSet.of("another", List.of(profile().build())));
    assertThat(Identifier.of(one)).isEqualTo(Identifier.of(other));
    assertThat(Identifier.of(one).withConfidence(0.9)).isNotEqualTo(Identifier.of(other));
    assertThat(Separation.of(profile().build(), profile().build(), Instrument.DIGITAL_CALIPER))
        .isEqualTo(Separation.of(profile().build(), profile().build(), Instrument.DIGITAL_CALIPER));
    assertThat(BenchPath.of(Identifier.of(one))).isEqualTo(BenchPath.of(Identifier.of(other)));
    assertThat(KnownPlugs.of("heron", Instrument.DIGITAL_CALIPER))
        .isEqualTo(KnownPlugs.of("heron", Instrument.DIGITAL_CALIPER))
        .isNotEqualTo(KnownPlugs.of("heron", Instrument.VERNIER_CALIPER_0_05));
  }

  private static Identification answer(double tip) {
    return Identifier.of(DemoProfiles.birds())
        .identify(List.of(
            PlugReading.of(Dimension.TIP_DIAMETER, Instrument.DIGITAL_CALIPER, mm(tip)),
            PlugReading.of(Dimension.TIP_LENGTH, Instrument.DIGITAL_CALIPER, mm(21.05)),
            PlugReading.of(Dimension.BORE, Reading.of(mm(10.6), mm(0.05)))));
  }

  @Test
  void answers_are_equal_by_set_settings_readings_and_clues() {
    assertThat(answer(18.78)).isEqualTo(answer(18.78)).hasSameHashCodeAs(answer(18.78));
    assertThat(answer(18.78)).isNotEqualTo(answer(18.79));
    ProfileCandidate best = answer(18.78).best();
    assertThat(best)
        .isEqualTo(answer(18.78).best())
        .hasSameHashCodeAs(answer(18.78).best())
        .isNotEqualTo(answer(18.79).best())
        .hasToString(best.profile().displayName() + ", " + Digits.percent(best.probability()));
    Residual residual = best.residuals().get(0);
    assertThat(residual)
        .isEqualTo(answer(18.78).best().residuals().get(0))
        .hasSameHashCodeAs(answer(18.78).best().residuals().get(0))
        .isNotEqualTo(answer(18.79).best().residuals().get(0))
        .hasToString(residual.inWords());
  }

  @Test
  void what_is_handed_in_or_out_cannot_change_an_answer() {
    List<PlugReading> readings = new ArrayList<>(answer(18.78).readings());
    Identification answer = Identifier.of(DemoProfiles.birds()).identify(readings);
    readings.clear();
    assertThat(answer).isEqualTo(answer(18.78));
    for (List<?> list : List.of(
        answer.readings(),
        answer.clues(),
        answer.candidates(),
        answer.likely(),
        answer.nextReadings(),
        answer.best().residuals())) {
      assertThatExceptionOfType(UnsupportedOperationException.class).isThrownBy(list::clear);
    }
  }

  @Test
  void a_working_can_be_worked_again_in_millimetres_and_inches_and_misses_every_step() {
    Pencil.check(answer(18.78));
    Completeness.check(answer(18.78));
    assertThat(answer(18.78).working(UnitSystem.US).toText())
        .contains("25.4", " in ")
        .doesNotContain(" mm ±");
    assertThat(answer(18.78).working().toText()).doesNotContain("25.4");
  }

  @ParameterizedTest
  @EnumSource(Dimension.class)
  void dimensions_are_read_back_from_label_symbol_and_text(Dimension dimension) {
    assertThat(Dimension.parse(dimension.label())).isEqualTo(dimension);
    assertThat(Dimension.parse(dimension.symbol())).isEqualTo(dimension);
    assertThat(Dimension.parse(" " + dimension + " ")).isEqualTo(dimension);
  }

  @ParameterizedTest
  @EnumSource(Instrument.class)
  void instruments_are_read_back_from_their_label(Instrument instrument) {
    assertThat(Instrument.parse(instrument.label())).isEqualTo(instrument);
    assertThat(Instrument.parse(instrument.toString())).isEqualTo(instrument);
  }

  @Test
  void words_that_name_nothing_are_refused_with_what_may_be_typed() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Dimension.parse("wall"))
        .withMessageContainingAll("dimension must be one of", "tip diameter (D_t)", "\"wall\"");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Instrument.parse("ruler"))
        .withMessageContainingAll("digital caliper 0.01 mm", "\"ruler\"");
  }

  @Test
  void a_sample_size_is_made_of_what_belongs_together() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new SampleSize("tip diameter", mm(0.02), mm(0.01), 5, 9))
        .withMessageContaining("pieces needed must be those measured, 5");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new SampleSize("tip diameter", mm(0.01), mm(0.02), 5, 5))
        .withMessageContaining("0 or above those measured, 5");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new SampleSize("tip diameter", mm(0.01), mm(0.02), 1, 5))
        .withMessageContaining("at least 2");
  }

  @Test
  @SuppressWarnings("NullAway") // a null is what is tested
  void a_null_is_refused_with_its_name() {
    assertThatNullPointerException()
        .isThrownBy(() -> Identifier.of(DemoProfiles.birds()).identify(null))
        .withMessage("readings");
    assertThatNullPointerException()
        .isThrownBy(() -> ReferenceSet.of(null, List.of()))
        .withMessage("name");
    assertThatNullPointerException()
        .isThrownBy(() -> PlugReading.of(null, Reading.of(mm(1.0), mm(0.1))))
        .withMessage("dimension");
    assertThatNullPointerException()
        .isThrownBy(() -> PartSpread.normal(null, mm(1.0)))
        .withMessage("nominal");
  }
}
