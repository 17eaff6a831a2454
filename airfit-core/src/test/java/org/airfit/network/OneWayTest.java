package org.airfit.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.line.Conduit;
import org.airfit.line.Wall;
import org.airfit.plant.RegulatorElement;
import org.airfit.plant.Supply;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.run.Run;
import org.airfit.run.ToolDemand;
import org.airfit.safety.Caution;
import org.airfit.safety.Situation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Check valves and regulators in networks: by hand, and against a run through the same elements. */
class OneWayTest {

  private static final AbsolutePressure ATMOSPHERE = AbsolutePressure.ofBar(1.0);
  private static final FlowCapacity VALVE =
      FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(10.0), 0.3);
  private static final Conduit PIPE = Conduit.of(
      Length.ofMillimetres(16.0), Length.ofMetres(20.0), Wall.DRAWN_COPPER_OR_BRASS.roughness());

  private static Supply supply(double bar) {
    return Supply.fixed(AirState.of(AbsolutePressure.ofBar(bar), Temperature.ofCelsius(20.0)));
  }

  private static FlowCapacity cracking(double bar) {
    return VALVE.withCrackingPressure(PressureDrop.ofBar(bar));
  }

  private static RegulatorElement regulator(double bar) {
    return RegulatorElement.of(VALVE, AbsolutePressure.ofBar(bar));
  }

  private static ToolDemand gun(double kilogramsPerSecond) {
    return ToolDemand.fixed("gun", DrawnNetworks.air(kilogramsPerSecond));
  }

  private static NetworkResult.Solved solved(Network.Builder builder) {
    return (NetworkResult.Solved) builder.build().solve();
  }

  /** The same element of a run has the same pressure behind, whatever it lets through. */
  @ParameterizedTest
  @ValueSource(doubles = {0.001, 0.005, 0.012})
  void on_a_line_a_network_has_the_pressures_of_a_run(double flow) {
    RegulatorElement drooping =
        regulator(6.0).withDroop(PressureDrop.ofBar(0.4), DrawnNetworks.air(0.01));
    NetworkResult.Solved solved = solved(Network.at(ATMOSPHERE)
        .supply("s", supply(8.0))
        .checkValve("check", "s", "a", cracking(0.05))
        .line("pipe", "a", "b", PIPE)
        .regulator("set", "b", "c", drooping)
        .tool("c", gun(flow)));
    Run run = Run.from(supply(8.0), ATMOSPHERE)
        .through("check", cracking(0.05))
        .through("pipe", PIPE)
        .through("set", drooping);
    double atTool = run.at(MassFlow.ofKilogramsPerSecond(flow))
        .<Double>fold(found -> found.atTool().pascals(), none -> Double.NaN);
    assertThat(solved.at("c").pascals()).isCloseTo(atTool, within(1.0e-3));
    assertThat(solved.residual()).isLessThanOrEqualTo(1.0e-9);
    assertThat(solved.shut()).isEmpty();
  }

  /** 8 bar less the cracking pressure of 0.2 bar, less next to nothing for next to no flow. */
  @Test
  void an_open_check_valve_loses_its_cracking_pressure() {
    NetworkResult.Solved solved = solved(Network.at(ATMOSPHERE)
        .supply("s", supply(8.0))
        .checkValve("check", "s", "a", cracking(0.2))
        .tool("a", gun(1.0e-6)));
    assertThat(solved.at("a").bar()).isCloseTo(7.8, within(1.0e-6));
    assertThat(solved.through("check").shut()).isFalse();
  }

  /** The higher supply shuts the check valve of the lower; what lies between that and its supply is a dead leg. */
  @Test
  void a_check_valve_shuts_against_the_higher_pressure_and_nothing_flows_back() {
    NetworkResult.Solved solved = solved(Network.at(ATMOSPHERE)
        .supply("high", supply(8.0))
        .supplyWithoutNonReturnValve("low", supply(7.0))
        .line("main", "high", "a", PIPE)
        .line("leg", "low", "b", PIPE)
        .checkValve("check", "b", "a", cracking(0.1))
        .tool("a", gun(0.002)));
    BranchFlow check = solved.through("check");
    assertThat(solved.shut()).containsExactly(check);
    assertThat(check.massFlow().kilogramsPerSecond()).isZero();
    assertThat(check.drop().pascals()).isZero();
    assertThat(check.inlet().bar()).isCloseTo(7.0, within(1.0e-9));
    assertThat(check.outlet()).isEqualTo(solved.at("a"));
    assertThat(solved.deadLegs()).extracting(BranchFlow::name).containsExactly("leg");
    assertThat(solved.supplies().get(1).takenBack().kilogramsPerSecond()).isZero();
    assertThat(solved.working().toText()).contains("check is shut: behind it, at a, stand ");
  }

  /** Set to 6.0 and 5.5 bar side by side, the lower one never opens as long as the upper one holds. */
  @Test
  void of_two_regulators_side_by_side_the_one_that_is_set_higher_gives_all() {
    NetworkResult.Solved solved = solved(Network.at(ATMOSPHERE)
        .supply("s", supply(8.0))
        .regulator("upper", "s", "a", regulator(6.0))
        .regulator("lower", "s", "a", regulator(5.5))
        .tool("a", gun(0.005)));
    assertThat(solved.at("a").bar()).isCloseTo(6.0, within(1.0e-8));
    assertThat(solved.shut()).extracting(BranchFlow::name).containsExactly("lower");
    assertThat(solved.through("upper").massFlow().kilogramsPerSecond())
        .isCloseTo(0.005, within(1.0e-9));
  }

  /** With 5 bar in front it leaves what its open valve leaves of that, by ISO 6358, and holds nothing. */
  @Test
  void a_regulator_with_too_little_in_front_is_an_open_valve() {
    NetworkResult.Solved solved = solved(Network.at(ATMOSPHERE)
        .supply("s", supply(5.0))
        .regulator("set", "s", "a", regulator(6.0))
        .tool("a", gun(0.003)));
    double left = VALVE
        .passage(MassFlow.ofKilogramsPerSecond(0.003), supply(5.0).still())
        .<Double>fold(passed -> passed.outlet().pascals(), choked -> Double.NaN);
    assertThat(solved.at("a").pascals()).isCloseTo(left, within(1.0e-3));
  }

  @Test
  void where_no_tool_runs_every_node_has_the_highest_pressure_that_comes_to_it() {
    NetworkResult.Solved solved = solved(Network.at(ATMOSPHERE)
        .supply("s", supply(8.0))
        .supply("t", supply(7.0))
        .checkValve("check", "s", "a", cracking(0.2))
        .regulator("set", "a", "b", regulator(6.0))
        .line("pipe", "t", "b", PIPE)
        .line("back", "c", "b", PIPE)
        .tool("c", gun(0.003).withLoad(0.0)));
    assertThat(solved.at("a").bar()).isCloseTo(7.8, within(1.0e-9));
    assertThat(solved.at("b").bar()).isCloseTo(7.0, within(1.0e-9));
    assertThat(solved.at("c").bar()).isCloseTo(7.0, within(1.0e-9));
    assertThat(solved.residual()).isZero();
  }

  @Test
  void against_its_direction_nothing_is_fed() {
    NetworkResult result = Network.at(ATMOSPHERE)
        .supply("s", supply(8.0))
        .checkValve("check", "a", "s", VALVE)
        .tool("a", gun(0.003))
        .build()
        .solve();
    assertThat(result).isInstanceOf(NetworkResult.NoSolution.class);
    assertThat(result).hasToString("No way leads from a supply to a.");
  }

  /** A regulator may fail open: behind it the work is judged by the supply, 7 bar above 30 psi. */
  @Test
  void work_behind_a_regulator_is_judged_by_what_stands_in_front_of_it() {
    NetworkResult.Solved solved = solved(Network.at(ATMOSPHERE)
        .supply("s", supply(8.0))
        .regulator("set", "s", "a", regulator(3.0))
        .tool("a", gun(0.003), Situation.describe().cleaning().build()));
    assertThat(solved.tools().get(0).atTool()).isLessThan(GaugePressure.ofBar(2.01));
    assertThat(solved.cautions())
        .extracting(Caution::title)
        .contains("Cleaning pressure (general industry) (gun at a)");
  }

  @Test
  void valves_and_regulators_are_exchanged_by_their_names() {
    Network network = Network.at(ATMOSPHERE)
        .supply("s", supply(8.0))
        .checkValve("check", "s", "a", cracking(0.2))
        .regulator("set", "a", "b", regulator(5.0))
        .tool("b", gun(1.0e-4))
        .build();
    NetworkResult.Solved other = (NetworkResult.Solved) network
        .replacing("check", cracking(0.5))
        .replacing("set", regulator(6.0))
        .solve();
    assertThat(other.at("a").bar()).isCloseTo(7.5, within(1.0e-4));
    assertThat(other.at("b").bar()).isCloseTo(6.0, within(1.0e-8));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> network.replacing("check", regulator(6.0)))
        .withMessage("name must be that of a regulator of this network, was \"check\"");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> network.replacing("set", VALVE))
        .withMessage("name must be that of a part of this network, was \"set\"");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Network.at(ATMOSPHERE).element("set", "a", "b", regulator(6.0)))
        .withMessage(
            "element set must let air through either way, was a regulator; say regulator(…)");
  }

  private static final double VISCOSITY = supply(8.0).still().viscosity().pascalSeconds();

  private static final SolverBranch.Scales SCALES =
      new SolverBranch.Scales(8.0e5, 0.05, SolverBranch.JUST);

  /** The slopes of the law against differences of the element: droop with the flow, nothing with the pressure in front. */
  @Test
  void a_regulator_that_holds_does_not_feel_the_pressure_in_front() {
    RegulatorElement drooping =
        regulator(6.0).withDroop(PressureDrop.ofBar(0.4), DrawnNetworks.air(0.01));
    SolverBranch branch = new SolverBranch(drooping, true, 0, 1, 293.15, VISCOSITY);
    branch.start(0.005, SCALES);
    branch.evaluate(8.0e5, 5.9e5, SCALES);
    assertThat(branch.left).isCloseTo(6.0e5 - 0.2e5 - 5.9e5, within(1.0e-3));
    assertThat(branch.slope).isCloseTo(0.4e5 / 0.01, within(1.0));
    assertThat(branch.byInlet).isCloseTo(0.0, within(1.0e-9));
    branch.advance(0.0, 0.4e5, 1.0, true);
    assertThat(branch.flow).as("first no flow, then it is shut").isZero();
    assertThat(branch.isShut()).isTrue();
    branch.evaluate(8.0e5, 6.3e5, SCALES);
    assertThat(branch.left).isCloseTo(-0.3e5, within(1.0e-3));
    // the line leans by 1e-15 of the whole flow for a thousandth of the highest pressure
    assertThat(branch.slope).isCloseTo(1.0e3 * 8.0e5 / (0.05 * 1.0e-12), within(1.0e12));
    assertThat(branch.miss(8.0e5, 6.3e5, 1.0e-11)).isZero();
    assertThat(branch.miss(8.0e5, 5.9e5, 1.0e-11)).isCloseTo(0.1e5, within(1.0e-3));
    assertThat(branch.inletNode()).isZero();
    branch.evaluate(8.0e5, 5.9e5, SCALES);
    branch.advance(0.0, 0.0, 1.0, true);
    assertThat(branch.isShut()).as("a lower pressure opens it").isFalse();
  }

  @Test
  void a_check_valve_whose_cracking_pressure_exceeds_all_in_front_is_shut() {
    SolverBranch branch = new SolverBranch(cracking(2.0).element(), true, 0, 1, 293.15, VISCOSITY);
    branch.start(0.005, SCALES);
    branch.evaluate(1.5e5, 1.2e5, SCALES);
    assertThat(branch.isShut()).isTrue();
    assertThat(branch.left).isCloseTo(-1.2e5, within(1.0e-6));
    assertThat(branch.still(1.5e5)).isZero();
    assertThat(branch.still(8.0e5)).isCloseTo(6.0e5, within(1.0e-6));
  }
}
