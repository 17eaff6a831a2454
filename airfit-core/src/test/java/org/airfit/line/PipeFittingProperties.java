package org.airfit.line;

import static org.assertj.core.api.Assertions.assertThat;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.airfit.line.PipeFitting.Method;
import org.airfit.quantity.Length;

class PipeFittingProperties {

  private static final Length INCH = Length.ofInches(1.0);

  @Property(tries = 200)
  void slow_flow_and_small_bores_never_lose_less(
      @ForAll @DoubleRange(min = 0.2, max = 8.0) double inches,
      @ForAll @DoubleRange(min = 1.0e3, max = 1.0e7) double reynolds) {
    Length bore = Length.ofInches(inches);
    for (Method method : Method.values()) {
      for (PipeFitting fitting : PipeFitting.all(method)) {
        assertThat(fitting.k(bore, bore, reynolds)).isGreaterThanOrEqualTo(fitting.k(bore));
        assertThat(fitting.k(bore.times(1.1))).isLessThanOrEqualTo(fitting.k(bore));
      }
    }
  }

  @Property(tries = 200)
  void a_step_loses_nothing_where_there_is_none_and_never_more_than_a_free_jet(
      @ForAll @DoubleRange(min = 0.01, max = 1.0) double ratio) {
    assertThat(BoreStep.enlargement(INCH.times(ratio), INCH).k(INCH)).isBetween(0.0, 1.0);
    assertThat(BoreStep.contraction(INCH, INCH.times(ratio)).k(INCH)).isBetween(0.0, 0.5);
    assertThat(BoreStep.contractionAfterRennels(INCH, INCH.times(ratio)).k(INCH))
        .isBetween(0.0, 0.6);
    assertThat(BoreStep.enlargement(INCH, INCH).k(INCH)).isZero();
  }
}
