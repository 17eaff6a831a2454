package org.airfit.thread;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import org.airfit.measure.PitchCount;
import org.airfit.measure.PitchGauge;
import org.airfit.quantity.Length;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Priors and likelihoods as {@link ThreadIdentification} states them, multiplied out here. */
class ThreadHypothesisTest {

  private static Length mm(double value) {
    return Length.ofMillimetres(value);
  }

  private static ThreadHypothesis named(String label, Gender gender) {
    return ThreadHypothesis.all(gender).stream()
        .filter(hypothesis -> hypothesis.thread().label().equals(label))
        .findFirst()
        .orElseThrow();
  }

  private static ThreadReadings middle(ThreadHypothesis hypothesis) {
    Length crest = mm(0.5 * (hypothesis.crests().least() + hypothesis.crests().most()));
    return hypothesis.thread().gender() == Gender.MALE
        ? ThreadReadings.ofMale(crest)
        : ThreadReadings.ofFemale(crest);
  }

  private static double prior(ThreadHypothesis hypothesis) {
    ThreadReadings r = middle(hypothesis);
    return hypothesis.weight(r) / (0.99 * hypothesis.likelihood(r));
  }

  /** NPT, R and G alike; NPSC and NPSM a fifth, Rp an eighth, ports, flares and hoses three tenths, others a tenth. */
  @ParameterizedTest
  @EnumSource(Gender.class)
  void what_is_met_more_often_weighs_more(Gender gender) {
    Map<ThreadFamily, Double> shares = Map.of(
        ThreadFamily.NPT, 1.0,
        ThreadFamily.BSPT, 1.0,
        ThreadFamily.BSPP, 1.0,
        ThreadFamily.NPSM, 0.2,
        ThreadFamily.NPSC, 0.2,
        ThreadFamily.RP, 0.125);
    double usual = prior(named("1/4 NPT " + gender.label(), gender));
    double sum = 0.0;
    for (ThreadHypothesis hypothesis : ThreadHypothesis.all(gender)) {
      double share = prior(hypothesis) / usual;
      sum += prior(hypothesis);
      if (hypothesis.thread() instanceof ThreadDesignation pipe) {
        assertThat(share).as(pipe.label()).isCloseTo(shares.get(pipe.family()), within(1.0e-9));
      }
    }
    assertThat(sum).isCloseTo(0.95, within(1.0e-9));
    assertThat(prior(named("M14x1.5 " + gender.label(), gender)) / usual)
        .isCloseTo(0.3, within(1.0e-9));
    assertThat(prior(named("3/4-11.5 NH " + gender.label(), gender)) / usual)
        .isCloseTo(0.3, within(1.0e-9));
    assertThat(prior(named("9/16-18 UNF " + gender.label(), gender)) / usual)
        .isCloseTo(0.3, within(1.0e-9));
    assertThat(prior(named("M14x2 " + gender.label(), gender)) / usual)
        .isCloseTo(0.1, within(1.0e-9));
    assertThat(prior(named("G 5/8 " + gender.label(), gender)) / usual)
        .isCloseTo(0.1, within(1.0e-9));
  }

  @Test
  void outside_is_taken_for_inside_one_time_in_a_hundred() {
    ThreadHypothesis female = named("G 1/4 female", Gender.FEMALE);
    ThreadReadings r = middle(female);
    assertThat(female.weight(r.ofOtherGender()) / female.weight(r))
        .isCloseTo(1.0 / 99.0, within(1.0e-12));
  }

  @Test
  void every_reading_multiplies_the_likelihood() {
    ThreadHypothesis npt = named("1/4 NPT male", Gender.MALE);
    Length pitch = npt.thread().pitch();
    ThreadReadings r = middle(npt);
    double alone = npt.crests().density(r);
    assertThat(npt.likelihood(r)).isEqualTo(alone).isPositive();
    assertThat(npt.likelihood(r.withFlankAngle(58.5, 1.2)) / alone)
        .isCloseTo(new NormalDistribution(60.0, 1.2).density(58.5), within(1.0e-12));
    assertThat(npt.likelihood(r.withTaperSeen(true)) / alone).isCloseTo(0.95, within(1.0e-12));
    assertThat(npt.likelihood(r.withTaperSeen(false)) / alone).isCloseTo(0.05, within(1.0e-12));
    double counted = new PitchCount(mm(7.1), 5, mm(0.05)).likelihood(pitch);
    assertThat(npt.likelihood(r.withPitches(mm(7.1), 5)) / alone)
        .isCloseTo(counted, within(1.0e-12));
    double off = (1.43 - 25.4 / 18.0) / 0.02;
    double other = Math.exp(-0.5 * off * off);
    assertThat(npt.likelihood(r.withPitch(mm(1.43), mm(0.02))) / alone)
        .isCloseTo(other, within(1.0e-12));
    double leaf = PitchGauge.INCH.chance(mm(25.4 / 19.0), pitch, 0.03);
    assertThat(npt.likelihood(r.withThreadsPerInch(19.0)) / alone).isCloseTo(leaf, within(1.0e-12));
    ThreadReadings all = r.withPitches(mm(7.1), 5)
        .withPitch(mm(1.43), mm(0.02))
        .withThreadsPerInch(19.0)
        .withFlankAngle(58.5, 1.2)
        .withTaperSeen(true);
    double known =
        alone * counted * other * leaf * 0.95 * new NormalDistribution(60.0, 1.2).density(58.5);
    assertThat(npt.likelihood(all) / known).isCloseTo(1.0, within(1.0e-9));
    assertThat(npt.likelihood(r.withPitch(mm(3.0), mm(0.01)))).isZero();
    assertThat(npt.likelihood(r.withPitch(mm(3.0), mm(0.01)).withThreadsPerInch(18.0)))
        .isZero();
  }

