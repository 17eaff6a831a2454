package org.airfit.thread;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.airfit.measure.PitchGauge;
import org.airfit.quantity.Length;
import org.airfit.quantity.NominalThreadSize;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the standards say of their families, sizes and marks. */
class ThreadFamilyTest {

  private static final Length DEEP = Length.ofMillimetres(5.0);

  private static NominalThreadSize size(String label) {
    return NominalThreadSize.parse(label);
  }

  @ParameterizedTest
  @CsvSource({
    "NPT, NPT, NPT, 60, true, true, 14, 1/16, 4",
    "NPSC, NPSC, NPSC, 60, false, false, 13, 1/8, 4",
    "NPSM, NPSM, NPSM, 60, false, true, 13, 1/8, 4",
    "NPTF, NPTF, NPTF, 60, true, true, 12, 1/16, 3",
    "PTF_SAE_SHORT, PTF-SAE SHORT, PTF-SAE SHORT, 60, true, true, 7, 1/16, 1",
    "NPSF, NPSF, NPSF, 60, false, false, 7, 1/16, 1",
    "NPSI, NPSI, NPSI, 60, false, false, 7, 1/16, 1",
    "BSPT, R, Rc, 55, true, true, 13, 1/16, 4",
    "RP, Rp, Rp, 55, false, false, 13, 1/16, 4",
    "BSPP, G, G, 55, false, true, 14, 1/16, 4"
  })
  void a_family_has_its_mark_its_shape_and_its_sizes(
      ThreadFamily family,
      String male,
      String female,
      int flanks,
      boolean taper,
      boolean outside,
      int sizes,
      String first,
      String last) {
    assertThat(family.symbol()).isEqualTo(male);
    assertThat(family.symbol(Gender.MALE)).isEqualTo(male);
    assertThat(family.symbol(Gender.FEMALE)).isEqualTo(female);
    assertThat(family.flankAngleDegrees()).isEqualTo(flanks);
    assertThat(family.isTapered()).isEqualTo(taper);
    assertThat(family.has(Gender.MALE)).isEqualTo(outside);
    assertThat(family.has(Gender.FEMALE)).isTrue();
    assertThat(family.sizes()).hasSize(sizes).startsWith(size(first)).endsWith(size(last));
    assertThat(family.sizes().contains(size("3-1/2")))
        .isEqualTo(last.equals("4") && family != ThreadFamily.BSPT && family != ThreadFamily.RP);
    assertThat(family.source().citation()).contains(flanks == 60 ? "ASME B1.20" : "ISO");
  }

