package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.airfit.line.Wall;
import org.airfit.quantity.GaugePressure;
import org.junit.jupiter.api.Test;

/** What rules of one's own say of a job, compared whole: the value, the limit, the parts and what to change. */
class ForbiddenInWordsTest {

  private static final String LOWER =
      "set the relief valve or the cut-out lower, or take a regulator whose maker tells that no more"
          + " stands behind it when it has failed";

  private static Requirement.Builder job(String... rules) {
    return Shelf.job().rules(OwnRulesTest.own(rules));
  }

  private static String said(Requirement.Builder job, Part... more) {
    List<Part> parts = new ArrayList<>(Shelf.parts());
    parts.addAll(List.of(more));
    Proposal shown = Selection.of(job.build(), Catalogue.of(parts))
        .fold(Selection.Proposals::best, miss -> miss.nearest().get(0));
    String text = shown.findings().stream()
        .filter(each -> each.rule() == Rule.SAFETY_RULES_ALLOW)
        .findFirst()
        .orElseThrow()
        .toString();
    assertThat(text).startsWith("Safety rules allow it: ");
    return text.substring("Safety rules allow it: ".length());
  }

  @Test
  void a_limit_from_above_and_one_from_below_are_told_with_their_own_ways_out() {
    assertThat(said(job("line pressure,<=,6.9,bar,forbids,,")))
        .isEqualTo(
            "NOT MET. Works, rule 1 (text of the rule): not allowed, line pressure 7 bar(g) against at most"
                + " 6.9 bar(g). As told. To change: " + LOWER + ".");
    assertThat(said(job("line pressure,<=,7,bar,forbids,,")))
        .isEqualTo(
            "met. Works, rule 1 (text of the rule): allowed, line pressure 7 bar(g) against at most 7 bar(g).");
    assertThat(said(job("line pressure,>=,6.6,bar,forbids,,").lowest(GaugePressure.ofBar(6.5))))
        .isEqualTo(
            "NOT MET. Works, rule 1 (text of the rule): not allowed, line pressure 6.5 bar(g) against at least"
                + " 6.6 bar(g). As told. To change: set the cut-in higher.");
  }

  @Test
  void all_that_are_kept_are_told_and_all_that_are_broken() {
    assertThat(said(job("line pressure,<=,7,bar,forbids,,", "line pressure,<=,8,bar,forbids,,")))
        .isEqualTo(
            "met. Works, rule 1 (text of the rule): allowed, line pressure 7 bar(g) against at most 7 bar(g)."
                + " Works, rule 2 (text of the rule): allowed, line pressure 7 bar(g) against at most 8 bar(g).");
    assertThat(said(job("line pressure,<=,5,bar,forbids,,", "line pressure,<=,6,bar,forbids,,")))
        .isEqualTo(
            "NOT MET. Works, rule 1 (text of the rule): not allowed, line pressure 7 bar(g) against at most 5"
                + " bar(g). As told. To change: " + LOWER
                + ". Works, rule 2 (text of the rule): not allowed, line"
                + " pressure 7 bar(g) against at most 6 bar(g). As told. To change: " + LOWER
                + ".");
  }

  /** The hose of the shelf has 9.5 mm of bore, everything is rated for 16 bar(g). */
  @Test
  void the_parts_that_decide_stand_beside_the_limit() {
    assertThat(said(job("hose bore,<,9.5,mm,forbids,,")))
        .isEqualTo(
            "NOT MET. Works, rule 1 (text of the rule): not allowed, hose bore 9.5 mm against less than 9.5 mm"
                + " (part 10 mm hose). As told. To change: take a hose of a smaller bore.");
    assertThat(said(job("hose bore,>,9.5,mm,forbids,,")))
        .isEqualTo(
            "NOT MET. Works, rule 1 (text of the rule): not allowed, hose bore 9.5 mm against more than 9.5 mm"
                + " (part 10 mm hose). As told. To change: take a hose of a larger bore.");
    assertThat(said(job("share of lowest rating,<=,43,percent of the rating,forbids,,")))
        .contains(
            " (part wide, part hose plug, part 10 mm hose, part tool plug). As told. To change: take"
                + " parts of a higher rating; or " + LOWER + ".");
  }

  /** The weakest part rates the line: a rule on ratings that is kept is told by it. */
  @Test
  void a_rule_on_ratings_that_is_kept_is_told_by_the_weakest_part() {
    Part.Plug weak = Shelf.plug(
        Shelf.steel("weak").withRating(GaugePressure.ofBar(14.0)), "finch", "1/4 NPT male");
    assertThat(said(
            job("share of lowest rating,<=,60,percent of the rating,forbids,,").toolPlug(weak)))
        .as("7 bar(g) are half of 14")
        .startsWith("met. Works, rule 1 (text of the rule): allowed, share of lowest rating ")
        .endsWith("(part weak).");
  }

  @Test
  void what_to_do_without_and_what_to_provide_are_told_for_one_fact_and_for_several() {
    assertThat(said(job(",,,,forbids,painting,").painting()))
        .endsWith(" As told. To change: do without painting.");
    assertThat(said(job(",,,,forbids,painting;quick couplers,").painting()))
        .endsWith(" As told. To change: do without one of: painting, quick couplers.");
    assertThat(said(job(",,,,forbids,painting,blasting").painting()))
        .endsWith(
            " As told. To change: do without painting; or provide what excepts it: blasting.");
    assertThat(said(job(",,,,forbids,,")))
        .endsWith(" As told. It forbids every such line: ask whoever made the rule.");
  }

  @Test
  void plastic_is_named_by_the_parts_that_are_of_it() {
    Part.Hose plastic =
        Shelf.of(Wall.SMOOTH_PLASTIC, Shelf.hose(Shelf.steel("plastic"), 12.7, 10.0));
    assertThat(said(job(",,,,forbids,plastic pipe,").hose(plastic)))
        .endsWith(" (part plastic). As told. To change: take others than of plastic.");
  }

  @Test
  void advice_and_what_is_not_known_are_questions() {
    assertThat(said(job("line pressure,<=,5,bar,advises against,,")))
        .isEqualTo(
            "ask. Works, rule 1 (text of the rule): not advised, ask what holds here; line pressure 7 bar(g)"
                + " against at most 5 bar(g).");
    assertThat(said(job(",,,,forbids,mine,")))
        .startsWith("ask. Works, rule 1 (text of the rule): ask whether ");
  }

  /** What excepts a rule is asked about until it was told, either way. */
  @Test
  void a_whip_hose_that_excepts_a_rule_is_asked_about_until_it_is_told() {
    String rule = ",,,,forbids,percussion tool,whip hose";
    assertThat(said(job(rule).impactTool()))
        .startsWith("ask. Works, rule 1 (text of the rule): ask whether ");
    assertThat(said(job(rule).impactTool().noWhipHose()))
        .startsWith("NOT MET. Works, rule 1 (text of the rule): not allowed");
    assertThat(said(job(rule).impactTool().whipHose()))
        .doesNotStartWith("ask.")
        .doesNotStartWith("NOT MET.");
  }
}
