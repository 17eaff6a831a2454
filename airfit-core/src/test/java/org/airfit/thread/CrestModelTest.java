package org.airfit.thread;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.airfit.quantity.Length;
import org.airfit.quantity.NominalThreadSize;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The densities of crests against what {@link ThreadIdentification} says of them: threads are made and read at random
 * as the words there have it, and what comes out has the moments of the density. Dimensions are from the formulas of
 * the standards, written out here.
 */
class CrestModelTest {

  private static final NormalDistribution NORMAL = new NormalDistribution();
  private static final double U = 0.03;

  private static Length mm(double value) {
    return Length.ofMillimetres(value);
  }

  private static ThreadReadings readings(Gender gender, double first) {
    return gender == Gender.MALE
        ? ThreadReadings.ofMale(mm(first))
        : ThreadReadings.ofFemale(mm(first));
  }

  /**
   * A taper thread of which pieces are made; lengths in mm.
   *
   * @param sign 1 outside, −1 inside
   * @param crest the first crest at basic size
   * @param pitch the pitch
   * @param turns how many turns have full crests
   * @param pipe what ends the cone of a male NPT
   * @param gauging by how much a piece may be larger or smaller
   * @param slack by how much crests may be cut
   */
  private record Taper(
      double sign,
      double crest,
      double pitch,
      double turns,
      double pipe,
      double gauging,
      double slack) {

    /** How many turns there are to measure: two more look whole outside, inside it may be half as deep again. */
    double reach() {
      return sign > 0.0 ? turns + 2.0 : 1.5 * turns;
    }

    double crestAt(double end, double turn) {
      return end + sign * pitch / 16.0 * turn;
    }
  }

  /** ASME B1.20.1: E0 = D − (0.05 D + 1.1) p, h = 0.8 p, L5 = (0.8 D + 4.8) p; f from 0.033 p to the most. */
  private static Taper npt(Gender gender, double d, double n, double l1, double mostCut) {
    double p = 1.0 / n;
    double e0 = d - (0.05 * d + 1.1) * p;
    double slack = 2.0 * (mostCut - 0.033 * p) * 25.4;
    return gender == Gender.MALE
        ? new Taper(
            1.0, (e0 + 0.8 * p) * 25.4, p * 25.4, 0.8 * d + 4.8, d * 25.4, p / 16.0 * 25.4, slack)
        : new Taper(
            -1.0,
            (e0 + l1 / 16.0 - 0.8 * p) * 25.4,
            p * 25.4,
            l1 * n + 3.0,
            Double.POSITIVE_INFINITY,
            p / 16.0 * 25.4,
            slack);
  }

  /** ISO 7-1: d − a/16 at the small end, a + f useful; Rc d1 at the mouth, 0.8 (a + f − T1/2) useful. */
  private static Taper r(Gender gender, double d, double n, double a, double f) {
    double p = 25.4 / n;
    return gender == Gender.MALE
        ? new Taper(1.0, d - a / 16.0, p, (a + f) / p, Double.POSITIVE_INFINITY, p / 16.0, 0.0)
        : new Taper(
            -1.0,
            d - 2.0 * 0.640327 * p,
            p,
            0.8 * (a + f - p) / p,
            Double.POSITIVE_INFINITY,
            1.25 * p / 16.0,
            0.0);
  }

  private static Taper taper(ThreadFamily family, String size, Gender gender) {
    return switch (family + " " + size) {
      case "NPT 1/8" -> npt(gender, 0.405, 27.0, 0.1615, 0.0036);
      case "NPT 1/4" -> npt(gender, 0.540, 18.0, 0.2278, 0.0049);
      case "NPT 1" -> npt(gender, 1.315, 11.5, 0.4000, 0.0063);
      case "BSPT 1/8" -> r(gender, 9.728, 28.0, 4.0, 2.5);
      case "BSPT 1/2" -> r(gender, 20.955, 14.0, 8.2, 5.0);
      default -> throw new IllegalArgumentException(size);
    };
  }

  private static CrestModel model(ThreadFamily family, String size, Gender gender) {
    return CrestModel.of(
        PipeThreads.of(family, NominalThreadSize.parse(size)).orElseThrow(), gender);
  }

  /** The crest at the end of a piece: gauged with soft edges, cut, one in ten worn. */
  private static double made(Taper kind, Random random) {
    double outward = kind.gauging * (2.0 * random.nextDouble() - 1.0)
        + kind.gauging / 5.0 * random.nextGaussian()
        - kind.slack * random.nextDouble();
    if (random.nextDouble() < 0.1) {
      outward -= 0.1 * random.nextDouble();
    }
    return kind.crest + kind.sign * outward;
  }

