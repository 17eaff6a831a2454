package org.airfit.thread;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import nl.jqno.equalsverifier.EqualsVerifier;
import nl.jqno.equalsverifier.Warning;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.quantity.NominalThreadSize;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ThreadDesignationTest {

  private static ThreadDesignation of(ThreadFamily family, String size, Gender gender) {
    return new ThreadDesignation(family, NominalThreadSize.parse(size), gender);
  }

  @ParameterizedTest
  @CsvSource({
    "NPT, 3/8, MALE, 3/8 NPT male",
    "BSPT, 1/4, FEMALE, Rc 1/4 female",
    "BSPT, 1/4, MALE, R 1/4 male",
    "BSPP, 1-1/2, MALE, G 1-1/2 male",
    "PTF_SAE_SHORT, 1, FEMALE, 1 PTF-SAE SHORT female"
  })
  void a_thread_is_called_as_people_write_it(
      ThreadFamily family, String size, Gender gender, String label) {
    assertThat(of(family, size, gender)).hasToString(label);
    assertThat(of(family, size, gender).label()).isEqualTo(label);
  }

  @Test
  void a_thread_its_standard_does_not_have_cannot_be_named() {
    assertThatThrownBy(() -> of(ThreadFamily.RP, "1/4", Gender.MALE))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("gender of Rp must be female");
    assertThatThrownBy(() -> of(ThreadFamily.BSPT, "3-1/2", Gender.MALE))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("the nearest is 4");
  }

  @Test
  void the_geometry_is_that_of_the_family_and_size() {
    assertThat(of(ThreadFamily.NPSM, "1/2", Gender.MALE).geometry())
        .contains(NpsmThread.of(NominalThreadSize.ONE_HALF));
    assertThat(of(ThreadFamily.NPSF, "1/2", Gender.FEMALE).geometry()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({
    "NPT, 1/4, 18",
    "NPTF, 1, 11.5",
    "NPSF, 1/8, 27",
    "BSPT, 1/4, 19",
    "RP, 1, 11",
    "BSPP, 4, 11"
  })
  void the_dryseal_families_have_the_threads_per_inch_of_npt(
      ThreadFamily family, String size, double threadsPerInch) {
    assertThat(of(family, size, Gender.FEMALE).threadsPerInch()).isEqualTo(threadsPerInch);
  }

  @Test
  void threads_readings_and_candidates_are_equal_by_value() {
    EqualsVerifier.forClass(ThreadDesignation.class)
        .withPrefabValues(ThreadFamily.class, ThreadFamily.NPT, ThreadFamily.NPTF)
        .withPrefabValues(
            NominalThreadSize.class, NominalThreadSize.ONE, NominalThreadSize.ONE_HALF)
        .suppress(Warning.NULL_FIELDS)
        .verify();
    ThreadDesignation thread = of(ThreadFamily.NPT, "1", Gender.MALE);
    assertThat(new ThreadCandidate(thread, 0.5))
        .isEqualTo(new ThreadCandidate(of(ThreadFamily.NPT, "1", Gender.MALE), 0.5))
        .hasSameHashCodeAs(new ThreadCandidate(of(ThreadFamily.NPT, "1", Gender.MALE), 0.5))
        .hasToString("1 NPT male, 50.0 %")
        .isNotEqualTo(new ThreadCandidate(thread, 0.25))
        .isNotEqualTo(new ThreadCandidate(of(ThreadFamily.NPT, "1", Gender.FEMALE), 0.5));
    ThreadReadings readings = ThreadReadings.ofMale(Length.ofMillimetres(13.25))
        .withThreadsPerInch(18.0)
        .withTaperSeen(true)
        .withFlankAngle(60.0, 1.0);
    ThreadReadings same = ThreadReadings.ofMale(Length.ofMillimetres(13.25))
        .withFlankAngle(60.0, 1.0)
        .withTaperSeen(true)
        .withThreadsPerInch(18.0);
    assertThat(same).isEqualTo(readings).hasSameHashCodeAs(readings);
    assertThat(readings.withTaperSeen(false)).isNotEqualTo(readings);
    assertThat(readings.withFlankAngle(60.0, 2.0)).isNotEqualTo(readings);
    assertThat(readings.withLastCrest(Length.ofMillimetres(13.7))).isNotEqualTo(readings);
    assertThat(readings.withDiameterUncertainty(Length.ofMillimetres(0.1))).isNotEqualTo(readings);
    assertThat(readings.withThreadsPerInch(19.0)).isNotEqualTo(readings);
    assertThat(readings.withLeafMisread(0.05)).isNotEqualTo(readings);
    assertThat(readings.withMetricLeaf(Length.ofMillimetres(1.5))).isNotEqualTo(readings);
    assertThat(readings.withPitches(Length.ofMillimetres(7.06), 5)).isNotEqualTo(readings);
    SlipCandidate slip = new SlipCandidate(ThreadSlip.ENDS_SWAPPED, thread);
    assertThat(slip)
        .isEqualTo(
            new SlipCandidate(ThreadSlip.ENDS_SWAPPED, of(ThreadFamily.NPT, "1", Gender.MALE)))
        .hasSameHashCodeAs(new SlipCandidate(ThreadSlip.ENDS_SWAPPED, thread))
        .isNotEqualTo(new SlipCandidate(ThreadSlip.LEAF_MISREAD, thread))
        .isNotEqualTo(
            new SlipCandidate(ThreadSlip.ENDS_SWAPPED, of(ThreadFamily.NPT, "1", Gender.FEMALE)));
    assertThat(slip.thread()).isEqualTo(thread);
    assertThat(ThreadIdentification.of(readings))
        .isEqualTo(ThreadIdentification.of(same))
        .hasSameHashCodeAs(ThreadIdentification.of(same))
        .isNotEqualTo(ThreadIdentification.of(readings.withTaperSeen(false)));
  }

  @ParameterizedTest
  @ValueSource(doubles = {-0.001, 1.001, Double.NaN})
  void a_chance_lies_between_0_and_1(double probability) {
    ThreadDesignation thread = of(ThreadFamily.NPT, "1", Gender.MALE);
    assertThatThrownBy(() -> new ThreadCandidate(thread, probability))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("probability must be in [0, 1]");
    assertThat(new ThreadCandidate(thread, 1.0).probability()).isEqualTo(1.0);
    assertThat(new ThreadCandidate(thread, 0.0).probability()).isZero();
  }

  @Test
  void a_section_has_its_diameters_in_order() {
    Length one = Length.ofMillimetres(1.0);
    Length two = Length.ofMillimetres(2.0);
    Length three = Length.ofMillimetres(3.0);
    assertThat(new ThreadSection(three, two, one).pitch()).isEqualTo(two);
    assertThat(new ThreadSection(two, two, two).pitch()).isEqualTo(two);
    assertThatThrownBy(() -> new ThreadSection(one, two, one))
        .hasMessageContaining("major must be at least pitch, 2 mm, was 1 mm");
    assertThatThrownBy(() -> new ThreadSection(three, two, three))
        .hasMessageContaining("minor must be at most pitch, 2 mm, was 3 mm");
  }

  @Test
  void limits_are_written_in_either_unit() {
    Limits limits = new Limits(Length.ofInches(0.5), Length.ofInches(0.625));
    assertThat(limits.format(LengthUnit.INCH)).isEqualTo("0.5000 to 0.6250 in");
    assertThat(limits).hasToString("12.700 to 15.875 mm");
  }
}
