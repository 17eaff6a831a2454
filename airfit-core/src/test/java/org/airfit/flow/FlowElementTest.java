package org.airfit.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.List;
import java.util.stream.Stream;
import org.airfit.Comparison;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.air.AirState;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.Area;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.source.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The elements of this package on plain doubles: what comes out, the largest flow and the slope. */
class FlowElementTest {

  private static final double P = 7.0e5;
  private static final double T = 293.15;
  private static final double VISCOSITY = 1.8e-5;

  /** By hand: 2e-8 m³/(s Pa) × 1.185 kg/m³ × 7e5 Pa at T0 = 293.15 K. */
  private static final double CHOKED = 0.01659;

  private static FlowElement part(double b, double m, double cracking) {
    return FlowCapacity.of(SonicConductance.ofCubicMetresPerSecondPascal(2.0e-8), b)
        .withSubsonicIndex(m)
        .withCrackingPressure(PressureDrop.ofPascals(cracking))
        .element();
  }

  private static double outlet(FlowElement element, double flow) {
    return element.outlet(flow, P, T, VISCOSITY);
  }

  private static double largest(FlowElement element) {
    return element.largest(P, T, VISCOSITY);
  }

  private static double slope(FlowElement element, double flow) {
    return element.slope(flow, P, T, VISCOSITY);
  }

  /** The quick way and the one of {@link FlowKernels#drop}, which keeps the digits of a small drop. */
  @ParameterizedTest
  @ValueSource(doubles = {0.0, 0.2, 0.5, 0.9})
  void what_comes_out_of_a_part_is_what_goes_in_less_the_drop(double b) {
    PartElement part = new PartElement(2.0e-8, 1.185, b, 0.5, 0.0);
    for (double kelvins : new double[] {253.15, 293.15, 330.0}) {
      double choked = part.choked(P, kelvins);
      double before = P;
      for (int i = 0; i <= 10_000; i++) {
        double flow = choked * i / 10_001.0;
        double outlet = part.outlet(flow, P, kelvins, VISCOSITY);
        double drop = part.drop(flow, P, kelvins);
        // what rounding leaves of 1 − y² counts over twice its root
        double share = flow / choked;
        double rounding = 4.0e-16 * P * (1.0 + 1.0 / Math.sqrt(1.0 - share * share));
        assertThat(outlet).as("b = " + b + ", y = " + share).isCloseTo(P - drop, within(rounding));
        assertThat(outlet).isLessThanOrEqualTo(before);
        before = outlet;
      }
    }
  }

  /** p2 = k − a ṁ², which has the slope −2 a ṁ; behind a jump 1000 Pa less, and nothing above the largest. */
  private record Parabola(double a, double jump, double most) implements FlowElement {

    @Override
    public double outlet(double flow, double pascals, double kelvins, double viscosity) {
      return flow > most ? Double.NaN : pascals - a * flow * flow - (flow >= jump ? 1000.0 : 0.0);
    }

    @Override
    public double largest(double pascals, double kelvins, double viscosity) {
      return most;
    }

    @Override
    public double nextJump(double above, double viscosity) {
      return jump > above ? jump : Double.POSITIVE_INFINITY;
    }
  }

  /** An element that knows of no jump. */
  private record Plain(double perFlow) implements FlowElement {

    @Override
    public double outlet(double flow, double pascals, double kelvins, double viscosity) {
      return pascals - perFlow * flow;
    }

    @Override
    public double largest(double pascals, double kelvins, double viscosity) {
      return pascals / perFlow;
    }
  }

  @Test
  void a_part_passes_its_choked_flow_and_no_more() {
    FlowElement part = part(0.3, 0.5, 0.0);
    assertThat(largest(part)).isCloseTo(CHOKED, within(1.0e-16));
    assertThat(outlet(part, 0.0)).isEqualTo(P);
    assertThat(outlet(part, largest(part))).isCloseTo(0.3 * P, within(1.0e-9));
    assertThat(outlet(part, largest(part) * (1.0 + 1.0e-12))).isNaN();
    // four times as warm air: half the flow
    assertThat(part.largest(P, 4.0 * T, VISCOSITY)).isCloseTo(0.5 * CHOKED, within(1.0e-16));
  }

