package org.airfit.thread;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.airfit.Pencil;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.ThreadTables;
import org.airfit.working.Completeness;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

class ForeignThreadTest {

  private static final String METRIC = "Threads: metric limits";
  private static final String UNIFIED = "Threads: unified limits";
  private static final String OTHER = "Threads: odd G and hose limits";

  static Stream<Row> metric() {
    return Rows.of(ForeignThreadTest.class, "metric_thread_limits.csv");
  }

  static Stream<Row> unified() {
    return Rows.of(ForeignThreadTest.class, "un_thread_limits.csv");
  }

  static Stream<Row> printedUnified() {
    return Rows.of(ForeignThreadTest.class, "un_published_check.csv");
  }

  static Stream<Row> other() {
    return Rows.of(ForeignThreadTest.class, "other_threads.csv");
  }

  private static ForeignThread male(String name) {
    return ForeignThread.find(name, Gender.MALE).orElseThrow();
  }

  private static ForeignThread female(String name) {
    return ForeignThread.find(name, Gender.FEMALE).orElseThrow();
  }

  private static Limits pitch(ForeignThread thread) {
    return thread.pitchDiameter().orElseThrow();
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("metric")
  void metric_limits_follow_from_the_formulas_and_agree_with_print(Row row) {
    ForeignThread male = male(row.text("size"));
    ForeignThread female = female(row.text("size"));
    metric(row, "read_ext_major_max_mm", male.crest().most().millimetres());
    metric(row, "read_ext_major_min_mm", male.crest().least().millimetres());
    metric(row, "read_ext_pitch_max_mm", pitch(male).most().millimetres());
    metric(row, "read_ext_pitch_min_mm", pitch(male).least().millimetres());
    metric(row, "read_int_minor_max_mm", female.crest().most().millimetres());
    metric(row, "read_int_pitch_max_mm", pitch(female).most().millimetres());
    ThreadTables.compare(
        METRIC,
        row,
        "int_6h_minor_min_mm",
        female.crest().least().millimetres(),
        0.00051,
        "rounded to 0.001 mm");
    assertThat(male.pitch().millimetres()).isCloseTo(row.number("pitch_mm"), within(1e-12));
  }

  private static void metric(Row row, String column, double ours) {
    // external limits carry two decimals from M12 up; a reprint drops trailing zeros
    boolean coarse = column.startsWith("read_ext") && row.number("major_mm") >= 12.0;
    ThreadTables.compare(
        METRIC,
        row,
        column,
        ours,
        coarse ? 0.00501 : 0.00051,
        coarse ? "half of the last digit printed, 0.01 mm" : "half of the last digit, 0.001 mm");
  }

  @ParameterizedTest(name = "{0}-{1}")
  @MethodSource("unified")
  void unified_limits_follow_from_the_formulas(Row row) {
    String name = row.text("size") + "-" + row.text("tpi");
    ForeignThread male = male(name);
    ForeignThread female = female(name);
    unified(row, "ext_2a_major_max_in", male.crest().most().inches());
    unified(row, "ext_2a_major_min_in", male.crest().least().inches());
    unified(row, "ext_2a_pitch_max_in", pitch(male).most().inches());
    unified(row, "ext_2a_pitch_min_in", pitch(male).least().inches());
    unified(row, "int_2b_minor_min_in", female.crest().least().inches());
    unified(row, "int_2b_minor_max_in", female.crest().most().inches());
    unified(row, "int_2b_pitch_min_in", pitch(female).least().inches());
    unified(row, "int_2b_pitch_max_in", pitch(female).most().inches());
    assertThat(male.name()).endsWith(row.text("series"));
    assertThat(male.use()).isPresent();
  }

  private static void unified(Row row, String column, double ours) {
    ThreadTables.compare(
        UNIFIED, row, column, ours, 1.0e-6, "recomputed, both rounded as the standard rounds");
  }

  /** Sizes that are none of ours, so that the formulas themselves are held against print. */
  @ParameterizedTest(name = "{0}-{1} {2} {3}")
  @MethodSource("printedUnified")
  void unified_formulas_give_printed_limits_of_other_sizes(Row row) {
    double d = fraction(row.text("size"));
    double n = row.number("tpi");
    boolean fixed = row.text("series").equals("UNC") || row.text("series").equals("UNF");
    ForeignGeometry thread = ForeignGeometry.unified("x", d, n, fixed, "none");
    double ours = switch (row.text("quantity")) {
      case "allowance" -> thread.maleAllowance() / 0.0254;
      case "ext_major_max" -> thread.crest(Gender.MALE).most().inches();
      case "ext_major_min" -> thread.crest(Gender.MALE).least().inches();
      case "ext_pitch_max" ->
        thread.pitchDiameter(Gender.MALE).orElseThrow().most().inches();
      case "ext_pitch_min" ->
        thread.pitchDiameter(Gender.MALE).orElseThrow().least().inches();
      case "int_minor_min" -> thread.crest(Gender.FEMALE).least().inches();
      case "int_minor_max" -> thread.crest(Gender.FEMALE).most().inches();
      case "int_pitch_min" ->
        thread.pitchDiameter(Gender.FEMALE).orElseThrow().least().inches();
      case "int_pitch_max" ->
        thread.pitchDiameter(Gender.FEMALE).orElseThrow().most().inches();
      default -> throw new IllegalArgumentException(row.text("quantity"));
    };
    org.airfit.Comparison.of(
            UNIFIED,
            row.text("size") + "-" + row.text("tpi") + ", " + row.text("quantity"),
            row.number("printed_in"),
            "in",
            row.evidence("printed_in"))
        .isMetBy(ours, 0.000101, "the order of rounding may move the last digit by one");
  }

  private static double fraction(String size) {
    double sum = 0.0;
    for (String part : size.split("-", -1)) {
      int stroke = part.indexOf('/');
      sum += stroke < 0
          ? Double.parseDouble(part)
          : Double.parseDouble(part.substring(0, stroke))
              / Double.parseDouble(part.substring(stroke + 1));
    }
    return sum;
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("other")
  void odd_g_and_hose_threads_have_the_limits_of_their_tables(Row row) {
    String written = row.text("thread");
    int note = written.indexOf(" (");
    String name = note < 0 ? written : written.substring(0, note);
    // one thread under two names
    name = name.equals("3/4-8 NH") ? "1-8 NH" : name;
    ForeignThread male = male(name);
    ForeignThread female = female(name);
    String why = "half of the last digit, and inches rounded to 0.0001";
    compare(row, "male_major_max_mm", male.crest().most().millimetres(), why);
    compare(row, "male_major_min_mm", male.crest().least().millimetres(), why);
    compare(row, "female_minor_min_mm", female.crest().least().millimetres(), why);
    if (row.has("female_minor_max_mm")) {
      compare(row, "female_minor_max_mm", female.crest().most().millimetres(), why);
    }
    assertThat(male.threadsPerInch()).isCloseTo(row.number("tpi"), within(0.005));
    assertThat(male.flankAngleDegrees()).isEqualTo(name.startsWith("G") ? 55 : 60);
  }

  private static void compare(Row row, String column, double ours, String why) {
    ThreadTables.compare(OTHER, row, column, ours, 0.002, why);
  }

  @ParameterizedTest
  @EnumSource(Gender.class)
  void every_foreign_thread_has_a_working_and_a_name_of_its_own(Gender gender) {
    Set<String> names = new HashSet<>();
    List<ForeignThread> all = ForeignThread.all(gender);
    for (ForeignThread thread : all) {
      assertThat(names.add(thread.name())).as(thread.name()).isTrue();
      assertThat(ForeignThread.find(thread.name(), gender)).contains(thread);
      assertThat(thread).hasToString(thread.name() + " " + gender.label());
      assertThat(thread.isTapered()).isFalse();
      assertThat(thread.source().citation()).isNotBlank();
      assertThat(thread.standard().label()).isNotBlank();
      assertThat(thread.crest().most()).isGreaterThan(thread.crest().least());
      Pencil.check(thread);
      Completeness.check(thread);
    }
    assertThat(all).hasSizeGreaterThan(80);
    assertThat(ForeignThread.find("M5", gender)).isPresent();
    assertThat(ForeignThread.find("M33x2", gender)).isPresent();
  }

  @Test
  void names_are_found_as_people_write_them() {
    assertThat(ForeignThread.find("m14 × 1.5", Gender.MALE)).contains(male("M14x1.5"));
    assertThat(male("M12").name()).isEqualTo("M12x1.75");
    assertThat(male("9/16-18").name()).isEqualTo("9/16-18 UNF");
    assertThat(ForeignThread.find("M13", Gender.MALE)).isEmpty();
    assertThat(male("G 5/8")).isNotEqualTo(female("G 5/8"));
    assertThat(male("G 5/8")).isNotEqualTo(male("G 7/8")).isEqualTo(male("g 5/8"));
    assertThat(male("G 5/8")).hasSameHashCodeAs(male("g 5/8"));
  }

  /** No pipe thread's parser takes a foreign thread for its own. */
  @Test
  void a_foreign_thread_is_no_pipe_thread() {
    for (ForeignThread thread : ForeignThread.all(Gender.MALE)) {
      assertThat((NamedThread) thread).isNotInstanceOf(ThreadDesignation.class);
    }
  }
}
