package org.airfit.plant;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.ReferenceState;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;

/** C 5 dm³/(s·bar), b 0.3, set to 7 bar(a), drooping by 0.4 bar at 20 L/s ANR; by hand from ISO 6358 and the line. */
class RegulatorElementTest {

  private static final FlowCapacity VALVE =
      FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(5.0), 0.3);
  private static final RegulatorElement STIFF =
      RegulatorElement.of(VALVE, AbsolutePressure.ofBar(7.0));
  private static final RegulatorElement DROOPING =
      STIFF.withDroop(PressureDrop.ofBar(0.4), FreeAirFlow.ofAnrLitresPerSecond(20.0));
  private static final double KELVINS = 293.15;
  private static final double VISCOSITY = 1.8e-5;

  private static double kilograms(double anrLitres) {
    return FreeAirFlow.ofAnrLitresPerSecond(anrLitres).massFlow().kilogramsPerSecond();
  }

  private static double outlet(RegulatorElement of, double anrLitres, double bar) {
    return of.outlet(kilograms(anrLitres), 1.0e5 * bar, KELVINS, VISCOSITY);
  }

  @Test
  void it_holds_what_it_is_set_to_less_its_droop() {
    assertThat(outlet(STIFF, 0.0, 9.0)).isEqualTo(7.0e5);
    assertThat(outlet(STIFF, 10.0, 9.0)).isEqualTo(7.0e5);
    assertThat(outlet(DROOPING, 10.0, 9.0)).isCloseTo(6.8e5, within(1.0e-6));
    assertThat(outlet(DROOPING, 20.0, 12.0)).isCloseTo(6.6e5, within(1.0e-6));
  }

  /** At 9 bar C passes 45 L/s when it chokes; 30 L/s leave p2/p1 = 0.3 + 0.7 √(1 − (30/45)²) = 0.8217. */
  @Test
  void where_the_valve_leaves_less_it_does_not_regulate() {
    double share = 0.3 + 0.7 * Math.sqrt(1.0 - Math.pow(30.0 / 45.0, 2.0));
    assertThat(outlet(STIFF, 30.0, 9.0)).as("7.4 bar are left, 7 held").isEqualTo(7.0e5);
    assertThat(outlet(STIFF, 30.0, 9.0 * 7.0 / 7.4)).isLessThan(7.0e5);
    double lower = 0.3 + 0.7 * Math.sqrt(1.0 - Math.pow(30.0 / 40.0, 2.0));
    assertThat(outlet(STIFF, 30.0, 8.0)).isCloseTo(8.0e5 * lower, within(1.0));
    assertThat(share).isGreaterThan(7.0 / 9.0);
    assertThat(outlet(STIFF, 1.0, 6.0)).as("less in front than it is set to").isLessThan(6.0e5);
  }

  @Test
  void its_largest_flow_is_that_of_the_valve_or_where_the_droop_has_eaten_all() {
    double choked = kilograms(45.0);
    assertThat(STIFF.largest(9.0e5, KELVINS, VISCOSITY)).isCloseTo(choked, within(1.0e-9));
    assertThat(outlet(STIFF, 45.1, 9.0)).isNaN();
    RegulatorElement soft =
        STIFF.withDroop(PressureDrop.ofBar(3.5), FreeAirFlow.ofAnrLitresPerSecond(10.0));
    assertThat(soft.largest(9.0e5, KELVINS, VISCOSITY)).isCloseTo(kilograms(20.0), within(1e-12));
    assertThat(outlet(soft, 20.1, 9.0)).isNaN();
    assertThat(outlet(soft, 19.9, 9.0)).isCloseTo(7.0e5 * 0.1 / 20.0, within(1.0e-6));
  }

  @Test
  void its_working_says_whether_it_regulates() {
    AirState nine = AirState.of(AbsolutePressure.ofBar(9.0), Temperature.ofKelvins(KELVINS));
    MassFlow ten = FreeAirFlow.ofAnrLitresPerSecond(10.0).massFlow();
    assertThat(DROOPING.working(ten, nine, UnitSystem.SI).toText())
        .contains("It holds 6.8 bar", "Droop");
    assertThat(STIFF
            .working(ten, nine.at(AbsolutePressure.ofBar(6.0)), UnitSystem.US)
            .toText())
        .contains("psia, less than what it would hold: it does not regulate.");
    assertThat(STIFF.working(ten.times(5.0), nine, UnitSystem.SI).toText())
        .contains("It does not let", "through.");
  }

  @Test
  void its_droop_has_bounds() {
    FreeAirFlow flow = FreeAirFlow.ofAnrLitresPerSecond(10.0);
    assertThat(STIFF.withDroop(PressureDrop.ofBar(0.0), flow).largest(9.0e5, KELVINS, VISCOSITY))
        .isCloseTo(kilograms(45.0), within(1.0e-9));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> STIFF.withDroop(PressureDrop.ofBar(7.0), flow))
        .withMessageContaining("droop of a regulator must be in [0, 7 bar(a)), was 7 bar");
    assertThat(STIFF.withDroopAtAnyFlow(PressureDrop.ofBar(6.999)).droop())
        .isEqualTo(PressureDrop.ofBar(6.999));
    assertThat(STIFF.withDroopAtAnyFlow(PressureDrop.ofBar(0.0))).isEqualTo(STIFF);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> STIFF.withDroop(PressureDrop.ofBar(-0.1), flow));
    assertThatIllegalArgumentException()
        .isThrownBy(
            () -> STIFF.withDroop(PressureDrop.ofBar(0.1), FreeAirFlow.ofAnrLitresPerSecond(0.0)));
  }

  /** No air has more than 10³⁰ Pa, as AirState says. */
  @Test
  void it_is_set_to_a_pressure_that_air_can_have() {
    assertThat(
            RegulatorElement.of(VALVE, AbsolutePressure.ofPascals(1.0e30)).set().pascals())
        .isEqualTo(1.0e30);
    assertThatIllegalArgumentException()
        .isThrownBy(
            () -> RegulatorElement.of(VALVE, AbsolutePressure.ofPascals(Math.nextUp(1.0e30))))
        .withMessageContaining("pressure of air must be in [1e-30, 1e30] Pa(a), was ");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> RegulatorElement.of(VALVE, AbsolutePressure.ofPascals(0.0)))
        .withMessageContaining("pressure of air must be above 0 Pa(a), was 0 Pa(a)");
  }

  /** 0.4 bar over the largest number that a double holds. */
  @Test
  void its_droop_over_its_flow_is_a_number() {
    MassFlow least = MassFlow.ofKilogramsPerSecond(0.4e5 / Double.MAX_VALUE * (1.0 + 1.0e-9));
    MassFlow less = MassFlow.ofKilogramsPerSecond(0.4e5 / Double.MAX_VALUE * (1.0 - 1.0e-9));
    PressureDrop droop = PressureDrop.ofBar(0.4);
    assertThat(STIFF
            .withDroop(droop, FreeAirFlow.from(least, ReferenceState.ANR))
            .outlet(0.0, 9.0e5, KELVINS, VISCOSITY))
        .isEqualTo(7.0e5);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> STIFF.withDroop(droop, FreeAirFlow.from(less, ReferenceState.ANR)))
        .withMessageStartingWith("flow at which a regulator droops must be so large that its droop"
            + " per flow can be held, was ");
  }

  @Test
  void it_is_equal_by_value() {
    assertThat(RegulatorElement.of(VALVE, AbsolutePressure.ofBar(7.0)))
        .isEqualTo(STIFF)
        .hasSameHashCodeAs(STIFF)
        .isNotEqualTo(DROOPING);
    assertThat(STIFF.set()).isEqualTo(AbsolutePressure.ofBar(7.0));
    assertThat(STIFF.capacity()).isEqualTo(VALVE);
    assertThat(STIFF).hasToString("regulator set to 7 bar(a)");
    assertThat(DROOPING.toString()).contains("drooping by 0.4 bar at ");
  }

  @Test
  void it_tells_its_droop_and_the_flow_of_it() {
    assertThat(DROOPING.droop()).isEqualTo(PressureDrop.ofBar(0.4));
    assertThat(DROOPING.atFlow()).contains(FreeAirFlow.ofAnrLitresPerSecond(20.0));
    assertThat(STIFF.droop()).isEqualTo(PressureDrop.ofBar(0.0));
    assertThat(STIFF.atFlow()).isEmpty();
  }

  /** 7 bar less 0.4 bar, whether much flows or little, and less where the open valve leaves less. */
  @Test
  void a_droop_at_any_flow_counts_whatever_flows() {
    RegulatorElement drooping = STIFF.withDroopAtAnyFlow(PressureDrop.ofBar(0.4));
    assertThat(outlet(drooping, 0.1, 9.0)).isCloseTo(6.6e5, within(1.0e-6));
    assertThat(outlet(drooping, 20.0, 12.0)).isCloseTo(6.6e5, within(1.0e-6));
    assertThat(outlet(drooping, 30.0, 8.0)).isEqualTo(outlet(STIFF, 30.0, 8.0));
    assertThat(drooping.largest(9.0e5, KELVINS, VISCOSITY))
        .isEqualTo(STIFF.largest(9.0e5, KELVINS, VISCOSITY));
    assertThat(drooping.withSet(AbsolutePressure.ofBar(6.0)))
        .isEqualTo(RegulatorElement.of(VALVE, AbsolutePressure.ofBar(6.0))
            .withDroopAtAnyFlow(PressureDrop.ofBar(0.4)));
    assertThat(drooping.atFlow()).isEmpty();
    assertThat(drooping)
        .hasToString("regulator set to 7 bar(a), drooping by 0.4 bar whatever flows")
        .isNotEqualTo(STIFF);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> STIFF.withDroopAtAnyFlow(PressureDrop.ofBar(7.0)))
        .withMessageContaining("droop of a regulator must be in [0, 7 bar(a)), was 7 bar");
  }

  private static boolean isWideOpen(double anrLitres, double bar) {
    return STIFF.isWideOpen(
        MassFlow.ofKilogramsPerSecond(kilograms(anrLitres)),
        AirState.of(AbsolutePressure.ofBar(bar), Temperature.ofKelvins(KELVINS)));
  }

  /** The flows of the tests above: 30 L/s leave 7.4 of 9 bar and 5.85 of 8; 45 L/s choke at 9 bar. */
  @Test
  void its_valve_stands_wide_open_where_it_leaves_less_than_is_held() {
    assertThat(isWideOpen(30.0, 9.0)).isFalse();
    assertThat(isWideOpen(30.0, 8.0)).isTrue();
    assertThat(isWideOpen(45.1, 9.0)).as("nothing leaves so much").isTrue();
    assertThat(isWideOpen(0.0, 7.0)).as("7 bar are left, 7 held").isFalse();
    assertThat(isWideOpen(0.0, 6.9)).isTrue();
  }

  @Test
  void the_working_says_that_a_droop_counts_whatever_flows() {
    MassFlow flow = MassFlow.ofKilogramsPerSecond(kilograms(10.0));
    AirState front = AirState.of(AbsolutePressure.ofBar(9.0), Temperature.ofKelvins(KELVINS));
    String note = "By how much it droops at this flow is not known";
    assertThat(STIFF
            .withDroopAtAnyFlow(PressureDrop.ofBar(0.4))
            .working(flow, front, UnitSystem.SI)
            .toText())
        .contains(note + ": it counts with 0.4 bar less than it is set to.");
    assertThat(STIFF.working(flow, front, UnitSystem.SI).toText()).doesNotContain(note);
    assertThat(DROOPING.working(flow, front, UnitSystem.SI).toText()).doesNotContain(note);
  }
}
