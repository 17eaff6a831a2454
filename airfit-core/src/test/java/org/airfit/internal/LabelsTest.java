package org.airfit.internal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;

import java.util.Locale;
import org.junit.jupiter.api.Test;

class LabelsTest {

  private enum Finish {
    PLATED,
    HOT_DIP_GALVANISED;

    @Override
    public String toString() {
      return Labels.of(this);
    }
  }

  @Test
  void a_label_is_the_name_in_small_letters_with_blanks() {
    assertThat(Labels.of(Finish.PLATED)).isEqualTo("plated");
    assertThat(Labels.of(Finish.HOT_DIP_GALVANISED)).isEqualTo("hot dip galvanised");
  }

  /** Turkish has an i without a dot, which is the small letter of I. */
  @Test
  void the_country_makes_no_difference() {
    Locale before = Locale.getDefault();
    try {
      Locale.setDefault(Locale.forLanguageTag("tr-TR"));
      assertThat(Labels.of(Finish.HOT_DIP_GALVANISED)).isEqualTo("hot dip galvanised");
    } finally {
      Locale.setDefault(before);
    }
  }

  @Test
  void a_label_is_read_back_in_whatever_case_and_with_blanks_around_it() {
    for (Finish finish : Finish.values()) {
      assertThat(Labels.parse("finish", " " + finish + "\t", Finish.values())).isEqualTo(finish);
      assertThat(
              Labels.parse("finish", finish.toString().toUpperCase(Locale.ROOT), Finish.values()))
          .isEqualTo(finish);
    }
  }

  @Test
  void what_is_no_label_is_answered_with_all_of_them() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Labels.parse("finish", " painted", Finish.values()))
        .withMessage("finish must be one of plated, hot dip galvanised, was \" painted\"");
  }

  @Test
  @SuppressWarnings("NullAway") // what a caller without null checks could pass
  void null_is_refused_by_name() {
    assertThatNullPointerException()
        .isThrownBy(() -> Labels.parse("finish", null, Finish.values()))
        .withMessage("text");
  }
}
