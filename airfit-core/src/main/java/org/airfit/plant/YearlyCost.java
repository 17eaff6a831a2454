package org.airfit.plant;

import java.time.Duration;
import java.util.List;
import org.airfit.internal.Digits;
import org.airfit.quantity.Energy;
import org.airfit.quantity.EnergyUnit;
import org.airfit.quantity.Money;
import org.airfit.quantity.Power;
import org.airfit.source.Source;
import org.airfit.working.Term;
import org.airfit.working.Working;

/**
 * What something costs in a year, in electricity and in money.
 *
 * <pre>
 *   K = P t r
 * </pre>
 *
 * <p>P electric power [kW], t time [h], r rate [money/kWh].
 *
 * @param what what it is that costs
 * @param electric the electric power it takes
 * @param energy the energy in the year
 * @param money the money in the year
 * @param working how that was found
 */
public record YearlyCost(String what, Power electric, Energy energy, Money money, Working working) {

  private static final Source PRICE = Source.handbook(
      "US DOE Compressed Air Tip Sheet 1: bhp x 0.746 x hours x rate x time share x load share / motor efficiency");

  /**
   * Finds the cost of a shaft power, as a compressor running at full or part load or idle takes it.
   *
   * @param what what it is that costs
   * @param shaft the power at the shaft while it runs so
   * @param motorEfficiency electric power comes out at the shaft by this part [-], in (0, 1]
   * @param time the time in the year it runs so
   * @param perKilowattHour the rate
   * @return the cost
   * @throws IllegalArgumentException if an argument is out of range
   */
  public static YearlyCost ofShaft(
      String what, Power shaft, double motorEfficiency, Duration time, Money perKilowattHour) {
    requireEfficiency("motor efficiency", motorEfficiency);
    Power electric = Power.ofWatts(shaft.watts() / motorEfficiency);
    Working.Builder working = Working.titled("Yearly cost of " + what)
        .step(
            "Electric power",
            "⟨P⟩ = ⟨Ps⟩ / ⟨ηm⟩",
            "⟨P⟩ = \\frac{⟨Ps⟩}{⟨ηm⟩}",
            List.of(
                Term.of("Ps", "P_s", shaft.kilowatts(), "kW", 12),
                Term.of("ηm", "\\eta_m", motorEfficiency, "", 6)),
            Term.of("P", "P", electric.kilowatts(), "kW", 4),
            PRICE);
    return of(what, electric, time, perKilowattHour, working);
  }

  static void requireEfficiency(String name, double value) {
    if (!(value > 0.0 && value <= 1.0)) {
      throw new IllegalArgumentException(name + " must be in (0, 1], was " + value);
    }
  }

  static void requireTime(Duration time) {
    if (time.isNegative()) {
      throw new IllegalArgumentException(
          "time in the year must be at least 0 h, was " + Digits.plain(hours(time)) + " h");
    }
  }

  /** Ends a working that has found the electric power with the energy and the money. */
  static YearlyCost of(
      String what, Power electric, Duration time, Money rate, Working.Builder working) {
    requireTime(time);
    Energy energy = electric.over(time);
    Money money = rate.times(energy.kilowattHours());
    working
        .step(
            "Energy in the year",
            "⟨E⟩ = ⟨P⟩ × ⟨t⟩",
            "⟨E⟩ = ⟨P⟩ \\cdot ⟨t⟩",
            List.of(
                Term.of("P", "P", electric.kilowatts(), "kW", 12),
                Term.of("t", "t", hours(time), "h", 12)),
            Term.of("E", "E", energy.kilowattHours(), "kWh", 5),
            PRICE)
        .step(
            "Money in the year",
            "⟨K⟩ = ⟨E⟩ × ⟨r⟩",
            "⟨K⟩ = ⟨E⟩ \\cdot ⟨r⟩",
            List.of(
                Term.of("E", "E", energy.kilowattHours(), "kWh", 12),
                Term.of("r", "r", rate.amount().doubleValue(), "per kWh", 12)),
            Term.of("K", "K", money.amount().doubleValue(), "", 5),
            PRICE)
        .note("Money is in " + rate.currency() + ".");
    return new YearlyCost(what, electric, energy, money, working.build());
  }

  private static double hours(Duration time) {
    return (time.getSeconds() + 1.0e-9 * time.getNano()) / 3600.0;
  }

  /** {@return the cost in one line, such as "leak of 3 mm: 912.45 USD and 11698 kWh in the year"} */
  @Override
  public String toString() {
    return what + ": " + money.format(2) + " and " + energy.format(EnergyUnit.KILOWATT_HOUR, 0)
        + " in the year";
  }
}
