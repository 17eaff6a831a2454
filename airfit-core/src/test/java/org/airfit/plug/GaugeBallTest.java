package org.airfit.plug;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.airfit.quantity.Length;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class GaugeBallTest {

  private static Length mm(double value) {
    return Length.ofMillimetres(value);
  }

  private static Reading read(Dimension dimension, double mm) {
    return Instrument.DIGITAL_CALIPER.reading(dimension, mm(mm));
  }

  private static Reading tip(double overBall, double ball, double collar, double groove) {
    return new GaugeBall(mm(ball))
        .tipLength(
            mm(overBall),
            Instrument.DIGITAL_CALIPER,
            read(Dimension.COLLAR_DIAMETER, collar),
            read(Dimension.GROOVE_DIAMETER, groove));
  }

  /** A 3-4-5 triangle: a ball of 10 mm against an edge 2 mm above the root has its middle 3 mm below and 4 mm behind the edge. */
  @Test
  void a_low_wall_is_touched_at_its_edge() {
    assertThat(GaugeBall.fromWall(10.0, 2.0)).isCloseTo(4.0, within(1.0e-12));
    assertThat(tip(29.0, 10.0, 24.0, 20.0).length().millimetres())
        .isCloseTo(29.0 - 5.0 - 4.0, within(1.0e-12));
  }

  @Test
  void a_high_wall_is_touched_by_the_side_of_the_ball() {
    Reading reading = tip(24.0, 3.0, 24.0, 17.0);
    assertThat(reading.length().millimetres()).isCloseTo(21.0, within(1.0e-12));
    assertThat(reading.dimension()).isEqualTo(Dimension.TIP_LENGTH);
    assertThat(reading.standardUncertainty())
        .as("a millimetre of collar more or less moves nothing")
        .isEqualTo(Instrument.DIGITAL_CALIPER.standardUncertainty(Dimension.COLLAR_DIAMETER));
  }

  /** The edge lies on the ball: its distance from the middle is half the diameter. */
  @ParameterizedTest
  @CsvSource({"4, 0.1", "4, 1", "4, 1.99", "6.35, 2.2", "3, 0.7"})
  void the_edge_of_a_low_wall_lies_on_the_ball(double d, double h) {
    double behind = GaugeBall.fromWall(d, h);
    assertThat(Math.hypot(behind, 0.5 * d - h)).isCloseTo(0.5 * d, within(1.0e-12));
  }

  @Test
  void both_cases_meet_where_the_wall_is_half_the_ball() {
    assertThat(GaugeBall.fromWall(4.0, 2.0 - 1.0e-9))
        .isCloseTo(GaugeBall.fromWall(4.0, 2.0), within(1.0e-9));
  }

  /** Tolerance 3 %: four standard errors of a deviation from 20 000 draws are 2 %, the rest is the curve. */
  @Test
  void the_uncertainty_is_that_of_simulated_measurements() {
    SplittableRandom random = new SplittableRandom(9);
    Reading reading = tip(25.0, 4.0, 22.0, 20.0);
    double uBall = Instrument.DIGITAL_CALIPER
        .standardUncertainty(Dimension.COLLAR_DIAMETER)
        .millimetres();
    double uGroove = Instrument.DIGITAL_CALIPER
        .standardUncertainty(Dimension.GROOVE_DIAMETER)
        .millimetres();
    int draws = 20_000;
    double sum = 0.0;
    double squares = 0.0;
    for (int i = 0; i < draws; i++) {
      double h =
          0.5 * (22.0 + uBall * random.nextGaussian() - 20.0 - uGroove * random.nextGaussian());
      double length = 25.0 + uBall * random.nextGaussian() - 2.0 - GaugeBall.fromWall(4.0, h);
      sum += length;
      squares += length * length;
    }
    double deviation = Math.sqrt(squares / draws - (sum / draws) * (sum / draws));
    assertThat(reading.standardUncertainty().millimetres() / deviation)
        .as("seed 9")
        .isCloseTo(1.0, within(0.03));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.0, 10.001})
  void a_ball_that_is_none_or_goes_into_no_groove_is_refused(double diameter) {
    Length length = mm(diameter);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new GaugeBall(length))
        .withMessageContaining("(0, 10] mm");
  }

  @Test
  void measurements_that_cannot_be_are_refused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> tip(25.0, 4.0, 20.0, 20.0))
        .withMessageContaining("must be below the collar diameter");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> tip(3.9, 4.0, 24.0, 16.0))
        .withMessageContaining("measure from the tip face");
    GaugeBall ball = new GaugeBall(mm(4.0));
    Reading collar = read(Dimension.COLLAR_DIAMETER, 24.0);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> ball.tipLength(mm(25.0), Instrument.DIGITAL_CALIPER, collar, collar))
        .withMessageContaining("must be of the groove diameter");
  }
}
