package org.airfit.plug;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import org.airfit.measure.Instrument;
import org.airfit.measure.PartSpread;
import org.airfit.measure.Wear;
import org.airfit.quantity.Length;
import org.airfit.safety.Caution;
import org.airfit.source.Source;
import org.junit.jupiter.api.Test;

class BenchPathTest {

  private static final BenchPath BIRDS = BenchPath.of(Identifier.of(DemoProfiles.birds()));

  private static Length mm(double value) {
    return Length.ofMillimetres(value);
  }

  private static PlugProfile profile(String id, Dimension[] dimensions, double... sizes) {
    PlugProfile.Builder builder = PlugProfile.builder(id)
        .from(Provenance.standardEntered(), Source.demo("a set for a test"))
        .confirmUnusual();
    for (int i = 0; i < sizes.length; i++) {
      builder.dimension(dimensions[i], PartSpread.normal(mm(sizes[i]), mm(0.03)));
    }
    return builder.build();
  }

  private static final Dimension[] TWO = {Dimension.TIP_DIAMETER, Dimension.TIP_LENGTH};

  @Test
  void every_profile_comes_to_its_own_name_and_none_is_settled_on_one_reading() {
    for (PlugProfile truth : DemoProfiles.birds().profiles()) {
      BenchPath.Branch end = walk(BIRDS, truth, 0.0, new SplittableRandom(1));
      assertThat(end.settled()).isTrue();
      assertThat(end.profiles()).containsExactly(truth);
    }
    assertThat(BIRDS.steps().get(0).branches())
        .allSatisfy(branch ->
            assertThat(branch.next()).as("one dimension alone names no profile").isPositive());
  }

  /**
   * Follows the path with the readings of one plug, whose sizes scatter by so many standard deviations of part and
   * reading.
   */
  private static BenchPath.Branch walk(
      BenchPath path, PlugProfile truth, double scatter, SplittableRandom random) {
    BenchPath.Branch branch = null;
    int number = 1;
    while (number > 0) {
      BenchPath.Step step = path.steps().get(number - 1);
      PartSpread spread = truth.spread(step.dimension()).orElseThrow();
      double sigma = Math.hypot(
          spread.standardDeviation().millimetres(),
          path.identifier()
              .instrument()
              .standardUncertainty(step.dimension().access())
              .millimetres());
      branch = step.of(mm(spread.nominal().millimetres() + scatter * sigma * random.nextGaussian()))
          .orElse(new BenchPath.Branch(mm(0.0), mm(0.0), List.of(), 0));
      number = branch.next();
    }
    assertThat(branch).isNotNull();
    return java.util.Objects.requireNonNull(branch);
  }

  /** Each band holds 99.73 %; the readings of a path are independent. */
  @Test
  void genuine_plugs_stay_inside_their_bands_as_often_as_is_said() {
    SplittableRandom random = new SplittableRandom(7);
    int plugs = 20_000;
    int right = 0;
    for (int i = 0; i < plugs; i++) {
      PlugProfile truth = DemoProfiles.birds().profiles().get(i % 4);
      right += walk(BIRDS, truth, 1.0, random).profiles().contains(truth) ? 1 : 0;
    }
    double expected = Math.pow(0.9973, BIRDS.expectedReadings());
    double error = Math.sqrt(expected * (1.0 - expected) / plugs);
    assertThat(right / (double) plugs)
        .as("seed 7; four standard errors, and up to a band's own share where bands were joined")
        .isBetween(expected - 4.0 * error - 0.0005, 1.0);
  }

  @Test
  void few_readings_are_enough() {
    assertThat(BIRDS.expectedReadings()).isBetween(2.0, 3.0);
  }

  @Test
  void the_pair_of_like_lengths_is_parted_by_a_width_or_the_length_before_it() {
    List<PlugProfile> pair = List.of(
        DemoProfiles.birds().profile("demo-curlew").orElseThrow(),
        DemoProfiles.birds().profile("demo-plover").orElseThrow());
    BenchPath path = BenchPath.of(Identifier.of(ReferenceSet.of("pair", pair)));
    assertThat(path.steps().get(0).dimension())
        .isIn(Dimension.GROOVE_WIDTH, Dimension.TIP_TO_COLLAR);
    assertThat(path.steps().get(0).branches()).hasSize(2);
  }

