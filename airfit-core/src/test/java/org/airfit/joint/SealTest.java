package org.airfit.joint;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What keeps a joint tight and what is bought for it. The kinds of seal are those of threads/sealing_practice.csv and
 * ends/sealing_forms.csv of the reference tables: taper threads with sealant, dryseal without, G on a face.
 */
class SealTest {

  private static Mating mating(String one, String other) {
    return Mating.of(End.parse(one), End.parse(other));
  }

  @ParameterizedTest
  @CsvSource({
    "1/2 NPT male, 1/2 NPT female, THREAD_SEALANT, thread sealant for 1/2 NPT",
    "Rc 3/8, R 3/8, THREAD_SEALANT, thread sealant for R 3/8",
    "1/4 NPTF male, 1/4 NPT female, THREAD_SEALANT, thread sealant for 1/4 NPTF",
    "G 1/4 male, G 1/4 female, WASHER, sealing washer for G 1/4",
    "3/8 in hose, 3/8 in barb, CLAMP_OR_FERRULE, clamp or ferrule for 3/8 in hose",
    "3/8 in barb, 10 mm hose, CLAMP_OR_FERRULE, clamp or ferrule for 10 mm hose",
  })
  void a_joint_that_needs_an_item_beside_its_parts_names_it_by_size(
      String one, String other, Seal seal, String item) {
    assertThat(mating(one, other).seal()).contains(seal);
    assertThat(mating(one, other).sealItem()).contains(item);
    assertThat(seal.isBought()).isTrue();
  }

  @ParameterizedTest
  @CsvSource({
    "1/2 NPTF male, 1/2 NPTF female, DRY_THREAD",
    "1/2 NPSM female, 1/2 NPT male, SEAT",
    "8 mm tube, 8 mm push-in, RING_OF_PART",
  })
  void a_joint_that_is_tight_by_its_own_parts_needs_no_item(String one, String other, Seal seal) {
    assertThat(mating(one, other).seal()).contains(seal);
    assertThat(mating(one, other).sealItem()).isEmpty();
    assertThat(seal.isBought()).isFalse();
  }

  @ParameterizedTest
  @CsvSource({
    "1/2 NPT male, G 1/2 female",
    "1/2 NPT male, 1/4 NPT female",
    "5/32 in tube, 4 mm push-in",
    "R 1/4, G 1/4 female"
  })
  void a_joint_that_is_none_to_build_has_no_seal_and_no_item(String one, String other) {
    assertThat(mating(one, other).seal()).isEmpty();
    assertThat(mating(one, other).sealItem()).isEmpty();
  }

  @Test
  void the_kinds_of_seal_are_told_in_words() {
    assertThat(Seal.WASHER.label()).isEqualTo("a sealing washer between flat faces");
    assertThat(Seal.RING_OF_PART.label()).isEqualTo("a ring or gasket that belongs to the part");
  }
}
