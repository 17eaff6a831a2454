package org.airfit.network;

import java.time.Duration;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.airfit.internal.Digits;
import org.airfit.internal.Seconds;
import org.airfit.plant.TimedCompressor;
import org.airfit.quantity.Money;
import org.airfit.quantity.Power;
import org.airfit.quantity.Range;
import org.jspecify.annotations.Nullable;

/**
 * What a day of a plant is priced by: the rate, how often such a day comes in a year, and between what the power of a
 * compressor lies while it idles, where that is not known exactly.
 *
 * <p>A day is priced as one that comes again: air that the receivers hold less at its end is still to be made, and air
 * that they hold more is made already. A kilogram of it takes Pl/ṁd where the compressor would stand otherwise, and
 * (Pl − Pi)/ṁd where it would idle, as in {@link org.airfit.plant.AirPrice}; so both are counted, of the dearest and of
 * the cheapest compressor, at the pressure for which their power is stated. Pl and Pi are its electric power loaded and
 * idling, ṁd what it delivers.
 *
 * <p>What a change saves is told between its least and its most, found with the same power of a compressor on both
 * days. Where that is known exactly, and the receivers end as they began, the two are the same.
 *
 * @param perKilowattHour the rate, at least 0
 * @param timesInYear how often such a day comes in a year, from 1 to 8784
 * @param idlePowers what compressors take idling where that lies between two; that of the others is as the day has it
 */
public record DayPrice(Money perKilowattHour, int timesInYear, List<IdlePower> idlePowers) {

  /** All days of a year together are no longer than this [s]. */
  private static final double YEAR = 366.0 * 86_400.0;

  private static final double JOULES_PER_KWH = 3.6e6;

  /**
   * Between what the power of a compressor lies while it idles.
   *
   * @param compressor its name
   * @param power the electric power
   */
  public record IdlePower(String compressor, Range<Power> power) {

    /**
     * Refuses what is null.
     *
     * @param compressor its name
     * @param power the electric power
     */
    public IdlePower {
      Objects.requireNonNull(compressor, "compressor");
      Objects.requireNonNull(power, "power");
    }
  }

  /**
   * Checks the components.
   *
   * @param perKilowattHour the rate, at least 0
   * @param timesInYear how often such a day comes in a year, from 1 to 8784
   * @param idlePowers what compressors take idling where that lies between two
   * @throws IllegalArgumentException if an argument is out of range, or a compressor is named twice
   */
  public DayPrice {
    Objects.requireNonNull(perKilowattHour, "perKilowattHour");
    idlePowers = List.copyOf(Objects.requireNonNull(idlePowers, "idlePowers"));
    if (perKilowattHour.amount().signum() < 0) {
      throw new IllegalArgumentException(
          "price of a kWh must be at least 0, was " + perKilowattHour.shown());
    }
    DayCost.requireTimes(timesInYear);
    Set<String> names = new HashSet<>();
    for (IdlePower idle : idlePowers) {
      if (!names.add(idle.compressor)) {
        throw new IllegalArgumentException("idle power must be told once for each compressor, was"
            + " told twice for " + idle.compressor);
      }
    }
  }

  /**
   * Finds what a day costs at least.
   *
   * @param day the day
   * @return the cost where compressors idle at the least power that it can be
   * @throws IllegalArgumentException if the day does not fit this, see {@link #mostSaved}
   */
  public DayCost leastCost(DayResult day) {
    return Ends.of(this, day, null).least(this, "the day at least");
  }

  /**
   * Finds what a day costs at most.
   *
   * @param day the day
   * @return the cost where compressors idle at the most power that it can be
   * @throws IllegalArgumentException if the day does not fit this, see {@link #mostSaved}
   */
  public DayCost mostCost(DayResult day) {
    return Ends.of(this, day, null).most(this, "the day at most");
  }

  /**
   * Finds what one day costs less than another for certain.
   *
   * @param now the day as it is
   * @param then the day with something changed, of the same length and with the same compressors but for their bands
   * @return what is saved at least; below 0 where it may cost more
   * @throws IllegalArgumentException if the days do not fit this or each other, see {@link #mostSaved}
   */
  public DayCost leastSaved(DayResult now, DayResult then) {
    Objects.requireNonNull(then, "then");
    return Ends.of(this, now, then).least(this, "what is saved at least");
  }

  /**
   * Finds what one day costs less than another at most.
   *
   * @param now the day as it is
   * @param then the day with something changed, of the same length and with the same compressors but for their bands
   * @return what is saved at most; below 0 where it costs more
   * @throws IllegalArgumentException if no compressor has a name of {@code idlePowers} or its loaded power is below what
   *     is told there, if all days of a year would last longer than 366 days, or if length or compressors differ
   */
  public DayCost mostSaved(DayResult now, DayResult then) {
    Objects.requireNonNull(then, "then");
    return Ends.of(this, now, then).most(this, "what is saved at most");
  }

