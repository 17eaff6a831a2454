package org.airfit;

import static java.util.Map.entry;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaModifier;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.airfit.air.AirPurity;
import org.airfit.flow.Rating;
import org.airfit.joint.End;
import org.airfit.line.ConduitName;
import org.airfit.line.FittingList;
import org.airfit.plant.RegulatorCurve;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.Area;
import org.airfit.quantity.BasicBodySize;
import org.airfit.quantity.Density;
import org.airfit.quantity.DynamicViscosity;
import org.airfit.quantity.Energy;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.FrictionFactor;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.HoseBore;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Money;
import org.airfit.quantity.NominalThreadSize;
import org.airfit.quantity.Power;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.ReferenceState;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.TypedFlow;
import org.airfit.quantity.UnmarkedFlow;
import org.airfit.quantity.ValveCoefficient;
import org.airfit.quantity.Velocity;
import org.airfit.quantity.Volume;
import org.airfit.quantity.VolumeFlowUnit;
import org.airfit.run.ToolAir;
import org.airfit.run.ToolMarking;
import org.airfit.source.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * What a value prints, its {@code parse} reads back as the same value: for every public type of the core that has one.
 */
class PrintedValuesTest {

  private static final ReferenceState SHOP = ReferenceState.of(
      "shop, 15 °C (north) at noon",
      Temperature.ofCelsius(15),
      AbsolutePressure.ofBar(1),
      0.07,
      Source.demo("a test"));

  private static final ReferenceState ODD = ReferenceState.of(
      "odd",
      Temperature.ofFahrenheit(59.3),
      AbsolutePressure.ofPsi(14.696),
      1.0 / 3.0,
      Source.demo("a test"));

