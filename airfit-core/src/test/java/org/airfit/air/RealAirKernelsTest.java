package org.airfit.air;

import java.util.stream.Stream;
import org.airfit.Comparison;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The equations of real air far outside a shop: there the terms count that are lost in the last digits at 20 °C, such as
 * vibrations of the molecules, which begin at some 500 K, and the high powers of the density in the viscosity.
 */
class RealAirKernelsTest {

  static Stream<Row> viscosities() {
    return Rows.of(RealAirKernelsTest.class, "air_wide_range.csv")
        .filter(row -> !row.text("viscosity_upa_s").isEmpty());
  }

  static Stream<Row> heatCapacities() {
    return Rows.of(RealAirKernelsTest.class, "air_wide_range.csv")
        .filter(row -> !row.text("cv_j_kgk").isEmpty());
  }

  private static double delta(Row row) {
    return RealAirKernels.delta(row.number("density_mol_m3") * RealAirKernels.MOLAR_MASS);
  }

  private static Comparison comparison(Row row, String column, String unit) {
    return Comparison.of(
        "Air: real gas, from liquid air to 2000 K",
        row.text("t_k") + " K, " + row.text("density_mol_m3") + " mol/m³, " + column,
        row.number(column),
        unit,
        row.evidence(column));
  }

  @ParameterizedTest
  @MethodSource("viscosities")
  void viscosity_agrees_with_the_check_table_of_its_paper(Row row) {
    double ours = 1.0e6
        * (RealAirKernels.diluteViscosity(row.number("t_k"))
            + RealAirKernels.residualViscosity(RealAirKernels.tau(row.number("t_k")), delta(row)));
    comparison(row, "viscosity_upa_s", "µPa·s")
        .isMetBy(ours, row.halfDigit("viscosity_upa_s"), "half a unit of the last digit printed");
  }

  @ParameterizedTest
  @MethodSource("heatCapacities")
  void heat_capacity_agrees_with_another_program_of_the_same_equation(Row row) {
    double ours =
        RealAirKernels.isochoricHeatCapacity(RealAirKernels.tau(row.number("t_k")), delta(row));
    comparison(row, "cv_j_kgk", "J/(kg K)")
        .isMetBy(ours, row.halfDigit("cv_j_kgk"), "half a unit of the last digit written");
  }
}
