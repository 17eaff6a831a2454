package org.airfit.plant;

import java.time.Duration;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.airfit.air.AirState;
import org.airfit.flow.LoadTiming;
import org.airfit.internal.Digits;
import org.airfit.internal.Seconds;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Range;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.Volume;
import org.airfit.source.Source;
import org.airfit.working.Formula;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/**
 * What a whole plant loses while nothing is in use, between two bounds: by load timing or by a fall of pressure.
 *
 * <pre>
 *   load timing         ṁ = ṁd T/(T + t) p/pb
 *   fall of pressure    ṁ = V p J / (R T1 t),   X = ln(p1/p2),   1 ≤ u = √(T1/Tc) ≤ e^(X/7)
 *     least             J = X − 7 ln u + 5 (u − 1)
 *     most              J = 7 (u − 1) + (X − 7 ln u) u
 * </pre>
 *
 * <table class="striped">
 * <caption>Symbols</caption>
 * <thead><tr><th>symbol</th><th>meaning</th><th>unit</th></tr></thead>
 * <tbody>
 * <tr><td>ṁ</td><td>what leaks at the pressure p</td><td>kg/s</td></tr>
 * <tr><td>ṁd, T, t</td><td>delivery; time loaded, and time unloaded or stopped</td><td>kg/s, s</td></tr>
 * <tr><td>pb</td><td>mean pressure while it cycles, between cut-in and cut-out</td><td>Pa</td></tr>
 * <tr><td>V, t</td><td>volume that is closed in; time of the fall</td><td>m³, s</td></tr>
 * <tr><td>p1, p2</td><td>pressure at the beginning and at the end, absolute</td><td>Pa</td></tr>
 * <tr><td>T1, Tc</td><td>temperature of the walls, and the coldest that the air becomes as it expands</td><td>K</td></tr>
 * </tbody>
 * </table>
 *
 * <p>Every leak is choked, so it loses in proportion to the absolute pressure: test above 1.9 times the atmosphere. The
 * bounds are rigorous for whatever errors are stated, as each formula rises or falls with each of its values; nothing
 * is assumed of how likely an error is. Over whole cycles a compressor gives as much as leaks away, whatever the
 * temperature does. Air that expands gets colder, by how much the walls decide: between walls that hold it at T1
 * (u = 1) and walls that give no heat (u = e^(X/7)). Where nobody told Tc all of that is possible, and the bounds
 * lie 20 to 30 % apart for this alone. Least and most are found with dm/dt ∝ p/√T and heat that only flows in:
 * {@code J = ∫ u dX − 2 (u_end − 1)}, least where the air cools last, most where it cools first and is warm again at
 * the end.
 *
 * <p><b>Sources:</b> load timing as in {@link LoadTiming}; the fall of pressure through a choked hole, isothermal
 * {@code τ ln(p1/p2)} and insulated {@code 5 τ ((p1/p2)^(1/7) − 1)}, are the two ends. The factor 1.25 of handbooks,
 * from the mean of a fall by 50 psi to the pressure at its beginning, is 1.31 by this.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class LeakTest implements Worked {

  /**
   * What was read at a compressor that loads and unloads in turn while nothing is in use.
   *
   * @param loaded the time it delivered, summed over the cycles
   * @param unloaded the time it did not, unloaded or stopped, summed over the cycles
   * @param cycles how many whole cycles were timed, from one switching to the same again; at least 1
   * @param error by how much the loaded time of one cycle may be wrong, and the unloaded time too
   * @param delivery what it delivers while loaded
   * @param band the pressures between which it cycles
   */
  public record Cycling(
      Duration loaded,
      Duration unloaded,
      int cycles,
      Duration error,
      Range<FreeAirFlow> delivery,
      Range<GaugePressure> band) {

    /**
     * Checks the components.
     *
     * @param loaded the time it delivered, summed over the cycles
     * @param unloaded the time it did not, unloaded or stopped, summed over the cycles
     * @param cycles how many whole cycles were timed, from one switching to the same again; at least 1
     * @param error by how much the loaded time of one cycle may be wrong, and the unloaded time too
     * @param delivery what it delivers while loaded
     * @param band the pressures between which it cycles
     * @throws IllegalArgumentException if a time is below 0, or loaded and unloaded time are not above the error
     */
    public Cycling {
      new LoadTiming(
          loaded, unloaded, Objects.requireNonNull(delivery, "delivery").most());
      Objects.requireNonNull(error, "error");
      Objects.requireNonNull(band, "band");
      LeakSize.requireError(error);
      if (cycles < 1) {
        throw new IllegalArgumentException("cycles timed must be at least 1, were " + cycles);
      }
      double wrong = cycles * Seconds.of(error);
      if (!(Seconds.of(loaded) + Seconds.of(unloaded) > wrong)) {
        throw new IllegalArgumentException("loaded and unloaded time must be above "
            + Digits.significant(wrong, 12) + " s together, by which each may be wrong, were "
            + Digits.significant(Seconds.of(loaded) + Seconds.of(unloaded), 12)
            + " s; time more cycles");
      }
    }
  }

  /**
   * What was read at a closed system that lost pressure.
   *
   * @param volume all that is closed in: receivers and pipes
   * @param start the pressure when the time begins
   * @param end the pressure when it ends
   * @param time the time of the fall, above {@code error}
   * @param error by how much it may be wrong
   * @param walls the temperature of the walls, and of the air at the beginning
   * @param coldest the coldest that the air was during the fall, at most {@code walls}; empty where nobody knows
   */
  public record Falling(
      Range<Volume> volume,
      Range<GaugePressure> start,
      Range<GaugePressure> end,
      Duration time,
      Duration error,
      Temperature walls,
      Optional<Temperature> coldest) {

    /**
     * Checks the components.
     *
     * @param volume all that is closed in: receivers and pipes
     * @param start the pressure when the time begins
     * @param end the pressure when it ends
     * @param time the time of the fall, above {@code error}
     * @param error by how much it may be wrong
     * @param walls the temperature of the walls, and of the air at the beginning
     * @param coldest the coldest that the air was during the fall, at most {@code walls}; empty where nobody knows
     * @throws IllegalArgumentException if the pressure rises, {@code time} is not above {@code error}, or a temperature
     *     is out of range
     */
    public Falling {
      Objects.requireNonNull(volume, "volume");
      Objects.requireNonNull(start, "start");
      Objects.requireNonNull(end, "end");
      Objects.requireNonNull(time, "time");
      Objects.requireNonNull(error, "error");
      Objects.requireNonNull(walls, "walls");
      Objects.requireNonNull(coldest, "coldest");
      LeakSize.requireError(error);
      if (end.least().compareTo(start.most()) > 0) {
        throw new IllegalArgumentException("pressure at the end must be at most that at the start, "
            + start.most().shown() + ", was " + end.least().shown());
      }
      if (time.compareTo(error) <= 0) {
        throw new IllegalArgumentException("time of the fall must be above "
            + Seconds.told(error) + ", by which it may be wrong, was "
            + Seconds.told(time) + "; let the pressure fall farther");
      }
      if (!(walls.kelvins() > 0.0)) {
        throw new IllegalArgumentException(
            "temperature of the walls must be above 0 K, was " + walls.shown());
      }
      if (coldest.isPresent()
          && !(coldest.get().kelvins() > 0.0 && coldest.get().compareTo(walls) <= 0)) {
        throw new IllegalArgumentException(
            "coldest temperature of the air must be above 0 K and at" + " most that of the walls, "
                + walls.shown() + ", was " + coldest.get().shown());
      }
    }

    /** {@return what was read in one line, such as "from 7 to 5 bar(g) in 300 s"} */
    @Override
    public String toString() {
      return volume + " from " + start + " to " + end + " in " + Seconds.told(time) + " ± "
          + Seconds.told(error) + ", walls at " + walls
          + coldest.map(air -> ", air at least at " + air).orElse("");
    }
  }

  /** Below so many atmospheres a leak is not choked: 1/0.528. */
  private static final double CHOKED = Math.pow(1.2, 3.5);

  private static final Source COUNTED = Source.derived("mass of a volume counted at a state");
  private static final Source PROPORTION =
      Source.derived("choked flow is in proportion to the absolute pressure");
  private static final Source HEAT =
      Source.derived("bounds of dm/dt ∝ p/√T with heat that only flows in from the walls");

  private static final Symbol FLOW = Symbol.of("ṁ", ValueKind.MASS_FLOW);
  private static final Symbol LEAST = Symbol.of("ṁ1", ValueKind.MASS_FLOW);
  private static final Symbol MOST = Symbol.of("ṁ2", ValueKind.MASS_FLOW);
  private static final Symbol LEAK = Symbol.of("ql", "q_l", ValueKind.FREE_AIR);
  private static final Symbol LEAK_PER_SECOND = LEAK.as(ValueKind.VOLUME_FLOW);
  private static final Symbol DENSITY = Symbol.of("ρ", ValueKind.DENSITY);
  private static final Symbol AT = Symbol.of("p", ValueKind.PRESSURE);
  private static final Symbol BAND = Symbol.of("pb", ValueKind.PRESSURE);
  private static final Symbol START = Symbol.of("p1", ValueKind.PRESSURE);
  private static final Symbol END = Symbol.of("p2", ValueKind.PRESSURE);
  private static final Symbol FALL = Symbol.of("X", ValueKind.NUMBER);
  private static final Symbol COLD = Symbol.of("u", ValueKind.NUMBER);
  private static final Symbol WALLS = Symbol.of("T1", ValueKind.TEMPERATURE);
  private static final Symbol COLDEST = Symbol.of("Tc", ValueKind.TEMPERATURE);
  private static final Symbol INTEGRAL = Symbol.of("J", ValueKind.NUMBER);
  private static final Symbol VOLUME = Symbol.of("V", ValueKind.VOLUME);
  private static final Symbol CONSTANT = Symbol.of("R", ValueKind.HEAT_CAPACITY);
  private static final Symbol TIME = Symbol.of("t", ValueKind.SECONDS);

  private static final Formula CYCLED = Formula.of(
      "Leak at the pressure asked for",
      "⟨ṁ⟩ = ⟨ql⟩ × ⟨ρ⟩ × ⟨p⟩ / ⟨pb⟩",
      Source.together(List.of(COUNTED, PROPORTION)),
      FLOW,
      LEAK_PER_SECOND,
      DENSITY,
      AT,
      BAND);

  private static final Formula FALLEN =
      Formula.of("Fall of the pressure", "⟨X⟩ = ln(⟨p1⟩ / ⟨p2⟩)", PROPORTION, FALL, START, END);

  private static final Formula INSULATED =
      Formula.of("Air without heat from the walls", "⟨u⟩ = exp(⟨X⟩ / 7)", HEAT, COLD, FALL);

  private static final Formula COOLED =
      Formula.of("Air at its coldest", "⟨u⟩ = √(⟨T1⟩ / ⟨Tc⟩)", HEAT, COLD, WALLS, COLDEST);

  private static final Formula LEAST_INTEGRAL = Formula.of(
      "Least for this fall", "⟨J⟩ = ⟨X⟩ − 7 × ln(⟨u⟩) + 5 × (⟨u⟩ − 1)", HEAT, INTEGRAL, FALL, COLD);

  private static final Formula MOST_INTEGRAL = Formula.of(
      "Most for this fall",
      "⟨J⟩ = 7 × (⟨u⟩ − 1) + (⟨X⟩ − 7 × ln(⟨u⟩)) × ⟨u⟩",
      HEAT,
      INTEGRAL,
      FALL,
      COLD);

  private static final Formula LOST = Formula.of(
      "Leak at the pressure asked for",
      "⟨ṁ⟩ = [144] × ⟨V⟩ × ⟨p⟩ × ⟨J⟩ / (⟨R⟩ × ⟨T1⟩ × ⟨t⟩)",
      PROPORTION,
      FLOW,
      VOLUME,
      AT,
      INTEGRAL,
      CONSTANT,
      WALLS,
      TIME);

  private final String method;
  private final GaugePressure at;
  private final Range<MassFlow> leak;
  private final Worked least;
  private final Worked most;

  private LeakTest(
      String method, GaugePressure at, Range<MassFlow> leak, Worked least, Worked most) {
    this.method = method;
    this.at = at;
    this.leak = leak;
    this.least = least;
    this.most = most;
  }

  /**
   * Finds the leak by load timing.
   *
   * @param read what was read
   * @param atmosphere the pressure around
   * @param at the pressure for which the leak is asked, such as that at which the leaks of a ledger were measured
   * @return the leak
   * @throws IllegalArgumentException if a pressure is so low that leaks do not choke, a time is above 1e9 s, or no
   *     number holds the leak
   */
  public static LeakTest of(Cycling read, AbsolutePressure atmosphere, GaugePressure at) {
    Objects.requireNonNull(read, "read");
    AbsolutePressure asked = asked(atmosphere, at);
    AbsolutePressure cutIn = choked("cut-in", read.band().least(), atmosphere);
    AbsolutePressure cutOut = read.band().most().absolute(atmosphere);
    long loaded = nanos(read.loaded());
    long unloaded = nanos(read.unloaded());
    long wrong = read.cycles() * nanos(read.error()); // less than loaded and unloaded time together
    Cycled least = new Cycled(
        new LoadTiming(
            Duration.ofNanos(Math.max(0L, loaded - wrong)),
            Duration.ofNanos(unloaded + wrong),
            read.delivery().least()),
        cutOut,
        asked);
    Cycled most = new Cycled(
        new LoadTiming(
            Duration.ofNanos(loaded + wrong),
            Duration.ofNanos(Math.max(0L, unloaded - wrong)),
            read.delivery().most()),
        cutIn,
        asked);
    return new LeakTest("load timing", at, new Range<>(least.flow(), most.flow()), least, most);
  }

  /** A time in nanoseconds; no test takes the centuries that a long does not hold. */
  private static long nanos(Duration time) {
    if (Seconds.of(time) > 1.0e9) {
      throw new IllegalArgumentException(
          "time of a test must be at most 1e9 s, was " + Seconds.told(time) + "; check its unit");
    }
    return time.toNanos();
  }

  /**
   * Finds the leak by a fall of pressure.
   *
   * @param read what was read
   * @param atmosphere the pressure around
   * @param at the pressure for which the leak is asked, such as that at which the leaks of a ledger were measured
   * @return the leak
   * @throws IllegalArgumentException if a pressure is so low that leaks do not choke, a time is above 1e9 s, or no
   *     number holds the leak
   */
  public static LeakTest of(Falling read, AbsolutePressure atmosphere, GaugePressure at) {
    Objects.requireNonNull(read, "read");
    AbsolutePressure asked = asked(atmosphere, at);
    AbsolutePressure lowest = choked("end", read.end().least(), atmosphere);
    AbsolutePressure highest = read.start().most().absolute(atmosphere);
    AbsolutePressure start = read.start().least().absolute(atmosphere);
    AbsolutePressure end = read.end().most().absolute(atmosphere);
    long time = nanos(read.time());
    long error = nanos(read.error());
    Fallen least = new Fallen(
        read.volume().least(),
        start.compareTo(end) < 0 ? end : start, // the gauge does not show whether it fell
        end,
        1.0e-9 * (time + error),
        read.walls(),
        read.coldest(),
        asked,
        /* isLeast= */ true);
    Fallen most = new Fallen(
        read.volume().most(),
        highest,
        lowest,
        1.0e-9 * (time - error),
        read.walls(),
        read.coldest(),
        asked,
        /* isLeast= */ false);
    return new LeakTest(
        "fall of pressure", at, new Range<>(least.flow(), most.flow()), least, most);
  }

  private static AbsolutePressure asked(AbsolutePressure atmosphere, GaugePressure at) {
    Objects.requireNonNull(atmosphere, "atmosphere");
    Objects.requireNonNull(at, "at");
    return choked("working", at, atmosphere);
  }

  private static AbsolutePressure choked(
      String name, GaugePressure pressure, AbsolutePressure atmosphere) {
    AbsolutePressure absolute = pressure.absolute(atmosphere);
    if (!(atmosphere.pascals() > 0.0 && absolute.pascals() >= CHOKED * atmosphere.pascals())) {
      throw new IllegalArgumentException(name + " pressure of a leak test must be at least "
          + Digits.significant((CHOKED - 1.0) * atmosphere.bar(), 3) + " bar(g), where leaks choke,"
          + " was " + pressure.shown() + "; test at a higher pressure");
    }
    return absolute;
  }

  /** {@return how it was tested, "load timing" or "fall of pressure"} */
  public String method() {
    return method;
  }

  /** {@return the pressure for which the leak is told} */
  public GaugePressure at() {
    return at;
  }

  /** {@return what leaks at that pressure, at least and at most} */
  public Range<MassFlow> leak() {
    return leak;
  }

  @Override
  public Working working(UnitSystem units) {
    return Working.titled("Leak of the whole plant by " + method + ", least and most", units)
        .include(least.working(units), LEAST)
        .include(most.working(units), MOST)
        .answer(LEAST, MOST)
        .build();
  }

  /** One end of what load timing tells. */
  private record Cycled(LoadTiming timing, AbsolutePressure band, AbsolutePressure at)
      implements Worked {

    MassFlow flow() {
      return timing.leak().massFlow().times(at.pascals() / band.pascals());
    }

    @Override
    public Working working(UnitSystem units) {
      return Working.titled("Leak by load timing", units)
          .include(timing.working(units), LEAK)
          .given(DENSITY, timing.delivery().reference().density().kilogramsPerCubicMetre(), 7)
          .given(AT, at.pascals(), 7)
          .given(BAND, band.pascals(), 7)
          .step(CYCLED, flow().kilogramsPerSecond(), 4)
          .answer(FLOW)
          .build();
    }
  }

  /** One end of what a fall of pressure tells. */
  private record Fallen(
      Volume volume,
      AbsolutePressure start,
      AbsolutePressure end,
      double seconds,
      Temperature walls,
      Optional<Temperature> coldest,
      AbsolutePressure at,
      boolean isLeast)
      implements Worked {

    double fall() {
      return Math.log(start.pascals() / end.pascals());
    }

    /** Whether the air was told to stay warmer than without heat from the walls. */
    boolean isCooled() {
      return coldest.isPresent() && cooled() <= Math.exp(fall() / 7.0);
    }

    private double cooled() {
      return Math.sqrt(walls.kelvins() / coldest.orElse(walls).kelvins());
    }

    double cold() {
      return isCooled() ? cooled() : Math.exp(fall() / 7.0);
    }

    double integral() {
      double u = cold();
      double x = fall();
      return isLeast
          ? x - 7.0 * Math.log(u) + 5.0 * (u - 1.0)
          : 7.0 * (u - 1.0) + (x - 7.0 * Math.log(u)) * u;
    }

    MassFlow flow() {
      return MassFlow.ofKilogramsPerSecond(volume.cubicMetres()
          * at.pascals()
          * integral()
          / (AirState.GAS_CONSTANT * walls.kelvins() * seconds));
    }

    @Override
    public Working working(UnitSystem units) {
      Working.Builder working =
          Working.titled("Leak by a fall of pressure, " + (isLeast ? "least" : "most"), units);
      if (start.equals(end)) {
        working.note("With the errors stated the pressure need not have fallen at all.");
      }
      working
          .given(START, start.pascals(), 7)
          .given(END, end.pascals(), 7)
          .step(FALLEN, fall(), 6)
          .given(WALLS, walls.kelvins(), 7);
      if (isCooled()) {
        working.given(COLDEST, coldest.orElse(walls).kelvins(), 7).step(COOLED, cold(), 8);
      } else {
        working.step(INSULATED, cold(), 8);
      }
      return working
          .step(isLeast ? LEAST_INTEGRAL : MOST_INTEGRAL, integral(), 5)
          .given(VOLUME, volume.cubicMetres(), 7)
          .given(AT, at.pascals(), 7)
          .given(CONSTANT, AirState.GAS_CONSTANT, 8)
          .given(TIME, seconds, 8)
          .step(LOST, flow().kilogramsPerSecond(), 4)
          .answer(FLOW)
          .build();
    }
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof LeakTest that
        && method.equals(that.method)
        && at.equals(that.at)
        && leak.equals(that.leak)
        && least.equals(that.least)
        && most.equals(that.most);
  }

  @Override
  public int hashCode() {
    return Objects.hash(method, at, leak, least, most);
  }

  /** {@return the leak in one line, such as "load timing: 0.05 to 0.06 kg/s at 7 bar(g)"} */
  @Override
  public String toString() {
    return method + ": " + leak.least().shown() + " to " + leak.most().shown() + " at "
        + at.shown();
  }
}
