package org.airfit.select;

import java.math.BigDecimal;
import java.util.Objects;
import java.util.Optional;
import org.airfit.quantity.Money;

/**
 * One line of a parts list.
 *
 * @param part the part
 * @param quantity how many of it
 * @param reason why it is on the list, in plain words
 */
public record PartsLine(Part part, int quantity, String reason) {

  /**
   * Checks the components.
   *
   * @param part the part
   * @param quantity how many of it, at least 1
   * @param reason why it is on the list, in plain words
   * @throws IllegalArgumentException if {@code quantity} is below 1 or {@code reason} is blank
   */
  public PartsLine {
    Objects.requireNonNull(part, "part");
    Objects.requireNonNull(reason, "reason");
    if (quantity < 1) {
      throw new IllegalArgumentException(
          "quantity of part " + part.id() + " must be at least 1, was " + quantity);
    }
    if (reason.isBlank()) {
      throw new IllegalArgumentException(
          "reason of part " + part.id() + " must say why it is on the list, was blank");
    }
  }

  /** {@return whether the customer has it and it need not be bought} */
  public boolean existing() {
    return part.facts().isExisting();
  }

  /** {@return what one piece costs, if that is known; empty where the customer has it} */
  public Optional<Money> priceEach() {
    return existing() ? Optional.empty() : part.facts().price();
  }

  /** {@return what all pieces of this line cost, if that is known; empty where the customer has them} */
  public Optional<Money> price() {
    return priceEach()
        .map(each ->
            new Money(each.amount().multiply(BigDecimal.valueOf(quantity)), each.currency()));
  }
}
