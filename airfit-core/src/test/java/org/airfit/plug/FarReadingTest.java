package org.airfit.plug;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.airfit.measure.Instrument;
import org.airfit.quantity.Length;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** A reading far from every profile is an answer with its working, not a refusal. */
class FarReadingTest {

  @ParameterizedTest
  @EnumSource(Dimension.class)
  void the_working_of_the_farthest_reading_is_told(Dimension dimension) {
    for (double millimetres : new double[] {0.02, 50.0, 118.7, 500.0, 600.0}) {
      for (Instrument instrument : Instrument.values()) {
        Identification answer = Identifier.of(DemoProfiles.birds())
            .identify(
                List.of(PlugReading.of(dimension, instrument, Length.ofMillimetres(millimetres))));
        for (UnitSystem units : UnitSystem.values()) {
          assertThat(answer.working(units).toText()).doesNotContain("Infinity", "NaN");
        }
      }
    }
  }
}
