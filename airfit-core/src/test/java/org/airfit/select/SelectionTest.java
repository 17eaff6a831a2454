package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.airfit.joint.End;
import org.airfit.line.Conduit;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.PressureUnit;
import org.airfit.run.LargestFlow;
import org.airfit.safety.Caution;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;

class SelectionTest {

  private static Selection select(Requirement.Builder job, List<? extends Part> parts) {
    return Selection.of(job.build(), Catalogue.of(parts));
  }

  private static Selection.Proposals fitting(Selection selection) {
    assertThat(selection).isInstanceOf(Selection.Proposals.class);
    return (Selection.Proposals) selection;
  }

  private static Selection.NothingFits nothing(Selection selection) {
    assertThat(selection).isInstanceOf(Selection.NothingFits.class);
    return (Selection.NothingFits) selection;
  }

  private static List<Part> with(Part... more) {
    List<Part> parts = new ArrayList<>(Shelf.parts());
    parts.addAll(List.of(more));
    return parts;
  }

  private static List<Part> without(String id) {
    return Shelf.parts().stream()
        .filter(part -> !part.id().equals(id))
        .map(Part.class::cast)
        .toList();
  }

  private static Finding of(Proposal proposal, Rule rule) {
    return proposal.findings().stream()
        .filter(f -> f.rule() == rule)
        .findFirst()
        .orElseThrow();
  }

  @Test
  void the_combination_that_keeps_most_pressure_wins() {
    Selection.Proposals answer = fitting(select(Shelf.job(), Shelf.parts()));
    Proposal best = answer.best();
    assertThat(best.socket("outlet").id()).isEqualTo("wide");
    assertThat(best.socket("tool").id()).isEqualTo("wide");
    assertThat(best.fits()).isTrue();
    assertThat(best.findings()).extracting(Finding::rule).containsExactly(Rule.values());
    assertThat(answer.proposals())
        .isSortedAccordingTo(
            (one, other) -> Double.compare(Shelf.pascalsAtTool(other), Shelf.pascalsAtTool(one)));
    assertThat(answer.whyBest()).contains("bar(g) at the tool");
  }

  @Test
  void the_parts_list_counts_a_part_used_twice_and_gives_each_a_reason() {
    List<BillLine> list =
        Shelf.lines(fitting(select(Shelf.job(), Shelf.parts())).best());
    assertThat(list)
        .extracting(Shelf::id)
        .containsExactly("wide", "hose plug", "10 mm hose", "tool plug");
    assertThat(list).extracting(BillLine::quantity).containsExactly(2, 1, 1, 1);
    assertThat(list).allSatisfy(line -> assertThat(line.reason()).isNotBlank());
    assertThat(list.get(0).reason()).contains("at the outlet", "on the hose", "pressure loss");
    assertThat(list.get(2).reason()).contains("10 m", "9.5 mm", "pressure loss");
  }

  @Test
  void a_part_that_is_there_already_is_preferred_to_a_better_one_to_be_bought() {
    Part.Hose there = Shelf.hose(Shelf.steel("old hose").asExisting(), 9.0, 10.0);
    Proposal best = fitting(select(Shelf.job(), with(there))).best();
    assertThat(best.hose("hose").id()).isEqualTo("old hose");
    assertThat(Shelf.lines(best))
        .filteredOn(BillLine::existing)
        .extracting(Shelf::id)
        .containsExactly("old hose");
  }

  @Test
  void a_flow_that_narrow_couplings_cannot_pass_is_solved_by_wide_ones_only() {
    Selection.Proposals answer = fitting(select(Shelf.job(), Shelf.parts()));
    assertThat(answer.proposals()).noneMatch(p -> p.socket("outlet").id().equals("narrow"));
    Selection.NothingFits miss = nothing(select(Shelf.job(), without("wide")));
    assertThat(of(miss.nearest().get(0), Rule.AIR_AT_TOOL).outcome()).isEqualTo(RuleOutcome.UNMET);
    assertThat(miss.toGive()).singleElement().asString().contains("Air at the tool", "6.2 bar(g)");
    assertThat(miss.working().toText()).contains("Nothing in the catalogue fits");
  }

