package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.airfit.air.AirState;
import org.airfit.plant.Compressor;
import org.airfit.plant.Regulator;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.Volume;
import org.airfit.run.RunResult;
import org.airfit.safety.Caution;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The highest pressure that can occur is judged, the lowest feeds the flow. */
class WorstCaseTest {

  private static GaugePressure bar(double bar) {
    return GaugePressure.ofBar(bar);
  }

  private static Proposal best(Requirement.Builder job) {
    return Selection.of(job.build(), Catalogue.of(Shelf.parts()))
        .fold(Selection.Proposals::best, miss -> miss.closest().get(0));
  }

  private static Finding finding(Requirement.Builder job, Rule rule) {
    return best(job).findings().stream()
        .filter(finding -> finding.rule() == rule)
        .findFirst()
        .orElseThrow();
  }

  private static RuleOutcome tool(Requirement.Builder job) {
    return finding(job, Rule.TOOL_RATED).outcome();
  }

  /** The supply stands at 7 bar(g) and can rise to 8.5. */
  @ParameterizedTest
  @CsvSource({"8.6, MET", "8.5, MET", "8.499, UNMET", "7.58, UNMET", "7.0, UNMET", "6.9, UNMET"})
  void the_tools_limit_is_held_against_the_highest_pressure(double limit, RuleOutcome outcome) {
    assertThat(tool(Shelf.job().toolRating(bar(limit)).highest(bar(8.5)))).isEqualTo(outcome);
  }

  @ParameterizedTest
  @CsvSource({
    "8.6, MET",
    "8.5, MET",
    "8.499, MET_WHILE_REGULATED",
    "7.58, MET_WHILE_REGULATED",
    "7.0, MET_WHILE_REGULATED",
    "6.999, UNMET"
  })
  void behind_a_regulator_it_is_met_while_that_holds(double limit, RuleOutcome outcome) {
    assertThat(tool(Shelf.job().toolRating(bar(limit)).highest(bar(8.5)).regulated()))
        .isEqualTo(outcome);
  }

  @Test
  void both_pressures_stand_in_the_sentence_and_in_a_caution_and_the_job_fits() {
    Requirement.Builder job =
        Shelf.job().toolRating(bar(7.58)).highest(bar(8.5)).regulated();
    Finding finding = finding(job, Rule.TOOL_RATED);
    assertThat(finding.toString())
        .startsWith(
            "Tool is not over-pressured: met while the regulator holds. The dead-end pressure"
                + " at the tool is 7 bar(g) while the regulator holds and 8.5 bar(g) if it fails,"
                + " its maker allows 7.58 bar(g).");
    assertThat(best(job).open()).isEmpty();
    assertThat(best(job).fits()).isTrue();
    assertThat(best(job).cautions())
        .filteredOn(caution -> caution.title().equals("If the regulator fails"))
        .singleElement()
        .extracting(Caution::text)
        .asString()
        .contains("8.5 bar(g) if it fails", "relief valve");
    assertThat(best(Shelf.job().highest(bar(7.5)).regulated()).cautions())
        .extracting(Caution::title)
        .doesNotContain("If the regulator fails");
    assertThat(best(job).findings(UnitSystem.US))
        .filteredOn(one -> one.rule() == Rule.TOOL_RATED)
        .singleElement()
        .extracting(Finding::reason)
        .asString()
        .contains("101.5 psig while the regulator holds and 123.3 psig if it fails");
  }

  @ParameterizedTest
  @CsvSource({"7.9, MET_WHILE_REGULATED", "8.0, MET", "8.1, MET"})
  void a_makers_word_on_a_failed_regulator_counts(double limit, RuleOutcome outcome) {
    assertThat(tool(Shelf.job().toolRating(bar(limit)).highest(bar(12.0)).regulated(bar(8.0))))
        .isEqualTo(outcome);
  }

