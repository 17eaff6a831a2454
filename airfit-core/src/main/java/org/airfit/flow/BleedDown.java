package org.airfit.flow;

import java.time.Duration;
import java.util.Objects;
import org.airfit.air.AirState;
import org.airfit.internal.Digits;
import org.airfit.internal.Seconds;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureUnit;
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
 * A leak test: a closed system loses pressure in a time.
 *
 * <pre>
 *   ṁ = V (p1 − p2) / (R T t)
 * </pre>
 *
 * <p>The answer is the mean over the fall, at a pressure between the two. The time is that of this fall alone, not
 * the time since the test began. <b>Source:</b> US Navy, NAVFAC MO-209, leak tests of compressed-air lines.
 *
 * @param volume all that is closed in: receiver and pipes
 * @param start the pressure when the time begins
 * @param end the pressure when it ends, at most {@code start}
 * @param time the time the fall took, above 0
 * @param temperature the temperature of the air in the system
 */
public record BleedDown(
    Volume volume,
    AbsolutePressure start,
    AbsolutePressure end,
    Duration time,
    Temperature temperature)
    implements Worked {

  private static final Source SOURCE = Source.handbook("US Navy, NAVFAC MO-209, table 5-4");

  private static final Symbol VOLUME = Symbol.of("V", ValueKind.VOLUME);
  private static final Symbol START = Symbol.of("p1", ValueKind.PRESSURE);
  private static final Symbol END = Symbol.of("p2", ValueKind.PRESSURE);
  private static final Symbol CONSTANT = Symbol.of("R", ValueKind.HEAT_CAPACITY);
  private static final Symbol KELVINS = Symbol.of("T", ValueKind.TEMPERATURE);
  private static final Symbol TIME = Symbol.of("t", ValueKind.SECONDS);
  private static final Symbol FLOW = Symbol.of("ṁ", ValueKind.MASS_FLOW);

  /** No leak is larger, a choice of this project [kg/s]. */
  private static final double MOST = 1.0e6;

  private static final Formula LEAK = Formula.of(
      "Leak",
      "⟨ṁ⟩ = [144] × ⟨V⟩ × (⟨p1⟩ − ⟨p2⟩) / (⟨R⟩ × ⟨T⟩ × ⟨t⟩)",
      SOURCE,
      FLOW,
      VOLUME,
      START,
      END,
      CONSTANT,
      KELVINS,
      TIME);

  /**
   * Checks the components.
   *
   * @param volume all that is closed in: receiver and pipes
   * @param start the pressure when the time begins
   * @param end the pressure when it ends, at most {@code start}
   * @param time the time the fall took, above 0
   * @param temperature the temperature of the air in the system
   * @throws IllegalArgumentException if an argument is out of range, or the leak is above 1e6 kg/s
   */
  public BleedDown {
    Objects.requireNonNull(volume, "volume");
    Objects.requireNonNull(start, "start");
    Objects.requireNonNull(end, "end");
    Objects.requireNonNull(time, "time");
    Objects.requireNonNull(temperature, "temperature");
    if (end.compareTo(start) > 0) {
      throw new IllegalArgumentException("pressure at the end must be at most that at the start, "
          + start.shown() + ", was " + end.shown());
    }
    if (time.isNegative() || time.isZero()) {
      throw new IllegalArgumentException(
          "time must be above 0 s, was " + Digits.told(Seconds.of(time)) + " s");
    }
    if (!(temperature.kelvins() > 0.0)) {
      throw new IllegalArgumentException("temperature must be above 0 K, was "
          + Digits.significant(temperature.kelvins(), 12) + " K");
    }
    double leak = leak(
        volume.cubicMetres(),
        start.pascals() - end.pascals(),
        temperature.kelvins(),
        Seconds.of(time));
    if (!(leak <= MOST)) {
      throw new IllegalArgumentException(
          "fall of pressure must be that of a leak of at most 1e6 kg/s,"
              + " was from " + start.inFull(PressureUnit.BAR) + " to "
              + end.inFull(PressureUnit.BAR) + " in " + Seconds.told(time)
              + "; check the units of the volume, the pressures and the time");
    }
  }

  /** {@return the mean leak over the fall} */
  public MassFlow leak() {
    return MassFlow.ofKilogramsPerSecond(leak(
        volume.cubicMetres(),
        start.pascals() - end.pascals(),
        temperature.kelvins(),
        Seconds.of(time)));
  }

  /** ṁ = V Δp / (R T t), in kg/s. */
  private static double leak(double volume, double fall, double kelvins, double seconds) {
    return volume * fall / (AirState.GAS_CONSTANT * kelvins * seconds);
  }

  @Override
  public Working working(UnitSystem units) {
    return Working.titled("Leak of air from a fall of pressure", units)
        .given(VOLUME, volume.cubicMetres(), 7)
        .given(START, start.pascals(), 7)
        .given(END, end.pascals(), 7)
        .given(CONSTANT, AirState.GAS_CONSTANT, 8)
        .given(KELVINS, temperature.kelvins(), 7)
        .given(TIME, Seconds.of(time), 8)
        .step(LEAK, leak().kilogramsPerSecond(), 4)
        .answer(FLOW)
        .build();
  }
}
