package org.airfit.thread;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.airfit.quantity.Length;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Each test of the absolute fit just within its limit and just beyond, with the limits worked out here. */
class ThreadFitTest {

  /** NPT 1/4: pitch and turn on the diameter [mm], crest, cut and length in turns by the formulas of ASME B1.20.1. */
  private static final double PITCH = 25.4 / 18.0;

  private static final double TURN = PITCH / 16.0;
  private static final double CREST = (0.540 - (0.05 * 0.540 + 1.1) / 18.0 + 0.8 / 18.0) * 25.4;
  private static final double SLACK = 2.0 * (0.0049 - 0.033 / 18.0) * 25.4;
  private static final double TURNS = 0.8 * 0.540 + 4.8;
  private static final double U = 0.03;

  private static Length mm(double value) {
    return Length.ofMillimetres(value);
  }

  private static ThreadHypothesis named(String label, Gender gender) {
    return ThreadHypothesis.all(gender).stream()
        .filter(hypothesis -> hypothesis.thread().label().equals(label))
        .findFirst()
        .orElseThrow();
  }

  private static ThreadHypothesis npt() {
    return named("1/4 NPT male", Gender.MALE);
  }

  /** The score that one of m good readings exceeds in one piece of a hundred, to either side. */
  private static double score(int readings) {
    return new NormalDistribution().inverseCumulativeProbability(1.0 - 0.005 / readings);
  }

  @Test
  void the_limit_grows_with_the_number_of_readings() {
    ThreadReadings r = ThreadReadings.ofMale(mm(13.25));
    assertThat(ThreadFit.limit(r)).isCloseTo(score(1), within(1.0e-9));
    assertThat(ThreadFit.limit(r)).isCloseTo(2.5758, within(5.0e-5)); // printed: Q(2.5758) = 0.005
    assertThat(ThreadFit.limit(r.withThreadsPerInch(18.0))).isCloseTo(score(1), within(1.0e-9));
    assertThat(ThreadFit.limit(r.withTaperSeen(true))).isCloseTo(score(1), within(1.0e-9));
    assertThat(ThreadFit.limit(r.withLastCrest(mm(13.7)))).isCloseTo(score(2), within(1.0e-9));
    assertThat(ThreadFit.limit(r.withPitches(mm(7.06), 5))).isCloseTo(score(2), within(1.0e-9));
    assertThat(ThreadFit.limit(r.withPitch(mm(1.41), mm(0.01))))
        .isCloseTo(score(2), within(1.0e-9));
    assertThat(ThreadFit.limit(r.withFlankAngle(60.0, 1.0))).isCloseTo(score(2), within(1.0e-9));
    ThreadReadings all = r.withLastCrest(mm(13.7))
        .withPitches(mm(7.06), 5)
        .withPitch(mm(1.41), mm(0.01))
        .withFlankAngle(60.0, 1.0);
    assertThat(ThreadFit.limit(all)).isCloseTo(3.0902, within(5.0e-5)); // Q(3.0902) = 0.001
    assertThat(ThreadFit.margin(all.withDiameterUncertainty(mm(0.05))))
        .isCloseTo(0.05 * score(5), within(1.0e-9));
  }

  @Test
  void the_first_crest_fits_within_one_turn_and_the_uncertainty_of_its_reading() {
    double most = CREST + 2.0 * TURN + score(1) * U;
    double least = CREST - TURN - SLACK - 0.1 - score(1) * U;
    assertThat(ThreadFit.firstFits(npt(), ThreadReadings.ofMale(mm(most - 1.0e-6))))
        .isTrue();
    assertThat(ThreadFit.firstFits(npt(), ThreadReadings.ofMale(mm(most + 1.0e-6))))
        .isFalse();
    assertThat(ThreadFit.firstFits(npt(), ThreadReadings.ofMale(mm(least + 1.0e-6))))
        .isTrue();
    assertThat(ThreadFit.firstFits(npt(), ThreadReadings.ofMale(mm(least - 1.0e-6))))
        .isFalse();
  }

