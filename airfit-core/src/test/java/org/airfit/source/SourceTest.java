package org.airfit.source;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;

import java.util.Arrays;
import java.util.function.Function;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class SourceTest {

  static Stream<Arguments> factories() {
    return Stream.of(
        factory(Source::standard, Basis.STANDARD, "standard"),
        factory(Source::regulation, Basis.REGULATION, "text of the rule"),
        factory(Source::handbook, Basis.HANDBOOK, "handbook"),
        factory(Source::derived, Basis.DERIVED, "derived"),
        factory(Source::measured, Basis.MEASURED, "measured"),
        factory(Source::commonPractice, Basis.COMMON_PRACTICE, "common practice, no source"),
        factory(Source::fromMemory, Basis.FROM_MEMORY, "from memory"),
        factory(Source::demo, Basis.DEMO, "invented for demonstration"));
  }

  private static Arguments factory(Function<String, Source> of, Basis basis, String label) {
    return Arguments.of(of, basis, label);
  }

  @ParameterizedTest
  @MethodSource("factories")
  void a_source_prints_its_citation_and_how_far_to_trust_it(
      Function<String, Source> of, Basis basis, String label) {
    Source source = of.apply("ASME B1.20.1, table 1");
    assertThat(source).isEqualTo(new Source(basis, "ASME B1.20.1, table 1"));
    assertThat(source).hasToString("ASME B1.20.1, table 1 (" + label + ")");
    assertThat(basis.label()).isEqualTo(label);
  }

  @Test
  void every_basis_has_a_factory() {
    assertThat(factories().map(arguments -> arguments.get()[1]))
        .containsExactlyInAnyOrder((Object[]) Basis.values());
  }

  @ParameterizedTest
  @ValueSource(strings = {"", " ", "\n"})
  void a_source_that_names_no_place_is_refused(String citation) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Source.standard(citation))
        .withMessage("citation must say where the number comes from, was blank");
  }

  @Test
  @SuppressWarnings("NullAway") // what a caller without null checks could pass
  void what_is_missing_is_refused() {
    assertThatNullPointerException().isThrownBy(() -> new Source(null, "ASME B1.20.1"));
    assertThatNullPointerException().isThrownBy(() -> Source.standard(null));
    assertThatNullPointerException().isThrownBy(() -> Basis.DEMO.weaker(null));
  }

  @ParameterizedTest
  @EnumSource
  void the_weaker_of_two_is_the_one_further_down_whichever_is_asked(Basis basis) {
    Arrays.stream(Basis.values()).forEach(other -> {
      Basis weaker = basis.weaker(other);
      assertThat(weaker).isEqualTo(other.weaker(basis)).isIn(basis, other);
      assertThat(weaker).isGreaterThanOrEqualTo(basis).isGreaterThanOrEqualTo(other);
    });
  }

  @Test
  void what_was_invented_is_never_stronger_than_what_was_read() {
    assertThat(Basis.STANDARD.weaker(Basis.FROM_MEMORY)).isEqualTo(Basis.FROM_MEMORY);
    assertThat(Basis.DEMO.weaker(Basis.STANDARD)).isEqualTo(Basis.DEMO);
    assertThat(Basis.HANDBOOK.weaker(Basis.HANDBOOK)).isEqualTo(Basis.HANDBOOK);
  }
}
