package org.airfit.internal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.Stream;
import org.airfit.Comparison;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class SaturationTest {

  static Stream<Row> published() {
    return Rows.of(SaturationTest.class, "water_saturation.csv");
  }

  @ParameterizedTest
  @MethodSource("published")
  void saturation_pressures_agree_with_published_steam_tables(Row row) {
    boolean oldScale = row.text("scale").equals("IPTS-68");
    Comparison.of(
            "Air: saturation pressure of water",
            row.toString(),
            row.number("pressure_pa"),
            "Pa",
            row.evidence("pressure_pa"))
        .isMetWithinFraction(
            Saturation.pressure(row.number("temperature_k")),
            oldScale ? 1.4e-3 : 5.0e-4,
            oldScale
                ? "IPTS-68 lies up to 0.04 K from ITS-90, and the pressure moves 3.6 % per kelvin"
                : "the uncertainty both formulations claim, 0.025 % each (recalled)");
  }

  @Test
  void the_curve_ends_at_the_critical_point() {
    assertThat(Saturation.pressure(647.096)).isEqualTo(22.064e6);
  }

  @Test
  void warmer_air_holds_more_water() {
    double colder = 0.0;
    for (double kelvins = 273.15; kelvins <= 647.0; kelvins += 0.5) {
      double pressure = Saturation.pressure(kelvins);
      assertThat(pressure).as("at %s K", kelvins).isGreaterThan(colder);
      colder = pressure;
    }
  }
}