  @Test
  void a_tool_that_starves_is_told_with_the_part_that_stops_it() {
    Requirement.Builder hungry = Requirement.forTool(
            FreeAirFlow.ofAnrLitresPerSecond(40.0), GaugePressure.ofBar(6.2))
        .toolInlet(End.parse("1/4 NPT female"))
        .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
        .outlet(End.parse("3/8 NPT male"))
        .reach(Length.ofMetres(10.0));
    Selection.NothingFits miss = nothing(select(hungry, without("wide")));
    assertThat(of(miss.nearest().get(0), Rule.AIR_AT_TOOL).reason())
        .contains("starves", "does not let the air through");
  }

  @Test
  void a_plug_of_another_profile_does_not_mate() {
    Selection.NothingFits miss = nothing(select(Shelf.job().profile("wren"), Shelf.parts()));
    assertThat(of(miss.nearest().get(0), Rule.PROFILE_MATES).reason())
        .contains("is of profile finch, the shop uses wren");
    List<Part> strangers = List.of(
        Shelf.socket(Shelf.steel("wide"), "finch", "3/8 NPT female", 9.0),
        Shelf.plug(Shelf.steel("a"), "wren", "3/8 NPT female"),
        Shelf.plug(Shelf.steel("b"), "wren", "1/4 NPT male"),
        Shelf.hose(Shelf.steel("hose"), 9.5, 10.0));
    assertThat(of(nothing(select(Shelf.job(), strangers)).nearest().get(0), Rule.PROFILE_MATES)
            .reason())
        .contains("does not take profile wren");
  }

  @Test
  void ends_that_do_not_mate_are_joined_by_the_fewest_adapters() {
    Requirement.Builder half = Shelf.job().outlet(End.parse("1/2 NPT female"));
    Part nipple = Shelf.adapter("nipple", "1/2 NPT male", "3/8 NPT male");
    Part detour = Shelf.adapter("detour", "1/2 NPT male", "1/2 NPT male");
    Proposal best = fitting(select(half, with(detour, nipple))).best();
    Joint joint = best.joints().get(0);
    assertThat(joint.adapters()).extracting(Part::id).containsExactly("nipple");
    assertThat(joint.inWords()).contains("1/2 NPT female", "through part nipple");
    assertThat(Shelf.lines(best)).extracting(Shelf::id).contains("nipple");
    assertThat(best.run().largestFlow(GaugePressure.ofBar(6.2)).map(LargestFlow::massFlow))
        .as("the adapter's bore is in the run")
        .hasValueSatisfying(most -> assertThat(most)
            .isLessThan(fitting(select(Shelf.job(), Shelf.parts()))
                .best()
                .run()
                .largestFlow(GaugePressure.ofBar(6.2))
                .orElseThrow()
                .massFlow()));
  }

  @Test
  void an_adapter_is_turned_round_where_that_helps_and_two_are_stacked_where_one_is_not_enough() {
    Requirement.Builder odd = Shelf.job().outlet(End.parse("1/2 NPT female"));
    Part turned = Shelf.adapter("turned", "3/8 NPT male", "1/2 NPT male");
    assertThat(fitting(select(odd, with(turned))).best().joints().get(0).adapters())
        .hasSize(1);
    Part first = Shelf.adapter("first", "1/2 NPT male", "1/4 NPT female");
    Part second = Shelf.adapter("second", "1/4 NPT male", "3/8 NPT male");
    Proposal best = fitting(select(odd, with(first, second))).best();
    assertThat(best.joints().get(0).adapters())
        .extracting(Part::id)
        .containsExactly("first", "second");
    assertThat(best.cautions()).extracting(Caution::title).contains("Stacked adapters");
  }

