package org.airfit.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.line.Conduit;
import org.airfit.plant.RegulatorElement;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.safety.Caution;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

class ArrivingTest {

  private static final AbsolutePressure ATMOSPHERE = AbsolutePressure.ofBar(1.0);

  private static FlowCapacity capacity(double c) {
    return FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(c), 0.3);
  }

  private static final Run BARE =
      Run.from(AirState.of(AbsolutePressure.ofBar(8.0), Temperature.ofCelsius(20.0)), ATMOSPHERE);

  private static Run run() {
    return BARE.through(
            "hose",
            Conduit.of(
                Length.ofMillimetres(9.0), Length.ofMetres(10.0), Length.ofMillimetres(0.01)))
        .through("coupling", capacity(4.0));
  }

  @Property
  void the_pressure_alone_is_that_of_the_whole_answer(
      @ForAll @DoubleRange(min = 0.0, max = 60.0) double litres) {
    FreeAirFlow flow = FreeAirFlow.ofAnrLitresPerSecond(litres);
    double whole = run()
        .at(flow)
        .<Double>fold(delivered -> delivered.atToolGauge().pascals(), starved -> -1.0);
    double alone = run().arriving(flow).map(GaugePressure::pascals).orElse(-1.0);
    assertThat(alone).isCloseTo(whole, Offset.offset(1.0e-6));
  }

  @Test
  void what_does_not_get_there_is_no_pressure() {
    assertThat(run().arriving(FreeAirFlow.ofAnrLitresPerSecond(60.0))).isEmpty();
    assertThat(run().arriving(FreeAirFlow.ofAnrLitresPerSecond(0.0)))
        .contains(GaugePressure.ofBar(7.0));
    assertThatIllegalStateException()
        .isThrownBy(() -> BARE.arriving(FreeAirFlow.ofAnrLitresPerSecond(1.0)))
        .withMessageContaining("at least one element");
  }

  @Test
  void what_a_regulator_takes_away_down_to_its_setting_is_no_loss() {
    FreeAirFlow demand = FreeAirFlow.ofAnrLitresPerSecond(3.0);
    Run short4 = BARE.through(
            "regulator", RegulatorElement.of(capacity(50.0), AbsolutePressure.ofBar(5.0)))
        .through("coupling", capacity(4.0));
    RunResult.Delivered holds = delivered(short4.at(demand));
    // ISO 6358 by hand: ṁ* = C ρ0 p1 = 20 L/s ANR at 5 bar(a), Δp = 5 (1 − 0.3)(1 − √(1 − (3/20)²))
    // bar
    assertThat(holds.bottleneck().name()).isEqualTo("coupling");
    assertThat(holds.share("regulator").drop().bar()).isEqualTo(3.0, Offset.offset(1e-9));
    assertThat(holds.share("regulator").gain().bar()).isZero();
    assertThat(holds.share("regulator").regulated().bar()).isEqualTo(3.0, Offset.offset(1e-9));
    assertThat(holds.share("regulator").lost().bar()).isZero();
    assertThat(holds.share("regulator").fraction()).isZero();
    assertThat(holds.share("coupling").regulated().bar()).isZero();
    assertThat(holds.share("coupling").fraction()).isEqualTo(1.0, Offset.offset(1e-12));
    assertThat(holds.lost().pascals())
        .isEqualTo(holds.share("coupling").lost().pascals(), Offset.offset(1e-6));
    assertThat(holds.ranked())
        .extracting(ElementLoss::name)
        .containsExactly("coupling", "regulator");
    assertThat(holds.share("coupling").gain().bar())
        .isEqualTo(3.5 * (1.0 - Math.sqrt(1.0 - 0.15 * 0.15)), Offset.offset(1e-3));
    assertThat(holds.cautions())
        .extracting(Caution::title)
        .doesNotContain("More than a tenth of the pressure is lost");

    // what it droops is a loss: 0.75 of the 7 bar that the supply has above the atmosphere
    Run droops = BARE.through(
        "regulator",
        RegulatorElement.of(capacity(50.0), AbsolutePressure.ofBar(5.0))
            .withDroop(PressureDrop.ofBar(0.75), demand));
    RunResult.Delivered less = delivered(droops.at(demand));
    assertThat(less.share("regulator").gain().bar()).isEqualTo(0.75, Offset.offset(1e-9));
    assertThat(less.share("regulator").lost().bar()).isEqualTo(0.75, Offset.offset(1e-9));
    assertThat(less.share("regulator").regulated().bar()).isEqualTo(3.0, Offset.offset(1e-9));
    assertThat(less.share("regulator").fraction()).isEqualTo(1.0, Offset.offset(1e-12));
    assertThat(less.lost().bar()).isEqualTo(0.75, Offset.offset(1e-9));

    // set above what stands in front it regulates nothing: all that its valve takes is lost
    RunResult.Delivered open = delivered(
        BARE.through("regulator", RegulatorElement.of(capacity(4.0), AbsolutePressure.ofBar(9.0)))
            .at(demand));
    assertThat(open.share("regulator").regulated().pascals()).isZero();
    assertThat(open.share("regulator").lost()).isEqualTo(open.share("regulator").drop());
    assertThat(less.cautions())
        .extracting(Caution::title)
        .contains("More than a tenth of the pressure is lost");
    assertThat(delivered(droops
                .replacing(
                    "regulator",
                    RegulatorElement.of(capacity(50.0), AbsolutePressure.ofBar(5.0))
                        .withDroop(PressureDrop.ofBar(0.69), demand))
                .at(demand))
            .cautions())
        .extracting(Caution::title)
        .doesNotContain("More than a tenth of the pressure is lost");
  }

  private static RunResult.Delivered delivered(RunResult result) {
    return result.fold(found -> found, starved -> {
      throw new AssertionError(starved);
    });
  }

  @Test
  void an_element_of_ones_own_is_replaced_by_its_name() {
    RegulatorElement six = RegulatorElement.of(capacity(50.0), AbsolutePressure.ofBar(7.0));
    RegulatorElement four = RegulatorElement.of(capacity(50.0), AbsolutePressure.ofBar(5.0));
    Run regulated = BARE.through("regulator", six).through("coupling", capacity(4.0));
    FreeAirFlow nothing = FreeAirFlow.ofAnrLitresPerSecond(0.0);
    assertThat(regulated.arriving(nothing)).contains(GaugePressure.ofBar(6.0));
    assertThat(regulated.replacing("regulator", four).arriving(nothing))
        .contains(GaugePressure.ofBar(4.0));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> regulated.replacing("coupling", four))
        .withMessage("name must be that of an element of one's own of this run, of"
            + " [regulator, coupling], was \"coupling\"");
  }
}
