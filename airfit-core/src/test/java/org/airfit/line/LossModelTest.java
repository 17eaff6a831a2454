package org.airfit.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.airfit.Comparison;
import org.airfit.Pencil;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.air.AirState;
import org.airfit.flow.FlowElement;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.DynamicViscosity;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Temperature;
import org.airfit.working.Completeness;
import org.airfit.working.Step;
import org.airfit.working.UnitSystem;
import org.airfit.working.Working;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class LossModelTest {

  private static final LossModel MODEL = LossModels.isothermal();
  private static final String CHAPTER = "Line: isothermal flow in a pipe";

  static Stream<Row> pipes() {
    return Rows.of(LossModelTest.class, "isothermal_pipe.csv");
  }

  static Stream<Row> inverses() {
    return Rows.of(LossModelTest.class, "isothermal_inverse.csv");
  }

  private static Conduit conduit(Row row) {
    return Conduit.of(
        Length.ofMillimetres(row.number("id_mm")),
        Length.ofMetres(row.number("length_m")),
        Length.ofMillimetres(row.number("roughness_mm")));
  }

  private static AirState inlet(Row row) {
    return AirState.of(
            AbsolutePressure.ofBar(row.number("p1_bar_abs")),
            Temperature.ofKelvins(row.number("t_k")))
        .withViscosity(DynamicViscosity.ofPascalSeconds(row.number("mu_pa_s")));
  }

  private static LineLoss loss(Row row) {
    return MODEL.loss(
        conduit(row), MassFlow.ofKilogramsPerSecond(row.number("mdot_kg_s")), inlet(row));
  }

  private static LineLoss.Flowing flowing(LineLoss loss) {
    assertThat(loss).isInstanceOf(LineLoss.Flowing.class);
    return (LineLoss.Flowing) loss;
  }

  private static LineLoss.Choked choked(LineLoss loss) {
    assertThat(loss).isInstanceOf(LineLoss.Choked.class);
    return (LineLoss.Choked) loss;
  }

  private static void compare(
      Row row, String column, String unit, double ours, double fraction, String why) {
    Comparison.of(CHAPTER, row + ", " + column, row.number(column), unit, row.evidence(column))
        .isMetWithinFraction(ours, fraction, why);
  }

  @ParameterizedTest
  @MethodSource("pipes")
  void every_pipe_of_the_table_agrees_or_is_refused(Row row) {
    if (row.text("status").equals("choked")) {
      LineLoss.Choked refused = choked(loss(row));
      compare(
          row,
          "mdot_choke_kg_s",
          "kg/s",
          refused.largest().kilogramsPerSecond(),
          1.0e-12,
          "15 digits printed, one condition number of 10²");
      compare(
          row,
          "p2_at_choke_bar_abs",
          "bar(a)",
          refused.chokingPressure().bar(),
          1.0e-12,
          "15 digits printed, one condition number of 10²");
      return;
    }
    LineLoss.Flowing flowing = flowing(loss(row));
    String digits = "the table's own advice: 1e-9 of p2, 1e-7 where Mach 0.7 is passed";
    double near = row.number("mach_2") > 0.7 ? 1.0e-7 : 1.0e-9;
    compare(row, "re", "-", flowing.reynolds(), 1.0e-13, "15 digits printed");
    compare(
        row,
        "f_darcy",
        "-",
        flowing.friction().orElseThrow().darcy(),
        1.0e-13,
        "15 digits printed");
    compare(row, "mach_1", "-", flowing.inletMach(), 1.0e-13, "15 digits printed");
    compare(row, "p2_bar_abs", "bar(a)", flowing.outlet().pressure().bar(), near, digits);
    compare(row, "mach_2", "-", flowing.outletMach(), near, digits);
    compare(
        row,
        "dp_bar",
        "bar",
        flowing.drop().bar(),
        Math.max(near, 1.0e-9),
        "as for p2: the drop is not found by subtraction, so it keeps its digits");
  }

  @ParameterizedTest
  @MethodSource("pipes")
  void a_flow_just_below_the_largest_passes_and_just_above_is_refused(Row row) {
    double largest = row.number("mdot_choke_kg_s");
    assertThat(MODEL.loss(
            conduit(row), MassFlow.ofKilogramsPerSecond(largest * (1.0 - 1.0e-9)), inlet(row)))
        .isInstanceOf(LineLoss.Flowing.class);
    assertThat(MODEL.loss(
            conduit(row), MassFlow.ofKilogramsPerSecond(largest * (1.0 + 1.0e-9)), inlet(row)))
        .isInstanceOf(LineLoss.Choked.class);
  }

  @ParameterizedTest
  @MethodSource("inverses")
  void solved_flows_bores_and_lengths_give_back_the_pressure_they_were_solved_for(Row row) {
    LineLoss.Flowing flowing = flowing(loss(row));
    Comparison.of(
            "Line: isothermal flow, solved backwards",
            row + ", p2_bar_abs",
            row.number("p2_bar_abs"),
            "bar(a)",
            row.evidence("p2_bar_abs"))
        .isMetWithinFraction(
            flowing.outlet().pressure().bar(), 1.0e-12, "15 digits of the solved input printed");
  }

  @Test
  void nothing_flowing_loses_nothing() {
    Row row = pipes().findFirst().orElseThrow();
    LineLoss.Flowing still =
        flowing(MODEL.loss(conduit(row), MassFlow.ofKilogramsPerSecond(0.0), inlet(row)));
    assertThat(still.outlet()).isEqualTo(inlet(row));
    assertThat(still.drop().pascals()).isZero();
    assertThat(still.reynolds()).isZero();
    assertThat(still.friction()).isEmpty();
    assertThat(still.inletMach()).isZero();
    assertThat(still.outletMach()).isZero();
    assertThat(still.warnings()).isEmpty();
    assertThat(still.working().toText()).contains("Nothing flows");
  }

  @Test
  void fittings_count_like_length() {
    Row row = pipes().findFirst().orElseThrow();
    MassFlow flow = MassFlow.ofKilogramsPerSecond(row.number("mdot_kg_s"));
    LineLoss.Flowing plain = flowing(MODEL.loss(conduit(row), flow, inlet(row)));
    double k = 7.0;
    double more =
        k * conduit(row).bore().metres() / plain.friction().orElseThrow().darcy();
    double longer = flowing(MODEL.loss(
            conduit(row).withLength(Length.ofMetres(row.number("length_m") + more)),
            flow,
            inlet(row)))
        .drop()
        .pascals();
    double fitted = flowing(MODEL.loss(conduit(row).withFittings(k), flow, inlet(row)))
        .drop()
        .pascals();
    assertThat(fitted).isCloseTo(longer, within(1.0e-10 * longer));
  }

  @Test
  void the_unsettled_band_and_high_speed_are_warned_of() {
    AirState air = AirState.of(AbsolutePressure.ofBar(7.0), Temperature.ofCelsius(20.0));
    Conduit tube =
        Conduit.of(Length.ofMillimetres(6.0), Length.ofMetres(2.0), Length.ofMillimetres(0.0015));
    double perRe = Math.PI * 0.006 * air.viscosity().pascalSeconds() / 4.0;
    assertThat(flowing(MODEL.loss(tube, MassFlow.ofKilogramsPerSecond(3000 * perRe), air))
            .warnings())
        .singleElement()
        .asString()
        .contains("2300", "4000");
    assertThat(flowing(MODEL.loss(tube, MassFlow.ofKilogramsPerSecond(2000 * perRe), air))
            .warnings())
        .isEmpty();
    LineLoss.Choked past = choked(MODEL.loss(tube, MassFlow.ofKilogramsPerSecond(1.0), air));
    LineLoss.Flowing fast = flowing(MODEL.loss(
        tube, MassFlow.ofKilogramsPerSecond(0.999 * past.largest().kilogramsPerSecond()), air));
    assertThat(fast.warnings()).singleElement().asString().contains("Mach");
  }

  @Test
  void the_model_tells_what_it_is_and_where_it_stands() {
    assertThat(MODEL.title()).contains("isothermal");
    assertThat(MODEL.validity()).contains("0.845");
    assertThat(MODEL.source().citation()).isNotBlank();
  }

  @Test
  void both_results_fold_and_show_their_working() {
    Row row = pipes().findFirst().orElseThrow();
    assertThat(loss(row).<String>fold(flowing -> "flows", choked -> "chokes")).isEqualTo("flows");
    LineLoss past = MODEL.loss(conduit(row), MassFlow.ofKilogramsPerSecond(1.0), inlet(row));
    assertThat(past.<String>fold(flowing -> "flows", choked -> "chokes")).isEqualTo("chokes");
    assertThat(past.working().toText()).contains("chokes", "√");
  }

  @Test
  void choking_through_the_bore_alone_is_refused_like_choking_through_length() {
    AirState air = AirState.of(AbsolutePressure.ofBar(2.0), Temperature.ofCelsius(20.0));
    Conduit stub =
        Conduit.of(Length.ofMillimetres(10.0), Length.ofMetres(0.0), Length.ofMillimetres(0.0));
    LineLoss.Choked past = choked(MODEL.loss(stub, MassFlow.ofKilogramsPerSecond(0.06), air));
    double nozzle = stub.area().squareMetres()
        * 2.0e5
        / Math.sqrt(AirState.GAS_CONSTANT * air.temperature().kelvins());
    assertThat(past.largest().kilogramsPerSecond())
        .as(
            "without friction a = 1 at choking: ṁ = A p1 / √(R T); k grows as (1 − a)²/2 there, so half the digits "
                + "are left")
        .isCloseTo(nozzle, within(1.0e-7 * nozzle));
  }

  @ParameterizedTest
  @MethodSource("pipes")
  void the_printed_numbers_give_the_printed_answer(Row row) {
    Pencil.check(loss(row));
    Completeness.check(loss(row));
  }

  @Test
  void a_loss_of_next_to_nothing_still_shows_its_digits() {
    AirState air = AirState.of(AbsolutePressure.ofPsi(104.7), Temperature.ofCelsius(20.0));
    Conduit wide =
        Conduit.of(Length.ofMillimetres(50.0), Length.ofMetres(2.0), Length.ofMillimetres(0.05));
    Pencil.check(MODEL.loss(wide, MassFlow.ofKilogramsPerSecond(0.0005), air));
    Completeness.check(MODEL.loss(wide, MassFlow.ofKilogramsPerSecond(0.0005), air));
    Pencil.check(MODEL.loss(wide, MassFlow.ofKilogramsPerSecond(0.005), air));
    Completeness.check(MODEL.loss(wide, MassFlow.ofKilogramsPerSecond(0.005), air));
  }

  /** What is lost is a difference of the two pressures: three of its digits must be left in those printed. */
  @ParameterizedTest
  @ValueSource(doubles = {1.0e-7, 3.0e-5, 1.0e-3, 0.02, 0.5})
  void the_printed_pressures_keep_three_digits_of_their_difference(double share) {
    AirState air = AirState.of(AbsolutePressure.ofPascals(8.0e5), Temperature.ofCelsius(20.0));
    Conduit hose =
        Conduit.of(Length.ofMillimetres(9.5), Length.ofMetres(10.0), Length.ofMillimetres(0.01));
    LineSolution found =
        MODEL.flowFor(hose, air, AbsolutePressure.ofPascals(8.0e5 * (1.0 - share)));
    Step outlet = found.working(UnitSystem.SI).steps().stream()
        .filter(step -> step.what().equals("Pressure at the outlet"))
        .findFirst()
        .orElseThrow();
    double p1 = outlet.given().stream()
        .filter(term -> term.symbol().equals("p1"))
        .mapToDouble(term -> Double.parseDouble(term.value()))
        .findFirst()
        .orElseThrow();
    double drop = found.loss().drop().pascals();
    assertThat(p1 - Double.parseDouble(outlet.result().value()))
        .isCloseTo(drop, within(1.0e-3 * drop));
    Pencil.check(found);
  }

  /** Down to the smallest number there is: squares and Reynolds numbers of such flows leave the range of a double. */
  @Test
  void a_flow_below_what_a_double_can_square_loses_nothing_in_every_model() {
    List<LossModel> models = new ArrayList<>(List.of(LineFormula.values()));
    for (FrictionLaw law : FrictionLaw.values()) {
      models.add(LossModels.fromReservoir(law));
      for (PipeEquation equation : PipeEquation.values()) {
        models.add(LossModels.of(equation, law));
      }
    }
    AirState air = AirState.of(AbsolutePressure.ofBar(7.0), Temperature.ofCelsius(20.0));
    Conduit hose = Conduit.of(
            Length.ofMillimetres(9.0), Length.ofMetres(10.0), Length.ofMillimetres(0.01))
        .withFittings(2.0);
    double[] flows = {Double.MIN_VALUE, 1.0e-310, 1.0e-200, 1.0e-101, 1.0e-99, 1.0e-50};
    for (LossModel model : models) {
      FlowElement element = model.element(hose);
      for (double flow : flows) {
        MassFlow massFlow = MassFlow.ofKilogramsPerSecond(flow);
        LineLoss.Flowing loss = (LineLoss.Flowing) model.loss(hose, massFlow, air);
        assertThat(loss.massFlow()).isEqualTo(massFlow);
        assertThat(loss.drop().pascals()).isBetween(0.0, 1.0e-30);
        assertThat(loss.toString() + loss.working().toText()).doesNotContain("NaN", "Infinity");
        assertThat(element.outlet(flow, 7.0e5, 293.15, 1.8e-5)).isEqualTo(7.0e5);
        assertThat(element.outletKelvins(flow, 7.0e5, 293.15, 1.8e-5)).isEqualTo(293.15);
        assertThat(element.slope(flow, 7.0e5, 293.15, 1.8e-5)).isFinite().isNotPositive();
      }
    }
  }

  /** A length and a ΣK of 0 lose nothing at any flow, and 0 times the square of such a flow is no number. */
  @Test
  void a_flow_beyond_any_line_passes_nowhere() {
    Conduit none = Conduit.of(Length.ofMetres(0.003), Length.ofMetres(0.0), Length.ofMetres(0.0));
    Conduit some = none.withLength(Length.ofMillimetres(0.2));
    AirState air = AirState.of(AbsolutePressure.ofBar(8.0), Temperature.ofCelsius(20.0));
    for (LossModel model : LossModels.all()) {
      for (Conduit conduit : List.of(none, some, none.withFittings(3.0))) {
        for (double flow :
            new double[] {1.0e90, Math.nextUp(1.0e90), 1.0e154, 1.0e204, 1.0e228, 1.0e308}) {
          LineLoss loss = model.loss(conduit, MassFlow.ofKilogramsPerSecond(flow), air);
          if (flow > 1.0e90 || !conduit.equals(none)) {
            assertThat(loss).as("%s, %s", model, flow).isInstanceOf(LineLoss.Choked.class);
          }
          loss.fold(
              flowing -> assertThat(flowing.drop().pascals()).isZero(),
              choked ->
                  assertThat(choked.largest().kilogramsPerSecond()).isLessThanOrEqualTo(1.0e90));
          for (UnitSystem units : UnitSystem.values()) {
            assertThat(loss.working(units).toText())
                .doesNotContain("NaN")
                .doesNotContain("Infinity");
          }
          assertThat(model.element(conduit).outlet(flow, 8.0e5, 293.15, 1.8e-5))
              .satisfies(
                  pascals -> assertThat(flow > 1.0e90 && !Double.isNaN(pascals)).isFalse());
        }
      }
    }
    LineLoss loss = LineFormula.HARRIS.loss(none, MassFlow.ofKilogramsPerSecond(1.0e204), air);
    assertThat(loss.working().toText())
        .contains("A flow above 1 × 10⁹⁰ kg/s passes nowhere. This formula does not know choking");
  }

  /** Near a vacuum behind it p2 is the root of a small difference; what is printed must give it again all the same. */
  @Test
  void a_working_replays_however_little_is_left_at_the_outlet() {
    Conduit hose =
        Conduit.of(Length.ofMillimetres(9.5), Length.ofMetres(10.0), Length.ofMillimetres(0.01));
    AirState air = AirState.of(AbsolutePressure.ofBar(8.0), Temperature.ofCelsius(20.0));
    for (LossModel model : LossModels.all()) {
      for (double share = 1.0e-6; share < 1.0; share *= 1.7) {
        LineSolution found = model.flowFor(
            hose, air, AbsolutePressure.ofPascals(share * air.pressure().pascals()));
        for (UnitSystem units : UnitSystem.values()) {
          Working working = found.working(units);
          if (!working.steps().isEmpty()) {
            Pencil.check(working);
          }
        }
      }
    }
  }
}
