package org.airfit.joint;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import nl.jqno.equalsverifier.EqualsVerifier;
import nl.jqno.equalsverifier.Warning;
import org.airfit.quantity.Length;
import org.junit.jupiter.api.Test;

class LengthDifferenceTest {

  private static LengthDifference of(double millimetres, double over) {
    return new LengthDifference(Length.ofMillimetres(millimetres), Length.ofMillimetres(over));
  }

  @Test
  void a_difference_keeps_its_sign() {
    assertThat(of(3.0, 1.0).millimetres()).isCloseTo(2.0, within(1.0e-12));
    assertThat(of(3.0, 1.0).isNegative()).isFalse();
    assertThat(of(1.0, 3.0).millimetres()).isCloseTo(-2.0, within(1.0e-12));
    assertThat(of(1.0, 3.0).isNegative()).isTrue();
    assertThat(of(1.0, 1.0).isNegative()).isFalse();
    assertThat(of(1.0, 3.0).magnitude().millimetres()).isCloseTo(2.0, within(1.0e-12));
    assertThat(of(1.0, 3.25)).hasToString("-2.250 mm");
  }

  @Test
  void differences_are_ordered_by_what_they_come_to() {
    assertThat(of(1.0, 3.0)).isLessThan(of(1.0, 2.0)).isLessThan(of(3.0, 1.0));
    assertThat(of(5.0, 4.0)).isEqualByComparingTo(of(2.0, 1.0)).isNotEqualTo(of(2.0, 1.0));
  }

  @Test
  void equality_is_by_value() {
    EqualsVerifier.forClass(LengthDifference.class)
        .suppress(Warning.NULL_FIELDS)
        .verify();
  }
}
