package org.airfit.select;

import org.airfit.internal.Labels;
import org.airfit.quantity.Money;

/** By what the proposals that fit are put in order. */
public enum Objective {
  /**
   * The fewest pieces to buy first; of those the one whose couplings have the fewest profiles, whatever it costs more:
   * one profile throughout is what a shop can keep apart. Then the one with the lowest price, and then the one that
   * keeps the most pressure at the tool. Of as many pieces and profiles, those with a piece whose price is not known
   * come after all whose prices are known.
   */
  FEWEST_PIECES {
    @Override
    long cost(PartFacts facts) {
      return facts.isExisting() ? 0L : (1L << PIECES_AND_PRICE_SHIFT) + price(facts);
    }

    @Override
    long beforeProfiles(long cost) {
      return cost >> PIECES_AND_PRICE_SHIFT;
    }
  },

  /**
   * The lowest price first; of those the one with the fewest pieces to buy, of those the one whose couplings have the
   * fewest profiles, and then the one that keeps the most pressure. A proposal with a piece whose price is not known
   * comes after all whose prices are known.
   */
  LOWEST_PRICE {
    @Override
    long cost(PartFacts facts) {
      return facts.isExisting() ? 0L : (price(facts) << PIECES_BITS) + 1L;
    }

    @Override
    long beforeProfiles(long cost) {
      return cost;
    }
  };

  /** How many pieces a proposal has at most, so that what they cost can be summed in the bits there are. */
  static final int MOST_PIECES = 127;

  private static final int PIECES_BITS = 7;

  /** 127 pieces of less than 10¹² ten-thousandths each are less than 2⁴⁷. */
  private static final int PRICE_BITS = 47;

  private static final int PIECES_AND_PRICE_SHIFT = PIECES_BITS + PRICE_BITS;

  /**
   * What a part adds to a proposal, as a number that sums and whose order is that of the proposals: pieces to buy,
   * pieces without a price and the price, each in bits of its own.
   */
  abstract long cost(PartFacts facts);

  /** What of a cost counts before the number of profiles; never less of a higher cost. */
  abstract long beforeProfiles(long cost);

  /** The price, and above all prices together what a piece without one counts. */
  private static long price(PartFacts facts) {
    return facts.price().map(Objective::hundredthsOfCents).orElse(1L << PRICE_BITS);
  }

  /** A price in its smallest units. */
  static long hundredthsOfCents(Money price) {
    return price.amount().movePointRight(PartFacts.PRICE_DECIMALS).longValueExact();
  }

  /**
   * Reads an objective.
   *
   * @param text the objective in words, as {@link #toString} prints it
   * @return the objective
   * @throws IllegalArgumentException if {@code text} is no objective
   */
  public static Objective parse(String text) {
    return Labels.parse("objective", text, values());
  }

  /** {@return the objective in words, such as "lowest price"} */
  @Override
  public String toString() {
    return Labels.of(this);
  }
}
