package org.airfit;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.invoke.MethodHandle;
import java.lang.invoke.MethodHandles;
import java.lang.invoke.MethodType;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.AdditiveQuantity;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Quantity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Quantities as a program in another package uses them: by method reference, by reflection and from other languages.
 */
class QuantityFromOutsideTest {

  static List<Class<?>> types() {
    List<Class<?>> types = new ArrayList<>();
    types.addAll(List.of(Objects.requireNonNull(Quantity.class.getPermittedSubclasses())));
    types.addAll(List.of(Objects.requireNonNull(AdditiveQuantity.class.getPermittedSubclasses())));
    types.remove(AdditiveQuantity.class);
    return types;
  }

  @Test
  void quantities_stream_by_method_reference() {
    assertThat(Stream.of("3/8 in", "1/2 in").map(Length::parse).max(Length::compareTo))
        .hasValue(Length.ofInches(0.5));
    // 33 scfm fill 15.6 L/s: fewer than the 16, yet of denser air
    assertThat(
            Stream.of("33 scfm", "16 L/s ANR").map(FreeAirFlow::parse).max(FreeAirFlow::compareTo))
        .hasValue(FreeAirFlow.ofScfm60F(33));
    assertThat(Stream.of(GaugePressure.ofPsi(90), GaugePressure.ofPsi(80)).sorted())
        .containsExactly(GaugePressure.ofPsi(80), GaugePressure.ofPsi(90));
    assertThat(Stream.of(Length.ofMetres(2), Length.ofMetres(1))
            .map(length -> length.in(LengthUnit.MILLIMETRE)))
        .containsExactly(2000.0, 1000.0);
    assertThat(Stream.of(AbsolutePressure.ofBar(1), AbsolutePressure.ofBar(2))
            .max(Comparator.naturalOrder()))
        .hasValue(AbsolutePressure.ofBar(2));
    assertThat(Stream.of("0.5 bar", "0.25 bar").map(PressureDrop::parse).reduce(PressureDrop::plus))
        .hasValue(PressureDrop.ofBar(0.75));
  }

  /** A method of a hidden class can be named in Java, but not called through a handle, by reflection or from Kotlin. */
  @ParameterizedTest
  @MethodSource("types")
  void every_public_method_is_declared_by_a_public_class(Class<?> type) {
    assertThat(type.getMethods())
        .as("%s", type)
        .allMatch(method -> Modifier.isPublic(method.getDeclaringClass().getModifiers()));
    assertThat(Modifier.isPublic(type.getModifiers())).isTrue();
    assertThat(Modifier.isFinal(type.getModifiers())).isTrue();
  }

  @ParameterizedTest
  @MethodSource("types")
  void every_public_method_can_be_called_by_reflection(Class<?> type)
      throws ReflectiveOperationException {
    Object value = type.getMethod("parse", String.class).invoke(null, text(type));
    for (Method method : type.getMethods()) {
      if (method.getName().equals("compareTo")) {
        assertThat(method.invoke(value, value)).as("%s", method).isEqualTo(0);
      } else if (method.getParameterCount() == 0 && method.getDeclaringClass() != Object.class) {
        assertThat(method.invoke(value)).as("%s", method).isNotNull();
      }
    }
    assertThat(
            Arrays.stream(type.getMethods()).filter(method -> method.getName().equals("compareTo")))
        .isNotEmpty();
  }

  /** What the compilers of other languages on the machine emit for {@code a > b}. */
  @ParameterizedTest
  @MethodSource("types")
  void a_comparison_links_from_an_unrelated_package(Class<?> type) throws Throwable {
    Object value = type.getMethod("parse", String.class).invoke(null, text(type));
    for (Class<?> parameter : List.of(Quantity.class, Object.class)) {
      MethodHandle compare = MethodHandles.publicLookup()
          .findVirtual(type, "compareTo", MethodType.methodType(int.class, parameter));
      assertThat((int) compare.invoke(value, value)).as("%s", parameter).isZero();
    }
  }

  /** A text that each type reads: one of its unit, 1. */
  private static String text(Class<?> type) {
    return "1 "
        + switch (type.getSimpleName()) {
          case "AbsolutePressure" -> "bar(a)";
          case "Area" -> "m²";
          case "Density" -> "kg/m³";
          case "DynamicViscosity" -> "Pa·s";
          case "Energy" -> "J";
          case "FreeAirFlow" -> "L/s ANR";
          case "GaugePressure" -> "bar(g)";
          case "Length" -> "m";
          case "MassFlow" -> "kg/s";
          case "Power" -> "W";
          case "PressureDrop" -> "bar";
          case "SonicConductance" -> "dm³/(s·bar)";
          case "Temperature" -> "K";
          case "Velocity" -> "m/s";
          case "Volume" -> "m³";
          default -> throw new AssertionError("no text for " + type);
        };
  }
}
