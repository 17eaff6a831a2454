package org.airfit.joint;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.airfit.quantity.Length;
import org.airfit.source.Basis;
import org.airfit.working.UnitSystem;
import org.assertj.core.api.ThrowableAssert;
import org.junit.jupiter.api.Test;

class ChainTest {

  /** An adapter of the tests. */
  private record Piece(String name, End one, End other, Optional<Length> smallestBore)
      implements TwoEnded {}

  private static Piece piece(String name, String one, String other, double boreMillimetres) {
    return new Piece(
        name, End.parse(one), End.parse(other), Optional.of(Length.ofMillimetres(boreMillimetres)));
  }

  private static final Piece BUSHING = piece("bushing", "3/8 NPT male", "1/4 NPT female", 9.0);
  private static final Piece NIPPLE = piece("nipple", "1/4 NPT male", "1/4 NPT male", 7.7);
  private static final Piece WIDE_NIPPLE =
      piece("wide nipple", "1/4 NPT male", "1/4 NPT male", 9.2);
  private static final Piece TAIL = piece("hose tail", "1/4 NPT male", "3/8 in barb", 7.0);
  private static final Piece CHANGER = piece("changer", "1/4 NPT male", "G 1/4 male", 8.0);

  private static Chain<Piece> chain(String from, String to, Piece... stock) {
    return Chain.between(End.parse(from), End.parse(to), List.of(stock));
  }

  @Test
  void ends_that_go_together_need_nothing_between() {
    Chain<Piece> chain = chain("1/4 NPT male", "1/4 NPT female", BUSHING);
    assertThat(chain.verdict()).isEqualTo(ChainVerdict.DIRECT);
    assertThat(chain.adapters()).isEmpty();
    assertThat(chain.smallestBore()).isEmpty();
    assertThat(chain.cautions()).isEmpty();
    assertThat(chain.inWords()).endsWith("they go straight together");
    assertThat(chain.matings()).hasSize(1);
  }

  @Test
  void the_shortest_chain_is_found_with_its_narrowest_bore() {
    Chain<Piece> chain = chain("3/8 NPT female", "3/8 in hose", NIPPLE, CHANGER, BUSHING, TAIL);
    assertThat(chain.verdict()).isEqualTo(ChainVerdict.THROUGH_ADAPTERS);
    assertThat(chain.adapters()).containsExactly(BUSHING, TAIL);
    assertThat(chain.smallestBore()).contains(Length.ofMillimetres(7.0));
    assertThat(chain.matings()).hasSize(3).allMatch(mating -> mating.verdict().isSound());
    assertThat(chain.inWords())
        .isEqualTo(
            "3/8 NPT female to 3/8 in hose: through bushing (bore 9 mm), then hose tail (bore 7 mm)");
    assertThat(chain.working().toText())
        .contains("bushing, narrowest bore 9 mm")
        .contains("Narrowest bore on the way: 7 mm")
        .contains("ASME B1.20.1");
  }

  @Test
  void an_adapter_may_be_turned_round() {
    Chain<Piece> chain = chain("G 1/4 female", "1/4 NPT female", CHANGER);
    assertThat(chain.adapters()).containsExactly(CHANGER);
    assertThat(chain.matings().get(0).verdict()).isEqualTo(MatingVerdict.SEALS_ON_FACE);
    assertThat(chain.cautions()).isEmpty();
  }

  @Test
  void of_equally_short_chains_the_widest_is_taken_whatever_the_order_of_the_stock() {
    List<Piece> stock = new ArrayList<>(List.of(NIPPLE, WIDE_NIPPLE));
    End female = End.parse("1/4 NPT female");
    assertThat(Chain.between(female, female, stock).adapters()).containsExactly(WIDE_NIPPLE);
    Collections.reverse(stock);
    assertThat(Chain.between(female, female, stock).adapters()).containsExactly(WIDE_NIPPLE);
  }

  @Test
  void a_narrow_short_chain_comes_before_a_wide_long_one() {
    Piece narrow = piece("reducing nipple", "3/8 NPT male", "1/4 NPT male", 4.0);
    Chain<Piece> chain = chain("3/8 NPT female", "1/4 NPT female", BUSHING, WIDE_NIPPLE, narrow);
    assertThat(chain.adapters()).containsExactly(narrow);
  }

  @Test
  void a_piece_of_which_nobody_told_the_bore_comes_after_one_that_is_known() {
    Piece untold = new Piece("untold nipple", NIPPLE.one(), NIPPLE.other(), Optional.empty());
    End female = End.parse("1/4 NPT female");
    assertThat(Chain.between(female, female, List.of(untold, NIPPLE)).adapters())
        .containsExactly(NIPPLE);
    assertThat(Chain.between(female, female, List.of(NIPPLE, untold)).adapters())
        .containsExactly(NIPPLE);
    Chain<Piece> alone = Chain.between(female, female, List.of(untold));
    assertThat(alone.smallestBore()).isEmpty();
    assertThat(alone.inWords())
        .isEqualTo("1/4 NPT female to 1/4 NPT female: through untold nipple");
    assertThat(alone.working().toText())
        .contains("The adapters named join them; their bores are not known.")
        .doesNotContain("narrowest");
  }

