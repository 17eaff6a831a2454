package org.airfit.network;

import java.util.Objects;
import org.airfit.internal.Digits;
import org.airfit.quantity.Money;
import org.airfit.source.Source;
import org.airfit.working.Formula;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/**
 * What a day of a plant costs in electricity, or what one day costs less than another; {@link DayPrice} finds it.
 *
 * <pre>
 *   E = El + Ei + Er,   K = E r,   Kn = n K
 * </pre>
 *
 * <table class="striped">
 * <caption>Symbols</caption>
 * <thead><tr><th>symbol</th><th>meaning</th><th>unit</th></tr></thead>
 * <tbody>
 * <tr><td>El, Ei</td><td>energy of the compressors loaded and idling</td><td>kWh</td></tr>
 * <tr><td>Er</td><td>energy that makes up for the air which the receivers hold less at the end</td><td>kWh</td></tr>
 * <tr><td>E</td><td>their sum</td><td>kWh</td></tr>
 * <tr><td>r</td><td>rate</td><td>money/kWh</td></tr>
 * <tr><td>K, Kn</td><td>money for one day, and for n of them</td><td>money</td></tr>
 * </tbody>
 * </table>
 *
 * <p>What is saved is the difference of two days, term by term; it is below 0 where the other day costs more.
 *
 * @param what what it is that costs, or what saves
 * @param loadedKilowattHours the energy loaded [kWh]
 * @param idleKilowattHours the energy idling [kWh]
 * @param refillKilowattHours the energy for the air that the receivers hold less at the end, below 0
 *     where they hold more [kWh]
 * @param perKilowattHour the rate
 * @param timesInYear how often such a day comes in a year, from 1 to 8784
 */
public record DayCost(
    String what,
    double loadedKilowattHours,
    double idleKilowattHours,
    double refillKilowattHours,
    Money perKilowattHour,
    int timesInYear)
    implements Worked {

  /** So often a day may come in a year: once in every hour of a leap year. */
  static final int MOST_TIMES = 8784;

  /** No plant takes so much in a day [kWh]. */
  private static final double MOST_ENERGY = 1.0e12;

  private static final double JOULES = 3.6e6;

  private static final Source SUM =
      Source.derived("energy by a rate, as US DOE Compressed Air Tip Sheet 1 has it");

  private static final Symbol LOADED = Symbol.of("El", "E_l", ValueKind.KILOWATT_HOURS);
  private static final Symbol IDLE = Symbol.of("Ei", "E_i", ValueKind.KILOWATT_HOURS);
  private static final Symbol REFILL = Symbol.of("Er", "E_r", ValueKind.KILOWATT_HOURS);
  private static final Symbol ENERGY = Symbol.of("E", ValueKind.KILOWATT_HOURS);
  private static final Symbol RATE = Symbol.of("r", ValueKind.MONEY_PER_KILOWATT_HOUR);
  private static final Symbol MONEY = Symbol.of("K", ValueKind.MONEY);
  private static final Symbol TIMES = Symbol.of("n", ValueKind.NUMBER);
  private static final Symbol IN_YEAR = Symbol.of("Kn", "K_n", ValueKind.MONEY);

  private static final Formula TOGETHER = Formula.of(
      "Energy loaded, idling, and for the air that the receivers hold less at the end",
      "⟨E⟩ = ⟨El⟩ + ⟨Ei⟩ + ⟨Er⟩",
      SUM,
      ENERGY,
      LOADED,
      IDLE,
      REFILL);

  private static final Formula A_DAY =
      Formula.of("Money for one day", "⟨K⟩ = ⟨E⟩ × ⟨r⟩", SUM, MONEY, ENERGY, RATE);

  private static final Formula A_YEAR =
      Formula.of("Money in the year", "⟨Kn⟩ = ⟨n⟩ × ⟨K⟩", SUM, IN_YEAR, TIMES, MONEY);

  /**
   * Checks the components.
   *
   * @param what what it is that costs, or what saves
   * @param loadedKilowattHours the energy loaded [kWh]
   * @param idleKilowattHours the energy idling [kWh]
   * @param refillKilowattHours the energy for the air that the receivers hold less at the end, below 0
   *     where they hold more [kWh]
   * @param perKilowattHour the rate
   * @param timesInYear how often such a day comes in a year, from 1 to 8784
   * @throws IllegalArgumentException if {@code what} is blank, {@code timesInYear} is out of range, an energy is not
   *     within 1e12 kWh, or the money in the year is not below 1e30
   */
  public DayCost {
    Objects.requireNonNull(what, "what");
    Objects.requireNonNull(perKilowattHour, "perKilowattHour");
    if (what.isBlank()) {
      throw new IllegalArgumentException("what it is that costs must be told, was blank");
    }
    requireTimes(timesInYear);
    requireEnergy("loaded energy", loadedKilowattHours);
    requireEnergy("idle energy", idleKilowattHours);
    requireEnergy("energy for the air in the receivers", refillKilowattHours);
    perKilowattHour.times(timesInYear
        * (loadedKilowattHours + idleKilowattHours + refillKilowattHours)); // or refuses
  }

  private static void requireEnergy(String what, double kilowattHours) {
    if (!(Math.abs(kilowattHours) < MOST_ENERGY)) {
      throw new IllegalArgumentException(what + " must lie between -1e12 and 1e12 kWh, was "
          + Digits.told(kilowattHours) + " kWh");
    }
  }

  static void requireTimes(int times) {
    if (times < 1 || times > MOST_TIMES) {
      throw new IllegalArgumentException(
          "times in a year must be in [1, " + MOST_TIMES + "], was " + times);
    }
  }

  /** {@return the energy of one day [kWh]} */
  public double kilowattHours() {
    return loadedKilowattHours + idleKilowattHours + refillKilowattHours;
  }

  /** {@return the money for one day} */
  public Money perDay() {
    return perKilowattHour.times(kilowattHours());
  }

  /** {@return the money for all such days of a year} */
  public Money perYear() {
    return perKilowattHour.times(timesInYear * kilowattHours());
  }

  @Override
  public Working working(UnitSystem units) {
    double rate = perKilowattHour.amount().doubleValue();
    return Working.titled("Electricity for " + what, units)
        .given(LOADED, JOULES * loadedKilowattHours, 6)
        .given(IDLE, JOULES * idleKilowattHours, 6)
        .given(REFILL, JOULES * refillKilowattHours, 6)
        .step(TOGETHER, JOULES * kilowattHours(), 4)
        .given(RATE, rate, 6)
        .step(A_DAY, rate * kilowattHours(), 4)
        .given(TIMES, timesInYear, 5)
        .step(A_YEAR, timesInYear * rate * kilowattHours(), 4)
        .answer(MONEY, IN_YEAR)
        .note("Money is in " + perKilowattHour.currency() + ".")
        .build();
  }

  /** {@return the cost in one line, such as "the day: 12.10 EUR and 55 kWh, 2783 EUR in a year"} */
  @Override
  public String toString() {
    return what + ": " + perDay().format(2) + " and " + Digits.significant(kilowattHours(), 4)
        + " kWh" + ", " + perYear().format(0) + " in a year";
  }
}
