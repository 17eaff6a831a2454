package org.airfit.safety;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;

import org.airfit.source.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class CautionTest {

  private static final Source SOURCE = Source.commonPractice("a habit of the trade");

  @Test
  void a_caution_prints_in_one_line_with_its_source() {
    assertThat(new Caution("Whip hose", "Fit one.", SOURCE))
        .hasToString("Whip hose: Fit one. [a habit of the trade (common practice, no source)]");
  }

  @ParameterizedTest
  @CsvSource({"'',Fit one.", "' ',Fit one.", "Whip hose,''", "Whip hose,' '"})
  void a_caution_says_something(String title, String text) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Caution(title, text, SOURCE))
        .withMessage("title and text of a caution must say something, were \"" + title + "\" and \""
            + text + "\"");
  }

  @Test
  @SuppressWarnings("NullAway") // the point is what happens to callers without such a check
  void a_caution_without_a_source_is_refused() {
    assertThatNullPointerException()
        .isThrownBy(() -> new Caution("Whip hose", "Fit one.", null))
        .withMessage("source");
  }

  @ParameterizedTest
  @EnumSource
  void only_what_somebody_must_act_on_becomes_a_caution(Judgement judgement) {
    Ruling ruling =
        new Ruling(Known.HOISTING, Situation.describe().build(), judgement, "so it is.");
    boolean acts = judgement == Judgement.REQUIRED || judgement == Judgement.NOT_ALLOWED;
    assertThat(judgement.callsForCaution()).isEqualTo(acts);
    assertThat(ruling.caution().isPresent()).isEqualTo(acts);
    ruling.caution().ifPresent(caution -> {
      assertThat(caution.title()).isEqualTo(Known.HOISTING.title());
      assertThat(caution.text())
          .isEqualTo("A hose must not hoist or lower a tool. Here: so it is.");
      assertThat(caution.demand()).isEqualTo("A hose must not hoist or lower a tool.");
      assertThat(caution.source()).isEqualTo(Known.HOISTING.source());
    });
    assertThat(Caution.MORE_SUPPLY_PRESSURE.demand())
        .isEqualTo(Caution.MORE_SUPPLY_PRESSURE.text());
  }

  @Test
  @SuppressWarnings("NullAway") // the point is what happens to callers without such a check
  void a_ruling_is_whole() {
    assertThatIllegalArgumentException()
        .isThrownBy(
            () -> new Ruling(Known.HOISTING, Situation.describe().build(), Judgement.REQUIRED, " "))
        .withMessage("reason of a ruling must say why, was blank");
    assertThatNullPointerException()
        .isThrownBy(
            () -> new Ruling(null, Situation.describe().build(), Judgement.REQUIRED, "so it is."))
        .withMessage("rule");
    assertThatNullPointerException()
        .isThrownBy(
            () -> new Ruling(Known.HOISTING, Situation.describe().build(), null, "so it is."))
        .withMessage("judgement");
  }
}
