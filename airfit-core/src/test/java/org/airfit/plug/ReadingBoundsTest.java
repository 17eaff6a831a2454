package org.airfit.plug;

import static org.airfit.plug.TipAndLength.both;
import static org.airfit.plug.TipAndLength.mm;
import static org.airfit.plug.TipAndLength.set;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.List;
import org.airfit.measure.PartSpread;
import org.airfit.measure.Reading;
import org.airfit.source.Source;
import org.junit.jupiter.api.Test;

/** How large a reading and how small its uncertainty may be, and that the working of any such reading can be printed. */
class ReadingBoundsTest {

  @Test
  void an_uncertainty_is_a_picometre_at_least() {
    assertThat(Reading.of(mm(5.0), mm(1.0e-9)).standardUncertainty()).isEqualTo(mm(1.0e-9));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Reading.of(mm(5.0), mm(0.9e-9)))
        .withMessageStartingWith(
            "standard uncertainty of a reading must be at least 1e-9 mm, was 9e-10 mm; ");
  }

  @Test
  void a_reading_is_ten_metres_at_most() {
    assertThat(Reading.of(mm(10_000.0), mm(0.01)).length()).isEqualTo(mm(10_000.0));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Reading.of(mm(10_001.0), mm(0.01)))
        .withMessageStartingWith("reading must be above 0 mm and at most 10000 mm, was 10001 mm; ");
  }

  @Test
  void the_sizes_of_a_profile_are_ten_metres_at_most() {
    assertThat(PartSpread.normal(mm(10_000.0), mm(10_000.0)).nominal()).isEqualTo(mm(10_000.0));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> PartSpread.normal(mm(10_001.0), mm(1.0)))
        .withMessage("nominal must be above 0 mm and at most 10000 mm, was 10001 mm");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> PartSpread.normal(mm(1.0), mm(10_001.0)))
        .withMessageStartingWith("standard deviation must be above 0 mm");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> PartSpread.limits(mm(1.0), mm(10_001.0)))
        .withMessageStartingWith("upper limit must be above 0 mm and at most 10000 mm");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new PartSpread.Sample(3, mm(1.0), mm(10_001.0)))
        .withMessageStartingWith("standard deviation of the pieces must be above 0 mm and at most");
  }

  @Test
  void the_working_of_readings_at_the_bounds_can_be_printed() {
    PlugProfile exact = PlugProfile.builder("A")
        .displayName("A")
        .from(Provenance.standardEntered(), Source.demo("a set for a test"))
        .dimension(Dimension.TIP_DIAMETER, PartSpread.normal(mm(10.0), mm(1.0e-300)))
        .dimension(Dimension.TIP_LENGTH, PartSpread.normal(mm(20.0), mm(1.0e-300)))
        .build();
    String working = Identifier.of(set(exact, both("B", 10.0, 20.0)))
        .identify(List.of(
            PlugReading.of(Dimension.TIP_DIAMETER, Reading.of(mm(10_000.0), mm(1.0e-9))),
            PlugReading.of(Dimension.TIP_LENGTH, Reading.of(mm(1.0e-9), mm(1.0e-9)))))
        .working()
        .toText();
    assertThat(working).contains("tip diameter").doesNotContain("Infinity");
  }
}
