package org.airfit.line;

import static org.assertj.core.api.Assertions.assertThat;

import org.airfit.Pencil;
import org.airfit.air.AirState;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Temperature;
import org.airfit.working.Completeness;
import org.airfit.working.UnitSystem;
import org.airfit.working.Working;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The same answers shown in pounds, feet, °R and psi: a calculator gives them from the printed numbers. */
class UsUnitsTest {

  private static final AirState AIR =
      AirState.of(AbsolutePressure.ofPsi(114.7), Temperature.ofFahrenheit(60.0));
  private static final Conduit PIPE = Conduit.of(
          Length.ofInches(1.049), Length.ofFeet(100.0), Length.ofInches(0.0018))
      .withFittings(2.4);

  private static Working working(PipeEquation equation, MassFlow flow, UnitSystem units) {
    return LossModels.of(equation, FrictionLaw.COLEBROOK).loss(PIPE, flow, AIR).working(units);
  }

  @ParameterizedTest
  @EnumSource
  void a_loss_can_be_worked_out_in_us_units(PipeEquation equation) {
    for (double scfm : new double[] {0.5, 10.0, 100.0, 400.0}) {
      Working us = working(equation, FreeAirFlow.ofScfm60F(scfm).massFlow(), UnitSystem.US);
      Pencil.check(us);
      Completeness.check(us);
      assertThat(us.toText())
          .contains("psi")
          .contains("ft")
          .doesNotContain("Pa")
          .doesNotContain(" bar")
          .doesNotContain(" m ")
          .doesNotContain("mm");
    }
  }

  @ParameterizedTest
  @EnumSource
  void both_systems_end_at_the_same_loss(PipeEquation equation) {
    MassFlow flow = FreeAirFlow.ofScfm60F(100.0).massFlow();
    Working us = working(equation, flow, UnitSystem.US);
    Working si = working(equation, flow, UnitSystem.SI);
    double psi =
        Double.parseDouble(us.steps().get(us.steps().size() - 1).result().value());
    double bar =
        Double.parseDouble(si.steps().get(si.steps().size() - 1).result().value());
    // three digits are printed of each
    assertThat(psi * 0.0689476 / bar).isBetween(0.99, 1.01);
  }

  @ParameterizedTest
  @EnumSource(names = {"ISOTHERMAL", "ADIABATIC"})
  void a_choked_line_can_be_worked_out_in_us_units(PipeEquation equation) {
    Pencil.check(working(equation, MassFlow.ofKilogramsPerSecond(5.0), UnitSystem.US));
    Completeness.check(working(equation, MassFlow.ofKilogramsPerSecond(5.0), UnitSystem.US));
  }
}
