package org.airfit.network;

import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.airfit.air.AirState;
import org.airfit.internal.Digits;
import org.airfit.internal.Seconds;
import org.airfit.plant.Supply;
import org.airfit.plant.WallHeat;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.Energy;
import org.airfit.quantity.EnergyUnit;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.run.Run;
import org.airfit.safety.Caution;
import org.airfit.safety.SafetyRules;
import org.airfit.safety.Situation;
import org.airfit.source.Source;
import org.airfit.working.Formula;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/**
 * What came of a day of a plant: what each user had at the worst, what the compressors did, and the balance of the air.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class DayResult implements Worked {

  /** A user is short when it was below its need for longer than this [s]: what a search leaves open. */
  static final double MOMENT = 1.0e-3;

  private static final Source MASS = Source.derived("balance of mass");

  private static final ValueKind AIR = ValueKind.of("kg", "kg", 1.0, "lb", 0.453_592_37);

  private static final Symbol MADE = Symbol.of("M", AIR);
  private static final Symbol TAKEN = Symbol.of("D", AIR);
  private static final Symbol BEFORE = Symbol.of("S1", "S_1", AIR);
  private static final Symbol AFTER = Symbol.of("S2", "S_2", AIR);
  private static final Symbol TIME = Symbol.of("t", ValueKind.SECONDS);
  private static final Symbol MEAN = Symbol.of("ṁ", ValueKind.MASS_FLOW);
  private static final Symbol START = Symbol.of("p1", "p_1", ValueKind.PRESSURE);
  private static final Symbol LOWEST = Symbol.of("p2", "p_2", ValueKind.PRESSURE);
  private static final Symbol VOLUME = Symbol.of("V", ValueKind.VOLUME);
  private static final Symbol GAS_CONSTANT = Symbol.of("R", ValueKind.HEAT_CAPACITY);
  private static final Symbol KELVINS = Symbol.of("T", ValueKind.TEMPERATURE);

  private static final Formula IS_TAKEN = Formula.of(
      "Air taken: what was made, and what the receivers hold less at the end",
      "⟨D⟩ = ⟨M⟩ + ⟨S1⟩ − ⟨S2⟩",
      MASS,
      TAKEN,
      MADE,
      BEFORE,
      AFTER);

  private static final Formula ON_AVERAGE =
      Formula.of("Mean flow over the day", "⟨ṁ⟩ = ⟨D⟩ / ⟨t⟩", MASS, MEAN, TAKEN, TIME);

  private static final Formula FALLS = Formula.of(
      "Pressure in the last receiver at the lowest moment",
      "⟨p2⟩ = ⟨p1⟩ − ⟨ṁ⟩ × ⟨t⟩ × ⟨R⟩ × ⟨T⟩ / ([144] × ⟨V⟩)",
      MASS,
      LOWEST,
      START,
      MEAN,
      TIME,
      GAS_CONSTANT,
      KELVINS,
      VOLUME);

  private record Values(
      DayPlan day,
      List<UseDay> uses,
      List<CompressorDay> compressors,
      List<Double> idleSeconds,
      List<Stretch> course,
      Balance balance) {}

  private final Values values;

  DayResult(
      DayPlan day,
      List<UseDay> uses,
      List<CompressorDay> compressors,
      List<Double> idleSeconds,
      List<Stretch> course,
      Balance balance) {
    this.values = new Values(
        day,
        List.copyOf(uses),
        List.copyOf(compressors),
        List.copyOf(idleSeconds),
        List.copyOf(course),
        balance);
  }

  /** The plant it is of. */
  DayPlan plan() {
    return values.day;
  }

  /** By compressor: by how much its energy grows with its idle power [s]; the blow-downs count in part. */
  List<Double> idleSeconds() {
    return values.idleSeconds;
  }

  static Duration duration(double seconds) {
    long whole = (long) Math.floor(seconds);
    return Duration.ofSeconds(whole, Math.round(1.0e9 * (seconds - whole)));
  }

  /**
   * The air of a day.
   *
   * @param madeKilograms what the compressors delivered [kg]
   * @param takenKilograms what the users took [kg]
   * @param storedBeforeKilograms what the receivers held at the beginning [kg]
   * @param storedAfterKilograms what they held at the end [kg]
   */
  public record Balance(
      double madeKilograms,
      double takenKilograms,
      double storedBeforeKilograms,
      double storedAfterKilograms) {

    /**
     * Checks the components.
     *
     * @param madeKilograms what the compressors delivered [kg]
     * @param takenKilograms what the users took [kg]
     * @param storedBeforeKilograms what the receivers held at the beginning [kg]
     * @param storedAfterKilograms what they held at the end [kg]
     * @throws IllegalArgumentException if a mass is below 0 or not finite
     */
    public Balance {
      requireMass("air delivered", madeKilograms);
      requireMass("air taken", takenKilograms);
      requireMass("air stored before", storedBeforeKilograms);
      requireMass("air stored after", storedAfterKilograms);
    }

    /** {@return made, less taken, less what is stored more [kg]: nothing but rounding} */
    public double unaccountedKilograms() {
      return madeKilograms - takenKilograms - (storedAfterKilograms - storedBeforeKilograms);
    }
  }

  /**
   * How the pressure fell to the lowest that a user had.
   *
   * @param time since the demand or a compressor last changed
   * @param storedThenKilograms what the last receiver held then [kg]
   * @param storedKilograms what it held at the lowest moment [kg]
   */
  public record Fall(Duration time, double storedThenKilograms, double storedKilograms) {

    /**
     * Checks the components.
     *
     * @param time since the demand or a compressor last changed
     * @param storedThenKilograms what the last receiver held then [kg]
     * @param storedKilograms what it held at the lowest moment [kg]
     * @throws IllegalArgumentException if the time or a mass is below 0, or a mass not finite
     */
    public Fall {
      requireTime("time of a fall", Objects.requireNonNull(time, "time"));
      requireMass("air stored before a fall", storedThenKilograms);
      requireMass("air stored after a fall", storedKilograms);
    }
  }

  /**
   * The lowest that a user had while it ran.
   *
   * @param atTool the pressure at its inlet
   * @param when the moment, counted from the beginning of the day
   * @param header the pressure in the header then
   * @param flow what it took then
   * @param fall how the pressure fell to that
   */
  public record Lowest(
      GaugePressure atTool, Duration when, AbsolutePressure header, MassFlow flow, Fall fall) {

    /**
     * Refuses what is null.
     *
     * @param atTool the pressure at its inlet
     * @param when the moment, counted from the beginning of the day
     * @param header the pressure in the header then
     * @param flow what it took then
     * @param fall how the pressure fell to that
     */
    public Lowest {
      Objects.requireNonNull(atTool, "atTool");
      Objects.requireNonNull(when, "when");
      Objects.requireNonNull(header, "header");
      Objects.requireNonNull(flow, "flow");
      Objects.requireNonNull(fall, "fall");
    }
  }

  /**
   * How a user fared.
   *
   * @param name the user
   * @param need the pressure it needs; empty where none was told
   * @param runs how long it ran
   * @param below how long of that it had less than it needs
   * @param lowest the lowest it had; empty where it never ran
   * @param takenKilograms what it took [kg]
   * @param tooMuchKilograms what of that it took because it had more pressure than it needs, its artificial demand [kg]; 0
   *     of what takes a fixed flow
   * @param missedKilograms what it would have taken more at the pressure it needs [kg]
   */
  public record UseDay(
      String name,
      Optional<GaugePressure> need,
      Duration runs,
      Duration below,
      Optional<Lowest> lowest,
      double takenKilograms,
      double tooMuchKilograms,
      double missedKilograms) {

    /**
     * Checks the components.
     *
     * @param name the user
     * @param need the pressure it needs; empty where none was told
     * @param runs how long it ran
     * @param below how long of that it had less than it needs
     * @param lowest the lowest it had; empty where it never ran
     * @param takenKilograms what it took [kg]
     * @param tooMuchKilograms what of that it took because it had more pressure than it needs, its artificial demand [kg]; 0
     *     of what takes a fixed flow
     * @param missedKilograms what it would have taken more at the pressure it needs [kg]
     * @throws IllegalArgumentException if a time or a mass is below 0 or not finite, or it was below its need for longer
     *     than it ran
     */
    public UseDay {
      Objects.requireNonNull(name, "name");
      Objects.requireNonNull(need, "need");
      Objects.requireNonNull(runs, "runs");
      Objects.requireNonNull(below, "below");
      Objects.requireNonNull(lowest, "lowest");
      requireTime("time of " + name, runs);
      requireTime("time below the need of " + name, below);
      if (below.compareTo(runs) > 0) {
        throw new IllegalArgumentException("time below the need of " + name + " must be at most "
            + Seconds.told(runs) + ", was " + Seconds.told(below));
      }
      requireMass("air taken by " + name, takenKilograms);
      requireMass("air that " + name + " took too much", tooMuchKilograms);
      requireMass("air that " + name + " missed", missedKilograms);
    }

    /** {@return whether it was below its need} */
    public boolean isShort() {
      return Seconds.of(below) > MOMENT;
    }

    /** {@return the user in one line, such as "press: below its need for 12 s of 3600 s"} */
    @Override
    public String toString() {
      return name + ": below its need for " + Seconds.told(below) + " of " + Seconds.told(runs);
    }
  }

  /**
   * What a compressor did.
   *
   * @param name the compressor
   * @param loaded how long it delivered
   * @param idle how long it turned without delivering, starting and building up included
   * @param standing how long it stood still
   * @param starts how often its motor started
   * @param mostStartsInAnHour the most of these within any hour
   * @param loads how often it began to deliver
   * @param loadedEnergy the electric energy it took delivering
   * @param idleEnergy the electric energy it took idling
   * @param madeKilograms the air it delivered [kg]
   */
  public record CompressorDay(
      String name,
      Duration loaded,
      Duration idle,
      Duration standing,
      int starts,
      int mostStartsInAnHour,
      int loads,
      Energy loadedEnergy,
      Energy idleEnergy,
      double madeKilograms) {

    /**
     * Checks the components.
     *
     * @param name the compressor
     * @param loaded how long it delivered
     * @param idle how long it turned without delivering, starting and building up included
     * @param standing how long it stood still
     * @param starts how often its motor started
     * @param mostStartsInAnHour the most of these within any hour
     * @param loads how often it began to deliver
     * @param loadedEnergy the electric energy it took delivering
     * @param idleEnergy the electric energy it took idling
     * @param madeKilograms the air it delivered [kg]
     * @throws IllegalArgumentException if a time, a count or the mass is below 0 or not finite
     */
    public CompressorDay {
      Objects.requireNonNull(name, "name");
      Objects.requireNonNull(loaded, "loaded");
      Objects.requireNonNull(idle, "idle");
      Objects.requireNonNull(standing, "standing");
      Objects.requireNonNull(loadedEnergy, "loadedEnergy");
      Objects.requireNonNull(idleEnergy, "idleEnergy");
      requireTime("loaded time of " + name, loaded);
      requireTime("idle time of " + name, idle);
      requireTime("standing time of " + name, standing);
      if (starts < 0 || mostStartsInAnHour < 0 || loads < 0) {
        throw new IllegalArgumentException("counts of " + name + " must be at least 0, were "
            + starts + " starts, " + mostStartsInAnHour + " in an hour and " + loads + " loads");
      }
      requireMass("air delivered by " + name, madeKilograms);
    }

    /** {@return the part of the day in which it delivered [-]} */
    public double loadedShare() {
      double all = Seconds.of(loaded) + Seconds.of(idle) + Seconds.of(standing);
      return all > 0.0 ? Seconds.of(loaded) / all : 0.0;
    }

    /** {@return all the electric energy it took} */
    public Energy energy() {
      return Energy.ofJoules(loadedEnergy.joules() + idleEnergy.joules());
    }

    /** {@return the compressor in one line, such as "screw 1: loaded 3600 s, 12 starts"} */
    @Override
    public String toString() {
      return name + ": loaded " + Seconds.told(loaded) + ", " + starts + " starts";
    }
  }

  private static void requireTime(String what, Duration time) {
    if (time.isNegative()) {
      throw new IllegalArgumentException(what + " must be at least 0 s, was " + Seconds.told(time));
    }
  }

  private static void requireMass(String what, double kilograms) {
    if (!(kilograms >= 0.0 && kilograms < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException(
          what + " must be finite and at least 0 kg, was " + Digits.told(kilograms) + " kg");
    }
  }

  /**
   * The pressures of a stretch of the day, for a drawing.
   *
   * @param from when it begins
   * @param lowest the lowest pressure in the header
   * @param highest the highest there
   * @param lowestAtCompressors the lowest pressure in the first receiver
   * @param highestAtCompressors the highest there
   */
  public record Stretch(
      Duration from,
      GaugePressure lowest,
      GaugePressure highest,
      GaugePressure lowestAtCompressors,
      GaugePressure highestAtCompressors) {

    /**
     * Refuses what is null.
     *
     * @param from when it begins
     * @param lowest the lowest pressure in the header
     * @param highest the highest there
     * @param lowestAtCompressors the lowest pressure in the first receiver
     * @param highestAtCompressors the highest there
     */
    public Stretch {
      Objects.requireNonNull(from, "from");
      Objects.requireNonNull(lowest, "lowest");
      Objects.requireNonNull(highest, "highest");
      Objects.requireNonNull(lowestAtCompressors, "lowestAtCompressors");
      Objects.requireNonNull(highestAtCompressors, "highestAtCompressors");
    }
  }

  /** {@return how each user fared, in the order they were added} */
  public List<UseDay> uses() {
    return values.uses;
  }

  /** {@return what each compressor did} */
  public List<CompressorDay> compressors() {
    return values.compressors;
  }

  /** {@return the pressures over the day, in 480 stretches alike} */
  public List<Stretch> course() {
    return values.course;
  }

  /** {@return the balance of the air} */
  public Balance balance() {
    return values.balance;
  }

  /** {@return whether any user was below its need while it ran} */
  public boolean isShort() {
    return values.uses.stream().anyMatch(UseDay::isShort);
  }

  /** {@return the electric energy of all compressors} */
  public Energy energy() {
    return Energy.ofJoules(values.compressors.stream()
        .mapToDouble(compressor -> compressor.energy().joules())
        .sum());
  }

  /** {@return the artificial demand of all users [kg]: what they took because they had more pressure than they need} */
  public double tooMuchKilograms() {
    return values.uses.stream().mapToDouble(UseDay::tooMuchKilograms).sum();
  }

  /** {@return what users took that tell no need, such as leaks [kg]} */
  public double withoutNeedKilograms() {
    return values.uses.stream()
        .filter(use -> use.need().isEmpty())
        .mapToDouble(UseDay::takenKilograms)
        .sum();
  }

  /** {@return the warnings that go with a plant and with work on it; last the one that defers to local codes} */
  public List<Caution> cautions() {
    SafetyRules rules = SafetyRules.usFederal();
    Set<Caution> all = new LinkedHashSet<>();
    all.addAll(rules.cautions(Situation.describe().maintenance().build()));
    all.add(rules.reminder("Receiver protection"));
    if (isShort()) {
      all.add(Caution.MORE_SUPPLY_PRESSURE);
    }
    all.remove(rules.deference());
    all.add(rules.deference());
    return List.copyOf(all);
  }

  @Override
  public Working working(UnitSystem units) {
    Balance balance = values.balance;
    Working.Builder working = Working.titled("Balance of the air of a day", units)
        .given(MADE, balance.madeKilograms, 8)
        .given(AFTER, balance.storedAfterKilograms, 8)
        .given(BEFORE, balance.storedBeforeKilograms, 8);
    return working
        .step(IS_TAKEN, balance.takenKilograms, 4)
        .given(TIME, Seconds.of(values.day.length()), 8)
        .step(ON_AVERAGE, balance.takenKilograms / Seconds.of(values.day.length()), 4)
        .answer(TAKEN, MEAN)
        .build();
  }

  /**
   * Tells how the lowest pressure that a user had comes about: how the last receiver fell to it from the last change of
   * the demand or of a compressor, and what its drop takes.
   *
   * @param use the name of a user that ran
   * @param units the units to show numbers in
   * @return the workings, in the order the air goes; that of the receiver is left out where the walls give no heat
   * @throws IllegalArgumentException if no user of that name ran
   */
  public List<Working> workingOfLowest(String use, UnitSystem units) {
    Objects.requireNonNull(use, "use");
    Objects.requireNonNull(units, "units");
    for (int i = 0; i < values.uses.size(); i++) {
      UseDay fared = values.uses.get(i);
      if (fared.name.equals(use) && fared.lowest.isPresent()) {
        return lowest(values.day.uses().get(i), fared.lowest.get(), units);
      }
    }
    throw new IllegalArgumentException("use must be the name of a user that ran, of "
        + values.uses.stream()
            .filter(each -> each.lowest.isPresent())
            .map(UseDay::name)
            .toList()
        + ", was \"" + use + "\"");
  }

  private List<Working> lowest(TimedUse use, Lowest lowest, UnitSystem units) {
    List<Working> workings = new ArrayList<>();
    DayPlan day = values.day;
    double seconds = Seconds.of(lowest.fall.time);
    double lost = lowest.fall.storedThenKilograms - lowest.fall.storedKilograms;
    if (day.walls() == WallHeat.KEEPS && seconds > 0.0 && lost > 0.0) {
      double volume = day.receivers().get(day.receivers().size() - 1).volume().cubicMetres();
      double kelvins = day.temperature().kelvins();
      double perKilogram = AirState.GAS_CONSTANT * kelvins / volume;
      workings.add(Working.titled("How the receiver fell", units)
          .note(
              "The flow is the mean of what left the last receiver less what came into it, since the demand or a"
                  + " compressor last changed.")
          .given(START, lowest.fall.storedThenKilograms * perKilogram, 8)
          .given(MEAN, lost / seconds, 8)
          .given(TIME, seconds, 8)
          .given(GAS_CONSTANT, AirState.GAS_CONSTANT, 8)
          .given(KELVINS, kelvins, 7)
          .given(VOLUME, volume, 8)
          .step(FALLS, lowest.fall.storedKilograms * perKilogram, 5)
          .answer(LOWEST)
          .build());
    }
    AirState header = AirState.of(lowest.header, day.temperature());
    if (use.drop().isPresent() && lowest.header.compareTo(day.atmosphere()) > 0) {
      Run run = use.drop().get().suppliedBy(Supply.fixed(header));
      workings.add(run.at(lowest.flow).working(units));
    }
    return List.copyOf(workings);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof DayResult that && values.equals(that.values);
  }

  @Override
  public int hashCode() {
    return values.hashCode();
  }

  /** {@return the day in one line, such as "2 of 5 users below their need, 312 kWh"} */
  @Override
  public String toString() {
    long lacking = values.uses.stream().filter(UseDay::isShort).count();
    return lacking + " of " + values.uses.size() + " users below their need, "
        + energy().format(EnergyUnit.KILOWATT_HOUR, 0);
  }
}