  @Test
  void a_failed_regulator_lets_no_more_through_than_stands_in_front_of_it() {
    assertThat(Shelf.job().highest(bar(8.5)).regulated(bar(8.5)).build().highest())
        .isEqualTo(bar(8.5));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Shelf.job().highest(bar(8.5)).regulated(bar(20.0)).build())
        .withMessage("pressure behind a failed regulator must be at most the highest of 8.5 bar(g)"
            + " in front of it, was 20 bar(g); correct one of the two, or leave it out: what is in"
            + " front then counts");
    assertThat(Shelf.job().regulated(bar(9.0)).build().highest()).isEqualTo(bar(9.0));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Shelf.job().regulated().build())
        .withMessageContaining("in front of the regulator must be told");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Shelf.job().highest(bar(9.0)).regulated(bar(6.9)).build())
        .withMessageContaining("must be at least the 7 bar(g) it is set to, was 6.9 bar(g)");
  }

  @Test
  void an_untold_tool_limit_is_asked_for_with_both_pressures() {
    Requirement.Builder job = Requirement.forTool(FreeAirFlow.ofAnrLitresPerSecond(10.0), bar(6.2))
        .toolInlet(Shelf.job().build().toolInlet())
        .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
        .outlet(Shelf.job().build().outlet())
        .layout(Shelf.job().build().layout())
        .highest(bar(8.5))
        .regulated();
    Finding asked = finding(job, Rule.TOOL_RATED);
    assertThat(asked.outcome()).isEqualTo(RuleOutcome.OPEN);
    assertThat(asked.reason())
        .contains("Ask for the highest pressure", "7 bar(g) while", "8.5 bar(g) if it fails");
  }

  /** A supply of 29 psig in which 60 can occur. */
  @Test
  void a_blow_gun_is_judged_by_the_highest_pressure_also_behind_a_regulator() {
    AirState low = AirState.of(
        GaugePressure.ofPsi(29.0).absolute(Shelf.ATMOSPHERE), Temperature.ofCelsius(20.0));
    Requirement.Builder gun = Requirement.forTool(
            FreeAirFlow.ofAnrLitresPerSecond(3.0), GaugePressure.ofPsi(20.0))
        .toolInlet(Shelf.job().build().toolInlet())
        .supply(low, Shelf.ATMOSPHERE)
        .outlet(Shelf.job().build().outlet())
        .layout(Shelf.job().build().layout())
        .blowGun();
    assertThat(finding(gun, Rule.CLEANING_PRESSURE).outcome()).isEqualTo(RuleOutcome.MET);
    gun.highest(GaugePressure.ofPsi(60.0));
    assertThat(gun.build().cleaningDeadEnd()).contains(GaugePressure.ofPsi(60.0));
    assertThat(finding(gun, Rule.CLEANING_PRESSURE).outcome()).isEqualTo(RuleOutcome.UNMET);
    gun.regulated();
    assertThat(finding(gun, Rule.CLEANING_PRESSURE).outcome()).isEqualTo(RuleOutcome.UNMET);
    assertThat(best(gun).cautions())
        .extracting(Caution::text)
        .anySatisfy(text ->
            assertThat(text).contains("4.137 bar(g) against less than 2.068 bar(g) (30 psig)"));
    gun.regulated(GaugePressure.ofPsi(29.5));
    assertThat(finding(gun, Rule.CLEANING_PRESSURE).outcome()).isEqualTo(RuleOutcome.MET);
  }

  @Test
  void parts_are_rated_with_the_regulator_failed_unless_its_maker_tells_less() {
    Requirement.Builder job =
        Shelf.job().toolRating(bar(30.0)).highest(bar(17.0)).regulated();
    assertThat(finding(job, Rule.PARTS_RATED).outcome()).isEqualTo(RuleOutcome.UNMET);
    assertThat(best(job).cautions()).extracting(Caution::title).contains("Rated pressure");
    assertThat(finding(job.regulated(bar(16.0)), Rule.PARTS_RATED).outcome())
        .isEqualTo(RuleOutcome.MET);
    assertThat(best(job).cautions()).extracting(Caution::title).doesNotContain("Rated pressure");
  }

  /** 7 bar(g) typed, taken off an atmosphere that no double holds, must not lie above 7 bar(g). */
  @Test
  void a_limit_that_is_exactly_the_supply_is_met_whatever_the_atmosphere() {
    for (int i = 0; i < 200; i++) {
      AbsolutePressure around = AbsolutePressure.ofBar(0.7 + 0.00237 * i);
      AirState air = AirState.of(bar(7.0).absolute(around), Temperature.ofCelsius(20.0));
      Requirement job =
          Shelf.job().supply(air, around).toolRating(bar(7.0)).highest(bar(7.0)).build();
      assertThat(PartChecks.isToolOverPressured(job)).isFalse();
      Requirement untold = Shelf.job().supply(air, around).toolRating(bar(7.0)).build();
      assertThat(PartChecks.isToolOverPressured(untold)).isFalse();
    }
  }

  @Test
  void the_flow_is_judged_at_the_lowest_pressure() {
    Proposal usual = best(Shelf.job());
    Proposal low = best(Shelf.job().lowest(bar(6.5)));
    assertThat(low.result().<Double>fold(RunResultAtSupply::of, starved -> Double.NaN))
        .isCloseTo(7.5, within(1.0e-12));
    assertThat(usual.result().<Double>fold(RunResultAtSupply::of, starved -> Double.NaN))
        .isCloseTo(8.0, within(1.0e-12));
    assertThat(Shelf.pascalsAtTool(low)).isLessThan(Shelf.pascalsAtTool(usual) - 4.0e4);
    assertThat(low.requirement().highest()).isEqualTo(bar(7.0));
    for (double wrong : List.of(7.001, 0.0, -0.1)) {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> Shelf.job().lowest(bar(wrong)).build())
          .withMessageContaining("lowest pressure must be above 0 bar(g) and at most the supply");
    }
    assertThat(Shelf.job().lowest(bar(7.0)).build().pressures().lowest()).isEqualTo(bar(7.0));
  }

  private static final class RunResultAtSupply {
    static double of(RunResult.Delivered delivered) {
      return delivered.atSupply().bar();
    }
  }

  @Test
  void a_compressor_feeds_at_cut_in_and_is_rated_at_cut_out() {
    Compressor compressor = new Compressor(
        List.of(
            new Compressor.Point(
                AbsolutePressure.ofBar(5.0), FreeAirFlow.ofAnrLitresPerSecond(60.0)),
            new Compressor.Point(
                AbsolutePressure.ofBar(12.0), FreeAirFlow.ofAnrLitresPerSecond(50.0))),
        AbsolutePressure.ofBar(7.8),
        AbsolutePressure.ofBar(9.5),
        Volume.ofLitres(300.0),
        Temperature.ofCelsius(20.0));
    Requirement.Builder job = Shelf.job().supply(compressor, Shelf.ATMOSPHERE).toolRating(bar(8.0));
    assertThat(job.build().highest()).isEqualTo(bar(8.5));
    assertThat(job.build().pressures().lowest().bar()).isCloseTo(6.8, within(1.0e-12));
    assertThat(tool(job)).isEqualTo(RuleOutcome.UNMET);
    assertThat(tool(job.toolRating(bar(8.5)))).isEqualTo(RuleOutcome.MET);
    assertThat(best(job).result().<Double>fold(RunResultAtSupply::of, starved -> Double.NaN))
        .isCloseTo(7.8, within(1.0e-12));
    assertThat(best(job).fits())
        .as("judged with the same air by search and by sheet")
        .isTrue();
  }

  @Test
  void a_regulator_as_supply_tells_what_stands_in_front_of_it() {
    Regulator regulator = new Regulator(
        Shelf.SUPPLY,
        FreeAirFlow.ofAnrLitresPerSecond(40.0),
        AbsolutePressure.ofBar(7.6),
        Optional.of(AbsolutePressure.ofBar(9.5)));
    Requirement.Builder job = Shelf.job().supply(regulator, Shelf.ATMOSPHERE);
    assertThat(job.build().highest()).isEqualTo(bar(8.5));
    assertThat(tool(job)).isEqualTo(RuleOutcome.MET_WHILE_REGULATED);
    assertThat(best(job).result().<Double>fold(RunResultAtSupply::of, starved -> Double.NaN))
        .as("a quarter of the droop")
        .isCloseTo(7.9, within(1.0e-9));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Shelf.job()
            .supply(
                new Regulator(regulator.still(), regulator.flow(), regulator.pressure()),
                Shelf.ATMOSPHERE)
            .build())
        .withMessageContaining("in front of the regulator");
  }
}
