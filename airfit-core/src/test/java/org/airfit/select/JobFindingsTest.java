package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.List;
import org.airfit.quantity.GaugePressure;
import org.airfit.safety.Caution;
import org.airfit.safety.Medium;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;

/** A job is judged at its highest pressure also where no parts can be chosen yet. */
class JobFindingsTest {

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
}