  private static boolean fits(ThreadReadings readings) {
    return ThreadFit.asRead(npt(), readings);
  }

  @Test
  void the_last_crest_fits_where_the_cone_may_have_grown_to() {
    double margin = Math.sqrt(2.0) * score(2) * U;
    double least = 13.25 + (0.5 * TURNS - 1.0) * TURN - margin;
    double most = 13.25 + (TURNS + 2.0) * TURN + margin;
    ThreadReadings r = ThreadReadings.ofMale(mm(13.25));
    assertThat(fits(r.withLastCrest(mm(least + 1.0e-6)))).isTrue();
    assertThat(fits(r.withLastCrest(mm(least - 1.0e-6)))).isFalse();
    assertThat(fits(r.withLastCrest(mm(most - 1.0e-6)))).isTrue();
    assertThat(fits(r.withLastCrest(mm(most + 1.0e-6)))).isFalse();
  }

  @Test
  void flanks_fit_within_their_uncertainty_either_way() {
    ThreadReadings r = ThreadReadings.ofMale(mm(13.25));
    double off = 1.5 * score(2);
    for (double sign : new double[] {-1.0, 1.0}) {
      assertThat(fits(r.withFlankAngle(60.0 + sign * (off - 1.0e-6), 1.5))).isTrue();
      assertThat(fits(r.withFlankAngle(60.0 + sign * (off + 1.0e-6), 1.5))).isFalse();
    }
  }

  @Test
  void a_counted_pitch_fits_within_the_uncertainty_of_its_length() {
    ThreadReadings r = ThreadReadings.ofMale(mm(13.25));
    double off = score(2) * 0.05;
    for (double sign : new double[] {-1.0, 1.0}) {
      assertThat(fits(r.withPitches(mm(5.0 * PITCH + sign * (off - 1.0e-6)), 5)))
          .isTrue();
      assertThat(fits(r.withPitches(mm(5.0 * PITCH + sign * (off + 1.0e-6)), 5)))
          .isFalse();
    }
  }

  @Test
  void a_pitch_read_otherwise_fits_within_its_uncertainty() {
    ThreadReadings r = ThreadReadings.ofMale(mm(13.25));
    double off = score(2) * 0.01;
    for (double sign : new double[] {-1.0, 1.0}) {
      assertThat(fits(r.withPitch(mm(PITCH + sign * (off - 1.0e-7)), mm(0.01)))).isTrue();
      assertThat(fits(r.withPitch(mm(PITCH + sign * (off + 1.0e-7)), mm(0.01)))).isFalse();
    }
  }

  @Test
  void a_leaf_fits_within_two_percent() {
    ThreadReadings r = ThreadReadings.ofMale(mm(13.25));
    assertThat(fits(r.withMetricLeaf(mm(1.0199 * PITCH)))).isTrue();
    assertThat(fits(r.withMetricLeaf(mm(1.0201 * PITCH)))).isFalse();
    assertThat(fits(r.withMetricLeaf(mm(0.9801 * PITCH)))).isTrue();
    assertThat(fits(r.withMetricLeaf(mm(0.9799 * PITCH)))).isFalse();
  }

  @Test
  void the_eye_and_the_side_must_agree_too() {
    ThreadReadings r = ThreadReadings.ofMale(mm(13.25)).withLastCrest(mm(13.71));
    assertThat(fits(r)).isTrue();
    assertThat(fits(r.withTaperSeen(true))).isTrue();
    assertThat(fits(r.withTaperSeen(false))).isFalse();
    assertThat(ThreadFit.loosely(npt(), r.withTaperSeen(false))).isTrue();
    assertThat(fits(r.ofOtherGender())).isFalse();
    assertThat(ThreadFit.loosely(npt(), r.ofOtherGender())).isFalse();
  }

  private static ThreadReadings good() {
    return ThreadReadings.ofMale(mm(13.25)).withLastCrest(mm(13.71));
  }

