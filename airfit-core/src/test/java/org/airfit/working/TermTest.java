package org.airfit.working;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TermTest {

  @Test
  void a_term_keeps_what_it_was_made_of() {
    Term term = Term.of("ṁ", "\\dot m", 0.00205, "kg/s", 3);
    assertThat(term).isEqualTo(new Term("ṁ", "\\dot m", "0.00205", "kg/s"));
    assertThat(term.quantity()).isEqualTo("0.00205 kg/s");
  }

  @Test
  void a_pure_number_has_no_unit_and_no_space_behind_it() {
    assertThat(Term.of("Re", "\\mathrm{Re}", 147816.2, "", 4).quantity()).isEqualTo("147816");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "kg/s;0.5\\,\\mathrm{kg/s}",
        "m³/(s·Pa);0.5\\,\\mathrm{m^3/(s\\cdot Pa)}",
        "Pa·s;0.5\\,\\mathrm{Pa\\cdot s}",
        "J/(kg K);0.5\\,\\mathrm{J/(kg\\,K)}",
        "°C;0.5\\,\\mathrm{^\\circ C}",
        "µm;0.5\\,\\mathrm{\\mu m}",
        "mm²;0.5\\,\\mathrm{mm^2}",
        "mmH₂O;0.5\\,\\mathrm{mmH_2O}",
        "%;0.5\\,\\mathrm{\\%}",
        "'';0.5"
      })
  void units_stand_upright_in_latex(String unit, String latex) {
    assertThat(Term.of("x", "x", 0.5, unit, 3).latexQuantity()).isEqualTo(latex);
  }

  @Test
  void powers_of_ten_are_written_out_in_latex() {
    assertThat(Term.of("µ", "\\mu", 1.8134e-5, "Pa·s", 4).latexQuantity())
        .isEqualTo("1.813 \\times 10^{-5}\\,\\mathrm{Pa\\cdot s}");
    assertThat(Term.of("x", "x", 2.5e9, "", 4).latexQuantity()).isEqualTo("2.5 \\times 10^{9}");
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
  void what_is_no_number_is_never_printed(double value) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Term.of("x", "x", value, "m", 4))
        .withMessage("a number to print must be finite, was " + value);
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 18})
  void digits_have_bounds(int digits) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Term.of("x", "x", 1.0, "m", digits))
        .withMessage("digits must be in [1, 17], was " + digits);
  }

  @ParameterizedTest
  @ValueSource(strings = {"0", "-3", "12.5", "1.813e-5", "-1e9"})
  void a_value_may_be_any_number_that_is_printed_here(String value) {
    assertThat(new Term("x", "x", value, "m").value()).isEqualTo(value);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"", " ", "many", "NaN", "Infinity", "1,5", "1 200", "0x1p3", "1f", ".5", "5."})
  void a_value_that_a_pencil_cannot_use_is_refused(String value) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Term("x", "x", value, "m"))
        .withMessage(
            "value of x must be a number such as 0.002 or 1.813e-5, was \"" + value + "\"");
  }

  @ParameterizedTest
  @ValueSource(strings = {"", " ", "⟨x⟩", "x⟩", "⟨x"})
  void a_symbol_is_given_bare(String symbol) {
    String message = "symbol must be given without angle brackets, was \"" + symbol + "\"";
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Term(symbol, "x", "1", "m"))
        .withMessage(message);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Term("x", symbol, "1", "m"))
        .withMessage(message);
  }

  @Test
  @SuppressWarnings("NullAway") // the point is what happens to callers without such a check
  void nothing_is_not_a_part_of_a_term() {
    assertThatNullPointerException().isThrownBy(() -> new Term(null, "x", "1", "m"));
    assertThatNullPointerException().isThrownBy(() -> new Term("x", null, "1", "m"));
    assertThatNullPointerException().isThrownBy(() -> new Term("x", "x", null, "m"));
    assertThatNullPointerException()
        .isThrownBy(() -> new Term("x", "x", "1", null))
        .withMessage("unit");
  }
}
