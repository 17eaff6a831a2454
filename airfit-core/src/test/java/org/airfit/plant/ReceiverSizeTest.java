package org.airfit.plant;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import org.airfit.Comparison;
import org.airfit.Pencil;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.Volume;
import org.airfit.quantity.VolumeUnit;
import org.airfit.working.Completeness;
import org.junit.jupiter.api.Test;

class ReceiverSizeTest {

  private static final Temperature COUNTED = Temperature.ofFahrenheit(60.0);
  private static final Volume NO_PIPES = Volume.ofCubicMetres(0.0);

  private static FreeAirFlow scfm(double scfm) {
    return FreeAirFlow.ofScfm60F(scfm);
  }

  private static ReceiverSize size(
      double demand, double delivery, double minutes, double psig1, double psig2, Volume pipes) {
    return new ReceiverSize(
        scfm(demand),
        scfm(delivery),
        Duration.ofSeconds(Math.round(60.0 * minutes)),
        AbsolutePressure.ofPsi(psig1 + 14.7),
        AbsolutePressure.ofPsi(psig2 + 14.7),
        COUNTED,
        pipes);
  }

  private static void compare(String id, ReceiverSize size, VolumeUnit unit) {
    Row row = Rows.of(ReceiverSizeTest.class, "worked_examples.csv")
        .filter(r -> r.text("id").equals(id))
        .findFirst()
        .orElseThrow();
    Comparison.of(
            "Plant: receivers",
            row + ", " + row.text("inputs"),
            row.number("published_answer"),
            row.text("unit"),
            row.evidence("published_answer"))
        .isMetBy(
            size.volume().in(unit),
            row.halfDigit("published_answer") + 7.0e-5 * row.number("published_answer"),
            "half a unit of the last digit printed, and 7.48 gal/ft³ for 7.4805 (0.007 %)");
    Pencil.check(size);
    Completeness.check(size);
  }

  @Test
  void receivers_of_the_textbooks() {
    compare("RC01", size(20.0, 0.0, 6.0, 100.0, 80.0, NO_PIPES), VolumeUnit.US_GALLON);
    compare("RC03", size(10.0, 0.0, 5.0, 125.0, 100.0, NO_PIPES), VolumeUnit.CUBIC_FOOT);
  }

  @Test
  void what_the_compressor_delivers_and_the_pipes_store_comes_off() {
    double alone = size(20.0, 0.0, 6.0, 100.0, 80.0, NO_PIPES).volume().cubicMetres();
    assertThat(size(20.0, 15.0, 6.0, 100.0, 80.0, NO_PIPES).volume().cubicMetres())
        .isCloseTo(0.25 * alone, within(1.0e-12));
    ReceiverSize piped = size(20.0, 0.0, 6.0, 100.0, 80.0, Volume.ofCubicMetres(0.5));
    assertThat(piped.volume().cubicMetres()).isCloseTo(alone - 0.5, within(1.0e-12));
    Pencil.check(piped);
    Completeness.check(piped);
    assertThat(piped.working().answers()).hasSize(1);
    ReceiverSize none = size(20.0, 0.0, 6.0, 100.0, 80.0, Volume.ofCubicMetres(3.0));
    assertThat(none.volume().cubicMetres()).isZero();
    assertThat(none.working().toText()).contains("no receiver is needed");
    Volume just = size(20.0, 0.0, 6.0, 100.0, 80.0, NO_PIPES).volume();
    assertThat(size(20.0, 0.0, 6.0, 100.0, 80.0, just).working().toText())
        .as("pipes that store just as much")
        .contains("no receiver is needed");
  }

  @Test
  void an_event_of_a_second_and_a_half_takes_a_quarter_of_one_of_six_seconds() {
    double long6 = lasting(Duration.ofSeconds(6)).volume().cubicMetres();
    assertThat(lasting(Duration.ofMillis(1500)).volume().cubicMetres())
        .isCloseTo(0.25 * long6, within(1.0e-12 * long6));
    assertThat(lasting(Duration.ofSeconds(0)).volume().cubicMetres()).isZero();
  }

  private static ReceiverSize lasting(Duration time) {
    return new ReceiverSize(
        scfm(20.0),
        scfm(0.0),
        time,
        AbsolutePressure.ofBar(8.0),
        AbsolutePressure.ofBar(7.0),
        COUNTED,
        NO_PIPES);
  }

  @Test
  void a_compressor_that_delivers_the_demand_needs_no_receiver() {
    assertThat(size(20.0, 20.0, 6.0, 100.0, 80.0, NO_PIPES).volume().cubicMetres())
        .isZero();
  }

  @Test
  void a_receiver_carries_its_caution() {
    assertThat(size(20.0, 0.0, 6.0, 100.0, 80.0, NO_PIPES).cautions())
        .hasSize(1)
        .allSatisfy(caution -> assertThat(caution.text()).contains("safety valve"));
  }

  @Test
  void an_event_that_is_none_is_refused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> size(20.0, 21.0, 6.0, 100.0, 80.0, NO_PIPES))
        .withMessageStartingWith("delivery must be at most the demand");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> size(20.0, 0.0, -1.0, 100.0, 80.0, NO_PIPES))
        .withMessage("time must be at least 0 s, was -60 s");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> size(20.0, 0.0, 6.0, 80.0, 80.0, NO_PIPES))
        .withMessageStartingWith("least pressure must be below that at the start");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new ReceiverSize(
            scfm(20.0),
            scfm(0.0),
            Duration.ofMinutes(6),
            AbsolutePressure.ofBar(8.0),
            AbsolutePressure.ofBar(7.0),
            Temperature.ofKelvins(0.0),
            NO_PIPES))
        .withMessage("temperature must be above 0 K, was 0 K");
  }
}
