package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.airfit.air.AirState;
import org.airfit.flow.CapacityRange;
import org.airfit.flow.FlowCapacity;
import org.airfit.joint.End;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.Money;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.source.Source;
import org.junit.jupiter.api.Test;

/** What must still be asked stands below what is met, and the headline says so. */
class OpenQuestionsTest {

  private static Selection.Proposals select(Requirement.Builder job, List<Part> parts) {
    Selection answer = Selection.of(job.build(), Catalogue.of(parts));
    assertThat(answer).isInstanceOf(Selection.Proposals.class);
    return (Selection.Proposals) answer;
  }

  private static List<Part> with(Part... more) {
    List<Part> parts = new ArrayList<>(Shelf.parts());
    parts.addAll(List.of(more));
    return parts;
  }

  private static List<Part> insteadOfTheHose(Part hose) {
    List<Part> parts = with();
    parts.removeIf(part -> part.id().equals("10 mm hose"));
    parts.add(hose);
    return parts;
  }

  private static Requirement.Builder onAnUnknownLine() {
    return Requirement.forTool(FreeAirFlow.ofAnrLitresPerSecond(10.0), GaugePressure.ofBar(6.2))
        .toolRating(GaugePressure.ofBar(7.5))
        .toolInlet(End.parse("1/4 NPT female"))
        .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
        .outlet(End.parse("3/8 NPT male"))
        .reach(Length.ofMetres(10.0))
        .environment(Environment.INDOORS);
  }

  private static Finding of(Proposal proposal, Rule rule) {
    return proposal.findings().stream()
        .filter(finding -> finding.rule() == rule)
        .findFirst()
        .orElseThrow();
  }

  private static final Part UNMARKED_OLD_HOSE =
      Shelf.hose(PartFacts.of("old", "old hose").asExisting(), 12.7, 10.0);

  @Test
  void an_unmarked_old_hose_is_listed_below_a_rated_one_that_must_be_bought() {
    Selection.Proposals answer = select(Shelf.job(), with(UNMARKED_OLD_HOSE));
    assertThat(answer.best().hose("hose").id()).isEqualTo("10 mm hose");
    assertThat(answer.best().open()).isEmpty();
    assertThat(answer.whyBest())
        .startsWith(
            "It is the only combination that meets every rule; the others that break no rule leave something");
    assertThat(answer.proposals())
        .extracting(proposal -> proposal.hose("hose").id())
        .containsExactly("10 mm hose", "old");
    assertThat(answer.proposals().get(1).open())
        .extracting(Finding::rule)
        .containsExactly(Rule.PARTS_RATED);
  }

  @Test
  void where_only_the_unmarked_hose_is_there_the_headline_says_what_is_open() {
    Selection.Proposals answer = select(Shelf.job(), insteadOfTheHose(UNMARKED_OLD_HOSE));
    assertThat(answer.whyBest())
        .startsWith(
            "It breaks no rule, but whether it meets every rule depends on what is still to be asked."
                + " Parts are rated: No rating is known of old hose")
        .contains("It is the only combination that breaks no rule: 4 pieces to buy in its line");
    assertThat(answer.toString()).contains("No rating is known of old hose");
    assertThat(answer.working().toText())
        .contains("No rule is broken. Still to be asked: Parts are rated.");
  }

