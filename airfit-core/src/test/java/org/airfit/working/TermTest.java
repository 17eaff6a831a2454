package org.airfit.working;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.lang.reflect.Modifier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A symbol that is blank, bracketed or missing is refused by {@link Symbol}. */
class TermTest {

  private static Term term(double value, String unit, int digits) {
    return Symbol.of("x", ValueKind.only(unit, unit, 1.0)).term(value, digits, UnitSystem.SI);
  }

  @Test
  void a_term_keeps_what_it_was_made_of() {
    Term term = Symbol.of("ṁ", ValueKind.MASS_FLOW).term(0.00205, 3, UnitSystem.SI);
    assertThat(term.symbol()).isEqualTo("ṁ");
    assertThat(term.latex()).isEqualTo("\\dot m");
    assertThat(term.value()).isEqualTo("0.00205");
    assertThat(term.unit()).isEqualTo("kg/s");
    assertThat(term.quantity()).isEqualTo("0.00205 kg/s");
    assertThat(term).hasToString("ṁ = 0.00205 kg/s");
  }

  @Test
  void a_pure_number_has_no_unit_and_no_space_behind_it() {
    assertThat(
            Symbol.of("Re", ValueKind.NUMBER).term(147816.2, 4, UnitSystem.SI).quantity())
        .isEqualTo("1.478 × 10⁵");
  }

  /** A Reynolds number with six or seven digits promises what a friction factor of three does not hold. */
  @ParameterizedTest
  @CsvSource({
    "117560.4, 4, 1.176e5, 1.176 × 10⁵",
    "43231.15, 4, 4.323e4, 4.323 × 10⁴",
    "9999.6, 4, 1.000e4, 1.000 × 10⁴",
    "45.9957, 4, 46.00, 46.00",
    "46, 4, 46, 46",
    "4323.1, 4, 4323, 4323",
    "841300, 4, 8.413e5, 8.413 × 10⁵",
    "841300, 6, 841300, 841300",
    "-117560.4, 4, -1.176e5, -1.176 × 10⁵",
    "1.813e-5, 4, 1.813e-5, 1.813 × 10⁻⁵",
    "0.0253564, 4, 0.02536, 0.02536",
    "0, 4, 0, 0"
  })
  void whole_digits_are_rounded_too(double value, int digits, String printed, String read) {
    assertThat(term(value, "", digits).value()).isEqualTo(printed);
    assertThat(term(value, "", digits).quantity()).isEqualTo(read);
  }

  @Test
  void terms_are_compared_by_what_is_printed() {
    assertThat(term(2.0, "m", 3))
        .isEqualTo(term(2.0, "m", 4))
        .hasSameHashCodeAs(term(2.0, "m", 4))
        .isNotEqualTo(term(2.0001, "m", 3)); // printed 2.00
    assertThat(term(2.0002, "m", 3))
        .isEqualTo(term(2.0001, "m", 3))
        .hasSameHashCodeAs(term(2.0001, "m", 3));
    assertThat(term(2.0, "m", 3))
        .isNotEqualTo(term(2.01, "m", 3))
        .isNotEqualTo(term(2.0, "mm", 3))
        .isNotEqualTo(Symbol.of("y", ValueKind.METRES).term(2.0, 3, UnitSystem.SI))
        .isNotEqualTo(Symbol.of("x", "X", ValueKind.METRES).term(2.0, 3, UnitSystem.SI))
        .isNotEqualTo("x = 2 m");
  }

  @Test
  void nobody_else_can_make_a_term() {
    assertThat(Term.class.getConstructors()).isEmpty();
    assertThat(Term.class.getMethods())
        .filteredOn(method -> Modifier.isStatic(method.getModifiers()))
        .isEmpty();
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
    assertThat(term(0.5, unit, 3).latexQuantity()).isEqualTo(latex);
  }

  @Test
  void powers_of_ten_are_written_out_in_latex() {
    assertThat(term(1.8134e-5, "Pa·s", 4).latexQuantity())
        .isEqualTo("1.813 \\times 10^{-5}\\,\\mathrm{Pa\\cdot s}");
    assertThat(term(2.5e9, "", 4).latexQuantity()).isEqualTo("2.5 \\times 10^{9}");
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
  void what_is_no_number_is_never_printed(double value) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> term(value, "m", 4))
        .withMessage("a number to print must be finite, was " + value);
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 18})
  void digits_have_bounds(int digits) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> term(1.0, "m", digits))
        .withMessage("digits must be in [1, 17], was " + digits);
  }

  @ParameterizedTest
  @ValueSource(strings = {"0", "-3", "12.5", "1.813e-5", "-1e9"})
  void a_value_is_printed_as_people_write_it(String value) {
    assertThat(term(Double.parseDouble(value), "m", 4).value()).isEqualTo(value);
  }

  /** No "NaN", no "1,5", no "1 200", no ".5", no "5.", no "1f". */
  @ParameterizedTest
  @ValueSource(
      doubles = {
        -0.0,
        0.5,
        5.0,
        1_200.0,
        123_456_789.5,
        999_999_999.9,
        1.0e-4,
        9.99e-5,
        1.0e100,
        Double.MIN_VALUE,
        -Double.MAX_VALUE
      })
  void a_value_is_one_that_a_pencil_can_use(double value) {
    for (int digits = 1; digits <= 17; digits++) {
      assertThat(term(value, "m", digits).value()).matches("-?\\d+(\\.\\d+)?(e-?\\d+)?");
    }
  }
}
