package org.airfit.air;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.airfit.Pencil;
import org.airfit.quantity.Length;
import org.airfit.source.Basis;
import org.airfit.working.Completeness;
import org.junit.jupiter.api.Test;

class PipeSlopeTest {

  private static PipeSlope of(String length, double slope, boolean isWithAir) {
    return new PipeSlope(Length.parse(length), slope, isWithAir);
  }

  /** NAVFAC MO-209: 6 in in 100 ft against the air; legs every 200 to 300 ft. */
  @Test
  void six_inches_in_a_hundred_feet_are_enough_against_the_air() {
    PipeSlope main = of("100 ft", 0.5 / 100.0, false);
    assertThat(main.verdict()).isEqualTo(SlopeVerdict.ENOUGH);
    assertThat(main.fall().metres()).isCloseTo(6.0 * 0.0254, within(1.0e-12));
    assertThat(of("100 ft", 0.00499, false).verdict()).isEqualTo(SlopeVerdict.TOO_FLAT);
    assertThat(of("100 ft", 0.00499, false).verdict().label()).isEqualTo("is too flat");
    assertThat(main.source().basis()).isEqualTo(Basis.HANDBOOK);
  }

  @Test
  void with_the_air_one_in_a_hundred_is_common_practice() {
    assertThat(of("60 m", 0.01, true).verdict()).isEqualTo(SlopeVerdict.ENOUGH);
    assertThat(of("60 m", 0.0099, true).verdict()).isEqualTo(SlopeVerdict.TOO_FLAT);
    assertThat(of("60 m", 0.01, true).source().basis()).isEqualTo(Basis.COMMON_PRACTICE);
  }

  @Test
  void legs_stand_every_200_to_300_feet_and_at_the_end() {
    assertThat(of("300 ft", 0.01, true).fewestLegs()).isEqualTo(1);
    assertThat(of("300 ft", 0.01, true).nearestLegs()).isEqualTo(2);
    assertThat(of("301 ft", 0.01, true).fewestLegs()).isEqualTo(2);
    assertThat(of("600 ft", 0.01, true).nearestLegs()).isEqualTo(3);
    assertThat(of("20 ft", 0.01, true).nearestLegs()).isEqualTo(1);
    assertThat(of("20 ft", 0.01, true).legsSource().citation()).contains("MO-209");
  }

  @Test
  void doors_and_working() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> of("0 m", 0.01, true))
        .withMessageContaining("(0, 100000] m");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> of("1 m", 0.21, true))
        .withMessageContaining("[0, 0.2], was 0.21");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> of("1 m", Double.NaN, true))
        .withMessageContaining("[0, 0.2]");
    Pencil.check(of("60 m", 0.01, true));
    Completeness.check(of("60 m", 0.01, true));
  }
}
