package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;

import org.airfit.quantity.GaugePressure;
import org.airfit.safety.Caution;
import org.airfit.safety.SafetyRules;
import org.junit.jupiter.api.Test;

/** Cleaning with air: less than 30 psi at a blocked nozzle by two rules, at most 30 psi by another. */
class BlowGunTest {

  private static Finding cleaning(Requirement.Builder job) {
    return best(job).findings().stream()
        .filter(finding -> finding.rule() == Rule.CLEANING_PRESSURE)
        .findFirst()
        .orElseThrow();
  }

  private static Proposal best(Requirement.Builder job) {
    return Selection.of(job.build(), Catalogue.of(Shelf.parts()))
        .fold(Selection.Proposals::best, miss -> miss.nearest().get(0));
  }

  @Test
  void a_gun_that_holds_no_pressure_back_has_the_supplys_at_its_blocked_nozzle() {
    Requirement.Builder job = Shelf.job().blowGun();
    assertThat(job.build().cleaningDeadEnd()).contains(GaugePressure.ofBar(7.0));
    Finding finding = cleaning(job);
    assertThat(finding.outcome()).isEqualTo(RuleOutcome.UNMET);
    assertThat(finding.reason())
        .contains("(general industry): not allowed", "(construction): not allowed")
        .contains("lets the pressure off when its nozzle is blocked");
    assertThat(Selection.of(job.build(), Catalogue.of(Shelf.parts())))
        .isInstanceOf(Selection.NothingFits.class);
  }

  @Test
  void below_thirty_psi_all_rules_allow_it_and_guards_are_still_asked_for() {
    Requirement.Builder job = Shelf.job().blowGun(GaugePressure.ofPsi(29.9));
    assertThat(cleaning(job).outcome()).isEqualTo(RuleOutcome.MET);
    assertThat(best(job).fits()).isTrue();
    assertThat(best(job).cautions())
        .extracting(Caution::title)
        .contains("Guards when cleaning with air");
  }

  @Test
  void at_exactly_thirty_psi_the_rules_differ_and_somebody_must_say_which_holds() {
    Finding finding = cleaning(Shelf.job().blowGun(GaugePressure.ofPsi(30)));
    assertThat(finding.outcome()).isEqualTo(RuleOutcome.OPEN);
    assertThat(finding.reason())
        .contains("(general industry): not allowed", "(construction): not allowed")
        .contains("(marine terminals): allowed", "ask which of them holds");
  }

  @Test
  void above_thirty_psi_no_rule_allows_it() {
    assertThat(cleaning(Shelf.job().blowGun(GaugePressure.ofPsi(30.1))).outcome())
        .isEqualTo(RuleOutcome.UNMET);
  }

  /** A rule of the works that a job names holds, whatever the federal ones allow. */
  @Test
  void a_rule_of_ones_own_decides() {
    SafetyRules own = SafetyRules.ofTable("""
        jurisdiction,citation,text,quantity,operator,limit,unit,source,basis
        The yard,rule 7,no more than 20 psi at a gun,cleaning pressure,<=,20,psi,notice,read
        """);
    Requirement.Builder job = Shelf.job()
        .blowGun(GaugePressure.ofPsi(25))
        .rules(SafetyRules.usFederal().with(own));
    assertThat(cleaning(job).outcome()).isEqualTo(RuleOutcome.UNMET);
    assertThat(cleaning(job).reason())
        .contains("rule 7: not allowed, 1.724 bar(g) against at most 1.379 bar(g) (20 psig)");
    assertThat(cleaning(job.blowGun(GaugePressure.ofPsi(20))).outcome()).isEqualTo(RuleOutcome.MET);
  }

  /** Where no rule on it is held, nobody may conclude that the gun is allowed, or that there is none. */
  @Test
  void a_place_whose_rules_name_no_pressure_leaves_the_question_open() {
    for (String place : new String[] {"CA-QC", "FR"}) {
      Finding finding =
          cleaning(Shelf.job().blowGun().rules(SafetyRules.bundled().in(place)));
      assertThat(finding.outcome()).as(place).isEqualTo(RuleOutcome.OPEN);
      assertThat(finding.reason())
          .isEqualTo("At a blocked nozzle stand up to 7 bar(g). None of the rules that it was"
              + " judged by limits that: ask what holds at this place.");
    }
  }

  @Test
  void other_tools_are_not_concerned() {
    assertThat(Shelf.job().build().cleaningDeadEnd()).isEmpty();
    assertThat(cleaning(Shelf.job()).outcome()).isEqualTo(RuleOutcome.DOES_NOT_APPLY);
    assertThat(best(Shelf.job()).cautions())
        .extracting(Caution::title)
        .doesNotContain("Guards when cleaning with air");
  }
}
