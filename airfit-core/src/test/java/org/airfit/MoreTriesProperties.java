package org.airfit;

import static org.assertj.core.api.Assertions.assertThat;

import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.lifecycle.AfterContainer;

/** That jqwik knows {@link MoreTries}: it says nothing where it does not, and draws as it likes. */
class MoreTriesProperties {

  private static final int TRIES = 1000;

  private static int tried;

  @Property(tries = TRIES, edgeCases = EdgeCasesMode.NONE)
  void is_tried(@ForAll long any) {
    tried++;
  }

  @AfterContainer
  static void it_was_tried_as_often_as_the_build_has_time_for() {
    assertThat(tried).isEqualTo(MoreTries.of(TRIES));
  }
}
