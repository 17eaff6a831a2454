package org.airfit.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.line.Conduit;
import org.airfit.line.FrictionLaw;
import org.airfit.line.LossModel;
import org.airfit.line.LossModels;
import org.airfit.plant.Regulator;
import org.airfit.plant.RegulatorElement;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.ReferenceState;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Questions about just the pressure that a regulator at the tool holds: it is there along a whole span of flows and of
 * supplies. Each answer is held against a halving here that asks the run for single flows.
 */
class HeldPressureTest {

  private static final AbsolutePressure ATMOSPHERE = AbsolutePressure.ofBar(1.0);
  private static final GaugePressure HELD = GaugePressure.ofBar(5.0);
  private static final AbsolutePressure SET = HELD.absolute(ATMOSPHERE);
  private static final FlowCapacity VALVE =
      FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(3.0), 0.3);
  private static final Conduit HOSE =
      Conduit.of(Length.ofMillimetres(8.0), Length.ofMetres(10.0), Length.ofMillimetres(0.01));

  private static AirState air(double bar) {
    return AirState.of(AbsolutePressure.ofBar(bar), Temperature.ofCelsius(20.0));
  }

  /** A hose and a regulator; it holds what is asked for, or a droop above that by which it falls at any flow. */
  private static Run run(double supplyBar, double droopBar) {
    PressureDrop droop = PressureDrop.ofBar(droopBar);
    RegulatorElement holding = droopBar > 0.0
        ? RegulatorElement.of(VALVE, SET.plus(droop)).withDroopAtAnyFlow(droop)
        : RegulatorElement.of(VALVE, SET);
    return Run.from(air(supplyBar), ATMOSPHERE).through("hose", HOSE).through("regulator", holding);
  }

  private static boolean isHeld(Run run, double kilogramsPerSecond) {
    return run.path().pascalsAtTool(kilogramsPerSecond) >= SET.pascals();
  }

  @ParameterizedTest
  @CsvSource({"7, 0", "9, 0", "6.01, 0", "7, 0.5", "9, 0.25"})
  void the_largest_flow_is_that_up_to_which_it_holds(double supplyBar, double droopBar) {
    Run run = run(supplyBar, droopBar);
    double holds = 1.0e-4;
    double falls = 0.1;
    assertThat(isHeld(run, holds)).isTrue();
    assertThat(isHeld(run, falls)).isFalse();
    for (int i = 0; i < 100; i++) {
      double middle = 0.5 * (holds + falls);
      holds = isHeld(run, middle) ? middle : holds;
      falls = isHeld(run, middle) ? falls : middle;
    }
    assertThat(run.largestFlow(HELD).orElseThrow().massFlow().kilogramsPerSecond())
        .isCloseTo(holds, within(1.0e-11 * holds));
  }

  @ParameterizedTest
  @CsvSource({"0.002, 0", "0.005, 0", "0.005, 0.5"})
  void the_supply_needed_is_the_least_with_which_it_holds(double kilogramsPerSecond, double droop) {
    ToolDemand tool = ToolDemand.fixed(
        "tool",
        FreeAirFlow.from(MassFlow.ofKilogramsPerSecond(kilogramsPerSecond), ReferenceState.ANR));
    double holds = 12.0;
    double falls = 6.0;
    assertThat(isHeld(run(holds, droop), kilogramsPerSecond)).isTrue();
    assertThat(isHeld(run(falls, droop), kilogramsPerSecond)).isFalse();
    for (int i = 0; i < 100; i++) {
      double middle = 0.5 * (holds + falls);
      boolean isEnough = isHeld(run(middle, droop), kilogramsPerSecond);
      holds = isEnough ? middle : holds;
      falls = isEnough ? falls : middle;
    }
    SupplyNeeded needed = run(7.0, droop).supplyNeeded(tool, HELD).orElseThrow();
    assertThat(needed.needed().bar()).isCloseTo(holds, within(1.0e-9));
  }

  /**
   * A supply that sags, a hose in which the air cools as it is sped up, a regulator and a small nozzle: at the pressure
   * of the supply at rest the nozzle lets 5 in 100,000 less through than at the flow, where the air is colder.
   */
  @Test
  void where_colder_air_of_a_sagging_supply_chokes_the_nozzle_is_named() {
    Regulator sagging =
        new Regulator(air(4.0), FreeAirFlow.ofAnrLitresPerSecond(0.3), AbsolutePressure.ofBar(3.4));
    Run run = Run.from(sagging, ATMOSPHERE)
        .through("hose", HOSE.withBore(Length.ofMillimetres(3.0)), ofReservoir())
        .through("regulator", RegulatorElement.of(VALVE, AbsolutePressure.ofBar(2.9)))
        .through(
            "nozzle", FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(0.1), 0.5));
    double passes = 1.0e-6;
    double chokes = 1.0e-2;
    for (int i = 0; i < 100; i++) {
      double middle = 0.5 * (passes + chokes);
      boolean isThrough = run.path().pascalsAtTool(middle) > 0.0;
      passes = isThrough ? middle : passes;
      chokes = isThrough ? chokes : middle;
    }
    ToolDemand greedy = ToolDemand.following(
        "tool", FreeAirFlow.ofAnrLitresPerSecond(0.48), AbsolutePressure.ofBar(2.0));
    RunResult.Delivered found = (RunResult.Delivered) run.balance(greedy);
    double flow = found.massFlow().kilogramsPerSecond();
    assertThat(flow).isCloseTo(passes, within(1.0e-9 * passes));
    assertThat(found.choking()).map(ElementLoss::name).hasValue("nozzle");
    assertThat(greedy.flow(found.atTool().pascals(), ATMOSPHERE.pascals()))
        .isCloseTo(flow, within(1.0e-9 * flow));
  }

  private static LossModel ofReservoir() {
    return LossModels.fromReservoir(FrictionLaw.COLEBROOK);
  }
}
