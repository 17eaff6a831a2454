package org.airfit.plug;

import static org.airfit.plug.TipAndLength.mm;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.airfit.measure.Access;
import org.airfit.measure.Instrument;
import org.airfit.measure.PartSpread;
import org.airfit.measure.Reading;
import org.airfit.source.Source;
import org.junit.jupiter.api.Test;

/**
 * The bound that a profile out of reach keeps, worked out from the equations of {@link Scores}: with whole powers of two
 * for |V| and for the fall of pieces, so that it may lie above them by half of ln 2 each time, and never below.
 */
class BoundByHandTest {

  private static final double U = 0.02;
  private static final double LN_SQRT_TWO_PI = 0.5 * Math.log(2.0 * Math.PI);
  private static final double HALF_LN_TWO = 0.5 * Math.log(2.0);

  private static PlugProfile.Builder profile(String id) {
    return PlugProfile.builder(id)
        .displayName(id)
        .from(Provenance.standardEntered(), Source.demo("a set for a test"));
  }

  private static PlugReading read(Dimension dimension, double size) {
    return PlugReading.of(dimension, Reading.of(mm(size), mm(U)));
  }

  private static PlugReading byCaliper(Dimension dimension, double size) {
    return PlugReading.of(
        dimension, Reading.by(Instrument.DIGITAL_CALIPER, Access.OUTSIDE, mm(size)));
  }

  /** A near plug of the same dimensions, so that the other is out of reach. */
  private static PlugProfile near(List<PlugReading> readings) {
    PlugProfile.Builder near = profile("near");
    for (PlugReading reading : readings) {
      near.dimension(reading.dimension(), PartSpread.normal(reading.length(), mm(0.03)));
    }
    return near.build();
  }

  /** The bound of a profile that the readings are far from, which is not below its likelihood. */
  private static double bound(PlugProfile.Builder far, double wear, List<PlugReading> readings) {
    SizeTable table = new SizeTable(List.of(near(readings), far.build()));
    Scores scores = Scores.of(table, readings, List.of(), wear, Scores.REACH);
    assertThat(scores.isOutOfReach(1)).isTrue();
    assertThat(scores.isOutOfReach(0)).isFalse();
    Scores exact = Scores.of(table, readings, List.of(), wear, Double.POSITIVE_INFINITY);
    assertThat(exact.isOutOfReach(1)).isFalse();
    assertThat(exact.logLikelihood(1)).isLessThanOrEqualTo(scores.logLikelihood(1));
    return scores.logLikelihood(1);
  }

  private static void isAtOrJustAbove(double bound, double expected) {
    assertThat(bound).isBetween(expected - 1.0e-9, expected + HALF_LN_TWO + 1.0e-9);
  }

  @Test
  void limits_are_an_even_density_that_falls_as_the_reading_scatters() {
    double bound = bound(
        profile("far").dimension(Dimension.TIP_DIAMETER, PartSpread.limits(mm(10.9), mm(11.1))),
        0.0,
        List.of(read(Dimension.TIP_DIAMETER, 10.0)));
    double q = 0.9 * 0.9 / (U * U);
    isAtOrJustAbove(bound, -0.5 * (q + Math.log(0.2 * 0.2 / (2.0 * Math.PI))) - LN_SQRT_TWO_PI);
  }

  @Test
  void limits_closer_than_the_reading_scatters_have_the_peak_of_the_reading() {
    double bound = bound(
        profile("far").dimension(Dimension.TIP_DIAMETER, PartSpread.limits(mm(10.98), mm(11.02))),
        0.0,
        List.of(read(Dimension.TIP_DIAMETER, 10.0)));
    double q = 0.98 * 0.98 / (U * U);
    isAtOrJustAbove(bound, -0.5 * (q + Math.log(U * U)) - LN_SQRT_TWO_PI);
  }

