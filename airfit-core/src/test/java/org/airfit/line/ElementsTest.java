package org.airfit.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.Stream;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.flow.FlowElement;
import org.airfit.flow.FlowElements;
import org.airfit.flow.FlowLoss;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.Area;
import org.airfit.quantity.DynamicViscosity;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.source.Source;
import org.airfit.working.UnitSystem;
import org.airfit.working.Working;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What {@link FlowElement} promises, for every element there is. */
class ElementsTest {

  private static final double KELVINS = 293.15;
  private static final double VISCOSITY = 1.82e-5;

  /** What rounding may do to a pressure. */
  private static final double ROUNDING = 1.0e-13;

  private static final double[] PRESSURES = {1.02e5, 2.5e5, 8.0e5, 1.7e6};

  /** An element with a name for the report. */
  private record Case(String name, FlowElement element) {
    @Override
    public String toString() {
      return name;
    }
  }

  /** A model without an element of its own. */
  private record Own(LossModel model) implements LossModel {
    @Override
    public LineLoss loss(Conduit conduit, MassFlow massFlow, AirState inlet) {
      return model.loss(conduit, massFlow, inlet);
    }

    @Override
    public Working working(LineLoss loss, UnitSystem units) {
      return model.working(loss, units);
    }

    @Override
    public String title() {
      return "one's own " + model.title();
    }

    @Override
    public String validity() {
      return model.validity();
    }

    @Override
    public String fitBasis() {
      return model.fitBasis();
    }

    @Override
    public String bias() {
      return model.bias();
    }

    @Override
    public Source source() {
      return model.source();
    }
  }

  private static Conduit conduit(double millimetres, double metres, double k) {
    return Conduit.of(
            Length.ofMillimetres(millimetres), Length.ofMetres(metres), Length.ofMillimetres(0.01))
        .withFittings(k);
  }

  private static FlowCapacity part(double b, double index, double crackingBar) {
    return FlowCapacity.of(SonicConductance.ofCubicMetresPerSecondPascal(5.0e-8), b)
        .withSubsonicIndex(index)
        .withCrackingPressure(PressureDrop.ofBar(crackingBar));
  }

  private static FlowLoss point(double litres, double bar) {
    return new FlowLoss(FreeAirFlow.ofAnrLitresPerSecond(litres), PressureDrop.ofBar(bar));
  }

  private static FlowElement filter() {
    return FlowElements.ofTable(
        AirState.of(AbsolutePressure.ofBar(7.0), Temperature.ofCelsius(20.0)),
        List.of(point(10.0, 0.05), point(20.0, 0.21), point(35.0, 0.8)),
        Source.fromMemory("a sheet"));
  }

  static Stream<Case> elements() {
    List<Case> all = new ArrayList<>();
    List<LossModel> models = new ArrayList<>(LossModels.all());
    models.add(LossModels.fromReservoir(FrictionLaw.COLEBROOK));
    models.add(LossModels.of(PipeEquation.ISOTHERMAL, FrictionLaw.CHURCHILL_1977));
    models.add(LossModels.of(PipeEquation.ISOTHERMAL, FrictionLaw.BLASIUS));
    models.add(new Own(LossModels.isothermal()));
    for (LossModel model : models) {
      all.add(new Case(model.title() + ", hose", model.element(conduit(9.5, 10.0, 3.0))));
      all.add(new Case(model.title() + ", stub", model.element(conduit(12.0, 0.05, 0.0))));
      all.add(new Case(model.title() + ", capillary", model.element(conduit(0.3, 2.0, 0.0))));
    }
    all.add(new Case("part", part(0.3, 0.5, 0.0).element()));
    all.add(new Case("part of index 0.6", part(0.2, 0.6, 0.0).element()));
    all.add(new Case("part of b 0", part(0.0, 0.5, 0.0).element()));
    all.add(new Case("check valve", part(0.3, 0.5, 0.2).element()));
    all.add(new Case("check valve that chokes open", part(0.99, 0.5, 0.2).element()));
    all.add(new Case("entrance", FlowElements.entrance(Area.ofCircle(Length.ofMillimetres(6.0)))));
    all.add(new Case("filter", filter()));
    all.add(new Case(
        "series",
        FlowElements.inSeries(List.of(
            LossModels.isothermal().element(conduit(16.0, 20.0, 0.0)),
            part(0.3, 0.5, 0.0).element(),
            LossModels.of(PipeEquation.ADIABATIC, FrictionLaw.COLEBROOK)
                .element(conduit(9.5, 10.0, 3.0)),
            part(0.2, 0.5, 0.0).element()))));
    return all.stream();
  }