  @Test
  void a_reading_outside_every_band_is_of_none_in_the_set() {
    assertThat(BIRDS.steps().get(0).of(mm(3.0))).isEmpty();
    assertThat(BIRDS.toText())
        .contains("anything else        none of the set.", "1  Measure the ", "go to 2", "99.7 %")
        .isEqualTo(BIRDS.toString());
    assertThat(BIRDS.cautions())
        .extracting(Caution::title)
        .contains("Mating check", "Reference set");
  }

  @Test
  void twins_that_nothing_parts_are_left_together() {
    BenchPath path = BenchPath.of(Identifier.of(ReferenceSet.of(
        "twins", List.of(profile("a", TWO, 10.0, 20.0), profile("b", TWO, 10.01, 20.02)))));
    assertThat(path.steps()).hasSize(2);
    BenchPath.Branch end = path.steps().get(1).branches().get(0);
    assertThat(end.settled()).isFalse();
    assertThat(end.profiles()).hasSize(2);
    assertThat(path.toText()).contains("one of a or b: bands do not part them; measure the rest.");
  }

  @Test
  void profiles_without_a_common_dimension_have_no_path() {
    BenchPath path = BenchPath.of(Identifier.of(ReferenceSet.of(
        "strangers",
        List.of(
            profile("a", new Dimension[] {Dimension.TIP_DIAMETER}, 10.0),
            profile("b", new Dimension[] {Dimension.TIP_LENGTH}, 20.0)))));
    assertThat(path.steps()).isEmpty();
    assertThat(path.expectedReadings()).isZero();
    assertThat(path.toText()).contains("there is no path");
  }

  @Test
  void wear_widens_the_bands_on_the_side_it_works_on() {
    PlugProfile heron = DemoProfiles.birds().profile("demo-heron").orElseThrow();
    BenchPath worn = BenchPath.of(
        Identifier.of(ReferenceSet.of("heron", List.of(heron))).withWearAllowance(mm(0.3)));
    assertThat(worn.toText()).contains("wear of up to 0.3 mm allowed");
    BenchPath.Step first = worn.steps().stream()
        .filter(step -> step.dimension().wear() == Wear.SHRINKS)
        .findFirst()
        .orElseThrow();
    Length nominal = heron.spread(first.dimension()).orElseThrow().nominal();
    BenchPath.Branch branch = first.of(nominal).orElseThrow();
    double above = branch.high().minus(nominal).millimetres();
    double below = nominal.minus(branch.low()).millimetres();
    assertThat(below - above).as("the allowance").isCloseTo(0.3, within(1.0e-9));
  }

  @Test
  void measured_sets_get_the_wider_bands_of_few_pieces() {
    List<Length> pieces = List.of(mm(10.0), mm(10.02), mm(9.98), mm(10.01), mm(9.99));
    PlugProfile measured = PlugProfile.builder("m")
        .from(Provenance.userMeasured(5), Source.demo("a set for a test"))
        .dimension(Dimension.TIP_DIAMETER, PartSpread.measured(pieces))
        .dimension(Dimension.COLLAR_DIAMETER, PartSpread.normal(mm(14.0), mm(0.02)))
        .build();
    BenchPath path = BenchPath.of(Identifier.of(ReferenceSet.of("one", List.of(measured))));
    BenchPath.Branch band = path.steps().stream()
        .filter(step -> step.dimension() == Dimension.TIP_DIAMETER)
        .findFirst()
        .orElseThrow()
        .branches()
        .get(0);
    double scale = Math.hypot(
        measured
            .spread(Dimension.TIP_DIAMETER)
            .orElseThrow()
            .standardDeviation()
            .millimetres(),
        Instrument.DIGITAL_CALIPER
            .standardUncertainty(Dimension.TIP_DIAMETER.access())
            .millimetres());
    assertThat(band.high().millimetres() - 10.0).isGreaterThan(3.0 * scale);
  }
}
