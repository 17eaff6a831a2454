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
import org.airfit.working.UnitSystem;
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

  /** A velocity that no number holds is refused at the door, by the flow. */
  @Test
  void a_flow_beyond_any_line_is_refused() {
    AirState air = AirState.of(AbsolutePressure.ofPascals(1.0e-30), Temperature.ofCelsius(300.0));
    Conduit pipe = Conduit.of(Length.ofMetres(1.0e-12), Length.ofMetres(1.0), Length.ofMetres(0.0));
    MassFlow most = MassFlow.ofKilogramsPerSecond(1.0e90);
    MassFlow more = MassFlow.ofKilogramsPerSecond(Math.nextUp(1.0e90));
    assertThat(PipeVelocity.of(PipeDuty.BRANCH, pipe, most, air).verdict())
        .isEqualTo(VelocityVerdict.ABOVE);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> PipeVelocity.of(PipeDuty.BRANCH, pipe, more, air))
        .withMessageStartingWith("mass flow in a pipe must be at most 1e90 kg/s, was ");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> PipeDuty.BRANCH.boreFor(more, air))
        .withMessageEndingWith("; check its unit");
  }

  /** Down to the least flow a number holds there is a working, and it replays or says that it does not. */
  @Test
  void the_least_flows_have_a_working_too() {
    AirState air = AirState.of(AbsolutePressure.ofBar(8.0), Temperature.ofCelsius(20.0));
    Conduit wide =
        Conduit.of(Length.ofMetres(0.05), Length.ofMetres(1.0), Length.ofMillimetres(0.045));
    String lost = "have lost digits here";
    for (UnitSystem units : UnitSystem.values()) {
      for (double flow : new double[] {Double.MIN_VALUE, 75.0 * Double.MIN_VALUE}) {
        assertThat(PipeVelocity.of(PipeDuty.BRANCH, wide, MassFlow.ofKilogramsPerSecond(flow), air)
                .working(units)
                .toText())
            .contains(lost);
      }
      assertThat(
              PipeVelocity.of(PipeDuty.BRANCH, wide, MassFlow.ofKilogramsPerSecond(1.0e-290), air)
                  .working(units)
                  .toText())
          .doesNotContain(lost);
    }
  }
}
