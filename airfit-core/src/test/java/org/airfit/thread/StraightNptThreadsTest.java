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
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** NPSC and NPSM, both made from the hand-tight plane of NPT. */
class StraightNptThreadsTest {

  private static final String WHY_MINOR =
      "three decimals, made from a pitch diameter the standard had rounded to four";

  private static final Map<String, ToDoubleFunction<NpscThread>> NPSC = new LinkedHashMap<>();
  private static final Map<String, ToDoubleFunction<NpsmThread>> NPSM = new LinkedHashMap<>();

  static {
    NPSC.put("tpi", NpscThread::threadsPerInch);
    NPSC.put("pitch_dia_min_in", t -> t.pitchDiameter().least().inches());
    NPSC.put("pitch_dia_max_in", t -> t.pitchDiameter().most().inches());
    NPSC.put("check_pitch_dia_min_in", t -> t.pitchDiameter().least().inches());
    NPSC.put("check_pitch_dia_max_in", t -> t.pitchDiameter().most().inches());

    NPSM.put("tpi", NpsmThread::threadsPerInch);
    NPSM.put("allowance_in", t -> t.allowance().inches());
    NPSM.put("ext_major_max_in", t -> t.maleMajorDiameter().most().inches());
    NPSM.put("ext_major_min_in", t -> t.maleMajorDiameter().least().inches());
    NPSM.put("ext_pitch_max_in", t -> t.malePitchDiameter().most().inches());
    NPSM.put("ext_pitch_min_in", t -> t.malePitchDiameter().least().inches());
    NPSM.put("int_minor_min_in", t -> t.femaleMinorDiameter().least().inches());
    NPSM.put("int_minor_max_in", t -> t.femaleMinorDiameter().most().inches());
    NPSM.put("int_pitch_min_in", t -> t.femalePitchDiameter().least().inches());
    NPSM.put("int_pitch_max_in", t -> t.femalePitchDiameter().most().inches());
    NPSM.put("check_ext_pitch_max_in", t -> t.malePitchDiameter().most().inches());
    NPSM.put("check_major_0p6495p_in", t -> t.maleMajorDiameter().most().inches());
  }

  private static NominalThreadSize size(Row row) {
    return NominalThreadSize.parse(row.text("size"));
  }

  static Stream<Row> npsc() {
    return Rows.of(StraightNptThreadsTest.class, "npsc_coupling_thread.csv");
  }

