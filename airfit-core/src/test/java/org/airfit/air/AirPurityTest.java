package org.airfit.air;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.Optional;
import java.util.stream.Stream;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.Density;
import org.airfit.quantity.Temperature;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class AirPurityTest {

  private static final AbsolutePressure LINE = AbsolutePressure.ofBar(8.0);

  private static Density milligrams(double perCubicMetre) {
    return Density.ofKilogramsPerCubicMetre(perCubicMetre * 1.0e-6);
  }

  private static DewPoint dew(double celsius) {
    return new DewPoint(Temperature.ofCelsius(celsius), LINE);
  }

  static Stream<Row> cases() {
    return Rows.of(AirPurityTest.class, "purity_cases.csv");
  }

  @ParameterizedTest
  @MethodSource("cases")
  void each_measurement_has_the_class_of_the_table(Row row) {
    AirPurity.ParticleCounts counts = new AirPurity.ParticleCounts(
        row.number("n_0p1_0p5um_per_m3"),
        row.number("n_0p5_1um_per_m3"),
        row.number("n_1_5um_per_m3"),
        row.text("over_5um_seen").equals("yes"));
    Optional<PurityClass> water = row.has("liquid_water_g_m3")
        ? Optional.of(AirPurity.ofLiquidWater(
            Density.ofKilogramsPerCubicMetre(row.number("liquid_water_g_m3") * 1.0e-3)))
        : AirPurity.ofWater(dew(row.number("pdp_degC")));
    assertThat(AirPurity.ofParticles(counts).map(PurityClass::toString))
        .isEqualTo(read(row.text("particle_class")));
    assertThat(water.map(PurityClass::toString)).isEqualTo(read(row.text("water_class")));
    assertThat(AirPurity.ofOil(milligrams(row.number("oil_mg_m3"))))
        .hasToString(row.text("oil_class"));
  }

  /** A class is one sign; more is why there is none. */
  private static Optional<String> read(String cell) {
    return cell.length() == 1 ? Optional.of(cell) : Optional.empty();
  }

  static Stream<Row> limits() {
    return Rows.of(AirPurityTest.class, "purity_classes.csv")
        .filter(row -> row.text("class").matches("[1-9]"));
  }

  /** Just at each limit of the table, and just beyond. */
  @ParameterizedTest
  @MethodSource("limits")
  void each_limit_of_the_table_belongs_to_its_class(Row row) {
    PurityClass named = PurityClass.parse(row.text("class"));
    if (row.has("pdp_degC_max")) {
      double limit = row.number("pdp_degC_max");
      assertThat(AirPurity.ofWater(dew(limit))).contains(named);
      assertThat(AirPurity.ofWater(dew(limit + 0.01))).isNotEqualTo(Optional.of(named));
    }
    if (row.has("total_oil_mg_m3_max")) {
      double limit = row.number("total_oil_mg_m3_max");
      assertThat(AirPurity.ofOil(milligrams(limit))).isEqualTo(named);
      assertThat(AirPurity.ofOil(milligrams(limit * 1.001))).isNotEqualTo(named);
    }
    if (row.has("particles_1_5um_per_m3_max")) {
      double limit = row.number("particles_1_5um_per_m3_max");
      assertThat(AirPurity.ofParticles(new AirPurity.ParticleCounts(0, 0, limit, false)))
          .contains(named);
      assertThat(AirPurity.ofParticles(new AirPurity.ParticleCounts(0, 0, limit + 1, false)))
          .isNotEqualTo(Optional.of(named));
    }
    String last = row.text("particle_mass_mg_m3") + row.text("liquid_water_g_m3");
    if (last.contains("Cp <=")) {
      assertThat(AirPurity.ofParticles(milligrams(named == PurityClass.CLASS_6 ? 5.0 : 10.0)))
          .isEqualTo(named);
    }
  }

  @Test
  void beyond_the_last_limit_is_x() {
    assertThat(AirPurity.ofParticles(milligrams(10.1))).isEqualTo(PurityClass.CLASS_X);
    assertThat(AirPurity.ofLiquidWater(Density.ofKilogramsPerCubicMetre(0.0101)))
        .isEqualTo(PurityClass.CLASS_X);
    assertThat(AirPurity.ofLiquidWater(Density.ofKilogramsPerCubicMetre(0.0005)))
        .isEqualTo(PurityClass.CLASS_7);
    assertThat(AirPurity.ofLiquidWater(Density.ofKilogramsPerCubicMetre(0.005)))
        .isEqualTo(PurityClass.CLASS_8);
  }

  @ParameterizedTest
  @ValueSource(strings = {"[2:4:1]", "2:4:1", " [ 2 : 4 : 1 ] ", "ISO 8573-1:2010 [2:4:1]"})
  void a_designation_is_read(String text) {
    assertThat(AirPurity.parse(text)).hasToString("ISO 8573-1:2010 [2:4:1]");
  }

  @Test
  void purer_air_meets_what_is_asked() {
    AirPurity asked = AirPurity.parse("[2:4:-]");
    assertThat(AirPurity.parse("[2:4:X]").meets(asked)).isTrue();
    assertThat(AirPurity.parse("[1:2:1]").meets(asked)).isTrue();
    assertThat(AirPurity.parse("[3:4:1]").meets(asked)).isFalse();
    assertThat(AirPurity.parse("[2:5:1]").meets(asked)).isFalse();
    assertThat(AirPurity.parse("[2:-:1]").meets(asked))
        .as("nobody told the water")
        .isFalse();
    assertThat(AirPurity.parse("[X:X:X]").meets(AirPurity.parse("[X:X:X]"))).isTrue();
    assertThat(AirPurity.parse("[0:4:1]").meets(AirPurity.parse("[0:4:1]")))
        .as("class 0 is what was agreed")
        .isFalse();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "[8:4:1]",
        "[2:4:5]",
        "2:4",
        "[2:4:1",
        "2:4:1]",
        "[2:4:1:1]",
        "a:b:c",
        "",
        "ISO 8573-1:2001 [2:4:1]"
      })
  void what_is_no_designation_is_refused(String text) {
    assertThatIllegalArgumentException().isThrownBy(() -> AirPurity.parse(text));
  }

  @Test
  void counts_and_liquids_are_amounts() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new AirPurity.ParticleCounts(0.0, -1.0, 0.0, false))
        .withMessage(
            "particles of 0.5 to 1 µm must be at least 0 per m³ and finite, were -1.0 per m³");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> AirPurity.ofLiquidWater(Density.ofKilogramsPerCubicMetre(0.0)))
        .withMessageContaining("dew point tells the class");
  }
}
