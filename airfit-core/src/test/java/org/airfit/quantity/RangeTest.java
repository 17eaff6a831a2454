package org.airfit.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.function.Function;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class RangeTest {

  @Test
  void the_first_of_two_values_takes_the_unit_of_the_second() {
    Range<GaugePressure> range = Range.parse("90 to 110 psig", GaugePressure::parse);

    assertThat(range.least()).isEqualTo(GaugePressure.ofPsi(90.0));
    assertThat(range.most()).isEqualTo(GaugePressure.ofPsi(110.0));
    assertThat(range.isExact()).isFalse();
  }

  @Test
  void each_of_two_values_may_have_a_unit_of_its_own() {
    Range<Length> range = Range.parse("1/4 in to 10 mm", Length::parse);

    assertThat(range.least()).isEqualTo(Length.ofInches(0.25));
    assertThat(range.most()).isEqualTo(Length.ofMillimetres(10.0));
  }

  @Test
  void a_fraction_may_leave_out_its_unit() {
    assertThat(Range.parse("1/4 to 3/8 in", Length::parse))
        .isEqualTo(new Range<>(Length.ofInches(0.25), Length.ofInches(0.375)));
  }

  @Test
  void a_flow_keeps_where_it_is_counted() {
    Range<FreeAirFlow> range = Range.parse("20 to 30 scfm", FreeAirFlow::parse);

    assertThat(range)
        .hasToString(FreeAirFlow.parse("20 scfm") + " to " + FreeAirFlow.parse("30 scfm"));
  }

  @Test
  void one_value_is_known_exactly() {
    Range<GaugePressure> range = Range.parse("100 psig", GaugePressure::parse);

    assertThat(range).isEqualTo(Range.exactly(GaugePressure.ofPsi(100.0)));
    assertThat(range.isExact()).isTrue();
    assertThat(range).hasToString(GaugePressure.ofPsi(100.0).toString());
  }

  @Test
  void the_wrong_way_round_is_refused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Range.parse("8 to 7 bar(g)", GaugePressure::parse))
        .withMessage("least of a range must be at most 7 bar(g), was 8; say the smaller one first");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Range.parse("30 ft to 20 ft", Length::parse))
        .withMessage(
            "least of a range must be at most 20 ft, was 30 ft; say the smaller one first");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Range<>(Length.ofMetres(2.0), Length.ofMetres(1.0)))
        .withMessage(
            "least of a range must be at most 1.0 m, was 2.0 m; say the smaller one first");
  }

  @Test
  void what_cannot_be_read_is_told_at_its_place_in_the_whole() {
    assertThatThrownBy(() -> Range.parse("90 psi to 110 psig", GaugePressure::parse))
        .isInstanceOfSatisfying(QuantityFormatException.class, wrong -> {
          assertThat(wrong.text()).isEqualTo("90 psi to 110 psig");
          assertThat(wrong.position()).isEqualTo(3);
        });
    assertThatThrownBy(() -> Range.parse("90 to 110", GaugePressure::parse))
        .isInstanceOfSatisfying(
            QuantityFormatException.class, wrong -> assertThat(wrong.position()).isEqualTo(9));
    assertThatThrownBy(() -> Range.parse(" to 110 psig", GaugePressure::parse))
        .isInstanceOf(QuantityFormatException.class)
        .hasMessageContaining("the number is missing");
    assertThatThrownBy(() -> Range.parse("90 to psig", GaugePressure::parse))
        .isInstanceOf(QuantityFormatException.class);
  }

  @Test
  void both_ends_are_possible_and_nothing_beyond_them() {
    Range<Length> range = new Range<>(Length.ofMillimetres(6.0), Length.ofMillimetres(8.0));

    assertThat(range.contains(Length.ofMillimetres(6.0))).isTrue();
    assertThat(range.contains(Length.ofMillimetres(8.0))).isTrue();
    assertThat(range.contains(Length.ofMetres(Math.nextDown(0.006)))).isFalse();
    assertThat(range.contains(Length.ofMetres(Math.nextUp(0.008)))).isFalse();
  }

  @Test
  @SuppressWarnings("NullAway") // what a caller without null checks could pass
  void what_is_missing_is_refused_by_name() {
    assertThatNullPointerException()
        .isThrownBy(() -> Range.parse(null, Length::parse))
        .withMessage("text");
    assertThatNullPointerException()
        .isThrownBy(() -> Range.parse("1 mm", (Function<String, Length>) null))
        .withMessage("parse");
  }

  @Property
  void what_is_printed_is_read_back(
      @ForAll @DoubleRange(min = -1.0e5, max = 1.0e7) double one,
      @ForAll @DoubleRange(min = -1.0e5, max = 1.0e7) double other) {
    Range<GaugePressure> range = new Range<>(
        GaugePressure.ofPascals(Math.min(one, other)),
        GaugePressure.ofPascals(Math.max(one, other)));

    assertThat(Range.parse(range.toString(), GaugePressure::parse)).isEqualTo(range);
  }
}
