package org.airfit.plant;

import java.time.Duration;
import java.util.Objects;
import org.airfit.internal.Digits;
import org.airfit.internal.Seconds;
import org.airfit.quantity.Energy;
import org.airfit.quantity.EnergyUnit;
import org.airfit.quantity.Money;
import org.airfit.quantity.Power;
import org.airfit.source.Source;
import org.airfit.working.Formula;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;
import org.airfit.working.Worked;
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
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class YearlyCost implements Worked {

  private static final Source PRICE = Source.handbook(
      "US DOE Compressed Air Tip Sheet 1: bhp x 0.746 x hours x rate x time share x load share / motor efficiency");

  /** The electric power, the answer of the working that {@link #of} is given. */
  static final Symbol POWER = Symbol.of("P", ValueKind.POWER);

  private static final Symbol SHAFT = Symbol.of("Ps", ValueKind.POWER);
  private static final Symbol OF_MOTOR = Symbol.of("ηm", ValueKind.NUMBER);
  private static final Symbol TIME = Symbol.of("t", ValueKind.HOURS);
  private static final Symbol ENERGY = Symbol.of("E", ValueKind.KILOWATT_HOURS);
  private static final Symbol RATE = Symbol.of("r", ValueKind.MONEY_PER_KILOWATT_HOUR);
  private static final Symbol MONEY = Symbol.of("K", ValueKind.MONEY);

  private static final Formula THROUGH_MOTOR =
      Formula.of("Electric power", "⟨P⟩ = ⟨Ps⟩ / ⟨ηm⟩", PRICE, POWER, SHAFT, OF_MOTOR);

  private static final Formula IN_THE_YEAR = Formula.of(
      "Energy in the year", "⟨E⟩ = [0.7456998716] × ⟨P⟩ × ⟨t⟩", PRICE, ENERGY, POWER, TIME);

  private static final Formula COST =
      Formula.of("Money in the year", "⟨K⟩ = ⟨E⟩ × ⟨r⟩", PRICE, MONEY, ENERGY, RATE);

  /** So much money is none: below the limit of {@link Money} by more than any rounding. */
  private static final double MOST = 1.0e30 * (1.0 - 1.0e-12);

  private final String what;
  private final Power electric;
  private final Duration time;
  private final Money perKilowattHour;
  private final Worked power;

  private YearlyCost(
      String what, Power electric, Duration time, Money perKilowattHour, Worked power) {
    this.what = Objects.requireNonNull(what, "what");
    this.electric = electric;
    this.time = time;
    this.perKilowattHour = Objects.requireNonNull(perKilowattHour, "perKilowattHour");
    this.power = power;
  }

  /**
   * Finds the cost of a shaft power, as a compressor running at full or part load or idle takes it.
   *
   * @param what what it is that costs
   * @param shaft the power at the shaft while it runs so
   * @param motorEfficiency electric power comes out at the shaft by this part [-], in (0, 1]
   * @param time the time in the year it runs so
   * @param perKilowattHour the rate
   * @return the cost
   * @throws IllegalArgumentException if an argument is out of range, or the cost is not below 1e30
   */
  public static YearlyCost ofShaft(
      String what, Power shaft, double motorEfficiency, Duration time, Money perKilowattHour) {
    Objects.requireNonNull(shaft, "shaft");
    requireEfficiency("motor efficiency", motorEfficiency);
    return of(
        what,
        Power.ofWatts(shaft.watts() / motorEfficiency),
        time,
        perKilowattHour,
        new OfShaft(shaft, motorEfficiency));
  }

  /** The electric power of a motor that gives a power at its shaft. */
  private record OfShaft(Power shaft, double motorEfficiency) implements Worked {

    @Override
    public Working working(UnitSystem units) {
      return Working.titled("Electric power", units)
          .given(SHAFT, shaft.watts(), 5)
          .given(OF_MOTOR, motorEfficiency, 4)
          .step(THROUGH_MOTOR, shaft.watts() / motorEfficiency, 4)
          .answer(POWER)
          .build();
    }
  }

  static void requireEfficiency(String name, double value) {
    if (!(value > 0.0 && value <= 1.0)) {
      throw new IllegalArgumentException(name + " must be in (0, 1], was " + Digits.told(value));
    }
  }

  static void requireTime(Duration time) {
    if (Objects.requireNonNull(time, "time").isNegative()) {
      throw new IllegalArgumentException("time in the year must be at least 0 h, was "
          + Digits.significant(Seconds.of(time) / 3600.0, 12) + " h");
    }
  }

  /** The cost of an electric power, which tells its own working; refuses 1e30 and more. */
  static YearlyCost of(
      String what, Power electric, Duration time, Money perKilowattHour, Worked power) {
    requireTime(time);
    YearlyCost cost = new YearlyCost(what, electric, time, perKilowattHour, power);
    double money =
        perKilowattHour.amount().abs().doubleValue() * electric.over(time).kilowattHours();
    if (!(money < MOST)) {
      throw new IllegalArgumentException("cost in the year must be below 1e30 "
          + perKilowattHour.currency() + ", was " + Digits.told(money) + " "
          + perKilowattHour.currency()
          + "; give a smaller flow, power, time or rate");
    }
    return cost;
  }

  /** {@return what it is that costs} */
  public String what() {
    return what;
  }

  /** {@return the electric power it takes} */
  public Power electric() {
    return electric;
  }

  /** {@return the energy in the year} */
  public Energy energy() {
    return electric.over(time);
  }

  /** {@return the money in the year} */
  public Money money() {
    return perKilowattHour.times(energy().kilowattHours());
  }

  @Override
  public Working working(UnitSystem units) {
    return Working.titled("Yearly cost of " + what, units)
        .include(power.working(units), POWER)
        .given(TIME, Seconds.of(time), 6)
        .step(IN_THE_YEAR, energy().joules(), 5)
        .given(RATE, perKilowattHour.amount().doubleValue(), 6)
        .step(COST, money().amount().doubleValue(), digits(money()))
        .answer(MONEY)
        .note("Money is in " + perKilowattHour.currency() + ".")
        .build();
  }

  /** Five, or as many as an amount has that ends at the thirtieth decimal. */
  private static int digits(Money money) {
    return money.amount().signum() == 0
        ? 5
        : Math.max(1, Math.min(5, money.amount().precision() - money.amount().scale() + 30));
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof YearlyCost that
        && what.equals(that.what)
        && electric.equals(that.electric)
        && time.equals(that.time)
        && perKilowattHour.equals(that.perKilowattHour)
        && power.equals(that.power);
  }

  @Override
  public int hashCode() {
    return Objects.hash(what, electric, time, perKilowattHour, power);
  }

  /** {@return the cost in one line, such as "leak of 3 mm: 912.45 USD and 11698 kWh in the year"} */
  @Override
  public String toString() {
    return what + ": " + money().format(2) + " and " + energy().format(EnergyUnit.KILOWATT_HOUR, 0)
        + " in the year";
  }
}
