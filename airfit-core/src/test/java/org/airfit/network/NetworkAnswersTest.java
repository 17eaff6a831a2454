package org.airfit.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.List;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.line.Conduit;
import org.airfit.line.LossModels;
import org.airfit.plant.Supply;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlowUnit;
import org.airfit.quantity.PressureUnit;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.Volume;
import org.airfit.run.ToolDemand;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;

/** Everything an answer tells, against hand calculation and the losses of lines. */
class NetworkAnswersTest {

  private static final AbsolutePressure ATMOSPHERE = AbsolutePressure.ofBar(1.0);
  private static final AirState EIGHT =
      AirState.of(AbsolutePressure.ofBar(8.0), Temperature.ofCelsius(20.0));

  private static Conduit pipe(double millimetres, double metres) {
    return Conduit.of(
        Length.ofMillimetres(millimetres), Length.ofMetres(metres), Length.ofMillimetres(0.045));
  }

  private static ToolDemand fixed(String name, double flow) {
    return ToolDemand.fixed(name, DrawnNetworks.air(flow));
  }

  private static FlowCapacity part(double conductance) {
    return FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(conductance), 0.3);
  }

  private static NetworkResult.Solved solved(Network.Builder builder) {
    return (NetworkResult.Solved) builder.build().solve();
  }

  /** A main to two drops: 0.02 kg/s in the main, 0.012 and 0.008 kg/s in the drops. */
  private static Network.Builder tree() {
    return Network.at(ATMOSPHERE)
        .supply("room", Supply.fixed(EIGHT))
        .line("main", "room", "wall", pipe(20.0, 30.0))
        .line("left", "wall", "bench", pipe(12.0, 5.0))
        .line("right", "paint", "wall", pipe(12.0, 5.0))
        .tool("bench", fixed("grinder", 0.012))
        .tool("paint", fixed("gun", 0.008));
  }

  @Test
  void a_branch_tells_where_its_air_goes_and_what_it_loses() {
    NetworkResult.Solved result = solved(tree());
    assertThat(result.atmosphere()).isEqualTo(ATMOSPHERE);
    assertThat(result.pressures()).containsOnlyKeys("room", "wall", "bench", "paint");
    BranchFlow main = result.through("main");
    assertThat(main.name()).isEqualTo("main");
    assertThat(main.from()).isEqualTo("room");
    assertThat(main.to()).isEqualTo("wall");
    assertThat(main.massFlow().kilogramsPerSecond()).isCloseTo(0.02, within(1.0e-10));
    assertThat(main.inlet()).isEqualTo(result.at("room"));
    assertThat(main.outlet()).isEqualTo(result.at("wall"));
    double loss = LossModels.isothermal()
        .loss(pipe(20.0, 30.0), main.massFlow(), EIGHT)
        .<Double>fold(flowing -> flowing.drop().pascals(), choked -> Double.NaN);
    assertThat(main.drop().pascals()).isCloseTo(loss, within(1.0e-3));
    assertThat(main.chokes()).isFalse();
    assertThat(main.unsettled()).isFalse();
    assertThat(main.dead()).isFalse();
    assertThat(main.warnings()).isEmpty();
    BranchFlow right = result.through("right");
    assertThat(right.from()).as("it was drawn the other way").isEqualTo("wall");
    assertThat(right.to()).isEqualTo("paint");
    assertThat(right)
        .hasToString("right: " + right.massFlow().format(MassFlowUnit.KILOGRAM_PER_SECOND)
            + " from wall to paint");
  }

  @Test
  void supplies_and_tools_tell_what_they_give_and_get() {
    NetworkResult.Solved result = solved(tree());
    SupplyFlow supply = result.supplies().get(0);
    assertThat(supply.node()).isEqualTo("room");
    assertThat(supply.supply()).isEqualTo(Supply.fixed(EIGHT));
    assertThat(supply.given().kilogramsPerSecond()).isCloseTo(0.02, within(1.0e-10));
    assertThat(supply.takenBack().kilogramsPerSecond()).isZero();
    assertThat(supply.exhausted()).isFalse();
    assertThat(supply.idle()).isFalse();
    assertThat(supply)
        .hasToString("room gives " + supply.given().format(MassFlowUnit.KILOGRAM_PER_SECOND));
    ToolFlow tool = result.tools().get(1);
    assertThat(tool.node()).isEqualTo("paint");
    assertThat(tool.tool()).isEqualTo(fixed("gun", 0.008));
    assertThat(tool.wanted().kilogramsPerSecond()).isCloseTo(0.008, within(1.0e-12));
    assertThat(tool.massFlow().kilogramsPerSecond()).isCloseTo(0.008, within(1.0e-12));
    assertThat(tool.atTool().pascals())
        .isCloseTo(result.at("paint").pascals() - 1.0e5, within(1.0e-6));
    assertThat(tool)
        .hasToString("gun at paint: "
            + tool.massFlow().format(MassFlowUnit.KILOGRAM_PER_SECOND) + " at "
            + tool.atTool().format(PressureUnit.BAR));
    assertThat(result.taken().kilogramsPerSecond()).isCloseTo(0.02, within(1.0e-12));
    assertThat(result)
        .hasToString("steady flow of " + result.taken().format(MassFlowUnit.KILOGRAM_PER_SECOND)
            + " to 2 tools");
    assertThat(result.imbalance()).isLessThanOrEqualTo(result.residual());
    assertThat(result.iterations()).isBetween(2, 20);
  }

  /** A warning of the model comes with the branch: the air of a short thin hose goes at more than Mach 0.3. */
  @Test
  void a_branch_outside_its_model_says_so() {
    NetworkResult.Solved result = solved(Network.at(ATMOSPHERE)
        .supply("s", Supply.fixed(EIGHT))
        .line("whip", "s", "t", pipe(4.0, 1.0))
        .tool("t", fixed("gun", 0.012)));
    List<String> alone = LossModels.isothermal()
        .loss(pipe(4.0, 1.0), result.through("whip").massFlow(), EIGHT)
        .<List<String>>fold(flowing -> flowing.warnings(), choked -> List.of());
    assertThat(alone).isNotEmpty();
    assertThat(result.through("whip").warnings()).isEqualTo(alone);
  }

  @Test
  void the_working_tells_every_step_in_both_units() {
    NetworkResult.Solved result = solved(tree());
    assertThat(result.residual()).isLessThan(1.0e-12);
    for (UnitSystem units : UnitSystem.values()) {
      String text = result.working(units).toText().replaceAll("\\s+", " ");
      assertThat(text)
          .contains("Steady flow of air in the network")
          .contains("Flows and pressures were found together by Newton's method in "
              + result.iterations() + " steps. Evaluated at the answer, no branch misses its law"
              + " and no node its balance by more than 1e-12 of the whole.")
          .contains("main: from room at " + EIGHT.pressure().format(units.pressureUnit())
              + " to wall at " + result.at("wall").format(units.pressureUnit()))
          .contains("right: from wall at " + result.at("wall").format(units.pressureUnit())
              + " to paint at " + result.at("paint").format(units.pressureUnit()))
          .containsOnlyOnce("Mass at wall")
          .doesNotContain("Mass at room")
          .contains("Mass at bench", "Mass at paint")
          .contains("The flow is steady: the tools take "
              + result.taken().format(units.massFlowUnit()) + " together.")
          .doesNotContain("chokes", "Re 2300", "dead legs", "gives nothing", "flow back");
    }
  }

  @Test
  void the_working_tells_of_supplies_that_give_nothing_or_take_air_back() {
    AirState seven = EIGHT.at(AbsolutePressure.ofBar(7.0));
    NetworkResult.Solved idle = solved(tree()
        .line("old main", "cellar", "wall", pipe(20.0, 10.0))
        .supply("cellar", Supply.fixed(seven)));
    assertThat(idle.working().toText().replaceAll("\\s+", " "))
        .contains("cellar gives nothing: its node stands at "
            + idle.at("cellar").format(UnitSystem.SI.pressureUnit())
            + ", not below its own pressure, and its non-return valve is shut.")
        .contains("No air flows through old main: the supply beyond is idle.")
        .doesNotContain("old main: from");
    NetworkResult.Solved back = solved(tree()
        .line("old main", "cellar", "wall", pipe(20.0, 10.0))
        .supplyWithoutNonReturnValve("cellar", Supply.fixed(seven)));
    SupplyFlow cellar = back.supplies().get(1);
    assertThat(cellar)
        .hasToString(
            "cellar takes back " + cellar.takenBack().format(MassFlowUnit.KILOGRAM_PER_SECOND));
    assertThat(back.working().toText().replaceAll("\\s+", " "))
        .contains("cellar has no non-return valve: "
            + cellar.takenBack().format(UnitSystem.SI.massFlowUnit()) + " flow back into it.");
  }

  @Test
  void what_has_no_solution_says_why_in_its_working() {
    NetworkResult none = tree().tool("barn", fixed("drill", 0.01)).build().solve();
    assertThat(none).hasToString("No way leads from a supply to barn.");
    assertThat(none.working().toText())
        .contains("No steady flow of air in the network", "No way leads from a supply to barn.");
    assertThat(none.<String>fold(found -> "found", no -> no.nodes().get(0))).isEqualTo("barn");
    assertThat(solved(tree()).<String>fold(found -> "found", no -> "none")).isEqualTo("found");
  }

  /** Nothing at all: pressures that differ by nothing, a drop of nothing, no air. */
  @Test
  void through_a_branch_to_a_tool_that_is_off_flows_nothing() {
    NetworkResult.Solved result = solved(tree()
        .line("spur", "wall", "old", pipe(12.0, 5.0))
        .tool("old", fixed("saw", 0.01).withLoad(0.0)));
    assertThat(result.through("spur").dead()).isTrue();
    assertThat(result.through("spur").massFlow().kilogramsPerSecond()).isZero();
    assertThat(result.deadLegs()).hasSize(1);
    assertThat(result.starved()).as("a tool that is off wants nothing").isEmpty();
    assertThat(result.working().toText()).doesNotContain("Mass at old");
  }

  private static NetworkSimulation always() {
    return tree().build().simulate(5, 4);
  }

  @Test
  void a_quantile_is_one_of_the_pressures_that_the_tool_had() {
    Network network = Network.at(ATMOSPHERE)
        .supply("room", Supply.fixed(EIGHT))
        .line("main", "room", "wall", pipe(12.0, 30.0))
        .tool("wall", fixed("grinder", 0.012))
        .tool("wall", fixed("gun", 0.008).withDuty(0.5))
        .build();
    NetworkSimulation.ToolRecord grinder = network.simulate(3, 40).tools().get(0);
    List<GaugePressure> had = grinder.pressure();
    assertThat(had).hasSize(40).isSorted();
    assertThat(had.get(0)).isLessThan(had.get(39));
    assertThat(grinder.quantile(0.0)).contains(had.get(0));
    assertThat(grinder.quantile(1.0)).contains(had.get(39));
    for (int i = 0; i < 40; i++) {
      assertThat(grinder.quantile((i + 0.5) / 40.0)).contains(had.get(i));
    }
    for (double share : new double[] {-1.0e-9, 1.0 + 1.0e-9, Double.NaN}) {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> grinder.quantile(share))
          .withMessage("share must be in [0, 1], was " + share);
    }
    assertThat(grinder).hasToString("grinder at wall: starved in 0 of 40 trials");
    assertThat(grinder.node()).isEqualTo("wall");
    assertThat(grinder.tool()).isEqualTo(fixed("grinder", 0.012));
  }

  @Test
  void a_simulation_tells_its_trials_and_a_peak_that_the_compressor_meets_needs_no_receiver() {
    NetworkSimulation simulation = always();
    assertThat(simulation.seed()).isEqualTo(5);
    assertThat(simulation.trials()).isEqualTo(4);
    assertThat(simulation.unsolved()).isZero();
    assertThat(simulation.meanFlow().kilogramsPerSecond()).isCloseTo(0.02, within(1.0e-12));
    assertThat(simulation.flow95().kilogramsPerSecond()).isCloseTo(0.02, within(1.0e-12));
    assertThat(simulation).hasToString("4 trials with 2 tools from seed 5");
    for (double delivered : new double[] {0.0199, 0.0201}) {
      assertThat(simulation
              .receiver(
                  DrawnNetworks.air(delivered),
                  Duration.ofSeconds(60),
                  EIGHT.pressure(),
                  AbsolutePressure.ofBar(7.0),
                  EIGHT.temperature(),
                  Volume.ofLitres(1.0))
              .isPresent())
          .isEqualTo(delivered < 0.02);
    }
    assertThat(tree().build().simulate(1, 1).trials()).isEqualTo(1);
  }

  @Test
  void a_network_names_its_nodes_and_its_pipes_hold_their_bores_times_their_lengths() {
    Network network = tree().part("valve", "wall", "end", part(2.0)).build();
    assertThat(network.nodes()).containsExactly("room", "wall", "bench", "paint", "end");
    assertThat(network).hasToString("5 nodes, 4 branches, 1 supplies, 2 tools at 1 bar(a)");
    double volume = Math.PI / 4.0 * (0.02 * 0.02 * 30.0 + 2.0 * 0.012 * 0.012 * 5.0);
    assertThat(network.pipeVolume().cubicMetres()).isCloseTo(volume, within(1.0e-12));
    Network without = network.without("valve");
    assertThat(without.nodes()).containsExactly("room", "wall", "bench", "paint");
    assertThat(without).isEqualTo(tree().build());
    Network wider = network.replacing("left", pipe(16.0, 5.0));
    assertThat(wider).isNotEqualTo(network);
    assertThat(wider.replacing("left", pipe(12.0, 5.0))).isEqualTo(network);
    assertThat(network.replacing("valve", part(3.0)).replacing("valve", part(2.0)))
        .isEqualTo(network);
  }
}
