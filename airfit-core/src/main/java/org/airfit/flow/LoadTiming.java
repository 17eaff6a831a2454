package org.airfit.flow;

import java.time.Duration;
import java.util.List;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.source.Source;
import org.airfit.working.Term;
import org.airfit.working.Working;

/**
 * A leak test: with nothing in use, a compressor of known delivery runs loaded and unloaded in turn, and only feeds the leaks.
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
public record LoadTiming(Duration loaded, Duration unloaded, FreeAirFlow delivery) {

  private static final Source SOURCE =
      Source.commonPractice("leak percentage from loaded and unloaded time");

  /**
   * Checks the components.
   *
   * @param loaded the time T it ran loaded, summed over the cycles timed; 0 where nothing leaks
   * @param unloaded the time t it ran unloaded
   * @param delivery what the compressor delivers while loaded
   */
  public LoadTiming {
    if (loaded.isNegative() || unloaded.isNegative() || loaded.plus(unloaded).isZero()) {
      throw new IllegalArgumentException(
          "loaded and unloaded time must be at least 0 s and together above 0 s, was "
              + seconds(loaded) + " s and " + seconds(unloaded) + " s");
    }
  }

  private static double seconds(Duration time) {
    return time.getSeconds() + 1.0e-9 * time.getNano();
  }

  /** {@return the part of the delivery that leaks [-], in [0, 1]} */
  public double share() {
    return seconds(loaded) / (seconds(loaded) + seconds(unloaded));
  }

  /** {@return the leak} */
  public FreeAirFlow leak() {
    return delivery.times(share());
  }

  /** {@return how the leak follows from the times} */
  public Working working() {
    return Working.titled("Leak from load timing")
        .step(
            "Part of the delivery that leaks",
            "⟨s⟩ = ⟨T⟩ / (⟨T⟩ + ⟨t⟩)",
            "⟨s⟩ = \\frac{⟨T⟩}{⟨T⟩ + ⟨t⟩}",
            List.of(
                Term.of("T", "T", seconds(loaded), "s", 8),
                Term.of("t", "t", seconds(unloaded), "s", 8)),
            Term.of("s", "s", share(), "", 4),
            SOURCE)
        .build();
  }
}
