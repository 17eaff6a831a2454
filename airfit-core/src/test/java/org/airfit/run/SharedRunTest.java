package org.airfit.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.line.Conduit;
import org.airfit.plant.Regulator;
import org.airfit.plant.Supply;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.junit.jupiter.api.Test;

/** A run of which others take air: held against two runs in a row, the first of which carries all of it. */
class SharedRunTest {

  private static final AbsolutePressure ATMOSPHERE = AbsolutePressure.ofBar(1.0);
  private static final AirState AIR =
      AirState.of(AbsolutePressure.ofBar(8.0), Temperature.ofCelsius(20.0));
  private static final Conduit DROP = conduit(15.0, 20.0);
  private static final Conduit HOSE = conduit(8.0, 10.0);
  private static final FlowCapacity TEE =
      FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(12.0), 0.3);
  private static final FreeAirFlow OWN = FreeAirFlow.ofAnrLitresPerSecond(6.0);
  private static final FreeAirFlow OTHERS = FreeAirFlow.ofAnrLitresPerSecond(14.0);
  private static final FreeAirFlow ALL = FreeAirFlow.ofAnrLitresPerSecond(20.0);

  private static Conduit conduit(double boreMm, double metres) {
    return Conduit.of(
        Length.ofMillimetres(boreMm), Length.ofMetres(metres), Length.ofMillimetres(0.01));
  }

  private static Run trunk(Supply supply) {
    return Run.from(supply, ATMOSPHERE).through("drop", DROP).through("tee", TEE);
  }

  private static Run shared(Supply supply) {
    return trunk(supply).sharedWith(OTHERS).through("hose", HOSE);
  }

  private static RunResult.Delivered arrived(RunResult result) {
    return result.fold(delivered -> delivered, starved -> {
      throw new AssertionError(starved.toString());
    });
  }

  @Test
  void the_air_of_others_goes_through_what_stands_before_them_and_not_behind() {
    AbsolutePressure atTee = arrived(trunk(Supply.fixed(AIR)).at(ALL)).atTool();
    RunResult.Delivered behind = arrived(
        Run.from(Supply.fixed(AIR.at(atTee)), ATMOSPHERE).through("hose", HOSE).at(OWN));
    RunResult.Delivered found = arrived(shared(Supply.fixed(AIR)).at(OWN));
    assertThat(found.atTool().pascals()).isCloseTo(behind.atTool().pascals(), within(1.0e-6));
    assertThat(found.share("tee").outlet().pascals()).isCloseTo(atTee.pascals(), within(1.0e-6));
    assertThat(found.massFlow()).isEqualTo(OWN.massFlow());
    assertThat(shared(Supply.fixed(AIR)).arriving(OWN).orElseThrow().pascals())
        .isCloseTo(found.atToolGauge().pascals(), within(1.0e-6));
  }

  @Test
  void a_supply_with_droop_gives_the_air_of_all() {
    Supply regulator = new Regulator(AIR, ALL, AbsolutePressure.ofBar(7.5));
    RunResult.Delivered found = arrived(shared(regulator).at(OWN));
    assertThat(found.atSupply().bar()).isCloseTo(7.5, within(1.0e-9));
    assertThat(found.working().toString()).contains("7.5 bar");
  }

  @Test
  void those_who_take_air_at_two_places_add_up_in_front_of_both() {
    Run two = Run.from(Supply.fixed(AIR), ATMOSPHERE)
        .through("drop", DROP)
        .sharedWith(FreeAirFlow.ofAnrLitresPerSecond(4.0))
        .through("tee", TEE)
        .sharedWith(FreeAirFlow.ofAnrLitresPerSecond(10.0))
        .through("hose", HOSE);
    RunResult.Delivered found = arrived(two.at(OWN));
    RunResult.Delivered drop =
        arrived(Run.from(Supply.fixed(AIR), ATMOSPHERE).through("drop", DROP).at(ALL));
    AirState behindDrop = AIR.at(drop.atTool());
    RunResult.Delivered tee = arrived(Run.from(Supply.fixed(behindDrop), ATMOSPHERE)
        .through("tee", TEE)
        .at(FreeAirFlow.ofAnrLitresPerSecond(16.0)));
    assertThat(found.share("drop").outlet().pascals())
        .isCloseTo(drop.atTool().pascals(), within(1.0e-6));
    assertThat(found.share("tee").outlet().pascals())
        .isCloseTo(tee.atTool().pascals(), within(1.0e-6));
  }

  @Test
  void the_largest_flow_to_the_tool_is_what_the_others_leave() {
    GaugePressure wanted = GaugePressure.ofBar(5.0);
    double largest =
        shared(Supply.fixed(AIR)).largestFlow(wanted).orElseThrow().massFlow().kilogramsPerSecond();
    Run shared = shared(Supply.fixed(AIR));
    FreeAirFlow found = FreeAirFlow.from(MassFlow.ofKilogramsPerSecond(largest), OWN.reference());
    assertThat(shared.arriving(found).orElseThrow().bar()).isCloseTo(5.0, within(1.0e-6));
    Run alone = trunk(Supply.fixed(AIR)).through("hose", HOSE);
    assertThat(largest)
        .isLessThan(alone.largestFlow(wanted).orElseThrow().massFlow().kilogramsPerSecond());
  }

  @Test
  void what_the_others_leave_nothing_of_starves_the_tool() {
    Run shared = trunk(Supply.fixed(AIR))
        .sharedWith(FreeAirFlow.ofAnrLitresPerSecond(400.0))
        .through("hose", HOSE);
    assertThat(shared.at(OWN)).isInstanceOf(RunResult.Starved.class);
    assertThat(shared.arriving(OWN)).isEmpty();
  }

  @Test
  void an_exchanged_element_carries_the_air_of_the_others_too() {
    Run shared = shared(Supply.fixed(AIR));
    Run wider = shared.replacing("drop", conduit(25.0, 20.0));
    Run same = Run.from(Supply.fixed(AIR), ATMOSPHERE)
        .through("drop", conduit(25.0, 20.0))
        .through("tee", TEE)
        .sharedWith(OTHERS)
        .through("hose", HOSE);
    assertThat(wider).isEqualTo(same);
    assertThat(wider.at(OWN)).isEqualTo(same.at(OWN));
    assertThat(shared.conduit("drop")).contains(DROP);
    assertThat(shared.names()).isEqualTo(List.of("drop", "tee", "hose"));
    assertThat(shared).isNotEqualTo(trunk(Supply.fixed(AIR)).through("hose", HOSE));
  }
}
