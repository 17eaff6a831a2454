package org.airfit.plant;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.airfit.Comparison;
import org.airfit.Pencil;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.air.AirState;
import org.airfit.flow.Orifice;
import org.airfit.flow.OrificeEdge;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Range;
import org.airfit.quantity.ReferenceState;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.Volume;
import org.airfit.quantity.VolumeFlowUnit;
import org.airfit.source.Source;
import org.airfit.working.Completeness;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class LeakSizeTest {

  private static final String CHAPTER = "Plant: leaks";

  private static final AirState SEA_LEVEL =
      AirState.of(AbsolutePressure.ofPsi(14.7), Temperature.ofFahrenheit(70.0));

  private static final AirState SHOP =
      AirState.of(AbsolutePressure.ofBar(1.0), Temperature.ofCelsius(20.0));

  private static final Range<GaugePressure> AT_7 = Range.exactly(GaugePressure.ofBar(7.0));

  private static Range<MassFlow> flow(LeakSize size) {
    return size.flow().orElseThrow();
  }

  private static double cfmOfSite(MassFlow flow, AirState air) {
    return flow.kilogramsPerSecond()
        / air.density().kilogramsPerCubicMetre()
        / VolumeFlowUnit.CUBIC_FOOT_PER_MINUTE.toSi(1.0);
  }

  static Stream<Row> doe() {
    return Rows.of(LeakSizeTest.class, "leak_table_doe.csv");
  }

  /** The table is that of a coefficient of 1, and its factor of 0.97 is inside already: it is not taken off again. */
  @ParameterizedTest
  @MethodSource("doe")
  void a_rounded_hole_loses_what_the_table_of_the_doe_says(Row row) {
    Orifice rounded = Orifice.rounded(Length.parse(row.text("hole_frac_in") + " in"));
    GaugePressure pressure = GaugePressure.ofPsi(row.number("p_psig"));
    LeakSize size = LeakSize.ofHole(rounded, rounded, Range.exactly(pressure), SEA_LEVEL);
    assertThat(flow(size).isExact()).isTrue();
    Comparison.of(
            CHAPTER,
            "hole of " + row.text("hole_frac_in") + " in at " + row.text("p_psig") + " psig",
            row.number("doe_cfm"),
            "cfm",
            row.evidence("doe_cfm"))
        .isMetWithinFraction(
            cfmOfSite(flow(size).most(), SEA_LEVEL),
            0.021,
            "the table's own unevenness: its cells are 0.952 to 0.983 of the loss-free nozzle, not 0.97 of it");
  }

  /** What others print for sharp holes lies between the published coefficients of a sharp edge. */
  @Test
  void a_sharp_hole_is_a_range_that_holds_what_is_printed_for_sharp_holes() {
    Rows.of(Orifice.class, "doe_sharp_leak_quoted.csv").forEach(row -> {
      LeakSize size = LeakSize.ofHole(
          Range.exactly(Length.parse(row.text("orifice_dia_frac_in") + " in")),
          OrificeEdge.SHARP,
          Range.exactly(GaugePressure.ofPsi(row.number("p_psig"))),
          SEA_LEVEL);
      assertThat(row.number("leak_sharp_cfm"))
          .as(row.toString())
          .isBetween(
              cfmOfSite(flow(size).least(), SEA_LEVEL), cfmOfSite(flow(size).most(), SEA_LEVEL));
    });
  }

  @Test
  void
      where_nobody_knows_the_edge_the_range_is_wider_on_both_sides_and_a_hole_by_eye_wider_still() {
    Range<Length> hole = Range.exactly(Length.ofMillimetres(2.0));
    Range<MassFlow> sharp = flow(LeakSize.ofHole(hole, OrificeEdge.SHARP, AT_7, SHOP));
    Range<MassFlow> any = flow(LeakSize.ofHole(hole, AT_7, SHOP));
    Range<MassFlow> byEye = flow(LeakSize.ofHole(
        new Range<>(Length.ofMillimetres(1.0), Length.ofMillimetres(3.0)), AT_7, SHOP));
    assertThat(any.least()).isEqualTo(sharp.least());
    assertThat(any.most()).isGreaterThan(sharp.most());
    assertThat(byEye.least().kilogramsPerSecond())
        .isCloseTo(any.least().kilogramsPerSecond() / 4.0, within(1.0e-9));
    assertThat(byEye.most().kilogramsPerSecond())
        .isCloseTo(2.25 * any.most().kilogramsPerSecond(), within(1.0e-9));
  }

  /** By hand: choked flow is in proportion to the absolute pressure, 7 and 5 bar(g) are 8 and 6 bar(a). */
  @Test
  void the_pressure_of_a_hole_is_that_of_its_place() {
    Orifice hole = Orifice.sharp(Length.ofMillimetres(2.0));
    Range<GaugePressure> behindRegulator = Range.exactly(GaugePressure.ofBar(5.0));
    double ratio =
        flow(LeakSize.ofHole(hole, hole, behindRegulator, SHOP)).most().kilogramsPerSecond()
            / flow(LeakSize.ofHole(hole, hole, AT_7, SHOP)).most().kilogramsPerSecond();
    assertThat(ratio).isCloseTo(6.0 / 8.0, within(1.0e-12));
    Range<MassFlow> between = flow(LeakSize.ofHole(
        hole, hole, new Range<>(GaugePressure.ofBar(5.0), GaugePressure.ofBar(7.0)), SHOP));
    assertThat(between.least().kilogramsPerSecond() / between.most().kilogramsPerSecond())
        .isCloseTo(0.75, within(1.0e-12));
  }

  private static Row test(String id) {
    return Rows.of(LeakSizeTest.class, "leak_tests.csv")
        .filter(row -> row.text("id").equals(id))
        .findFirst()
        .orElseThrow();
  }

  /** Bags of 0.6 m × 0.9 m in 12 s, and of 0.25 m × 0.5 m in 20 s; free air at the site is what the bag holds. */
  @Test
  void a_bag_holds_free_air_of_the_site() {
    for (double[] bag : new double[][] {{0.6, 0.9, 12.0, 1.0}, {0.25, 0.5, 20.0, 2.0}}) {
      Row row = test("BG" + (int) bag[3]);
      Volume volume = Volume.ofCubicMetres(Math.PI / 4.0 * bag[0] * bag[0] * bag[1]);
      LeakSize size = LeakSize.ofBag(
          Range.exactly(volume), Duration.ofSeconds((long) bag[2]), Duration.ZERO, SHOP);
      Comparison.of(
              CHAPTER,
              row.text("id") + ", " + row.text("inputs"),
              row.number("leak_flow"),
              "m3/min",
              row.evidence("leak_flow"))
          .isMetBy(
              60.0
                  * flow(size).most().kilogramsPerSecond()
                  / SHOP.density().kilogramsPerCubicMetre(),
              row.halfDigit("leak_flow"),
              "half a unit of the last digit");
      Pencil.check(size);
      Completeness.check(size);
    }
  }

  /** By hand: 50 L in 11 s is most, 40 L in 13 s is least, of 40 to 50 L in 12 ± 1 s. */
  @Test
  void a_bag_and_a_stop_watch_that_may_be_wrong_give_a_range() {
    LeakSize size = LeakSize.ofBag(
        new Range<>(Volume.ofLitres(40.0), Volume.ofLitres(50.0)),
        Duration.ofSeconds(12),
        Duration.ofSeconds(1),
        SHOP);
    double density = SHOP.density().kilogramsPerCubicMetre();
    assertThat(flow(size).least().kilogramsPerSecond())
        .isCloseTo(0.040 * density / 13.0, within(1.0e-12));
    assertThat(flow(size).most().kilogramsPerSecond())
        .isCloseTo(0.050 * density / 11.0, within(1.0e-12));
    assertThat(size.working(UnitSystem.SI).answers()).hasSize(2);
    Pencil.check(size);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> LeakSize.ofBag(
            Range.exactly(Volume.ofLitres(1.0)),
            Duration.ofSeconds(1),
            Duration.ofSeconds(1),
            SHOP))
        .withMessage(
            "time to fill the bag must be above 1 s, by which it may be wrong, was 1 s; take a larger bag");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> LeakSize.ofBag(
            Range.exactly(Volume.ofLitres(0.0)), Duration.ofSeconds(9), Duration.ZERO, SHOP))
        .withMessageStartingWith("volume of the bag must be above 0 L");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> LeakSize.ofBag(
            Range.exactly(Volume.ofLitres(1.0)),
            Duration.ofSeconds(9),
            Duration.ofSeconds(-1),
            SHOP))
        .withMessage("error of a time must be at least 0 s, was -1 s");
  }

  static Stream<Row> rotameters() {
    return Rows.of(LeakSizeTest.class, "rotameter_published.csv");
  }

  /** Only the ratios of pressures and temperatures count, so any unit of pressure serves. */
  @ParameterizedTest
  @MethodSource("rotameters")
  void a_rotameter_is_corrected_as_published(Row row) {
    AirState drawn = AirState.of(
        AbsolutePressure.ofBar(row.number("scale_p")),
        Temperature.ofKelvins(row.number("scale_k")));
    AirState there = AirState.of(
        AbsolutePressure.ofBar(row.number("there_p")),
        Temperature.ofKelvins(row.number("there_k")));
    FreeAirFlow shown = FreeAirFlow.ofAnrLitresPerSecond(row.number("shown"));
    LeakSize size = LeakSize.ofRotameter(Range.exactly(shown), drawn, there);
    double mass = flow(size).most().kilogramsPerSecond() / shown.massFlow().kilogramsPerSecond();
    double volume = row.text("counted").equals("there")
        ? mass * drawn.density().kilogramsPerCubicMetre() / there.density().kilogramsPerCubicMetre()
        : mass / Math.sqrt(row.number("gas_over_air"));
    Comparison.of(
            CHAPTER,
            row.text("id") + ", rotameter, " + row.text("what"),
            row.number("published"),
            "-",
            row.evidence("published"))
        .isMetBy(
            volume * row.number("shown"),
            row.halfDigit("published"),
            "half a unit of the last digit printed");
    Pencil.check(size);
    Completeness.check(size);
  }

  private static final UltrasonicRelation OWN = new UltrasonicRelation(
      "my detector at 40 cm",
      new Range<>(GaugePressure.ofBar(6.0), GaugePressure.ofBar(8.0)),
      List.of(point(30.0, 0.1, 0.4), point(40.0, 0.3, 1.0), point(50.0, 0.8, 3.0)));

  private static UltrasonicRelation.Point point(double decibels, double least, double most) {
    return new UltrasonicRelation.Point(
        decibels,
        new Range<>(
            FreeAirFlow.ofAnrLitresPerSecond(least), FreeAirFlow.ofAnrLitresPerSecond(most)));
  }

  @Test
  void decibels_are_recorded_and_refused_as_a_flow_without_a_table_of_the_users_own() {
    LeakSize size = LeakSize.ofUltrasonic(42.0, AT_7, Optional.empty());
    assertThat(size.flow()).isEmpty();
    assertThat(size.method()).isEqualTo("ultrasonic reading of 42 dB");
    assertThat(size.notKnownBecause().orElseThrow())
        .startsWith("no published relation tells a flow by decibels");
    assertThat(size.working(UnitSystem.SI).toText())
        .contains("The flow is not known: no published");
    assertThat(LeakSize.notMeasured().flow()).isEmpty();
  }

  @Test
  void between_two_readings_of_the_table_a_leak_loses_between_their_outer_ends() {
    Range<MassFlow> between = flow(LeakSize.ofUltrasonic(42.0, AT_7, Optional.of(OWN)));
    assertThat(between.least()).isEqualTo(FreeAirFlow.ofAnrLitresPerSecond(0.3).massFlow());
    assertThat(between.most()).isEqualTo(FreeAirFlow.ofAnrLitresPerSecond(3.0).massFlow());
    Range<MassFlow> onIt = flow(LeakSize.ofUltrasonic(40.0, AT_7, Optional.of(OWN)));
    assertThat(onIt.most()).isEqualTo(FreeAirFlow.ofAnrLitresPerSecond(1.0).massFlow());
    assertThat(LeakSize.ofUltrasonic(29.9, AT_7, Optional.of(OWN)).notKnownBecause())
        .contains("the table of my detector at 40 cm has readings of 30 to 50 dB only");
    assertThat(LeakSize.ofUltrasonic(50.1, AT_7, Optional.of(OWN)).flow()).isEmpty();
    assertThat(
            LeakSize.ofUltrasonic(40.0, Range.exactly(GaugePressure.ofBar(5.9)), Optional.of(OWN))
                .notKnownBecause())
        .contains("the table of my detector at 40 cm holds for another pressure at the leak");
    Pencil.check(LeakSize.ofUltrasonic(42.0, AT_7, Optional.of(OWN)));
  }

  @Test
  void a_table_that_does_not_rise_is_refused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new UltrasonicRelation(
            "it", OWN.pressure(), List.of(point(30.0, 0.1, 0.4), point(30.0, 0.2, 0.5))))
        .withMessageStartingWith("reading and flow of the relation of it must rise");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new UltrasonicRelation(
            "it", OWN.pressure(), List.of(point(30.0, 0.1, 0.4), point(40.0, 0.05, 0.5))));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new UltrasonicRelation(
            "it", OWN.pressure(), List.of(point(30.0, 0.1, 0.4), point(40.0, 0.2, 0.3))));
    assertThatIllegalArgumentException()
        .isThrownBy(
            () -> new UltrasonicRelation("it", OWN.pressure(), List.of(point(1.0, 0.1, 0.4))))
        .withMessage("points of the relation of it must be at least two, were 1");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> LeakSize.ofUltrasonic(Double.NaN, AT_7, Optional.of(OWN)));
  }

  @Test
  void what_no_leak_is_is_refused() {
    Orifice small = Orifice.sharp(Length.ofMillimetres(1.0));
    Orifice large = Orifice.sharp(Length.ofMillimetres(2.0));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> LeakSize.ofHole(large, small, AT_7, SHOP))
        .withMessageStartingWith("smallest hole must be no larger than the largest");
    assertThatIllegalArgumentException()
        .isThrownBy(
            () -> LeakSize.ofHole(small, large, Range.exactly(GaugePressure.ofBar(0.0)), SHOP))
        .withMessageStartingWith("pressure at a leak must be above 0 bar(g)");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> LeakSize.ofFlow(Range.exactly(FreeAirFlow.ofAnrLitresPerSecond(1.0e9))))
        .withMessageStartingWith("leak must lose at most 1e6 kg/s");
  }

  /** The same air told as scfm, as ANR and as free air of a site on a mountain is one mass. */
  @Test
  void free_air_of_another_state_is_another_mass() {
    ReferenceState mountain = ReferenceState.of(
        "site", Temperature.ofCelsius(20.0), AbsolutePressure.ofBar(0.8), 0.0, Source.demo("site"));
    FreeAirFlow there = FreeAirFlow.of(10.0, VolumeFlowUnit.CUBIC_FOOT_PER_MINUTE, mountain);
    FreeAirFlow scfm = FreeAirFlow.ofScfm60F(10.0);
    double ratio = flow(LeakSize.ofFlow(Range.exactly(there))).most().kilogramsPerSecond()
        / flow(LeakSize.ofFlow(Range.exactly(scfm))).most().kilogramsPerSecond();
    // 0.8 bar over 14.7 psi, and 60 °F over 20 °C
    assertThat(ratio).isCloseTo(0.8 / 1.01353 * 288.7056 / 293.15, within(1.0e-4));
    Pencil.check(LeakSize.ofFlow(new Range<>(there, scfm)));
    assertThat(LeakSize.ofFlow(Range.exactly(scfm)))
        .isEqualTo(LeakSize.ofFlow(Range.exactly(scfm)))
        .hasSameHashCodeAs(LeakSize.ofFlow(Range.exactly(scfm)))
        .isNotEqualTo(LeakSize.ofFlow(Range.exactly(there)));
    assertThat(LeakSize.notMeasured().toString()).startsWith("not measured: nobody measured it");
  }

  @Test
  void a_size_is_told_in_one_line() {
    assertThat(LeakSize.ofFlow(Range.exactly(FreeAirFlow.ofScfm60F(10.0))).toString())
        .doesNotContain(" to ")
        .endsWith("kg/s");
    assertThat(
            LeakSize.ofFlow(new Range<>(FreeAirFlow.ofScfm60F(10.0), FreeAirFlow.ofScfm60F(20.0)))
                .toString())
        .contains(" to ");
  }

  @Test
  void a_reading_that_no_instrument_shows_is_refused() {
    for (double none : new double[] {Double.NaN, Double.NEGATIVE_INFINITY}) {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> OWN.flow(none))
          .withMessageStartingWith("reading in decibels must be finite, was ");
      assertThatIllegalArgumentException()
          .isThrownBy(() -> point(none, 0.1, 0.2))
          .withMessageStartingWith("reading in decibels must be finite, was ");
      assertThatIllegalArgumentException()
          .isThrownBy(() -> LeakSize.ofUltrasonic(none, AT_7, Optional.empty()))
          .withMessageStartingWith("reading in decibels must be finite, was ");
    }
  }

  /** A table may stay level: two readings for one flow. */
  @Test
  void a_table_may_stay_level_and_its_points_answer_for_themselves() {
    UltrasonicRelation level = new UltrasonicRelation(
        "it",
        OWN.pressure(),
        List.of(point(30.0, 0.1, 0.4), point(40.0, 0.1, 0.4), point(50.0, 0.2, 0.8)));
    assertThat(level.flow(40.0)).contains(level.points().get(1).flow());
    assertThat(level.flow(30.0)).contains(level.points().get(0).flow());
    assertThat(level.flow(50.0)).contains(level.points().get(2).flow());
    assertThat(level.flow(29.9)).isEmpty();
    assertThat(level.flow(50.1)).isEmpty();
  }

  @Test
  void the_largest_leak_is_taken() {
    assertThat(flow(LeakSize.ofFlow(Range.exactly(
                FreeAirFlow.from(MassFlow.ofKilogramsPerSecond(1.0e6), ReferenceState.ANR))))
            .most()
            .kilogramsPerSecond())
        .isEqualTo(1.0e6);
  }

  @Test
  void a_hole_through_which_next_to_nothing_goes_is_a_slip_of_units() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> LeakSize.ofHole(
            Range.exactly(Length.ofMillimetres(1.0e-20)), OrificeEdge.SHARP, AT_7, SHOP))
        .withMessageStartingWith("hole must lose at least 1e-30 kg/s, was ");
  }
}
