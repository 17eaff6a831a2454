package org.airfit.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.airfit.quantity.Length;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ConduitTest {

  private static final Length BORE = Length.ofMillimetres(10.0);
  private static final Length TEN = Length.ofMetres(10.0);
  private static final Length SMOOTH = Length.ofMillimetres(0.0);
  private static final Conduit HOSE = Conduit.of(BORE, TEN, Length.ofMillimetres(0.02));

  @Test
  void it_tells_what_it_was_given_and_what_follows() {
    Conduit hose = HOSE.withFittings(2.5);
    assertThat(hose.bore()).isEqualTo(BORE);
    assertThat(hose.length()).isEqualTo(TEN);
    assertThat(hose.roughness()).isEqualTo(Length.ofMillimetres(0.02));
    assertThat(hose.fittingLoss()).isEqualTo(2.5);
    assertThat(hose.relativeRoughness()).isCloseTo(0.002, within(1e-17));
    assertThat(hose.area().squareMetres()).isCloseTo(Math.PI * 1.0e-4 / 4.0, within(1e-19));
    assertThat(hose.withLength(BORE).length()).isEqualTo(BORE);
    assertThat(hose.withLength(BORE).fittingLoss()).isEqualTo(2.5);
    assertThat(hose).hasToString("10 m of 10 mm bore");
  }

  @Test
  void equal_when_all_four_are_equal() {
    assertThat(HOSE).isEqualTo(Conduit.of(BORE, TEN, Length.ofMillimetres(0.02)));
    assertThat(HOSE).hasSameHashCodeAs(Conduit.of(BORE, TEN, Length.ofMillimetres(0.02)));
    assertThat(HOSE)
        .isNotEqualTo(HOSE.withFittings(1.0))
        .isNotEqualTo(HOSE.withLength(BORE))
        .isNotEqualTo(Conduit.of(BORE, TEN, SMOOTH))
        .isNotEqualTo(Conduit.of(TEN, TEN, Length.ofMillimetres(0.02)))
        .isNotEqualTo(new Object());
  }

  @Test
  void a_bore_of_nothing_is_refused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Conduit.of(Length.ofMetres(0.0), TEN, SMOOTH))
        .withMessage("bore must be above 0 mm, was 0 mm");
  }

  @Test
  void a_roughness_above_a_twentieth_of_the_bore_is_refused() {
    assertThat(Conduit.of(BORE, TEN, Length.ofMillimetres(0.5)).relativeRoughness())
        .isEqualTo(0.05);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Conduit.of(BORE, TEN, Length.ofMillimetres(0.500001)))
        .withMessageContaining("roughness must be in [0, 0.5] mm");
  }

  @ParameterizedTest
  @ValueSource(doubles = {-1.0e-9, 1.000001e6, Double.NaN})
  void a_fitting_loss_outside_its_range_is_refused(double k) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> HOSE.withFittings(k))
        .withMessageContaining("sum of fitting losses K must be in [0, 1e6]");
  }
}
