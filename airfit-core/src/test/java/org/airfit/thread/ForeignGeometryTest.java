package org.airfit.thread;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import java.util.stream.Stream;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.source.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The kernels of the foreign threads, each made anew from diameter and pitch and held against the tables. */
class ForeignGeometryTest {

  private static final double UM = 1.0e-6;
  private static final double INCH = 0.0254;
  private static final Source SOURCE = Source.standard("for a test");

  static Stream<Row> metric() {
    return Rows.of(ForeignGeometryTest.class, "metric_thread_limits.csv");
  }

  static Stream<Row> unified() {
    return Rows.of(ForeignGeometryTest.class, "un_thread_limits.csv");
  }

  private static void printed(Limits limits, Row row, String least, String most, double unit) {
    // tables of 0.001 mm; in inches both are rounded as the standard rounds
    double half = unit == INCH ? 1.0e-6 : 0.00051;
    assertThat(limits.least().metres() / unit).as(least).isCloseTo(row.number(least), within(half));
    assertThat(limits.most().metres() / unit).as(most).isCloseTo(row.number(most), within(half));
  }

  /** ISO 965-1: the tolerances of the table are whole micrometres, the limits follow to 0.001 mm. */
  @ParameterizedTest(name = "{0}")
  @MethodSource("metric")
  void metric_tolerances_are_those_of_the_table(Row row) {
    double d = row.number("major_mm");
    double p = row.number("pitch_mm");
    ForeignGeometry made = ForeignGeometry.metric("x", d, p, true, Optional.of("none"));
    assertThat(made.isPort()).isTrue();
    assertThat(made.standard()).isEqualTo(ForeignStandard.METRIC);
    assertThat(made.major()).isCloseTo(d * 1.0e-3, within(1.0e-12));
    assertThat(made.pitch()).isCloseTo(p * 1.0e-3, within(1.0e-12));
    double small = 1.0e-9;
    assertThat(made.maleAllowance() / UM).isCloseTo(row.number("es_um"), within(small));
    assertThat(made.maleTolerance() / UM).isCloseTo(row.number("td_um"), within(small));
    assertThat(made.femaleTolerance() / UM).isCloseTo(row.number("td1_int_um"), within(small));
    assertThat(MetricLimits.malePitch(d, p)).isCloseTo(row.number("td2_um"), within(small));
    assertThat(MetricLimits.femalePitch(d, p)).isCloseTo(row.number("td2_int_um"), within(small));
    double mm = 1.0e-3;
    printed(made.crest(Gender.MALE), row, "ext_6g_major_min_mm", "ext_6g_major_max_mm", mm);
    printed(made.crest(Gender.FEMALE), row, "int_6h_minor_min_mm", "int_6h_minor_max_mm", mm);
    printed(
        made.pitchDiameter(Gender.MALE).orElseThrow(),
        row,
        "ext_6g_pitch_min_mm",
        "ext_6g_pitch_max_mm",
        mm);
    printed(
        made.pitchDiameter(Gender.FEMALE).orElseThrow(),
        row,
        "int_6h_pitch_min_mm",
        "int_6h_pitch_max_mm",
        mm);
  }

  @ParameterizedTest(name = "{0}-{1}")
  @MethodSource("unified")
  void unified_limits_are_those_of_the_table(Row row) {
    double n = row.number("tpi");
    double d = row.number("major_in");
    boolean fine = row.text("series").equals("UNF");
    ForeignGeometry made = ForeignGeometry.unified("x", d, n, fine, "none");
    assertThat(made.maleAllowance() / INCH)
        .isCloseTo(row.number("allowance_2a_in"), within(1.0e-9));
    assertThat(made.major() / INCH).isCloseTo(d, within(1.0e-12));
    assertThat(made.pitch() / INCH).isCloseTo(1.0 / n, within(1.0e-12));
    assertThat(made.use()).contains("none");
    printed(made.crest(Gender.MALE), row, "ext_2a_major_min_in", "ext_2a_major_max_in", INCH);
    printed(made.crest(Gender.FEMALE), row, "int_2b_minor_min_in", "int_2b_minor_max_in", INCH);
    printed(
        made.pitchDiameter(Gender.MALE).orElseThrow(),
        row,
        "ext_2a_pitch_min_in",
        "ext_2a_pitch_max_in",
        INCH);
    printed(
        made.pitchDiameter(Gender.FEMALE).orElseThrow(),
        row,
        "int_2b_pitch_min_in",
        "int_2b_pitch_max_in",
        INCH);
  }

