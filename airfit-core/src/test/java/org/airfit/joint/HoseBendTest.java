package org.airfit.joint;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.airfit.Comparison;
import org.airfit.Evidence;
import org.airfit.Pencil;
import org.airfit.quantity.Length;
import org.airfit.working.Completeness;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class HoseBendTest {

  private static HoseBend bend(double degrees, double radius, double outside) {
    return new HoseBend(degrees, Length.ofMillimetres(radius), Length.ofMillimetres(outside));
  }

  /**
   * D34: the text calls 70 mm the external radius, which would give 817 mm; the number printed is that of a diameter.
   */
  @Test
  void the_example_of_a_handbook_means_the_outside_diameter() {
    Comparison.of(
            "Hose: length in a bend",
            "90°, r 450 mm, OD 70 mm",
            762.0,
            "mm",
            Evidence.printed("S53"))
        .isMetBy(bend(90.0, 450.0, 70.0).length().millimetres(), 0.5, "digits printed");
    assertThat(bend(90.0, 450.0, 140.0).length().millimetres()).isCloseTo(817.0, within(0.5));
  }

  @Test
  void a_full_turn_about_the_centre_line_is_a_circle_and_parts_add_up() {
    assertThat(bend(360.0, 100.0, 0.0).length().millimetres())
        .isCloseTo(200.0 * Math.PI, within(1e-9));
    assertThat(bend(30.0, 100.0, 20.0)
            .length()
            .plus(bend(60.0, 100.0, 20.0).length())
            .metres())
        .isCloseTo(bend(90.0, 100.0, 20.0).length().metres(), within(1e-12));
  }

  @Test
  void its_working_can_be_followed_with_a_pencil() {
    Pencil.check(bend(90.0, 450.0, 70.0));
    Completeness.check(bend(90.0, 450.0, 70.0));
  }

  @Test
  void hose_is_usually_bent_no_tighter_than_six_bores() {
    assertThat(HoseBend.usualLeastRadius(Length.ofMillimetres(10.0)).millimetres())
        .isCloseTo(60.0, within(1e-9));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.0, -1.0, 360.1, Double.NaN})
  void an_angle_out_of_range_is_refused(double degrees) {
    assertThatThrownBy(() -> bend(degrees, 450.0, 70.0))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageStartingWith("angle of the bend must be in (0, 360] °, was ");
  }

  @Test
  void a_radius_of_nothing_is_refused() {
    assertThatThrownBy(() -> bend(90.0, 0.0, 70.0))
        .hasMessageStartingWith("bend radius must be above 0 mm, was 0");
  }
}
