package org.airfit.working;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SymbolTest {

  private static final Symbol P1 = Symbol.of("p1", ValueKind.PRESSURE);

  @ParameterizedTest
  @CsvSource({
    "L,L",
    "p2,p_2",
    "d40,d_{40}",
    "cp,c_p",
    "ṁ,\\dot m",
    "ṁc,\\dot m_c",
    "ṁ*,\\dot m^*",
    "λ,\\lambda",
    "λT,\\lambda_T",
    "ηc,\\eta_c",
    "μ0,\\mu_0",
    "µ,\\mu",
    "ΣK,\\Sigma K",
    "Δp,\\Delta p",
    "Δpc,\\Delta p_c",
    "Δp100,\\Delta p_{100}",
    "Δ,\\Delta",
    "K∞,K_\\infty",
    "ε/D,\\varepsilon/D",
    "p/p*,p/p^*",
    "Δpc/p1,\\Delta p_c/p_1",
    "T/T0,T/T_0",
    "Re,\\mathrm{Re}",
    "Vs1,V_{s1}",
    "xηm,x_{\\eta m}"
  })
  void latex_follows_from_the_plain_text(String text, String latex) {
    assertThat(Symbol.of(text, ValueKind.NUMBER).latex()).isEqualTo(latex);
  }

  @Test
  void a_dot_may_be_a_sign_of_its_own() {
    assertThat(Symbol.of("m\u0307", ValueKind.MASS_FLOW).latex()).isEqualTo("\\dot m");
    assertThat(Symbol.of("Q\u03071", ValueKind.NUMBER).latex()).isEqualTo("\\dot Q_1");
  }

  @Test
  void latex_that_no_rule_gives_is_given() {
    Symbol likelihood = Symbol.of("ln L", "\\ln L", ValueKind.NUMBER);
    assertThat(likelihood.latex()).isEqualTo("\\ln L");
    assertThat(likelihood.text()).isEqualTo("ln L");
    assertThat(likelihood).hasToString("ln L");
  }

  @Test
  void the_same_quantity_may_be_shown_in_other_units() {
    Symbol said = P1.as(ValueKind.SAID_PRESSURE);
    assertThat(said.kind()).isEqualTo(ValueKind.SAID_PRESSURE);
    assertThat(said.text()).isEqualTo("p1");
    assertThat(said.latex()).isEqualTo("p_1");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> P1.as(ValueKind.LENGTH))
        .withMessage("kind of p1 must be in Pa, was in m");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> P1.as(ValueKind.NUMBER))
        .withMessage("kind of p1 must be in Pa, was in no unit");
  }

  @ParameterizedTest
  @ValueSource(strings = {"", " ", "⟨x⟩", "x⟩", "⟨x"})
  void a_symbol_is_given_bare(String symbol) {
    String message = "symbol must be given without angle brackets, was \"" + symbol + "\"";
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Symbol.of(symbol, ValueKind.NUMBER))
        .withMessage(message);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Symbol.of("x", symbol, ValueKind.NUMBER))
        .withMessage(message);
  }

  @Test
  void symbols_are_compared_by_value() {
    assertThat(Symbol.of("p1", ValueKind.PRESSURE)).isEqualTo(P1).hasSameHashCodeAs(P1);
    assertThat(Symbol.of("p2", ValueKind.PRESSURE)).isNotEqualTo(P1);
    assertThat(P1.as(ValueKind.SAID_PRESSURE)).isNotEqualTo(P1);
    assertThat(Symbol.of("p1", "P_1", ValueKind.PRESSURE)).isNotEqualTo(P1);
    assertThat(P1).isNotEqualTo("p1");
  }

  @Test
  @SuppressWarnings("NullAway") // the point is what happens to callers without such a check
  void nothing_is_not_a_part_of_a_symbol() {
    assertThatNullPointerException().isThrownBy(() -> Symbol.of(null, ValueKind.NUMBER));
    assertThatNullPointerException().isThrownBy(() -> Symbol.of("x", null)).withMessage("kind");
    assertThatNullPointerException().isThrownBy(() -> Symbol.of("x", null, ValueKind.NUMBER));
    assertThatNullPointerException().isThrownBy(() -> P1.as(null));
  }
}
