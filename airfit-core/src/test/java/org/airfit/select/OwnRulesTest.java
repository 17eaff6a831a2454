package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.airfit.joint.End;
import org.airfit.line.Conduit;
import org.airfit.line.ConduitRange;
import org.airfit.line.Wall;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.safety.Caution;
import org.airfit.safety.SafetyRules;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A rule that forbids decides, be it of general practice, of a place or of one's own works. */
class OwnRulesTest {

  private static final String HEADING =
      "jurisdiction,citation,text,quantity,operator,limit,unit,asks,when,unless,source,basis\n";

  static SafetyRules own(String... judged) {
    StringBuilder table = new StringBuilder(HEADING);
    for (int i = 0; i < judged.length; i++) {
      table
          .append("Works,rule ")
          .append(i + 1)
          .append(",as told,")
          .append(judged[i])
          .append(",b,read\n");
    }
    return SafetyRules.usFederal().with(SafetyRules.ofTable(table.toString()));
  }

  private static Selection select(Requirement.Builder job, List<Part> parts) {
    return Selection.of(job.build(), Catalogue.of(parts));
  }

  private static Proposal shown(Selection selection) {
    return selection.fold(Selection.Proposals::best, miss -> miss.nearest().get(0));
  }

  private static Finding finding(Requirement.Builder job) {
    return of(shown(select(job, Shelf.parts())));
  }

  private static Finding of(Proposal proposal) {
    return proposal.findings().stream()
        .filter(each -> each.rule() == Rule.SAFETY_RULES_ALLOW)
        .findFirst()
        .orElseThrow();
  }

  private static Requirement.Builder job(String... judged) {
    return Shelf.job().rules(own(judged));
  }

  @Test
  void without_a_rule_that_applies_nothing_is_said() {
    assertThat(finding(Shelf.job()))
        .hasToString(
            "Safety rules allow it: does not apply. Of the rules that forbid something, none"
                + " applies to what was told.");
  }

  /** The supply stands at 7 bar(g) and can rise to 8.5. */
  @ParameterizedTest
  @CsvSource({"8.4, UNMET", "8.5, MET", "8.6, MET"})
  void the_highest_pressure_is_held_against_the_limit_of_the_works(double limit, RuleOutcome is) {
    Requirement.Builder job = job("line pressure,<=," + limit + ",bar,forbids,,")
        .toolRating(GaugePressure.ofBar(9.0))
        .highest(GaugePressure.ofBar(8.5));
    Selection answer = select(job, Shelf.parts());
    assertThat(of(shown(answer)).outcome()).isEqualTo(is);
    assertThat(answer instanceof Selection.Proposals).isEqualTo(is == RuleOutcome.MET);
    assertThat(answer.toString())
        .contains(is == RuleOutcome.MET ? "meets every rule" : "8.5 bar(g)");
  }

  @Test
  void a_broken_rule_is_named_with_its_value_its_limit_and_what_to_change() {
    Requirement.Builder job = job("line pressure,<=,7,bar,forbids,,")
        .highest(GaugePressure.ofBar(8.5))
        .regulated();
    Selection answer = select(job, Shelf.parts());
    assertThat(answer).isInstanceOf(Selection.NothingFits.class);
    assertThat(answer.toString())
        .startsWith("Nothing in the catalogue fits: Safety rules allow it: NOT MET. Works, rule 1"
            + " (text of the rule): not allowed, line pressure 8.5 bar(g) against at most 7 bar(g). As told."
            + " To change: set the relief valve or the cut-out lower");
    assertThat(shown(answer).cautions()).extracting(Caution::title).contains("rule 1");
    assertThat(JobFindings.of(job.build()).findings()).contains(of(shown(answer)));
  }

