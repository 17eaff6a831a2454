package org.airfit.plant;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.airfit.Pencil;
import org.airfit.air.AirState;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.ReferenceState;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.Volume;
import org.airfit.working.Completeness;
import org.airfit.working.UnitSystem;
import org.airfit.working.Worked;
import org.junit.jupiter.api.Test;

class SupplyTest {

  private static final Temperature ROOM = Temperature.ofCelsius(20.0);
  private static final AirState SEVEN = AirState.of(AbsolutePressure.ofBar(7.0), ROOM);
  private static final Regulator REGULATOR =
      new Regulator(SEVEN, flow(0.02), AbsolutePressure.ofBar(6.5));
  private static final Compressor COMPRESSOR = compressor(7.0, 8.0);

  private static FreeAirFlow flow(double kilogramsPerSecond) {
    return FreeAirFlow.from(kg(kilogramsPerSecond), ReferenceState.COMPRESSOR_INLET);
  }

  private static MassFlow kg(double kilogramsPerSecond) {
    return MassFlow.ofKilogramsPerSecond(kilogramsPerSecond);
  }

  private static Compressor.Point point(double bar, double kilogramsPerSecond) {
    return new Compressor.Point(AbsolutePressure.ofBar(bar), flow(kilogramsPerSecond));
  }

  private static Compressor compressor(double cutIn, double cutOut) {
    return new Compressor(
        List.of(point(5.0, 0.12), point(7.0, 0.11), point(9.0, 0.09)),
        AbsolutePressure.ofBar(cutIn),
        AbsolutePressure.ofBar(cutOut),
        Volume.ofLitres(500.0),
        ROOM);
  }

  private static double bar(Supply supply, double kilogramsPerSecond) {
    return supply.at(kg(kilogramsPerSecond)).orElseThrow().pressure().bar();
  }

  @Test
  void a_fixed_supply_holds() {
    Supply fixed = Supply.fixed(SEVEN);
    assertThat(fixed.still()).isEqualTo(SEVEN);
    assertThat(fixed.at(kg(100.0))).contains(SEVEN);
    assertThat(fixed.working(kg(1.0)).toText()).contains("holds 7 bar(a)");
  }

  @Test
  void a_regulator_droops_along_its_two_points_and_beyond() {
    assertThat(REGULATOR.still()).isEqualTo(SEVEN);
    assertThat(bar(REGULATOR, 0.0)).isEqualTo(7.0);
    assertThat(bar(REGULATOR, 0.01)).isCloseTo(6.75, within(1.0e-12));
    assertThat(bar(REGULATOR, 0.02)).isCloseTo(6.5, within(1.0e-12));
    assertThat(bar(REGULATOR, 0.04)).isCloseTo(6.0, within(1.0e-12));
    assertThat(REGULATOR.at(kg(0.28001))).isEmpty();
    Worked droop = units -> REGULATOR.working(kg(0.013), units);
    Pencil.check(droop);
    Completeness.check(droop);
    assertThat(REGULATOR.working(kg(0.013)).toText()).doesNotContain("beyond");
    assertThat(REGULATOR.working(flow(0.02).massFlow()).toText())
        .as("at the stated point itself")
        .doesNotContain("beyond");
    assertThat(REGULATOR.working(kg(0.04)).toText()).contains("beyond the stated point of 0.02");
    assertThat(REGULATOR.working(kg(0.3)).toText()).contains("nothing would be left");
  }

  /** 8 bar at rest and 4 bar at 1/64 kg/s, numbers a double holds exactly: at 1/32 kg/s nothing is left. */
  @Test
  void where_the_line_reaches_a_vacuum_a_regulator_gives_no_air() {
    Regulator soft = new Regulator(
        AirState.of(AbsolutePressure.ofPascals(800_000.0), ROOM),
        FreeAirFlow.from(kg(0.015625), ReferenceState.COMPRESSOR_INLET),
        AbsolutePressure.ofPascals(400_000.0));
    double stated = soft.flow().massFlow().kilogramsPerSecond();
    assertThat(soft.pascals(2.0 * stated)).isNaN();
    assertThat(soft.pascals(1.999 * stated)).isCloseTo(400.0, within(1.0e-6));
    assertThat(soft.at(kg(2.0 * stated))).isEmpty();
    assertThat(soft.largest()).isEqualTo(2.0 * stated);
  }

