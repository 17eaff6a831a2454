package org.airfit.working;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.airfit.Pencil;
import org.airfit.source.Source;
import org.junit.jupiter.api.Test;

class WorkingTest {

  private static final Source DEFINITION = Source.handbook("definition");
  private static final Source TRIAL = Source.demo("a root for the sheet");

  private static final Symbol FLOW = Symbol.of("ṁ", ValueKind.MASS_FLOW);
  private static final Symbol BORE = Symbol.of("D", ValueKind.LENGTH);
  private static final Symbol DENSITY = Symbol.of("ρ", ValueKind.DENSITY);
  private static final Symbol AREA = Symbol.of("A", ValueKind.AREA);
  private static final Symbol VELOCITY = Symbol.of("w", ValueKind.VELOCITY);
  private static final Symbol X = Symbol.of("x", ValueKind.NUMBER);

  private static final Formula AREA_OF_BORE =
      Formula.of("Area of the bore", "⟨A⟩ = π/4 × ⟨D⟩²", DEFINITION, AREA, BORE);
  private static final Formula VELOCITY_IN_BORE =
      Formula.of("Velocity", "⟨w⟩ = ⟨ṁ⟩ / (⟨ρ⟩ × ⟨A⟩)", DEFINITION, VELOCITY, FLOW, DENSITY, AREA);
  private static final Formula GOLDEN =
      Formula.solvedFor(X, "Golden ratio", "⟨x⟩ = 1 + 1/⟨x⟩", TRIAL);

  private static Working.Builder titled(String title) {
    return Working.titled(title, UnitSystem.SI);
  }

  private static Working.Builder area(String title) {
    return titled(title)
        .given(BORE, 0.0095, 5)
        .step(AREA_OF_BORE, Math.PI / 4.0 * 0.0095 * 0.0095, 5)
        .answer(AREA);
  }

  private static Working.Builder golden(String title) {
    return titled(title).step(GOLDEN, 1.618034, 6).answer(X);
  }

  private static Working sheet() {
    Working velocity = titled("Velocity in the bore")
        .given(FLOW, 0.01, 4)
        .given(DENSITY, 8.0, 4)
        .given(AREA, 7.0882e-5, 5)
        .step(VELOCITY_IN_BORE, 17.635, 5)
        .answer(VELOCITY)
        .build();
    return area("A hose of 3/8 in")
        .note("The bore is the measured one.")
        .include(velocity)
        .step(GOLDEN, 1.618034, 6)
        .answer(X)
        .build();
  }

  @Test
  void the_text_reads_as_an_engineer_writes_it() {
    assertThat(sheet().toText()).isEqualTo("""
        A hose of 3/8 in
          Area of the bore
            A = π/4 × D²
              = π/4 × (0.0095 m)²
              = 7.0882 × 10⁻⁵ m²
            [definition (handbook)]
          The bore is the measured one.
          Velocity in the bore
            Velocity
              w = ṁ / (ρ × A)
                = (0.01 kg/s) / ((8 kg/m³) × (7.0882 × 10⁻⁵ m²))
                = 17.635 m/s
              [definition (handbook)]
          Golden ratio
            x = 1 + 1/x
            solved: x = 1.61803
            check:  1.61803 = 1 + 1/1.61803
            [a root for the sheet (invented for demonstration)]
        """);
    assertThat(sheet()).hasToString(sheet().toText());
  }

