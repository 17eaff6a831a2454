package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.airfit.joint.End;
import org.airfit.plant.Regulator;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.Money;
import org.junit.jupiter.api.Test;

/** What stands first of proposals that break as little and ask as much: little doubt, one profile, one standard. */
class RankedTest {

  private static final End FEMALE = End.parse("3/8 NPT female");

  private static PartFacts priced(String id, String price) {
    return Shelf.steel(id).withPrice(Money.parse(price));
  }

  private static Proposal best(double needed, Objective objective, Part... hoses) {
    Requirement job = Shelf.cheapest(
            Requirement.forTool(FreeAirFlow.ofAnrLitresPerSecond(10.0), GaugePressure.ofBar(needed))
                .toolInlet(FEMALE))
        .outlet(FEMALE)
        .highest(GaugePressure.ofBar(10.0))
        .regulated()
        .droop(Regulator.UNTOLD_DROOP)
        .objective(objective)
        .layout(Layout.of(List.of(Slot.hose("hose", Length.ofMetres(10.0)))))
        .build();
    return ((Selection.Proposals) Selection.of(job, Catalogue.of(List.of(hoses)))).best();
  }

  /**
   * It holds from 6 to 7 bar(g), for 6.5: behind the wide hose about half is enough, behind the narrow one much less.
   */
  @Test
  void of_what_depends_the_one_comes_first_that_is_enough_in_more_of_what_can_be() {
    Part narrow = Shelf.hose(priced("narrow", "10 EUR"), 9.5, 10.0);
    Part wide = Shelf.hose(priced("wide", "90 EUR"), 19.0, 10.0);
    for (Objective objective : Objective.values()) {
      Proposal best = best(6.5, objective, narrow, wide);
      assertThat(best.open()).extracting(Finding::rule).contains(Rule.AIR_AT_TOOL);
      assertThat(best.hose("hose").id()).isEqualTo("wide");
    }
  }

  /** 19 and 19.1 mm differ by far less than a tenth: the cheaper is as good. */
  @Test
  void of_what_is_enough_in_as_many_tenths_the_price_decides() {
    Part cheap = Shelf.hose(priced("cheap", "10 EUR"), 19.0, 10.0);
    Part dear = Shelf.hose(priced("dear", "11 EUR"), 19.1, 10.0);
    assertThat(best(6.45, Objective.FEWEST_PIECES, cheap, dear).hose("hose").id())
        .isEqualTo("cheap");
  }

  /** By hand, of 4 bar(g) at least and 5 at most: from 3 to 5 the half is enough, from 4.9 nearly all. */
  @Test
  void doubt_is_counted_in_tenths_of_what_can_arrive() {
    Leg.Tool tool = new Leg.Tool(0, 4.0e5, 4.0e5);
    assertThat(tool.doubt(3.0e5, 5.0e5)).isEqualTo(5);
    assertThat(tool.doubt(3.99e5, 5.0e5)).isEqualTo(1);
    assertThat(tool.doubt(3.0e5, 4.0e5)).isEqualTo(10);
    assertThat(tool.doubt(4.0e5, 5.0e5)).as("enough at worst").isZero();
    assertThat(tool.doubt(3.0e5, 3.9e5)).as("too little at best is a miss").isZero();
    assertThat(tool.doubt(SearchAir.STARVED, 8.0e5)).as("no air is no pressure").isEqualTo(5);
    assertThat(new Leg.Tool(0, 5.0e5, 4.0e5).doubt(4.5e5, 5.0e5))
        .as("1 of 1.5 bar")
        .isEqualTo(4);
  }

  private static List<Part> ofTwoProfiles(String finchPlug, String wrenPlug) {
    return List.of(
        Shelf.socket(priced("finch socket", "10 EUR"), "finch", "3/8 NPT female", 9.0),
        Shelf.plug(priced("finch hose plug", finchPlug), "finch", "3/8 NPT female"),
        Shelf.plug(priced("finch tool plug", "3 EUR"), "finch", "1/4 NPT male"),
        Shelf.socket(priced("wren socket", "10 EUR"), "wren", "3/8 NPT female", 9.0),
        Shelf.plug(priced("wren hose plug", wrenPlug), "wren", "3/8 NPT female"),
        Shelf.hose(priced("hose", "20 EUR"), 12.7, 10.0));
  }