  /** With b = 0 the whole choked flow passes into a vacuum only, and behind an element there is always some air. */
  @Test
  void with_b_of_0_the_whole_choked_flow_leaves_nothing() {
    FlowElement part = part(0.0, 0.5, 0.0);
    assertThat(outlet(part, largest(part))).isNaN();
    assertThat(outlet(part, 0.6 * largest(part))).isCloseTo(0.8 * P, within(1.0e-8));
  }

  @Test
  void a_check_valve_passes_nothing_up_to_its_cracking_pressure() {
    assertThat(largest(part(0.3, 0.5, P))).isZero();
    assertThat(largest(part(0.3, 0.5, 1.000001 * P))).isZero();
    assertThat(largest(part(0.3, 0.5, 0.999999 * P))).isCloseTo(CHOKED, within(1.0e-16));
    assertThat(outlet(part(0.3, 0.5, P), 0.0)).isNaN();
    assertThat(outlet(part(0.3, 0.5, 1.0e5), 0.0)).isCloseTo(6.0e5, within(1.0e-9));
  }

  /** By hand from p2 = p1 b + p1 (1 − b) √(1 − y²): −p1 (1 − b) y/(ṁ* √(1 − y²)), here with y = 0.6. */
  @Test
  void the_slope_of_a_part_is_the_derivative_of_its_curve() {
    assertThat(slope(part(0.3, 0.5, 0.0), 0.6 * CHOKED))
        .isCloseTo(-P * 0.7 * 0.6 / (CHOKED * 0.8), withinPercentage(1.0e-10));
    // m = 1: p2 = p1 (b + (1 − b) √(1 − y))
    assertThat(slope(part(0.3, 1.0, 0.0), 0.64 * CHOKED))
        .isCloseTo(-P * 0.7 / (2.0 * CHOKED * 0.6), withinPercentage(1.0e-10));
    // m = 1/4, opens at 1 bar: p2 = p1 b + (p1 (1 − b) − Δpc) √(1 − y⁴), with y² = 0.6
    assertThat(slope(part(0.3, 0.25, 1.0e5), Math.sqrt(0.6) * CHOKED))
        .isCloseTo(
            -(P * 0.7 - 1.0e5) * 2.0 * 0.6 * Math.sqrt(0.6) / (CHOKED * 0.8),
            withinPercentage(1.0e-10));
    assertThat(slope(part(0.3, 0.5, 0.0), 0.0)).isZero();
  }

  @ParameterizedTest
  @CsvSource({"0.3, 0.5, 0", "0.1, 0.7, 0", "0.45, 0.5, 2e5", "0.2, 0.4, 1e5"})
  void the_slope_of_a_part_is_that_of_a_small_difference(double b, double m, double cracking) {
    FlowElement part = part(b, m, cracking);
    for (double y : new double[] {0.1, 0.5, 0.9}) {
      double flow = y * CHOKED;
      double step = 1.0e-5 * flow;
      assertThat(slope(part, flow))
          .isCloseTo(
              (outlet(part, flow + step) - outlet(part, flow - step)) / (2.0 * step),
              withinPercentage(1.0e-4));
    }
  }

  @Test
  void the_slope_of_a_part_is_steepest_at_its_largest_flow_and_has_no_value_above() {
    FlowElement part = part(0.3, 0.5, 0.0);
    assertThat(slope(part, largest(part))).isEqualTo(Double.NEGATIVE_INFINITY);
    assertThat(slope(part, largest(part) * (1.0 + 1.0e-12))).isNaN();
    assertThat(slope(part(0.3, 0.5, P), 0.0)).isNaN();
    // one that opens only beyond its critical ratio loses what it opens at, whatever flows
    FlowElement wide = part(0.5, 0.5, 0.5 * P);
    assertThat(outlet(wide, 0.5 * CHOKED)).isEqualTo(0.5 * P);
    assertThat(slope(wide, 0.5 * CHOKED)).isEqualTo(0.0);
    assertThat(slope(part(0.5, 0.5, 0.6 * P), 0.5 * CHOKED)).isEqualTo(0.0);
  }

