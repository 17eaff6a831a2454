package org.airfit.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import org.airfit.Comparison;
import org.airfit.Pencil;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.air.AirState;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.DynamicViscosity;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.ReferenceState;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.VolumeFlowUnit;
import org.airfit.working.Completeness;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

class LineFormulaTest {

  private static final AirState AIR =
      AirState.of(AbsolutePressure.ofBar(8.0), Temperature.ofCelsius(20.0));
  private static final Conduit PIPE =
      Conduit.of(Length.ofMillimetres(26.64), Length.ofMetres(100.0), Length.ofMillimetres(0.045));

  static Stream<Row> shop_lines() {
    return Rows.of(LineFormulaTest.class, "empirical_line_loss.csv");
  }

  static Stream<Row> cross_cases() {
    return Rows.of(LineFormulaTest.class, "formula_cross_cases.csv")
        .filter(row -> MODELS.containsKey(row.text("formula")));
  }

  static Stream<Row> metric_rows() {
    return Rows.of(LineFormulaTest.class, "metric_and_low_pressure_cases.csv");
  }

  private static LineLoss.Flowing flowing(LineLoss loss) {
    assertThat(loss).isInstanceOf(LineLoss.Flowing.class);
    return (LineLoss.Flowing) loss;
  }

  /** Rows of Harris rest partly on memory (the exponent 5.31); the cross cases hold them up. */
  @ParameterizedTest
  @MethodSource("shop_lines")
  void four_shop_lines_agree_with_the_formula_texts(Row row) {
    String name = row.text("formula_name").equals("harris_1910")
        ? "HARRIS"
        : row.text("formula_name").toUpperCase(Locale.ROOT);
    AirState inlet = AirState.of(
            AbsolutePressure.ofBar(row.number("p1_bar_abs")),
            Temperature.ofKelvins(row.number("t_k")))
        .withViscosity(DynamicViscosity.ofPascalSeconds(row.number("mu_pa_s")));
    Conduit conduit = Conduit.of(
        Length.ofMillimetres(row.number("id_mm")),
        Length.ofMetres(row.number("length_m")),
        Length.ofMillimetres(row.number("eps_mm")));
    MassFlow flow = MassFlow.ofKilogramsPerSecond(row.number("mdot_kg_s"));
    LineFormula formula = LineFormula.valueOf(name);
    LineLoss.Flowing loss = flowing(formula.loss(conduit, flow, inlet));
    Comparison.of(
            "Line: empirical formulas on shop lines",
            row + ", " + row.text("formula_name"),
            row.number("dp_formula_bar"),
            "bar",
            row.evidence("dp_formula_bar"))
        .isMetWithinFraction(
            loss.drop().bar(), 2.0e-9, "ten digits printed, the flow to the power of 2");
    Comparison.of(
            "Line: empirical formulas on shop lines",
            row + ", isothermal beside " + row.text("formula_name"),
            row.number("dp_isothermal_colebrook_bar"),
            "bar",
            row.evidence("dp_isothermal_colebrook_bar"))
        .isMetWithinFraction(
            flowing(LossModels.isothermal().loss(conduit, flow, inlet)).drop().bar(),
            1.0e-9,
            "ten digits printed");
    Pencil.check(loss);
    Completeness.check(loss);
    Pencil.check(formula.loss(conduit.withFittings(5.0), flow, inlet));
    Completeness.check(formula.loss(conduit.withFittings(5.0), flow, inlet));
  }

  private static final Map<String, LossModel> MODELS = Map.ofEntries(
      Map.entry(
          "darcy_colebrook_inlet_density",
          LossModels.of(PipeEquation.DARCY_INLET_DENSITY, FrictionLaw.COLEBROOK)),
      Map.entry(
          "darcy_isothermal_no_log",
          LossModels.of(PipeEquation.DARCY_MEAN_DENSITY, FrictionLaw.COLEBROOK)),
      Map.entry("darcy_isothermal_with_log", LossModels.isothermal()),
      Map.entry("harris_0.1025_inlet_ratio", LineFormula.HARRIS),
      Map.entry("babcock_0.000131_air", LineFormula.BABCOCK),
      Map.entry("unwin_arson_K0.005", LineFormula.UNWIN),
      Map.entry("weymouth_E1", LineFormula.WEYMOUTH),
      Map.entry("spitzglass_high_E1", LineFormula.SPITZGLASS_HIGH),
      Map.entry("fritzsche_E1", LineFormula.FRITZSCHE),
      Map.entry("oliphant", LineFormula.OLIPHANT),
      Map.entry("metric_450_q1.85", LineFormula.METRIC_185));

