package org.airfit.plug;

import static org.assertj.core.api.Assertions.assertThat;

import org.airfit.measure.PartSpread;
import org.airfit.measure.Reading;
import org.airfit.quantity.Length;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is said of one reading against one size, whole, before, at and after each bound. */
class ResidualWordsTest {

  private static Length mm(double value) {
    return Length.ofMillimetres(value);
  }

  private static Residual residual(
      Dimension dimension, PartSpread spread, double size, double sigmas, double wear) {
    return new Residual(
        PlugReading.of(dimension, Reading.of(mm(size), mm(0.02))),
        spread,
        size - spread.nominal().millimetres(),
        mm(0.04),
        sigmas,
        mm(wear));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "12.004; 0.1; 0; 12.00 mm, at nominal: agrees, 0.1 times the expected scatter",
        "12.08; 2.0; 0; 12.08 mm, 0.08 mm above nominal: agrees, 2.0 times the expected scatter",
        "11.92; -2.0; 0; 11.92 mm, 0.08 mm below nominal: agrees, 2.0 times the expected scatter",
        "11.91; -2.1; 0; 11.91 mm, 0.09 mm below nominal: strained, 2.1 times the expected scatter",
        "11.88; -3.0; 0; 11.88 mm, 0.12 mm below nominal: strained, 3.0 times the expected scatter",
        "11.87; -3.1; 0; 11.87 mm, 0.13 mm below nominal: does not agree, 3.1 times the expected scatter"
      })
  void a_reading_agrees_is_strained_or_does_not_agree(
      double size, double sigmas, double wear, String words) {
    Residual residual =
        residual(Dimension.TIP_DIAMETER, PartSpread.normal(mm(12.0), mm(0.03)), size, sigmas, wear);
    assertThat(residual.inWords()).isEqualTo(Dimension.TIP_DIAMETER + " reads " + words);
    assertThat(residual).hasToString(residual.inWords());
  }

  /** A tip shrinks: below nominal wear helps, above it works the other way. */
  @Test
  void wear_is_told_where_it_helps_and_where_it_cannot() {
    PartSpread tip = PartSpread.normal(mm(12.0), mm(0.03));
    assertThat(residual(Dimension.TIP_DIAMETER, tip, 11.8, -2.5, 0.1).inWords())
        .endsWith(": strained, 2.5 times the expected scatter, wear allowed for");
    assertThat(residual(Dimension.TIP_DIAMETER, tip, 12.1, 2.5, 0.1).inWords())
        .endsWith(": strained, 2.5 times the expected scatter, and wear changes it the other way");
    assertThat(residual(Dimension.TIP_DIAMETER, tip, 12.0, 0.0, 0.1).inWords())
        .endsWith("at nominal: agrees");
    assertThat(residual(Dimension.TIP_DIAMETER, tip, 11.94, 0.0, 0.1).inWords())
        .endsWith(": agrees, 1.5 times the expected scatter as new");
    assertThat(residual(Dimension.TIP_DIAMETER, tip, 11.91, 0.0, 0.1).inWords())
        .endsWith(": agrees, if worn by that much");
  }

  @Test
  void limits_hold_both_their_ends() {
    PartSpread limits = PartSpread.limits(mm(11.5), mm(12.5));
    for (double size : new double[] {11.5, 12.5}) {
      assertThat(residual(Dimension.TIP_DIAMETER, limits, size, 0.0, 0.0).inWords())
          .endsWith(": inside the limits");
    }
    assertThat(residual(Dimension.TIP_DIAMETER, limits, 11.4, 0.0, 0.2).inWords())
        .endsWith(": agrees, if worn by that much");
    assertThat(residual(Dimension.TIP_DIAMETER, limits, 12.6, 0.0, 0.2).inWords())
        .doesNotContain("inside the limits");
  }

  @Test
  void in_us_units_four_decimals_of_an_inch_are_told() {
    Residual residual =
        residual(Dimension.TIP_DIAMETER, PartSpread.normal(mm(25.4), mm(0.03)), 25.654, 6.3, 0.0);
    assertThat(residual.inWords(UnitSystem.US))
        .isEqualTo(
            Dimension.TIP_DIAMETER + " reads 1.0100 in, 0.0100 in above nominal: does not agree, "
                + "6.3 times the expected scatter, and wear changes it the other way");
  }

  /** The shoulder neither rubs nor locks: wear changes nothing there, to neither side. */
  @Test
  void where_nothing_wears_nothing_is_said_of_wear() {
    PartSpread spread = PartSpread.normal(mm(12.0), mm(0.03));
    assertThat(residual(Dimension.SHOULDER_DIAMETER, spread, 12.2, 5.0, 0.1).inWords())
        .endsWith(": does not agree, 5.0 times the expected scatter");
    assertThat(residual(Dimension.SHOULDER_DIAMETER, spread, 11.8, -5.0, 0.1).inWords())
        .endsWith(": does not agree, 5.0 times the expected scatter");
  }

  /** Half a millimetre off with a scatter of a quarter: twice the scatter, in numbers without rounding. */
  @Test
  void twice_the_scatter_still_agrees_as_new() {
    Residual worn = new Residual(
        PlugReading.of(Dimension.TIP_DIAMETER, Reading.of(mm(11.5), mm(0.02))),
        PartSpread.normal(mm(12.0), mm(0.03)),
        -0.5,
        mm(0.25),
        0.0,
        mm(0.6));
    assertThat(worn.inWords()).endsWith(": agrees, 2.0 times the expected scatter as new");
  }
}
