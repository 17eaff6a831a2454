package org.airfit.thread;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.airfit.Comparison;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.quantity.NominalThreadSize;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class BspThreadTest {

  private static final Map<String, ToDoubleFunction<BspThread>> BASIC = new LinkedHashMap<>();

  static {
    BASIC.put("tpi", BspThread::threadsPerInch);
    BASIC.put("pitch_mm", t -> t.pitch().millimetres());
    BASIC.put("thread_height_h_mm", t -> t.height().millimetres());
    BASIC.put("major_mm", t -> t.majorDiameter().millimetres());
    BASIC.put("pitch_dia_mm", t -> t.pitchDiameter().millimetres());
    BASIC.put("minor_mm", t -> t.minorDiameter().millimetres());
    BASIC.put("gauge_length_mm", t -> t.gaugeLength().millimetres());
    BASIC.put("useful_thread_nominal_mm", t -> t.usefulLength().millimetres());
    BASIC.put("small_end_major_mm", t -> t.majorDiameterAtSmallEnd().millimetres());
  }

  static Stream<Row> basic() {
    return Rows.of(BspThreadTest.class, "bsp_basic.csv");
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("basic")
  void basic_dimensions_agree_with_the_printed_table(Row row) {
    BspThread thread = BspThread.of(NominalThreadSize.parse(row.text("size")));
    BASIC.forEach((column, ours) -> Comparison.of(
            "Threads: R and G basic dimensions",
            row + ", " + column,
            row.number(column),
            column.endsWith("_mm") ? "mm" : "-",
            row.source())
        .isMetBy(ours.applyAsDouble(thread), row.halfDigit(column), "digits printed"));
  }

  @Test
  void sizes_come_smallest_first() {
    assertThat(BspThread.all())
        .extracting(thread -> thread.majorDiameter().millimetres())
        .isSorted();
  }

  @Test
  void a_thread_is_a_value_with_the_name_the_trade_gives_it() {
    BspThread half = BspThread.of(NominalThreadSize.ONE_HALF);
    assertThat(half)
        .isEqualTo(BspThread.of(NominalThreadSize.ONE_HALF))
        .hasSameHashCodeAs(BspThread.of(NominalThreadSize.ONE_HALF))
        .isNotEqualTo(BspThread.of(NominalThreadSize.ONE))
        .isNotEqualTo("R/G 1/2-14")
        .hasToString("R/G 1/2-14");
    assertThat(half.size()).isEqualTo(NominalThreadSize.ONE_HALF);
    assertThat(half.leastMajorDiameter().millimetres()).isEqualTo(20.671);
  }

  @Test
  @SuppressWarnings("NullAway") // the point is what happens to callers without such a check
  void a_missing_size_is_refused() {
    assertThatThrownBy(() -> BspThread.of(null)).isInstanceOf(NullPointerException.class);
  }
}