  /** 0 to 120 mm of diameter, 0 to 3 mm of pitch, 15° of flank angle; half parallel, the others up to 3 mm apart. */
  @Test
  void an_unknown_thread_is_evenly_spread() {
    ThreadReadings r = ThreadReadings.ofMale(mm(13.25));
    double alone = ThreadHypothesis.unknownWeight(r);
    assertThat(alone).isCloseTo(0.05 / 120.0, within(1.0e-15));
    double apart = new NormalDistribution(0.0, 0.03 * Math.sqrt(2.0)).density(0.05);
    assertThat(ThreadHypothesis.unknownWeight(r.withLastCrest(mm(13.3))) / alone)
        .isCloseTo(0.5 * apart + 0.5 / 3.0, within(1.0e-9));
    // a pitch: its even density over the peak of a bell of the reading's uncertainty
    double root = Math.sqrt(2.0 * Math.PI);
    double counted = 0.05 / 5.0 * root / 3.0;
    ThreadReadings count = r.withPitches(mm(7.05), 5);
    assertThat(ThreadHypothesis.unknownWeight(count) / alone).isCloseTo(counted, within(1.0e-12));
    assertThat(ThreadHypothesis.unknownWeight(r.withPitch(mm(1.43), mm(0.02))) / alone)
        .isCloseTo(0.02 * root / 3.0, within(1.0e-12));
    // once known, the pitch is the same in every other way, or has once in a million nothing to do
    // with it
    ThreadReadings otherwise = count.withPitch(mm(1.43), mm(0.02));
    assertThat(ThreadHypothesis.unknownWeight(otherwise) / alone)
        .isCloseTo(counted * (Math.exp(-0.5) + 1.0e-6), within(1.0e-12));
    assertThat(ThreadHypothesis.unknownWeight(count.withPitch(mm(2.8), mm(0.02))) / alone)
        .isCloseTo(counted * 1.0e-6, within(1.0e-14));
    Length leaf = Length.ofInches(1.0 / 18.0);
    assertThat(ThreadHypothesis.unknownWeight(r.withThreadsPerInch(18.0)) / alone)
        .isCloseTo(1.0 / PitchGauge.INCH.leaves().size(), within(1.0e-12));
    assertThat(ThreadHypothesis.unknownWeight(count.withThreadsPerInch(18.0)) / alone)
        .isCloseTo(
            counted * (PitchGauge.INCH.chance(leaf, mm(1.41), 0.03) + 1.0e-6), within(1.0e-12));
    assertThat(ThreadHypothesis.unknownWeight(otherwise.withThreadsPerInch(18.0)) / alone)
        .isCloseTo(
            counted
                * (Math.exp(-0.5) + 1.0e-6)
                * (PitchGauge.INCH.chance(leaf, mm(1.43), 0.03) + 1.0e-6),
            within(1.0e-12));
    assertThat(ThreadHypothesis.unknownWeight(count.withThreadsPerInch(40.0)) / alone)
        .isCloseTo(
            counted
                * (PitchGauge.INCH.chance(Length.ofInches(1.0 / 40.0), mm(1.41), 0.03) + 1.0e-6),
            within(1.0e-14));
    assertThat(ThreadHypothesis.unknownWeight(r.withFlankAngle(57.0, 1.0)) / alone)
        .isCloseTo(1.0 / 15.0, within(1.0e-12));
    assertThat(ThreadHypothesis.unknownWeight(r.withTaperSeen(true)) / alone)
        .isCloseTo(0.5, within(1.0e-12));
    assertThat(ThreadHypothesis.unknownWeight(r.withTaperSeen(false)) / alone)
        .isCloseTo(0.5, within(1.0e-12));
  }

  /** G 1/4, 12.907 to 13.157 mm outside and 1.337 mm of pitch; 0.05 mm of pitch counts like 1 mm of diameter. */
  @Test
  void the_distance_counts_diameter_and_pitch() {
    ThreadHypothesis g = named("G 1/4 male", Gender.MALE);
    double pitch = 25.4 / 19.0;
    assertThat(g.distance(ThreadReadings.ofMale(mm(13.0)))).isZero();
    assertThat(g.distance(ThreadReadings.ofMale(mm(14.157)))).isCloseTo(1.0, within(1.0e-9));
    assertThat(g.distance(ThreadReadings.ofMale(mm(12.407)))).isCloseTo(0.5, within(1.0e-9));
    assertThat(g.distance(ThreadReadings.ofMale(mm(13.0)).withPitch(mm(pitch + 0.1), mm(0.01))))
        .isCloseTo(2.0, within(1.0e-9));
    assertThat(g.distance(ThreadReadings.ofMale(mm(16.157)).withPitch(mm(pitch - 0.2), mm(0.01))))
        .isCloseTo(5.0, within(1.0e-9));
    assertThat(g.pitch()).isCloseTo(pitch, within(1.0e-9));
  }
}
