package org.airfit.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.airfit.quantity.UnmarkedFlow.Reading;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class UnmarkedFlowTest {

  @Test
  void bare_cubic_feet_have_the_readings_of_the_trade() {
    assertThat(UnmarkedFlow.parse("25 CFM").readings())
        .containsExactly(
            new Reading("standard cubic feet at 60 °F", FreeAirFlow.parse("25 scfm")),
            new Reading("standard cubic feet at 68 °F", FreeAirFlow.parse("25 scfm (68 °F)")),
            new Reading("ISO 8778 (ANR)", FreeAirFlow.parse("25 cfm ANR")));
  }

  @Test
  void bare_litres_have_the_readings_of_data_sheets() {
    assertThat(UnmarkedFlow.parse("400 l/min").readings())
        .containsExactly(
            new Reading("ISO 8778 (ANR)", FreeAirFlow.parse("400 L/min ANR")),
            new Reading("DIN 1343 (0 °C)", FreeAirFlow.parse("400 L/min DIN 1343")),
            new Reading("ISO 1217 (compressor inlet)", FreeAirFlow.parse("400 L/min ISO 1217")));
  }

  @ParameterizedTest
  @CsvSource({
    "cfs, cubic feet",
    "cfm, cubic feet",
    "cfh, cubic feet",
    "m³/h, DIN 1343",
    "L/s, DIN 1343"
  })
  void every_unit_has_the_readings_of_its_family(String unit, String word) {
    assertThat(UnmarkedFlow.parse("3 " + unit).readings().toString()).contains(word);
    assertThat(UnmarkedFlow.parse("3 " + unit).readings()).hasSize(3);
  }

  /**
   * 100 scfm at 60 °F are 2914 and at 68 °F 2870 L/min ANR; 100 cfm ANR are 2832: trap 14 of the reference of flow,
   * which counts volumes. The mass is in the same order.
   */
  @Test
  void least_and_most_hold_every_reading() {
    UnmarkedFlow flow = UnmarkedFlow.of(100.0, VolumeFlowUnit.CUBIC_FOOT_PER_MINUTE);
    assertThat(flow.most()).isEqualTo(FreeAirFlow.ofScfm60F(100.0));
    assertThat(flow.least()).isEqualTo(FreeAirFlow.parse("100 cfm ANR"));
    assertThat(flow.most().at(ReferenceState.ANR).in(VolumeFlowUnit.LITRE_PER_MINUTE))
        .isCloseTo(2914.0, within(0.5));
    assertThat(flow.least().in(VolumeFlowUnit.LITRE_PER_MINUTE)).isCloseTo(2832.0, within(0.5));
  }

  /** By hand: at 84.3 kPa and 25 °C a cubic metre weighs 84300/(287.05287 × 298.15) = 0.98498 kg. */
  @Test
  void the_site_is_one_reading_more_and_may_be_the_least() {
    UnmarkedFlow flow = UnmarkedFlow.parse("25 cfm")
        .atSite(AbsolutePressure.ofKilopascals(84.3), Temperature.ofCelsius(25.0));
    assertThat(flow.readings()).hasSize(4);
    assertThat(flow.readings().get(3).name()).isEqualTo("free air at the site");
    assertThat(flow.least()).isEqualTo(flow.readings().get(3).flow());
    assertThat(flow.least().massFlow().kilogramsPerSecond())
        .isCloseTo(25.0 * 0.3048 * 0.3048 * 0.3048 / 60.0 * 0.98498, within(1.0e-7));
    assertThat(flow.most()).isEqualTo(FreeAirFlow.ofScfm60F(25.0));
    UnmarkedFlow moved =
        flow.atSite(AbsolutePressure.ofKilopascals(101.0), Temperature.ofCelsius(0.0));
    assertThat(moved.readings()).hasSize(4);
    assertThat(moved.most()).isEqualTo(moved.readings().get(3).flow());
  }

  @ParameterizedTest
  @CsvSource({
    "25 scfm, is a unit of free-air flow",
    "25 psig, is a unit of gauge pressure",
    "25, the unit is missing",
    "-1 cfm, must be finite and at least 0"
  })
  void what_is_no_bare_flow_is_refused(String text, String reason) {
    assertThatExceptionOfType(QuantityFormatException.class)
        .isThrownBy(() -> UnmarkedFlow.parse(text))
        .withMessageContaining(reason);
  }

  @Test
  void an_atmosphere_that_is_none_is_refused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> UnmarkedFlow.parse("25 cfm")
            .atSite(AbsolutePressure.ofKilopascals(690.0), Temperature.ofCelsius(20.0)))
        .withMessage("reference pressure must be in [50, 200] kPa(a), was 690 kPa(a)");
  }

  @Test
  void it_prints_what_it_reads_and_compares_by_value() {
    UnmarkedFlow flow = UnmarkedFlow.parse("2.5 ft³/min");
    assertThat(flow).hasToString("2.5 cfm");
    assertThat(UnmarkedFlow.parse(flow.toString())).isEqualTo(flow).hasSameHashCodeAs(flow);
    assertThat(flow)
        .isNotEqualTo(UnmarkedFlow.parse("2.6 cfm"))
        .isNotEqualTo(
            flow.atSite(AbsolutePressure.STANDARD_ATMOSPHERE, Temperature.ofCelsius(20.0)));
  }

  /** Who types it into a field that must know is told what to type. */
  @Test
  void the_strict_field_says_what_to_type_instead() {
    assertThatExceptionOfType(QuantityFormatException.class)
        .isThrownBy(() -> FreeAirFlow.parse("25 CFM"))
        .satisfies(
            wrong -> assertThat(wrong.problem())
                .isEqualTo(
                    "\"CFM\" does not tell the reference state at which the air is counted: say \"scfm\""
                        + " where it is counted at 60 °F and 14.7 psia, \"scfm (68 °F)\" or \"cfm ANR\""));
    for (String typed : new String[] {"25 scfm", "25 scfm (68 °F)", "25 cfm ANR"}) {
      assertThat(FreeAirFlow.parse(typed).cubicFeetPerMinute()).isCloseTo(25.0, within(1.0e-12));
    }
  }

  /** By the equation of state at 0 °C and 1.01325 bar; real air is 0.05 % denser, 1.2929 kg/m³ in handbooks. */
  @ParameterizedTest
  @CsvSource({"400 Nl/min", "400 NL/min", "400 N L/min", "400 nl/min", "400 Nlpm"})
  void normal_litres_are_counted_at_two_states_and_never_at_the_site(String text) {
    UnmarkedFlow flow = UnmarkedFlow.parse(text)
        .atSite(AbsolutePressure.ofKilopascals(84.3), Temperature.ofCelsius(25.0));
    assertThat(flow.readings())
        .containsExactly(
            new Reading(
                "normal litres at 0 °C (DIN 1343)", FreeAirFlow.parse("400 L/min DIN 1343")),
            new Reading(
                "normal litres at 20 °C (ISO 8778, ANR)", FreeAirFlow.parse("400 L/min ANR")));
    assertThat(flow).hasToString("400 NL/min");
    assertThat(UnmarkedFlow.parse(flow.toString())).isEqualTo(flow);
    assertThat(flow.most().massFlow().kilogramsPerSecond())
        .isCloseTo(0.4 / 60.0 * 101_325.0 / (287.05287 * 273.15), within(1.0e-9));
    assertThat(UnmarkedFlow.parse("5 slpm").readings().get(0).name())
        .isEqualTo("standard litres at 0 °C (DIN 1343)");
  }

  /** Told at one state, the ends are two numbers of one unit, not "11 cfm site to 11 scfm". */
  @Test
  void the_range_counts_both_ends_at_one_state() {
    UnmarkedFlow bare = UnmarkedFlow.parse("11 cfm")
        .atSite(AbsolutePressure.ofKilopascals(84.3), Temperature.ofCelsius(25.0));
    assertThat(bare.least().reference()).isNotEqualTo(bare.most().reference());
    Range<FreeAirFlow> range = bare.range();
    assertThat(range.least().reference()).isEqualTo(ReferenceState.SCFM_60F);
    assertThat(range.most().reference()).isEqualTo(ReferenceState.SCFM_60F);
    assertThat(range.most().cubicFeetPerMinute()).isCloseTo(11.0, within(1.0e-9));
    // 11 × 0.98498 kg/m³ against 14.7 psia and 60 °F of 1.2230 kg/m³
    assertThat(range.least().cubicFeetPerMinute()).isCloseTo(8.86, within(0.01));
    for (Reading reading : bare.readings()) {
      assertThat(reading.flow().massFlow().kilogramsPerSecond())
          .isBetween(
              range.least().massFlow().kilogramsPerSecond() * (1.0 - 1.0e-12),
              range.most().massFlow().kilogramsPerSecond() * (1.0 + 1.0e-12));
    }
  }
}
