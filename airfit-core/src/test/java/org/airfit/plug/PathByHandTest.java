package org.airfit.plug;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.airfit.internal.Digits;
import org.airfit.measure.Instrument;
import org.airfit.measure.PartSpread;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.source.Source;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Paths and pairs, worked again from the normal distribution and read line by line. */
class PathByHandTest {

  private static final Instrument CALIPER = Instrument.DIGITAL_CALIPER;
  private static final double PART = 0.03;

  private static Length mm(double value) {
    return Length.ofMillimetres(value);
  }

  private static PlugProfile.Builder tip(String id, double tip) {
    return PlugProfile.builder(id)
        .displayName(id)
        .from(Provenance.standardEntered(), Source.demo("a set for a test"))
        .confirmUnusual()
        .dimension(Dimension.TIP_DIAMETER, PartSpread.normal(mm(tip), mm(PART)));
  }

  private static PlugProfile both(String id, double tip, double length) {
    return tip(id, tip)
        .dimension(Dimension.TIP_LENGTH, PartSpread.normal(mm(length), mm(PART)))
        .deciding(List.of(Dimension.TIP_DIAMETER, Dimension.TIP_LENGTH))
        .build();
  }

  private static ReferenceSet set(PlugProfile... profiles) {
    return ReferenceSet.of("some", List.of(profiles));
  }

  private static double sigma(Dimension dimension) {
    return Math.hypot(PART, CALIPER.standardUncertainty(dimension.access()).millimetres());
  }

  private static double above(double z) {
    return new NormalDistribution().cumulativeProbability(-z);
  }

  private static double score(double tail) {
    return -new NormalDistribution().inverseCumulativeProbability(tail);
  }

  /** A band of 99.73 %: 0.135 % on either side. */
  private static String band(double nominal, Dimension dimension) {
    double margin = score(0.00135) * sigma(dimension);
    String low = Digits.fixed(nominal - margin, 2);
    String high = Digits.fixed(nominal + margin, 2);
    return "   " + " ".repeat(6 - low.length()) + low + " to " + " ".repeat(6 - high.length())
        + high + " mm   ";
  }

  private static String measure(int number, Dimension dimension) {
    return "\n" + number + "  Measure the " + dimension + ": " + dimension.howToMeasure() + ".\n";
  }

  @Test
  void a_path_is_written_out_with_every_band_and_where_it_leads() {
    ReferenceSet set = set(both("Ant", 8.0, 20.0), both("Bee", 12.0, 22.0));
    String none = "   anything else        none of the set.\n";
    String head =
        "What to measure: the set \"some\"\nSizes entered from a standard. Readings with a "
            + CALIPER.label()
            + ".\nA band holds 99.7 % of genuine plugs. 2.0 readings on average.\n"
            + "Effort of a reading: tip diameter 1, tip length "
            + Digits.significant(Effort.usual().of(Dimension.TIP_LENGTH), 3) + " ["
            + Effort.usual().source() + "].\n";
    String steps = measure(1, Dimension.TIP_DIAMETER)
        + band(8.0, Dimension.TIP_DIAMETER) + "looks like Ant: go to 2 to make sure\n"
        + band(12.0, Dimension.TIP_DIAMETER) + "looks like Bee: go to 3 to make sure\n" + none
        + measure(2, Dimension.TIP_LENGTH)
        + band(20.0, Dimension.TIP_LENGTH) + "Ant.\n" + none
        + measure(3, Dimension.TIP_LENGTH)
        + band(22.0, Dimension.TIP_LENGTH) + "Bee.\n" + none;
    String foot =
        "\nThis sorts and does not weigh: for the verdict enter every reading. Then check the mating, "
            + "depressurised.\n";
    BenchPath path = BenchPath.of(Identifier.of(set));
    assertThat(path.toText()).isEqualTo(head + steps + foot);
    assertThat(path.expectedReadings()).isEqualTo(2.0);
    assertThat(path.steps()).extracting(BenchPath.Step::number).containsExactly(1, 2, 3);
  }

