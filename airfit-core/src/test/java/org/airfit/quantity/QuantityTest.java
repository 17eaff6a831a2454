package org.airfit.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The doors and the prints that all quantities share. */
class QuantityTest {

  /** More than the 2 ulp of the package page, less than anybody could have typed. */
  private static final Percentage TWO_ULP = Percentage.withPercentage(1.0e-13);

  static List<Kind<?, ?>> kinds() {
    return Kind.ALL;
  }

  static Stream<Kind<?, ?>> kindsThatCannotBeNegative() {
    return Kind.ALL.stream().filter(kind -> !kind.mayBeNegative());
  }

  /** A quantity added later must join the tests. */
  @Test
  void every_quantity_and_every_unit_is_under_test() {
    Set<String> types = new ClassFileImporter()
        .importPackages("org.airfit.quantity").stream()
            .filter(type -> type.isAssignableTo(Quantity.class))
            .map(JavaClass::getSimpleName)
            .filter(name -> !name.endsWith("Quantity"))
            .collect(Collectors.toSet());
    assertThat(Kind.ALL).extracting(kind -> kind.type().getSimpleName()).hasSameElementsAs(types);
    Set<Class<?>> units = new HashSet<>();
    Kind.ALL.forEach(kind -> units.add(kind.siUnit().getClass()));
    assertThat(units)
        .isEqualTo(Set.of(Objects.requireNonNull(Unit.class.getPermittedSubclasses())));
  }

  private static <Q extends Quantity<Q, U>, U extends Unit> void refused(
      Kind<Q, U> kind, double value, U unit) {
    String written = kind.ofSi(1.0).written(unit);
    assertThatIllegalArgumentException()
        .as("%s %s", value, unit)
        .isThrownBy(() -> kind.of().apply(value, unit))
        .withMessageStartingWith(kind.name() + " must be finite")
        .withMessageContaining(", was " + value + " " + written);
  }

  private static <Q extends Quantity<Q, U>, U extends Unit> void refusedInEveryUnit(
      Kind<Q, U> kind, double value) {
    kind.units().forEach(unit -> refused(kind, value, unit));
  }

  @ParameterizedTest
  @MethodSource("kinds")
  void what_is_no_number_is_refused_in_every_unit(Kind<?, ?> kind) {
    refusedInEveryUnit(kind, Double.NaN);
    refusedInEveryUnit(kind, Double.POSITIVE_INFINITY);
    refusedInEveryUnit(kind, Double.NEGATIVE_INFINITY);
  }

  @ParameterizedTest
  @MethodSource("kindsThatCannotBeNegative")
  void below_nothing_is_refused_in_every_unit(Kind<?, ?> kind) {
    belowTheLowest(kind);
  }

  private static <Q extends Quantity<Q, U>, U extends Unit> void belowTheLowest(Kind<Q, U> kind) {
    for (U unit : kind.units()) {
      double lowest = -unit.scale().offset();
      assertThat(kind.of().apply(lowest, unit).si()).isEqualTo(0.0);
      refused(kind, lowest == 0.0 ? -2.5e-308 : Math.nextDown(lowest), unit);
    }
  }

