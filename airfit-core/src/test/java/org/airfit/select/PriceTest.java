package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.airfit.joint.End;
import org.airfit.quantity.Money;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What parts cost, and choosing by it. */
class PriceTest {

  private static PartFacts priced(String id, String price) {
    return Shelf.steel(id).withPrice(Money.parse(price));
  }

  /** The wide socket costs more than the middling one, which does as well. */
  private static List<Part> parts() {
    return new ArrayList<>(List.of(
        Shelf.socket(priced("wide", "20 EUR"), "finch", "3/8 NPT female", 9.0),
        Shelf.socket(priced("middling", "14.50 EUR"), "finch", "3/8 NPT female", 8.0),
        Shelf.plug(priced("hose plug", "3.25 EUR"), "finch", "3/8 NPT female"),
        Shelf.plug(priced("tool plug", "2.75 EUR"), "finch", "1/4 NPT male"),
        Shelf.hose(priced("hose", "40 EUR"), 9.5, 10.0)));
  }

  private static Selection.Proposals fitting(Objective ranking, List<Part> parts) {
    Selection answer = Selection.of(Shelf.job().objective(ranking).build(), Catalogue.of(parts));
    assertThat(answer).isInstanceOf(Selection.Proposals.class);
    return (Selection.Proposals) answer;
  }

  @Test
  void of_as_many_pieces_the_cheapest_come_first_and_without_prices_pressure_decides() {
    assertThat(Shelf.job().build().objective()).isEqualTo(Objective.FEWEST_PIECES);
    Selection.Proposals pieces = fitting(Objective.FEWEST_PIECES, parts());
    assertThat(pieces.best().socket("outlet").id()).isEqualTo("middling");
    assertThat(pieces.whyBest())
        .contains(
            "fewest pieces to buy, of those its couplings have the fewest profiles, and of those that have"
                + " all prices known the parts in its line cost least")
        .contains("5 pieces to buy in its line, 75.00 EUR,");
    List<Part> unpriced = new ArrayList<>(Shelf.parts());
    unpriced.add(Shelf.socket(Shelf.steel("wider"), "finch", "3/8 NPT female", 9.5));
    Selection.Proposals pressure = fitting(Objective.FEWEST_PIECES, unpriced);
    assertThat(pressure.best().socket("outlet").id()).isEqualTo("wider");
    assertThat(pressure.whyBest())
        .contains("fewest profiles, and of those it keeps the most pressure");
  }

  /** An adapter costs a piece: with the same end the dearer socket needs fewer pieces, and fewer pieces come first. */
  @Test
  void fewer_pieces_come_before_a_lower_price_and_the_other_way_round_where_price_ranks() {
    List<Part> parts = parts();
    parts.removeIf(part -> part.id().equals("middling"));
    parts.add(Shelf.socket(priced("cheap", "1 EUR"), "finch", "1/2 NPT female", 9.0));
    parts.add(new Part.Adapter(
        priced("reducer", "2 EUR"),
        End.parse("3/8 NPT female"),
        End.parse("1/2 NPT male"),
        Shelf.adapter("any", "3/8 NPT female", "1/2 NPT male").conduit()));
    assertThat(fitting(Objective.FEWEST_PIECES, parts).best().socket("outlet").id())
        .isEqualTo("wide");
    Proposal cheapest = fitting(Objective.LOWEST_PRICE, parts).best();
    assertThat(cheapest.socket("outlet").id()).isEqualTo("cheap");
    assertThat(cheapest.pieces()).isEqualTo(7);
  }

  @Test
  void the_lowest_price_comes_first_where_it_is_asked_for() {
    Selection.Proposals price = fitting(Objective.LOWEST_PRICE, parts());
    assertThat(price.best().socket("outlet").id()).isEqualTo("middling");
    assertThat(price.best().socket("tool").id()).isEqualTo("middling");
    assertThat(price.best().price()).contains(Money.parse("75 EUR"));
    assertThat(price.whyBest())
        .contains("the parts in its line cost least: 5 pieces to buy in its line, 75.00 EUR,");
    assertThat(price.proposals())
        .isSortedAccordingTo(
            (one, other) -> one.price().orElseThrow().compareTo(other.price().orElseThrow()));
  }