  @Test
  void the_error_of_a_caliper_pays_for_each_reading_that_shares_it() {
    PlugReading tip = byCaliper(Dimension.TIP_DIAMETER, 10.0);
    PlugReading collar = byCaliper(Dimension.COLLAR_DIAMETER, 14.0);
    double bound = bound(
        profile("far")
            .dimension(Dimension.TIP_DIAMETER, PartSpread.limits(mm(10.9), mm(11.1)))
            .dimension(Dimension.COLLAR_DIAMETER, PartSpread.limits(mm(14.9), mm(15.3))),
        0.0,
        List.of(tip, collar));
    double c = Instrument.DIGITAL_CALIPER.commonUncertainty().millimetres();
    double h = 2.0 * 2.0 * c * c;
    double q = 0.9 * 0.9 / (own(tip, c) + h) + 0.9 * 0.9 / (own(collar, c) + h);
    double b = 0.2 * 0.2 / (2.0 * Math.PI) * 0.4 * 0.4 / (2.0 * Math.PI) / 2.0;
    isAtOrJustAbove(bound, -0.5 * (q + Math.log(b)) - 2.0 * LN_SQRT_TWO_PI);
  }

  /**
   * The bound that is taken where the first one does not tell enough: never below the likelihood, whatever is read of
   * parts by limits, by their deviation and worn.
   */
  @Test
  void no_bound_lies_below_the_likelihood_it_stands_for() {
    SplittableRandom random = new SplittableRandom(20261130L);
    Map<Dimension, Double> sizes = new EnumMap<>(Map.of(
        Dimension.TIP_DIAMETER, 10.0,
        Dimension.COLLAR_DIAMETER, 14.0,
        Dimension.GROOVE_WIDTH, 4.0,
        Dimension.BORE, 6.0));
    int bounded = 0;
    for (int i = 0; i < 400; i++) {
      double wear = i % 2 == 0 ? 0.0 : 0.2;
      List<PlugReading> readings = new ArrayList<>();
      sizes.forEach((dimension, size) -> readings.add(byCaliper(dimension, size)));
      List<PlugProfile> profiles = new ArrayList<>(List.of(near(readings)));
      for (int k = 0; k < 8; k++) {
        PlugProfile.Builder other = profile("other-" + k);
        sizes.forEach((dimension, size) -> {
          double middle = size + random.nextDouble(-0.4, 0.4);
          double half = random.nextDouble(0.02, 0.1);
          other.dimension(
              dimension,
              random.nextBoolean()
                  ? PartSpread.limits(mm(middle - half), mm(middle + half))
                  : PartSpread.normal(mm(middle), mm(half)));
        });
        profiles.add(other.build());
      }
      SizeTable table = new SizeTable(profiles);
      Scores scores = Scores.of(table, readings, List.of(), wear, Scores.REACH);
      Scores exact = Scores.of(table, readings, List.of(), wear, Double.POSITIVE_INFINITY);
      for (int k = 0; k < profiles.size(); k++) {
        bounded += scores.isOutOfReach(k) ? 1 : 0;
        assertThat(exact.logLikelihood(k))
            .as("%s, wear %s", profiles.get(k).dimensions(), wear)
            .isLessThanOrEqualTo(scores.logLikelihood(k) + 1.0e-9);
      }
    }
    assertThat(bounded).isGreaterThan(500);
  }

  private static double own(PlugReading reading, double c) {
    double u = reading.standardUncertainty().millimetres();
    return u * u - c * c;
  }

  @Test
  void a_dimension_that_the_profile_does_not_know_counts_a_tenth() {
    double bound = bound(
        profile("far").dimension(Dimension.TIP_DIAMETER, PartSpread.limits(mm(10.9), mm(11.1))),
        0.0,
        List.of(read(Dimension.TIP_DIAMETER, 10.0), read(Dimension.COLLAR_DIAMETER, 14.0)));
    double q = 0.9 * 0.9 / (U * U);
    isAtOrJustAbove(
        bound,
        -0.5 * (q + Math.log(0.2 * 0.2 / (2.0 * Math.PI))) - LN_SQRT_TWO_PI - Math.log(10.0));
  }

  /** The degrees of freedom of scatter and reading together are those of Welch and Satterthwaite. */
  @Test
  void pieces_fall_as_students_t() {
    PartSpread.Sample pieces = new PartSpread.Sample(60, mm(10.15), mm(0.01));
    double s2 = 0.01 * 0.01 * (1.0 + 1.0 / 60.0);
    double sigma2 = s2 + U * U;
    double nu = 59.0 * (sigma2 / s2) * (sigma2 / s2);
    assertThat(pieces.standardDeviation().millimetres()).isCloseTo(Math.sqrt(s2), within(1e-12));
    // so far that 1 + (d/2)²/(νσ²) is a power of two, and a trifle more
    double d = 2.0 * Math.sqrt(nu * sigma2 * 1.000_001);
    double bound = bound(
        profile("far").dimension(Dimension.TIP_DIAMETER, pieces),
        0.0,
        List.of(read(Dimension.TIP_DIAMETER, 10.15 + d)));
    isAtOrJustAbove(bound, -0.5 * ((nu + 1.0) * Math.log(2.0) + Math.log(sigma2)) - LN_SQRT_TWO_PI);
  }

