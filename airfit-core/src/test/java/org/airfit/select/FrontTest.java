package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import org.airfit.joint.End;
import org.airfit.line.Conduit;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.Money;
import org.airfit.quantity.Temperature;
import org.junit.jupiter.api.Test;

/**
 * Which choices a search may leave out: those that as many others as are listed stand before whatever follows. One
 * more than these that is left out is lost to the customer; one less is only looked at in vain.
 */
class FrontTest {

  private static final double BAR_ABS = 7.0e5;

  private static PartFacts priced(String id, double euros) {
    return Shelf.steel(id).withPrice(Money.parse(euros + " EUR"));
  }

  private static Part.Hose hose(String id, double euros) {
    return Shelf.hose(priced(id, euros), 9.5, 10.0);
  }

  private static Requirement job() {
    return Requirement.forTool(FreeAirFlow.ofAnrLitresPerSecond(10.0), GaugePressure.ofBar(6.2))
        .toolInlet(End.parse("1/4 NPT female"))
        .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
        .outlet(End.parse("3/8 NPT female"))
        .environment(Environment.INDOORS)
        .lubrication(Lubrication.DRY)
        .layout(Layout.of(List.of(Slot.hose("hose", Length.ofMetres(10.0)))))
        .objective(Objective.LOWEST_PRICE)
        .build();
  }

  /** What can stand in the slot of a hose, all of it, by name. */
  private static List<Candidate> hoses(Requirement job, Part... parts) {
    List<Candidate> all =
        new ArrayList<>(new Stock(job, Catalogue.of(List.of(parts)), parts.length + 1)
            .inRow()
            .get(0)
            .kept());
    all.sort(Comparator.comparingInt(Candidate::rank));
    return all;
  }

  private static List<Candidate> hoses(Part... parts) {
    return hoses(job(), parts);
  }

  private static Candidate adapter(String id, double euros, int rank) {
    Part.Adapter part = new Part.Adapter(
        priced(id, euros),
        End.parse("3/8 NPT female"),
        End.parse("1/4 NPT male"),
        Conduit.of(Length.ofMillimetres(9.0), Length.ofMillimetres(30.0), Length.ofMetres(0.0)));
    return new Candidate(
        part,
        Position.ADAPTER,
        rank,
        0,
        0,
        0L,
        Objective.LOWEST_PRICE.cost(part.facts()),
        0,
        1,
        List.of(),
        Set.of(),
        Tie.NONE,
        true,
        null,
        null);
  }

  /** One front of each kind in a test. */
  private final Map<Integer, Front> fronts = new HashMap<>();

  private static Choice nothing() {
    return none(/* broken= */ 0, /* asked= */ 0);
  }

  private static Choice none(int broken, int asked) {
    return Choice.none(
        broken,
        asked,
        /* dependsOnSettingsAlone= */ false,
        Objective.LOWEST_PRICE,
        Profiles.ahead(List.of()),
        /* pascals= */ 8.0e5,
        /* atBest= */ 8.0e5);
  }

  private static Choice with(Candidate part, double pascals) {
    return nothing().with(part, pascals, pascals);
  }

  private static List<String> ids(List<Choice> choices) {
    return choices.stream()
        .map(choice -> String.join(
            " ", choice.inRow().stream().map(each -> each.part().id()).toList()))
        .toList();
  }

  private List<String> kept(int most, boolean staysDifferent, Choice... choices) {
    return ids(fronts.computeIfAbsent(most, Front::new).of(List.of(choices), staysDifferent));
  }

  /** The fourth and the fifth cost more than three others of the same air; the sixth keeps more of it. */
  @Test
  void what_as_many_as_are_listed_beat_in_all_is_left_out_and_no_other() {
    List<Candidate> each = hoses(
        hose("a", 10), hose("b", 20), hose("c", 30), hose("d", 40), hose("e", 50), hose("f", 60));
    Supplier<Choice[]> choices = () -> IntStream.range(0, 6)
        .mapToObj(i -> with(each.get(i), i == 5 ? BAR_ABS + 100.0 : BAR_ABS))
        .toArray(Choice[]::new);
    List<Choice> turned = new ArrayList<>(List.of(choices.get()));
    Collections.reverse(turned);
    for (boolean staysDifferent : List.of(true, false)) {
      assertThat(kept(3, staysDifferent, choices.get())).containsExactly("a", "b", "c", "f");
      assertThat(kept(1, staysDifferent, choices.get())).containsExactly("a", "f");
      assertThat(kept(6, staysDifferent, choices.get())).hasSize(6);
      assertThat(kept(3, staysDifferent, turned.toArray(Choice[]::new)))
          .as("in whatever order they come")
          .containsExactly("a", "b", "c", "f");
    }
  }

