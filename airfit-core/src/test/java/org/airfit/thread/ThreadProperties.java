package org.airfit.thread;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import org.airfit.joint.End;
import org.airfit.joint.Mating;
import org.airfit.joint.MatingVerdict;
import org.airfit.quantity.HoseBore;
import org.airfit.quantity.Length;
import org.airfit.quantity.NominalThreadSize;

class ThreadProperties {

  @Provide
  Arbitrary<NptThread> npt() {
    return Arbitraries.of(NptThread.all());
  }

  @Provide
  Arbitrary<BsptThread> bspt() {
    return Arbitraries.of(BsptThread.all());
  }

  @Provide
  Arbitrary<PipeThread> threads() {
    List<PipeThread> threads = new ArrayList<>();
    for (ThreadFamily family : ThreadFamily.values()) {
      family.sizes().forEach(size -> PipeThreads.of(family, size).ifPresent(threads::add));
    }
    return Arbitraries.of(threads);
  }

  @Provide
  Arbitrary<End> ends() {
    List<End> ends = new ArrayList<>();
    for (ThreadFamily family : ThreadFamily.values()) {
      for (NominalThreadSize size : family.sizes()) {
        for (Gender gender : Gender.values()) {
          if (family.has(gender)) {
            ends.add(new End.Threaded(family, size, gender));
          }
        }
      }
    }
    for (String bore : List.of("1/4 in", "3/8 in", "10 mm")) {
      ends.add(new End.Barb(HoseBore.parse(bore)));
      ends.add(new End.HoseEnd(HoseBore.parse(bore)));
    }
    return Arbitraries.of(ends);
  }

  @Property
  void a_plane_further_in_is_larger_on_a_male_cone_and_smaller_in_a_female_one(
      @ForAll("threads") PipeThread thread,
      @ForAll Gender gender,
      @ForAll @DoubleRange(min = 0.0, max = 10.0) double near,
      @ForAll @DoubleRange(min = 0.0, max = 10.0) double further) {
    Assume.that(thread.family().has(gender));
    ThreadSection here = thread.section(gender, Length.ofMillimetres(near));
    ThreadSection there = thread.section(gender, Length.ofMillimetres(near + further));
    double growth = !thread.family().isTapered()
        ? 0.0
        : gender == Gender.MALE ? further / 16.0 : -further / 16.0;
    for (Function<ThreadSection, Length> diameter : List.<Function<ThreadSection, Length>>of(
        ThreadSection::major, ThreadSection::pitch, ThreadSection::minor)) {
      assertThat(diameter.apply(there).millimetres() - diameter.apply(here).millimetres())
          .isCloseTo(growth, within(1.0e-9));
    }
  }

  @Property
  void crest_lies_outside_the_pitch_line_of_a_male_thread_and_inside_that_of_a_female_one(
      @ForAll("threads") PipeThread thread, @ForAll Gender gender) {
    Assume.that(thread.family().has(gender));
    ThreadSection section = thread.section(gender, Length.ofMetres(0.0));
    assertThat(section.major()).isGreaterThan(section.pitch());
    assertThat(section.pitch()).isGreaterThan(section.minor());
    assertThat(section.crest(gender))
        .isEqualTo(gender == Gender.MALE ? section.major() : section.minor());
    assertThat(thread.firstCrest(gender).contains(section.crest(gender))
            || thread.family() == ThreadFamily.NPSC)
        .isTrue();
  }

  @Property
  void male_and_female_cones_of_one_standard_meet_at_the_hand_tight_plane(
      @ForAll("npt") NptThread npt, @ForAll("bspt") BsptThread bspt) {
    assertThat(npt.section(Gender.MALE, npt.handTightLength()).pitch().inches())
        .isCloseTo(
            npt.section(Gender.FEMALE, Length.ofMetres(0.0)).pitch().inches(), within(1.0e-12));
    assertThat(bspt.section(Gender.MALE, bspt.gaugeLength()).pitch().millimetres())
        .isCloseTo(
            bspt.section(Gender.FEMALE, Length.ofMetres(0.0)).pitch().millimetres(),
            within(1.0e-12));
  }

  @Property
  void it_does_not_matter_which_end_is_named_first(
      @ForAll("ends") End one, @ForAll("ends") End other) {
    Mating mating = Mating.of(one, other);
    Mating turned = Mating.of(other, one);
    assertThat(turned.verdict()).isEqualTo(mating.verdict());
    assertThat(turned.reason().isBlank()).isFalse();
    assertThat(turned.one()).isEqualTo(other);
  }

  @Property
  void sixty_degrees_and_fifty_five_are_never_sound_together(
      @ForAll("ends") End one, @ForAll("ends") End other) {
    if (one instanceof End.Threaded a
        && other instanceof End.Threaded b
        && a.family().flankAngleDegrees() != b.family().flankAngleDegrees()) {
      assertThat(Mating.of(a, b).verdict().isSound()).isFalse();
    }
  }

  @Property
  void male_and_female_of_different_sizes_never_catch(
      @ForAll("ends") End one, @ForAll("ends") End other) {
    if (one instanceof End.Threaded a
        && other instanceof End.Threaded b
        && a.gender() == Gender.MALE
        && b.gender() == Gender.FEMALE
        && a.size() != b.size()) {
      assertThat(Mating.of(a, b).verdict()).isEqualTo(MatingVerdict.DOES_NOT_FIT);
      a.thread()
          .geometry()
          .ifPresent(male -> b.thread().geometry().ifPresent(female -> {
            ThreadSection outside = male.section(Gender.MALE, Length.ofMetres(0.0));
            ThreadSection inside = female.section(Gender.FEMALE, Length.ofMetres(0.0));
            // either the crests are wider than the mouth between its roots, or narrower than its
            // bore
            assertThat(outside.major().compareTo(inside.major()) > 0
                    || outside.major().compareTo(inside.minor()) < 0)
                .isTrue();
          }));
    }
  }
}
