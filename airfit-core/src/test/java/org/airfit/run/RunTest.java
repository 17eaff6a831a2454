package org.airfit.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.lang.management.ManagementFactory;
import java.util.List;
import java.util.stream.Stream;
import org.airfit.Comparison;
import org.airfit.Pencil;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.line.Conduit;
import org.airfit.plant.RegulatorElement;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.DynamicViscosity;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class RunTest {

  private static final AbsolutePressure ATMOSPHERE = AbsolutePressure.ofBar(1.0);
  private static final AirState SUPPLY =
      AirState.of(AbsolutePressure.ofBar(8.0), Temperature.ofCelsius(20.0));
  private static final Conduit HOSE =
      Conduit.of(Length.ofMillimetres(9.5), Length.ofMetres(10.0), Length.ofMillimetres(0.01));

  static Stream<Row> chains() {
    return Rows.of(RunTest.class, "line_chain.csv");
  }

  private static FlowCapacity part(double c, double b) {
    return FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(c), b);
  }

  private static Run shop() {
    return Run.from(SUPPLY, ATMOSPHERE)
        .through("wall coupling", part(6.0, 0.3))
        .through("hose", HOSE)
        .through("tool coupling", part(6.0, 0.3));
  }

  /** A regulator holds 7 bar(g): a gauge of 0 to 10 bar and class 1.6 may be off by 0.16 bar. */
  @Test
  void what_a_gauge_may_not_show_is_told_from_nothing_to_its_error() {
    AirState main = AirState.of(AbsolutePressure.ofBar(12.0), Temperature.ofCelsius(20.0));
    RunResult.Delivered delivered = (RunResult.Delivered) Run.from(main, ATMOSPHERE)
        .through("regulator", RegulatorElement.of(part(20.0, 0.3), AbsolutePressure.ofBar(8.0)))
        .at(FreeAirFlow.ofAnrLitresPerSecond(1.0));
    assertThat(RunResult.Delivered.GAUGE_ERROR).isEqualTo(PressureDrop.ofPascals(16_000.0));
    assertThat(delivered.lessThanAGaugeShows(GaugePressure.ofPascals(700_001.0)))
        .isEmpty();
    assertThat(delivered.lessThanAGaugeShows(GaugePressure.ofPascals(700_000.0)))
        .contains(PressureDrop.ofPascals(0.0));
    assertThat(delivered.lessThanAGaugeShows(GaugePressure.ofPascals(684_001.0)))
        .contains(PressureDrop.ofPascals(15_999.0));
    assertThat(delivered.lessThanAGaugeShows(GaugePressure.ofPascals(684_000.0)))
        .isEmpty();
    assertThat(delivered.lessThanAGaugeShows(GaugePressure.ofPascals(683_999.0)))
        .isEmpty();
  }

  private static Run run(Row row) {
    AirState supply = AirState.of(
            AbsolutePressure.ofBar(row.number("p1_bar_abs")),
            Temperature.ofKelvins(row.number("t_k")))
        .withViscosity(DynamicViscosity.ofPascalSeconds(row.number("mu_pa_s")));
    Run run = Run.from(supply, ATMOSPHERE);
    int number = 0;
    for (String element : row.text("elements_pipe_idmm_Lm_epsmm_K_or_iso_C_b").split("\\|", -1)) {
      number++;
      double[] figures = Stream.of(element.substring(element.indexOf(':') + 1).split(",", -1))
          .mapToDouble(Double::parseDouble)
          .toArray();
      run = element.startsWith("pipe")
          ? run.through(
              "element " + number,
              Conduit.of(
                      Length.ofMillimetres(figures[0]),
                      Length.ofMetres(figures[1]),
                      Length.ofMillimetres(figures[2]))
                  .withFittings(figures[3]))
          : run.through("element " + number, part(figures[0], figures[1]));
    }
    return run;
  }

  @ParameterizedTest
  @MethodSource("chains")
  void every_chain_agrees_after_each_element_or_chokes_where_the_table_says(Row row) {
    RunResult result = run(row).at(MassFlow.ofKilogramsPerSecond(row.number("mdot_kg_s")));
    List<ElementLoss> shares = result.fold(RunResult.Delivered::shares, RunResult.Starved::before);
    String[] printed = row.has("p_after_each_bar_abs")
        ? row.text("p_after_each_bar_abs").split("\\|", -1)
        : new String[0];
    assertThat(shares).hasSize(printed.length);
    for (int i = 0; i < printed.length; i++) {
      Comparison.of(
              "Run: supply lines",
              row + ", after element " + (i + 1),
              Double.parseDouble(printed[i]),
              "bar(a)",
              row.evidence("p_after_each_bar_abs"))
          .isMetBy(shares.get(i).outlet().bar(), 5.0e-13, "13 decimals printed");
    }
    if (row.text("status").equals("ok")) {
      RunResult.Delivered delivered = (RunResult.Delivered) result;
      Comparison.of(
              "Run: supply lines",
              row + ", whole drop",
              row.number("dp_total_bar"),
              "bar",
              row.evidence("dp_total_bar"))
          .isMetBy(delivered.lost().bar(), 1.0e-12, "12 digits printed");
    } else {
      assertThat(result).isInstanceOf(RunResult.Starved.class);
      assertThat(row.text("status")).endsWith(((RunResult.Starved) result).element());
    }
  }

  @Test
  void shares_chain_up_and_make_the_whole() {
    RunResult.Delivered delivered =
        (RunResult.Delivered) shop().at(FreeAirFlow.ofAnrLitresPerSecond(12.0));
    AbsolutePressure at = SUPPLY.pressure();
    double parts = 0.0;
    for (ElementLoss share : delivered.shares()) {
      assertThat(share.inlet()).isEqualTo(at);
      at = share.outlet();
      parts += share.fraction();
    }
    assertThat(at).isEqualTo(delivered.atTool());
    assertThat(parts).isCloseTo(1.0, within(1.0e-12));
    assertThat(delivered.atToolGauge().bar()).isCloseTo(at.bar() - 1.0, within(1.0e-12));
    assertThat(delivered.atSupply()).isEqualTo(SUPPLY.pressure());
  }

  /** By hand: without the hose only the two couplings are left, and a run of these tells the gain. */
  @Test
  void the_gain_of_an_element_is_what_the_run_without_it_has_more() {
    FreeAirFlow flow = FreeAirFlow.ofAnrLitresPerSecond(12.0);
    RunResult.Delivered whole = (RunResult.Delivered) shop().at(flow);
    RunResult.Delivered without = (RunResult.Delivered) Run.from(SUPPLY, ATMOSPHERE)
        .through("wall coupling", part(6.0, 0.3))
        .through("tool coupling", part(6.0, 0.3))
        .at(flow);
    assertThat(whole.shares().get(1).gain().pascals())
        .isCloseTo(without.atTool().pascals() - whole.atTool().pascals(), within(1.0e-9));
  }

  @Test
  void the_bottleneck_is_the_element_whose_loss_helps_most() {
    Run narrow = Run.from(SUPPLY, ATMOSPHERE)
        .through("wide", part(30.0, 0.3))
        .through("narrow", part(3.0, 0.3))
        .through("middling", part(8.0, 0.3));
    RunResult.Delivered delivered =
        (RunResult.Delivered) narrow.at(FreeAirFlow.ofAnrLitresPerSecond(10.0));
    assertThat(delivered.bottleneck().name()).isEqualTo("narrow");
  }

  @Test
  void where_another_element_chokes_first_the_gain_is_told_as_nothing() {
    Run run = Run.from(SUPPLY, ATMOSPHERE).through("only", part(6.0, 0.3));
    RunResult.Delivered still = (RunResult.Delivered) run.at(MassFlow.ofKilogramsPerSecond(0.0));
    assertThat(still.lost().pascals()).isZero();
    assertThat(still.shares().get(0).fraction()).isZero();
    assertThat(still.shares().get(0).gain().pascals()).isZero();
  }

  @Test
  void a_flow_that_would_need_less_than_the_atmosphere_behind_it_starves() {
    Conduit longHose =
        Conduit.of(Length.ofMillimetres(7.9), Length.ofMetres(15.0), Length.ofMillimetres(0.02));
    Run run = Run.from(SUPPLY, ATMOSPHERE).through("long hose", longHose);
    double open =
        run.largestFlow(GaugePressure.ofBar(0.0)).orElseThrow().massFlow().kilogramsPerSecond();
    RunResult more = run.at(MassFlow.ofKilogramsPerSecond(open * 1.0001));
    assertThat(more).isInstanceOf(RunResult.Starved.class);
    RunResult.Starved starved = (RunResult.Starved) more;
    assertThat(starved.element()).isEqualTo("long hose");
    assertThat(starved.inlet()).isEqualTo(SUPPLY.pressure());
    assertThat(starved.largest().kilogramsPerSecond()).isCloseTo(open, within(1.0e-9 * open));
    assertThat(run.at(MassFlow.ofKilogramsPerSecond(open * 0.9999)))
        .isInstanceOf(RunResult.Delivered.class);
  }

  @Test
  void the_largest_flow_arrives_at_just_the_pressure_asked_for() {
    GaugePressure least = GaugePressure.ofBar(6.0);
    MassFlow most = shop().largestFlow(least).orElseThrow().massFlow();
    RunResult.Delivered delivered = (RunResult.Delivered) shop().at(most);
    assertThat(delivered.atToolGauge().bar())
        .isCloseTo(6.0, within(1.0e-10))
        .isGreaterThanOrEqualTo(6.0);
  }

  @Test
  void a_supply_below_the_pressure_asked_for_carries_nothing() {
    assertThat(shop().largestFlow(GaugePressure.ofBar(7.1))).isEmpty();
    assertThat(shop()
            .largestFlow(GaugePressure.ofBar(7.0))
            .orElseThrow()
            .massFlow()
            .kilogramsPerSecond())
        .as("kg/s; what is left is the rounding of 8 bar")
        .isLessThan(1.0e-9);
  }

  @Test
  void cautions_and_working_go_with_both_answers() {
    RunResult delivered = shop().at(FreeAirFlow.ofAnrLitresPerSecond(12.0));
    RunResult starved = shop().at(FreeAirFlow.ofAnrLitresPerSecond(200.0));
    assertThat(starved.<Boolean>fold(d -> false, s -> true)).isTrue();
    assertThat(delivered.cautions())
        .extracting(c -> c.title())
        .contains("More pressure at the supply does not help");
    assertThat(starved.cautions()).isNotEmpty().isSubsetOf(delivered.cautions());
    assertThat(delivered.working().toText())
        .contains("wall coupling", "hose", "tool coupling", "Re");
    assertThat(starved.working().toText()).contains("chokes");
  }

  @Test
  void a_supply_below_the_atmosphere_is_refused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Run.from(SUPPLY.at(AbsolutePressure.ofBar(0.9)), ATMOSPHERE))
        .withMessageContaining("supply pressure must be at least the atmosphere");
  }

  /** With b = 0 the whole choked flow leaves nothing behind the part: the tool starves, nothing breaks. */
  @Test
  void a_part_that_passes_into_a_vacuum_only_starves_the_tool() {
    FlowCapacity part = part(6.0, 0.0);
    RunResult result =
        Run.from(SUPPLY, ATMOSPHERE).through("part", part).at(part.chokedFlow(SUPPLY));
    assertThat(result).isInstanceOf(RunResult.Starved.class);
    assertThat(((RunResult.Starved) result).largest()).isLessThan(part.chokedFlow(SUPPLY));
  }

  /** 10 % of the pressure from receiver to tool, of Fluid Power Journal: 0.7 bar of 7 bar(g). */
  @Test
  void a_loss_of_more_than_a_tenth_is_told() {
    MassFlow most = shop().largestFlow(GaugePressure.ofBar(6.3)).orElseThrow().massFlow();
    assertThat(shop().at(most.times(0.999)).cautions()).hasSize(1);
    assertThat(shop().at(most.times(1.001)).cautions())
        .extracting(caution -> caution.title())
        .contains("More than a tenth of the pressure is lost");
  }

  /** Behind a regulator a tenth is that of the pressure at the receiver all the same: 0.7 of 7 bar(g), not 0.4 of 4. */
  @Test
  void a_tenth_is_of_the_pressure_at_the_supply_whatever_a_regulator_holds() {
    Run regulated = Run.from(SUPPLY, ATMOSPHERE)
        .through(
            "regulator",
            RegulatorElement.of(part(50.0, 0.3), GaugePressure.ofBar(4.0).absolute(ATMOSPHERE)))
        .through("hose", HOSE);
    MassFlow within =
        regulated.largestFlow(GaugePressure.ofBar(3.4)).orElseThrow().massFlow();
    assertThat(regulated.at(within).cautions())
        .extracting(caution -> caution.title())
        .doesNotContain("More than a tenth of the pressure is lost");
    MassFlow beyond =
        regulated.largestFlow(GaugePressure.ofBar(3.2)).orElseThrow().massFlow();
    assertThat(regulated.at(beyond).cautions())
        .extracting(caution -> caution.title())
        .contains("More than a tenth of the pressure is lost");
  }

  /** The searches ask for it far oftener than anybody looks at an answer. */
  @Test
  void the_number_at_the_tool_allocates_nothing() {
    RunPath path = shop().path();
    com.sun.management.ThreadMXBean threads =
        (com.sun.management.ThreadMXBean) ManagementFactory.getThreadMXBean();
    double sum = path.pascalsAtTool(0.01);
    long before = threads.getCurrentThreadAllocatedBytes();
    for (int i = 1; i <= 1_000; i++) {
      sum += path.pascalsAtTool(1.0e-5 * i);
    }
    long bytes = threads.getCurrentThreadAllocatedBytes() - before;
    assertThat(sum).isPositive();
    assertThat(bytes).isLessThan(4_000); // an object each would be 16,000 and more
  }

  @Test
  void a_run_of_nothing_is_no_run() {
    assertThatExceptionOfType(IllegalStateException.class)
        .isThrownBy(() -> Run.from(SUPPLY, ATMOSPHERE).at(MassFlow.ofKilogramsPerSecond(0.01)));
    assertThatExceptionOfType(IllegalStateException.class)
        .isThrownBy(() -> Run.from(SUPPLY, ATMOSPHERE).largestFlow(GaugePressure.ofBar(6.0)));
  }

  @Test
  void a_vacuum_at_the_tool_is_refused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> shop().largestFlow(GaugePressure.ofBar(-0.1)))
        .withMessageStartingWith("pressure at the tool must be at least 0 Pa(g)");
  }

  @Test
  void the_run_tells_its_ends() {
    assertThat(shop().stillAir()).isEqualTo(SUPPLY);
    assertThat(shop().atmosphere()).isEqualTo(ATMOSPHERE);
  }

  @ParameterizedTest
  @MethodSource("chains")
  void the_printed_numbers_give_the_printed_answer(Row row) {
    Pencil.check(run(row).at(MassFlow.ofKilogramsPerSecond(row.number("mdot_kg_s"))));
  }

  /** With two elements of one name a share found by its name would be that of the first. */
  @Test
  void two_elements_of_one_name_are_refused() {
    FlowCapacity part = FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(6.0), 0.3);
    Conduit hose =
        Conduit.of(Length.ofMillimetres(9.5), Length.ofMetres(10.0), Length.ofMillimetres(0.01));
    AirState supply = AirState.of(AbsolutePressure.ofBar(8.0), Temperature.ofCelsius(20.0));
    Run run = Run.from(supply, AbsolutePressure.ofBar(1.0))
        .through("hose", hose)
        .through("coupling", part);
    String message = "name of an element must differ from the others of the run, [hose, coupling],"
        + " was \"%s\" again; say which, such as \"%s 2\"";
    assertThatIllegalArgumentException()
        .isThrownBy(() -> run.through("coupling", part))
        .withMessage(String.format(message, "coupling", "coupling"));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> run.through("hose", part))
        .withMessage(String.format(message, "hose", "hose"));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> run.through("hose", hose))
        .withMessage(String.format(message, "hose", "hose"));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> run.through("coupling", part.element()))
        .withMessage(String.format(message, "coupling", "coupling"));
    Run longer = run.through("coupling 2", part);
    assertThat(longer.names()).containsExactly("hose", "coupling", "coupling 2");
    RunResult.Delivered delivered =
        (RunResult.Delivered) longer.at(MassFlow.ofKilogramsPerSecond(0.01));
    for (int i = 0; i < 3; i++) {
      assertThat(delivered.share(longer.names().get(i)))
          .isSameAs(delivered.shares().get(i));
    }
    assertThat(delivered.share("coupling 2").inlet())
        .isEqualTo(delivered.share("coupling").outlet());
    assertThatIllegalArgumentException()
        .isThrownBy(() -> delivered.share("nipple"))
        .withMessage(
            "element must be one of the run, of [hose, coupling, coupling 2], was \"nipple\"");
  }
}
