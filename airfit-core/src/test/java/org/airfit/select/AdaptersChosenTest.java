package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.airfit.joint.End;
import org.airfit.joint.Mating;
import org.airfit.line.Conduit;
import org.airfit.quantity.Length;
import org.airfit.quantity.Money;
import org.junit.jupiter.api.Test;

/** Adapters are chosen with the other parts: what one is worth depends on the air that the others leave it. */
class AdaptersChosenTest {

  private static Part.Adapter nipple(String id, double boreMm, String price) {
    return new Part.Adapter(
        Shelf.steel(id).withPrice(Money.parse(price)),
        End.parse("3/8 NPT male"),
        End.parse("3/8 NPT male"),
        Conduit.of(
                Length.ofMillimetres(boreMm),
                Length.ofMillimetres(40.0),
                Length.ofMillimetres(0.01))
            .withFittings(1.5));
  }

  /** All parts are priced; the socket of the tool needs a nipple, because its plug's thread is female. */
  private static List<Part> parts(Part.Adapter... nipples) {
    List<Part> parts = new ArrayList<>(List.of(
        Shelf.socket(priced("wide", "20 EUR"), "finch", "3/8 NPT female", 9.0),
        Shelf.plug(priced("hose plug", "3 EUR"), "finch", "3/8 NPT female"),
        Shelf.hose(priced("hose", "40 EUR"), 9.5, 10.0)));
    parts.addAll(List.of(nipples));
    return parts;
  }

  private static PartFacts priced(String id, String price) {
    return Shelf.steel(id).withPrice(Money.parse(price));
  }

  private static Selection select(List<Part> parts, Objective objective) {
    return Selection.of(
        Shelf.job().toolInlet(End.parse("3/8 NPT female")).objective(objective).build(),
        Catalogue.of(parts));
  }

  private static List<String> adapters(Proposal proposal) {
    return proposal.joints().stream()
        .flatMap(joint -> joint.adapters().stream())
        .map(Part::id)
        .toList();
  }

  @Test
  void a_narrow_adapter_that_is_cheaper_does_not_hide_the_one_that_lets_the_air_through() {
    for (Objective objective : Objective.values()) {
      Selection without = select(parts(nipple("bored out", 9.0, "4 EUR")), objective);
      Selection with = select(
          parts(nipple("bored out", 9.0, "4 EUR"), nipple("narrow", 3.0, "1 EUR")), objective);
      assertThat(without).isInstanceOf(Selection.Proposals.class);
      assertThat(with).isInstanceOf(Selection.Proposals.class);
      assertThat(adapters(((Selection.Proposals) with).best())).containsExactly("bored out");
    }
  }

  @Test
  void of_two_that_let_the_air_through_the_cheaper_is_taken() {
    Selection answer = select(
        parts(nipple("bored out", 9.0, "4 EUR"), nipple("bored less", 8.0, "3 EUR")),
        Objective.FEWEST_PIECES);
    assertThat(adapters(((Selection.Proposals) answer).best())).containsExactly("bored less");
  }

  @Test
  void each_set_of_parts_is_listed_once() {
    Selection answer = select(
        parts(nipple("bored out", 9.0, "4 EUR"), nipple("bored less", 8.0, "3 EUR")),
        Objective.LOWEST_PRICE);
    assertThat(((Selection.Proposals) answer).proposals()).hasSize(1);
  }

