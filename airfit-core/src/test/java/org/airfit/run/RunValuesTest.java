package org.airfit.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;

import java.lang.reflect.Modifier;
import java.util.List;
import java.util.stream.Stream;
import nl.jqno.equalsverifier.EqualsVerifier;
import nl.jqno.equalsverifier.Warning;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.flow.FlowElement;
import org.airfit.line.Conduit;
import org.airfit.line.LineFormula;
import org.airfit.line.LossModel;
import org.airfit.plant.Supply;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Money;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Runs, sizings and their answers compare by value, and nobody else makes an answer. */
class RunValuesTest {

  private static final AbsolutePressure ATMOSPHERE = AbsolutePressure.ofBar(1.0);

  private static Stream<Class<?>> values() {
    return Stream.of(
        Run.class,
        RunPath.class,
        RunResult.Delivered.class,
        RunResult.Starved.class,
        ElementLoss.class,
        FrictionJump.class,
        LargestFlow.class,
        SupplyNeeded.class,
        RankedChange.class,
        Sensitivity.class,
        ToolDemand.class);
  }

  @ParameterizedTest
  @MethodSource("values")
  void values_compare_by_all_they_hold(Class<?> type) {
    EqualsVerifier.forClass(type)
        .suppress(Warning.NULL_FIELDS) // refused at the door
        .withPrefabValues(Element.class, line(9.5), line(12.7)) // one may hold another
        .withIgnoredFields(derived(type))
        .verify();
  }

  private static Element line(double boreMm) {
    return new Element.Line("hose", hose(boreMm), LineFormula.HARRIS);
  }

  /** What follows from the other fields. */
  private static String[] derived(Class<?> type) {
    if (type == RunPath.class) {
      return new String[] {"whole", "still", "kelvins", "viscosity"};
    }
    return type == ToolDemand.class ? new String[] {"ratedFlow", "ratedPascals"} : new String[0];
  }

  @Test
  void nobody_else_makes_an_answer() {
    values()
        .filter(type -> type != RunPath.class)
        .forEach(type -> assertThat(type.getDeclaredConstructors())
            .as(type.getSimpleName())
            .allSatisfy(
                door -> assertThat(Modifier.isPublic(door.getModifiers())).isFalse()));
  }

  private static Run run(double boreMm) {
    return Run.from(
            AirState.of(AbsolutePressure.ofBar(8.0), Temperature.ofCelsius(20.0)), ATMOSPHERE)
        .through(
            "coupling", FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(6.0), 0.3))
        .through("hose", hose(boreMm));
  }

  private static Conduit hose(double boreMm) {
    return Conduit.of(
        Length.ofMillimetres(boreMm), Length.ofMetres(10.0), Length.ofMillimetres(0.01));
  }

  private static ToolDemand tool() {
    return ToolDemand.following(
        "grinder", FreeAirFlow.ofAnrLitresPerSecond(10.0), AbsolutePressure.ofBar(7.2));
  }

  @Test
  void the_same_question_twice_has_equal_answers() {
    assertThat(run(9.5)).isEqualTo(run(9.5)).hasSameHashCodeAs(run(9.5)).isNotEqualTo(run(9.0));
    RunResult balance = run(9.5).balance(tool());
    assertThat(balance).isEqualTo(run(9.5).balance(tool()));
    assertThat(balance).isNotEqualTo(run(9.5).at(balance.massFlow()));
    MassFlow tooMuch = MassFlow.ofKilogramsPerSecond(0.5);
    assertThat(run(9.5).at(tooMuch)).isEqualTo(run(9.5).at(tooMuch));
    GaugePressure six = GaugePressure.ofBar(6.0);
    assertThat(run(9.5).largestFlow(six)).isEqualTo(run(9.5).largestFlow(six));
    assertThat(run(9.5).supplyNeeded(tool(), six)).isEqualTo(run(9.5).supplyNeeded(tool(), six));
    assertThat(run(9.5).sensitivities(balance.massFlow()))
        .isEqualTo(run(9.5).sensitivities(balance.massFlow()));
    Change wider = new Change("wider", run(12.7), Money.parse("30 USD"));
    assertThat(RankedChange.rank(run(9.5), tool(), List.of(wider)))
        .isEqualTo(RankedChange.rank(run(9.5), tool(), List.of(wider)));
  }

  @Test
  void answers_cannot_be_changed() {
    RunResult.Delivered delivered = (RunResult.Delivered) run(9.5).balance(tool());
    assertThatExceptionOfType(UnsupportedOperationException.class)
        .isThrownBy(() -> delivered.shares().remove(0));
    assertThatExceptionOfType(UnsupportedOperationException.class)
        .isThrownBy(() -> delivered.cautions().clear());
  }

  @Test
  void values_tell_what_they_are() {
    assertThat(run(9.5)).hasToString("8 bar(a) through coupling, hose");
    assertThat(run(9.5).balance(tool()).toString()).endsWith(" bar(g)").contains(" kg/s at ");
    assertThat(run(9.5).at(MassFlow.ofKilogramsPerSecond(0.5)).toString())
        .startsWith("0.5 kg/s does not pass coupling, which lets 0.0");
    assertThat(run(9.5).largestFlow(GaugePressure.ofBar(6.0)).orElseThrow().toString())
        .endsWith("at 6 bar(g) or more");
  }

  @Test
  @SuppressWarnings("NullAway")
  void null_is_refused_by_name() {
    Run run = run(9.5);
    assertThatNullPointerException()
        .isThrownBy(() -> Run.from((Supply) null, ATMOSPHERE))
        .withMessage("supply");
    assertThatNullPointerException()
        .isThrownBy(() -> run.through(null, hose(9.5)))
        .withMessage("name");
    assertThatNullPointerException()
        .isThrownBy(() -> run.through("hose", hose(9.5), (LossModel) null))
        .withMessage("model");
    assertThatNullPointerException()
        .isThrownBy(() -> run.through("filter", (FlowElement) null))
        .withMessage("element");
    assertThatNullPointerException().isThrownBy(() -> run.balance(null)).withMessage("tool");
    assertThatNullPointerException().isThrownBy(() -> run.largestFlow(null)).withMessage("atTool");
    assertThatNullPointerException()
        .isThrownBy(() -> run.at((MassFlow) null))
        .withMessage("demand");
    assertThatNullPointerException().isThrownBy(() -> run.without(null)).withMessage("name");
    assertThatNullPointerException()
        .isThrownBy(() -> RankedChange.rank(run, tool(), null))
        .withMessage("changes");
    assertThatNullPointerException()
        .isThrownBy(() -> run.balance(tool()).fold(null, starved -> 1))
        .withMessage("delivered");
  }
}
