package org.airfit.thread;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.ThreadTables;
import org.airfit.quantity.Length;
import org.airfit.quantity.NominalThreadSize;
import org.airfit.source.Basis;
import org.airfit.thread.BsppThread.ToleranceClass;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** R, Rc, Rp and G together, because their tables are printed together. */
class BspThreadsTest {

  private static final Map<String, ToDoubleFunction<BsppThread>> PARALLEL = new LinkedHashMap<>();
  private static final Map<String, ToDoubleFunction<BsptThread>> TAPER = new LinkedHashMap<>();
  private static final Map<String, ToDoubleFunction<BsppThread>> TOLERANCES = new LinkedHashMap<>();
  private static final Map<String, ToDoubleFunction<BsppThread>> LIMITS = new LinkedHashMap<>();

  static {
    PARALLEL.put("tpi", BsppThread::threadsPerInch);
    PARALLEL.put("pitch_mm", t -> t.pitch().millimetres());
    PARALLEL.put("thread_height_h_mm", t -> t.height().millimetres());
    PARALLEL.put("major_mm", t -> t.majorDiameter().millimetres());
    PARALLEL.put("pitch_dia_mm", t -> t.pitchDiameter().millimetres());
    PARALLEL.put("minor_mm", t -> t.minorDiameter().millimetres());

    TAPER.put("tpi", BsptThread::threadsPerInch);
    TAPER.put("pitch_mm", t -> t.pitch().millimetres());
    TAPER.put("pitch_exact_mm", t -> 25.4 / t.threadsPerInch());
    TAPER.put("thread_height_h_mm", t -> t.height().millimetres());
    TAPER.put("major_mm", t -> t.atGaugePlane().major().millimetres());
    TAPER.put("pitch_dia_mm", t -> t.atGaugePlane().pitch().millimetres());
    TAPER.put("minor_mm", t -> t.atGaugePlane().minor().millimetres());
    TAPER.put("gauge_length_mm", t -> t.gaugeLength().millimetres());
    TAPER.put("gauge_length_max_mm", t -> t.gaugeLengthLimits().most().millimetres());
    TAPER.put("gauge_length_min_mm", t -> t.gaugeLengthLimits().least().millimetres());
    TAPER.put("gauge_tol_half_t1_mm", t -> t.gaugeTolerance().millimetres());
    TAPER.put("gauge_tol_turns", BsptThread::gaugeToleranceTurns);
    TAPER.put("internal_gauge_tol_half_t2_mm", t -> t.femaleGaugeTolerance().millimetres());
    TAPER.put("internal_gauge_tol_turns", BsptThread::femaleGaugeToleranceTurns);
    TAPER.put("useful_thread_nominal_mm", t -> t.usefulLength().millimetres());
    TAPER.put("useful_thread_max_gauge_mm", t -> t.usefulLengthLimits().most().millimetres());
    TAPER.put("useful_thread_min_gauge_mm", t -> t.usefulLengthLimits().least().millimetres());
    TAPER.put("fitting_allowance_turns", BsptThread::fittingAllowanceTurns);
    TAPER.put(
        "rp_dia_tol_check_mm", t -> RpThread.of(t.size()).diameterTolerance().millimetres());
    TAPER.put("small_end_major_mm", t -> smallEnd(t).major().millimetres());
    TAPER.put("small_end_pitch_dia_mm", t -> smallEnd(t).pitch().millimetres());
    TAPER.put("small_end_minor_mm", t -> smallEnd(t).minor().millimetres());
    TAPER.put(
        "large_end_major_mm",
        t -> t.section(Gender.MALE, t.usefulLength()).major().millimetres());
    TAPER.put("pipe_od_jis_mm", t -> t.pipeDiameterJis().orElseThrow().millimetres());
    TAPER.put("pipe_od_en10255_mm", t -> t.pipeDiameterEn10255().orElseThrow().millimetres());
    TAPER.put("major_dia_mm", t -> t.atGaugePlane().major().millimetres());
    TAPER.put("fitting_allowance_mm", t -> t.fittingAllowance().millimetres());

    TOLERANCES.put("tpi", BsppThread::threadsPerInch);
    TOLERANCES.put("int_pitch_dia_tol_plus_mm", t -> width(t.femalePitchDiameter()));
    TOLERANCES.put(
        "ext_pitch_dia_tol_a_minus_mm", t -> width(t.malePitchDiameter(ToleranceClass.A)));
    TOLERANCES.put(
        "ext_pitch_dia_tol_b_minus_mm", t -> width(t.malePitchDiameter(ToleranceClass.B)));
    TOLERANCES.put("int_minor_tol_plus_mm", t -> width(t.femaleMinorDiameter()));
    TOLERANCES.put("ext_major_tol_minus_mm", t -> width(t.maleMajorDiameter()));

    LIMITS.put("male_od_min_mm", t -> t.maleMajorDiameter().least().millimetres());
    LIMITS.put("male_od_max_mm", t -> t.maleMajorDiameter().most().millimetres());
    LIMITS.put(
        "male_pitch_dia_min_a_mm",
        t -> t.malePitchDiameter(ToleranceClass.A).least().millimetres());
    LIMITS.put(
        "male_pitch_dia_min_b_mm",
        t -> t.malePitchDiameter(ToleranceClass.B).least().millimetres());
    LIMITS.put(
        "male_pitch_dia_max_mm",
        t -> t.malePitchDiameter(ToleranceClass.B).most().millimetres());
    LIMITS.put("female_minor_min_mm", t -> t.femaleMinorDiameter().least().millimetres());
    LIMITS.put("female_minor_max_mm", t -> t.femaleMinorDiameter().most().millimetres());
    LIMITS.put("female_pitch_dia_min_mm", t -> t.femalePitchDiameter().least().millimetres());
    LIMITS.put("female_pitch_dia_max_mm", t -> t.femalePitchDiameter().most().millimetres());
  }

