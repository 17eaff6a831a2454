package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import org.airfit.flow.CapacityRange;
import org.airfit.flow.FlowCapacity;
import org.airfit.joint.End;
import org.airfit.line.Conduit;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.Money;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.SonicConductance;
import org.airfit.source.Source;
import org.junit.jupiter.api.Test;

/** Catalogues so small that the order of their proposals is known by hand. */
class ProposalsByHandTest {

  private static PartFacts facts(String id) {
    return PartFacts.of(id, id)
        .withRating(GaugePressure.ofBar(16.0))
        .withMaterial(Material.HARDENED_STEEL);
  }

  private static PartFacts priced(String id, String euros) {
    return facts(id).withPrice(Money.parse(euros + " EUR"));
  }

  private static FlowCapacity capacity(double c) {
    return FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(c), 0.3);
  }

  private static Part.Socket socket(PartFacts facts, double c) {
    return Shelf.socket(facts, "finch", "3/8 NPT female", c);
  }

  private static Conduit bit(double boreMm) {
    return Conduit.of(
        Length.ofMillimetres(boreMm), Length.ofMillimetres(30.0), Length.ofMillimetres(0.0));
  }

  private static Part.Adapter adapter(PartFacts facts, String one, String other) {
    return new Part.Adapter(facts, End.parse(one), End.parse(other), bit(9.0));
  }

  /** Two plugs for 3 and 2 EUR and a hose for 20 EUR, with what is given. */
  private static List<Part> with(Part... more) {
    List<Part> parts = new ArrayList<>(List.of(
        Shelf.plug(priced("hose plug", "3"), "finch", "3/8 NPT female"),
        Shelf.plug(priced("tool plug", "2"), "finch", "1/4 NPT male"),
        Shelf.hose(priced("hose", "20"), 9.5, 10.0)));
    parts.addAll(List.of(more));
    return parts;
  }

  private static List<Proposal> listed(Requirement.Builder job, List<? extends Part> parts) {
    Selection answer = Selection.of(job.build(), Catalogue.of(parts));
    assertThat(answer).as(answer.toString()).isInstanceOf(Selection.Proposals.class);
    return ((Selection.Proposals) answer).proposals();
  }

  private static List<Proposal> nearest(Requirement.Builder job, List<? extends Part> parts) {
    Selection answer = Selection.of(job.build(), Catalogue.of(parts));
    assertThat(answer).as(answer.toString()).isInstanceOf(Selection.NothingFits.class);
    return ((Selection.NothingFits) answer).nearest();
  }

  private static List<String> sockets(List<Proposal> proposals) {
    return proposals.stream()
        .map(each -> each.socket("outlet").id() + each.socket("tool").id())
        .toList();
  }

  private static List<String> hoses(List<Proposal> proposals) {
    return proposals.stream().map(each -> each.hose("hose").id()).toList();
  }

  private static List<String> adapters(Proposal proposal, int joint) {
    return proposal.joints().get(joint).adapters().stream().map(Part::id).toList();
  }

  /** By hand: 2 × 10, 10 + 12 twice, 2 × 12; of the two alike, the names from the outlet on decide. */
  @Test
  void of_as_many_pieces_the_price_decides_and_of_the_same_price_the_name() {
    List<Part> parts = with(socket(priced("b", "10"), 9.0), socket(priced("a", "12"), 9.0));
    for (Objective objective : Objective.values()) {
      assertThat(sockets(listed(Shelf.job().objective(objective), parts)))
          .containsExactly("bb", "ab", "ba", "aa");
    }
  }

  /** The same flow loses less in a narrow part the more pressure is in front of it: the narrow one goes first. */
  @Test
  void of_the_same_price_the_pressure_decides_before_the_name() {
    List<Part> parts = with(socket(priced("a", "10"), 6.0), socket(priced("b", "10"), 12.0));
    assertThat(sockets(listed(Shelf.job(), parts))).containsExactly("bb", "ab", "ba", "aa");
  }

  @Test
  void a_price_that_is_not_known_comes_after_any_that_is_and_two_after_one() {
    List<Part> parts = with(socket(facts("a"), 12.0), socket(priced("b", "900"), 9.0));
    for (Objective objective : Objective.values()) {
      assertThat(sockets(listed(Shelf.job().objective(objective), parts)))
          .containsExactly("bb", "ab", "ba", "aa");
    }
  }

  @Test
  void what_is_there_already_costs_nothing_and_is_no_piece() {
    List<Part> parts = with(
        socket(priced("s", "10"), 9.0),
        Shelf.hose(priced("a dear one of the customer", "99").asExisting(), 9.5, 10.0),
        Shelf.hose(priced("gift", "0"), 9.5, 10.0));
    assertThat(hoses(listed(Shelf.job(), parts)))
        .containsExactly("a dear one of the customer", "gift", "hose");
    assertThat(hoses(listed(Shelf.job().objective(Objective.LOWEST_PRICE), parts)))
        .as("as cheap, with a piece less")
        .containsExactly("a dear one of the customer", "gift", "hose");
  }

  /** Five sockets at two couplings are 25 choices; sums of different powers of two are never alike. */
  @Test
  void of_more_choices_than_are_listed_the_best_twenty_are_in_their_order() {
    List<String> names = List.of("e", "d", "c", "b", "a");
    List<Part> parts = with();
    for (int i = 0; i < names.size(); i++) {
      parts.add(socket(priced(names.get(i), String.valueOf(1 << i)), 9.0));
    }
    List<String> pairs = new ArrayList<>();
    names.forEach(one -> names.forEach(other -> pairs.add(one + other)));
    pairs.sort(Comparator.comparingInt((String pair) ->
            (1 << names.indexOf(pair.substring(0, 1))) + (1 << names.indexOf(pair.substring(1))))
        .thenComparing(Comparator.naturalOrder()));
    assertThat(sockets(listed(Shelf.job(), parts))).isEqualTo(pairs.subList(0, 20));
    assertThat(sockets(listed(Shelf.job(), parts)).get(0)).isEqualTo("ee");
    assertThat(sockets(listed(Shelf.job(), parts)).get(19))
        .as("18 = 16 + 2: the second by name")
        .isEqualTo("da");
  }

  @Test
  void fewer_pieces_come_first_unless_the_price_ranks() {
    Part.Socket odd = Shelf.socket(priced("cheap", "1"), "finch", "1/2 NPT female", 9.0);
    Part.Adapter reducer = adapter(priced("reducer", "2"), "3/8 NPT female", "1/2 NPT male");
    Part.Adapter nipple = adapter(priced("nipple", "2"), "3/8 NPT male", "1/2 NPT male");
    List<Part> parts = with(socket(priced("dear", "8"), 9.0), odd, reducer, nipple);
    assertThat(sockets(listed(Shelf.job(), parts)))
        .containsExactly("deardear", "cheapdear", "dearcheap", "cheapcheap");
    assertThat(sockets(listed(Shelf.job().objective(Objective.LOWEST_PRICE), parts)))
        .as("1 + 2 is less than 8")
        .containsExactly("cheapcheap", "cheapdear", "dearcheap", "deardear");
  }

  @Test
  void of_adapters_the_cheapest_is_taken_of_those_the_widest_and_of_those_the_first_by_name() {
    Requirement.Builder half = Shelf.job().outlet(End.parse("1/2 NPT female"));
    Part.Adapter cheap = adapter(priced("cheap", "1"), "1/2 NPT male", "3/8 NPT male");
    Part.Adapter wide =
        new Part.Adapter(priced("wide", "2"), cheap.one(), cheap.other(), bit(12.0));
    Part.Adapter wider =
        new Part.Adapter(priced("wider", "1"), cheap.other(), cheap.one(), bit(13.0));
    Part.Adapter twin =
        new Part.Adapter(priced("twin", "1"), cheap.one(), cheap.other(), bit(13.0));
    Part.Socket socket = socket(priced("s", "10"), 9.0);
    assertThat(adapters(listed(half, with(socket, wide, cheap)).get(0), 0))
        .containsExactly("cheap");
    assertThat(adapters(listed(half, with(socket, wide, cheap, wider)).get(0), 0))
        .containsExactly("wider");
    assertThat(adapters(listed(half, with(socket, wide, cheap, wider, twin)).get(0), 0))
        .containsExactly("twin");
    assertThat(listed(half, with(socket, wide, cheap, wider, twin)))
        .as("the same parts with other adapters are one proposal")
        .hasSize(1);
    assertThat(adapters(listed(Shelf.job(), with(socket, wide, cheap)).get(0), 0))
        .as("none where none is needed")
        .isEmpty();
  }

  private static final List<Part.Adapter> STEPS = List.of(
      adapter(priced("1 to 3/4", "1"), "1 NPT male", "3/4 NPT female"),
      adapter(priced("3/4 to 1/2", "1"), "1/2 NPT female", "3/4 NPT male"),
      adapter(priced("1/2 to 3/8", "1"), "1/2 NPT male", "3/8 NPT male"));

  @Test
  void three_adapters_stand_in_a_row_and_never_four() {
    Part.Socket socket = socket(priced("s", "10"), 9.0);
    List<Part> parts = with(socket);
    parts.addAll(STEPS);
    Proposal three =
        listed(Shelf.job().outlet(End.parse("1 NPT female")), parts).get(0);
    assertThat(adapters(three, 0)).containsExactly("1 to 3/4", "3/4 to 1/2", "1/2 to 3/8");
    assertThat(three.price()).as("2 × 10 + 3 + 2 + 20 + 3").contains(Money.parse("48 EUR"));
    assertThat(three.pieces()).isEqualTo(8);
    parts.add(adapter(priced("a fourth", "1"), "1 1/4 NPT male", "1 NPT female"));
    List<Proposal> none = nearest(Shelf.job().outlet(End.parse("1 1/4 NPT female")), parts);
    assertThat(none.get(0).unmet()).extracting(Finding::rule).containsExactly(Rule.ENDS_MATE);
    assertThat(adapters(none.get(0), 0)).isEmpty();
  }

  @Test
  void one_kind_of_adapter_may_stand_at_several_joints() {
    Part.Hose female = new Part.Hose(
        priced("hose", "20"),
        Shelf.hose(facts("x"), 9.5, 10.0).bore(),
        Shelf.hose(facts("x"), 9.5, 10.0).conduit(),
        End.parse("3/8 NPT female"),
        End.parse("3/8 NPT female"));
    List<Part> parts = with(
        socket(priced("s", "10"), 9.0),
        adapter(priced("nipple", "1"), "3/8 NPT male", "3/8 NPT male"));
    parts.removeIf(Part.Hose.class::isInstance);
    parts.add(female);
    Proposal best = listed(Shelf.job(), parts).get(0);
    assertThat(adapters(best, 1)).containsExactly("nipple");
    assertThat(adapters(best, 2)).containsExactly("nipple");
    assertThat(best.run().names())
        .containsExactly("outlet coupling, s", "nipple", "hose", "nipple (2)", "tool coupling, s");
  }

  /**
   * By hand: a finch at both couplings is 2 × 5 + 4 + 4 = 18, a wren at both 2 × 4 + 1 + 20 = 29; each for itself, the
   * outlet takes the wren for 4 + 1 = 5 and the tool the finch for 5 + 4 = 9.
   */
  @Test
  void couplings_of_one_profile_are_chosen_together() {
    List<Part> parts = List.of(
        Shelf.socket(priced("finch socket", "5"), "finch", "3/8 NPT female", 9.0),
        Shelf.plug(priced("finch hose plug", "4"), "finch", "3/8 NPT female"),
        Shelf.plug(priced("finch tool plug", "4"), "finch", "1/4 NPT male"),
        Shelf.socket(priced("wren socket", "4"), "wren", "3/8 NPT female", 9.0),
        Shelf.plug(priced("wren hose plug", "1"), "wren", "3/8 NPT female"),
        Shelf.plug(priced("wren tool plug", "20"), "wren", "1/4 NPT male"),
        Shelf.hose(priced("hose", "20"), 9.5, 10.0));
    assertThat(profiles(listed(Shelf.job(), parts)))
        .containsExactly("finch finch 38", "wren wren 49", "wren finch 34", "finch wren 53");
    Requirement.Builder tied = Requirement.forTool(
            Shelf.job().build().demand(), Shelf.job().build().least())
        .toolRating(GaugePressure.ofBar(7.5))
        .toolInlet(End.parse("1/4 NPT female"))
        .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
        .outlet(End.parse("3/8 NPT male"))
        .environment(Environment.INDOORS)
        .lubrication(Lubrication.DRY)
        .layout(Layout.of(List.of(
            Slot.coupling("outlet"),
            Slot.hose("hose", Length.ofMetres(10.0)),
            Slot.coupling("tool").ofSameProfileAs("outlet"))));
    assertThat(profiles(listed(tied, parts))).containsExactly("finch finch 38", "wren wren 49");
  }

  private static List<String> profiles(List<Proposal> proposals) {
    return proposals.stream()
        .map(each -> each.plug("outlet").profile() + " " + each.plug("tool").profile() + " "
            + each.price().orElseThrow().amount().stripTrailingZeros().toPlainString())
        .toList();
  }

  private static Part.Regulator regulator(double droopBar) {
    return new Part.Regulator(
        priced("regulator", "30"),
        capacity(20.0),
        PressureDrop.ofBar(droopBar),
        FreeAirFlow.ofAnrLitresPerSecond(10.0),
        End.parse("3/8 NPT male"),
        End.parse("3/8 NPT female"));
  }

  private static Requirement.Builder laid(Slot... slots) {
    return Requirement.forTool(FreeAirFlow.ofAnrLitresPerSecond(10.0), GaugePressure.ofBar(4.0))
        .toolRating(GaugePressure.ofBar(7.5))
        .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
        .outlet(End.parse("3/8 NPT male"))
        .toolInlet(End.parse("3/8 NPT female"))
        .environment(Environment.INDOORS)
        .lubrication(Lubrication.DRY)
        .layout(Layout.of(List.of(slots)));
  }

  /** A regulator evens out what stands in front of it: behind it the wider socket keeps no more, and names decide. */
  @Test
  void in_front_of_a_regulator_more_pressure_is_no_merit_behind_it_it_is() {
    Slot.Coupling outlet = Slot.coupling("outlet");
    Slot.Regulated regulated = Slot.regulator("regulator", GaugePressure.ofBar(5.0));
    Slot.Hose hose = Slot.hose("hose", Length.ofMetres(10.0));
    List<Part> parts = with(
        socket(priced("a narrow", "10"), 8.0),
        socket(priced("b wide", "10"), 12.0),
        regulator(0.0));
    assertThat(listed(laid(outlet, regulated, hose), parts))
        .extracting(each -> each.socket("outlet").id())
        .containsExactly("a narrow", "b wide");
    List<Part> behind = with(
        socket(priced("a narrow", "10"), 8.0),
        socket(priced("b wide", "10"), 12.0),
        regulator(0.0));
    behind.add(adapter(priced("nipple", "1"), "3/8 NPT male", "3/8 NPT male"));
    assertThat(listed(laid(regulated, outlet, hose).outlet(End.parse("3/8 NPT female")), behind))
        .extracting(each -> each.socket("outlet").id())
        .containsExactly("b wide", "a narrow");
  }

  @Test
  void a_slot_takes_only_parts_of_its_kind_and_what_is_there_stays() {
    Part.Device filter = device("filter", DeviceKind.FILTER);
    Part.Device oiler = device("valve", DeviceKind.SHUT_OFF_VALVE);
    Part.Device other = device("b filter", DeviceKind.FILTER);
    Slot.Hose hose = Slot.hose("hose", Length.ofMetres(10.0));
    List<Part> parts = with(filter, oiler, other);
    assertThat(listed(laid(Slot.inLine("wall", DeviceKind.FILTER), hose), parts))
        .extracting(each -> each.parts().get(0).id())
        .containsExactly("b filter", "filter");
    assertThat(listed(laid(Slot.inLine("wall", oiler), hose), parts))
        .extracting(each -> each.parts().get(0).id())
        .containsExactly("valve");
  }

  private static Part.Device device(String id, DeviceKind kind) {
    return new Part.Device(
        priced(id, "10"),
        kind,
        capacity(12.0),
        End.parse("3/8 NPT female"),
        End.parse("3/8 NPT female"));
  }

  @Test
  void a_cheap_part_of_which_something_must_be_asked_comes_after_a_dear_one_that_is_known() {
    CapacityRange range =
        new CapacityRange(capacity(2.0), capacity(12.0), Source.derived("made up"));
    Part.Socket doubtful = new Part.Socket(
        priced("doubtful", "1"), Set.of("finch"), End.parse("3/8 NPT female"), range);
    List<Proposal> listed =
        listed(Shelf.job(), with(doubtful, socket(priced("known", "50"), 12.0)));
    assertThat(sockets(listed))
        .containsExactly("knownknown", "doubtfulknown", "knowndoubtful", "doubtfuldoubtful");
    assertThat(listed.get(0).open()).isEmpty();
    assertThat(listed.get(1).open()).extracting(Finding::rule).containsExactly(Rule.AIR_AT_TOOL);
  }

  /** A job that one kind of plug serves at both couplings, so that misses differ only by what is varied. */
  private static Requirement.Builder ofOnePlug() {
    return Shelf.job().toolInlet(End.parse("3/8 NPT male"));
  }

  private static List<Part> withOnePlug(Part... more) {
    List<Part> parts =
        new ArrayList<>(List.of(Shelf.plug(priced("plug", "3"), "finch", "3/8 NPT female")));
    parts.addAll(List.of(more));
    return parts;
  }

  /** 10 m are needed: 9.5 m lack 5 %, 9 m lack 10 %, 10 m that is too weak breaks a whole rule. */
  @Test
  void a_miss_is_the_nearer_the_less_it_lacks_and_a_broken_rule_is_farther_than_a_short_hose() {
    List<Part> parts = withOnePlug(
        socket(priced("s", "10"), 9.0),
        Shelf.hose(priced("9 m", "5"), 9.5, 9.0),
        Shelf.hose(priced("9.5 m", "90"), 9.5, 9.5),
        Shelf.hose(priced("too weak", "1").withRating(GaugePressure.ofBar(6.0)), 9.5, 10.0),
        Shelf.hose(
            priced("too weak and short", "1").withRating(GaugePressure.ofBar(6.0)), 9.5, 9.9));
    assertThat(hoses(nearest(ofOnePlug(), parts)))
        .containsExactly("9.5 m", "9 m", "too weak", "too weak and short");
  }

  @Test
  void a_miss_that_lacks_little_air_is_nearer_than_one_that_starves() {
    List<Part> parts = withOnePlug(
        socket(priced("s", "10"), 9.0),
        Shelf.hose(priced("6.5 mm", "90"), 6.5, 10.0),
        Shelf.hose(priced("6.4 mm", "50"), 6.4, 10.0),
        Shelf.hose(priced("2 mm", "1"), 2.0, 10.0));
    assertThat(hoses(nearest(ofOnePlug(), parts))).containsExactly("6.5 mm", "6.4 mm", "2 mm");
    Proposal starved = nearest(ofOnePlug(), parts).get(2);
    assertThat(Shelf.pascalsAtTool(starved)).isNegative();
  }

  /** Fewer joints that nothing joins come first, whatever the parts cost. */
  @Test
  void of_misses_with_open_joints_the_one_with_fewer_is_nearer() {
    List<Part> parts = withOnePlug(
        Shelf.hose(priced("hose", "20"), 9.5, 10.0),
        Shelf.socket(priced("a british", "1"), "finch", "Rc 3/8 female", 9.0),
        Shelf.socket(priced("b american", "90"), "finch", "3/8 NPT female", 9.0));
    assertThat(sockets(listed(ofOnePlug(), parts)))
        .as("one fits")
        .containsExactly("b americanb american");
    assertThat(sockets(nearest(ofOnePlug().reach(Length.ofMetres(11.0)), parts)))
        .containsExactly(
            "b americanb american",
            "a britishb american",
            "b americana british",
            "a britisha british");
  }

  @Test
  void the_rules_that_the_job_breaks_by_itself_change_no_order() {
    List<Part> parts = withOnePlug(
        Shelf.hose(priced("hose", "20"), 9.5, 10.0),
        socket(priced("b", "10"), 9.0),
        socket(priced("a", "12"), 9.0));
    assertThat(sockets(nearest(ofOnePlug().toolRating(GaugePressure.ofBar(6.9)), parts)))
        .containsExactly("bb", "ab", "ba", "aa");
  }
}
