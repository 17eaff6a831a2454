package org.airfit.safety;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What rules and media say of themselves, and in which order rules stand. */
class RuleWordsTest {

  private static final String HEADING =
      "jurisdiction,citation,scope,text,source,basis,order,title\n";

  private static SafetyRules ordered(String first, String second, String third) {
    return SafetyRules.ofTable(HEADING
        + "The yard,rule 1,,one,notice,read," + first + ",First\n"
        + "The yard,rule 2,slip 2,two,notice,read," + second + ",\n"
        + "The yard,rule 3,,three,notice,read," + third + ",Third\n");
  }

  private static List<String> citations(SafetyRules rules) {
    return rules.rules().stream().map(SafetyRule::citation).toList();
  }

  @Test
  void rules_stand_in_the_order_told_and_those_without_at_fifty() {
    assertThat(citations(ordered("51", "", "49"))).containsExactly("rule 3", "rule 2", "rule 1");
    assertThat(citations(ordered("0", "9999", "90"))).containsExactly("rule 1", "rule 3", "rule 2");
    assertThat(citations(ordered("", "50", ""))).containsExactly("rule 1", "rule 2", "rule 3");
  }

  @ParameterizedTest
  @ValueSource(strings = {"10000", "-1", "1.5", "first", "1:", "1/"})
  void an_order_that_is_no_whole_number_is_refused(String order) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> ordered(order, "", ""))
        .withMessageContaining("row 2, column order: was \"" + order + "\"")
        .withMessageContaining("a whole number up to 9999");
  }

  @Test
  void a_rule_prints_its_title_its_place_and_its_scope() {
    assertThat(ordered("", "", "").rules().stream().map(SafetyRule::toString))
        .containsExactly("First: rule 1", "rule 2: rule 2, slip 2", "Third: rule 3");
  }

  @Test
  void rules_print_how_many_they_are() {
    assertThat(ordered("", "", "")).asString().startsWith("3 rules. ").contains("The yard");
  }

  @Test
  void compressed_air_passes_without_a_word() {
    assertThat(Medium.COMPRESSED_AIR.refusalInWords()).isEmpty();
    assertThat(Medium.COMPRESSED_AIR.requireCompressedAir()).isEqualTo(Medium.COMPRESSED_AIR);
  }

  @ParameterizedTest
  @EnumSource(mode = EnumSource.Mode.EXCLUDE, names = "COMPRESSED_AIR")
  void everything_else_is_refused_with_its_reason(Medium medium) {
    String reason = medium.refusal().orElseThrow().toString();
    assertThat(medium.refusalInWords().orElseThrow())
        .startsWith("airfit advises on compressed air for tools only, not on " + medium + ". ")
        .endsWith(reason);
    assertThatIllegalArgumentException()
        .isThrownBy(medium::requireCompressedAir)
        .withMessageContaining("medium must be compressed air, was " + medium + ": ")
        .withMessageEndingWith(reason);
  }
}