  private static double readFirst(Taper kind, double end, Random random) {
    double turns = random.nextDouble() < 0.2 ? Math.max(1.0, 2.0 / kind.pitch) : 1.0;
    return kind.crestAt(end, turns * random.nextDouble()) + U * random.nextGaussian();
  }

  private static double readLast(Taper kind, double end, Random random) {
    double error = U * random.nextGaussian();
    if (kind.sign < 0.0) {
      double deepest = random.nextDouble() < 0.3 ? kind.reach() : kind.turns;
      double from = 0.25 * kind.turns;
      return kind.crestAt(end, from + (deepest - from) * random.nextDouble()) + error;
    }
    double from = random.nextDouble() < 0.25 ? 0.5 * kind.turns : kind.turns - 2.0;
    boolean onPipe = kind.pipe < Double.POSITIVE_INFINITY && random.nextDouble() < 0.7;
    double crest = kind.crestAt(end, from + (kind.reach() - from) * random.nextDouble());
    return (onPipe ? Math.min(crest, kind.pipe) : crest) + error;
  }

  @ParameterizedTest
  @CsvSource({
    "NPT, 1/8, MALE",
    "NPT, 1/4, FEMALE",
    "NPT, 1, MALE",
    "BSPT, 1/8, MALE",
    "BSPT, 1/2, FEMALE"
  })
  void a_single_diameter_of_a_taper_thread_is_read_near_its_end_or_anywhere_on_it(
      ThreadFamily family, String size, Gender gender) {
    Taper kind = taper(family, size, gender);
    CrestModel model = model(family, size, gender);
    double low = kind.crest - 2.5;
    int steps = 1_000;
    double width = 5.0 / steps;
    double mass = 0.0;
    double mean = 0.0;
    double square = 0.0;
    for (int i = 0; i < steps; i++) {
      double y = low + (i + 0.5) * width;
      double share = model.density(readings(gender, y)) * width;
      mass += share;
      mean += share * (y - kind.crest);
      square += share * (y - kind.crest) * (y - kind.crest);
    }
    Random random = new Random(11);
    int made = 200_000;
    double simulatedMean = 0.0;
    double simulatedSquare = 0.0;
    for (int i = 0; i < made; i++) {
      double end = made(kind, random);
      double y = random.nextDouble() < 0.3
          ? kind.crestAt(end, kind.reach() * random.nextDouble()) + U * random.nextGaussian()
          : readFirst(kind, end, random);
      simulatedMean += (y - kind.crest) / made;
      simulatedSquare += (y - kind.crest) * (y - kind.crest) / made;
    }
    assertThat(mass).isCloseTo(1.0, within(1.0e-6));
    double spread = Math.sqrt(simulatedSquare - simulatedMean * simulatedMean);
    // four standard errors of the simulation, and 0.0005 mm for the steps of the model
    assertThat(mean).isCloseTo(simulatedMean, within(4.0 * spread / Math.sqrt(made) + 0.0005));
    assertThat(square).isCloseTo(simulatedSquare, within(0.015 * simulatedSquare));
  }

  @ParameterizedTest
  @CsvSource({
    "NPT, 1/8, MALE",
    "NPT, 1/4, MALE",
    "NPT, 1/4, FEMALE",
    "BSPT, 1/8, MALE",
    "BSPT, 1/2, FEMALE"
  })
  void two_diameters_of_a_taper_thread_lie_on_one_cone_or_the_last_on_the_pipe(
      ThreadFamily family, String size, Gender gender) {
    Taper kind = taper(family, size, gender);
    CrestModel model = model(family, size, gender);
    int steps = 110;
    double width = 2.2 / steps;
    double low = kind.crest - 1.1;
    double[] sums = new double[6];
    for (int i = 0; i < steps; i++) {
      for (int j = 0; j < steps; j++) {
        double y1 = low + (i + 0.5) * width;
        double y2 = low + (j + 0.5) * width;
        double share = model.density(readings(gender, y1).withLastCrest(mm(y2))) * width * width;
        add(sums, y1 - kind.crest, y2 - kind.crest, share);
      }
    }
    Random random = new Random(12);
    int made = 200_000;
    double[] simulated = new double[6];
    for (int i = 0; i < made; i++) {
      double end = made(kind, random);
      double first = readFirst(kind, end, random) - kind.crest;
      double last = readLast(kind, end, random) - kind.crest;
      boolean swapped = random.nextDouble() < 0.02;
      add(simulated, swapped ? last : first, swapped ? first : last, 1.0 / made);
    }
    assertThat(sums[0]).isCloseTo(1.0, within(1.0e-5));
    for (int i = 1; i < 6; i++) {
      // means within 0.0015 mm, squares and product within that of a millimetre times their size
      assertThat(sums[i])
          .as("moment %s", i)
          .isCloseTo(simulated[i], within(0.001 + 0.01 * Math.abs(simulated[i])));
    }
  }

