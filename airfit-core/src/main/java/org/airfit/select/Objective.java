package org.airfit.select;

import java.math.BigDecimal;
import org.airfit.internal.Labels;

/** By what the proposals that fit are put in order. */
public enum Objective {
  /** The fewest pieces to buy first; of those the one that keeps the most pressure at the tool. */
  FEWEST_PIECES {
    @Override
    long cost(PartFacts facts) {
      return facts.isExisting() ? 0L : 1L;
    }
  },

  /**
   * The lowest price first; of those the one with the fewest pieces to buy, and then the one that keeps the most
   * pressure. A proposal with a
   * piece whose price is not known comes after all whose prices are known.
   */
  LOWEST_PRICE {
    @Override
    long cost(PartFacts facts) {
      if (facts.isExisting()) {
        return 0L;
      }
      return 1L
          + facts
              .price()
              .map(price -> hundredthsOfCents(price.amount()) << PRICE_SHIFT)
              .orElse(1L << UNKNOWN_SHIFT);
    }
  };

  /** Up to 17 pieces, which is less than 2⁵. */
  private static final int PRICE_SHIFT = 5;

  /** 17 pieces of less than 10¹³ ten-thousandths each are less than 2⁴⁸. */
  private static final int UNKNOWN_SHIFT = PRICE_SHIFT + 48;

  /**
   * What a part adds to a proposal, as a number that sums and whose order is that of the proposals: pieces without a
   * price, the price, pieces
   * to buy, each in bits of its own.
   */
  abstract long cost(PartFacts facts);

  private static long hundredthsOfCents(BigDecimal amount) {
    return amount.movePointRight(PartFacts.PRICE_DECIMALS).longValueExact();
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
