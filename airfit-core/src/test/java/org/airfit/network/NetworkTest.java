package org.airfit.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.airfit.Comparison;
import org.airfit.Pencil;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.line.Conduit;
import org.airfit.line.LossModel;
import org.airfit.line.LossModels;
import org.airfit.plant.Compressor;
import org.airfit.plant.ReceiverSize;
import org.airfit.plant.Regulator;
import org.airfit.plant.Supply;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.ReferenceState;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.Volume;
import org.airfit.run.Run;
import org.airfit.run.RunResult;
import org.airfit.run.ToolDemand;
import org.airfit.safety.SafetyRules;
import org.airfit.working.Completeness;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class NetworkTest {

  private static final AbsolutePressure ATMOSPHERE = AbsolutePressure.ofBar(1.0);
  private static final AirState EIGHT =
      AirState.of(AbsolutePressure.ofBar(8.0), Temperature.ofCelsius(20.0));
  private static final Supply SUPPLY = Supply.fixed(EIGHT);

  static Stream<Row> sets() {
    return Rows.of(NetworkTest.class, "/org/airfit/flow/iso6358_network.csv");
  }

  private static FlowCapacity part(double c, double b) {
    return FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(c), b);
  }

  private static Conduit pipe(double boreMm, double metres) {
    return Conduit.of(
        Length.ofMillimetres(boreMm), Length.ofMetres(metres), Length.ofMillimetres(0.045));
  }

  private static FreeAirFlow air(double kilogramsPerSecond) {
    return FreeAirFlow.from(
        MassFlow.ofKilogramsPerSecond(kilogramsPerSecond), ReferenceState.COMPRESSOR_INLET);
  }

  private static ToolDemand fixed(double kilogramsPerSecond) {
    return ToolDemand.fixed("gun", air(kilogramsPerSecond));
  }

  static ToolDemand following(double kilogramsPerSecond) {
    return ToolDemand.following("grinder", air(kilogramsPerSecond), AbsolutePressure.ofBar(7.2));
  }

  private static NetworkResult.Solved solved(Network network) {
    NetworkResult result = network.solve();
    assertThat(result.<Boolean>fold(s -> true, none -> false))
        .as(result.working().title())
        .isTrue();
    NetworkResult.Solved solved = (NetworkResult.Solved) result;
    assertThat(solved.imbalance()).isLessThan(1.0e-9);
    return solved;
  }

  private static Network chain(ToolDemand tool) {
    return Network.at(ATMOSPHERE)
        .supply("compressor", SUPPLY)
        .part("wall coupling", "compressor", "wall", part(6.0, 0.3))
        .line("hose", "wall", "reel", pipe(9.5, 10.0))
        .part("tool coupling", "reel", "tool", part(6.0, 0.3))
        .tool("tool", tool)
        .build();
  }

  @Test
  void above_a_hundred_bar_the_answer_of_a_network_says_so() {
    Network network = Network.at(ATMOSPHERE)
        .supply("bank", Supply.fixed(EIGHT.at(AbsolutePressure.ofBar(200.0))))
        .part("valve", "bank", "tool", part(0.1, 0.3))
        .tool("tool", ToolDemand.fixed("tool", FreeAirFlow.ofScfm60F(5.0)))
        .build();
    assertThat(network.solve().cautions())
        .anyMatch(caution -> caution.text().contains("Above 100 bar(g)"));
    assertThat(
            chain(ToolDemand.fixed("tool", FreeAirFlow.ofScfm60F(5.0))).solve().cautions())
        .noneMatch(caution -> caution.title().contains("air model"));
  }

  private static Run run() {
    return Run.from(EIGHT, ATMOSPHERE)
        .through("wall coupling", part(6.0, 0.3))
        .through("hose", pipe(9.5, 10.0))
        .through("tool coupling", part(6.0, 0.3));
  }

  /**
   * One way from one supply to one tool is a run, and has the answer of a run: to the last digits, as the laws are the
   * same.
   */
  @ParameterizedTest
  @ValueSource(doubles = {1.0e-5, 0.002, 0.012, 0.02})
  void a_network_of_one_way_is_a_run(double flow) {
    for (ToolDemand tool : List.of(fixed(flow), following(flow))) {
      RunResult.Delivered run = (RunResult.Delivered) run().balance(tool);
      NetworkResult.Solved network = solved(chain(tool));
      assertThat(network.at("tool").pascals()).isCloseTo(run.atTool().pascals(), within(1.0e-4));
      assertThat(network.at("wall").pascals())
          .isCloseTo(run.shares().get(0).outlet().pascals(), within(1.0e-4));
      assertThat(network.taken().kilogramsPerSecond())
          .isCloseTo(run.massFlow().kilogramsPerSecond(), within(1.0e-9 * flow));
      assertThat(network.starved().isEmpty())
          .isEqualTo(tool.ratedInlet().isEmpty() || run.atTool().bar() >= 7.2 * (1.0 - 1.0e-6));
    }
  }

  @Test
  void a_choking_coupling_chokes_in_a_network_as_in_a_run() {
    Run run = Run.from(EIGHT, ATMOSPHERE)
        .through("coupling", part(2.0, 0.3))
        .through("hose", pipe(9.5, 0.2));
    Network network = Network.at(ATMOSPHERE)
        .supply("s", SUPPLY)
        .part("coupling", "s", "a", part(2.0, 0.3))
        .line("hose", "a", "b", pipe(9.5, 0.2))
        .tool("b", following(0.06))
        .build();
    RunResult.Delivered one = (RunResult.Delivered) run.balance(following(0.06));
    NetworkResult.Solved other = solved(network);
    assertThat(one.choking()).isPresent();
    assertThat(other.choking()).extracting(BranchFlow::name).containsExactly("coupling");
    assertThat(other.taken().kilogramsPerSecond())
        .isCloseTo(one.massFlow().kilogramsPerSecond(), within(1.0e-10));
    assertThat(other.at("a").pascals())
        .isCloseTo(one.shares().get(0).outlet().pascals(), within(0.01));
    assertThat(other.working().toText())
        .contains("coupling chokes: the pressure behind it lies lower");
  }

  /** Between two pressures that hold, as in the table; the atmosphere is put below both. */
  @ParameterizedTest
  @MethodSource("sets")
  void sets_of_parts_pass_what_the_table_says(Row row) {
    Temperature temperature = Temperature.ofKelvins(row.number("t1_k"));
    AbsolutePressure p1 = AbsolutePressure.ofBar(row.number("p1_bar_abs"));
    AbsolutePressure p2 = AbsolutePressure.ofBar(row.number("p2_bar_abs"));
    Network.Builder builder = Network.at(AbsolutePressure.ofBar(0.5))
        .supply("in", Supply.fixed(AirState.of(p1, temperature)))
        .supplyWithoutNonReturnValve("out", Supply.fixed(AirState.of(p2, temperature)));
    String[] parts = row.text("parts_C_dm3_s_bar_b_m").split("\\|", -1);
    boolean series = row.text("kind").equals("series");
    for (int i = 0; i < parts.length; i++) {
      String[] figures = parts[i].split(";", -1);
      builder.part(
          "part " + i,
          i == 0 || !series ? "in" : "between " + i,
          i == parts.length - 1 || !series ? "out" : "between " + (i + 1),
          part(Double.parseDouble(figures[0]), Double.parseDouble(figures[1]))
              .withSubsonicIndex(Double.parseDouble(figures[2])));
    }
    NetworkResult.Solved result = solved(builder.build());
    Comparison.of(
            "Network: parts",
            row.toString(),
            row.number("mdot_kg_s_exact"),
            "kg/s",
            row.evidence("mdot_kg_s_exact"))
        .isMetWithinFraction(
            result.supplies().get(0).given().kilogramsPerSecond(),
            1.0e-8,
            "what is asked for against an independent solution");
    assertThat(result.supplies().get(1).takenBack().kilogramsPerSecond())
        .isCloseTo(result.supplies().get(0).given().kilogramsPerSecond(), within(1.0e-11));
  }

  /** By symmetry each half of the ring carries half: the answer is that of one half with half the flow. */
  @Test
  void a_symmetric_ring_splits_evenly() {
    Network ring = Network.at(ATMOSPHERE)
        .supply("s", SUPPLY)
        .line("north", "s", "far", pipe(20.0, 50.0))
        .line("east", "s", "corner", pipe(20.0, 20.0))
        .line("south", "corner", "far", pipe(20.0, 30.0))
        .tool("far", fixed(0.05))
        .build();
    NetworkResult.Solved result = solved(ring);
    assertThat(result.through("north").massFlow().kilogramsPerSecond())
        .isCloseTo(0.025, within(1.0e-11));
    assertThat(result.through("east").massFlow().kilogramsPerSecond())
        .isCloseTo(0.025, within(1.0e-11));
    RunResult.Delivered half = (RunResult.Delivered) Run.from(EIGHT, ATMOSPHERE)
        .through("half", pipe(20.0, 50.0))
        .at(MassFlow.ofKilogramsPerSecond(0.025));
    assertThat(result.at("far").pascals()).isCloseTo(half.atTool().pascals(), within(1.0e-4));
    NetworkResult.Solved open = solved(ring.without("south"));
    assertThat(open.at("far")).isLessThan(result.at("far"));
    assertThat(open.through("east").massFlow().kilogramsPerSecond())
        .isCloseTo(0.0, within(1.0e-11));
  }

  /**
   * Four unknown nodes in two loops, solved another way: Newton on the pressures alone with a dense matrix of
   * differences and the factorisation of Hipparchus, each flow found by halving in
   * {@link LossModel#flowFor} and {@link FlowCapacity#flow}.
   */
  @Test
  void a_network_of_two_loops_agrees_with_an_independent_solution() {
    Conduit[] pipes = {pipe(20, 30), pipe(15, 40), pipe(12, 25), pipe(20, 20), pipe(10, 35)};
    int[][] ends = {{4, 0}, {0, 1}, {1, 2}, {0, 2}, {2, 3}};
    FlowCapacity valve = part(4.0, 0.35);
    double[] demand = {0.004, 0.012, 0.006, 0.009};
    Network.Builder builder = Network.at(ATMOSPHERE).supply("n4", SUPPLY);
    for (int i = 0; i < pipes.length; i++) {
      builder.line("p" + i, "n" + ends[i][0], "n" + ends[i][1], pipes[i]);
    }
    builder.part("valve", "n1", "n3", valve);
    for (int i = 0; i < 4; i++) {
      builder.tool("n" + i, i % 2 == 0 ? fixed(demand[i]) : following(demand[i]));
    }
    NetworkResult.Solved ours = solved(builder.build());

    double[] p = {7.9e5, 7.7e5, 7.75e5, 7.6e5, 8.0e5};
    for (int step = 0; step < 60; step++) {
      double[] residual = residual(p, pipes, ends, valve, demand);
      double[][] jacobian = new double[4][4];
      for (int j = 0; j < 4; j++) {
        double[] moved = p.clone();
        moved[j] += 1.0;
        double[] other = residual(moved, pipes, ends, valve, demand);
        for (int i = 0; i < 4; i++) {
          jacobian[i][j] = other[i] - residual[i];
        }
      }
      double[] change = new LUDecomposition(new Array2DRowRealMatrix(jacobian))
          .getSolver()
          .solve(new ArrayRealVector(residual))
          .toArray();
      for (int i = 0; i < 4; i++) {
        p[i] -= 0.7 * change[i];
      }
    }
    for (int i = 0; i < 4; i++) {
      assertThat(ours.at("n" + i).pascals()).isCloseTo(p[i], within(1.0e-8 * p[i]));
    }
  }

  private static double[] residual(
      double[] p, Conduit[] pipes, int[][] ends, FlowCapacity valve, double[] demand) {
    double[] sum = new double[5];
    for (int k = 0; k <= pipes.length; k++) {
      int a = k < pipes.length ? ends[k][0] : 1;
      int b = k < pipes.length ? ends[k][1] : 3;
      int high = p[a] >= p[b] ? a : b;
      int low = p[a] >= p[b] ? b : a;
      AirState inlet = EIGHT.at(AbsolutePressure.ofPascals(p[high]));
      AbsolutePressure outlet = AbsolutePressure.ofPascals(p[low]);
      MassFlow flow = k < pipes.length
          ? LossModels.isothermal().flowFor(pipes[k], inlet, outlet).massFlow()
          : valve.flow(inlet, outlet).massFlow();
      sum[high] -= flow.kilogramsPerSecond();
      sum[low] += flow.kilogramsPerSecond();
    }
    for (int i = 0; i < 4; i++) {
      sum[i] -= i % 2 == 0 ? demand[i] : demand[i] * p[i] / 7.2e5;
    }
    return Arrays.copyOf(sum, 4);
  }

  static Network header(int drops, boolean ring, ToolDemand tool) {
    Network.Builder builder = Network.at(ATMOSPHERE).supply("n0", SUPPLY);
    for (int i = 0; i < drops; i++) {
      String next = "n" + (ring && i == drops - 1 ? 0 : i + 1);
      builder.line("main " + i, "n" + i, next, pipe(160.0, 5.0));
      builder.part("coupler " + i, "n" + i, "t" + i, part(3.0 + i % 5, 0.3));
      builder.tool("t" + i, tool);
    }
    return builder.build();
  }

  /** Two thousand nodes are solved in {@link NetworkReachTest}. */
  @ParameterizedTest
  @ValueSource(booleans = {false, true})
  void a_header_and_a_ring_of_twenty_drops_are_solved_in_few_steps(boolean ring) {
    NetworkResult.Solved result = solved(header(20, ring, following(0.004)));
    assertThat(result.pressures()).hasSize(40 + (ring ? 0 : 1));
    assertThat(result.iterations()).isLessThan(30);
    assertThat(result.imbalance()).isLessThan(1.0e-12);
  }

  /**
   * The tool of fixed flow asks for more than the hose lets through into the open: it gets what that is, at the
   * atmosphere, and says so.
   */
  @Test
  void a_tool_that_cannot_be_fed_starves_at_the_atmosphere() {
    NetworkResult.Solved result = solved(chain(fixed(0.2)));
    double open =
        run().largestFlow(GaugePressure.ofBar(0.0)).orElseThrow().massFlow().kilogramsPerSecond();
    assertThat(result.starved()).hasSize(1);
    ToolFlow tool = result.tools().get(0);
    assertThat(tool.wanted().kilogramsPerSecond()).isCloseTo(0.2, within(1.0e-12));
    assertThat(tool.massFlow().kilogramsPerSecond())
        .as("the solver lets a tool starve within a thousandth of a bar")
        .isCloseTo(open, within(1.0e-3 * open));
    assertThat(tool.atTool().bar()).isBetween(0.0, 0.001);
    assertThat(result.cautions()).isNotEmpty();
  }

  @Test
  void near_tools_take_the_air_of_far_ones_when_it_runs_short() {
    Network network = Network.at(ATMOSPHERE)
        .supply("s", SUPPLY)
        .line("first", "s", "near", pipe(9.5, 10.0))
        .line("second", "near", "far", pipe(9.5, 30.0))
        .tool("near", fixed(0.03))
        .tool("far", fixed(0.05))
        .build();
    NetworkResult.Solved result = solved(network);
    assertThat(result.tools().get(0).isStarved()).isFalse();
    assertThat(result.tools().get(1).isStarved()).isTrue();
    assertThat(result.tools().get(1).massFlow().kilogramsPerSecond()).isPositive();
  }

  @Test
  void a_node_without_a_way_from_a_supply_is_told_by_name() {
    Network network = Network.at(ATMOSPHERE)
        .supply("s", SUPPLY)
        .line("main", "s", "a", pipe(20.0, 10.0))
        .line("island", "b", "c", pipe(20.0, 10.0))
        .tool("a", fixed(0.01))
        .tool("d", fixed(0.01))
        .build();
    NetworkResult.NoSolution none = (NetworkResult.NoSolution) network.solve();
    assertThat(none.nodes()).containsExactly("b", "c", "d");
    assertThat(none.reason()).isEqualTo("No way leads from a supply to b, c, d.");
    assertThat(none.working().toText()).contains(none.reason());
    assertThat(none.cautions()).containsExactly(SafetyRules.usFederal().deference());
    assertThat(none.<Boolean>fold(s -> false, n -> true)).isTrue();
  }

  @Test
  void a_regulator_and_a_compressor_feed_a_network_as_they_feed_a_run() {
    Regulator regulator = new Regulator(EIGHT, air(0.05), AbsolutePressure.ofBar(7.0));
    NetworkResult.Solved result = solved(Network.at(ATMOSPHERE)
        .supply("s", regulator)
        .line("main", "s", "t", pipe(15.0, 10.0))
        .tool("t", following(0.02))
        .build());
    RunResult.Delivered run = (RunResult.Delivered)
        Run.from(regulator, ATMOSPHERE).through("main", pipe(15.0, 10.0)).balance(following(0.02));
    assertThat(result.at("t").pascals()).isCloseTo(run.atTool().pascals(), within(1.0e-4));
    assertThat(result.at("s").pascals()).isCloseTo(run.atSupply().pascals(), within(1.0e-4));
    assertThat(result.supplies().get(0).exhausted()).isFalse();
    Pencil.check(result);
  }

  @Test
  void an_exhausted_compressor_says_so_and_starves_its_tools() {
    Compressor compressor = new Compressor(
        List.of(
            new Compressor.Point(AbsolutePressure.ofBar(4.0), air(0.012)),
            new Compressor.Point(AbsolutePressure.ofBar(9.0), air(0.008))),
        AbsolutePressure.ofBar(7.0),
        AbsolutePressure.ofBar(8.0),
        Volume.ofLitres(200.0),
        Temperature.ofCelsius(20.0));
    for (double wanted : new double[] {0.005, 0.01, 0.05}) {
      NetworkResult.Solved result = solved(Network.at(ATMOSPHERE)
          .supply("s", compressor)
          .line("main", "s", "t", pipe(15.0, 10.0))
          .tool("t", fixed(wanted))
          .build());
      assertThat(result.supplies().get(0).exhausted()).isEqualTo(wanted > 0.012);
      assertThat(result.starved().isEmpty()).isEqualTo(wanted <= 0.012);
      assertThat(result.taken().kilogramsPerSecond())
          .isCloseTo(Math.min(wanted, 0.012), within(1.0e-9));
      assertThat(result.working()).isNotNull();
    }
  }

  /** Two supplies at two pressures and no tool: air runs from one into the other that is said to have no valve. */
  @Test
  void a_lower_supply_without_a_non_return_valve_is_run_back_into() {
    NetworkResult.Solved result = solved(Network.at(ATMOSPHERE)
        .supply("high", SUPPLY)
        .supplyWithoutNonReturnValve("low", Supply.fixed(EIGHT.at(AbsolutePressure.ofBar(7.5))))
        .line("between", "low", "high", pipe(20.0, 40.0))
        .build());
    assertThat(result.supplies().get(1).takenBack().kilogramsPerSecond()).isPositive();
    assertThat(result.supplies().get(1).given().kilogramsPerSecond()).isZero();
    BranchFlow between = result.through("between");
    assertThat(between.from()).isEqualTo("high");
    assertThat(between.to()).isEqualTo("low");
    assertThat(between.drop().bar()).isCloseTo(0.5, within(1.0e-9));
    assertThat(result.working()).isNotNull();
  }

  /** A drooping regulator beside a fixed supply that is higher: it closes, and lets nothing back. */
  @Test
  void a_regulator_lets_nothing_back() {
    NetworkResult.Solved result = solved(Network.at(ATMOSPHERE)
        .supply("high", SUPPLY)
        .supply(
            "regulated",
            new Regulator(
                EIGHT.at(AbsolutePressure.ofBar(6.0)), air(0.05), AbsolutePressure.ofBar(5.5)))
        .line("between", "regulated", "high", pipe(20.0, 40.0))
        .tool("regulated", fixed(0.01))
        .build());
    assertThat(result.supplies().get(1).given().kilogramsPerSecond())
        .isCloseTo(0.0, within(1.0e-9));
    assertThat(result.supplies().get(1).takenBack().kilogramsPerSecond())
        .isCloseTo(0.0, within(1.0e-9));
    assertThat(result.at("regulated").bar()).isGreaterThan(7.0);
  }

  /** At Re 2300 friction jumps; beside another line, a flow may be held there with a drop that lies between. */
  @Test
  void a_flow_may_stand_at_the_jump_of_friction() {
    List<BranchFlow> standing = new ArrayList<>();
    double jump = 0.25 * 2300.0 * Math.PI * 0.010 * EIGHT.viscosity().pascalSeconds();
    for (int i = 0; i < 40; i++) {
      NetworkResult.Solved result = solved(Network.at(ATMOSPHERE)
          .supply("s", SUPPLY)
          .line("one", "s", "t", pipe(10.0, 10.0))
          .line("other", "s", "t", pipe(14.0, 10.0))
          .tool("t", fixed(0.0006 + 0.00005 * i))
          .build());
      result.branches().stream()
          .filter(BranchFlow::unsettled)
          .filter(branch -> branch.name().equals("one"))
          .forEach(standing::add);
      if (result.branches().stream().anyMatch(BranchFlow::unsettled)) {
        assertThat(result.working().toText()).contains("stands at Re 2300");
      }
    }
    assertThat(standing).isNotEmpty().allSatisfy(branch -> {
      assertThat(branch.massFlow().kilogramsPerSecond()).isCloseTo(jump, within(1.0e-9 * jump));
      double laminar = drop(jump * 0.9999999);
      double turbulent = drop(jump * 1.0000001);
      assertThat(branch.drop().pascals()).isBetween(0.999 * laminar, 1.001 * turbulent);
    });
  }

  private static double drop(double flow) {
    return LossModels.isothermal()
        .loss(pipe(10.0, 10.0), MassFlow.ofKilogramsPerSecond(flow), EIGHT)
        .<Double>fold(flowing -> flowing.drop().pascals(), choked -> -1.0);
  }

  @Test
  void the_printed_numbers_give_the_printed_answer() {
    Network ring = Network.at(ATMOSPHERE)
        .supply("s", SUPPLY)
        .line("a", "s", "x", pipe(20.0, 30.0))
        .line("b", "s", "y", pipe(20.0, 50.0))
        .line("c", "x", "y", pipe(15.0, 25.0))
        .part("coupler", "y", "t", part(5.0, 0.3))
        .tool("x", fixed(0.01))
        .tool("y", fixed(0.015))
        .tool("t", following(0.01))
        .build();
    NetworkResult.Solved result = solved(ring);
    Pencil.check(result);
    Completeness.check(result);
    assertThat(result.working().toText()).contains("Mass at x", "Mass at y", "coupler: from y");
    assertThat(ring).hasToString("4 nodes, 4 branches, 1 supplies, 3 tools at 1 bar(a)");
    assertThat(ring.nodes()).containsExactly("s", "x", "y", "t");
  }

  @Test
  void at_their_mean_flows_tools_take_load_times_duty() {
    Network network = chain(fixed(0.01).withDuty(0.25).withLoad(0.8));
    assertThat(solved(network).taken().kilogramsPerSecond()).isCloseTo(0.008, within(1.0e-12));
    NetworkResult.Solved mean = (NetworkResult.Solved) network.solveMean();
    assertThat(mean.taken().kilogramsPerSecond()).isCloseTo(0.002, within(1.0e-12));
    assertThat(mean.at("tool")).isGreaterThan(solved(network).at("tool"));
  }

  @Test
  void the_same_seed_gives_the_same_shop() {
    Network network = header(6, true, following(0.01).withDuty(0.4));
    NetworkSimulation one = network.simulate(42, 200);
    NetworkSimulation again = network.simulate(42, 200);
    assertThat(one).isEqualTo(again);
    assertThat(network.simulate(43, 200)).isNotEqualTo(one);
    assertThat(one.trials()).isEqualTo(200);
    assertThat(one.unsolved()).isZero();
    assertThat(one.seed()).isEqualTo(42);
    assertThat(one.flow95()).isGreaterThan(one.meanFlow());
    // 1200 draws at 0.4: three standard deviations are 51
    int ran = one.tools().stream().mapToInt(NetworkSimulation.ToolRecord::ran).sum();
    assertThat(ran).isBetween(480 - 51, 480 + 51);
    NetworkSimulation.ToolRecord tool = one.tools().get(0);
    assertThat(tool.node()).isEqualTo("t0");
    assertThat(tool.tool().duty()).isEqualTo(0.4);
    assertThat(tool.quantile(0.0).orElseThrow())
        .isLessThanOrEqualTo(tool.quantile(1.0).orElseThrow());
    assertThat(tool.quantile(0.5)).contains(tool.pressure().get(tool.ran() / 2));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> tool.quantile(Double.NaN))
        .withMessage("share must be in [0, 1], was NaN");
  }

  /** Three tools have eight sets; each trial is drawn here again, and each set solved as a network of its own. */
  @Test
  void each_trial_is_the_steady_flow_with_the_tools_that_run_in_it() {
    double[] duties = {0.3, 0.5, 1.0};
    double[] loads = {1.0, 0.8, 0.6};
    NetworkResult.Solved[] sets = new NetworkResult.Solved[8];
    for (int set = 0; set < 8; set++) {
      sets[set] = solved(threeTools(duties, loads, set));
    }
    int trials = 300;
    NetworkSimulation simulation = threeTools(duties, loads, 7).simulate(11, trials);
    Random random = new Random(11);
    List<List<GaugePressure>> expected =
        List.of(new ArrayList<>(), new ArrayList<>(), new ArrayList<>());
    int[] starved = new int[3];
    double[] taken = new double[trials];
    for (int trial = 0; trial < trials; trial++) {
      int set = 0;
      for (int i = 0; i < 3; i++) {
        set |= random.nextDouble() < duties[i] ? 1 << i : 0;
      }
      taken[trial] = sets[set].taken().kilogramsPerSecond();
      for (int i = 0; i < 3; i++) {
        if ((set >> i & 1) == 1) {
          expected.get(i).add(sets[set].tools().get(i).atTool());
          starved[i] += sets[set].tools().get(i).isStarved() ? 1 : 0;
        }
      }
    }
    for (int i = 0; i < 3; i++) {
      NetworkSimulation.ToolRecord tool = simulation.tools().get(i);
      assertThat(tool.pressure()).isEqualTo(expected.get(i).stream().sorted().toList());
      assertThat(tool.ran()).isEqualTo(expected.get(i).size());
      assertThat(tool.starved()).isEqualTo(starved[i]);
    }
    assertThat(starved[0]).isPositive();
    assertThat(simulation.meanFlow().kilogramsPerSecond())
        .isCloseTo(Arrays.stream(taken).average().orElseThrow(), within(1.0e-15));
    Arrays.sort(taken);
    assertThat(simulation.flow95().kilogramsPerSecond()).isEqualTo(taken[285]);
  }

  /** Tools of which only those of a set run: bit 0 the first. */
  private static Network threeTools(double[] duties, double[] loads, int set) {
    Network.Builder builder =
        Network.at(ATMOSPHERE).supply("s", SUPPLY).line("main", "s", "a", pipe(15.0, 30.0));
    for (int i = 0; i < 3; i++) {
      ToolDemand tool = i == 1 ? fixed(0.01) : following(0.015);
      builder.part("coupling " + i, "a", "t" + i, part(3.0, 0.3));
      builder.tool("t" + i, tool.withDuty(duties[i]).withLoad((set >> i & 1) * loads[i]));
    }
    return builder.build();
  }

  @Test
  void tools_that_always_run_are_simulated_as_they_are_solved_and_others_never_run() {
    Network always = chain(fixed(0.01));
    NetworkSimulation all = always.simulate(1, 3);
    assertThat(all.tools().get(0).ran()).isEqualTo(3);
    assertThat(all.tools().get(0).starved()).isZero();
    assertThat(all.tools().get(0).pressure())
        .containsOnly(solved(always).tools().get(0).atTool());
    NetworkSimulation never = chain(fixed(0.01).withDuty(0.0)).simulate(1, 3);
    assertThat(never.tools().get(0).ran()).isZero();
    assertThat(never.tools().get(0).quantile(0.5)).isEmpty();
    assertThat(never.meanFlow().kilogramsPerSecond()).isZero();
    assertThat(chain(fixed(0.2)).simulate(1, 3).tools().get(0).starved()).isEqualTo(3);
    NetworkSimulation none = Network.at(ATMOSPHERE)
        .supply("s", SUPPLY)
        .tool("island", fixed(0.01))
        .build()
        .simulate(1, 2);
    assertThat(none.unsolved()).isEqualTo(2);
    assertThat(none.tools()).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 100_001})
  void no_trials_or_too_many_are_refused(int trials) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> chain(fixed(0.01)).simulate(1, trials))
        .withMessage("trials must be in [1, 100000], was " + trials);
  }

  @Test
  void what_is_no_network_is_refused() {
    Network.Builder builder = Network.at(ATMOSPHERE).supply("s", SUPPLY);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Network.at(ATMOSPHERE).build())
        .withMessage("supplies of a network must be at least 1, was 0; say supply(…)");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> builder.supply("s", SUPPLY))
        .withMessage("supplies at s must be at most 1, was 2");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> builder.supply("z", Supply.fixed(EIGHT.at(ATMOSPHERE))))
        .withMessageStartingWith("supply pressure at z must be above the atmosphere");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> builder.supply(
            "z", Supply.fixed(AirState.of(EIGHT.pressure(), Temperature.ofCelsius(30.0)))))
        .withMessageStartingWith("temperature of the supply at z must be that of the others");
    builder.line("main", "s", "a", pipe(20.0, 10.0));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> builder.line("main", "a", "b", pipe(20.0, 10.0)))
        .withMessage("name of a branch must differ from the others, was \"main\" again");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> builder.line("loop", "a", "a", pipe(20.0, 10.0)))
        .withMessage("ends of loop must be two nodes, was \"a\" twice");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> builder.part("", "a", "b", part(3.0, 0.3)))
        .withMessage("name of a branch must say which, was blank");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> builder.tool(" ", fixed(0.1)))
        .withMessage("name of a node must say which, was blank");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> builder.part(
            "valve", "a", "b", part(3.0, 0.3).withCrackingPressure(PressureDrop.ofBar(0.1))))
        .withMessageContaining("say checkValve(…)");
    Network network = builder.tool("a", fixed(0.01)).build();
    assertThatIllegalArgumentException()
        .isThrownBy(() -> network.without("branch"))
        .withMessage("name must be that of a branch of this network, was \"branch\"");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> solved(network).at("nowhere"))
        .withMessage("node must be one of the network, was \"nowhere\"");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> solved(network).through("nothing"))
        .withMessage("branch must be one of the network, was \"nothing\"");
  }

  @Test
  void a_wider_pipe_or_a_larger_coupler_is_put_in_by_its_name() {
    Network thin = Network.at(ATMOSPHERE)
        .supply("s", SUPPLY)
        .line("main", "s", "a", pipe(10.0, 20.0))
        .part("coupler", "a", "t", part(3.0, 0.3))
        .tool("t", fixed(0.01))
        .build();
    double before = ((NetworkResult.Solved) thin.solve()).at("t").pascals();
    double wider = ((NetworkResult.Solved)
            thin.replacing("main", pipe(20.0, 20.0)).solve())
        .at("t")
        .pascals();
    double larger = ((NetworkResult.Solved)
            thin.replacing("coupler", part(6.0, 0.3)).solve())
        .at("t")
        .pascals();
    assertThat(wider).isGreaterThan(before);
    assertThat(larger).isGreaterThan(before);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> thin.replacing("coupler", pipe(20.0, 20.0)))
        .withMessage("name must be that of a line of this network, was \"coupler\"");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> thin.replacing("main", part(6.0, 0.3)))
        .withMessage("name must be that of a part of this network, was \"main\"");
    assertThatIllegalArgumentException()
        .isThrownBy(() ->
            thin.replacing("coupler", part(6.0, 0.3).withCrackingPressure(PressureDrop.ofBar(0.1))))
        .withMessageContaining("say checkValve(…)");
  }

  /** Two tools that always run: the peak is known. V = t (ṁd − ṁc) R T/(p1 − p2) less the pipe. */
  @Test
  void a_receiver_carries_the_peak_that_the_simulation_found() {
    Network network = Network.at(ATMOSPHERE)
        .supply("s", SUPPLY)
        .line("main", "s", "a", pipe(40.0, 20.0))
        .part("valve", "a", "b", part(50.0, 0.3))
        .tool("b", fixed(0.02))
        .tool("a", fixed(0.01))
        .build();
    double pipe = Math.PI / 4.0 * 0.04 * 0.04 * 20.0;
    assertThat(network.pipeVolume().cubicMetres()).isCloseTo(pipe, within(1.0e-12));
    NetworkSimulation shop = network.simulate(1, 3);
    AbsolutePressure least = AbsolutePressure.ofBar(7.0);
    ReceiverSize receiver = shop.receiver(
            air(0.02),
            Duration.ofSeconds(60),
            EIGHT.pressure(),
            least,
            EIGHT.temperature(),
            network.pipeVolume())
        .orElseThrow();
    double stored = 60.0 * 0.01 * AirState.GAS_CONSTANT * 293.15 / 1.0e5;
    assertThat(receiver.volume().cubicMetres()).isCloseTo(stored - pipe, within(1.0e-6));
    assertThat(shop.receiver(
            air(0.031),
            Duration.ofSeconds(60),
            EIGHT.pressure(),
            least,
            EIGHT.temperature(),
            network.pipeVolume()))
        .isEmpty();
  }
}