  private static double outlet(Case of, double flow, double pascals) {
    return of.element.outlet(flow, pascals, KELVINS, VISCOSITY);
  }

  private static double largest(Case of, double pascals) {
    return of.element.largest(pascals, KELVINS, VISCOSITY);
  }

  private static double orNone(double outlet) {
    return Double.isNaN(outlet) ? 0.0 : outlet;
  }

  @ParameterizedTest
  @MethodSource("elements")
  void the_outlet_pressure_falls_as_the_flow_rises(Case of) {
    for (double pascals : PRESSURES) {
      double before = Double.POSITIVE_INFINITY;
      double most = 1.05 * Math.max(1.0e-9, largest(of, pascals));
      for (int i = 0; i <= 400; i++) {
        double now = orNone(outlet(of, most * i / 400.0, pascals));
        assertThat(now).isLessThanOrEqualTo(before * (1.0 + ROUNDING));
        before = now;
      }
      assertThat(before).isZero();
    }
  }

  @ParameterizedTest
  @MethodSource("elements")
  void the_outlet_pressure_rises_with_the_inlet_pressure(Case of) {
    double most = largest(of, PRESSURES[2]);
    for (double share : new double[] {0.0, 1.0e-3, 0.1, 0.5, 0.9, 1.5}) {
      double before = 0.0;
      for (int i = 0; i <= 200; i++) {
        double now = orNone(outlet(of, share * most, 1.0e5 * Math.pow(20.0, i / 200.0)));
        assertThat(now).isGreaterThanOrEqualTo(before * (1.0 - ROUNDING));
        before = now;
      }
    }
  }

  @ParameterizedTest
  @MethodSource("elements")
  void a_flow_just_below_the_largest_passes_and_just_above_does_not(Case of) {
    for (double pascals : PRESSURES) {
      double largest = largest(of, pascals);
      assertThat(largest).isPositive().isFinite();
      assertThat(outlet(of, largest * (1.0 - 1.0e-12), pascals))
          .isPositive()
          .isLessThanOrEqualTo(pascals);
      assertThat(outlet(of, largest * (1.0 + 1.0e-12), pascals)).isNaN();
    }
  }

  /** To the last bit, also without flow and where none passes. */
  @ParameterizedTest
  @MethodSource("elements")
  void a_flow_that_is_fixed_leaves_what_it_leaves_when_it_is_told_each_time(Case of) {
    double most = largest(of, PRESSURES[2]);
    for (double flow :
        new double[] {0.0, 1.0e-3 * most, 0.3 * most, 0.9 * most, 1.5 * most, 1.0e95}) {
      DoubleUnaryOperator fixed = of.element.outletByInlet(flow, KELVINS, VISCOSITY);
      for (double pascals : PRESSURES) {
        assertThat(fixed.applyAsDouble(pascals))
            .isEqualTo(Double.valueOf(outlet(of, flow, pascals)));
      }
    }
  }

