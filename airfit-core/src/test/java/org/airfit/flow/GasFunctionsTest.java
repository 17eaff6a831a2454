package org.airfit.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.Stream;
import org.airfit.Comparison;
import org.airfit.Pencil;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.working.Completeness;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The three families of gas functions: isentropic, adiabatic with friction, isothermal with friction. */
class GasFunctionsTest {

  private static final String CHAPTER = "Flow: gas functions";

  static Stream<Row> isentropic_rows() {
    return Rows.of(GasFunctionsTest.class, "isentropic.csv");
  }

  static Stream<Row> fanno_rows() {
    return Rows.of(GasFunctionsTest.class, "fanno.csv");
  }

  static Stream<Row> printed_rows() {
    return Rows.of(GasFunctionsTest.class, "gas_tables_published.csv");
  }

  static Stream<Row> handbook_rows() {
    return Rows.of(GasFunctionsTest.class, "fanno_isothermal_functions.csv");
  }

  static Stream<Row> choking_rows_of_air() {
    return Rows.of(GasFunctionsTest.class, "critical_ratios.csv")
        .filter(row -> row.number("gamma") == 1.4);
  }

  private static void exact(String table, Row row, String column, double ours) {
    Comparison.of(
            CHAPTER,
            table + ", M " + row.text("mach") + ", " + column,
            row.number(column),
            "-",
            row.evidence(column))
        .isMetBy(
            ours,
            row.halfDigit(column) + 4.0e-15 * row.number(column),
            "half a unit of the last digit printed, and the last digit of a double");
  }

  @ParameterizedTest
  @MethodSource("isentropic_rows")
  void isentropic_functions_agree_to_the_digits_printed(Row row) {
    IsentropicFlow flow = IsentropicFlow.atMach(row.number("mach"));
    exact("isentropic", row, "t_over_t0", flow.temperatureRatio());
    exact("isentropic", row, "p_over_p0", flow.pressureRatio());
    exact("isentropic", row, "rho_over_rho0", flow.densityRatio());
    exact("isentropic", row, "a_over_astar", flow.areaRatio());
    exact("isentropic", row, "massflow_function", flow.massFlowFunction());
    Pencil.check(flow);
    Completeness.check(flow);
  }

  @ParameterizedTest
  @MethodSource("fanno_rows")
  void adiabatic_functions_agree_to_the_digits_printed(Row row) {
    FannoFlow flow = FannoFlow.atMach(row.number("mach"));
    Comparison.of(
            CHAPTER,
            "Fanno, M " + row.text("mach") + ", f_darcy_lmax_over_d",
            row.number("f_darcy_lmax_over_d"),
            "-",
            row.evidence("f_darcy_lmax_over_d"))
        .isMetBy(
            flow.resistanceLeft(),
            row.halfDigit("f_darcy_lmax_over_d")
                + 1.0e-15
                + 4.0e-15 * row.number("f_darcy_lmax_over_d"),
            "half a unit of the last digit printed");
    exact("Fanno", row, "t_over_tstar", flow.temperatureRatio());
    exact("Fanno", row, "p_over_pstar", flow.pressureRatio());
    exact("Fanno", row, "rho_over_rhostar", flow.densityRatio());
    exact("Fanno", row, "v_over_vstar", flow.velocityRatio());
    exact("Fanno", row, "p0_over_p0star", flow.stagnationPressureRatio());
    if (row.number("mach") < 0.95) {
      Pencil.check(flow);
      Completeness.check(flow);
    }
  }

  private static double function(Row row) {
    double mach = row.number("mach");
    IsentropicFlow free = IsentropicFlow.atMach(mach);
    FannoFlow rubbed = FannoFlow.atMach(mach);
    return switch (row.text("column")) {
      case "t_over_t0" -> free.temperatureRatio();
      case "p_over_p0" -> free.pressureRatio();
      case "rho_over_rho0" -> free.densityRatio();
      case "a_over_astar" -> free.areaRatio();
      case "f_darcy_lmax_over_d" -> rubbed.resistanceLeft();
      case "t_over_tstar" -> rubbed.temperatureRatio();
      case "v_over_vstar" -> rubbed.velocityRatio();
      case "p_star_over_p" -> 1.0 / rubbed.pressureRatio();
      case "p_over_pstar" -> rubbed.pressureRatio();
      case "rho_over_rhostar" -> rubbed.densityRatio();
      case "p0_over_p0star" -> rubbed.stagnationPressureRatio();
      default -> throw new IllegalArgumentException("no column " + row.text("column"));
    };
  }

