package org.airfit.counter.stock;

import java.util.Objects;

/**
 * How many pieces of an article there are.
 *
 * @param number the number of the article
 * @param quantity pieces on the shelf
 * @param reserved how many of them are held for somebody
 */
public record StockLevel(String number, int quantity, int reserved) {

  /**
   * Refuses what is null.
   *
   * @param number the number of the article
   * @param quantity pieces on the shelf
   * @param reserved how many of them are held for somebody
   */
  public StockLevel {
    Objects.requireNonNull(number, "number");
  }

  /** {@return how many can be reserved; 0 where fewer were counted on the shelf than are held} */
  public int available() {
    return Math.max(0, quantity - reserved);
  }
}