  @ParameterizedTest
  @MethodSource("elements")
  void the_slope_is_that_of_a_difference(Case of) {
    for (double pascals : PRESSURES) {
      double largest = largest(of, pascals);
      for (double share : new double[] {1.0e-3, 0.03, 0.2, 0.5, 0.8, 0.97}) {
        double flow = share * largest;
        double step = 1.0e-5 * flow;
        double jump = of.element.nextJump(flow - step, VISCOSITY);
        if (jump > flow + step) {
          double low = outlet(of, flow - step, pascals);
          double high = outlet(of, flow + step, pascals);
          double rounding = 4.0 * Math.ulp(pascals) / (2.0 * step);
          // a difference over a ten thousandth of the flow misses the bend, which grows towards
          // choking
          double bend = 2.0e-6 + Math.pow(1.0e-4 / (1.0 - share), 2.0);
          assertThat(of.element.slope(flow, pascals, KELVINS, VISCOSITY))
              .as("%s of the largest flow from %s Pa", share, pascals)
              .isNotPositive()
              .isCloseTo(
                  (high - low) / (2.0 * step),
                  within(bend * Math.abs((high - low) / (2.0 * step)) + rounding));
        }
      }
    }
  }

  @ParameterizedTest
  @MethodSource("elements")
  void the_slope_without_flow_is_that_of_the_first_flow(Case of) {
    double pascals = PRESSURES[2];
    double small = 1.0e-4 * Math.min(largest(of, pascals), of.element.nextJump(0.0, VISCOSITY));
    double mean = (outlet(of, small, pascals) - outlet(of, 0.0, pascals)) / small;
    double atEnd = Math.abs(of.element.slope(small, pascals, KELVINS, VISCOSITY));
    assertThat(of.element.slope(0.0, pascals, KELVINS, VISCOSITY))
        .isNotPositive()
        .isCloseTo(mean, within(atEnd + 8.0 * Math.ulp(pascals) / small));
  }

  @ParameterizedTest
  @MethodSource("elements")
  void no_slope_is_told_where_the_flow_does_not_pass(Case of) {
    double pascals = PRESSURES[2];
    assertThat(of.element.slope(1.001 * largest(of, pascals), pascals, KELVINS, VISCOSITY))
        .isNaN();
  }

  @ParameterizedTest
  @MethodSource("elements")
  void the_outlet_jumps_where_it_is_said_to(Case of) {
    double pascals = PRESSURES[3];
    double at = 0.0;
    for (int i = 0; i < 4; i++) {
      at = of.element.nextJump(at, VISCOSITY);
      if (at >= 0.9 * largest(of, pascals)) {
        return;
      }
      double before = outlet(of, Math.nextDown(at), pascals);
      assertThat(of.element.nextJump(Math.nextDown(at), VISCOSITY)).isEqualTo(at);
      assertThat(outlet(of, at, pascals)).isLessThanOrEqualTo(before);
      if (of.name.startsWith("isothermal flow, Colebrook")) {
        // λ jumps from 64/2300 = 0.0278 to more than 0.047
        assertThat(pascals - outlet(of, at, pascals)).isGreaterThan(1.2 * (pascals - before));
      }
    }
  }

  @ParameterizedTest
  @MethodSource("elements")
  void without_flow_nothing_is_lost_but_a_cracking_pressure(Case of) {
    double cracking = of.name.startsWith("check valve") ? 0.2e5 : 0.0;
    assertThat(outlet(of, 0.0, 8.0e5)).isCloseTo(8.0e5 - cracking, within(1.0e-9));
    assertThat(of.element.outletKelvins(0.0, 8.0e5, KELVINS, VISCOSITY)).isEqualTo(KELVINS);
  }

  @ParameterizedTest
  @MethodSource("elements")
  void elements_compare_by_value(Case of) {
    Case twin = elements().filter(any -> any.name.equals(of.name)).findFirst().orElseThrow();
    assertThat(twin.element).isEqualTo(of.element).hasSameHashCodeAs(of.element);
    assertThat(elements().filter(any -> any.element.equals(of.element))).hasSize(1);
    assertThat(of.element.toString()).isNotBlank();
  }

