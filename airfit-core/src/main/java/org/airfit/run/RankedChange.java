package org.airfit.run;

import org.airfit.internal.Digits;

/**
 * What a change gains at the tool, and how much of it for the money.
 *
 * @param change the change
 * @param result how the tool fares after it
 * @param gainPascals how much more pressure the tool has [Pa]; negative where it has less. A tool that can't be fed counts as at the atmosphere
 * @param gainKilogramsPerSecond how much more the tool takes [kg/s]; negative where it takes less
 */
public record RankedChange(
    Change change, RunResult result, double gainPascals, double gainKilogramsPerSecond) {

  /** {@return the gain over the price [Pa per unit of the currency]; infinite for a gain that costs nothing} */
  public double pascalsPerUnit() {
    double price = change.price().amount().doubleValue();
    return price > 0.0
        ? gainPascals / price
        : gainPascals == 0.0 ? 0.0 : Math.copySign(Double.POSITIVE_INFINITY, gainPascals);
  }

  /** {@return the change in one line, such as "wider hose: 0.42 bar more for 30 USD"} */
  @Override
  public String toString() {
    return change.name() + ": " + Digits.significant(Math.abs(gainPascals) / 1.0e5, 3) + " bar "
        + (gainPascals < 0.0 ? "less" : "more") + " for " + change.price();
  }
}
