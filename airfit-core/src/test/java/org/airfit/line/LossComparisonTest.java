package org.airfit.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.Stream;
import org.airfit.Comparison;
import org.airfit.Pencil;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.air.AirState;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.DynamicViscosity;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Temperature;
import org.airfit.working.Completeness;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Models beside one another, and the problems turned round. */
class LossComparisonTest {

  private static final AirState AIR =
      AirState.of(AbsolutePressure.ofBar(8.0), Temperature.ofCelsius(20.0));
  private static final Conduit PIPE =
      Conduit.of(Length.ofMillimetres(26.64), Length.ofMetres(100.0), Length.ofMillimetres(0.045));
  private static final MassFlow FLOW = MassFlow.ofKilogramsPerSecond(0.0611333140323023);
  private static final MassFlow NONE = MassFlow.ofKilogramsPerSecond(0.0);

  static Stream<Row> pipes() {
    return Rows.of(LossComparisonTest.class, "isothermal_pipe.csv");
  }

  static Stream<Row> inverses() {
    return Rows.of(LossComparisonTest.class, "isothermal_inverse.csv");
  }

  static Stream<Row> schedule_40() {
    return Rows.of(LossComparisonTest.class, "air_flow_sch40_published.csv");
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

  private static LossModel model(PipeEquation equation) {
    return LossModels.of(equation, FrictionLaw.COLEBROOK);
  }

  @ParameterizedTest
  @MethodSource("pipes")
  void both_forms_of_darcy_agree_with_their_columns(Row row) {
    MassFlow flow = MassFlow.ofKilogramsPerSecond(row.number("mdot_kg_s"));
    if (row.has("p2_no_log_bar_abs")) {
      LineLoss mean = model(PipeEquation.DARCY_MEAN_DENSITY).loss(conduit(row), flow, inlet(row));
      assertThat(mean).isInstanceOf(LineLoss.Flowing.class);
      Comparison.of(
              "Line: Darcy-Weisbach",
              row + ", p2_no_log_bar_abs",
              row.number("p2_no_log_bar_abs"),
              "bar(a)",
              row.evidence("p2_no_log_bar_abs"))
          .isMetWithinFraction(
              ((LineLoss.Flowing) mean).outlet().pressure().bar(),
              1.0e-12,
              "15 digits printed, a difference of squares");
      Pencil.check(mean);
      Completeness.check(mean);
    }
    LineLoss inletDensity =
        model(PipeEquation.DARCY_INLET_DENSITY).loss(conduit(row), flow, inlet(row));
    if (inletDensity instanceof LineLoss.Flowing flowing
        && row.has("dp_incompressible_inlet_density_bar")) {
      Comparison.of(
              "Line: Darcy-Weisbach",
              row + ", dp_incompressible_inlet_density_bar",
              row.number("dp_incompressible_inlet_density_bar"),
              "bar",
              row.evidence("dp_incompressible_inlet_density_bar"))
          .isMetWithinFraction(flowing.drop().bar(), 1.0e-13, "15 digits printed");
      Pencil.check(flowing);
      Completeness.check(flowing);
    }
  }

  /**
   * 100 ft of schedule 40 pipe at 100 psig and 60 °F, with the roughness and viscosity the table was recomputed with.
   */
  private static double scheduleForty(Row row) {
    LineLoss loss = model(PipeEquation.DARCY_INLET_DENSITY)
        .loss(
            Conduit.of(
                Length.ofInches(row.number("id_in")),
                Length.ofFeet(100.0),
                Length.ofInches(0.0018)),
            FreeAirFlow.ofScfm60F(row.number("free_air_scfm")).massFlow(),
            AirState.of(AbsolutePressure.ofPsi(114.7), Temperature.ofFahrenheit(60.0))
                .withViscosity(DynamicViscosity.ofPascalSeconds(1.80e-5)));
    return loss.fold(flowing -> flowing.drop().psi(), choked -> Double.NaN);
  }

  @ParameterizedTest
  @MethodSource("schedule_40")
  void the_handbook_table_of_schedule_40_pipe_agrees(Row row) {
    if (row.text("note").contains("suspect")) {
      assertThat(Math.abs(scheduleForty(row) / row.number("published_dp_psi_per_100ft") - 1.0))
          .as("a misprint is found by its distance")
          .isGreaterThan(0.05);
      return;
    }
    boolean unexplained =
        row.text("nps").equals("3/8") && row.text("free_air_scfm").equals("8");
    if (unexplained) {
      // one cell lies a little beyond: no reason was found, so it is shown and not allowed for
      assertThat(scheduleForty(row) / row.number("published_dp_psi_per_100ft"))
          .isBetween(0.965, 0.970);
      return;
    }
    boolean twoDigits = row.text("note").contains("two digits");
    double allowed = twoDigits ? 0.06 : 0.03;
    Comparison.of(
            "Line: schedule 40 air table",
            row.text("nps") + " in, " + row.text("free_air_scfm") + " scfm",
            row.number("published_dp_psi_per_100ft"),
            "psi/100 ft",
            row.evidence("published_dp_psi_per_100ft"))
        .isMetWithinFraction(
            scheduleForty(row),
            allowed,
            twoDigits
                ? "6 % for cells of two digits, the advice of the reference notes"
                : "3 %, the advice of the reference notes: friction was read from a chart");
  }

  @Test
  void the_handbook_table_agrees_in_the_middle_within_one_percent() {
    List<Double> deviations = new ArrayList<>();
    schedule_40()
        .forEach(row -> deviations.add(
            Math.abs(scheduleForty(row) / row.number("published_dp_psi_per_100ft") - 1.0)));
    Collections.sort(deviations);
    assertThat(deviations.get(deviations.size() / 2)).isLessThan(0.01);
  }

  @ParameterizedTest
  @MethodSource("inverses")
  void flow_bore_and_length_are_found_from_the_pressure(Row row) {
    AbsolutePressure outlet = AbsolutePressure.ofBar(row.number("p2_bar_abs"));
    MassFlow flow = MassFlow.ofKilogramsPerSecond(row.number("mdot_kg_s"));
    LossModel model = LossModels.isothermal();
    String why =
        "15 digits printed; the search ends within 2e-13, the line magnifies the last digits tenfold";
    Comparison.of(
            "Line: the problem turned round",
            row + ", flow",
            flow.kilogramsPerSecond(),
            "kg/s",
            row.evidence("mdot_kg_s"))
        .isMetWithinFraction(
            model.flowFor(conduit(row), inlet(row), outlet).massFlow().kilogramsPerSecond(),
            1.0e-12,
            why);
    Comparison.of(
            "Line: the problem turned round",
            row + ", bore",
            row.number("id_mm"),
            "mm",
            row.evidence("id_mm"))
        .isMetWithinFraction(
            model
                .boreFor(conduit(row).withBore(Length.ofMetres(1.0)), flow, inlet(row), outlet)
                .orElseThrow()
                .conduit()
                .bore()
                .millimetres(),
            1.0e-12,
            why);
    Comparison.of(
            "Line: the problem turned round",
            row + ", length",
            row.number("length_m"),
            "m",
            row.evidence("length_m"))
        .isMetWithinFraction(
            model
                .lengthFor(conduit(row).withLength(Length.ofMetres(1.0)), flow, inlet(row), outlet)
                .orElseThrow()
                .conduit()
                .length()
                .metres(),
            1.0e-12,
            why);
  }

  @Test
  void what_no_bore_or_length_can_do_is_told() {
    AbsolutePressure same = AIR.pressure();
    LossModel model = LossModels.isothermal();
    assertThat(model.boreFor(PIPE, FLOW, AIR, same)).isEmpty();
    assertThat(model.lengthFor(PIPE.withFittings(5.0), FLOW, AIR, same)).isEmpty();
    assertThat(model.flowFor(PIPE, AIR, same).massFlow().kilogramsPerSecond()).isLessThan(1.0e-9);
    assertThat(
            model.boreFor(PIPE, NONE, AIR, same).orElseThrow().conduit().bore().millimetres())
        .as("nothing flows: the narrowest bore the wall allows")
        .isCloseTo(20.0 * 0.045, within(1.0e-9));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> model.lengthFor(PIPE, NONE, AIR, same))
        .withMessageContaining("mass flow must be above 0 kg/s");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> model.flowFor(PIPE, AIR, AbsolutePressure.ofBar(8.1)));
  }

  @Test
  void a_conduit_that_chokes_first_gives_its_choking_flow() {
    double most = LossModels.isothermal()
        .flowFor(PIPE, AIR, AbsolutePressure.ofBar(0.1))
        .massFlow()
        .kilogramsPerSecond();
    double choking = LossModels.isothermal()
        .loss(PIPE, MassFlow.ofKilogramsPerSecond(10.0), AIR)
        .fold(flowing -> 0.0, choked -> choked.largest().kilogramsPerSecond());
    assertThat(most).isCloseTo(choking, within(1.0e-10 * choking));
  }

  @ParameterizedTest
  @EnumSource(PipeEquation.class)
  void every_equation_shows_its_working_and_tells_what_it_is(PipeEquation equation) {
    LossModel model = model(equation);
    Pencil.check(model.loss(PIPE, FLOW, AIR));
    Completeness.check(model.loss(PIPE, FLOW, AIR));
    Pencil.check(model.loss(PIPE.withFittings(3.0), MassFlow.ofKilogramsPerSecond(0.001), AIR));
    Completeness.check(
        model.loss(PIPE.withFittings(3.0), MassFlow.ofKilogramsPerSecond(0.001), AIR));
    assertThat(model.title()).contains("Colebrook");
    assertThat(model.fitBasis()).isNotBlank();
    assertThat(model.bias()).isNotBlank();
    assertThat(model.validity()).isNotBlank();
    LineLoss past = model.loss(PIPE, MassFlow.ofKilogramsPerSecond(10.0), AIR);
    assertThat(past).isInstanceOf(LineLoss.Choked.class);
    assertThat(past.working().toText()).contains("chok");
    MassFlow most = ((LineLoss.Choked) past).largest();
    assertThat(model.loss(PIPE, most.times(1.0 - 1.0e-9), AIR))
        .isInstanceOf(LineLoss.Flowing.class);
    assertThat(model.loss(PIPE, most.times(1.0 + 1.0e-9), AIR)).isInstanceOf(LineLoss.Choked.class);
  }

  @ParameterizedTest
  @EnumSource(FrictionLaw.class)
  void every_law_of_friction_can_stand_in(FrictionLaw law) {
    LineLoss.Flowing loss =
        (LineLoss.Flowing) LossModels.of(PipeEquation.ISOTHERMAL, law).loss(PIPE, FLOW, AIR);
    assertThat(loss.friction().orElseThrow())
        .isEqualTo(law.factor(loss.reynolds(), PIPE.relativeRoughness()));
    assertThat(loss.warnings().isEmpty())
        .isEqualTo(law.holds(loss.reynolds(), PIPE.relativeRoughness()));
    Pencil.check(loss);
    Completeness.check(loss);
  }

  @Test
  void darcy_warns_where_too_much_is_lost() {
    LineLoss.Flowing lost = (LineLoss.Flowing) model(PipeEquation.DARCY_INLET_DENSITY)
        .loss(PIPE.withLength(Length.ofMetres(160.0)), FLOW, AIR);
    assertThat(lost.warnings()).singleElement().asString().contains("holds up to 10 %");
    LineLoss.Flowing more = (LineLoss.Flowing) model(PipeEquation.DARCY_MEAN_DENSITY)
        .loss(PIPE.withLength(Length.ofMetres(480.0)), FLOW, AIR);
    assertThat(more.warnings()).singleElement().asString().contains("holds up to 40 %");
  }

  /** E1 of the table of empirical formulas: −34 % to +124 % and more around the isothermal answer. */
  @Test
  void all_models_stand_side_by_side_with_their_spread() {
    LossComparison all = LossComparison.of(LossModels.all(), PIPE, FLOW, AIR);
    assertThat(all.losses()).hasSize(14);
    assertThat(all.deviation(all.losses().get(0))).hasValue(0.0);
    assertThat(all.deviation(LineFormula.WEYMOUTH.loss(PIPE, FLOW, AIR)).orElseThrow())
        .isCloseTo(0.35, within(0.01));
    assertThat(all.spread().orElseThrow()).isGreaterThan(3.0);
    assertThat(all.toMarkdown()).contains("Fritzsche", "within 9 %", "isothermal", "+0.0 %");
  }

  @Test
  void the_spread_is_explained_by_its_ends_and_by_what_the_equations_leave_of_it() {
    LossComparison all = LossComparison.of(LossModels.all(), PIPE, FLOW, AIR);
    List<String> words = all.explanation();
    assertThat(words.get(0))
        .startsWith("The drops lie between ")
        .contains("Unwin, K 0.005 (Arson)", "a factor of ");
    assertThat(words.get(1))
        .startsWith("Those that calculate with the wall's own roughness differ by ");
    assertThat(words)
        .anyMatch(sentence -> sentence.startsWith("Unwin, K 0.005 (Arson) has a friction"));
    assertThat(all.toMarkdown()).contains(words.get(0));
    LossComparison equations = LossComparison.of(
        List.of(LossModels.isothermal(), model(PipeEquation.DARCY_INLET_DENSITY)), PIPE, FLOW, AIR);
    assertThat(equations.explanation()).hasSize(2);
    assertThat(LossComparison.of(List.of(LineFormula.HARRIS, LineFormula.WEYMOUTH), PIPE, FLOW, AIR)
            .explanation())
        .as("without two equations nothing is said of equations")
        .hasSize(3);
    assertThat(LossComparison.of(List.of(LineFormula.HARRIS), PIPE, FLOW, AIR).explanation())
        .isEmpty();
  }

  @Test
  void a_choked_line_and_a_still_one_have_no_spread() {
    List<LossModel> one = List.of(LossModels.isothermal());
    LossComparison choked = LossComparison.of(one, PIPE, MassFlow.ofKilogramsPerSecond(100.0), AIR);
    assertThat(choked.spread()).isEmpty();
    assertThat(choked.deviation(choked.losses().get(0))).isEmpty();
    assertThat(choked.toMarkdown()).contains("does not pass");
    LossComparison still = LossComparison.of(one, PIPE, NONE, AIR);
    assertThat(still.spread()).isEmpty();
    assertThat(still.deviation(still.losses().get(0))).isEmpty();
    assertThatIllegalArgumentException()
        .isThrownBy(() -> LossComparison.of(List.of(), PIPE, FLOW, AIR))
        .withMessage("models to compare must be at least 1, was 0");
  }

  /** As the drop vanishes the four equations become one. */
  @ParameterizedTest
  @ValueSource(doubles = {1.0e-5, 1.0e-4, 1.0e-3})
  void the_equations_meet_where_little_is_lost(double flow) {
    double reference = drop(PipeEquation.ISOTHERMAL, flow);
    for (PipeEquation equation : PipeEquation.values()) {
      assertThat(drop(equation, flow)).isCloseTo(reference, within(2.0e-3 * reference));
    }
  }

  private static double drop(PipeEquation equation, double flow) {
    return model(equation)
        .loss(PIPE, MassFlow.ofKilogramsPerSecond(flow), AIR)
        .fold(flowing -> flowing.drop().pascals(), choked -> Double.POSITIVE_INFINITY);
  }
}