  @Test
  void a_regulator_counts_with_what_stands_behind_it_when_it_has_failed() {
    Requirement.Builder job =
        job("line pressure,<=,7.5,bar,forbids,,").highest(GaugePressure.ofBar(8.5));
    assertThat(finding(job.regulated()).outcome()).isEqualTo(RuleOutcome.UNMET);
    assertThat(finding(job.regulated(GaugePressure.ofBar(7.5))).outcome())
        .isEqualTo(RuleOutcome.MET);
  }

  @ParameterizedTest
  @CsvSource({"6.5, MET", "6.6, UNMET"})
  void the_lowest_pressure_is_held_against_a_limit_from_which_on_it_is_allowed(
      double limit, RuleOutcome is) {
    Requirement.Builder job =
        job("line pressure,>=," + limit + ",bar,forbids,,").lowest(GaugePressure.ofBar(6.5));
    assertThat(finding(job).outcome()).isEqualTo(is);
  }

  @Test
  void paint_and_a_lubricated_line_do_not_go_together() {
    assertThat(finding(Shelf.job().painting()).outcome()).isEqualTo(RuleOutcome.DOES_NOT_APPLY);
    List<Part> parts = Shelf.parts();
    Requirement.Builder oiled = Shelf.job().painting().lubrication(Lubrication.LUBRICATED);
    assertThat(select(oiled, parts).toString())
        .startsWith("Nothing in the catalogue fits: ")
        .contains("Oiled air to a paint gun [", "the air sprays paint and the line is lubricated")
        .contains("To change: do without one of: painting, lubricated line.");
    Requirement.Builder unknown = Requirement.forTool(
            Shelf.job().build().demand(), Shelf.job().build().least())
        .toolRating(GaugePressure.ofBar(7.5))
        .toolInlet(Shelf.job().build().toolInlet())
        .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
        .outlet(Shelf.job().build().outlet())
        .reach(Length.ofMetres(10.0))
        .environment(Environment.INDOORS)
        .painting();
    assertThat(finding(unknown).outcome()).isEqualTo(RuleOutcome.OPEN);
    assertThat(finding(unknown).reason())
        .contains("ask whether the line is lubricated; the air sprays paint.");
  }

  @Test
  void a_rule_without_a_limit_forbids_where_it_applies() {
    String rule = ",,,,forbids,cleaning,";
    assertThat(finding(job(rule)).outcome()).isEqualTo(RuleOutcome.DOES_NOT_APPLY);
    Requirement.Builder gun = job(rule).blowGun(GaugePressure.ofPsi(20.0));
    assertThat(finding(gun).outcome()).isEqualTo(RuleOutcome.UNMET);
    assertThat(finding(gun).reason())
        .contains("Works, rule 1", "air is used for cleaning", "do without cleaning");
    assertThat(select(gun, Shelf.parts())).isInstanceOf(Selection.NothingFits.class);
    assertThat(finding(job(",,,,forbids,,")).reason())
        .contains("on every line", "ask whoever made");
  }

