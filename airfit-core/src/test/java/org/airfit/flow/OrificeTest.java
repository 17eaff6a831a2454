package org.airfit.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Locale;
import java.util.stream.Stream;
import org.airfit.Comparison;
import org.airfit.Pencil;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.air.AirState;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Temperature;
import org.airfit.working.Completeness;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class OrificeTest {

  /** Free air of the orifice tables: 14.7 psia at 530 °R. */
  private static final AbsolutePressure OPEN = AbsolutePressure.ofPsi(14.7);

  private static final Temperature AT_530_R = Temperature.ofKelvins(530.0 / 1.8);
  private static final AirState INLET =
      AirState.of(AbsolutePressure.ofBar(7.0), Temperature.ofCelsius(20.0));

  static Stream<Row> leaks() {
    return Rows.of(OrificeTest.class, "orifice_leak.csv");
  }

  static Stream<Row> table() {
    return Rows.of(OrificeTest.class, "orifice_table_published.csv");
  }

  static Stream<Row> second_table() {
    return Rows.of(OrificeTest.class, "orifice_discharge_cfm.csv");
  }

  static Stream<Row> sharp_leaks() {
    return Rows.of(OrificeTest.class, "doe_sharp_leak_quoted.csv");
  }

  @ParameterizedTest
  @MethodSource("leaks")
  void leaks_agree_with_the_nozzle_equation(Row row) {
    AbsolutePressure atmosphere = AbsolutePressure.ofBar(row.number("p_atm_bar_abs"));
    OrificeFlow leak = Orifice.of(Length.ofMillimetres(row.number("d_mm")), row.number("cd"))
        .flow(
            AirState.of(
                atmosphere.plus(PressureDrop.ofBar(row.number("p_gauge_bar"))),
                Temperature.ofKelvins(row.number("t0_k"))),
            atmosphere);
    assertThat(leak.regime().name().toLowerCase(Locale.ROOT)).isEqualTo(row.text("regime"));
    Comparison.of(
            "Flow: leaks",
            row + ", flow",
            row.number("mdot_kg_s"),
            "kg/s",
            row.evidence("mdot_kg_s"))
        .isMetWithinFraction(leak.massFlow().kilogramsPerSecond(), 2.0e-14, "15 digits printed");
    Comparison.of(
            "Flow: leaks",
            row + ", free air",
            row.number("q_anr_l_min"),
            "L/min ANR",
            row.evidence("q_anr_l_min"))
        .isMetWithinFraction(60.0 * leak.freeAir().litresPerSecond(), 2.0e-14, "15 digits printed");
    Pencil.check(leak);
    Completeness.check(leak);
  }

  private static double fraction(String text) {
    int slash = text.indexOf('/');
    int space = text.indexOf(' ');
    double whole = space < 0 ? 0.0 : Double.parseDouble(text.substring(0, space));
    return slash < 0
        ? Double.parseDouble(text)
        : whole
            + Double.parseDouble(text.substring(space + 1, slash))
                / Double.parseDouble(text.substring(slash + 1));
  }

  /**
   * Free air [ft³/min] through a hole of coefficient 1 into the open, at the 0.07494 lb/ft³ the tables count it with.
   */
  private static double cubicFeetPerMinute(double psig, double inches) {
    OrificeFlow flow = Orifice.of(Length.ofInches(inches), 1.0)
        .flow(AirState.of(OPEN.plus(PressureDrop.ofPsi(psig)), AT_530_R), OPEN);
    return flow.massFlow().poundsPerMinute() / 0.07494;
  }

  @ParameterizedTest
  @MethodSource("table")
  void the_handbook_table_agrees_within_its_rounding_and_its_formula(Row row) {
    Comparison.of(
            "Flow: orifice table of the handbooks",
            row.text("d_in") + " in, " + row.text("p_gauge_psi") + " psig",
            row.number("published_free_air_cfm"),
            "ft³/min",
            row.evidence("published_free_air_cfm"))
        .isMetBy(
            cubicFeetPerMinute(row.number("p_gauge_psi"), fraction(row.text("d_in"))),
            row.halfDigit("published_free_air_cfm") + 0.0038 * row.number("published_free_air_cfm"),
            "half a digit printed; 0.28 % because the table was made with 0.5303 for the constant 0.5317; 0.1 % "
                + "because 14.7 psia and 530 °R give 0.07486 lb/ft³, not its 0.07494");
  }

  /**
   * The same kind of table from a second print, of unknown making: its maker's note says all cells lie within 1.2 %.
   */
  @ParameterizedTest
  @MethodSource("second_table")
  void a_second_print_of_the_table_agrees(Row row) {
    Comparison.of(
            "Flow: orifice table, second print",
            row.text("orifice_dia_frac_in") + " in, " + row.text("p_upstream_psig") + " psig",
            row.number("discharge_cfm_free_air_coeff1"),
            "ft³/min",
            row.evidence("discharge_cfm_free_air_coeff1"))
        .isMetBy(
            cubicFeetPerMinute(row.number("p_upstream_psig"), row.number("orifice_dia_in")),
            row.halfDigit("discharge_cfm_free_air_coeff1")
                + 0.012 * row.number("discharge_cfm_free_air_coeff1"),
            "half a digit printed, and the 1.2 % by which the print strays from one formula");
  }

  @ParameterizedTest
  @MethodSource("sharp_leaks")
  void leaks_through_sharp_edges_lie_where_a_government_page_puts_them(Row row) {
    double lossless =
        cubicFeetPerMinute(row.number("p_psig"), fraction(row.text("orifice_dia_frac_in")));
    Comparison.of(
            "Flow: quoted leaks through sharp holes",
            row.text("orifice_dia_frac_in") + " in, " + row.text("p_psig") + " psig",
            row.number("leak_sharp_cfm"),
            "ft³/min",
            row.evidence("leak_sharp_cfm"))
        .isMetWithinFraction(
            0.61 * 0.97 * lossless,
            0.04,
            "two digits printed (2 %), and 0.61 or 0.61 × 0.97 are both read into the table (3 %)");
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.1, 0.3, 0.528, 0.6, 0.75, 0.9, 0.99, 0.9999})
  void the_capacity_of_iso_6358_is_never_far_from_the_nozzle(double ratio) {
    Orifice hole = Orifice.rounded(Length.ofMillimetres(3.0));
    AbsolutePressure outlet = AbsolutePressure.ofBar(7.0 * ratio);
    double nozzle = hole.flow(INLET, outlet).massFlow().kilogramsPerSecond();
    double iso = hole.capacity().flow(INLET, outlet).massFlow().kilogramsPerSecond();
    // the curves lie furthest apart where the drop vanishes: there their ratio is √(1 − b)/ψ
    assertThat(nozzle / iso).isBetween(1.0 - 1.0e-12, Math.sqrt(1.0 - 0.5282818) / 0.6847315);
  }

  @Test
  void no_drop_no_flow() {
    OrificeFlow still = Orifice.sharp(Length.ofMillimetres(3.0)).flow(INLET, INLET.pressure());
    assertThat(still.regime()).isEqualTo(FlowRegime.CLOSED);
    assertThat(still.massFlow().kilogramsPerSecond()).isZero();
    assertThat(still.working().toText()).contains("nothing flows");
  }

  @Test
  void the_two_curves_meet_where_it_chokes() {
    Orifice hole = Orifice.sharp(Length.ofMillimetres(3.0));
    double below =
        hole.flow(INLET, AbsolutePressure.ofBar(7.0 * 0.5282817)).massFlow().kilogramsPerSecond();
    double above =
        hole.flow(INLET, AbsolutePressure.ofBar(7.0 * 0.5282819)).massFlow().kilogramsPerSecond();
    assertThat(above).isCloseTo(below, within(1.0e-12 * below));
  }

  @Test
  void air_does_not_leak_uphill() {
    assertThatIllegalArgumentException()
        .isThrownBy(() ->
            Orifice.sharp(Length.ofMillimetres(3.0)).flow(INLET, AbsolutePressure.ofBar(7.001)));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.0, 1.0000001, Double.NaN})
  void a_discharge_coefficient_outside_its_range_is_refused(double cd) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Orifice.of(Length.ofMillimetres(3.0), cd))
        .withMessage("discharge coefficient must be in (0, 1], was " + cd);
  }

  @Test
  void a_hole_of_nothing_is_refused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Orifice.sharp(Length.ofMillimetres(0.0)))
        .withMessage("diameter of an orifice must be above 0 mm, was 0 mm");
  }

  @Test
  void equal_by_diameter_and_coefficient() {
    Orifice hole = Orifice.sharp(Length.ofMillimetres(3.0));
    assertThat(hole.diameter()).isEqualTo(Length.ofMillimetres(3.0));
    assertThat(hole)
        .isEqualTo(Orifice.of(Length.ofMillimetres(3.0), 0.65))
        .hasSameHashCodeAs(Orifice.of(Length.ofMillimetres(3.0), 0.65))
        .isNotEqualTo(Orifice.rounded(Length.ofMillimetres(3.0)))
        .isNotEqualTo(Orifice.sharp(Length.ofMillimetres(2.0)))
        .isNotEqualTo(new Object())
        .hasToString("orifice of 3 mm, Cd 0.65");
  }

  @Test
  void a_flow_through_a_hole_tells_of_the_hole() {
    OrificeFlow flow = Orifice.of(Length.ofMillimetres(3.0), 0.65).flow(INLET, OPEN);
    assertThat(flow.diameter()).isEqualTo(Length.ofMillimetres(3.0));
    assertThat(flow.dischargeCoefficient()).isEqualTo(0.65);
    assertThat(flow).hasToString(flow.massFlow().shown() + " through an orifice of 3 mm, Cd 0.65");
  }

  @Test
  void the_least_coefficient_has_a_working_too() {
    for (UnitSystem units : UnitSystem.values()) {
      assertThat(Orifice.of(Length.ofMetres(955.735), Double.MIN_VALUE)
              .flow(INLET, OPEN)
              .working(units)
              .toText())
          .contains("have lost digits here");
    }
  }
}
