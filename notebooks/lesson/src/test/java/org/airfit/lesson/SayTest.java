package org.airfit.lesson;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class SayTest {

  @Test
  void the_index_of_a_symbol_is_set_low_and_names_stay() {
    assertThat(Say.typeset("tip diameter (D_t) 11.92 mm", "drop_12, a_b_c"))
        .contains(">tip diameter (D<sub>t</sub>) 11.92 mm\ndrop_12, a_b_c</pre>");
    assertThat(Say.typeset("p_2 = p_1 − p_10"))
        .contains(">p<sub>2</sub> = p<sub>1</sub> − p_10</pre>");
  }

  @Test
  void no_sign_of_a_line_is_taken_for_markup() {
    assertThat(Say.typeset("< 0.1 % & more\n")).contains(">&lt; 0.1 % &amp; more</pre>");
  }

  @Test
  void text_of_many_lines_may_go_on_over_the_side_of_a_page() {
    assertThat(Say.typeset("line\n".repeat(25))).contains("class=\"said short\"");
    assertThat(Say.typeset("line\n".repeat(26))).contains("class=\"said\"");
  }
}