  /** ISO 228-1, G 5/8: P 1.814, h 0.640327 P to 0.001 mm, Td twice Td2. */
  @Test
  void a_g_thread_follows_from_its_diameter_and_tolerances() {
    ForeignGeometry made = ForeignGeometry.parallelPipe("G 5/8", 22.911, 14, 0.142, 0.541, SOURCE);
    assertThat(made.pitch()).isCloseTo(1.814e-3, within(1.0e-12));
    near(made.crest(Gender.MALE), 22.911 - 0.284, 22.911);
    near(made.crest(Gender.FEMALE), 20.587, 21.128); // printed
    near(made.pitchDiameter(Gender.MALE).orElseThrow(), 21.749 - 0.142, 21.749);
    near(made.pitchDiameter(Gender.FEMALE).orElseThrow(), 21.749, 21.749 + 0.142);
    assertThat(made.isPort()).isFalse();
    assertThat(made.source()).isEqualTo(SOURCE);
    assertThat(made.use()).isEmpty();
  }

  /** 3/4-11.5 NH: 1.0625 less 0.0170 in; inside 1.0625 − 1.299038/11.5 + 0.0100, and 0.0170 more. */
  @Test
  void a_hose_thread_follows_from_its_diameter_and_tolerance() {
    ForeignGeometry made = ForeignGeometry.hose("x", "hose", 1.0625, 11.5, 0.0170, 0.0100, SOURCE);
    double minor = (1.0625 - 1.299038 / 11.5 + 0.0100) * 25.4;
    near(made.crest(Gender.MALE), 1.0455 * 25.4, 1.0625 * 25.4);
    near(made.crest(Gender.FEMALE), minor, minor + 0.0170 * 25.4);
    assertThat(made.pitch()).isCloseTo(INCH / 11.5, within(1.0e-12));
    assertThat(made.pitchDiameter(Gender.MALE)).isEmpty();
    assertThat(made.isPort()).isTrue();
  }

  private static void near(Limits limits, double least, double most) {
    assertThat(limits.least().millimetres()).isCloseTo(least, within(1.0e-9));
    assertThat(limits.most().millimetres()).isCloseTo(most, within(1.0e-9));
  }

  /** ISO 3, R40, in its first decade; and what the standard's tables have other than the formulas. */
  @Test
  void the_tables_own_values_stand_where_they_differ_from_the_formulas() {
    assertThat(MetricLimits.allowance(1.25)).isEqualTo(28.0);
    assertThat(MetricLimits.allowance(3.5)).isEqualTo(53.0);
    assertThat(MetricLimits.allowance(1.5)).isEqualTo(32.0); // 15 + 11 × 1.5 = 31.5, to even
    assertThat(MetricLimits.malePitch(5.0, 0.5)).isEqualTo(75.0);
    assertThat(MetricLimits.femalePitch(5.0, 0.5)).isEqualTo(100.0);
    assertThat(MetricLimits.femaleMinor(0.5)).isEqualTo(140.0);
    assertThat(MetricLimits.femaleMinor(2.5)).isEqualTo(450.0);
    assertThat(MetricLimits.femaleMinor(1.0)).isEqualTo(236.0); // 230 by the formula, R40
    assertThat(MetricLimits.femalePitch(14.0, 1.5)).isEqualTo(190.0);
    assertThat(MetricLimits.femalePitch(10.0, 1.5)).isEqualTo(180.0);
    assertThat(MetricLimits.femalePitch(12.0, 1.25)).isEqualTo(180.0);
    assertThat(MetricLimits.femalePitch(24.0, 1.5)).isEqualTo(200.0);
  }
}
