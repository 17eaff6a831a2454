package org.airfit.thread;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import org.airfit.quantity.HoseBore;
import org.airfit.quantity.Length;

class ThreadProperties {

  @Provide
  Arbitrary<NptThread> npt() {
    return Arbitraries.of(NptThread.all());
  }

  @Provide
  Arbitrary<End> ends() {
    List<End> ends = new ArrayList<>();
    for (ThreadFamily family : ThreadFamily.values()) {
      for (NptThread thread : NptThread.all()) {
        for (Gender gender : Gender.values()) {
          ends.add(new End.Threaded(family, thread.size(), gender));
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
  void a_plane_further_from_the_small_end_is_larger_by_a_sixteenth(
      @ForAll("npt") NptThread thread,
      @ForAll @DoubleRange(min = 0.0, max = 2.0) double near,
      @ForAll @DoubleRange(min = 0.0, max = 2.0) double further) {
    Length plane = Length.ofInches(near);
    Length beyond = Length.ofInches(near + further);
    assertThat(thread.pitchDiameterAt(beyond).inches()
            - thread.pitchDiameterAt(plane).inches())
        .isCloseTo(further / 16.0, within(1.0e-12));
    assertThat(thread.crestDiameterAt(beyond))
        .isGreaterThanOrEqualTo(thread.crestDiameterAt(plane));
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
}
