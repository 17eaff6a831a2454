package org.airfit.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.airfit.source.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What adds up, what does not, and the doors of sums. */
class AdditiveQuantityTest {

  static Stream<AdditiveQuantity<?, ?>> threes() {
    return Stream.of(
        Area.ofSquareMetres(3),
        Energy.ofJoules(3),
        FreeAirFlow.of(3, VolumeFlowUnit.CUBIC_METRE_PER_SECOND, ReferenceState.NORMAL),
        Length.ofMetres(3),
        MassFlow.ofKilogramsPerSecond(3),
        Power.ofWatts(3),
        PressureDrop.ofPascals(3),
        Volume.ofCubicMetres(3));
  }

  @Test
  void every_additive_quantity_is_under_test() {
    assertThat(threes().map(Object::getClass))
        .containsExactlyInAnyOrder(AdditiveQuantity.class.getPermittedSubclasses());
  }

  @ParameterizedTest
  @MethodSource("threes")
  void it_adds_and_takes_away_multiplies_and_divides(AdditiveQuantity<?, ?> three) {
    sums(three);
  }

  private static <Q extends AdditiveQuantity<Q, U>, U extends Unit> void sums(
      AdditiveQuantity<Q, U> three) {
    Q half = three.dividedBy(2);
    assertThat(half.si()).isEqualTo(1.5);
    assertThat(three.plus(half).si()).isEqualTo(4.5);
    assertThat(three.minus(half)).isEqualTo(half);
    assertThat(three.minus(three.times(1)).si()).isZero();
    assertThat(three.times(2.5).si()).isEqualTo(7.5);
    assertThat(three.times(0).si()).isZero();
    assertThat(three.times(2).getClass()).isEqualTo(three.getClass());
    refused(() -> half.minus(three.times(1)));
    refused(() -> three.times(-1));
    refused(() -> three.times(Double.NaN));
    refused(() -> three.times(Double.POSITIVE_INFINITY));
    refused(() -> three.dividedBy(0));
    refused(() -> three.dividedBy(-2));
    refused(() -> three.dividedBy(Double.NaN));
    refused(() -> three.times(1e308).plus(three.times(1e308)));
  }

  private static void refused(Runnable sum) {
    assertThatIllegalArgumentException()
        .isThrownBy(sum::run)
        .withMessageContaining(" must be finite and at least 0 ");
  }

  /** A sum of two absolute pressures means nothing, nor does twice a temperature in degrees. */
  @ParameterizedTest
  @ValueSource(
      classes = {
        AbsolutePressure.class,
        GaugePressure.class,
        Temperature.class,
        Density.class,
        DynamicViscosity.class,
        Velocity.class,
        SonicConductance.class
      })
  void what_does_not_add_up_has_no_sum_of_its_own_kind(Class<?> type) {
    assertThat(Arrays.stream(type.getMethods())
            .filter(method -> List.of("plus", "times", "dividedBy").contains(method.getName()))
            .filter(method -> !List.of(method.getParameterTypes()).contains(PressureDrop.class)))
        .isEmpty();
  }

  @Test
  void a_drop_is_added_to_a_pressure_and_taken_off_it() {
    PressureDrop drop = PressureDrop.ofBar(0.5);
    assertThat(GaugePressure.ofBar(6).minus(drop)).isEqualTo(GaugePressure.ofBar(5.5));
    assertThat(GaugePressure.ofBar(6).plus(drop)).isEqualTo(GaugePressure.ofBar(6.5));
    assertThat(GaugePressure.ofBar(0).minus(drop)).isEqualTo(GaugePressure.ofBar(-0.5));
    assertThat(AbsolutePressure.ofBar(6).plus(drop)).isEqualTo(AbsolutePressure.ofBar(6.5));
    assertThat(AbsolutePressure.ofBar(6).minus(drop)).isEqualTo(AbsolutePressure.ofBar(5.5));
  }

  @Test
  void two_gauge_readings_differ_by_a_drop() {
    assertThat(GaugePressure.ofBar(6).dropTo(GaugePressure.ofBar(-0.5)))
        .isEqualTo(PressureDrop.ofBar(6.5));
    assertThat(GaugePressure.ofBar(6).dropTo(GaugePressure.ofBar(6)))
        .isEqualTo(PressureDrop.ofBar(0));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> GaugePressure.ofBar(5).dropTo(GaugePressure.ofBar(6)))
        .withMessage("downstream pressure must be at most the upstream 5 bar(g), was 6 bar(g)");
  }

  /** 1 L/s ANR and 1 L/s at the state of DIN 1343 are not 2 L/s of anything. */
  @Test
  void free_air_adds_up_at_one_state_only() {
    FreeAirFlow anr = FreeAirFlow.ofAnrLitresPerSecond(16);
    FreeAirFlow normal = FreeAirFlow.of(1, VolumeFlowUnit.LITRE_PER_SECOND, ReferenceState.NORMAL);
    assertThat(anr.plus(anr)).isEqualTo(anr.times(2));
    String message = "reference state must be ANR (20 °C, 100 kPa(a), 65 % humidity), was DIN 1343"
        + " (0 °C, 101.325 kPa(a), dry): count both flows at one state first, with at(...)";
    assertThatIllegalArgumentException().isThrownBy(() -> anr.plus(normal)).withMessage(message);
    assertThatIllegalArgumentException().isThrownBy(() -> anr.minus(normal)).withMessage(message);
    assertThat(anr.plus(normal.at(ReferenceState.ANR)).reference()).isEqualTo(ReferenceState.ANR);
  }

  /** An order that a sorted set can rest on: only equal flows compare as 0. */
  @Test
  void free_air_is_ordered_by_mass_and_equal_only_to_itself() {
    ReferenceState shop = ReferenceState.of(
        "shop", Temperature.ofCelsius(20), AbsolutePressure.ofBar(1), 0, Source.demo("a test"));
    FreeAirFlow here = FreeAirFlow.of(1, VolumeFlowUnit.LITRE_PER_SECOND, shop);
    FreeAirFlow there =
        FreeAirFlow.of(1, VolumeFlowUnit.LITRE_PER_SECOND, ReferenceState.COMPRESSOR_INLET);
    assertThat(here.massFlow()).isEqualTo(there.massFlow());
    assertThat(here.compareTo(there)).isPositive();
    assertThat(there.compareTo(here)).isNegative();
    assertThat(here.compareTo(FreeAirFlow.of(1, VolumeFlowUnit.LITRE_PER_SECOND, shop)))
        .isZero();
    assertThat(here.compareTo(here.times(2))).isNegative();
    assertThat(FreeAirFlow.ofScfm60F(33)).isGreaterThan(FreeAirFlow.ofAnrLitresPerSecond(16));
  }
}
