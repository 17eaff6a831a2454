package org.airfit.joint;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.airfit.Comparison;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.ThreadTables;
import org.airfit.joint.Tube.Kind;
import org.airfit.quantity.HoseBore;
import org.airfit.quantity.Length;
import org.airfit.quantity.NominalThreadSize;
import org.airfit.source.Basis;
import org.airfit.thread.BsptThread;
import org.airfit.thread.Gender;
import org.airfit.thread.Limits;
import org.airfit.thread.NptThread;
import org.airfit.thread.ThreadFamily;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Steel pipe, copper tube and plastic tube. */
class TubeTest {

  private static final Map<String, ToDoubleFunction<Tube>> COPPER = new LinkedHashMap<>();
  private static final Map<String, ToDoubleFunction<Tube>> PLASTIC = new LinkedHashMap<>();

  static {
    COPPER.put("od_in", t -> t.outside().inches());
    COPPER.put("wall_in", t -> t.wall().inches());
    COPPER.put("od_tol_annealed_pm_in", t -> t.outsideTolerance().orElseThrow().inches());
    COPPER.put(
        "od_tol_drawn_pm_in", t -> t.outsideToleranceDrawn().orElseThrow().inches());
    COPPER.put("wall_tol_pm_in", t -> t.wallMinus().orElseThrow().inches());
    COPPER.put("od_mm", t -> t.outside().millimetres());
    COPPER.put("wall_mm", t -> t.wall().millimetres());
    COPPER.put("id_in", t -> t.bore().inches());
    COPPER.put("id_mm", t -> t.bore().millimetres());
    COPPER.put("area_check_in2", t -> t.boreArea().squareMillimetres() / (25.4 * 25.4));
    COPPER.put("bore_area_mm2", t -> t.boreArea().squareMillimetres());

    PLASTIC.put("od_mm", t -> t.outside().millimetres());
    PLASTIC.put("id_mm", t -> t.bore().millimetres());
    PLASTIC.put("wall_mm", t -> t.wall().millimetres());
    PLASTIC.put("od_in", t -> t.outside().inches());
    PLASTIC.put("id_in", t -> t.bore().inches());
    PLASTIC.put("min_bend_radius_mm", t -> t.leastBendRadius().orElseThrow().millimetres());
  }

  static Stream<Row> pipes() {
    return Rows.of(TubeTest.class, "pipe_steel_sch40_80.csv");
  }

  static Stream<Row> copper() {
    return Rows.of(TubeTest.class, "copper_tube_b88.csv");
  }

  static Stream<Row> plastic() {
    return Rows.of(TubeTest.class, "plastic_tube.csv")
        .filter(row -> row.text("basis").equals("read"));
  }

  static Stream<Row> nipples() {
    return Rows.of(TubeTest.class, "nipple_bore.csv");
  }

  private static void same(Row row, String what, String column, double ours, String why) {
    if (row.has(column)) {
      ThreadTables.compare(what, row, column, ours, row.halfDigit(column), why);
    }
  }

  @ParameterizedTest(name = "{0} {index}")
  @MethodSource("pipes")
  void steel_pipe_agrees_with_both_tables(Row row) {
    int schedule = (int) row.number("schedule");
    Tube inch = Tube.steelPipe(NominalThreadSize.parse(row.text("nps")), schedule);
    Tube metric = Tube.of(Kind.STEEL_PIPE_METRIC, row.text("nps"), row.text("schedule"));
    String chapter = "Pipe: steel, schedule " + schedule;
    String why = "digits printed";
    same(row, chapter, "od_in", inch.outside().inches(), why);
    same(row, chapter, "wall_in", inch.wall().inches(), why);
    same(row, chapter, "id_in", inch.bore().inches(), why);
    same(row, chapter, "id_mm_from_inch", inch.bore().millimetres(), why);
    same(row, chapter, "bore_area_mm2", inch.boreArea().squareMillimetres(), why);
    same(row, chapter, "od_mm", metric.outside().millimetres(), why);
    same(row, chapter, "wall_mm", metric.wall().millimetres(), why);
    same(row, chapter, "id_mm", metric.bore().millimetres(), why);
    same(
        row,
        chapter,
        "id_ratio_pow5",
        Math.pow(metric.bore().millimetres() / inch.bore().millimetres(), 5.0),
        why);
  }

  @ParameterizedTest(name = "{0} {index}")
  @MethodSource("copper")
  void copper_tube_agrees_with_the_published_table(Row row) {
    Tube tube = Tube.of(Kind.COPPER_TUBE, row.text("nominal"), row.text("type"));
    ThreadTables.compare("Tube: copper, type " + row.text("type"), row, tube, COPPER);
  }

