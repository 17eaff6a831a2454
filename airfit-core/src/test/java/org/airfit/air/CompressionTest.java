package org.airfit.air;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.airfit.Pencil;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Temperature;
import org.airfit.working.Completeness;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CompressionTest {

  private static final AirState INTAKE =
      AirState.of(AbsolutePressure.ofBar(1.0), Temperature.ofCelsius(20.0));
  private static final AbsolutePressure EIGHT = AbsolutePressure.ofBar(8.0);

  @Test
  void isothermal_work_is_the_least_and_more_stages_come_down_to_it() {
    double isothermal = Compression.isothermal(INTAKE, EIGHT).joulesPerKilogram();
    double above = Double.POSITIVE_INFINITY;
    for (int stages = 1; stages <= 10; stages++) {
      double staged = Compression.staged(INTAKE, EIGHT, stages).joulesPerKilogram();
      assertThat(staged).isBetween(isothermal, above);
      above = staged;
    }
    assertThat(above).isCloseTo(isothermal, within(0.031 * isothermal));
  }

  /** By hand: R T ln 8 = 287.05287 × 293.15 × 2.0794415 = 174984 J/kg. */
  @Test
  void one_temperature_takes_the_logarithm_of_the_ratio() {
    assertThat(Compression.isothermal(INTAKE, EIGHT).joulesPerKilogram())
        .isCloseTo(174984.0, within(1.0));
  }

  /** The work of one stage is cp (T2 − T1) with T2 = T1 r^(2/7). */
  @Test
  void one_stage_without_heat_takes_what_warms_the_air() {
    double cp = 3.5 * AirState.GAS_CONSTANT;
    double t2 = 293.15 * Math.pow(8.0, 2.0 / 7.0);
    assertThat(Compression.adiabatic(INTAKE, EIGHT).joulesPerKilogram())
        .isCloseTo(cp * (t2 - 293.15), within(1.0e-6));
  }

  @Test
  void two_stages_are_twice_one_of_the_root_of_the_ratio() {
    AbsolutePressure middle = AbsolutePressure.ofBar(Math.sqrt(8.0));
    assertThat(Compression.staged(INTAKE, EIGHT, 2).joulesPerKilogram())
        .isCloseTo(2.0 * Compression.adiabatic(INTAKE, middle).joulesPerKilogram(), within(1.0e-8));
  }

  @Test
  void power_is_work_times_flow() {
    Compression compression = Compression.adiabatic(INTAKE, EIGHT);
    assertThat(compression.power(MassFlow.ofKilogramsPerSecond(0.1)).watts())
        .isCloseTo(0.1 * compression.joulesPerKilogram(), within(1.0e-9));
    assertThat(compression
            .to(INTAKE.pressure())
            .power(MassFlow.ofKilogramsPerSecond(1.0))
            .watts())
        .isZero();
  }

  @ParameterizedTest
  @ValueSource(doubles = {1.0, 1.0001, 2.0, 8.0, 40.0})
  void the_printed_numbers_give_the_printed_work(double bar) {
    AbsolutePressure to = AbsolutePressure.ofBar(bar);
    Pencil.check(Compression.isothermal(INTAKE, to));
    Pencil.check(Compression.adiabatic(INTAKE, to));
    Pencil.check(Compression.staged(INTAKE, to, 3));
    Completeness.check(Compression.isothermal(INTAKE, to));
    Completeness.check(Compression.staged(INTAKE, to, 3));
  }

  @Test
  void a_pressure_below_the_intake_or_a_strange_number_of_stages_is_refused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Compression.adiabatic(INTAKE, AbsolutePressure.ofBar(0.99)))
        .withMessage(
            "discharge pressure must be at least that of the intake, 100000.0 Pa(a), was 99000.0 Pa(a)");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Compression.staged(INTAKE, EIGHT, 0))
        .withMessage("stages must be in [1, 10], was 0");
    assertThatIllegalArgumentException().isThrownBy(() -> Compression.staged(INTAKE, EIGHT, 11));
  }

  @Test
  void it_tells_what_it_is() {
    Compression two = Compression.staged(INTAKE, EIGHT, 2);
    assertThat(two).hasToString("adiabatic compression in 2 stages from 1 bar(a) to 8 bar(a)");
    assertThat(Compression.adiabatic(INTAKE, EIGHT).toString())
        .startsWith("adiabatic compression from");
    assertThat(Compression.isothermal(INTAKE, EIGHT).toString()).startsWith("isothermal");
    assertThat(two.intake()).isEqualTo(INTAKE);
    assertThat(two.discharge()).isEqualTo(EIGHT);
    assertThat(two.stages()).isEqualTo(2);
    assertThat(two)
        .isEqualTo(Compression.staged(INTAKE, EIGHT, 2))
        .hasSameHashCodeAs(Compression.staged(INTAKE, EIGHT, 2))
        .isNotEqualTo(Compression.staged(INTAKE, EIGHT, 3))
        .isNotEqualTo(two.to(AbsolutePressure.ofBar(9.0)))
        .isNotEqualTo(Compression.staged(INTAKE.at(AbsolutePressure.ofBar(0.9)), EIGHT, 2))
        .isNotEqualTo("two");
  }
}