  static Stream<Row> npsm() {
    return Rows.of(StraightNptThreadsTest.class, "npsm_mechanical_thread.csv");
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("npsc")
  void limits_of_npsc_follow_from_the_hand_tight_plane(Row row) {
    NpscThread thread = NpscThread.of(size(row));
    ThreadTables.compare("Threads: NPSC", row, thread, NPSC);
    ThreadTables.compare(
        "Threads: NPSC",
        row,
        "minor_dia_min_in",
        thread.leastMinorDiameter().inches(),
        0.00055,
        WHY_MINOR);
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("npsm")
  void limits_of_npsm_agree_with_the_printed_table(Row row) {
    NpsmThread thread = NpsmThread.of(size(row));
    NPSM.forEach((column, ours) -> ThreadTables.compare(
        "Threads: NPSM",
        row,
        column,
        ours.applyAsDouble(thread),
        allowed(row, column),
        why(column)));
    assertThat(thread.source().basis()).isEqualTo(Basis.STANDARD);
  }

  private static double allowed(Row row, String column) {
    return column.contains("major") || column.contains("minor")
        ? row.halfDigit(column) + 0.00005
        : row.halfDigit(column)
            + (column.endsWith("min_in") && column.contains("ext_pitch") ? 0.00005 : 0.0)
            + (column.endsWith("max_in") && column.contains("int_pitch") ? 0.00005 : 0.0);
  }

  private static String why(String column) {
    return column.contains("major") || column.contains("minor")
        ? WHY_MINOR
        : "digits printed; the tabulated width is a difference of two rounded limits";
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("npsm")
  void the_handbook_footnote_belongs_to_another_thread(Row row) {
    NpsmThread thread = NpsmThread.of(size(row));
    double printed = row.number("ext_major_max_in");
    double footnote =
        thread.malePitchDiameter().most().inches() + 0.666025 * thread.pitch().inches();
    double ours = thread.maleMajorDiameter().most().inches();
    assertThat(Math.abs(ours - printed)).isLessThan(Math.abs(footnote - printed) + 0.0004);
    assertThat(footnote).isCloseTo(row.number("check_major_0p6660p_in"), within(0.0001));
  }

  @Test
  void a_row_that_was_recalled_says_so() {
    assertThat(NpsmThread.of(NominalThreadSize.THREE_EIGHTHS).source().basis())
        .isEqualTo(Basis.FROM_MEMORY);
    assertThat(NpsmThread.of(NominalThreadSize.FOUR).source().basis()).isEqualTo(Basis.FROM_MEMORY);
  }

  @Test
  void widths_that_were_recalled_keep_the_rules_of_those_that_were_seen() {
    // allowance 0.3 and female width 1.3 of the male width hold in every printed row, to the
    // rounding
    for (NpsmThread thread : NpsmThread.all()) {
      double male = width(thread.malePitchDiameter());
      assertThat(thread.allowance().inches()).isCloseTo(0.3 * male, within(0.00007));
      assertThat(width(thread.femalePitchDiameter())).isCloseTo(1.3 * male, within(0.00012));
    }
  }

  private static double width(Limits limits) {
    return limits.most().inches() - limits.least().inches();
  }

  @Test
  void npsc_takes_npt_at_its_hand_tight_plane() {
    NominalThreadSize half = NominalThreadSize.ONE_HALF;
    assertThat(NpscThread.of(half).section(Gender.FEMALE, ThreadTables.END))
        .isEqualTo(NptThread.of(half).section(Gender.FEMALE, ThreadTables.END));
    Limits crest = NpscThread.of(half).firstCrest(Gender.FEMALE);
    assertThat(crest.least()).isEqualTo(NpscThread.of(half).leastMinorDiameter());
  }

  @Test
  void there_is_no_npsc_outside_and_neither_in_size_one_sixteenth() {
    NpscThread npsc = NpscThread.of(NominalThreadSize.ONE);
    assertThatThrownBy(() -> npsc.section(Gender.MALE, ThreadTables.END))
        .hasMessageContaining("gender of NPSC must be female");
    assertThatThrownBy(() -> npsc.firstCrest(Gender.MALE))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> NpscThread.of(NominalThreadSize.ONE_SIXTEENTH))
        .hasMessageContaining("nearest is 1/8");
    assertThatThrownBy(() -> NpsmThread.of(NominalThreadSize.ONE_SIXTEENTH))
        .hasMessageContaining("nearest is 1/8");
  }

  @Test
  void threads_are_values_with_the_names_the_trade_gives_them() {
    NominalThreadSize half = NominalThreadSize.ONE_HALF;
    NominalThreadSize one = NominalThreadSize.ONE;
    assertThat(NpscThread.of(half))
        .isEqualTo(NpscThread.of(half))
        .hasSameHashCodeAs(NpscThread.of(half))
        .isNotEqualTo(NpscThread.of(one))
        .isNotEqualTo("1/2-14 NPSC")
        .hasToString("1/2-14 NPSC");
    assertThat(NpsmThread.of(half))
        .isEqualTo(NpsmThread.of(half))
        .hasSameHashCodeAs(NpsmThread.of(half))
        .isNotEqualTo(NpsmThread.of(one))
        .isNotEqualTo("1/2-14 NPSM")
        .hasToString("1/2-14 NPSM");
    assertThat(NpscThread.all()).hasSize(13);
    assertThat(NpsmThread.of(half).crestSlack()).isEqualTo(Length.ofMetres(0.0));
    assertThat(NpsmThread.of(half).firstCrest(Gender.FEMALE))
        .isEqualTo(NpsmThread.of(half).femaleMinorDiameter());
  }
}
