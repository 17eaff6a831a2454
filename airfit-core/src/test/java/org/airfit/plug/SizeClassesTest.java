package org.airfit.plug;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.measure.Instrument;
import org.airfit.measure.PartSpread;
import org.airfit.quantity.Length;
import org.airfit.safety.Caution;
import org.airfit.source.Basis;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class SizeClassesTest {

  private static Length mm(double value) {
    return Length.ofMillimetres(value);
  }

  private static PlugReading read(Dimension dimension, double mm) {
    return PlugReading.of(dimension, Instrument.DIGITAL_CALIPER, mm(mm));
  }

  static Stream<Row> ranges() {
    return Rows.of(SizeClassesTest.class, "size_class_envelope_memory.csv");
  }

  private static Dimension dimension(Row row) {
    return Arrays.stream(Dimension.values())
        .filter(dimension -> dimension.symbol().equals(row.text("symbol")))
        .findFirst()
        .orElseThrow();
  }

  /** The rows are from memory: they say that ours is the remembered table, not that it is right. */
  @ParameterizedTest(name = "{0}")
  @MethodSource("ranges")
  void the_ranges_are_the_remembered_ones(Row row) {
    SizeClass size = SizeClass.valueOf(row.text("size_class"));
    assertThat(size.range(dimension(row)))
        .contains(new PartSpread.Limits(mm(row.number("low_mm")), mm(row.number("high_mm"))));
    assertThat(size.meaning()).isEqualTo(row.text("meaning"));
    assertThat(SizeClass.RANGES.basis()).isEqualTo(Basis.FROM_MEMORY);
  }

  /** The bounds that find inches typed as millimetres are those of all classes together. */
  @ParameterizedTest
  @MethodSource("ranges")
  void the_usual_sizes_are_those_of_all_classes_together(Row row) {
    assertThat(dimension(row).isUsual(row.number("low_mm"))).isTrue();
    assertThat(dimension(row).isUsual(row.number("high_mm"))).isTrue();
    double least = ranges()
        .filter(that -> that.text("symbol").equals(row.text("symbol")))
        .mapToDouble(that -> that.number("low_mm"))
        .min()
        .orElseThrow();
    double most = ranges()
        .filter(that -> that.text("symbol").equals(row.text("symbol")))
        .mapToDouble(that -> that.number("high_mm"))
        .max()
        .orElseThrow();
    assertThat(dimension(row).isUsual(least - 0.01)).isFalse();
    assertThat(dimension(row).isUsual(most + 0.01)).isFalse();
  }

  @Test
  void readings_narrow_down_a_size_and_say_so() {
    SizeClasses small =
        SizeClasses.of(List.of(read(Dimension.BORE, 5.5), read(Dimension.TIP_DIAMETER, 9.0)));
    assertThat(small.open()).containsExactly(SizeClass.SMALL);
    assertThat(small.inWords()).contains("small (1/4 in body; 5 to 6 mm bore)", "from memory");
    SizeClasses two = SizeClasses.of(List.of(read(Dimension.TIP_DIAMETER, 9.0)));
    assertThat(two.open()).containsExactly(SizeClass.SMALL, SizeClass.MID);
    assertThat(two.working().toText()).contains("small 6.5 mm to 9.5 mm", "large 12 mm to 20 mm");
    assertThat(two.cautions()).extracting(Caution::title).containsExactly("Size class from memory");
    assertThat(two).hasToString(two.inWords());
  }

  @Test
  void inches_typed_as_millimetres_are_of_no_class() {
    SizeClasses none = SizeClasses.of(List.of(read(Dimension.TIP_DIAMETER, 0.35)));
    assertThat(none.open()).isEmpty();
    assertThat(none.inWords()).contains("none of the usual", "their unit");
  }

  @Test
  void a_dimension_without_a_range_narrows_nothing() {
    SizeClasses any = SizeClasses.of(List.of(read(Dimension.GROOVE_WIDTH, 5.0)));
    assertThat(any.open()).containsExactly(SizeClass.values());
    assertThat(any.inWords()).contains("Of any size class");
    assertThat(any.working().toText()).contains("no range is remembered");
  }

  @Test
  void an_identification_knows_nothing_of_them_unless_asked() {
    Identifier off = Identifier.of(DemoProfiles.birds());
    List<PlugReading> readings =
        List.of(read(Dimension.TIP_DIAMETER, 9.0), read(Dimension.COLLAR_DIAMETER, 12.0));
    Identification without = off.identify(readings);
    assertThat(without.sizeClasses()).isEmpty();
    assertThat(without.cautions())
        .extracting(Caution::title)
        .doesNotContain("Size class from memory");
    Identification with = off.withSizeClasses().identify(readings);
    assertThat(with.sizeClasses()).isPresent();
    assertThat(with.verdict())
        .as("never more than without")
        .isEqualTo(without.verdict())
        .isEqualTo(PlugVerdict.NO_MATCH);
    assertThat(with.unknownProbability()).isEqualTo(without.unknownProbability());
    assertThat(with.inWords()).contains("Size class small");
    assertThat(with.cautions()).extracting(Caution::title).contains("Size class from memory");
    assertThat(off.withSizeClasses().withUnknownPrior(0.1).usesSizeClasses()).isTrue();
  }
}
