package org.airfit.plant;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;

import java.time.Duration;
import nl.jqno.equalsverifier.EqualsVerifier;
import nl.jqno.equalsverifier.Warning;
import org.airfit.air.AirState;
import org.airfit.air.Compression;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Money;
import org.airfit.quantity.Power;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Temperature;
import org.junit.jupiter.api.Test;

/** What the supply side holds and answers compares by value. */
class PlantValuesTest {

  private static final AirState INTAKE =
      AirState.of(AbsolutePressure.ofBar(1.0), Temperature.ofCelsius(20.0));
  private static final AbsolutePressure EIGHT = AbsolutePressure.ofBar(8.0);
  private static final MassFlow FLOW = MassFlow.ofKilogramsPerSecond(0.01);

  private static AirPlant plant(double motor) {
    return new AirPlant(
        Compression.adiabatic(INTAKE, EIGHT),
        0.75,
        motor,
        Duration.ofHours(4000),
        Money.parse("0.12 EUR"));
  }

  @Test
  void costs_compare_by_all_they_hold() {
    EqualsVerifier.forClass(YearlyCost.class)
        .suppress(Warning.NULL_FIELDS) // refused at the door
        .verify();
  }

  @Test
  void the_same_question_twice_costs_the_same() {
    assertThat(plant(0.9).ofFlow("leak", FLOW))
        .isEqualTo(plant(0.9).ofFlow("leak", FLOW))
        .isNotEqualTo(plant(0.91).ofFlow("leak", FLOW))
        .isNotEqualTo(plant(0.9).ofFlow("hole", FLOW));
    PressureDrop half = PressureDrop.ofBar(0.5);
    assertThat(plant(0.9).ofDrop("filter", FLOW, half))
        .isEqualTo(plant(0.9).ofDrop("filter", FLOW, half))
        .isNotEqualTo(plant(0.9).ofDrop("filter", FLOW, PressureDrop.ofBar(0.4)));
    AbsolutePressure seven = AbsolutePressure.ofBar(7.0);
    assertThat(plant(0.9).ofSetting("setting", FLOW, seven, EIGHT))
        .isEqualTo(plant(0.9).ofSetting("setting", FLOW, seven, EIGHT));
    Power shaft = Power.ofWatts(5_000.0);
    Duration year = Duration.ofHours(4000);
    Money rate = Money.parse("0.12 EUR");
    assertThat(YearlyCost.ofShaft("load", shaft, 0.9, year, rate))
        .isEqualTo(YearlyCost.ofShaft("load", shaft, 0.9, year, rate))
        .isNotEqualTo(YearlyCost.ofShaft("load", shaft, 0.8, year, rate));
  }

  @Test
  @SuppressWarnings("NullAway")
  void null_is_refused_by_name() {
    assertThatNullPointerException().isThrownBy(() -> Supply.fixed(null)).withMessage("air");
    assertThatNullPointerException()
        .isThrownBy(() -> Supply.fixed(INTAKE).at(null))
        .withMessage("flow");
    assertThatNullPointerException()
        .isThrownBy(() -> plant(0.9).ofFlow(null, FLOW))
        .withMessage("what");
    assertThatNullPointerException()
        .isThrownBy(() -> plant(0.9).ofFlow("leak", null))
        .withMessage("flow");
    assertThatNullPointerException()
        .isThrownBy(() -> plant(0.9).shaftPower(null))
        .withMessage("flow");
    assertThatNullPointerException()
        .isThrownBy(() -> new PistonCompressor(1, 0.1).volumetricEfficiency(null, EIGHT))
        .withMessage("intake");
  }
}