  @Test
  void the_slip_that_explains_a_thread_is_found() {
    ThreadHypothesis npt = npt();
    ThreadReadings counted = good().withPitches(mm(5.0 * PITCH), 5);
    assertThat(ThreadFit.slip(npt, counted)).isEmpty();
    assertThat(ThreadFit.slip(npt, counted.withThreadsPerInch(19.0)))
        .contains(ThreadSlip.LEAF_MISREAD);
    assertThat(ThreadFit.slip(npt, good().withPitches(mm(5.0 * PITCH), 6)))
        .contains(ThreadSlip.THREADS_COUNTED_AS_PITCHES);
    assertThat(ThreadFit.slip(npt, good().withPitches(mm(5.0 * PITCH), 4)))
        .contains(ThreadSlip.ONE_THREAD_OVERLOOKED);
    assertThat(ThreadFit.slip(npt, counted.withEndsSwapped())).contains(ThreadSlip.ENDS_SWAPPED);
    assertThat(ThreadFit.slip(npt, counted.ofOtherGender()))
        .contains(ThreadSlip.INSIDE_OUTSIDE_SWAPPED);
    assertThat(ThreadFit.slip(npt, ThreadReadings.ofFemale(mm(20.0)))).isEmpty();
    assertThat(ThreadFit.slip(npt, ThreadReadings.ofMale(mm(13.6))))
        .contains(ThreadSlip.NOT_AT_THE_END);
  }

  /** Two slips at once explain too much. */
  @Test
  void one_slip_does_not_explain_two_faults() {
    ThreadReadings two = good().withPitches(mm(5.0 * PITCH), 6).withThreadsPerInch(14.0);
    assertThat(ThreadFit.slip(npt(), two)).isEmpty();
    ThreadReadings flanks = good().withPitches(mm(5.0 * PITCH), 6).withFlankAngle(50.0, 1.0);
    assertThat(ThreadFit.slip(npt(), flanks)).isEmpty();
    assertThat(ThreadFit.slip(npt(), ThreadReadings.ofMale(mm(13.6)).withFlankAngle(50.0, 1.0)))
        .isEmpty();
    assertThat(ThreadFit.slip(npt(), ThreadReadings.ofMale(mm(13.6)).withPitches(mm(10.0), 5)))
        .isEmpty();
    assertThat(ThreadFit.loosely(npt(), good().withPitches(mm(5.0 * PITCH), 6))).isFalse();
    assertThat(ThreadFit.loosely(npt(), good().withThreadsPerInch(19.0))).isTrue();
    assertThat(ThreadFit.loosely(npt(), ThreadReadings.ofMale(mm(13.6)))).isTrue();
  }

  /** Of one pitch there is no count that is one less, and beyond fifty none is taken. */
  @Test
  void counts_at_the_ends_of_what_is_taken_are_judged_too() {
    assertThat(ThreadFit.slip(npt(), good().withPitches(mm(0.2), 1))).isEmpty();
    assertThat(ThreadFit.slip(npt(), good().withPitches(mm(PITCH), 2)))
        .contains(ThreadSlip.THREADS_COUNTED_AS_PITCHES);
    assertThat(ThreadFit.slip(npt(), good().withPitches(mm(2.0 * PITCH), 1)))
        .contains(ThreadSlip.ONE_THREAD_OVERLOOKED);
    assertThat(ThreadFit.slip(npt(), good().withPitches(mm(50.0 * PITCH), 49)))
        .contains(ThreadSlip.ONE_THREAD_OVERLOOKED);
    assertThat(ThreadFit.slip(npt(), good().withPitches(mm(49.0 * PITCH), 50)))
        .contains(ThreadSlip.THREADS_COUNTED_AS_PITCHES);
    assertThat(ThreadFit.slip(npt(), good().withPitches(mm(51.0 * PITCH), 50))).isEmpty();
  }