  @Test
  void a_size_that_a_family_does_not_have_is_answered_with_the_nearest() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> ThreadFamily.NPSC.requireSize(size("1/16")))
        .withMessage("NPSC size must be one of [1/8, 1/4, 3/8, 1/2, 3/4, 1, 1-1/4, 1-1/2, 2,"
            + " 2-1/2, 3, 3-1/2, 4], was 1/16; the nearest is 1/8");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> ThreadFamily.NPSF.requireSize(size("2")))
        .withMessage("NPSF size must be one of [1/16, 1/8, 1/4, 3/8, 1/2, 3/4, 1], was 2; the"
            + " nearest is 1");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> ThreadFamily.BSPT.requireSize(size("3-1/2")))
        .withMessageEndingWith("was 3-1/2; the nearest is 4");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> ThreadFamily.RP.requireGender(Gender.MALE))
        .withMessage("gender of Rp must be female, was male; there is no such thread outside");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> PipeThreads.threadsPerInch(ThreadFamily.NPSI, size("2")))
        .withMessageContaining("was 2; the nearest is 1");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> PipeThreads.of(ThreadFamily.BSPT, size("3-1/2")))
        .withMessageContaining("was 3-1/2");
    assertThat(Gender.MALE.other()).isEqualTo(Gender.FEMALE);
    assertThat(Gender.FEMALE.other()).isEqualTo(Gender.MALE);
  }

  /** ISO 228-1 prints r = 0.137329 P. */
  @Test
  void rounded_crests_have_a_radius_and_flat_ones_have_none() {
    assertThat(ThreadForm.ROUND_55.crestRadiusOverPitch().orElseThrow())
        .isCloseTo(0.137329, within(5.0e-7));
    assertThat(ThreadForm.FLAT_60.crestRadiusOverPitch()).isEmpty();
    assertThat(ThreadForm.ROUND_55.source().citation()).contains("ISO 228-1");
  }

  /** Straight threads are the same at every depth; R grows by a sixteenth, Rc and NPT inside shrink by it. */
  @Test
  void a_section_lies_where_the_standard_puts_it() {
    NominalThreadSize half = size("1/2");
    // G 1/2: d 20.955, h 1.162
    for (PipeThread straight : new PipeThread[] {BsppThread.of(half), RpThread.of(half)}) {
      near(straight.section(Gender.FEMALE, DEEP), 20.955, 19.793, 18.631);
    }
    double off = (5.0 - 8.2) / 16.0; // a is 8.2 mm
    near(BsptThread.of(half).section(Gender.MALE, DEEP), 20.955 + off, 19.793 + off, 18.631 + off);
    double in = -5.0 / 16.0;
    near(BsptThread.of(half).section(Gender.FEMALE, DEEP), 20.955 + in, 19.793 + in, 18.631 + in);
    double p = 25.4 / 14.0;
    double e0 = (0.840 - (0.05 * 0.840 + 1.1) / 14.0) * 25.4;
    double e1 = e0 + 0.32 / 16.0 * 25.4;
    NptThread npt = NptThread.of(half);
    near(
        npt.section(Gender.MALE, DEEP),
        e0 + 5.0 / 16.0 + 0.8 * p,
        e0 + 5.0 / 16.0,
        e0 + 5.0 / 16.0 - 0.8 * p);
    near(
        npt.section(Gender.FEMALE, DEEP),
        e1 - 5.0 / 16.0 + 0.8 * p,
        e1 - 5.0 / 16.0,
        e1 - 5.0 / 16.0 - 0.8 * p);
    near(NpscThread.of(half).section(Gender.FEMALE, DEEP), e1 + 0.8 * p, e1, e1 - 0.8 * p);
    NpsmThread npsm = NpsmThread.of(half);
    double most = e1 - 0.0015 * 25.4;
    near(npsm.section(Gender.MALE, DEEP), most + 0.649519 * p, most, most - 0.649519 * p);
    near(npsm.section(Gender.FEMALE, DEEP), e1 + 0.649519 * p, e1, e1 - 0.433013 * p);
    assertThat(npsm.height().millimetres()).isCloseTo(0.541266 * p, within(1.0e-9));
    assertThat(npsm.crestSlack().metres()).isZero();
  }

  private static void near(ThreadSection section, double major, double pitch, double minor) {
    assertThat(section.major().millimetres()).isCloseTo(major, within(1.0e-6));
    assertThat(section.pitch().millimetres()).isCloseTo(pitch, within(1.0e-6));
    assertThat(section.minor().millimetres()).isCloseTo(minor, within(1.0e-6));
  }

  @Test
  void the_pitch_of_readings_is_as_counted_else_otherwise_else_of_the_leaf() {
    ThreadReadings r = ThreadReadings.ofMale(Length.ofMillimetres(13.25));
    assertThat(r.pitch()).isEmpty();
    assertThat(r.gauge()).isEmpty();
    assertThat(r.pitchCount()).isEmpty();
    ThreadReadings leaf = r.withMetricLeaf(Length.ofMillimetres(1.5));
    assertThat(leaf.pitch()).contains(Length.ofMillimetres(1.5));
    assertThat(leaf.gauge()).contains(PitchGauge.METRIC);
    assertThat(r.withThreadsPerInch(18.0).gauge()).contains(PitchGauge.INCH);
    ThreadReadings other = leaf.withPitch(Length.ofMillimetres(1.45), Length.ofMillimetres(0.01));
    assertThat(other.pitch()).contains(Length.ofMillimetres(1.45));
    ThreadReadings counted = other.withPitches(Length.ofMillimetres(7.0), 5);
    assertThat(counted.pitch().orElseThrow().millimetres()).isCloseTo(1.4, within(1.0e-12));
    assertThat(counted.leafPitch()).contains(Length.ofMillimetres(1.5));
    assertThat(counted.withoutLeaf())
        .isEqualTo(r.withPitch(Length.ofMillimetres(1.45), Length.ofMillimetres(0.01))
            .withPitches(Length.ofMillimetres(7.0), 5));
    assertThat(counted)
        .hasToString("first crest 13.25 mm, pitch 1.4 mm (18.14 threads per inch) counted over 5,"
            + " leaf 1.5 mm, pitch 1.45 mm");
    assertThat(counted.withLastCrest(Length.ofMillimetres(13.7)).inWords(UnitSystem.US))
        .isEqualTo("first crest 0.5217 in, last 0.5394 in, pitch 0.05512 in (18.14 threads per"
            + " inch) counted over 5, leaf 1.5 mm, pitch 0.05709 in");
  }

  @Test
  void the_bounds_of_a_metric_leaf_are_taken() {
    ThreadReadings r = ThreadReadings.ofMale(Length.ofMillimetres(13.25));
    assertThat(r.withMetricLeaf(Length.ofMillimetres(6.5)).leafPitch())
        .contains(Length.ofMillimetres(6.5));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> r.withMetricLeaf(Length.ofMillimetres(6.51)))
        .withMessage("pitch on a metric leaf must be in [0.2, 6.5] mm, was 6.51 mm");
  }

  @Test
  void a_slip_says_what_went_wrong_and_what_to_do() {
    assertThat(ThreadSlip.THREADS_COUNTED_AS_PITCHES.label())
        .isEqualTo("threads were counted as pitches");
    assertThat(ThreadSlip.THREADS_COUNTED_AS_PITCHES.check())
        .isEqualTo("count again: over six threads there are five pitches");
    ForeignThread m14 = ForeignThread.find("M14x1.5", Gender.FEMALE).orElseThrow();
    SlipCandidate slip = new SlipCandidate(ThreadSlip.ENDS_SWAPPED, m14);
    assertThat(slip.slip()).isEqualTo(ThreadSlip.ENDS_SWAPPED);
    assertThat(slip.thread()).isEqualTo(m14);
    assertThat(slip)
        .hasToString(
            "M14x1.5 female if the diameters of the first and the last thread are swapped");
    assertThat(m14.gender()).isEqualTo(Gender.FEMALE);
    assertThat(m14.use()).contains("metric port or 24° cone fitting");
    assertThat(m14.threadsPerInch()).isCloseTo(25.4 / 1.5, within(1.0e-9));
    assertThat(m14.flankAngleDegrees()).isEqualTo(60);
    assertThat(ForeignStandard.PARALLEL_PIPE.flankAngleDegrees()).isEqualTo(55);
    assertThat(new ThreadCandidate(m14, 0.25)).hasToString("M14x1.5 female, 25.0 %");
    assertThat(new ThreadCandidate(m14, 0.25).pipeThread()).isEmpty();
  }
}
