package org.airfit.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;
import static org.assertj.core.api.Assertions.within;

import java.lang.reflect.Modifier;
import java.util.List;
import java.util.stream.Stream;
import nl.jqno.equalsverifier.EqualsVerifier;
import nl.jqno.equalsverifier.Warning;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.flow.FlowElement;
import org.airfit.flow.FlowElements;
import org.airfit.flow.FlowLoss;
import org.airfit.line.Conduit;
import org.airfit.plant.Supply;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.Length;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.run.Run;
import org.airfit.run.RunResult;
import org.airfit.run.ToolDemand;
import org.airfit.safety.SafetyRules;
import org.airfit.source.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Networks and their answers compare by value, nobody else makes an answer, and an element of the user's own is solved.
 */
class NetworkValuesTest {

  private static final AbsolutePressure ATMOSPHERE = AbsolutePressure.ofBar(1.0);
  private static final AirState EIGHT =
      AirState.of(AbsolutePressure.ofBar(8.0), Temperature.ofCelsius(20.0));
  private static final FlowElement FILTER = FlowElements.ofTable(
      EIGHT,
      List.of(
          new FlowLoss(FreeAirFlow.ofAnrLitresPerSecond(5.0), PressureDrop.ofBar(0.05)),
          new FlowLoss(FreeAirFlow.ofAnrLitresPerSecond(20.0), PressureDrop.ofBar(0.8))),
      Source.demo("a filter of no maker, for this test"));

  private static Stream<Class<?>> values() {
    return Stream.of(
        Network.class,
        NetworkResult.Solved.class,
        NetworkResult.NoSolution.class,
        BranchFlow.class,
        SupplyFlow.class,
        ToolFlow.class,
        NetworkSimulation.class,
        NetworkSimulation.ToolRecord.class);
  }

  @ParameterizedTest
  @MethodSource("values")
  void values_compare_by_all_they_hold(Class<?> type) {
    EqualsVerifier.forClass(type)
        .withPrefabValues(SafetyRules.class, SafetyRules.usFederal(), SafetyRules.bundled())
        .suppress(Warning.NULL_FIELDS) // refused at the door
        .verify();
  }

  @Test
  void nobody_else_makes_an_answer() {
    values()
        .forEach(type -> assertThat(type.getDeclaredConstructors())
            .as(type.getSimpleName())
            .allSatisfy(
                door -> assertThat(Modifier.isPublic(door.getModifiers())).isFalse()));
  }

  private static ToolDemand tool(double litresPerSecond) {
    return ToolDemand.following(
        "grinder", FreeAirFlow.ofAnrLitresPerSecond(litresPerSecond), AbsolutePressure.ofBar(7.2));
  }

  private static Conduit pipe() {
    return Conduit.of(
        Length.ofMillimetres(15.0), Length.ofMetres(10.0), Length.ofMillimetres(0.05));
  }