  @Test
  void a_slope_found_from_a_difference_is_that_of_the_curve() {
    FlowElement parabola = new Parabola(1.0e6, Double.POSITIVE_INFINITY, 1.0);
    assertThat(slope(parabola, 0.5)).isCloseTo(-1.0e6, withinPercentage(1.0e-6));
    assertThat(slope(parabola, 0.05)).isCloseTo(-1.0e5, withinPercentage(1.0e-6));
    // at no flow and at the largest it is one-sided: over a millionth and a ten thousandth
    assertThat(slope(parabola, 0.0)).isCloseTo(-1.0, withinPercentage(1.0e-2));
    assertThat(slope(parabola, 1.0)).isCloseTo(-2.0e6, withinPercentage(1.0e-2));
    assertThat(slope(parabola, 1.0)).isGreaterThan(-2.0e6);
    assertThat(slope(parabola, 1.1)).isNaN();
    assertThat(slope(new Plain(-1.0), 0.1)).isEqualTo(0.0);
  }

  /** The jump of 1000 Pa over a step of 1e-4 of the flow would be a slope of −2e7. */
  @Test
  void a_slope_does_not_cross_a_jump() {
    double smooth = -1.0e6;
    for (double jump : new double[] {0.49996, 0.5, 0.50004}) {
      assertThat(slope(new Parabola(1.0e6, jump, 1.0), 0.5))
          .as("jump at %s", jump)
          .isCloseTo(smooth, withinPercentage(1.0e-2));
    }
    // the side it is taken from: above a jump that was passed, below one that is to come
    assertThat(slope(new Parabola(1.0e6, 0.5, 1.0), 0.5)).isLessThan(smooth);
    assertThat(slope(new Parabola(1.0e6, 0.50004, 1.0), 0.5)).isGreaterThan(smooth);
    assertThat(slope(new Parabola(1.0e6, 0.5, 0.5), 0.5)).isNaN();
    // a jump at the far end of the step counts too, one beyond it does not matter
    assertThat(slope(new Parabola(1.0e6, 0.5 + 1.0e-4 * 0.5, 1.0), 0.5)).isGreaterThan(smooth);
    assertThat(slope(new Parabola(1.0e6, 0.51, 1.0), 0.5))
        .isCloseTo(smooth, withinPercentage(1.0e-6));
  }

  @Test
  void what_nothing_limits_has_no_slope_without_flow() {
    FlowElement endless = new Parabola(1.0, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY);
    assertThat(slope(endless, 0.0)).isEqualTo(0.0);
    assertThat(slope(endless, 2.0)).isCloseTo(-4.0, withinPercentage(1.0e-4));
    assertThat(new Plain(1.0).nextJump(0.0, VISCOSITY)).isInfinite();
    assertThat(new Plain(1.0).outletKelvins(1.0, P, T, VISCOSITY)).isEqualTo(T);
  }

  /**
   * By hand: two equal parts in a row pass what the second lets through from behind the first, y = b + (1 − b) √(1 −
   * y²) of the choked flow of one, the larger root of (1 + (1 − b)²) y² − 2 b y + b² − (1 − b)² = 0.
   */
  @ParameterizedTest
  @CsvSource({"0.3", "0.1", "0.5"})
  void two_equal_parts_in_a_row_pass_what_a_quadratic_tells(double b) {
    FlowElement one = part(b, 0.5, 0.0);
    FlowElement two = FlowElements.inSeries(List.of(one, one));
    double a = 1.0 + (1.0 - b) * (1.0 - b);
    double y = (b + Math.sqrt(b * b - a * (b * b - (1.0 - b) * (1.0 - b)))) / a;
    assertThat(largest(two)).isCloseTo(y * CHOKED, withinPercentage(1.0e-9));
    assertThat(outlet(two, largest(two) * (1.0 - 1.0e-9))).isPositive();
    assertThat(outlet(two, largest(two) * (1.0 + 1.0e-9))).isNaN();
    assertThat(outlet(two, 0.0)).isEqualTo(P);
  }

  @Test
  void a_row_passes_no_more_than_its_narrowest_part_where_that_comes_first() {
    FlowElement one = part(0.3, 0.5, 0.0);
    FlowElement wide = FlowCapacity.of(SonicConductance.ofCubicMetresPerSecondPascal(2.0e-6), 0.3)
        .element();
    assertThat(largest(FlowElements.inSeries(List.of(one)))).isEqualTo(largest(one));
    assertThat(largest(FlowElements.inSeries(List.of(one, wide)))).isEqualTo(largest(one));
    assertThat(largest(FlowElements.inSeries(List.of(wide, one))))
        .isCloseTo(largest(one), withinPercentage(0.01))
        .isLessThan(largest(one));
  }

