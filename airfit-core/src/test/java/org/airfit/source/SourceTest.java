package org.airfit.source;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;

import java.util.Map;
import java.util.function.Function;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class SourceTest {

  private static final Map<Basis, Function<String, Source>> FACTORIES = Map.of(
      Basis.STANDARD, Source::standard,
      Basis.HANDBOOK, Source::handbook,
      Basis.DERIVED, Source::derived,
      Basis.MEASURED, Source::measured,
      Basis.COMMON_PRACTICE, Source::commonPractice,
      Basis.FROM_MEMORY, Source::fromMemory,
      Basis.DEMO, Source::demo);

  static Stream<Function<String, Source>> factories() {
    return FACTORIES.values().stream();
  }

  @ParameterizedTest
  @EnumSource
  void each_basis_has_a_factory(Basis basis) {
    assertThat(FACTORIES.get(basis).apply("where it stands"))
        .isEqualTo(new Source(basis, "where it stands"))
        .hasToString("where it stands (" + basis.label() + ")");
  }

  @Test
  void a_source_prints_as_a_reader_cites_it() {
    assertThat(Source.standard("ASME B1.20.1-2013, table 2"))
        .hasToString("ASME B1.20.1-2013, table 2 (standard)");
    assertThat(Source.commonPractice("whip hose between percussion tool and coupler"))
        .hasToString("whip hose between percussion tool and coupler (common practice, no source)");
  }

  @ParameterizedTest
  @ValueSource(strings = {"", " ", "\t\n"})
  void a_citation_says_something(String blank) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Source.standard(blank))
        .withMessage("citation must say where the number comes from, was blank");
  }

  @ParameterizedTest
  @MethodSource("factories")
  void nothing_is_not_a_citation(Function<String, Source> factory) {
    assertThatNullPointerException().isThrownBy(() -> factory.apply(null));
  }

  @Test
  void a_source_without_a_basis_is_refused() {
    assertThatNullPointerException()
        .isThrownBy(() -> new Source(null, "somewhere"))
        .withMessage("basis");
  }
}