  /** What no job can tell is asked for, where a rule of one's own turns on it. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "maintenance",
        "mine",
        "military construction",
        "hoisted by hose",
        "whip hose",
      })
  void a_fact_that_was_not_told_is_asked_for(String fact) {
    Requirement.Builder job = job(",,,,forbids," + fact + ",");
    assertThat(finding(job).outcome()).isEqualTo(RuleOutcome.OPEN);
    assertThat(select(job, Shelf.parts()).toString())
        .contains("It breaks no rule, but whether it meets every rule depends")
        .contains("Safety rules allow it: Works, rule 1 (text of the rule): ask whether ")
        .doesNotContain("combinations that meet every rule");
  }

  @ParameterizedTest
  @ValueSource(strings = {"quick couplers", "tool on hose"})
  void couplings_and_a_hose_are_in_every_job(String fact) {
    assertThat(finding(job(",,,,forbids," + fact + ",")).outcome()).isEqualTo(RuleOutcome.UNMET);
  }

  @Test
  void what_the_job_tells_of_the_tool_decides() {
    assertThat(finding(job(",,,,forbids,percussion tool,whip hose").impactTool().whipHose())
            .outcome())
        .isEqualTo(RuleOutcome.DOES_NOT_APPLY);
    assertThat(
            finding(job(",,,,forbids,percussion tool,whip hose").impactTool()).reason())
        .contains("ask whether a whip hose lies before the tool");
    assertThat(finding(job(",,,,forbids,blasting,").blasting()).outcome())
        .isEqualTo(RuleOutcome.UNMET);
    assertThat(finding(job(",,,,forbids,automatic feed,").automaticFeed()).outcome())
        .isEqualTo(RuleOutcome.UNMET);
    assertThat(finding(job("automatic feed pressure,<=,6,bar,forbids,,")).outcome())
        .isEqualTo(RuleOutcome.DOES_NOT_APPLY);
    assertThat(finding(job("automatic feed pressure,<=,6,bar,forbids,,").automaticFeed())
            .outcome())
        .isEqualTo(RuleOutcome.UNMET);
    assertThat(finding(job("coupler pressure,<=,6.9,bar,forbids,,")).outcome())
        .isEqualTo(RuleOutcome.UNMET);
    assertThat(finding(job("share of receiver rating,<=,100,percent of the rating,forbids,,"))
            .reason())
        .contains("ask for the receiver rating");
  }

  @Test
  void clothing_and_mill_scale_are_asked_for_where_air_cleans() {
    String clothing = "pressure on clothing,<=,10,psi,forbids,,";
    assertThat(finding(job(clothing)).outcome()).isEqualTo(RuleOutcome.DOES_NOT_APPLY);
    assertThat(finding(job(clothing).blowGun(GaugePressure.ofPsi(20.0))).outcome())
        .isEqualTo(RuleOutcome.OPEN);
    assertThat(finding(job(clothing).blowGun(GaugePressure.ofPsi(9.0))).outcome())
        .isEqualTo(RuleOutcome.MET);
    String scale = "cleaning pressure,<,15,psi,forbids,,forms or mill scale";
    Proposal gun = shown(select(job(scale).blowGun(GaugePressure.ofPsi(20.0)), Shelf.parts()));
    assertThat(of(gun).outcome()).isEqualTo(RuleOutcome.OPEN);
    assertThat(of(gun).reason()).contains("ask whether concrete forms, mill scale");
    assertThat(gun.fits()).isTrue();
  }

  /** A limit on the pressure of cleaning that applies is told once, by the rule on cleaning. */
  @Test
  void a_limit_on_cleaning_is_judged_once() {
    Proposal gun = shown(select(
        job("cleaning pressure,<,15,psi,forbids,,").blowGun(GaugePressure.ofPsi(20.0)),
        Shelf.parts()));
    assertThat(gun.unmet()).extracting(Finding::rule).containsExactly(Rule.CLEANING_PRESSURE);
    Proposal oiled = shown(select(
        job("cleaning pressure,<,15,psi,forbids,lubricated line,")
            .blowGun(GaugePressure.ofPsi(20.0))
            .lubrication(Lubrication.LUBRICATED),
        Shelf.parts()));
    assertThat(oiled.unmet()).extracting(Finding::rule).containsExactly(Rule.CLEANING_PRESSURE);
  }

  /** A federal rule is on one trade, and nobody told the trade; one of the works in the same words holds. */
  @Test
  void a_federal_rule_on_one_trade_is_a_question() {
    List<Part> strong = new ArrayList<>();
    Shelf.parts().forEach(part -> strong.add(stronger(part)));
    Requirement.Builder job =
        Shelf.job().toolRating(GaugePressure.ofBar(20.0)).highest(GaugePressure.ofBar(16.1));
    assertThat(of(shown(select(job, strong))).outcome()).isEqualTo(RuleOutcome.OPEN);
    assertThat(of(shown(select(job.highest(GaugePressure.ofBar(16.0)), strong))).outcome())
        .isEqualTo(RuleOutcome.DOES_NOT_APPLY);
    assertThat(of(shown(select(
                job.highest(GaugePressure.ofBar(16.1))
                    .rules(own("coupler pressure,<=,232,psi (16 bar),forbids,,")),
                strong)))
            .outcome())
        .isEqualTo(RuleOutcome.UNMET);
  }