  /** For each type values of every form it prints; of an enum all its constants are tried. */
  private static final Map<Class<?>, List<?>> SAMPLES = Map.ofEntries(
      entry(AirPurity.class, List.of(AirPurity.parse("[2:4:1]"), AirPurity.parse("[-:X:0]"))),
      entry(
          AbsolutePressure.class,
          List.of(
              AbsolutePressure.ofPsi(104.7),
              AbsolutePressure.ofBar(0),
              AbsolutePressure.ofPascals(1e-300))),
      entry(Area.class, List.of(Area.ofSquareInches(0.11), Area.ofSquareMetres(1e300))),
      entry(
          RegulatorCurve.class,
          List.of(
              RegulatorCurve.parse("90 psig at 0 scfm; 86.3 psig at 20.7 scfm"),
              RegulatorCurve.parse(
                  "6.1 bar(g) at 0 L/s ANR; 6 bar(g) at 7 L/s ANR; 5.5 bar(g) at 1e3 L/s ANR"))),
      entry(BasicBodySize.class, List.of(BasicBodySize.values())),
      entry(Density.class, List.of(Density.ofPoundsPerCubicFoot(0.075))),
      entry(DynamicViscosity.class, List.of(DynamicViscosity.ofPascalSeconds(1.813e-5))),
      entry(
          End.class,
          Stream.of(
                  "1/4 NPT male",
                  "1-1/4 NPTF female",
                  "G 1/2 male",
                  "R 3/8",
                  "Rc 3/8",
                  "Rp 1/8",
                  "3-8 NPT male",
                  "1/2 NPSM female",
                  "3/8 in hose",
                  "10 mm hose")
              .map(End::parse)
              .toList()),
      entry(Energy.class, List.of(Energy.ofKilowattHours(1234.5))),
      entry(
          FreeAirFlow.class,
          Stream.concat(ReferenceState.wellKnown().stream(), Stream.of(SHOP, ODD))
              .map(state -> FreeAirFlow.of(12.3, VolumeFlowUnit.CUBIC_FOOT_PER_MINUTE, state))
              .toList()),
      entry(
          FrictionFactor.class,
          List.of(FrictionFactor.ofDarcy(0.0213), FrictionFactor.ofFanning(1e-9))),
      entry(GaugePressure.class, List.of(GaugePressure.ofPsi(90), GaugePressure.ofPsi(-5))),
      entry(
          HoseBore.class,
          List.of(
              HoseBore.parse("3/8 in ID"),
              HoseBore.parse("1¼\u00a0″ hose"),
              HoseBore.parse("0." + "0".repeat(189) + "1e192 mm"),
              HoseBore.of(Length.ofMillimetres(9.525)),
              HoseBore.of(Length.ofMillimetres(12.34567)))),
      entry(Length.class, List.of(Length.ofInches(0.375), Length.ofMetres(0), Length.ofFeet(1e9))),
      entry(MassFlow.class, List.of(MassFlow.ofPoundsPerMinute(1.1))),
      entry(
          Money.class,
          List.of(
              Money.parse("123456789.01 USD"),
              Money.parse("12345678901.23 EUR"),
              Money.parse("-3 crowns a piece"),
              Money.parse("0 USD"),
              Money.parse("1 USD").times(1.0 / 3.0),
              new Money(new BigDecimal("1e20"), "€"),
              new Money(new BigDecimal("12.500"), "USD"))),
      entry(NominalThreadSize.class, List.of(NominalThreadSize.values())),
      entry(Power.class, List.of(Power.ofHorsepower(10))),
      entry(PressureDrop.class, List.of(PressureDrop.ofPsi(5))),
      entry(
          ReferenceState.class,
          Stream.concat(ReferenceState.wellKnown().stream(), Stream.of(SHOP, ODD))
              .toList()),
      entry(SonicConductance.class, List.of(SonicConductance.ofCubicDecimetresPerSecondBar(3.5))),
      entry(Temperature.class, List.of(Temperature.ofFahrenheit(59.3), Temperature.ofKelvins(0))),
      entry(
          ValveCoefficient.class, List.of(ValveCoefficient.ofCv(1.04), ValveCoefficient.ofKv(0.9))),
      entry(Velocity.class, List.of(Velocity.ofFeetPerSecond(30))),
      entry(Volume.class, List.of(Volume.ofUsGallons(60))),
      entry(
          ToolAir.class,
          List.of(
              ToolAir.parse("11 CFM"),
              ToolAir.parse("4 scfm avg"),
              ToolAir.parse("avg 400 l/min"))),
      entry(
          TypedFlow.class, List.of(TypedFlow.parse("11 to 14 cfm"), TypedFlow.parse("10 L/s ANR"))),
      entry(
          ToolMarking.class,
          List.of(
              ToolMarking.parse("6.3 bar 400 l/min"), ToolMarking.parse(" max 90 psi, avg 4 CFM"))),
      entry(
          UnmarkedFlow.class,
          List.of(
              UnmarkedFlow.parse("25 CFM"),
              UnmarkedFlow.of(1.0 / 3.0, VolumeFlowUnit.LITRE_PER_SECOND))),
      entry(
          Rating.class,
          List.of(
              Rating.parse(" Cv 1.4"),
              Rating.parse("40 scfm at 100 psig, 5 psi drop"),
              Rating.parse("20 scfm at 100 psig, 1 psi drop; 40 scfm, 4 psi drop"))),
      entry(FittingList.class, List.of(FittingList.parse("4 elbows and a tee "))),
      entry(
          ConduitName.class,
          List.of(ConduitName.parse(" 1/4 in hose, old"), ConduitName.parse("steel pipe"))));

  /** The public types with a public static {@code parse(String)}. */
  static List<Class<?>> types() {
    List<Class<?>> types = new ArrayList<>();
    for (JavaClass type : LibraryClasses.ALL) {
      boolean hasParse = type.getMethods().stream()
          .anyMatch(method -> method.getName().equals("parse")
              && method.getModifiers().contains(JavaModifier.STATIC)
              && method.getModifiers().contains(JavaModifier.PUBLIC)
              && method.getRawParameterTypes().size() == 1
              && method.getRawParameterTypes().get(0).isEquivalentTo(String.class));
      if (hasParse && type.getModifiers().contains(JavaModifier.PUBLIC)) {
        types.add(type.reflect());
      }
    }
    return types;
  }

  @Test
  void no_sample_is_left_over() {
    assertThat(types()).containsAll(SAMPLES.keySet());
  }

  @ParameterizedTest
  @MethodSource("types")
  void a_value_is_read_back_from_what_it_prints(Class<?> type) throws ReflectiveOperationException {
    Object[] constants = type.getEnumConstants();
    List<?> samples = constants == null ? SAMPLES.get(type) : List.of(constants);
    assertThat(samples).as("samples of %s in this test", type.getSimpleName()).isNotEmpty();
    for (Object value : samples) {
      Object read = type.getMethod("parse", String.class).invoke(null, value.toString());
      assertThat(read).as("%s", value).isEqualTo(value).hasSameHashCodeAs(value);
      assertThat(read).as("printed again").hasToString(value.toString());
    }
  }
}