  @Test
  void american_and_british_threads_are_never_joined_though_they_run_in() {
    Selection.NothingFits miss =
        nothing(select(Shelf.job().outlet(End.parse("R 3/8 male")), Shelf.parts()));
    Finding ends = of(miss.nearest().get(0), Rule.ENDS_MATE);
    assertThat(ends.outcome()).isEqualTo(RuleOutcome.UNMET);
    assertThat(ends.reason())
        .contains("are not joined")
        .contains("Between them goes an adapter 3/8 NPT male × Rc 3/8 female")
        .doesNotContain("..");
  }

  @Test
  void parts_are_rated_for_the_highest_pressure_that_can_occur() {
    Selection.NothingFits miss =
        nothing(select(Shelf.job().highest(GaugePressure.ofBar(17.0)), Shelf.parts()));
    assertThat(of(miss.nearest().get(0), Rule.PARTS_RATED).reason())
        .contains("17 bar(g)", "too weak", "10 mm hose");
    assertThat(of(
                nothing(select(Shelf.job().highest(GaugePressure.ofBar(16.0)), Shelf.parts()))
                    .nearest()
                    .get(0),
                Rule.PARTS_RATED)
            .outcome())
        .isEqualTo(RuleOutcome.MET);
  }

  @Test
  void a_part_without_a_rating_is_not_sold_and_asked_about_where_it_is_there() {
    PartFacts unmarked = PartFacts.of("unmarked", "unmarked hose");
    List<Part> toBuy = new ArrayList<>(without("10 mm hose"));
    toBuy.add(Shelf.hose(unmarked, 9.5, 10.0));
    assertThat(of(nothing(select(Shelf.job(), toBuy)).nearest().get(0), Rule.PARTS_RATED)
            .reason())
        .contains("ask the maker before selling it");
    List<Part> there = new ArrayList<>(without("10 mm hose"));
    there.add(Shelf.hose(unmarked.asExisting(), 9.5, 10.0));
    Proposal best = fitting(select(Shelf.job(), there)).best();
    assertThat(best.open()).extracting(Finding::rule).containsExactly(Rule.PARTS_RATED);
  }

  @Test
  void a_supply_above_the_tools_rating_is_cured_by_a_regulator_and_no_other_part() {
    Selection.NothingFits miss =
        nothing(select(Shelf.job().toolRating(GaugePressure.ofBar(6.3)), Shelf.parts()));
    assertThat(of(miss.nearest().get(0), Rule.TOOL_RATED).reason())
        .contains("a regulator in front of it must be set to at most 6.3 bar(g)");
    Requirement.Builder untold = Requirement.forTool(
            FreeAirFlow.ofAnrLitresPerSecond(10.0), GaugePressure.ofBar(6.2))
        .toolInlet(End.parse("1/4 NPT female"))
        .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
        .outlet(End.parse("3/8 NPT male"))
        .reach(Length.ofMetres(10.0));
    Proposal best = fitting(select(untold, Shelf.parts())).best();
    assertThat(best.open())
        .as("tool rating, place and kind of air are still to be asked")
        .extracting(Finding::rule)
        .containsExactly(Rule.TOOL_RATED, Rule.MATERIAL_SUITS, Rule.AIR_KEPT_APART);
  }

  @Test
  void a_short_hose_does_not_reach() {
    Selection.NothingFits miss =
        nothing(select(Shelf.job().reach(Length.ofMetres(10.5)), Shelf.parts()));
    assertThat(of(miss.nearest().get(0), Rule.HOSE_REACHES).reason())
        .contains("10 m of hose, 10.5 m needed");
  }

