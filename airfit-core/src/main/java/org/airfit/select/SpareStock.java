package org.airfit.select;

import java.util.Objects;

/**
 * The least stock of spare pieces of one kind.
 *
 * <pre>
 *   the smallest s with  Σ_{k=0..s} e^−λ λ^k / k!  ≥  1 − risk,     λ = pieces in use × share worn in a year × days / 365
 * </pre>
 *
 * <p>Each piece that is taken is ordered again at once, and pieces fail one by one and without regard to each other, so
 * that the number wanted while one is on its way follows Poisson's law. <b>Valid</b> for λ in [0, 500]. <b>Source:</b>
 * the policy of ordering one for one, as in texts on spare parts; the law itself is held against a printed table.
 *
 * @param what what it is, such as "plug heron on 1/4 NPT female"
 * @param inUse how many are in use
 * @param spare how many to keep on the shelf
 */
public record SpareStock(String what, int inUse, int spare) {

  private static final double MOST_MEAN = 500.0;

  private static final double DAYS_OF_A_YEAR = 365.0;

  /**
   * Refuses what is null.
   *
   * @param what what it is, such as "plug heron on 1/4 NPT female"
   * @param inUse how many are in use
   * @param spare how many to keep on the shelf
   */
  public SpareStock {
    Objects.requireNonNull(what, "what");
  }

  /** The stock of a kind; one piece where nobody told how they wear (common practice, no source). */
  static SpareStock of(String what, int inUse, CouplingInventory.Restock restock) {
    double mean = inUse * restock.wornPerYear() * restock.deliveryDays() / DAYS_OF_A_YEAR;
    return new SpareStock(what, inUse, least(mean, restock.risk()));
  }

  /**
   * Finds the least stock.
   *
   * @param mean how many pieces are wanted on the average while more are on their way [-], in [0, 500]
   * @param risk the chance, at most, that more are wanted than are there [-], in [0.001, 0.5]
   * @return the smallest number of pieces that is enough with a chance of at least 1 − {@code risk}
   * @throws IllegalArgumentException if an argument is out of range
   */
  public static int least(double mean, double risk) {
    if (!(mean >= 0.0 && mean <= MOST_MEAN)) {
      throw new IllegalArgumentException("pieces wanted during a delivery must be in [0, "
          + (int) MOST_MEAN + "] on the average, were " + mean
          + "; look at what is worn in a year, and at the days of delivery");
    }
    if (!(risk >= 0.001 && risk <= 0.5)) {
      throw new IllegalArgumentException(
          "risk of too few spare pieces must be in [0.001, 0.5], was " + risk);
    }
    double term = Math.exp(-mean);
    double sum = term;
    int pieces = 0;
    while (sum < 1.0 - risk) {
      pieces++;
      term *= mean / pieces;
      sum += term;
    }
    return pieces;
  }

  /** {@return the stock in one line, such as "plug heron on 1/4 NPT female: 3 spare for 24 in use"} */
  @Override
  public String toString() {
    return what + ": " + spare + " spare for " + inUse + " in use";
  }
}
