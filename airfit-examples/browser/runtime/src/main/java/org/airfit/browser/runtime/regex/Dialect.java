package org.airfit.browser.runtime.regex;

/**
 * Writes a regular expression of Java as one of JavaScript with the flag {@code u}, to the same meaning.
 *
 * <p>Refuses what JavaScript lacks, or has since short: possessive quantifiers, look-behind, classes in classes, flags
 * but at the beginning. Two things are read a little otherwise: beside {@code \b} only letters of ASCII count, as in
 * Java from version 19 on, and {@code $} also matches between the two signs of a line end at the end of the text.
 */
public final class Dialect {

  /** Ends of lines, but for the pair of two. */
  private static final String LINE_ENDS = "\\n\\r\\u0085\\u2028\\u2029";

  /** Blanks as Java counts them: JavaScript counts more. */
  private static final String BLANKS = " \\t\\n\\u000b\\f\\r";

  private final String java;
  private final boolean isDotAll;
  private final StringBuilder out = new StringBuilder();
  private boolean ignoresCase;
  private boolean isSticky;
  private int at;

  private Dialect(String java, boolean ignoresCase, boolean isDotAll) {
    this.java = java;
    this.ignoresCase = ignoresCase;
    this.isDotAll = isDotAll;
  }

  /**
   * Refuses an expression that has no like in JavaScript.
   *
   * @param java the expression
   * @throws IllegalArgumentException if it has none
   */
  public static void check(String java) {
    of(java, false, false);
  }

  static Dialect of(String java, boolean ignoresCase, boolean isDotAll) {
    Dialect dialect = new Dialect(java, ignoresCase, isDotAll);
    dialect.translate();
    return dialect;
  }

  /** The expression in JavaScript. */
  String source() {
    return out.toString();
  }

  /** Whether it must begin where the last one ended: {@code \G} at its beginning. */
  boolean isSticky() {
    return isSticky;
  }

  private void translate() {
    if (java.startsWith("(?i)")) {
      ignoresCase = true;
      at = 4;
    }
    if (java.startsWith("\\G", at)) {
      isSticky = true;
      at += 2;
    }
    while (at < java.length()) {
      char c = java.charAt(at);
      if (c == '\\') {
        escape(false);
      } else if (c == '[') {
        set();
      } else if (c == '(') {
        group();
      } else if (c == '{') {
        quantifier();
      } else if (c == '.') {
        out.append(isDotAll ? "[\\s\\S]" : "[^" + LINE_ENDS + "]");
        at++;
      } else if (c == '$') {
        out.append("(?=(?:\\r\\n|[" + LINE_ENDS + "])?$)");
        at++;
      } else if (c == ']' || c == '}') {
        out.append('\\').append(c);
        at++;
      } else if ((c == '+' || c == '*' || c == '?')
          && at + 1 < java.length()
          && java.charAt(at + 1) == '+') {
        throw refused("a possessive quantifier");
      } else {
        letter(c);
        at++;
      }
    }
  }

  private void letter(char c) {
    if (ignoresCase && isLetter(c)) {
      out.append('[').append(c).append(other(c)).append(']');
    } else {
      out.append(c);
    }
  }

  private void group() {
    if (java.startsWith("(?<", at)) {
      int end = java.indexOf('>', at);
      if (java.startsWith("(?<=", at) || java.startsWith("(?<!", at) || end < 0) {
        throw refused("look-behind");
      }
      out.append(java, at, end + 1);
      at = end + 1;
    } else if (java.startsWith("(?", at)) {
      if (":=!".indexOf(java.charAt(at + 2)) < 0) {
        throw refused("a flag inside");
      }
      out.append(java, at, at + 3);
      at += 3;
    } else {
      out.append('(');
      at++;
    }
  }

  private void quantifier() {
    int end = java.indexOf('}', at);
    if (end < 0 || java.startsWith("+", end + 1)) {
      throw refused("a possessive quantifier or an open brace");
    }
    out.append(java, at, end + 1);
    at = end + 1;
  }

  private void escape(boolean inSet) {
    char c = java.charAt(at + 1);
    at += 2;
    if (c == 's') {
      out.append(inSet ? BLANKS : "[" + BLANKS + "]");
    } else if (c == 'S' && !inSet) {
      out.append("[^" + BLANKS + "]");
    } else if ("dDwW".indexOf(c) >= 0 || (!inSet && "bB123456789".indexOf(c) >= 0)) {
      out.append('\\').append(c);
    } else if ("tnrf".indexOf(c) >= 0) {
      out.append('\\').append(c);
    } else if (c == 'u') {
      out.append("\\u").append(java, at, at + 4);
      at += 4;
    } else if (c == 'p') {
      int end = java.indexOf('}', at);
      String signs = category(java.substring(at + 1, end));
      out.append(inSet ? signs : "[" + signs + "]");
      at = end + 1;
    } else if (isLetter(c) || (c >= '0' && c <= '9')) {
      throw refused("\\" + c);
    } else {
      literal(c);
    }
  }

  /** Signs of a category, whose names of one or two letters are the same in both. */
  private String category(String name) {
    if (name.equals("javaLetterOrDigit")) {
      return "\\p{L}\\p{Nd}";
    }
    if (name.length() > 2) {
      throw refused("\\p{" + name + "}");
    }
    return "\\p{" + name + "}";
  }

  /** A sign that stands for itself, in a class or not. */
  private void literal(char c) {
    if ("^$\\.*+?()[]{}|/-".indexOf(c) >= 0) {
      out.append(c == '-' ? "\\u002d" : "\\" + c);
    } else {
      out.append(c);
    }
  }

  private void set() {
    out.append('[');
    at++;
    if (java.startsWith("^", at)) {
      out.append('^');
      at++;
    }
    int first = at;
    while (at == first || java.charAt(at) != ']') {
      char c = java.charAt(at);
      if (c == '[' || java.startsWith("&&", at)) {
        throw refused("a class in a class");
      }
      if (c == '\\') {
        boolean isOneSign = java.charAt(at + 1) == 'u';
        escape(true);
        if (isOneSign && java.startsWith("-", at) && java.charAt(at + 1) != ']') {
          out.append('-'); // the end of the range comes next
          at++;
        }
      } else if (java.startsWith("-", at + 1) && java.charAt(at + 2) != ']') {
        range(c, java.charAt(at + 2));
        at += 3;
      } else {
        literal(c);
        if (ignoresCase && isLetter(c)) {
          out.append(other(c));
        }
        at++;
      }
    }
    out.append(']');
    at++;
  }

  private void range(char low, char high) {
    if (low == '\\' || high == '\\') {
      throw refused("a range with an escaped end");
    }
    literal(low);
    out.append('-');
    literal(high);
    if (ignoresCase && isLetter(low) && isLetter(high)) {
      out.append(other(low)).append('-').append(other(high));
    }
  }

  private static boolean isLetter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
  }

  private static char other(char letter) {
    return (char) (letter ^ 0x20);
  }

  private IllegalArgumentException refused(String what) {
    return new IllegalArgumentException(
        "regular expression must do without " + what + " in a page, was: " + java);
  }
}
