package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import org.airfit.flow.CapacityRange;
import org.airfit.flow.FlowCapacity;
import org.airfit.joint.End;
import org.airfit.line.ConduitRange;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.Money;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Range;
import org.airfit.quantity.SonicConductance;
import org.airfit.run.ElementLoss;
import org.airfit.run.RunResult;
import org.airfit.source.Source;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the rules on couplings, joints, ratings, air and reach say, compared whole, and why the best stands first. */
class RulesInWordsTest {

  private static PartFacts facts(String id) {
    return PartFacts.of(id, id)
        .withRating(GaugePressure.ofBar(16.0))
        .withMaterial(Material.HARDENED_STEEL);
  }

  private static FlowCapacity capacity(double c) {
    return FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(c), 0.3);
  }

  private static Part.Socket socket(PartFacts facts, String... profiles) {
    return new Part.Socket(facts, Set.of(profiles), End.parse("3/8 NPT female"), capacity(9.0));
  }

  private static Part.Plug hosePlug(PartFacts facts, String profile) {
    return Shelf.plug(facts, profile, "3/8 NPT female");
  }

  private static Part.Plug toolPlug(PartFacts facts, String profile) {
    return Shelf.plug(facts, profile, "1/4 NPT male");
  }

  private static Part.Hose hose(PartFacts facts) {
    return Shelf.hose(facts, 9.5, 10.0);
  }

  private static List<Part> usual() {
    return List.of(
        socket(facts("socket"), "finch"),
        hosePlug(facts("hose plug"), "finch"),
        toolPlug(facts("tool plug"), "finch"),
        hose(facts("hose")));
  }

  /** The usual parts with others in place of those that bear the same id. */
  private static List<Part> usualWith(Part... others) {
    List<Part> parts = new ArrayList<>(usual());
    for (Part other : others) {
      parts.removeIf(part -> part.id().equals(other.id()));
      parts.add(other);
    }
    return parts;
  }

  private static Proposal shown(Requirement.Builder job, List<? extends Part> parts) {
    return Selection.of(job.build(), Catalogue.of(parts))
        .fold(Selection.Proposals::best, miss -> miss.closest().get(0));
  }

  private static String said(Proposal proposal, Rule rule) {
    return proposal.findings().stream()
        .filter(each -> each.rule() == rule)
        .findFirst()
        .orElseThrow()
        .toString();
  }

  private static String said(Requirement.Builder job, List<? extends Part> parts, Rule rule) {
    return said(shown(job, parts), rule);
  }

  private static Requirement.Builder laid(Slot... slots) {
    return Requirement.forTool(FreeAirFlow.ofAnrLitresPerSecond(10.0), GaugePressure.ofBar(5.0))
        .toolRating(GaugePressure.ofBar(7.5))
        .toolInlet(End.parse("3/8 NPT female"))
        .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
        .outlet(End.parse("3/8 NPT female"))
        .environment(Environment.INDOORS)
        .lubrication(Lubrication.DRY)
        .layout(Layout.of(List.of(slots)));
  }

  private static final Slot.Hose HOSE = Slot.hose("hose", Length.ofMetres(10.0));

  private static String atTool(Proposal proposal) {
    return UnitSystem.SI.say(GaugePressure.ofPascals(Shelf.pascalsAtTool(proposal)));
  }

  @Test
  void profiles_that_mate_are_named_at_each_coupling_and_strangers_by_part() {
    String rule = "Profiles mate: ";
    assertThat(said(Shelf.job(), usual(), Rule.PROFILE_MATES))
        .isEqualTo(rule
            + "met. At the outlet coupling profile finch, at the tool coupling profile finch.");
    assertThat(said(laid(HOSE), usual(), Rule.PROFILE_MATES))
        .isEqualTo(rule + "does not apply. There is no coupling in this run.");
    assertThat(said(Shelf.job().profile("wren"), usual(), Rule.PROFILE_MATES))
        .isEqualTo(
            rule + "NOT MET. hose plug is of profile finch, the shop uses wren. tool plug is of"
                + " profile finch, the shop uses wren.");
    assertThat(said(
            Shelf.job(),
            usualWith(hosePlug(facts("hose plug"), "wren"), toolPlug(facts("tool plug"), "wren")),
            Rule.PROFILE_MATES))
        .isEqualTo(rule
            + "NOT MET. socket does not take profile wren. socket does not take profile wren.");
  }

  @Test
  void couplings_that_must_be_of_one_profile_and_are_not_are_named_with_both() {
    Slot.Coupling outlet = Slot.coupling("outlet").withPlug(hosePlug(facts("hose plug"), "finch"));
    Slot.Coupling tool = Slot.coupling("tool")
        .ofSameProfileAs("outlet")
        .withPlug(toolPlug(facts("tool plug"), "wren"));
    assertThat(said(
            laid(outlet, HOSE, tool)
                .outlet(End.parse("3/8 NPT male"))
                .toolInlet(End.parse("1/4 NPT female")),
            usualWith(socket(facts("socket"), "finch", "wren")),
            Rule.PROFILE_MATES))
        .isEqualTo("Profiles mate: NOT MET. tool plug is of profile wren, the outlet coupling of"
            + " finch, and both must be the same.");
  }

  @Test
  void every_profile_that_the_first_socket_does_not_take_is_named_in_order() {
    String rule = "Socket takes every plug in use: ";
    assertThat(said(Shelf.job(), usual(), Rule.PROFILES_IN_USE))
        .isEqualTo(rule + "does not apply. The job does not name several profiles.");
    assertThat(
            said(laid(HOSE).profilesInUse(Set.of("finch", "wren")), usual(), Rule.PROFILES_IN_USE))
        .isEqualTo(rule + "does not apply. There is no coupling in this run.");
    Requirement.Builder three = Shelf.job().profilesInUse(Set.of("finch", "wren", "owl"));
    assertThat(said(three, usual(), Rule.PROFILES_IN_USE))
        .isEqualTo(rule + "NOT MET. socket does not take owl, wren.");
    assertThat(said(
            three,
            usualWith(socket(facts("socket"), "finch", "wren", "owl", "crow")),
            Rule.PROFILES_IN_USE))
        .isEqualTo(rule + "met. socket takes them all.");
  }

  @Test
  void joints_are_told_the_way_the_air_goes_straight_or_through_adapters() {
    assertThat(said(Shelf.job(), usual(), Rule.ENDS_MATE))
        .isEqualTo(
            "Ends mate: met. outlet to socket: 3/8 NPT male straight to 3/8 NPT female; plug to hose:"
                + " 3/8 NPT female straight to 3/8 NPT male; hose to socket: 3/8 NPT male straight to 3/8 NPT"
                + " female; plug to tool: 1/4 NPT male straight to 1/4 NPT female.");
    Part.Adapter one = new Part.Adapter(
        facts("one"),
        End.parse("1/2 NPT male"),
        End.parse("1/4 NPT female"),
        Shelf.adapter("x", "3/8 NPT male", "3/8 NPT male").conduit());
    Part.Adapter two = new Part.Adapter(
        facts("two"), End.parse("1/4 NPT male"), End.parse("3/8 NPT male"), one.conduit());
    assertThat(said(
            Shelf.job().outlet(End.parse("1/2 NPT female")), usualWith(one, two), Rule.ENDS_MATE))
        .startsWith(
            "Ends mate: met. outlet to socket: 1/2 NPT female to 3/8 NPT female through one and two;"
                + " plug to hose: ");
    Part.Socket straight = Shelf.socket(facts("socket"), "finch", "3/8 NPSC female", 9.0);
    assertThat(said(Shelf.job(), usualWith(straight), Rule.ENDS_MATE))
        .startsWith("Ends mate: ask. outlet to socket: 3/8 NPT male straight to 3/8 NPSC female; ")
        .endsWith(
            "; plug to tool: 1/4 NPT male straight to 1/4 NPT female. A straight coupling thread is"
                + " meant for low pressure: ask its maker for a rating for compressed air.");
  }

  private static PartFacts unmarked(String id) {
    return PartFacts.of(id, id).withMaterial(Material.HARDENED_STEEL);
  }

  @Test
  void the_weakest_rating_is_told_and_what_is_too_weak_or_unmarked_is_named_once() {
    String rule = "Parts are rated: ";
    Part.Socket weaker = socket(facts("socket").withRating(GaugePressure.ofBar(7.0)), "finch");
    assertThat(said(Shelf.job(), usualWith(weaker), Rule.PARTS_RATED))
        .isEqualTo(rule + "met. Up to 7 bar(g) can occur; the weakest part is rated for 7 bar(g).");
    Part.Socket weak = socket(facts("socket").withRating(GaugePressure.ofBar(6.9)), "finch");
    assertThat(said(Shelf.job(), usualWith(weak), Rule.PARTS_RATED))
        .isEqualTo(
            rule + "NOT MET. Up to 7 bar(g) can occur; too weak: socket. Take parts of a higher"
                + " rating, or see to it that less can occur.");
    assertThat(said(Shelf.job(), usualWith(socket(unmarked("socket"), "finch")), Rule.PARTS_RATED))
        .isEqualTo(
            rule + "NOT MET. No rating is known of socket; ask the maker before selling it.");
    assertThat(said(
            Shelf.job(),
            usualWith(
                socket(unmarked("socket").asExisting(), "finch"),
                hose(unmarked("hose").asExisting())),
            Rule.PARTS_RATED))
        .isEqualTo(rule
            + "ask. No rating is known of socket, hose, which the customer has already: find the"
            + " marking, ask the maker, or replace it.");
  }

  private static Requirement.Builder untoldTool() {
    return Requirement.forTool(FreeAirFlow.ofAnrLitresPerSecond(10.0), GaugePressure.ofBar(6.2))
        .toolInlet(End.parse("1/4 NPT female"))
        .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
        .outlet(End.parse("3/8 NPT male"))
        .reach(Length.ofMetres(10.0));
  }

  @Test
  void what_stands_at_a_tool_that_takes_no_air_is_told_beside_its_limit() {
    String rule = "Tool is not over-pressured: ";
    assertThat(said(Shelf.job(), usual(), Rule.TOOL_RATED))
        .isEqualTo(
            rule + "met. The dead-end pressure at the tool is up to 7 bar(g), its maker allows"
                + " 7.5 bar(g).");
    assertThat(said(Shelf.job().highest(GaugePressure.ofBar(8.0)), usual(), Rule.TOOL_RATED))
        .isEqualTo(rule
            + "NOT MET. The dead-end pressure at the tool is up to 8 bar(g), its maker allows"
            + " 7.5 bar(g): a regulator in front of it must be set to at most 7.5 bar(g); couplings,"
            + " hoses and adapters do not change that.");
    Requirement.Builder regulated =
        Shelf.job().highest(GaugePressure.ofBar(8.0)).regulated();
    assertThat(said(regulated, usual(), Rule.TOOL_RATED))
        .isEqualTo(
            rule + "met while the regulator holds. The dead-end pressure at the tool is 7 bar(g)"
                + " while the regulator holds and 8 bar(g) if it fails, its maker allows 7.5 bar(g). A"
                + " relief valve behind the regulator, set to at most what the maker allows, guards the tool"
                + " if the regulator fails.");
    assertThat(said(regulated.toolRating(GaugePressure.ofBar(8.0)), usual(), Rule.TOOL_RATED))
        .as("it stands the failure too")
        .isEqualTo(
            rule + "met. The dead-end pressure at the tool is 7 bar(g) while the regulator holds"
                + " and 8 bar(g) if it fails, its maker allows 8 bar(g).");
    assertThat(said(untoldTool(), usual(), Rule.TOOL_RATED))
        .isEqualTo(
            rule + "ask. Ask for the highest pressure that the tool's maker allows. The dead-end"
                + " pressure at the tool is up to 7 bar(g).");
  }

  /** A range that is marked is no limit: up to its end the tool works, and beyond somebody must be asked. */
  @Test
  void the_end_of_a_range_that_is_marked_on_a_tool_is_asked_about_where_more_can_occur() {
    String rule = "Tool is not over-pressured: ";
    assertThat(said(untoldTool().markedUpTo(GaugePressure.ofBar(6.5)), usual(), Rule.TOOL_RATED))
        .isEqualTo(
            rule + "ask. Ask whether the 6.5 bar(g) that end the range marked on the tool are"
                + " the highest that its maker allows, or what else is. The dead-end pressure at the tool is"
                + " up to 7 bar(g). If they are the limit, a regulator in front of the tool must be set to at"
                + " most 6.5 bar(g).");
    assertThat(said(untoldTool().markedUpTo(GaugePressure.ofBar(7.0)), usual(), Rule.TOOL_RATED))
        .isEqualTo(
            rule + "met. The dead-end pressure at the tool is up to 7 bar(g), and the tool is"
                + " marked for up to 7 bar(g).");
    assertThat(said(
            untoldTool()
                .markedUpTo(GaugePressure.ofBar(7.0))
                .highest(GaugePressure.ofBar(8.0))
                .regulated(),
            usual(),
            Rule.TOOL_RATED))
        .isEqualTo(rule + "ask. Ask whether the 7 bar(g) that end the range marked on the tool are"
            + " the highest that its maker allows, or what else is. The dead-end pressure at the tool is"
            + " 7 bar(g) while the regulator holds and 8 bar(g) if it fails. If they are the limit, they"
            + " are kept only while the regulator holds: a relief valve behind it, set to at most that,"
            + " guards the tool then.");
    assertThat(said(
            untoldTool().markedUpTo(GaugePressure.ofBar(6.5)).toolRating(GaugePressure.ofBar(7.5)),
            usual(),
            Rule.TOOL_RATED))
        .as("once the limit is told it alone counts")
        .isEqualTo(rule + "met. The dead-end pressure at the tool is up to 7 bar(g), its maker"
            + " allows 7.5 bar(g).");
  }

  private static Part.Regulator regulator(String id) {
    return new Part.Regulator(
        facts(id),
        capacity(12.0),
        PressureDrop.ofBar(0.1),
        FreeAirFlow.ofAnrLitresPerSecond(10.0),
        End.parse("3/8 NPT female"),
        End.parse("3/8 NPT female"));
  }

  @Test
  void two_regulators_are_told_as_two_whether_both_stand_in_the_run_or_one_in_front_of_it() {
    Slot.Regulated first = Slot.regulator("first", GaugePressure.ofBar(6.8)).with(regulator("r1"));
    Slot.Regulated second =
        Slot.regulator("second", GaugePressure.ofBar(6.5)).with(regulator("r2"));
    Part.Adapter nipple = new Part.Adapter(
        facts("nipple"),
        End.parse("3/8 NPT male"),
        End.parse("3/8 NPT male"),
        Shelf.adapter("x", "3/8 NPT male", "3/8 NPT male").conduit());
    List<Part> parts = usualWith(nipple);
    String stands = ". The dead-end pressure at the tool is 6.5 bar(g) while the regulator";
    String rule = "Tool is not over-pressured: met while the regulators hold" + stands;
    assertThat(said(
            laid(first, second, HOSE).toolRating(GaugePressure.ofBar(6.9)), parts, Rule.TOOL_RATED))
        .isEqualTo(rule
            + "s hold and 7 bar(g) if they fail, its maker allows 6.9 bar(g). A relief valve"
            + " behind the last regulator, set to at most what the maker allows, guards the tool if they"
            + " fail.");
    assertThat(said(
            laid(second, HOSE)
                .highest(GaugePressure.ofBar(7.2))
                .regulated()
                .toolRating(GaugePressure.ofBar(6.9)),
            parts,
            Rule.TOOL_RATED))
        .startsWith(rule + "s hold and 7.2 bar(g) if they fail,");
    assertThat(
            said(laid(second, HOSE).toolRating(GaugePressure.ofBar(6.9)), parts, Rule.TOOL_RATED))
        .startsWith("Tool is not over-pressured: met while the regulator holds" + stands
            + " holds and 7 bar(g) if it fails,");
  }

  @Test
  void the_air_at_the_tool_is_told_with_what_it_needs() {
    String rule = "Air at the tool: ";
    Proposal met = shown(Shelf.job(), usual());
    assertThat(said(met, Rule.AIR_AT_TOOL))
        .isEqualTo(
            rule + "met. The tool has " + atTool(met) + ", it needs 6.2 bar(g) at 10 L/s ANR.");
    Part.Hose narrow = Shelf.hose(facts("hose"), 6.5, 10.0);
    Proposal weak = shown(Shelf.job(), usualWith(narrow));
    assertThat(said(weak, Rule.AIR_AT_TOOL))
        .isEqualTo(rule + "NOT MET. The tool has only " + atTool(weak)
            + ", it needs 6.2 bar(g) at 10 L/s ANR. The biggest restriction is hose. Without its"
            + " loss the tool would gain most: " + gain(weak.result()) + ".");
    Proposal starved = shown(Shelf.job(), usualWith(Shelf.hose(facts("hose"), 2.0, 10.0)));
    assertThat(said(starved, Rule.AIR_AT_TOOL))
        .isEqualTo(
            rule + "NOT MET. The tool starves: hose does not let the air through, it needs 6.2"
                + " bar(g) at 10 L/s ANR.");
  }

  /** The supply stands at 8 bar(a), the atmosphere at 1 bar(a). */
  @Test
  void a_supply_below_what_the_tool_needs_is_what_holds_the_air_back() {
    for (double needed : List.of(7.0, 7.1)) {
      Requirement.Builder job = Requirement.forTool(
              FreeAirFlow.ofAnrLitresPerSecond(10.0), GaugePressure.ofBar(needed))
          .toolInlet(End.parse("1/4 NPT female"))
          .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
          .outlet(End.parse("3/8 NPT male"))
          .reach(Length.ofMetres(10.0));
      assertThat(said(shown(job, usual()), Rule.AIR_AT_TOOL))
          .startsWith("Air at the tool: NOT MET. The tool has only ")
          .endsWith(
              needed < 7.05
                  ? " The supply itself stands at just the 7 bar(g) that the tool needs, and every part"
                      + " loses some: couplings, hoses and adapters do not change that."
                  : " The supply itself stands at only 7 bar(g): couplings, hoses and adapters do"
                      + " not change that.");
    }
  }

  @Test
  void a_regulator_that_is_set_too_low_is_what_holds_the_air_back() {
    Part.Adapter nipple = new Part.Adapter(
        facts("nipple"),
        End.parse("3/8 NPT male"),
        End.parse("3/8 NPT male"),
        Shelf.adapter("x", "3/8 NPT male", "3/8 NPT male").conduit());
    for (double set : List.of(4.9, 5.0)) {
      Slot.Regulated at =
          Slot.regulator("regulator", GaugePressure.ofBar(set)).with(regulator("r1"));
      Proposal low = shown(laid(at, HOSE), usualWith(nipple));
      assertThat(said(low, Rule.AIR_AT_TOOL))
          .startsWith("Air at the tool: NOT MET. The tool has only " + atTool(low))
          .endsWith(
              set < 5.0
                  ? " The regulator holds only 4.9 bar(g): couplings, hoses and adapters do not"
                      + " change that."
                  : " The regulator holds just the 5 bar(g) that the tool needs, and every part loses some:"
                      + " couplings, hoses and adapters do not change that.");
    }
  }

  private static Part.Socket ranged(double least, double most) {
    return new Part.Socket(
        facts("socket"),
        Set.of("finch"),
        End.parse("3/8 NPT female"),
        new CapacityRange(capacity(least), capacity(most), Source.derived("made up")));
  }

  @Test
  void what_is_not_known_is_told_at_worst_and_at_best() {
    Proposal met = shown(Shelf.job(), usualWith(ranged(9.0, 12.0)));
    assertThat(said(met, Rule.AIR_AT_TOOL))
        .as("rounded down: it is said to have so much at least")
        .isEqualTo("Air at the tool: met. The tool has at least "
            + met.result()
                .fold(
                    delivered -> UnitSystem.SI.sayAtLeast(delivered.atToolGauge()),
                    starved -> "none")
            + ", it needs 6.2 bar(g) at 10 L/s ANR.");
    Requirement.Builder more = Requirement.forTool(
            new Range<>(
                FreeAirFlow.ofAnrLitresPerSecond(20.0), FreeAirFlow.ofAnrLitresPerSecond(22.0)),
            new Range<>(GaugePressure.ofBar(6.0), GaugePressure.ofBar(6.2)))
        .toolRating(GaugePressure.ofBar(7.5))
        .toolInlet(End.parse("1/4 NPT female"))
        .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
        .outlet(End.parse("3/8 NPT male"))
        .reach(Length.ofMetres(10.0));
    Proposal miss = shown(more, usual());
    String best = miss.resultAtBest()
        .fold(delivered -> UnitSystem.SI.sayAtMost(delivered.atToolGauge()), starved -> "none");
    assertThat(said(miss, Rule.AIR_AT_TOOL))
        .isEqualTo("Air at the tool: NOT MET. The tool has only " + best
            + " at best, it needs 6 bar(g) to 6.2 bar(g) at 20 L/s ANR to 22 L/s ANR. The"
            + " biggest restriction is hose. Without its loss the tool would gain most: "
            + gain(miss.resultAtBest()) + ".");
  }

  /** What the tool gains without the hose, which is the biggest of all gains. */
  private static String gain(RunResult result) {
    return result.fold(
        delivered -> UnitSystem.SI.say(delivered.shares().stream()
            .map(ElementLoss::gain)
            .max(Comparator.naturalOrder())
            .orElseThrow()),
        starved -> "none");
  }

  /** At worst the hose chokes: nothing at all arrives, and how wide it is settles it. */
  @Test
  void where_no_air_arrives_at_worst_the_one_thing_that_settles_it_is_asked_for() {
    Part.Hose narrow = Shelf.hose(facts("hose"), 2.0, 10.0);
    Part.Hose wide = hose(facts("hose"));
    Part.Hose either = new Part.Hose(
        wide.facts(),
        wide.bore(),
        new ConduitRange(narrow.conduit(), wide.conduit(), Source.derived("made up")),
        wide.upstream(),
        wide.downstream());
    Proposal open = shown(Shelf.job(), usualWith(either));
    assertThat(said(open, Rule.AIR_AT_TOOL))
        .isEqualTo("Air at the tool: ask. It depends: the tool has from no air at all to "
            + atTool(shown(Shelf.job(), usual()))
            + ", it needs 6.2 bar(g) at 10 L/s ANR. It is enough if the bore of hose is "
            + open.doubts().get(0).enoughIf(UnitSystem.SI).orElseThrow()
            + " (2 to 9.5 mm told): ask for it.");
    Selection.Proposals answer =
        (Selection.Proposals) Selection.of(Shelf.job().build(), Catalogue.of(usualWith(either)));
    assertThat(answer.whyBest())
        .as("it agrees with what the rule says")
        .endsWith(", from no air at worst to " + atTool(shown(Shelf.job(), usual()))
            + " at best at the tool.");
  }

  /** The federal rules allow 20 psig at a blocked nozzle; the advice of the works is 10. */
  @Test
  void advice_that_is_not_kept_beside_laws_that_are_is_told_as_advice() {
    Requirement.Builder gun = Shelf.job()
        .rules(OwnRulesTest.own("cleaning pressure,<=,10,psi,advises against,,"))
        .blowGun(GaugePressure.ofPsi(20.0));
    assertThat(said(gun, usual(), Rule.CLEANING_PRESSURE))
        .startsWith("Cleaning pressure is kept down: ask. ")
        .endsWith(" That is advice, not law: ask what holds at this place.");
  }

  /** Two of 10 m reach 10.01 m to 12 m. */
  private static final String JOINED =
      " 2 × hose reach when they are joined: put so many hoses into the line,"
          + " with a coupling between two, and see what air is left.";

  /** The hose of 10 m has air enough, but 12 m of it were not reckoned; 4 of it reach 40 m, and 5 are not advised. */
  @Test
  void with_a_hose_that_is_too_short_the_air_is_no_answer() {
    Requirement.Builder far = Shelf.job().reach(Length.ofMetres(12.0));
    String air = said(far, usual(), Rule.AIR_AT_TOOL);
    assertThat(air)
        .startsWith("Air at the tool: ask. With a hose that is too short the tool has ")
        .endsWith(" What the length that is lacking loses is not reckoned.");
    assertThat(said(Shelf.job().reach(Length.ofMetres(40.0)), usual(), Rule.HOSE_REACHES))
        .contains(" 4 × hose reach when they are joined: ");
    assertThat(said(Shelf.job().reach(Length.ofMetres(40.1)), usual(), Rule.HOSE_REACHES))
        .endsWith(" needed: too short.");
  }

  @Test
  void the_lengths_of_all_hoses_are_told_beside_what_is_needed() {
    String rule = "Hose reaches: ";
    assertThat(said(Shelf.job(), usual(), Rule.HOSE_REACHES))
        .isEqualTo(rule + "met. 10 m of hose, 10 m needed.");
    assertThat(said(Shelf.job().reach(Length.ofMetres(10.5)), usual(), Rule.HOSE_REACHES))
        .isEqualTo(rule + "NOT MET. 10 m of hose, 10.5 m needed: too short." + JOINED);
    assertThat(said(
            laid(Slot.coupling("outlet"))
                .outlet(End.parse("3/8 NPT male"))
                .toolInlet(End.parse("3/8 NPT male")),
            usual(),
            Rule.HOSE_REACHES))
        .isEqualTo(rule + "does not apply. There is no hose in this run.");
  }

  /** Of two hoses the one that is too short is told beside its length, though it stands first. */
  @Test
  void of_several_hoses_the_one_that_is_too_short_is_told() {
    assertThat(said(
            laid(
                    Slot.hose("long hose", Length.ofMetres(11.0)),
                    Slot.hose("inlet hose", Length.ofMetres(1.0)))
                .outlet(End.parse("3/8 NPT female"))
                .toolInlet(End.parse("3/8 NPT female")),
            usual(),
            Rule.HOSE_REACHES))
        .isEqualTo("Hose reaches: NOT MET. 10 m of hose, 11 m needed: too short; 10 m of hose, 1 m"
            + " needed." + JOINED);
  }

  /** A hose of which one length is wanted, neither more nor less, is not needed to be so long. */
  @Test
  void a_length_that_is_looked_for_is_not_told_as_needed() {
    Slot.Hose ten = Slot.hose("hose", Length.ofMetres(10.0)).ofAtMost(Length.ofMetres(10.0));
    assertThat(said(
            laid(ten).outlet(End.parse("3/8 NPT female")).toolInlet(End.parse("3/8 NPT female")),
            usual(),
            Rule.HOSE_REACHES))
        .isEqualTo("Hose reaches: met. 10 m of hose, the length looked for.");
  }

  /** The hose has 10 m: it reaches whatever it is, or not, or it turns at the 10 m. */
  @ParameterizedTest
  @CsvSource(delimiter = '|', textBlock = """
      8 to 10 m    | met. 10 m of hose, 8 m to 10 m needed.
      8 to 10.01 m | ask. 10 m of hose, 8 m to 10.01 m needed. It turns at 10 m…
      10 to 12 m   | ask. 10 m of hose, 10 m to 12 m needed. It turns at 10 m…
      10.01 to 12 m | NOT MET. 10 m of hose, 10.01 m to 12 m needed: too short.+
      """)
  void a_reach_that_is_a_range_is_met_broken_or_turns_at_the_length_of_the_hose(
      String reach, String said) {
    assertThat(
            said(Shelf.job().reach(Range.parse(reach, Length::parse)), usual(), Rule.HOSE_REACHES))
        .isEqualTo("Hose reaches: "
            + said.replace("…", ": up to there it reaches. Measure how far it is.")
                .replace("+", JOINED));
  }

  /** The regulator holds too little beside its droop: what is told to hold the air back is a part behind it. */
  @Test
  void behind_a_regulator_the_biggest_restriction_is_one_of_the_parts_there() {
    assertThat(said(
            Shelf.job().highest(GaugePressure.ofBar(7.5)).regulated(),
            usualWith(Shelf.hose(facts("hose"), 6.5, 10.0)),
            Rule.AIR_AT_TOOL))
        .contains("NOT MET")
        .contains(
            "Of the parts behind the first regulator the biggest restriction is hose. Without");
  }

  /** An old hose of 8 to 11 m: it reaches however long it is, or not, or it turns at what is needed. */
  @ParameterizedTest
  @CsvSource(delimiter = '|', textBlock = """
      8 m         | met. 8 m to 11 m of hose, 8 m needed.
      8.01 m      | ask. 8 m to 11 m of hose, 8.01 m needed. It turns at a hose of 8.01 m…
      11 m        | ask. 8 m to 11 m of hose, 11 m needed. It turns at a hose of 11 m…
      10 to 11 m  | ask. 8 m to 11 m of hose, 10 m to 11 m needed. It turns at a hose of 11 m…
      10 to 12 m  | ask. 8 m to 11 m of hose, 10 m to 12 m needed. Neither~
      8 to 12 m   | ask. 8 m to 11 m of hose, 8 m to 12 m needed. Neither~
      6 to 12 m   | ask. 8 m to 11 m of hose, 6 m to 12 m needed. It turns at 8 m: up to there^
      11.01 m     | NOT MET. 8 m to 11 m of hose, 11.01 m needed: too short.+
      """)
  void a_hose_of_unknown_length_reaches_or_not_or_turns_at_what_is_needed(
      String reach, String said) {
    Part.Hose ten = Shelf.hose(Shelf.steel("hose"), 9.5, 11.0);
    Part.Hose old = new Part.Hose(
        ten.facts(),
        ten.bore(),
        new ConduitRange(
            ten.conduit(), ten.conduit().withLength(Length.ofMetres(8.0)), Source.derived("old")),
        ten.upstream(),
        ten.downstream());
    Range<Length> needed = reach.contains("to")
        ? Range.parse(reach, Length::parse)
        : Range.exactly(Length.parse(reach));
    assertThat(said(Shelf.job().reach(needed), usualWith(old), Rule.HOSE_REACHES))
        .isEqualTo("Hose reaches: "
            + said.replace("…", ": from that length on it reaches. Measure how long it is.")
                .replace("~", " settles it alone. Measure how far it is, and how long the hose is.")
                .replace("^", " it reaches. Measure how far it is.")
                .replace("+", JOINED.replace("hose reach", "part hose reach")));
  }

  @Test
  void of_several_hoses_the_one_that_may_not_reach_is_named() {
    assertThat(said(
            laid(
                    Slot.hose("inlet hose", Length.ofMetres(1.0)),
                    Slot.hose("long hose", Range.parse("9 to 11 m", Length::parse)))
                .outlet(End.parse("3/8 NPT female"))
                .toolInlet(End.parse("3/8 NPT female")),
            List.of(
                Shelf.hose(Shelf.steel("hose"), 9.5, 10.0),
                Shelf.adapter("nipple", "3/8 NPT female", "3/8 NPT female")),
            Rule.HOSE_REACHES))
        .endsWith(" It turns at 10 m (long hose): up to there it reaches. Measure how far it is.");
  }

  @Test
  void open_sleeves_count_behind_a_hose_and_vents_at_every_socket() {
    String sleeve = "Sleeve is guarded: ";
    assertThat(said(Shelf.job(), usual(), Rule.SLEEVE_GUARDED))
        .isEqualTo(sleeve + "does not apply. The job does not say that the hose is dragged.");
    assertThat(said(Shelf.job().dragged(), usual(), Rule.SLEEVE_GUARDED))
        .isEqualTo(sleeve + "NOT MET. socket has an open sleeve that an edge can pull back.");
    assertThat(said(
            Shelf.job().dragged(),
            usualWith(socket(facts("socket").withSleeveGuarded(), "finch")),
            Rule.SLEEVE_GUARDED))
        .isEqualTo(sleeve + "met. socket has a guarded sleeve.");
    Requirement.Builder straight =
        laid(Slot.coupling("outlet"), HOSE).outlet(End.parse("3/8 NPT male"));
    assertThat(said(straight.dragged(), usual(), Rule.SLEEVE_GUARDED))
        .isEqualTo(sleeve + "does not apply. There is no coupling behind a hose.");
    String vented = "Couplings are vented: ";
    assertThat(said(Shelf.job(), usual(), Rule.VENTED))
        .isEqualTo(vented
            + "does not apply. The job does not ask for vented couplings; shut off and let the"
            + " air out before parting one.");
    assertThat(said(Shelf.job().ventRequired(), usual(), Rule.VENTED))
        .isEqualTo(vented + "NOT MET. Not vented: socket.");
    List<Part> vents = usualWith(socket(facts("socket").withVent(), "finch"));
    assertThat(said(Shelf.job().ventRequired(), vents, Rule.VENTED))
        .isEqualTo(vented + "met. Both sockets let the air out before they part.");
    assertThat(said(straight.ventRequired(), vents, Rule.VENTED))
        .isEqualTo(vented + "met. Each socket lets the air out before they part.");
  }

  private static Selection.Proposals fitting(Requirement.Builder job, List<? extends Part> parts) {
    Selection answer = Selection.of(job.build(), Catalogue.of(parts));
    assertThat(answer).as(answer.toString()).isInstanceOf(Selection.Proposals.class);
    return (Selection.Proposals) answer;
  }

  private static PartFacts priced(String id, String euros) {
    return facts(id).withPrice(Money.parse(euros + " EUR"));
  }

  /** By hand: the socket twice, two plugs and a hose are five pieces; 2 × 10 + 3 + 2 + 25 = 50. */
  @Test
  void why_the_best_stands_first_is_told_with_its_pieces_price_and_pressure() {
    Selection.Proposals alone = fitting(Shelf.job(), usual());
    assertThat(alone.whyBest())
        .isEqualTo("It is the only combination that meets every rule: 5 pieces to buy in its line, "
            + atTool(alone.best()) + " at the tool.");
    List<Part> priced = List.of(
        socket(priced("socket", "10"), "finch"),
        hosePlug(priced("hose plug", "3"), "finch"),
        toolPlug(priced("tool plug", "2"), "finch"),
        hose(priced("hose", "25")),
        hose(priced("other hose", "26")));
    Selection.Proposals pieces = fitting(Shelf.job(), priced);
    assertThat(pieces.whyBest())
        .isEqualTo(
            "Of all combinations that meet every rule it needs the fewest pieces to buy, of those its"
                + " couplings have the fewest profiles, and of those"
                + " that have all prices known the parts in its line cost least: 5 pieces to buy in its line,"
                + " 50.00 EUR, " + atTool(pieces.best()) + " at the tool.");
    assertThat(fitting(Shelf.job().objective(Objective.LOWEST_PRICE), priced).whyBest())
        .isEqualTo(
            "Of all combinations that meet every rule and have all prices known, the parts in its line cost least: 5"
                + " pieces to buy in its line, 50.00 EUR, " + atTool(pieces.best())
                + " at the tool.");
    assertThat(fitting(Shelf.job(), usualWith(hose(facts("other hose")))).whyBest())
        .isEqualTo(
            "Of all combinations that meet every rule it needs the fewest pieces to buy, of those its"
                + " couplings have the fewest profiles, and of those it keeps the most pressure: 5 pieces to buy"
                + " in its line, " + atTool(alone.best())
                + " at the tool.");
    List<Part> partly = usualWith(
        socket(priced("socket", "10"), "finch"),
        hose(priced("hose", "25")),
        hose(priced("other hose", "26")));
    assertThat(fitting(Shelf.job(), partly).whyBest())
        .isEqualTo(
            "Of all combinations that meet every rule it needs the fewest pieces to buy, of those its"
                + " couplings have the fewest profiles, and of those it has the fewest of unknown price, and their"
                + " known prices sum to the least: 5 pieces to"
                + " buy in its line, 45.00 EUR without hose plug, tool plug, of unknown price, "
                + atTool(alone.best()) + " at the tool.");
    assertThat(fitting(Shelf.job().objective(Objective.LOWEST_PRICE), partly).whyBest())
        .isEqualTo(
            "Of all combinations that meet every rule it has the fewest pieces of unknown price, and"
                + " of those the known prices sum to the least: 5 pieces to buy in its line, 45.00 EUR without hose"
                + " plug, tool plug, of unknown price, " + atTool(alone.best()) + " at the tool.");
  }

  private static List<Part> there(boolean withHose) {
    return List.of(
        socket(facts("socket").asExisting(), "finch"),
        hosePlug(facts("hose plug").asExisting(), "finch"),
        toolPlug(facts("tool plug").asExisting(), "finch"),
        hose(withHose ? facts("hose").asExisting() : facts("hose")));
  }

  @Test
  void nothing_to_buy_one_piece_and_what_is_met_by_a_regulator_only_are_said() {
    Selection.Proposals nothing = fitting(Shelf.job(), there(true));
    String tool = atTool(nothing.best());
    assertThat(nothing.whyBest())
        .isEqualTo("It is the only combination that meets every rule: nothing to buy in its line, "
            + tool + " at the tool.");
    assertThat(fitting(Shelf.job(), there(false)).whyBest())
        .isEqualTo("It is the only combination that meets every rule: 1 piece to buy in its line, "
            + tool + " at the tool.");
    assertThat(fitting(Shelf.job().highest(GaugePressure.ofBar(8.0)).regulated(), there(false))
            .whyBest())
        .isEqualTo(
            "Tool is not over-pressured: met while the regulator holds. It is the only combination"
                + " that meets every rule: 1 piece to buy in its line, " + tool + " at the tool.");
    assertThat(fitting(Shelf.job(), there(true)).whyBest(UnitSystem.US))
        .contains("nothing to buy in its line, ", " psig at the tool.")
        .doesNotContain("bar");
  }

  @Test
  void what_is_still_to_be_asked_is_told_before_why_it_stands_first() {
    String still =
        "It breaks no rule, but whether it meets every rule depends on what is still to be"
            + " asked. Dry and lubricated air stay apart: Ask whether the line has a lubricator; no part"
            + " is marked as kept for either kind of air. ";
    Requirement.Builder job =
        untoldTool().toolRating(GaugePressure.ofBar(7.5)).environment(Environment.INDOORS);
    Selection.Proposals one = fitting(job, usual());
    String tool = atTool(one.best());
    assertThat(one.whyBest())
        .isEqualTo(
            still + "It is the only combination that breaks no rule: 5 pieces to buy in its line, "
                + tool + " at the tool.");
    assertThat(fitting(job, usualWith(hose(facts("other hose")))).whyBest())
        .isEqualTo(
            still + "Of all combinations that break no rule and leave as few questions about their"
                + " parts open it needs the fewest pieces to buy, of those its couplings have the fewest"
                + " profiles, and of those it keeps the most pressure:"
                + " 5 pieces to buy in its line, " + tool + " at the tool.");
    assertThat(fitting(
                job, usualWith(hose(facts("other hose").withLubrication(Lubrication.LUBRICATED))))
            .whyBest())
        .isEqualTo(
            still + "Every other combination that breaks no rule leaves more questions about its"
                + " parts open: 5 pieces to buy in its line, " + tool + " at the tool.");
    assertThat(fitting(Shelf.job(), usualWith(hose(unmarked("other hose").asExisting())))
            .whyBest())
        .isEqualTo(
            "It is the only combination that meets every rule; the others that break no rule leave"
                + " something to be asked: 5 pieces to buy in its line, " + tool + " at the tool.");
  }

  /** The reasons without the losses of pressure, which are compared elsewhere. */
  private static List<String> reasons(Proposal proposal) {
    return Shelf.lines(proposal).stream()
        .map(line -> line.quantity() + " " + line.name() + ": "
            + line.reason().replaceAll(", pressure loss [0-9.]+ bar", ""))
        .toList();
  }

  @Test
  void a_plug_on_a_tool_with_a_whip_hose_of_its_own_stands_on_that() {
    assertThat(reasons(shown(Shelf.job().impactTool().whipHose(), usual())))
        .contains("1 tool plug: on the whip hose of the tool, into socket");
  }

  @Test
  void of_ends_that_do_not_mate_those_are_told_that_do_not() {
    String ends = said(Shelf.job().outlet(End.parse("M5 male")), usual(), Rule.ENDS_MATE);
    assertThat(ends)
        .startsWith(
            "Ends mate: NOT MET. outlet to socket: M5 male and 3/8 NPT female are not joined. ")
        .doesNotContain("straight to")
        .doesNotContain("plug to hose");
  }

  @Test
  void each_part_is_told_by_where_it_stands_and_what_it_goes_with() {
    assertThat(reasons(shown(Shelf.job(), usual())))
        .containsExactly(
            "2 socket: at the outlet: takes profile finch with its plug; on the hose: takes profile"
                + " finch with its plug",
            "1 hose plug: on the hose, into socket",
            "1 hose: 10 m of hose with 9.5 mm of bore",
            "1 tool plug: at the tool, into socket");
    Proposal strangers = shown(
        Shelf.job(),
        usualWith(hosePlug(facts("hose plug"), "wren"), toolPlug(facts("tool plug"), "wren")));
    assertThat(reasons(strangers))
        .containsExactly(
            "2 socket: at the outlet: does not take profile wren with its plug; on the hose: does not"
                + " take profile wren with its plug",
            "1 hose plug: on the hose, does not go into socket",
            "1 hose: 10 m of hose with 9.5 mm of bore",
            "1 tool plug: at the tool, does not go into socket");
    Proposal starved = shown(Shelf.job(), usualWith(Shelf.hose(facts("hose"), 2.0, 10.0)));
    assertThat(Shelf.lines(starved))
        .extracting(BillLine::reason)
        .as("what the air does not get through has no loss")
        .endsWith("at the tool, into socket")
        .contains("10 m of hose with 2 mm of bore");
  }

  /** Nothing in the catalogue joins the plug to an M5 inlet: what such an adapter loses is in no run. */
  @Test
  void without_the_missing_adapter_the_air_is_open_in_a_near_miss() {
    Requirement job = Shelf.job().toolInlet(End.parse("M5 female")).build();
    Proposal nearest = ((Selection.NothingFits) Selection.of(job, Catalogue.of(Shelf.parts())))
        .closest()
        .get(0);
    assertThat(nearest.unmet()).extracting(Finding::rule).containsExactly(Rule.ENDS_MATE);
    Finding air = nearest.findings().stream()
        .filter(finding -> finding.rule() == Rule.AIR_AT_TOOL)
        .findFirst()
        .orElseThrow();
    assertThat(air.outcome()).isEqualTo(RuleOutcome.OPEN);
    assertThat(air.reason())
        .startsWith("Without the missing adapter the tool has 6.")
        .endsWith(
            "What the adapter takes of that is not reckoned: judge it again once the ends are joined.");
  }

  /** Nothing goes between a water hose and air: what would arrive if they were joined is never told. */
  @Test
  void where_no_adapter_can_join_the_ends_no_air_at_the_tool_is_told() {
    Requirement job = Shelf.job().toolInlet(End.parse("3/4 garden hose female")).build();
    Proposal nearest = ((Selection.NothingFits) Selection.of(job, Catalogue.of(Shelf.parts())))
        .closest()
        .get(0);
    Finding air = nearest.findings().stream()
        .filter(finding -> finding.rule() == Rule.AIR_AT_TOOL)
        .findFirst()
        .orElseThrow();
    assertThat(air.outcome()).isEqualTo(RuleOutcome.OPEN);
    assertThat(air.reason())
        .isEqualTo(
            "Ends of the line are not joined, and no standard adapter joins them: what arrives at the tool"
                + " is not told.");
  }
}
