package org.airfit.plug;

import static org.airfit.plug.TipAndLength.S_LENGTH;
import static org.airfit.plug.TipAndLength.S_TIP;
import static org.airfit.plug.TipAndLength.both;
import static org.airfit.plug.TipAndLength.mm;
import static org.airfit.plug.TipAndLength.normal;
import static org.airfit.plug.TipAndLength.set;
import static org.airfit.plug.TipAndLength.tip;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.airfit.internal.Digits;
import org.airfit.measure.Instrument;
import org.airfit.measure.PartSpread;
import org.airfit.measure.Reading;
import org.airfit.source.Source;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Chances and what is said of them, against Bayes' rule written out for one or two readings. */
class BayesByHandTest {

  private static PlugReading read(Dimension dimension, double size, double u) {
    return PlugReading.of(dimension, Reading.of(mm(size), mm(u)));
  }

  private static double probability(Identification answer, String id) {
    return answer.candidates().stream()
        .filter(candidate -> candidate.profile().id().equals(id))
        .findFirst()
        .orElseThrow()
        .probability();
  }

  private static double bits(double p) {
    return -p * Math.log(p) / Math.log(2.0);
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 7})
  void before_any_reading_the_profiles_share_alike_what_the_unknown_leaves(int n) {
    List<PlugProfile> profiles = new ArrayList<>();
    for (int k = 0; k < n; k++) {
      profiles.add(tip("p" + k, 10.0 + k).build());
    }
    for (double unknown : new double[] {0.05, 0.4}) {
      Identification answer = Identifier.of(ReferenceSet.of("set", profiles))
          .withUnknownPrior(unknown)
          .identify(List.of());
      double each = (1.0 - unknown) / n;
      assertThat(answer.candidates()).hasSize(n).allSatisfy(candidate -> {
        assertThat(candidate.prior()).isCloseTo(each, within(1.0e-15));
        assertThat(candidate.probability()).isCloseTo(each, within(1.0e-12));
        assertThat(candidate.degreesOfFreedom()).isZero();
        assertThat(candidate.tailProbability()).isEqualTo(1.0);
      });
      assertThat(answer.elsewhereProbability()).isCloseTo(0.9 * unknown, within(1.0e-12));
      assertThat(answer.nearCopyProbability()).isCloseTo(0.1 * unknown, within(1.0e-12));
      assertThat(answer.unknownProbability()).isCloseTo(unknown, within(1.0e-12));
      assertThat(answer.doubtBits())
          .isCloseTo(
              n * bits(each) + n * bits(0.1 * unknown / n) + bits(0.9 * unknown), within(1.0e-9));
    }
  }

  /** One size known: a near copy has that one changed for sure, by an exponential of 0.5 mm either way. */
  @ParameterizedTest
  @ValueSource(doubles = {9.9, 10.02, 10.05, 10.2, 10.21, 10.25, 10.3, 10.32, 10.33})
  void one_reading_is_weighed_by_the_prior_of_each_profile_of_its_copy_and_of_elsewhere(double y) {
    double u = 0.02;
    double sigma = Math.hypot(S_TIP, u);
    Identification answer = Identifier.of(
            set(tip("a", 10.0).build(), tip("b", 10.1).build()))
        .identify(List.of(read(Dimension.TIP_DIAMETER, y, u)));
    double a = 0.475 * normal(y - 10.0, sigma);
    double b = 0.475 * normal(y - 10.1, sigma);
    double elsewhere = 0.045 / 10.0;
    double copies = 0.0;
    for (double nominal : new double[] {10.0, 10.1}) {
      double off = Math.abs(y - nominal);
      copies += off <= 6.0 * sigma ? 0.0025 * Math.exp(-off / 0.5) / (2.0 * 0.5) : 0.0;
    }
    double all = a + b + elsewhere + copies;
    assertThat(probability(answer, "a")).isCloseTo(a / all, within(1.0e-12));
    assertThat(probability(answer, "b")).isCloseTo(b / all, within(1.0e-12));
    assertThat(answer.elsewhereProbability()).isCloseTo(elsewhere / all, within(1.0e-12));
    assertThat(answer.nearCopyProbability()).isCloseTo(copies / all, within(1.0e-12));
    assertThat(answer.best().chiSquare())
        .isCloseTo(Math.pow((y - (b > a ? 10.1 : 10.0)) / sigma, 2.0), within(1.0e-9));
  }

  /** The bivariate normal density: variances s² + u², covariance c². */
  @Test
  void two_readings_by_one_caliper_share_its_error_and_two_by_hand_do_not() {
    Instrument caliper = Instrument.VERNIER_CALIPER_0_05;
    double c2 = Math.pow(caliper.commonUncertainty().millimetres(), 2.0);
    ReferenceSet set = set(both("a", 10.0, 20.0), both("b", 10.06, 20.06));
    List<PlugReading> taken = List.of(
        PlugReading.of(Dimension.TIP_DIAMETER, caliper, mm(10.05)),
        PlugReading.of(Dimension.TIP_LENGTH, caliper, mm(20.05)));
    for (boolean shared : new boolean[] {true, false}) {
      Identifier identifier = Identifier.of(set).withoutNearCopies();
      Identification answer =
          (shared ? identifier : identifier.withIndependentErrors()).identify(taken);
      double u1 = caliper.standardUncertainty(Dimension.TIP_DIAMETER.access()).millimetres();
      double u2 = caliper.standardUncertainty(Dimension.TIP_LENGTH.access()).millimetres();
      double v1 = S_TIP * S_TIP + u1 * u1;
      double v2 = S_LENGTH * S_LENGTH + u2 * u2;
      double cov = shared ? c2 : 0.0;
      double det = v1 * v2 - cov * cov;
      double[] weight = new double[2];
      for (int k = 0; k < 2; k++) {
        double r = 0.05 - 0.06 * k;
        double square = (r * r * v2 - 2.0 * r * r * cov + r * r * v1) / det;
        weight[k] = 0.475 * Math.exp(-0.5 * square) / (2.0 * Math.PI * Math.sqrt(det));
        assertThat(answer.candidates().get(1 - k).chiSquare()).isCloseTo(square, within(1.0e-9));
      }
      double all = weight[0] + weight[1] + 0.05 / 100.0;
      assertThat(probability(answer, "a")).isCloseTo(weight[0] / all, within(1.0e-10));
      assertThat(probability(answer, "b")).isCloseTo(weight[1] / all, within(1.0e-10));
      assertThat(answer.unknownProbability()).isCloseTo(0.0005 / all, within(1.0e-10));
    }
  }

  @Test
  void a_dimension_a_profile_does_not_know_is_as_broad_as_for_an_unknown_plug() {
    Identification answer = Identifier.of(
            set(both("a", 10.0, 20.0), tip("b", 10.1).build()))
        .withoutNearCopies()
        .identify(List.of(
            read(Dimension.TIP_DIAMETER, 10.06, 0.02), read(Dimension.TIP_LENGTH, 20.12, 0.05)));
    double sigma = Math.hypot(S_TIP, 0.02);
    double a = 0.475 * normal(0.06, sigma) * normal(0.12, Math.hypot(S_LENGTH, 0.05));
    double b = 0.475 * normal(0.04, sigma) * 0.1;
    double all = a + b + 0.05 * 0.01;
    assertThat(probability(answer, "a")).isCloseTo(a / all, within(1.0e-12));
    assertThat(probability(answer, "b")).isCloseTo(b / all, within(1.0e-12));
    assertThat(answer.best().degreesOfFreedom()).isEqualTo(a > b ? 2 : 1);
  }

  @Test
  void what_remains_is_said_with_the_chances_of_bayes_rule() {
    double sigma = Math.hypot(S_TIP, 0.02);
    Identification pair = Identifier.of(set(both("A", 10.0, 20.0), both("B", 10.05, 20.0)))
        .withoutNearCopies()
        .identify(List.of(
            read(Dimension.TIP_DIAMETER, 10.02, 0.02), read(Dimension.TIP_LENGTH, 20.0, 0.05)));
    double length = normal(0.0, Math.hypot(S_LENGTH, 0.05));
    double a = 0.475 * normal(0.02, sigma) * length;
    double b = 0.475 * normal(0.03, sigma) * length;
    double all = a + b + 0.05 * 0.01;
    assertThat(pair.inWords())
        .isEqualTo("Ambiguous in the set \"shop\" (entered from a standard): A, "
            + Digits.percent(a / all) + ", B, " + Digits.percent(b / all) + ".");

    List<PlugReading> far = List.of(read(Dimension.TIP_DIAMETER, 10.085, 0.02));
    Identifier one = Identifier.of(set(tip("A", 10.0).build())).withUnknownPrior(0.3);
    double p = 0.7 * normal(0.085, sigma);
    double p2 = p + 0.03;
    assertThat(one.withoutNearCopies().identify(far).inWords())
        .isEqualTo("Ambiguous in the set \"shop\" (entered from a standard): A, "
            + Digits.percent(p / p2) + ", or none of the set, " + Digits.percent(0.03 / p2) + ".");
    double copy = 0.03 * Math.exp(-0.085 / 0.5);
    double p3 = p + 0.027 + copy;
    assertThat(one.identify(far).inWords())
        .isEqualTo("Ambiguous in the set \"shop\" (entered from a standard): A, "
            + Digits.percent(p / p3) + ", a near copy of A, " + Digits.percent(copy / p3)
            + ", or none of the set, " + Digits.percent(0.027 / p3) + ".");
  }

  @Test
  void every_other_verdict_has_its_own_words() {
    ReferenceSet set = set(both("A", 10.0, 20.0), both("B", 12.0, 22.0));
    List<PlugReading> fit =
        List.of(read(Dimension.TIP_DIAMETER, 10.01, 0.02), read(Dimension.TIP_LENGTH, 20.01, 0.05));
    Identifier identifier = Identifier.of(set);
    Identification sure = identifier.identify(fit);
    assertThat(sure.verdict()).isEqualTo(PlugVerdict.IDENTIFIED);
    assertThat(sure.inWords())
        .isEqualTo("Identified by the set \"shop\" (entered from a standard): A, "
            + Digits.percent(sure.best().probability()) + ".");
    Identification first = identifier.identify(fit.subList(0, 1));
    assertThat(first.verdict()).isEqualTo(PlugVerdict.INSUFFICIENT_DATA);
    assertThat(first.inWords())
        .isEqualTo(
            "Not enough readings: A is the likeliest, but one dimension alone names no profile. "
                + first.nextReadings().get(0).inWords());
    Identification other = identifier.identify(List.of(read(Dimension.BORE, 6.0, 0.1)));
    assertThat(other.inWords())
        .isEqualTo("Not enough readings: nothing was read that the set \"shop\" knows. "
            + other.nextReadings().get(0).inWords());
    Identification none = identifier
        .withoutNearCopies()
        .identify(List.of(
            read(Dimension.TIP_DIAMETER, 10.9, 0.02), read(Dimension.TIP_LENGTH, 21.1, 0.05)));
    assertThat(none.verdict()).isEqualTo(PlugVerdict.NO_MATCH);
    assertThat(none.inWords())
        .isEqualTo("No match in the set \"shop\" (entered from a standard): the nearest is "
            + none.best().profile().displayName() + ", and " + Digits.percent(0.0)
            + " of its genuine plugs fit as badly.");
    PlugProfile unverified = PlugProfile.builder("A")
        .displayName("A")
        .from(Provenance.nominalUnverified(), Source.demo("a set for a test"))
        .dimension(Dimension.TIP_DIAMETER, PartSpread.normal(mm(10.0), mm(S_TIP)))
        .dimension(Dimension.TIP_LENGTH, PartSpread.normal(mm(20.0), mm(S_LENGTH)))
        .deciding(List.of(Dimension.TIP_DIAMETER, Dimension.TIP_LENGTH))
        .build();
    Identification weak = Identifier.of(set(unverified)).identify(fit);
    assertThat(weak.inWords())
        .isEqualTo(
            "Candidate only, because of what the set \"shop\" (nominal and unverified) rests on: A, "
                + Digits.percent(weak.best().probability()) + ".");
  }

  /** 2.58 standard deviations of both stay below 1 in 100 for χ², one of three does not for the largest. */
  @ParameterizedTest
  @ValueSource(doubles = {2.0, 2.8, 2.85, 2.95, 3.0})
  void a_profile_fits_throughout_down_to_the_chance_that_is_asked(double sigmas) {
    double sigma = Math.hypot(S_TIP, 0.02);
    ProfileCandidate best = Identifier.of(set(both("A", 10.0, 20.0)))
        .identify(List.of(
            read(Dimension.TIP_DIAMETER, 10.0 + sigmas * sigma, 0.02),
            read(Dimension.TIP_LENGTH, 20.0, 0.05)))
        .best();
    double one = 2.0 * new NormalDistribution().cumulativeProbability(-sigmas);
    double largest = 1.0 - (1.0 - one) * (1.0 - one);
    double tail = Math.exp(-0.5 * sigmas * sigmas); // χ² of two degrees
    assertThat(best.largestMisfit()).isCloseTo(sigmas, within(1.0e-9));
    assertThat(best.largestMisfitProbability()).isCloseTo(largest, within(1.0e-9));
    assertThat(best.tailProbability()).isCloseTo(tail, within(1.0e-9));
    assertThat(best.fits()).isEqualTo(tail >= 0.01);
    assertThat(best.fitsThroughout()).isEqualTo(tail >= 0.01 && largest >= 0.01);
  }

  /** Σ Π (width in which 99 of 100 genuine plugs read)/(width of the class); here 2 mm at the least. */
  @Test
  void a_chance_agreement_is_the_product_of_the_widths() {
    List<PlugReading> taken =
        List.of(read(Dimension.TIP_DIAMETER, 10.0, 0.02), read(Dimension.TIP_LENGTH, 20.0, 0.05));
    double tip = 2.0 * 2.576 * Math.hypot(S_TIP, 0.02);
    double length = 2.0 * 2.576 * Math.hypot(S_LENGTH, 0.05);
    ReferenceSet alone = set(both("A", 10.0, 20.0));
    assertThat(Identifier.of(alone).identify(taken).chanceOfCoincidence())
        .isCloseTo(tip / 2.0 * length / 2.0, within(1.0e-12));
    assertThat(Identifier.of(alone)
            .withWearAllowance(mm(0.1))
            .identify(taken.subList(0, 1))
            .chanceOfCoincidence())
        .isCloseTo((tip + 0.1) / 2.0, within(1.0e-12));
    // nominals 1 mm apart: (n + 1)/(n − 1) times their range is 3 mm
    assertThat(Identifier.of(set(both("A", 10.0, 20.0), both("B", 11.0, 20.0)))
            .identify(taken)
            .chanceOfCoincidence())
        .isCloseTo(2.0 * tip / 3.0 * length / 2.0, within(1.0e-12));
    assertThat(Identifier.of(alone).identify(List.of()).chanceOfCoincidence()).isEqualTo(1.0);
  }

  /** Five sizes 0.3 mm apart leave the class at 2 mm; a sixth tells that it is 1.5 × 7/5 mm wide, and a narrower one so. */
  @Test
  void six_profiles_tell_how_narrow_their_class_is() {
    List<PlugReading> taken = List.of(read(Dimension.TIP_DIAMETER, 10.0, 0.02));
    double tip = 2.0 * 2.576 * Math.hypot(S_TIP, 0.02);
    assertThat(chance(5, 0.3, taken)).isCloseTo(5.0 * tip / 2.0, within(1.0e-12));
    assertThat(chance(6, 0.3, taken)).isCloseTo(6.0 * tip / 2.1, within(1.0e-12));
    assertThat(chance(6, 0.25, taken)).isCloseTo(6.0 * tip / 1.75, within(1.0e-12));
    assertThat(chance(6, 0.0, taken)).isEqualTo(1.0);
  }

  private static double chance(int profiles, double apart, List<PlugReading> taken) {
    PlugProfile[] all = new PlugProfile[profiles];
    for (int i = 0; i < profiles; i++) {
      all[i] = both("P" + i, 10.0 + apart * i, 20.0);
    }
    return Identifier.of(set(all)).identify(taken).chanceOfCoincidence();
  }

  /**
   * One profile, with an unknown plug nine times as likely before: 37 % for the profile, 31 % for a copy of it, 32 % for
   * elsewhere. The unknown is one case of 63 % and counts before the profile.
   */
  @ParameterizedTest
  @CsvSource({"0.6, false", "0.7, true", "0.95, true"})
  void the_unknown_is_one_case_with_the_chance_of_copies_and_of_elsewhere(
      double confidence, boolean profileToo) {
    double off = 0.08;
    double profile = 0.1 * normal(off, Math.hypot(S_TIP, 0.02));
    double copy = 0.09 * Math.exp(-off / 0.5);
    double all = profile + copy + 0.81 / 10.0;
    Identification answer = Identifier.of(set(tip("A", 10.0).build()))
        .withUnknownPrior(0.9)
        .withConfidence(confidence)
        .identify(List.of(read(Dimension.TIP_DIAMETER, 10.0 + off, 0.02)));
    assertThat(probability(answer, "A"))
        .isCloseTo(profile / all, within(1.0e-12))
        .isBetween(0.37, 0.38);
    assertThat(answer.unknownProbability()).isBetween(0.62, 0.63);
    assertThat(answer.unknownIsLikely()).isTrue();
    assertThat(answer.likely()).hasSize(profileToo ? 1 : 0);
    assertThat(answer.best().profile().id()).isEqualTo("A");
  }

  /** Where profiles hold enough without it, or come before it and hold enough, the unknown is not among what is likely. */
  @Test
  void the_unknown_is_not_likely_where_profiles_hold_the_confidence() {
    ReferenceSet set = set(tip("A", 10.0).build(), tip("B", 10.1).build());
    List<PlugReading> between = List.of(read(Dimension.TIP_DIAMETER, 10.045, 0.02));
    double sigma = Math.hypot(S_TIP, 0.02);
    double a = 0.475 * normal(0.045, sigma);
    double b = 0.475 * normal(0.055, sigma);
    double copies = 0.0025 * (Math.exp(-0.045 / 0.5) + Math.exp(-0.055 / 0.5));
    double all = a + b + copies + 0.0045;
    Identifier identifier = Identifier.of(set);
    // B alone is less likely than A by a fifth: the pair holds 99.8 %
    assertThat((a + b) / all).isBetween(0.9975, 0.998);
    Identification both = identifier.withConfidence(0.99).identify(between);
    assertThat(both.likely()).extracting(each -> each.profile().id()).containsExactly("A", "B");
    assertThat(both.unknownIsLikely()).isFalse();
    Identification surer = identifier.withConfidence(0.9995).identify(between);
    assertThat(surer.likely()).hasSize(2);
    assertThat(surer.unknownIsLikely()).isTrue();
    Identification one = identifier.withConfidence(0.5).identify(between);
    assertThat(a / all).isGreaterThan(0.5);
    assertThat(one.likely()).extracting(each -> each.profile().id()).containsExactly("A");
    assertThat(one.unknownIsLikely()).isFalse();
  }

  /** Two profiles the readings of a worn plug go with: the likelier is told, whichever stands first. */
  @Test
  void of_two_profiles_that_fit_if_worn_the_likelier_is_told() {
    // tip diameters shrink with wear: 9.88 is A worn by 0.12 mm or B worn by 0.17 mm and a bit of
    // luck
    List<PlugReading> worn =
        List.of(read(Dimension.TIP_DIAMETER, 9.88, 0.01), read(Dimension.TIP_LENGTH, 20.02, 0.02));
    PlugProfile a = both("A", 10.0, 20.0);
    PlugProfile b = both("B", 10.09, 20.1);
    assertThat(Identifier.of(set(a, b)).identify(worn).ifWorn()).contains(a);
    assertThat(Identifier.of(set(b, a)).identify(worn).ifWorn()).contains(a);
    PlugProfile c = both("C", 10.0, 20.8);
    assertThat(Identifier.of(set(c, b)).identify(worn).ifWorn()).contains(b);
    assertThat(Identifier.of(set(c)).identify(worn).ifWorn()).isEmpty();
  }

  /** A tip and a collar that differ by as much and scatter as much tell as much; the deciding one comes first. */
  @ParameterizedTest
  @EnumSource(
      value = Dimension.class,
      names = {"TIP_DIAMETER", "COLLAR_DIAMETER"})
  void of_readings_that_tell_as_much_the_deciding_one_is_taken_first(Dimension deciding) {
    List<PlugProfile> profiles = new ArrayList<>();
    for (int k = 0; k < 2; k++) {
      profiles.add(tip("p" + k, 10.0 + 0.3 * k)
          .dimension(Dimension.COLLAR_DIAMETER, PartSpread.normal(mm(14.0 + 0.3 * k), mm(S_TIP)))
          .deciding(List.of(deciding))
          .build());
    }
    Identification answer = Identifier.of(ReferenceSet.of("two", profiles)).identify(List.of());
    assertThat(answer.nextReadings()).hasSize(2);
    assertThat(answer.nextReadings().get(0).expectedDropBits())
        .isCloseTo(answer.nextReadings().get(1).expectedDropBits(), within(0.001));
    assertThat(answer.nextReadings().get(0).dimension()).isEqualTo(deciding);
  }

  /**
   * 0.15 mm below nominal is 4 standard deviations, and wear evenly up to 0.2 mm explains it with 4.6/mm. That is told
   * while it is more than the confidence leaves of all: with U = 0.9985 an unknown plug weighs 109/mm.
   */
  @ParameterizedTest
  @CsvSource({"0.5, 0.95, true", "0.948, 0.95, true", "0.9985, 0.95, false", "0.9985, 0.99, true"})
  void wear_that_explains_a_reading_is_told_where_it_is_likely_enough(
      double unknown, double confidence, boolean told) {
    double odds = unknown / (1.0 - unknown);
    double all = odds * (0.9 / 10.0 + 0.1 * Math.exp(-0.15 / 0.5));
    double sigma = Math.hypot(S_TIP, 0.02);
    NormalDistribution bell = new NormalDistribution(10.0, sigma);
    double worn = bell.probability(9.85, 10.05) / 0.2;
    assertThat(worn > (1.0 - confidence) * all).isEqualTo(told);
    Identification answer = Identifier.of(set(tip("A", 10.0).build()))
        .withUnknownPrior(unknown)
        .withConfidence(confidence)
        .identify(List.of(read(Dimension.TIP_DIAMETER, 9.85, 0.02)));
    assertThat(answer.ifWorn().isPresent()).isEqualTo(told);
    assertThat(answer.verdict()).isEqualTo(told ? PlugVerdict.AMBIGUOUS : PlugVerdict.NO_MATCH);
  }

  @Test
  void profiles_of_one_chance_stand_in_the_order_of_their_ids() {
    ReferenceSet set = set(both("B", 10.0, 20.0), both("C", 10.0, 20.0), both("A", 10.0, 20.0));
    for (List<PlugReading> readings :
        List.of(List.<PlugReading>of(), List.of(read(Dimension.TIP_DIAMETER, 10.01, 0.02)))) {
      Identification answer = Identifier.of(set).identify(readings);
      assertThat(answer.candidates())
          .extracting(each -> each.profile().id())
          .containsExactly("A", "B", "C");
      assertThat(answer.likely())
          .extracting(each -> each.profile().id())
          .containsExactly("A", "B", "C");
    }
  }

  private static double even(double y, double low, double high, double u) {
    return new NormalDistribution(y, u).probability(low, high) / (high - low);
  }

  /** A is known by limits and not by its length; B by normal scatter in all three. */
  @Test
  void limits_hold_all_sizes_alike_and_what_a_profile_does_not_know_is_broad() {
    PlugProfile a = PlugProfile.builder("a")
        .from(Provenance.standardEntered(), Source.demo("a set for a test"))
        .dimension(Dimension.TIP_DIAMETER, PartSpread.limits(mm(9.95), mm(10.05)))
        .dimension(Dimension.COLLAR_DIAMETER, PartSpread.limits(mm(13.95), mm(14.05)))
        .build();
    PlugProfile b = tip("b", 10.1)
        .dimension(Dimension.COLLAR_DIAMETER, PartSpread.normal(mm(13.92), mm(S_TIP)))
        .dimension(Dimension.TIP_LENGTH, PartSpread.normal(mm(20.2), mm(S_LENGTH)))
        .build();
    double u = 0.02;
    double sigma = Math.hypot(S_TIP, u);
    double weightA = 0.475 * even(10.08, 9.95, 10.05, u) * even(13.9, 13.95, 14.05, u) * 0.1;
    double weightB =
        0.475 * normal(0.02, sigma) * normal(0.02, sigma) * normal(0.2, Math.hypot(S_LENGTH, 0.05));
    double all = weightA + weightB + 0.05 / 1000.0;
    List<PlugReading> readings = List.of(
        read(Dimension.TIP_DIAMETER, 10.08, u),
        read(Dimension.COLLAR_DIAMETER, 13.9, u),
        read(Dimension.TIP_LENGTH, 20.0, 0.05));
    for (ReferenceSet set : List.of(set(a, b), set(b, a))) {
      Identification answer = Identifier.of(set).withoutNearCopies().identify(readings);
      assertThat(probability(answer, "a")).isCloseTo(weightA / all, within(1.0e-10));
      assertThat(probability(answer, "b")).isCloseTo(weightB / all, within(1.0e-10));
      ProfileCandidate ofA = answer.candidates().stream()
          .filter(each -> each.profile().equals(a))
          .findFirst()
          .orElseThrow();
      // 1.5 and 2.5 uncertainties beyond the limits; the length is not compared
      assertThat(ofA.degreesOfFreedom()).isEqualTo(2);
      assertThat(ofA.chiSquare()).isCloseTo(1.5 * 1.5 + 2.5 * 2.5, within(1.0e-9));
    }
  }
}
