package org.airfit.plug;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.List;
import org.airfit.measure.Instrument;
import org.airfit.measure.PartSpread;
import org.airfit.quantity.Length;
import org.junit.jupiter.api.Test;

/** Small answers about plugs are records: their constructors refuse what no comparison gives. */
class CheckedAnswersTest {

  private static Length mm(double millimetres) {
    return Length.ofMillimetres(millimetres);
  }

  @Test
  void a_look_up_says_what_was_asked_and_why_it_is_only_a_hint() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new AliasLookup("M", List.of(), " "))
        .withMessageContaining("must say something");
    assertThatIllegalArgumentException().isThrownBy(() -> new AliasLookup("", List.of(), "a hint"));
    assertThat(new AliasLookup("M", List.of(), "a hint").profiles()).isEmpty();
  }

  @Test
  void a_separation_needs_a_scatter_above_zero_and_no_negative_difference() {
    Dimension tip = Dimension.TIP_DIAMETER;
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Separation.ByDimension(tip, mm(0.1), mm(0.0), mm(0.0)))
        .withMessageContaining("above 0 mm");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Separation.ByDimension(tip, mm(-0.001), mm(0.0), mm(0.02)));
    assertThat(new Separation.ByDimension(tip, mm(0.0), mm(0.0), mm(0.02)).risk())
        .isEqualTo(0.5);
  }

  @Test
  void a_difference_of_sets_is_one_of_those_compared() {
    PartSpread spread = PartSpread.normal(mm(12.0), mm(0.03));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new SizeDifference(
            "wren", Dimension.TIP_DIAMETER, spread, spread, Instrument.DIGITAL_CALIPER, 0))
        .withMessageContaining("at least 1");
    assertThat(new SizeDifference(
                "wren", Dimension.TIP_DIAMETER, spread, spread, Instrument.DIGITAL_CALIPER, 1)
            .agrees())
        .isTrue();
  }

  @Test
  void pieces_that_no_caliper_reads_are_not_compared() {
    PartSpread good = new PartSpread.Sample(3, mm(600.0), mm(600.0));
    assertThat(compared(good).allowed().millimetres()).isPositive();
    for (PartSpread bad : List.of(
        new PartSpread.Sample(3, mm(600.1), mm(0.1)),
        new PartSpread.Sample(3, mm(10.0), mm(600.1)))) {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> compared(bad))
          .withMessageContaining("must be at most 600 mm");
    }
  }

  private static SizeDifference compared(PartSpread one) {
    PartSpread other = PartSpread.normal(mm(12.0), mm(0.03));
    return new SizeDifference(
        "wren", Dimension.TIP_DIAMETER, one, other, Instrument.DIGITAL_CALIPER, 1);
  }

  @Test
  void samples_of_more_pieces_than_can_be_counted_are_not_joined() {
    PartSpread.Sample most = new PartSpread.Sample(Integer.MAX_VALUE - 2, mm(12.0), mm(0.1));
    PartSpread.Sample two = new PartSpread.Sample(2, mm(12.0), mm(0.1));
    assertThat(most.joinedWith(two).pieces()).isEqualTo(Integer.MAX_VALUE);
    PartSpread.Sample three = new PartSpread.Sample(3, mm(12.0), mm(0.1));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> most.joinedWith(three))
        .withMessage("pieces of both samples must be at most 2147483647 together, were 2147483648"
            + "; join fewer");
  }
}
