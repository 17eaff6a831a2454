package org.airfit.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.time.Duration;
import java.util.Optional;
import org.airfit.quantity.Energy;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What a user of the library may put together as a day, and what no day is. */
class DayResultTest {

  private static final Duration NONE = Duration.ZERO;
  private static final Duration HOUR = Duration.ofHours(1);
  private static final Energy ENERGY = Energy.ofJoules(0.0);

  private static DayResult.UseDay use(Duration runs, Duration below, double... kilograms) {
    return new DayResult.UseDay(
        "press",
        Optional.empty(),
        runs,
        below,
        Optional.empty(),
        kilograms[0],
        kilograms[1],
        kilograms[2]);
  }

  private static DayResult.CompressorDay compressor(Duration loaded, int starts, double made) {
    return new DayResult.CompressorDay(
        "screw", loaded, NONE, NONE, starts, 0, 0, ENERGY, ENERGY, made);
  }

  @ParameterizedTest
  @ValueSource(doubles = {-1.0e-9, Double.NaN, Double.POSITIVE_INFINITY})
  void a_mass_is_finite_and_not_below_nothing(double kilograms) {
    for (int i = 0; i < 3; i++) {
      double[] masses = new double[3];
      masses[i] = kilograms;
      assertThatIllegalArgumentException()
          .isThrownBy(() -> use(HOUR, NONE, masses))
          .withMessageContaining("must be finite and at least 0 kg, was ");
    }
    assertThatIllegalArgumentException()
        .isThrownBy(() -> compressor(HOUR, 0, kilograms))
        .withMessageStartingWith("air delivered by screw must be finite and at least 0 kg, was ");
    for (int i = 0; i < 4; i++) {
      double[] masses = new double[4];
      masses[i] = kilograms;
      assertThatIllegalArgumentException()
          .isThrownBy(() -> new DayResult.Balance(masses[0], masses[1], masses[2], masses[3]));
    }
    assertThatIllegalArgumentException().isThrownBy(() -> new DayResult.Fall(NONE, kilograms, 0.0));
    assertThatIllegalArgumentException().isThrownBy(() -> new DayResult.Fall(NONE, 0.0, kilograms));
  }

  @Test
  void a_time_is_not_below_nothing_and_a_use_is_not_short_for_longer_than_it_runs() {
    Duration before = Duration.ofNanos(-1);
    assertThatIllegalArgumentException().isThrownBy(() -> use(before, NONE, 0.0, 0.0, 0.0));
    assertThatIllegalArgumentException().isThrownBy(() -> use(HOUR, before, 0.0, 0.0, 0.0));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> use(HOUR, HOUR.plusNanos(1), 0.0, 0.0, 0.0))
        .withMessageStartingWith("time below the need of press must be at most 3600 s, was ");
    assertThat(use(HOUR, HOUR, 0.0, 0.0, 0.0).isShort()).isTrue();
    assertThatIllegalArgumentException().isThrownBy(() -> compressor(before, 0, 0.0));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> compressor(HOUR, -1, 0.0))
        .withMessage(
            "counts of screw must be at least 0, were -1 starts, 0 in an hour and 0 loads");
    assertThatIllegalArgumentException().isThrownBy(() -> new DayResult.Fall(before, 0.0, 0.0));
  }
}
