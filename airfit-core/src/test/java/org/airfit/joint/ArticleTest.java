package org.airfit.joint;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** "a" or "an" by the sound: an eight, an eleven, an eighteen, an eighty, an R, an M5; a one, a hundred and ten. */
class ArticleTest {

  @ParameterizedTest
  @ValueSource(
      strings = {
        "adapter nipple",
        "end",
        "8 mm tube",
        "80 mm hose",
        "8",
        "11 mm barb",
        "11.5 mm hose",
        "11/16 in hose",
        "11-1/2 in hose",
        "18 mm tube",
        "18.5 mm hose",
        "R 1/4 male",
        "Rc 1/4 female",
        "M5 male"
      })
  void an_stands_before_a_vowel_that_is_heard(String noun) {
    assertThat(Article.with(noun)).isEqualTo("an " + noun);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "nipple",
        "reducing bushing",
        "G 1/2 male",
        "M",
        "Male",
        "1 in hose",
        "1/8 in tube",
        "10 mm hose",
        "110 mm hose",
        "111 mm hose",
        "180 mm hose",
        "3/8 in barb",
        "1-1/8 in hose"
      })
  void a_stands_before_everything_else(String noun) {
    assertThat(Article.with(noun)).isEqualTo("a " + noun);
  }
}
