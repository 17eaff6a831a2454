package org.airfit.plug;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.airfit.measure.Instrument;
import org.airfit.measure.PartSpread;
import org.airfit.quantity.Length;
import org.airfit.source.Source;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What a next reading by the same caliper is expected to bring, against a simulation that knows the model only: a
 * profile, an error of the caliper and an unread size are drawn as they come, and weighed by how well they explain the
 * readings so far.
 */
class NextReadingTest {

  private static final int DRAWS = 20_000;
  private static final Instrument CALIPER = Instrument.VERNIER_CALIPER_0_05;
  private static final Dimension NEXT = Dimension.SHOULDER_DIAMETER;
  private static final List<Dimension> READ =
      List.of(Dimension.TIP_DIAMETER, Dimension.COLLAR_DIAMETER);
  private static final double PART_MM = 0.01;

  private static Length mm(double value) {
    return Length.ofMillimetres(value);
  }

  private static PartSpread spread(double nominal, boolean limits) {
    return limits
        ? PartSpread.limits(mm(nominal - 0.015), mm(nominal + 0.015))
        : PartSpread.normal(mm(nominal), mm(PART_MM));
  }

  private static PlugProfile profile(String id, double off, double nextOff, boolean limits) {
    return PlugProfile.builder(id)
        .from(Provenance.standardEntered(), Source.demo("sizes for a test"))
        .dimension(READ.get(0), spread(12.0 + off, limits))
        .dimension(READ.get(1), spread(16.0 + off, limits))
        .dimension(NEXT, spread(15.0 + nextOff, limits))
        .build();
  }

  private static List<PlugReading> with(List<PlugReading> taken, double next) {
    List<PlugReading> more = new ArrayList<>(taken);
    more.add(PlugReading.of(NEXT, CALIPER, mm(next)));
    return more;
  }

  private static double part(SplittableRandom random, PartSpread spread) {
    double nominal = spread.nominal().millimetres();
    return spread instanceof PartSpread.Limits
        ? nominal + random.nextDouble(-0.015, 0.015)
        : nominal + PART_MM * random.nextGaussian();
  }

  /**
   * Sizes off alike as an error of the caliper would have it, readings between the two; nextOff parts them, read after
   * read.
   */
  @ParameterizedTest
  @CsvSource({
    "0.06,0.03,false",
    "0.06,-0.03,false",
    "0.04,0.05,false",
    "0.06,0.03,true",
    "0.04,-0.04,true"
  })
  void the_expected_drop_takes_the_error_of_the_caliper_along(
      double off, double nextOff, boolean limits) {
    ReferenceSet set = ReferenceSet.of(
        "two", List.of(profile("a", 0.0, 0.0, limits), profile("b", off, nextOff, limits)));
    Identifier identifier = Identifier.of(set).withUnknownPrior(0.0).withInstrument(CALIPER);
    List<PlugReading> taken = List.of(
        PlugReading.of(READ.get(0), CALIPER, mm(12.0 + 0.5 * off)),
        PlugReading.of(READ.get(1), CALIPER, mm(16.0 + 0.5 * off)));
    Identification doubt = identifier.identify(taken);
    NextReading next = doubt.nextReadings().get(0);
    assertThat(next.dimension()).isEqualTo(NEXT);

    double c = CALIPER.commonUncertainty().millimetres();
    double u = CALIPER.standardUncertainty(NEXT.access()).millimetres();
    double own = Math.sqrt(u * u - c * c);
    SplittableRandom random = new SplittableRandom(20261125);
    double weights = 0.0;
    double mean = 0.0;
    List<double[]> draws = new ArrayList<>();
    for (int i = 0; i < DRAWS; i++) {
      PlugProfile truth = set.profiles().get(random.nextInt(2));
      double e = c * random.nextGaussian();
      double weight = 1.0;
      for (PlugReading reading : taken) {
        weight *= Math.exp(CaliperGroup.density(
                truth.spread(reading.dimension()).orElseThrow(), own, 0.0, reading.dimension())
            .logDensity(reading.length().millimetres() - e));
      }
      double read =
          part(random, truth.spread(NEXT).orElseThrow()) + e + own * random.nextGaussian();
      double drop = doubt.doubtBits() - identifier.identify(with(taken, read)).doubtBits();
      weights += weight;
      mean += weight * drop;
      draws.add(new double[] {weight, drop});
    }
    double simulated = mean / weights;
    // standard error of a weighted mean, ratio estimate
    double error = Math.sqrt(draws.stream()
            .mapToDouble(d -> d[0] * d[0] * (d[1] - simulated) * (d[1] - simulated))
            .sum())
        / weights;
    assertThat(error).isLessThan(0.01);
    // for limits the error that is left is taken as normal, which is worth less than a hundredth of
    // a bit
    assertThat(next.expectedDropBits())
        .as("standard error %.4f bit", error)
        .isCloseTo(simulated, within(4.0 * error + (limits ? 0.01 : 0.0)));

    double independent =
        identifier.withIndependentErrors().identify(taken).nextReadings().get(0).expectedDropBits();
    assertThat(Math.abs(independent - simulated))
        .as("what it would be worth if errors were independent, which is far off here")
        .isGreaterThan(0.03);
  }
}