  private static Part stronger(Part part) {
    PartFacts facts = part.facts().withRating(GaugePressure.ofBar(40.0));
    if (part instanceof Part.Socket socket) {
      return new Part.Socket(facts, socket.profiles(), socket.end(), socket.capacity());
    }
    if (part instanceof Part.Plug plug) {
      return new Part.Plug(facts, plug.profile(), plug.end());
    }
    Part.Hose hose = (Part.Hose) part;
    return new Part.Hose(facts, hose.bore(), hose.conduit(), hose.upstream(), hose.downstream());
  }

  private static List<Part> with(Part... more) {
    List<Part> parts = new ArrayList<>(Shelf.parts());
    parts.addAll(List.of(more));
    return parts;
  }

  /** The hose of the shelf has 9.5 mm; it is the better choice until a rule forbids it. */
  @Test
  void a_hose_that_a_rule_forbids_gives_way_to_one_that_it_allows() {
    Part.Hose narrow = Shelf.hose(Shelf.steel("9 mm hose"), 9.0, 10.0);
    String rule = "hose bore,<,9.5,mm,forbids,,";
    assertThat(shown(select(Shelf.job(), with(narrow))).hose("hose").id()).isEqualTo("10 mm hose");
    Proposal best = shown(select(job(rule), with(narrow)));
    assertThat(best.hose("hose").id()).isEqualTo("9 mm hose");
    assertThat(of(best))
        .hasToString("Safety rules allow it: met. Works, rule 1 (text of the rule): allowed,"
            + " hose bore 9 mm against less than 9.5 mm (part 9 mm hose).");
    Finding broken = finding(job(rule));
    assertThat(broken.outcome()).isEqualTo(RuleOutcome.UNMET);
    assertThat(broken.reason()).contains("(part 10 mm hose)", "take a hose of a smaller bore");
    assertThat(finding(job("hose bore,>=,10,mm,forbids,,")).reason())
        .contains("take a hose of a larger bore");
    assertThat(finding(job("mine hose bore,<,9,mm,forbids,,")).outcome())
        .isEqualTo(RuleOutcome.OPEN);
    assertThat(finding(job("mine hose bore,<=,9.5,mm,forbids,,")).outcome())
        .isEqualTo(RuleOutcome.MET);
  }

  /** 7 bar(g) are 43.75 % of 16 bar. */
  @Test
  void the_weakest_part_rates_the_line_by_the_share_of_the_works() {
    String limit = "share of lowest rating,<=,%s,percent of the rating,forbids,,";
    assertThat(
            finding(job(String.format(java.util.Locale.ROOT, limit, "43.75"))).outcome())
        .isEqualTo(RuleOutcome.MET);
    Finding broken = finding(job(String.format(java.util.Locale.ROOT, limit, "43")));
    assertThat(broken.outcome()).isEqualTo(RuleOutcome.UNMET);
    assertThat(broken.reason()).contains("take parts of a higher rating", "part wide");
    Part.Hose old = Shelf.hose(
        PartFacts.of("old", "old hose").withMaterial(Material.HARDENED_STEEL).asExisting(),
        9.5,
        10.0);
    Requirement.Builder job =
        job(String.format(java.util.Locale.ROOT, limit, "60")).hose(old);
    assertThat(finding(job).outcome()).isEqualTo(RuleOutcome.OPEN);
    assertThat(finding(job).reason()).contains("ask for the lowest rating (old hose)");
    assertThat(finding(job("share of lowest rating,>=,10,percent of the rating,forbids,,"))
            .outcome())
        .isEqualTo(RuleOutcome.OPEN);
  }

