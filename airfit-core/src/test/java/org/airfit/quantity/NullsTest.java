package org.airfit.quantity;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.lang.reflect.Constructor;
import java.lang.reflect.Executable;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.math.BigDecimal;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.Stream;
import org.airfit.source.Source;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every public door of the package refuses null with the name of the parameter. */
class NullsTest {

  private static final Map<Class<?>, Object> VALUES = Map.ofEntries(
      Map.entry(AbsolutePressure.class, AbsolutePressure.ofBar(1)),
      Map.entry(Area.class, Area.ofSquareMetres(1)),
      Map.entry(BasicBodySize.class, BasicBodySize.ONE_HALF),
      Map.entry(Range.class, Range.exactly(Length.ofMetres(1))),
      Map.entry(TypedFlow.class, TypedFlow.parse("11 to 14 cfm")),
      Map.entry(UnmarkedFlow.class, UnmarkedFlow.of(40.0, VolumeFlowUnit.CUBIC_FOOT_PER_MINUTE)),
      Map.entry(BigDecimal.class, BigDecimal.ONE),
      Map.entry(Collection.class, List.of("psig")),
      Map.entry(DecimalMark.class, DecimalMark.COMMA),
      Map.entry(Density.class, Density.ofKilogramsPerCubicMetre(1)),
      Map.entry(Duration.class, Duration.ofHours(1)),
      Map.entry(DynamicViscosity.class, DynamicViscosity.ofPascalSeconds(1)),
      Map.entry(Energy.class, Energy.ofJoules(1)),
      Map.entry(FreeAirFlow.class, FreeAirFlow.ofScfm60F(1)),
      Map.entry(FrictionFactor.class, FrictionFactor.ofDarcy(1)),
      Map.entry(Function.class, Function.identity()),
      Map.entry(GaugePressure.class, GaugePressure.ofBar(1)),
      Map.entry(HoseBore.class, HoseBore.parse("10 mm")),
      Map.entry(Length.class, Length.ofMetres(1)),
      Map.entry(List.class, List.of()),
      Map.entry(MassFlow.class, MassFlow.ofKilogramsPerSecond(1)),
      Map.entry(Money.class, Money.parse("1 USD")),
      Map.entry(NominalThreadSize.class, NominalThreadSize.ONE),
      Map.entry(Power.class, Power.ofWatts(1)),
      Map.entry(PressureDrop.class, PressureDrop.ofBar(0)),
      Map.entry(
          QuantityFormatException.class,
          new QuantityFormatException("x", 0, "problem", "accepted")),
      Map.entry(ReferenceState.class, ReferenceState.ANR),
      Map.entry(SonicConductance.class, SonicConductance.ofCubicDecimetresPerSecondBar(1)),
      Map.entry(Source.class, Source.demo("a test")),
      Map.entry(String.class, "1 m"),
      Map.entry(Temperature.class, Temperature.ofKelvins(300)),
      Map.entry(UnitScale.class, LengthUnit.METRE.scale()),
      Map.entry(ValveCoefficient.class, ValveCoefficient.ofKv(1)),
      Map.entry(Velocity.class, Velocity.ofMetresPerSecond(1)),
      Map.entry(Volume.class, Volume.ofCubicMetres(1)),
      Map.entry(double.class, 1.0),
      Map.entry(int.class, 1));

  static Stream<Executable> doors() {
    List<Executable> doors = new ArrayList<>();
    for (JavaClass type : new ClassFileImporter()
        .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
        .importPackages("org.airfit.quantity")) {
      if (type.getModifiers().contains(JavaModifier.PUBLIC)) {
        doors.addAll(List.of(type.reflect().getConstructors()));
        doors.addAll(List.of(type.reflect().getMethods()));
      }
    }
    return doors.stream()
        .filter(door -> door.getDeclaringClass().getPackage() == Quantity.class.getPackage())
        .filter(door -> Stream.of(door.getParameterTypes()).anyMatch(type -> !type.isPrimitive()))
        .filter(door -> !door.getName().equals("equals") && !door.getName().equals("valueOf"))
        .filter(door -> !(door instanceof Method method && method.isBridge()))
        .distinct();
  }

  @ParameterizedTest
  @MethodSource("doors")
  void a_null_is_refused_by_the_name_of_its_parameter(Executable door)
      throws ReflectiveOperationException {
    Class<?>[] types = door.getParameterTypes();
    for (int i = 0; i < types.length; i++) {
      if (!types[i].isPrimitive()) {
        Object[] arguments = Stream.of(types).map(NullsTest::value).toArray();
        arguments[i] = null;
        Throwable refusal = refusal(door, arguments);
        assertThat(refusal)
            .as("%s, parameter %d", door, i)
            .isInstanceOf(NullPointerException.class);
        assertThat(Objects.requireNonNull(refusal).getMessage())
            .as("%s", door)
            .matches("[a-z][A-Za-z]*");
      }
    }
  }

  private static @Nullable Throwable refusal(Executable door, Object[] arguments)
      throws ReflectiveOperationException {
    try {
      if (door instanceof Constructor<?> constructor) {
        constructor.newInstance(arguments);
      } else {
        boolean isStatic = Modifier.isStatic(door.getModifiers());
        ((Method) door).invoke(isStatic ? null : value(door.getDeclaringClass()), arguments);
      }
      return null;
    } catch (InvocationTargetException wrapped) {
      return wrapped.getCause();
    }
  }

  private static Object value(Class<?> type) {
    if (Quantity.class == type || AdditiveQuantity.class == type || Comparable.class == type) {
      return Length.ofMetres(1);
    }
    if (type == Unit.class) {
      return LengthUnit.METRE;
    }
    if (Unit.class.isAssignableFrom(type)) {
      return Objects.requireNonNull(type.getEnumConstants())[0];
    }
    return Objects.requireNonNull(VALUES.get(type), () -> "a value of " + type);
  }
}