  /** Both sockets break one rule; by name and price the one that lacks more comes first. */
  @Test
  void of_two_that_nothing_joins_the_nearer_is_the_one_that_lacks_fewer_adapters() {
    End outlet = Shelf.job().build().outlet();
    End near = End.parse("3/8 NPT male");
    End far = End.parse("1 1/2 NPT male");
    assertThat(Mating.of(outlet, near).between()).hasSize(1);
    assertThat(Mating.of(outlet, far).between()).hasSizeGreaterThan(1);
    List<Part> parts = parts();
    parts.removeIf(Part.Socket.class::isInstance);
    parts.add(Shelf.socket(priced("a far one", "1 EUR"), "finch", far.toString(), 9.0));
    parts.add(Shelf.socket(priced("the near one", "20 EUR"), "finch", near.toString(), 9.0));
    for (Objective objective : Objective.values()) {
      Selection.NothingFits miss = (Selection.NothingFits) Selection.of(
          Shelf.job().toolInlet(End.parse("3/8 NPT male")).objective(objective).build(),
          Catalogue.of(parts));
      assertThat(miss.nearest().get(0).parts())
          .extracting(Part::id)
          .contains("the near one")
          .doesNotContain("a far one");
    }
  }

  /** A garden hose is for water: nothing joins it, so that it is farther than whatever adapters would join. */
  @Test
  void what_no_standard_adapter_joins_is_never_near() {
    End outlet = Shelf.job().build().outlet();
    End water = End.parse("garden hose female");
    End far = End.parse("G 1/2 female");
    assertThat(Mating.of(outlet, water).between()).isEmpty();
    assertThat(Mating.of(outlet, far).between()).isNotEmpty();
    List<Part> parts = parts();
    parts.removeIf(Part.Socket.class::isInstance);
    parts.add(Shelf.socket(priced("a water hose's", "1 EUR"), "finch", water.toString(), 9.0));
    parts.add(Shelf.socket(priced("far", "90 EUR"), "finch", far.toString(), 9.0));
    for (Objective objective : Objective.values()) {
      Selection.NothingFits miss = (Selection.NothingFits) Selection.of(
          Shelf.job().toolInlet(End.parse("3/8 NPT male")).objective(objective).build(),
          Catalogue.of(parts));
      assertThat(miss.nearest().get(0).parts())
          .extracting(Part::id)
          .contains("far")
          .doesNotContain("a water hose's");
    }
  }

  @Test
  void the_miss_that_is_shown_first_is_one_that_a_person_would_call_near() {
    List<Part> parts = parts(nipple("bored out", 9.0, "4 EUR"));
    parts.removeIf(Part.Hose.class::isInstance);
    for (double metres : new double[] {5.0, 20.0, 50.0, 58.0}) {
      parts.add(Shelf.hose(priced("hose of " + metres, "40 EUR"), 25.0, metres));
    }
    Selection answer = Selection.of(
        Shelf.job()
            .toolInlet(End.parse("3/8 NPT female"))
            .reach(Length.ofMetres(60.0))
            .build(),
        Catalogue.of(parts));
    assertThat(answer).isInstanceOf(Selection.NothingFits.class);
    assertThat(((Selection.NothingFits) answer).nearest())
        .extracting(miss -> miss.hose("hose").conduit().length().metres())
        .containsExactly(58.0, 50.0, 20.0, 5.0);
  }

  @Test
  void a_hose_that_is_a_little_short_and_a_little_narrow_is_nearer_than_a_far_shorter_one() {
    List<Part> parts = parts(nipple("bored out", 9.0, "4 EUR"));
    parts.removeIf(Part.Hose.class::isInstance);
    parts.add(Shelf.hose(priced("stub", "9 EUR"), 9.5, 5.0));
    parts.add(Shelf.hose(priced("long", "90 EUR"), 11.0, 50.0));
    Selection answer = Selection.of(
        Shelf.job()
            .toolInlet(End.parse("3/8 NPT female"))
            .reach(Length.ofMetres(60.0))
            .build(),
        Catalogue.of(parts));
    Proposal nearest = ((Selection.NothingFits) answer).nearest().get(0);
    assertThat(nearest.unmet())
        .extracting(Finding::rule)
        .containsExactly(Rule.AIR_AT_TOOL, Rule.HOSE_REACHES);
    assertThat(nearest.hose("hose").id()).isEqualTo("long");
  }
}
