package org.airfit.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.Stream;
import org.airfit.Comparison;
import org.airfit.Pencil;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.air.AirState;
import org.airfit.flow.FannoFlow;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.DynamicViscosity;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Temperature;
import org.airfit.working.Completeness;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class AdiabaticTest {

  private static final String CHAPTER = "Line: adiabatic flow in a pipe";
  private static final LossModel MODEL =
      LossModels.of(PipeEquation.ADIABATIC, FrictionLaw.COLEBROOK);

  static Stream<Row> pipes() {
    return Rows.of(AdiabaticTest.class, "adiabatic_pipe.csv");
  }

  private static Conduit conduit(Row row) {
    return Conduit.of(
        Length.ofMillimetres(row.number("id_mm")),
        Length.ofMetres(row.number("length_m")),
        Length.ofMillimetres(row.number("roughness_mm")));
  }

  private static AirState inlet(Row row) {
    return AirState.of(
            AbsolutePressure.ofBar(row.number("p1_static_bar_abs")),
            Temperature.ofKelvins(row.number("t1_static_k")))
        .withViscosity(DynamicViscosity.ofPascalSeconds(row.number("mu_pa_s")));
  }

  private static void compare(
      Row row, String column, String unit, double ours, double fraction, String why) {
    Comparison.of(CHAPTER, row + ", " + column, row.number(column), unit, row.evidence(column))
        .isMetWithinFraction(ours, fraction, why);
  }

  @ParameterizedTest
  @MethodSource("pipes")
  void every_pipe_of_the_table_agrees_or_is_refused(Row row) {
    LineLoss loss = MODEL.loss(
        conduit(row), MassFlow.ofKilogramsPerSecond(row.number("mdot_kg_s")), inlet(row));
    if (row.text("status").equals("choked")) {
      assertThat(loss).isInstanceOf(LineLoss.Choked.class);
      compare(
          row,
          "mdot_choke_kg_s",
          "kg/s",
          ((LineLoss.Choked) loss).largest().kilogramsPerSecond(),
          1.0e-12,
          "15 digits printed, one condition number of 10²");
      Pencil.check(loss);
      Completeness.check(loss);
      return;
    }
    LineLoss.Flowing flowing = (LineLoss.Flowing) loss;
    double near = row.number("mach_2") > 0.7 ? 1.0e-7 : 1.0e-9;
    String advice = "the table's own advice: 1e-9 of p2, 1e-7 where Mach 0.7 is passed";
    compare(row, "re", "-", flowing.reynolds(), 1.0e-13, "15 digits printed");
    compare(
        row,
        "f_darcy",
        "-",
        flowing.friction().orElseThrow().darcy(),
        1.0e-13,
        "15 digits printed");
    compare(row, "mach_1", "-", flowing.inletMach(), 1.0e-13, "15 digits printed");
    compare(row, "mach_2", "-", flowing.outletMach(), near, advice);
    compare(row, "p2_bar_abs", "bar(a)", flowing.outlet().pressure().bar(), near, advice);
    compare(row, "t2_k", "K", flowing.outlet().temperature().kelvins(), near, advice);
    compare(row, "v2_m_s", "m/s", flowing.outletVelocity().metresPerSecond(), near, advice);
    Comparison.of(
            CHAPTER,
            row + ", drop",
            row.number("p1_static_bar_abs") - row.number("p2_bar_abs"),
            "bar",
            row.evidence("p2_bar_abs"))
        .isMetBy(
            flowing.drop().bar(),
            near * row.number("p2_bar_abs"),
            "as for p2, of which it is the difference");
    Pencil.check(loss);
    Completeness.check(loss);
  }

  @ParameterizedTest
  @MethodSource("pipes")
  void a_flow_just_below_the_largest_passes_and_just_above_is_refused(Row row) {
    double largest = row.number("mdot_choke_kg_s");
    assertThat(MODEL.loss(
            conduit(row), MassFlow.ofKilogramsPerSecond(largest * (1.0 - 1.0e-9)), inlet(row)))
        .isInstanceOf(LineLoss.Flowing.class);
    LineLoss past = MODEL.loss(
        conduit(row), MassFlow.ofKilogramsPerSecond(largest * (1.0 + 1.0e-9)), inlet(row));
    assertThat(past).isInstanceOf(LineLoss.Choked.class);
    // where it chokes the outlet is at Mach 1: p* from the inlet's Mach number
    LineLoss.Choked choked = (LineLoss.Choked) past;
    double m1 = largest
        / conduit(row).area().squareMetres()
        / inlet(row).density().kilogramsPerCubicMetre()
        / inlet(row).speedOfSound().metresPerSecond();
    double p1 = inlet(row).pressure().bar();
    assertThat(choked.chokingPressure().bar())
        .isCloseTo(p1 / FannoFlow.atMach(m1).pressureRatio(), within(1.0e-9 * p1));
  }

  @Test
  void a_bore_without_length_or_fittings_chokes_at_mach_1_of_its_inlet() {
    AirState air = AirState.of(AbsolutePressure.ofBar(2.0), Temperature.ofCelsius(20.0));
    Conduit stub =
        Conduit.of(Length.ofMillimetres(10.0), Length.ofMetres(0.0), Length.ofMillimetres(0.0));
    double sonic = stub.area().squareMetres()
        * air.density().kilogramsPerCubicMetre()
        * air.speedOfSound().metresPerSecond();
    LineLoss loss = MODEL.loss(stub, MassFlow.ofKilogramsPerSecond(1.2 * sonic), air);
    assertThat(loss).isInstanceOf(LineLoss.Choked.class);
    assertThat(((LineLoss.Choked) loss).largest().kilogramsPerSecond())
        .isCloseTo(sonic, within(1.0e-7 * sonic));
  }

  @Test
  void a_breath_of_air_loses_what_the_isothermal_model_says() {
    AirState air = AirState.of(AbsolutePressure.ofBar(7.0), Temperature.ofCelsius(20.0));
    Conduit hose =
        Conduit.of(Length.ofMillimetres(10.0), Length.ofMetres(10.0), Length.ofMillimetres(0.01));
    for (double flow : new double[] {1.0e-12, 1.0e-9, 1.0e-6, 1.0e-5}) {
      MassFlow breath = MassFlow.ofKilogramsPerSecond(flow);
      double one = ((LineLoss.Flowing) MODEL.loss(hose, breath, air)).drop().pascals();
      double other = ((LineLoss.Flowing) LossModels.isothermal().loss(hose, breath, air))
          .drop()
          .pascals();
      assertThat(one).isGreaterThan(0.0).isCloseTo(other, within(1.0e-5 * other));
    }
  }

  /** What is lost is some 10⁸⁷ dynamic pressures, each 10⁻²⁵⁵ of the pressure: the products leave the range of a double. */
  @Test
  void a_trickle_at_an_absurd_pressure_loses_next_to_nothing() {
    AirState air = AirState.of(AbsolutePressure.ofBar(6.375e22), Temperature.ofCelsius(-17.66));
    Conduit gate =
        Conduit.of(Length.ofMetres(13738.7), Length.ofMetres(0.0009), Length.ofMetres(0.0));
    MassFlow trickle = MassFlow.ofKilogramsPerSecond(1.3e-94);
    LineLoss loss = MODEL.loss(gate, trickle, air);
    assertThat(((LineLoss.Flowing) loss).outlet().pressure()).isEqualTo(air.pressure());
  }
}
