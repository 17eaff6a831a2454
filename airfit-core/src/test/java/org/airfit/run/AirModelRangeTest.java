package org.airfit.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.airfit.air.AirState;
import org.airfit.air.RealAir;
import org.airfit.flow.FlowCapacity;
import org.airfit.flow.PartsInParallel;
import org.airfit.flow.PartsInSeries;
import org.airfit.line.Conduit;
import org.airfit.line.LossModels;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.safety.Caution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Outside what the air model was held against, every answer says so. */
class AirModelRangeTest {

  private static final AbsolutePressure ATMOSPHERE = AbsolutePressure.STANDARD_ATMOSPHERE;
  private static final FlowCapacity PART =
      FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(3.0), 0.3);
  private static final Conduit HOSE =
      Conduit.of(Length.ofMillimetres(9.0), Length.ofMetres(5.0), Length.ofMillimetres(0.01));
  private static final MassFlow FLOW = MassFlow.ofKilogramsPerSecond(0.01);

  private static AirState air(double gaugeBar, double celsius) {
    return AirState.of(
        GaugePressure.ofBar(gaugeBar).absolute(ATMOSPHERE), Temperature.ofCelsius(celsius));
  }

  private static List<String> titles(List<Caution> cautions) {
    return cautions.stream().map(Caution::title).toList();
  }

  @ParameterizedTest
  @ValueSource(doubles = {100.01, 150.0, 200.0, 1000.0})
  void above_a_hundred_bar_every_answer_says_so(double bar) {
    AirState air = air(bar, 20.0);
    String says = "Above 100 bar(g)";
    assertThat(LossModels.isothermal().loss(HOSE, FLOW, air).warnings())
        .anyMatch(warning -> warning.contains(says));
    MassFlow tooMuch = MassFlow.ofKilogramsPerSecond(1.0e4);
    assertThat(LossModels.isothermal().loss(HOSE, tooMuch, air).warnings())
        .anyMatch(warning -> warning.contains(says));
    assertThat(PART.passage(FLOW, air).warnings()).anyMatch(warning -> warning.contains(says));
    assertThat(PART.passage(tooMuch, air).warnings()).anyMatch(warning -> warning.contains(says));
    assertThat(PART.passage(FLOW, air).working().toText()).contains(says);
    assertThat(PART.flow(air, ATMOSPHERE).warnings()).anyMatch(warning -> warning.contains(says));
    assertThat(PartsInSeries.of(List.of(PART, PART)).flow(air, ATMOSPHERE).warnings())
        .anyMatch(warning -> warning.contains(says));
    assertThat(PartsInParallel.of(List.of(PART, PART)).flow(air, ATMOSPHERE).warnings())
        .anyMatch(warning -> warning.contains(says));
    Run run = Run.from(air, ATMOSPHERE).through("coupling", PART).through("hose", HOSE);
    for (MassFlow flow : List.of(FLOW, tooMuch)) {
      assertThat(run.at(flow).cautions())
          .filteredOn(caution -> caution.text().contains(says))
          .extracting(Caution::title)
          .containsExactly("Outside the range of the air model");
    }
    assertThat(((RunResult.Delivered) run.at(FLOW)).shares().get(0).warnings())
        .anyMatch(warning -> warning.contains(says));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.0, 7.0, 10.0, 15.0})
  void in_a_shop_no_answer_says_so(double bar) {
    for (double celsius = 0.0; celsius <= 60.0; celsius += 10.0) {
      AirState air = air(bar, celsius);
      assertThat(air.warnings()).isEmpty();
      assertThat(air.caution()).isEmpty();
      Run run = Run.from(air, ATMOSPHERE).through("coupling", PART);
      assertThat(titles(run.at(MassFlow.ofKilogramsPerSecond(0.0)).cautions()))
          .doesNotContain("Outside the range of the air model");
      assertThat(PART.flow(air, ATMOSPHERE).warnings()).isEmpty();
    }
  }

  /** The share is told, and it is that of the equation of state of real air. */
  @ParameterizedTest
  @CsvSource({"40, 20, above", "100, 20, above", "20, -80, above", "100, 200, below"})
  void where_the_ideal_gas_is_off_by_more_than_a_percent_the_share_is_told(
      double bar, double celsius, String side) {
    AirState air = AirState.of(AbsolutePressure.ofBar(bar), Temperature.ofCelsius(celsius));
    double off = RealAir.of(air.pressure(), air.temperature()).density().kilogramsPerCubicMetre()
            / air.density().kilogramsPerCubicMetre()
        - 1.0;
    assertThat(Math.abs(off)).isGreaterThan(0.01);
    assertThat(off > 0.0 ? "above" : "below").isEqualTo(side);
    assertThat(air.warnings()).hasSize(1);
    String share = air.warnings().get(0).replaceAll(".*real air is ([0-9.]+) % .*", "$1");
    assertThat(Double.parseDouble(share)).isCloseTo(100.0 * Math.abs(off), within(0.06));
    assertThat(air.warnings().get(0)).contains(" % " + side + " that of the ideal gas");
  }

  @Test
  void thin_air_is_told_of_too() {
    AirState thin = AirState.of(AbsolutePressure.ofPascals(99.0), Temperature.ofCelsius(20.0));
    assertThat(thin.warnings().get(0)).contains("Below 1 mbar(a)");
    assertThat(thin.at(AbsolutePressure.ofPascals(100.0)).warnings()).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(doubles = {1.0e-31, 1.0e31})
  void where_the_arithmetic_ends_air_is_refused(double pascals) {
    assertThatIllegalArgumentException()
        .isThrownBy(
            () -> AirState.of(AbsolutePressure.ofPascals(pascals), Temperature.ofCelsius(20.0)))
        .withMessageContaining("in [1e-30, 1e30] Pa(a)");
  }
}
