package org.airfit.run;

import java.util.Objects;
import org.airfit.quantity.Money;

/**
 * Something that could be changed about a run, and what it would cost.
 *
 * @param name what is changed, in a few words
 * @param run the run after the change
 * @param price what the change costs, at least 0
 */
public record Change(String name, Run run, Money price) {

  /**
   * Checks the components.
   *
   * @param name what is changed, in a few words
   * @param run the run after the change
   * @param price what the change costs, at least 0
   * @throws IllegalArgumentException if {@code name} is blank or {@code price} is negative
   */
  public Change {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(run, "run");
    Objects.requireNonNull(price, "price");
    if (name.isBlank()) {
      throw new IllegalArgumentException("name of a change must say what is changed, was blank");
    }
    if (price.amount().signum() < 0) {
      throw new IllegalArgumentException("price of " + name + " must be at least 0, was " + price);
    }
  }
}
