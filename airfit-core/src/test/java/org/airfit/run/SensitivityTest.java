package org.airfit.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.line.Conduit;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.junit.jupiter.api.Test;

class SensitivityTest {

  private static final AbsolutePressure ATMOSPHERE = AbsolutePressure.ofBar(1.0);
  private static final AirState EIGHT =
      AirState.of(AbsolutePressure.ofBar(8.0), Temperature.ofCelsius(20.0));

  private static FlowCapacity part(double c, double b) {
    return FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(c), b);
  }

  private static Conduit hose(double boreMm, double roughnessMm) {
    return Conduit.of(
        Length.ofMillimetres(boreMm), Length.ofMetres(10.0), Length.ofMillimetres(roughnessMm));
  }

  private static Run run() {
    return Run.from(EIGHT, ATMOSPHERE);
  }

  private static MassFlow kg(double kilogramsPerSecond) {
    return MassFlow.ofKilogramsPerSecond(kilogramsPerSecond);
  }

  private static double of(List<Sensitivity> all, String element, Sensitivity.Input input) {
    return all.stream()
        .filter(one -> one.element().equals(element) && one.input() == input)
        .findFirst()
        .orElseThrow()
        .elasticity();
  }

  /**
   * Hagen and Poiseuille: Δp = 128 μ L ṁ/(π ρ d⁴). The tolerance is the drop over the pressure, by which the gas law
   * bends it.
   */
  @Test
  void laminar_flow_has_the_powers_of_its_law() {
    List<Sensitivity> all = run().through("hose", hose(9.5, 0.01)).sensitivities(kg(0.0002));
    assertThat(of(all, "hose", Sensitivity.Input.BORE)).isCloseTo(-4.0, within(0.002));
    assertThat(of(all, "hose", Sensitivity.Input.LENGTH)).isCloseTo(1.0, within(0.001));
    assertThat(of(all, "the run", Sensitivity.Input.FLOW)).isCloseTo(1.0, within(0.002));
    assertThat(of(all, "the run", Sensitivity.Input.SUPPLY_PRESSURE))
        .isCloseTo(-1.0, within(0.001));
    assertThat(of(all, "hose", Sensitivity.Input.ROUGHNESS)).isCloseTo(0.0, within(1.0e-9));
    assertThat(all.get(0).input()).isEqualTo(Sensitivity.Input.BORE);
    assertThat(all.get(0).toString())
        .startsWith("bore of hose: 1 % more changes the loss by -")
        .endsWith(" %");
  }

  /**
   * Far from choking ISO 6358 gives Δp = p1 (1 − b)/2 (ṁ/ṁ*)² with ṁ* in proportion to C and p1; b = 0.25 has −b/(1−b).
   */
  @Test
  void a_part_far_from_choking_has_the_powers_of_its_law() {
    List<Sensitivity> all = run().through("coupler", part(6.0, 0.25)).sensitivities(kg(0.0005));
    assertThat(of(all, "coupler", Sensitivity.Input.CONDUCTANCE)).isCloseTo(-2.0, within(0.001));
    assertThat(of(all, "coupler", Sensitivity.Input.CRITICAL_PRESSURE_RATIO))
        .isCloseTo(-1.0 / 3.0, within(0.001));
    assertThat(of(all, "the run", Sensitivity.Input.FLOW)).isCloseTo(2.0, within(0.001));
    assertThat(of(all, "the run", Sensitivity.Input.SUPPLY_PRESSURE))
        .isCloseTo(-1.0, within(0.001));
  }

  /**
   * λL/D and ΣK add up: what the length and the fittings take together is the whole, but for the speeding up of the
   * air.
   */
  @Test
  void length_and_fittings_share_the_loss_of_a_line() {
    List<Sensitivity> all =
        run().through("hose", hose(9.5, 0.01).withFittings(12.0)).sensitivities(kg(0.004));
    assertThat(
            of(all, "hose", Sensitivity.Input.LENGTH) + of(all, "hose", Sensitivity.Input.FITTINGS))
        .isCloseTo(1.0, within(0.01));
    assertThat(of(all, "hose", Sensitivity.Input.FITTINGS)).isGreaterThan(0.1);
  }

  @Test
  void what_cannot_be_varied_is_left_out() {
    List<Sensitivity> rough = run().through("hose", hose(10.0, 0.5)).sensitivities(kg(0.002));
    assertThat(rough)
        .extracting(Sensitivity::input)
        .doesNotContain(Sensitivity.Input.ROUGHNESS, Sensitivity.Input.BORE)
        .contains(Sensitivity.Input.LENGTH);
    List<Sensitivity> open = run().through("part", part(6.0, 0.9995)).sensitivities(kg(0.002));
    assertThat(open)
        .extracting(Sensitivity::input)
        .doesNotContain(Sensitivity.Input.CRITICAL_PRESSURE_RATIO)
        .contains(Sensitivity.Input.CONDUCTANCE);
  }

  /** At Re 2300 friction jumps by two thirds: 1 % more flow is no small step there. */
  @Test
  void at_the_jump_of_friction_the_inputs_that_cross_it_are_left_out() {
    double jump = 0.25 * 2300.0 * Math.PI * 0.0095 * EIGHT.viscosity().pascalSeconds();
    List<Sensitivity> all =
        run().through("hose", hose(9.5, 0.01)).sensitivities(kg(jump * 0.99995));
    assertThat(all)
        .extracting(Sensitivity::input)
        .doesNotContain(Sensitivity.Input.FLOW, Sensitivity.Input.BORE)
        .contains(Sensitivity.Input.LENGTH);
  }

  @Test
  void a_flow_that_does_not_arrive_has_none_and_no_flow_is_refused() {
    Run run = run().through("coupler", part(2.0, 0.3));
    assertThat(run.sensitivities(kg(0.1))).isEmpty();
    assertThatIllegalArgumentException()
        .isThrownBy(() -> run.sensitivities(kg(0.0)))
        .withMessage("flow must be above 0 kg/s to have a loss, was 0 kg/s");
    assertThat(Sensitivity.Input.SUPPLY_PRESSURE.words()).isEqualTo("supply pressure");
  }
}