  @Test
  void a_hose_kept_for_oiled_air_does_not_lead_on_a_line_of_which_nothing_is_known() {
    Part oiled = Shelf.hose(
        Shelf.steel("oiled").withLubrication(Lubrication.LUBRICATED).asExisting(), 12.7, 10.0);
    Selection.Proposals answer = select(onAnUnknownLine(), with(oiled));
    assertThat(answer.best().hose("hose").id()).isEqualTo("10 mm hose");
    assertThat(of(answer.best(), Rule.AIR_KEPT_APART).reason())
        .isEqualTo(
            "Ask whether the line has a lubricator; no part is marked as kept for either kind of air.");
    assertThat(answer.whyBest())
        .contains("Ask whether the line has a lubricator")
        .contains(
            "Every other combination that breaks no rule leaves more questions about its parts open");
    Finding kept =
        of(select(onAnUnknownLine(), insteadOfTheHose(oiled)).best(), Rule.AIR_KEPT_APART);
    assertThat(kept.outcome()).isEqualTo(RuleOutcome.OPEN);
    assertThat(kept.reason())
        .isEqualTo(
            "Ask whether the line has a lubricator: if it has none, these must not be used, they are"
                + " kept for lubricated air: part oiled.");
    assertThat(select(onAnUnknownLine().lubrication(Lubrication.LUBRICATED), with(oiled))
            .best()
            .hose("hose")
            .id())
        .as("on an oiled line nothing is open")
        .isEqualTo("oiled");
  }

  @Test
  void parts_kept_for_both_kinds_of_air_belong_on_no_line() {
    List<Part> parts = insteadOfTheHose(
        Shelf.hose(Shelf.steel("oiled").withLubrication(Lubrication.LUBRICATED), 9.5, 10.0));
    parts.removeIf(part -> part.id().equals("tool plug"));
    parts.add(Shelf.plug(
        Shelf.steel("dry plug").withLubrication(Lubrication.DRY), "finch", "1/4 NPT male"));
    Selection answer = Selection.of(onAnUnknownLine().build(), Catalogue.of(parts));
    assertThat(answer).isInstanceOf(Selection.NothingFits.class);
    Selection.NothingFits nothing = (Selection.NothingFits) answer;
    assertThat(nothing.toGive())
        .containsExactly(
            "Dry and lubricated air stay apart: NOT MET. Whatever the line carries, these do not"
                + " belong on one line: part dry plug, kept for dry air, and part oiled, kept for lubricated air.");
  }

  @Test
  void a_straight_coupling_thread_is_listed_below_a_taper_one_though_it_is_wider() {
    Part straight = Shelf.socket(Shelf.steel("straight"), "finch", "3/8 NPSC female", 12.0);
    Selection.Proposals answer = select(Shelf.job(), with(straight));
    assertThat(answer.best().socket("outlet").id()).isEqualTo("wide");
    assertThat(answer.proposals())
        .filteredOn(proposal -> proposal.socket("outlet").id().equals("straight"))
        .isNotEmpty()
        .allSatisfy(proposal ->
            assertThat(of(proposal, Rule.ENDS_MATE).outcome()).isEqualTo(RuleOutcome.OPEN));
  }

  @Test
  void an_adapter_that_leaves_nothing_open_is_taken_before_one_that_is_there_and_unmarked() {
    Requirement.Builder half = Shelf.job().outlet(End.parse("1/2 NPT female"));
    Part.Adapter rated = Shelf.adapter("rated", "1/2 NPT male", "3/8 NPT male");
    Part.Adapter unmarked = new Part.Adapter(
        PartFacts.of("unmarked", "unmarked").asExisting(),
        rated.one(),
        rated.other(),
        rated.conduit());
    assertThat(select(half, with(unmarked, rated)).best().joints().get(0).adapters())
        .containsExactly(rated);
    assertThat(select(half, with(unmarked)).best().open())
        .extracting(Finding::rule)
        .containsExactly(Rule.PARTS_RATED);
  }

  /** Of the nearest misses too the one of which less must be asked comes first. */
  @Test
  void a_miss_of_which_nothing_must_be_asked_is_nearer_than_one_of_which_something_must() {
    Selection answer = Selection.of(
        Shelf.job().reach(Length.ofMetres(12.0)).build(), Catalogue.of(with(UNMARKED_OLD_HOSE)));
    assertThat(answer).isInstanceOf(Selection.NothingFits.class);
    assertThat(((Selection.NothingFits) answer).nearest())
        .extracting(proposal -> proposal.hose("hose").id())
        .startsWith("10 mm hose")
        .endsWith("old");
  }