  @Test
  void what_is_left_to_read_is_written_by_symbol_where_near_copies_are_about() {
    PlugProfile ant = tip("Ant", 8.0)
        .dimension(Dimension.TIP_LENGTH, PartSpread.normal(mm(20.0), mm(PART)))
        .dimension(Dimension.COLLAR_DIAMETER, PartSpread.normal(mm(12.0), mm(PART)))
        .deciding(List.of(Dimension.TIP_DIAMETER, Dimension.TIP_LENGTH, Dimension.COLLAR_DIAMETER))
        .build();
    BenchPath path = BenchPath.of(Identifier.of(set(ant)));
    BenchPath.Step last = path.steps().get(1);
    assertThat(path.steps()).hasSize(2);
    assertThat(path.restOf(last, last.branches().get(0))).containsExactly(Dimension.TIP_LENGTH);
    assertThat(path.toText())
        .contains("Ant. To identify it read also " + Dimension.TIP_LENGTH.symbol() + ".\n");
    assertThat(BenchPath.of(Identifier.of(set(ant)).withoutNearCopies()).toText())
        .contains(" mm   Ant.\n");
    BenchPath.Step first = path.steps().get(0);
    BenchPath.Branch of = last.branches().get(0);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> path.restOf(first, of))
        .withMessage("step and branch must be of this path, was step 1; take them from steps()");
  }

  /** Nine sizes less those known, by their symbols; profiles with the same gaps stand together. */
  @Test
  void a_path_tells_what_the_set_does_not_know_and_promises_nothing() {
    PlugProfile tips = tip("Ant", 8.0).build();
    PlugProfile lengths = tip("Bee", 12.0)
        .dimension(Dimension.TIP_LENGTH, PartSpread.normal(mm(20.0), mm(PART)))
        .dimension(Dimension.COLLAR_DIAMETER, PartSpread.normal(mm(15.0), mm(PART)))
        .build();
    String rest =
        ", on which the mating depends too: a candidate at most, until they are in the set.\n";
    ReferenceSet two = set(tips, lengths);
    assertThat(BenchPath.of(Identifier.of(two)).toText())
        .contains("\nOf Ant the set does not know D_c, L_g, L_i, W_g, D_g, L_c, D_s, d_b" + rest)
        .contains("\nOf Bee the set does not know L_i, W_g, D_g, L_c, D_s, d_b" + rest);
    String one = BenchPath.of(Identifier.of(set(lengths))).toText();
    assertThat(one)
        .contains("Bee. Read also L_g.\n")
        .contains("\nOf no profile does the set know L_i, W_g, D_g, L_c, D_s, d_b" + rest)
        .doesNotContain("To identify it");
    assertThat(BenchPath.of(Identifier.of(two).withoutNearCopies()).toText())
        .doesNotContain("the set does not know");
    assertThat(BenchPath.of(Identifier.of(set(both("Cow", 14.0, 20.0), tips))).toText())
        .contains("\nOf Ant the set does not know D_c, L_g,");
  }

  @Test
  void bands_that_meet_are_joined_and_read_from_end_to_end() {
    BenchPath path = BenchPath.of(Identifier.of(
        set(tip("a", 10.0).build(), tip("b", 10.1).build(), tip("c", 14.0).build())));
    BenchPath.Step step = path.steps().get(0);
    double margin = score(0.00135) * sigma(Dimension.TIP_DIAMETER);
    assertThat(step.branches()).hasSize(2);
    BenchPath.Branch joined = step.branches().get(0);
    assertThat(joined.profiles()).extracting(PlugProfile::id).containsExactly("a", "b");
    assertThat(joined.low().millimetres()).isCloseTo(10.0 - margin, within(1.0e-9));
    assertThat(joined.high().millimetres()).isCloseTo(10.1 + margin, within(1.0e-9));
    assertThat(joined.settled()).isFalse();
    assertThat(step.of(joined.low())).contains(joined);
    assertThat(step.of(joined.high())).contains(joined);
    assertThat(step.of(mm(joined.low().millimetres() - 1.0e-6))).isEmpty();
    assertThat(step.of(mm(joined.high().millimetres() + 1.0e-6))).isEmpty();
    assertThat(path.expectedReadings()).isEqualTo(1.0);
    assertThat(path.toText())
        .contains("one of a or b: bands do not part them; measure the rest.\n");
  }

  private static Separation pair(PlugProfile one, PlugProfile other) {
    return Separation.of(one, other, CALIPER);
  }

  /** Q(½ √Σ (d/σ)²) for two equally common profiles of the same scatter. */
  @Test
  void the_risk_of_a_pair_is_the_tail_at_half_the_distance() {
    Separation pair = pair(both("Ant", 10.0, 20.0), both("Bee", 10.06, 20.08));
    double a = 0.06 / sigma(Dimension.TIP_DIAMETER);
    double b = 0.08 / sigma(Dimension.TIP_LENGTH);
    assertThat(pair.risk()).isCloseTo(above(0.5 * Math.hypot(a, b)), within(1.0e-12));
    assertThat(pair.dimensions())
        .extracting(Separation.ByDimension::dimension)
        .containsExactly(Dimension.TIP_DIAMETER, Dimension.TIP_LENGTH);
    Separation.ByDimension first = pair.dimensions().get(0);
    assertThat(first.risk()).isCloseTo(above(0.5 * a), within(1.0e-12));
    assertThat(first.difference().millimetres()).isCloseTo(0.06, within(1.0e-12));
    assertThat(first.partSpread().millimetres()).isCloseTo(PART, within(1.0e-12));
    assertThat(first.scatter().millimetres())
        .isCloseTo(sigma(Dimension.TIP_DIAMETER), within(1.0e-12));
    assertThat(pair)
        .hasToString("Ant and Bee by " + CALIPER + ", risk " + Digits.percent(pair.risk()));
    double needed = 0.0;
    for (double d : new double[] {0.06, 0.08}) {
      double sigma = d / (2.0 * score(0.2));
      needed = Math.max(needed, sigma > PART ? Math.sqrt(sigma * sigma - PART * PART) : 0.0);
    }
    assertThat(pair.neededUncertainty(0.2).orElseThrow().millimetres())
        .isCloseTo(needed, within(1.0e-9));
    double risk = pair.risk();
    assertThat(pair.instruments(risk)).contains(CALIPER);
    assertThat(pair.instruments(risk - 1.0e-9)).doesNotContain(CALIPER);
    String by = "the " + Dimension.TIP_DIAMETER + " differs most, by 0.06 mm or "
        + Digits.fixed(a, 1) + " times the scatter";
    assertThat(pair.inWords(risk))
        .isEqualTo("Ant and Bee can be told apart with a " + CALIPER.label() + ", risk "
            + Digits.percent(risk) + ": " + by + ".");
    assertThat(pair.inWords(0.001))
        .isEqualTo("Ant and Bee cannot be told apart with a " + CALIPER.label() + ", risk "
            + Digits.percent(risk) + ": " + by
            + ". No instrument would do: the plugs themselves differ too much from part to part. "
            + "Use a gauge, or the mating half.");
    double close = 0.24;
    Separation narrow = pair(tip("Ant", 10.0).build(), tip("Bee", 10.05).build());
    double u = Math.sqrt(Math.pow(0.05 / (2.0 * score(close)), 2.0) - PART * PART);
    assertThat(narrow.risk()).isGreaterThan(0.2);
    assertThat(
            narrow.neededUncertainty(close).map(length -> length.format(LengthUnit.MILLIMETRE, 4)))
        .isEqualTo(Optional.of(mm(u).format(LengthUnit.MILLIMETRE, 4)));
  }

  @Test
  void two_scatters_count_with_their_mean_square() {
    PlugProfile wide = PlugProfile.builder("wide")
        .from(Provenance.standardEntered(), Source.demo("a set for a test"))
        .dimension(Dimension.TIP_DIAMETER, PartSpread.normal(mm(10.2), mm(0.07)))
        .build();
    Separation.ByDimension by = pair(tip("a", 10.0).build(), wide).dimensions().get(0);
    assertThat(by.partSpread().millimetres())
        .isCloseTo(Math.sqrt((0.03 * 0.03 + 0.07 * 0.07) / 2.0), within(1.0e-12));
  }

  /** By the fast way through the table of sizes and by making every pair. */
  @ParameterizedTest
  @ValueSource(ints = {1, 2, 5, 27, 28, 100})
  void the_hardest_pairs_are_the_first_of_all_pairs(int most) {
    PlugWorkshop workshop = new PlugWorkshop(17);
    List<PlugProfile> profiles = new ArrayList<>(workshop.set(6).profiles());
    profiles.add(both("half", 11.0, 17.0));
    profiles.add(tip("ball", 11.1)
        .dimension(Dimension.TIP_LENGTH, PartSpread.limits(mm(16.9), mm(17.1)))
        .tipLengthBy(new GaugeBall(mm(4.0)))
        .build());
    ReferenceSet set = ReferenceSet.of("drawn", profiles);
    List<Separation> all = Separation.within(set, CALIPER);
    assertThat(all).hasSize(28);
    assertThat(Separation.hardest(set, CALIPER, most))
        .containsExactlyElementsOf(all.subList(0, Math.min(most, 28)));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Separation.hardest(set, CALIPER, 0))
        .withMessage("pairs to give must be at least 1, were 0");
  }

  private static PlugProfile three(String id, double tip, double length, double width) {
    return tip(id, tip)
        .dimension(Dimension.TIP_LENGTH, PartSpread.normal(mm(length), mm(PART)))
        .dimension(Dimension.GROOVE_WIDTH, PartSpread.normal(mm(width), mm(PART)))
        .build();
  }

  /** Every profile read at its nominal sizes, step by step, as somebody at the bench goes; some take two, some three. */
  @Test
  void the_expected_readings_are_those_of_all_profiles_on_their_way() {
    List<PlugProfile> profiles = List.of(
        three("P", 10.0, 20.0, 4.0),
        three("Q1", 12.0, 20.0, 4.0),
        three("Q2", 12.0, 20.0, 5.0),
        three("Q3", 12.0, 22.0, 4.0),
        three("Q4", 12.0, 22.0, 5.0));
    BenchPath path = BenchPath.of(Identifier.of(ReferenceSet.of("five", profiles)));
    List<Integer> counts = new ArrayList<>();
    for (PlugProfile profile : profiles) {
      int count = 0;
      int number = 1;
      while (number > 0) {
        BenchPath.Step step = path.steps().get(number - 1);
        Length nominal = profile.spread(step.dimension()).orElseThrow().nominal();
        BenchPath.Branch branch = step.of(nominal).orElseThrow();
        assertThat(branch.profiles()).contains(profile);
        number = branch.next();
        count++;
      }
      counts.add(count);
    }
    assertThat(counts).contains(2, 3);
    assertThat(path.expectedReadings())
        .isEqualTo(counts.stream().mapToInt(Integer::intValue).sum() / 5.0);
  }
}