  @Test
  void one_published_copper_area_is_found_to_be_too_large() {
    assertThat(copper()
            .filter(row -> row.has("bore_area_published_in2"))
            .filter(row -> {
              Tube tube = Tube.of(Kind.COPPER_TUBE, row.text("nominal"), row.text("type"));
              double ours = tube.boreArea().squareMillimetres() / (25.4 * 25.4);
              // one unit of the last digit: some rows are cut, not rounded
              return Math.abs(row.number("bore_area_published_in2") - ours)
                  > 2.0 * row.halfDigit("bore_area_published_in2");
            })
            .map(row -> row.text("nominal") + " " + row.text("type")))
        .containsExactly("1-1/4 K");
  }

  @ParameterizedTest(name = "{1}")
  @MethodSource("plasticNamed")
  void plastic_tube_agrees_with_the_rows_that_were_seen(Row row, String name) {
    Tube tube = Tube.of(Kind.PLASTIC_TUBE, name, "PA DIN 74324");
    PLASTIC.forEach((column, ours) -> Comparison.of(
            "Tube: plastic",
            name + ", " + column,
            row.number(column),
            ThreadTables.unit(column),
            row.evidence(column))
        .isMetBy(ours.applyAsDouble(tube), row.halfDigit(column), "digits printed"));
  }

