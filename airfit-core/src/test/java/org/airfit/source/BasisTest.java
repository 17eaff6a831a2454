package org.airfit.source;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class BasisTest {

  @Test
  void bases_stand_in_the_order_of_trust() {
    assertThat(Basis.values())
        .containsExactly(
            Basis.STANDARD,
            Basis.REGULATION,
            Basis.HANDBOOK,
            Basis.DERIVED,
            Basis.MEASURED,
            Basis.COMMON_PRACTICE,
            Basis.FROM_MEMORY,
            Basis.DEMO);
  }

  @ParameterizedTest
  @EnumSource
  void an_answer_claims_the_weaker_of_what_it_used(Basis basis) {
    assertThat(basis.weaker(basis)).isEqualTo(basis);
    assertThat(basis.weaker(Basis.DEMO)).isEqualTo(Basis.DEMO);
    assertThat(Basis.DEMO.weaker(basis)).isEqualTo(Basis.DEMO);
    assertThat(basis.weaker(Basis.STANDARD)).isEqualTo(basis);
    assertThat(Basis.STANDARD.weaker(basis)).isEqualTo(basis);
  }

  @ParameterizedTest
  @EnumSource
  void every_basis_has_words_for_people(Basis basis) {
    assertThat(basis.label()).isNotBlank().doesNotContain("_");
  }

  @Test
  void practice_and_memory_say_that_they_have_no_source() {
    assertThat(Basis.COMMON_PRACTICE.label()).isEqualTo("common practice, no source");
    assertThat(Basis.FROM_MEMORY.label()).isEqualTo("from memory");
  }

  @SuppressWarnings("NullAway") // the point is that null is refused
  @Test
  void nothing_is_not_a_basis() {
    assertThatNullPointerException().isThrownBy(() -> Basis.STANDARD.weaker(null));
  }
}