  @Test
  void what_has_no_price_comes_after_what_has_one_and_the_answer_says_so() {
    List<Part> parts = parts();
    parts.add(Shelf.socket(Shelf.steel("gift"), "finch", "3/8 NPT female", 9.5));
    List<Proposal> ranking = fitting(Objective.LOWEST_PRICE, parts).proposals();
    assertThat(ranking.get(0).unpriced()).isEmpty();
    assertThat(ranking)
        .extracting(p -> p.unpriced().size() > 0)
        .as("known first")
        .isSortedAccordingTo(Boolean::compare);
    assertThat(ranking.get(ranking.size() - 1).priceInWords())
        .contains("46.00 EUR without part gift, of unknown price");
    List<Part> hoseUnknown = parts();
    hoseUnknown.removeIf(Part.Hose.class::isInstance);
    hoseUnknown.add(Shelf.hose(Shelf.steel("hose"), 9.5, 10.0));
    assertThat(fitting(Objective.LOWEST_PRICE, hoseUnknown).whyBest())
        .contains("fewest pieces of unknown price, and of those the known prices sum to the least")
        .doesNotContain("cost least")
        .contains("35.00 EUR without part hose, of unknown price");
  }

  @Test
  void without_any_price_nothing_is_said_of_it() {
    Proposal best =
        fitting(Objective.LOWEST_PRICE, new ArrayList<>(Shelf.parts())).best();
    assertThat(best.price()).isEmpty();
    assertThat(best.priceInWords()).isEmpty();
    assertThat(best.unpriced()).hasSize(4);
  }

  @Test
  void the_parts_list_tells_price_each_and_of_all() {
    List<BillLine> list = Shelf.lines(fitting(Objective.LOWEST_PRICE, parts()).best());
    BillLine sockets = list.get(0);
    assertThat(sockets.quantity()).isEqualTo(2);
    assertThat(sockets.priceEach()).contains(Money.parse("14.50 EUR"));
    assertThat(sockets.price()).contains(Money.parse("29 EUR"));
    assertThat(list.stream().flatMap(line -> line.price().stream()).reduce(Money::plus))
        .as("the lines sum to the whole")
        .isEqualTo(fitting(Objective.LOWEST_PRICE, parts()).best().price());
  }

  @Test
  void what_is_there_already_costs_nothing() {
    List<Part> parts = parts();
    parts.add(Shelf.hose(priced("old hose", "99 EUR").asExisting(), 9.5, 10.0));
    Proposal best = fitting(Objective.LOWEST_PRICE, parts).best();
    assertThat(best.hose("hose").id()).isEqualTo("old hose");
    assertThat(best.price()).contains(Money.parse("35 EUR"));
    assertThat(Shelf.lines(best))
        .filteredOn(BillLine::existing)
        .singleElement()
        .extracting(BillLine::price)
        .isEqualTo(Optional.empty());
  }

  @Test
  void prices_in_two_currencies_are_refused() {
    List<Part> parts = parts();
    parts.add(Shelf.plug(priced("other", "3 USD"), "finch", "3/8 NPT female"));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Catalogue.of(parts))
        .withMessageStartingWith("prices of a catalogue must be in one currency, were 20 EUR")
        .withMessageContaining("3 USD for part other (other)")
        .withMessageContaining("airfit knows no rates");
  }

  @ParameterizedTest
  @ValueSource(strings = {"-0.01", "100000000", "0.00001", "12345.67891"})
  void prices_out_of_range_or_finer_than_any_currency_are_refused(String amount) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Shelf.steel("valve").withPrice(new Money(new BigDecimal(amount), "EUR")))
        .withMessageStartingWith("price of part valve must be in [0, 10^8) with at most 4 decimals")
        .withMessageContaining("was " + amount + " EUR");
  }

  @ParameterizedTest
  @ValueSource(strings = {"0", "0.0001", "99999999.9999", "1.50000000"})
  void prices_at_the_bounds_are_taken(String amount) {
    Money price = new Money(new BigDecimal(amount), "EUR");
    assertThat(Shelf.steel("valve").withPrice(price).price()).contains(price);
    assertThatCode(() -> Objective.LOWEST_PRICE.cost(Shelf.steel("valve").withPrice(price)))
        .doesNotThrowAnyException();
  }

  /** So many pieces a layout holds at most; what nothing can be joined to costs more than all of them. */
  @Test
  void sums_of_the_dearest_pieces_do_not_spill_into_the_count_of_unknown_ones() {
    PartFacts facts =
        Shelf.steel("dear").withPrice(new Money(new BigDecimal("99999999.9999"), "EUR"));
    for (Objective objective : Objective.values()) {
      long dearest = objective.cost(facts);
      long unknown = objective.cost(Shelf.steel("unknown"));
      long free = objective.cost(Shelf.steel("free").withPrice(new Money(BigDecimal.ZERO, "EUR")));
      assertThat(127L * (dearest - free)).isLessThan(unknown - free);
      assertThat(127L * unknown).isPositive().isLessThan(Ahead.NEVER);
    }
    assertThat(127L
            * Objective.LOWEST_PRICE.cost(
                Shelf.steel("free").withPrice(new Money(BigDecimal.ZERO, "EUR"))))
        .isLessThan(Objective.LOWEST_PRICE.cost(
            Shelf.steel("cheap").withPrice(new Money(new BigDecimal("0.0001"), "EUR"))));
  }
}
