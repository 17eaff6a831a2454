package org.airfit.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.airfit.air.AirState;
import org.airfit.line.PipeFitting.Method;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FrictionFactor;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.ValveCoefficient;
import org.airfit.safety.Caution;
import org.airfit.source.Basis;
import org.airfit.source.Source;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** What lines, their models and answers say, and where they begin to say it. */
class LineWordsTest {

  private static final AirState AIR =
      AirState.of(AbsolutePressure.ofBar(8.0), Temperature.ofCelsius(20.0));
  private static final Conduit HOSE =
      Conduit.of(Length.ofMillimetres(9.5), Length.ofMetres(10.0), Length.ofMillimetres(0.01));

  private static MassFlow kg(double kilogramsPerSecond) {
    return MassFlow.ofKilogramsPerSecond(kilogramsPerSecond);
  }

  private static LineLoss.Flowing flowing(LineLoss loss) {
    assertThat(loss).isInstanceOf(LineLoss.Flowing.class);
    return (LineLoss.Flowing) loss;
  }

  private static LineLoss.Choked choked(LineLoss loss) {
    assertThat(loss).isInstanceOf(LineLoss.Choked.class);
    return (LineLoss.Choked) loss;
  }

  @Test
  void a_conduit_says_its_length_and_bore_in_either_system() {
    Conduit hose = Conduit.of(Length.ofInches(0.5), Length.ofFeet(25.0), Length.ofInches(0.0));
    assertThat(hose.in(UnitSystem.US)).isEqualTo("25 ft of 0.5 in bore");
    assertThat(hose.in(UnitSystem.SI)).isEqualTo("7.62 m of 12.7 mm bore");
  }

  @Test
  void a_conduit_keeps_its_wall_and_the_warnings_of_it() {
    Length bore = Length.ofMillimetres(20.0);
    Conduit plastic = Conduit.of(bore, Length.ofMetres(5.0), Wall.SMOOTH_PLASTIC);
    assertThat(plastic.wall()).contains(Wall.SMOOTH_PLASTIC);
    assertThat(plastic.roughness()).isEqualTo(Length.ofMillimetres(0.01));
    assertThat(plastic.cautions()).isNotEmpty().isEqualTo(Wall.SMOOTH_PLASTIC.cautions());
    assertThat(plastic.withFittings(1.0).withLength(bore).withBore(bore).wall())
        .contains(Wall.SMOOTH_PLASTIC);
    Conduit steel = Conduit.of(bore, Length.ofMetres(5.0), Wall.COMMERCIAL_STEEL);
    assertThat(steel.cautions()).isEmpty();
    assertThat(HOSE.wall()).isEmpty();
    assertThat(HOSE.cautions()).isEmpty();
    Conduit rough = HOSE.withFittings(3.0).withWall(Wall.SMOOTH_PLASTIC);
    assertThat(rough.wall()).contains(Wall.SMOOTH_PLASTIC);
    assertThat(rough.fittingLoss()).isEqualTo(3.0);
    assertThat(rough.cautions()).isNotEmpty();
    assertThat(Wall.SMOOTH_PLASTIC.isPlastic()).isTrue();
    assertThat(Wall.LINED_STEEL.isPlastic()).isFalse();
    assertThat(Wall.LINED_STEEL.cautions()).isEmpty();
  }

