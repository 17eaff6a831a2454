package org.airfit.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import org.airfit.Comparison;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.quantity.Length;
import org.airfit.source.Basis;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class OrificeEdgeTest {

  private static final String CHAPTER = "Flow: discharge coefficients";

  private static final Map<String, OrificeEdge> EDGES = Map.of(
      "well rounded entrance (nozzle)", OrificeEdge.WELL_ROUNDED,
      "sharp-edged orifice, choked", OrificeEdge.SHARP,
      "sharp-edged orifice (leak estimates)", OrificeEdge.SHARP,
      "leak nozzle coefficient", OrificeEdge.SHARP,
      "conoidal mouthpiece, 0.23-1.1 atm effective", OrificeEdge.WELL_ROUNDED,
      "circular sharp-edged orifice", OrificeEdge.SHARP,
      "short cylindrical mouthpiece", OrificeEdge.SHORT_TUBE,
      "short cylindrical, rounded inner end", OrificeEdge.SHORT_TUBE_ROUNDED,
      "conical converging mouthpiece", OrificeEdge.CONE);

  static Stream<Row> rows() {
    return Rows.of(OrificeEdgeTest.class, "discharge_coefficients.csv");
  }

  @ParameterizedTest(name = "{0} {3}")
  @MethodSource("rows")
  void a_published_coefficient_lies_in_the_range_of_its_edge(Row row) {
    if (row.text("edge").contains("Perry")) {
      Comparison.of(
              CHAPTER,
              "sharp edge by Perry's curve, p2/p1 " + row.text("pressure_ratio"),
              row.number("cd_min"),
              "-",
              row.evidence("cd_min"))
          .isMetBy(
              OrificeEdge.sharpCoefficient(row.number("pressure_ratio")),
              1.0e-6,
              "six decimals printed");
      return;
    }
    OrificeEdge edge = Objects.requireNonNull(EDGES.get(row.text("edge")));
    assertThat(row.number("cd_min")).isGreaterThanOrEqualTo(edge.least());
    assertThat(row.number("cd_max")).isLessThanOrEqualTo(edge.most());
  }

  /** Two handbook tables say which coefficient to calculate with. */
  @ParameterizedTest
  @ValueSource(strings = {"well rounded entrance (nozzle)", "sharp-edged orifice, choked"})
  void the_orifice_tables_say_what_to_calculate_with(String name) {
    Row row = rows().filter(one -> one.text("edge").equals(name)).findFirst().orElseThrow();
    Comparison.of(CHAPTER, name, row.number("cd_min"), "-", row.evidence("cd_min"))
        .isMetBy(Objects.requireNonNull(EDGES.get(name)).coefficient(), 0.0, "as printed");
  }

  @ParameterizedTest
  @EnumSource
  void an_edge_knows_its_range_and_source(OrificeEdge edge) {
    assertThat(edge.coefficient()).isBetween(edge.least(), edge.most());
    assertThat(edge.least()).isBetween(0.5, edge.most());
    assertThat(edge.source().basis()).isEqualTo(Basis.HANDBOOK);
    assertThat(edge.label()).isNotBlank();
    assertThat(Orifice.of(Length.ofMillimetres(2.0), edge).dischargeCoefficient())
        .isEqualTo(edge.coefficient());
  }

  @Test
  void the_curve_ends_at_both_ends_and_is_asked_for_no_more() {
    assertThat(OrificeEdge.sharpCoefficient(0.0)).isCloseTo(0.8414, within(1e-15));
    assertThat(OrificeEdge.sharpCoefficient(1.0)).isCloseTo(0.6001, within(1e-12));
    for (double outside : new double[] {-1e-9, 1.0 + 1e-9, Double.NaN}) {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> OrificeEdge.sharpCoefficient(outside))
          .withMessageStartingWith("pressure ratio p2/p1 must be in [0, 1], was ");
    }
  }
}
