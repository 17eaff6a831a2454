package org.airfit.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.Stream;
import org.airfit.Comparison;
import org.airfit.Pencil;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.quantity.Length;
import org.airfit.working.Completeness;
import org.airfit.working.UnitSystem;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.distribution.continuous.TDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class ToleranceIntervalTest {

  private static Length mm(double value) {
    return Length.ofMillimetres(value);
  }

  private static PartSpread.Sample sample(int pieces) {
    return new PartSpread.Sample(pieces, mm(12.0), mm(0.03));
  }

  private static int pieces(Row row) {
    return Integer.parseInt(row.text("n"));
  }

  private static String what(Row row) {
    return row.text("n") + " pieces, " + row.text("coverage") + " with " + row.text("confidence");
  }

  static Stream<Row> two_sided() {
    return Rows.of(ToleranceIntervalTest.class, "tolerance_k_two_sided.csv");
  }

  static Stream<Row> one_sided() {
    return Rows.of(ToleranceIntervalTest.class, "tolerance_k_one_sided.csv");
  }

  static Stream<Row> printed() {
    return Rows.of(ToleranceIntervalTest.class, "tolerance_k_printed.csv");
  }

  @ParameterizedTest
  @MethodSource("two_sided")
  void two_sided_factors_agree_with_another_program(Row row) {
    Comparison.of(
            "Statistics: tolerance factors, two-sided",
            what(row),
            row.number("k_two_sided_exact"),
            "-",
            row.evidence("k_two_sided_exact"))
        .isMetBy(
            ToleranceInterval.between(
                    sample(pieces(row)), row.number("coverage"), row.number("confidence"))
                .factor(),
            row.halfDigit("k_two_sided_exact"),
            "half the last digit");
  }

  @ParameterizedTest
  @MethodSource("one_sided")
  void one_sided_factors_agree_with_another_program(Row row) {
    Comparison.of(
            "Statistics: tolerance factors, one-sided",
            what(row),
            row.number("k_one_sided_exact"),
            "-",
            row.evidence("k_one_sided_exact"))
        .isMetBy(
            ToleranceInterval.atMost(
                    sample(pieces(row)), row.number("coverage"), row.number("confidence"))
                .factor(),
            row.halfDigit("k_one_sided_exact"),
            "half the last digit");
  }

  @ParameterizedTest
  @MethodSource("printed")
  void two_sided_factors_agree_with_the_printed_table(Row row) {
    Comparison.of(
            "Statistics: tolerance factors, printed",
            what(row),
            row.number("printed"),
            "-",
            row.evidence("printed"))
        .isMetBy(
            ToleranceInterval.between(
                    sample(pieces(row)), row.number("coverage"), row.number("confidence"))
                .factor(),
            row.halfDigit("printed"),
            "half the last digit");
  }

  /** With ever more pieces mean and deviation become known, and the factor is the normal score. */
  @Test
  void with_very_many_pieces_the_factor_is_the_normal_score() {
    assertThat(ToleranceInterval.between(sample(100_000), 0.95, 0.5).factor())
        .isCloseTo(1.959964, within(1.0e-4));
    assertThat(ToleranceInterval.atLeast(sample(100_000), 0.95, 0.5).factor())
        .isCloseTo(1.644854, within(1.0e-4));
  }

  /** Half of all parts lie above the mean: the limit is Student's for the mean, t s/√n. */
  @ParameterizedTest
  @ValueSource(ints = {2, 3, 10, 73, 500, 3000, 20_000, 100_000})
  void one_limit_for_half_of_all_parts_is_that_of_the_mean_itself(int pieces) {
    for (double confidence : new double[] {0.6, 0.95, 0.9999}) {
      double t = new TDistribution(pieces - 1).inverseCumulativeProbability(confidence);
      assertThat(ToleranceInterval.atMost(sample(pieces), 0.5, confidence).factor()
              / (t / Math.sqrt(pieces)))
          .as("confidence %s", confidence)
          .isCloseTo(1.0, within(1.0e-8));
    }
  }

  /** The chance again, summed the other way round: the deviation outside, the mean inside, by Simpson's rule. */
  @ParameterizedTest
  @CsvSource({
    "4,0.5001,0.9",
    "30,0.51,0.7",
    "300,0.51,0.9999",
    "300,0.9999,0.5",
    "5000,0.55,0.9999",
    "100000,0.505,0.99",
    "100000,0.95,0.9999"
  })
  void the_limit_holds_its_share_as_often_as_it_says(
      int pieces, double coverage, double confidence) {
    double k = ToleranceInterval.atLeast(sample(pieces), coverage, confidence).factor();
    double score = new NormalDistribution().inverseCumulativeProbability(coverage);
    double nu = pieces - 1.0;
    double wide = 11.0 / Math.sqrt(2.0 * nu);
    double low = Math.max(0.0, 1.0 - wide);
    double high = 1.0 + 1.5 * wide;
    int steps = 20_000;
    double h = (high - low) / steps;
    double chance = 0.0;
    double all = 0.0;
    for (int i = 0; i <= steps; i++) {
      double s = low + i * h;
      double weight = (i == 0 || i == steps ? 1.0 : i % 2 == 1 ? 4.0 : 2.0)
          * Math.exp((nu - 1.0) * Math.log(s) - 0.5 * nu * (s * s - 1.0));
      all += weight;
      chance += weight
          * new NormalDistribution().cumulativeProbability(Math.sqrt(pieces) * (k * s - score));
    }
    assertThat(chance / all).isCloseTo(confidence, within(1.0e-9));
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 3, 5, 30, 500, 2000, 20_000})
  void more_pieces_give_narrower_limits_and_one_limit_lies_nearer_than_two(int pieces) {
    double two = ToleranceInterval.between(sample(pieces), 0.95, 0.95).factor();
    assertThat(two).isGreaterThan(1.959964);
    assertThat(ToleranceInterval.between(sample(pieces + 1), 0.95, 0.95).factor())
        .isLessThan(two);
    assertThat(ToleranceInterval.atMost(sample(pieces), 0.95, 0.95).factor())
        .isLessThan(two)
        .isGreaterThan(ToleranceInterval.atMost(sample(pieces + 1), 0.95, 0.95).factor());
  }

  @Test
  void the_limits_lie_where_the_factor_says() {
    ToleranceInterval two = ToleranceInterval.between(sample(5), 0.95, 0.95);
    assertThat(two.low().orElseThrow().millimetres()).isCloseTo(12.0 - 5.0769 * 0.03, within(2e-6));
    assertThat(two.high().orElseThrow().millimetres())
        .isCloseTo(12.0 + 5.0769 * 0.03, within(2e-6));
    assertThat(two.inWords())
        .isEqualTo(
            "With 95 % confidence, 95 % of all pieces read 11.85 mm to 12.15 mm (5 pieces).");
    ToleranceInterval most = ToleranceInterval.atMost(sample(5), 0.99, 0.9);
    assertThat(most.low()).isEmpty();
    assertThat(most.inWords())
        .startsWith("With 90 % confidence, 99 % of all pieces read at most 12.1");
    ToleranceInterval least = ToleranceInterval.atLeast(sample(5), 0.99, 0.9);
    assertThat(least.high()).isEmpty();
    assertThat(least.inWords()).contains("at least 11.8");
    assertThat(least.reach()).isEqualTo(most.reach());
  }

  /** Two pieces of 1 mm that differ by a tenth: k is 37.7, and the lower limit would lie below nothing. */
  @Test
  void too_few_pieces_show_no_lower_limit_and_the_answer_says_so() {
    PartSpread.Sample two = new PartSpread.Sample(2, mm(1.0), mm(0.1));
    ToleranceInterval between = ToleranceInterval.between(two, 0.95, 0.95);
    assertThat(between.low()).isEmpty();
    assertThat(between.inWords()).contains("at most", "too few for a lower limit");
    ToleranceInterval least = ToleranceInterval.atLeast(two, 0.95, 0.95);
    assertThat(least.low()).isEmpty();
    assertThat(least.inWords()).isEqualTo("There are too few pieces for a lower limit (2 pieces).");
    for (UnitSystem units : UnitSystem.values()) {
      assertThat(least.working(units).toText()).contains("too few pieces");
      assertThat(between.working(units).toText()).contains("too few pieces");
      assertThat(between.working(units).answers()).hasSize(2);
    }
  }

  @Test
  void the_working_can_be_followed_with_a_pencil() {
    for (ToleranceInterval answer : new ToleranceInterval[] {
      ToleranceInterval.between(sample(5), 0.95, 0.95),
      ToleranceInterval.atMost(sample(9), 0.9, 0.95),
      ToleranceInterval.atLeast(sample(9), 0.9, 0.95)
    }) {
      Pencil.check(answer);
      Completeness.check(answer);
    }
  }

  @Test
  void shares_and_counts_outside_their_range_are_refused() {
    PartSpread.Sample five = sample(5);
    for (double wrong : new double[] {0.49, 0.99991, 1.0, Double.NaN, -1.0}) {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> ToleranceInterval.between(five, wrong, 0.95))
          .withMessageContainingAll("coverage must be in [0.5, 0.9999]", "" + wrong);
      assertThatIllegalArgumentException()
          .isThrownBy(() -> ToleranceInterval.atMost(five, 0.95, wrong))
          .withMessageContaining("confidence must be in [0.5, 0.9999]");
    }
    for (double right : new double[] {0.5, 0.9999}) {
      assertThat(ToleranceInterval.atLeast(five, right, right).factor())
          .isNotNegative()
          .isFinite();
    }
    PartSpread.Sample many = sample(100_001);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> ToleranceInterval.between(many, 0.95, 0.95))
        .withMessageContainingAll("at most 100000", "100001");
  }
}
