package org.airfit.plug;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import org.airfit.measure.Instrument;
import org.airfit.measure.PartSpread;
import org.airfit.measure.Reading;
import org.airfit.quantity.Length;
import org.airfit.source.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class GaugeBallTest {

  private static Length mm(double value) {
    return Length.ofMillimetres(value);
  }

  private static PlugReading read(Dimension dimension, double mm) {
    return PlugReading.of(dimension, Instrument.DIGITAL_CALIPER, mm(mm));
  }

  private static PlugReading tip(double overBall, double ball, double collar, double groove) {
    return PlugReading.overBall(
        new GaugeBall(mm(ball)),
        mm(overBall),
        Instrument.DIGITAL_CALIPER,
        read(Dimension.COLLAR_DIAMETER, collar),
        read(Dimension.GROOVE_DIAMETER, groove));
  }

  /**
   * A 3-4-5 triangle: a ball of 10 mm against an edge 2 mm above the root has its middle 3 mm below and 4 mm behind the
   * edge.
   */
  @Test
  void a_low_wall_is_touched_at_its_edge() {
    assertThat(GaugeBall.fromWall(10.0, 2.0)).isCloseTo(4.0, within(1.0e-12));
    assertThat(tip(29.0, 10.0, 24.0, 20.0).length().millimetres())
        .isCloseTo(29.0 - 5.0 - 4.0, within(1.0e-12));
  }

  @Test
  void a_high_wall_is_touched_by_the_side_of_the_ball() {
    PlugReading reading = tip(24.0, 3.0, 24.0, 17.0);
    assertThat(reading.length().millimetres()).isCloseTo(21.0, within(1.0e-12));
    assertThat(reading.dimension()).isEqualTo(Dimension.TIP_LENGTH);
    assertThat(reading.standardUncertainty())
        .as("a millimetre of collar more or less moves nothing")
        .isEqualTo(
            Instrument.DIGITAL_CALIPER.standardUncertainty(Dimension.COLLAR_DIAMETER.access()));
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
    PlugReading reading = tip(25.0, 4.0, 22.0, 20.0);
    double uBall = Instrument.DIGITAL_CALIPER
        .standardUncertainty(Dimension.COLLAR_DIAMETER.access())
        .millimetres();
    double uGroove = Instrument.DIGITAL_CALIPER
        .standardUncertainty(Dimension.GROOVE_DIAMETER.access())
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
    PlugReading collar = read(Dimension.COLLAR_DIAMETER, 24.0);
    assertThatIllegalArgumentException()
        .isThrownBy(
            () -> PlugReading.overBall(ball, mm(25.0), Instrument.DIGITAL_CALIPER, collar, collar))
        .withMessageContaining("must be of the groove diameter");
  }

  /**
   * A low wall: collar 24, groove 20, so that a ball of 10 mm has its middle 4 mm behind the edge and reads 1 mm
   * shorter.
   */
  private static PlugProfile.Builder lowWall(String id, double tipLength, PartSpread groove) {
    return PlugProfile.builder(id)
        .from(Provenance.synthetic(), Source.demo("sizes for a test"))
        .dimension(Dimension.COLLAR_DIAMETER, PartSpread.normal(mm(24.0), mm(0.03)))
        .dimension(Dimension.GROOVE_DIAMETER, groove)
        .dimension(Dimension.TIP_LENGTH, PartSpread.normal(mm(tipLength), mm(0.03)))
        .confirmUnusual();
  }

  private static final PartSpread ROOT = PartSpread.normal(mm(20.0), mm(0.03));
  private static final GaugeBall TEN = new GaugeBall(mm(10.0));

  private static Identification identify(PlugProfile profile, PlugReading... readings) {
    return Identifier.of(ReferenceSet.of("one", List.of(profile))).identify(List.of(readings));
  }

  @Test
  void a_length_by_the_ball_is_compared_with_one_stated_by_the_same_ball() {
    PlugReading reading = PlugReading.byBall(TEN, mm(29.0), Instrument.DIGITAL_CALIPER);
    assertThat(reading.length()).isEqualTo(mm(29.0).minus(mm(10.0)));
    assertThat(reading).asString().contains("19.00 mm", "by a ball of 10 mm");
    PlugProfile byBall = lowWall("by-ball", 19.0, ROOT).tipLengthBy(TEN).build();
    Residual residual =
        identify(byBall, reading).candidates().get(0).residuals().get(0);
    assertThat(residual.sigmas()).isCloseTo(0.0, within(1.0e-9));
    assertThat(residual.reading()).isEqualTo(reading);
    assertThat(byBall.tipLengthBall()).contains(TEN);
  }

  /** L_b = L_g + x − d/2: 20 mm to the edge are 20 + 4 − 5 = 19 mm by the ball. */
  @Test
  void a_length_taken_the_other_way_is_converted_with_the_diameters_of_the_profile() {
    PlugProfile byBall = lowWall("by-ball", 19.0, ROOT).tipLengthBy(TEN).build();
    PlugProfile byEdge = lowWall("by-edge", 20.0, ROOT).build();
    PlugReading edge = read(Dimension.TIP_LENGTH, 20.0);
    PlugReading ball = PlugReading.byBall(TEN, mm(29.0), Instrument.DIGITAL_CALIPER);
    Residual one = identify(byBall, edge).candidates().get(0).residuals().get(0);
    Residual other = identify(byEdge, ball).candidates().get(0).residuals().get(0);
    assertThat(one.reading().length().millimetres()).isCloseTo(19.0, within(1.0e-9));
    assertThat(other.reading().length().millimetres()).isCloseTo(20.0, within(1.0e-9));
    assertThat(one.sigmas()).isCloseTo(0.0, within(1.0e-9));
    // ∂x/∂h = (10 − 4)/(2 × 4), and h is half the difference of two diameters of 0.03 mm each
    double more = 0.75 * 0.5 * Math.hypot(0.03, 0.03);
    assertThat(other.reading().standardUncertainty().millimetres())
        .isCloseTo(Math.hypot(ball.standardUncertainty().millimetres(), more), within(1.0e-12));
    assertThat(identify(byBall, edge).working().toText())
        .contains("was not taken as this profile states it");
    GaugeBall eight = new GaugeBall(mm(8.0));
    double x = Math.sqrt(2.0 * 6.0);
    PlugReading byEight = PlugReading.byBall(eight, mm(20.0 + x + 4.0), Instrument.DIGITAL_CALIPER);
    assertThat(identify(byBall, byEight).candidates().get(0).residuals().get(0).sigmas())
        .as("from one ball to another")
        .isCloseTo(0.0, within(1.0e-9));
  }

  @Test
  void what_cannot_be_converted_is_not_compared() {
    PlugReading ball = PlugReading.byBall(TEN, mm(29.0), Instrument.DIGITAL_CALIPER);
    PlugProfile bare = PlugProfile.builder("bare")
        .from(Provenance.synthetic(), Source.demo("sizes for a test"))
        .dimension(Dimension.TIP_LENGTH, PartSpread.normal(mm(20.0), mm(0.03)))
        .build();
    assertThat(identify(bare, ball).candidates().get(0).degreesOfFreedom()).isZero();
    assertThat(identify(bare, ball).verdict()).isEqualTo(PlugVerdict.INSUFFICIENT_DATA);
    PlugProfile narrow = lowWall("narrow", 20.0, ROOT)
        .dimension(Dimension.GROOVE_WIDTH, PartSpread.normal(mm(9.0), mm(0.06)))
        .build();
    assertThat(identify(narrow, ball).candidates().get(0).degreesOfFreedom())
        .as("the ball does not go into the groove")
        .isZero();
    assertThat(identify(narrow, ball).working().toText()).contains("as they were taken");
  }

  @Test
  void what_to_measure_next_follows_the_way_the_set_states_it() {
    PlugProfile one = lowWall("one", 19.0, ROOT).tipLengthBy(TEN).build();
    PlugProfile two = lowWall("two", 21.0, ROOT).tipLengthBy(TEN).build();
    PlugProfile edge =
        lowWall("edge", 24.0, PartSpread.limits(mm(19.9), mm(20.1))).build();
    PlugProfile strange = PlugProfile.builder("strange")
        .from(Provenance.synthetic(), Source.demo("sizes for a test"))
        .dimension(Dimension.COLLAR_DIAMETER, PartSpread.normal(mm(24.0), mm(0.03)))
        .build();
    ReferenceSet balls = ReferenceSet.of("balls", List.of(strange, one, two));
    NextReading next = Identifier.of(balls).identify(List.of()).nextReadings().get(0);
    assertThat(next.ball()).contains(TEN);
    assertThat(next.inWords()).contains("over a ball of 10 mm");
    assertThat(BenchPath.of(Identifier.of(ReferenceSet.of("two", List.of(one, two))))
            .toText())
        .contains("over a ball of 10 mm");
    NextReading mixed = Identifier.of(ReferenceSet.of("mixed", List.of(one, two, edge)))
        .identify(List.of())
        .nextReadings()
        .get(0);
    assertThat(mixed.dimension()).isEqualTo(Dimension.TIP_LENGTH);
    assertThat(mixed.ball()).isEmpty();
    // to the edge they are 20, 22 and 24 mm, all well apart
    assertThat(mixed.chanceOfSettling()).isGreaterThan(0.8);
  }

  /** 19 mm by the ball and 20 mm to the edge are one length. */
  @Test
  void sets_and_pairs_are_compared_on_one_footing() {
    PartSpread sample = new PartSpread.Sample(6, mm(19.0), mm(0.02));
    PlugProfile byBall = lowWall("p", 19.0, ROOT)
        .tipLengthBy(TEN)
        .dimension(Dimension.TIP_LENGTH, sample)
        .build();
    PlugProfile byLimits = lowWall("p", 19.0, ROOT)
        .tipLengthBy(TEN)
        .dimension(Dimension.TIP_LENGTH, PartSpread.limits(mm(18.9), mm(19.1)))
        .build();
    PlugProfile byEdge = lowWall("p", 20.0, ROOT).build();
    for (PlugProfile stated : List.of(byBall, byLimits)) {
      Separation separation = Separation.of(byEdge, stated, Instrument.DIGITAL_CALIPER);
      assertThat(separation.risk()).isCloseTo(0.5, within(1.0e-9));
      ReferenceSet one = ReferenceSet.of("one", List.of(byEdge));
      ReferenceSet other = ReferenceSet.of("other", List.of(stated));
      assertThat(SetComparison.of(one, other, Instrument.DIGITAL_CALIPER).agrees())
          .isTrue();
      assertThatIllegalArgumentException()
          .isThrownBy(
              () -> SetComparison.of(one, other, Instrument.DIGITAL_CALIPER).merged("both"))
          .withMessageContaining("must be taken alike in both sets, was by the edge");
    }
  }

  @Test
  void a_ball_goes_with_the_tip_length_only() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new PlugReading(
            Dimension.BORE, Reading.of(mm(5.0), mm(0.01)), java.util.Optional.of(TEN)))
        .withMessageContaining("must be the tip length");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> PlugReading.byBall(TEN, mm(10.0), Instrument.DIGITAL_CALIPER))
        .withMessageContaining("measure from the tip face");
  }
}