  @Test
  void material_follows_the_place() {
    assertThat(of(fitting(select(Shelf.job().dropped(), Shelf.parts())).best(), Rule.MATERIAL_SUITS)
            .outcome())
        .isEqualTo(RuleOutcome.MET);
    assertThat(of(
                nothing(select(Shelf.job().environment(Environment.OUTDOORS), Shelf.parts()))
                    .nearest()
                    .get(0),
                Rule.MATERIAL_SUITS)
            .reason())
        .contains("of brass, plated brass, plated hardened steel or stainless steel");
    assertThat(of(
                nothing(select(Shelf.job().environment(Environment.WASH_DOWN), Shelf.parts()))
                    .nearest()
                    .get(0),
                Rule.MATERIAL_SUITS)
            .outcome())
        .isEqualTo(RuleOutcome.UNMET);
    assertThat(of(
                nothing(select(Shelf.job().environment(Environment.SPARKING_HAZARD), Shelf.parts()))
                    .nearest()
                    .get(0),
                Rule.MATERIAL_SUITS)
            .reason())
        .contains("must be of brass");
    assertThat(of(
                nothing(select(
                        Shelf.job().environment(Environment.SPARKING_HAZARD).dropped(),
                        Shelf.parts()))
                    .nearest()
                    .get(0),
                Rule.MATERIAL_SUITS)
            .reason())
        .contains("one of the two must give");
    assertThat(of(fitting(select(Shelf.job(), Shelf.parts())).best(), Rule.MATERIAL_SUITS)
            .outcome())
        .isEqualTo(RuleOutcome.DOES_NOT_APPLY);
  }

  @Test
  void a_dragged_hose_wants_a_guarded_sleeve() {
    assertThat(of(
                nothing(select(Shelf.job().dragged(), Shelf.parts())).nearest().get(0),
                Rule.SLEEVE_GUARDED)
            .reason())
        .contains("open sleeve");
    Part guarded =
        Shelf.socket(Shelf.steel("guarded").withSleeveGuarded(), "finch", "3/8 NPT female", 8.0);
    Proposal best = fitting(select(Shelf.job().dragged(), with(guarded))).best();
    assertThat(best.socket("tool").id()).isEqualTo("guarded");
  }

  @Test
  void vented_couplings_are_found_where_they_are_asked_for() {
    assertThat(of(
                nothing(select(Shelf.job().ventRequired(), Shelf.parts()))
                    .nearest()
                    .get(0),
                Rule.VENTED)
            .reason())
        .startsWith("Not vented: ");
    Part vented = Shelf.socket(Shelf.steel("vented").withVent(), "finch", "3/8 NPT female", 8.0);
    assertThat(fitting(select(Shelf.job().ventRequired(), with(vented)))
            .best()
            .socket("outlet")
            .id())
        .isEqualTo("vented");
  }

  @Test
  void hoses_of_lubricated_lines_stay_off_dry_ones() {
    List<Part> oily = new ArrayList<>(without("10 mm hose"));
    oily.add(Shelf.hose(Shelf.steel("oily").withLubrication(Lubrication.LUBRICATED), 9.5, 10.0));
    assertThat(of(nothing(select(Shelf.job(), oily)).nearest().get(0), Rule.AIR_KEPT_APART)
            .reason())
        .contains("The line is dry", "oily");
    assertThat(fitting(select(Shelf.job().lubrication(Lubrication.LUBRICATED), oily))
            .best()
            .fits())
        .isTrue();
  }

  @Test
  void a_socket_and_a_plug_that_stay_are_not_replaced() {
    Part.Socket wall =
        Shelf.socket(Shelf.steel("stays").asExisting(), "finch", "3/8 NPT female", 7.0);
    Part.Plug plug = Shelf.plug(Shelf.steel("tool's own").asExisting(), "finch", "1/4 NPT male");
    Selection.Proposals answer =
        fitting(select(Shelf.job().outletSocket(wall).toolPlug(plug), Shelf.parts()));
    assertThat(answer.proposals()).allSatisfy(p -> {
      assertThat(p.socket("outlet")).isEqualTo(wall);
      assertThat(p.plug("tool")).isEqualTo(plug);
    });
  }

