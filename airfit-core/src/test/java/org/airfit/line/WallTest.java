package org.airfit.line;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.quantity.Length;
import org.airfit.source.Basis;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

class WallTest {

  static Stream<Row> rows() {
    return Rows.of(WallTest.class, "roughness.csv");
  }

  /** All a row prints: one figure or the two ends of a range. */
  private static List<Double> figures(Row row) {
    return Stream.of("roughness_mm", "min_mm", "max_mm")
        .filter(row::has)
        .map(row::number)
        .toList();
  }

  /** To the last digit printed: one table rounds 0.0018 in, another 5e-6 ft. */
  @ParameterizedTest(name = "{0}, {index}")
  @MethodSource("rows")
  void every_published_figure_lies_in_the_range_of_its_wall(Row row) {
    Wall wall = Wall.valueOf(row.text("wall"));
    for (String column : List.of("roughness_mm", "min_mm", "max_mm")) {
      if (row.has(column)) {
        assertThat(row.number(column))
            .as("%s, %s (%s)", row.text("material"), row.text("condition"), row.source())
            .isBetween(wall.least().millimetres() - 1e-12, wall.most().millimetres() + 1e-12);
      }
    }
  }

  /** The doors of the range and the value to calculate with are figures somebody published. */
  @ParameterizedTest
  @EnumSource
  void a_wall_holds_published_figures_only(Wall wall) {
    List<Double> published = rows()
        .filter(row -> row.text("wall").equals(wall.name()) && row.text("basis").equals("read"))
        .flatMap(row -> figures(row).stream())
        .toList();
    for (Length ours : List.of(wall.least(), wall.roughness(), wall.most())) {
      assertThat(published)
          .as("%s: %s", wall, ours)
          .anyMatch(figure -> Math.abs(figure - ours.millimetres()) < 1.0e-9);
    }
    assertThat(wall.roughness()).isBetween(wall.least(), wall.most());
    assertThat(wall.source().basis()).isEqualTo(Basis.HANDBOOK);
  }

  /** D30 of the published disagreements: a key named Steel holds the drawn class. */
  @Test
  void the_smooth_drawn_class_is_not_commercial_steel() {
    assertThat(Length.ofMillimetres(0.00152)).isLessThan(Wall.COMMERCIAL_STEEL.least());
    assertThat(Length.ofMillimetres(0.00152))
        .isBetween(Wall.DRAWN_COPPER_OR_BRASS.least(), Wall.DRAWN_COPPER_OR_BRASS.most());
  }

  /**
   * D31 to D33: one table is ten times rougher for copper; on stainless steel and rubber both tables stay in the
   * range.
   */
  @Test
  void tables_that_disagree_are_told_apart() {
    assertThat(Length.ofMillimetres(0.015)).isGreaterThan(Wall.DRAWN_COPPER_OR_BRASS.most());
    assertThat(
            Wall.STAINLESS_STEEL.most().metres() / Wall.STAINLESS_STEEL.least().metres())
        .isCloseTo(15.0, org.assertj.core.api.Assertions.within(1e-9));
    assertThat(Wall.STAINLESS_STEEL.roughness()).isEqualTo(Wall.STAINLESS_STEEL.most());
  }

  @Test
  void pipe_in_service_is_far_rougher_than_new_pipe() {
    assertThat(Wall.STEEL_IN_AIR_SERVICE.roughness().metres()
            / Wall.COMMERCIAL_STEEL.roughness().metres())
        .isBetween(17.0, 18.5); // "18 times new pipe" in the notes to the tables
    assertThat(Wall.COMMERCIAL_STEEL)
        .hasToString("commercial steel pipe, new: 0.045 mm (0.02 mm to 0.1 mm)");
    assertThat(Wall.LINED_STEEL).hasToString("steel pipe, plastic-coated inside: 0.005 mm");
  }
}