  @Test
  void plastic_is_left_out_where_a_rule_forbids_it_and_asked_for_where_a_wall_is_not_known() {
    String rule = ",,,,forbids,plastic pipe,";
    Part.Hose plastic =
        Shelf.of(Wall.SMOOTH_PLASTIC, Shelf.hose(Shelf.steel("a plastic"), 12.7, 10.0));
    Part.Hose rubber =
        Shelf.of(Wall.SMOOTH_RUBBER_HOSE, Shelf.hose(Shelf.steel("rubber"), 9.5, 10.0));
    assertThat(shown(select(Shelf.job(), with(plastic, rubber))).hose("hose").id())
        .isEqualTo("a plastic");
    Proposal best = shown(select(job(rule), with(plastic, rubber)));
    assertThat(best.hose("hose").id()).isEqualTo("rubber");
    assertThat(best.open()).isEmpty();
    assertThat(finding(job(rule)).reason())
        .contains("ask whether plastic pipe or tube is in the line (part 10 mm hose)");
    assertThat(of(shown(select(job(rule).hose(plastic), Shelf.parts()))).reason())
        .contains("(part a plastic)", "To change: take others than of plastic.");
    Conduit pipe =
        Conduit.of(Length.ofMillimetres(25.0), Length.ofMetres(9.0), Wall.SMOOTH_PLASTIC);
    assertThat(of(shown(select(job(rule).pipe("old pipe", pipe), with(rubber)))).outcome())
        .isEqualTo(RuleOutcome.UNMET);
    Conduit unknown =
        Conduit.of(Length.ofMillimetres(25.0), Length.ofMetres(9.0), Length.ofMillimetres(0.01));
    assertThat(of(shown(select(job(rule).hose(rubber).pipe("old pipe", unknown), Shelf.parts())))
            .outcome())
        .isEqualTo(RuleOutcome.OPEN);
    assertThat(finding(job(",,,,forbids,,plastic pipe")).outcome()).isEqualTo(RuleOutcome.OPEN);
  }

  @Test
  void several_broken_rules_are_all_named_and_one_more_that_is_open_is_not_the_headline() {
    Finding all = finding(job(
        "line pressure,<=,6,bar,forbids,,",
        ",,,,forbids,mine,",
        "hose bore,<,6,mm,forbids,,",
        "line pressure,<=,9,bar,forbids,,"));
    assertThat(all.outcome()).isEqualTo(RuleOutcome.UNMET);
    assertThat(all.reason())
        .contains("Works, rule 1 ", "Works, rule 3 ")
        .doesNotContain("rule 2 ", "rule 4 ");
  }

  @Test
  void what_parts_decide_is_open_before_they_are_chosen() {
    Finding before =
        JobFindings.of(job("hose bore,<,9,mm,forbids,,").build()).findings().get(2);
    assertThat(before.rule()).isEqualTo(Rule.SAFETY_RULES_ALLOW);
    assertThat(before)
        .hasToString("Safety rules allow it: ask. The parts decide whether these rules are kept:"
            + " rule 1.");
  }

  /** Great Britain has rules on every line above 0.5 bar: they need no part with a rating. */
  @Test
  void the_pressure_of_the_line_is_told_to_the_rules_also_where_no_part_is_marked() {
    Requirement.Builder job = Shelf.job().rules(SafetyRules.bundled().in("GB"));
    assertThat(JobFindings.of(job.build()).cautions())
        .extracting(Caution::text)
        .anyMatch(text -> text.contains("7 bar(g) in the line, asked for above 0.5 bar(g)"));
  }