  @Test
  void the_ends_of_the_arithmetic_are_taken_and_no_more() {
    Length none = Length.ofMetres(0.0);
    for (double bore : new double[] {1.0e-12, 1.0e12}) {
      assertThat(Conduit.of(Length.ofMetres(bore), none, none).bore().metres()).isEqualTo(bore);
    }
    for (double bore : new double[] {0.999e-12, 1.001e12}) {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> Conduit.of(Length.ofMetres(bore), none, none))
          .withMessageStartingWith("bore must be in [1e-12, 1e12] m, was ");
    }
    assertThat(HOSE.withLength(Length.ofMetres(1.0e15)).length().metres()).isEqualTo(1.0e15);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> HOSE.withLength(Length.ofMetres(1.001e15)))
        .withMessage("length must be in [0, 1e15] m, was 1.001e15 m");
    for (double k : new double[] {0.0, 1.0e6}) {
      assertThat(HOSE.withFittings(k).fittingLoss()).isEqualTo(k);
    }
    assertThat(1.0 / HOSE.withFittings(-0.0).fittingLoss()).isPositive();
  }

  @ParameterizedTest
  @EnumSource
  void a_wall_has_a_label_that_its_text_begins_with(Wall wall) {
    assertThat(wall.label()).isNotBlank();
    assertThat(wall.toString()).startsWith(wall.label() + ": ");
  }

  /** By hand with β = 1/2: (1 − 1/4)² = 0.5625, and 0.5 (1 − 1/4) = 0.375. */
  @Test
  void a_step_of_bore_says_where_it_leads() {
    Length narrow = Length.ofMillimetres(10.0);
    Length wide = Length.ofMillimetres(20.0);
    assertThat(BoreStep.enlargement(narrow, wide))
        .hasToString("sudden enlargement to 20 mm (K 0.5625)");
    assertThat(BoreStep.contraction(wide, narrow))
        .hasToString("sudden contraction from 20 mm (K 0.375)");
    assertThat(BoreStep.contractionAfterRennels(wide, narrow).name())
        .isEqualTo("sudden contraction from 20 mm");
    assertThat(BoreStep.enlargement(wide, wide).k(wide)).isZero();
    assertThat(BoreStep.contraction(wide, wide).k(wide)).isZero();
    assertThatIllegalArgumentException()
        .isThrownBy(() -> BoreStep.contraction(wide, Length.ofMetres(0.0)))
        .withMessage("narrow bore of a step must be in (0, 20 mm], was 0 mm");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> BoreStep.enlargement(Length.ofMillimetres(20.00001), wide))
        .withMessage("narrow bore of a step must be in (0, 20 mm], was 20.00001 mm");
  }

  @Test
  void fittings_of_each_method_are_there_and_say_their_coefficients() {
    for (Method method : Method.values()) {
      assertThat(PipeFitting.all(method))
          .isNotEmpty()
          .allMatch(fitting -> fitting.method() == method);
    }
    assertThat(PipeFitting.all(Method.CONSTANT))
        .allMatch(fitting -> fitting.toString().matches(".+ \\(K [0-9.]+\\)"));
    assertThat(PipeFitting.all(Method.TWO_K))
        .allMatch(fitting -> fitting.toString().matches(".+ \\(K1 [0-9.]+, K∞ [0-9.]+\\)"));
    assertThat(PipeFitting.all(Method.THREE_K))
        .allMatch(
            fitting -> fitting.toString().matches(".+ \\(K1 [0-9.]+, K∞ [0-9.]+, Kd [0-9.]+\\)"));
    PipeFitting own = PipeFitting.ofEquivalentLength("bend", 30.0, Source.demo("test"));
    assertThat(own).hasToString("bend (L/D 30)");
    assertThat(own.source()).isEqualTo(Source.demo("test"));
    // 30 bores at λT, on a pipe of half that friction 60 bores long
    Length bore = Length.ofMillimetres(20.0);
    FrictionFactor half =
        FrictionFactor.ofDarcy(0.5 * PipeFitting.fullyTurbulentFriction(bore).darcy());
    assertThat(own.equivalentLength(bore, half).metres()).isCloseTo(1.2, within(1.0e-12));
  }

  /** By hand: Kv is m³/h of water of 1000 kg/m³ at 1 bar, K = 2 Δp/(ρ v²), here v = 1/3600/(π/4 × 1e-4) = 3.5368 m/s. */
  @Test
  void a_valve_as_a_fitting_has_the_coefficient_of_its_definition() {
    PipeFitting valve = PipeFitting.ofValveCoefficient(
        "ball valve", ValveCoefficient.ofKv(1.0), Length.ofMillimetres(10.0));
    double velocity = 1.0 / 3600.0 / (Math.PI / 4.0 * 1.0e-4);
    assertThat(valve.k(Length.ofMillimetres(10.0)))
        .isCloseTo(200.0 / (velocity * velocity), within(1.0e-9));
    assertThat(valve.name()).isEqualTo("ball valve");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> PipeFitting.onBore(1.0, Length.ofMetres(1.0e-100), Length.ofMetres(1.0)))
        .withMessageStartingWith("bores must be of a kind");
  }

  @Test
  void a_working_of_a_constant_fitting_says_its_source() {
    PipeFitting own = PipeFitting.ofLossCoefficient("gate", 0.25, Source.demo("test"));
    assertThat(own.working(Length.ofMillimetres(20.0), UnitSystem.SI).toText())
        .contains("gate in a bore of 20 mm")
        .contains("Loss coefficient K = 0.25 [" + Source.demo("test") + "].");
  }

  /** By hand: 0.1 kg/s of 8 bar and 20 °C, 9.5067 kg/m³, in 20 mm go 33.48 m/s. */
  @Test
  void a_velocity_tells_what_it_was_asked_of_and_what_would_do() {
    Conduit pipe =
        Conduit.of(Length.ofMillimetres(20.0), Length.ofMetres(1.0), Length.ofMetres(0.0));
    PipeVelocity fast = PipeVelocity.of(PipeDuty.DISTRIBUTION, pipe, kg(0.1), AIR);
    assertThat(fast.duty()).isEqualTo(PipeDuty.DISTRIBUTION);
    assertThat(fast.bore()).isEqualTo(pipe.bore());
    assertThat(fast.massFlow()).isEqualTo(kg(0.1));
    assertThat(fast.air()).isEqualTo(AIR);
    assertThat(fast.velocity().metresPerSecond())
        .isCloseTo(0.1 / (9.5067 * Math.PI * 1.0e-4), within(0.01));
    assertThat(fast).hasToString("33.5 m/s (110 ft/s) in a main from the room to the drops");
    // 30 ft/s is 9.144 m/s: the bore is larger by the root of 33.48/9.144
    assertThat(fast.cautions().get(0).text())
        .isEqualTo("In a main from the room to the drops air should go at most 9.1 m/s (30 ft/s); "
            + "here it goes 33.5 m/s (110 ft/s). A bore of 38.3 mm would do.");
    assertThat(fast.cautions()).extracting(Caution::title).hasSize(2);
    assertThat(fast.working().toText())
        .contains("Velocity of the air in the main from the room to the drops")
        .contains("It should be at most 9.1 m/s (30 ft/s) in a main from the room to the drops [");
    // 25 ft/s carries water, a little less does not
    double just = 0.1 * 25.0 * 0.3048 / fast.velocity().metresPerSecond();
    assertThat(PipeVelocity.of(PipeDuty.DISTRIBUTION, pipe, kg(just * 1.000001), AIR)
            .carriesWater())
        .isTrue();
    assertThat(PipeVelocity.of(PipeDuty.DISTRIBUTION, pipe, kg(just * 0.999999), AIR)
            .carriesWater())
        .isFalse();
  }

  @Test
  void answers_say_the_flow_the_line_and_what_becomes_of_it() {
    LineLoss.Flowing flows = flowing(LossModels.isothermal().loss(HOSE, kg(0.02), AIR));
    assertThat(flows)
        .hasToString(kg(0.02) + " along 10 m of 9.5 mm bore loses "
            + flows.drop().shown() + " (isothermal flow, Colebrook friction)");
    LineLoss.Choked chokes = choked(LossModels.isothermal().loss(HOSE, kg(1.0), AIR));
    assertThat(chokes)
        .hasToString(kg(1.0) + " along 10 m of 9.5 mm bore chokes at "
            + chokes.largest().shown() + " (isothermal flow, Colebrook friction)");
    assertThat(chokes.massFlow()).isEqualTo(kg(1.0));
    assertThat(chokes.conduit()).isEqualTo(HOSE);
    assertThat(chokes.inlet()).isEqualTo(AIR);
    assertThat(chokes.model()).isEqualTo(LossModels.isothermal());
    assertThat(flows.model()).isEqualTo(LossModels.isothermal());
    // by hand: v = ṁ/(ρ A), and c = √(1.4 × 287.05287 × 293.15) = 343.2 m/s
    double v = 0.02 / (9.5067 * Math.PI / 4.0 * 0.0095 * 0.0095);
    assertThat(flows.inletVelocity().metresPerSecond()).isCloseTo(v, within(1.0e-3));
    assertThat(flows.inletMach()).isCloseTo(v / 343.2, within(1.0e-4));
    double ratio = AIR.pressure().pascals() / flows.outlet().pressure().pascals();
    assertThat(flows.outletVelocity().metresPerSecond()).isCloseTo(v * ratio, within(2.0e-3));
    assertThat(flows.outletMach()).isCloseTo(v * ratio / 343.2, within(2.0e-4));
  }

  /** The answer of a model of one's own. */
  @Test
  void still_air_and_a_flow_below_the_largest_are_what_an_own_model_may_say() {
    LossModel model = LossModels.isothermal();
    LineLoss.Flowing still = LineLoss.still(model, HOSE, AIR);
    assertThat(still.massFlow().kilogramsPerSecond()).isZero();
    assertThat(still.drop().pascals()).isZero();
    assertThat(still.outlet()).isEqualTo(AIR);
    assertThat(still.friction()).isEqualTo(Optional.empty());
    assertThat(
            LineLoss.choked(model, HOSE, kg(0.1), AIR, kg(0.1), AIR.pressure()).largest())
        .isEqualTo(kg(0.1));
    // a search knows the largest flow to 1e-9 of it
    assertThat(LineLoss.choked(model, HOSE, kg(0.1), AIR, kg(0.1 * (1.0 + 0.9e-9)), AIR.pressure())
            .massFlow())
        .isEqualTo(kg(0.1));
    assertThatIllegalArgumentException()
        .isThrownBy(() ->
            LineLoss.choked(model, HOSE, kg(0.1), AIR, kg(0.1 * (1.0 + 1.1e-9)), AIR.pressure()))
        .withMessageStartingWith("flow that chokes a line must be at least the largest");
  }

  @Test
  void air_outside_its_model_is_warned_of_along_a_line_too() {
    AirState dense = AirState.of(AbsolutePressure.ofBar(150.0), Temperature.ofCelsius(20.0));
    assertThat(LossModels.isothermal().loss(HOSE, kg(0.02), dense).warnings())
        .containsAll(dense.warnings());
    assertThat(LossModels.isothermal().loss(HOSE, kg(1.0e3), dense).warnings())
        .isEqualTo(dense.warnings());
  }

  /** Mach 0.3 at the outlet is where isothermal and adiabatic flow begin to part. */
  @Test
  void from_mach_03_on_at_the_outlet_a_warning_is_given_once() {
    for (double mach : new double[] {0.299, 0.301}) {
      // outlet at 1 bar: the flow that goes at this Mach number there
      double flow = mach * 343.2022 * 1.0e5 / (287.05287 * 293.15) * HOSE.area().squareMetres();
      AbsolutePressure inlet = LossModels.isothermal()
          .lengthFor(HOSE, kg(flow), AIR, AbsolutePressure.ofBar(1.0))
          .orElseThrow()
          .loss()
          .inlet()
          .pressure();
      assertThat(inlet).isEqualTo(AIR.pressure());
      LineLoss.Flowing loss = LossModels.isothermal()
          .lengthFor(HOSE, kg(flow), AIR, AbsolutePressure.ofBar(1.0))
          .orElseThrow()
          .loss();
      assertThat(loss.outletMach()).isCloseTo(mach, within(1.0e-4));
      assertThat(loss.warnings().stream()
              .filter(one -> one.contains("at the outlet"))
              .count())
          .isEqualTo(mach > 0.3 ? 1 : 0);
    }
  }

  @ParameterizedTest
  @CsvSource({"DARCY_INLET_DENSITY, 0.1, 10", "DARCY_MEAN_DENSITY, 0.4, 40"})
  void a_drop_beyond_what_an_equation_holds_for_is_warned_of(
      PipeEquation equation, double share, String percent) {
    LossModel model = LossModels.of(equation, FrictionLaw.COLEBROOK);
    for (double near : new double[] {0.999, 1.001}) {
      AbsolutePressure outlet =
          AbsolutePressure.ofPascals(AIR.pressure().pascals() * (1.0 - near * share));
      assertThat(model.flowFor(HOSE, AIR, outlet).loss().warnings().stream()
              .filter(one -> one.endsWith("this model holds up to " + percent + " %."))
              .count())
          .isEqualTo(near > 1.0 ? 1 : 0);
    }
  }

  @Test
  void a_law_of_friction_says_where_it_holds() {
    assertThat(FrictionLaw.COLEBROOK.title()).isEqualTo("Colebrook friction");
    assertThat(FrictionLaw.BLASIUS.title()).isEqualTo("friction after Blasius, 1913");
    // Blasius: Re from 3000 to 200 000 in smooth bores; below 2300 every law is 64/Re
    assertThat(FrictionLaw.BLASIUS.holds(2299.0, 0.01)).isTrue();
    assertThat(FrictionLaw.BLASIUS.holds(2300.0, 0.0)).isFalse();
    assertThat(FrictionLaw.BLASIUS.holds(3000.0, 0.0)).isTrue();
    assertThat(FrictionLaw.BLASIUS.holds(2999.0, 0.0)).isFalse();
    assertThat(FrictionLaw.BLASIUS.holds(2.0e5, 0.0)).isTrue();
    assertThat(FrictionLaw.BLASIUS.holds(2.001e5, 0.0)).isFalse();
    assertThat(FrictionLaw.BLASIUS.holds(1.0e5, 1.0e-9)).isFalse();
    assertThat(FrictionLaw.MOODY.holds(1.0e5, 0.01)).isTrue();
    assertThat(FrictionLaw.MOODY.holds(1.0e5, 0.0101)).isFalse();
    assertThat(FrictionLaw.isTransition(Math.nextDown(2300.0))).isFalse();
    assertThat(FrictionLaw.isTransition(2300.0)).isTrue();
    assertThat(FrictionLaw.isTransition(Math.nextDown(4000.0))).isTrue();
    assertThat(FrictionLaw.isTransition(4000.0)).isFalse();
    // laminar down to the least: 64/Re
    assertThat(FrictionLaw.COLEBROOK.factor(1.0e-100, 0.0).darcy())
        .isCloseTo(64.0e100, within(1.0e86));
    assertThat(FrictionLaw.COLEBROOK.factor(1.0e9, 0.05).darcy()).isBetween(0.05, 0.08);
    for (double reynolds : new double[] {0.9e-100, 1.001e9, Double.NaN}) {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> FrictionLaw.COLEBROOK.factor(reynolds, 0.01))
          .withMessage("Re must be in [1e-100, 1e9], was " + reynolds);
    }
    for (FrictionLaw law : FrictionLaw.values()) {
      assertThat(law.source().basis()).isEqualTo(Basis.HANDBOOK);
      // Churchill's law of 1977 goes over smoothly, and is 64/Re to six digits at Re 500
      double reynolds = law == FrictionLaw.CHURCHILL_1977 ? 500.0 : 2299.0;
      assertThat(law.factor(reynolds, 0.0).darcy())
          .isCloseTo(64.0 / reynolds, within(1.0e-6 * 64.0 / reynolds));
    }
  }

  @Test
  void colebrook_goes_on_beyond_every_measurement() {
    // smooth: 1/√λ = 2 log10(Re √λ/2.51), put in
    for (double reynolds : new double[] {1.0e20, 1.0e60, 1.0e70, 1.0e100, 1.0e200}) {
      double darcy = FrictionLaw.COLEBROOK.darcy(reynolds, 0.0);
      double root = 1.0 / Math.sqrt(darcy);
      assertThat(2.0 * Math.log10(reynolds * Math.sqrt(darcy) / 2.51))
          .isCloseTo(root, within(1.0e-12 * root));
    }
  }

  @ParameterizedTest
  @EnumSource
  void models_say_what_they_are(PipeEquation equation) {
    LossModel model = LossModels.of(equation, FrictionLaw.HAALAND);
    assertThat(model.title())
        .isEqualTo(equation.title() + ", friction after "
            + FrictionLaw.HAALAND.source().citation());
    assertThat(model.validity()).isNotBlank();
    assertThat(model.bias()).isNotBlank();
    assertThat(model.fitBasis()).startsWith("none: derived");
    assertThat(model.source().citation()).isNotBlank();
  }

  @Test
  void the_model_from_a_reservoir_says_what_it_is() {
    LossModel model = LossModels.fromReservoir(FrictionLaw.COLEBROOK);
    assertThat(model.title()).isEqualTo("adiabatic flow from a reservoir, Colebrook friction");
    assertThat(model.validity()).contains("up to choking at Mach 1", "a rounded entrance");
    assertThat(model.bias()).contains("0.7 M1² of p0");
    assertThat(model.fitBasis()).startsWith("none: derived");
    assertThat(model.source().citation()).isNotBlank();
    assertThat(model.element(HOSE)).hasToString("from air at rest: 10 m of 9.5 mm bore");
    assertThat(flowing(model.loss(HOSE, kg(0.0), AIR)).working().toText())
        .contains("Nothing flows, so nothing is lost.");
    assertThat(flowing(model.loss(HOSE, kg(1.0e-101), AIR)).working().toText())
        .contains("A flow below 1e-100 kg/s counts as none: nothing is lost.");
    assertThat(flowing(model.loss(HOSE, kg(1.0e-100), AIR)).friction()).isPresent();
  }

  /** The formulas of gas mains begin at 4 in; Spitzglass at low pressure ends at 1 psi lost and 1.2 bar. */
  @Test
  void formulas_warn_from_where_they_do_not_hold() {
    Conduit main =
        Conduit.of(Length.ofInches(4.0), Length.ofMetres(100.0), Length.ofMillimetres(0.045));
    Conduit less = main.withBore(Length.ofInches(3.99));
    for (LineFormula formula : List.of(
        LineFormula.UNWIN,
        LineFormula.BABCOCK,
        LineFormula.WEYMOUTH,
        LineFormula.PANHANDLE_A,
        LineFormula.SPITZGLASS_HIGH)) {
      assertThat(formula.loss(main, kg(0.2), AIR).warnings()).isEmpty();
      assertThat(formula.loss(less, kg(0.2), AIR).warnings())
          .containsExactly("Outside what this formula holds for (" + formula.validity()
              + "). On shop lines it is usually off: " + formula.bias() + ".");
    }
    AirState low = AIR.at(AbsolutePressure.ofBar(1.2));
    AirState high = AIR.at(AbsolutePressure.ofBar(1.201));
    assertThat(LineFormula.SPITZGLASS_LOW.loss(main, kg(0.01), low).warnings()).isEmpty();
    assertThat(LineFormula.SPITZGLASS_LOW.loss(main, kg(0.01), high).warnings()).hasSize(1);
    for (double near : new double[] {0.99, 1.01}) {
      AbsolutePressure outlet = AbsolutePressure.ofPsi(low.pressure().psi() - near);
      assertThat(LineFormula.SPITZGLASS_LOW.flowFor(main, low, outlet).loss().warnings())
          .hasSize(near > 1.0 ? 1 : 0);
    }
    for (double near : new double[] {114.69, 114.71}) {
      assertThat(LineFormula.OLIPHANT
              .loss(main, kg(0.01), AIR.at(AbsolutePressure.ofPsi(near)))
              .warnings())
          .hasSize(near > 114.7 ? 1 : 0);
    }
    for (LineFormula formula : List.of(LineFormula.HARRIS, LineFormula.METRIC_185)) {
      for (double near : new double[] {0.0999, 0.1001}) {
        AbsolutePressure outlet =
            AbsolutePressure.ofPascals(AIR.pressure().pascals() * (1.0 - near));
        assertThat(formula.flowFor(HOSE, AIR, outlet).loss().warnings())
            .hasSize(near > 0.1 ? 1 : 0);
      }
    }
    assertThat(LineFormula.FRITZSCHE.loss(HOSE, kg(0.02), AIR).warnings()).isEmpty();
    assertThat(LineFormula.FRITZSCHE.loss(HOSE.withFittings(1.0), kg(0.02), AIR).warnings())
        .containsExactly("The formula knows no fittings; their K was added to it.");
  }

  @Test
  void elements_of_lines_say_what_they_are() {
    assertThat(LossModels.isothermal().element(HOSE))
        .hasToString("isothermal flow along 10.0 m of 0.0095 m bore");
    assertThat(LineFormula.HARRIS.element(HOSE))
        .hasToString("HARRIS along 10.0 m of 0.0095 m bore");
  }

  /** A search says what it found, in either system. */
  @Test
  void solutions_say_what_was_found_and_for_what() {
    AbsolutePressure wanted = AbsolutePressure.ofBar(7.5);
    LossModel model = LossModels.isothermal();
    LineSolution flow = model.flowFor(HOSE, AIR, wanted);
    String passes = flow.working(UnitSystem.SI).toText();
    assertThat(passes)
        .startsWith("Largest flow of air through 10 m of 9.5 mm bore that arrives at 7.5 bar(a)")
        .contains("Found by trial: the flow was moved until the pressure at the outlet was the one"
            + " wanted. The loss at the flow found:");
    assertThat(flow.toString()).matches("The largest flow is 0\\.0[0-9]+ kg/s\\.");
    LineSolution bore = model.boreFor(HOSE, kg(0.02), AIR, wanted).orElseThrow();
    assertThat(bore.working(UnitSystem.US).toText())
        .startsWith("Smallest bore through which 0.0440925 lb/s of air arrives at 108.8 psia")
        .containsPattern("The smallest bore is 0\\.[0-9]{3} in\\.");
    LineSolution length = model.lengthFor(HOSE, kg(0.02), AIR, wanted).orElseThrow();
    assertThat(length.working(UnitSystem.SI).toText())
        .startsWith(
            "Longest line of 9.5 mm bore through which 0.02 kg/s of air arrives at 7.5 bar(a)")
        .contains("The loss at the length found:")
        .containsPattern("The longest line is [0-9]+\\.[0-9]{2} m\\.");
  }

  @Test
  void where_a_search_is_ended_by_choking_it_says_what_was_changed() {
    AbsolutePressure low = AbsolutePressure.ofBar(0.5);
    LossModel model = LossModels.isothermal();
    assertThat(model.flowFor(HOSE, AIR, low).working().toText())
        .contains("the flow was raised until the line choked.")
        .contains("the line chokes, and no more passes however low the pressure behind.");
    assertThat(model.boreFor(HOSE, kg(0.02), AIR, low).orElseThrow().working().toText())
        .contains("the bore was made smaller until the line choked.");
    assertThat(model.lengthFor(HOSE, kg(0.02), AIR, low).orElseThrow().working().toText())
        .contains("the line was made longer until it choked.");
  }
}
