package org.airfit.plug;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.airfit.measure.Instrument;
import org.airfit.measure.PartSpread;
import org.airfit.measure.Reading;
import org.airfit.quantity.Length;
import org.airfit.source.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Simulated plugs, drawn as the model says they come: what is said with 90 % must be right in 90 % of the cases. */
class CalibrationTest {

  private static final int PLUGS = 20_000;
  private static final List<Dimension> READ =
      List.of(Dimension.TIP_DIAMETER, Dimension.COLLAR_DIAMETER, Dimension.TIP_LENGTH);

  /** The demo sizes, as if a standard had printed them, so that a verdict may say "identified". */
  private static final ReferenceSet SET = ReferenceSet.of(
      "as if from a standard",
      DemoProfiles.birds().profiles().stream()
          .map(CalibrationTest::asIfFromAStandard)
          .toList());

  private static PlugProfile asIfFromAStandard(PlugProfile bird) {
    PlugProfile.Builder builder = PlugProfile.builder(bird.id())
        .from(Provenance.standardEntered(), Source.demo("as if from a standard"));
    bird.dimensions().forEach(builder::dimension);
    return builder.build();
  }

  private record Tally(
      double promised, int given, int right, int unknowns, int unknownsIdentified) {}

  private static Tally simulate(long seed, double wearMm, double unknownShare) {
    SplittableRandom random = new SplittableRandom(seed);
    Identifier identifier = Identifier.of(SET)
        .withUnknownPrior(unknownShare)
        .withWearAllowance(Length.ofMillimetres(wearMm));
    double promised = 0.0;
    int given = 0;
    int right = 0;
    int unknowns = 0;
    int unknownsIdentified = 0;
    for (int i = 0; i < PLUGS; i++) {
      boolean unknown = random.nextDouble() < unknownShare;
      PlugProfile truth = SET.profiles().get(random.nextInt(SET.profiles().size()));
      List<PlugReading> readings = new ArrayList<>();
      for (Dimension dimension : READ) {
        Length u = Instrument.DIGITAL_CALIPER.standardUncertainty(dimension.access());
        double size = unknown
            ? middle(dimension) + random.nextDouble(-5.0, 5.0)
            : plug(random, truth, dimension, wearMm) + u.millimetres() * random.nextGaussian();
        readings.add(PlugReading.of(dimension, Reading.of(Length.ofMillimetres(size), u)));
      }
      Identification answer = identifier.identify(readings);
      ProfileCandidate best = answer.candidates().get(0);
      if (unknown) {
        unknowns++;
        unknownsIdentified += answer.verdict() == PlugVerdict.IDENTIFIED ? 1 : 0;
      }
      if (best.probability() >= 0.85 && best.probability() < 0.95) {
        given++;
        promised += best.probability();
        right += !unknown && best.profile().equals(truth) ? 1 : 0;
      }
    }
    return new Tally(promised, given, right, unknowns, unknownsIdentified);
  }

  private static double middle(Dimension dimension) {
    return SET.profiles().stream()
        .mapToDouble(p -> p.spread(dimension).orElseThrow().nominal().millimetres())
        .summaryStatistics()
        .getAverage();
  }

  private static double plug(
      SplittableRandom random, PlugProfile truth, Dimension dimension, double wearMm) {
    PartSpread spread = truth.spread(dimension).orElseThrow();
    double worn = wearMm * random.nextDouble() * dimension.wear().sign();
    return spread.nominal().millimetres()
        + spread.standardDeviation().millimetres() * random.nextGaussian()
        + worn;
  }

  private static void assertCalibrated(Tally tally) {
    assertThat(tally.given()).as("enough answers near 90 % to judge").isGreaterThan(1000);
    assertThat(tally.right() / (double) tally.given())
        .as(
            "answers near 90 %% that were right, of %d; promised %.4f",
            tally.given(), tally.promised() / tally.given())
        .isCloseTo(tally.promised() / tally.given(), within(0.02));
  }

  @ParameterizedTest
  @ValueSource(longs = {41, 42})
  void answers_at_ninety_in_a_hundred_are_right_that_often(long seed) {
    assertCalibrated(simulate(seed, 0.0, 0.0));
  }

  @Test
  void they_are_so_with_worn_plugs_too() {
    assertCalibrated(simulate(43, 0.2, 0.0));
  }

  @Test
  void they_are_so_with_unknown_plugs_mixed_in_and_those_are_hardly_ever_identified() {
    Tally tally = simulate(44, 0.0, 0.2);
    assertCalibrated(tally);
    assertThat(tally.unknowns()).isGreaterThan(3500);
    assertThat(tally.unknownsIdentified() / (double) tally.unknowns()).isLessThan(0.01);
  }
}