  private static ThreadSection smallEnd(BsptThread thread) {
    return thread.section(Gender.MALE, ThreadTables.END);
  }

  private static double width(Limits limits) {
    return limits.most().millimetres() - limits.least().millimetres();
  }

  private static NominalThreadSize size(Row row) {
    return NominalThreadSize.parse(row.text("size"));
  }

  static Stream<Row> basic() {
    return Rows.of(BspThreadsTest.class, "bsp_basic.csv");
  }

  static Stream<Row> inputs() {
    return Rows.of(BspThreadsTest.class, "bsp_inputs.csv");
  }

  static Stream<Row> large() {
    return Rows.of(BspThreadsTest.class, "bsp_large.csv");
  }

  static Stream<Row> limits() {
    return Rows.of(BspThreadsTest.class, "iso228_limits.csv");
  }

  static Stream<Row> tolerances() {
    return Rows.of(BspThreadsTest.class, "iso228_tolerances.csv");
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("basic")
  void taper_and_parallel_dimensions_agree_with_the_printed_table(Row row) {
    ThreadTables.compare(
        "Threads: G basic dimensions", row, BsppThread.of(size(row)), onlyIn(row, PARALLEL));
    ThreadTables.compare(
        "Threads: R, Rc and Rp", row, BsptThread.of(size(row)), onlyIn(row, TAPER));
    ThreadTables.compare(
        "Threads: R, Rc and Rp",
        row,
        "rp_dia_tol_pm_mm",
        RpThread.of(size(row)).diameterTolerance().millimetres(),
        0.001,
        "JIS rounds a sixteenth of the rounded T2/2 (D23)");
    ThreadTables.compare(
        "Threads: R, Rc and Rp",
        row,
        "internal_useful_min_t_mm",
        BsptThread.of(size(row)).leastFemaleUsefulLength().millimetres(),
        0.1,
        "one decimal, cut off at 28 per inch and rounded elsewhere (D24)");
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("limits")
  void the_working_tells_the_limits_of_the_standard(Row row) {
    String working = BsppThread.of(size(row)).working().toString();
    assertThat(working)
        .contains(between(row, "Male: major ", "male_od_min_mm", "male_od_max_mm"))
        .contains(
            between(row, "pitch of class A ", "male_pitch_dia_min_a_mm", "male_pitch_dia_max_mm"))
        .contains(between(row, "of class B ", "male_pitch_dia_min_b_mm", "male_pitch_dia_max_mm"))
        .contains(between(row, "Female: minor ", "female_minor_min_mm", "female_minor_max_mm"))
        .contains(between(row, ", pitch ", "female_pitch_dia_min_mm", "female_pitch_dia_max_mm"));
  }

  private static String between(Row row, String what, String least, String most) {
    return what + row.text(least) + " to " + row.text(most) + " mm";
  }

  private static <T> Map<String, T> onlyIn(Row row, Map<String, T> columns) {
    Map<String, T> there = new LinkedHashMap<>(columns);
    there.keySet().retainAll(row.heading());
    return there;
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("inputs")
  void what_is_tabulated_is_tabulated_here(Row row) {
    ThreadTables.compare("Threads: R inputs", row, BsptThread.of(size(row)), onlyIn(row, TAPER));
    if (row.has("gauge_length_in")) {
      ThreadTables.compare(
          "Threads: R inputs",
          row,
          "gauge_length_in",
          BsptThread.of(size(row)).gaugeLength().inches(),
          0.05 / 25.4 + 0.00005,
          "ISO rounds the inch length to 0.1 mm");
    }
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("large")
  void sizes_above_two_agree_with_the_printed_tables(Row row) {
    BsppThread parallel = BsppThread.of(size(row));
    ThreadTables.compare("Threads: G above 2", row, parallel, onlyIn(row, PARALLEL));
    ThreadTables.compare("Threads: G above 2", row, parallel, onlyIn(row, TOLERANCES));
    if (row.has("fitting_allowance_mm")) {
      BsptThread taper = BsptThread.of(size(row));
      ThreadTables.compare("Threads: R above 2", row, taper, onlyIn(row, TAPER));
      ThreadTables.compare(
          "Threads: R above 2",
          row,
          "rp_dia_tol_pm_mm",
          RpThread.of(size(row)).diameterTolerance().millimetres(),
          0.0005,
          "digits printed");
      // feels the gauge length, which was recalled: 0.8 (a + f − T1/2)
      ThreadTables.compare(
          "Threads: R above 2",
          row,
          "internal_useful_min_t_mm",
          taper.leastFemaleUsefulLength().millimetres(),
          0.05,
          "digits printed");
      assertThat(taper.source().basis()).isEqualTo(Basis.FROM_MEMORY);
      assertThat(taper.pipeDiameterEn10255()).isEmpty();
    }
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("tolerances")
  void tolerances_of_g_agree_with_the_standard(Row row) {
    ThreadTables.compare(
        "Threads: ISO 228-1 tolerances", row, BsppThread.of(size(row)), TOLERANCES);
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("limits")
  void limits_of_g_follow_from_its_tolerances(Row row) {
    ThreadTables.compare("Threads: ISO 228-1 limits", row, BsppThread.of(size(row)), LIMITS);
  }

  @Test
  void iso_7_has_no_three_and_a_half_and_the_nearest_is_offered() {
    assertThatThrownBy(() -> BsptThread.of(NominalThreadSize.THREE_AND_A_HALF))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("R size must be one of")
        .hasMessageContaining("was 3-1/2")
        .hasMessageContaining("nearest is 4");
    assertThatThrownBy(() -> RpThread.of(NominalThreadSize.THREE_AND_A_HALF))
        .hasMessageContaining("Rp size");
    assertThat(BsptThread.all()).hasSize(13);
    assertThat(RpThread.all()).hasSize(13);
    assertThat(BsppThread.all()).hasSize(14);
  }

  @Test
  void there_is_no_rp_outside() {
    RpThread rp = RpThread.of(NominalThreadSize.ONE);
    assertThatThrownBy(() -> rp.section(Gender.MALE, ThreadTables.END))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("gender of Rp must be female");
    assertThatThrownBy(() -> rp.firstCrest(Gender.MALE))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void rp_may_be_smaller_than_a_male_g_at_basic_size() {
    NominalThreadSize half = NominalThreadSize.ONE_HALF;
    assertThat(RpThread.of(half).pitchDiameter().least())
        .isLessThan(BsppThread.of(half).pitchDiameter());
    assertThat(RpThread.of(half).minorDiameter().most().millimetres())
        .isCloseTo(18.773, within(0.0005));
  }

  @Test
  void tolerance_of_a_first_crest_is_the_gauging_tolerance_on_the_cone() {
    BsptThread half = BsptThread.of(NominalThreadSize.ONE_HALF);
    assertThat(width(half.firstCrest(Gender.MALE))).isCloseTo(2 * 25.4 / 14.0 / 16.0, within(1e-9));
    assertThat(width(half.firstCrest(Gender.FEMALE)))
        .isCloseTo(2 * 1.25 * 25.4 / 14.0 / 16.0, within(1e-9));
    assertThat(half.handTightTurns()).isCloseTo(4.52, within(0.005));
    assertThat(half.crestSlack()).isEqualTo(Length.ofMetres(0.0));
  }

  @Test
  void threads_are_values_with_the_names_the_trade_gives_them() {
    NominalThreadSize half = NominalThreadSize.ONE_HALF;
    NominalThreadSize one = NominalThreadSize.ONE;
    assertThat(BsppThread.of(half))
        .isEqualTo(BsppThread.of(half))
        .hasSameHashCodeAs(BsppThread.of(half))
        .isNotEqualTo(BsppThread.of(one))
        .isNotEqualTo("G 1/2-14")
        .hasToString("G 1/2-14");
    assertThat(BsptThread.of(half))
        .isEqualTo(BsptThread.of(half))
        .hasSameHashCodeAs(BsptThread.of(half))
        .isNotEqualTo(BsptThread.of(one))
        .isNotEqualTo("R 1/2-14")
        .hasToString("R 1/2-14");
    assertThat(RpThread.of(half))
        .isEqualTo(RpThread.of(half))
        .hasSameHashCodeAs(RpThread.of(half))
        .isNotEqualTo(RpThread.of(one))
        .isNotEqualTo("Rp 1/2-14")
        .hasToString("Rp 1/2-14");
  }

  @Test
  @SuppressWarnings("NullAway") // the point is what happens to callers without such a check
  void a_missing_size_is_refused() {
    assertThatThrownBy(() -> BsppThread.of(null)).isInstanceOf(NullPointerException.class);
    assertThatThrownBy(() -> BsptThread.of(null)).isInstanceOf(NullPointerException.class);
  }
}
