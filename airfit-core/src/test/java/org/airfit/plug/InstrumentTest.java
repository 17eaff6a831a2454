package org.airfit.plug;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.Stream;
import org.airfit.Comparison;
import org.airfit.Rows;
import org.airfit.Rows.Row;
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
                    .limitOfError(dimension, mm(row.number("length_up_to_mm")))
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
        .isThrownBy(() -> instrument.limitOfError(Dimension.TIP_DIAMETER, mm(600.001)))
        .withMessageContainingAll("tip diameter", "(0, 600] mm", "600");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> instrument.reading(Dimension.TIP_DIAMETER, mm(0.0)));
    assertThat(instrument.label()).contains(String.valueOf(instrument.step().millimetres()));
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 3, 10, 1000})
  void averaging_wears_the_technique_down_and_never_the_caliper(int n) {
    List<Length> repeats = Stream.generate(() -> mm(12.0)).limit(n).toList();
    double u = Instrument.DIGITAL_CALIPER
        .mean(Dimension.TIP_LENGTH, repeats)
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
    Reading oval =
        Instrument.DIGITAL_CALIPER.mean(Dimension.TIP_DIAMETER, List.of(mm(9.9), mm(10.1)));
    assertThat(oval.length().millimetres()).isCloseTo(10.0, within(1.0e-12));
    double s = 0.1 * Math.sqrt(2.0);
    assertThat(oval.standardUncertainty().millimetres())
        .isCloseTo(Math.hypot(0.02 / Math.sqrt(3.0), s / Math.sqrt(2.0)), within(1.0e-12));
  }

  @Test
  void one_reading_is_a_mean_of_one() {
    assertThat(Instrument.VERNIER_CALIPER_0_05.reading(Dimension.BORE, mm(8.0)))
        .isEqualTo(Instrument.VERNIER_CALIPER_0_05.mean(Dimension.BORE, List.of(mm(8.0))))
        .satisfies(reading -> assertThat(reading.standardUncertainty())
            .isEqualTo(Instrument.VERNIER_CALIPER_0_05.standardUncertainty(Dimension.BORE)));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Instrument.DIGITAL_CALIPER.mean(Dimension.BORE, List.of()))
        .withMessageContaining("at least one");
  }

  @Test
  void a_reading_says_itself_and_is_never_nothing_and_never_perfect() {
    assertThat(Instrument.DIGITAL_CALIPER.reading(Dimension.TIP_DIAMETER, mm(18.72)))
        .hasToString("tip diameter (D_t) 18.72 mm ± 0.013 mm");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Reading(Dimension.BORE, mm(0.0), mm(0.01)))
        .withMessageContaining("leave out what was not measured");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Reading(Dimension.BORE, mm(5.0), mm(0.0)))
        .withMessageContaining("no reading is perfect");
  }
}
