package org.airfit.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.airfit.quantity.Length;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A leaf of a pitch gauge, and a length over pitches that were counted. */
class PitchReadingsTest {

  private static Length mm(double value) {
    return Length.ofMillimetres(value);
  }

  private static Length perInch(double threads) {
    return Length.ofInches(1.0 / threads);
  }

  private static double chance(double leaf, double threads) {
    return PitchGauge.INCH.chance(perInch(leaf), perInch(threads), PitchGauge.USUAL_MISREAD);
  }

  @Test
  void the_right_leaf_is_read_97_times_in_a_hundred_and_its_neighbours_share_the_rest() {
    assertThat(PitchGauge.USUAL_MISREAD).isEqualTo(0.03);
    assertThat(chance(14, 14)).isCloseTo(0.97, within(0.001));
    // 18 has 16 and 19 beside it, 14 and 20 two leaves off
    assertThat(chance(16, 18)).isCloseTo(0.4 * 0.03, within(0.0002));
    assertThat(chance(19, 18)).isCloseTo(0.4 * 0.03, within(0.0003));
    assertThat(chance(20, 18)).isCloseTo(0.1 * 0.03, within(0.0003));
    assertThat(chance(14, 18)).isCloseTo(0.1 * 0.03, within(0.0002));
    assertThat(chance(22, 18)).isLessThan(1e-4);
    assertThat(chance(13, 18)).isLessThan(1e-4);
  }

  @Test
  void a_gauge_that_is_never_misread_shows_only_what_fits() {
    assertThat(PitchGauge.INCH.chance(perInch(19), perInch(18), 0.0)).isLessThan(1e-4);
    assertThat(PitchGauge.INCH.chance(perInch(18), perInch(18), 0.0)).isGreaterThan(0.999);
  }

  @ParameterizedTest
  @EnumSource(PitchGauge.class)
  void the_leaves_stand_in_order_and_each_fits_its_own_pitch_best(PitchGauge gauge) {
    assertThat(gauge.leaves()).isSorted().doesNotHaveDuplicates();
    for (Length pitch : gauge.leaves()) {
      double own = gauge.chance(pitch, pitch, 0.03);
      double all = 0.0;
      for (Length leaf : gauge.leaves()) {
        double chance = gauge.chance(leaf, pitch, 0.03);
        all += chance;
        assertThat(chance).isLessThanOrEqualTo(own);
      }
      assertThat(all).isBetween(0.97, 1.0);
    }
  }

  @Test
  void a_leaf_that_the_set_has_not_is_taken_to_belong_to_it() {
    // 17 per inch fits a pitch of 1.5 mm within 0.4 %
    assertThat(PitchGauge.INCH.chance(perInch(17), mm(1.5), 0.03)).isGreaterThan(0.9);
    // 16 and 18 are 6 % off, so that hardly anybody reports them
    assertThat(PitchGauge.INCH.chance(perInch(16), mm(1.5), 0.03)).isBetween(0.01, 0.2);
    assertThat(PitchGauge.METRIC.chance(mm(6.4), mm(6.4), 0.03)).isGreaterThan(0.9);
    assertThat(PitchGauge.METRIC.chance(mm(0.21), mm(0.21), 0.03)).isGreaterThan(0.9);
  }

  @ParameterizedTest
  @ValueSource(doubles = {-0.001, 0.501, Double.NaN})
  void a_share_of_misread_leaves_out_of_range_is_refused(double share) {
    Length one = mm(1.0);
    assertThatThrownBy(() -> PitchGauge.METRIC.chance(one, one, share))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("share of misread leaves must be in [0, 0.5]");
    assertThat(PitchGauge.METRIC.chance(one, one, 0.5)).isBetween(0.45, 0.55);
    Length nothing = mm(0.0);
    assertThatThrownBy(() -> PitchGauge.METRIC.chance(nothing, one, 0.0))
        .hasMessageContaining("pitch on the leaf must be above 0 mm");
    assertThatThrownBy(() -> PitchGauge.METRIC.chance(one, nothing, 0.0))
        .hasMessageContaining("pitch of the thread must be above 0 mm");
  }

  /** Five pitches of 18 per inch: 7.056 mm. */
  @ParameterizedTest
  @CsvSource({"5, 0.97", "6, 0.02", "4, 0.01", "7, 0", "3, 0"})
  void a_count_that_is_one_off_is_seldom_and_two_off_never(int said, double likelihood) {
    PitchCount count = new PitchCount(perInch(18).times(5.0), said, mm(0.05));
    assertThat(count.likelihood(perInch(18))).isCloseTo(likelihood, within(1e-9));
  }

  @Test
  void a_length_that_is_off_is_less_likely() {
    PitchCount count = new PitchCount(mm(7.05), 5, mm(0.05));
    assertThat(count.pitch().millimetres()).isCloseTo(1.41, within(1e-12));
    assertThat(count.pitchUncertainty().millimetres()).isCloseTo(0.01, within(1e-12));
    assertThat(count.deviation(mm(1.4), 5)).isCloseTo(1.0, within(1e-9));
    assertThat(count.likelihood(mm(1.4))).isCloseTo(0.97 * Math.exp(-0.5), within(1e-9));
    // of one pitch there is no smaller count
    assertThat(new PitchCount(mm(1.0), 1, mm(0.05)).likelihood(mm(1.0)))
        .isCloseTo(0.97, within(1e-9));
  }

  @Test
  void counts_out_of_range_are_refused() {
    Length five = mm(5.0);
    Length nothing = mm(0.0);
    assertThatThrownBy(() -> new PitchCount(five, 0, five))
        .hasMessage("pitches counted must be in [1, 50], was 0");
    assertThatThrownBy(() -> new PitchCount(five, 51, five))
        .hasMessage("pitches counted must be in [1, 50], was 51");
    assertThatThrownBy(() -> new PitchCount(nothing, 5, five))
        .hasMessageContaining("length over the pitches must be in [0.001, 10000] mm, was 0 mm");
    assertThatThrownBy(() -> new PitchCount(five, 5, nothing))
        .hasMessage("uncertainty of the length over the pitches must be at least 1e-9 mm, was 0 mm;"
            + " no reading is perfect");
    assertThatThrownBy(() -> new PitchCount(five, 5, mm(0.99e-9)))
        .hasMessageContaining("must be at least 1e-9 mm");
    assertThat(new PitchCount(five, 5, mm(1.0e-9)).deviation(mm(1.0), Integer.MIN_VALUE))
        .isFinite();
    assertThat(new PitchCount(five, 50, five).pitches()).isEqualTo(50);
    assertThat(new PitchCount(five, 1, five).pitches()).isEqualTo(1);
  }
}
