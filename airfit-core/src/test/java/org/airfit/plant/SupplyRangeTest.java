package org.airfit.plant;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;

import java.util.Optional;
import org.airfit.air.AirState;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Temperature;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SupplyRangeTest {

  private static GaugePressure bar(double bar) {
    return GaugePressure.ofBar(bar);
  }

  private static final SupplyRange SEVEN = SupplyRange.of(bar(7.0));

  @Test
  void one_pressure_is_lowest_usual_and_highest() {
    assertThat(SEVEN.lowest()).isEqualTo(bar(7.0));
    assertThat(SEVEN.usual()).isEqualTo(bar(7.0));
    assertThat(SEVEN.highest()).isEqualTo(bar(7.0));
    assertThat(SEVEN.whileRegulated()).isEmpty();
    assertThat(SEVEN).hasToString("7 bar(g)");
    assertThat(SEVEN.withHighest(bar(8.5)).withLowest(bar(6.0)))
        .hasToString("6 bar(g) to 8.5 bar(g)");
  }

  @ParameterizedTest
  @CsvSource({"8.499999, true, true", "8.5, false, false", "8.500001, false, false", "6, true, true"
  })
  void without_a_regulator_the_highest_decides(double limit, boolean can, boolean does) {
    SupplyRange range = SEVEN.withHighest(bar(8.5));
    assertThat(range.canExceed(bar(limit))).isEqualTo(can);
    assertThat(range.exceeds(bar(limit))).isEqualTo(does);
  }

  @ParameterizedTest
  @CsvSource({
    "6.999999, true, true",
    "7, true, false",
    "8.499999, true, false",
    "8.5, false, false",
    "9, false, false"
  })
  void behind_a_regulator_what_it_holds_and_what_can_stand_there_are_two(
      double limit, boolean can, boolean does) {
    SupplyRange range = SEVEN.withHighest(bar(8.5)).regulated();
    assertThat(range.canExceed(bar(limit))).isEqualTo(can);
    assertThat(range.exceeds(bar(limit))).isEqualTo(does);
    assertThat(range.whileRegulated()).contains(bar(7.0));
    assertThat(range).hasToString("7 bar(g) while the regulator holds, 8.5 bar(g) if it fails");
  }

  @Test
  void what_is_in_front_of_a_regulator_must_be_told_before_it_is_judged() {
    SupplyRange range = SEVEN.regulated();
    assertThat(range.isWhole()).isFalse();
    assertThat(range)
        .hasToString("7 bar(g) while the regulator holds, what it is if it fails not told");
    assertThatIllegalStateException().isThrownBy(range::highest);
    assertThatIllegalStateException().isThrownBy(() -> range.canExceed(bar(9.0)));
    assertThatIllegalStateException()
        .isThrownBy(() -> range.canExceed(bar(7.0)))
        .withMessageContaining("give it with withHighest");
    assertThat(range.canExceed(bar(6.9))).as("the setting alone is above it").isTrue();
    assertThat(range.withHighest(bar(9.0)).isWhole()).isTrue();
    assertThat(SEVEN.regulated(bar(7.5)).highest()).isEqualTo(bar(7.5));
  }

  /** A failed regulator lets through what its maker tells, and never more than stands in front of it. */
  @Test
  void behind_a_failed_regulator_stands_what_its_maker_tells_and_no_more_than_what_is_in_front() {
    assertThat(SEVEN.withHighest(bar(8.0)).regulated(bar(8.0)).highest()).isEqualTo(bar(8.0));
    assertThat(SEVEN.withHighest(bar(9.0)).regulated(bar(8.0)).highest()).isEqualTo(bar(8.0));
    assertThat(SEVEN.regulated(bar(9.0)).highest()).isEqualTo(bar(9.0));
  }

  /** A gauge pressure found from two absolute ones may be a last digit off what somebody typed: that is no excess. */
  @Test
  void the_rounding_of_a_difference_is_not_above_a_limit() {
    AbsolutePressure around = AbsolutePressure.ofBar(1.013);
    int off = 0;
    for (int i = 1; i <= 400; i++) {
      GaugePressure typed = GaugePressure.ofPascals(12_345.0 + 2_501.3 * i);
      GaugePressure found = GaugePressure.of(typed.absolute(around), around);
      off += found.pascals() > typed.pascals() ? 1 : 0;
      assertThat(SupplyRange.of(found).canExceed(typed)).isFalse();
      assertThat(SupplyRange.of(typed).canExceed(found)).isFalse();
      GaugePressure more = GaugePressure.ofPascals(typed.pascals() + 0.001);
      assertThat(SupplyRange.of(more).canExceed(typed))
          .as("a thousandth of a pascal")
          .isTrue();
    }
    assertThat(off).as("it does happen").isPositive();
  }

  @Test
  void a_range_must_be_one() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> SEVEN.withHighest(bar(6.9)))
        .withMessage("highest pressure must be at least the supply of 7 bar(g), was 6.9 bar(g);"
            + " give the setting of the relief valve or the cut-out of the compressor");
    assertThatIllegalArgumentException().isThrownBy(() -> SEVEN.withLowest(bar(7.1)));
    assertThatIllegalArgumentException().isThrownBy(() -> SEVEN.withLowest(bar(0.0)));
    assertThatIllegalArgumentException().isThrownBy(() -> SEVEN.regulated(bar(6.9)));
    assertThat(
            SEVEN.withHighest(bar(7.0)).withLowest(bar(7.0)).regulated(bar(7.0)).highest())
        .isEqualTo(bar(7.0));
  }

  /** Air does not rise above what feeds it: one of the two is wrong, and nobody knows which. */
  @Test
  void a_failed_regulator_with_more_behind_than_in_front_is_refused_in_either_order() {
    String message = "pressure behind a failed regulator must be at most the highest of 8.5 bar(g)"
        + " in front of it, was 8.51 bar(g); correct one of the two, or leave it out: what is in"
        + " front then counts";
    assertThatIllegalArgumentException()
        .isThrownBy(() -> SEVEN.withHighest(bar(8.5)).regulated(bar(8.51)))
        .withMessage(message);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> SEVEN.regulated(bar(8.51)).withHighest(bar(8.5)))
        .withMessage(message);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> SEVEN.withHighest(bar(8.5)).regulated(bar(8.500001)));
    assertThat(SEVEN.withHighest(bar(8.5)).regulated(bar(8.5)).highest()).isEqualTo(bar(8.5));
    assertThat(SEVEN.regulated(bar(8.499999)).withHighest(bar(8.5)).highest())
        .isEqualTo(bar(8.499999));
  }

  @Test
  void a_regulator_is_asked_what_stands_in_front_of_it() {
    AbsolutePressure around = AbsolutePressure.ofBar(1.0);
    AirState still = AirState.of(AbsolutePressure.ofBar(8.0), Temperature.ofCelsius(20.0));
    FreeAirFlow flow = FreeAirFlow.ofAnrLitresPerSecond(10.0);
    AbsolutePressure held = AbsolutePressure.ofBar(7.5);
    assertThat(SupplyRange.of(new Regulator(still, flow, held), around).isWhole())
        .isFalse();
    assertThat(SupplyRange.of(
                new Regulator(still, flow, held, Optional.of(AbsolutePressure.ofBar(10.0))), around)
            .highest())
        .isEqualTo(bar(9.0));
    assertThatIllegalArgumentException()
        .isThrownBy(
            () -> new Regulator(still, flow, held, Optional.of(AbsolutePressure.ofBar(7.9))))
        .withMessageContaining("in front of a regulator must be at least what it is set to");
  }

  @Test
  void ranges_compare_by_value() {
    assertThat(SEVEN.withHighest(bar(8.0)))
        .isEqualTo(SupplyRange.of(bar(7.0)).withHighest(bar(8.0)))
        .hasSameHashCodeAs(SupplyRange.of(bar(7.0)).withHighest(bar(8.0)))
        .isNotEqualTo(SEVEN)
        .isNotEqualTo(SEVEN.withHighest(bar(8.0)).regulated())
        .isNotEqualTo(SEVEN.withHighest(bar(8.0)).withLowest(bar(6.0)))
        .isNotEqualTo("a range");
    assertThat(SEVEN.withHighest(bar(8.0)).regulated())
        .isNotEqualTo(SEVEN.withHighest(bar(8.0)).regulated(bar(8.0)));
  }
}
