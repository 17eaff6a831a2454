package org.airfit.plant;

import java.time.Duration;
import java.util.Objects;
import org.airfit.internal.Seconds;

/**
 * One band for several compressors, which are called in their order and sent to rest in the opposite one.
 *
 * <p>At cut-in the next one is called. Where the pressure is still not above cut-in when {@code pause} has passed, the
 * one after it is called too, and so on; at cut-out likewise, one at a time.
 *
 * @param band the pressures
 * @param pause how long the control waits before it calls, or sends to rest, another one; from 1 s to 1 h
 */
public record SharedBand(PressureBand band, Duration pause) {

  /**
   * Checks the components.
   *
   * @param band the pressures
   * @param pause how long the control waits before it calls, or sends to rest, another one; from 1 s to 1 h
   * @throws IllegalArgumentException if {@code pause} is out of range
   */
  public SharedBand {
    Objects.requireNonNull(band, "band");
    Objects.requireNonNull(pause, "pause");
    if (!(Seconds.of(pause) >= 1.0 && Seconds.of(pause) <= 3600.0)) {
      throw new IllegalArgumentException(
          "pause between two compressors of one band must be in [1, 3600] s, was "
              + Seconds.told(pause));
    }
  }
}
