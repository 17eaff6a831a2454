package org.airfit.plug;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.Stream;
import org.airfit.Comparison;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.measure.Access;
import org.airfit.measure.Instrument;
import org.airfit.measure.Reading;
import org.airfit.quantity.Length;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class InstrumentTest {

  private static Length mm(double value) {
    return Length.ofMillimetres(value);
  }

  static Stream<Row> limits() {
    return Rows.of(InstrumentTest.class, "caliper_mpe.csv")
        .filter(row -> row.text("standard").equals("DIN 862"));
  }

  @ParameterizedTest
  @MethodSource("limits")
  void limits_of_error_are_those_of_the_standard(Row row) {
    boolean coarse = row.text("indication").contains("0.05");
    List<Instrument> classes = coarse
        ? List.of(Instrument.VERNIER_CALIPER_0_05)
        : List.of(Instrument.VERNIER_CALIPER_0_02, Instrument.DIGITAL_CALIPER);
    List<Dimension> dimensions = row.text("measurement").equals("external")
        ? List.of(Dimension.TIP_DIAMETER, Dimension.SHOULDER_DIAMETER)
        : List.of(Dimension.BORE, Dimension.TIP_LENGTH);
    for (Instrument instrument : classes) {
      for (Dimension dimension : dimensions) {
        Comparison.of(
                "Plugs: caliper limits of error",
                instrument.label() + ", " + dimension.label() + ", " + row.text("length_up_to_mm")
                    + " mm",
                row.number("mpe_mm"),
                "mm",
                row.evidence("mpe_mm"))
            .isMetBy(
                instrument
                    .limitOfError(dimension.access(), mm(row.number("length_up_to_mm")))
                    .millimetres(),
                1.0e-12,
                "a constant of the standard");
      }
    }
  }

  @ParameterizedTest
  @EnumSource(Instrument.class)
  void limits_are_refused_beyond_the_printed_range(Instrument instrument) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> instrument.limitOfError(Access.OUTSIDE, mm(600.001)))
        .withMessageContainingAll("(0, 600] mm", "600");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> PlugReading.of(Dimension.TIP_DIAMETER, instrument, mm(600.001)))
        .withMessageContainingAll("tip diameter", "(0, 600] mm", "600");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> PlugReading.of(Dimension.TIP_DIAMETER, instrument, mm(0.0)));
    assertThat(instrument.label()).contains(String.valueOf(instrument.step().millimetres()));
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 3, 10, 1000})
  void averaging_wears_the_technique_down_and_never_the_caliper(int n) {
    Length[] repeats = Stream.generate(() -> mm(12.0)).limit(n).toArray(Length[]::new);
    double u = PlugReading.of(Dimension.TIP_LENGTH, Instrument.DIGITAL_CALIPER, repeats)
        .standardUncertainty()
        .millimetres();
    double caliper = 0.04 / Math.sqrt(3.0);
    double technique = 0.1 / Math.sqrt(3.0);
    assertThat(u).isGreaterThan(caliper);
    assertThat(u * u - caliper * caliper)
        .as("variance of a mean: the technique's, divided by n")
        .isCloseTo(technique * technique / n, within(1.0e-12));
  }

  @Test
  void repeats_that_scatter_more_than_the_technique_count_with_their_own_scatter() {
    PlugReading oval =
        PlugReading.of(Dimension.TIP_DIAMETER, Instrument.DIGITAL_CALIPER, mm(9.9), mm(10.1));
    assertThat(oval.length().millimetres()).isCloseTo(10.0, within(1.0e-12));
    double s = 0.1 * Math.sqrt(2.0);
    assertThat(oval.standardUncertainty().millimetres())
        .isCloseTo(Math.hypot(0.02 / Math.sqrt(3.0), s / Math.sqrt(2.0)), within(1.0e-12));
  }

  @Test
  void one_reading_is_as_good_as_the_instrument_says() {
    assertThat(PlugReading.of(Dimension.BORE, Instrument.VERNIER_CALIPER_0_05, mm(8.0)))
        .satisfies(reading -> assertThat(reading.standardUncertainty())
            .isEqualTo(Instrument.VERNIER_CALIPER_0_05.standardUncertainty(Access.BORE)));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> PlugReading.of(Dimension.BORE, Instrument.DIGITAL_CALIPER))
        .withMessageContaining("at least one");
  }

  @Test
  void a_reading_says_itself_and_is_never_nothing_and_never_perfect() {
    assertThat(PlugReading.of(Dimension.TIP_DIAMETER, Instrument.DIGITAL_CALIPER, mm(18.72)))
        .hasToString("tip diameter (D_t) 18.72 mm ± 0.013 mm");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> PlugReading.of(Dimension.BORE, Reading.of(mm(0.0), mm(0.01))))
        .withMessageContaining("leave out what was not measured");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> PlugReading.of(Dimension.BORE, Reading.of(mm(5.0), mm(0.0))))
        .withMessageContaining("no reading is perfect");
  }
}
