package org.airfit.joint;

import static org.assertj.core.api.Assertions.assertThat;

import org.airfit.quantity.Length;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class HoseSizeTest {

  @Test
  void there_are_four_sizes_in_inches_and_five_in_millimetres() {
    assertThat(HoseSize.all(UnitSystem.US))
        .extracting(HoseSize::toString)
        .containsExactly("1/4 in hose", "3/8 in hose", "1/2 in hose", "3/4 in hose");
    assertThat(HoseSize.all(UnitSystem.SI))
        .extracting(HoseSize::toString)
        .containsExactly("6 mm hose", "8 mm hose", "10 mm hose", "13 mm hose", "19 mm hose");
    assertThat(HoseSize.all(UnitSystem.US).get(1).bore()).isEqualTo(Length.ofMillimetres(9.525));
  }

  /** Every size but the metric roundings is a size of ISO 1307:2006, table 1, or the inch name of one. */
  @Test
  void every_size_is_called_so_by_the_standard() {
    for (UnitSystem units : UnitSystem.values()) {
      assertThat(HoseSize.all(units))
          .allSatisfy(size -> assertThat(StandardHose.calledBy(size.name())).isPresent());
    }
  }

  @ParameterizedTest
  @CsvSource({
    "9.5 mm, US, 1/2 in hose",
    "9.525 mm, SI, 13 mm hose",
    "9.0 mm, US, 3/8 in hose",
    "9.024 mm, US, 3/8 in hose",
    "9.026 mm, US, 1/2 in hose",
    "1/4 in, US, 3/8 in hose",
    "5 mm, SI, 6 mm hose",
    "5.5 mm, SI, 8 mm hose",
  })
  void the_next_wider_size_differs_from_the_old_one(String bore, UnitSystem units, String size) {
    assertThat(HoseSize.widerThan(Length.parse(bore), units).get(0)).hasToString(size);
  }

  @Test
  void nothing_is_wider_than_the_widest() {
    assertThat(HoseSize.widerThan(Length.parse("19 mm"), UnitSystem.US)).isEmpty();
    assertThat(HoseSize.widerThan(Length.parse("18.6 mm"), UnitSystem.SI)).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({
    "11.9 mm, SI, 13 mm hose",
    "11.9 mm, US, 1/2 in hose",
    "13 mm, SI, 13 mm hose",
    "13.001 mm, SI, 19 mm hose",
    "12.7 mm, US, 1/2 in hose",
    "12.701 mm, US, 3/4 in hose",
  })
  void a_bore_found_by_calculation_is_asked_for_as_a_size_that_exists(
      String bore, UnitSystem units, String size) {
    assertThat(HoseSize.atLeast(Length.parse(bore), units).orElseThrow()).hasToString(size);
    assertThat(HoseSize.atLeast(Length.parse("19.06 mm"), units)).isEmpty();
  }
}
