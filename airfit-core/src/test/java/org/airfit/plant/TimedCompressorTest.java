package org.airfit.plant;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.time.Duration;
import java.util.Optional;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Power;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Compressors in time and the bands that they hold: what is refused, and what moves where. */
class TimedCompressorTest {

  private static final FreeAirFlow DELIVERY = FreeAirFlow.ofAnrLitresPerSecond(40.0);
  private static final Duration SHORT = Duration.ofSeconds(5);
  private static final Optional<Duration> RUN_ON = Optional.of(Duration.ofMinutes(6));
  private static final Power LOADED = Power.ofWatts(15_000.0);
  private static final Power IDLE = Power.ofWatts(4500.0);
  private static final GaugePressure RATED = GaugePressure.ofBar(7.5);

  private static TimedCompressor delayed(Duration start, Duration load, Duration blowDown) {
    return new TimedCompressor(
        "screw 1", DELIVERY, Optional.empty(), start, load, RUN_ON, blowDown, LOADED, IDLE, RATED);
  }

  private static TimedCompressor of(String name, FreeAirFlow delivery, Optional<Duration> runOn) {
    return new TimedCompressor(
        name, delivery, Optional.empty(), SHORT, SHORT, runOn, SHORT, LOADED, IDLE, RATED);
  }

  private static TimedCompressor taking(double loaded, double idle, GaugePressure ratedAt) {
    return new TimedCompressor(
        "screw 1",
        DELIVERY,
        Optional.empty(),
        SHORT,
        SHORT,
        RUN_ON,
        SHORT,
        Power.ofWatts(loaded),
        Power.ofWatts(idle),
        ratedAt);
  }

  private static void refused(Runnable making, String message) {
    assertThatIllegalArgumentException().isThrownBy(making::run).withMessage(message);
  }

  @Test
  void a_compressor_has_a_name_and_delivers() {
    refused(() -> of(" ", DELIVERY, RUN_ON), "name of a compressor must say which, was blank");
    refused(
        () -> of("screw 1", FreeAirFlow.ofAnrLitresPerSecond(0.0), RUN_ON),
        "delivery of screw 1 must be above 0, was 0.0 m³/s ANR");
    assertThatCode(() -> of("screw 1", FreeAirFlow.ofAnrLitresPerSecond(1.0e-9), RUN_ON))
        .doesNotThrowAnyException();
  }

  @ParameterizedTest
  @CsvSource({"-0.001, -0.001 s", "3600.001, 3600.001 s"})
  void a_delay_is_from_nothing_to_an_hour(double seconds, String told) {
    Duration out = Duration.ofMillis(Math.round(1000.0 * seconds));
    refused(
        () -> delayed(out, SHORT, SHORT),
        "start delay of screw 1 must be in [0, 3600] s, was " + told);
    refused(
        () -> delayed(SHORT, out, SHORT),
        "load delay of screw 1 must be in [0, 3600] s, was " + told);
    refused(
        () -> delayed(SHORT, SHORT, out),
        "blow-down of screw 1 must be in [0, 3600] s, was " + told);
  }

  @ParameterizedTest
  @ValueSource(longs = {0, 3600})
  void a_delay_at_its_bounds_is_taken(long seconds) {
    Duration bound = Duration.ofSeconds(seconds);
    TimedCompressor compressor = delayed(bound, bound, bound);
    assertThat(compressor.startDelay()).isEqualTo(bound);
    assertThat(compressor.loadDelay()).isEqualTo(bound);
    assertThat(compressor.blowDown()).isEqualTo(bound);
  }

  @Test
  void it_may_stop_at_once_and_may_never_stop() {
    assertThat(of("screw 1", DELIVERY, Optional.of(Duration.ZERO)).runOn()).contains(Duration.ZERO);
    assertThat(of("screw 1", DELIVERY, Optional.empty()).runOn()).isEmpty();
    refused(
        () -> of("screw 1", DELIVERY, Optional.of(Duration.ofSeconds(-1))),
        "run-on of screw 1 must be at least 0 s, was -1 s");
  }

  @Test
  void idling_takes_no_more_than_loaded() {
    assertThat(taking(15_000.0, 15_000.0, RATED).idlePower()).isEqualTo(LOADED);
    assertThat(taking(15_000.0, 0.0, RATED).idlePower().watts()).isZero();
    refused(
        () -> taking(15_000.0, 15_000.5, RATED),
        "idle power of screw 1 must be in [0, 15000.0] W, was 15000.5 W");
  }

  @Test
  void its_power_is_stated_above_the_atmosphere() {
    refused(
        () -> taking(15_000.0, 0.0, GaugePressure.ofPascals(0.0)),
        "pressure at which the power of screw 1 is stated must be above 0 bar(g), was 0 bar(g)");
  }

  @Test
  void it_is_told_in_one_line() {
    assertThat(delayed(SHORT, SHORT, SHORT))
        .hasToString("screw 1: 0.0474 kg/s, 15000 W loaded, 4500 W idling");
  }

  @Test
  void with_another_band_all_else_stays() {
    PressureBand band = band(6.9, 7.7);
    assertThat(delayed(SHORT, SHORT, SHORT).withBand(Optional.of(band)))
        .isEqualTo(new TimedCompressor(
            "screw 1",
            DELIVERY,
            Optional.of(band),
            SHORT,
            SHORT,
            RUN_ON,
            SHORT,
            LOADED,
            IDLE,
            RATED));
  }

  private static PressureBand band(double cutIn, double cutOut) {
    return new PressureBand(GaugePressure.ofBar(cutIn), GaugePressure.ofBar(cutOut));
  }

  @Test
  void a_band_has_a_width_and_moves_as_a_whole() {
    PressureBand band =
        new PressureBand(GaugePressure.ofPascals(6.0e5), GaugePressure.ofPascals(7.5e5));
    assertThat(band.width().pascals()).isEqualTo(1.5e5);
    assertThat(band.moved(-1.0e5))
        .isEqualTo(
            new PressureBand(GaugePressure.ofPascals(5.0e5), GaugePressure.ofPascals(6.5e5)));
  }

  @ParameterizedTest
  @CsvSource({"7, 7", "7.5, 7", "0, 7", "-0.1, 7"})
  void a_band_rises_from_above_the_atmosphere(double cutIn, double cutOut) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> band(cutIn, cutOut))
        .withMessageStartingWith("cut-in must be above 0 Pa(g) and below cut-out, was ");
  }

  @Test
  void compressors_of_one_band_wait_from_a_second_to_an_hour() {
    PressureBand band = band(6.9, 7.7);
    for (long seconds : new long[] {1, 3600}) {
      assertThat(new SharedBand(band, Duration.ofSeconds(seconds)).pause().toSeconds())
          .isEqualTo(seconds);
    }
    refused(
        () -> new SharedBand(band, Duration.ofMillis(999)),
        "pause between two compressors of one band must be in [1, 3600] s, was 0.999 s");
    refused(
        () -> new SharedBand(band, Duration.ofMillis(3_600_001)),
        "pause between two compressors of one band must be in [1, 3600] s, was 3600.001 s");
  }

  @Test
  void heat_of_walls_is_told_in_words() {
    assertThat(WallHeat.KEEPS).hasToString("one temperature");
    assertThat(WallHeat.NONE).hasToString("no heat from the walls");
  }
}