  private Range<Power> idlePower(TimedCompressor machine) {
    return idlePowers.stream()
        .filter(idle -> idle.compressor.equals(machine.name()))
        .map(IdlePower::power)
        .findFirst()
        .orElse(Range.exactly(machine.idlePower()));
  }

  private void requireFits(DayResult day) {
    List<TimedCompressor> machines = Objects.requireNonNull(day, "day").plan().compressors();
    for (IdlePower idle : idlePowers) {
      TimedCompressor named = machines.stream()
          .filter(machine -> machine.name().equals(idle.compressor))
          .findFirst()
          .orElseThrow(() -> new IllegalArgumentException("idle power must be that of one of "
              + machines.stream().map(TimedCompressor::name).toList() + ", was of \""
              + idle.compressor + "\""));
      if (idle.power.most().compareTo(named.loadedPower()) > 0) {
        throw new IllegalArgumentException("idle power of " + named.name() + " must be at most "
            + Digits.told(named.loadedPower().watts()) + " W, was "
            + Digits.told(idle.power.most().watts()) + " W");
      }
    }
    Duration length = day.plan().length();
    if (timesInYear * Seconds.of(length) > YEAR) {
      throw new IllegalArgumentException("times in a year must be at most "
          + (long) (YEAR / Seconds.of(length)) + " for a day of " + Seconds.told(length) + ", was "
          + timesInYear);
    }
  }

  /** The energies [J] of a day, or the differences between two, at both ends of what is not known exactly. */
  private static final class Ends {
    private double loaded;
    private double leastIdle;
    private double mostIdle;
    private double leastRefill;
    private double mostRefill;

    static Ends of(DayPrice price, DayResult day, @Nullable DayResult less) {
      price.requireFits(day);
      if (less != null) {
        requireAlike(day, less);
      }
      Ends ends = new Ends();
      List<TimedCompressor> machines = day.plan().compressors();
      double cheapest = Double.POSITIVE_INFINITY;
      double dearest = 0.0;
      for (int c = 0; c < machines.size(); c++) {
        TimedCompressor machine = machines.get(c);
        Range<Power> idle = price.idlePower(machine);
        double one = idling(day, c, idle.least()) - idling(less, c, idle.least());
        double other = idling(day, c, idle.most()) - idling(less, c, idle.most());
        ends.loaded += loaded(day, c) - loaded(less, c);
        ends.leastIdle += Math.min(one, other);
        ends.mostIdle += Math.max(one, other);
        double delivers = machine.delivery().massFlow().kilogramsPerSecond();
        cheapest =
            Math.min(cheapest, (machine.loadedPower().watts() - idle.most().watts()) / delivers);
        dearest = Math.max(dearest, machine.loadedPower().watts() / delivers);
      }
      double fell = fell(day) - fell(less);
      double one = fell * Math.min(cheapest, dearest); // no compressor, no energy
      double other = fell * dearest;
      ends.leastRefill = Math.min(one, other);
      ends.mostRefill = Math.max(one, other);
      return ends;
    }

    private static void requireAlike(DayResult day, DayResult less) {
      List<String> names =
          day.plan().compressors().stream().map(TimedCompressor::name).toList();
      List<String> others =
          less.plan().compressors().stream().map(TimedCompressor::name).toList();
      if (!names.equals(others) || !day.plan().length().equals(less.plan().length())) {
        throw new IllegalArgumentException("the other day must have the compressors " + names
            + " and last " + Seconds.told(day.plan().length()) + ", had " + others + " and lasted "
            + Seconds.told(less.plan().length()));
      }
    }

    private static double loaded(@Nullable DayResult day, int c) {
      return day == null ? 0.0 : day.compressors().get(c).loadedEnergy().joules();
    }

    /** The energy of a compressor idling, if it took another power then. */
    private static double idling(@Nullable DayResult day, int c, Power power) {
      if (day == null) {
        return 0.0;
      }
      double more = power.watts() - day.plan().compressors().get(c).idlePower().watts();
      return day.compressors().get(c).idleEnergy().joules()
          + more * day.idleSeconds().get(c);
    }

    /** What the receivers hold less at the end [kg]. */
    private static double fell(@Nullable DayResult day) {
      return day == null
          ? 0.0
          : day.balance().storedBeforeKilograms() - day.balance().storedAfterKilograms();
    }

    DayCost least(DayPrice price, String what) {
      return cost(price, what, leastIdle, leastRefill);
    }

    DayCost most(DayPrice price, String what) {
      return cost(price, what, mostIdle, mostRefill);
    }

    private DayCost cost(DayPrice price, String what, double idle, double refill) {
      return new DayCost(
          what,
          loaded / JOULES_PER_KWH,
          idle / JOULES_PER_KWH,
          refill / JOULES_PER_KWH,
          price.perKilowattHour,
          price.timesInYear);
    }
  }
}
