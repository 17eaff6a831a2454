package org.airfit.internal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;

import nl.jqno.equalsverifier.EqualsVerifier;
import org.airfit.internal.NamedValues.Name;
import org.junit.jupiter.api.Test;

class NamedValuesTest {

  private static final Name<String> COLOUR = Name.of("colour");
  private static final Name<Integer> PIECES = new Name<>("pieces", 1);
  private static final Name<Boolean> OPEN = Name.flag("open");

  @Test
  void what_was_told_is_found_and_what_was_not_is_as_its_name_says() {
    NamedValues told = NamedValues.NONE.with(COLOUR, "grey").with(PIECES, 3).with(OPEN);
    assertThat(told.get(COLOUR)).isEqualTo("grey");
    assertThat(told.get(PIECES)).isEqualTo(3);
    assertThat(told.is(OPEN)).isTrue();
    assertThat(NamedValues.NONE.find(COLOUR)).isEmpty();
    assertThat(NamedValues.NONE.find(PIECES)).contains(1);
    assertThat(NamedValues.NONE.is(OPEN)).isFalse();
    assertThat(told).hasToString("{colour=grey, open=true, pieces=3}");
  }

  @Test
  void a_fuller_one_leaves_the_first_as_it_is() {
    NamedValues grey = NamedValues.NONE.with(COLOUR, "grey");
    grey.with(COLOUR, "green");
    assertThat(grey.get(COLOUR)).isEqualTo("grey");
    assertThat(NamedValues.NONE.find(COLOUR)).isEmpty();
  }

  /** Two that hold the same are equal, whether somebody said so or not. */
  @Test
  void what_holds_anyway_makes_no_difference() {
    assertThat(NamedValues.NONE.with(PIECES, 1)).isEqualTo(NamedValues.NONE);
    assertThat(NamedValues.NONE.with(PIECES, 2).with(PIECES, 1)).isEqualTo(NamedValues.NONE);
    assertThat(NamedValues.NONE.with(PIECES, 2)).isNotEqualTo(NamedValues.NONE);
  }

  @Test
  void they_compare_by_value() {
    EqualsVerifier.forClass(NamedValues.class).withNonnullFields("values").verify();
  }

  @Test
  @SuppressWarnings("NullAway") // what a caller without null checks could pass
  void null_is_refused_by_name() {
    assertThatNullPointerException()
        .isThrownBy(() -> NamedValues.NONE.with(COLOUR, null))
        .withMessage("colour");
  }
}
