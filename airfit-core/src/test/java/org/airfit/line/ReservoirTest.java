package org.airfit.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.Stream;
import org.airfit.Comparison;
import org.airfit.Pencil;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.air.AirState;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Temperature;
import org.airfit.working.Completeness;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class ReservoirTest {

  private static final String CHAPTER = "Line: adiabatic flow from a reservoir";
  private static final LossModel MODEL = LossModels.fromReservoir(FrictionLaw.COLEBROOK);
  private static final AirState TANK =
      AirState.of(AbsolutePressure.ofBar(7.0), Temperature.ofCelsius(20.0));

  static Stream<Row> tanks() {
    return Rows.of(ReservoirTest.class, "adiabatic_reservoir.csv");
  }

  /** The table gives λ: the pipe is told as a fitting of K = λL/D, which the equation cannot tell from it. */
  private static Conduit conduit(Row row) {
    return Conduit.of(
            Length.ofMillimetres(row.number("id_mm")), Length.ofMetres(0.0), Length.ofMetres(0.0))
        .withFittings(row.number("f_darcy") * row.number("length_m") / row.number("id_mm") * 1.0e3);
  }

  private static AirState tank(Row row) {
    return AirState.of(
        AbsolutePressure.ofBar(row.number("p0_bar_abs")),
        Temperature.ofKelvins(row.number("t0_k")));
  }

  private static void compare(Row row, String column, String unit, double ours) {
    double near = row.number("mach_2") > 0.7 ? 1.0e-7 : 1.0e-9;
    Comparison.of(CHAPTER, row + ", " + column, row.number(column), unit, row.evidence(column))
        .isMetWithinFraction(
            ours, near, "the table's own advice: 1e-9, 1e-7 where Mach 0.7 is passed");
  }

  @ParameterizedTest
  @MethodSource("tanks")
  void the_flow_into_a_back_pressure_agrees(Row row) {
    MassFlow flow = MODEL
        .flowFor(conduit(row), tank(row), AbsolutePressure.ofBar(row.number("p_back_bar_abs")))
        .massFlow();
    compare(row, "mdot_kg_s", "kg/s", flow.kilogramsPerSecond());
    LineLoss.Choked choked =
        (LineLoss.Choked) MODEL.loss(conduit(row), MassFlow.ofKilogramsPerSecond(10.0), tank(row));
    Comparison.of(
            CHAPTER,
            row + ", p_back_at_choke",
            row.number("p_back_at_choke_bar_abs"),
            "bar(a)",
            row.evidence("p_back_at_choke_bar_abs"))
        .isMetWithinFraction(choked.chokingPressure().bar(), 1.0e-12, "15 digits printed");
    if (row.text("status").equals("choked")) {
      assertThat(flow.kilogramsPerSecond())
          .isCloseTo(choked.largest().kilogramsPerSecond(), within(1.0e-9));
    }
    Pencil.check(choked);
    Completeness.check(choked);
  }

  /** Colebrook's equation (1939), solved here by its own iteration. */
  private static double colebrook(double reynolds, double relativeRoughness) {
    double inverseRoot = 8.0;
    for (int i = 0; i < 60; i++) {
      inverseRoot = -2.0 * Math.log10(relativeRoughness / 3.7 + 2.51 / reynolds * inverseRoot);
    }
    return 1.0 / (inverseRoot * inverseRoot);
  }

  @Test
  void the_friction_told_is_that_of_the_flow_in_the_pipe() {
    double bore = 0.0127;
    double flow = 0.02;
    LineLoss.Flowing flowing = (LineLoss.Flowing) MODEL.loss(
        Conduit.of(Length.ofMetres(bore), Length.ofMetres(5.0), Length.ofMetres(0.0001)),
        MassFlow.ofKilogramsPerSecond(flow),
        TANK);
    double viscosity = flowing.inlet().viscosity().pascalSeconds();
    assertThat(flowing.friction().orElseThrow().darcy())
        .isCloseTo(
            colebrook(4.0 * flow / (Math.PI * bore * viscosity), 0.0001 / bore), within(1.0e-12));
  }

  @ParameterizedTest
  @MethodSource("tanks")
  void the_state_at_both_ends_agrees(Row row) {
    // a hair below the choking flow, which halving may not reach from below
    double flow = row.number("mdot_kg_s") * (row.text("status").equals("choked") ? 1 - 1e-15 : 1);
    LineLoss loss = MODEL.loss(conduit(row), MassFlow.ofKilogramsPerSecond(flow), tank(row));
    if (row.text("status").equals("choked") && loss instanceof LineLoss.Choked) {
      return; // equal to the largest flow within rounding: told above
    }
    LineLoss.Flowing flowing = (LineLoss.Flowing) loss;
    compare(row, "mach_1", "-", flowing.inletMach());
    if (row.text("status").equals("subsonic")) {
      compare(row, "mach_2", "-", flowing.outletMach());
      compare(row, "p_exit_bar_abs", "bar(a)", flowing.outlet().pressure().bar());
      compare(row, "t_exit_k", "K", flowing.outlet().temperature().kelvins());
      assertThat(flowing.drop().bar())
          .isCloseTo(row.number("p0_bar_abs") - row.number("p_exit_bar_abs"), within(1.0e-6));
      Pencil.check(flowing);
      Completeness.check(flowing);
    }
  }

  @Test
  void speeding_up_costs_nothing_in_a_slow_line() {
    Conduit pipe =
        Conduit.of(Length.ofMillimetres(26.64), Length.ofMetres(30.0), Length.ofMillimetres(0.045));
    for (double kilograms : new double[] {1.0e-9, 1.0e-4, 0.02}) {
      MassFlow flow = MassFlow.ofKilogramsPerSecond(kilograms);
      LineLoss.Flowing rest = (LineLoss.Flowing) MODEL.loss(pipe, flow, TANK);
      LineLoss.Flowing moving = (LineLoss.Flowing)
          LossModels.of(PipeEquation.ADIABATIC, FrictionLaw.COLEBROOK).loss(pipe, flow, TANK);
      double m1 = moving.inletMach();
      assertThat(rest.drop().pascals() - moving.drop().pascals())
          .isCloseTo(0.7 * m1 * m1 * 7.0e5, within(1.0e-3 * rest.drop().pascals() + 1e-9));
    }
    assertThat(((LineLoss.Flowing) MODEL.loss(pipe, MassFlow.ofKilogramsPerSecond(0.0), TANK))
            .drop()
            .pascals())
        .isZero();
    assertThat(
            MODEL.loss(pipe, MassFlow.ofKilogramsPerSecond(0.0), TANK).working().toText())
        .contains("Nothing flows");
  }

  /** Without friction the bore is a nozzle: ψ = 0.684731 (table of choking constants, γ = 1.4). */
  @Test
  void a_stub_without_friction_is_a_nozzle() {
    Conduit stub =
        Conduit.of(Length.ofMillimetres(10.0), Length.ofMetres(0.0), Length.ofMetres(0.0));
    LineLoss.Choked choked =
        (LineLoss.Choked) MODEL.loss(stub, MassFlow.ofKilogramsPerSecond(1.0), TANK);
    double nozzle =
        0.684731 * stub.area().squareMetres() * 7.0e5 / Math.sqrt(AirState.GAS_CONSTANT * 293.15);
    assertThat(choked.largest().kilogramsPerSecond()).isCloseTo(nozzle, within(1.0e-6 * nozzle));
    assertThat(MODEL.title()).startsWith("adiabatic flow from a reservoir");
    assertThat(LossModels.fromReservoir(FrictionLaw.HAALAND).title()).contains("friction after");
    assertThat(MODEL.validity()).contains("air at rest");
    assertThat(MODEL.bias()).contains("0.7 M1²");
    assertThat(MODEL.fitBasis()).contains("balances");
  }
}
