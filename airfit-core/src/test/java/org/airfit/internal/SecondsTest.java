package org.airfit.internal;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import org.junit.jupiter.api.Test;

class SecondsTest {

  @Test
  void a_time_is_its_seconds_and_their_parts() {
    assertThat(Seconds.of(Duration.ofMillis(90_250))).isEqualTo(90.25);
    assertThat(Seconds.of(Duration.ofMillis(-500))).isEqualTo(-0.5);
    assertThat(Seconds.told(Duration.ofMinutes(2))).isEqualTo("120 s");
    assertThat(Seconds.told(Duration.ofMillis(-500))).isEqualTo("-0.5 s");
  }
}
