package org.airfit.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.stream.Stream;
import org.airfit.Comparison;
import org.airfit.Pencil;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.ReferenceState;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.Volume;
import org.airfit.quantity.VolumeFlowUnit;
import org.airfit.working.Completeness;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The two leak tests of a shop: by the fall of pressure, and by the time a compressor runs loaded. */
class LeakTestsTest {

  private static final AbsolutePressure HIGH = AbsolutePressure.ofPsi(104.7);
  private static final AbsolutePressure LOW = AbsolutePressure.ofPsi(94.7);
  private static final Volume SYSTEM = Volume.ofCubicFeet(629.0);
  private static final Temperature SHOP = Temperature.ofFahrenheit(60.0);

  static Stream<Row> falls() {
    return Rows.of(LeakTestsTest.class, "leak_test_mo209.csv");
  }

  /** All seven published losses belong to one system volume, 629 ft³, which the print implies but does not tell. */
  @ParameterizedTest
  @MethodSource("falls")
  void a_published_test_by_fall_of_pressure_agrees(Row row) {
    BleedDown fall = new BleedDown(
        SYSTEM,
        AbsolutePressure.ofPsi(14.7 + row.number("p_start_psig")),
        AbsolutePressure.ofPsi(14.7 + row.number("p_end_psig")),
        Duration.ofMillis(Math.round(60000.0 * row.number("interval_min"))),
        SHOP);
    Comparison.of(
            "Flow: leak test by fall of pressure",
            "from " + row.text("p_start_psig") + " psig",
            row.number("loss_published_scfm"),
            "scfm",
            row.evidence("loss_published_scfm"))
        .isMetBy(
            FreeAirFlow.from(fall.leak(), ReferenceState.SCFM_60F).cubicFeetPerMinute(),
            row.halfDigit("loss_published_scfm"),
            "half a unit of the last digit printed");
    Pencil.check(fall);
    Completeness.check(fall);
  }

  @Test
  void a_system_that_holds_its_pressure_does_not_leak() {
    assertThat(new BleedDown(SYSTEM, HIGH, HIGH, Duration.ofMinutes(10), SHOP)
            .leak()
            .kilogramsPerSecond())
        .isZero();
  }

  /** A cubic metre at 100 K that falls from 8 to 7 bar(a) in so many seconds. */
  private static BleedDown losingABar(double seconds) {
    return new BleedDown(
        Volume.ofCubicMetres(1.0),
        AbsolutePressure.ofBar(8.0),
        AbsolutePressure.ofBar(7.0),
        Duration.ofNanos(Math.round(1.0e9 * seconds)),
        Temperature.ofKelvins(100.0));
  }

  @Test
  void rising_pressure_no_time_and_absolute_zero_are_refused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new BleedDown(SYSTEM, LOW, HIGH, Duration.ofMinutes(10), SHOP))
        .withMessageStartingWith("pressure at the end must be at most that at the start");
    for (Duration none : new Duration[] {Duration.ZERO, Duration.ofSeconds(-1)}) {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> new BleedDown(SYSTEM, HIGH, LOW, none, SHOP))
          .withMessageStartingWith("time must be above 0 s, was ");
    }
    assertThatIllegalArgumentException()
        .isThrownBy(() ->
            new BleedDown(SYSTEM, HIGH, LOW, Duration.ofMinutes(1), Temperature.ofKelvins(0.0)))
        .withMessage("temperature must be above 0 K, was 0 K");
    // a cubic metre loses 1 bar at 100 K: 1e5/(287.05287 × 100 t) kg/s, which is 1e6 in 3.48 µs
    double atTheBound = 1.0e5 / (287.05287 * 100.0 * 1.0e6);
    assertThat(losingABar(1.000_1 * atTheBound).leak().kilogramsPerSecond())
        .isBetween(0.999e6, 1.0e6);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> losingABar(0.999 * atTheBound))
        .withMessageStartingWith(
            "fall of pressure must be that of a leak of at most 1e6 kg/s, was ");
    // 1 bar lost by a cubic metre at 1e-9 K in a second: 1e5/(287.05287e-9) kg/s
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new BleedDown(
            Volume.ofCubicMetres(1.0),
            AbsolutePressure.ofBar(8.0),
            AbsolutePressure.ofBar(7.0),
            Duration.ofSeconds(1),
            Temperature.ofKelvins(1.0e-9)))
        .withMessage(
            "fall of pressure must be that of a leak of at most 1e6 kg/s, was from 8 bar(a)"
                + " to 7 bar(a) in 1 s; check the units of the volume, the pressures and the time");
  }

  /** By hand: loaded 90 s of 600 s is 15 %, of 200 scfm is 30 scfm. */
  @Test
  void load_timing_tells_the_part_that_leaks() {
    LoadTiming timing = new LoadTiming(
        Duration.ofSeconds(90), Duration.ofSeconds(510), FreeAirFlow.ofScfm60F(200.0));
    assertThat(timing.share()).isCloseTo(0.15, within(1.0e-15));
    assertThat(timing.leak().cubicFeetPerMinute()).isCloseTo(30.0, within(1.0e-12));
    Pencil.check(timing);
    Completeness.check(timing);
  }

  @Test
  void a_compressor_that_never_loads_has_no_leak_and_one_that_never_stops_only_leaks() {
    FreeAirFlow delivery = FreeAirFlow.ofScfm60F(200.0);
    Duration time = Duration.ofMinutes(10);
    assertThat(new LoadTiming(Duration.ZERO, time, delivery).share()).isZero();
    assertThat(new LoadTiming(time, Duration.ZERO, delivery).share()).isEqualTo(1.0);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new LoadTiming(Duration.ZERO, Duration.ZERO, delivery))
        .withMessageStartingWith("loaded and unloaded time must be at least 0 s");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new LoadTiming(Duration.ofSeconds(-1), time, delivery));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new LoadTiming(time, Duration.ofSeconds(-1), delivery));
  }

  /** By hand: a fall in 1.5 s leaks twice what the same fall in 3 s does; 1.5 s of 6 s loaded is a quarter. */
  @Test
  void parts_of_a_second_count() {
    assertThat(new BleedDown(SYSTEM, HIGH, LOW, Duration.ofMillis(1500), SHOP)
            .leak()
            .kilogramsPerSecond())
        .isCloseTo(
            2.0
                * new BleedDown(SYSTEM, HIGH, LOW, Duration.ofSeconds(3), SHOP)
                    .leak()
                    .kilogramsPerSecond(),
            within(1.0e-12));
    assertThat(new LoadTiming(
                Duration.ofMillis(1500), Duration.ofMillis(4500), FreeAirFlow.ofScfm60F(200.0))
            .share())
        .isCloseTo(0.25, within(1.0e-15));
  }

  /** Down to the least delivery a number holds there is a working; where it does not replay it says so. */
  @Test
  void the_least_deliveries_have_a_working_too() {
    for (UnitSystem units : UnitSystem.values()) {
      for (double cubicMetres : new double[] {Double.MIN_VALUE, 200.0 * Double.MIN_VALUE}) {
        assertThat(new LoadTiming(
                    Duration.ofMillis(11),
                    Duration.ofMillis(7),
                    FreeAirFlow.of(
                        cubicMetres, VolumeFlowUnit.CUBIC_METRE_PER_SECOND, ReferenceState.ANR))
                .working(units)
                .toText())
            .contains("have lost digits here");
      }
    }
  }
}
