package org.airfit.thread;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.stream.Stream;
import org.airfit.Comparison;
import org.airfit.Evidence;
import org.airfit.Pencil;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.ThreadTables;
import org.airfit.quantity.Length;
import org.airfit.quantity.NominalThreadSize;
import org.airfit.working.Completeness;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What holds for every thread, and the forms they are cut in. */
class PipeThreadTest {

  static Stream<PipeThread> threads() {
    return Arrays.stream(ThreadFamily.values())
        .flatMap(family ->
            family.sizes().stream().flatMap(size -> PipeThreads.of(family, size).stream()));
  }

  @ParameterizedTest
  @MethodSource("threads")
  void the_working_prints_a_calculation_a_calculator_repeats(PipeThread thread) {
    Pencil.check(thread);
    Completeness.check(thread);
    assertThat(thread.working().toLatex()).doesNotContain("⟨");
  }

  @ParameterizedTest
  @MethodSource("threads")
  void a_thread_knows_its_family_size_and_source(PipeThread thread) {
    assertThat(PipeThreads.of(thread.family(), thread.size())).contains(thread);
    assertThat(thread.source().citation()).isNotBlank();
    assertThat(thread.pitch().inches() * thread.threadsPerInch()).isCloseTo(1.0, within(0.0005));
    assertThat(thread.height()).isLessThan(thread.pitch());
  }

  @ParameterizedTest
  @MethodSource("threads")
  void a_loose_piece_is_still_near_its_basic_size(PipeThread thread) {
    for (Gender gender : Gender.values()) {
      if (thread.family().has(gender)) {
        assertThat(thread.looseness(gender)).isBetween(Length.ofMetres(0.0), thread.height());
      } else {
        assertThatThrownBy(() -> thread.looseness(gender))
            .isInstanceOf(IllegalArgumentException.class);
      }
    }
  }

  @Test
  void dryseal_families_have_no_geometry_here() {
    assertThat(PipeThreads.of(ThreadFamily.NPTF, NominalThreadSize.ONE)).isEmpty();
    assertThat(ThreadFamily.NPTF.sizes()).endsWith(NominalThreadSize.THREE);
    assertThatThrownBy(() -> PipeThreads.of(ThreadFamily.NPTF, NominalThreadSize.FOUR))
        .hasMessageContaining("nearest is 3");
  }

  static Stream<Row> forms() {
    return Rows.of(PipeThreadTest.class, "thread_forms.csv");
  }

  @Test
  void forms_are_those_of_the_standards() {
    forms().filter(row -> row.text("npt_60deg").matches("[0-9.]+.*")).forEach(row -> {
      form(row, "npt_60deg", ThreadForm.FLAT_60);
      form(row, "whitworth_55deg", ThreadForm.ROUND_55);
    });
  }

  private static void form(Row row, String column, ThreadForm form) {
    double ours = switch (row.text("quantity")) {
      case "included flank angle" -> form.flankAngleDegrees();
      case "sharp height H parallel" -> form.sharpHeightOverPitch();
      case "sharp height H taper" -> form.taperSharpHeightOverPitch();
      case "thread height h" -> form.heightOverPitch();
      default -> Double.NaN;
    };
    if (Double.isNaN(ours)) {
      return;
    }
    String printed = row.text(column).split(" ", -1)[0];
    int decimals = printed.contains(".") ? printed.length() - printed.indexOf('.') - 1 : 0;
    Comparison.of(
            "Threads: forms",
            row + ", " + column,
            Double.parseDouble(printed),
            row.text("unit"),
            row.evidence(column))
        .isMetBy(ours, 0.5000001 * Math.pow(10.0, -decimals), "digits printed");
  }

  @Test
  void the_half_angle_of_the_cone_is_the_printed_one() {
    Comparison.of("Threads: forms", "half angle of the cone", 1.7899, "°", Evidence.printed("S15"))
        .isMetBy(ThreadForm.coneHalfAngleDegrees(), 0.00005, "digits printed");
    assertThat(ThreadForm.FLAT_60.source().citation()).contains("B1.20.1");
  }

  @Test
  void limits_are_in_order_and_hold_their_ends() {
    Limits limits = new Limits(Length.ofMillimetres(1.0), Length.ofMillimetres(2.0));
    assertThat(limits.contains(Length.ofMillimetres(1.0))).isTrue();
    assertThat(limits.contains(Length.ofMillimetres(2.0))).isTrue();
    assertThat(limits.contains(Length.ofMillimetres(0.999))).isFalse();
    assertThat(limits.contains(Length.ofMillimetres(2.001))).isFalse();
    assertThat(limits).hasToString("1.000 to 2.000 mm");
    assertThatThrownBy(() -> new Limits(Length.ofMillimetres(2.0), Length.ofMillimetres(1.0)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("least must be at most 1 mm, was 2 mm");
  }

  @Test
  void a_section_prints_its_diameters() {
    assertThat(BsppThread.of(NominalThreadSize.ONE_HALF).section(Gender.MALE, ThreadTables.END))
        .hasToString("major 20.955 mm, pitch 19.793 mm, minor 18.631 mm");
  }
}
