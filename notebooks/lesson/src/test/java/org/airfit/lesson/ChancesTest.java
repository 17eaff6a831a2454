package org.airfit.lesson;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;

import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

class ChancesTest {

  private static final Pattern NUMBER = Pattern.compile("\\| (\\d+)\\.(\\d) %");

  /** Rounded one by one, these would give 99.9 %. */
  @Test
  void what_is_missing_goes_to_those_that_lost_most() {
    assertThat(Chances.of("kind")
            .row("a", 0.33344)
            .row("b", 0.33333)
            .rest("none of these")
            .toMarkdown())
        .contains(
            "| kind | chance |", "| a | 33.4 % |", "| b | 33.3 % |", "| none of these | 33.3 % |");
  }

  @Test
  void nothing_is_certain_and_nothing_impossible() {
    assertThat(Chances.of("kind").row("a", 0.99996).rest("none").toMarkdown())
        .contains("| a | > 99.9 % |", "| none | < 0.1 % |");
    assertThat(Chances.of("kind").row("a", 0.9994).rest("none").toMarkdown())
        .contains("| a | 99.9 % |", "| none | 0.1 % |");
  }

  @Test
  void the_printed_numbers_add_up_to_the_whole() {
    Random random = new Random(20261128L);
    for (int round = 0; round < 500; round++) {
      Chances chances = Chances.of("kind");
      double left = 1.0;
      for (int i = 0; i < 6; i++) {
        double part = left * random.nextDouble() * 0.7;
        chances.row("kind " + i, part);
        left -= part;
      }
      Matcher numbers = NUMBER.matcher(chances.rest("none").toMarkdown());
      int tenths = 0;
      while (numbers.find()) {
        tenths += 10 * Integer.parseInt(numbers.group(1)) + Integer.parseInt(numbers.group(2));
      }
      assertThat(tenths).isEqualTo(1000);
    }
  }

  @Test
  void chances_that_are_not_the_whole_are_refused() {
    Chances chances = Chances.of("kind").row("a", 0.7);
    assertThatIllegalStateException().isThrownBy(chances::toMarkdown).withMessageContaining("0.7");
    assertThatIllegalArgumentException().isThrownBy(() -> chances.row("b", 0.4));
    assertThatIllegalArgumentException().isThrownBy(() -> chances.row("b", -0.1));
    assertThatIllegalArgumentException().isThrownBy(() -> chances.row("b", Double.NaN));
  }
}
