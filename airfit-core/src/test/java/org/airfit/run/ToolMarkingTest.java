package org.airfit.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.QuantityFormatException;
import org.airfit.quantity.Range;
import org.airfit.quantity.Temperature;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ToolMarkingTest {

  private static Optional<Range<FreeAirFlow>> air(ToolMarking marking) {
    return marking.air(AbsolutePressure.STANDARD_ATMOSPHERE, Temperature.ofCelsius(20.0));
  }

  /** Each as plates print it; a bar needs no mark, and a comma may stand for the point. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "6.3 bar 400 l/min",
        "6,3 bar / 400 l/min",
        "6.3bar 400l/min",
        "400 L/MIN @ 6.3 BAR",
        "Air consumption: 400 l/min at 6,3 bar.",
        "p = 0.63 MPa; Q = 400 l/min",
        "working pressure 6.3 bar(g) - 400 lpm",
        "630 kPa, 400 dm³/min",
        "6.3 bar (91 psi) 400 l/min (14.1 cfm)"
      })
  void one_marking_is_read_however_it_is_printed(String text) {
    ToolMarking marking = ToolMarking.parse(text);
    assertThat(marking.needed().orElseThrow().bar()).isCloseTo(6.3, within(1.0e-9));
    assertThat(marking.allowed()).isEmpty();
    assertThat(marking.isAverage()).isFalse();
    Range<FreeAirFlow> air = air(marking).orElseThrow();
    // 400 L/min at 20 °C and 1 bar, dry, are 0.00792 kg/s; at 0 °C and 1.01325 bar 0.00862
    assertThat(air.least().massFlow().kilogramsPerSecond()).isCloseTo(0.0079, within(1.0e-4));
    assertThat(air.most().massFlow().kilogramsPerSecond()).isCloseTo(0.00862, within(1.0e-5));
    assertThat(marking.readings())
        .containsExactly(
            "ISO 8778 (ANR)",
            "DIN 1343 (0 °C)",
            "ISO 1217 (compressor inlet)",
            "free air at the site");
  }

  @Test
  void psi_and_cubic_feet_are_read() {
    ToolMarking marking = ToolMarking.parse("90 psi 4 CFM");
    assertThat(marking.needed()).contains(GaugePressure.ofPsi(90.0));
    assertThat(air(marking).orElseThrow().most().cubicFeetPerMinute())
        .isCloseTo(4.0, within(1.0e-9));
    assertThat(marking.readings()).hasSize(4).contains("standard cubic feet at 60 °F");
    ToolMarking standard = ToolMarking.parse("90 PSIG, 4 SCFM");
    assertThat(air(standard)).contains(Range.exactly(FreeAirFlow.ofScfm60F(4.0)));
    assertThat(standard.readings()).isEmpty();
  }

  @Test
  void an_average_is_told_as_one() {
    ToolMarking marking = ToolMarking.parse("avg 4 CFM");
    assertThat(marking.isAverage()).isTrue();
    assertThat(marking.needed()).isEmpty();
    assertThat(ToolMarking.parse("90 psi avg. 4 CFM").isAverage()).isTrue();
    assertThat(ToolMarking.parse("90 psi 4 CFM").isAverage()).isFalse();
    assertThat(ToolMarking.parse("average air consumption 4 cfm").isAverage()).isTrue();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"max 6.3 bar", "max. 6,3 bar", "MAX PRESSURE 6.3 BAR", "Pmax 6.3 bar", "≤ 6.3 bar"
      })
  void the_highest_pressure_is_not_what_the_tool_needs(String text) {
    ToolMarking marking = ToolMarking.parse(text);
    assertThat(marking.allowed()).contains(GaugePressure.ofBar(6.3));
    assertThat(marking.needed()).isEmpty();
    assertThat(air(marking)).isEmpty();
  }

  @Test
  void a_needed_and_an_allowed_pressure_may_both_stand() {
    ToolMarking marking = ToolMarking.parse("90 psi, max 120 psi, 22 scfm");
    assertThat(marking.needed()).contains(GaugePressure.ofPsi(90.0));
    assertThat(marking.allowed()).contains(GaugePressure.ofPsi(120.0));
    ToolMarking between = ToolMarking.parse("6-8 bar 300-400 l/min ANR");
    assertThat(marking.isAllowedOfRange()).isFalse();
    assertThat(between.isAllowedOfRange()).isTrue();
    assertThat(ToolMarking.parse("6-8 bar, max 8 bar").isAllowedOfRange()).isFalse();
    assertThat(ToolMarking.parse("max 8 bar, 6-8 bar").isAllowedOfRange()).isFalse();
    assertThat(between).isNotEqualTo(ToolMarking.parse("6 bar, max 8 bar, 300-400 l/min ANR"));
    assertThat(between.needed()).contains(GaugePressure.ofBar(6.0));
    assertThat(between.allowed()).contains(GaugePressure.ofBar(8.0));
    assertThat(air(between))
        .contains(
            new Range<>(FreeAirFlow.parse("300 L/min ANR"), FreeAirFlow.parse("400 L/min ANR")));
  }

  /** Normal litres are counted at 0 °C by the standard and at 20 °C by many makers; the site plays no part. */
  @ParameterizedTest
  @ValueSource(strings = {"6.3 bar 400 Nl/min", "6.3 bar 400 NL/MIN", "6,3 bar, 400 Nlpm"})
  void normal_litres_have_two_readings(String text) {
    ToolMarking marking = ToolMarking.parse(text);
    assertThat(marking.readings())
        .containsExactly(
            "normal litres at 0 °C (DIN 1343)", "normal litres at 20 °C (ISO 8778, ANR)");
    Range<FreeAirFlow> air = air(marking).orElseThrow();
    assertThat(air.most().massFlow().kilogramsPerSecond())
        .isCloseTo(0.4 / 60.0 * 101_325.0 / (287.05287 * 273.15), within(1.0e-9));
    assertThat(air.least().massFlow())
        .isEqualTo(FreeAirFlow.parse("400 L/min ANR").massFlow());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "6.3 bat 400 l/min | \"bat\" behind 6.3 is no unit of a pressure or a flow of air",
        "6.3 | \"6.3\" has no unit",
        "6.3 bar 400 | \"400\" has no unit",
        "6.3 bar 1,200 l/min | a comma with three digits behind it",
        "6.3 bar(a) 400 l/min | an absolute pressure on a tool",
        "6.3 bar 8 bar 400 l/min | a second pressure, 8 bar(g), beside 6.3 bar(g): put max before",
        "6.3 bar 400 l/min 900 l/min | a second flow that is not the first in other units",
        "6.3 bar 400 l/min 2.2 kW | \"kW\" behind 2.2 is no unit of a pressure",
        "8-6 bar | of a range the lower pressure comes first",
        "grinder | \"grinder\" is not known on a tool",
        "-6.3 bar | \"-6.3\" is not known on a tool",
        "0 bar 400 l/min | a pressure on a tool is above 0",
        "max | neither a pressure nor a flow of air stands in it"
      })
  void what_cannot_be_read_is_told_in_one_clear_line(String text, String reason) {
    assertThatExceptionOfType(QuantityFormatException.class)
        .isThrownBy(() -> ToolMarking.parse(text))
        .satisfies(wrong -> {
          assertThat(wrong.problem()).startsWith(reason);
          assertThat(wrong.getMessage()).doesNotContain("\n").contains("6.3 bar 400 l/min");
        });
  }

  @Test
  void it_is_a_value_and_prints_what_it_read() {
    ToolMarking marking = ToolMarking.parse(" 6.3 bar 400 l/min ");
    assertThat(marking).hasToString("6.3 bar 400 l/min");
    assertThat(ToolMarking.parse(marking.toString())).isEqualTo(marking).hasSameHashCodeAs(marking);
    assertThat(marking).isNotEqualTo(ToolMarking.parse("max 6.3 bar 400 l/min"));
  }
}