  @Test
  void a_diameter_may_come_from_anywhere_on_the_cone_but_not_from_beyond() {
    double most = CREST + TURN + (TURNS + 2.0) * TURN + score(1) * U;
    assertThat(ThreadFit.slip(npt(), ThreadReadings.ofMale(mm(most - 1.0e-6))))
        .contains(ThreadSlip.NOT_AT_THE_END);
    assertThat(ThreadFit.slip(npt(), ThreadReadings.ofMale(mm(most + 1.0e-6)))).isEmpty();
    double least = CREST - TURN - SLACK - 0.1 - score(1) * U;
    assertThat(ThreadFit.slip(npt(), ThreadReadings.ofMale(mm(least - 1.0e-6)))).isEmpty();
    // a straight thread has the same crest everywhere
    ThreadHypothesis g = named("G 1/4 male", Gender.MALE);
    assertThat(ThreadFit.slip(g, ThreadReadings.ofMale(mm(13.6)))).isEmpty();
  }

  /** Two diameters from the middle of a taper must still grow the way a taper does, by more than their errors. */
  @Test
  void two_diameters_from_the_middle_must_grow_as_a_taper_does() {
    double margin = score(2) * U;
    ThreadReadings first = ThreadReadings.ofMale(mm(13.55));
    assertThat(ThreadFit.slip(npt(), first.withLastCrest(mm(13.55 + margin + 1.0e-6))))
        .contains(ThreadSlip.NOT_AT_THE_END);
    assertThat(ThreadFit.slip(npt(), first.withLastCrest(mm(13.55 + margin - 1.0e-6))))
        .isEmpty();
    double most = CREST + TURN + (TURNS + 2.0) * TURN + margin;
    assertThat(ThreadFit.slip(npt(), first.withLastCrest(mm(most - 1.0e-6))))
        .contains(ThreadSlip.NOT_AT_THE_END);
    assertThat(ThreadFit.slip(npt(), first.withLastCrest(mm(most + 1.0e-6)))).isEmpty();
    // inside, the bore grows smaller with the depth
    ThreadHypothesis female = named("1/4 NPT female", Gender.FEMALE);
    double mouth = (0.540 - (0.05 * 0.540 + 1.1) / 18.0 + 0.2278 / 16.0 - 0.8 / 18.0) * 25.4;
    ThreadReadings deep = ThreadReadings.ofFemale(mm(mouth - 4.5 * TURN));
    assertThat(ThreadFit.slip(female, deep.withLastCrest(mm(mouth - 4.5 * TURN - margin - 1.0e-6))))
        .contains(ThreadSlip.NOT_AT_THE_END);
    assertThat(ThreadFit.slip(female, deep.withLastCrest(mm(mouth - 4.5 * TURN + margin + 1.0e-6))))
        .isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"1, false", "2, false", "3, false", "4, false", "5, true", "50, true"})
  void five_pitches_counted_are_a_pitch(int pitches, boolean enough) {
    assertThat(ThreadFit.hasPitch(good().withPitches(mm(pitches * PITCH), pitches)))
        .isEqualTo(enough);
  }

  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void two_ways_are_a_pitch_and_one_is_not(boolean close) {
    ThreadReadings leaf = good().withThreadsPerInch(18.0);
    assertThat(ThreadFit.hasPitch(good())).isFalse();
    assertThat(ThreadFit.hasPitch(leaf)).isFalse();
    // an uncertainty of two per cent of the pitch still counts as a way
    double uncertainty = close ? 0.0282 : 0.0283;
    assertThat(ThreadFit.hasPitch(good().withPitch(mm(PITCH), mm(uncertainty)))).isFalse();
    assertThat(ThreadFit.hasPitch(leaf.withPitch(mm(PITCH), mm(uncertainty)))).isEqualTo(close);
    assertThat(ThreadFit.hasPitch(leaf.withPitch(mm(1.0), mm(0.02)))).isTrue();
    assertThat(ThreadFit.hasPitch(leaf.withPitches(mm(3.0 * PITCH), 3))).isTrue();
    assertThat(ThreadFit.hasPitch(leaf.withPitches(mm(2.0 * PITCH), 2))).isFalse();
    assertThat(ThreadFit.hasPitch(
            good().withPitch(mm(PITCH), mm(0.01)).withPitches(mm(3.0 * PITCH), 3)))
        .isTrue();
  }
}
