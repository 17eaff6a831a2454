package org.airfit.plant;

import java.util.Objects;
import java.util.Optional;
import org.airfit.internal.Digits;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Money;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Range;

/**
 * What the pressure that an element takes costs in a year, clean and at change-out, and when a new element has saved
 * what it cost.
 *
 * <p>The compressor makes the loss good: it compresses the whole flow higher by it. That holds where its pressure was
 * set higher for the loss, and is lowered again when the element is changed; where the setting stays, the loss is
 * felt behind the element instead, and no money is saved. Costs are those of a year at that loss: an element that
 * clogs evenly from clean to change-out costs the mean of both. See {@link AirPlant#ofDrop}.
 *
 * @param what the element, such as "fine filter"
 * @param plant what compresses the air, and what its electricity costs
 * @param flow the mean flow over the time the plant runs
 * @param clean the pressure that the clean element takes, from its least to its most
 * @param changeOut the pressure that it takes at change-out, at least the most of {@code clean}
 * @param element what a new element costs, with the work; empty where that is not told
 */
public record ElementCost(
    String what,
    AirPlant plant,
    MassFlow flow,
    Range<PressureDrop> clean,
    PressureDrop changeOut,
    Optional<Money> element) {

  /**
   * Checks the components.
   *
   * @param what the element, such as "fine filter"
   * @param plant what compresses the air, and what its electricity costs
   * @param flow the mean flow over the time the plant runs
   * @param clean the pressure that the clean element takes
   * @param changeOut the pressure that it takes at change-out
   * @param element what a new element costs, with the work
   * @throws IllegalArgumentException if a loss is negative, the one at change-out is below that of the clean element or
   *     leaves nothing to compress to, the element is paid in another currency than electricity or its price is
   *     negative, or a cost is not below 1e30
   */
  public ElementCost {
    Objects.requireNonNull(what, "what");
    Objects.requireNonNull(plant, "plant");
    Objects.requireNonNull(flow, "flow");
    Objects.requireNonNull(clean, "clean");
    Objects.requireNonNull(changeOut, "changeOut");
    Objects.requireNonNull(element, "element");
    if (!(clean.least().pascals() >= 0.0) || changeOut.compareTo(clean.most()) < 0) {
      throw new IllegalArgumentException("pressure loss of " + what
          + " at change-out must be at least that of the clean element, and that at least 0, was "
          + changeOut.shown() + " and " + clean.most().shown());
    }
    String currency = plant.perKilowattHour().currency();
    if (element.filter(money -> !money.currency().equals(currency)).isPresent()) {
      throw new IllegalArgumentException("price of a new element of " + what
          + " must be in the currency of the electricity, " + currency + ", was "
          + element.get().shown() + "; convert one of them");
    }
    if (element.filter(money -> money.amount().signum() < 0).isPresent()) {
      throw new IllegalArgumentException("price of a new element of " + what
          + " must be at least 0 " + currency + ", was " + element.get().shown());
    }
    if (!(plant.perKilowattHour().amount().signum() >= 0)) {
      throw new IllegalArgumentException("price of electricity must be at least 0, was "
          + Digits.told(plant.perKilowattHour().amount().doubleValue()) + " " + currency);
    }
    plant.ofDrop(what, flow, changeOut); // refuses what no money tells
  }

  /** {@return what the clean element costs in a year at least} */
  public YearlyCost cleanLeast() {
    return plant.ofDrop(what + ", clean", flow, clean.least());
  }

  /** {@return what the clean element costs in a year at most} */
  public YearlyCost cleanMost() {
    return plant.ofDrop(what + ", clean", flow, clean.most());
  }

  /** {@return what it costs in a year at its loss at change-out} */
  public YearlyCost atChangeOut() {
    return plant.ofDrop(what + " at change-out", flow, changeOut);
  }

  /** {@return what the element costs in a year at change-out more than clean, at least} */
  public Money leastExtra() {
    return less(cleanMost());
  }

  /** {@return what the element costs in a year at change-out more than clean, at most} */
  public Money mostExtra() {
    return less(cleanLeast());
  }

  private Money less(YearlyCost clean) {
    return atChangeOut().money().plus(clean.money().times(-1.0));
  }

  /** {@return when a new element has saved what it cost, beside one left in at change-out; empty without its price} */
  public Optional<Payback> payback() {
    return element.map(
        price -> new Payback("a new element of " + what, price, leastExtra(), mostExtra()));
  }

  /** {@return the cost in one line, such as "fine filter: 507 to 531 USD a year more at change-out than clean"} */
  @Override
  public String toString() {
    return what + ": " + leastExtra().format(2) + " to " + mostExtra().format(2)
        + " a year more at change-out than clean"
        + payback().map(known -> ", paid back in " + known.inWords()).orElse("");
  }
}
