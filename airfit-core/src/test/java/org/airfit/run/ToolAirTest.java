package org.airfit.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.QuantityFormatException;
import org.airfit.quantity.Range;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.TypedFlow;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ToolAirTest {

  private static final AbsolutePressure SITE = AbsolutePressure.STANDARD_ATMOSPHERE;
  private static final Temperature WARM = Temperature.ofCelsius(20.0);

  @ParameterizedTest
  @ValueSource(strings = {"11 CFM", "11 scfm", "400 l/min", "11 to 14 cfm", "11 to 14 L/s ANR"})
  void air_without_a_word_is_what_the_tool_takes_while_it_runs(String text) {
    ToolAir air = ToolAir.parse(text);
    assertThat(air.isAverage()).isFalse();
    assertThat(air.whileRunning(SITE, WARM)).isEqualTo(TypedFlow.parse(text).range(SITE, WARM));
    assertThat(air).hasToString(text);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"avg 4 scfm", "avg. 4 scfm", "Average 4 scfm", "4 scfm avg", "4 scfm (average)"})
  void of_an_average_up_to_four_times_are_taken_while_it_runs(String text) {
    ToolAir air = ToolAir.parse(text);
    assertThat(air.isAverage()).isTrue();
    Range<FreeAirFlow> running = air.whileRunning(SITE, WARM);
    assertThat(running.least()).isEqualTo(FreeAirFlow.ofScfm60F(4.0));
    assertThat(running.most()).isEqualTo(FreeAirFlow.ofScfm60F(16.0));
  }

  @ParameterizedTest
  @CsvSource({"avg, number is missing", "average cfm, no number", "avg 4, unit is missing"})
  void an_average_of_nothing_is_refused_with_what_to_type(String text, String told) {
    assertThatExceptionOfType(QuantityFormatException.class)
        .isThrownBy(() -> ToolAir.parse(text))
        .withMessageContaining(told)
        .withMessageContaining("such as");
  }

  @Test
  void the_duty_bounds_what_is_taken_while_it_runs() {
    Range<FreeAirFlow> average = Range.exactly(FreeAirFlow.ofScfm60F(6.0));
    Range<FreeAirFlow> running = ToolAir.whileRunning(average, 0.25, 0.5);
    assertThat(running.least()).isEqualTo(FreeAirFlow.ofScfm60F(12.0));
    assertThat(running.most()).isEqualTo(FreeAirFlow.ofScfm60F(24.0));
  }

  /** Whatever the average and the duty are within their ranges, the flow lies within the two ends. */
  @Property
  void two_ends_bound_every_average_and_duty(
      @ForAll @DoubleRange(min = 1.0, max = 20.0) double least,
      @ForAll @DoubleRange(min = 0.0, max = 20.0) double more,
      @ForAll @DoubleRange(min = 0.05, max = 0.5) double leastDuty,
      @ForAll @DoubleRange(min = 0.5, max = 1.0) double mostDuty,
      @ForAll @DoubleRange(min = 0.0, max = 1.0) double atFlow,
      @ForAll @DoubleRange(min = 0.0, max = 1.0) double atDuty) {
    Range<FreeAirFlow> running = ToolAir.whileRunning(
        new Range<>(FreeAirFlow.ofScfm60F(least), FreeAirFlow.ofScfm60F(least + more)),
        leastDuty,
        mostDuty);
    double flow =
        (least + atFlow * more) / (leastDuty + atDuty * (mostDuty - leastDuty));
    double unit = FreeAirFlow.ofScfm60F(1.0).massFlow().kilogramsPerSecond();
    assertThat(flow * unit)
        .isBetween(
            running.least().massFlow().kilogramsPerSecond() * (1.0 - 1.0e-12),
            running.most().massFlow().kilogramsPerSecond() * (1.0 + 1.0e-12));
  }

  @ParameterizedTest
  @CsvSource({"0, 0.5, least", "1.1, 1, least", "0.5, 0.4, most", "0.5, 1.01, most", "NaN, 1, least"})
  void a_duty_out_of_range_is_refused(double least, double most, String which) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> ToolAir.whileRunning(
            Range.exactly(FreeAirFlow.ofScfm60F(6.0)), least, most))
        .withMessageContaining(which + " duty must be in");
  }
}