  @Test
  void pieces_read_by_a_caliper_fall_as_its_error_does_where_that_is_less() {
    PartSpread.Sample pieces = new PartSpread.Sample(2, mm(10.5), mm(0.001));
    double c = Instrument.DIGITAL_CALIPER.commonUncertainty().millimetres();
    double h = 4.0 * c * c;
    double s2 = 0.001 * 0.001 * 1.5;
    double sigma2 = s2 + own(byCaliper(Dimension.TIP_DIAMETER, 10.0), c);
    double nu = sigma2 / s2 * (sigma2 / s2);
    double quarter = nu * sigma2 * 1.000_001;
    assertThat(quarter / h).isLessThan(0.5 * nu * Math.log(2.0));
    PlugReading tip = byCaliper(Dimension.TIP_DIAMETER, 10.5 - 2.0 * Math.sqrt(quarter));
    PlugReading collar = byCaliper(Dimension.COLLAR_DIAMETER, 14.0);
    double bound = bound(
        profile("far")
            .dimension(Dimension.TIP_DIAMETER, pieces)
            .dimension(Dimension.COLLAR_DIAMETER, PartSpread.limits(mm(14.9), mm(15.3))),
        0.0,
        List.of(tip, collar));
    double q = quarter / h + 0.9 * 0.9 / (own(collar, c) + h);
    double b = sigma2 * 0.4 * 0.4 / (2.0 * Math.PI) / 2.0;
    isAtOrJustAbove(bound, -0.5 * (q + Math.log(b)) - 2.0 * LN_SQRT_TWO_PI);
  }

  /** A worn tip is smaller: a reading below the nominal is as far off as the wear leaves. */
  @Test
  void wear_makes_the_nearest_size_nearer() {
    double bound = bound(
        profile("far").dimension(Dimension.TIP_DIAMETER, PartSpread.normal(mm(11.0), mm(0.03))),
        0.2,
        List.of(read(Dimension.TIP_DIAMETER, 10.0)));
    double sigma2 = 0.03 * 0.03 + U * U;
    double q = 0.8 * 0.8 / sigma2;
    isAtOrJustAbove(bound, -0.5 * (q + Math.log(sigma2)) - LN_SQRT_TWO_PI);
  }

  /** Of nine such readings |V| is 1e-207 and less, which a double could no longer hold with a few more. */
  @Test
  void scatters_of_nearly_nothing_are_put_away_before_their_product_is_lost() {
    List<PlugReading> readings = new ArrayList<>();
    PlugProfile.Builder far = profile("far");
    Map.of(
            Dimension.TIP_DIAMETER, 10.0,
            Dimension.COLLAR_DIAMETER, 14.0,
            Dimension.TIP_LENGTH, 15.0,
            Dimension.INSERTION_LENGTH, 25.0,
            Dimension.GROOVE_WIDTH, 4.0,
            Dimension.GROOVE_DIAMETER, 11.0,
            Dimension.TIP_TO_COLLAR, 8.0,
            Dimension.SHOULDER_DIAMETER, 12.0,
            Dimension.BORE, 6.0)
        .forEach((dimension, size) -> {
          readings.add(PlugReading.of(dimension, Reading.of(mm(size), mm(1.0e-9))));
          far.dimension(
              dimension, PartSpread.limits(mm(size + 1.0e-6), mm(size + 1.0e-6 + 1.0e-12)));
        });
    int n = readings.size();
    SizeTable table = new SizeTable(List.of(near(readings), far.build()));
    double bound = Scores.of(table, readings, List.of(), 0.0, Scores.REACH).logLikelihood(1);
    double q = n * 1.0e-6 * 1.0e-6 / 1.0e-18;
    double expected = -0.5 * (q + n * Math.log(1.0e-18)) - n * LN_SQRT_TWO_PI;
    // sizes of 25 mm are known to 4e-15 mm, so that d is to 1e-8 of itself
    assertThat(bound).isBetween(expected - 1.0, expected + 1.0 + HALF_LN_TWO);
  }
}
