package org.airfit.working;

import java.util.Map;
import java.util.Objects;

/** An equation whose symbols stand in angle brackets, to be filled with symbols or with numbers. */
final class Template {

  private Template() {}

  /** Fills in every symbol. */
  static String filled(String template, Map<String, String> fillings) {
    StringBuilder out = new StringBuilder();
    int at = 0;
    while (at < template.length()) {
      int open = template.indexOf('⟨', at);
      if (open < 0) {
        return out.append(template, at, template.length()).toString();
      }
      int close = template.indexOf('⟩', open);
      out.append(template, at, open)
          .append(Objects.requireNonNull(fillings.get(template.substring(open + 1, close))));
      at = close + 1;
    }
    return out.toString();
  }

  /**
   * The equation in symbols. A quotient such as p/p0 gets brackets where its parts would fall apart: (p/p0)²,
   * √(p/p0), 1/(p/p0).
   */
  static String inSymbols(String template) {
    StringBuilder out = new StringBuilder();
    int at = 0;
    while (at < template.length()) {
      int open = template.indexOf('⟨', at);
      if (open < 0) {
        return out.append(template, at, template.length()).toString();
      }
      int close = template.indexOf('⟩', open);
      String symbol = template.substring(open + 1, close);
      out.append(template, at, open);
      boolean apart = symbol.indexOf('/') >= 0
          && (isRaised(template, close + 1) || isBound(template.substring(0, open)));
      out.append(apart ? "(" + symbol + ")" : symbol);
      at = close + 1;
    }
    return out.toString();
  }

  /** The same in LaTeX, where fractions and roots keep together by themselves. */
  static String latexInSymbols(String template, Map<String, String> symbols) {
    StringBuilder out = new StringBuilder();
    int at = 0;
    while (at < template.length()) {
      int open = template.indexOf('⟨', at);
      if (open < 0) {
        return out.append(template, at, template.length()).toString();
      }
      int close = template.indexOf('⟩', open);
      String text = template.substring(open + 1, close);
      String symbol = symbols.getOrDefault(text, text);
      out.append(template, at, open).append('{');
      boolean apart = text.indexOf('/') >= 0 && isRaised(template, close + 1);
      out.append(apart ? "\\left(" + symbol + "\\right)" : symbol).append('}');
      at = close + 1;
    }
    return out.toString();
  }

  private static boolean isRaised(String template, int next) {
    return next < template.length() && "^²³⁴⁵".indexOf(template.charAt(next)) >= 0;
  }

  private static boolean isBound(String before) {
    String start = before.endsWith(" ") ? before.substring(0, before.length() - 1) : before;
    return start.endsWith("/") || before.endsWith("√");
  }
}
