package org.airfit.working;

import java.util.Map;
import java.util.regex.Pattern;

/** Prose made safe for the languages a working is written in: names come from users and may hold any character. */
final class Markup {

  private static final Pattern MARKDOWN_SIGN = Pattern.compile("[\\\\`*_{}\\[\\]<>#$|~&]");

  /** One letter with one letter as its index, its line escaped: no word of a sentence looks so. */
  private static final Pattern SYMBOL =
      Pattern.compile("(^|[^A-Za-z0-9_\\\\])([A-Za-z])\\\\_([A-Za-z])(?![A-Za-z0-9_\\\\])");

  /** What makes a list or a rule out of a sentence that begins with it. */
  private static final Pattern LIST_MARK = Pattern.compile("^(\\d+(?=[.)]\\s)|(?=[-+]))");

  private static final Map<Integer, String> LATEX = Map.ofEntries(
      entry('\\', "\\textbackslash{}"),
      entry('{', "\\{"),
      entry('}', "\\}"),
      entry('$', "\\$"),
      entry('&', "\\&"),
      entry('#', "\\#"),
      entry('_', "\\_"),
      entry('%', "\\%"),
      entry('~', "\\textasciitilde{}"),
      entry('^', "\\textasciicircum{}"),
      entry('<', "\\textless{}"),
      entry('>', "\\textgreater{}"),
      entry('|', "\\textbar{}"),
      entry('°', "\\textdegree{}"),
      entry('§', "\\S{}"),
      entry('−', "$-$"),
      entry('×', "$\\times$"),
      entry('·', "$\\cdot$"),
      entry('²', "\\textsuperscript{2}"),
      entry('³', "\\textsuperscript{3}"),
      entry('⁰', "\\textsuperscript{0}"),
      entry('¹', "\\textsuperscript{1}"),
      entry('⁴', "\\textsuperscript{4}"),
      entry('⁵', "\\textsuperscript{5}"),
      entry('⁶', "\\textsuperscript{6}"),
      entry('⁷', "\\textsuperscript{7}"),
      entry('⁸', "\\textsuperscript{8}"),
      entry('⁹', "\\textsuperscript{9}"),
      entry('⁻', "\\textsuperscript{-}"),
      entry('√', "$\\surd$"),
      entry('≤', "$\\le$"),
      entry('≥', "$\\ge$"),
      entry('≈', "$\\approx$"),
      entry('→', "$\\to$"),
      entry('ṁ', "$\\dot m$"),
      entry('Δ', "$\\Delta$"),
      entry('Σ', "$\\Sigma$"),
      entry('±', "$\\pm$"),
      entry('⌀', "$\\oslash$"),
      entry('⁄', "/"),
      entry('⅛', "1/8"),
      entry('⅜', "3/8"),
      entry('⅝', "5/8"),
      entry('⅞', "7/8"),
      entry('Π', "$\\Pi$"),
      entry('Φ', "$\\Phi$"),
      entry('∂', "$\\partial$"),
      entry('∫', "$\\int$"),
      entry('∏', "$\\prod$"),
      entry('∞', "$\\infty$"),
      entry('₂', "\\textsubscript{2}"),
      entry('α', "$\\alpha$"),
      entry('β', "$\\beta$"),
      entry('γ', "$\\gamma$"),
      entry('δ', "$\\delta$"),
      entry('ε', "$\\varepsilon$"),
      entry('η', "$\\eta$"),
      entry('θ', "$\\theta$"),
      entry('κ', "$\\kappa$"),
      entry('λ', "$\\lambda$"),
      entry('μ', "$\\mu$"),
      entry('µ', "$\\mu$"), // U+00B5, the micro sign; the one above is the Greek letter
      entry('π', "$\\pi$"),
      entry('ρ', "$\\rho$"),
      entry('σ', "$\\sigma$"),
      entry('τ', "$\\tau$"),
      entry('ψ', "$\\psi$"),
      entry('ω', "$\\omega$"),
      entry('φ', "$\\varphi$"),
      entry('χ', "$\\chi$"));

  private Markup() {}

  private static Map.Entry<Integer, String> entry(char sign, String latex) {
    return Map.entry((int) sign, latex);
  }

  /** A sentence that Markdown prints as it stands, but for the index of a symbol such as D_t, which is set low. */
  static String markdown(String prose) {
    String escaped = MARKDOWN_SIGN.matcher(prose).replaceAll("\\\\$0");
    String marked = LIST_MARK.matcher(escaped).replaceFirst("$1\\\\");
    return SYMBOL.matcher(marked).replaceAll("$1\\$$2_$3\\$");
  }

  /** A sentence that LaTeX prints as it stands. Letters of other languages are left to its input encoding. */
  static String latex(String prose) {
    StringBuilder out = new StringBuilder();
    prose.codePoints().forEach(sign -> {
      String written = LATEX.get(sign);
      if (written == null) {
        out.appendCodePoint(sign);
      } else {
        out.append(written);
      }
    });
    return out.toString();
  }

  /** The columns a symbol takes on a terminal: a dot above a letter takes none. */
  static int width(String symbol) {
    return (int) symbol
        .codePoints()
        .filter(sign -> Character.getType(sign) != Character.NON_SPACING_MARK)
        .count();
  }

  static String requireProse(String prose, String what) {
    if (prose.isBlank()) {
      throw new IllegalArgumentException(what + " must say something, was blank");
    }
    return prose;
  }
}