  private static Requirement.Builder supplied(double celsius) {
    return Shelf.job()
        .supply(
            AirState.of(Shelf.SUPPLY.pressure(), Temperature.ofCelsius(celsius)), Shelf.ATMOSPHERE);
  }

  private static Part hoseTo(double celsius) {
    return Shelf.hose(
        Shelf.steel("10 mm hose")
            .withTemperatures(Temperature.ofCelsius(-20.0), Temperature.ofCelsius(celsius)),
        9.5,
        10.0);
  }

  private static Finding temperature(Requirement.Builder job, List<Part> parts) {
    return of(
        Selection.of(job.build(), Catalogue.of(parts))
            .<Proposal>fold(
                Selection.Proposals::best, nothing -> nothing.nearest().get(0)),
        Rule.TEMPERATURE_SUITS);
  }

  @Test
  void the_air_of_the_supply_counts_as_much_as_the_place() {
    List<Part> hose = insteadOfTheHose(hoseTo(60.0));
    Finding hot = temperature(supplied(95.0), hose);
    assertThat(hot.outcome()).isEqualTo(RuleOutcome.UNMET);
    assertThat(hot.reason())
        .isEqualTo("The air of the supply has 95 °C; not allowed by their makers:"
            + " part 10 mm hose (-20 °C to 60 °C).");
    assertThat(temperature(supplied(60.0), hose).outcome())
        .as("at the hose's limit the others must still be asked")
        .isEqualTo(RuleOutcome.OPEN);
    assertThat(temperature(supplied(60.001), hose).outcome()).isEqualTo(RuleOutcome.UNMET);
    assertThat(temperature(supplied(-20.001), hose).outcome()).isEqualTo(RuleOutcome.UNMET);
    Temperature frost = Temperature.ofCelsius(-30.0);
    assertThat(temperature(supplied(20.0).temperatures(frost, Temperature.ofCelsius(10.0)), hose)
            .outcome())
        .as("and the place counts as much as the air")
        .isEqualTo(RuleOutcome.UNMET);
  }

  /** From 5 °C to 40 °C nobody is asked: our own choice. */
  @Test
  void makers_are_asked_only_where_the_air_is_not_what_a_shop_has() {
    for (double usual : List.of(5.0, 20.0, 40.0)) {
      assertThat(temperature(supplied(usual), Shelf.parts()).outcome())
          .isEqualTo(RuleOutcome.DOES_NOT_APPLY);
    }
    for (double unusual : List.of(4.999, 40.001, 95.0)) {
      assertThat(temperature(supplied(unusual), Shelf.parts()).outcome())
          .isEqualTo(RuleOutcome.OPEN);
    }
    assertThat(temperature(supplied(35.0), insteadOfTheHose(hoseTo(30.0))).outcome())
        .as("what a maker forbids is forbidden in usual air too")
        .isEqualTo(RuleOutcome.UNMET);
  }

  private static Part.Regulator regulator(String id, String euros, double leastC) {
    FlowCapacity wide = capacity(20.0);
    return new Part.Regulator(
        Shelf.steel(id).withPrice(Money.parse(euros + " EUR")),
        new CapacityRange(capacity(leastC), wide, Source.derived("invented for the test")),
        PressureDrop.ofBar(0.0),
        FreeAirFlow.ofAnrLitresPerSecond(10.0),
        End.parse("3/8 NPT female"),
        End.parse("3/8 NPT male"));
  }