  @Test
  void the_markdown_holds_the_same() {
    assertThat(sheet().toMarkdown()).isEqualTo("""
        ### A hose of 3/8 in

        **Area of the bore**

        $${A} = \\frac{\\pi}{4} \\cdot {D}^2$$

        $$A = \\frac{\\pi}{4} \\cdot {(0.0095\\,\\mathrm{m})}^2 = 7.0882 \\times 10^{-5}\\,\\mathrm{m^2}$$

        *definition (handbook)*

        The bore is the measured one.

        #### Velocity in the bore

        **Velocity**

        $${w} = \\frac{{\\dot m}}{{\\rho} \\cdot {A}}$$

        $$w = \\frac{{(0.01\\,\\mathrm{kg/s})}}{{(8\\,\\mathrm{kg/m^3})} \\cdot \
        {(7.0882 \\times 10^{-5}\\,\\mathrm{m^2})}} = 17.635\\,\\mathrm{m/s}$$

        *definition (handbook)*

        **Golden ratio**

        $${x} = 1 + \\frac{1}{{x}}$$

        $$x = 1.61803 \\quad\\text{check: } {1.61803} = 1 + \\frac{1}{{1.61803}}$$

        *a root for the sheet (invented for demonstration)*

        """);
  }

  @Test
  void the_latex_holds_the_same() {
    assertThat(sheet().toLatex()).isEqualTo("""
        \\paragraph{A hose of 3/8 in}
        Area of the bore (definition (handbook)):
        \\begin{gather*}
        {A} = \\frac{\\pi}{4} \\cdot {D}^2 \\\\
        A = \\frac{\\pi}{4} \\cdot {(0.0095\\,\\mathrm{m})}^2 = 7.0882 \\times 10^{-5}\\,\\mathrm{m^2}
        \\end{gather*}
        The bore is the measured one.\\par
        \\paragraph{Velocity in the bore}
        Velocity (definition (handbook)):
        \\begin{gather*}
        {w} = \\frac{{\\dot m}}{{\\rho} \\cdot {A}} \\\\
        w = \\frac{{(0.01\\,\\mathrm{kg/s})}}{{(8\\,\\mathrm{kg/m^3})} \\cdot \
        {(7.0882 \\times 10^{-5}\\,\\mathrm{m^2})}} = 17.635\\,\\mathrm{m/s}
        \\end{gather*}
        Golden ratio (a root for the sheet (invented for demonstration)):
        \\begin{gather*}
        {x} = 1 + \\frac{1}{{x}} \\\\
        x = 1.61803 \\quad\\text{check: } {1.61803} = 1 + \\frac{1}{{1.61803}}
        \\end{gather*}
        """);
  }

  @Test
  void the_printed_numbers_worked_again_give_the_printed_results() {
    Pencil.check(sheet());
  }

  @Test
  void steps_are_listed_in_order_with_those_of_included_workings() {
    assertThat(sheet().steps())
        .extracting(Step::what)
        .containsExactly("Area of the bore", "Velocity", "Golden ratio");
    assertThat(sheet().title()).isEqualTo("A hose of 3/8 in");
  }

  @Test
  void an_accent_takes_no_column_of_its_own() {
    Symbol a = Symbol.of("a", ValueKind.NUMBER);
    Symbol q = Symbol.of("q\u0307", ValueKind.NUMBER);
    Formula same = Formula.of("Flow", "⟨q\u0307⟩ = ⟨a⟩", DEFINITION, q, a);
    String text =
        titled("Flow").given(a, 2.0, 3).step(same, 2.0, 3).answer(q).build().toText();
    assertThat(text).contains("    q\u0307 = a\n", "      = 2\n");
  }

  @Test
  void headings_of_markdown_end_at_the_sixth_level() {
    Working working = golden("level 8").note("end").build();
    for (int level = 7; level >= 3; level--) {
      working = titled("level " + level).include(working, X).answer(X).build();
    }
    assertThat(working.toMarkdown()).startsWith("""
            ### level 3

            #### level 4

            ##### level 5

            ###### level 6

            ###### level 7

            ###### level 8

            **Golden ratio**

            """).endsWith("*\n\nend\n\n");
  }

