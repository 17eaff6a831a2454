package org.airfit.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.airfit.air.AirState;
import org.airfit.plant.Compressor;
import org.airfit.plant.Regulator;
import org.airfit.plant.Supply;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.Volume;
import org.airfit.run.ToolDemand;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Supplies and tools as the solver sees them, against the laws they are told with. */
class SolverEndsTest {

  private static final double FLOW_SCALE = 0.05;
  private static final SolverBranch.Scales SCALES =
      new SolverBranch.Scales(8.0e5, FLOW_SCALE, SolverBranch.JUST);
  private static final AirState EIGHT =
      AirState.of(AbsolutePressure.ofBar(8.0), Temperature.ofCelsius(20.0));

  /** From 8 bar without flow to 7 bar at 0.05 kg/s. */
  private static Supply regulator() {
    return new Regulator(EIGHT, DrawnNetworks.air(0.05), AbsolutePressure.ofBar(7.0));
  }

  /** Delivers 0.012 kg/s at 4 bar and 0.008 kg/s at 9 bar; cuts in at 7 bar and out at 8 bar. */
  private static Supply compressor() {
    return new Compressor(
        List.of(
            new Compressor.Point(AbsolutePressure.ofBar(4.0), DrawnNetworks.air(0.012)),
            new Compressor.Point(AbsolutePressure.ofBar(9.0), DrawnNetworks.air(0.008))),
        AbsolutePressure.ofBar(7.0),
        AbsolutePressure.ofBar(8.0),
        Volume.ofLitres(200.0),
        Temperature.ofCelsius(20.0));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.01, 0.025, 0.04})
  void what_is_left_of_a_regulators_law_and_its_slope_are_those_of_its_curve(double flow) {
    Supply law = regulator();
    SolverSupply supply = new SolverSupply(0, law, false);
    supply.flow = flow;
    supply.evaluate(7.4e5, SCALES);
    assertThat(supply.left).isCloseTo(law.pascals(flow) - 7.4e5, within(1.0e-6));
    double falls = (law.pascals(flow - 1.0e-6) - law.pascals(flow + 1.0e-6)) / 2.0e-6;
    assertThat(supply.slope).isCloseTo(falls, within(1.0e-3 * falls));
    double before = supply.flow;
    supply.advance(150.0, 0.5);
    assertThat(supply.flow - before)
        .isCloseTo((0.5 * supply.left - 150.0) / supply.slope, within(1.0e-15));
  }

  /** The line of a shut valve leans over by 1e-15 of the flow for each 1e-3 of the pressure: 1e-15 × 0.05 × 10/8. */
  @Test
  void a_higher_pressure_at_the_node_shuts_the_valve_and_next_to_nothing_flows_back() {
    SolverSupply supply = new SolverSupply(0, regulator(), false);
    supply.flow = 0.01;
    supply.evaluate(8.1e5, SCALES);
    supply.advance(0.0, 1.0);
    assertThat(supply.flow).as("first no flow").isZero();
    supply.evaluate(8.1e5, SCALES);
    assertThat(supply.left).isCloseTo(-0.1e5, within(1.0e-6));
    supply.advance(0.0, 1.0);
    assertThat(supply.flow).isCloseTo(-0.05e-12 * 0.1e5 / 8.0e8, within(1.0e-20));
    assertThat(supply.miss(8.1e5, 1.0e-11)).isZero();
    assertThat(supply.miss(7.9e5, 1.0e-11)).as("it would open").isCloseTo(0.1e5, within(1.0e-6));
    assertThat(supply.idle).isFalse();
    supply.shut();
    assertThat(supply.idle).isTrue();
    assertThat(supply.flow).isZero();
    SolverSupply open = new SolverSupply(0, Supply.fixed(EIGHT), true);
    open.flow = -0.01;
    open.shut();
    assertThat(open.idle).as("it has no valve").isFalse();
    assertThat(open.flow).isEqualTo(-0.01);
  }

  /** From no flow a lower pressure opens it again, and the law is that of the supply. */
  @Test
  void a_lower_pressure_at_the_node_opens_the_valve() {
    Supply law = regulator();
    SolverSupply supply = new SolverSupply(0, law, false);
    supply.evaluate(7.9e5, SCALES);
    supply.advance(0.0, 1.0);
    assertThat(supply.flow).isPositive();
    supply.evaluate(7.9e5, SCALES);
    supply.advance(0.0, 1.0);
    assertThat(law.pascals(supply.flow)).isCloseTo(7.9e5, within(1.0));
    supply.shut();
    assertThat(supply.idle).isFalse();
    assertThat(supply.flow).isPositive();
  }

  @Test
  void a_pressure_that_holds_falls_by_next_to_nothing() {
    SolverSupply supply = new SolverSupply(0, Supply.fixed(EIGHT), false);
    assertThat(supply.holds()).isTrue();
    assertThat(supply.still()).isEqualTo(8.0e5);
    supply.flow = 0.01;
    supply.evaluate(7.9e5, SCALES);
    assertThat(supply.left).isCloseTo(0.1e5, within(1.0e-6));
    assertThat(supply.slope * FLOW_SCALE / 8.0e5).isBetween(1.0e-12, 1.0e-6);
    assertThat(supply.miss(8.0e5, 1.0e-11)).isZero();
    assertThat(supply.miss(8.0e5 + 3.0, 1.0e-11)).isCloseTo(3.0, within(1.0e-6));
    assertThat(supply.miss(8.0e5 - 3.0, 1.0e-11)).isCloseTo(3.0, within(1.0e-6));
    assertThat(supply.exhausted()).isFalse();
    assertThat(new SolverSupply(0, regulator(), false).holds()).isFalse();
  }

  /** At most 0.012 kg/s, at 4 bar; beyond that the law is a cliff, from which a step leads back. */
  @Test
  void a_compressor_gives_no_more_than_it_can() {
    SolverSupply supply = new SolverSupply(0, compressor(), false);
    supply.flow = 0.02;
    supply.evaluate(2.0e5, SCALES);
    assertThat(supply.slope).as("a cliff").isGreaterThan(1.0e12);
    supply.advance(0.0, 1.0);
    assertThat(supply.flow).isCloseTo(0.012, within(1.0e-8));
    supply.flow = 0.012;
    assertThat(supply.exhausted()).isTrue();
    assertThat(supply.miss(2.0e5, 1.0e-11)).isZero();
    supply.idle = true;
    assertThat(supply.exhausted()).isFalse();
    SolverSupply less = new SolverSupply(0, compressor(), false);
    less.flow = 0.010;
    assertThat(less.exhausted()).isFalse();
  }

  @Test
  void a_supply_misses_its_law_by_pascals_and_an_idle_one_where_its_valve_would_open() {
    Supply law = regulator();
    SolverSupply supply = new SolverSupply(0, law, false);
    supply.flow = 0.02;
    double own = law.pascals(0.02);
    assertThat(supply.miss(own, 1.0e-11)).isZero();
    assertThat(supply.miss(own + 7.0, 1.0e-11)).isCloseTo(7.0, within(1.0e-4));
    assertThat(supply.miss(own - 7.0, 1.0e-11)).isCloseTo(7.0, within(1.0e-4));
    supply.idle = true;
    supply.flow = 0.0;
    assertThat(supply.miss(8.0e5 - 7.0, 1.0e-11)).isCloseTo(7.0, within(1.0e-6));
    assertThat(supply.miss(8.0e5, 1.0e-11)).isZero();
    assertThat(supply.miss(8.1e5, 1.0e-11)).isZero();
  }

  private static final double ATMOSPHERE = 1.0e5;

  private static ToolDemand fixed(double flow) {
    return ToolDemand.fixed("gun", DrawnNetworks.air(flow));
  }

  private static ToolDemand following(double flow) {
    return ToolDemand.following("grinder", DrawnNetworks.air(flow), AbsolutePressure.ofBar(7.2));
  }

  /** In proportion to the absolute pressure as long as it chokes: 0.02 kg/s at 7.2 bar. */
  @Test
  void tools_at_a_node_take_the_sum_of_what_each_takes() {
    SolverTools tools = new SolverTools(
        ATMOSPHERE, List.of(List.of(fixed(0.01), following(0.02)), List.of(fixed(0.005))));
    assertThat(tools.flow(0, 3.6e5)).isCloseTo(0.02, within(1.0e-9));
    assertThat(tools.flow(0, 0, 3.6e5)).isCloseTo(0.01, within(1.0e-9));
    assertThat(tools.flow(0, 1, 3.6e5)).isCloseTo(0.01, within(1.0e-9));
    assertThat(tools.flow(1, 3.6e5)).isCloseTo(0.005, within(1.0e-9));
    assertThat(tools.slope(0, 3.6e5)).isCloseTo(0.02 / 7.2e5, within(1.0e-14));
    assertThat(tools.slope(1, 3.6e5)).isZero();
    assertThat(tools.rated()).isCloseTo(0.035, within(1.0e-9));
  }

  /** Over the last 100 Pa to the atmosphere, in a straight line to nothing. */
  @Test
  void within_a_hundred_pascals_of_the_atmosphere_a_tool_starves_in_a_straight_line() {
    SolverTools tools = new SolverTools(ATMOSPHERE, List.of(List.of(fixed(0.01))));
    assertThat(tools.flow(0, 1.001e5)).isCloseTo(0.01, within(1.0e-12));
    assertThat(tools.flow(0, 1.0005e5)).isCloseTo(0.005, within(1.0e-12));
    assertThat(tools.flow(0, 1.0e5)).isCloseTo(0.0, within(1.0e-12));
    assertThat(tools.slope(0, 1.0005e5)).isCloseTo(1.0e-4, within(1.0e-12));
    assertThat(tools.slope(0, 1.001e5)).isZero();
    SolverTools of = new SolverTools(ATMOSPHERE, List.of(List.of(following(0.02))));
    double corner = following(0.02).flow(1.001e5, ATMOSPHERE);
    assertThat(of.flow(0, 1.0004e5)).isCloseTo(0.4 * corner, within(1.0e-12));
    assertThat(of.slope(0, 1.0004e5)).isCloseTo(corner / 100.0, within(1.0e-12));
  }

  @Test
  void a_tool_that_is_off_takes_nothing_and_without_tools_a_gram_a_second_is_the_measure() {
    SolverTools tools = new SolverTools(
        ATMOSPHERE, List.of(List.of(fixed(0.01).withLoad(0.0)), List.of(), List.of(fixed(0.01))));
    assertThat(tools.any(0)).isFalse();
    assertThat(tools.any(1)).isFalse();
    assertThat(tools.any(2)).isTrue();
    assertThat(tools.flow(0, 5.0e5)).isZero();
    assertThat(tools.rated()).isCloseTo(0.02, within(1.0e-9));
    assertThat(new SolverTools(ATMOSPHERE, List.of(List.of())).rated()).isEqualTo(1.0e-3);
  }
}
