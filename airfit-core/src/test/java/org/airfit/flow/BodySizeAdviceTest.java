package org.airfit.flow;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import org.airfit.quantity.BasicBodySize;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.ReferenceState;
import org.airfit.source.Basis;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A rule of the trade without a source: what is tested is that the rule is told as it is, bounds and all. */
class BodySizeAdviceTest {

  @ParameterizedTest
  @CsvSource({"0, 1/4", "34, 1/4", "40, 1/4", "40.001, 3/8", "59.999, 3/8", "60.001, 1/2", "99, 1/2"
  })
  void a_flow_asks_for_a_body_size(double scfm, String size) {
    BodySizeAdvice advice = BodySizeAdvice.of(FreeAirFlow.ofScfm60F(scfm));
    assertThat(advice.sizes()).containsExactly(BasicBodySize.parse(size));
    assertThat(advice.isOnBound()).isFalse();
    assertThat(advice.inWords()).contains("scfm (60 °F): body size " + size);
  }

  @Test
  void exactly_sixty_belongs_to_both_and_the_answer_says_so() {
    for (FreeAirFlow flow : List.of(
        FreeAirFlow.ofScfm60F(60.0),
        FreeAirFlow.ofScfm60F(60.0).at(ReferenceState.ANR),
        FreeAirFlow.ofScfm60F(20.0).times(3.0))) {
      BodySizeAdvice advice = BodySizeAdvice.of(flow);
      assertThat(advice.sizes())
          .containsExactly(BasicBodySize.THREE_EIGHTHS, BasicBodySize.ONE_HALF);
      assertThat(advice.isOnBound()).isTrue();
      assertThat(advice.inWords()).contains("3/8 or 1/2").contains("belongs to both");
    }
  }

  @Test
  void the_advice_warns_that_flow_is_not_pressure_and_says_that_it_has_no_source() {
    BodySizeAdvice advice = BodySizeAdvice.of(FreeAirFlow.ofScfm60F(34.0));
    assertThat(BodySizeAdvice.SOURCE.basis()).isEqualTo(Basis.COMMON_PRACTICE);
    assertThat(advice.inWords().toLowerCase(Locale.ROOT)).contains("common practice");
    assertThat(advice.cautions())
        .singleElement()
        .satisfies(caution -> assertThat(caution.text())
            .contains("does not push more air")
            .contains("Over-pressure damages tools, under-flow starves"));
  }

  /** What a conversion rounds is allowed for, 1e-12 of the flow, and no more. */
  @Test
  void a_flow_on_a_bound_may_be_off_by_what_a_conversion_rounds() {
    assertThat(sizes(40.0 * (1.0 + 5.0e-13))).containsExactly(BasicBodySize.ONE_QUARTER);
    assertThat(sizes(40.0 * (1.0 + 2.0e-12))).containsExactly(BasicBodySize.THREE_EIGHTHS);
    for (double side : new double[] {-1.0, 1.0}) {
      assertThat(sizes(60.0 * (1.0 + side * 5.0e-13)))
          .containsExactly(BasicBodySize.THREE_EIGHTHS, BasicBodySize.ONE_HALF);
      assertThat(sizes(60.0 * (1.0 + side * 2.0e-12)))
          .containsExactly(side < 0.0 ? BasicBodySize.THREE_EIGHTHS : BasicBodySize.ONE_HALF);
    }
  }

  private static List<BasicBodySize> sizes(double scfm) {
    return BodySizeAdvice.of(FreeAirFlow.ofScfm60F(scfm)).sizes();
  }
}
