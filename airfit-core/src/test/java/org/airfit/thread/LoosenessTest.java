package org.airfit.thread;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.Stream;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.quantity.NominalThreadSize;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** How loose a piece may be is the width of its standard's limits for its own gender. */
class LoosenessTest {

  static Stream<Row> g() {
    return Rows.of(LoosenessTest.class, "iso228_tolerances.csv");
  }

  @ParameterizedTest
  @MethodSource("g")
  void a_male_g_thread_is_as_loose_as_class_b_and_a_female_as_its_only_class(Row row) {
    BsppThread thread = BsppThread.of(NominalThreadSize.parse(row.text("size")));
    assertThat(thread.looseness(Gender.MALE).millimetres())
        .isCloseTo(row.number("ext_pitch_dia_tol_b_minus_mm"), within(0.0005));
    assertThat(thread.looseness(Gender.FEMALE).millimetres())
        .isCloseTo(row.number("int_pitch_dia_tol_plus_mm"), within(0.0005));
  }

  static Stream<Row> npsm() {
    return Rows.of(LoosenessTest.class, "npsm_mechanical_thread.csv");
  }

  /** The printed limits have four decimals, so that their differences may be off by one in the last. */
  @ParameterizedTest
  @MethodSource("npsm")
  void an_npsm_thread_is_as_loose_as_its_limits_are_wide(Row row) {
    NpsmThread thread = NpsmThread.of(NominalThreadSize.parse(row.text("size")));
    assertThat(thread.looseness(Gender.MALE).inches())
        .isCloseTo(
            row.number("ext_pitch_max_in") - row.number("ext_pitch_min_in"), within(0.00011));
    assertThat(thread.looseness(Gender.FEMALE).inches())
        .isCloseTo(
            row.number("int_pitch_max_in") - row.number("int_pitch_min_in"), within(0.00011));
  }
}
