package org.airfit.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.airfit.Comparison;
import org.airfit.Pencil;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.air.AirState;
import org.airfit.joint.Tube;
import org.airfit.line.PipeFitting.Method;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FrictionFactor;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.NominalThreadSize;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.ValveCoefficient;
import org.airfit.source.Basis;
import org.airfit.source.Source;
import org.airfit.working.Completeness;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class PipeFittingTest {

  private static final Length INCH = Length.ofInches(1.0);

  static Stream<Row> values() {
    return Rows.of(PipeFittingTest.class, "k_values.csv").filter(row -> row.has("ours"));
  }

  private static double inches(String nominal) {
    double whole = 0.0;
    String rest = nominal;
    if (nominal.contains("-")) {
      whole = Double.parseDouble(nominal.substring(0, nominal.indexOf('-')));
      rest = nominal.substring(nominal.indexOf('-') + 1);
    }
    int slash = rest.indexOf('/');
    return whole
        + (slash < 0
            ? Double.parseDouble(rest)
            : Double.parseDouble(rest.substring(0, slash))
                / Double.parseDouble(rest.substring(slash + 1)));
  }

  private static double ours(Row row) {
    String by = row.text("by");
    if (by.equals("STEP")) {
      Matcher ratio = Pattern.compile("d/D ([0-9.]+)").matcher(row.text("fitting"));
      assertThat(ratio.find()).isTrue();
      Length narrow = INCH.times(Double.parseDouble(ratio.group(1)));
      PipeFitting step = row.text("method").startsWith("Borda")
          ? BoreStep.enlargement(narrow, INCH)
          : row.text("method").startsWith("Crane")
              ? BoreStep.contraction(INCH, narrow)
              : BoreStep.contractionAfterRennels(INCH, narrow);
      return step.k(narrow);
    }
    PipeFitting fitting = PipeFitting.of(Method.valueOf(by), row.text("ours"));
    return switch (fitting.method()) {
      case LENGTH -> fitting.k(FrictionFactor.ofDarcy(row.number("f_t")));
      case CONSTANT -> fitting.k(INCH);
      case TWO_K, THREE_K ->
        fitting.k(
            Length.ofInches(row.number("id_in")),
            Length.ofInches(inches(row.text("nps"))),
            row.number("re"));
    };
  }

  @ParameterizedTest(name = "{0} {index}")
  @MethodSource("values")
  void every_loss_coefficient_of_the_table_is_met(Row row) {
    Comparison.of(
            "Line: loss coefficients of fittings",
            row.text("by") + ", " + row.text("fitting") + ", " + row.text("nps") + ", "
                + row.text("method"),
            row.number("k_value"),
            "-",
            row.evidence("k_value"))
        .isMetWithinFraction(ours(row), 1.0e-10, "12 digits printed");
  }

  static Stream<Row> turbulentFriction() {
    return Rows.of(PipeFittingTest.class, "crane_ft.csv");
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("turbulentFriction")
  void fully_turbulent_friction_is_that_of_the_handbook(Row row) {
    Comparison.of(
            "Line: fully turbulent friction",
            "size " + row,
            row.number("f_t"),
            "-",
            row.evidence("f_t"))
        .isMetBy(
            PipeFitting.fullyTurbulentFriction(Length.ofMillimetres(row.number("id_mm_sch40")))
                .darcy(),
            0.04 * row.number("f_t"),
            "read from a chart to two digits: 4 %, as the notes to the table say");
  }

  @Test
  void a_length_in_bores_is_worth_a_loss_coefficient() {
    assertThat(PipeFitting.ofEquivalentLength("valve", 240.0, Source.demo("example"))
            .k(FrictionFactor.ofDarcy(0.015)))
        .isCloseTo(3.6, within(1e-12));
  }

  @Test
  void a_valve_too_small_to_be_a_fitting_is_refused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> PipeFitting.ofValveCoefficient(
            "needle", ValveCoefficient.ofKv(0.001), Length.ofMillimetres(50.0)))
        .withMessageStartingWith("loss coefficient of needle must be in [0, 1e6], was ");
  }

  /**
   * A line that carries elbows loses as much as one that is longer by their equivalent length, in fully turbulent
   * flow.
   */
  @Test
  void fittings_on_a_conduit_are_worth_their_length() {
    Length bore = Tube.steelPipe(NominalThreadSize.ONE, 40).bore();
    PipeFitting elbow = PipeFitting.of(Method.LENGTH, "elbow 90°, standard, threaded");
    Conduit plain = Conduit.of(bore, Length.ofMetres(30.0), Length.ofInches(0.0018));
    Conduit bent = plain.withFittings(List.of(elbow, elbow, elbow, elbow));
    assertThat(bent.fittingLoss()).isCloseTo(4.0 * elbow.k(bore), within(1e-12));
    AirState air = AirState.of(AbsolutePressure.ofBar(8.0), Temperature.ofCelsius(20.0));
    MassFlow flow = MassFlow.ofKilogramsPerSecond(0.1);
    LineLoss.Flowing loss = (LineLoss.Flowing) LossModels.isothermal().loss(bent, flow, air);
    Length added = elbow.equivalentLength(bore, loss.friction().orElseThrow()).times(4.0);
    LineLoss.Flowing longer = (LineLoss.Flowing)
        LossModels.isothermal().loss(plain.withLength(plain.length().plus(added)), flow, air);
    assertThat(longer.drop().pascals()).isCloseTo(loss.drop().pascals(), within(1e-6));
  }

  @Test
  void a_coefficient_moves_to_another_bore_with_the_fourth_power() {
    assertThat(PipeFitting.onBore(1.0, INCH, INCH.times(2.0))).isCloseTo(16.0, within(1e-12));
    for (double k : new double[] {-1.0e-9, Double.NaN, Double.POSITIVE_INFINITY}) {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> PipeFitting.onBore(k, INCH, INCH))
          .withMessage("loss coefficient K must be at least 0, was " + k);
    }
    assertThatIllegalArgumentException()
        .isThrownBy(() -> PipeFitting.onBore(1.0, Length.ofMetres(0.0), INCH))
        .withMessage("bore counted must be above 0 mm, was 0 mm");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> PipeFitting.onBore(1.0, INCH, Length.ofMetres(0.0)))
        .withMessage("bore wanted must be above 0 mm, was 0 mm");
  }

  @ParameterizedTest
  @EnumSource
  void its_working_can_be_followed_with_a_pencil(Method method) {
    for (PipeFitting fitting : PipeFitting.all(method)) {
      if (method == Method.CONSTANT) {
        assertThat(fitting.working(INCH, UnitSystem.SI).toText()).contains("Loss coefficient K = ");
      } else {
        Pencil.check(units -> fitting.working(INCH, units));
        Completeness.check(units -> fitting.working(INCH, units));
      }
      assertThat(fitting.toString()).startsWith(fitting.name() + " (");
    }
    assertThat(PipeFitting.of(Method.LENGTH, "elbow 90°, standard, threaded"))
        .hasToString("elbow 90°, standard, threaded (L/D 30)");
  }

  /** The tees of Crane's length method were recalled: they are marked so. */
  @Test
  void recalled_fittings_say_so() {
    assertThat(PipeFitting.all(Method.LENGTH).stream()
            .filter(fitting -> fitting.source().basis() == Basis.FROM_MEMORY)
            .map(PipeFitting::name))
        .containsExactly("tee, flow through run", "tee, flow through branch");
  }

  @Test
  void an_unknown_name_is_answered_with_those_there_are() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> PipeFitting.of(Method.CONSTANT, "elbow"))
        .withMessageContaining("entrance, sharp edge flush")
        .withMessageEndingWith("was elbow");
  }

  @ParameterizedTest
  @ValueSource(doubles = {-0.001, 1.0e6 + 1.0, Double.NaN})
  void a_loss_coefficient_out_of_range_is_refused(double k) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> PipeFitting.ofLossCoefficient("gate", k, Source.demo("test")))
        .withMessageStartingWith("loss coefficient of gate must be in [0, 1e6], was ");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> PipeFitting.ofEquivalentLength("gate", k, Source.demo("test")))
        .withMessageStartingWith("equivalent length of gate must be in [0, 10000] bores, was ");
  }

  @Test
  void what_lies_at_a_bound_is_taken() {
    for (double k : new double[] {0.0, 1.0e6}) {
      assertThat(PipeFitting.ofLossCoefficient("gate", k, Source.demo("test")).k(INCH))
          .isEqualTo(k);
    }
    for (double bores : new double[] {0.0, 1.0e4}) {
      assertThat(PipeFitting.ofEquivalentLength("gate", bores, Source.demo("test"))
              .k(FrictionFactor.ofDarcy(0.02)))
          .isEqualTo(0.02 * bores);
    }
    assertThat(PipeFitting.fullyTurbulentFriction(Length.ofMillimetres(0.501)).darcy())
        .isPositive();
  }

  @Test
  void what_has_no_sense_is_refused() {
    PipeFitting elbow = PipeFitting.of(Method.LENGTH, "elbow 90°, standard, threaded");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> elbow.k(Length.ofMillimetres(0.5)))
        .withMessageContaining("must be above 0.5 mm, was 0.5 mm");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> elbow.k(INCH, INCH, 0.0))
        .withMessageContaining("Re must be above 0");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> elbow.k(INCH, Length.ofMetres(0.0), 1.0e5))
        .withMessageContaining("nominal size of the pipe must be above 0 mm");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> BoreStep.enlargement(INCH, INCH.times(0.99)))
        .withMessageStartingWith("narrow bore of a step must be in (0, 25.146 mm], was 25.4 mm");
    assertThatThrownBy(() -> BoreStep.enlargement(INCH, INCH).k(FrictionFactor.ofDarcy(0.02)))
        .isInstanceOf(IllegalStateException.class)
        .hasMessageContaining("ask for k of a bore");
  }
}
