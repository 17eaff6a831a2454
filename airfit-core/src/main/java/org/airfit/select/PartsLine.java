package org.airfit.select;

import java.math.BigDecimal;
import java.util.Optional;
import org.airfit.quantity.Money;

/**
 * One line of a parts list.
 *
 * @param part the part
 * @param quantity how many of it
 * @param alreadyThere whether the customer has it and it need not be bought
 * @param reason why it is on the list, in plain words
 */
public record PartsLine(Part part, int quantity, boolean alreadyThere, String reason) {

  /** {@return what one piece costs, if that is known; empty where the customer has it} */
  public Optional<Money> priceEach() {
    return alreadyThere ? Optional.empty() : part.facts().price();
  }

  /** {@return what all pieces of this line cost, if that is known; empty where the customer has them} */
  public Optional<Money> price() {
    return priceEach()
        .map(each ->
            new Money(each.amount().multiply(BigDecimal.valueOf(quantity)), each.currency()));
  }
}
