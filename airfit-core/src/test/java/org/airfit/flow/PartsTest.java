package org.airfit.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.airfit.Comparison;
import org.airfit.Pencil;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.air.AirState;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.working.Completeness;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Parts in series and in parallel. */
class PartsTest {

  private static final String CHAPTER = "Flow: parts in series and in parallel";
  private static final AirState INLET =
      AirState.of(AbsolutePressure.ofBar(7.0), Temperature.ofKelvins(293.15));

  static Stream<Row> networks() {
    return Rows.of(PartsTest.class, "iso6358_network.csv");
  }

  static Stream<Row> handbook_rows() {
    return Rows.of(PartsTest.class, "iso6358_series_cases.csv");
  }

  private static FlowCapacity part(double c, double b) {
    return FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(c), b);
  }

  private static List<FlowCapacity> parts(Row row) {
    return Stream.of(row.text("parts_C_dm3_s_bar_b_m").split("\\|", -1))
        .map(figures -> figures.split(";", -1))
        .map(f -> part(Double.parseDouble(f[0]), Double.parseDouble(f[1]))
            .withSubsonicIndex(Double.parseDouble(f[2])))
        .toList();
  }

  @ParameterizedTest
  @MethodSource("networks")
  void exact_flows_and_the_approximation_agree(Row row) {
    AirState inlet = AirState.of(
        AbsolutePressure.ofBar(row.number("p1_bar_abs")),
        Temperature.ofKelvins(row.number("t1_k")));
    AbsolutePressure outlet = AbsolutePressure.ofBar(row.number("p2_bar_abs"));
    boolean series = row.text("kind").equals("series");
    GroupFlow exact = series
        ? PartsInSeries.of(parts(row)).flow(inlet, outlet)
        : PartsInParallel.of(parts(row)).flow(inlet, outlet);
    FlowCapacity one = series
        ? PartsInSeries.of(parts(row)).approximation()
        : PartsInParallel.of(parts(row)).approximation();
    assertThat(exact.regime())
        .isEqualTo(row.text("regime").equals("choked") ? FlowRegime.CHOKED : FlowRegime.SUBSONIC);
    compare(row, "mdot_kg_s_exact", "kg/s", exact.massFlow().kilogramsPerSecond(), 1.0e-13);
    compare(
        row, "q_anr_l_min_exact", "L/min ANR", 60.0 * exact.freeAir().litresPerSecond(), 1.0e-13);
    compare(
        row,
        "c_total_approx_dm3_s_bar",
        "dm³/(s·bar)",
        one.conductance().cubicDecimetresPerSecondBar(),
        1.0e-11);
    compare(row, "b_total_approx", "-", one.criticalPressureRatio(), 1.0e-11);
    compare(
        row,
        "q_anr_l_min_approx",
        "L/min ANR",
        60.0 * one.flow(inlet, outlet).freeAir().litresPerSecond(),
        1.0e-11);
    Pencil.check(exact);
    Completeness.check(exact);
  }

  private static void compare(Row row, String column, String unit, double ours, double fraction) {
    Comparison.of(CHAPTER, row + ", " + column, row.number(column), unit, row.evidence(column))
        .isMetWithinFraction(ours, fraction, "all digits printed: 15 exact, 12 approximate");
  }

  private static final Pattern FIGURES = Pattern.compile("C=([0-9.]+) b=([0-9.]+)");

  @ParameterizedTest
  @MethodSource("handbook_rows")
  void a_second_set_of_series_agrees(Row row) {
    List<FlowCapacity> parts = FIGURES
        .matcher(row.text("elements_in_flow_order"))
        .results()
        .map(found -> part(Double.parseDouble(found.group(1)), Double.parseDouble(found.group(2))))
        .toList();
    GroupFlow flow = PartsInSeries.of(parts)
        .flow(
            INLET.at(AbsolutePressure.ofBar(row.number("p1_bar_abs"))),
            AbsolutePressure.ofBar(row.number("p2_bar_abs")));
    Comparison.of(
            CHAPTER,
            row + ", flow",
            row.number("q_l_min_ANR"),
            "L/min ANR",
            row.evidence("q_l_min_ANR"))
        .isMetBy(
            60.0 * flow.freeAir().litresPerSecond(),
            row.halfDigit("q_l_min_ANR"),
            "half a unit of the last digit printed");
  }

  @Test
  void the_pressures_between_chain_up() {
    PartsInSeries series = PartsInSeries.of(List.of(part(8, 0.3), part(6, 0.45), part(4, 0.2)));
    GroupFlow flow = series.flow(INLET, AbsolutePressure.ofBar(6.0));
    assertThat(flow.between()).hasSize(2);
    AirState air = INLET;
    for (int i = 0; i < 3; i++) {
      AbsolutePressure behind = i < 2 ? flow.between().get(i) : AbsolutePressure.ofBar(6.0);
      assertThat(series.parts().get(i).flow(air, behind).massFlow().kilogramsPerSecond())
          .isCloseTo(flow.massFlow().kilogramsPerSecond(), within(1.0e-12));
      air = air.at(behind);
    }
  }

  @Test
  void one_part_alone_is_that_part() {
    FlowCapacity one = part(4, 0.2);
    AbsolutePressure low = AbsolutePressure.ofBar(1.0);
    AbsolutePressure high = AbsolutePressure.ofBar(6.5);
    for (AbsolutePressure outlet : List.of(low, high)) {
      FlowAtOutlet alone = one.flow(INLET, outlet);
      GroupFlow series = PartsInSeries.of(List.of(one)).flow(INLET, outlet);
      GroupFlow parallel = PartsInParallel.of(List.of(one)).flow(INLET, outlet);
      assertThat(series.regime()).isEqualTo(alone.regime());
      assertThat(parallel.regime()).isEqualTo(alone.regime());
      assertThat(series.massFlow().kilogramsPerSecond())
          .isCloseTo(alone.massFlow().kilogramsPerSecond(), within(1.0e-15));
      assertThat(parallel.massFlow()).isEqualTo(alone.massFlow());
    }
  }

  @Test
  void nothing_flows_without_a_drop_or_through_a_shut_valve() {
    FlowCapacity shut = part(4, 0.2).withCrackingPressure(PressureDrop.ofBar(6.5));
    AbsolutePressure same = INLET.pressure();
    assertThat(PartsInSeries.of(List.of(part(4, 0.2))).flow(INLET, same).regime())
        .isEqualTo(FlowRegime.CLOSED);
    assertThat(PartsInParallel.of(List.of(part(4, 0.2))).flow(INLET, same).regime())
        .isEqualTo(FlowRegime.CLOSED);
    GroupFlow stopped =
        PartsInSeries.of(List.of(shut, part(4, 0.2))).flow(INLET, AbsolutePressure.ofBar(1.0));
    assertThat(stopped.regime()).isEqualTo(FlowRegime.CLOSED);
    assertThat(stopped.massFlow().kilogramsPerSecond()).isZero();
  }

  @Test
  void no_parts_are_no_group() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> PartsInSeries.of(List.of()))
        .withMessage("parts in series must be at least 1, was 0");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> PartsInParallel.of(List.of()))
        .withMessage("parts in parallel must be at least 1, was 0");
  }

  @Test
  void equal_by_their_parts() {
    List<FlowCapacity> two = List.of(part(4, 0.2), part(3, 0.2));
    assertThat(PartsInSeries.of(two))
        .isEqualTo(PartsInSeries.of(two))
        .hasSameHashCodeAs(PartsInSeries.of(two))
        .isNotEqualTo(PartsInSeries.of(two.subList(0, 1)))
        .isNotEqualTo(new Object());
    assertThat(PartsInParallel.of(two))
        .isEqualTo(PartsInParallel.of(two))
        .hasSameHashCodeAs(PartsInParallel.of(two))
        .isNotEqualTo(PartsInParallel.of(two.subList(0, 1)))
        .isNotEqualTo(new Object());
    assertThat(PartsInParallel.of(two).parts()).isEqualTo(two);
    assertThat(PartsInSeries.of(two))
        .hasToString("in series: [C 4 dm³/(s·bar), b 0.2, C 3 dm³/(s·bar), b 0.2]");
    assertThat(PartsInParallel.of(two))
        .hasToString("in parallel: [C 4 dm³/(s·bar), b 0.2, C 3 dm³/(s·bar), b 0.2]");
  }

  @Test
  void a_working_says_whether_its_parts_lie_in_series_or_side_by_side() {
    List<FlowCapacity> parts = List.of(
        FlowCapacity.of(SonicConductance.parse("4 dm³/(s·bar)"), 0.2),
        FlowCapacity.of(SonicConductance.parse("3 dm³/(s·bar)"), 0.2));
    AbsolutePressure outlet = AbsolutePressure.ofBar(6.0);
    assertThat(PartsInSeries.of(parts).flow(INLET, outlet).working().title()).contains("series");
    assertThat(PartsInParallel.of(parts).flow(INLET, outlet).working().title())
        .contains("side by side");
  }

  /** A check valve that stays shut, one that opens beyond its critical ratio, and a vacuum behind them all. */
  @ParameterizedTest
  @ValueSource(doubles = {0.0, 1.0e-300, 1.0e-29, 1.0, 1.0e5})
  void parts_behind_a_cracking_pressure_have_an_answer_into_a_vacuum_too(double outlet) {
    AirState air = AirState.of(AbsolutePressure.ofBar(7.0), Temperature.ofCelsius(20.0));
    FlowCapacity open = FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(3.0), 0.3);
    FlowCapacity wide = FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(3.0), 0.0);
    for (double bar : new double[] {0.0, 0.1, 1.0, 4.9, 5.0, 6.9, 7.0, 8.0, 100.0}) {
      FlowCapacity check = open.withCrackingPressure(PressureDrop.ofBar(bar));
      FlowCapacity other = wide.withCrackingPressure(PressureDrop.ofBar(bar));
      for (List<FlowCapacity> parts : List.of(
          List.of(check),
          List.of(open, check),
          List.of(check, open, other),
          List.of(other, wide))) {
        GroupFlow flow = PartsInSeries.of(parts).flow(air, AbsolutePressure.ofPascals(outlet));
        assertThat(flow.between()).hasSize(parts.size() - 1);
        assertThat(flow.regime() == FlowRegime.CLOSED)
            .isEqualTo(flow.massFlow().kilogramsPerSecond() == 0.0);
        if (bar >= 7.0) {
          assertThat(flow.regime()).isEqualTo(FlowRegime.CLOSED);
          int shut = parts.indexOf(parts.contains(check) ? check : other);
          assertThat(flow.between().subList(shut, parts.size() - 1))
              .allMatch(AbsolutePressure.ofPascals(outlet)::equals);
        } else if (parts.size() == 1 && outlet < 7.0e5 - 1.0e5 * bar) {
          assertThat(flow.regime()).isNotEqualTo(FlowRegime.CLOSED);
          Pencil.check(flow);
        }
        for (UnitSystem units : UnitSystem.values()) {
          assertThat(flow.working(units).toText()).doesNotContain("NaN");
        }
      }
    }
  }

  /** Both rules are exact for equal parts side by side: n C, and the b of one. */
  @Test
  void equal_parts_side_by_side_are_one_of_the_same_b() {
    FlowCapacity all =
        PartsInParallel.of(List.of(part(2, 0.25), part(2, 0.25), part(2, 0.25))).approximation();
    assertThat(all.conductance().cubicDecimetresPerSecondBar()).isCloseTo(6.0, within(1.0e-12));
    assertThat(all.criticalPressureRatio()).isCloseTo(0.25, within(1.0e-12));
  }

  @Test
  void a_group_tells_of_its_parts_and_where_one_chokes() {
    List<FlowCapacity> two = List.of(part(4, 0.2), part(3, 0.2));
    AbsolutePressure low = AbsolutePressure.ofBar(1.0);
    GroupFlow series = PartsInSeries.of(two).flow(INLET, low);
    GroupFlow beside = PartsInParallel.of(two).flow(INLET, low);
    assertThat(series.parts()).hasSize(2).allMatch(OutletAtFlow.Passes.class::isInstance);
    assertThat(beside.parts())
        .containsExactly(two.get(0).flow(INLET, low), two.get(1).flow(INLET, low));
    assertThat(series).hasToString(series.massFlow().shown() + " through 2 parts in series");
    assertThat(beside).hasToString(beside.massFlow().shown() + " through 2 parts side by side");
    String choked = "A part chokes: a lower pressure behind the last one changes nothing.";
    assertThat(series.working().toText()).contains(choked, "Δp1", "Δp2");
    assertThat(PartsInSeries.of(two)
            .flow(INLET, AbsolutePressure.ofBar(6.5))
            .working()
            .toText())
        .doesNotContain(choked)
        .contains("Δp1", "Δp2");
  }

  /** The least pressure at which the last part still chokes. */
  @Test
  void a_row_is_choked_also_where_the_pressure_behind_is_just_what_its_choked_flow_leaves() {
    FlowCapacity one = part(4, 0.3);
    double most = one.chokedFlow(INLET).kilogramsPerSecond();
    double behind = one.element().outlet(most, 7.0e5, 293.15, 1.8e-5);
    GroupFlow flow = PartsInSeries.of(List.of(one)).flow(INLET, AbsolutePressure.ofPascals(behind));
    assertThat(flow.regime()).isEqualTo(FlowRegime.CHOKED);
    assertThat(flow.massFlow()).isEqualTo(one.chokedFlow(INLET));
  }

  /** Behind a part that shuts there is air to tell of down to 1e-30 Pa, as an air state has it. */
  @Test
  void behind_a_part_that_shuts_there_is_air_down_to_the_least_an_air_state_has() {
    List<FlowCapacity> shut =
        List.of(part(4, 0.3).withCrackingPressure(PressureDrop.ofBar(8.0)), part(4, 0.3));
    assertThat(PartsInSeries.of(shut)
            .flow(INLET, AbsolutePressure.ofPascals(1.0e-30))
            .parts())
        .hasSize(2);
    assertThat(PartsInSeries.of(shut)
            .flow(INLET, AbsolutePressure.ofPascals(9.9e-31))
            .parts())
        .hasSize(1);
  }
}