  @ParameterizedTest
  @MethodSource("printed_rows")
  void printed_textbook_tables_agree_to_their_last_digit(Row row) {
    Comparison.of(
            "Flow: gas tables in print",
            row.text("table") + ", M " + row.text("mach") + ", " + row.text("column") + ", "
                + row.text("published"),
            row.number("published"),
            "-",
            row.evidence("published"))
        .isMetBy(
            function(row), row.halfDigit("published"), "half a unit of the last digit printed");
  }

  @ParameterizedTest
  @MethodSource("handbook_rows")
  void friction_functions_of_both_flows_agree(Row row) {
    double mach = row.number("mach");
    FannoFlow adiabatic = FannoFlow.atMach(mach);
    exactHalf(row, "fanno_fD_Lstar_over_D", adiabatic.resistanceLeft());
    exactHalf(row, "fanno_p_over_pstar", adiabatic.pressureRatio());
    exactHalf(row, "fanno_p0_over_p0star", adiabatic.stagnationPressureRatio());
    exactHalf(row, "isothermal_fD_Lmax_over_D", IsothermalFlow.atMach(mach).resistanceLeft());
    Pencil.check(IsothermalFlow.atMach(mach));
    Completeness.check(IsothermalFlow.atMach(mach));
  }

  private static void exactHalf(Row row, String column, double ours) {
    Comparison.of(
            CHAPTER,
            "both, M " + row.text("mach") + ", " + column,
            row.number(column),
            "-",
            row.evidence(column))
        .isMetBy(ours, row.halfDigit(column), "half a unit of the last digit printed");
  }

  @ParameterizedTest
  @MethodSource("choking_rows_of_air")
  void choking_constants_of_air_agree(Row row) {
    IsentropicFlow sonic = IsentropicFlow.atMach(1.0);
    choking(row, "p_star_over_p0", sonic.pressureRatio());
    choking(row, "t_star_over_t0", sonic.temperatureRatio());
    choking(row, "rho_star_over_rho0", sonic.densityRatio());
    choking(row, "psi_choked", sonic.massFlowFunction());
    choking(row, "isothermal_choke_mach", IsothermalFlow.CHOKING_MACH);
  }

  private static void choking(Row row, String column, double ours) {
    Comparison.of(CHAPTER, "choking, " + column, row.number(column), "-", row.evidence(column))
        .isMetBy(ours, row.halfDigit(column) + 1.0e-15, "half a unit of the last digit printed");
  }

  @ParameterizedTest
  @ValueSource(doubles = {1.0e-6, 1.0e-3, 0.05, 0.3, 0.528, 0.8, 0.84, 0.99, 1.0})
  void what_goes_forward_comes_back(double mach) {
    // half of the digits go where a function is flat: at M = 1, and for p/p0 at M = 0
    double flat = mach > 0.9 ? 1.0e-7 : 1.0e-12;
    assertThat(FannoFlow.subsonicAtResistance(FannoFlow.atMach(mach).resistanceLeft())
            .mach())
        .isCloseTo(mach, within(flat * mach));
    assertThat(IsentropicFlow.atPressureRatio(IsentropicFlow.atMach(mach).pressureRatio())
            .mach())
        .isCloseTo(mach, within(1.0e-12 * mach + 4.0e-16 / mach));
    assertThat(IsentropicFlow.subsonicAtAreaRatio(
                Math.min(1.0e6, IsentropicFlow.atMach(mach).areaRatio()))
            .mach())
        .isCloseTo(mach, within(flat * mach));
    if (mach < 0.845) {
      assertThat(IsothermalFlow.atResistance(IsothermalFlow.atMach(mach).resistanceLeft())
              .mach())
          .isCloseTo(mach, within(1.0e-9 * mach));
      assertThat(IsothermalFlow.atMach(mach).pressureRatio())
          .isCloseTo(1.0 / (Math.sqrt(1.4) * mach), within(1.0e-14 / mach));
    }
  }