  /**
   * The rows were computed with handbook constants in American units. Babcock and Unwin were computed there at inlet
   * density, ours is at mean density as the book has it: p1² − p2² = 2 p1 Δp converts one to the other.
   */
  @ParameterizedTest
  @MethodSource("cross_cases")
  void cross_cases_in_american_units_agree(Row row) {
    double psia = 14.7 + row.number("p_inlet_psig");
    AirState inlet = AirState.of(AbsolutePressure.ofPsi(psia), Temperature.ofFahrenheit(60.0))
        // 1.21e-5 lb/(ft s)
        .withViscosity(DynamicViscosity.ofPascalSeconds(1.21e-5 * 0.45359237 / 0.3048));
    Conduit conduit = Conduit.of(
        Length.ofInches(row.number("bore_in")),
        Length.ofFeet(row.number("length_ft")),
        Length.ofInches(0.0018));
    String formula = row.text("formula");
    boolean metric = formula.startsWith("metric");
    // the metric form takes its free air as ANR, and the row put the bare number in
    FreeAirFlow flow = FreeAirFlow.of(
        row.number("q_scfm"),
        VolumeFlowUnit.CUBIC_FOOT_PER_MINUTE,
        metric ? ReferenceState.ANR : ReferenceState.SCFM_60F);
    double psi = flowing(
            Objects.requireNonNull(MODELS.get(formula)).loss(conduit, flow.massFlow(), inlet))
        .drop()
        .psi();
    boolean atInletDensity = formula.startsWith("babcock") || formula.startsWith("unwin");
    double published = row.number("dp_psi");
    double comparable = atInletDensity ? (psi - psi * psi / (2.0 * psia)) : psi;
    Comparison.of(
            "Line: thirteen formulas on six lines",
            row + ", " + formula,
            published,
            "psi",
            row.evidence("dp_psi"))
        .isMetBy(
            comparable,
            row.halfDigit("dp_psi") + (metric ? 0.0021 : 1.0e-3) * published,
            metric
                ? "450 is 0.21 % below 1.6e12"
                : "constants printed with four digits, R 53.35 with four");
  }

  private static double input(Row row, String name) {
    for (String part : row.text("inputs").split("; ", -1)) {
      if (part.startsWith(name + "=")) {
        return Double.parseDouble(part.substring(name.length() + 1));
      }
    }
    throw new IllegalArgumentException("no " + name + " in " + row.text("inputs"));
  }

  @ParameterizedTest
  @MethodSource("metric_rows")
  void the_metric_form_and_spitzglass_at_low_pressure_agree(Row row) {
    String formula = row.text("formula");
    if (formula.startsWith("spitzglass")) {
      Conduit conduit = Conduit.of(
          Length.ofInches(input(row, "bore_in")),
          Length.ofFeet(input(row, "length_ft")),
          Length.ofMillimetres(0.0));
      AirState open = AirState.of(AbsolutePressure.ofPsi(15.0), Temperature.ofFahrenheit(60.0));
      double inches = flowing(LineFormula.SPITZGLASS_LOW.loss(
                  conduit, FreeAirFlow.ofScfm60F(row.number("result") / 60.0).massFlow(), open))
              .drop()
              .pascals()
          / (9806.65 * 0.0254);
      Comparison.of(
              "Line: metric and low-pressure formulas",
              row + ", " + row.text("inputs"),
              input(row, "dp_inH2O"),
              "in water",
              row.evidence("result"))
          .isMetWithinFraction(inches, 4.0e-5, "five digits of the flow printed, squared");
      return;
    }
    boolean kilopascals = formula.equals("metric_1.6e12");
    double q = kilopascals ? input(row, "q_m3_s") : input(row, "q_l_s") / 1000.0;
    double bar = kilopascals ? input(row, "p_kPa_abs") / 100.0 : input(row, "p_bar_abs");
    Conduit conduit = Conduit.of(
        Length.ofMillimetres(input(row, "bore_mm")),
        Length.ofMetres(input(row, "length_m")),
        Length.ofMillimetres(0.0));
    LineLoss.Flowing loss = flowing(LineFormula.METRIC_185.loss(
        conduit,
        FreeAirFlow.ofAnrLitresPerSecond(1000.0 * q).massFlow(),
        AIR.at(AbsolutePressure.ofBar(bar))));
    Comparison.of(
            "Line: metric and low-pressure formulas",
            row + ", " + row.text("inputs"),
            row.number("result"),
            row.text("unit"),
            row.evidence("result"))
        .isMetBy(
            kilopascals ? loss.drop().kilopascals() : loss.drop().bar(),
            row.halfDigit("result") + (kilopascals ? 0.0 : 0.0021 * row.number("result")),
            "half a unit of the last digit printed; 450 is 0.21 % below 1.6e12");
  }

