package org.airfit.plug;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.airfit.Pencil;
import org.airfit.internal.ReadingDensity;
import org.airfit.internal.Statistics;
import org.airfit.measure.Instrument;
import org.airfit.measure.PartSpread;
import org.airfit.measure.Reading;
import org.airfit.quantity.Length;
import org.airfit.source.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class CommonErrorTest {

  private static final List<Dimension> DIMENSIONS = List.of(
      Dimension.TIP_DIAMETER, Dimension.COLLAR_DIAMETER, Dimension.TIP_LENGTH, Dimension.BORE);
  private static final PlugProfile HERON =
      DemoProfiles.birds().profile("demo-heron").orElseThrow();

  private static Length mm(double value) {
    return Length.ofMillimetres(value);
  }

  private static double nominal(PlugProfile profile, Dimension dimension) {
    return profile.spread(dimension).orElseThrow().nominal().millimetres();
  }

  private static List<PlugReading> readings(Instrument caliper, PlugProfile of, double... off) {
    List<PlugReading> readings = new ArrayList<>();
    for (int j = 0; j < off.length; j++) {
      Dimension dimension = DIMENSIONS.get(j);
      readings.add(PlugReading.of(dimension, caliper, mm(nominal(of, dimension) + off[j])));
    }
    return readings;
  }

  private static ProfileCandidate only(
      PlugProfile profile, List<PlugReading> readings, double wearMm) {
    return Identifier.of(ReferenceSet.of("one", List.of(profile)))
        .withWearAllowance(mm(wearMm))
        .identify(readings)
        .candidates()
        .get(0);
  }

  /**
   * The multivariate normal distribution by the factors of Cholesky, which know nothing of the short way for diag + c².
   */
  private static double[] byMatrix(List<PlugReading> readings, PlugProfile profile, double c) {
    int n = readings.size();
    double[][] lower = new double[n][n];
    double[] solved = new double[n];
    double square = 0.0;
    double log = -n * Statistics.LN_SQRT_TWO_PI;
    for (int i = 0; i < n; i++) {
      PlugReading reading = readings.get(i);
      double s =
          profile.spread(reading.dimension()).orElseThrow().standardDeviation().millimetres();
      double u = reading.standardUncertainty().millimetres();
      for (int j = 0; j <= i; j++) {
        double sum = i == j ? s * s + u * u : c * c;
        for (int k = 0; k < j; k++) {
          sum -= lower[i][k] * lower[j][k];
        }
        lower[i][j] = i == j ? Math.sqrt(sum) : sum / lower[j][j];
      }
      double rest = reading.length().millimetres() - nominal(profile, reading.dimension());
      for (int k = 0; k < i; k++) {
        rest -= lower[i][k] * solved[k];
      }
      solved[i] = rest / lower[i][i];
      square += solved[i] * solved[i];
      log -= 0.5 * solved[i] * solved[i] + Math.log(lower[i][i]);
    }
    return new double[] {square, log};
  }

  @ParameterizedTest
  @EnumSource(Instrument.class)
  void for_normal_scatter_it_is_the_multivariate_normal_distribution(Instrument caliper) {
    double c = caliper.commonUncertainty().millimetres();
    for (double[] off : new double[][] {
      {0.02, 0.03}, {0.02, -0.03, 0.1}, {0.05, 0.04, -0.2, 0.08}, {0.5, 0.5, 0.5, 0.5}
    }) {
      List<PlugReading> readings = readings(caliper, HERON, off);
      ProfileCandidate candidate = only(HERON, readings, 0.0);
      double[] known = byMatrix(readings, HERON, c);
      assertThat(candidate.chiSquare()).isCloseTo(known[0], within(1.0e-9 * (1.0 + known[0])));
      assertThat(candidate.logLikelihood())
          .isCloseTo(known[1], within(1.0e-9 * (1.0 + Math.abs(known[1]))));
    }
  }

  private static PlugProfile odd(PartSpread tip, PartSpread collar, PartSpread length) {
    return PlugProfile.builder("odd")
        .from(Provenance.synthetic(), Source.demo("sizes for a test"))
        .dimension(Dimension.TIP_DIAMETER, tip)
        .dimension(Dimension.COLLAR_DIAMETER, collar)
        .dimension(Dimension.TIP_LENGTH, length)
        .build();
  }

  private static final PartSpread BELL = PartSpread.normal(mm(14.0), mm(0.03));
  private static final PlugProfile LIMITS = odd(
      PartSpread.limits(mm(11.95), mm(12.05)),
      PartSpread.limits(mm(14.95), mm(15.05)),
      PartSpread.limits(mm(19.9), mm(20.1)));
  private static final PlugProfile MIXED = odd(
      PartSpread.limits(mm(11.95), mm(12.05)), BELL, new PartSpread.Sample(5, mm(20.0), mm(0.03)));

  /** Simpson's rule over 4000 steps of e, wide and narrow alike, against the sum over a few dozen. */
  @ParameterizedTest
  @ValueSource(doubles = {0.0, 0.2})
  void for_any_other_scatter_it_is_the_integral_over_the_error(double wear) {
    for (Instrument caliper : Instrument.values()) {
      for (PlugProfile profile : List.of(LIMITS, MIXED)) {
        for (double[] off : new double[][] {
          {0.0, 0.0, 0.0}, {0.06, 0.05, 0.12}, {-0.06, 0.05, -0.12}, {0.0, -0.15}, {0.3, 0.3, 0.3}
        }) {
          List<PlugReading> readings = readings(caliper, profile, off);
          double integrated = integrated(readings, profile, caliper, wear);
          // 1e-4 of a likelihood moves no printed chance
          assertThat(only(profile, readings, wear).logLikelihood())
              .as("%s, %s", caliper, readings)
              .isCloseTo(integrated, within(1.0e-4));
        }
      }
    }
  }

  private static double integrated(
      List<PlugReading> readings, PlugProfile profile, Instrument caliper, double wear) {
    double c = caliper.commonUncertainty().millimetres();
    int steps = 4_000;
    double width = 80.0 * c / steps;
    double[] logs = new double[steps + 1];
    for (int i = 0; i <= steps; i++) {
      double e = -40.0 * c + i * width;
      double log = -0.5 * e / c * e / c - Math.log(c) - Statistics.LN_SQRT_TWO_PI;
      for (PlugReading reading : readings) {
        double u = reading.standardUncertainty().millimetres();
        ReadingDensity own = CaliperGroup.density(
            profile.spread(reading.dimension()).orElseThrow(),
            Math.sqrt(u * u - c * c),
            wear,
            reading.dimension());
        log += own.logDensity(reading.length().millimetres() - e);
      }
      logs[i] = log + Math.log(i == 0 || i == steps ? 1.0 : i % 2 == 1 ? 4.0 : 2.0);
    }
    return Statistics.logSumExp(logs) + Math.log(width / 3.0);
  }

  @Test
  void what_is_off_alike_may_be_the_caliper_and_what_is_off_apart_may_not() {
    List<PlugReading> alike = readings(Instrument.VERNIER_CALIPER_0_05, HERON, 0.05, 0.05, 0.05);
    List<PlugReading> apart = readings(Instrument.VERNIER_CALIPER_0_05, HERON, 0.05, -0.05, 0.05);
    Identifier together = Identifier.of(DemoProfiles.birds());
    Identifier each = together.withIndependentErrors();
    assertThat(together.takesErrorsAsIndependent()).isFalse();
    assertThat(each.withSizeClasses().takesErrorsAsIndependent()).isTrue();
    assertThat(together.identify(alike).candidates().get(0).chiSquare())
        .isLessThan(each.identify(alike).candidates().get(0).chiSquare());
    assertThat(together.identify(apart).candidates().get(0).chiSquare())
        .isGreaterThan(each.identify(apart).candidates().get(0).chiSquare());
    assertThat(each.identify(alike).candidates().get(0).chiSquare())
        .isEqualTo(together
            .identify(alike.stream().map(PlugReading::alone).toList())
            .candidates()
            .get(0)
            .chiSquare());
  }

  @Test
  void one_reading_and_readings_by_different_calipers_share_nothing() {
    List<PlugReading> one = readings(Instrument.DIGITAL_CALIPER, HERON, 0.03);
    assertThat(only(HERON, one, 0.0).logLikelihood())
        .isEqualTo(only(HERON, List.of(one.get(0).alone()), 0.0).logLikelihood());
    List<PlugReading> two = List.of(
        one.get(0), readings(Instrument.VERNIER_CALIPER_0_02, HERON, 0.0, 0.04).get(1));
    List<PlugReading> alone = two.stream().map(PlugReading::alone).toList();
    assertThat(only(HERON, two, 0.0).logLikelihood())
        .isCloseTo(only(HERON, alone, 0.0).logLikelihood(), within(1.0e-12));
    assertThat(only(HERON, two, 0.0).chiSquare())
        .isCloseTo(only(HERON, alone, 0.0).chiSquare(), within(1.0e-12));
  }

  @Test
  void a_profile_that_knows_one_of_two_dimensions_takes_that_one_alone() {
    PlugProfile tipOnly = PlugProfile.builder("tip")
        .from(Provenance.synthetic(), Source.demo("sizes for a test"))
        .dimension(Dimension.TIP_DIAMETER, HERON.spread(Dimension.TIP_DIAMETER).orElseThrow())
        .build();
    List<PlugReading> two = readings(Instrument.DIGITAL_CALIPER, HERON, 0.03, 0.03);
    assertThat(only(tipOnly, two, 0.0).chiSquare())
        .isCloseTo(only(tipOnly, two.subList(0, 1), 0.0).chiSquare(), within(1.0e-12));
  }

  @Test
  void the_working_can_be_worked_again_with_a_pencil() {
    List<PlugReading> readings =
        new ArrayList<>(readings(Instrument.DIGITAL_CALIPER, HERON, 0.03, -0.02, 0.1));
    Identification answer = Identifier.of(DemoProfiles.birds()).identify(readings);
    Pencil.check(answer.working());
    assertThat(answer.working().toText())
        .contains("share its error e", "most likely error", "misfit of the caliper itself", "ln g");
    readings.add(PlugReading.of(Dimension.BORE, Reading.of(mm(14.22), mm(0.04))));
    Pencil.check(Identifier.of(DemoProfiles.birds()).identify(readings).working());
    for (double wear : new double[] {0.0, 0.1}) {
      Identification odd = Identifier.of(ReferenceSet.of("odd", List.of(MIXED)))
          .withWearAllowance(mm(wear))
          .identify(readings(Instrument.VERNIER_CALIPER_0_05, MIXED, 0.06, -0.04, 0.1));
      Pencil.check(odd.working());
      assertThat(odd.working().toText())
          .contains("Limits are no scatter", "added up over e in small equal steps", "is least");
    }
  }

  /** Student's t, its height found by adding up, so that the whole is 1. */
  private static double student(double x, double sigma, double freedom) {
    double whole = 0.0;
    for (int i = -200_000; i <= 200_000; i++) {
      whole += 0.001 * Math.pow(1.0 + 1.0e-6 * i * i / freedom, -0.5 * (freedom + 1.0));
    }
    return Math.pow(1.0 + x * x / (sigma * sigma * freedom), -0.5 * (freedom + 1.0))
        / (sigma * whole);
  }

  private static List<Double> printed(String working, String pattern) {
    return Pattern.compile(pattern)
        .matcher(working)
        .results()
        .map(found -> Double.parseDouble(found.group(1)))
        .toList();
  }

  @Test
  void the_sum_over_the_calipers_error_follows_from_the_numbers_that_the_working_prints() {
    double[][] pieces = {
      {11.93, 16.25}, {11.96, 16.34}, {11.91, 16.29}, {11.97, 16.38}, {11.94, 16.22}
    };
    double[] off = {11.92 - 11.942, 16.27 - 16.296};
    KnownPlugs known = KnownPlugs.of("heron", Instrument.DIGITAL_CALIPER);
    for (int i = 0; i < pieces.length; i++) {
      known = known.with(new KnownPiece(
          "piece " + i,
          Map.of(
              Dimension.TIP_DIAMETER, mm(pieces[i][0]), Dimension.TIP_LENGTH, mm(pieces[i][1]))));
    }
    PlugProfile heron = known.toProfile(Source.measured("a drawer")).build();
    String working = Identifier.of(ReferenceSet.of("drawer", List.of(heron)))
        .identify(List.of(
            PlugReading.of(Dimension.TIP_DIAMETER, Instrument.DIGITAL_CALIPER, mm(11.92)),
            PlugReading.of(Dimension.TIP_LENGTH, Instrument.DIGITAL_CALIPER, mm(16.27))))
        .working()
        .toText();
    List<Double> sigma = printed(working, "without e, = ([0-9.]+) mm");
    List<Double> s = printed(working, "− c²\\) with s = ([0-9.]+) mm");
    List<Double> u = printed(working, "mm, u = ([0-9.]+) mm");
    List<Double> common = printed(working, "mm, c = ([0-9.]+) mm");
    List<Double> size = printed(working, "misses the nominal size ([0-9.]+) mm");
    assertThat(size).containsExactly(11.942, 16.296);
    for (int j = 0; j < off.length; j++) {
      assertThat(
              Math.sqrt(s.get(j) * s.get(j) + u.get(j) * u.get(j) - common.get(j) * common.get(j)))
          .isCloseTo(sigma.get(j), within(1.0e-5));
    }
    List<Double> freedom = printed(working, "\\(σ/s\\)⁴ = ([0-9.]+) degrees of freedom");
    double c = printed(working, "mm\\)/\\(([0-9.]+) mm\\)").get(0);
    assertThat(freedom).hasSize(2);
    double sum = 0.0;
    for (int i = -20; i <= 20; i++) {
      double e = 0.003 * i;
      double product = Math.exp(-0.5 * e * e / (c * c)) / (c * Math.sqrt(2.0 * Math.PI));
      for (int j = 0; j < off.length; j++) {
        product *= student(off[j] - e, sigma.get(j), freedom.get(j));
      }
      sum += 0.003 * product;
    }
    assertThat(Math.log(sum))
        .isCloseTo(printed(working, "equal steps: ln F = ([0-9.]+)\\.").get(0), within(1.0e-3));
  }

  @Test
  void a_reading_is_no_better_than_its_caliper() {
    Length c = Instrument.VERNIER_CALIPER_0_05.commonUncertainty();
    // the limit of 0.05 mm for the value shown, less the rounding to 0.05 mm that is in it
    assertThat(c.millimetres()).isCloseTo(0.025, within(1.0e-12));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> PlugReading.of(
            Dimension.BORE, new Reading(mm(5.0), c, Optional.of(Instrument.VERNIER_CALIPER_0_05))))
        .withMessageContainingAll(
            "must be above that of a vernier caliper", "leave the caliper out");
  }
}
