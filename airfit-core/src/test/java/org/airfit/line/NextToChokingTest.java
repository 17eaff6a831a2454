package org.airfit.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.airfit.air.AirState;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Temperature;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Lines just before they choke at pressures of which whole pascals are more digits than the flow tells. */
class NextToChokingTest {

  /** Isothermal flow chokes at p2 = G √(R T), of which the pressure of a flow so near differs by less than 1e-5. */
  @ParameterizedTest
  @CsvSource({
    "8, 1.0e-13",
    "24, 1.0e-12",
    "30, 1.0e-12",
    "60, 1.0e-12",
    "100, 1.0e-12",
    "60, 1.0e-13",
    "100, 0.0"
  })
  void the_working_of_a_line_next_to_choking_replays_at_high_pressures(double bar, double less) {
    Conduit tube = Conduit.of(
            Length.ofMillimetres(1.9254594),
            Length.ofMetres(4.8952643),
            Length.ofMillimetres(0.0015))
        .withFittings(3.0);
    AirState air = AirState.of(AbsolutePressure.ofBar(bar), Temperature.ofCelsius(20.0));
    for (PipeEquation equation :
        new PipeEquation[] {PipeEquation.ISOTHERMAL, PipeEquation.ADIABATIC}) {
      LossModel model = LossModels.of(equation, FrictionLaw.COLEBROOK);
      double most = model
          .element(tube)
          .largest(air.pressure().pascals(), 293.15, air.viscosity().pascalSeconds());
      double flow = most * (1.0 - less);
      LineLoss loss = model.loss(tube, MassFlow.ofKilogramsPerSecond(flow), air);
      assertThat(loss).isInstanceOf(LineLoss.Flowing.class);
      LineLoss.Flowing flowing = (LineLoss.Flowing) loss;
      double flux = flow / tube.area().squareMetres();
      double ratio = equation == PipeEquation.ISOTHERMAL ? 1.0 : AirState.HEAT_CAPACITY_RATIO;
      double kelvins = flowing.outlet().temperature().kelvins();
      double choking = flux * Math.sqrt(AirState.GAS_CONSTANT * kelvins / ratio);
      assertThat(flowing.outlet().pressure().pascals())
          .isCloseTo(choking, within(1.0e-5 * choking));
      for (UnitSystem units : UnitSystem.values()) {
        assertThat(flowing.working(units).toText()).contains("So near to choking");
      }
    }
  }

  /**
   * In US units g_c has ten digits, so that the pressure is called that of choking from farther on: an outlet slower by
   * e than at choking takes a flow less by about e²/2 (by hand, from 1 − e⁻ᵘ = a (k + u) at its double root).
   */
  @ParameterizedTest
  @CsvSource({"1.0e-13, true, true", "1.0e-9, false, true", "1.0e-4, false, false"})
  void a_working_in_us_units_gives_up_the_pressure_earlier(double less, boolean si, boolean us) {
    Conduit tube =
        Conduit.of(Length.ofMillimetres(9.5), Length.ofMetres(10.0), Length.ofMillimetres(0.01));
    AirState air = AirState.of(AbsolutePressure.ofBar(8.0), Temperature.ofCelsius(20.0));
    for (PipeEquation equation :
        new PipeEquation[] {PipeEquation.ISOTHERMAL, PipeEquation.ADIABATIC}) {
      LossModel model = LossModels.of(equation, FrictionLaw.COLEBROOK);
      double most = model
          .element(tube)
          .largest(air.pressure().pascals(), 293.15, air.viscosity().pascalSeconds());
      LineLoss loss = model.loss(tube, MassFlow.ofKilogramsPerSecond(most * (1.0 - less)), air);
      assertThat(loss.warnings()).singleElement().asString().contains("Mach");
      for (UnitSystem units : UnitSystem.values()) {
        String text = loss.working(units).toText();
        assertThat(text.contains("So near to choking the flow hardly tells the pressure"))
            .as("%s %s %s", equation, units, less)
            .isEqualTo(units == UnitSystem.SI ? si : us);
        assertThat(text).contains(loss.warnings(units).get(0));
      }
    }
  }
}