  @Test
  void without_friction_left_the_flow_is_choked() {
    assertThat(FannoFlow.subsonicAtResistance(0.0)).isEqualTo(FannoFlow.atMach(1.0));
    assertThat(FannoFlow.atMach(1.0).resistanceLeft()).isZero();
    assertThat(IsothermalFlow.atResistance(0.0).mach()).isEqualTo(IsothermalFlow.CHOKING_MACH);
    assertThat(IsothermalFlow.atMach(IsothermalFlow.CHOKING_MACH).resistanceLeft())
        .isZero();
    assertThat(IsentropicFlow.subsonicAtAreaRatio(1.0).mach()).isCloseTo(1.0, within(2.0e-8));
  }

  /** Beyond Mach 1 the published limit for M → ∞ is ((γ+1) ln((γ+1)/(γ−1)) − 2)/(2γ) = 0.8215. */
  @Test
  void supersonic_friction_has_a_limit() {
    assertThat(FannoFlow.atMach(100.0).resistanceLeft())
        .isCloseTo(0.8215, within(5.0e-4))
        .isLessThan(0.8215082);
  }

  @Test
  void air_at_rest_has_all_its_pressure_and_no_area_ratio() {
    IsentropicFlow rest = IsentropicFlow.atMach(0.0);
    assertThat(rest.pressureRatio()).isEqualTo(1.0);
    assertThat(rest.massFlowFunction()).isZero();
    assertThat(IsentropicFlow.atPressureRatio(1.0)).isEqualTo(rest);
    assertThatIllegalStateException().isThrownBy(rest::areaRatio);
  }