  /**
   * Of two that cost the same, the name decides in the end; only a difference of pressure that stays comes before it.
   */
  @Test
  void a_name_that_comes_later_is_left_out_only_if_more_pressure_cannot_make_up_for_it() {
    List<Candidate> each = hoses(hose("a", 10), hose("z", 10));
    Choice named = with(each.get(0), BAR_ABS);
    assertThat(kept(1, true, with(each.get(1), BAR_ABS), named))
        .as("as much pressure")
        .containsExactly("a");
    assertThat(kept(1, true, with(each.get(1), BAR_ABS + 2.0), named))
        .as("2 Pa more, and no regulator is ahead")
        .containsExactly("z");
    assertThat(kept(1, false, with(each.get(1), BAR_ABS + 2.0), named))
        .as("2 Pa more, and a regulator makes them equal")
        .containsExactly("z", "a");
    assertThat(kept(1, true, with(each.get(1), BAR_ABS + 1.0), named))
        .as("1 Pa more may be the same in whole pascals")
        .containsExactly("z", "a");
    assertThat(kept(1, true, with(each.get(1), BAR_ABS + 1.001), named))
        .as("a little more than 1 Pa")
        .containsExactly("z");
  }

  /** The first set of parts is there twice, with two adapters; it is listed once. */
  @Test
  void a_set_of_parts_counts_once_however_many_adapters_it_may_have() {
    List<Candidate> each = hoses(hose("a", 10), hose("b", 20), hose("c", 30));
    Choice first = with(each.get(0), BAR_ABS);
    Choice cheap = first.with(adapter("cheap", 1, 0), BAR_ABS + 10.0, BAR_ABS + 10.0);
    Choice wide = first.with(adapter("wide", 2, 1), BAR_ABS + 20.0, BAR_ABS + 20.0);
    Choice third = with(each.get(2), BAR_ABS);
    assertThat(kept(2, false, cheap, wide, third)).containsExactly("a cheap", "a wide", "c");
    assertThat(kept(2, false, cheap, wide, with(each.get(1), BAR_ABS), third))
        .containsExactly("a cheap", "a wide", "b");
  }

  private static final Candidate FIRST = adapter("first", 1, 0);
  private static final Candidate LAST = adapter("last", 1, 1);

  /** How two rows of adapters of the same hose fare that differ in one thing. */
  private List<String> ofSameParts(boolean staysDifferent, Choice first, Choice last) {
    return kept(9, staysDifferent, first, last);
  }

  @Test
  void of_the_same_parts_adapters_are_left_out_that_others_are_better_than_in_what_stays() {
    Choice hose = with(hoses(hose("hose", 10)).get(0), BAR_ABS);
    Choice first = hose.with(FIRST, BAR_ABS, BAR_ABS);
    Choice last = hose.with(LAST, BAR_ABS, BAR_ABS);
    assertThat(ofSameParts(true, first, last)).as("by name").containsExactly("hose first");
    Choice dear = hose.with(adapter("first", 2, 0), BAR_ABS, BAR_ABS);
    assertThat(ofSameParts(false, dear, last)).as("cheaper").containsExactly("hose last");
    Choice wide = hose.with(LAST, BAR_ABS + 1.0, BAR_ABS + 1.0);
    assertThat(ofSameParts(true, first, wide)).as("wider").containsExactly("hose last");
    assertThat(ofSameParts(false, first, wide))
        .as("wider in front of a regulator: the name may decide")
        .containsExactly("hose last", "hose first");
    assertThat(ofSameParts(true, first.asking(Rule.PARTS_RATED.bit()), last))
        .as("a question may be settled by what follows, and then the name decides")
        .containsExactly("hose last", "hose first");
    assertThat(ofSameParts(true, dear, wide)).as("both").containsExactly("hose last");
    Choice wideAndDear = dear.with(LAST, BAR_ABS + 1.0, BAR_ABS + 1.0);
    assertThat(ofSameParts(true, first, wideAndDear))
        .as("wider and dearer: each may turn out better")
        .containsExactly("hose first", "hose first last");
    assertThat(ofSameParts(false, behindTool(first, 7L), behindTool(last, 3L)))
        .as("the tool of the line before misses less")
        .containsExactly("hose last");
  }

  /** Once more at the splitter, behind a first line whose tool misses air. */
  private static Choice behindTool(Choice choice, long missed) {
    return choice
        .holding(List.of(0, 0), List.of(0L, 0L), List.of(0, 0), /* leg= */ 0)
        .atTool(0.0, missed, 0)
        .atLine();
  }

