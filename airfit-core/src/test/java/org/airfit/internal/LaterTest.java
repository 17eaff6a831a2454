package org.airfit.internal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;

class LaterTest {

  @Test
  void a_value_is_worked_out_once_and_not_before_it_is_asked_for() {
    AtomicInteger worked = new AtomicInteger();
    Later<String> later = Later.of(() -> "found " + worked.incrementAndGet());
    assertThat(worked).hasValue(0);
    assertThat(later.get()).isEqualTo("found 1");
    assertThat(later.get()).isEqualTo("found 1");
    assertThat(later).hasToString("found 1");
  }

  @Test
  void values_to_come_compare_by_what_they_will_be() {
    Later<String> one = Later.of(() -> "one");
    assertThat(one)
        .isEqualTo(Later.of(() -> "one"))
        .hasSameHashCodeAs(Later.of(() -> "one"))
        .isNotEqualTo(Later.of(() -> "other"))
        .isNotEqualTo("one");
  }
}
