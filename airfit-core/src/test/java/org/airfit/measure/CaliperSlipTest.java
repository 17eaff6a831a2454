package org.airfit.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.Stream;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.junit.jupiter.api.Test;

class CaliperSlipTest {

  @Test
  void a_point_one_or_two_places_off_may_mean_four_lengths() {
    assertThat(CaliperSlip.DECIMAL_POINT.meant(Length.ofMillimetres(4.7)).stream()
            .map(length -> length.format(LengthUnit.MILLIMETRE, 3)))
        .containsExactly("47.000 mm", "470.000 mm", "0.470 mm", "0.047 mm");
    assertThat(CaliperSlip.DECIMAL_POINT.meant(Length.ofMillimetres(0.47)))
        .anyMatch(length -> Math.abs(length.millimetres() - 47.0) < 1e-9);
    assertThat(CaliperSlip.DECIMAL_POINT.meant(Length.ofMetres(0.0))).isEmpty();
  }

  @Test
  void one_reading_in_a_hundred_is_a_slip_of_some_kind() {
    assertThat(Stream.of(CaliperSlip.values()).mapToDouble(CaliperSlip::chance).sum())
        .isCloseTo(0.01, within(1e-12));
  }
}