  @Test
  void the_message_names_quantity_range_value_and_unit() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Temperature.ofCelsius(-300))
        .withMessage("temperature must be finite and at least -273.15 °C, was -300.0 °C");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Temperature.ofFahrenheit(-460))
        .withMessage("temperature must be finite and at least -459.67 °F, was -460.0 °F");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> AbsolutePressure.ofPsi(-0.1))
        .withMessage("absolute pressure must be finite and at least 0 psia, was -0.1 psia");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> PressureDrop.ofBar(-1))
        .withMessage("pressure drop must be finite and at least 0 bar, was -1.0 bar");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> GaugePressure.ofBar(Double.NaN))
        .withMessage("gauge pressure must be finite, was NaN bar(g)");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Length.of(1.0e306, LengthUnit.MILE))
        .withMessage("length must be finite and at least 0 mi, was 1.0E306 mi, too large to hold");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Length.ofMillimetres(0.1 - 0.4))
        .withMessage("length must be finite and at least 0 mm, was -0.3 mm");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Temperature.ofCelsius(Math.nextDown(-273.15)))
        .withMessage(
            "temperature must be finite and at least -273.15 °C, was -273.15000000000003 °C");
  }

  @Test
  void minus_nothing_is_nothing() {
    assertThat(Length.ofMetres(-0.0)).isEqualTo(Length.ofMetres(0.0)).hasToString("0.0 m");
    assertThat(FreeAirFlow.ofScfm60F(-0.0)).isEqualTo(FreeAirFlow.ofScfm60F(0.0));
    assertThat(Length.ofMetres(-0.0)).hasSameHashCodeAs(Length.ofMetres(0.0));
  }

  /** The same pascals, and still three things. */
  @Test
  void a_gauge_reading_equals_neither_an_absolute_pressure_nor_a_drop() {
    assertThat((Object) GaugePressure.ofPsi(90)).isNotEqualTo(AbsolutePressure.ofPsi(90));
    assertThat((Object) GaugePressure.ofPsi(90)).isNotEqualTo(PressureDrop.ofPsi(90));
    assertThat((Object) AbsolutePressure.ofPsi(90)).isNotEqualTo(PressureDrop.ofPsi(90));
    assertThat(GaugePressure.ofPsi(90).equals(QuantityTest.<Object>nothing())).isFalse();
  }

  @Test
  void people_get_four_digits_in_the_unit_they_ask_for() {
    assertThat(GaugePressure.ofPsi(90).format(PressureUnit.PSI)).isEqualTo("90 psig");
    assertThat(GaugePressure.ofPsi(90).format(PressureUnit.BAR)).isEqualTo("6.205 bar(g)");
    assertThat(GaugePressure.ofPsi(90).format(PressureUnit.PASCAL)).isEqualTo("620528 Pa(g)");
    assertThat(AbsolutePressure.ofPsi(104.7).format(PressureUnit.KILOPASCAL))
        .isEqualTo("721.9 kPa(a)");
    assertThat(PressureDrop.ofPsi(5).format(PressureUnit.BAR)).isEqualTo("0.3447 bar");
    assertThat(Length.ofInches(0.5).format(LengthUnit.MILLIMETRE)).isEqualTo("12.7 mm");
    assertThat(Length.ofInches(0.5).format(LengthUnit.MILLIMETRE, 2)).isEqualTo("12.70 mm");
    assertThat(Temperature.ofFahrenheit(68).format(TemperatureUnit.CELSIUS)).isEqualTo("20 °C");
    assertThat(Length.ofMillimetres(12_345.6).format(LengthUnit.MILLIMETRE)).isEqualTo("12346 mm");
    assertThat(DynamicViscosity.ofPascalSeconds(1.81345e-5).format(ViscosityUnit.PASCAL_SECOND))
        .isEqualTo("1.813e-5 Pa·s");
    assertThat(FreeAirFlow.ofScfm60F(34).format(VolumeFlowUnit.CUBIC_FOOT_PER_MINUTE))
        .isEqualTo("34 scfm (60 °F)");
    assertThat(FreeAirFlow.ofScfm68F(34).format(VolumeFlowUnit.LITRE_PER_SECOND))
        .isEqualTo("16.05 L/s (68 °F)");
    assertThat(FreeAirFlow.ofAnrLitresPerSecond(16).format(VolumeFlowUnit.LITRE_PER_SECOND, 1))
        .isEqualTo("16.0 L/s ANR");
  }

  @ParameterizedTest
  @ValueSource(ints = {-1, 16})
  void decimals_out_of_range_are_refused(int decimals) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Length.ofMetres(1).format(LengthUnit.METRE, decimals))
        .withMessage("decimals must be in [0, 15], was " + decimals);
  }

  @Test
  void named_readers_and_factories_agree() {
    assertThat(Length.ofFeet(25).feet()).isCloseTo(25, TWO_ULP);
    assertThat(Length.ofFeet(25).inches()).isCloseTo(300, TWO_ULP);
    assertThat(Length.ofFeet(25).metres()).isCloseTo(7.62, TWO_ULP);
    assertThat(Length.ofFeet(25).times(2)).isEqualTo(Length.ofFeet(50));
    assertThat(Area.ofSquareInches(1).squareMillimetres()).isCloseTo(645.16, TWO_ULP);
    assertThat(Area.ofSquareMillimetres(645.16).squareInches()).isCloseTo(1, TWO_ULP);
    assertThat(Area.ofSquareMetres(2).squareMetres()).isCloseTo(2, TWO_ULP);
    assertThat(Area.ofCircle(Length.ofMetres(2)).squareMetres()).isCloseTo(Math.PI, TWO_ULP);
    assertThat(Volume.ofCubicFeet(1).litres()).isCloseTo(28.316846592, TWO_ULP);
    assertThat(Volume.ofLitres(28.316846592).cubicFeet()).isCloseTo(1, TWO_ULP);
    assertThat(Volume.ofUsGallons(60).usGallons()).isCloseTo(60, TWO_ULP);
    assertThat(Volume.ofCubicMetres(3).cubicMetres()).isCloseTo(3, TWO_ULP);
    assertThat(GaugePressure.ofKilopascals(620)).isEqualTo(GaugePressure.ofBar(6.2));
    assertThat(GaugePressure.ofBar(6.2).kilopascals()).isCloseTo(620, TWO_ULP);
    assertThat(GaugePressure.ofPsi(90).psi()).isCloseTo(90, TWO_ULP);
    assertThat(GaugePressure.ofBar(6.2).bar()).isCloseTo(6.2, TWO_ULP);
    assertThat(AbsolutePressure.ofKilopascals(100).kilopascals()).isCloseTo(100, TWO_ULP);
    assertThat(AbsolutePressure.ofBar(1).bar()).isCloseTo(1, TWO_ULP);
    assertThat(AbsolutePressure.ofPsi(14.7).psi()).isCloseTo(14.7, TWO_ULP);
    assertThat(PressureDrop.ofKilopascals(35)).isEqualTo(PressureDrop.ofBar(0.35));
    assertThat(PressureDrop.ofBar(0.35).kilopascals()).isCloseTo(35, TWO_ULP);
    assertThat(PressureDrop.ofBar(0.35).bar()).isCloseTo(0.35, TWO_ULP);
    assertThat(PressureDrop.ofPsi(5).psi()).isCloseTo(5, TWO_ULP);
    assertThat(PressureDrop.ofBar(5).times(3)).isEqualTo(PressureDrop.ofBar(15));
    assertThat(Temperature.ofCelsius(20).fahrenheit()).isCloseTo(68, TWO_ULP);
    assertThat(Temperature.ofKelvins(293.15).celsius()).isCloseTo(20, TWO_ULP);
    assertThat(MassFlow.ofGramsPerSecond(8).kilogramsPerHour()).isCloseTo(28.8, TWO_ULP);
    assertThat(MassFlow.ofKilogramsPerHour(28.8).gramsPerSecond()).isCloseTo(8, TWO_ULP);
    assertThat(MassFlow.ofPoundsPerMinute(1).poundsPerMinute()).isCloseTo(1, TWO_ULP);
    assertThat(MassFlow.ofKilogramsPerSecond(2).times(2).kilogramsPerSecond())
        .isCloseTo(4, TWO_ULP);
    assertThat(Density.ofPoundsPerCubicFoot(0.075).poundsPerCubicFoot()).isCloseTo(0.075, TWO_ULP);
    assertThat(Velocity.ofFeetPerSecond(30).metresPerSecond()).isCloseTo(9.144, TWO_ULP);
    assertThat(Velocity.ofMetresPerSecond(9.144).feetPerSecond()).isCloseTo(30, TWO_ULP);
    assertThat(DynamicViscosity.ofMicropascalSeconds(18.13).pascalSeconds())
        .isCloseTo(1.813e-5, TWO_ULP);
    assertThat(DynamicViscosity.ofPascalSeconds(1.813e-5).micropascalSeconds())
        .isCloseTo(18.13, TWO_ULP);
    assertThat(Power.ofKilowatts(7.5).watts()).isCloseTo(7500, TWO_ULP);
    assertThat(Power.ofWatts(7500).kilowatts()).isCloseTo(7.5, TWO_ULP);
    assertThat(Power.ofHorsepower(10).horsepower()).isCloseTo(10, TWO_ULP);
    assertThat(Energy.ofJoules(3.6e6).kilowattHours()).isCloseTo(1, TWO_ULP);
    assertThat(Energy.ofKilowattHours(1).joules()).isCloseTo(3.6e6, TWO_ULP);
    assertThat(SonicConductance.ofCubicDecimetresPerSecondBar(3).cubicMetresPerSecondPascal())
        .isCloseTo(3e-8, TWO_ULP);
    assertThat(SonicConductance.ofCubicMetresPerSecondPascal(3e-8).cubicDecimetresPerSecondBar())
        .isCloseTo(3, TWO_ULP);
  }

  @Test
  void what_is_missing_is_refused() {
    assertThatNullPointerException().isThrownBy(() -> Length.of(1, nothing()));
    assertThatNullPointerException().isThrownBy(() -> Length.parse(nothing()));
    assertThatNullPointerException()
        .isThrownBy(() -> FreeAirFlow.of(1, VolumeFlowUnit.LITRE_PER_SECOND, nothing()));
    assertThatNullPointerException()
        .isThrownBy(() -> ReferenceState.of(
            "shop", Temperature.ofCelsius(20), AbsolutePressure.ofBar(1), 0.0, nothing()));
    assertThatNullPointerException().isThrownBy(() -> HoseBore.of(nothing()));
  }

  /** What a caller without null checks could pass. */
  @SuppressWarnings({"NullAway", "TypeParameterUnusedInFormals"})
  private static <T> T nothing() {
    return null;
  }

  @Test
  void in_full_a_quantity_shows_all_digits_that_tell_it_from_others() {
    assertThat(Length.ofMillimetres(0.50001).inFull(LengthUnit.MILLIMETRE)).isEqualTo("0.50001 mm");
    assertThat(Length.ofInches(0.01).inFull(LengthUnit.MILLIMETRE)).isEqualTo("0.254 mm");
    assertThat(Temperature.ofCelsius(300.0001).inFull(TemperatureUnit.CELSIUS))
        .isEqualTo("300.0001 °C");
    assertThat(GaugePressure.ofPsi(90.5).inFull(PressureUnit.PSI)).isEqualTo("90.5 psig");
    assertThat(Length.ofMetres(1.0e308).inFull(LengthUnit.MICROMETRE)).isEqualTo("Infinity µm");
  }
}
