package org.airfit.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.airfit.Rows;
import org.airfit.air.AirState;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.Area;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.ValveCoefficient;
import org.airfit.source.Basis;
import org.airfit.source.Source;
import org.junit.jupiter.api.Test;

class CapacityRangeTest {

  private static final Source SHEET = Source.demo("a data sheet");
  private static final Temperature SHOP = Temperature.ofCelsius(20.0);
  private static final AirState AIR = AirState.of(AbsolutePressure.ofBar(7.0), SHOP);

  private static FlowCapacity part(double c, double b) {
    return FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(c), b);
  }

  private static double passes(FlowCapacity part, double ratio) {
    return part.flow(AIR, AbsolutePressure.ofBar(7.0 * ratio)).massFlow().kilogramsPerSecond();
  }

  private static double c(FlowCapacity part) {
    return part.conductance().cubicDecimetresPerSecondBar();
  }

  @Test
  void a_capacity_that_is_known_is_both_ends_and_assumes_nothing() {
    FlowCapacity known = part(3.5, 0.25);
    CapacityRange range = CapacityRange.exactly(known);
    assertThat(range.isExact()).isTrue();
    assertThat(range.least()).isEqualTo(known);
    assertThat(range.most()).isEqualTo(known);
    assertThat(range.assumption()).hasToString("as told, nothing assumed (derived)");
    assertThat(range)
        .hasToString("C 3.5 dm³/(s·bar), b 0.25")
        .isEqualTo(CapacityRange.exactly(known));
  }

  @Test
  void a_range_is_not_exact_and_says_that_it_is_uncertain() {
    CapacityRange range = new CapacityRange(part(3.5, 0.2), part(3.5, 0.5), SHEET);
    assertThat(range.isExact()).isFalse();
    assertThat(range)
        .hasToString("from C 3.5 dm³/(s·bar), b 0.2 to C 3.5 dm³/(s·bar), b 0.5, uncertain");
  }

  /** By hand: C²/(1 − b) is 8, 12.5 and 18: least C 2 with 8 is 1 − b = 0.5; most C 3 with 18 is 1 − b = 0.5. */
  @Test
  void ends_that_are_parts_of_the_list_are_those_parts() {
    CapacityRange range =
        CapacityRange.spanning(List.of(part(2.5, 0.5), part(3.0, 0.5), part(2.0, 0.5)), SHEET);
    assertThat(range.least()).isEqualTo(part(2.0, 0.5));
    assertThat(range.most()).isEqualTo(part(3.0, 0.5));
    assertThat(range.assumption()).isEqualTo(SHEET);
  }

  /** By hand: C²/(1 − b) is 4/0.8 = 5 and 9/0.9 = 10 against 6.25/0.25 = 25: least 4/5, most 9/25 as 1 − b. */
  @Test
  void an_end_has_the_c_of_one_part_and_the_slope_of_another() {
    CapacityRange range =
        CapacityRange.spanning(List.of(part(2.0, 0.2), part(3.0, 0.1), part(2.5, 0.75)), SHEET);
    assertThat(c(range.least())).isCloseTo(2.0, within(1.0e-12));
    assertThat(range.least().criticalPressureRatio()).isEqualTo(0.2);
    assertThat(c(range.most())).isCloseTo(3.0, within(1.0e-12));
    assertThat(range.most().criticalPressureRatio()).isCloseTo(1.0 - 9.0 / 25.0, within(1.0e-12));
  }

  @Test
  void other_indices_and_check_valves_take_the_least_and_the_largest_of_each_figure() {
    FlowCapacity steep = part(2.0, 0.4).withSubsonicIndex(0.6);
    FlowCapacity check = part(3.0, 0.3).withCrackingPressure(PressureDrop.ofBar(0.1));
    CapacityRange range = CapacityRange.spanning(List.of(steep, check), SHEET);
    assertThat(range.least())
        .isEqualTo(
            part(2.0, 0.3).withSubsonicIndex(0.6).withCrackingPressure(PressureDrop.ofBar(0.1)));
    assertThat(range.most()).isEqualTo(part(3.0, 0.4));
    assertThat(CapacityRange.spanning(List.of(steep), SHEET).least()).isEqualTo(steep);
    assertThat(CapacityRange.spanning(List.of(check), SHEET).isExact()).isTrue();
  }

  @Test
  void no_capacities_span_nothing() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> CapacityRange.spanning(List.of(), SHEET))
        .withMessage("capacities of a range must be at least 1, was 0");
  }

  /** By hand: 2²/0.4 = 10 is more than 3²/0.95 = 9.47, and less than 3²/0.85 = 10.6. */
  @Test
  void ends_whose_curves_cross_are_refused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new CapacityRange(part(2.0, 0.6), part(3.0, 0.05), SHEET))
        .withMessage(
            "smallest capacity must pass at most what the largest passes between any two pressures,"
                + " C 3 dm³/(s·bar), b 0.05, was C 2 dm³/(s·bar), b 0.6");
    assertThat(new CapacityRange(part(2.0, 0.6), part(3.0, 0.15), SHEET).isExact())
        .isFalse();
    assertThat(new CapacityRange(part(2.0, 0.6), part(3.0, 0.1), SHEET).isExact())
        .as("9/0.9 is 10, on the bound")
        .isFalse();
  }

  /** Each of the four figures must stand the right way round; equal ones do. */
  @Test
  void ends_of_other_indices_and_check_valves_must_be_ordered_in_each_figure() {
    FlowCapacity middle =
        part(2.0, 0.3).withSubsonicIndex(0.6).withCrackingPressure(PressureDrop.ofBar(0.1));
    assertThat(new CapacityRange(middle, middle, SHEET).isExact()).isTrue();
    FlowCapacity higherIndex = middle.withSubsonicIndex(0.7);
    FlowCapacity opensLater = middle.withCrackingPressure(PressureDrop.ofBar(0.2));
    FlowCapacity lowerB =
        part(2.0, 0.2).withSubsonicIndex(0.6).withCrackingPressure(PressureDrop.ofBar(0.1));
    FlowCapacity lowerC =
        part(1.9, 0.3).withSubsonicIndex(0.6).withCrackingPressure(PressureDrop.ofBar(0.1));
    for (FlowCapacity less : List.of(higherIndex, opensLater, lowerB, lowerC)) {
      assertThat(new CapacityRange(less, middle, SHEET).least()).isEqualTo(less);
      assertThatIllegalArgumentException()
          .isThrownBy(() -> new CapacityRange(middle, less, SHEET))
          .withMessageStartingWith("smallest capacity must");
    }
  }

  @Test
  void c_alone_leaves_every_b() {
    CapacityRange range =
        CapacityRange.ofConductance(SonicConductance.ofCubicDecimetresPerSecondBar(3.5));
    assertThat(range.least()).isEqualTo(part(3.5, 0.0));
    assertThat(range.most()).isEqualTo(part(3.5, CapacityRange.MOST_B));
    assertThat(range.assumption().basis()).isEqualTo(Basis.COMMON_PRACTICE);
    assertThat(range.assumption().citation())
        .isEqualTo("b not told: from 0 to 0.528, that of a loss-free nozzle");
  }

  /** S = 5 C in mm² and dm³/(s·bar), as JIS B 8390 has it (from memory): within the digits of that 5. */
  @Test
  void an_effective_area_alone_leaves_every_b() {
    CapacityRange range = CapacityRange.ofEffectiveArea(Area.ofSquareMillimetres(12.0));
    assertThat(c(range.least())).isCloseTo(12.0 / 5.0, within(0.012));
    assertThat(range.most().conductance()).isEqualTo(range.least().conductance());
    assertThat(range.least().criticalPressureRatio()).isZero();
    assertThat(range.most().criticalPressureRatio()).isCloseTo(0.528282, within(5.0e-7));
  }

  /** Flows after IEC 60534, calculated by another program: none of a valve whose xT is taken leaves the range. */
  @Test
  void the_flows_of_valves_of_every_factor_lie_in_the_range_of_their_coefficient() {
    Rows.of(CapacityRangeTest.class, "kv_gas.csv")
        .filter(row -> row.number("x_t") >= 0.2)
        .filter(row -> row.number("gamma") == 1.4)
        .forEach(row -> {
          CapacityRange range =
              CapacityRange.ofValveCoefficient(ValveCoefficient.ofKv(row.number("kv_m3_h")));
          AirState inlet = AirState.of(
              AbsolutePressure.ofBar(row.number("p1_bar_abs")),
              Temperature.ofKelvins(row.number("t1_k")));
          AbsolutePressure outlet = AbsolutePressure.ofBar(row.number("p2_bar_abs"));
          // the constant and rounding of the two gases differ in the seventh digit
          assertThat(row.number("mdot_kg_s"))
              .as(row.text("case"))
              .isBetween(
                  range.least().flow(inlet, outlet).massFlow().kilogramsPerSecond()
                      * (1.0 - 1.0e-6),
                  range.most().flow(inlet, outlet).massFlow().kilogramsPerSecond()
                      * (1.0 + 1.0e-6));
        });
  }

  /** By hand, with b = 1 − xT: C rises with √xT and (C²)/(1 − b) is the same; the most has 9/8 of it, as IEC. */
  @Test
  void the_coefficient_alone_tells_the_slope_near_closing_but_not_the_choked_flow() {
    CapacityRange range = CapacityRange.ofValveCoefficient(ValveCoefficient.ofCv(1.4));
    assertThat(c(range.most()) / c(range.least())).isCloseTo(Math.sqrt(5.0), within(1.0e-12));
    assertThat(range.least().criticalPressureRatio()).isCloseTo(0.8, within(1.0e-12));
    assertThat(range.most().criticalPressureRatio()).isCloseTo(1.0 / 9.0, within(1.0e-12));
    // 4.57 Kv at xT 0.72, reference of the flow tables: C rises with the root of xT
    assertThat(c(range.most())).isCloseTo(4.57 * 1.4 / 1.156099 / Math.sqrt(0.72), within(0.01));
    double nearClosing = passes(range.most(), 0.99999) / passes(range.least(), 0.99999);
    assertThat(nearClosing).isCloseTo(Math.sqrt(9.0 / 8.0), within(1.0e-4));
  }

  @Test
  void a_flow_at_an_inlet_may_have_been_rated_at_any_drop_from_five_psi() {
    FreeAirFlow rated = FreeAirFlow.ofScfm60F(40.0);
    AbsolutePressure inlet = AbsolutePressure.ofPsi(104.7);
    CapacityRange range = CapacityRange.ofRatedFlow(rated, inlet, SHOP);
    for (double psi : new double[] {5.0, 20.0, 60.0, 90.0}) {
      for (double b : new double[] {0.0, 0.3, 0.528}) {
        FlowCapacity one = FlowCapacity.ofRatedFlow(rated, inlet, PressureDrop.ofPsi(psi), SHOP, b);
        for (double ratio = 0.0; ratio < 1.0; ratio += 0.01) {
          assertThat(passes(one, ratio))
              .isBetween(
                  passes(range.least(), ratio) * (1.0 - 1.0e-12),
                  passes(range.most(), ratio) * (1.0 + 1.0e-12));
        }
      }
    }
    assertThat(range.assumption().citation())
        .isEqualTo(
            "inlet at 90 psig as told, drop taken from 5 psi to all of it; b not told: from 0 to"
                + " 0.528, that of a loss-free nozzle");
    assertThat(CapacityRange.ofRatedFlow(rated).assumption().citation())
        .startsWith("inlet taken as 100 psig, drop");
  }

  @Test
  void an_inlet_that_leaves_no_drop_of_five_psi_is_refused() {
    FreeAirFlow rated = FreeAirFlow.ofScfm60F(40.0);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> CapacityRange.ofRatedFlow(rated, AbsolutePressure.ofPsi(19.7), SHOP))
        .withMessageStartingWith("inlet of a rating without a drop must be above 19.7 psia, was");
    assertThat(CapacityRange.ofRatedFlow(rated, AbsolutePressure.ofPsi(19.71), SHOP)
            .isExact())
        .isFalse();
  }

  private static RatedPoint point(double litres, double bar) {
    return new RatedPoint(
        FreeAirFlow.ofAnrLitresPerSecond(litres),
        AbsolutePressure.ofBar(7.0),
        PressureDrop.ofBar(bar),
        SHOP);
  }

  @Test
  void one_point_leaves_as_much_as_a_rated_flow() {
    CapacityRange range = CapacityRange.ofPoints(List.of(point(20.0, 0.5)));
    CapacityRange rated = CapacityRange.ofRatedFlow(
        FreeAirFlow.ofAnrLitresPerSecond(20.0),
        AbsolutePressure.ofBar(7.0),
        PressureDrop.ofBar(0.5),
        SHOP);
    assertThat(c(range.least())).isCloseTo(c(rated.least()), within(1.0e-9));
    assertThat(c(range.most())).isCloseTo(c(rated.most()), within(1.0e-9));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> CapacityRange.ofPoints(List.of()))
        .withMessage("points of a rating must be at least 1, was 0");
  }

  @Test
  void the_order_of_points_does_not_matter() {
    List<RatedPoint> points = List.of(point(12.0, 0.5), point(27.0, 3.0), point(31.0, 5.0));
    List<RatedPoint> turned = List.of(points.get(2), points.get(0), points.get(1));
    assertThat(CapacityRange.ofPoints(turned)).isEqualTo(CapacityRange.ofPoints(points));
  }

  @Test
  void a_point_that_cannot_be_is_refused() {
    assertThat(point(1.0, 6.999).drop()).isEqualTo(PressureDrop.ofBar(6.999));
    for (double bar : new double[] {0.0, 7.0}) {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> point(1.0, bar))
          .withMessageStartingWith(
              "rated drop must be above 0 and below the inlet pressure 700000.0 Pa(a), was");
    }
    assertThatIllegalArgumentException()
        .isThrownBy(() -> point(0.0, 1.0))
        .withMessage(
            "rated flow must be above 0, was 0.0 m³/s ANR; a part that passes nothing has no capacity");
  }

  /** The Cv that has a conductance whatever its xT is the one whose least it is; half the conductance, half the Cv. */
  @Test
  void a_conductance_has_a_cv_that_is_enough_whatever_its_xt() {
    CapacityRange range = CapacityRange.ofValveCoefficient(ValveCoefficient.ofCv(0.7));
    SonicConductance least = range.least().conductance();
    assertThat(CapacityRange.coefficientFor(least).cv()).isCloseTo(0.7, within(1.0e-12));
    assertThat(CapacityRange.coefficientFor(SonicConductance.ofCubicMetresPerSecondPascal(
                0.5 * least.cubicMetresPerSecondPascal()))
            .cv())
        .isCloseTo(0.35, within(1.0e-12));
    assertThat(CapacityRange.coefficientFor(range.most().conductance()).cv()).isGreaterThan(0.7);
  }
}
