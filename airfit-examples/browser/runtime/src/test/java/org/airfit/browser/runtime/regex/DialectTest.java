package org.airfit.browser.runtime.regex;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Patterns of Java as JavaScript writes them; {@code .ci/browser/run answers} holds what they find. */
class DialectTest {

  private static String translated(String java) {
    return Dialect.of(java, false, false).source();
  }

  @Test
  void what_both_write_alike_stays() {
    assertThat(translated("([0-9]+(?:[.][0-9]+)?)(?!x)|a{1,3}"))
        .isEqualTo("([0-9]+(?:[.][0-9]+)?)(?!x)|a{1,3}".replace("[.]", "[\\.]"));
  }

  @Test
  void letters_without_case_are_written_twice() {
    assertThat(translated("(?i)mpa[^a-z]\\s"))
        .isEqualTo("[mM][pP][aA][^a-zA-Z][ \\t\\n\\u000b\\f\\r]");
    assertThat(Dialect.of("ab", true, false).source()).isEqualTo("[aA][bB]");
    assertThat(translated("(?i)\\d(?<at>x)")).isEqualTo("\\d(?<at>[xX])");
  }

  @Test
  void a_dot_and_an_end_stop_at_the_ends_of_lines_that_java_knows() {
    assertThat(translated(".")).isEqualTo("[^\\n\\r\\u0085\\u2028\\u2029]");
    assertThat(Dialect.of(".", false, true).source()).isEqualTo("[\\s\\S]");
    assertThat(translated("a$")).isEqualTo("a(?=(?:\\r\\n|[\\n\\r\\u0085\\u2028\\u2029])?$)");
  }

  @Test
  void letters_and_digits_of_java_are_two_categories() {
    assertThat(translated("x(?![\\p{javaLetterOrDigit}_])")).isEqualTo("x(?![\\p{L}\\p{Nd}_])");
    assertThat(translated("\\p{L}")).isEqualTo("[\\p{L}]");
  }

  @Test
  void a_range_between_numbers_of_signs_stays_a_range() {
    assertThat(translated("[\\u00bc-\\u00be\\u2070-\\u2089-]"))
        .isEqualTo("[\\u00bc-\\u00be\\u2070-\\u2089\\u002d]");
  }

  @Test
  void signs_stand_for_themselves_as_in_java() {
    assertThat(translated("\\(g\\)\\-\\_]")).isEqualTo("\\(g\\)\\u002d_\\]");
    assertThat(translated("[\\\\`*_{}|~&-]")).isEqualTo("[\\\\`\\*_\\{\\}\\|~&\\u002d]");
  }

  @Test
  void the_end_of_the_last_match_may_stand_in_front() {
    Dialect dialect = Dialect.of("\\G *x", false, false);
    assertThat(dialect.isSticky()).isTrue();
    assertThat(dialect.source()).isEqualTo(" *x");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"a++", "a?+b", "(?<=a)b", "(?<!a)b", "[a[b]]", "[a&&b]", "a(?i)b", "\\h", "\\Qa\\E"
      })
  void what_javascript_lacks_is_refused_with_the_pattern(String java) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> translated(java))
        .withMessageStartingWith("regular expression must do without ")
        .withMessageEndingWith(java);
  }

  @Test
  void a_quoted_text_has_no_sign_that_means_more() {
    assertThat(Pattern.quote("p_1 (bar)")).isEqualTo("p_1 \\(bar\\)");
  }
}
