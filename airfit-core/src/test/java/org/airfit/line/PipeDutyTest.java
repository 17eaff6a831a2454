package org.airfit.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.airfit.Comparison;
import org.airfit.Pencil;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.air.AirState;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Temperature;
import org.airfit.run.Run;
import org.airfit.safety.Caution;
import org.airfit.source.Basis;
import org.airfit.working.Completeness;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class PipeDutyTest {

  private static final String CHAPTER = "Line: velocity and budget rules";
  private static final AirState AIR =
      AirState.of(AbsolutePressure.ofPsi(104.7), Temperature.ofFahrenheit(60.0));
  private static final MassFlow FLOW = FreeAirFlow.ofScfm60F(200.0).massFlow();

  private static Conduit pipe(Length bore) {
    return Conduit.of(bore, Length.ofMetres(20.0), Length.ofMillimetres(0.045));
  }

  private static Row rule(String begins) {
    return Rows.of(PipeDutyTest.class, "velocity_and_budget_rules.csv")
        .filter(row -> row.text("rule").startsWith(begins))
        .findFirst()
        .orElseThrow();
  }

  private static void compare(String begins, PipeDuty duty) {
    Row row = rule(begins);
    Comparison.of(
            CHAPTER,
            row + ", " + row.text("basis"),
            row.number("value"),
            "ft/s",
            row.evidence("value"))
        .isMetBy(duty.highest().feetPerSecond(), 1.0e-12, "exact");
  }

  @Test
  void the_highest_velocities_are_those_of_the_rules() {
    compare("compressor-room header", PipeDuty.ROOM_HEADER);
    compare("pipe from the room", PipeDuty.DISTRIBUTION);
  }

  /** Recalled only: the row says so, and so does our source. */
  @Test
  void the_rule_for_branches_is_told_to_be_from_memory() {
    compare("branch and drop", PipeDuty.BRANCH);
    assertThat(rule("branch and drop").text("basis")).isEqualTo("memory");
    assertThat(PipeDuty.BRANCH.source().basis()).isEqualTo(Basis.FROM_MEMORY);
  }

  /** Derived from the trade's formula A = 144 Q pa/(60 V (pd + pa)), which was read. */
  @Test
  void the_bore_for_200_scfm_at_20_feet_per_second_is_that_of_the_formula() {
    Row row = Rows.of(PipeDutyTest.class, "/org/airfit/plant/worked_examples.csv")
        .filter(example -> example.text("id").equals("VE02"))
        .findFirst()
        .orElseThrow();
    Comparison.of(
            CHAPTER,
            row + ", " + row.text("question"),
            row.number("recomputed"),
            "in",
            row.evidence("recomputed"))
        .isMetBy(
            PipeDuty.ROOM_HEADER.boreFor(FLOW, AIR).inches(),
            5.0e-4,
            "144 Q pa/(60 V (pd + pa)) with 14.7 for 14.696 psi in free air, 0.03 % of the area");
  }

  @ParameterizedTest
  @EnumSource
  void the_bore_it_asks_for_is_just_within(PipeDuty duty) {
    Length bore = duty.boreFor(FLOW, AIR);
    PipeVelocity just = PipeVelocity.of(duty, pipe(bore.times(1.0 + 1.0e-12)), FLOW, AIR);
    PipeVelocity narrower = PipeVelocity.of(duty, pipe(bore.times(0.9)), FLOW, AIR);
    assertThat(just.velocity().metresPerSecond())
        .isCloseTo(duty.highest().metresPerSecond(), within(1.0e-9));
    assertThat(just.verdict()).isEqualTo(VelocityVerdict.WITHIN);
    assertThat(narrower.verdict()).isEqualTo(VelocityVerdict.ABOVE);
    assertThat(narrower.cautions()).extracting(Caution::title).contains("Air too fast in the pipe");
    assertThat(narrower.cautions().get(0).text()).contains(duty.label(), "m/s", "ft/s", "mm");
    Pencil.check(narrower);
    Completeness.check(narrower);
  }

  @Test
  void a_slow_main_has_no_cautions_and_a_fast_one_carries_water() {
    assertThat(PipeVelocity.of(PipeDuty.DISTRIBUTION, pipe(Length.ofInches(4.0)), FLOW, AIR)
            .cautions())
        .isEmpty();
    PipeVelocity fast =
        PipeVelocity.of(PipeDuty.DISTRIBUTION, pipe(Length.ofInches(1.8)), FLOW, AIR);
    assertThat(fast.velocity().feetPerSecond()).isBetween(25.0, 30.0);
    assertThat(fast.verdict()).isEqualTo(VelocityVerdict.WITHIN);
    assertThat(fast.carriesWater()).isTrue();
    assertThat(fast.cautions())
        .extracting(Caution::title)
        .containsExactly("Water is carried along");
    PipeVelocity branch = PipeVelocity.of(PipeDuty.BRANCH, pipe(Length.ofInches(1.8)), FLOW, AIR);
    assertThat(branch.cautions()).isEmpty();
    assertThat(rule("water carry-over").number("value")).as("from memory").isEqualTo(25.0);
  }

  @Test
  void a_pipe_without_bore_is_refused() {
    assertThatIllegalArgumentException()
        .isThrownBy(
            () -> PipeVelocity.of(PipeDuty.BRANCH, pipe(Length.ofMillimetres(0.0)), FLOW, AIR))
        .withMessage("bore must be above 0 mm, was 0 mm");
  }

  /** Ten percent of what a gauge at the receiver shows, just below and just above. */
  @Test
  void more_than_a_tenth_lost_from_receiver_to_tool_is_told() {
    Row row = rule("pressure loss receiver");
    AbsolutePressure atmosphere = AbsolutePressure.ofBar(1.0);
    AirState supply = AIR.at(AbsolutePressure.ofBar(8.0));
    Run run = Run.from(supply, atmosphere).through("pipe", pipe(Length.ofMillimetres(20.0)));
    double allowed = 7.0e5 * row.number("value") / 100.0;
    MassFlow just = run.largestFlow(
            GaugePressure.of(supply.pressure().minus(PressureDrop.ofPascals(allowed)), atmosphere))
        .orElseThrow()
        .massFlow();
    String title = "More than a tenth of the pressure is lost";
    assertThat(run.at(just.times(1.0 - 1.0e-6)).cautions())
        .as(row.source())
        .extracting(Caution::title)
        .doesNotContain(title);
    assertThat(run.at(just.times(1.0 + 1.0e-6)).cautions())
        .extracting(Caution::title)
        .contains(title);
  }
}