  @Test
  void a_catalogue_without_a_kind_of_part_says_what_is_missing() {
    Selection.NothingFits none = nothing(select(Shelf.job(), List.<Part>of()));
    assertThat(none.nearest()).isEmpty();
    assertThat(none.toGive()).hasSize(2);
    assertThat(none.working().toText()).contains("no hose");
    assertThat(none.<String>fold(f -> "fits", n -> "nothing")).isEqualTo("nothing");
  }

  /** More than a quarter of a million combinations, which were refused before they were searched. */
  @Test
  void a_large_catalogue_is_searched_and_the_best_are_listed() {
    List<Part> many = new ArrayList<>(Shelf.parts());
    for (int i = 0; i < 60; i++) {
      many.add(Shelf.socket(Shelf.steel("s" + i), "finch", "3/8 NPT female", 5.0 + 0.05 * i));
      many.add(Shelf.plug(Shelf.steel("p" + i), "finch", "3/8 NPT female"));
      many.add(Shelf.hose(Shelf.steel("h" + i), 9.0 + 0.01 * i, 10.0));
    }
    Selection.Proposals answer = fitting(select(Shelf.job(), many));
    assertThat(answer.proposals()).hasSize(Selection.LISTED);
    assertThat(answer.best().hose("hose").id()).isEqualTo("h59");
    assertThat(answer.best().socket("outlet").id()).isEqualTo("wide");
    assertThat(answer.best().socket("tool").id()).isEqualTo("wide");
    assertThat(answer.best().plug("outlet").id()).as("the first by name").isEqualTo("hose plug");
    assertThat(answer.whyBest()).startsWith("Of all combinations that meet every rule");
    assertThat(nothing(select(Shelf.job().reach(Length.ofMetres(11.0)), many)).nearest())
        .hasSize(Selection.LISTED);
  }

  /** The widest adapter has no rating: it would spoil what the rated one mends. */
  @Test
  void an_adapter_that_breaks_no_rule_is_preferred_to_a_wider_one_that_does() {
    Requirement.Builder half = Shelf.job().outlet(End.parse("1/2 NPT female"));
    Part.Adapter rated = Shelf.adapter("rated", "1/2 NPT male", "3/8 NPT male");
    Part.Adapter wider = new Part.Adapter(
        PartFacts.of("wider", "wider"),
        rated.one(),
        rated.other(),
        rated.conduit().withBore(Length.ofMillimetres(12.0)));
    assertThat(fitting(select(half, with(wider, rated))).best().joints().get(0).adapters())
        .containsExactly(rated);
    Selection.NothingFits miss = nothing(select(half, with(wider)));
    assertThat(miss.nearest().get(0).unmet())
        .extracting(Finding::rule)
        .containsExactly(Rule.PARTS_RATED);
  }

  @Test
  void cautions_come_with_the_parts_and_the_last_defers_to_codes_and_makers() {
    Proposal best = fitting(select(Shelf.job().impactTool(), Shelf.parts())).best();
    assertThat(best.cautions())
        .extracting(Caution::title)
        .contains(
            "Depressurise before uncoupling",
            "Connection restraint",
            "Whip hose",
            "Sealant on taper threads")
        .endsWith("Before anyone connects this");
    assertThat(fitting(select(Shelf.job(), Shelf.parts())).best().cautions())
        .extracting(Caution::title)
        .doesNotContain("Whip hose");
  }

  @Test
  void a_hose_above_half_an_inch_calls_for_protection_against_its_failure() {
    List<Part> wide = new ArrayList<>(without("10 mm hose"));
    wide.add(Shelf.hose(Shelf.steel("19 mm hose"), 19.0, 10.0));
    assertThat(fitting(select(Shelf.job(), wide)).best().cautions())
        .extracting(Caution::title)
        .contains("Hose failure protection");
    assertThat(fitting(select(Shelf.job(), Shelf.parts())).best().cautions())
        .extracting(Caution::title)
        .doesNotContain("Hose failure protection");
  }