  /**
   * Each is better in one thing that may decide, and so stays, though the other is cheaper and keeps more pressure.
   */
  @Test
  void nothing_is_left_out_that_is_better_in_anything_that_counts() {
    List<Candidate> each = hoses(hose("a", 10), hose("b", 20));
    Choice b = with(each.get(1), BAR_ABS);
    Choice a = with(each.get(0), BAR_ABS + 5.0);
    int rated = Rule.PARTS_RATED.bit();
    int vented = Rule.VENTED.bit();
    assertThat(kept(1, true, a, b)).containsExactly("a");
    assertThat(kept(1, true, a.unjoined(1), b)).as("a joint").containsExactly("b", "a");
    assertThat(kept(1, true, a.unjoined(1), b.unjoined(1))).containsExactly("a");
    assertThat(kept(1, true, a.asking(rated), b)).as("a question").containsExactly("b", "a");
    assertThat(kept(1, true, a.asking(rated), b.asking(rated))).containsExactly("a");
    assertThat(kept(1, true, a, b.asking(rated))).containsExactly("a");
    assertThat(kept(1, true, a.asking(rated), b.asking(vented)))
        .as("other questions")
        .containsExactly("a", "b");
    assertThat(kept(1, true, a.atTool(50.0, 0L, 0), b.atTool(60.0, 0L, 0)))
        .as("what the tool before has to spare")
        .containsExactly("a", "b");
    assertThat(kept(1, true, a.atTool(60.0, 0L, 0), b.atTool(60.0, 0L, 0))).containsExactly("a");
    assertThat(kept(1, true, a.atTool(60.0, 2L, 0), b.atTool(60.0, 1L, 0)))
        .as("what the tool before misses")
        .containsExactly("b", "a");
    assertThat(kept(1, true, a.atTool(60.0, 1L, 0), b.atTool(60.0, 1L, 0))).containsExactly("a");
    Choice weakAtBest = nothing().with(each.get(0), BAR_ABS + 5.0, BAR_ABS + 5.0);
    assertThat(kept(1, true, weakAtBest, nothing().with(each.get(1), BAR_ABS, BAR_ABS + 9.0)))
        .as("the pressure at best")
        .containsExactly("a", "b");
    assertThat(kept(1, true, weakAtBest, nothing().with(each.get(1), BAR_ABS, BAR_ABS + 5.0)))
        .containsExactly("a");
  }

  /** A hose that is too short misses its rule already: what else is asked of its reach no longer matters. */
  @Test
  void a_question_that_a_broken_rule_settles_does_not_save_from_being_left_out() {
    Requirement job = job().toBuilder()
        .layout(Layout.of(List.of(Slot.hose("hose", Length.ofMetres(16.0)))))
        .build();
    List<Candidate> each = hoses(job, hose("a", 10), hose("b", 20));
    assertThat(each).allMatch(hose -> hose.missedLength() > 0L);
    Choice asking = none(0, Rule.HOSE_REACHES.bit()).with(each.get(0), BAR_ABS, BAR_ABS);
    Choice other = with(each.get(1), BAR_ABS);
    assertThat(asking.asked).isZero();
    assertThat(kept(1, true, asking, other)).containsExactly("a");
    Choice broken = none(Rule.VENTED.bit(), 0).with(each.get(1), BAR_ABS, BAR_ABS);
    assertThat(kept(1, true, with(each.get(0), BAR_ABS).asking(Rule.VENTED.bit()), broken))
        .as("the other breaks the rule of which one asks")
        .containsExactly("a");
    assertThat(kept(1, true, none(Rule.VENTED.bit(), 0).with(each.get(0), BAR_ABS, BAR_ABS), other))
        .as("one breaks a rule that the other keeps")
        .containsExactly("b", "a");
  }

  /** What a choice misses already adds to what it will miss: 1 rule and 3 billionths, with 5 and 7 more. */
  @Test
  void what_is_ahead_is_added_to_what_is_missed_and_spent() {
    Candidate hose = hoses(hose("hose", 10)).get(0);
    Choice choice = none(Rule.VENTED.bit(), Rule.PARTS_RATED.bit())
        .with(hose, BAR_ABS, BAR_ABS)
        .atTool(0.0, 3L, 0);
    assertThat(choice.key(5L, 0, 0, 7L))
        .isEqualTo(new Key(
            Choice.WHOLE_MISS + 3L + 5L, 0, 0, 1, 0, hose.cost() + 7L, 0, hose.cost() + 7L));
    assertThat(choice.unjoined(1).key())
        .isEqualTo(new Key(2L * Choice.WHOLE_MISS + 3L, 1, 0, 1, 0, hose.cost(), 0, hose.cost()));
  }

  private static Candidate inLine(Candidate adapter, int line) {
    return new Candidate(
        adapter.part(),
        Position.adapter(line, 1),
        adapter.rank(),
        0,
        0,
        0L,
        adapter.cost(),
        adapter.near(),
        adapter.far(),
        List.of(),
        adapter.takes(),
        Tie.NONE,
        true,
        null,
        null);
  }

