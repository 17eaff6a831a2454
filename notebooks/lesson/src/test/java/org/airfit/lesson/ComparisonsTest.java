package org.airfit.lesson;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

class ComparisonsTest {

  @Test
  void a_number_within_its_tolerance_leaves_a_row() {
    String table = new Comparisons()
        .add("drop", 2.21, 2.2, "psi", 1.0, "printed digits", "a handbook")
        .toMarkdown();
    assertThat(table)
        .contains("| drop | 2.21 psi | 2.2 psi | -0.45 % | ±1 %: printed digits | a handbook |");
  }

  @Test
  void a_number_outside_its_tolerance_ends_the_notebook() {
    Comparisons comparisons = new Comparisons();
    assertThatThrownBy(
            () -> comparisons.add("drop", 2.21, 2.3, "psi", 1.0, "printed digits", "a handbook"))
        .isInstanceOf(WrongNumberException.class)
        .hasMessageContaining("drop must be within 1.0 % of 2.21 psi");
    assertThatThrownBy(() ->
            comparisons.add("drop", 2.21, Double.NaN, "psi", 1.0, "printed digits", "a handbook"))
        .isInstanceOf(WrongNumberException.class);
  }

  @Test
  void a_copied_number_is_called_transcribed_and_must_be_the_same() {
    assertThat(new Comparisons()
            .transcribed("bore, least", 12.3, 12.3, "mm", "a standard")
            .toMarkdown())
        .contains("| bore, least | 12.3 mm | 12.3 mm | none | transcribed")
        .doesNotContain("±");
    assertThatThrownBy(
            () -> new Comparisons().transcribed("bore, least", 12.3, 12.31, "mm", "a standard"))
        .isInstanceOf(WrongNumberException.class)
        .hasMessageContaining("bore, least must be copied as 12.3 mm");
  }

  @Test
  void a_word_must_be_the_same() {
    assertThat(new Comparisons()
            .addWord("regime", "choked", "choked", "a handbook")
            .toMarkdown())
        .contains("| same |");
    assertThatThrownBy(
            () -> new Comparisons().addWord("regime", "choked", "subsonic", "a handbook"))
        .isInstanceOf(WrongNumberException.class);
  }

  @Test
  void a_bar_in_a_cell_does_not_break_the_table() {
    assertThat(Table.of("a", "b").row("x|y", 2).toMarkdown())
        .isEqualTo("| a | b |\n| --- | --- |\n| x\\|y | 2 |\n");
    assertThatIllegalArgumentException().isThrownBy(() -> Table.of("a", "b").row("x"));
  }
}
