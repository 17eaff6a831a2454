package org.airfit.air;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.airfit.Pencil;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.working.Completeness;
import org.junit.jupiter.api.Test;

class FilterLossTest {

  private static FilterLoss of(double flow, double bar) {
    return new FilterLoss(
        MassFlow.ofKilogramsPerSecond(0.1),
        AbsolutePressure.ofBar(8.0),
        PressureDrop.ofBar(0.1),
        PressureDrop.ofBar(0.35),
        MassFlow.ofKilogramsPerSecond(flow),
        AbsolutePressure.ofBar(bar));
  }

  @Test
  void at_its_rating_both_laws_tell_what_the_maker_tells() {
    assertThat(of(0.1, 8.0).clean().least().bar()).isCloseTo(0.1, within(1.0e-12));
    assertThat(of(0.1, 8.0).clean().most().bar()).isCloseTo(0.1, within(1.0e-12));
  }

  @Test
  void the_range_holds_both_laws_below_and_above_the_rated_flow() {
    assertThat(of(0.05, 8.0).clean().least().bar()).isCloseTo(0.025, within(1.0e-12));
    assertThat(of(0.05, 8.0).clean().most().bar()).isCloseTo(0.05, within(1.0e-12));
    assertThat(of(0.15, 8.0).clean().least().bar()).isCloseTo(0.15, within(1.0e-12));
    assertThat(of(0.15, 8.0).clean().most().bar()).isCloseTo(0.225, within(1.0e-12));
    assertThat(of(0.0, 8.0).clean().most().bar()).isZero();
  }

  /** Corrected differential pressure on a public calculator's page: in proportion to base over flowing pressure. */
  @Test
  void half_the_pressure_takes_twice_as_much_at_the_same_flow() {
    assertThat(of(0.1, 4.0).clean().least().bar()).isCloseTo(0.2, within(1.0e-12));
    assertThat(of(0.1, 16.0).clean().least().bar()).isCloseTo(0.05, within(1.0e-12));
  }

  @Test
  void a_clean_element_that_takes_what_it_is_changed_at_is_too_small() {
    assertThat(of(0.1, 8.0).isTooSmall()).isFalse();
    assertThat(of(0.1, 8.0).most().bar()).isEqualTo(0.35);
    assertThat(of(0.2, 8.0).isTooSmall()).isTrue();
    assertThat(of(0.2, 8.0).most().bar()).isCloseTo(0.4, within(1.0e-12));
  }

  @Test
  void doors_and_working() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new FilterLoss(
            MassFlow.ofKilogramsPerSecond(0.1),
            AbsolutePressure.ofBar(8.0),
            PressureDrop.ofBar(0.4),
            PressureDrop.ofBar(0.35),
            MassFlow.ofKilogramsPerSecond(0.1),
            AbsolutePressure.ofBar(8.0)))
        .withMessageContaining("at change-out must be at least that of the clean element");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new FilterLoss(
            MassFlow.ofKilogramsPerSecond(0.0),
            AbsolutePressure.ofBar(8.0),
            PressureDrop.ofBar(0.1),
            PressureDrop.ofBar(0.35),
            MassFlow.ofKilogramsPerSecond(0.1),
            AbsolutePressure.ofBar(8.0)))
        .withMessageContaining("rated flow must be in");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> of(0.1, 0.0))
        .withMessageContaining("inlet pressure must be in");
    Pencil.check(of(0.07, 7.3));
    Completeness.check(of(0.07, 7.3));
  }
}