  /** A model without an element goes by way of its objects. */
  @ParameterizedTest
  @MethodSource("elements")
  void nothing_is_allocated(Case of) {
    if (of.element instanceof LossElement) {
      return;
    }
    com.sun.management.ThreadMXBean threads =
        (com.sun.management.ThreadMXBean) ManagementFactory.getThreadMXBean();
    double flow = 0.3 * largest(of, 8.0e5);
    double sum = ask(of.element, flow, 3);
    long before = threads.getCurrentThreadAllocatedBytes();
    sum += ask(of.element, flow, 1_000);
    long bytes = threads.getCurrentThreadAllocatedBytes() - before;
    assertThat(sum).isPositive();
    assertThat(bytes).isLessThan(4_000); // an object each would be 16,000 and more
  }

  private static double ask(FlowElement element, double flow, int times) {
    double sum = 0.0;
    for (int i = 0; i < times; i++) {
      sum += element.outlet(flow, 8.0e5, KELVINS, VISCOSITY)
          + element.outletKelvins(flow, 8.0e5, KELVINS, VISCOSITY)
          - 1.0e-30 * element.slope(flow, 8.0e5, KELVINS, VISCOSITY)
          + Math.min(1.0, element.nextJump(flow, VISCOSITY));
    }
    return sum;
  }

  @Test
  void an_element_says_what_the_objects_say() {
    Conduit hose = conduit(9.5, 10.0, 3.0);
    AirState inlet = AirState.of(AbsolutePressure.ofPascals(8.0e5), Temperature.ofKelvins(KELVINS))
        .withViscosity(DynamicViscosity.ofPascalSeconds(VISCOSITY));
    List<LossModel> models = new ArrayList<>(LossModels.all());
    models.add(LossModels.fromReservoir(FrictionLaw.COLEBROOK));
    for (LossModel model : models) {
      FlowElement element = model.element(hose);
      for (double flow : new double[] {0.0, 1.0e-4, 0.02, 0.06, 0.5}) {
        double outlet = element.outlet(flow, 8.0e5, KELVINS, VISCOSITY);
        LineLoss loss = model.loss(hose, MassFlow.ofKilogramsPerSecond(flow), inlet);
        if (loss instanceof LineLoss.Flowing flowing) {
          assertThat(outlet).isEqualTo(flowing.outlet().pressure().pascals());
          assertThat(element.outletKelvins(flow, 8.0e5, KELVINS, VISCOSITY))
              .isEqualTo(flowing.outlet().temperature().kelvins());
        } else {
          assertThat(outlet).isNaN();
          assertThat(element.largest(8.0e5, KELVINS, VISCOSITY))
              .isEqualTo(((LineLoss.Choked) loss).largest().kilogramsPerSecond());
        }
      }
    }
  }

  @Test
  void a_line_without_length_and_fittings_limits_only_where_the_model_knows_choking() {
    Conduit nothing = conduit(10.0, 0.0, 0.0);
    double sonic =
        nothing.area().squareMetres() * 8.0e5 / Math.sqrt(AirState.GAS_CONSTANT * KELVINS);
    for (PipeEquation equation : PipeEquation.values()) {
      double largest = LossModels.of(equation, FrictionLaw.COLEBROOK)
          .element(nothing)
          .largest(8.0e5, KELVINS, VISCOSITY);
      switch (equation) {
        case ISOTHERMAL -> assertThat(largest).isCloseTo(sonic, within(1.0e-12 * sonic));
        case ADIABATIC ->
          assertThat(largest).isCloseTo(Math.sqrt(1.4) * sonic, within(1.0e-12 * sonic));
        default -> assertThat(largest).isInfinite();
      }
    }
    assertThat(LineFormula.HARRIS.element(nothing).largest(8.0e5, KELVINS, VISCOSITY))
        .isInfinite();
  }