  static Stream<Arguments> plasticNamed() {
    return plastic().map(row -> Arguments.of(row, row.text("nominal_od")));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("nipples")
  void a_nipple_is_as_wide_as_the_pipe_it_is_cut_from(Row row) {
    NominalThreadSize size = NominalThreadSize.parse(row.text("nps"));
    Tube thin = Tube.steelPipe(size, 40);
    Tube thick = Tube.steelPipe(size, 80);
    double root = NptThread.of(size).minorDiameterAtSmallEnd().millimetres();
    String chapter = "Threads: bore of nipples";
    String why = "digits printed";
    same(row, chapter, "npt_minor_at_small_end_k0_mm", root, why);
    same(
        row,
        chapter,
        "bspt_minor_at_small_end_mm",
        BsptThread.of(size).section(Gender.MALE, ThreadTables.END).minor().millimetres(),
        why);
    same(row, chapter, "nipple_bore_sch40_mm", thin.bore().millimetres(), why);
    same(row, chapter, "nipple_bore_sch80_mm", thick.bore().millimetres(), why);
    same(row, chapter, "root_wall_sch40_mm", 0.5 * (root - thin.bore().millimetres()), why);
    same(row, chapter, "root_wall_sch80_mm", 0.5 * (root - thick.bore().millimetres()), why);
    same(
        row,
        chapter,
        "area_ratio_sch80_to_sch40",
        thick.boreArea().squareMillimetres() / thin.boreArea().squareMillimetres(),
        why);
    Bore clear =
        new End.Threaded(ThreadFamily.NPT, size, Gender.MALE).clearBore().orElseThrow();
    assertThat(clear.limits()).isEqualTo(new Limits(thick.bore(), thin.bore()));
  }

  @Test
  void tolerances_open_and_close_the_bore() {
    Tube tube = Tube.of(Kind.COPPER_TUBE, "1/2", "L");
    Limits bore = tube.boreLimits().orElseThrow();
    // 0.545 in less 0.0025 and twice 0.004, plus as much
    assertThat(bore.least().inches()).isCloseTo(0.5345, within(1.0e-12));
    assertThat(bore.most().inches()).isCloseTo(0.5555, within(1.0e-12));
    assertThat(Tube.of(Kind.COPPER_TUBE, "1/2", "M").boreLimits()).isEmpty();
    assertThat(Tube.steelPipe(NominalThreadSize.ONE, 40).boreLimits()).isEmpty();
    assertThat(Tube.of(Kind.PLASTIC_TUBE, "4 mm", "PU").boreLimits()).isEmpty();
  }

  @Test
  void what_was_not_seen_says_so() {
    assertThat(Tube.of(Kind.PLASTIC_TUBE, "1/4", "PA SAE J844").source().basis())
        .isEqualTo(Basis.FROM_MEMORY);
    assertThat(Tube.of(Kind.PLASTIC_TUBE, "4 mm", "PU").source().basis())
        .isEqualTo(Basis.COMMON_PRACTICE);
    Tube pipe = Tube.steelPipe(NominalThreadSize.ONE_HALF, 40);
    assertThat(pipe.source().basis()).isEqualTo(Basis.STANDARD);
    assertThat(pipe.toleranceSource().basis()).isEqualTo(Basis.FROM_MEMORY);
    assertThat(Tube.of(Kind.COPPER_TUBE, "1", "K").toleranceSource().basis())
        .isEqualTo(Basis.STANDARD);
  }

  @Test
  void a_tube_that_no_table_has_is_refused_with_those_there_are() {
    assertThatThrownBy(() -> Tube.of(Kind.COPPER_TUBE, "1/4", "M"))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("1/4 K")
        .hasMessageContaining("was 1/4 M");
    assertThatThrownBy(() -> Tube.steelPipe(NominalThreadSize.ONE_SIXTEENTH, 40))
        .hasMessageContaining("1/8 40");
    assertThatThrownBy(() -> Tube.steelPipe(NominalThreadSize.ONE, 160))
        .hasMessageContaining("was 1 160");
  }

  /** The table read anew, beside numbers of ASME B36.10M, ASTM B88 and DIN 74324 as they stand in the tables above. */
  @Test
  void each_row_is_read_in_its_unit_with_its_tolerances_and_sources() {
    List<Tube> read = Tube.read();
    Tube pipe = anew(read, Kind.STEEL_PIPE, "1/2", "40");
    assertThat(pipe.outside().inches()).isCloseTo(0.840, within(1.0e-12));
    assertThat(pipe.wall().inches()).isCloseTo(0.109, within(1.0e-12));
    assertThat(pipe.toleranceSource().basis()).isEqualTo(Basis.FROM_MEMORY);
    assertThat(pipe.source().basis()).isEqualTo(Basis.STANDARD);
    assertThat(pipe.leastBendRadius()).isEmpty();
    Tube copper = anew(read, Kind.COPPER_TUBE, "1/2", "L");
    assertThat(copper.outside().inches()).isCloseTo(0.625, within(1.0e-12));
    assertThat(copper.outsideTolerance().orElseThrow().inches()).isCloseTo(0.0025, within(1.0e-12));
    assertThat(copper.wallPlus().orElseThrow().inches()).isCloseTo(0.004, within(1.0e-12));
    assertThat(copper.toleranceSource()).isEqualTo(copper.source());
    Tube plastic = anew(read, Kind.PLASTIC_TUBE, "6 x 1 mm", "PA DIN 74324");
    assertThat(plastic.outside().millimetres()).isCloseTo(6.0, within(1.0e-12));
    assertThat(plastic.wall().millimetres()).isCloseTo(1.0, within(1.0e-12));
    assertThat(plastic.leastBendRadius()).isPresent();
  }

  private static Tube anew(List<Tube> read, Kind kind, String name, String type) {
    return read.stream()
        .filter(tube ->
            tube.kind() == kind && tube.name().equals(name) && tube.type().equals(type))
        .findFirst()
        .orElseThrow();
  }

  /** 21.336 mm outside, 15.7988 mm bore: 0.84 and 0.622 in. */
  @Test
  void a_tube_prints_with_outside_and_bore() {
    assertThat(Tube.steelPipe(NominalThreadSize.ONE_HALF, 40))
        .hasToString("steel pipe, schedule 40 1/2: 21.34 mm outside, 15.8 mm bore");
    assertThat(Kind.PLASTIC_TUBE.label()).isEqualTo("plastic tube");
  }

  @Test
  void a_tube_tells_what_it_is() {
    Tube pipe = Tube.steelPipe(NominalThreadSize.ONE_HALF, 40);
    assertThat(pipe.toString()).startsWith("steel pipe, schedule 40 1/2: ").contains("bore");
    assertThat(pipe.kind()).isEqualTo(Kind.STEEL_PIPE);
    assertThat(pipe.name() + " " + pipe.type()).isEqualTo("1/2 40");
    assertThat(pipe.wallPlus()).isEmpty();
    assertThat(Tube.all(Kind.STEEL_PIPE)).hasSize(26);
    assertThat(Tube.all(Kind.COPPER_TUBE)).hasSize(26);
  }

  @Test
  void the_next_size_up_has_at_least_the_bore_and_the_one_below_has_less() {
    Tube inch = Tube.steelPipe(NominalThreadSize.ONE, 40);
    assertThat(Tube.nextSizeUp(Tube.Kind.STEEL_PIPE, "40", inch.bore())).contains(inch);
    assertThat(Tube.nextSizeUp(Tube.Kind.STEEL_PIPE, "40", inch.bore().times(1.0001)))
        .contains(Tube.steelPipe(NominalThreadSize.ONE_AND_A_QUARTER, 40));
    assertThat(Tube.nextSizeUp(Tube.Kind.STEEL_PIPE, "40", Length.ofMetres(1.0)))
        .isEmpty();
    assertThat(Tube.nextSizeUp(Tube.Kind.STEEL_PIPE, "no such type", inch.bore()))
        .isEmpty();
  }

  @Test
  void the_next_hose_up_is_wide_enough_even_at_its_least() {
    // ISO 1307: 10 mm hose has 8.7 mm at least, made without a mandrel
    assertThat(StandardHose.nextSizeUp(Length.ofMillimetres(8.7)).orElseThrow().nominal())
        .isEqualTo(HoseBore.parse("10 mm"));
    assertThat(StandardHose.nextSizeUp(Length.ofMillimetres(8.71)).orElseThrow().nominal())
        .isEqualTo(HoseBore.parse("12.5 mm"));
    assertThat(StandardHose.nextSizeUp(Length.ofMillimetres(60.0))).isEmpty();
  }
}
