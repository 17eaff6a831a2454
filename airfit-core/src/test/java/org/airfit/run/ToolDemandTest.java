package org.airfit.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.airfit.Comparison;
import org.airfit.Pencil;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.air.AirState;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.ReferenceState;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.Volume;
import org.airfit.working.Completeness;
import org.airfit.working.UnitSystem;
import org.airfit.working.Worked;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ToolDemandTest {

  private static final AbsolutePressure ATMOSPHERE = AbsolutePressure.ofPsi(14.7);
  private static final FreeAirFlow RATED = FreeAirFlow.ofScfm60F(30.0);
  private static final ToolDemand NUT_SETTER =
      ToolDemand.following("nut setter", RATED, AbsolutePressure.ofPsi(104.7));

  private static double atPsia(ToolDemand tool, double psia) {
    return tool.flowAt(AbsolutePressure.ofPsi(psia), ATMOSPHERE).kilogramsPerSecond();
  }

  @Test
  void at_its_rated_pressure_a_tool_takes_its_rated_flow() {
    double rated = RATED.massFlow().kilogramsPerSecond();
    assertThat(atPsia(NUT_SETTER, 104.7)).isCloseTo(rated, within(1.0e-14));
    assertThat(NUT_SETTER.rated()).isEqualTo(RATED);
    assertThat(NUT_SETTER.ratedInlet()).contains(AbsolutePressure.ofPsi(104.7));
  }

  @Test
  void its_flow_is_in_proportion_to_the_absolute_pressure() {
    assertThat(atPsia(NUT_SETTER, 52.35))
        .isCloseTo(0.5 * atPsia(NUT_SETTER, 104.7), within(1.0e-14));
  }

  @Test
  void towards_the_atmosphere_the_flow_goes_down_to_nothing() {
    double proportional = atPsia(NUT_SETTER, 104.7) * 18.0 / 104.7;
    assertThat(atPsia(NUT_SETTER, 18.0)).isBetween(0.5 * proportional, proportional);
    assertThat(atPsia(NUT_SETTER, 14.7)).isZero();
    assertThat(atPsia(NUT_SETTER, 10.0)).isZero();
  }

  /** Choked and not: the slope is that of a difference, and the pressure for a flow gives the flow. */
  @ParameterizedTest
  @ValueSource(doubles = {14.8, 18.0, 27.7, 28.0, 60.0, 104.7})
  void slope_and_inverse_belong_to_the_flow(double psia) {
    ToolDemand tool = NUT_SETTER.withLoad(0.6);
    double atmosphere = ATMOSPHERE.pascals();
    double p = AbsolutePressure.ofPsi(psia).pascals();
    double step = 0.1;
    double difference =
        (tool.flow(p + step, atmosphere) - tool.flow(p - step, atmosphere)) / (2.0 * step);
    assertThat(tool.slope(p, atmosphere)).isCloseTo(difference, within(1.0e-6 * difference));
    assertThat(tool.pascalsFor(tool.flow(p, atmosphere), atmosphere))
        .isCloseTo(p, within(1.0e-12 * p));
    assertThat(tool.flow(Double.NaN, atmosphere)).isZero();
    assertThat(tool.slope(atmosphere, atmosphere)).isZero();
    assertThat(ToolDemand.fixed("gun", RATED).slope(p, atmosphere)).isZero();
  }

  /** No pressure lies below none: nothing flows and nothing rises, with whatever stands around the tool. */
  @Test
  void on_plain_doubles_a_pressure_below_none_is_none() {
    for (double around : new double[] {-1.0e-54, -1.0e120, -0.0, 0.0, 1.0e-110, 1.0e5}) {
      for (double p : new double[] {-5.4e-104, -1.0e-300, 0.0, around, Double.NaN}) {
        assertThat(NUT_SETTER.flow(p, around)).as("%s around %s", p, around).isZero();
        assertThat(NUT_SETTER.slope(p, around)).as("%s around %s", p, around).isZero();
      }
    }
    // into a vacuum the tool chokes: flow and slope are those of the rating, at a hundredth of it
    double rated = RATED.massFlow().kilogramsPerSecond();
    double p = 1.047 * 6894.757293168361;
    for (double around : new double[] {-1.0e120, 0.0, 0.5 * p}) {
      assertThat(NUT_SETTER.flow(p, around)).isCloseTo(0.01 * rated, within(1.0e-15));
      assertThat(NUT_SETTER.slope(p, around)).isCloseTo(0.01 * rated / p, within(1.0e-18));
    }
  }

  /** Next to the atmosphere the curve of ISO 6358 is upright; a tool without load takes nothing there either. */
  @Test
  void the_slope_next_to_the_atmosphere_is_infinite_but_not_without_load() {
    double around = ATMOSPHERE.pascals();
    double next = Math.nextUp(around);
    assertThat(NUT_SETTER.slope(next, around)).isGreaterThan(1.0);
    assertThat(NUT_SETTER.withLoad(0.0).slope(next, around)).isZero();
    double small = 1.0e-310;
    assertThat(NUT_SETTER.slope(small, Math.nextDown(small))).isNotNaN().isPositive();
  }

  @Test
  void a_fixed_flow_does_not_ask_for_the_pressure() {
    ToolDemand fixed = ToolDemand.fixed("spray gun", RATED);
    assertThat(fixed.flowAt(ATMOSPHERE, ATMOSPHERE)).isEqualTo(RATED.massFlow());
    assertThat(atPsia(fixed, 104.7)).isEqualTo(RATED.massFlow().kilogramsPerSecond());
    assertThat(fixed.ratedInlet()).isEmpty();
  }

  @Test
  void duty_thins_the_mean_and_load_the_flow_itself() {
    ToolDemand grinder = NUT_SETTER.withDuty(0.25).withLoad(0.8);
    assertThat(grinder.duty()).isEqualTo(0.25);
    assertThat(grinder.load()).isEqualTo(0.8);
    assertThat(grinder.useFactor()).isEqualTo(0.2);
    assertThat(grinder.meanFlow()).isEqualTo(RATED.times(0.2));
    assertThat(atPsia(grinder, 104.7))
        .isCloseTo(0.8 * RATED.massFlow().kilogramsPerSecond(), within(1.0e-14));
    MassFlow fixed = ToolDemand.fixed("gun", RATED).withLoad(0.5).flowAt(ATMOSPHERE, ATMOSPHERE);
    assertThat(fixed).isEqualTo(RATED.massFlow().times(0.5));
  }

  @ParameterizedTest
  @ValueSource(doubles = {20.0, 52.35, 104.7})
  void the_printed_numbers_give_the_printed_flow(double psia) {
    AbsolutePressure inlet = AbsolutePressure.ofPsi(psia);
    Worked setter = units -> NUT_SETTER.withLoad(0.7).working(inlet, ATMOSPHERE, units);
    Pencil.check(setter);
    Completeness.check(setter);
    ToolDemand gun = ToolDemand.fixed("gun", RATED).withLoad(0.7);
    Worked fixed = units -> gun.working(inlet, ATMOSPHERE, units);
    Pencil.check(fixed);
    Completeness.check(fixed);
    assertThat(NUT_SETTER.working(ATMOSPHERE, ATMOSPHERE, UnitSystem.SI).toText())
        .contains("takes nothing");
  }

  @Test
  void what_is_no_tool_is_refused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> ToolDemand.fixed(" ", RATED))
        .withMessage("name of a tool must say which, was blank");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> ToolDemand.fixed("gun", FreeAirFlow.ofScfm60F(0.0)))
        .withMessageStartingWith("rated flow of gun must be above 0, was ");
    assertThatIllegalArgumentException()
        .isThrownBy(() ->
            ToolDemand.following("gun", FreeAirFlow.ofScfm60F(0.0), AbsolutePressure.ofBar(7.0)))
        .withMessageStartingWith("rated flow of gun must be above 0, was ");
  }

  /** 90 psi taken for absolute is a classic; 1 bar absolute is an open end. */
  @Test
  void a_rating_that_would_not_choke_is_refused() {
    // (2/(γ+1))^(γ/(γ−1)) of the pressure in front is the standard atmosphere
    AbsolutePressure just =
        AbsolutePressure.ofPascals(101_325.0 / Math.pow(2.0 / 2.4, 1.4 / (1.4 - 1.0)));
    assertThat(ToolDemand.following("gun", RATED, just).ratedInlet()).contains(just);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> ToolDemand.following(
            "gun", RATED, AbsolutePressure.ofPascals(Math.nextDown(just.pascals()))));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> ToolDemand.following("gun", RATED, AbsolutePressure.ofBar(1.91)))
        .withMessage(
            "rated inlet pressure of gun must be at least 191.801 kPa(a), was 191 kPa(a); is it a gauge pressure?");
  }

  @ParameterizedTest
  @ValueSource(doubles = {-1.0e-9, 1.000000001, Double.NaN})
  void a_part_above_all_or_below_nothing_is_refused(double share) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> NUT_SETTER.withDuty(share))
        .withMessage("duty of nut setter must be in [0, 1], was " + share);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> NUT_SETTER.withLoad(share))
        .withMessage("load of nut setter must be in [0, 1], was " + share);
  }

  @Test
  void a_tool_may_run_never_or_always_and_take_nothing_or_all() {
    for (double share : new double[] {0.0, 1.0}) {
      assertThat(NUT_SETTER.withDuty(share).duty()).isEqualTo(share);
      assertThat(NUT_SETTER.withLoad(share).load()).isEqualTo(share);
    }
    assertThat(NUT_SETTER.withDuty(-0.0)).isEqualTo(NUT_SETTER.withDuty(0.0));
    assertThat(NUT_SETTER.withLoad(-0.0)).isEqualTo(NUT_SETTER.withLoad(0.0));
  }

  @Test
  void equal_tools_are_equal() {
    ToolDemand same = ToolDemand.following("nut setter", RATED, AbsolutePressure.ofPsi(104.7));
    assertThat(NUT_SETTER).isEqualTo(same).hasSameHashCodeAs(same);
    assertThat(NUT_SETTER)
        .isNotEqualTo(same.withDuty(0.5))
        .isNotEqualTo(same.withLoad(0.5))
        .isNotEqualTo(ToolDemand.fixed("nut setter", RATED))
        .isNotEqualTo(ToolDemand.fixed("nut setter", RATED.times(2.0)))
        .isNotEqualTo(ToolDemand.fixed("drill", RATED))
        .isNotEqualTo("nut setter");
    assertThat(NUT_SETTER.toString())
        .startsWith("nut setter: 0.01")
        .endsWith("at its rated pressure");
    assertThat(ToolDemand.fixed("gun", RATED).toString()).endsWith("while it runs");
  }

  private static Row example(String id) {
    return Rows.of(ToolDemandTest.class, "/org/airfit/plant/worked_examples.csv")
        .filter(row -> row.text("id").equals(id))
        .findFirst()
        .orElseThrow();
  }

  private static Volume cylinder(double boreInches, double strokeInches) {
    return Volume.ofCubicFeet(Math.PI / 4.0 * boreInches * boreInches * strokeInches / 1728.0);
  }

  @Test
  void what_a_cylinder_takes_is_that_of_the_textbooks() {
    Row row = example("FA04");
    ReferenceState free = ReferenceState.SCFM_60F;
    AirState at80psig = AirState.of(AbsolutePressure.ofPsi(94.7), Temperature.ofFahrenheit(60.0));
    Comparison.of(
            "Run: demands",
            row + ", " + row.text("question"),
            row.number("published_answer"),
            "cfm",
            row.evidence("published_answer"))
        .isMetWithinFraction(
            ToolDemand.filling("cylinder", cylinder(2.0, 10.0), 40.0, at80psig)
                .rated()
                .at(free)
                .cubicFeetPerMinute(),
            3.0e-4,
            "14.7 for 14.696 psi, and half a unit of the last digit printed");
    Row other = example("FA02");
    AirState at100psig = AirState.of(AbsolutePressure.ofPsi(114.7), Temperature.ofFahrenheit(80.0));
    Comparison.of(
            "Run: demands",
            other + ", " + other.text("question"),
            other.number("recomputed"),
            "scfm",
            other.evidence("recomputed"))
        .isMetWithinFraction(
            ToolDemand.filling("cylinder", cylinder(1.75, 6.0), 30.0, at100psig)
                .rated()
                .at(ReferenceState.SCFM_68F)
                .cubicFeetPerMinute(),
            5.0e-4,
            "14.7 for 14.696 psi and 460 for 459.67 °R; the book rounds its answer to 2.0");
  }

  /** A compressor is measured use and a reserve; the book adds a quarter. */
  @Test
  void a_reserve_is_a_multiple_of_the_use() {
    Row row = example("CS01");
    FreeAirFlow use = FreeAirFlow.ofScfm60F(60.0);
    Comparison.of(
            "Run: demands",
            row + ", " + row.text("question"),
            row.number("published_answer"),
            "ft³/min",
            row.evidence("published_answer"))
        .isMetBy(
            FreeAirFlow.from(use.massFlow().times(1.25), ReferenceState.SCFM_60F)
                .cubicFeetPerMinute(),
            row.halfDigit("published_answer"),
            "half a unit of the last digit printed");
  }

  @Test
  void compressed_air_counted_as_free_air_is_that_of_the_textbook() {
    Row row = example("FA01");
    AirState line = AirState.of(AbsolutePressure.ofPsi(139.7), Temperature.ofFahrenheit(90.0));
    Volume aMinute = Volume.ofCubicFeet(30.0);
    double published = row.number("published_answer");
    double scfm60 = ToolDemand.filling("line", aMinute, 1.0, line)
        .rated()
        .at(ReferenceState.SCFM_60F)
        .cubicFeetPerMinute();
    Comparison.of(
            "Run: demands",
            row + ", " + row.text("question"),
            published,
            "cfm at 70 °F",
            row.evidence("published_answer"))
        .isMetBy(
            scfm60 * (459.67 + 70.0) / (459.67 + 60.0),
            row.halfDigit("published_answer"),
            "half a unit of the last digit printed");
  }

  @Test
  void a_cylinder_does_not_run_backwards() {
    AirState air = AirState.of(AbsolutePressure.ofBar(7.0), Temperature.ofCelsius(20.0));
    for (double cycles : new double[] {-1.0, 0.0, Double.NaN, Double.POSITIVE_INFINITY}) {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> ToolDemand.filling("cylinder", cylinder(2.0, 10.0), cycles, air))
          .withMessage("cycles per minute must be above 0 and finite, was " + cycles);
    }
  }
}