  /** By hand: 8 bar and 20 °C are 9.50688 kg/m³: −128 × 1.82e-5 × 2/(π × 0.0003⁴ × 9.50688) is −1.92592e10. */
  @Test
  void the_first_flow_through_a_capillary_is_lost_as_hagen_and_poiseuille_have_it() {
    double byHand = -128.0 * 1.82e-5 * 2.0 / (Math.PI * 8.1e-15 * 9.50688);
    for (PipeEquation equation : PipeEquation.values()) {
      FlowElement capillary =
          LossModels.of(equation, FrictionLaw.COLEBROOK).element(conduit(0.3, 2.0, 0.0));
      assertThat(capillary.slope(0.0, 8.0e5, KELVINS, VISCOSITY))
          .isCloseTo(byHand, within(1.0e-5 * Math.abs(byHand)));
    }
    // fittings lose with the square of the flow: nothing of the first
    assertThat(LossModels.isothermal()
            .element(conduit(0.3, 2.0, 5.0))
            .slope(0.0, 8.0e5, KELVINS, VISCOSITY))
        .isCloseTo(byHand, within(1.0e-5 * Math.abs(byHand)));
  }

  /** By hand: Re 2300 in 10 mm is ṁ = 2300 π × 0.01 × 1.82e-5/4 = 3.28768e-4 kg/s. */
  @Test
  void friction_jumps_at_re_2300_where_the_law_says_so_and_nowhere_else() {
    double byHand = 2300.0 * Math.PI * 0.01 * 1.82e-5 / 4.0;
    FlowElement hose = LossModels.isothermal().element(conduit(10.0, 20.0, 0.0));
    double jump = hose.nextJump(0.0, VISCOSITY);
    assertThat(jump).isCloseTo(byHand, within(1.0e-14 * byHand));
    assertThat(hose.nextJump(Math.nextDown(jump), VISCOSITY)).isEqualTo(jump);
    assertThat(hose.nextJump(jump, VISCOSITY)).isInfinite();
    assertThat(LossModels.of(PipeEquation.ISOTHERMAL, FrictionLaw.CHURCHILL_1977)
            .element(conduit(10.0, 20.0, 0.0))
            .nextJump(0.0, VISCOSITY))
        .isInfinite();
    // at the jump the slope is that of the turbulent side: of 64/Re it would be a third
    double step = 1.0e-4 * jump;
    double before = hose.outlet(jump, 8.0e5, KELVINS, VISCOSITY);
    double turbulent = (hose.outlet(jump + step, 8.0e5, KELVINS, VISCOSITY) - before) / step;
    assertThat(hose.slope(jump, 8.0e5, KELVINS, VISCOSITY))
        .isCloseTo(turbulent, within(1.0e-3 * Math.abs(turbulent)));
    // and just below the jump that of the laminar side
    double below = Math.nextDown(jump);
    double laminar = (hose.outlet(below, 8.0e5, KELVINS, VISCOSITY)
            - hose.outlet(below - step, 8.0e5, KELVINS, VISCOSITY))
        / step;
    assertThat(hose.slope(below, 8.0e5, KELVINS, VISCOSITY))
        .isCloseTo(laminar, within(1.0e-3 * Math.abs(laminar)));
  }

  @Test
  void the_largest_flow_that_is_calculated_with_still_passes_where_nothing_is_lost() {
    for (PipeEquation equation :
        new PipeEquation[] {PipeEquation.DARCY_INLET_DENSITY, PipeEquation.DARCY_MEAN_DENSITY}) {
      FlowElement nothing =
          LossModels.of(equation, FrictionLaw.COLEBROOK).element(conduit(10.0, 0.0, 0.0));
      assertThat(nothing.outlet(1.0e90, 8.0e5, KELVINS, VISCOSITY)).isEqualTo(8.0e5);
      assertThat(nothing.outlet(1.001e90, 8.0e5, KELVINS, VISCOSITY)).isNaN();
    }
  }
}