  private static List<String> profiles(Objective objective) {
    Requirement job = Shelf.job().objective(objective).build();
    Proposal best = ((Selection.Proposals)
            Selection.of(job, Catalogue.of(ofTwoProfiles("3.02 EUR", "3.00 EUR"))))
        .best();
    return List.of(best.plug("outlet").profile(), best.plug("tool").profile());
  }

  /** The wren at the outlet would save two cents, and the tool has a plug of the finch alone. */
  @Test
  void one_profile_throughout_is_worth_some_cents_unless_the_lowest_price_is_asked_for() {
    assertThat(profiles(Objective.FEWEST_PIECES)).containsExactly("finch", "finch");
    assertThat(profiles(Objective.LOWEST_PRICE)).containsExactly("wren", "finch");
  }

  /**
   * With one wanted the cheapest is found first; it has two profiles, and must not cut off what has one, though that
   * costs more.
   */
  @Test
  void one_profile_throughout_is_found_also_where_only_one_proposal_is_wanted() {
    Catalogue catalogue = Catalogue.of(ofTwoProfiles("30 EUR", "3 EUR"));
    Requirement job = Shelf.job().objective(Objective.FEWEST_PIECES).build();
    Proposal only = new PartSearch(job, catalogue, 1).fitting().get(0);
    assertThat(only.plug("outlet").profile()).isEqualTo("finch");
    assertThat(only.plug("tool").profile()).isEqualTo("finch");
  }

  /** An outlet of G 1/2: a socket of G 1/4 is nearer than one of 1/2 NPT, and the families are named. */
  @Test
  void a_miss_of_the_same_standard_is_nearer_than_one_of_another() {
    List<Part> parts = new ArrayList<>(Shelf.parts());
    parts.removeIf(Part.Socket.class::isInstance);
    parts.add(Shelf.socket(priced("of 1/2 NPT", "1 EUR"), "finch", "1/2 NPT male", 9.0));
    parts.add(Shelf.socket(priced("of G 1/4", "40 EUR"), "finch", "G 1/4 male", 9.0));
    parts.add(Shelf.socket(priced("at the hose", "10 EUR"), "finch", "3/8 NPT female", 9.0));
    Requirement job = Shelf.job().outlet(End.parse("G 1/2 female")).build();
    Proposal nearest = ((Selection.NothingFits) Selection.of(job, Catalogue.of(parts)))
        .nearest()
        .get(0);
    assertThat(nearest.socket("outlet").id()).isEqualTo("of G 1/4");
    List<Part> foreign = new ArrayList<>(parts);
    foreign.removeIf(part -> part.id().equals("of G 1/4"));
    String said = ((Selection.NothingFits) Selection.of(job, Catalogue.of(foreign)))
        .toGive()
        .get(0);
    assertThat(said).contains("The threads are of two standards, ").contains("(55°)", "(60°)");
  }

