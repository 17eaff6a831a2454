package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.airfit.flow.CapacityRange;
import org.airfit.flow.FlowCapacity;
import org.airfit.flow.Rating;
import org.airfit.joint.End;
import org.airfit.line.Conduit;
import org.airfit.line.ConduitName;
import org.airfit.line.ConduitRange;
import org.airfit.plant.RegulatorCurve;
import org.airfit.plant.RegulatorRange;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Range;
import org.airfit.quantity.ReferenceState;
import org.airfit.quantity.SonicConductance;
import org.airfit.run.RunResult;
import org.airfit.source.Source;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;

/** What is connected now is judged at both ends of what is not known: yes, no, or it depends and where it turns. */
class RunNowTest {

  private static final Source MADE_UP = Source.derived("made up");
  private static final CapacityRange COUPLING = CapacityRange.exactly(
      FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(6.0), 0.3));

  private static Conduit hose(double boreMm) {
    return Conduit.of(
        Length.ofMillimetres(boreMm), Length.ofMetres(10.0), Length.ofMillimetres(0.01));
  }

  private static final ConduitRange OLD = new ConduitRange(hose(8.0), hose(9.5), MADE_UP);

  private static Requirement job(double needBar) {
    return Requirement.forTool(FreeAirFlow.ofAnrLitresPerSecond(10.0), GaugePressure.ofBar(needBar))
        .toolInlet(End.parse("3/8 NPT female"))
        .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
        .outlet(End.parse("3/8 NPT female"))
        .layout(
            Layout.of(List.of(Slot.coupling("outlet"), Slot.hose("hose", Length.ofMetres(5.0)))))
        .build();
  }

  private static RunNow now(double needBar) {
    return RunNow.of(job(needBar)).through("coupling", COUPLING).through("old hose", OLD);
  }

  private static double bar(RunResult result) {
    return result.fold(delivered -> delivered.atToolGauge().bar(), starved -> Double.NaN);
  }

  @Test
  void it_is_enough_or_too_little_whatever_the_hose_is_or_it_depends() {
    double worst = bar(now(1.0).result());
    double best = bar(now(1.0).resultAtBest());
    assertThat(best - worst).as("the bore decides much").isGreaterThan(0.1);
    assertThat(now(worst - 0.001).outcome()).isEqualTo(RuleOutcome.MET);
    assertThat(now(worst + 0.001).outcome()).isEqualTo(RuleOutcome.OPEN);
    assertThat(now(best - 0.001).outcome()).isEqualTo(RuleOutcome.OPEN);
    assertThat(now(best + 0.001).outcome()).isEqualTo(RuleOutcome.UNMET);
    assertThat(now(worst - 0.001).doubts()).isEmpty();
    assertThat(now(best + 0.001).doubts()).isEmpty();
    assertThat(now(best + 0.001).whatToAsk(UnitSystem.SI)).isEmpty();
  }

  /** The value at which it turns is put in again as one that is known: with it there is enough, with less not. */
  @Test
  void it_turns_at_the_bore_that_is_told() {
    double need = bar(RunNow.of(job(1.0))
        .through("coupling", COUPLING)
        .through("h", ConduitRange.exactly(hose(8.7)))
        .result());
    RunNow now = now(need);
    assertThat(now.doubts()).singleElement().satisfies(doubt -> {
      assertThat(doubt.what()).isEqualTo("bore of old hose");
      assertThat(doubt.known(UnitSystem.SI)).isEqualTo("8 to 9.5 mm");
      assertThat(doubt.enoughIf(UnitSystem.SI)).hasValue("at least 8.71 mm");
    });
    assertThat(now.whatToAsk(UnitSystem.SI))
        .isEqualTo(
            "It is enough if the bore of old hose is at least 8.71 mm (8 to 9.5 mm told): ask for it.");
    RunNow narrower = RunNow.of(job(need))
        .through("coupling", COUPLING)
        .through("old hose", ConduitRange.exactly(hose(8.69)));
    assertThat(narrower.outcome()).isEqualTo(RuleOutcome.UNMET);
    assertThat(narrower.isExact()).isTrue();
    assertThat(RunNow.of(job(need))
            .through("coupling", COUPLING)
            .through("old hose", ConduitRange.exactly(hose(8.71)))
            .outcome())
        .isEqualTo(RuleOutcome.MET);
  }

  /** The air that the tool takes and the wall of the hose are doubts too. */
  @Test
  void what_is_not_known_of_the_job_is_weighed_with_the_hose() {
    Requirement job = job(6.0).toBuilder().build();
    Requirement ranged = Requirement.forTool(
            new Range<>(
                FreeAirFlow.ofAnrLitresPerSecond(2.0), FreeAirFlow.ofAnrLitresPerSecond(30.0)),
            Range.exactly(GaugePressure.ofBar(6.0)))
        .toolInlet(job.toolInlet())
        .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
        .outlet(job.outlet())
        .layout(job.layout())
        .build();
    RunNow now = RunNow.of(ranged)
        .through("hose", ConduitName.parse("1/4 in hose, old").over(Length.ofMetres(10.0)));
    assertThat(now.outcome()).isEqualTo(RuleOutcome.OPEN);
    assertThat(now.doubts())
        .extracting(Doubt::what)
        .contains("air the tool takes", "bore of hose", "roughness of hose");
    assertThat(now.isExact()).isFalse();
  }

  /** By hand: 6 bar less 1 bar is 5 bar, and 6 bar less nothing is 6 bar; the coupling loses less than 0.3 bar. */
  @Test
  void a_droop_that_nobody_told_is_judged_from_none_to_one_bar() {
    RegulatorRange untold = RegulatorRange.ofUntoldDroop(COUPLING);
    RunNow now = RunNow.of(job(5.5)).through("regulator", untold, GaugePressure.ofBar(6.0));
    assertThat(bar(now.result())).isEqualTo(5.0);
    assertThat(bar(now.resultAtBest())).isBetween(5.7, 6.0);
    assertThat(now.outcome()).isEqualTo(RuleOutcome.OPEN);
    assertThat(now.whatToAsk(UnitSystem.SI))
        .containsPattern("droop of regulator is at most 0.5 bar at [0-9.]+ L/s ANR ");
    RegulatorRange told = new RegulatorRange(
        COUPLING,
        Range.exactly(PressureDrop.ofBar(0.4)),
        Optional.of(FreeAirFlow.ofAnrLitresPerSecond(20.0)));
    assertThat(RunNow.of(job(5.5))
            .through("regulator", told, GaugePressure.ofBar(6.0))
            .outcome())
        .isEqualTo(RuleOutcome.MET);
  }

  /** 10 L/s flow: a curve up to 12 L/s tells all, one up to 8 L/s leaves open what is held. */
  @Test
  void behind_the_end_of_a_curve_it_depends() {
    assertThat(drawn(12.0, 5.5).outcome()).isEqualTo(RuleOutcome.MET);
    assertThat(drawn(12.0, 5.9).outcome()).isEqualTo(RuleOutcome.UNMET);
    RunNow open = drawn(8.0, 5.5);
    assertThat(open.outcome()).isEqualTo(RuleOutcome.OPEN);
    assertThat(open.whatToAsk(UnitSystem.SI))
        .contains("droop of regulator behind the end of its curve is at most 0.499 bar");
    assertThat(drawn(8.0, 5.85).outcome()).as("its end holds 5.8 bar").isEqualTo(RuleOutcome.UNMET);
  }

  private static RunNow drawn(double endLitres, double needBar) {
    RegulatorCurve curve = new RegulatorCurve(List.of(
        new RegulatorCurve.Point(FreeAirFlow.ofAnrLitresPerSecond(0.0), GaugePressure.ofBar(6.0)),
        new RegulatorCurve.Point(
            FreeAirFlow.ofAnrLitresPerSecond(endLitres), GaugePressure.ofBar(5.8))));
    return RunNow.of(job(needBar))
        .through("regulator", RegulatorRange.ofCurve(COUPLING, curve), GaugePressure.ofBar(6.0));
  }

  /** US catalogues print Cv: one of at least what is told beside C has enough, whatever its xT is from 0.2 on. */
  @Test
  void beside_a_conductance_in_us_units_stands_a_cv_that_is_enough() {
    CapacityRange open = new CapacityRange(capacity(3.0), capacity(9.0), MADE_UP);
    double need = bar(RunNow.of(job(1.0))
        .through("filter", CapacityRange.exactly(capacity(5.0)))
        .result());
    RunNow now = RunNow.of(job(need)).through("filter", open);
    String said = now.whatToAsk(UnitSystem.US);
    assertThat(said)
        .contains("conductance C of filter is at least 5.01 dm³/(s·bar) (a Cv of at least ");
    String cv = said.substring(said.indexOf("a Cv of at least ") + 17, said.indexOf(" has that)"));
    assertThat(Double.parseDouble(cv)).isBetween(1.0, 5.0);
    assertThat(RunNow.of(job(need))
            .through("filter", Rating.parse("Cv " + cv).capacity())
            .outcome())
        .as("Cv " + cv + ", xT not told")
        .isEqualTo(RuleOutcome.MET);
    assertThat(now.whatToAsk(UnitSystem.SI)).doesNotContain("Cv");
  }

  private static FlowCapacity capacity(double c) {
    return FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(c), 0.3);
  }

  @Test
  void it_is_equal_by_what_was_told() {
    assertThat(now(5.0)).isEqualTo(now(5.0)).hasSameHashCodeAs(now(5.0)).isNotEqualTo(now(5.1));
    assertThat(now(5.0)).hasToString(now(5.0).run().toString());
  }

  /** What its maker draws: 6 bar(g) at none, 5.5 bar(g) at 5 L/s, and nothing beyond. */
  private static final RegulatorRange DRAWN = RegulatorRange.ofCurve(
      COUPLING, RegulatorCurve.parse("6 bar(g) at 0 L/s ANR; 5.5 bar(g) at 5 L/s ANR"));

  private static RunResult.Starved starved(RunResult result) {
    return result.fold(
        delivered -> {
          throw new AssertionError(delivered);
        },
        stopped -> stopped);
  }

  /** The tool takes 10 L/s, and the curve ends at 5: no part behind it is to blame, and nothing is told of its loss. */
  @Test
  void behind_the_end_of_a_curve_the_regulator_is_named_and_not_the_part_behind_it() {
    RunNow now = RunNow.of(job(5.0))
        .through("reg", DRAWN, GaugePressure.ofBar(6.0))
        .through("coupler", COUPLING);
    RunResult.Starved stop = starved(now.result());
    assertThat(stop.element()).isEqualTo("reg");
    assertThat(stop.endOfCurve()).hasValue(FreeAirFlow.ofAnrLitresPerSecond(5.0));
    assertThat(FreeAirFlow.from(stop.largest(), ReferenceState.ANR).litresPerSecond())
        .isCloseTo(5.0, within(1.0e-9));
    assertThat(stop.before()).isEmpty();
    assertThat(stop.toString()).contains("more than its curve tells");
    assertThat(bar(now.resultAtBest())).isBetween(5.0, 5.5);
    assertThat(now.whatToAsk(UnitSystem.SI))
        .contains("droop of reg behind the end of its curve is at most ")
        .contains("(nobody told it: 0.5 to 6 bar can be)");
  }

  /** A coupler of a hundredth of the size stops the air also of a regulator that holds all that it can. */
  @Test
  void a_part_that_stops_the_air_whatever_the_regulator_holds_is_still_named() {
    CapacityRange tiny = CapacityRange.exactly(
        FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(0.06), 0.3));
    RunNow now = RunNow.of(job(5.0))
        .through("reg", DRAWN, GaugePressure.ofBar(6.0))
        .through("coupler", tiny);
    RunResult.Starved stop = starved(now.result());
    assertThat(stop.element()).isEqualTo("coupler");
    assertThat(stop.endOfCurve()).isEmpty();
    assertThat(stop.before()).singleElement().satisfies(share -> {
      assertThat(share.name()).isEqualTo("reg");
      assertThat(share.lost().bar()).as("at the end of its curve").isCloseTo(0.5, within(1.0e-9));
    });
  }

  @Test
  void a_regulator_that_stands_last_says_that_its_loss_is_not_known() {
    RunNow now = RunNow.of(job(5.0)).through("reg", DRAWN, GaugePressure.ofBar(6.0));
    List<String> warnings = now.result()
        .fold(delivered -> delivered.shares().get(0).warnings(UnitSystem.SI), stop -> List.of());
    assertThat(warnings)
        .singleElement()
        .asString()
        .contains("the curve of its maker ends at 5 L/s ANR, and 10 L/s ANR flow")
        .contains("not known");
    RunNow within = RunNow.of(job(5.0))
        .through(
            "reg",
            RegulatorRange.ofCurve(
                COUPLING, RegulatorCurve.parse("6 bar(g) at 0 L/s ANR; 5 bar(g) at 20 L/s ANR")),
            GaugePressure.ofBar(6.0));
    assertThat(within
            .result()
            .<List<String>>fold(
                delivered -> delivered.shares().get(0).warnings(UnitSystem.SI),
                stop -> List.of("starved")))
        .isEmpty();
  }

  /** Without a droop it holds what it is set to, so that 5.5 bar(g) are there just where it is set to them. */
  @Test
  void it_depends_on_a_setting_that_is_told_as_a_range_and_turns_at_what_is_needed() {
    RegulatorRange stiff =
        new RegulatorRange(COUPLING, Range.exactly(PressureDrop.ofBar(0.0)), Optional.empty());
    Range<GaugePressure> set = new Range<>(GaugePressure.ofBar(5.0), GaugePressure.ofBar(6.0));
    RunNow now = RunNow.of(job(5.5)).through("reg", stiff, set);
    assertThat(now.outcome()).isEqualTo(RuleOutcome.OPEN);
    assertThat(now.isExact()).isFalse();
    assertThat(bar(now.result())).isCloseTo(5.0, within(1.0e-9));
    assertThat(now.whatToAsk(UnitSystem.SI))
        .isEqualTo("It is enough if the setting of reg is at least 5.5 bar(g) (5 to 6 bar(g) told):"
            + " ask for it.");
    assertThat(RunNow.of(job(4.9)).through("reg", stiff, set).outcome()).isEqualTo(RuleOutcome.MET);
    assertThat(RunNow.of(job(6.1)).through("reg", stiff, set).outcome())
        .isEqualTo(RuleOutcome.UNMET);
    assertThat(
            RunNow.of(job(5.5)).through("reg", stiff, GaugePressure.ofBar(5.6)).isExact())
        .isTrue();
  }

  private static RunNow behindARegulator(double rating, Range<GaugePressure> set) {
    Requirement job = Requirement.forTool(
            FreeAirFlow.ofAnrLitresPerSecond(1.0), GaugePressure.ofBar(3.0))
        .toolInlet(End.parse("3/8 NPT female"))
        .toolRating(GaugePressure.ofBar(rating))
        .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
        .outlet(End.parse("3/8 NPT female"))
        .layout(
            Layout.of(List.of(Slot.coupling("outlet"), Slot.hose("hose", Length.ofMetres(5.0)))))
        .build();
    return RunNow.of(job)
        .through(
            "reg",
            new RegulatorRange(COUPLING, Range.exactly(PressureDrop.ofBar(0.2)), Optional.empty()),
            set)
        .through("old hose", OLD);
  }

  private static Range<GaugePressure> set(double least, double most) {
    return new Range<>(GaugePressure.ofBar(least), GaugePressure.ofBar(most));
  }

  @Test
  void a_tool_that_can_get_more_than_its_maker_allows_is_told_though_its_air_is_enough() {
    RunNow now = behindARegulator(5.0, set(6.0, 6.0));
    assertThat(now.airOutcome()).isEqualTo(RuleOutcome.MET);
    assertThat(now.pressureOutcome()).isEqualTo(RuleOutcome.UNMET);
    assertThat(now.outcome()).as("who reads this alone").isEqualTo(RuleOutcome.UNMET);
    assertThat(now.isToolOverPressured()).isTrue();
    assertThat(now.deadEnd()).isEqualTo(GaugePressure.ofBar(6.0));
    assertThat(now.overPressure(UnitSystem.SI))
        .startsWith("The tool may get up to 6 bar(g)")
        .contains("it is made for at most 5 bar(g)")
        .contains("lower reg to at most 5 bar(g)");
    assertThat(behindARegulator(5.0, set(4.0, 9.0)).deadEnd())
        .as("no more than the supply has")
        .isEqualTo(GaugePressure.ofBar(7.0));
    assertThat(behindARegulator(5.0, set(4.0, 9.0)).overPressure(UnitSystem.SI))
        .contains("ask what reg is set to, and lower it to at most 5 bar(g)");
  }

  @Test
  void a_regulator_that_holds_less_may_fail() {
    RunNow now = behindARegulator(5.0, set(5.0, 5.0));
    assertThat(now.isToolOverPressured()).isFalse();
    assertThat(now.overPressure(UnitSystem.SI))
        .startsWith("If the regulator fails, the tool may get 7 bar(g)");
    assertThat(behindARegulator(7.0, set(5.0, 5.0)).overPressure(UnitSystem.SI)).isEmpty();
  }

  /** Air enough at any of the settings; what stands at the tool is another matter. */
  @Test
  void the_outcome_is_the_worse_of_the_air_and_the_pressure() {
    assertThat(behindARegulator(5.0, set(4.0, 6.0)).airOutcome()).isEqualTo(RuleOutcome.MET);
    assertThat(behindARegulator(5.0, set(4.0, 6.0)).pressureOutcome())
        .as("by the setting")
        .isEqualTo(RuleOutcome.OPEN);
    assertThat(behindARegulator(5.0, set(4.0, 6.0)).outcome()).isEqualTo(RuleOutcome.OPEN);
    assertThat(behindARegulator(5.0, set(5.0, 5.0)).outcome())
        .as("7 bar(g) stand in front of it")
        .isEqualTo(RuleOutcome.MET_WHILE_REGULATED);
    assertThat(behindARegulator(7.0, set(5.0, 5.0)).outcome()).isEqualTo(RuleOutcome.MET);
    assertThat(behindARegulator(7.0, set(2.0, 2.5)).airOutcome()).isEqualTo(RuleOutcome.UNMET);
    assertThat(behindARegulator(7.0, set(2.0, 2.5)).outcome()).isEqualTo(RuleOutcome.UNMET);
    RunNow unlimited = now(6.0);
    assertThat(unlimited.pressureOutcome())
        .as("nobody told what the tool stands")
        .isEqualTo(RuleOutcome.OPEN);
    assertThat(unlimited.outcome()).isEqualTo(unlimited.airOutcome());
  }

  /** 3 bar(g) are needed, and the regulator at the supply holds 2 to 6: what the maker allows bounds it above. */
  @Test
  void so_is_the_setting_of_a_regulator_at_the_supply() {
    for (double rating : new double[] {5.0, 2.5}) {
      RunNow now = RunNow.of(Requirement.forTool(
                  FreeAirFlow.ofAnrLitresPerSecond(1.0), GaugePressure.ofBar(3.0))
              .toolInlet(End.parse("3/8 NPT female"))
              .toolRating(GaugePressure.ofBar(rating))
              .supply(
                  Shelf.SUPPLY.at(GaugePressure.ofBar(6.0).absolute(Shelf.ATMOSPHERE)),
                  Shelf.ATMOSPHERE)
              .highest(GaugePressure.ofBar(9.0))
              .regulated()
              .leastSetting(GaugePressure.ofBar(2.0))
              .outlet(End.parse("3/8 NPT female"))
              .layout(Layout.of(
                  List.of(Slot.coupling("outlet"), Slot.hose("hose", Length.ofMetres(5.0)))))
              .build())
          .through("old hose", OLD);
      String asked = now.whatToAsk(UnitSystem.SI);
      if (rating == 5.0) {
        assertThat(asked)
            .containsPattern(
                "setting of the regulator at the supply is at least 3\\.\\d+ bar\\(g\\)"
                    + " and at most 5 bar\\(g\\)");
      } else {
        assertThat(asked).doesNotContain("at least");
      }
      assertThat(now.overPressure(UnitSystem.SI))
          .contains("ask what the regulator at the supply is set to, and lower it to at most");
      assertThat(now.pressureOutcome()).isEqualTo(RuleOutcome.OPEN);
    }
  }

  @Test
  void the_setting_asked_for_is_at_most_what_the_maker_allows() {
    assertThat(behindARegulator(5.0, set(2.0, 6.0)).whatToAsk(UnitSystem.SI))
        .containsPattern(
            "setting of reg is at least 3\\.\\d+ bar\\(g\\) and at most 5(\\.00)? bar\\(g\\)");
    assertThat(behindARegulator(3.0, set(2.0, 6.0)).whatToAsk(UnitSystem.SI))
        .as("with no more than 3 bar(g) set, less than the 3 bar(g) needed arrives")
        .doesNotContain("at least");
  }
}
