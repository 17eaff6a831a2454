package org.airfit.quantity;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class NominalThreadSizeTest {

  @Test
  void steps_count_the_sizes_between_from_either_side() {
    NominalThreadSize eighth = NominalThreadSize.parse("1/8");
    NominalThreadSize half = NominalThreadSize.parse("1/2");
    assertThat(eighth.stepsTo(half)).as("1/8, 1/4, 3/8, 1/2").isEqualTo(3);
    assertThat(half.stepsTo(eighth)).isEqualTo(3);
    assertThat(half.stepsTo(half)).isZero();
    assertThat(half.stepsTo(NominalThreadSize.parse("3/4"))).isEqualTo(1);
  }
}
