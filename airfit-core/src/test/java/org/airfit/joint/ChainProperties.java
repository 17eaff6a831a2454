package org.airfit.joint;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.airfit.quantity.Length;

class ChainProperties {

  private record Piece(String name, End one, End other, Optional<Length> smallestBore)
      implements TwoEnded {}

  @Provide
  Arbitrary<End> ends() {
    return Arbitraries.of(
            "1/4 NPT male",
            "1/4 NPT female",
            "3/8 NPT male",
            "3/8 NPT female",
            "G 1/4 male",
            "G 1/4 female",
            "R 1/4 male",
            "Rc 1/4 female",
            "3/8 in barb",
            "3/8 in hose")
        .map(End::parse);
  }

  @Provide
  Arbitrary<List<Piece>> stocks() {
    return Combinators.combine(ends(), ends(), Arbitraries.integers().between(3, 20))
        .as((one, other, bore) -> new Piece(
            one.label() + " x " + other.label(),
            one,
            other,
            Optional.of(Length.ofMillimetres(bore))))
        .list()
        .ofMaxSize(6);
  }

  @Property(tries = 400)
  void joining_backwards_takes_as_many_pieces_with_the_same_bore(
      @ForAll("ends") End from, @ForAll("ends") End to, @ForAll("stocks") List<Piece> stock) {
    Chain<Piece> there = Chain.between(from, to, stock);
    Chain<Piece> back = Chain.between(to, from, stock);
    assertThat(back.verdict()).isEqualTo(there.verdict());
    assertThat(back.adapters()).hasSameSizeAs(there.adapters());
    assertThat(back.smallestBore()).isEqualTo(there.smallestBore());
  }

  @Property(tries = 400)
  void more_stock_never_makes_a_chain_longer_or_narrower(
      @ForAll("ends") End from,
      @ForAll("ends") End to,
      @ForAll("stocks") List<Piece> stock,
      @ForAll("stocks") List<Piece> more) {
    Chain<Piece> few = Chain.between(from, to, stock);
    List<Piece> all = Stream.concat(stock.stream(), more.stream()).toList();
    Chain<Piece> many = Chain.between(from, to, all);
    if (few.verdict() != ChainVerdict.NOT_JOINED) {
      assertThat(many.adapters()).hasSizeLessThanOrEqualTo(few.adapters().size());
      if (many.adapters().size() == few.adapters().size() && few.smallestBore().isPresent()) {
        assertThat(many.smallestBore().orElseThrow())
            .isGreaterThanOrEqualTo(few.smallestBore().orElseThrow());
      }
    }
  }

  @Property(tries = 400)
  void every_link_of_a_chain_is_sound_and_each_adapter_is_gone_through(
      @ForAll("ends") End from, @ForAll("ends") End to, @ForAll("stocks") List<Piece> stock) {
    Chain<Piece> chain = Chain.between(from, to, stock);
    if (chain.verdict() == ChainVerdict.NOT_JOINED) {
      return;
    }
    assertThat(chain.matings()).allMatch(mating -> mating.verdict().isSound());
    assertThat(chain.matings().get(0).one()).isEqualTo(from);
    assertThat(chain.matings().get(chain.adapters().size()).other()).isEqualTo(to);
    for (int i = 0; i < chain.adapters().size(); i++) {
      Piece piece = chain.adapters().get(i);
      End in = chain.matings().get(i).other();
      End out = chain.matings().get(i + 1).one();
      assertThat(List.of(in, out)).containsExactlyInAnyOrder(piece.one(), piece.other());
    }
  }
}
