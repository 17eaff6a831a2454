package org.airfit.plug;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatNoException;

import java.util.List;
import java.util.Optional;
import org.airfit.measure.Instrument;
import org.airfit.measure.PartSpread;
import org.airfit.measure.Reading;
import org.airfit.quantity.Length;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** What small values say, whole, and the doors of each before, at and after its bound. */
class NextReadingWordsTest {

  private static Length mm(double value) {
    return Length.ofMillimetres(value);
  }

  private static NextReading next(double drop, double doubt, double settling) {
    return new NextReading(
        Dimension.BORE, Instrument.DIGITAL_CALIPER, drop, doubt, settling, Optional.empty());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "0.5; 1.0; 0.5; about 50 %; about 50 times in 100",
        "0.994; 1.0; 0.0; about 99 %; hardly ever",
        "0.995; 1.0; 0.0049; almost all; hardly ever",
        "2.0; 2.0; 0.005; almost all; about once in 100",
        "0.5; 2.0; 0.0149; about 25 %; about once in 100",
        "0.5; 2.0; 0.015; about 25 %; about 2 times in 100",
        "-0.1; 2.0; 0.994; about 0 %; about 99 times in 100",
        "0.0; 0.0; 0.995; about 0 %; almost always",
        "0.1; 0.0; 1.0; about 0 %; almost always"
      })
  void what_a_reading_brings_is_said_in_hundredths(
      double drop, double doubt, double settling, String away, String settled) {
    assertThat(next(drop, doubt, settling).inWords())
        .isEqualTo("Measure the bore (d_b) (" + Dimension.BORE.howToMeasure()
            + "). On average it takes away " + away
            + " of the present doubt; one profile will then stand out " + settled + ".");
    assertThat(next(drop, doubt, settling))
        .hasToString(next(drop, doubt, settling).inWords());
  }

  @Test
  void a_next_reading_is_made_of_finite_numbers() {
    for (double wrong : new double[] {-0.001, 1.001, Double.NaN}) {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> next(0.1, 1.0, wrong))
          .withMessage("chance of settling must be in [0, 1], was " + wrong);
    }
    for (double wrong : new double[] {-0.001, Double.POSITIVE_INFINITY, Double.NaN}) {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> next(0.1, wrong, 0.5))
          .withMessage("doubt must be finite and at least 0 bit, was " + wrong);
    }
    assertThatIllegalArgumentException()
        .isThrownBy(() -> next(Double.NaN, 1.0, 0.5))
        .withMessage("expected drop of doubt must be finite [bit], was NaN");
  }

  @Test
  void a_tip_length_over_a_ball_says_how_it_is_taken() {
    GaugeBall ball = new GaugeBall(mm(4.0));
    assertThat(ball).hasToString("a ball of 4 mm");
    NextReading over = new NextReading(
        Dimension.TIP_LENGTH, Instrument.DIGITAL_CALIPER, 1.0, 1.0, 1.0, Optional.of(ball));
    assertThat(over.inWords())
        .startsWith("Measure the " + Dimension.TIP_LENGTH
            + " (outside jaws from the tip face over a ball of 4 mm pushed against the groove wall, less its "
            + "diameter).");
    assertThatNoException().isThrownBy(() -> new GaugeBall(mm(10.0)));
    for (double wrong : new double[] {0.0, 10.001}) {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> new GaugeBall(mm(wrong)))
          .withMessageContaining("must be in (0, 10] mm");
    }
  }

  /** A ball of diameter d against a wall of height h touches the edge at √(h (d − h)) from its middle, below d/2. */
  @Test
  void a_ball_touches_the_wall_or_its_edge() {
    assertThat(GaugeBall.fromWall(4.0, 2.0)).isEqualTo(2.0);
    assertThat(GaugeBall.fromWall(4.0, 3.0)).isEqualTo(2.0);
    assertThat(GaugeBall.fromWall(5.0, 1.0)).isEqualTo(2.0); // 3-4-5: √(1 × 4)
    assertThat(GaugeBall.slope(5.0, 1.0)).isEqualTo(0.75);
    assertThat(GaugeBall.slope(4.0, 2.0)).isZero();
    assertThat(GaugeBall.slope(4.0, 3.0)).isZero();
  }

  @Test
  void readings_are_written_in_the_units_asked_for() {
    PlugReading tip = PlugReading.of(Dimension.TIP_DIAMETER, Reading.of(mm(25.4), mm(0.0254)));
    assertThat(tip.inWords(UnitSystem.US))
        .isEqualTo(Dimension.TIP_DIAMETER + " 1.0000 in ± 0.00100 in");
    assertThat(tip.inWords(UnitSystem.SI)).isEqualTo(tip.toString()).contains("25.4");
    GaugeBall ball = new GaugeBall(mm(4.0));
    PlugReading by = PlugReading.byBall(ball, mm(24.0), Instrument.DIGITAL_CALIPER);
    assertThat(by.length().millimetres()).isEqualTo(20.0);
    assertThat(by.inWords(UnitSystem.US)).endsWith(", by a ball of 4 mm");
    for (double wrong : new double[] {4.0, 3.9}) {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> PlugReading.byBall(ball, mm(wrong), Instrument.DIGITAL_CALIPER))
          .withMessageContaining("must be above its diameter of 4 mm");
    }
  }

  @ParameterizedTest
  @EnumSource(SizeClass.class)
  void a_range_of_a_size_class_holds_both_its_ends_and_nothing_beyond(SizeClass size) {
    for (Dimension dimension : Dimension.values()) {
      PartSpread.Limits range = size.range(dimension).orElse(null);
      if (range != null) {
        double low = range.low().millimetres();
        double high = range.high().millimetres();
        for (double in : new double[] {low, high}) {
          assertThat(SizeClasses.of(List.of(sized(dimension, in))).open()).contains(size);
        }
        for (double out : new double[] {low - 0.001, high + 0.001}) {
          assertThat(SizeClasses.of(List.of(sized(dimension, out))).open()).doesNotContain(size);
        }
      }
    }
  }

  private static PlugReading sized(Dimension dimension, double size) {
    return PlugReading.of(dimension, Reading.of(mm(size), mm(0.01)));
  }

  @Test
  void provenances_count_their_pieces() {
    assertThat(Provenance.userMeasured(1)).hasToString("measured by the user on 1 piece");
    assertThat(Provenance.userMeasured(2)).hasToString("measured by the user on 2 pieces");
    assertThat(Provenance.standardEntered()).hasToString("entered from a standard");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Provenance.userMeasured(0))
        .withMessage("pieces must be at least 1 for measured dimensions, was 0");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Provenance(Provenance.Kind.SYNTHETIC, 1))
        .withMessage("pieces must be 0 unless dimensions were measured, was 1");
    assertThat(Provenance.userMeasured(5).canIdentify()).isTrue();
    assertThat(Provenance.userMeasured(4).canIdentify()).isFalse();
    assertThat(Provenance.nominalUnverified().canIdentify()).isFalse();
    assertThat(Provenance.userMeasured(3)).isGreaterThan(Provenance.userMeasured(4));
    assertThat(Provenance.synthetic().weaker(Provenance.standardEntered()))
        .isEqualTo(Provenance.synthetic());
  }

  @Test
  void settings_are_taken_up_to_their_bounds() {
    Identifier identifier = Identifier.of(DemoProfiles.birds());
    assertThat(identifier.withWearAllowance(mm(2.0)).wearAllowance()).isEqualTo(mm(2.0));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> identifier.withWearAllowance(mm(2.001)))
        .withMessageContaining("must be in [0, 2] mm");
    assertThat(identifier.withConfidence(0.5).confidence()).isEqualTo(0.5);
    assertThatIllegalArgumentException().isThrownBy(() -> identifier.withConfidence(0.499));
    assertThat(identifier.withUnknownPrior(0.0).unknownPrior()).isZero();
    assertThat(identifier.withUnknownPrior(0.0).expectsNearCopies()).isFalse();
    assertThat(identifier.usesSizeClasses()).isFalse();
    assertThat(identifier.withSizeClasses().usesSizeClasses()).isTrue();
    assertThat(identifier.takesErrorsAsIndependent()).isFalse();
    assertThat(identifier.withIndependentErrors().takesErrorsAsIndependent()).isTrue();
    assertThat(Identifier.usualWear()).isEqualTo(mm(0.2));
    assertThat(identifier)
        .hasToString("Identifier by the set " + DemoProfiles.birds()
            + ", unknown plug 0.05, confidence 0.95, wear up to 0 mm, next readings by "
            + Instrument.DIGITAL_CALIPER);
    assertThat(identifier.withoutNearCopies().toString())
        .contains(", confidence 0.95, no near copies, wear up to");
  }
}
