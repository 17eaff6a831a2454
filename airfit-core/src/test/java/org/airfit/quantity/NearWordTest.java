package org.airfit.quantity;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/** The word that was meant: one slip of a hand is understood, another word is not. */
class NearWordTest {

  private static final List<String> KNOWN = List.of("reach", "push-in", "salt air", "part", "port");

  @Test
  void one_letter_dropped_added_changed_or_swapped_is_a_slip() {
    assertThat(NearWord.to("rech", KNOWN)).contains("reach");
    assertThat(NearWord.to("reeach", KNOWN)).contains("reach");
    assertThat(NearWord.to("reaxh", KNOWN)).contains("reach");
    assertThat(NearWord.to("raech", KNOWN)).contains("reach");
    assertThat(NearWord.to("length", KNOWN)).isEmpty();
  }

  @Test
  void capitals_blanks_and_dashes_are_no_slip() {
    assertThat(NearWord.to("PUSH IN", KNOWN)).contains("push-in");
    assertThat(NearWord.to("salt_air", KNOWN)).contains("salt air");
  }

  @Test
  void of_two_as_near_the_first_is_named_and_of_none_nothing() {
    assertThat(NearWord.named("pert", KNOWN)).isEqualTo("; nearest: part");
    assertThat(NearWord.named("coupling", KNOWN)).isEmpty();
  }
}