  /** Of two pieces alike the one that stands first in the stock, so that the answer does not jump about. */
  @Test
  void of_two_pieces_alike_the_first_of_the_stock_is_taken() {
    Piece twin = piece("twin of the nipple", "1/4 NPT male", "1/4 NPT male", 7.7);
    End female = End.parse("1/4 NPT female");
    assertThat(Chain.between(female, female, List.of(NIPPLE, twin)).adapters())
        .containsExactly(NIPPLE);
    assertThat(Chain.between(female, female, List.of(twin, NIPPLE)).adapters())
        .containsExactly(twin);
  }

  @Test
  void the_working_of_what_goes_together_or_is_not_joined_says_so() {
    assertThat(chain("1/4 NPT male", "1/4 NPT female").working().toText())
        .startsWith("1/4 NPT male to 1/4 NPT female")
        .contains("1/4 NPT male and 1/4 NPT female: Taper in taper of one standard")
        .contains("They go straight together.");
    assertThat(chain("1/4 NPT male", "R 1/4 male").working().toText())
        .contains("Both are male.", "Nothing joins them.");
    assertThat(chain("1/4 NPT male", "1/4 NPT female").inWords())
        .isEqualTo("1/4 NPT male to 1/4 NPT female: they go straight together");
  }

  @Test
  void a_stack_is_warned_of() {
    Chain<Piece> chain = chain("3/8 NPT female", "1/4 NPT female", BUSHING, NIPPLE);
    assertThat(chain.adapters()).hasSize(2);
    assertThat(chain.cautions()).singleElement().satisfies(caution -> {
      assertThat(caution.title()).isEqualTo("Stacked adapters");
      assertThat(caution.source().basis()).isEqualTo(Basis.COMMON_PRACTICE);
    });
  }

  @Test
  void what_nothing_joins_is_a_result() {
    Chain<Piece> chain = chain("3/8 NPT female", "R 1/4 male", BUSHING, NIPPLE, TAIL);
    assertThat(chain.verdict()).isEqualTo(ChainVerdict.NOT_JOINED);
    assertThat(chain.adapters()).isEmpty();
    assertThat(chain.smallestBore()).isEmpty();
    assertThat(chain.inWords()).contains("no chain of up to 3 of these adapters joins them");
    assertThat(chain("3/8 NPT female", "R 1/4 male").verdict()).isEqualTo(ChainVerdict.NOT_JOINED);
  }

  @Test
  void four_pieces_are_too_many() {
    Piece[] steps = {
      piece("2 to 1-1/2", "2 NPT male", "1-1/2 NPT female", 30),
      piece("1-1/2 to 1", "1-1/2 NPT male", "1 NPT female", 20),
      piece("1 to 3/4", "1 NPT male", "3/4 NPT female", 15),
      piece("3/4 to 1/2", "3/4 NPT male", "1/2 NPT female", 10)
    };
    assertThat(chain("2 NPT female", "3/4 NPT male", steps).adapters()).hasSize(3);
    assertThat(chain("2 NPT female", "1/2 NPT male", steps).verdict())
        .isEqualTo(ChainVerdict.NOT_JOINED);
  }

  @Test
  void a_mismatch_is_never_a_link() {
    Piece wrong = piece("half an answer", "1/2 NPT male", "1/4 NPT female", 9.0);
    assertThat(chain("G 1/2 female", "1/4 NPT male", wrong).verdict())
        .isEqualTo(ChainVerdict.NOT_JOINED);
  }

  @Test
  void a_chain_needs_one_joint_more_than_it_has_adapters() {
    End end = End.parse("1/4 NPT male");
    assertThatThrownBy(() -> new Chain<>(end, end, List.of(NIPPLE), List.of()))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("must be one more than the 1 adapters, were 0");
  }

  @Test
  void a_chain_cannot_be_made_up_of_pairs_that_do_not_follow_each_other() {
    End from = End.parse("1/4 NPT male");
    End to = End.parse("G 1/4 female");
    Piece adapter = piece("adapter", "1/4 NPT female", "G 1/4 male", 8.0);
    End dryseal = End.parse("1/4 NPTF female");
    Mating in = Mating.of(from, adapter.one());
    Mating out = Mating.of(adapter.other(), to);
    Chain<Piece> chain = new Chain<>(from, to, List.of(adapter), List.of(in, out));
    assertThat(chain).isEqualTo(Chain.between(from, to, List.of(adapter)));
    refused(() -> new Chain<>(to, to, List.of(adapter), List.of(in, out)), "mating 1 must be of");
    refused(
        () -> new Chain<>(from, from, List.of(adapter), List.of(in, out)), "mating 2 must be of");
    refused(
        () -> new Chain<>(from, to, List.of(adapter), List.of(Mating.of(from, dryseal), out)),
        "mating before adapter must be of 1/4 NPT female or G 1/4 male");
    End other = End.parse("G 1/2 female");
    refused(
        () -> new Chain<>(
            from, other, List.of(adapter), List.of(in, Mating.of(adapter.other(), other))),
        "must be sound");
    List<Mating> pairs = new ArrayList<>(List.of(in, out));
    Chain<Piece> kept = new Chain<>(from, to, List.of(adapter), pairs);
    pairs.clear();
    assertThat(kept.matings()).containsExactly(in, out);
    assertThat(kept.working(UnitSystem.US).toText()).contains("0.315 in");
  }

  private static void refused(ThrowableAssert.ThrowingCallable attempt, String problem) {
    assertThatThrownBy(attempt)
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining(problem);
  }
}