  @Test
  void whatever_a_part_is_called_markdown_and_latex_print_it_as_it_stands() {
    Working working = titled("Hose_1 *new* #2 <b> $5")
        .answer("50 % of {a} & b^2 ~ c\\d | [x](y)")
        .build();
    assertThat(working.toText())
        .isEqualTo("Hose_1 *new* #2 <b> $5\n  50 % of {a} & b^2 ~ c\\d | [x](y)\n");
    assertThat(working.toMarkdown()).isEqualTo("""
            ### Hose\\_1 \\*new\\* \\#2 \\<b\\> \\$5

            50 % of \\{a\\} \\& b^2 \\~ c\\\\d \\| \\[x\\](y)

            """);
    assertThat(working.toLatex()).isEqualTo("""
            \\paragraph{Hose\\_1 *new* \\#2 \\textless{}b\\textgreater{} \\$5}
            50 \\% of \\{a\\} \\& b\\textasciicircum{}2 \\textasciitilde{} c\\textbackslash{}d\
             \\textbar{} [x](y)\\par
            """);
  }

  @Test
  void signs_of_the_trade_are_set_as_formulas_in_latex() {
    assertThat(titled("C 6 dm³/(s·bar), −5 °C ≤ t, ε/D ≈ 2×10⁻³, Größe")
            .answer("Air")
            .build()
            .toLatex())
        .isEqualTo(
            "\\paragraph{C 6 dm\\textsuperscript{3}/(s$\\cdot$bar), $-$5 \\textdegree{}C $\\le$ t,"
                + " $\\varepsilon$/D $\\approx$ 2$\\times$10\\textsuperscript{-}\\textsuperscript{3}, Größe}\n"
                + "Air\\par\n");
  }

  @Test
  void what_would_run_off_a_printed_line_goes_on_two() {
    List<Symbol> summands = new ArrayList<>();
    StringBuilder sum = new StringBuilder("⟨s⟩ = 0");
    for (int i = 0; i < 6; i++) {
      summands.add(Symbol.of("x" + i, ValueKind.MASS_FLUX));
      sum.append(" + ⟨x").append(i).append("⟩");
    }
    Symbol total = Symbol.of("s", ValueKind.MASS_FLUX);
    Symbol[] given = summands.toArray(new Symbol[0]);
    summands.add(total);
    Symbol[] all = summands.toArray(new Symbol[0]);
    Source pencil = Source.handbook("pencil");
    String explicit = sumLatex(Formula.of("Sum", sum.toString(), pencil, all), given);
    assertThat(explicit).contains(" \\\\\n{} = 0.75\\,\\mathrm{");
    String implicit =
        sumLatex(Formula.solvedFor(total, "Sum", sum.toString(), pencil, given), given);
    assertThat(implicit)
        .contains("\ns = 0.75\\,\\mathrm{")
        .contains(" \\\\\n\\text{check: } {(0.75");
  }

  private static String sumLatex(Formula sum, Symbol... summands) {
    Working.Builder builder = titled("Sum");
    for (Symbol summand : summands) {
      builder.given(summand, 0.125, 3);
    }
    return builder.step(sum, 0.75, 3).answer(sum.result()).build().toLatex();
  }

  /**
   * Compiled with pdfLaTeX and inputenc: these it knows as they are, any other sign of the library's sentences must
   * be written out.
   */
  @Test
  void every_sign_of_the_librarys_sentences_compiles_in_latex() {
    String signs = "×γ²−ṁ³°Δ√·λρψπμσµηΣ±∞…χεταβδθκω∂⌀₂¼½¾⅛⅜⅝⅞⁄Φ∫φΠ∏§≤≥≈→⁵⁻";
    assertThat(titled(signs).answer(signs).build().toLatex().replaceAll("[\\x00-\\x7F±…¼½¾]", ""))
        .isEmpty();
  }

  @Test
  void the_index_of_a_symbol_is_set_low_in_a_sentence_of_markdown() {
    Working working = Working.titled("The tip diameter (D_t), d_b and σ(W_g)", UnitSystem.SI)
        .note("drop_12, a_b_c and part_x are names")
        .answer("None.")
        .build();
    assertThat(working.toMarkdown())
        .contains("The tip diameter ($D_t$), $d_b$ and σ($W_g$)")
        .contains("drop\\_12, a\\_b\\_c and part\\_x are names");
  }