  /** The trade association of Great Britain advises at most 2 bar; no rule there sets a pressure. */
  @Test
  void advice_that_is_not_kept_is_a_question_and_forbids_nothing() {
    for (String bar : List.of("2 bar(g)", "2.01 bar(g)")) {
      Finding cleaning = JobFindings.of(Shelf.job()
              .rules(SafetyRules.bundled().in("GB"))
              .blowGun(GaugePressure.parse(bar))
              .build())
          .findings()
          .get(1);
      assertThat(cleaning.rule()).isEqualTo(Rule.CLEANING_PRESSURE);
      assertThat(cleaning.outcome())
          .as(bar)
          .isEqualTo(bar.equals("2 bar(g)") ? RuleOutcome.MET : RuleOutcome.OPEN);
      if (cleaning.outcome() == RuleOutcome.OPEN) {
        assertThat(cleaning.reason())
            .isEqualTo(
                "Advised cleaning pressure (Great Britain): not advised, 2.01 bar(g) against at most"
                    + " 2 bar(g). That is advice, not law: ask what holds at this place.");
      }
    }
    Finding own = JobFindings.of(job("line pressure,<=,5,bar,advises against,,").build())
        .findings()
        .get(2);
    assertThat(own.outcome()).isEqualTo(RuleOutcome.OPEN);
    assertThat(own.reason()).contains("not advised, ask what holds here; ");
    assertThat(JobFindings.of(job("line pressure,<=,5,bar,forbids,,").build())
            .findings()
            .get(2)
            .outcome())
        .isEqualTo(RuleOutcome.UNMET);
  }

  /** The reducer at the tool is of plastic; of brass it is none, though of its wall nothing is told. */
  @Test
  void an_adapter_of_plastic_is_plastic_in_the_line() {
    String rule = ",,,,forbids,plastic pipe,";
    Part.Hose rubber =
        Shelf.of(Wall.SMOOTH_RUBBER_HOSE, Shelf.hose(Shelf.steel("rubber"), 12.7, 10.0));
    for (Material material : List.of(Material.PLASTIC, Material.STAINLESS_STEEL)) {
      List<Part> parts = with(rubber);
      parts.removeIf(part -> part.id().equals("10 mm hose") || part.id().equals("tool plug"));
      Part.Adapter steel = Shelf.adapter("reducer", "3/8 NPT male", "1/4 NPT male");
      parts.add(new Part.Adapter(
          PartFacts.of("reducer", "reducer")
              .withRating(GaugePressure.ofBar(16.0))
              .withMaterial(material),
          steel.one(),
          steel.other(),
          steel.conduit()));
      assertThat(of(shown(select(job(rule), parts))).outcome())
          .as(material.toString())
          .isEqualTo(material == Material.PLASTIC ? RuleOutcome.UNMET : RuleOutcome.DOES_NOT_APPLY);
    }
  }

  @Test
  void piping_behind_the_outlet_is_plastic_as_told() {
    for (Wall wall : List.of(Wall.SMOOTH_PLASTIC, Wall.SMOOTH_RUBBER_HOSE)) {
      Conduit pipe = Conduit.of(Length.ofMillimetres(25.0), Length.ofMetres(9.0), wall);
      Requirement.Builder job = Requirement.forTool(
              Shelf.job().build().demand(), Shelf.job().build().least())
          .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
          .toolInlet(End.parse("3/8 NPT female"))
          .outlet(End.parse("3/8 NPT male"))
          .environment(Environment.INDOORS)
          .lubrication(Lubrication.DRY)
          .layout(Layout.of(List.of(Slot.pipe(
              "pipe",
              ConduitRange.exactly(pipe),
              End.parse("3/8 NPT female"),
              End.parse("3/8 NPT male")))))
          .rules(own(",,,,forbids,plastic pipe,"));
      assertThat(of(shown(select(job, Shelf.parts()))).outcome())
          .as(wall.toString())
          .isEqualTo(wall == Wall.SMOOTH_PLASTIC ? RuleOutcome.UNMET : RuleOutcome.DOES_NOT_APPLY);
    }
  }
}
