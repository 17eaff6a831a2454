package org.airfit.flow;

import java.time.Duration;
import java.util.Objects;
import org.airfit.internal.Digits;
import org.airfit.internal.Seconds;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.source.Source;
import org.airfit.working.Formula;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/**
 * A leak test: with nothing in use, a compressor of known delivery runs loaded and unloaded in turn, and only feeds
 * the leaks.
 *
 * <pre>
 *   leak = delivery × T/(T + t)
 * </pre>
 *
 * <p><b>Source:</b> common practice of leak surveys.
 *
 * @param loaded the time T it ran loaded, summed over the cycles timed; 0 where nothing leaks
 * @param unloaded the time t it ran unloaded
 * @param delivery what the compressor delivers while loaded
 */
public record LoadTiming(Duration loaded, Duration unloaded, FreeAirFlow delivery)
    implements Worked {

  private static final Source SOURCE =
      Source.commonPractice("leak percentage from loaded and unloaded time");

  private static final Symbol LOADED = Symbol.of("T", ValueKind.SECONDS);
  private static final Symbol UNLOADED = Symbol.of("t", ValueKind.SECONDS);
  private static final Symbol SHARE = Symbol.of("s", ValueKind.NUMBER);
  private static final Symbol DELIVERY = Symbol.of("q", ValueKind.FREE_AIR);
  private static final Symbol LEAK = Symbol.of("ql", "q_l", ValueKind.FREE_AIR);

  private static final Formula PART = Formula.of(
      "Part of the delivery that leaks",
      "⟨s⟩ = ⟨T⟩ / (⟨T⟩ + ⟨t⟩)",
      SOURCE,
      SHARE,
      LOADED,
      UNLOADED);

  private static final Formula LEAKS =
      Formula.of("Leak", "⟨ql⟩ = ⟨s⟩ × ⟨q⟩", SOURCE, LEAK, SHARE, DELIVERY);

  /**
   * Checks the components.
   *
   * @param loaded the time T it ran loaded, summed over the cycles timed; 0 where nothing leaks
   * @param unloaded the time t it ran unloaded
   * @param delivery what the compressor delivers while loaded
   * @throws IllegalArgumentException if a time is below 0, or both are 0
   */
  public LoadTiming {
    Objects.requireNonNull(loaded, "loaded");
    Objects.requireNonNull(unloaded, "unloaded");
    Objects.requireNonNull(delivery, "delivery");
    if (loaded.isNegative() || unloaded.isNegative() || (loaded.isZero() && unloaded.isZero())) {
      throw new IllegalArgumentException(
          "loaded and unloaded time must be at least 0 s and together above 0 s, was "
              + Digits.told(Seconds.of(loaded)) + " s and " + Digits.told(Seconds.of(unloaded))
              + " s");
    }
  }

  /** {@return the part of the delivery that leaks [-], in [0, 1]} */
  public double share() {
    return Seconds.of(loaded) / (Seconds.of(loaded) + Seconds.of(unloaded));
  }

  /** {@return the leak} */
  public FreeAirFlow leak() {
    return delivery.times(share());
  }

  @Override
  public Working working(UnitSystem units) {
    return Working.titled("Leak of air from load timing", units)
        .given(LOADED, Seconds.of(loaded), 8)
        .given(UNLOADED, Seconds.of(unloaded), 8)
        .step(PART, share(), 4)
        .given(DELIVERY, delivery.cubicMetresPerSecond(), 6)
        .step(LEAKS, leak().cubicMetresPerSecond(), 4)
        .note("The leak is counted at the reference state of the delivery.")
        .answer(LEAK)
        .build();
  }
}
