package org.airfit.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;

import org.junit.jupiter.api.Test;

class LexiconTest {

  @Test
  void a_word_cannot_mean_two_things() {
    Lexicon<String> words = new Lexicon<>();
    words.add("bar(g)", "gauge");
    words.add("bar (g)", "gauge");
    words.addIfAbsent("barg", "absolute");
    assertThat(words.find("bar[g]")).isEqualTo("gauge");
    assertThatIllegalStateException()
        .isThrownBy(() -> words.add("barg", "absolute"))
        .withMessage("\"barg\" would mean both gauge and absolute");
  }

  @Test
  void words_that_differ_in_capitals_only_must_be_typed_as_they_are() {
    Lexicon<String> words = new Lexicon<>();
    words.add("Cal", "kilocalorie");
    words.add("cal", "calorie");
    assertThat(words.find("Cal")).isEqualTo("kilocalorie");
    assertThat(words.find("cal")).isEqualTo("calorie");
    assertThat(words.find("CAL")).isNull();
    assertThat(words.find("")).isNull();
  }
}
