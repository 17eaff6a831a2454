package org.airfit.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import org.airfit.source.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class FreeAirFlowTest {

  @ParameterizedTest
  @CsvSource({
    "34 scfm, CUBIC_FOOT_PER_MINUTE, 34, 60 °F",
    "34 SCFM, CUBIC_FOOT_PER_MINUTE, 34, 60 °F",
    "2040 scfh, CUBIC_FOOT_PER_HOUR, 2040, 60 °F",
    "34 scfm (68 °F), CUBIC_FOOT_PER_MINUTE, 34, 68 °F",
    "34 scfm @68F, CUBIC_FOOT_PER_MINUTE, 34, 68 °F",
    "34 cfm 60F, CUBIC_FOOT_PER_MINUTE, 34, 60 °F",
    "16 L/s ANR, LITRE_PER_SECOND, 16, ANR",
    "960 l/min (ANR), LITRE_PER_MINUTE, 960, ANR",
    "16 dm3/s anr, LITRE_PER_SECOND, 16, ANR",
    "58 Nm3/h, CUBIC_METRE_PER_HOUR, 58, DIN 1343",
    "58 Nm³/h, CUBIC_METRE_PER_HOUR, 58, DIN 1343",
    "58 m3/h DIN 1343, CUBIC_METRE_PER_HOUR, 58, DIN 1343",
    "58 m3/h normal, CUBIC_METRE_PER_HOUR, 58, DIN 1343",
    "1.2 m³/min ISO 1217, CUBIC_METRE_PER_MINUTE, 1.2, ISO 1217",
    "16 L/s ISO 8778, LITRE_PER_SECOND, 16, ANR"
  })
  void what_people_type_is_read_with_its_state(
      String text, VolumeFlowUnit unit, double value, String state) {
    FreeAirFlow flow = FreeAirFlow.parse(text);
    assertThat(flow.reference().name()).isEqualTo(state);
    assertThat(flow).isEqualTo(FreeAirFlow.of(value, unit, flow.reference()));
  }

  /** A volume alone is no amount of air. */
  @ParameterizedTest
  @CsvSource({
    "16 L/s, does not tell the reference state",
    "34 cfm, does not tell the reference state",
    "34 cfm FAD, counted at the inlet of the compressor",
    "960 NL/min, is counted at one state by some and at another by others",
    "58 Sm3/h, is counted at one state by some and at another by others",
    "90 psig, is a unit of gauge pressure"
  })
  void a_flow_without_a_clear_state_is_refused_with_what_to_say(String text, String reason) {
    assertThatExceptionOfType(QuantityFormatException.class)
        .isThrownBy(() -> FreeAirFlow.parse(text))
        .withMessageStartingWith("\"" + text + "\": ")
        .withMessageContaining(reason)
        .withMessageContaining("the units are scfm (60 °F)")
        .satisfies(wrong -> assertThat(wrong.position()).isEqualTo(text.indexOf(' ') + 1));
  }

  @Test
  void a_flow_reads_back_what_it_prints_in_every_unit_and_state() {
    for (ReferenceState state : ReferenceState.wellKnown()) {
      for (VolumeFlowUnit unit : VolumeFlowUnit.values()) {
        FreeAirFlow flow = FreeAirFlow.of(12.3, unit, state);
        assertThat(FreeAirFlow.parse(flow.toString())).isEqualTo(flow);
        assertThat(FreeAirFlow.parse(flow.format(unit))).isEqualTo(flow);
      }
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {-0.001, Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
  void what_is_no_flow_is_refused(double value) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> FreeAirFlow.ofScfm60F(value))
        .withMessage("free-air flow must be finite and at least 0 scfm (60 °F), was " + value
            + " scfm (60 °F)");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> FreeAirFlow.ofAnrLitresPerSecond(value))
        .withMessage(
            "free-air flow must be finite and at least 0 L/s ANR, was " + value + " L/s ANR");
  }

  @Test
  void readers_and_mass_agree() {
    FreeAirFlow flow = FreeAirFlow.ofAnrLitresPerSecond(16);
    assertThat(flow.litresPerSecond()).isEqualTo(16);
    assertThat(flow.cubicMetresPerSecond()).isEqualTo(0.016);
    assertThat(flow.massFlow().kilogramsPerSecond()).isEqualTo(0.016 * 1.185);
    assertThat(FreeAirFlow.from(flow.massFlow(), ReferenceState.ANR)).isEqualTo(flow);
    assertThat(FreeAirFlow.ofScfm68F(34).cubicFeetPerMinute()).isEqualTo(34);
    assertThat(flow.at(ReferenceState.ANR)).isSameAs(flow);
    assertThat(flow.times(2.5)).isEqualTo(FreeAirFlow.ofAnrLitresPerSecond(40));
    assertThatIllegalArgumentException().isThrownBy(() -> flow.times(-1));
  }

  @Test
  void equal_flows_have_the_same_state() {
    FreeAirFlow flow = FreeAirFlow.ofScfm60F(34);
    assertThat(flow)
        .isEqualTo(FreeAirFlow.parse("34 scfm"))
        .hasSameHashCodeAs(FreeAirFlow.parse("34 scfm"))
        .isNotEqualTo(FreeAirFlow.ofScfm68F(34))
        .isNotEqualTo(FreeAirFlow.ofScfm60F(35))
        .isNotEqualTo("34 scfm");
  }

  /** Otherwise a flow would be printed with a mark that parse reads as another state. */
  @ParameterizedTest
  @ValueSource(strings = {"normal", "NORMAL", "DIN1343", "iso 8778", "60F", "(68 °F)", "@68F"})
  void a_mark_that_is_read_as_a_well_known_state_is_taken(String name) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> ReferenceState.of(
            name, Temperature.ofCelsius(15), AbsolutePressure.ofBar(1), 0.0, Source.demo("a test")))
        .withMessageStartingWith("name of a reference state of your own must differ from ")
        .withMessageEndingWith(", was \"" + name + "\"");
  }

  @Test
  void a_state_of_the_users_own_is_printed_in_full_and_read_back() {
    ReferenceState own = ReferenceState.of(
        "15 °C dry", Temperature.ofCelsius(15), AbsolutePressure.ofBar(1), 0, Source.demo("test"));
    FreeAirFlow flow = FreeAirFlow.of(5, VolumeFlowUnit.LITRE_PER_SECOND, own);
    assertThat(flow.format(VolumeFlowUnit.LITRE_PER_SECOND)).isEqualTo("5 L/s 15 °C dry");
    assertThat(flow).hasToString("0.005 m³/s at 15 °C dry (15 °C, 100 kPa(a), dry)");
    assertThat(FreeAirFlow.parse(flow.toString())).isEqualTo(flow);
    assertThat(
            FreeAirFlow.parse("300 L/min at 15 °C dry (59 °F, 1 bar(a), dry)").reference())
        .isEqualTo(own);
    assertThat(FreeAirFlow.parse("16 L/s at ANR")).isEqualTo(FreeAirFlow.ofAnrLitresPerSecond(16));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "5 L/s at shop | 13 | the temperature, pressure and humidity of the state are missing",
        "5 L/s at shop (15 °C, 1 bar(a)) | 31 | the temperature, pressure and humidity of the state are missing",
        "5 L/s at shop (15 °C, 1 bar, dry) | 24 | \"bar\" does not tell from where the pressure counts",
        "5 L/s at shop (15, 1 bar(a), dry) | 17 | the unit is missing",
        "5 L/s at shop (15 °C, 1 bar(a), wet) | 32 | this is no number",
        "5 L/s at shop (15 °C, 9 bar(a), dry) | 8 | reference pressure must be in [50, 200] kPa(a)",
        "5 L/s at ANR (0 °C, 1 bar(a), dry) | 13 | this mark has a state of its own: ANR (20 °C",
        "5 L/s at (15 °C, 1 bar(a), dry) | 8 | name of a reference state must not be blank",
        "5 furlongs at shop (15 °C, 1 bar(a), dry) | 2 | \"furlongs\" is no unit of volume flow",
        "34 scfm at shop (15 °C, 1 bar(a), dry) | 3 | \"scfm\" is a unit of free-air flow, not of volume flow"
      })
  void a_state_that_is_not_whole_is_told_in_the_text_as_typed(
      String text, int position, String problem) {
    assertThatExceptionOfType(QuantityFormatException.class)
        .isThrownBy(() -> FreeAirFlow.parse(text))
        .withMessageStartingWith("\"" + text + "\": " + problem)
        .satisfies(wrong -> assertThat(wrong.text()).isEqualTo(text))
        .satisfies(wrong -> assertThat(wrong.position()).isEqualTo(position));
  }
}