  private static void add(double[] sums, double first, double last, double share) {
    sums[0] += share;
    sums[1] += share * first;
    sums[2] += share * last;
    sums[3] += share * first * first;
    sums[4] += share * last * last;
    sums[5] += share * first * last;
  }

  /** Of a straight thread all sizes within its limits are equally likely, one in ten is worn by up to 0.1 mm. */
  private static double straight(double y, double least, double most, Gender gender, double u) {
    double worn =
        gender == Gender.MALE ? band(y, least - 0.1, most, u) : band(y, least, most + 0.1, u);
    return 0.9 * band(y, least, most, u) + 0.1 * worn;
  }

  private static double band(double y, double low, double high, double u) {
    return (NORMAL.cumulativeProbability((high - y) / u)
            - NORMAL.cumulativeProbability((low - y) / u))
        / (high - low);
  }

  /** ISO 228-1, G 1/2: major 20.955 less 0.284, minor 18.631 and 0.541. */
  @ParameterizedTest
  @CsvSource({"MALE, 20.671, 20.955", "FEMALE, 18.631, 19.172"})
  void a_straight_thread_is_read_evenly_within_its_limits(
      Gender gender, double least, double most) {
    CrestModel model = model(ThreadFamily.BSPP, "1/2", gender);
    assertThat(model.isTapered()).isFalse();
    for (double y = least - 0.25; y < most + 0.25; y += 0.02) {
      double known = straight(y, least, most, gender, U);
      assertThat(model.density(readings(gender, y)))
          .as("one reading, %s mm", y)
          .isCloseTo(known, within(1.0e-9));
      // last and first differ by their errors only; their mean is read more closely, but the
      // caliper
      // is off by the same amount in both, which is taken to be half of the variance
      double apart = 0.04;
      double both = new NormalDistribution(0.0, U * Math.sqrt(2.0)).density(apart)
          * straight(y + 0.5 * apart, least, most, gender, U * Math.sqrt(0.5 + 0.5 / 2.0));
      assertThat(model.density(readings(gender, y).withLastCrest(mm(y + apart))))
          .as("two readings, %s mm", y)
          .isCloseTo(both, within(1.0e-8));
    }
  }

  /** ISO 965-1, M14x1.5: 6g outside 13.732 to 13.968 mm, 6H inside 12.376 to 12.676 mm. */
  @ParameterizedTest
  @CsvSource({"MALE, 13.732, 13.968", "FEMALE, 12.376, 12.676"})
  void a_foreign_thread_is_read_evenly_within_its_limits(Gender gender, double least, double most) {
    CrestModel model = CrestModel.of(ForeignThread.find("M14x1.5", gender).orElseThrow());
    assertThat(model.least()).isCloseTo(least, within(0.0005));
    assertThat(model.most()).isCloseTo(most, within(0.0005));
    assertThat(model.isTapered()).isFalse();
    double u = 0.02;
    for (double y = least - 0.15; y < most + 0.15; y += 0.03) {
      ThreadReadings readings = readings(gender, y).withDiameterUncertainty(mm(u));
      // limits printed to 0.001 mm move the slope of an edge, up to 85 per mm², by half a
      // micrometre
      assertThat(model.density(readings))
          .as("%s mm", y)
          .isCloseTo(straight(y, least, most, gender, u), within(0.05));
    }
    double middle = 0.5 * (least + most);
    assertThat(model.firstAllowed())
        .containsExactly(
            gender == Gender.MALE ? model.least() - 0.1 : model.least(),
            gender == Gender.MALE ? model.most() : model.most() + 0.1);
    assertThat(model.density(readings(gender, middle + 5.0))).isZero();
    assertThat(model.density(readings(gender, middle - 5.0))).isZero();
  }

