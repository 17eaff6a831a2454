package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.List;
import org.airfit.joint.End;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Range;
import org.airfit.safety.Caution;
import org.airfit.safety.Medium;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A job is judged at its highest pressure also where no parts can be chosen yet. */
class JobFindingsTest {

  /** What the supply of the shelf's job holds. */
  private static final GaugePressure SET = GaugePressure.ofBar(7.0);

  private static List<String> titles(Requirement.Builder job) {
    return JobFindings.of(job.build()).cautions().stream().map(Caution::title).toList();
  }

  private static RuleOutcome outcome(Requirement.Builder job, Rule rule) {
    return JobFindings.of(job.build()).findings().stream()
        .filter(finding -> finding.rule() == rule)
        .findFirst()
        .orElseThrow()
        .outcome();
  }

  @Test
  void the_tool_and_the_gun_are_judged_as_with_parts() {
    Requirement.Builder job =
        Shelf.job().toolRating(GaugePressure.ofBar(7.5)).highest(GaugePressure.ofBar(8.5));
    assertThat(outcome(job, Rule.TOOL_RATED)).isEqualTo(RuleOutcome.UNMET);
    assertThat(outcome(job, Rule.CLEANING_PRESSURE)).isEqualTo(RuleOutcome.DOES_NOT_APPLY);
    assertThat(outcome(job.regulated(), Rule.TOOL_RATED))
        .isEqualTo(RuleOutcome.MET_WHILE_REGULATED);
    assertThat(titles(job)).contains("If the regulator fails");
    assertThat(outcome(job.blowGun(), Rule.CLEANING_PRESSURE)).isEqualTo(RuleOutcome.UNMET);
    Proposal best = Selection.of(job.build(), Catalogue.of(Shelf.parts()))
        .fold(Selection.Proposals::best, miss -> miss.nearest().get(0));
    assertThat(best.findings()).containsAll(JobFindings.of(job.build()).findings());
    assertThat(JobFindings.of(job.build()).findings(UnitSystem.US).get(0).reason())
        .contains("123.3 psig");
  }

  @Test
  void the_warnings_of_the_work_need_no_parts() {
    assertThat(titles(Shelf.job().blowGun()))
        .startsWith("Depressurise before uncoupling")
        .contains("Connection restraint", "Whip restraint", "Eye protection")
        .contains("Cleaning pressure (general industry)", "Guards when cleaning with air")
        .endsWith("Before anyone connects this")
        .doesNotContain("If the regulator fails", "Blasting nozzle", "Hose failure protection");
    assertThat(titles(Shelf.job().blasting()))
        .contains("Blasting nozzle", "Air for a blaster's hood");
    assertThat(titles(Shelf.job().impactTool()))
        .contains("Retainer on percussion tools", "Whip hose");
  }

  @Test
  void nothing_is_told_of_another_medium() {
    Requirement steam = Shelf.job().medium(Medium.STEAM).build();
    assertThatIllegalArgumentException()
        .isThrownBy(() -> JobFindings.of(steam))
        .withMessageContaining("not on steam");
  }

  @Test
  void it_compares_by_the_job() {
    JobFindings one = JobFindings.of(Shelf.job().build());
    assertThat(one).isEqualTo(JobFindings.of(Shelf.job().build())).isNotEqualTo("");
    assertThat(one).hasSameHashCodeAs(JobFindings.of(Shelf.job().build()));
    assertThat(one).isNotEqualTo(JobFindings.of(Shelf.job().blowGun().build()));
    assertThat(one.toString()).startsWith("Tool is not over-pressured: ");
  }

  private static Requirement.Builder withoutReach() {
    return Shelf.cheapest(
        Requirement.forTool(FreeAirFlow.ofAnrLitresPerSecond(10.0), GaugePressure.ofBar(5.0))
            .toolInlet(End.parse("1/4 NPT female")));
  }

  /** A setting is no swing: where the lowest that a regulator may be set to is within the limit, it depends. */
  @ParameterizedTest
  @CsvSource({
    "6.0, 7.5, MET_WHILE_REGULATED",
    "6.0, 7.0, MET_WHILE_REGULATED",
    "6.0, 6.5, OPEN",
    "6.0, 6.0, OPEN",
    "6.0, 5.9, UNMET",
    "6.0, 8.5, MET",
    "7.0, 6.5, UNMET"
  })
  void a_range_of_settings_is_judged_at_both_of_its_ends(
      double lowest, double limit, RuleOutcome outcome) {
    Requirement.Builder first = Shelf.job()
        .highest(GaugePressure.ofBar(8.5))
        .regulated()
        .leastSetting(GaugePressure.ofBar(lowest))
        .toolRating(GaugePressure.ofBar(limit));
    assertThat(outcome(first, Rule.TOOL_RATED)).isEqualTo(outcome);
    Requirement.Builder behind = withoutReach()
        .highest(GaugePressure.ofBar(8.5))
        .toolRating(GaugePressure.ofBar(limit))
        .layout(Layout.of(List.of(
            Slot.regulator("regulator", SET)
                .withSetRange(new Range<>(GaugePressure.ofBar(lowest), SET)),
            Slot.coupling("outlet"))));
    assertThat(outcome(behind, Rule.TOOL_RATED)).isEqualTo(outcome);
    assertThat(titles(behind).contains("If the regulator fails"))
        .isEqualTo(outcome == RuleOutcome.OPEN || outcome == RuleOutcome.MET_WHILE_REGULATED);
  }

  /** Two regulators hold no more than the lower of them: one set low enough does. */
  @Test
  void of_several_regulators_one_that_is_set_low_enough_does() {
    Requirement.Builder job = withoutReach()
        .highest(GaugePressure.ofBar(8.5))
        .toolRating(GaugePressure.ofBar(6.5))
        .layout(Layout.of(List.of(
            Slot.regulator("one", GaugePressure.ofBar(7.0))
                .withSetRange(new Range<>(GaugePressure.ofBar(6.0), GaugePressure.ofBar(7.0))),
            Slot.regulator("other", GaugePressure.ofBar(6.8)),
            Slot.coupling("outlet"))));
    assertThat(outcome(job, Rule.TOOL_RATED)).isEqualTo(RuleOutcome.OPEN);
    assertThat(JobFindings.of(job.build()).findings().get(0).reason())
        .contains("6 bar(g) to 6.8 bar(g) while the regulators hold")
        .contains("It depends: met while one of the regulators is set to 6.5 bar(g) at most.");
  }
}