  /** Each check valve opens alone; together they need more than there is. */
  @Test
  void check_valves_that_open_alone_may_shut_a_row() {
    FlowElement check = part(0.3, 0.5, 4.0e5);
    assertThat(largest(check)).isPositive();
    assertThat(largest(FlowElements.inSeries(List.of(check, check)))).isZero();
    assertThat(outlet(FlowElements.inSeries(List.of(check, check)), 0.0)).isNaN();
    FlowElement never = part(0.3, 0.5, P);
    assertThat(largest(FlowElements.inSeries(List.of(part(0.3, 0.5, 0.0), never))))
        .isZero();
  }

  @Test
  void a_row_jumps_where_the_first_of_its_elements_does() {
    FlowElement row = FlowElements.inSeries(
        List.of(new Parabola(1.0, 0.4, 1.0), new Parabola(1.0, 0.3, 1.0), new Plain(1.0)));
    assertThat(row.nextJump(0.0, VISCOSITY)).isEqualTo(0.3);
    assertThat(row.nextJump(0.3, VISCOSITY)).isEqualTo(0.4);
    assertThat(row.nextJump(0.4, VISCOSITY)).isInfinite();
  }

  static Stream<Row> isentropic_rows() {
    return Rows.of(FlowElementTest.class, "isentropic.csv")
        .filter(row -> row.number("mach") > 0.0 && row.number("mach") <= 0.9);
  }

  /** ψ = ṁ √(R T0)/(A p0), with R 287.05287 J/(kg K) of ISO 2533, here for 1 cm². */
  private static double flowOf(double psi) {
    return psi * 1.0e-4 * P / Math.sqrt(287.05287 * T);
  }

  @ParameterizedTest
  @MethodSource("isentropic_rows")
  void an_entrance_speeds_air_up_as_the_isentropic_table_has_it(Row row) {
    FlowElement entrance = FlowElements.entrance(Area.ofSquareMetres(1.0e-4));
    double flow = flowOf(row.number("massflow_function"));
    Comparison.of(
            "Flow: entrance",
            "pressure behind over that at rest, M " + row.text("mach"),
            row.number("p_over_p0"),
            "-",
            row.evidence("p_over_p0"))
        .isMetWithinFraction(
            outlet(entrance, flow) / P, 2.0e-8, "R of air is printed with eight digits");
    Comparison.of(
            "Flow: entrance",
            "temperature behind over that at rest, M " + row.text("mach"),
            row.number("t_over_t0"),
            "-",
            row.evidence("t_over_t0"))
        .isMetWithinFraction(
            entrance.outletKelvins(flow, P, T, VISCOSITY) / T,
            2.0e-8,
            "R of air is printed with eight digits");
    // behind a second entrance of the same bore: it gets the air of the first, as a row does
    FlowElement row2 = FlowElements.inSeries(List.of(entrance, new Plain(0.0)));
    assertThat(row2.outletKelvins(flow, P, T, VISCOSITY))
        .isEqualTo(entrance.outletKelvins(flow, P, T, VISCOSITY));
    assertThat(outlet(row2, flow)).isEqualTo(outlet(entrance, flow));
  }

  /** The second of two entrances gets the cooled air of the first, whose static pressure it takes for that at rest. */
  @Test
  void a_row_hands_on_temperature_and_pressure() {
    FlowElement wide = FlowElements.entrance(Area.ofSquareMetres(2.0e-4));
    FlowElement narrow = FlowElements.entrance(Area.ofSquareMetres(1.5e-4));
    double flow = flowOf(0.6);
    double p = outlet(wide, flow);
    double t = wide.outletKelvins(flow, P, T, VISCOSITY);
    FlowElement both = FlowElements.inSeries(List.of(wide, narrow));
    assertThat(t).isLessThan(T);
    assertThat(outlet(both, flow)).isEqualTo(narrow.outlet(flow, p, t, VISCOSITY));
    assertThat(both.outletKelvins(flow, P, T, VISCOSITY))
        .isEqualTo(narrow.outletKelvins(flow, p, t, VISCOSITY));
  }