  @Test
  void a_sentence_does_not_become_a_list_in_markdown() {
    assertThat(titled("Notes")
            .note("- 5 bar")
            .note("1. shut the valve")
            .answer("6.2 bar")
            .build()
            .toMarkdown())
        .isEqualTo("### Notes\n\n\\- 5 bar\n\n1\\. shut the valve\n\n6.2 bar\n\n");
  }

  @Test
  void a_working_does_not_change_after_it_was_built() {
    Working.Builder builder = area("Bore");
    Working before = builder.build();
    builder.note("later");
    assertThat(before.toText()).doesNotContain("later");
    assertThatExceptionOfType(UnsupportedOperationException.class)
        .isThrownBy(() -> before.steps().clear());
  }

  @Test
  void the_country_makes_no_difference() {
    String text = sheet().toText();
    Locale before = Locale.getDefault();
    try {
      for (String tag : List.of("tr-TR", "ar-EG", "de-DE")) {
        Locale.setDefault(Locale.forLanguageTag(tag));
        assertThat(sheet().toText()).as(tag).isEqualTo(text);
      }
    } finally {
      Locale.setDefault(before);
    }
  }

  @Test
  void blank_words_are_refused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> titled(" "))
        .withMessage("title of a working must say something, was blank");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> titled("Bore").note(""))
        .withMessage("note in a working must say something, was blank");
  }

  @Test
  @SuppressWarnings("NullAway") // the point is what happens to callers without such a check
  void nothing_is_not_a_part_of_a_working() {
    assertThatNullPointerException().isThrownBy(() -> Working.titled(null, UnitSystem.SI));
    assertThatNullPointerException().isThrownBy(() -> titled("Bore").note(null));
    assertThatNullPointerException()
        .isThrownBy(() -> titled("Bore").include(null))
        .withMessage("working");
  }

  private static final String LOST = "Numbers below 2.2e-308 have lost digits here";

  private static String velocity(double flow, double density, double area, UnitSystem units) {
    return Working.titled("Velocity", units)
        .given(FLOW, flow, 5)
        .given(DENSITY, density, 5)
        .given(AREA, area, 5)
        .step(VELOCITY_IN_BORE, flow / (density * area), 4)
        .answer(VELOCITY)
        .build()
        .toText();
  }

  /** A double has 52 bits down to 2.2e-308, and one bit at 4.9e-324: what is put in, what comes out, and between. */
  @Test
  void a_step_whose_numbers_are_too_small_for_their_digits_is_not_refused_and_says_so() {
    for (UnitSystem units : UnitSystem.values()) {
      assertThat(velocity(1.0e-320, 1.0, 1.0, units)).contains(LOST);
      assertThat(velocity(1.0e-320, 1.0e-10, 1.0, units)).contains(LOST);
      assertThat(velocity(1.0e-290, 1.0e15, 1.0e15, units)).contains(LOST);
      assertThat(velocity(1.0e-290, 1.0e-160, 3.0e-160, units)).contains(LOST);
      assertThat(velocity(1.0e-305, 1.0, 1.0, units)).doesNotContain(LOST);
      assertThat(velocity(0.01, 8.0, 7.0e-5, units)).doesNotContain(LOST);
      assertThat(velocity(0.0, 1.0e-320, 1.0, units)).doesNotContain(LOST);
    }
  }

  /** Small, but with all its digits: a wrong result is still refused. */
  @Test
  void a_wrong_result_is_refused_down_to_the_least_number_with_all_its_digits() {
    assertThatExceptionOfType(IllegalStateException.class)
        .isThrownBy(() -> titled("Velocity")
            .given(FLOW, 1.0e-300, 5)
            .given(DENSITY, 8.0, 5)
            .given(AREA, 1.0, 5)
            .step(VELOCITY_IN_BORE, 1.26e-301, 4))
        .withMessageContaining("must give what was computed");
  }
}
