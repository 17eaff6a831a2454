package org.airfit.browser.compiler;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class ShorterTest {

  private static final String[] SIGNS = {"+", "-", "*", "/", "%"};

  @Test
  void what_is_exported_is_still_exported_and_what_is_inside_is_shorter() throws IOException {
    String module = "let first = (one, other) => { let sum; sum = one + other; return sum; };\n"
        + "let second = '</x';\nexport{first as identify,second as run};";
    String shorter = Shorter.shorter(module);
    assertThat(shorter)
        .contains("a+b", "export{first as identify,second as run};")
        .doesNotContain("sum", "other", "'use strict'");
    assertThat(shorter.length()).isLessThan(module.length());
  }

  /** Doubles are not associative: a bracket that goes is another number. */
  @Test
  void every_bracket_that_numbers_need_stays_and_no_constant_is_reckoned() throws IOException {
    List<String> wanted = new ArrayList<>();
    StringBuilder module = new StringBuilder("let x = (a, b, c) => [");
    for (String outer : SIGNS) {
      for (String inner : SIGNS) {
        boolean isFirstAnyway = "+-".contains(outer) && !"+-".contains(inner);
        wanted.add("a" + outer + (isFirstAnyway ? "b" + inner + "c" : "(b" + inner + "c)"));
        module.append("a ").append(outer).append(" (b ").append(inner).append(" c),\n");
      }
    }
    module.append("a * 2.0 * 3.0, 2.0 * (3.0 * a), a + 0.1 + 0.2];\nexport{x as x};");
    assertThat(Shorter.shorter(module.toString()))
        .contains(String.join(",", wanted) + ",a*2*3,2*(3*a),a+.1+.2]");
  }

  /** A value that is taken once goes where it is taken, with its bracket. */
  @Test
  void a_bracket_stays_where_its_value_had_a_name() throws IOException {
    String module = "let x = (a, b, c) => { let d, e; d = b * c; e = b - c; return a * d + (a - e); };\n"
        + "export{x as x};";
    assertThat(Shorter.shorter(module)).contains("a*(b*c)+(a-(b-c))");
  }

  @Test
  void what_is_no_module_is_refused() {
    assertThatThrownBy(() -> Shorter.shorter("let x = 1;"))
        .isInstanceOf(IOException.class)
        .hasMessage("the module must export at its end: export {…}");
    assertThatThrownBy(() -> Shorter.shorter("let x = ;\nexport{x as x};"))
        .isInstanceOf(IOException.class)
        .hasMessageStartingWith("the JavaScript cannot be read: ");
  }

  @Test
  void a_comparison_behind_two_brackets_ends_no_script_of_a_page() throws IOException {
    assertThat(Shorter.script("globalThis.f = (a, b) => a[b[0]] > 1;"))
        .contains("]] >1")
        .doesNotContain("]]>");
  }
}