  /** Row by row: where both have an adapter its name decides, where one has none it comes first. */
  @Test
  void of_the_same_parts_the_first_adapters_by_name_stand_first() {
    Candidate hose = hoses(hose("hose", 10)).get(0);
    Choice start = with(FIRST, BAR_ABS);
    Choice none = nothing().with(hose, BAR_ABS, BAR_ABS);
    Choice first = start.with(hose, BAR_ABS, BAR_ABS);
    Choice last = with(LAST, BAR_ABS).with(hose, BAR_ABS, BAR_ABS);
    Choice behind = none.with(FIRST, BAR_ABS, BAR_ABS);
    assertThat(Choice.byAdapters(none, none)).isZero();
    for (List<Choice> pair : List.of(
        List.of(none, first),
        List.of(first, last),
        List.of(none, behind),
        List.of(behind, first),
        List.of(behind, none.with(LAST, BAR_ABS, BAR_ABS)),
        List.of(first, first.with(LAST, BAR_ABS, BAR_ABS)))) {
      assertThat(Choice.byAdapters(pair.get(0), pair.get(1)))
          .as("%s before %s", ids(pair).get(0), ids(pair).get(1))
          .isNegative();
      assertThat(Choice.byAdapters(pair.get(1), pair.get(0))).isPositive();
    }
  }

  /** At the same place one has an adapter at the tool of a line, the other the first adapter of the next line. */
  @Test
  void an_adapter_where_the_next_line_begins_stands_before_one_at_the_tool_of_this_line() {
    Candidate hose = hoses(hose("hose", 10)).get(0);
    Choice line = with(hose, BAR_ABS);
    Choice atTool = line.with(inLine(FIRST, 0), BAR_ABS, BAR_ABS);
    Choice atNext = line.with(inLine(LAST, 1), BAR_ABS, BAR_ABS);
    assertThat(Choice.byAdapters(atNext, atTool)).isNegative();
    assertThat(Choice.byAdapters(atTool, atNext)).isPositive();
    assertThat(Choice.byAdapters(atTool, line.with(inLine(LAST, 0), BAR_ABS, BAR_ABS)))
        .as("both at the tool: by name")
        .isNegative();
  }

  private static List<String> candidates(int most, Candidate... parts) {
    return Front.ofCandidates(List.of(parts), most).stream()
        .map(each -> each.part().id())
        .toList();
  }

  /** Of three hoses of one width two are cheaper or named first; a wider one is as good as none of them. */
  @Test
  void of_a_position_the_parts_are_left_out_that_as_many_as_are_listed_beat() {
    List<Candidate> each = hoses(hose("a", 10), hose("b", 10), hose("c", 5));
    Candidate a = each.get(0);
    Candidate b = each.get(1);
    Candidate c = each.get(2);
    assertThat(candidates(1, b, a, c)).containsExactly("c");
    assertThat(candidates(2, b, a, c)).containsExactly("c", "a");
    assertThat(candidates(3, b, a, c)).containsExactly("c", "a", "b");
    assertThat(candidates(1, b, a)).as("by name where they cost the same").containsExactly("a");
    List<Candidate> both = hoses(hose("narrow", 5), Shelf.hose(priced("wide", 9), 12.7, 10.0));
    assertThat(candidates(1, both.get(1), both.get(0))).containsExactly("narrow", "wide");
  }

  /** The cheap one leaves a question open, or breaks a rule: it does not drive out the dear one. */
  @Test
  void a_part_with_a_question_or_a_broken_rule_drives_out_none_without() {
    Requirement job = job().toBuilder()
        .temperatures(Temperature.ofCelsius(-5.0), Temperature.ofCelsius(30.0))
        .build();
    Part told = new Part.Hose(
        priced("told", 20)
            .withTemperatures(Temperature.ofCelsius(-10.0), Temperature.ofCelsius(50.0)),
        hose("x", 1).bore(),
        hose("x", 1).conduitRange(),
        hose("x", 1).upstream(),
        hose("x", 1).downstream());
    List<Candidate> asked = hoses(job, hose("asked", 10), told);
    assertThat(candidates(1, asked.toArray(Candidate[]::new))).containsExactly("asked", "told");
    Part weak = Shelf.hose(
        PartFacts.of("weak", "weak")
            .withRating(GaugePressure.ofBar(3.0))
            .withPrice(Money.parse("1 EUR")),
        9.5,
        10.0);
    List<Candidate> broken = hoses(weak, hose("strong", 10));
    assertThat(candidates(1, broken.toArray(Candidate[]::new))).containsExactly("weak", "strong");
  }
}