  private static FlowCapacity capacity(double c) {
    return FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(c), 0.3);
  }

  /** Set to 6 bar(g), of which the tool needs 6: nothing is open with the one that holds it whatever its C is. */
  @Test
  void a_regulator_that_holds_just_what_the_tool_needs_leaves_nothing_to_ask() {
    Requirement.Builder job = Requirement.forTool(
            FreeAirFlow.ofAnrLitresPerSecond(10.0), GaugePressure.ofBar(6.0))
        .toolRating(GaugePressure.ofBar(7.5))
        .toolInlet(End.parse("3/8 NPT female"))
        .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
        .outlet(End.parse("3/8 NPT male"))
        .environment(Environment.INDOORS)
        .lubrication(Lubrication.DRY)
        .objective(Objective.LOWEST_PRICE)
        .layout(Layout.of(List.of(Slot.regulator("regulator", GaugePressure.ofBar(6.0)))));
    Selection.Proposals answer =
        select(job, List.of(regulator("holding", "40", 10.0), regulator("doubtful", "30", 1.6)));
    assertThat(answer.proposals())
        .extracting(proposal -> proposal.parts().get(0).id())
        .as("the dearer one first, of which nothing must be asked")
        .containsExactly("holding", "doubtful");
    assertThat(answer.proposals())
        .extracting(proposal -> of(proposal, Rule.AIR_AT_TOOL).outcome())
        .containsExactly(RuleOutcome.MET, RuleOutcome.OPEN);
  }

  private static int questions(Requirement.Builder job, List<Part> parts) {
    Selection answer = Selection.of(job.build(), Catalogue.of(parts));
    return answer
        .fold(fitting -> fitting.best(), nothing -> nothing.nearest().get(0))
        .partQuestions();
  }

  private static List<Part> keptFor(Lubrication hose, Lubrication socket) {
    List<Part> parts =
        insteadOfTheHose(Shelf.hose(Shelf.steel("kept hose").withLubrication(hose), 12.7, 10.0));
    parts.removeIf(part -> part instanceof Part.Socket);
    parts.add(
        Shelf.socket(Shelf.steel("kept").withLubrication(socket), "finch", "3/8 NPT female", 9.0));
    return parts;
  }

  /** What the parts leave open counts rule by rule; a rule that is broken anyway leaves nothing to ask. */
  @Test
  void questions_are_counted_by_rule_and_not_where_their_rule_is_broken() {
    assertThat(questions(Shelf.job(), Shelf.parts())).isZero();
    assertThat(questions(Shelf.job(), insteadOfTheHose(UNMARKED_OLD_HOSE))).isEqualTo(1);
    List<Part> weak = insteadOfTheHose(UNMARKED_OLD_HOSE);
    weak.removeIf(part -> part instanceof Part.Socket);
    weak.add(Shelf.socket(
        Shelf.steel("weak").withRating(GaugePressure.ofBar(3.0)), "finch", "3/8 NPT female", 9.0));
    assertThat(questions(Shelf.job(), weak)).as("another part breaks that rule").isZero();
    Lubrication dry = Lubrication.DRY;
    Lubrication oiled = Lubrication.LUBRICATED;
    assertThat(questions(onAnUnknownLine(), keptFor(dry, dry))).isEqualTo(1);
    assertThat(questions(onAnUnknownLine(), keptFor(oiled, oiled))).isEqualTo(1);
    assertThat(questions(onAnUnknownLine(), keptFor(oiled, dry)))
        .as("kept for both: broken on every line")
        .isZero();
    assertThat(questions(Shelf.job(), keptFor(dry, dry))).as("the line is dry").isZero();
  }

  @Test
  void parts_kept_for_either_air_are_one_question_and_both_together_break_its_rule() {
    int dry = Rule.AIR_KEPT_APART.bit();
    int oiled = PartQuestions.KEPT_FOR_OILED;
    int rated = Rule.PARTS_RATED.bit();
    assertThat(PartQuestions.count(dry)).isEqualTo(1);
    assertThat(PartQuestions.count(oiled)).isEqualTo(1);
    assertThat(PartQuestions.count(oiled | rated)).isEqualTo(2);
    assertThat(PartQuestions.count(dry | oiled | rated)).isEqualTo(1);
    assertThat(PartQuestions.isBroken(dry)).isFalse();
    assertThat(PartQuestions.isBroken(dry | oiled)).isTrue();
    assertThat(PartQuestions.settledBy(dry)).isEqualTo(dry | oiled);
    assertThat(PartQuestions.settledBy(rated)).isEqualTo(rated);
    assertThat(PartQuestions.settledBy(0)).isZero();
  }
}
