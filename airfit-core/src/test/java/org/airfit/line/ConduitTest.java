package org.airfit.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
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

  /** In binary numbers 0.05 of a bore is seldom the number that 0.05 of its figure in mm, inches or feet is. */
  @Test
  void a_roughness_of_a_twentieth_is_accepted_in_every_bore_and_unit() {
    Random random = new Random(12);
    for (int i = 0; i < 100_000; i++) {
      double bore = i < 50_000 ? 0.01 * (i + 1) : Math.exp(33.0 * random.nextDouble() - 13.0);
      for (LengthUnit unit : LengthUnit.values()) {
        Length whole = Length.of(bore, unit);
        for (Length roughness : List.of(
            Length.of(0.05 * bore, unit),
            Length.of(bore / 20.0, unit),
            Length.ofMillimetres(0.05 * whole.millimetres()))) {
          Conduit rough = Conduit.of(whole, TEN, roughness);
          assertThat(rough.relativeRoughness()).isLessThanOrEqualTo(0.05);
          assertThat(FrictionLaw.HAALAND.holds(1.0e5, roughness.metres() / whole.metres()))
              .isTrue();
          assertThat(FrictionLaw.COLEBROOK.factor(1.0e5, roughness.metres() / whole.metres()))
              .isEqualTo(FrictionLaw.COLEBROOK.factor(1.0e5, rough.relativeRoughness()));
        }
      }
    }
    assertThat(Conduit.of(TEN, TEN, Length.ofMetres(0.5)).withBore(Length.ofMetres(10.0)))
        .isEqualTo(Conduit.of(TEN, TEN, Length.ofMetres(0.5)));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Conduit.of(TEN, TEN, Length.ofMetres(0.500001)))
        .withMessageContaining("0.05 of the bore");
  }

  /** A refused value is told with the digits that make it too much: not "0.5 mm, was 0.5 mm". */
  @Test
  void a_value_just_above_a_limit_is_told_with_all_its_digits() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Conduit.of(
            Length.ofMillimetres(10.0), Length.ofMetres(1.0), Length.ofMillimetres(0.50001)))
        .withMessage("roughness must be in [0, 0.5] mm (0.05 of the bore), was 0.50001 mm");
    assertThatIllegalArgumentException()
        .isThrownBy(() ->
            Conduit.of(Length.ofInches(0.4), Length.ofMetres(1.0), Length.ofMillimetres(0.508001)))
        .withMessage("roughness must be in [0, 0.508] mm (0.05 of the bore), was 0.508001 mm");
  }
}
