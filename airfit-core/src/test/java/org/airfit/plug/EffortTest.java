package org.airfit.plug;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.Map;
import org.airfit.measure.PartSpread;
import org.airfit.quantity.Length;
import org.airfit.source.Basis;
import org.airfit.source.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class EffortTest {

  private static final Source MINE = Source.measured("this bench has pin gauges at hand");

  private static PlugProfile profile(String id, double tip, double bore) {
    return PlugProfile.builder(id)
        .from(Provenance.synthetic(), Source.demo("sizes for a test"))
        .dimension(Dimension.TIP_DIAMETER, spread(tip))
        .dimension(Dimension.BORE, spread(bore))
        .build();
  }

  private static PartSpread spread(double mm) {
    return PartSpread.normal(Length.ofMillimetres(mm), Length.ofMillimetres(0.03));
  }

  /** The bore parts the three, the tip only two of them from the third. */
  private static final Identifier SET = Identifier.of(ReferenceSet.of(
      "bores",
      java.util.List.of(
          profile("a", 12.0, 6.0), profile("b", 12.0, 7.0), profile("c", 13.0, 8.0))));

  @Test
  void a_reading_that_is_easy_goes_before_one_that_says_a_little_more() {
    assertThat(BenchPath.of(SET, Effort.equal()).steps().get(0).dimension())
        .isEqualTo(Dimension.BORE);
    assertThat(BenchPath.of(SET).steps().get(0).dimension()).isEqualTo(Dimension.TIP_DIAMETER);
    assertThat(BenchPath.of(SET).effort()).isEqualTo(Effort.usual());
    Effort pins = Effort.usual().with(Dimension.BORE, 1.0, MINE);
    assertThat(BenchPath.of(SET, pins).steps().get(0).dimension()).isEqualTo(Dimension.BORE);
    assertThat(BenchPath.of(SET, pins).toText()).contains("bore 1", "pin gauges at hand");
  }

  @Test
  void the_default_is_marked_as_common_practice_and_printed() {
    assertThat(Effort.usual().source().basis()).isEqualTo(Basis.COMMON_PRACTICE);
    assertThat(BenchPath.of(SET).toText())
        .contains("tip diameter 1", "bore 3", "common practice, no source");
    assertThat(BenchPath.of(SET, Effort.equal()).toText())
        .contains("every reading counts the same");
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.0, -1.0, 100.1, Double.NaN})
  void weights_are_positive_numbers(double weight) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Effort.usual().with(Dimension.BORE, weight, MINE))
        .withMessageContainingAll("bore", "(0, 100]", "" + weight);
  }

  @Test
  void every_dimension_needs_one() {
    Map<Dimension, Double> one = Map.of(Dimension.BORE, 1.0);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Effort(one, MINE))
        .withMessageContainingAll("tip diameter", "missing");
  }
}
