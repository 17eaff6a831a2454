package org.airfit.thread;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.airfit.quantity.Length;
import org.airfit.working.UnitSystem;

/** Whatever is typed is answered: with chances that add up, a verdict, words and a working. */
class ThreadReadingsProperties {

  /** From 1 nm to 100 m, most of it far from any thread. */
  private static Length anywhere(int seed) {
    return Length.ofMetres(Math.pow(10.0, -9.0 + 11.0 * seed / 1000.0));
  }

  /** From one end of what is taken as a length over pitches to the other. */
  private static Length overPitches(int seed) {
    return Length.ofMillimetres(Math.pow(10.0, -3.0 + 7.0 * seed / 1000.0));
  }

  @Property(tries = 150)
  void odd_readings_are_answered_too(
      @ForAll Gender gender,
      @ForAll @IntRange(min = 0, max = 1000) int crest,
      @ForAll @IntRange(min = 0, max = 1000) int other,
      @ForAll @IntRange(min = 0, max = 1000) int pitch,
      @ForAll @IntRange(min = 0, max = 1000) int uncertainty,
      @ForAll @IntRange(min = 1, max = 50) int count,
      @ForAll @IntRange(min = 4, max = 80) int leaf,
      @ForAll @IntRange(min = 0, max = 31) int which) {
    Length first = anywhere(crest);
    ThreadReadings readings =
        gender == Gender.MALE ? ThreadReadings.ofMale(first) : ThreadReadings.ofFemale(first);
    readings = (which & 1) == 0 ? readings : readings.withLastCrest(anywhere(other));
    readings = (which & 2) == 0 ? readings : readings.withPitches(overPitches(pitch), count);
    readings = (which & 4) == 0 ? readings : readings.withThreadsPerInch(leaf);
    readings = (which & 8) == 0 ? readings : readings.withPitch(first, anywhere(uncertainty));
    readings =
        (which & 16) == 0 ? readings : readings.withDiameterUncertainty(anywhere(uncertainty));
    answered(readings);
  }

  @Property(tries = 100)
  void readings_of_the_size_of_threads_are_answered(
      @ForAll @IntRange(min = 400, max = 12_000) int crest,
      @ForAll @IntRange(min = -60, max = 60) int growth,
      @ForAll @IntRange(min = 50, max = 350) int pitch,
      @ForAll @IntRange(min = 1, max = 12) int count,
      @ForAll boolean taper) {
    Length first = Length.ofMillimetres(crest / 100.0);
    answered(ThreadReadings.ofMale(first)
        .withLastCrest(Length.ofMillimetres((crest + growth) / 100.0))
        .withPitches(Length.ofMillimetres(count * pitch / 100.0), count)
        .withTaperSeen(taper)
        .withFlankAngle(57.5, 2.0));
  }

  private static void answered(ThreadReadings readings) {
    ThreadIdentification answer = ThreadIdentification.of(readings);
    double sum = answer.unknownProbability();
    for (ThreadCandidate candidate : answer.candidates()) {
      sum += candidate.probability();
    }
    assertThat(sum).isCloseTo(1.0, within(1.0e-9));
    assertThat(answer.inWords()).isNotBlank().doesNotContain("NaN", "100 %");
    assertThat(answer.settlingReadings().isEmpty())
        .isEqualTo(answer.verdict() != ThreadVerdict.AMBIGUOUS);
    if (answer.identified().isPresent() || answer.foreign().isPresent()) {
      assertThat(answer.candidates().get(0).probability()).isGreaterThanOrEqualTo(0.95);
      assertThat(answer.explanations()).isEmpty();
    }
    for (UnitSystem units : UnitSystem.values()) {
      assertThat(answer.working(units).toText()).isNotBlank().doesNotContain("NaN");
    }
  }
}