  private static Network network(double litresPerSecond) {
    return Network.at(ATMOSPHERE)
        .supply("s", Supply.fixed(EIGHT))
        .line("pipe", "s", "a", pipe())
        .element("filter", "a", "b", FILTER)
        .part(
            "coupling",
            "b",
            "t",
            FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(6.0), 0.3))
        .tool("t", tool(litresPerSecond))
        .build();
  }

  @Test
  void the_same_question_twice_has_equal_answers() {
    assertThat(network(10.0)).isEqualTo(network(10.0)).isNotEqualTo(network(9.0));
    assertThat(network(10.0).solve()).isEqualTo(network(10.0).solve());
    assertThat(network(10.0).solve()).isNotEqualTo(network(9.0).solve());
    assertThat(network(10.0).without("filter").solve())
        .isEqualTo(network(10.0).without("filter").solve())
        .isInstanceOf(NetworkResult.NoSolution.class);
  }

  @Test
  void an_element_of_ones_own_is_solved_as_in_a_run() {
    NetworkResult.Solved solved = (NetworkResult.Solved) network(10.0).solve();
    RunResult.Delivered run = (RunResult.Delivered) Run.from(EIGHT, ATMOSPHERE)
        .through("pipe", pipe())
        .through("filter", FILTER)
        .through(
            "coupling", FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(6.0), 0.3))
        .balance(tool(10.0));
    assertThat(solved.at("t").pascals()).isCloseTo(run.atTool().pascals(), within(1.0e-4));
    assertThat(solved.at("b").pascals())
        .isCloseTo(run.shares().get(1).outlet().pascals(), within(1.0e-4));
    assertThat(solved.working().toText()).contains("a filter of no maker");
  }

  /** The tool would take 35 L/s; the table ends at 20 L/s, and lower where the pressure in front is. */
  @Test
  void beyond_its_table_an_element_of_ones_own_chokes() {
    NetworkResult.Solved solved = (NetworkResult.Solved) network(35.0).solve();
    assertThat(solved.choking()).extracting(BranchFlow::name).containsExactly("filter");
    assertThat(solved.tools().get(0).isStarved()).isTrue();
    assertThat(solved.tools().get(0).massFlow())
        .isLessThan(FreeAirFlow.ofAnrLitresPerSecond(20.0).massFlow());
  }

  @Test
  void what_loses_pressure_without_flow_is_refused() {
    FlowElement valve = FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(6.0), 0.3)
        .withCrackingPressure(PressureDrop.ofBar(0.1))
        .element();
    Network.Builder builder = Network.at(ATMOSPHERE).supply("s", Supply.fixed(EIGHT));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> builder.element("valve", "s", "a", valve))
        .withMessageStartingWith(
            "pressure lost by valve without flow must be 0 Pa where air goes either way")
        .withMessageContaining("say checkValve(…) or regulator(…)");
  }

  @Test
  void answers_cannot_be_changed() {
    NetworkResult.Solved solved = (NetworkResult.Solved) network(10.0).solve();
    assertThatExceptionOfType(UnsupportedOperationException.class)
        .isThrownBy(() -> solved.branches().clear());
    assertThatExceptionOfType(UnsupportedOperationException.class)
        .isThrownBy(() -> solved.pressures().clear());
    assertThatExceptionOfType(UnsupportedOperationException.class)
        .isThrownBy(() -> network(10.0).simulate(1, 2).tools().clear());
  }

  @Test
  void values_tell_what_they_are() {
    NetworkResult.Solved solved = (NetworkResult.Solved) network(10.0).solve();
    assertThat(solved.toString()).startsWith("steady flow of 0.01").endsWith("kg/s to 1 tools");
    assertThat(solved.through("pipe").toString()).startsWith("pipe: 0.01").endsWith("from s to a");
    assertThat(solved.supplies().get(0).toString()).startsWith("s gives 0.01");
    assertThat(solved.tools().get(0).toString()).startsWith("grinder at t: 0.01");
    assertThat(network(10.0).simulate(7, 2)).hasToString("2 trials with 1 tools from seed 7");
    assertThat(network(10.0).without("filter").solve())
        .hasToString("No way leads from a supply to b, t.");
  }

  @Test
  @SuppressWarnings("NullAway")
  void null_is_refused_by_name() {
    Network.Builder builder = Network.at(ATMOSPHERE);
    assertThatNullPointerException()
        .isThrownBy(() -> builder.supply("s", null))
        .withMessage("supply");
    assertThatNullPointerException()
        .isThrownBy(() -> builder.supplyWithoutNonReturnValve("s", null))
        .withMessage("supply");
    assertThatNullPointerException()
        .isThrownBy(() -> builder.line(null, "a", "b", pipe()))
        .withMessage("name");
    assertThatNullPointerException()
        .isThrownBy(() -> builder.element("filter", "a", "b", null))
        .withMessage("element");
    assertThatNullPointerException().isThrownBy(() -> builder.tool("a", null)).withMessage("tool");
    Network network = network(10.0);
    assertThatNullPointerException().isThrownBy(() -> network.without(null)).withMessage("name");
    assertThatNullPointerException()
        .isThrownBy(() -> network.replacing("pipe", (Conduit) null))
        .withMessage("conduit");
    assertThatNullPointerException()
        .isThrownBy(() -> network.solve().fold(solved -> 1, null))
        .withMessage("none");
  }
}