  /** Nine uncertainties outside all it may be the chance ends; before that it is a tail of the normal distribution. */
  @Test
  void far_outside_its_limits_a_thread_has_no_chance() {
    CrestModel model = model(ThreadFamily.BSPP, "1/2", Gender.MALE);
    assertThat(model.density(readings(Gender.MALE, 20.955 + 8.9 * U))).isPositive();
    assertThat(model.density(readings(Gender.MALE, 20.955 + 9.1 * U))).isZero();
    assertThat(model.density(readings(Gender.MALE, 20.571 - 8.9 * U))).isPositive();
    assertThat(model.density(readings(Gender.MALE, 20.571 - 9.1 * U))).isZero();
    CrestModel npt = model(ThreadFamily.NPT, "1/4", Gender.MALE);
    // NPT 1/4 at its largest: crest and gauging tolerance, and seven turns of a cone
    assertThat(npt.density(readings(Gender.MALE, 13.34 + 0.09 + 7.3 * 0.0882))).isPositive();
    assertThat(npt.density(readings(Gender.MALE, 16.0))).isZero();
    assertThat(npt.density(readings(Gender.MALE, 11.0))).isZero();
  }

  @Test
  void nobody_reads_finer_than_a_nanometre() {
    ThreadReadings fine =
        readings(Gender.MALE, 13.0).withDiameterUncertainty(Length.ofMetres(1.0e-12));
    assertThat(CrestModel.uncertaintyMm(fine)).isEqualTo(1.0e-6);
    assertThat(CrestModel.uncertaintyMm(readings(Gender.MALE, 13.0)))
        .isCloseTo(0.03, within(1.0e-12));
    assertThat(CrestModel.normal(0.05, 0.03))
        .isCloseTo(new NormalDistribution(0.0, 0.03).density(0.05), within(1.0e-9));
  }

  /** NPT 1/4 from its formulas: turn 1.4111 mm, which is 0.0882 on the diameter; L5 in turns 0.8 · 0.54 + 4.8. */
  @Test
  void the_crests_of_a_taper_thread_may_measure_what_its_cone_allows() {
    double turn = 25.4 / 18.0 / 16.0;
    double crest = (0.540 - (0.05 * 0.540 + 1.1) / 18.0 + 0.8 / 18.0) * 25.4;
    double slack = 2.0 * (0.0049 - 0.033 / 18.0) * 25.4;
    CrestModel male = model(ThreadFamily.NPT, "1/4", Gender.MALE);
    assertThat(male.isTapered()).isTrue();
    double least = crest - turn - slack;
    double most = crest + turn;
    assertThat(male.least()).isCloseTo(least, within(1.0e-9));
    assertThat(male.most()).isCloseTo(most, within(1.0e-9));
    near(male.firstAllowed(), least - 0.1, most + turn);
    double turns = 0.8 * 0.540 + 4.8;
    near(male.anywhereAllowed(), least - 0.1, most + (turns + 2.0) * turn);
    near(male.growthAllowed(), (0.5 * turns - 1.0) * turn, (turns + 2.0) * turn);
    double mouth = (0.540 - (0.05 * 0.540 + 1.1) / 18.0 + 0.2278 / 16.0 - 0.8 / 18.0) * 25.4;
    CrestModel female = model(ThreadFamily.NPT, "1/4", Gender.FEMALE);
    double inside = 0.2278 * 18.0 + 3.0;
    near(female.firstAllowed(), mouth - 2.0 * turn, mouth + turn + slack + 0.1);
    near(female.anywhereAllowed(), mouth - turn - 1.5 * inside * turn, mouth + turn + slack + 0.1);
    near(female.growthAllowed(), -1.5 * inside * turn, -(0.25 * inside - 1.0) * turn);
    CrestModel straight = model(ThreadFamily.BSPP, "1/2", Gender.MALE);
    near(straight.growthAllowed(), 0.0, 0.0);
    near(straight.anywhereAllowed(), 20.571, 20.955);
    near(straight.firstAllowed(), 20.571, 20.955);
  }

  private static void near(double[] stretch, double low, double high) {
    assertThat(stretch[0]).isCloseTo(low, within(1.0e-9));
    assertThat(stretch[1]).isCloseTo(high, within(1.0e-9));
  }

  /** A short female thread: less than four turns, of which a quarter less one is no growth at all. */
  @Test
  void a_last_crest_next_to_the_first_may_be_as_large() {
    CrestModel model = model(ThreadFamily.BSPT, "1/8", Gender.FEMALE);
    double turns = 0.8 * (6.5 - 25.4 / 28.0) / (25.4 / 28.0);
    assertThat(turns).isGreaterThan(4.0);
    near(
        model.growthAllowed(),
        -1.5 * turns * 25.4 / 28.0 / 16.0,
        -(0.25 * turns - 1.0) * 25.4 / 28.0 / 16.0);
  }
}