  /** What is over a need by a tenth of the loss or less is just enough. */
  @Test
  void just_enough_is_what_a_tenth_more_of_loss_would_use_up() {
    Proposal best =
        best(5.0, Objective.FEWEST_PIECES, Shelf.hose(priced("hose", "9 EUR"), 9.5, 10.0));
    double lost = 6.0e5 - Shelf.pascalsAtTool(best);
    double arrives = Shelf.pascalsAtTool(best);
    best.result()
        .fold(
            delivered -> {
              assertThat(delivered.justEnough(GaugePressure.ofPascals(arrives - 0.099 * lost)))
                  .isPresent();
              assertThat(delivered.justEnough(GaugePressure.ofPascals(arrives))).isPresent();
              assertThat(delivered.justEnough(GaugePressure.ofPascals(arrives - 0.101 * lost)))
                  .isEmpty();
              assertThat(delivered.justEnough(GaugePressure.ofPascals(arrives + 1.0)))
                  .isEmpty();
              return delivered;
            },
            starved -> starved);
    Proposal just = best(
        (arrives - 0.05 * lost) / 1.0e5,
        Objective.FEWEST_PIECES,
        Shelf.hose(priced("hose", "9 EUR"), 9.5, 10.0));
    assertThat(just.of(Rule.AIR_AT_TOOL).reason()).contains("That is just enough, with ");
    Part wide = Shelf.hose(priced("hose", "9 EUR"), 19.0, 10.0);
    double left = Shelf.pascalsAtTool(best(5.0, Objective.FEWEST_PIECES, wide)) / 1.0e5;
    Proposal belowGauge = best(left - 0.15, Objective.FEWEST_PIECES, wide);
    assertThat(belowGauge.of(Rule.AIR_AT_TOOL).outcome()).isEqualTo(RuleOutcome.MET);
    assertThat(belowGauge.of(Rule.AIR_AT_TOOL).reason())
        .endsWith(" That is just enough: the 0.15 bar to spare are less than a usual gauge may be"
            + " off, 0.16 bar (class 1.6 of EN 837-1, 0 to 10 bar).");
    assertThat(best(left - 0.17, Objective.FEWEST_PIECES, wide)
            .of(Rule.AIR_AT_TOOL)
            .reason())
        .doesNotContain("just enough");
  }

  @Test
  void a_price_has_two_decimals_and_yen_have_none() {
    assertThat(Money.parse("0.3 USD").shown()).isEqualTo("0.30 USD");
    assertThat(Money.parse("0.155 USD").shown()).isEqualTo("0.155 USD");
    assertThat(Money.parse("30 JPY").shown()).isEqualTo("30 JPY");
  }

  /** Both sockets are dragged, and of one only there is a guarded one: that is nearer than two open sleeves. */
  @Test
  void the_nearest_miss_has_the_fewest_parts_that_break_a_rule_whatever_they_cost() {
    Requirement job = Shelf.cheapest(
            Requirement.forTool(FreeAirFlow.ofAnrLitresPerSecond(4.0), GaugePressure.ofBar(5.0))
                .toolInlet(End.parse("1/4 NPT female")))
        .outlet(FEMALE)
        .dragged()
        .layout(Layout.of(List.of(
            Slot.hose("first", Length.ofMetres(10.0)),
            Slot.coupling("bench").ofProfile("finch"),
            Slot.hose("second", Length.ofMetres(10.0)),
            Slot.coupling("tool").ofProfile("wren"))))
        .build();
    Selection.NothingFits none = (Selection.NothingFits) Selection.of(
        job,
        Catalogue.of(List.of(
            Shelf.socket(priced("finch open", "10 EUR"), "finch", "3/8 NPT female", 9.0),
            Shelf.socket(
                priced("finch guarded", "90 EUR").withSleeveGuarded(),
                "finch",
                "3/8 NPT female",
                9.0),
            Shelf.socket(priced("wren open", "10 EUR"), "wren", "3/8 NPT female", 9.0),
            Shelf.plug(priced("finch plug", "3 EUR"), "finch", "3/8 NPT female"),
            Shelf.plug(priced("wren plug", "3 EUR"), "wren", "1/4 NPT male"),
            Shelf.hose(priced("hose", "20 EUR"), 12.7, 10.0))));
    Proposal nearest = none.nearest().get(0);
    assertThat(nearest.unmet()).extracting(Finding::rule).containsExactly(Rule.SLEEVE_GUARDED);
    assertThat(nearest.socket("bench").id()).isEqualTo("finch guarded");
    assertThat(nearest.unmet().get(0).reason())
        .isEqualTo("part wren open has an open sleeve that an edge can pull back.");
  }
}