  @Test
  void a_regulator_reads_as_its_two_points_and_what_stands_in_front() {
    AbsolutePressure held = AbsolutePressure.ofBar(6.5);
    FreeAirFlow twenty = FreeAirFlow.ofScfm60F(20.0);
    Regulator bare = new Regulator(SEVEN, twenty, held);
    assertThat(bare)
        .hasToString("regulator: " + SEVEN.pressure() + " at rest, " + held + " at " + twenty);
    AbsolutePressure ten = AbsolutePressure.ofBar(10.0);
    assertThat(new Regulator(SEVEN, twenty, held, Optional.of(ten)))
        .hasToString(bare + ", at most " + ten + " in front");
    assertThat(new Regulator(SEVEN, twenty, held, Optional.of(SEVEN.pressure())).inFront())
        .as("the same pressure in front as set is allowed")
        .contains(SEVEN.pressure());
  }

  @Test
  void a_regulator_that_rises_or_has_one_point_is_refused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Regulator(SEVEN, flow(0.02), AbsolutePressure.ofBar(7.01)))
        .withMessageStartingWith("pressure of a regulator under flow must be at most");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Regulator(SEVEN, flow(0.0), AbsolutePressure.ofBar(6.5)))
        .withMessageStartingWith("flow of the second point of a regulator must be above 0");
  }

  /** 0.5 bar over the largest number that a double holds; a regulator that does not droop has no such bound. */
  @Test
  void the_droop_of_a_regulator_over_its_flow_is_a_number() {
    double least = 0.5e5 / Double.MAX_VALUE;
    AbsolutePressure held = AbsolutePressure.ofBar(6.5);
    Regulator steepest = new Regulator(SEVEN, flow(least * (1.0 + 1.0e-9)), held);
    assertThat(steepest.slope(0.0)).isBetween(-Double.MAX_VALUE, -1.0e307);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Regulator(SEVEN, flow(least * (1.0 - 1.0e-9)), held))
        .withMessageStartingWith("flow of the second point of a regulator must be so large that its"
            + " droop per flow can be held, was ");
    assertThat(new Regulator(SEVEN, flow(least / 2.0), SEVEN.pressure()).slope(0.0))
        .isZero();
  }

  @Test
  void a_compressor_holds_cut_in_until_it_no_longer_keeps_up_and_then_sinks_along_its_curve() {
    assertThat(COMPRESSOR.still().pressure().bar()).isEqualTo(8.0);
    assertThat(bar(COMPRESSOR, 0.0)).isEqualTo(7.0);
    assertThat(bar(COMPRESSOR, 0.11)).isCloseTo(7.0, within(1.0e-12));
    assertThat(bar(COMPRESSOR, 0.115)).isCloseTo(6.0, within(1.0e-9));
    assertThat(bar(COMPRESSOR, 0.12 - 1.0e-15)).isCloseTo(5.0, within(1.0e-9));
    assertThat(COMPRESSOR.at(kg(0.1201))).isEmpty();
  }

  /** A screw or piston compressor moves the same air against any pressure, as many sheets state it: one flow. */
  @Test
  void a_compressor_of_one_delivery_holds_cut_in_up_to_just_that() {
    for (int i = 0; i < 2000; i++) {
      double delivery = 0.01 + 7.3e-5 * i;
      double cutIn = 6.0 + 1.3e-3 * i;
      Compressor even = new Compressor(
          List.of(point(5.5, delivery), point(9.7, delivery)),
          AbsolutePressure.ofBar(cutIn),
          AbsolutePressure.ofBar(9.5),
          Volume.ofLitres(500.0),
          ROOM);
      double most = even.largest();
      assertThat(even.delivery(AbsolutePressure.ofBar(cutIn)).kilogramsPerSecond())
          .isEqualTo(most);
      assertThat(even.pascals(most)).isEqualTo(even.cutIn().pascals());
      assertThat(even.at(kg(most * 1.000001))).isEmpty();
      assertThat(even.slope(most)).isZero();
      assertThat(even.slope(most * 1.000001))
          .as("of a flow that it does not give")
          .isNaN();
    }
  }

  /** The corners of the curve belong to the piece of the smaller flows; at its first point it still delivers. */
  @Test
  void at_a_corner_of_its_curve_the_piece_of_the_smaller_flows_counts() {
    double atCutIn = COMPRESSOR.delivery(AbsolutePressure.ofBar(7.0)).kilogramsPerSecond();
    assertThat(COMPRESSOR.slope(atCutIn)).as("cut-in is held up to this flow").isZero();
    assertThat(COMPRESSOR.working(kg(atCutIn)).toText()).contains("keeps up");
    Compressor high = compressor(8.0, 8.5);
    double corner = high.delivery(AbsolutePressure.ofBar(7.0)).kilogramsPerSecond();
    assertThat(high.pascals(corner)).isCloseTo(7.0e5, within(1.0e-6));
    assertThat(high.slope(corner)).as("2 bar for 0.02 kg/s").isCloseTo(-1.0e7, within(1.0));
    assertThat(high.slope(Math.nextUp(corner)))
        .as("2 bar for 0.01 kg/s")
        .isCloseTo(-2.0e7, within(1.0));
    assertThat(high.pascals(high.largest())).isCloseTo(5.0e5, within(1.0e-6));
    assertThat(high.pascals(Math.nextUp(high.largest()))).isNaN();
  }

  @Test
  void its_delivery_lies_on_the_curve() {
    assertThat(COMPRESSOR.delivery(AbsolutePressure.ofBar(5.0)).kilogramsPerSecond())
        .isCloseTo(0.12, within(1.0e-14));
    assertThat(COMPRESSOR.delivery(AbsolutePressure.ofBar(8.0)).kilogramsPerSecond())
        .isCloseTo(0.10, within(1.0e-14));
    assertThat(COMPRESSOR.delivery(AbsolutePressure.ofBar(9.0)).kilogramsPerSecond())
        .isCloseTo(0.09, within(1.0e-14));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> COMPRESSOR.delivery(AbsolutePressure.ofBar(9.1)))
        .withMessageStartingWith("pressure must be on the compressor's curve");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> COMPRESSOR.delivery(AbsolutePressure.ofBar(4.9)));
  }

  /**
   * By hand: 0.5 m³ × 1 bar / (R × 293.15 K) = 0.59418 kg; at 0.0525 kg/s, half of 0.105, it fills and empties in
   * 11.3178 s each.
   */
  @Test
  void the_receiver_sets_the_time_between_starts() {
    Duration half = COMPRESSOR.timeBetweenStarts(kg(0.0525)).orElseThrow();
    assertThat(half.toNanos() * 1.0e-9).isCloseTo(2.0 * 11.3178, within(1.0e-3));
    assertThat(COMPRESSOR.timeBetweenStarts(kg(0.03)).orElseThrow()).isGreaterThan(half);
    assertThat(COMPRESSOR.timeBetweenStarts(kg(0.08)).orElseThrow()).isGreaterThan(half);
    assertThat(COMPRESSOR.timeBetweenStarts(kg(0.0))).isEmpty();
    // next to nothing is taken: by hand the receiver's 0.594 kg last 100 years at 1.88e-10 kg/s
    assertThat(COMPRESSOR.timeBetweenStarts(kg(1.9e-10)).orElseThrow())
        .isBetween(Duration.ofDays(36_000), Duration.ofDays(36_525));
    assertThat(COMPRESSOR.timeBetweenStarts(kg(1.86e-10))).isEmpty();
    assertThat(COMPRESSOR.timeBetweenStarts(kg(3.725e-320))).isEmpty();
    assertThat(COMPRESSOR.working(kg(3.725e-320), UnitSystem.SI).toText()).contains("It keeps up");
    assertThat(COMPRESSOR.timeBetweenStarts(kg(0.106))).isEmpty();
    MassFlow all = COMPRESSOR.delivery(AbsolutePressure.ofBar(7.5));
    assertThat(COMPRESSOR.timeBetweenStarts(all)).as("it runs on").isEmpty();
    assertThat(COMPRESSOR.timeBetweenStarts(all.times(1.0 - 1.0e-8))).isPresent();
  }

  @Test
  void its_working_tells_which_of_the_three_it_is() {
    for (double flow : new double[] {0.03, 0.115}) {
      Worked working = units -> COMPRESSOR.working(kg(flow), units);
      Pencil.check(working);
      Completeness.check(working);
    }
    assertThat(COMPRESSOR.working(kg(0.03)).toText()).contains("keeps up", "start to the next");
    assertThat(COMPRESSOR.working(kg(0.0)).toText()).contains("keeps up");
    assertThat(COMPRESSOR.working(kg(0.115)).toText()).contains("sinks along the curve to 6 bar");
    assertThat(COMPRESSOR.working(kg(0.2)).toText()).contains("anywhere on its curve");
    assertThat(COMPRESSOR).hasToString("compressor, cut-in 7 bar(a), cut-out 8 bar(a), 500 L");
  }

  /** On plain doubles: at is the same, beyond the largest flow there is none, the slope is that of a difference. */
  @Test
  void every_supply_answers_on_plain_doubles_as_in_words() {
    Supply fixed = Supply.fixed(SEVEN);
    assertThat(fixed.holds()).isTrue();
    assertThat(fixed.largest()).isInfinite();
    assertThat(fixed.slope(1.0)).isZero();
    assertThat(fixed.pascals(1.0)).isEqualTo(7.0e5);
    for (Supply supply : List.of(REGULATOR, COMPRESSOR)) {
      assertThat(supply.holds()).isFalse();
      double most = supply.largest();
      assertThat(supply.pascals(most * (1.0 - 1.0e-9))).isPositive();
      assertThat(supply.pascals(most * (1.0 + 1.0e-9))).isNaN();
      assertThat(supply.at(kg(most * (1.0 + 1.0e-9)))).isEmpty();
      for (double flow : new double[] {0.01, 0.1, 0.112, 0.119}) {
        assertThat(supply.at(kg(flow)).orElseThrow().pressure().pascals())
            .isEqualTo(supply.pascals(flow));
        double step = 1.0e-6;
        double difference =
            (supply.pascals(flow + step) - supply.pascals(flow - step)) / (2.0 * step);
        assertThat(supply.slope(flow)).isCloseTo(difference, within(1.0e-6 * Math.abs(difference)));
      }
    }
    assertThat(REGULATOR.largest()).isCloseTo(0.28, within(1.0e-12));
    assertThat(COMPRESSOR.largest()).isCloseTo(0.12, within(1.0e-14));
    Regulator stiff = new Regulator(SEVEN, flow(0.02), AbsolutePressure.ofBar(7.0));
    assertThat(stiff.largest()).isInfinite();
    assertThat(stiff.slope(1.0)).isZero();
    assertThat(stiff.holds()).as("it lets nothing back").isFalse();
  }

  @Test
  void a_curve_that_is_none_is_refused() {
    AbsolutePressure six = AbsolutePressure.ofBar(6.0);
    AbsolutePressure seven = AbsolutePressure.ofBar(7.0);
    Volume receiver = Volume.ofLitres(500.0);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Compressor(List.of(point(5.0, 0.1)), six, seven, receiver, ROOM))
        .withMessage("points of a compressor's curve must be at least 2, was 1");
    assertThatIllegalArgumentException()
        .isThrownBy(() ->
            new Compressor(List.of(point(5.0, 0.1), point(8.0, 0.11)), six, seven, receiver, ROOM))
        .withMessageContaining("must have rising pressures");
    assertThatIllegalArgumentException()
        .isThrownBy(() ->
            new Compressor(List.of(point(8.0, 0.1), point(8.0, 0.1)), six, seven, receiver, ROOM))
        .withMessageContaining("must have rising pressures");
    assertThatIllegalArgumentException()
        .isThrownBy(
            () -> new Compressor(COMPRESSOR.curve(), six, seven, Volume.ofLitres(0.0), ROOM))
        .withMessageStartingWith("receiver must be above 0 m³");
    assertThatIllegalArgumentException()
        .isThrownBy(() ->
            new Compressor(COMPRESSOR.curve(), six, seven, receiver, Temperature.ofCelsius(400.0)))
        .withMessageContaining("temperature of air");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> compressor(8.0, 7.0))
        .withMessageStartingWith("cut-in must be below cut-out and both on the curve");
    assertThatIllegalArgumentException().isThrownBy(() -> compressor(7.0, 7.0));
    assertThatIllegalArgumentException().isThrownBy(() -> compressor(4.9, 7.0));
    assertThatIllegalArgumentException().isThrownBy(() -> compressor(7.0, 9.1));
    assertThat(compressor(5.0, 9.0).still().pressure())
        .as("both ends of the curve are on it")
        .isEqualTo(AbsolutePressure.ofBar(9.0));
  }
}
