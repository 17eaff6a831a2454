package org.airfit.browser.probe;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Regular expressions drawn at random, on texts drawn at random: on the JVM those of the JDK, in JavaScript those that
 * the browser reads in their place. Two things are left out, because they differ: beside {@code \b} a letter that is
 * not of ASCII, in which JDKs differ too, and {@code $} between the two signs of a line end.
 */
final class Expressions {

  private static final String[] ATOMS = {
    "a",
    "b",
    "c",
    "1",
    " ",
    "-",
    ".",
    "\\d",
    "\\D",
    "\\w",
    "\\W",
    "\\s",
    "\\S",
    "[abc]",
    "[^ab]",
    "[a-c1]",
    "[^\\s-]",
    "[\\d.]",
    "\\.",
    "\\-",
    "/",
    "\\bb",
    "½",
    "[\\u00bc-\\u00be]",
    "[+*?]",
    "(?:ab|a)",
    "(?!b)",
    "(?=a)",
    "]",
    "\\p{L}",
  };

  private static final String[] QUANTIFIERS = {
    "", "", "", "", "*", "+", "?", "*?", "+?", "??", "{2}", "{1,2}", "{1,}"
  };

  private static final String SIGNS = "aabbccABC112 .-/½\n\u00a0+]";

  private Expressions() {}

  static void tell(Tape tape, int each, int texts) {
    Draw draw = new Draw(5);
    tape.group("expression");
    for (int i = 0; i < each; i++) {
      String expression = expression(draw);
      Pattern pattern = draw.below(8) == 0
          ? Pattern.compile(expression, Pattern.CASE_INSENSITIVE | Pattern.DOTALL)
          : Pattern.compile(expression);
      for (int j = 0; j < texts; j++) {
        tell(tape, pattern, text(draw), draw);
      }
    }
  }

  private static void tell(Tape tape, Pattern pattern, String text, Draw draw) {
    Matcher matcher = pattern.matcher(text);
    StringBuilder told = new StringBuilder(pattern.pattern()).append(" on ").append(text);
    told.append(": ").append(matcher.matches()).append(' ').append(matcher.lookingAt());
    matcher.reset();
    while (matcher.find()) {
      told.append(' ').append(matcher.start()).append('-').append(matcher.end());
      for (int group = 1; group <= matcher.groupCount(); group++) {
        told.append(',').append(matcher.group(group));
      }
    }
    int from = draw.below(text.length() + 1);
    told.append("; from ").append(from).append(' ').append(matcher.find(from));
    told.append("; inside ").append(matcher.region(from, text.length()).matches());
    told.append("; ").append(matcher.replaceAll("<$0>"));
    told.append("; ").append(pattern.matcher(text).replaceFirst(Matcher.quoteReplacement("$\\")));
    told.append("; ").append(String.join("|", pattern.split(text)));
    told.append("; ").append(String.join("|", text.split(pattern.pattern(), -1)));
    tape.text(told.toString());
  }

  private static String expression(Draw draw) {
    StringBuilder out = new StringBuilder();
    if (draw.below(10) == 0) {
      out.append("(?i)");
    }
    if (draw.below(10) == 0) {
      out.append('^');
    }
    alternatives(draw, out, 2);
    if (draw.below(10) == 0) {
      out.append('$');
    }
    return out.toString();
  }

  private static void alternatives(Draw draw, StringBuilder out, int depth) {
    int count = draw.below(4) == 0 ? 2 : 1;
    for (int i = 0; i < count; i++) {
      out.append(i == 0 ? "" : "|");
      int length = 1 + draw.below(3);
      for (int j = 0; j < length; j++) {
        one(draw, out, depth);
      }
    }
  }

  /** A group that one reads back is not repeated: of one that is, the JVM keeps what JavaScript forgets. */
  private static void one(Draw draw, StringBuilder out, int depth) {
    int kind = depth == 0 ? 0 : draw.below(6);
    if (kind == 4) {
      out.append('(');
      alternatives(draw, out, depth - 1);
      out.append(')');
      return;
    }
    if (kind == 5) {
      out.append("(?:")
          .append(ATOMS[draw.below(6)])
          .append(ATOMS[draw.below(16)])
          .append(')');
    } else {
      String atom = ATOMS[draw.below(ATOMS.length)];
      out.append(atom);
      if (atom.startsWith("(?") || atom.startsWith("\\b")) {
        return;
      }
    }
    out.append(QUANTIFIERS[draw.below(QUANTIFIERS.length)]);
  }

  private static String text(Draw draw) {
    StringBuilder out = new StringBuilder();
    int length = draw.below(12);
    for (int i = 0; i < length; i++) {
      out.append(SIGNS.charAt(draw.below(SIGNS.length())));
    }
    return out.toString();
  }
}