  @ParameterizedTest
  @ValueSource(doubles = {-1.0e-9, 100.0001, Double.NaN})
  void mach_numbers_outside_the_range_are_refused(double mach) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> IsentropicFlow.atMach(mach))
        .withMessage("Mach number must be in [0, 100], was " + mach);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> FannoFlow.atMach(mach))
        .withMessage("Mach number must be in [1e-6, 100], was " + mach);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> IsothermalFlow.atMach(mach))
        .withMessageStartingWith("Mach number must be in [1e-6, 0.845");
  }

  @ParameterizedTest
  @ValueSource(doubles = {-1.0e-9, 7.3e11, Double.NaN})
  void resistances_outside_the_range_are_refused(double resistance) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> FannoFlow.subsonicAtResistance(resistance))
        .withMessage("λL*/D must be in [0, 7.2e11], was " + resistance);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> IsothermalFlow.atResistance(resistance))
        .withMessage("λLmax/D must be in [0, 7.2e11], was " + resistance);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.0, 1.0000001, Double.NaN})
  void pressure_ratios_outside_the_range_are_refused(double ratio) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> IsentropicFlow.atPressureRatio(ratio))
        .withMessage("p/p0 must be in [1e-9, 1], was " + ratio);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.9999999, 1.0000001e6, Double.NaN})
  void area_ratios_outside_the_range_are_refused(double ratio) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> IsentropicFlow.subsonicAtAreaRatio(ratio))
        .withMessage("A/A* must be in [1, 1e6], was " + ratio);
  }

  @Test
  void equal_at_one_mach_number() {
    assertThat(IsentropicFlow.atMach(0.5))
        .isEqualTo(IsentropicFlow.atMach(0.5))
        .hasSameHashCodeAs(IsentropicFlow.atMach(0.5))
        .isNotEqualTo(IsentropicFlow.atMach(0.6))
        .isNotEqualTo(new Object())
        .hasToString("isentropic flow at Mach 0.5");
    assertThat(FannoFlow.atMach(0.5))
        .isEqualTo(FannoFlow.atMach(0.5))
        .hasSameHashCodeAs(FannoFlow.atMach(0.5))
        .isNotEqualTo(FannoFlow.atMach(0.6))
        .isNotEqualTo(new Object())
        .hasToString("adiabatic flow with friction at Mach 0.5");
    assertThat(IsothermalFlow.atMach(0.5))
        .isEqualTo(IsothermalFlow.atMach(0.5))
        .hasSameHashCodeAs(IsothermalFlow.atMach(0.5))
        .isNotEqualTo(IsothermalFlow.atMach(0.6))
        .isNotEqualTo(new Object())
        .hasToString("isothermal flow with friction at Mach 0.5");
  }

  /** Printed functions of Mach numbers below 0.95: near Mach 1 half of the digits go. */
  static Stream<Row> subsonic_rows() {
    return isentropic_rows().filter(row -> row.number("mach") > 0.0 && row.number("mach") < 0.95);
  }

  @ParameterizedTest
  @MethodSource("subsonic_rows")
  void a_mass_flow_function_leads_back_to_its_mach_number(Row row) {
    double mach = row.number("mach");
    assertThat(IsentropicFlow.subsonicAtMassFlowFunction(row.number("massflow_function"))
            .mach())
        .isCloseTo(mach, within(1.0e-13));
    assertThat(IsentropicFlow.atMach(mach).pressureLost())
        .isCloseTo(1.0 - row.number("p_over_p0"), within(4.0e-15));
  }

  /** By the series γ M²/2 of 1 − p/p0: at Mach 1e-6 a difference of two doubles has four digits. */
  @Test
  void a_small_loss_of_pressure_keeps_its_digits() {
    assertThat(IsentropicFlow.atMach(1.0e-6).pressureLost())
        .isCloseTo(0.7e-12, within(1.0e-12 * 0.7e-12));
    assertThat(IsentropicFlow.atMach(0.0).pressureLost()).isZero();
  }

  @Test
  void the_bounds_themselves_are_taken() {
    assertThat(IsentropicFlow.atMach(100.0).mach()).isEqualTo(100.0);
    assertThat(IsentropicFlow.atMach(-0.0)).hasSameHashCodeAs(IsentropicFlow.atMach(0.0));
    assertThat(IsentropicFlow.atPressureRatio(1.0)).hasSameHashCodeAs(IsentropicFlow.atMach(0.0));
    // M² = 5 (1e9^(1/3.5) − 1) of an ideal gas with γ = 1.4
    assertThat(IsentropicFlow.atPressureRatio(1.0e-9).mach())
        .isCloseTo(Math.sqrt(5.0 * (Math.pow(1.0e9, 2.0 / 7.0) - 1.0)), within(1.0e-9));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> IsentropicFlow.atPressureRatio(0.999999e-9))
        .withMessageStartingWith("p/p0 must be in [1e-9, 1]");
    assertThat(IsentropicFlow.subsonicAtAreaRatio(1.0).mach()).isCloseTo(1.0, within(1.0e-7));
    // far from the throat ψ is √γ M
    double psi = IsentropicFlow.atMach(1.0).massFlowFunction();
    assertThat(IsentropicFlow.subsonicAtAreaRatio(1.0e6).mach())
        .isCloseTo(psi / Math.sqrt(1.4) * 1.0e-6, within(1.0e-18));
    assertThat(IsentropicFlow.subsonicAtMassFlowFunction(psi).mach())
        .isCloseTo(1.0, within(1.0e-7));
    for (double outside : new double[] {0.0, -0.1, Math.nextUp(psi), Double.NaN}) {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> IsentropicFlow.subsonicAtMassFlowFunction(outside))
          .withMessageStartingWith("mass flow function must be in (0, 0.68473");
    }
    // long lines: λL/D is 1/(γ M²), less a term of order ln
    assertThat(FannoFlow.subsonicAtResistance(7.2e11).mach())
        .isCloseTo(1.0 / Math.sqrt(1.4 * 7.2e11), within(1.0e-14));
    assertThat(IsothermalFlow.atResistance(7.2e11).mach())
        .isCloseTo(1.0 / Math.sqrt(1.4 * 7.2e11), within(1.0e-14));
    assertThat(FannoFlow.atMach(1.0e-6).mach()).isEqualTo(1.0e-6);
    assertThat(FannoFlow.atMach(100.0).mach()).isEqualTo(100.0);
    assertThat(IsothermalFlow.atMach(1.0e-6).mach()).isEqualTo(1.0e-6);
  }
}