  @ParameterizedTest
  @EnumSource(LineFormula.class)
  void every_formula_tells_what_it_is_and_how_it_is_off(LineFormula formula) {
    assertThat(formula.title()).isNotBlank();
    assertThat(formula.validity()).isNotBlank();
    assertThat(formula.fitBasis()).isNotBlank();
    assertThat(formula.bias()).isNotBlank();
    assertThat(formula.source().citation()).isNotBlank();
  }

  @ParameterizedTest
  @EnumSource(LineFormula.class)
  void nothing_flowing_loses_nothing_and_too_much_flow_is_refused(LineFormula formula) {
    LineLoss.Flowing still = flowing(formula.loss(PIPE, MassFlow.ofKilogramsPerSecond(0.0), AIR));
    assertThat(still.drop().pascals()).isZero();
    assertThat(still.working().toText()).contains("Nothing flows");
    LineLoss past = formula.loss(PIPE, MassFlow.ofKilogramsPerSecond(100.0), AIR);
    assertThat(past).isInstanceOf(LineLoss.Choked.class);
    LineLoss.Choked choked = (LineLoss.Choked) past;
    assertThat(choked.chokingPressure().pascals()).isZero();
    assertThat(choked.working().toText()).contains("does not know choking");
    assertThat(formula.loss(PIPE, choked.largest(), AIR)).isInstanceOf(LineLoss.Flowing.class);
    assertThat(formula.loss(PIPE, choked.largest().times(1.0 + 1.0e-12), AIR))
        .isInstanceOf(LineLoss.Choked.class);
  }

  @Test
  void outside_its_range_a_formula_warns() {
    MassFlow flow = MassFlow.ofKilogramsPerSecond(0.03);
    Conduit wide = PIPE.withBore(Length.ofMillimetres(110.0));
    assertThat(flowing(LineFormula.WEYMOUTH.loss(PIPE, flow, AIR)).warnings())
        .singleElement()
        .asString()
        .contains("20 to 40 % high");
    assertThat(flowing(LineFormula.WEYMOUTH.loss(wide, flow, AIR)).warnings()).isEmpty();
    assertThat(flowing(LineFormula.HARRIS.loss(PIPE, flow, AIR)).warnings()).isEmpty();
    assertThat(flowing(LineFormula.HARRIS.loss(PIPE.withLength(Length.ofMetres(800.0)), flow, AIR))
            .warnings())
        .isNotEmpty();
    assertThat(flowing(LineFormula.SPITZGLASS_LOW.loss(wide, flow, AIR)).warnings())
        .isNotEmpty();
    assertThat(flowing(LineFormula.OLIPHANT.loss(
                PIPE,
                flow,
                AIR.at(GaugePressure.ofPsi(101.0).absolute(AbsolutePressure.ofPsi(14.7)))))
            .warnings())
        .isNotEmpty();
    assertThat(
            flowing(LineFormula.HARRIS.loss(PIPE.withFittings(2.0), flow, AIR)).warnings())
        .singleElement()
        .asString()
        .contains("no fittings");
  }

  /** The fittings of a formula cost what Darcy and Weisbach say they cost. */
  @Test
  void fittings_are_added_as_darcy_has_them() {
    MassFlow flow = MassFlow.ofKilogramsPerSecond(0.03);
    Conduit fitted = PIPE.withFittings(10.0);
    Conduit bare = fitted.withLength(Length.ofMetres(0.0));
    double darcy = flowing(LossModels.of(PipeEquation.DARCY_INLET_DENSITY, FrictionLaw.COLEBROOK)
            .loss(bare, flow, AIR))
        .drop()
        .pascals();
    double harris = flowing(LineFormula.HARRIS.loss(fitted, flow, AIR)).drop().pascals()
        - flowing(LineFormula.HARRIS.loss(PIPE, flow, AIR)).drop().pascals();
    assertThat(harris).isCloseTo(darcy, within(1.0e-8 * darcy));
    double mean = flowing(LossModels.of(PipeEquation.DARCY_MEAN_DENSITY, FrictionLaw.COLEBROOK)
            .loss(bare, flow, AIR))
        .drop()
        .pascals();
    double weymouth = flowing(LineFormula.WEYMOUTH.loss(bare, flow, AIR)).drop().pascals();
    assertThat(weymouth).isCloseTo(mean, within(1.0e-10 * mean));
  }
}