  @Test
  void working_holds_every_rule_and_the_run() {
    Selection.Proposals answer = fitting(select(Shelf.job(), Shelf.parts()));
    String text = answer.working().toText();
    for (Rule rule : Rule.values()) {
      assertThat(text).contains(rule.title());
      assertThat(rule.source().citation()).isNotBlank();
    }
    assertThat(text).contains("Reynolds number");
    assertThat(answer.<String>fold(f -> "fits", n -> "nothing")).isEqualTo("fits");
    assertThat(answer.best()).asString().contains("part wide + part hose plug + part 10 mm hose");
  }

  @Test
  void working_speaks_us_units_where_they_are_asked_for() {
    Selection.Proposals answer = fitting(select(Shelf.job(), Shelf.parts()));
    assertThat(answer.best().findings(UnitSystem.US))
        .extracting(Finding::outcome)
        .isEqualTo(answer.best().findings().stream().map(Finding::outcome).toList());
    assertThat(answer.working(UnitSystem.US).toText())
        .contains("psig", "it needs 89.9 psig at ", "ft of hose", "No rule is broken.")
        .doesNotContain("bar(g)");
    Selection nothing = select(Shelf.job().reach(Length.ofMetres(10.5)), Shelf.parts());
    assertThat(nothing.working(UnitSystem.US).toText())
        .contains("32.8 ft of hose", "Not met: Hose reaches.", "No combination of parts meets")
        .doesNotContain("bar(g)");
    assertThat(nothing.working().toText()).contains("10 m of hose").doesNotContain("psi");
  }

  @Test
  void a_lone_combination_says_so() {
    assertThat(fitting(select(Shelf.job(), without("narrow"))).whyBest()).contains("bar(g)");
    List<Part> lone = List.of(
        Shelf.socket(Shelf.steel("wide"), "finch", "3/8 NPT female", 9.0),
        Shelf.plug(Shelf.steel("hose plug"), "finch", "3/8 NPT female"),
        Shelf.hose(Shelf.steel("10 mm hose"), 9.5, 10.0));
    Part.Plug fixed = Shelf.plug(Shelf.steel("tool plug").asExisting(), "finch", "1/4 NPT male");
    assertThat(fitting(select(Shelf.job().toolPlug(fixed), lone)).whyBest())
        .startsWith("It is the only combination");
  }

  @Test
  void the_piping_to_the_outlet_has_its_share_of_the_pressure_loss() {
    Conduit pipe =
        Conduit.of(Length.ofMillimetres(20.9), Length.ofMetres(30.0), Length.ofMillimetres(0.045));
    Proposal piped =
        fitting(select(Shelf.job().pipe("pipe", pipe), Shelf.parts())).best();
    Proposal bare = fitting(select(Shelf.job(), Shelf.parts())).best();
    assertThat(Shelf.pascalsAtTool(piped)).isLessThan(Shelf.pascalsAtTool(bare));
    assertThat(Optional.of(piped.requirement().toOutlet().stillAir())).contains(Shelf.SUPPLY);
  }

  /** A pipe that happens to be called like the hose must not lend it its loss. */
  @Test
  void the_pressure_loss_of_the_hose_is_its_own_whatever_the_pipe_is_called() {
    Conduit pipe =
        Conduit.of(Length.ofMillimetres(20.9), Length.ofMetres(5.0), Length.ofMillimetres(0.045));
    Proposal best = fitting(select(Shelf.job().pipe("part 10 mm hose", pipe), Shelf.parts()))
        .best();
    String loss = best.result()
        .<String>fold(
            delivered -> delivered.shares().get(2).drop().format(PressureUnit.BAR, 2),
            starved -> "none");
    assertThat(best.result()
            .<String>fold(
                delivered -> delivered.shares().get(0).drop().format(PressureUnit.BAR, 2),
                starved -> "none"))
        .as("the pipe's")
        .isNotEqualTo(loss);
    assertThat(Shelf.lines(best))
        .filteredOn(line -> Shelf.id(line).endsWith("hose"))
        .singleElement()
        .extracting(BillLine::reason)
        .asString()
        .endsWith("pressure loss " + loss);
  }
}