  /** ψ is largest at Mach 1, printed as 0.684731. */
  @Test
  void an_entrance_chokes_at_mach_1() {
    FlowElement entrance = FlowElements.entrance(Area.ofSquareMetres(1.0e-4));
    assertThat(largest(entrance)).isCloseTo(flowOf(0.684731), withinPercentage(1.0e-4));
    assertThat(outlet(entrance, 0.0)).isEqualTo(P);
    assertThat(entrance.outletKelvins(0.0, P, T, VISCOSITY)).isEqualTo(T);
    // p*/p0 = 0.528282, T*/T0 = 1/1.2; half of the digits go at Mach 1
    double most = largest(entrance);
    assertThat(outlet(entrance, most * (1.0 - 1.0e-12))).isCloseTo(0.528282 * P, within(3.0));
    assertThat(entrance.outletKelvins(most * (1.0 - 1.0e-12), P, T, VISCOSITY))
        .isCloseTo(T / 1.2, within(1.0e-3));
    assertThat(outlet(entrance, most * (1.0 + 1.0e-12))).isNaN();
  }

  private static FlowLoss point(double litres, double bar) {
    return new FlowLoss(FreeAirFlow.ofAnrLitresPerSecond(litres), PressureDrop.ofBar(bar));
  }

  /** 1 L/s of free air at ISO 8778 is 1.185 g/s. */
  private static double litres(double litres) {
    return 1.185e-3 * litres;
  }

  /** By hand: the drop rises in proportion to the square of the flow, by 0.1 bar to 10 L/s, by 0.6 bar to 20 L/s. */
  @Test
  void a_table_ends_at_its_last_point_and_is_as_steep_as_its_pieces() {
    FlowTable filter = FlowTable.of(
        AirState.of(AbsolutePressure.ofPascals(P), Temperature.ofKelvins(T)),
        List.of(point(10.0, 0.1), point(20.0, 0.7), point(30.0, 0.9)),
        Source.demo("sheet"));
    assertThat(largest(filter)).isCloseTo(litres(30.0), withinPercentage(1.0e-10));
    // half the pressure and four times the temperature pass a quarter
    assertThat(filter.largest(0.5 * P, 4.0 * T, VISCOSITY))
        .isCloseTo(litres(7.5), withinPercentage(1.0e-10));
    double perSquare = 1.0e4 / (litres(10.0) * litres(10.0));
    assertThat(slope(filter, litres(5.0)))
        .isCloseTo(-2.0 * perSquare * litres(5.0), withinPercentage(1.0e-10));
    double second = 6.0e4 / (litres(20.0) * litres(20.0) - litres(10.0) * litres(10.0));
    assertThat(slope(filter, litres(15.0)))
        .isCloseTo(-2.0 * second * litres(15.0), withinPercentage(1.0e-10));
    double third = 2.0e4 / (litres(30.0) * litres(30.0) - litres(20.0) * litres(20.0));
    assertThat(slope(filter, litres(25.0)))
        .isCloseTo(-2.0 * third * litres(25.0), withinPercentage(1.0e-10));
    assertThat(slope(filter, litres(29.999999))).isNegative();
    assertThat(slope(filter, litres(30.000001))).isNaN();
    assertThat(outlet(filter, litres(30.000001))).isNaN();
    assertThat(outlet(filter, litres(25.0)))
        .isCloseTo(P - 0.7e5 - 2.0e4 * (625.0 - 400.0) / 500.0, within(1.0e-6));
    // warmer air of the same pressure: the same ratio at a smaller flow
    assertThat(filter.slope(litres(2.5), P, 4.0 * T, VISCOSITY))
        .isCloseTo(2.0 * slope(filter, litres(5.0)), withinPercentage(1.0e-10));
  }

  @Test
  void elements_say_what_they_are() {
    assertThat(part(0.3, 0.5, 0.0))
        .hasToString("C 2.0E-8 m³/(s·Pa), b 0.3, m 0.5, cracking 0.0 Pa");
    assertThat(FlowElements.entrance(Area.ofSquareMetres(1.0e-4)))
        .hasToString("entrance of 1.0E-4 m²");
    assertThat(FlowElements.inSeries(List.of(FlowElements.entrance(Area.ofSquareMetres(1.0e-4)))))
        .hasToString("in series: [entrance of 1.0E-4 m²]");
    assertThat(FlowTable.of(
            AirState.of(AbsolutePressure.ofPascals(P), Temperature.ofKelvins(T)),
            List.of(point(10.0, 0.1), point(20.0, 0.7)),
            Source.demo("sheet")))
        .hasToString("table of 2 points up to " + FreeAirFlow.ofAnrLitresPerSecond(20.0));
  }
}
